//! Laws of the bench: split runs sum to the whole, no minute is paid twice, and the order in which facts arrive changes nothing.

#[path = "bench_laws/corrections.rs"]
mod corrections;

use fivebar_core::bench::{Bench, Doubt, Kind, Mender, On, Run, Shares, Work, day};
use fivebar_core::ledger::decide::{BenchCommand, BookCommand, Command, JobCommand, Now, decide};
use fivebar_core::ledger::kind::job::For;
use fivebar_core::ledger::{Book, Clock, Device, fold};
use fivebar_core::quantity::{Currency, Day, Id, Moment, Money, Offset, Span, Units, Wall};
use fivebar_core::sheet::bench::Seen;
use fivebar_core::sheet::{day as list, hours};
use proptest::prelude::*;

fn at(minute: i64) -> Moment {
    Moment::at(0).plus(Span::minutes(minute))
}

fn wall(minute: i64, offset: i64) -> Wall {
    Wall::new(at(minute), Offset::minutes(offset).unwrap())
}

fn work(person: u8) -> Work {
    let kind = Kind::ALL[usize::from(person) % 5];
    let person = (person != 0).then(|| Id::new(at(0), [person; 10]));
    Work { op: "sand".into(), kind, stage: kind.stage(), on: On::Nothing, person, rework: false }
}

/// One phone; what it refuses leaves its book as it was.
struct Phone {
    book: Book,
    clock: Clock,
    told: u16,
    /// Of the places where it is, in minutes: one order in each, round and round.
    offsets: Vec<i64>,
}

impl Phone {
    fn new(device: &str) -> Phone {
        Phone { book: Book::default(), clock: Clock::new(Device::read(device).unwrap(), None), told: 0, offsets: vec![0] }
    }

    fn order(&mut self, minute: i64, command: BenchCommand) -> Option<Id> {
        self.any(minute, Command::Bench(command))
    }

    fn any(&mut self, minute: i64, command: Command) -> Option<Id> {
        self.told += 1;
        let [high, low] = self.told.to_be_bytes();
        let device = self.clock.device().name().as_bytes()[0];
        let now = Now {
            wall: wall(minute, self.offsets[usize::from(self.told) % self.offsets.len()]),
            chance: [high, low, device, 0, 0, 0, 0, 0, 0, 0],
        };
        let entries = decide(&self.book, &command, now).ok()?.stamped(&self.book, &mut self.clock);
        entries.iter().for_each(|entry| drop(self.book.add(entry)));
        entries.last().map(|entry| entry.id)
    }

    /// Two jobs to be at.
    fn jobs(&mut self) -> [On; 2] {
        ["stools", "shelf"].map(|name| {
            let now = Now { wall: wall(0, 0), chance: [name.len() as u8; 10] };
            let (currency, units) = (Currency::read("USD").unwrap(), Units::Inch);
            let begin = JobCommand::Begin { name: name.into(), currency, units, pieces: 5, made_for: For::Spec };
            let entries = decide(&self.book, &Command::Job(begin), now).unwrap().stamped(&self.book, &mut self.clock);
            entries.iter().for_each(|entry| drop(self.book.add(entry)));
            On::Job(entries[0].id)
        })
    }

    /// Takes something back, or makes it stand again.
    fn book_order(&mut self, minute: i64, command: BookCommand) -> bool {
        self.any(minute, Command::Book(command)).is_some()
    }

    fn start(&mut self, minute: i64, person: u8, ago: i64) -> Option<Id> {
        self.order(minute, BenchCommand::Start { work: work(person), ago: Span::minutes(ago) })
    }
}

/// Anything a person may order, at any minute, even with a clock that jumps.
fn orders() -> impl Strategy<Value = Vec<(i64, u8, u8, i64, i64)>> {
    proptest::collection::vec((0_i64..6_000, 0_u8..11, 0_u8..3, 0_i64..6_000, 1_i64..3_000), 1..25)
}

