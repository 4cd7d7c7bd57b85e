//! Laws of what is put right: any order of corrections gives the same minutes.

use super::*;

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
