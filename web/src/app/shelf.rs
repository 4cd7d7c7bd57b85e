//! One book as the page holds it: what is shown, what is saved, and what could not be saved.
//!
//! Carries invariant 9: nothing counts as saved until its transaction completed, nothing is written before the first load.

use super::plan::LastTick;
use fivebar_core::bench::wait::Waits;
use fivebar_core::bench::{Bench, On};
use fivebar_core::haul::Haul;
use fivebar_core::ledger::book::subjects;
use fivebar_core::ledger::decide::{Command, Now, Turned, decide, turned};
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::ledger::kind::book::{Restored, Struck};
use fivebar_core::ledger::line::document::person_read;
use fivebar_core::ledger::line::{self, Line};
use fivebar_core::ledger::people::People;
use fivebar_core::ledger::{Book, Clock, Device, Entry, Fact, Subject, fold};
use fivebar_core::quantity::{Count, Id, Listed, Moment, Span, Wall};
use fivebar_core::quantity::{Set, Sorted};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::copy::{CopyAge, copy_age};
use fivebar_core::sheet::count::{haul_in_hand, in_hand};
use fivebar_core::sheet::estimate::history::Gathered;
use fivebar_core::sheet::meanwhile::Meanwhile;
use fivebar_core::sheet::over;
use fivebar_core::sheet::past::{Past, past};
use fivebar_core::sheet::verdict::Known;
use fivebar_core::sheet::waiting::Kept;
use std::cell::RefCell;
use std::rc::Rc;

/// So long after it what this phone did last is offered to be taken back, or put back, whether the page was loaded anew since or not [J].
const FRESH: Span = Span::minutes(12 * 60);

fn is_fresh(last: &Entry, now: Moment) -> bool {
    last.wall.at.until(now) <= FRESH
}

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

/// People by their ids, each as the line that lies beside the book; and ids of those who are gone for good.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Names {
    pub kept: Vec<(String, String)>,
    pub forgotten: Vec<String>,
}

/// Lines as they are written: those that have an id, and those damaged beyond it, which lie aside.
pub fn parted<'a>(lines: impl Iterator<Item = &'a str>) -> (Vec<Posted>, Vec<String>) {
    let (mut posted, mut aside) = (vec![], vec![]);
    for line in lines {
        match line::id_of(line) {
            Some(id) => posted.push(Posted { id, line: line.to_owned() }),
            None => aside.push(line.to_owned()),
        }
    }
    (posted, aside)
}

/// A book with its clock and the state of its writes.
#[derive(Debug)]
pub struct Shelf {
    pub book: Book,
    clock: Clock,
    /// Names, phones and places by the id of the person, from the side store.
    pub names: People,
    /// Shown, not yet saved.
    unsaved: Set<Id>,
    /// What the store would not take; it can be tried again.
    failed: Vec<Posted>,
    /// Names the side store would not take, or would not let go, with those lines; they are tried again with them.
    names_failed: Names,
    /// The wall clock of the last write that completed.
    pub saved: Option<Wall>,
    /// The newest act of this tab that can be taken back.
    pub last_act: Option<Id>,
    /// Acts before it, the newest last: a slip may be seen only two taps later.
    pub acts_before: Vec<Id>,
    /// Acts that were taken back one after the other and can be put back, the latest last; none once something new was written.
    pub taken_back: Vec<Id>,
    /// The tick at the saw that was done last, where nothing was written after it.
    pub last_tick: Option<LastTick>,
    /// An earlier haul that was taken in hand again; else the newest is.
    in_hand: Option<Id>,
    /// What waiting is worth, for what it rests on.
    prospects: Rc<Kept>,
    folded: RefCell<Folded>,
}

/// So many acts before the last can be taken back one after the other.
const BEFORE_MOST: usize = 20;

/// What was folded of the book and still holds: thrown away when an entry comes that it is about.
#[derive(Debug, Default)]
struct Folded {
    bench: Option<Rc<Bench>>,
    waits: Option<Rc<Waits>>,
    haul: Option<Option<Rc<Haul>>>,
    past: Option<Past>,
    workshop: Option<Rc<Workshop>>,
    /// What earlier jobs tell, gathered when somebody asks for it.
    history: Rc<Gathered>,
    /// Of the haul in hand; what is counted onto that haul itself changes nothing in it.
    known: Option<Rc<Known>>,
    /// With the minute it was worked out in: running time adds to it.
    copy: Option<(i64, CopyAge)>,
    /// With the minute it was worked out in.
    fits: Option<(i64, Option<Rc<Meanwhile>>)>,
}

