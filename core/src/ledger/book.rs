//! The book: every entry in the order of its stamp, each standing or struck, and found by what it is about.
//!
//! Carries invariants 1, 2 and 3: the book is a pure fold of a set of entries; any order of arrival gives the same one.

use super::damage::{Damage, Why};
use super::entry::{Entry, Fact};
use super::kind::stock::CountMended;
use super::line::{self, Line};
use super::mended::mended;
use super::places::Places;
use super::stamp::Stamp;
use super::subjects::subjects_of;
pub use super::subjects::{Subject, subjects};
use crate::quantity::{Day, Id, Listed, Offset, Set, Sorted, order_by_key, places_in_order};
use std::rc::Rc;

/// An entry with its line and whether it stands.
#[derive(Clone, Debug, PartialEq)]
struct Kept {
    entry: Rc<Entry>,
    line: Box<str>,
    struck: bool,
}

/// Where an entry lies in the book; it stays there, whatever comes after it.
type Slot = usize;

/// The order of the book: stamp, then id.
type Rank = (Stamp, Id);

/// All that is known, from the entries alone.
#[derive(Clone, Debug, Default)]
pub struct Book {
    // In order of arrival. Every list of slots below is in order of rank.
    kept: Vec<Kept>,
    slots: Places,
    order: Vec<Slot>,
    subjects: Sorted<Subject, Vec<Slot>>,
    acts: Places,
    of_acts: Vec<Vec<Slot>>,
    // Invariant: of each id that was ever struck or restored, each such in order of rank. They may come before the entry they name.
    strikes: Sorted<Id, Vec<(Rank, bool)>>,
    // Of each count that was ever mended, the entries that mend it. They may come before it.
    mends: Sorted<Id, Vec<Id>>,
    newer: Set<Box<str>>,
    damaged: Set<Damage>,
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

/// Two books are the same when they hold the same, whatever came first.
impl PartialEq for Book {
    fn eq(&self, other: &Book) -> bool {
        self.newer == other.newer && self.damaged == other.damaged && self.in_order().eq(other.in_order())
    }
}

impl Book {
    /// The book of a set of lines in any order.
    pub fn of_lines<'a>(lines: impl IntoIterator<Item = &'a str>) -> Book {
        let mut book = Book::default();
        book.merge(lines);
        book
    }

    /// Adds one line, wherever its stamp puts it.
    pub fn add_line(&mut self, text: &str) -> Added {
        let before = self.kept.len();
        let added = self.take_in(line::read(text), text);
        self.settle(before);
        added
    }

    /// Adds an entry of our own; returns its line, to be stored.
    pub fn add(&mut self, entry: &Entry) -> String {
        let text = line::write(entry);
        self.add_line(&text);
        text
    }

