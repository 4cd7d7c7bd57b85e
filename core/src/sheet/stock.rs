//! The stock ledger: every pile that has something on the rack, with where it lies, since when, and what became of the rest of it.

pub mod find;
pub mod history;

use super::alike::Alike;
use super::haul::{known_cost, measure};
use super::shop::Shop;
use super::trip_end::on_its_way;
use crate::haul::{Dampness, Haul, Pile};
use crate::ledger::decide::Lying;
use crate::ledger::fold;
use crate::quantity::{Count, Currency, Decimal, Id, Key, Listed, Moment, Sorted, Span, Units, Volume, Wall, order_by_key};
use crate::refusal::{Answer, Refusal};
use std::ops::Deref;

/// So many weeks after it was last in a hand, a pile is suggested for a walk-round. Our judgement, no source.
pub const LOOK_AGAIN_WEEKS: i64 = 12;

/// A pile as the rack has it: where it lies, since when, and what became of it.
#[derive(Clone, Debug, PartialEq)]
pub struct StockPile {
    pub at: Lying,
    pub alike: Alike,
    pub haul: OfHaul,
    /// When it was begun, and how many whole weeks ago.
    pub since: Wall,
    pub weeks: i64,
    pub place: Option<String>,
    pub dampness: Option<Dampness>,
    pub on_rack: Count,
    /// Pieces on the rack that nobody has set apart.
    pub free: Count,
    /// Beside them pieces that the book has there, and that are on boards that are not cut yet.
    pub uncut: Count,
    /// Set apart for jobs, and in jobs.
    pub apart: Vec<ForJob>,
    pub used: Vec<ForJob>,
    /// Good pieces gone for no job, by where they went.
    pub gone: Sorted<Key, Count>,
    /// What the rack's counts found more than the book says, or missing where it is below nothing.
    pub drift: i64,
    /// What lies on the rack, as measured rough; none without a size.
    pub volume: Option<Volume>,
    /// When the rack was last counted here, and when anything of it was last in a hand.
    pub walked: Option<Wall>,
    pub touched: Wall,
    /// Nobody looked at it for [`LOOK_AGAIN_WEEKS`].
    pub is_stale: bool,
}

/// The haul a pile lies in.
#[derive(Clone, Debug, PartialEq)]
pub struct OfHaul {
    pub id: Id,
    pub began: Wall,
    pub units: Units,
    pub currency: Currency,
    pub supplier: Option<Id>,
    /// Bought boards, not offcuts.
    pub bought: bool,
    /// It is not home yet.
    pub on_its_way: bool,
    /// What it cost for a board foot or a litre that was good; none while a size or a price is missing.
    pub cost_per_good: Option<Decimal>,
}

/// Pieces of a pile that a job has, or may take.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ForJob {
    pub job: Id,
    /// Empty where the job was taken back.
    pub name: String,
    pub n: Count,
}

impl StockPile {
    /// The same where so many of its pieces are on boards that are not cut yet: those that are set apart lie there first.
    pub fn lying(self, uncut: Count) -> StockPile {
        let uncut = uncut.min(self.on_rack);
        let (on_rack, free) = (self.on_rack.saturating_sub(uncut), self.free.saturating_sub(uncut));
        let lies = |volume: Volume| volume.over(self.on_rack).and_then(|piece| piece.times(on_rack)).ok();
        let volume = if uncut == 0 { self.volume } else { self.volume.and_then(lies) };
        StockPile { on_rack, free, volume, uncut, ..self }
    }
}

/// Every pile with something on the rack, the oldest haul first.
///
/// # Errors
/// [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn stock(shop: &Shop) -> Answer<Vec<StockPile>> {
    let mut hauls: Vec<Haul> = fold::hauls(shop.book).filter(|haul| haul.piles.iter().any(|pile| 0 < pile.on_rack())).listed();
    order_by_key(&mut hauls, |haul| (haul.began.at, haul.id));
    let mut found = vec![];
    for haul in &hauls {
        let of = of_haul(shop, haul)?;
        for pile in haul.piles.iter().filter(|pile| 0 < pile.on_rack()) {
            found.push(one(shop, &of, pile)?);
        }
    }
    Ok(found)
}

