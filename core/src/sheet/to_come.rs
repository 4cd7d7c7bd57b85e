//! Hours still to come of a job, one figure for every price: by its plan, and where that says nothing, by its estimate.

use super::estimate::{Row, rows_of};
use super::shop::Shop;
use crate::ledger::fold::Job;
use crate::ledger::kind::bench::{Kind, Stage};
use crate::quantity::{Listed, Sorted, Span};

/// What the plan says is still to come of an operation, with its kind; none where it says nothing.
pub type Planned = Option<(Kind, Span)>;

/// All hours still to come, and of those the delivery's. None while nobody knows: nothing is planned, no estimate was given, and nothing says
/// what such a piece takes.
///
/// `planned` is what its plan says of each operation. An operation of which it says nothing is by the estimate, as is what such a piece takes
/// beyond the plan. Of a job without a plan nothing is to come once it was finished, or some of it is gone.
pub fn to_come(shop: &Shop, job: &Job, (planned, by_stage): (&[Planned], &Sorted<Stage, Span>)) -> Option<(Span, Span)> {
    if job.ended.is_some() {
        return Some((Span::ZERO, Span::ZERO));
    }
    if planned.is_empty() {
        return without_plan(shop, job, by_stage).map(|span| (span, Span::ZERO));
    }
    let all = by_plan(shop, job, planned);
    let delivery = all.iter().filter(|(kind, _)| *kind == Kind::Deliver).map(|(_, span)| *span);
    Some((Span::sum(all.iter().map(|(_, span)| *span)), Span::sum(delivery)))
}

fn by_plan(shop: &Shop, job: &Job, planned: &[Planned]) -> Vec<(Kind, Span)> {
    let is_such = !job.whole_planned && (job.design.is_some() || job.described.piece.is_some());
    let is_asked = 0 < job.left() && (is_such || planned.contains(&None));
    let rows = if is_asked { rows(shop, job) } else { vec![] };
    if rows.is_empty() {
        return planned.iter().copied().flatten().listed();
    }
    // Rows are in the order of the plan; its rest comes last.
    let of = |(nth, row): (usize, &Row)| planned.get(nth).copied().flatten().unwrap_or((row.kind, row.to_come()));
    rows.iter().enumerate().map(of).listed()
}

fn rows(shop: &Shop, job: &Job) -> Vec<Row> {
    rows_of(shop, (job, shop.history()), true)
}

fn without_plan(shop: &Shop, job: &Job, by_stage: &Sorted<Stage, Span>) -> Option<Span> {
    if 0 < job.selling.gone() || by_stage.contains_key(&Stage::Finish) {
        return Some(Span::ZERO);
    }
    let given = job.kept.map(|kept| kept.likely.minus(shop.time(job.id).own.total()).max(Span::ZERO));
    let by_others = || Some(rows(shop, job)).filter(|rows| !rows.is_empty()).map(|rows| Span::sum(rows.iter().map(Row::to_come)));
    given.or_else(by_others)
}
