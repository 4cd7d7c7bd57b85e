//! Laws of the bench: split runs sum to the whole, no minute is paid twice, and the order in which facts arrive changes nothing.

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

/// Four runs of a hundred minutes, one after the other, known to both phones.
fn two_phones() -> ([Phone; 2], Vec<Id>) {
    let (mut one, mut two) = (Phone::new("a"), Phone::new("b"));
    let runs: Vec<Id> = (0..4).filter_map(|n| one.start(n * 100, 0, 0)).collect();
    one.order(400, BenchCommand::Stop { run: runs[3] });
    two.book.merge(one.book.lines());
    ([one, two], runs)
}

/// The lines of both phones, by the places they come in.
fn merged(phones: &[Phone; 2], order: &[usize]) -> Book {
    let mut lines: Vec<(usize, &str)> = order.iter().copied().cycle().zip(phones.iter().flat_map(|phone| phone.book.lines())).collect();
    lines.sort();
    Book::of_lines(lines.into_iter().map(|(_, line)| line))
}

/// What is said of the runs of a day, in whatever order.
#[derive(Clone, Copy, Debug)]
struct Corrections {
    ends: (i64, i64),
    /// From when, and how long.
    breaks: [(i64, i64); 2],
    in_all: u32,
}

/// The job of a run, its ends and its pieces.
type Ran = (On, i64, i64, u32);

/// Sand for the stools from 1:40 to 5:00 with pieces at 2:20, 3:00 and 4:10; three for the shelf; one run that will be struck, and one that was.
struct Corrected {
    phone: Phone,
    jobs: [On; 2],
    runs: [Id; 4],
    last: Id,
}

impl Corrected {
    fn begin() -> Corrected {
        let mut phone = Phone::new("a");
        let jobs = phone.jobs();
        let mut run = |on: On, from: i64, to: i64, notes: &[(i64, u32)]| {
            let run = phone.order(from, BenchCommand::Start { work: Work { on, ..work(0) }, ago: Span::ZERO }).unwrap();
            let last = notes.iter().map(|(at, n)| phone.order(*at, BenchCommand::Done { run, n: *n }).unwrap()).last();
            phone.order(to, BenchCommand::Stop { run });
            (run, last.unwrap_or(run))
        };
        let (sand, last) = run(jobs[0], 100, 300, &[(140, 1), (180, 1), (250, 1)]);
        let runs =
            [sand, run(jobs[1], 310, 380, &[(330, 2), (350, 1)]).0, run(jobs[1], 400, 450, &[]).0, run(jobs[1], 460, 500, &[(480, 1)]).0];
        // A break answers for nothing: that it ended then is said before.
        phone.order(505, BenchCommand::Confirm { run: sand });
        assert!(phone.book_order(510, BookCommand::TakeBack { act: runs[3] }));
        Corrected { phone, jobs, runs, last }
    }

    /// The part of the sanding that has a moment.
    fn part_at(&self, moment: i64) -> Id {
        let bench = fold::bench(&self.phone.book);
        bench.on(self.jobs[0]).rfind(|run| run.started.at <= at(moment)).unwrap().id
    }

    fn correct(&mut self, nth: usize, said: Corrections) {
        let mend =
            |run, start: Option<i64>, stop: Option<i64>| BenchCommand::Mend { run, start: start.map(at), stop: stop.map(at), op: None };
        let a_break = |run, (from, long): (i64, i64)| BenchCommand::Break { run, from: at(from), to: at(from + long) };
        let bench = |phone: &mut Phone, command| assert!(phone.order(700, command).is_some());
        let phone = &mut self.phone;
        match nth {
            0 => bench(phone, mend(self.runs[0], Some(said.ends.0), None)),
            1 => {
                let run = self.part_at(260);
                bench(&mut self.phone, mend(run, None, Some(said.ends.1)));
            }
            2 | 3 => {
                let of = said.breaks[nth - 2];
                let run = self.part_at(of.0);
                bench(&mut self.phone, a_break(run, of));
            }
            4 => bench(phone, BenchCommand::Recall { work: Work { on: self.jobs[0], ..work(0) }, start: at(20), stop: at(50), heads: 1 }),
            5 => assert!(phone.book_order(700, BookCommand::TakeBack { act: self.runs[2] })),
            6 => assert!(phone.book_order(700, BookCommand::Restore { act: self.runs[3] })),
            7 => bench(phone, BenchCommand::DoneInAll { run: self.runs[1], n: said.in_all }),
            _ => {
                let bench = fold::bench(&phone.book);
                let notes = bench.on(self.jobs[0]).flat_map(|run| run.notches.clone());
                let last = notes.max_by_key(|note| (note.at, note.id)).map_or(self.last, |note| note.id);
                assert!(phone.book_order(700, BookCommand::TakeBack { act: last }));
            }
        }
    }

