//! The book: every entry in the order of its stamp, each standing or struck, and found by what it is about.
//!
//! Carries invariants 1, 2 and 3: the book is a pure fold of a set of entries; any order of arrival gives the same one.

use super::damage::{Damage, Why};
use super::entry::{Entry, Fact};
use super::line::{self, Line};
use super::stamp::Stamp;
use crate::quantity::Id;
use std::collections::{BTreeMap, BTreeSet};

/// What entries are about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    Haul(Id),
    Job(Id),
    /// Every run there is: a person can be at one bench only.
    Bench,
    /// Rate, till, people, workshop costs.
    Workshop,
}

/// An entry with its line and whether it stands.
#[derive(Clone, Debug, PartialEq)]
struct Kept {
    entry: Entry,
    line: Box<str>,
    struck: bool,
}

/// All that is known, from the entries alone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Book {
    // Invariant: in order of (stamp, id).
    kept: Vec<Kept>,
    // Invariant: where each id stands in `kept`; the subjects' lists name places in `kept`, in order.
    places: BTreeMap<Id, usize>,
    subjects: BTreeMap<Subject, Vec<usize>>,
    newer: BTreeSet<Box<str>>,
    damaged: BTreeSet<Damage>,
}

/// What came of a line that was added.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Added {
    New,
    /// The identical line is there already.
    Known,
    /// From a newer version, kept as it is.
    Newer,
    /// Damaged, set aside.
    Aside,
}