impl Folded {
    fn forget(&mut self, entry: &Entry) {
        (self.fits, self.history) = (None, Rc::default());
        // A receipt goes with its spending, whatever that was for.
        self.workshop = self.workshop.take().filter(|known| !known.photos.has_receipt(entry.id));
        for subject in subjects(entry).into_iter().flatten() {
            match subject {
                Subject::Bench => (self.bench, self.waits, self.copy) = (None, None, None),
                Subject::Haul(id) => {
                    self.haul = None;
                    self.past = self.past.filter(|past| past.haul == Some(id));
                    self.known = self.known.take().filter(|known| known.is_about(id));
                }
                // A drive may be priced by the till.
                Subject::Workshop => (self.workshop, self.haul, self.copy, self.known) = (None, None, None, None),
                // A part's length says which rejects bear on a pile that is wanted for it; nothing waits of a job that has ended or is sold.
                Subject::Job(_) => (self.haul, self.known, self.waits) = (None, None, None),
            }
        }
    }
}

impl Folded {
    /// What is done on a job or haul speaks for the end of what runs on it. A bench that is looked at just then is folded anew.
    fn acted(&mut self, entry: &Entry) {
        let Some(mut bench) = self.bench.take() else { return };
        for on in worked_on(entry).filter(|on| bench.minds(*on)).listed() {
            let Some(bench) = Rc::get_mut(&mut bench) else { return };
            bench.acted(on, entry.at());
        }
        self.bench = Some(bench);
    }
}

/// The jobs and hauls that an entry is about.
fn worked_on(entry: &Entry) -> impl Iterator<Item = On> {
    subjects(entry).into_iter().flatten().filter_map(|subject| match subject {
        Subject::Job(id) => Some(On::Job(id)),
        Subject::Haul(id) => Some(On::Haul(id)),
        Subject::Bench | Subject::Workshop => None,
    })
}

