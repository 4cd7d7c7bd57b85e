//! The sums of a year: what came in, what went out and what for, what is left, and hours. Each is of the year it was in at the place where it was
//! written. Wood is of the year its haul began in, as its share of the workshop is.

use super::haul::{self, HaulReckoning};
use super::helped::{HELPER, earned_in};
use super::shop::Shop;
use super::taxes::taxes;
use super::workshop::{costs, time_of};
use crate::bench::On;
use crate::ledger::fold::{Job, hauls, jobs};
use crate::quantity::{Currency, Key, Listed, Money, Offset, Sorted, Span, Wall, order_by_key};
use crate::refusal::Answer;
use std::cmp::Reverse;

/// A year in one currency.
#[derive(Clone, Debug, PartialEq)]
pub struct YearSums {
    /// What buyers and galleries handed over.
    pub came_in: Money,
    /// What buyers were given back.
    pub given_back: Money,
    /// Sales tax as it was recorded.
    pub tax: Money,
    /// What payments cost.
    pub fees: Money,
    /// Spent on jobs, by kind, with the pay of who worked along.
    pub on_jobs: Sorted<Key, Money>,
    /// Spent on hauls that began in it: what jobs and the rack carry of them.
    pub on_wood: Money,
    /// A drive of such a haul has no rate, so it is in no sum.
    pub is_unpriced: bool,
    /// Costs of no job, as Workshop has them.
    pub workshop: Money,
}

impl YearSums {
    /// All that was spent on jobs beside their wood.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn spent_on_jobs(&self) -> Answer<Money> {
        Money::sum(self.came_in.currency(), self.on_jobs.values().copied())
    }

    /// What is left of what came in.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::MoneyOutOfRange`].
    pub fn left(&self) -> Answer<Money> {
        let out = [self.given_back, self.tax, self.fees, self.spent_on_jobs()?, self.on_wood, self.workshop];
        out.into_iter().try_fold(self.came_in, Money::minus)
    }

    /// Nothing came in and nothing was spent.
    pub fn is_empty(&self) -> bool {
        let sums = [self.came_in, self.given_back, self.tax, self.fees, self.on_wood, self.workshop];
        sums.iter().all(|sum| sum.is_zero()) && self.on_jobs.values().all(|sum| sum.is_zero())
    }
}

/// The sums of a year.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn sums(shop: &Shop, currency: Currency, year: i32) -> Answer<YearSums> {
    let none = Money::zero(currency);
    let tax = taxes(shop, currency, year)?.tax;
    let workshop = costs(shop, year)?.remove(&currency).map_or(none, |costs| costs.total);
    let (came_in, given_back, fees, on_wood) = (none, none, none, none);
    let mut found = YearSums { came_in, given_back, tax, fees, on_jobs: Sorted::new(), on_wood, is_unpriced: false, workshop };
    for job in jobs(shop.book).filter(|job| job.currency == currency) {
        found.sell(&job, year)?;
        found.spend(shop, &job, year)?;
    }
    for haul in hauls(shop.book).filter(|haul| haul.currency == currency && year_of(haul.began) == year) {
        found.fetch(&haul::haul(shop, haul.id)?)?;
    }
    Ok(found)
}

/// Hours of a year: worked, and of them logged to jobs and their hauls.
pub fn hours(shop: &Shop, year: i32, offset: Offset) -> [Span; 2] {
    let time = time_of(shop, (year, offset));
    [time.worked(), time.logged]
}

/// The years in which anything came in, went back or was spent, and this one, the latest first.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn years(shop: &Shop, this: i32) -> Answer<Vec<i32>> {
    let mut all = vec![this];
    all.extend(shop.workshop.costs.iter().map(|line| year_of(line.at)));
    all.extend(hauls(shop.book).map(|haul| year_of(haul.began)));
    for job in jobs(shop.book) {
        let came = came_in(&job).into_iter().chain(job.selling.given_back(job.currency)?);
        all.extend(came.map(|(at, _)| at).chain(job.booked.iter().map(|line| line.at)).map(year_of));
    }
    order_by_key(&mut all, |year| Reverse(*year));
    all.dedup();
    Ok(all)
}

fn year_of(at: Wall) -> i32 {
    at.day().as_ymd().0
}

/// All that buyers and galleries handed over for a job, and when.
fn came_in(job: &Job) -> Vec<(Wall, Money)> {
    let selling = &job.selling;
    let buyers = selling.payments.iter().map(|payment| (payment.at, payment.sum));
    let galleries = selling.consignments_paid.iter().filter_map(|paid| Some((paid.at, paid.sum?)));
    let rests = selling.rests_paid.iter().map(|rest| (rest.at, rest.sum));
    buyers.chain(galleries).chain(rests).listed()
}

impl YearSums {
    fn sell(&mut self, job: &Job, year: i32) -> Answer<()> {
        let of_year =
            |all: Vec<(Wall, Money)>| Money::sum(job.currency, all.into_iter().filter(|(at, _)| year_of(*at) == year).map(|(_, sum)| sum));
        self.came_in = self.came_in.plus(of_year(came_in(job))?)?;
        self.given_back = self.given_back.plus(of_year(job.selling.given_back(job.currency)?)?)?;
        self.fees = self.fees.plus(of_year(job.selling.payments.iter().map(|payment| (payment.at, payment.fee)).listed())?)?;
        Ok(())
    }

    fn spend(&mut self, shop: &Shop, job: &Job, year: i32) -> Answer<()> {
        let lines = job.booked.iter().filter(|line| year_of(line.at) == year).map(|line| (line.kind.clone(), line.sum));
        let pay = earned_in(shop, On::Job(job.id), year)?.into_iter().filter(|pay| pay.currency() == job.currency);
        for (kind, sum) in lines.chain(pay.map(|pay| (Key::read(HELPER), pay))) {
            let Some(kind) = kind else { continue };
            let of_kind = self.on_jobs.entry(kind).or_insert(Money::zero(job.currency));
            *of_kind = of_kind.plus(sum)?;
        }
        Ok(())
    }

    fn fetch(&mut self, haul: &HaulReckoning) -> Answer<()> {
        let carried = haul.jobs.iter().map(|(_, share)| share.cost).chain(haul.rack.map(|share| share.cost));
        let workshop = haul.workshop.map_or(Money::zero(self.on_wood.currency()), |share| share.cost);
        let on_wood = match haul.costs {
            Some(all) => all.minus(workshop)?,
            None => Money::sum(self.on_wood.currency(), carried)?,
        };
        (self.on_wood, self.is_unpriced) = (self.on_wood.plus(on_wood)?, self.is_unpriced || haul.costs.is_none());
        Ok(())
    }
}

#[cfg(test)]
mod tests;