impl Book {
    /// The book of a set of lines in any order.
    pub fn of_lines<'a>(lines: impl IntoIterator<Item = &'a str>) -> Book {
        let mut book = Book::default();
        for text in lines {
            book.take_in(text, line::read(text));
        }
        book.settle();
        book
    }

    /// Adds one line, wherever its stamp puts it. `strict` refuses other spellings: for lines from outside.
    pub fn add_line(&mut self, text: &str, strict: bool) -> Added {
        let last = self.kept.last().map(key);
        let added = self.take_in(text, if strict { line::read_strictly(text) } else { line::read(text) });
        let in_order = match self.kept.last() {
            Some(new) => last.is_none_or(|last| last < key(new)),
            None => true,
        };
        match (added, in_order) {
            (Added::New, true) => self.index_last(),
            (Added::New, false) => self.settle(),
            _ => {}
        }
        added
    }

    /// Adds an entry of our own; returns its line, to be stored.
    pub fn add(&mut self, entry: &Entry) -> String {
        let text = line::write(entry);
        self.add_line(&text, false);
        text
    }

    /// Adds a whole set of lines from outside: the result is the union of both.
    pub fn merge<'a>(&mut self, lines: impl IntoIterator<Item = &'a str>) -> Vec<Added> {
        let added = lines.into_iter().map(|text| self.take_in(text, line::read_strictly(text))).collect();
        self.settle();
        added
    }

    fn take_in(&mut self, text: &str, read: Line) -> Added {
        match read {
            Line::Newer(line) => {
                self.newer.insert(line);
                Added::Newer
            }
            Line::Damaged(damage) => {
                self.damaged.insert(damage);
                Added::Aside
            }
            Line::Known(entry) => self.take_entry(*entry, text),
        }
    }

    /// Two lines of one id: the lesser in bytes stands, whichever came first, and the other is set aside.
    fn take_entry(&mut self, entry: Entry, text: &str) -> Added {
        let id = entry.id;
        let Some(there) = self.places.get(&id).and_then(|place| self.kept.get_mut(*place)) else {
            self.places.insert(id, self.kept.len());
            self.kept.push(Kept { entry, line: text.into(), struck: false });
            return Added::New;
        };
        if &*there.line == text {
            return Added::Known;
        }
        let mut other: Box<str> = text.into();
        if other < there.line {
            std::mem::swap(&mut other, &mut there.line);
            there.entry = entry;
        }
        self.damaged.insert(Damage { line: other, why: Why::SameIdOtherBytes, id: Some(id) });
        Added::Aside
    }

    /// Puts all in order and indexes anew.
    fn settle(&mut self) {
        self.kept.sort_by_key(key);
        self.places = self.kept.iter().enumerate().map(|(place, kept)| (kept.entry.id, place)).collect();
        self.subjects.clear();
        for place in 0..self.kept.len() {
            self.index(place);
        }
        self.strike_all();
    }

    fn index_last(&mut self) {
        let Some(place) = self.kept.len().checked_sub(1) else { return };
        self.index(place);
        let strike = self.kept.get(place).and_then(|kept| strike(&kept.entry.fact)).map(|(ids, struck)| (ids.to_vec(), struck));
        if let Some((ids, struck)) = strike {
            self.set_struck(&ids, struck);
        } else {
            self.strike_one_anew(place);
        }
    }

    fn index(&mut self, place: usize) {
        let Some(kept) = self.kept.get(place) else { return };
        for subject in subjects(&kept.entry).into_iter().flatten() {
            self.subjects.entry(subject).or_default().push(place);
        }
    }

    /// An entry's state is its last Struck or Restored by stamp.
    fn strike_all(&mut self) {
        self.kept.iter_mut().for_each(|kept| kept.struck = false);
        let strikes: Vec<(Vec<Id>, bool)> =
            self.kept.iter().filter_map(|kept| strike(&kept.entry.fact)).map(|(ids, struck)| (ids.to_vec(), struck)).collect();
        for (ids, struck) in strikes {
            self.set_struck(&ids, struck);
        }
    }

    fn set_struck(&mut self, ids: &[Id], struck: bool) {
        for id in ids {
            if let Some(kept) = self.places.get(id).and_then(|place| self.kept.get_mut(*place)) {
                kept.struck = struck && strike(&kept.entry.fact).is_none();
            }
        }
    }

    /// A Struck may have come before the entry it names.
    fn strike_one_anew(&mut self, place: usize) {
        let Some(id) = self.kept.get(place).map(|kept| kept.entry.id) else { return };
        let named = self.kept.iter().rev().filter_map(|kept| strike(&kept.entry.fact)).find(|(ids, _)| ids.contains(&id));
        if let Some((_, struck)) = named
            && let Some(kept) = self.kept.get_mut(place)
        {
            kept.struck = struck;
        }
    }

    /// Every standing entry about a subject, in order.
    pub fn about(&self, subject: Subject) -> impl DoubleEndedIterator<Item = &Entry> {
        let places = self.subjects.get(&subject).map(Vec::as_slice).unwrap_or_default();
        places.iter().filter_map(|place| self.kept.get(*place)).filter(|kept| !kept.struck).map(|kept| &kept.entry)
    }

    /// Every subject some entry is about.
    pub fn subjects(&self) -> impl Iterator<Item = Subject> {
        self.subjects.keys().copied()
    }

    /// Every entry in order, each with whether it is struck.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = (&Entry, bool)> {
        self.kept.iter().map(|kept| (&kept.entry, kept.struck))
    }

    /// The entry of an id, and whether it is struck.
    pub fn entry(&self, id: Id) -> Option<(&Entry, bool)> {
        self.places.get(&id).and_then(|place| self.kept.get(*place)).map(|kept| (&kept.entry, kept.struck))
    }

    /// The entries of an act, or the one entry where it stands alone.
    pub fn act(&self, id: Id) -> Vec<Id> {
        let of_act = |kept: &&Kept| kept.entry.act == Some(id) || kept.entry.id == id;
        self.kept.iter().filter(of_act).map(|kept| kept.entry.id).collect()
    }

    pub fn len(&self) -> usize {
        self.kept.len()
    }

    pub fn is_empty(&self) -> bool {
        self.kept.is_empty()
    }

    /// The newest stamp there is.
    pub fn last_stamp(&self) -> Option<Stamp> {
        self.kept.last().map(|kept| kept.entry.stamp)
    }

    /// Lines from a newer version, byte for byte.
    pub fn newer(&self) -> impl Iterator<Item = &str> {
        self.newer.iter().map(|line| &**line)
    }

    pub fn damaged(&self) -> impl Iterator<Item = &Damage> {
        self.damaged.iter()
    }

    /// Every line that is kept: known, newer and damaged.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        let known = self.kept.iter().map(|kept| &*kept.line);
        known.chain(self.newer()).chain(self.damaged.iter().map(|damage| &*damage.line))
    }
}

fn key(kept: &Kept) -> (Stamp, Id) {
    (kept.entry.stamp, kept.entry.id)
}

