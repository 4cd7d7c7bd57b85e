//! What was driven to bring pieces to their buyers, and which pieces bear it.

use super::helped::{HELPER, earned_by_run};
use super::offer::part_of_time;
use super::shop::Shop;
use crate::bench::{Kind, On, Run};
use crate::ledger::fold::{Agreement, AgreementState, Booked, Job, PlannedCost, Selling, exact_part};
use crate::ledger::kind::sale::Carried;
use crate::quantity::{Count, Decimal, Key, Moment, Money, Sorted, Span};
use crate::refusal::{Answer, Refusal};
use std::borrow::Cow;

/// What was booked for deliveries, by kind: what was said to be for one, and where nobody said, what is of a kind that is planned for a delivery,
/// since it first was; what came back of it less. Helpers' pay is where a delivery was planned with them all since, else that of its hours.
/// Of each sum so much as `of` says, exactly: it is booked once, where it is shown or goes into a price.
pub(super) fn driven(shop: &Shop, job: &Job, of: impl Fn(Moment, Money) -> Answer<Decimal>) -> Answer<Decimal> {
    let mut by_kind = Sorted::new();
    for (nth, line) in job.booked.iter().enumerate() {
        let is_planned = || planned_delivery(job, line.kind.as_ref()).is_some_and(|cost| cost.first.1 <= nth);
        if line.delivery.unwrap_or_else(is_planned) {
            more(&mut by_kind, line.kind.clone(), of(driven_at(job, line), line.sum)?)?;
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

/// When it was driven: what came back of a line, as that line.
fn driven_at(job: &Job, line: &Booked) -> Moment {
    let first = line.back.and_then(|back| job.booked.iter().find(|first| first.entry == back));
    first.unwrap_or(line).at.at
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

/// Who hands a piece over and writes the drive down at home drove for that piece: so long after it went [J].
const AT_HOME: Span = Span::minutes(12 * 60);

/// How often the batch would bear what was driven at a moment, if all of it bore as much as each piece that is on hand: so many times, of so many.
/// What was driven before pieces went that nobody fetched, or was written down on the evening of that day, was for these, and those on hand bear none of it.
/// What was driven when so many were on hand is theirs, and stays theirs: each bears its part, whoever fetches one later. What was driven for an
/// agreement that stands is not of those for sale beside it; once all that are left are promised it is of them.
fn share(job: &Job, at: Moment) -> (Count, Count) {
    match (is_for_promised(job, at), job.free()) {
        (true, 0) => (job.pieces, job.left()),
        (true, _) => (0, 1),
        (false, _) if job.selling.is_any_brought_since(at.minus(AT_HOME)) => (0, 1),
        (false, _) => (job.pieces, bearers(job, came_to_all(job, at))),
    }
}

fn bearers(job: &Job, at: Moment) -> Count {
    job.pieces.saturating_sub(job.selling.gone_by(at)).max(job.left()).max(1)
}

/// Whether what was driven at a moment is for pieces that are agreed and to be brought.
fn is_for_promised(job: &Job, at: Moment) -> bool {
    job.selling.open().filter_map(|agreement| to_bring_since(&job.selling, agreement)).any(|since| since <= at)
}

/// Whether any of what was driven is for those.
pub(super) fn is_any_for_promised(shop: &Shop, job: &Job) -> Answer<bool> {
    let costs = driven(shop, job, |at, sum| Ok(if is_for_promised(job, at) { sum.amount() } else { Decimal::ZERO }))?;
    let mut runs = shop.bench.on(On::Job(job.id)).filter(|run| run.work.kind == Kind::Deliver);
    Ok(!costs.is_zero() || runs.any(|run| is_for_promised(job, run.started.at)))
}

/// Since when it is agreed that its pieces are brought, under whatever order it was so before. None where they are fetched, or nobody said.
fn to_bring_since(selling: &Selling, agreement: &Agreement) -> Option<Moment> {
    let before = |it: &&Agreement| it.replaces.and_then(|old| selling.agreement(old));
    let orders = std::iter::successors(Some(agreement), before).take(selling.agreements.len());
    orders.take_while(|it| it.carried == Some(Carried::Delivered)).last().map(|it| it.at)
}

/// When it came to those that are on hand: as it was driven, or where it was driven for an agreement when that came to nothing, or to be fetched.
fn came_to_all(job: &Job, at: Moment) -> Moment {
    let ends = job.selling.agreements.iter().filter(|it| to_bring_since(&job.selling, it).is_some_and(|since| since <= at));
    ends.filter_map(|it| ended(&job.selling, it)).fold(at, Moment::max)
}

/// When it was no longer to be brought.
fn ended(selling: &Selling, agreement: &Agreement) -> Option<Moment> {
    match agreement.state {
        AgreementState::Cancelled { at, .. } => Some(at.at),
        AgreementState::Replaced => {
            let next = selling.agreements.iter().find(|it| it.replaces == Some(agreement.id));
            next.filter(|next| next.carried != Some(Carried::Delivered)).map(|next| next.at)
        }
        AgreementState::Open | AgreementState::Done => None,
    }
}

/// What a sum that was driven at a moment would be if all of the batch bore as much as each piece that was on hand then.
pub(super) fn bears(job: &Job, at: Moment, sum: Money) -> Answer<Decimal> {
    let (n, of) = share(job, at);
    if job.left() == 0 { Ok(sum.amount()) } else { exact_part(sum.amount(), n, of) }
}

/// The same of the hours of deliveries that stand: those to settle are borne by none, while the job goes on.
pub(super) fn time_bears(shop: &Shop, job: &Job) -> Answer<Span> {
    let runs = shop.of_job(job, shop.bench.on(On::Job(job.id)).filter(|run| run.work.kind == Kind::Deliver));
    let bears = |run: Cow<Run>| {
        let (worked, (n, of)) = (run.worked(shop.now), share(job, run.started.at));
        if job.left() == 0 { Ok(worked) } else { part_of_time(worked, n, of) }
    };
    Ok(Span::sum(runs.map(bears).collect::<Answer<Vec<Span>>>()?))
}