fn tell(phone: &mut Phone, orders: &[(i64, u8, u8, i64, i64)]) {
    let mut runs: Vec<Id> = vec![];
    for (minute, what, person, some, span) in orders.iter().copied() {
        let run = usize::try_from(some).ok().and_then(|n| runs.get(n % runs.len().max(1))).copied();
        let begun = match (what, run) {
            (0 | 1, _) | (_, None) => phone.start(minute, person, some % 40),
            (2, Some(run)) => phone.order(minute, BenchCommand::Stop { run }).and(None),
            (3, Some(run)) => phone.order(minute, BenchCommand::StopAt { run, at: at(some), by: Mender::Typed }).and(None),
            (4, Some(run)) => {
                let (start, stop) = (Some(at(some)).filter(|_| span % 2 == 0), Some(at(some + span)).filter(|_| span % 3 == 0));
                phone.order(minute, BenchCommand::Mend { run, start, stop, op: None }).and(None)
            }
            (5, _) => phone.order(minute, BenchCommand::Recall { work: work(person), start: at(some), stop: at(some + span), heads: 1 }),
            (6, Some(run)) => phone.order(minute, BenchCommand::Break { run, from: at(some), to: at(some + span % 90) }).and(None),
            (7, Some(run)) => phone.order(minute, BenchCommand::DoneInAll { run, n: u32::from(person) }).and(None),
            (8, Some(act)) => phone.any(minute, Command::Book(BookCommand::TakeBack { act })).and(None),
            (9, Some(act)) => phone.any(minute, Command::Book(BookCommand::Restore { act })).and(None),
            (_, Some(run)) => phone.order(minute, BenchCommand::Done { run, n: 1 }).and(None),
        };
        runs.extend(begun);
    }
}

/// Start, end and worked time of each run.
fn figures(bench: &Bench, now: Moment) -> Vec<(Id, Moment, Moment, Span)> {
    bench.runs().map(|run| (run.id, run.started.at, run.end(now), run.worked(now))).collect()
}

/// Of the places a maker travels through, and of both sides of the nights in which clocks change.
fn offsets() -> impl Strategy<Value = Vec<i64>> {
    proptest::collection::vec(prop_oneof![Just(-300), Just(-240), Just(60), Just(120), -720_i64..840], 1..5)
}

fn plus(sum: Shares, shares: Shares) -> Shares {
    sum.plus(shares)
}

fn no_minute_twice(bench: &Bench, now: Moment) {
    let runs: Vec<&Run> = bench.runs().filter(|run| Span::ZERO < run.worked(now)).collect();
    for (n, one) in runs.iter().enumerate() {
        for other in runs.iter().skip(n + 1).filter(|other| other.work.person == one.work.person) {
            let apart = one.end(now) <= other.started.at || other.end(now) <= one.started.at;
            assert!(apart, "{one:?} overlaps {other:?}");
        }
    }
}