fn strike(fact: &Fact) -> Option<(&[Id], bool)> {
    match fact {
        Fact::Struck(strike) => Some((&strike.entries, true)),
        Fact::Restored(strike) => Some((&strike.entries, false)),
        _ => None,
    }
}

/// What an entry is about: at most three subjects.
fn subjects(entry: &Entry) -> [Option<Subject>; 3] {
    use Subject::{Bench, Haul, Job, Workshop};
    let haul = |id: &Id| Some(Haul(*id));
    let job = |id: &Id| Some(Job(*id));
    let spent_on = |on_job: &Option<Id>, on_haul: &Option<Id>| match (on_job, on_haul) {
        (None, None) => [Some(Workshop), None, None],
        (on_job, on_haul) => [on_job.map(Job), on_haul.map(Haul), None],
    };
    match &entry.fact {
        Fact::HaulBegan(_) => [Some(Haul(entry.id)), None, None],
        Fact::HaulDescribed(f) => [haul(&f.haul), None, None],
        Fact::TripBegan(f) => [haul(&f.haul), None, None],
        Fact::TripStepped(f) => [haul(&f.haul), None, None],
        Fact::TripDescribed(f) => [haul(&f.haul), None, None],
        Fact::PileAdded(f) => [haul(&f.haul), None, None],
        Fact::PileDescribed(f) => [haul(&f.haul), None, None],
        Fact::PiecesCounted(f) => [haul(&f.haul), None, None],
        Fact::PiecesMoved(f) => [haul(&f.haul), None, None],
        Fact::PiecesRecounted(f) => [haul(&f.haul), None, None],
        Fact::PiecesSorted(f) => [haul(&f.haul), None, None],
        Fact::PiecesRejected(f) => [haul(&f.haul), None, None],
        Fact::RejectsReturned(f) => [haul(&f.haul), None, None],
        Fact::PiecesTaken(f) => [haul(&f.haul), job(&f.job), None],
        Fact::PiecesFreed(f) => [haul(&f.haul), job(&f.job), None],
        Fact::RunStarted(f) => [Some(Bench), f.job.map(Job), f.haul.map(Haul)],
        Fact::RunRecalled(f) => [Some(Bench), f.job.map(Job), f.haul.map(Haul)],
        Fact::RunStopped(_) | Fact::RunMended(_) | Fact::PiecesDone(_) | Fact::HelperJoined(_) | Fact::HelperLeft(_) => {
            [Some(Bench), None, None]
        }
        Fact::BatchPlanned(f) => [Some(Bench), job(&f.job), None],
        Fact::JobBegan(_) => [Some(Job(entry.id)), None, None],
        Fact::JobDescribed(f) => [job(&f.job), None, None],
        Fact::PartPlanned(f) => [job(&f.job), None, None],
        Fact::OperationPlanned(f) => [job(&f.job), None, None],
        Fact::JobEnded(f) => [job(&f.job), None, None],
        Fact::JobReopened(f) => [job(&f.job), None, None],
        Fact::JobMarked(f) => [job(&f.job), None, None],
        Fact::LessonWritten(f) => [job(&f.job), None, None],
        Fact::MoneySpent(f) => spent_on(&f.job, &f.haul),
        Fact::DistanceDriven(f) => spent_on(&f.job, &f.haul),
        Fact::RateSet(_) | Fact::TillSet(_) | Fact::WorkshopSet(_) | Fact::PersonAdded(_) | Fact::Forgotten(_) | Fact::CopyKept(_) => {
            [Some(Workshop), None, None]
        }
        Fact::TagSet(f) => [job(&f.job), None, None],
        Fact::SettleSet(f) => [job(&f.job), None, None],
        Fact::OfferHeard(f) => [job(&f.job), None, None],
        Fact::PriceAgreed(f) => [job(&f.job), None, None],
        Fact::PieceSold(f) => [job(&f.job), None, None],
        Fact::PaymentReceived(f) => [job(&f.job), None, None],
        Fact::PiecesConsigned(f) => [job(&f.job), None, None],
        Fact::ConsignmentPaid(f) => [job(&f.job), None, None],
        Fact::SaleReversed(f) => [job(&f.job), None, None],
        Fact::Struck(_) | Fact::Restored(_) => [None, None, None],
    }
}
