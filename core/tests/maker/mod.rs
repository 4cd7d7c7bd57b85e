//! A maker at work: gives orders at clock times and keeps the book, for whole stories in Rust.
#![allow(dead_code)]

use fivebar_core::bench::{Kind, On as WorkOn, Stage, Work};
use fivebar_core::ledger::decide::{Act, BenchCommand, Command, HaulCommand, JobCommand, MoneyCommand, Much, Now, On, PileFacts, decide};
use fivebar_core::ledger::kind::haul::{Per, Way};
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::kind::{Exact, job as facts};
use fivebar_core::ledger::{Book, Clock, Device, Fact};
use fivebar_core::quantity::{Count, Currency, Day, Decimal, Id, Key, Length, Money, Offset, Span, Units, Wall};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::Shop;

pub struct Maker {
    pub book: Book,
    pub currency: Currency,
    clock: Clock,
    now: Wall,
    acts: u32,
}

pub fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

pub fn key(text: &str) -> Key {
    Key::read(text).unwrap()
}

/// An exact sum to so many digits, as shown.
#[track_caller]
pub fn shown(exact: Decimal, digits: u32) -> String {
    let width = digits as usize;
    format!("{:.width$}", fivebar_core::quantity::half_up(exact, digits))
}

/// Sixteenths of an inch.
pub fn sixteenths(n: i64) -> Length {
    Length::INCH_64TH.times(4 * n).unwrap()
}

pub fn mm(n: i64) -> Length {
    Length::MM.times(n).unwrap()
}

impl Maker {
    pub fn new(currency: Currency) -> Maker {
        let clock = Clock::new(Device::read("test").unwrap(), None);
        Maker { book: Book::default(), currency, clock, now: Wall::default(), acts: 0 }
    }

    pub fn at(&mut self, (year, month, day): (i32, u32, u32), minute: i64, offset: i64) -> &mut Maker {
        let offset = Offset::minutes(offset * 60).unwrap();
        let start = Day::ymd(year, month, day).unwrap().start(offset);
        self.now = Wall::new(start.plus(Span::minutes(minute)), offset);
        self
    }

    pub fn pass(&mut self, minutes: i64) {
        self.now.at = self.now.at.plus(Span::minutes(minutes));
    }

    pub fn try_order(&mut self, command: Command) -> Result<Vec<Id>, Refusal> {
        self.acts += 1;
        let mut chance = [0; 10];
        chance[..4].copy_from_slice(&self.acts.to_be_bytes());
        let act = decide(&self.book, &command, Now { wall: self.now, chance })?;
        let entries = act.stamped(&self.book, &mut self.clock);
        entries.iter().for_each(|entry| drop(self.book.add(entry)));
        Ok(entries.into_iter().map(|entry| entry.id).collect())
    }

    /// The ids of the facts of the act, in order.
    #[track_caller]
    pub fn order(&mut self, command: Command) -> Vec<Id> {
        self.try_order(command).unwrap()
    }

    /// Writes a fact down without an order, as another phone may have written it.
    pub fn note(&mut self, fact: impl Into<Fact>) -> Id {
        self.acts += 1;
        let mut chance = [0; 10];
        chance[..4].copy_from_slice(&self.acts.to_be_bytes());
        let mut act = Act::new(Now { wall: self.now, chance });
        let id = act.add(fact);
        act.stamped(&self.book, &mut self.clock).iter().for_each(|entry| drop(self.book.add(entry)));
        id
    }

