//! Pieces that were counted at the bench of operations nobody planned: what is left of them is to come, as it goes.

use super::Row;
use super::left::by_pieces;
use crate::bench::estimate::{Basis, Left, Likely, Part};
use crate::bench::{Kind, On, Stage};
use crate::ledger::fold::Job;
use crate::quantity::Span;
use crate::sheet::Shop;

/// An operation that nobody planned, with pieces that are left at their pace.
#[derive(Clone, Debug, PartialEq)]
pub struct Counted {
    pub op: String,
    pub kind: Kind,
    pub stage: Stage,
    /// What the pieces that are left take.
    pub time: Likely,
}

impl Counted {
    /// The same, likely.
    pub fn to_come(&self) -> Span {
        self.time.span()
    }

    /// As a part of what is still to do, whatever was estimated.
    pub(super) fn part(&self) -> (Part, Left) {
        (Part { from: Basis::Operation, jobs: 0, time: self.time }, Left::Goes(self.time))
    }
}

/// What stands beside the rows of an estimate: none where they hold the whole piece or its rest, of which it is a part, or where nothing is known.
pub fn beside(shop: &Shop, job: &Job, rows: &[Row]) -> Vec<Counted> {
    let is_apart = !rows.is_empty() && rows.iter().all(|row| row.op.is_some());
    if is_apart { counted(shop, job, rows) } else { vec![] }
}

/// What is left of them in the order they were begun; none of a job that has ended or of which no piece is left, and none that are in `rows`.
pub fn counted(shop: &Shop, job: &Job, rows: &[Row]) -> Vec<Counted> {
    let mut found: Vec<Counted> = vec![];
    if job.ended.is_some() || job.left() == 0 {
        return found;
    }
    for run in shop.bench.on(On::Job(job.id)).filter(|run| !run.work.rework) {
        let op = &run.work.op;
        if found.iter().any(|one| one.op == *op) || rows.iter().any(|row| row.op.as_ref() == Some(op)) {
            continue;
        }
        let Some(Left::Goes(time)) = by_pieces(&shop.bench.sure_batch(On::Job(job.id), op, shop.now)) else { continue };
        found.push(Counted { op: op.clone(), kind: run.work.kind, stage: run.work.stage, time });
    }
    found
}

/// All of it together; one may be off as the others are.
pub fn together(counted: &[Counted]) -> Likely {
    let sum = |of: &dyn Fn(&Counted) -> f64| counted.iter().map(of).sum();
    Likely::between(sum(&|one| one.time.median), sum(&|one| one.time.at(0.9)))
}
