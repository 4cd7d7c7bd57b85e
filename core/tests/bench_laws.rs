//! Laws of the bench: split runs sum to the whole, no minute is paid twice, and the order in which facts arrive changes nothing.

use fivebar_core::bench::{Bench, Kind, Mender, On, Run, Work, day};
use fivebar_core::ledger::decide::{BenchCommand, Command, Now, decide};
use fivebar_core::ledger::{Book, Clock, Device, fold};
use fivebar_core::quantity::{Id, Moment, Offset, Span, Wall};
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
}

impl Phone {
    fn new(device: &str) -> Phone {
        Phone { book: Book::default(), clock: Clock::new(Device::read(device).unwrap(), None), told: 0 }
    }

    fn order(&mut self, minute: i64, command: BenchCommand) -> Option<Id> {
        self.told += 1;
        let [high, low] = self.told.to_be_bytes();
        let device = self.clock.device().name().as_bytes()[0];
        let now = Now { wall: wall(minute, 0), chance: [high, low, device, 0, 0, 0, 0, 0, 0, 0] };
        let entries = decide(&self.book, &Command::Bench(command), now).ok()?.stamped(&self.book, &mut self.clock);
        entries.iter().for_each(|entry| drop(self.book.add(entry)));
        entries.last().map(|entry| entry.id)
    }

    fn start(&mut self, minute: i64, person: u8, ago: i64) -> Option<Id> {
        self.order(minute, BenchCommand::Start { work: work(person), ago: Span::minutes(ago) })
    }
}

/// Anything a person may order, at any minute, even with a clock that jumps.
fn orders() -> impl Strategy<Value = Vec<(i64, u8, u8, i64, i64)>> {
    proptest::collection::vec((0_i64..6_000, 0_u8..7, 0_u8..3, 0_i64..6_000, 1_i64..3_000), 1..25)
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
            (_, Some(run)) => phone.order(minute, BenchCommand::Done { run, n: 1 }).and(None),
        };
        runs.extend(begun);
    }
}

/// Start, end and worked time of each run.
fn figures(bench: &Bench, now: Moment) -> Vec<(Id, Moment, Moment, Span)> {
    bench.runs().map(|run| (run.id, run.started.at, run.end(now), run.worked(now))).collect()
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

    #[test]
    fn any_order_of_corrections_gives_the_same_minutes(mends in proptest::collection::vec(1_i64..50, 6), order in Just([0_usize, 1, 2, 3, 4, 5]).prop_shuffle()) {
        let told = |order: [usize; 6]| {
            let mut phone = Phone::new("a");
            let runs: Vec<Id> = (0..6).filter_map(|n| phone.start(n * 100, 0, 0)).collect();
            for n in order {
                let stop = Some(at(n as i64 * 100 + 49 + mends[n]));
                let start = Some(at(n as i64 * 100 + 49 - mends[n] / 2)).filter(|_| mends[n] % 3 != 0);
                phone.order(700, BenchCommand::Mend { run: runs[n], start, stop, op: None });
            }
            figures(&fold::bench(&phone.book), at(900)).into_iter().map(|(_, start, end, span)| (start, end, span)).collect::<Vec<_>>()
        };
        prop_assert_eq!(told(order), told([0, 1, 2, 3, 4, 5]));
    }
}