    /// Adds a whole set of lines from outside: the result is the union of both.
    pub fn merge<'a>(&mut self, lines: impl IntoIterator<Item = &'a str>) -> Vec<Added> {
        self.merge_read(lines.into_iter().map(|text| (line::read(text), text)))
    }

    /// Adds a set of lines that were read before, each with its text.
    pub fn merge_read<'a>(&mut self, lines: impl IntoIterator<Item = (Line, &'a str)>) -> Vec<Added> {
        let (before, lines) = (self.kept.len(), lines.into_iter());
        let more = lines.size_hint().0;
        self.kept.reserve(more);
        self.slots.expect(more);
        let added = lines.map(|(line, text)| self.take_in(line, text)).collect();
        self.settle(before);
        added
    }

    fn take_in(&mut self, line: Line, text: &str) -> Added {
        match line {
            Line::Newer(line) => new_or_known(self.newer.insert(line), Added::Newer),
            Line::Damaged(damage) => new_or_known(self.damaged.insert(damage), Added::Aside),
            Line::Known(entry) => self.take_entry(entry, text),
        }
    }

    /// Two lines of one id: the lesser in bytes stands, whichever came first, and the other is set aside.
    fn take_entry(&mut self, entry: Rc<Entry>, text: &str) -> Added {
        let id = entry.id;
        let next = self.kept.len();
        let slot = self.slots.get_or(id, next);
        if slot == next {
            self.kept.push(Kept { entry, line: text.into(), struck: false });
            return Added::New;
        }
        let mut other: Box<str> = text.into();
        match self.kept.get_mut(slot) {
            Some(there) if there.line == other => return Added::Known,
            Some(there) if other < there.line => {
                std::mem::swap(&mut other, &mut there.line);
                there.entry = entry;
                self.order.clear(); // what the old line said is indexed: all is indexed anew
            }
            _ => {}
        }
        let why = Why::SameIdOtherBytes;
        new_or_known(self.damaged.insert(Damage { line: other, why, id: Some(id) }), Added::Aside)
    }

    /// Indexes what came in from `before` on.
    fn settle(&mut self, before: Slot) {
        let before = if self.order.len() == before { before } else { self.forget_index() };
        let came = self.kept.get(before..).unwrap_or_default();
        let ranks: Vec<Rank> = came.iter().map(|kept| (kept.entry.stamp, kept.entry.id)).collect();
        let fresh: Vec<Slot> = match ranks.is_sorted() {
            true => (before..self.kept.len()).collect(),
            false => places_in_order(&ranks, Ord::cmp).into_iter().filter_map(|place| before.checked_add(place)).listed(),
        };
        for slot in &fresh {
            self.index(*slot);
        }
        put(&self.kept, &mut self.order, &fresh);
        let touched = self.strike(&fresh);
        self.mend(&touched);
    }

    fn forget_index(&mut self) -> Slot {
        self.order.clear();
        self.subjects.clear();
        self.acts.clear();
        self.of_acts.clear();
        self.strikes.clear();
        // What mended them may be gone: each is as its line has it, until all is indexed.
        for id in self.mends.keys().copied().collect::<Vec<_>>() {
            if let (Some(written), Some(slot)) = (self.written(id), self.slots.get(&id))
                && let Some(kept) = self.kept.get_mut(slot)
            {
                kept.entry = written;
            }
        }
        self.mends.clear();
        0
    }

    fn index(&mut self, slot: Slot) {
        let Some(kept) = self.kept.get(slot) else { return };
        for subject in subjects(&kept.entry).into_iter().flatten() {
            put(&self.kept, self.subjects.entry(subject).or_default(), &[slot]);
        }
        if let Fact::CountMended(by) = &kept.entry.fact {
            self.mends.entry(by.entry).or_default().push(kept.entry.id);
        }
        if let Some(act) = kept.entry.act {
            let next = self.of_acts.len();
            let at = self.acts.get_or(act, next);
            if at == next {
                self.of_acts.push(vec![]);
            }
            if let Some(slots) = self.of_acts.get_mut(at) {
                put(&self.kept, slots, &[slot]);
            }
        }
    }

    /// An entry's state is its last Struck or Restored by rank. What is fresh may strike, and may have been struck before it came.
    /// Returns all whose state may have changed.
    fn strike(&mut self, fresh: &[Slot]) -> Vec<Slot> {
        let mut touched: Vec<Slot> = fresh.to_vec();
        for kept in fresh.iter().filter_map(|slot| self.kept.get(*slot)) {
            let Some((ids, struck)) = strike(&kept.entry.fact) else { continue };
            let rank = (kept.entry.stamp, kept.entry.id);
            for id in ids {
                let turns = self.strikes.entry(*id).or_default();
                turns.insert(turns.partition_point(|turn| *turn < (rank, struck)), (rank, struck));
                touched.extend(self.slots.get(id));
            }
        }
        for slot in &touched {
            if let Some(kept) = self.kept.get_mut(*slot) {
                let said = self.strikes.get(&kept.entry.id).and_then(|turns| turns.last()).is_some_and(|(_, struck)| *struck);
                kept.struck = said && strike(&kept.entry.fact).is_none();
            }
        }
        touched
    }

    /// A count is what the last standing mend of it by rank says; its line stays. What was touched may be mended, or may mend.
    fn mend(&mut self, touched: &[Slot]) {
        if self.mends.is_empty() {
            return;
        }
        let meant = |kept: &Kept| if let Fact::CountMended(by) = &kept.entry.fact { by.entry } else { kept.entry.id };
        let ids: Set<Id> = touched.iter().filter_map(|slot| self.kept.get(*slot)).map(meant).collect();
        for id in ids.iter().filter(|id| self.mends.contains_key(id)).copied().collect::<Vec<_>>() {
            let (Some(written), Some(slot)) = (self.written(id), self.slots.get(&id)) else { continue };
            let fact = self.last_mend(id).and_then(|by| mended(&written.fact, by));
            let entry = fact.map_or(written.clone(), |fact| Rc::new(Entry { fact, ..Entry::clone(&written) }));
            if let Some(kept) = self.kept.get_mut(slot) {
                kept.entry = entry;
            }
        }
    }

    fn last_mend(&self, id: Id) -> Option<&CountMended> {
        let mends = self.mends.get(&id)?.iter().filter_map(|id| self.found(*id)).filter(|kept| !kept.struck);
        let last = mends.max_by_key(|kept| (kept.entry.stamp, kept.entry.id))?;
        if let Fact::CountMended(by) = &last.entry.fact { Some(by) } else { None }
    }

    /// An entry as its line has it, whatever was mended since.
    pub fn written(&self, id: Id) -> Option<Rc<Entry>> {
        let kept = self.found(id)?;
        if !self.mends.contains_key(&id) {
            return Some(kept.entry.clone());
        }
        if let Line::Known(entry) = line::read(&kept.line) { Some(entry) } else { None }
    }

    fn in_order(&self) -> impl DoubleEndedIterator<Item = &Kept> {
        self.order.iter().filter_map(|slot| self.kept.get(*slot))
    }

    fn found(&self, id: Id) -> Option<&Kept> {
        self.slots.get(&id).and_then(|slot| self.kept.get(slot))
    }

    /// Every standing entry about a subject, in order.
    pub fn about(&self, subject: Subject) -> impl DoubleEndedIterator<Item = &Entry> + Clone {
        let slots = self.subjects.get(&subject).map(Vec::as_slice).unwrap_or_default();
        slots.iter().filter_map(|slot| self.kept.get(*slot)).filter(|kept| !kept.struck).map(|kept| &*kept.entry)
    }

    /// Every entry about a subject that stood when another was written, in order, as was said by then.
    pub fn stood_before(&self, subject: Subject, written: Id) -> impl Iterator<Item = &Entry> + Clone {
        let rank = self.found(written).map(|kept| (kept.entry.stamp, kept.entry.id));
        let slots = self.subjects.get(&subject).map(Vec::as_slice).unwrap_or_default();
        let then = slots.iter().filter_map(|slot| self.kept.get(*slot)).map(|kept| (kept, (kept.entry.stamp, kept.entry.id)));
        let then = then.take_while(move |(_, one)| Some(*one) < rank);
        let stood = move |kept: &Kept| rank.is_some_and(|rank| !self.struck_before(kept.entry.id, rank));
        then.filter(move |(kept, _)| stood(kept) && strike(&kept.entry.fact).is_none()).map(|(kept, _)| &*kept.entry)
    }

    fn struck_before(&self, id: Id, rank: Rank) -> bool {
        let turns = self.strikes.get(&id).into_iter().flatten();
        turns.take_while(|(by, _)| *by < rank).last().is_some_and(|(_, struck)| *struck)
    }

    /// Of the entries about a subject such as are `meant` and were written before another, those that stand now where they did not then, or
    /// the other way; each with whether it stands now.
    pub fn turned_since(&self, subject: Subject, written: &Entry, meant: impl Fn(&Fact) -> bool) -> impl Iterator<Item = (&Entry, bool)> {
        let rank = (written.stamp, written.id);
        let before = self.ever(subject).take_while(move |(entry, _)| (entry.stamp, entry.id) < rank);
        let turned = before.filter(move |(entry, struck)| meant(&entry.fact) && self.struck_before(entry.id, rank) != *struck);
        turned.map(|(entry, struck)| (entry, !struck))
    }

    /// Every entry about a subject in order, each with whether it is struck.
    pub fn ever(&self, subject: Subject) -> impl DoubleEndedIterator<Item = (&Entry, bool)> {
        let slots = self.subjects.get(&subject).map(Vec::as_slice).unwrap_or_default();
        slots.iter().filter_map(|slot| self.kept.get(*slot)).map(|kept| (&*kept.entry, kept.struck))
    }

    /// Every entry that is struck now, in order. They are found apart: none that stands is looked at.
    pub fn struck(&self) -> Vec<&Entry> {
        let said = self.strikes.iter().filter(|(_, turns)| turns.last().is_some_and(|(_, struck)| *struck));
        let mut found = said.filter_map(|(id, _)| self.found(*id)).filter(|kept| kept.struck).map(|kept| &*kept.entry).listed();
        order_by_key(&mut found, |entry| (entry.stamp, entry.id));
        found
    }

    /// The entries written on a day or later by the clock of any place, the latest first: a stamp is never before the clock it is
    /// written by.
    pub fn since(&self, day: Day) -> impl Iterator<Item = (&Entry, bool)> {
        let begins = day.before().start(Offset::UTC);
        self.entries().rev().take_while(move |(entry, _)| begins <= entry.stamp.0)
    }

    /// How often an entry was struck or restored.
    pub fn turns(&self, id: Id) -> u32 {
        self.strikes.get(&id).map_or(0, |turns| u32::try_from(turns.len()).unwrap_or(u32::MAX))
    }

    /// The newest stamp of what a fact rests on: what stands about the same, and what took back or put back what it names.
    pub(super) fn newest_before(&self, id: Id, fact: &Fact) -> Option<Stamp> {
        let about = subjects_of(id, fact).into_iter().flatten().filter_map(|subject| self.about(subject).next_back());
        let named = strike(fact).map(|(ids, _)| ids).unwrap_or_default();
        let said = named.iter().filter_map(|id| self.strikes.get(id)?.last()).map(|((stamp, _), _)| *stamp);
        about.map(|entry| entry.stamp).chain(said).max()
    }

    /// Every subject some entry is about.
    pub fn subjects(&self) -> impl Iterator<Item = Subject> {
        self.subjects.keys().copied()
    }

    /// Every entry in order, each with whether it is struck.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = (&Entry, bool)> {
        self.in_order().map(|kept| (&*kept.entry, kept.struck))
    }

    /// The entry of an id, and whether it is struck.
    pub fn entry(&self, id: Id) -> Option<(&Entry, bool)> {
        self.found(id).map(|kept| (&*kept.entry, kept.struck))
    }

    /// The book as it would be, were these entries to stand again. Nothing is restored by it.
    pub fn standing_again(&self, ids: &[Id]) -> Book {
        self.supposing(ids, false)
    }

    /// The book as it would be, were these entries taken back. Nothing is struck by it.
    pub fn without(&self, ids: &[Id]) -> Book {
        self.supposing(ids, true)
    }

    /// The book as it would be with one more entry.
    pub fn and(&self, entry: &Entry) -> Book {
        let mut then = self.clone();
        then.add(entry);
        then
    }

    fn supposing(&self, ids: &[Id], struck: bool) -> Book {
        let mut then = self.clone();
        let slots: Vec<Slot> = ids.iter().filter_map(|id| self.slots.get(id)).collect();
        for slot in &slots {
            if let Some(kept) = then.kept.get_mut(*slot) {
                kept.struck = struck;
            }
        }
        then.mend(&slots);
        then
    }

    /// The entries of an act, or the one entry where it stands alone.
    pub fn act(&self, id: Id) -> Vec<Id> {
        match self.acts.get(&id).and_then(|at| self.of_acts.get(at)) {
            Some(slots) => slots.iter().filter_map(|slot| self.kept.get(*slot)).map(|kept| kept.entry.id).listed(),
            None => self.found(id).map(|kept| kept.entry.id).into_iter().listed(),
        }
    }

    pub fn len(&self) -> usize {
        self.kept.len()
    }

    pub fn is_empty(&self) -> bool {
        self.kept.is_empty()
    }

    /// The newest stamp there is.
    pub fn last_stamp(&self) -> Option<Stamp> {
        self.in_order().next_back().map(|kept| kept.entry.stamp)
    }

    /// Lines of the entries, byte for byte, in order.
    pub fn known(&self) -> impl Iterator<Item = &str> {
        self.in_order().map(|kept| &*kept.line)
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
        self.known().chain(self.newer()).chain(self.damaged.iter().map(|damage| &*damage.line))
    }
}

fn new_or_known(new: bool, added: Added) -> Added {
    if new { added } else { Added::Known }
}

fn rank(kept: &[Kept], slot: Slot) -> Option<Rank> {
    kept.get(slot).map(|kept| (kept.entry.stamp, kept.entry.id))
}

/// Puts slots, themselves in order, into a list in order: most come last, one is put in its place, many are sorted in.
fn put(kept: &[Kept], list: &mut Vec<Slot>, fresh: &[Slot]) {
    let Some(first) = fresh.first().map(|slot| rank(kept, *slot)) else { return };
    let late = list.last().is_none_or(|last| rank(kept, *last) < first);
    if !late && fresh.len() == 1 {
        let place = list.partition_point(|slot| rank(kept, *slot) < first);
        list.splice(place..place, fresh.iter().copied());
        return;
    }
    list.extend_from_slice(fresh);
    if !late {
        order_by_key(list, |slot| rank(kept, *slot));
    }
}

fn strike(fact: &Fact) -> Option<(&[Id], bool)> {
    match fact {
        Fact::Struck(strike) => Some((&strike.entries, true)),
        Fact::Restored(strike) => Some((&strike.entries, false)),
        _ => None,
    }
}
