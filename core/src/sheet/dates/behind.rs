//! A job behind all others that go on: what comes before it, when it is ready then, and whether the day it was promised for is missed by that.

use super::super::estimate::counted::beside;
use super::super::estimate::{Row, rows_of};
use super::super::shop::Shop;
use super::{Given, is_before};
use crate::bench::dates::{Ready, Step, Workdays};
use crate::bench::estimate::spread::{self, Begun, Moments};
use crate::ledger::fold::Job;
use crate::quantity::{Day, Id, Listed, Span};

/// A day that can't be kept, nine times in ten.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Missed {
    /// The first day it can be promised for.
    pub first: Day,
    /// It is likely missed, too.
    pub is_likely: bool,
    /// It would be kept without the other jobs that come first, or likely so.
    pub is_behind: bool,
}

impl Missed {
    /// Of what is ready so behind the others, and so by itself, likely and safely; nothing where nothing is to do.
    pub(super) fn of((due, is_to_do): (Day, bool), [behind, alone]: [[Option<Ready>; 2]; 2], workdays: &Workdays) -> Option<Missed> {
        let missed = |ready: [Option<Ready>; 2]| ready.map(|ready| ready.is_some_and(|ready| !ready.is_by(due)));
        let [is_likely, is_missed] = missed(behind);
        let [_, safe] = behind;
        let first = workdays.promised(safe.filter(|_| is_to_do && is_missed)?);
        Some(Missed { first, is_likely, is_behind: missed(alone) != missed(behind) })
    }
}

/// A job after all others.
pub(super) struct After {
    /// Hands on the others, and as many of them as come first to be safe.
    pub others: Span,
    pub first: Span,
    /// Likely, and to be safe.
    pub ready: [Option<Ready>; 2],
}

/// Hands that are still on jobs that go on.
pub(super) struct Others(Vec<Hands>);

/// Hands that are still on a job: likely, as a mean with its variance, and the most of it nine times in ten.
struct Hands {
    job: Id,
    likely: Span,
    left: Moments,
    safely: f64,
}

impl Others {
    /// Of each job that goes on, leaving one out.
    pub fn of(shop: &Shop, but: Option<Id>, given: Given) -> Others {
        let history = shop.history();
        let open = shop.jobs().iter().filter(|job| Some(job.id) != but && job.ended.is_none() && 0 < job.left());
        Others(open.map(|job| hands_of(shop, job, &rows_of(shop, (job, history), given.with_factor))).listed())
    }

    /// Hours of other jobs are off each for itself, and those of one job together: what all of it takes nine times in ten is less than what each
    /// job does (ours). It is never less than the others likely take and this one does safely.
    pub fn first(&self, shop: &Shop, (id, worked): (Id, Span), (steps, wider): (&[Step], Option<&[Step]>), given: Given) -> After {
        let workdays = shop.workshop.hours.workdays();
        let after = |others: Span, steps: &[Step]| workdays.ready_behind((others, worked), given.now, steps);
        let jobs = || self.0.iter().filter(|job| job.job != id);
        let others = Span::sum(jobs().map(|job| job.likely));
        let first = wider.map_or(others, |wider| {
            let [likely, own] = [steps, wider].map(|steps| Span::sum(steps.iter().map(|step| step.hands)));
            let own_left = Moments::between(spread::minutes(likely), spread::minutes(own));
            let each = jobs().map(|job| job.left).chain([own_left]).listed();
            let safely: f64 = jobs().map(|job| job.safely).sum();
            let all = spread::whole(spread::sum(&each).at(0.9).min(safely + spread::minutes(own)));
            all.minus(own).max(others)
        });
        let first = if Span::ZERO < others { first } else { Span::ZERO };
        After { others, first, ready: [after(others, steps), wider.and_then(|wider| after(first, wider))] }
    }
}

fn hands_of(shop: &Shop, job: &Job, rows: &[Row]) -> Hands {
    let beside = beside(shop, job, rows).into_iter().filter(|one| is_before(one.kind));
    let beside = beside.map(|one| (one.to_come(), Some(Begun { time: one.time, gone: 0.0 })));
    let of_rows = rows.iter().filter(|row| is_before(row.kind)).map(|row| (row.to_come(), row.begun()));
    let (likely, left): (Vec<Span>, Vec<Option<Begun>>) = beside.chain(of_rows).unzip();
    let left = left.into_iter().flatten().listed();
    let safely = left.iter().map(|left| left.at(0.9)).sum();
    Hands { job: job.id, likely: Span::sum(likely), left: Moments::left(&left), safely }
}
