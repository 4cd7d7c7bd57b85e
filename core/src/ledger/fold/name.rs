//! What a job or a haul is called, and which operations it has.

use crate::bench::{Kind, On, Stage};
use crate::ledger::{Book, Fact, Subject};
use crate::quantity::{Id, Listed, order_by_key};

/// Whether the maker is done with the job, as the last word on it says.
pub fn is_ended(book: &Book, on: On) -> bool {
    let On::Job(job) = on else { return false };
    let mut words = book.about(Subject::Job(job)).filter_map(|entry| match &entry.fact {
        Fact::JobEnded(_) => Some(true),
        Fact::JobReopened(_) => Some(false),
        _ => None,
    });
    words.next_back().unwrap_or(false)
}

/// The name of what time is spent on; none for no job, or where none was given.
pub fn name_of(book: &Book, on: On) -> Option<String> {
    let subject = match on {
        On::Job(id) => Subject::Job(id),
        On::Haul(id) => Subject::Haul(id),
        On::Nothing => return None,
    };
    let mut names = book.about(subject).filter_map(|entry| match &entry.fact {
        Fact::JobBegan(f) => Some(&f.name),
        Fact::JobDescribed(f) => f.name.as_ref(),
        Fact::HaulBegan(f) => f.name.as_ref(),
        Fact::HaulDescribed(f) => f.name.as_ref(),
        _ => None,
    });
    names.next_back().cloned()
}

/// The design a job was made from.
pub fn design_of(book: &Book, job: Id) -> Option<Id> {
    let used = |entry: &crate::ledger::Entry| if let Fact::DesignUsed(f) = &entry.fact { Some(f.design) } else { None };
    book.about(Subject::Job(job)).filter_map(used).next_back()
}

/// The operations planned for a job, in the order they are worked off.
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
    in_making_order(planned, |(_, kind, stage)| (*kind, *stage))
}

/// Operations as a piece is made, whichever was planned first: nothing is finished before it is made, and within a stage the maker's order holds
/// (ours). What is of the desk has no place in the making, and stays where it was put.
pub(super) fn in_making_order<T>(planned: Vec<T>, of: impl Fn(&T) -> (Kind, Stage)) -> Vec<T> {
    let (desk, mut made): (Vec<_>, Vec<_>) = planned.into_iter().enumerate().partition(|(_, one)| of(one).0 == Kind::Office);
    order_by_key(&mut made, |(_, one)| of(one).1);
    let mut ordered = made.into_iter().map(|(_, one)| one).listed();
    desk.into_iter().for_each(|(place, one)| ordered.insert(place.min(ordered.len()), one));
    ordered
}
