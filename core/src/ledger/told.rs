//! A book told in a few lines, for tables: orders with their minute on the clock of one of several phones.

use super::decide::{Act, BenchCommand, BookCommand, Command, Now, decide};
use super::kind::job::{For, JobBegan};
use super::{Book, Clock, Device, Entry, Fact};
use crate::bench::{Bench, Kind, On, Work};
use crate::ledger::fold;
use crate::quantity::{Currency, Id, Listed, Moment, Offset, Span, Units, Wall};
use crate::refusal::Refusal;

pub fn at(minute: i64) -> Moment {
    Moment::at(0).plus(Span::minutes(minute))
}

/// One phone with its own book.
pub struct Phone {
    pub book: Book,
    clock: Clock,
    pub offset: Offset,
    told: u8,
}

impl Phone {
    pub fn new(device: &str) -> Phone {
        Phone {
            book: Book::default(),
            clock: Clock::new(Device::read(device).unwrap(), None),
            offset: Offset::UTC,
            told: device.as_bytes()[0],
        }
    }

    pub fn wall(&self, minute: i64) -> Wall {
        Wall::new(at(minute), self.offset)
    }

    fn now(&mut self, minute: i64) -> Now {
        self.told = self.told.wrapping_add(16);
        let mut chance = [self.told; 10];
        chance[0] = self.clock.device().name().as_bytes()[0];
        chance[1] = (self.book.len() / 16) as u8;
        Now { wall: self.wall(minute), chance }
    }

    /// Orders something; the id of the last entry.
    pub fn order(&mut self, minute: i64, command: Command) -> Result<Id, Refusal> {
        let now = self.now(minute);
        let act = decide(&self.book, &command, now)?;
        let entries = act.stamped(&self.book, &mut self.clock);
        Ok(self.keep(entries).last().copied().unwrap())
    }

    fn keep(&mut self, entries: Vec<Entry>) -> Vec<Id> {
        entries.iter().for_each(|entry| drop(self.book.add(entry)));
        entries.into_iter().map(|entry| entry.id).listed()
    }

    /// The last entry's id: of a start, the run's.
    pub fn bench(&mut self, minute: i64, command: BenchCommand) -> Result<Id, Refusal> {
        self.order(minute, Command::Bench(command))
    }

    pub fn start(&mut self, minute: i64, op: &str, on: On) -> Id {
        self.bench(minute, BenchCommand::Start { work: work(op, on), ago: Span::ZERO }).unwrap()
    }

    pub fn stop(&mut self, minute: i64, run: Id) {
        self.bench(minute, BenchCommand::Stop { run }).unwrap();
    }

    pub fn take_back(&mut self, minute: i64, act: Id) {
        self.order(minute, Command::Book(BookCommand::TakeBack { act })).unwrap();
    }

    /// Writes a fact down without an order.
    pub fn note(&mut self, minute: i64, fact: impl Into<Fact>) -> Id {
        let mut act = Act::new(self.now(minute));
        let id = act.add(fact);
        let entries = act.stamped(&self.book, &mut self.clock);
        self.keep(entries);
        id
    }

    pub fn job(&mut self, minute: i64, name: &str) -> On {
        let (currency, units) = (Currency::read("USD").unwrap(), Units::Inch);
        On::Job(self.note(minute, JobBegan { name: name.into(), currency, units, pieces: 5, made_for: For::Spec }))
    }

    /// Takes in all that another phone has.
    pub fn merge(&mut self, other: &Phone) {
        let lines: Vec<String> = other.book.lines().map(str::to_owned).listed();
        self.book.merge(lines.iter().map(String::as_str));
    }

    pub fn runs(&self) -> Bench {
        fold::bench(&self.book)
    }

    /// Minutes of each run, in order of their start.
    pub fn minutes(&self, now: i64) -> Vec<(String, i64)> {
        self.runs().runs().map(|run| (run.work.op.clone(), run.worked(at(now)).as_minutes())).listed()
    }
}

pub fn work(op: &str, on: On) -> Work {
    let kind = Kind::Make;
    Work { op: op.into(), kind, stage: kind.stage(), on, person: None, rework: false }
}
