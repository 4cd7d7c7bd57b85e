//! Hours still to come of a job, one figure for every price and page: each operation by its estimate, as the job's own page has it.

use super::estimate::counted::{Counted, beside, counted};
use super::estimate::history::By;
use super::estimate::left::{is_made_whole, unnoted};
use super::estimate::parts::whole_piece;
use super::estimate::{Row, rows_of};
use super::shop::Shop;
use crate::bench::Time;
use crate::ledger::fold::Job;
use crate::ledger::kind::bench::{Kind, Stage};
use crate::quantity::{Count, Listed, Span};

/// What is still to come of an operation, or of what such a piece takes beyond its plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StillToCome {
    pub kind: Kind,
    /// None of what is not planned.
    pub stage: Option<Stage>,
    pub span: Span,
    /// Of a whole piece or of what its plan leaves out, where nothing nearer is known: it is as long as so many earlier pieces took of the kind its name tells or of which no kind was said, or, of none, as the
    /// default of its kind.
    pub by_any: Option<Count>,
    /// The operation that counts as done by its hours alone: none of its pieces is noted.
    pub unnoted: Option<String>,
}

/// All that is still to come. None while nobody knows: nothing is planned, no estimate was given, and nothing says what such a piece takes.
///
/// Of a job without a plan that is made nothing is to come but counted pieces that are left.
pub fn to_come(shop: &Shop, job: &Job, logged: &Time) -> Option<Vec<StillToCome>> {
    if job.ended.is_some() {
        return Some(vec![]);
    }
    if job.operations.is_empty() {
        return without_plan(shop, job, logged).map(|one| vec![one]);
    }
    let rows = rows(shop, job);
    let beside = beside(shop, job, &rows).into_iter();
    let beside = beside.map(|one| StillToCome { kind: one.kind, stage: Some(one.stage), span: one.to_come(), by_any: None, unnoted: None });
    // Rows are in the order of the plan; its rest comes last.
    let stages = job.operations.iter().map(|operation| Some(operation.stage)).chain([None]);
    // What the plan leaves out is by the default of such pieces where no earlier one speaks.
    let by_any = rows.iter().any(|row| row.is_rest).then(|| by_any(shop, job)).flatten();
    let unnoted = unnoted(shop, job.id, &rows);
    let of_rows = rows.iter().zip(stages).map(|(row, stage)| StillToCome {
        kind: row.kind,
        stage,
        span: row.to_come(),
        by_any: by_any.filter(|_| row.is_rest),
        unnoted: row.op.clone().filter(|op| unnoted.contains(op)),
    });
    Some(of_rows.chain(beside).listed())
}

fn rows(shop: &Shop, job: &Job) -> Vec<Row> {
    rows_of(shop, (job, shop.history()), true)
}

fn without_plan(shop: &Shop, job: &Job, logged: &Time) -> Option<StillToCome> {
    let made = |span, by_any| StillToCome { kind: Kind::Make, stage: None, span, by_any, unnoted: None };
    let counted = || Span::sum(counted(shop, job, &[]).iter().map(Counted::to_come));
    // As the page has it; an estimate that was given speaks where nothing else does.
    let rows = rows(shop, job);
    if is_made_whole(shop, job, (logged, &rows)) {
        return Some(made(counted(), None));
    }
    if !rows.is_empty() {
        return Some(made(Span::sum(rows.iter().map(Row::to_come)), by_any(shop, job)));
    }
    job.kept.map(|kept| made(kept.likely.minus(logged.own.total()).max(counted()), None))
}

fn by_any(shop: &Shop, job: &Job) -> Option<Count> {
    let whole = whole_piece(job, shop.history())?;
    matches!(whole.by, By::NoKind | By::Alike | By::Named | By::Usual).then_some(whole.part.jobs)
}