impl Shelf {
    /// The book of these lines, on this device.
    pub fn open<'a>(device: Device, lines: impl IntoIterator<Item = &'a str>) -> Shelf {
        Shelf::of(device, Book::of_lines(lines), Sorted::new())
    }

    /// A book that was read on this device, with the names of its people.
    pub fn of(device: Device, book: Book, names: People) -> Shelf {
        let clock = Clock::new(device, book.last_stamp());
        Shelf {
            book,
            clock,
            names,
            unsaved: Set::new(),
            failed: vec![],
            names_failed: Names::default(),
            saved: None,
            last_act: None,
            acts_before: vec![],
            taken_back: vec![],
            last_tick: None,
            in_hand: None,
            prospects: Rc::default(),
            folded: RefCell::default(),
        }
    }

    /// The name of a person, where it is known.
    pub fn name(&self, person: Id) -> Option<&String> {
        self.names.get(&person).map(|person| &person.name)
    }

    /// Takes in entries that are written elsewhere, with the names of their people; they are shown at once and not saved yet.
    pub fn fill(&mut self, lines: &[Posted], names: &[(Id, String)]) {
        self.book.merge(lines.iter().map(|posted| posted.line.as_str()));
        self.clock = Clock::new(self.clock.device(), self.book.last_stamp());
        self.names.extend(names.iter().map(|(id, beside)| (*id, person_read(beside))));
        self.unsaved.extend(lines.iter().map(|posted| posted.id));
    }

    /// Carries out an order: it is shown at once, and what it wrote is handed on to be saved.
    ///
    /// # Errors
    /// Why the answer was no; nothing has changed then.
    pub fn order(&mut self, command: &Command, now: Now) -> Answer<Option<Written>> {
        let entries = decide(&self.book, command, now)?.stamped(&self.book, &mut self.clock);
        let Some(first) = entries.first() else { return Ok(None) };
        let act = first.act.unwrap_or(first.id);
        let lines: Vec<Posted> = entries.iter().map(|entry| Posted { id: entry.id, line: self.book.add(entry) }).listed();
        self.unsaved.extend(lines.iter().map(|posted| posted.id));
        entries.iter().for_each(|entry| self.forget_about(entry));
        Ok(Some(Written { act, entries, lines }))
    }

    /// A tick at the saw is the last act of this tab now.
    pub fn was_ticked(&mut self, tick: Option<LastTick>) {
        self.acts_before.clear();
        self.taken_back.clear();
        (self.last_act, self.last_tick) = (None, tick);
    }

    /// The bench as it stands.
    pub fn bench(&self) -> Rc<Bench> {
        self.folded.borrow_mut().bench.get_or_insert_with(|| Rc::new(fold::bench(&self.book))).clone()
    }

    /// What waits, and what is usual.
    pub fn waits(&self) -> Rc<Waits> {
        let bench = self.bench();
        self.folded.borrow_mut().waits.get_or_insert_with(|| Rc::new(over::waits(&self.book, &bench))).clone()
    }

    /// All that sheets of jobs and prices are read from, at a moment. How many entries no copy holds is not known here.
    pub fn shop(&self, now: Moment) -> Shop<'_> {
        let shop = Shop::folded(&self.book, (self.bench(), self.workshop()), now)
            .with_prospects(self.prospects.clone())
            .with_history(self.folded.borrow().history.clone());
        match self.folded.borrow().waits.clone() {
            Some(waits) => shop.waiting(waits),
            None => shop,
        }
    }

    /// What fits meanwhile, worked out once a minute and after each entry.
    pub fn fits(&self, now: Moment, found: impl FnOnce() -> Option<Meanwhile>) -> Option<Rc<Meanwhile>> {
        let by = now.ms().div_euclid(60_000);
        let known = self.folded.borrow().fits.clone().filter(|(at, _)| *at == by);
        let (_, fits) = known.unwrap_or_else(|| (by, found().map(Rc::new)));
        self.folded.borrow_mut().fits = Some((by, fits.clone()));
        fits
    }

    /// The workshop as it stands.
    pub fn workshop(&self) -> Rc<Workshop> {
        self.folded.borrow_mut().workshop.get_or_insert_with(|| Rc::new(fold::workshop(&self.book))).clone()
    }

    /// What would be lost with this phone, to the minute.
    pub fn copy_age(&self, now: Moment) -> CopyAge {
        let minute = now.ms() / 60_000;
        let known = self.folded.borrow().copy.filter(|(at, _)| *at == minute);
        let (_, age) = known.unwrap_or_else(|| (minute, copy_age(&self.book, &self.bench(), self.workshop().copy, now)));
        self.folded.borrow_mut().copy = Some((minute, age));
        age
    }

    /// The haul in hand as it stands.
    pub fn haul(&self) -> Option<Rc<Haul>> {
        let known = self.folded.borrow().haul.clone();
        let found = || {
            let van = || self.workshop().wood.van();
            let again = self.in_hand.and_then(|id| haul_in_hand(&self.book, id, van));
            again.or_else(|| in_hand(&self.book, van)).map(Rc::new)
        };
        let haul = known.unwrap_or_else(found);
        self.folded.borrow_mut().haul = Some(haul.clone());
        haul
    }

    /// Takes another haul in hand, or the newest again.
    pub fn take_in_hand(&mut self, haul: Option<Id>) {
        self.in_hand = haul;
        self.forget_all();
    }

    /// Whether it is an earlier haul that is in hand.
    pub fn has_earlier(&self) -> bool {
        self.in_hand.is_some()
    }

    /// What the other hauls of its supplier showed.
    pub fn past(&self, haul: &Haul) -> Past {
        let known = self.folded.borrow().past.filter(|past| past.is_of(haul));
        let past = known.unwrap_or_else(|| past(&self.book, haul));
        self.folded.borrow_mut().past = Some(past);
        past
    }

    /// All that is known beside the haul in hand.
    pub fn known(&self, haul: &Haul) -> Rc<Known> {
        let past = self.past(haul);
        let known = self.folded.borrow().known.clone().filter(|known| known.past == past);
        let known = known.unwrap_or_else(|| Rc::new(Known::of(&self.book, (self.workshop(), past), haul)));
        self.folded.borrow_mut().known = Some(known.clone());
        known
    }

    fn forget_about(&self, entry: &Entry) {
        let mut folded = self.folded.borrow_mut();
        folded.copy = folded.copy.map(|(minute, age)| (minute, age.and(entry, false)));
        // What is taken back or put back changes what it was about, and the age of the copy.
        if let Fact::Struck(Struck { entries }) | Fact::Restored(Restored { entries }) = &entry.fact {
            folded.copy = None;
            for (meant, _) in entries.iter().filter_map(|id| self.book.entry(*id)) {
                folded.forget(meant);
                folded.bench = folded.bench.take().filter(|bench| !worked_on(meant).any(|on| bench.minds(on)));
            }
        }
        folded.forget(entry);
        folded.acted(entry);
    }

    fn forget_all(&self) {
        *self.folded.borrow_mut() = Folded::default();
    }

    /// These were saved.
    pub fn saved(&mut self, ids: &[Id], at: Wall) {
        let ids: Set<Id> = ids.iter().copied().collect();
        self.unsaved.retain(|id| !ids.contains(id));
        self.failed.retain(|posted| !ids.contains(&posted.id));
        self.saved = Some(at);
    }

    /// These could not be saved: the book is what it was without them, and what the store holds besides. A store that can't be
    /// read just then, or was read a moment too early, takes nothing away that was shown as saved.
    pub fn not_saved(&mut self, (lines, names): (Vec<Posted>, Names), stored: &[String]) {
        let ids: Set<Id> = lines.iter().map(|posted| posted.id).collect();
        let gone: Set<&str> = lines.iter().map(|posted| posted.line.as_str()).collect();
        self.unsaved.retain(|id| !ids.contains(id));
        let still = self.book.lines().filter(|line| !gone.contains(*line));
        self.book = Book::of_lines(still.chain(stored.iter().map(String::as_str)));
        self.failed.extend(lines);
        self.names_failed.kept.extend(names.kept);
        self.names_failed.forgotten.extend(names.forgotten);
        self.let_be();
        self.forget_all();
    }

    /// An act was written in this tab. What was taken back before stays so, unless the act itself turned one of these.
    pub fn acted(&mut self, act: Id, turns: bool) {
        let before = self.last_act.replace(act);
        self.acts_before.extend(before.filter(|before| *before != act && !self.has_forgotten(*before)));
        let old = self.acts_before.len().saturating_sub(BEFORE_MOST);
        self.acts_before.drain(..old);
        self.last_tick = None;
        if !turns {
            self.taken_back.clear();
        }
    }

    /// Whether somebody was forgotten by it: the name comes back with the tap after it, and no later.
    fn has_forgotten(&self, act: Id) -> bool {
        self.book.act(act).iter().any(|id| self.book.entry(*id).is_some_and(|(entry, _)| matches!(entry.fact, Fact::Forgotten(_))))
    }

    /// Nothing that was done before now is offered to be taken back.
    pub fn let_be(&mut self) {
        self.last_act = None;
        self.acts_before.clear();
    }

    /// The act that is taken back next: the last one, or the one before what was taken back.
    pub fn to_take_back(&self) -> Option<Id> {
        let stands = |act: &&Id| self.book.act(**act).iter().any(|id| self.book.entry(*id).is_some_and(|(_, struck)| !struck));
        let before = || self.acts_before.iter().rev().find(stands).copied().filter(|_| !self.taken_back.is_empty());
        self.last_act.or_else(before)
    }

    /// An act was taken back.
    pub fn took_back(&mut self, act: Id) {
        self.acts_before.retain(|before| *before != act);
        self.last_act = None;
        self.taken_back.retain(|other| *other != act);
        self.taken_back.push(act);
    }

    /// The act that is put back next: the one that was taken back last.
    pub fn to_put_back(&self) -> Option<Id> {
        self.taken_back.last().copied()
    }

    /// What was done last was to take something back.
    pub fn took_back_last(&self) -> bool {
        self.last_act.is_none() && !self.taken_back.is_empty()
    }

    /// An act stands again.
    pub fn stands_again(&mut self, act: Id) {
        self.taken_back.retain(|other| *other != act);
        self.last_act = Some(act);
    }

    /// What could not be saved, to be tried again; it is shown again.
    pub fn try_again(&mut self) -> (Vec<Posted>, Names) {
        let again = std::mem::take(&mut self.failed);
        for posted in &again {
            self.book.add_line(&posted.line);
            self.unsaved.insert(posted.id);
        }
        self.forget_all();
        (again, std::mem::take(&mut self.names_failed))
    }

    /// What this phone wrote last, before the page was loaded anew or since.
    fn last_here(&self) -> Option<&Entry> {
        let device = self.clock.device();
        self.book.entries().rev().map(|(entry, _)| entry).find(|entry| entry.stamp.2 == device)
    }

    /// Whether what this phone did last is still offered to be taken back, or put back: the same before and after the page was loaded anew.
    pub fn is_fresh(&self, now: Moment) -> bool {
        self.last_here().is_none_or(|last| is_fresh(last, now))
    }

    /// After the page was loaded anew: what this phone did last can be taken back, or put back, while it is fresh.
    pub fn resume(&mut self, now: Moment) {
        let Some(last) = self.last_here().filter(|last| last.wall.at <= now && is_fresh(last, now)) else { return };
        if let Fact::CopyKept(_) | Fact::Forgotten(_) = last.fact {
            return;
        }
        let act = last.act.unwrap_or(last.id);
        let (stands, taken_back, last_tick) = match turned(&self.book, act) {
            Some(Turned::TakenBack(of)) => (None, Some(of), None),
            Some(Turned::StandsAgain(of)) => (Some(of), None, None),
            None => match LastTick::of_drop(&self.book, act) {
                Some(drop) => (None, None, Some(drop)),
                None => (Some(act), None, None),
            },
        };
        (self.last_act, self.taken_back, self.last_tick) = (stands, taken_back.into_iter().listed(), last_tick);
    }

    /// Lines that another tab wrote, or a copy brought: what is written here comes after them.
    pub fn heard<'a>(&mut self, lines: impl IntoIterator<Item = &'a str>, now: Moment) {
        self.book.merge(lines);
        self.lift_clock(now);
        self.forget_all();
    }

    /// Sets the clock by this device's own last stamp; those of others lift it a little at most.
    pub fn set_clock(&mut self, now: Moment) {
        self.clock = Clock::new(self.clock.device(), None);
        self.lift_clock(now);
    }

    fn lift_clock(&mut self, now: Moment) {
        let own = self.book.entries().rev().map(|(entry, _)| entry.stamp).find(|stamp| stamp.2 == self.clock.device());
        for stamp in own.into_iter().chain(self.book.last_stamp()) {
            self.clock.heard(stamp, now);
        }
    }

    /// The store was emptied under the open book: all that is shown has to be saved once more.
    pub fn emptied(&mut self) {
        self.unsaved = self.book.entries().map(|(entry, _)| entry.id).collect();
        self.saved = None;
    }

    pub fn is_unsaved(&self, id: Id) -> bool {
        self.unsaved.contains(&id)
    }

    pub fn has_unsaved(&self) -> bool {
        !self.unsaved.is_empty()
    }

    /// How many entries could not be saved.
    pub fn failures(&self) -> usize {
        self.failed.len()
    }

    /// Pieces counted that are shown and not saved yet, by pile.
    pub fn unsaved_counts(&self) -> Sorted<Id, Count> {
        let entries = self.unsaved.iter().filter_map(|id| self.book.entry(*id)).filter(|(_, struck)| !struck);
        by_pile(entries.map(|(entry, _)| &entry.fact))
    }

    /// Pieces counted that could not be saved, by pile.
    pub fn failed_counts(&self) -> Sorted<Id, Count> {
        let read = |posted: &Posted| match line::read(&posted.line) {
            Line::Known(entry) => Some(entry),
            Line::Newer(_) | Line::Damaged(_) => None,
        };
        let entries: Vec<Rc<Entry>> = self.failed.iter().filter_map(read).listed();
        by_pile(entries.iter().map(|entry| &entry.fact))
    }

    /// The book with what could not be saved: all there is to put into a copy.
    pub fn whole_book(&self) -> Book {
        let mut book = self.book.clone();
        book.merge(self.failed.iter().map(|posted| &*posted.line));
        book
    }

    pub fn device(&self) -> Device {
        self.clock.device()
    }
}

fn by_pile<'a>(facts: impl Iterator<Item = &'a Fact>) -> Sorted<Id, Count> {
    let mut piles = Sorted::<Id, Count>::new();
    for fact in facts {
        if let Fact::PiecesCounted(f) = fact {
            let there = piles.entry(f.pile).or_default();
            *there = there.saturating_add(f.n);
        }
    }
    piles
}

#[cfg(test)]
mod tests;
