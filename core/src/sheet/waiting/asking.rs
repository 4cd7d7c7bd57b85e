//! The asking price: what is best to ask, to the nearest price point, a step at most each week, never above the tag and never raised
//! while as many are left.

use super::known::{Known, Rests};
use crate::money::point::{Points, Rounding};
use crate::quantity::{Day, Money, Wall, exact};
use crate::refusal::{Answer, Refusal};
use crate::sale::chances::{Chances, chances};
use crate::sale::demand::Demand;
use crate::sale::waiting::{Lot, about};

/// From a day on so much is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    pub from: Day,
    pub ask: Money,
}

const WEEK: i32 = 7;
/// So many steps back at most: beyond that nothing is remembered (ours).
const BACK: i32 = 16;

/// What to ask now: the steps since as many are left, each by what was known then.
pub fn asking(rests: &Rests) -> Answer<Money> {
    let gone = rests.since.day().until(rests.now).max(0).div_euclid(WEEK);
    let (first, mut asked) = (gone.saturating_sub(BACK).max(0), rests.tag);
    for nth in first..=gone {
        let from = rests.since.day().plus(nth.saturating_mul(WEEK));
        let until = if nth == 0 { rests.since } else { Wall::new(from.start(rests.since.offset), rests.since.offset) };
        let wished = wished(rests, &rests.belief(until)?.likely(), from)?;
        asked = Some(lower(asked, wished));
    }
    asked.ok_or(Refusal::OutOfRange)
}

/// The price to ask from now on, each week, by what is known now.
///
/// # Errors
/// Those of [`crate::sale::waiting::waiting`].
pub fn ahead(known: &Known) -> Answer<Vec<Step>> {
    let (rests, worth) = (&known.rests, known.worth.as_ref().map_err(Clone::clone)?);
    let gone = rests.since.day().until(rests.now).max(0).div_euclid(WEEK);
    let mut steps = vec![Step { from: rests.now, ask: worth.ask }];
    for nth in gone.saturating_add(1).. {
        let from = rests.since.day().plus(nth.saturating_mul(WEEK));
        if until(rests) <= from {
            break;
        }
        let ask = lower(steps.last().map(|step| step.ask), wished(rests, &worth.demand, from)?);
        steps.push(Step { from, ask });
    }
    Ok(steps)
}

/// The last day that is looked at.
pub fn until(rests: &Rests) -> Day {
    rests.now.plus(i32::from(rests.days(rests.now)))
}

/// The chances of what is sold under these steps.
pub fn sold(known: &Known, demand: &Demand, steps: &[Step]) -> Chances {
    let ends = steps.iter().skip(1).map(|step| step.from).chain([until(&known.rests)]);
    let asked: Vec<(f64, u16)> = steps
        .iter()
        .zip(ends)
        .filter_map(|(step, end)| Some((exact::to_float(step.ask.amount())?, u16::try_from(step.from.until(end)).ok()?)))
        .collect();
    chances(demand, known.rests.pieces, &asked)
}

fn lower(before: Option<Money>, wished: Money) -> Money {
    before.filter(|before| before.amount() <= wished.amount()).unwrap_or(wished)
}

/// What to ask on a day: what would be best, and no less than pays the lowest pay.
fn wished(rests: &Rests, demand: &Demand, on: Day) -> Answer<Money> {
    let best = best(rests, demand, on)?;
    Ok(rests.lowest.filter(|lowest| best.amount() < lowest.amount()).unwrap_or(best))
}

/// Where a step stays at what pays the lowest pay, though less would be best to ask: that sum.
///
/// # Errors
/// Those of [`crate::sale::waiting::waiting`].
pub fn held(known: &Known, steps: &[Step]) -> Answer<Option<Money>> {
    let (rests, worth) = (&known.rests, known.worth.as_ref().map_err(Clone::clone)?);
    let Some(lowest) = rests.lowest else { return Ok(None) };
    for step in steps.iter().filter(|step| step.ask == lowest) {
        if best(rests, &worth.demand, step.from)?.amount() < lowest.amount() {
            return Ok(Some(lowest));
        }
    }
    Ok(None)
}

/// What would be best to ask on a day, whatever the lowest pay needs, to the nearest price point; up to one where the nearest lies under what one is worth.
fn best(rests: &Rests, demand: &Demand, on: Day) -> Answer<Money> {
    let waits = about(demand, &Lot { least: None, ..rests.lot(on) }, rests.take)?;
    let currency = rests.end.currency();
    let amount = |sum: f64| exact::of_float(sum).ok_or(Refusal::MoneyOutOfRange { currency });
    let (best, under) = (amount(waits.best_ask())?, amount(waits.under(1)?)?);
    let point = |points: Points, way| points.round(best, way, currency);
    let nearest = point(rests.points, Rounding::Nearest)?;
    if nearest.amount() < under { point(rests.points, Rounding::Up) } else { Ok(nearest) }
}