/// One pile, whether anything of it lies on the rack or not.
///
/// # Errors
/// [`Refusal::NotThere`], [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn pile(shop: &Shop, at: Lying) -> Answer<StockPile> {
    let haul = fold::haul(shop.book, at.haul).ok_or(Refusal::NotThere)?;
    let of = of_haul(shop, &haul)?;
    one(shop, &of, haul.pile(at.pile).ok_or(Refusal::NotThere)?)
}

/// The way round the rack: place by place, the place with the longest forgotten pile first, and so the piles of each. Piles of no place
/// lie together.
pub fn round(piles: &[StockPile]) -> Vec<Lying> {
    let mut first: Sorted<&Option<String>, Moment> = Sorted::new();
    for pile in piles {
        let since = first.entry(&pile.place).or_insert(pile.touched.at);
        *since = pile.touched.at.min(*since);
    }
    let mut round: Vec<&StockPile> = piles.iter().listed();
    order_by_key(&mut round, |pile| (first.get(&pile.place).copied(), pile.place.clone(), pile.touched.at));
    round.into_iter().map(|pile| pile.at).listed()
}

/// What a count of the rack would say of a pile: so many by the counts, so many found; missing, or more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Drift {
    pub told: Count,
    pub found: Count,
    pub missing: Count,
    pub more: Count,
}

impl Deref for StockPile {
    type Target = Alike;
    fn deref(&self) -> &Alike {
        &self.alike
    }
}

impl StockPile {
    /// Pieces of it that are set apart, for all jobs together.
    pub fn apart_in_all(&self) -> Count {
        self.apart.iter().fold(0, |sum: Count, it| sum.saturating_add(it.n))
    }

    /// Pieces that stay set apart where `found` are found, if those are fewer than are set apart now: no piece is kept that is not there.
    pub fn apart_after(&self, found: Count) -> Option<Count> {
        (found < self.apart_in_all()).then_some(found)
    }

    /// What it would mean to find `found` pieces of it.
    pub fn drift_of(&self, found: Count) -> Drift {
        Drift { told: self.on_rack, found, missing: self.on_rack.saturating_sub(found), more: found.saturating_sub(self.on_rack) }
    }
}

fn of_haul(shop: &Shop, haul: &Haul) -> Answer<OfHaul> {
    let cost_per_good = known_cost(shop, haul)?.and_then(|cost| cost.cost.amount().checked_div(measure(haul.units, cost.good)));
    let on_its_way = on_its_way(shop.book, haul, shop.now);
    let (id, began, units, currency) = (haul.id, haul.began, haul.units, haul.currency);
    Ok(OfHaul { id, began, units, currency, supplier: haul.supplier, bought: haul.bought, on_its_way, cost_per_good })
}

fn one(shop: &Shop, of: &OfHaul, pile: &Pile) -> Answer<StockPile> {
    let since = pile.since.unwrap_or(of.began);
    let touched = fold::last_touched(shop.book, of.id, pile.id).unwrap_or(since);
    let on_rack = pile.on_rack();
    let apart = for_jobs(shop, pile.apart().into_iter());
    Ok(StockPile {
        at: Lying { haul: of.id, pile: pile.id },
        alike: pile.into(),
        haul: of.clone(),
        since,
        weeks: whole_weeks(since, shop),
        place: pile.stock.place.clone(),
        dampness: pile.dampness,
        on_rack,
        uncut: 0,
        free: pile.free_for(None),
        apart,
        used: for_jobs(shop, pile.in_jobs.iter().map(|(job, n)| (*job, *n))),
        gone: pile.stock.gone.clone(),
        drift: pile.stock.drift,
        volume: pile.piece()?.map(|piece| piece.times(on_rack)).transpose()?,
        walked: pile.stock.walked,
        touched,
        is_stale: 0 < on_rack && Span::WEEK.times(LOOK_AGAIN_WEEKS) <= touched.at.until(shop.now),
    })
}

pub(super) fn for_jobs(shop: &Shop, jobs: impl Iterator<Item = (Id, Count)>) -> Vec<ForJob> {
    let named = |job| fold::job(shop.book, job).map(|job| job.name).unwrap_or_default();
    jobs.filter(|(_, n)| 0 < *n).map(|(job, n)| ForJob { job, name: named(job), n }).listed()
}

/// By the days of the place where it was begun.
fn whole_weeks(since: Wall, shop: &Shop) -> i64 {
    let today = Wall::new(shop.now, since.offset).day();
    i64::from(since.day().until(today).max(0)) / 7
}

#[cfg(test)]
mod tests;
