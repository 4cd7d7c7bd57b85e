//! Orders about the book itself: take back, restore, keep a copy, people.

use super::Act;
use super::{restore, rests};
use crate::ledger::book::subjects;
use crate::ledger::kind::book::{CopyKept, Forgotten, PersonAdded, Restored, Role, Struck, WorkshopSet};
use crate::ledger::{Book, Entry, Subject};
use crate::quantity::{Currency, Id, Moment, Units};
use crate::refusal::{Answer, Refusal};

/// What can be ordered of the book.
#[derive(Clone, Debug, PartialEq)]
pub enum BookCommand {
    /// Takes an act back whole: its id, or that of an entry; of the bench and the yard that entry alone.
    TakeBack {
        act: Id,
    },
    /// Makes what was taken back stand again.
    Restore {
        act: Id,
    },
    SetWorkshop {
        currency: Option<Currency>,
        units: Option<Units>,
    },
    AddPerson {
        role: Role,
    },
    Forget {
        person: Id,
    },
    NoteCopy {
        upto: Moment,
    },
}

pub(super) fn decide(book: &Book, command: &BookCommand, act: &mut Act) -> Answer<()> {
    match command {
        BookCommand::TakeBack { act: id } => {
            let entries = whole(book, *id)?;
            rests::allowed(book, &entries)?;
            act.add(Struck { entries });
        }
        BookCommand::Restore { act: id } => {
            let entries = whole(book, *id)?;
            restore::allowed(book, &entries)?;
            act.add(Restored { entries });
        }
        BookCommand::SetWorkshop { currency, units } => {
            act.add(WorkshopSet { currency: *currency, units: *units });
        }
        BookCommand::AddPerson { role } => {
            act.add(PersonAdded { role: *role });
        }
        BookCommand::Forget { person } => {
            act.add(Forgotten { person: *person });
        }
        BookCommand::NoteCopy { upto } => {
            act.add(CopyKept { upto: *upto });
        }
    }
    Ok(())
}

/// The entries of an act, also by one of them. Of the bench and the yard each is struck for itself: a run that came by a switch leaves the
/// run before it ended, a count that began a pile leaves the pile.
fn whole(book: &Book, id: Id) -> Answer<Vec<Id>> {
    let goes_with = |entry: &Entry| {
        let about = subjects(entry);
        let of_job = about.iter().flatten().any(|subject| matches!(subject, Subject::Job(_)));
        entry.act.filter(|_| of_job && !about.contains(&Some(Subject::Bench)))
    };
    let act = book.entry(id).and_then(|(entry, _)| goes_with(entry)).unwrap_or(id);
    let entries = book.act(act);
    if entries.is_empty() { Err(Refusal::NotThere) } else { Ok(entries) }
}
