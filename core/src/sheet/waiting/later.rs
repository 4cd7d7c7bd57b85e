//! What waiting may bring instead of a sum that is offered now: the next sale in the mean, and the chance that there is none.

use super::asking::{ahead, sold};
use super::known::{is_over, known};
use crate::ledger::fold::Job;
use crate::quantity::{Count, Currency, Money, exact, half_up};
use crate::refusal::{Answer, Refusal};
use crate::sale::chances::Chances;
use crate::sheet::Shop;

/// The next sale, if nothing is sold now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Later {
    /// What its buyer hands over in the mean, to the nearest whole unit.
    pub sum: Money,
    /// The chance that there is none until the day by which it is to be sold.
    pub none: f64,
}

/// It, for a job as it is asked about: by what will be asked week by week; none where nothing was guessed, nobody may buy, or the
/// end brings more than is asked.
///
/// # Errors
/// [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`].
pub fn later(shop: &Shop, job: &Job) -> Answer<Option<Later>> {
    let Some(known) = known(shop, job)? else { return Ok(None) };
    let Ok(worth) = &known.worth else { return Ok(None) };
    if is_over(known.rests.end_for((1, worth.ask), known.rests.take)?, worth.ask) {
        return Ok(None);
    }
    let chances = sold(&known, &worth.demand, &ahead(&known)?);
    let Some(sum) = whole(&chances, worth.ask.currency())? else { return Ok(None) };
    Ok(Some(Later { sum, none: chances.none }))
}

/// What one that is kept is worth where so many of those that are free go now, as you get it: what it adds to those that stay beside it, and no
/// more than the last alone. None where nothing was guessed, none would be left to keep, or the end brings more than is asked.
///
/// # Errors
/// [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`].
pub fn kept(shop: &Shop, job: &Job, gone: Count) -> Answer<Option<Money>> {
    let left = job.free().saturating_sub(gone);
    let Some(known) = known(shop, job)?.filter(|_| 0 < left) else { return Ok(None) };
    let Ok(worth) = &known.worth else { return Ok(None) };
    if is_over(known.rests.end_for((1, worth.ask), known.rests.take)?, worth.ask) {
        return Ok(None);
    }
    worth.waits.booked(worth.waits.last_of(left).min(worth.one.value())).map(Some)
}

/// The next sale in the mean, to the nearest whole unit.
pub(super) fn whole(chances: &Chances, currency: Currency) -> Answer<Option<Money>> {
    let whole = |sum| exact::of_float(sum).and_then(|sum| Money::whole(half_up(sum, 0), currency));
    chances.next.map(|next| whole(next).ok_or(Refusal::MoneyOutOfRange { currency })).transpose()
}
