//! What a job or a haul is called, which operations it has, and whether it counts as history.

use crate::bench::{Kind, On, Stage};
use crate::ledger::{Book, Fact, Subject};
use crate::quantity::Id;

/// The name of what time is spent on; none for no job, or where none was given.
pub fn name_of(book: &Book, on: On) -> Option<String> {
    let subject = match on {
        On::Job(id) => Subject::Job(id),
        On::Haul(id) => Subject::Haul(id),
        On::Nothing => return None,
    };
    let names = book.about(subject).filter_map(|entry| match &entry.fact {
        Fact::JobBegan(f) => Some(&f.name),
        Fact::JobDescribed(f) => f.name.as_ref(),
        Fact::HaulBegan(f) => f.name.as_ref(),
        Fact::HaulDescribed(f) => f.name.as_ref(),
        _ => None,
    });
    names.last().cloned()
}

/// Whether the runs of a job count as history: all but those of a job marked as not typical.
pub fn counts_as_history(book: &Book, on: On) -> bool {
    let On::Job(job) = on else { return true };
    let marks = book.about(Subject::Job(job)).filter_map(|entry| if let Fact::JobMarked(f) = &entry.fact { Some(f.typical) } else { None });
    marks.last().unwrap_or(true)
}

/// The operations planned for a job, in the order they were first named.
pub fn planned_operations(book: &Book, job: Id) -> Vec<(String, Kind, Stage)> {
    let mut planned: Vec<(String, Kind, Stage)> = vec![];
    for entry in book.about(Subject::Job(job)) {
        let Fact::OperationPlanned(f) = &entry.fact else { continue };
        let operation = (f.op.clone(), f.kind, f.stage.unwrap_or(f.kind.stage()));
        match planned.iter_mut().find(|there| there.0 == f.op) {
            Some(there) => *there = operation,
            None => planned.push(operation),
        }
    }
    planned
}