    /// Of each run its job, its ends and its pieces; what a piece of the sanding takes; and where the minutes of the day come from.
    fn figures(&self) -> (Vec<Ran>, Option<Span>, Shares) {
        let (bench, now) = (fold::bench(&self.phone.book), at(800));
        let minute = |moment| at(0).until(moment).as_minutes();
        let of = |run: &Run| (run.work.on, minute(run.started.at), minute(run.end(now)), run.done());
        let seen = Seen { now: wall(800, 0), ..Seen::default() };
        let total = list::day(&self.phone.book, seen.now.day(), seen).total.own;
        (bench.runs().map(of).collect(), bench.batch(self.jobs[0], "sand", now).pace(), total)
    }
}

/// One phone says that the second ended at 2:30 and the third began then; the other that the first ended at 1:20 and the second began
/// then, and, last of all, that the third began at 2:10.
#[test]
fn mends_of_neighbours_by_the_clock() {
    let (mut phones, runs) = two_phones();
    let mend =
        |run: Id, start: Option<i64>, stop: Option<i64>| BenchCommand::Mend { run, start: start.map(at), stop: stop.map(at), op: None };
    let [one, two] = &mut phones;
    one.order(500, mend(runs[2], Some(250), None)).unwrap();
    one.order(501, mend(runs[1], None, Some(250))).unwrap();
    two.order(502, mend(runs[0], None, Some(80))).unwrap();
    two.order(503, mend(runs[1], Some(80), None)).unwrap();
    two.order(504, mend(runs[2], Some(210), None)).unwrap();
    let orders: [fn(usize) -> usize; 3] = [|n| n, |n| 79 - n, |n| n * 37 % 80];
    for order in orders {
        let bench = fold::bench(&merged(&phones, &(0..80).map(order).collect::<Vec<_>>()));
        let minutes: Vec<_> = bench.runs().map(|run| (run.worked(at(900)).as_minutes(), run.doubts(at(900)).len())).collect();
        assert_eq!(minutes, [(80, 0), (130, 1), (90, 0), (100, 0)], "the third began while the second was said to go on");
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

    /// Both ends of one run, its name, a piece, and that it is right: said in any order.
    #[test]
    fn any_order_of_corrections_of_one_run_gives_the_same_minutes(
        (start, stop) in (0_i64..40, 0_i64..40), long in prop::bool::ANY, order in Just([0_usize, 1, 2, 3, 4]).prop_shuffle()
    ) {
        let told = |order: [usize; 5]| {
            let mut phone = Phone::new("a");
            let run = phone.start(100, 0, 0).unwrap();
            let end = if long { 600 } else { 180 };
            phone.order(end, BenchCommand::Stop { run });
            for n in order {
                let mend = |start: Option<i64>, stop: Option<i64>, op: Option<&str>| {
                    BenchCommand::Mend { run, start: start.map(at), stop: stop.map(at), op: op.map(str::to_owned) }
                };
                let said = [
                    mend(Some(100 + start), None, None),
                    mend(None, Some(end - stop), None),
                    mend(None, None, Some("plane")),
                    BenchCommand::Done { run, n: 1 },
                    BenchCommand::Confirm { run },
                ];
                phone.order(700, said[n].clone());
            }
            let bench = fold::bench(&phone.book);
            let here = Seen { now: wall(800, 0), ..Seen::default() };
            let shown = list::day(&phone.book, here.now.day(), here);
            (figures(&bench, at(800)).into_iter().map(|found| (found.1, found.2, found.3)).collect::<Vec<_>>(), shown.total, shown.unsettled)
        };
        prop_assert_eq!(told(order), told([0, 1, 2, 3, 4]));
    }

    /// Both ends of one run, its job, its operation, a helper who was forgotten and their times: said in any order.
    #[test]
    fn any_order_of_corrections_of_job_and_helper_gives_the_same_minutes(
        (start, stop, came, went) in (0_i64..40, 0_i64..40, 0_i64..20, 0_i64..20), paid in prop::bool::ANY,
        order in Just([0_usize, 1, 2, 3, 4, 5, 6]).prop_shuffle()
    ) {
        let told = |order: [usize; 7]| {
            let mut phone = Phone::new("a");
            let [stools, shelf] = phone.jobs();
            let run = phone.order(100, BenchCommand::Start { work: Work { on: stools, ..work(0) }, ago: Span::ZERO }).unwrap();
            let pay = paid.then(|| Money::whole(18.into(), Currency::read("USD").unwrap()).unwrap());
            phone.order(150, BenchCommand::HelperJoins { run, person: None, pay });
            phone.order(300, BenchCommand::Stop { run });
            let helper = fold::bench(&phone.book).run(run).unwrap().heads[0].id;
            for n in order {
                let mend = |start: Option<i64>, stop: Option<i64>| BenchCommand::Mend { run, start: start.map(at), stop: stop.map(at), op: None };
                let said = [
                    mend(Some(100 + start), None),
                    mend(None, Some(300 - stop)),
                    BenchCommand::Move { run, on: shelf },
                    BenchCommand::Rename { run, op: "mail".into(), kind: Kind::Office, stage: Kind::Office.stage() },
                    BenchCommand::RecallHelper { run, from: at(160), to: Some(at(190)), pay },
                    BenchCommand::MendHelper { run, helper, from: Some(at(145 + came)), to: None, pay: None },
                    BenchCommand::MendHelper { run, helper, from: None, to: Some(at(200 + went)), pay: None },
                ];
                phone.order(700, said[n].clone()).unwrap();
            }
            let bench = fold::bench(&phone.book);
            let (of, seen) = (bench.run(run).unwrap(), at(800));
            let mut labour: Vec<i64> = of.paid(seen).iter().map(|one| one.2.as_minutes()).collect();
            labour.sort();
            let job = bench.on(shelf).map(|run| run.shares(seen)).fold(Shares::default(), plus);
            (figures(&bench, seen)[0].3, of.labour(seen).as_minutes(), labour, job, of.work.kind, bench.on(stools).count())
        };
        let by_hand = (200 - start - stop) + 30 + (55 + went - came);
        prop_assert_eq!(told(order).1, by_hand);
        prop_assert_eq!(told(order), told([0, 1, 2, 3, 4, 5, 6]));
    }

    /// Both ends, two breaks, a run that was missed, one that is struck, one that comes again, pieces in all and a piece that is struck: said in
    /// any order, each of the part of the run that it is about by then.
    #[test]
    fn any_order_of_corrections_gives_the_same_runs_and_pieces(
        (start, stop) in (0_i64..20, 0_i64..30), one in (0_i64..30, 1_i64..20), other in (0_i64..30, 1_i64..20), in_all in 0_u32..6,
        order in Just([0_usize, 1, 2, 3, 4, 5, 6, 7, 8]).prop_shuffle()
    ) {
        prop_assume!(in_all != 3);
        let corrections = Corrections { ends: (100 + start, 300 - stop), breaks: [(125 + one.0, one.1), (185 + other.0, other.1)], in_all };
        let told = |order: [usize; 9]| {
            let mut days = Corrected::begin();
            for n in order {
                days.correct(n, corrections);
            }
            days.figures()
        };
        prop_assert_eq!(told(order), told([0, 1, 2, 3, 4, 5, 6, 7, 8]));
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

    /// Neighbours that touch, mended on two phones: what one says is not known to the other. The last word on each end stands, a later
    /// start ends what was stopped after it, and the lines may come in any order.
    #[test]
    fn corrections_that_meet_give_what_is_reckoned_by_hand(
        said in proptest::collection::vec((0_usize..2, 0_usize..3, prop::bool::ANY, -40_i64..40), 6..40),
        order in Just((0_usize..80).collect::<Vec<_>>()).prop_shuffle()
    ) {
        let (mut phones, runs) = two_phones();
        let mut ends: Vec<(i64, i64)> = (0..4).map(|n| (n * 100, n * 100 + 100)).collect();
        for (minute, (phone, nth, is_start, off)) in (500..).zip(said) {
            // Either side of one of three joints: the end of a run, or the start of the next.
            let (nth, to) = (nth + usize::from(is_start), (nth as i64 + 1) * 100 + off);
            let (start, stop) = (Some(at(to)).filter(|_| is_start), Some(at(to)).filter(|_| !is_start));
            let mend = BenchCommand::Mend { run: runs[nth], start, stop, op: None };
            if phones[phone].order(minute, mend).is_some() {
                let end = if is_start { &mut ends[nth].0 } else { &mut ends[nth].1 };
                *end = to;
            }
        }
        let found = figures(&fold::bench(&merged(&phones, &order)), at(1_000));
        let mut by_hand: Vec<(usize, i64, i64)> = ends.iter().enumerate().map(|(n, end)| (n, end.0, end.1)).collect();
        by_hand.sort_by_key(|(n, start, _)| (*start, *n));
        let next: Vec<i64> = by_hand.iter().skip(1).map(|one| one.1).chain([i64::MAX]).collect();
        let by_hand: Vec<_> = by_hand.iter().zip(next).map(|((n, start, stop), next)| {
            let end = (*stop).min(next).max(*start);
            (runs[*n], at(*start), at(end), Span::minutes(end - start))
        }).collect();
        prop_assert_eq!(found, by_hand);
    }
}