    pub fn shop(&self) -> Shop<'_> {
        Shop::of(&self.book, self.now.at)
    }

    pub fn money(&self, text: &str) -> Money {
        Money::whole(d(text).normalize(), self.currency).unwrap()
    }

    // At the yard and the rack.

    pub fn trip(&mut self, haul: Option<Id>, distance: Length, (rate, per): (&str, Per), (wheel, bin): (i64, i64)) -> Id {
        let units = if per == Per::Mile { fivebar_core::quantity::Units::Inch } else { fivebar_core::quantity::Units::Metric };
        let ids = self.order(Command::Haul(HaulCommand::Leave { haul, currency: self.currency, units }));
        let (haul, trip) = (haul.unwrap_or(ids[0]), *ids.last().unwrap());
        self.order(Command::Haul(HaulCommand::DescribeTrip(fivebar_core::ledger::kind::haul::TripDescribed {
            distance: Some(distance),
            rate: Some(Exact(d(rate))),
            per: Some(per),
            wheel: Some(Span::minutes(wheel)),
            bin: Some(Span::minutes(bin)),
            ..fivebar_core::ledger::kind::haul::TripDescribed::of(haul, trip)
        })));
        haul
    }

    pub fn pile(&mut self, haul: Id, wood: Option<&str>, size: [Length; 3], n: Count) -> Id {
        let [thickness, width, length] = size.map(Some);
        let pile = PileFacts { wood: wood.map(key), thickness, width, length, ..PileFacts::default() };
        self.order(Command::Haul(HaulCommand::AddPile { haul, pile, n, way: Way::Bundle }))[0]
    }

    pub fn reject(&mut self, haul: Id, pile: Id, reasons: &[(&str, Count)]) {
        for (why, n) in reasons {
            self.order(Command::Haul(HaulCommand::Reject { haul, pile, n: *n, why: key(why) }));
        }
    }

    pub fn take(&mut self, haul: Id, pile: Id, job: Id, n: Count) {
        self.order(Command::Haul(HaulCommand::Take { haul, pile, job, n }));
    }

    // At the bench.

    pub fn start(&mut self, on: WorkOn, op: &str, (kind, stage): (Kind, Stage)) -> Id {
        let work = Work { op: op.into(), kind, stage, on, person: None, rework: op.starts_with("rework") };
        *self.order(Command::Bench(BenchCommand::Start { work, ago: Span::ZERO })).last().unwrap()
    }

    /// A run by the clock, and a pause after it.
    pub fn run(&mut self, on: WorkOn, op: &str, kind: (Kind, Stage), minutes: i64) -> Id {
        let run = self.start(on, op, kind);
        self.pass(minutes);
        self.order(Command::Bench(BenchCommand::Stop { run }));
        self.pass(7);
        if 180 < minutes {
            // The maker says that so long a run was one.
            self.order(Command::Bench(BenchCommand::Confirm { run }));
        }
        run
    }

    // On paper.

    pub fn spend(&mut self, on: On, kind: &str, much: Much) {
        self.order(Command::Money(MoneyCommand::Spend { on, much, kind: key(kind), what: None, when: None }));
    }

    pub fn whole(&mut self, on: On, kind: &str, sum: &str) {
        let sum = self.money(sum);
        self.spend(on, kind, Much::Whole(sum));
    }

    pub fn each(&mut self, on: On, kind: &str, (n, each): (&str, &str)) {
        let much = Much::Each { n: d(n), each: d(each), currency: self.currency };
        self.spend(on, kind, much);
    }

    pub fn share(&mut self, on: On, kind: &str, (used, of): (&str, &str), pack: &str) {
        let much = Much::Share { used: d(used), of: d(of), pack: self.money(pack) };
        self.spend(on, kind, much);
    }

    pub fn drive(&mut self, on: On, distance: Length) {
        self.order(Command::Money(MoneyCommand::Drive {
            on,
            distance,
            rate: None,
            currency: self.currency,
            what: None,
            when: None,
            delivery: None,
        }));
    }

    pub fn part(&mut self, job: Id, (name, n): (&str, Count), size: [Length; 3], wood: &str) {
        let [thickness, width, length] = size;
        let part = facts::PartPlanned { job, name: name.into(), n, thickness, width, length, wood: Some(key(wood)) };
        self.order(Command::Job(JobCommand::PlanPart(part)));
    }

    pub fn operation(&mut self, job: Id, (op, minutes): (&str, i64), kind: Kind) {
        let span = Some(Span::minutes(minutes));
        self.order(Command::Job(JobCommand::PlanOperation(facts::OperationPlanned {
            job,
            op: op.into(),
            kind,
            stage: None,
            span,
            pieces: None,
        })));
    }

    /// "Done with this job": the sheet's shares are carried by the order.
    pub fn end(&mut self, job: Id) {
        let hauls = {
            let shop = self.shop();
            fivebar_core::sheet::carried::freeze_for(&shop, &shop.job(job).unwrap()).unwrap()
        };
        self.order(Command::Job(JobCommand::End { job, hauls }));
    }

    /// Another phone with the same book, by the name of its device.
    pub fn parted(&self, device: &str) -> Maker {
        let clock = Clock::new(Device::read(device).unwrap(), self.book.last_stamp());
        let mut now = self.now;
        now.at = now.at.plus(Span::ms(1));
        Maker { book: self.book.clone(), currency: self.currency, clock, now, acts: self.acts + 1_000_000 }
    }

    /// Another phone that brought this one's copy in: its clock knows nothing of this one's.
    pub fn far(&self, device: &str) -> Maker {
        let clock = Clock::new(Device::read(device).unwrap(), None);
        Maker { book: self.book.clone(), currency: self.currency, clock, now: self.now, acts: self.acts + 1_000_000 }
    }

    /// The book of this phone with all that the other one wrote.
    pub fn merged(&self, other: &Maker) -> Book {
        Book::of_lines(self.book.lines().chain(other.book.lines()))
    }

    /// The book from its own lines, in another order: the same.
    pub fn shuffled(&self) -> Book {
        let mut lines: Vec<&str> = self.book.lines().collect();
        lines.reverse();
        Book::of_lines(lines)
    }

    pub fn count_of(&self, wanted: impl Fn(&Fact) -> bool) -> usize {
        self.book.entries().filter(|(entry, _)| wanted(&entry.fact)).count()
    }
}

/// A job of so many stools, just begun.
pub fn begun(pieces: u32) -> (Maker, Id) {
    let mut maker = Maker::new(Currency::USD);
    maker.at((2026, 1, 10), 600, -5);
    let (name, currency) = ("stools".into(), Currency::USD);
    let job = maker.order(Command::Job(JobCommand::Begin { name, currency, units: Units::Inch, pieces, made_for: For::Spec }))[0];
    (maker, job)
}

#[track_caller]
pub fn refused(maker: &mut Maker, command: Command, refusal: Refusal) {
    let before = maker.book.len();
    assert_eq!(maker.try_order(command), Err(refusal));
    assert_eq!(maker.book.len(), before);
}
