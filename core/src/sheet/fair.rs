//! A fair or a market: how many pieces cover the stall, the drive and the hours there, and what so many leave for an hour of it.

use super::account::of as reckon;
use super::offer::{Asking, part_of_time};
use super::shop::Shop;
use crate::ledger::fold::{Job, jobs};
use crate::ledger::kind::haul::Per;
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::cost::{CostKind, DistanceRate, distance};
use crate::money::cover::pieces_to_cover;
use crate::money::left::Way;
use crate::money::price::Work;
use crate::quantity::{Count, Day, Decimal, Id, Length, Listed, Money, Sorted, Span, sums};
use crate::refusal::{Answer, Refusal};

/// A day at a fair, before it is gone to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fair {
    /// Which pieces are taken there, and how they are paid.
    pub job: Id,
    pub paid: Paid,
    pub stall: Money,
    /// There and back.
    pub distance: Option<Length>,
    pub time: Span,
}

/// What it takes, and what so many pieces leave.
#[derive(Clone, Debug, PartialEq)]
pub struct FairSheet {
    pub job: Id,
    pub name: String,
    /// Pieces that can be taken there.
    pub free: Count,
    pub stall: Money,
    pub drive: Money,
    /// The hours there at the lowest pay; none where that was not said, and then they are not covered.
    pub hours: Option<Money>,
    /// What a buyer hands over for one, what you get of it, and what one cost.
    pub ask: Money,
    pub you_get: Money,
    pub cost: Money,
    /// So many cover all of it.
    pub covers: Count,
    pub sold: Vec<SoldThere>,
}

/// What is left where so many are sold there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SoldThere {
    pub n: Count,
    /// For each hour there.
    pub per_hour: Decimal,
    /// For each hour there and each of their making; none where that is not known.
    pub with_making: Option<Decimal>,
}

/// A day on which a stall was paid for: so many of those that were there were sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PastFair {
    pub day: Day,
    pub sold: Count,
    pub there: Count,
}

/// What a fair can't be reckoned without.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lacks {
    Price,
    Cost,
    Both,
}

/// A fair with pieces of a job; else what lacks: its price, what it cost, or both.
///
/// # Errors
/// [`Refusal::NeverCovered`] where a piece leaves nothing, [`Refusal::MileageUnknown`], [`Refusal::NoHours`], [`Refusal::NotThere`].
pub fn fair(shop: &Shop, of: &Fair) -> Answer<Result<FairSheet, Lacks>> {
    let job = shop.job(of.job)?;
    let account = reckon(shop, &job)?;
    // Who buys it there carries it home.
    let asking = Asking { n: 1, paid: of.paid, carried: Carried::Fetched, tax: None };
    let work = account.pricing.work_of(&job, (1, asking.carried))?;
    let own = Work { costs: own_costs(&job, work.costs)?, ..work };
    let (ask, cost) = match (account.pricing.ask(shop, &job, asking)?, own.costs_of(1)?) {
        (Some(ask), Some(cost)) => (ask, cost),
        (None, Some(_)) => return Ok(Err(Lacks::Price)),
        (Some(_), None) => return Ok(Err(Lacks::Cost)),
        (None, None) => return Ok(Err(Lacks::Both)),
    };
    let you_get = shop.terms_of(&job, of.paid).you_get(ask)?;
    let drive = drive(shop, (&job, of.distance))?;
    let hours = account.pricing.hourly.lowest_pay.map(|pay| sums::book(sums::for_time(pay, of.time)?, job.currency)).transpose()?;
    let ahead = of.stall.plus(drive)?;
    let all = ahead.plus(hours.unwrap_or(Money::zero(job.currency)))?;
    let covers = pieces_to_cover(all.amount(), you_get.amount(), cost.amount())?;
    let making = work.time.filter(|_| !account.pricing.at_least);
    let of_n = |n: Count| {
        let way = Way { you_get: you_get.times(n)?, costs: ahead.plus(cost.times(n)?)?, time: of.time };
        let made = making.map(|all| Ok(Way { time: of.time.plus(part_of_time(all, n, job.pieces)?), ..way })).transpose()?;
        let with_making = made.map(|way| Ok(way.per_hour(None)?.left)).transpose()?;
        Ok(SoldThere { n, per_hour: way.per_hour(None)?.left, with_making })
    };
    let sold = told(covers, job.free()).into_iter().map(of_n).collect::<Answer<Vec<SoldThere>>>()?;
    Ok(Ok(FairSheet {
        job: job.id,
        name: job.name.clone(),
        free: job.free(),
        stall: of.stall,
        drive,
        hours,
        ask,
        you_get,
        cost,
        covers,
        sold,
    }))
}

/// How many sold are told of: what covers it, half of the way from there, and all.
fn told(covers: Count, free: Count) -> Vec<Count> {
    let half = covers.saturating_add(free.saturating_sub(covers).div_ceil(2));
    let mut told = [covers, half, free].into_iter().filter(|n| 0 < *n && *n <= free).listed();
    told.sort_unstable();
    told.dedup();
    told
}

/// What all pieces cost, without stalls that were paid for: each fair pays for its own.
fn own_costs(job: &Job, costs: Option<Money>) -> Answer<Option<Money>> {
    let Some(costs) = costs else { return Ok(None) };
    let stalls = stalls(job).map(|(_, sum)| sum);
    costs.minus(Money::sum(job.currency, stalls)?).map(Some)
}

fn stalls(job: &Job) -> impl Iterator<Item = (Day, Money)> + '_ {
    let is_stall = |kind: &crate::quantity::Key| kind.as_str() == CostKind::Stall.key();
    job.booked.iter().filter(move |line| line.kind.as_ref().is_some_and(is_stall)).map(|line| (line.at.day(), line.sum))
}

fn drive(shop: &Shop, (job, driven): (&Job, Option<Length>)) -> Answer<Money> {
    let Some(driven) = driven.filter(|driven| *driven != Length::ZERO) else { return Ok(Money::zero(job.currency)) };
    let till = shop.till(job.currency);
    let (amount, per) = till.mileage.zip(till.per).ok_or(Refusal::MileageUnknown { currency: job.currency })?;
    let per = if per == Per::Mile { Length::MILE } else { Length::KM };
    distance(driven, DistanceRate { amount, per }, job.currency)
}

/// Days on which a stall was paid for, the latest first: what of the pieces of those jobs was sold that day, of those that were left.
pub fn past(shop: &Shop) -> Vec<PastFair> {
    let mut days: Sorted<Day, (Count, Count)> = Sorted::new();
    for job in jobs(shop.book) {
        let mut of_job = stalls(&job).map(|(day, _)| day).listed();
        of_job.sort_unstable();
        of_job.dedup();
        for day in of_job {
            let n = |is: fn(Day, Day) -> bool| {
                let sold = job.selling.standing().filter(|sale| is(sale.at.day(), day));
                sold.fold(0, |n: Count, sale| n.saturating_add(sale.n))
            };
            let (sold, before) = (n(|at, day| at == day), n(|at, day| at < day));
            let known = days.entry(day).or_insert((0, 0));
            *known = (known.0.saturating_add(sold), known.1.saturating_add(job.pieces.saturating_sub(before)));
        }
    }
    days.into_iter().rev().map(|(day, (sold, there))| PastFair { day, sold, there }).listed()
}