proptest! {
    #[test]
    fn split_runs_sum_to_the_whole(mut switches in proptest::collection::vec(1_i64..2_880, 0..8)) {
        switches.sort();
        let mut phone = Phone::new("a");
        phone.start(0, 0, 0);
        for minute in &switches {
            phone.start(*minute, 0, 0);
        }
        let bench = fold::bench(&phone.book);
        prop_assert_eq!(bench.of_all(at(2_880)).own.total(), Span::minutes(2_880));
        prop_assert_eq!(bench.runs().count(), switches.len() + 1);
    }

    #[test]
    fn days_sum_to_what_was_worked(start in -3_000_i64..3_000, span in 0_i64..2_880, one in -720_i64..840, other in -720_i64..840) {
        let parts = day::split(wall(start, one), wall(start + span, other));
        prop_assert_eq!(Span::sum(parts.iter().map(|part| part.1)), Span::minutes(span));
        prop_assert!(parts.windows(2).all(|pair| pair[0].0 < pair[1].0));
    }

    /// Over midnight, over the nights in which clocks change, and over a change of zone: days sum to runs, weeks and years to days.
    #[test]
    fn totals_of_days_weeks_and_years_are_those_of_the_runs(orders in orders(), offsets in offsets(), now in 6_000_i64..9_000) {
        let mut phone = Phone { offsets: offsets.clone(), ..Phone::new("a") };
        tell(&mut phone, &orders);
        let (bench, seen) = (fold::bench(&phone.book), wall(now, *offsets.last().unwrap()));
        let mut days: Vec<Day> = bench.runs().flat_map(|run| day::parts(run, seen)).map(|part| part.0).collect();
        days.sort();
        days.dedup();
        let runs = bench.runs().map(|run| run.shares(seen.at)).fold(Shares::default(), plus);
        let by_day = days.iter().map(|one| day::total(bench.runs(), *one, seen).own).fold(Shares::default(), plus);
        prop_assert_eq!(by_day, runs);
        prop_assert_eq!(bench.of_all(seen.at).own, runs);
        // What is shown: a person's own, less what looks wrong.
        let here = Seen { now: seen, ..Seen::default() };
        let shown = days.iter().map(|one| list::day(&phone.book, *one, here).total.own).fold(Shares::default(), plus);
        let (first, last) = (days.first().copied().unwrap_or_default(), days.last().copied().unwrap_or_default());
        let between = hours::between((&bench, &phone.book), (first, last), here);
        prop_assert_eq!(between.own, shown);
        prop_assert_eq!(between.by_division.values().copied().fold(between.of_none, plus), shown);
        prop_assert_eq!(between.by_work.iter().map(|work| work.own).fold(Shares::default(), plus), shown);
        prop_assert_eq!(between.days.values().copied().fold(Shares::default(), plus), shown);
        let weeks = (0..=first.until(last) / 7 + 1).map(|n| hours::week((&bench, &phone.book), first.plus(7 * n), here));
        let weeks: Vec<_> = weeks.collect();
        prop_assert_eq!(weeks.iter().map(|week| week.own).fold(Shares::default(), plus), shown);
        prop_assert!(weeks.iter().all(|week| week.from.weekday() == 0 && week.from.until(week.to) == 6));
        let years = [1969, 1970].map(|year| hours::year((&bench, &phone.book), year, here).own);
        prop_assert_eq!(years.into_iter().fold(Shares::default(), plus), shown);
    }

    /// The clock is set back by so much while a run goes on: nothing is lost before it, nothing is below nothing, and it is listed.
    #[test]
    fn inv05_a_clock_set_back_is_lifted_and_marked(worked in 0_i64..1_000, behind in 2_i64..2_880, later in 0_i64..2_880) {
        let mut phone = Phone::new("a");
        let run = phone.start(10_000, 0, 0).unwrap();
        phone.order(10_000 + worked, BenchCommand::Done { run, n: 1 });
        let set_back = 10_000 + worked - behind;
        phone.order(set_back, BenchCommand::Stop { run });
        let next = phone.start(set_back + later, 0, 0).unwrap();
        let bench = fold::bench(&phone.book);
        let (one, two) = (bench.run(run).unwrap(), bench.run(next).unwrap());
        prop_assert_eq!(one.worked(at(20_000)), Span::minutes(worked), "lifted to the last stamp");
        prop_assert_eq!(one.doubts(at(20_000)), [Doubt::ClockSetBack]);
        prop_assert!(one.end(at(20_000)) <= two.started.at);
        prop_assert_eq!(two.started.at, at((10_000 + worked).max(set_back + later)));
        prop_assert_eq!(two.lifted, later + 1 < behind);
        prop_assert_eq!(two.tapped.at, at(set_back + later), "the raw stamp stays");
        no_minute_twice(&bench, at(20_000));
    }

    #[test]
    fn inv06_no_minute_is_negative_or_paid_twice_and_shares_sum_to_the_whole(orders in orders(), now in 0_i64..12_000) {
        let mut phone = Phone::new("a");
        tell(&mut phone, &orders);
        let (bench, seen) = (fold::bench(&phone.book), wall(now, 60));
        for run in bench.runs() {
            let worked = run.worked(seen.at);
            prop_assert!(Span::ZERO <= worked && worked <= Span::RUN_MOST);
            prop_assert_eq!(run.shares(seen.at).total(), worked);
            prop_assert_eq!(Span::sum(day::parts(run, seen).into_iter().map(|part| part.2)), worked);
        }
        no_minute_twice(&bench, seen.at);
    }

    #[test]
    fn inv03_two_phones_fold_alike_in_any_order_of_arrival(one in orders(), other in orders(), turn in 0_usize..60) {
        let (mut a, mut b) = (Phone::new("a"), Phone::new("b"));
        tell(&mut a, &one);
        tell(&mut b, &other);
        let mut lines: Vec<String> = a.book.lines().chain(b.book.lines()).map(str::to_owned).collect();
        let whole = fold::bench(&Book::of_lines(lines.iter().map(String::as_str)));
        let turn = turn % lines.len();
        lines.rotate_left(turn);
        lines.reverse();
        prop_assert_eq!(&fold::bench(&Book::of_lines(lines.iter().map(String::as_str))), &whole);
        no_minute_twice(&whole, at(12_000));
    }
}
