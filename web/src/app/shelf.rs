//! One book as the page holds it: what is shown, what is saved, and what could not be saved.
//!
//! Carries invariant 9: nothing counts as saved until its transaction completed, nothing is written before the first load.

use fivebar_core::ledger::decide::{Command, Now, decide};
use fivebar_core::ledger::{Book, Clock, Device, Entry};
use fivebar_core::quantity::{Id, Wall};
use fivebar_core::refusal::Answer;
use std::collections::{BTreeMap, BTreeSet};

/// A line on its way to the store.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Posted {
    pub id: Id,
    pub line: String,
}

/// What an order gave: the act, and what goes to the store.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    pub act: Id,
    pub entries: Vec<Entry>,
    pub lines: Vec<Posted>,
}

/// A book with its clock and the state of its writes.
#[derive(Debug)]
pub struct Shelf {
    pub book: Book,
    clock: Clock,
    /// Names by the id of the person, from the side store.
    pub names: BTreeMap<Id, String>,
    /// Shown, not yet saved.
    unsaved: BTreeSet<Id>,
    /// What the store would not take; it can be tried again.
    failed: Vec<Posted>,
    /// The wall clock of the last write that completed.
    pub saved: Option<Wall>,
    /// The newest act of this tab that can be taken back.
    pub last_act: Option<Id>,
    /// The act that was just taken back and can be put back.
    pub taken_back: Option<Id>,
}

impl Shelf {
    /// The book of these lines, on this device.
    pub fn open<'a>(device: Device, lines: impl IntoIterator<Item = &'a str>) -> Shelf {
        let book = Book::of_lines(lines);
        let clock = Clock::new(device, book.last_stamp());
        Shelf {
            book,
            clock,
            names: BTreeMap::new(),
            unsaved: BTreeSet::new(),
            failed: vec![],
            saved: None,
            last_act: None,
            taken_back: None,
        }
    }

    /// Takes in entries that are written elsewhere, with the names of their people; they are shown at once and not saved yet.
    pub fn fill(&mut self, lines: &[Posted], names: &[(Id, String)]) {
        self.book.merge(lines.iter().map(|posted| posted.line.as_str()));
        self.clock = Clock::new(self.clock.device(), self.book.last_stamp());
        self.names.extend(names.iter().cloned());
        self.unsaved.extend(lines.iter().map(|posted| posted.id));
    }

    /// Carries out an order: it is shown at once, and what it wrote is handed on to be saved.
    ///
    /// # Errors
    /// Why the answer was no; nothing has changed then.
    pub fn order(&mut self, command: &Command, now: Now) -> Answer<Option<Written>> {
        let entries = decide(&self.book, command, now)?.stamped(&mut self.clock);
        let Some(first) = entries.first() else { return Ok(None) };
        let act = first.act.unwrap_or(first.id);
        let lines: Vec<Posted> = entries.iter().map(|entry| Posted { id: entry.id, line: self.book.add(entry) }).collect();
        self.unsaved.extend(lines.iter().map(|posted| posted.id));
        Ok(Some(Written { act, entries, lines }))
    }

    /// These were saved.
    pub fn saved(&mut self, ids: &[Id], at: Wall) {
        self.unsaved.retain(|id| !ids.contains(id));
        self.failed.retain(|posted| !ids.contains(&posted.id));
        self.saved = Some(at);
    }

    /// These could not be saved: the book is read again without them.
    pub fn not_saved(&mut self, lines: Vec<Posted>, stored: &[String]) {
        self.unsaved.retain(|id| !lines.iter().any(|posted| posted.id == *id));
        let waiting: Vec<String> = self.book.entries().filter(|(e, _)| self.unsaved.contains(&e.id)).map(|(e, _)| write(e)).collect();
        self.book = Book::of_lines(stored.iter().chain(&waiting).map(String::as_str));
        self.failed.extend(lines);
        self.last_act = None;
    }

    /// What could not be saved, to be tried again; it is shown again.
    pub fn try_again(&mut self) -> Vec<Posted> {
        let again = std::mem::take(&mut self.failed);
        for posted in &again {
            self.book.add_line(&posted.line);
            self.unsaved.insert(posted.id);
        }
        again
    }

    /// Lines that another tab wrote.
    pub fn heard<'a>(&mut self, lines: impl IntoIterator<Item = &'a str>) {
        for line in lines {
            self.book.add_line(line);
        }
    }

    pub fn is_unsaved(&self, id: Id) -> bool {
        self.unsaved.contains(&id)
    }

    pub fn has_unsaved(&self) -> bool {
        !self.unsaved.is_empty()
    }

    pub fn failed(&self) -> &[Posted] {
        &self.failed
    }

    pub fn device(&self) -> Device {
        self.clock.device()
    }
}

fn write(entry: &Entry) -> String {
    fivebar_core::ledger::line::write(entry)
}
