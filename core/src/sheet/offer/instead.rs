//! What can be said to a buyer in place of a better price, by what it leaves for an hour.

use super::{Asking, Leaves, leaves, part_of_time};
use crate::bench::{Kind, On, Stage};
use crate::ledger::fold::Job;
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::left::{Way, ranked};
use crate::money::price::{Work, proposed};
use crate::quantity::{Count, Decimal, Listed, Money, Set, Span};
use crate::refusal::Answer;
use crate::sheet::account::Account;
use crate::sheet::estimate::left::batch_of;
use crate::sheet::rate::rate;
use crate::sheet::shop::Shop;

/// What to ask for before a better price, or to offer in its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// Pay in notes: no fee.
    Notes,
    /// Fetch it: no drive, no helper, no minutes of delivery.
    Fetch,
    /// One piece more than is asked about, so many together, for where so many are settled.
    Together(Count),
    /// One more is made, at the pace of those that were made and at your rate.
    OneMore,
    /// Have it later, where it is still to be made: it leaves the same, and time.
    Later,
}

/// One such way, what is handed over that way, and how much more it leaves than the offer as it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Concession {
    pub ask: Ask,
    /// For all where more are taken; for the one more alone.
    pub sum: Money,
    pub more: Money,
    pub leaves: Leaves,
}

/// What leaves more than the offer as it stands, by what it leaves for an hour; and a later date.
pub(super) fn concessions(shop: &Shop, of: (&Job, &Account), offer: Money, asking: Asking) -> Answer<Vec<Concession>> {
    let Some(as_is) = leaves(shop, of, offer, asking)? else { return Ok(vec![]) };
    let ways = [(Ask::Notes, Asking { paid: Paid::Notes, ..asking }), (Ask::Fetch, Asking { carried: Carried::Fetched, ..asking })];
    let mut found = vec![];
    for (ask, way) in ways {
        let Some(leaves) = leaves(shop, of, offer, way)? else { continue };
        let more = leaves.way.leaves_more(&as_is.way)?;
        found.push(Concession { ask, sum: offer, more, leaves });
    }
    found.extend(together(shop, of, asking, &as_is)?);
    found.extend(one_more(shop, of, asking.paid)?);
    found.retain(|concession| Decimal::ZERO < concession.more.amount());
    if is_to_make(of.1) {
        found.push(Concession { ask: Ask::Later, sum: offer, more: Money::zero(offer.currency()), leaves: as_is });
    }
    let order = ranked(&found.iter().map(|concession| concession.leaves.way).listed())?;
    Ok(order.into_iter().filter_map(|place| found.get(place).copied()).listed())
}

/// Something is still to be made of it.
fn is_to_make(account: &Account) -> bool {
    [Stage::Make, Stage::Finish].iter().any(|stage| account.hours.still_by_stage.get(stage).is_some_and(|span| Span::ZERO < *span))
}

/// One more than is asked about, of those that are free, for the sum where so many are settled and no less than waiting is worth, if that leaves
/// more for an hour.
fn together(shop: &Shop, of: (&Job, &Account), asking: Asking, as_is: &Leaves) -> Answer<Option<Concession>> {
    let (job, account) = of;
    let n = asking.n.saturating_add(1);
    if job.free() < n {
        return Ok(None);
    }
    let more = Asking { n, ..asking };
    let (standing, _) = account.pricing.standing(shop, job, more)?;
    let Some(sum) = standing.together(shop.points(job.currency))? else { return Ok(None) };
    let Some(leaves) = leaves(shop, of, sum, more)?.filter(|leaves| as_is.per_hour.left < leaves.per_hour.left) else { return Ok(None) };
    Ok(Some(Concession { ask: Ask::Together(n), sum, more: leaves.way.leaves_more(&as_is.way)?, leaves }))
}

/// The price of one more and what that leaves: its part of all costs, its hours at the pace of the batch, at your rate. None before all are
/// made and some of the work was counted by the piece.
fn one_more(shop: &Shop, (job, account): (&Job, &Account), paid: Paid) -> Answer<Option<Concession>> {
    // It goes along with the others: no drive of its own.
    let costs = account.pricing.work_of(job, (1, Carried::Fetched))?.costs_of(1)?;
    let known = costs.zip(account.pricing.hourly.your_rate).filter(|_| 1 < job.pieces && !account.pricing.at_least);
    let (Some((costs, your_rate)), Some(time)) = (known, hours_of_one_more(shop, job, account)?) else { return Ok(None) };
    let one = Work { costs: Some(costs), driven: Decimal::ZERO, time: Some(time), pieces: 1 };
    let Some(need) = one.need(your_rate, 1)? else { return Ok(None) };
    let Ok(price) = proposed(need, shop.terms_of(job, paid), shop.points(job.currency), job.currency) else { return Ok(None) };
    let way = Way { you_get: price.you_get, costs, time };
    let leaves = Leaves { way, left: way.left()?, per_hour: way.per_hour(rate(shop, job.currency).year.as_ref())? };
    Ok(Some(Concession { ask: Ask::OneMore, sum: price.charge, more: leaves.left, leaves }))
}

/// What one more takes: each operation of making at its pace, or where no piece of it was noted at its part, with its part of fetching and
/// sorting. Work done again is left out; so is selling, since the buyer stands there.
fn hours_of_one_more(shop: &Shop, job: &Job, account: &Account) -> Answer<Option<Span>> {
    if is_to_make(account) {
        return Ok(None);
    }
    let made = shop.bench.on(On::Job(job.id)).filter(|run| run.work.kind == Kind::Make && !run.work.rework).listed();
    let operations: Set<&str> = made.iter().map(|run| run.work.op.as_str()).collect();
    let paces = operations.iter().map(|op| (*op, batch_of(&shop.bench, (job, op), shop.now).each())).listed();
    if paces.iter().all(|(_, pace)| pace.is_none()) {
        return Ok(None);
    }
    let mut time = part_of_time(account.hours.haul.unwrap_or(Span::ZERO), 1, job.pieces)?;
    for (op, pace) in paces {
        let worked = || Span::sum(made.iter().filter(|run| run.work.op == op).map(|run| run.worked(shop.now)));
        time = time.plus(pace.map_or_else(|| part_of_time(worked(), 1, job.pieces), Ok)?);
    }
    Ok(Some(time).filter(|time| Span::ZERO < *time))
}
