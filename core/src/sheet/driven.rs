//! What was driven to bring pieces to their buyers, and which pieces bear it.

use super::helped::{HELPER, earned_by_run};
use super::offer::part_of_time;
use super::shop::Shop;
use crate::bench::{Kind, On, Run};
use crate::ledger::fold::{Job, PlannedCost, exact_part};
use crate::quantity::{Count, Decimal, Key, Moment, Money, Sorted, Span};
use crate::refusal::{Answer, Refusal};

/// What was booked for deliveries, by kind: what was said to be for one, and where nobody said, what is of a kind that is planned for a delivery,
/// since it first was; what came back of it less. Helpers' pay is where a delivery was planned with them all since, else that of its hours.
/// Of each sum so much as `of` says, exactly: it is booked once, where it is shown or goes into a price.
pub(super) fn driven(shop: &Shop, job: &Job, of: impl Fn(Moment, Money) -> Answer<Decimal>) -> Answer<Decimal> {
    let mut by_kind = Sorted::new();
    for (nth, line) in job.booked.iter().enumerate() {
        let is_planned = || planned_delivery(job, line.kind.as_ref()).is_some_and(|cost| cost.first.1 <= nth);
        if line.delivery.unwrap_or_else(is_planned) {
            more(&mut by_kind, line.kind.clone(), of(line.at.at, line.sum)?)?;
        }
    }
    let helper = Key::read(HELPER);
    let since = planned_delivery(job, helper.as_ref()).map(|cost| cost.first.0);
    let is_along = |run: &Run| since.map_or(run.work.kind == Kind::Deliver, |since| since <= run.started.at);
    for (at, pay) in earned_by_run(shop, (On::Job(job.id), &is_along), job.currency)? {
        more(&mut by_kind, helper.clone(), of(at, pay)?)?;
    }
    by_kind.into_values().filter(|sum| Decimal::ZERO < *sum).try_fold(Decimal::ZERO, plus)
}

fn more(by_kind: &mut Sorted<Key, Decimal>, kind: Option<Key>, sum: Decimal) -> Answer<()> {
    let Some(kind) = kind else { return Ok(()) };
    let so_far = by_kind.entry(kind).or_insert(Decimal::ZERO);
    *so_far = plus(*so_far, sum)?;
    Ok(())
}

fn plus(one: Decimal, other: Decimal) -> Answer<Decimal> {
    one.checked_add(other).ok_or(Refusal::OutOfRange)
}

fn planned_delivery<'a>(job: &'a Job, kind: Option<&Key>) -> Option<&'a PlannedCost> {
    job.planned_costs.iter().find(|cost| cost.delivery && Some(&cost.kind) == kind)
}

/// What was driven when so many were on hand is theirs, and stays theirs: each bears its part, whoever fetches one later.
fn bearers(job: &Job, at: Moment) -> Count {
    job.pieces.saturating_sub(job.selling.gone_by(at)).max(job.left()).max(1)
}

/// What a sum that was driven at a moment would be if all of the batch bore as much as each piece that was on hand then.
pub(super) fn bears(job: &Job, at: Moment, sum: Money) -> Answer<Decimal> {
    if job.left() == 0 { Ok(sum.amount()) } else { exact_part(sum.amount(), job.pieces, bearers(job, at)) }
}

/// The same of the hours of deliveries that stand: those to settle are borne by none, while the job goes on.
pub(super) fn time_bears(shop: &Shop, job: &Job) -> Answer<Span> {
    let stands = |run: &&Run| job.ended.is_some() || !shop.bench.is_doubtful(run, shop.now);
    let runs = shop.bench.on(On::Job(job.id)).filter(|run| run.work.kind == Kind::Deliver).filter(stands);
    let bears = |run: &Run| {
        let worked = run.worked(shop.now);
        if job.left() == 0 { Ok(worked) } else { part_of_time(worked, job.pieces, bearers(job, run.started.at)) }
    };
    Ok(Span::sum(runs.map(bears).collect::<Answer<Vec<Span>>>()?))
}
