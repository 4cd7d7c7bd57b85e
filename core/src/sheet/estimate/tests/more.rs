//! More work is never less time; and work beside the plan stands beside it.

use super::*;

/// Ten operations of 120 by history, the factor used: 1,200, and with one that is thought to take a minute 1,201. With an allowance that came
/// and went by whether anything was thought, the first was 1,260.
#[test]
fn one_more_minute_of_work_is_one_more_minute() {
    let mut phone = Phone::new("a");
    let (old, job) = (phone.job(0, "old"), phone.job(0, "next"));
    phone.note(1, JobDescribed { pieces: Some(1), ..JobDescribed::of(id(old)) });
    kind(&mut phone, job, "boat");
    for nth in 0..10 {
        let op = format!("step {nth}");
        plan(&mut phone, job, &op, None);
        worked(&mut phone, old, (&op, 100 + 200 * nth, 220 + 200 * nth));
    }
    end(&mut phone, 3_000, old);
    let each = |phone: &Phone| Span::sum(seen(phone, job, 9_000).rows.iter().map(|row| row.likely)).as_minutes();
    assert_eq!(each(&phone), 1_200);
    plan(&mut phone, job, "tag", Some(1));
    assert_eq!(each(&phone), 1_201);
}

/// A cabinet is glued up in several goes: one is clamped after 10 minutes of 120, and the clock runs on. Nobody said how many there are, so the
/// rest of the plan is to come; of two cabinets one is one of two.
#[test]
fn one_noted_of_a_single_piece_is_not_all_while_its_clock_runs() {
    let left = |pieces: u32| {
        let mut phone = Phone::new("a");
        let job = phone.job(0, "cabinet");
        phone.note(1, JobDescribed { pieces: Some(pieces), ..JobDescribed::of(id(job)) });
        let (op, span) = ("glue up".into(), Some(Span::minutes(120)));
        phone.note(2, OperationPlanned { job: id(job), op, kind: Kind::Make, stage: None, span, pieces: None });
        let run = phone.start(100, "glue up", job);
        phone.bench(110, crate::ledger::decide::BenchCommand::Done { run, n: 1 }).unwrap();
        let runs = seen(&phone, job, 135).rows.remove(0).to_come().as_minutes();
        phone.stop(135, run);
        (runs, seen(&phone, job, 135).rows.remove(0).to_come().as_minutes())
    };
    assert_eq!(left(1), (168 - 35, 0), "120 by the factor of 1.40");
    assert_eq!(left(2), (1, 1), "10 minutes for one, 25 on the other");
}

/// Whatever history says and whatever was thought, with the factor and without it: one operation more never lowers any figure, but that the
/// minute of rounding may fall to another row.
#[test]
fn adding_work_never_lowers_an_estimate() {
    use proptest::prelude::*;
    let ops = prop::collection::vec((prop::option::of(1..600_i64), prop::option::of(1..600_i64)), 1..7);
    let of = |(took, thought): &(Option<i64>, Option<i64>)| (took.is_none() && thought.is_none()).then_some(30).or(*thought);
    proptest!(ProptestConfig::with_cases(40), |(ops in ops, factor in any::<bool>())| {
        let mut phone = Phone::new("a");
        let (old, job) = (phone.job(0, "old"), phone.job(0, "next"));
        kind(&mut phone, job, "boat");
        for (nth, (took, _)) in ops.iter().enumerate() {
            let start = 100 + 1_000 * i64::try_from(nth).unwrap();
            took.iter().for_each(|took| worked(&mut phone, old, (&format!("step {nth}"), start, start + took)));
        }
        end(&mut phone, 8_000, old);
        let mut before = [0; 3];
        let mut rows = vec![];
        for (nth, op) in ops.iter().enumerate() {
            plan(&mut phone, job, &format!("step {nth}"), of(op));
            let sheet = estimate(&Shop::of(&phone.book, at(9_000)), id(job), factor).unwrap();
            let range = sheet.found.unwrap().range;
            let now = [range.low, range.likely, range.safe].map(Span::as_minutes);
            prop_assert!(before.iter().zip(&now).all(|(before, now)| before <= now), "{before:?}, then {now:?}");
            let likely: Vec<i64> = sheet.rows.iter().map(|row| row.likely.as_minutes()).collect();
            prop_assert!(rows.iter().zip(&likely).all(|(row, now): (&i64, &i64)| (row - now).abs() <= 1), "{rows:?}, then {likely:?}");
            prop_assert_eq!(likely.iter().sum::<i64>(), now[1], "what is shown of all is what is shown of each");
            (before, rows) = (now, likely);
        }
    });
}

/// Two of many operations are planned, 100 min together: 60 and 40 went by on them, and 500 on what nobody planned. Nothing else is to be
/// done, the maker said; but four pieces of five are sanded.
#[test]
fn what_was_planned_stands_apart_from_what_was_not() {
    use crate::ledger::decide::BenchCommand;
    let mut phone = Phone::new("a");
    let job = phone.job(0, "stools");
    phone.note(1, JobDescribed { pieces: Some(5), piece: Key::read("boat"), ..JobDescribed::of(id(job)) });
    for (op, minutes, pieces) in [("sand", 60, 5), ("bore", 40, 1)] {
        let (op, span, pieces) = (op.into(), Some(Span::minutes(minutes)), Some(pieces));
        phone.note(2, OperationPlanned { job: id(job), op, kind: Kind::Make, stage: None, span, pieces });
    }
    phone.order(3, Command::Estimate(EstimateCommand::SayWhole(WholePlanned { job: id(job), whole: true }))).unwrap();
    let beside = |phone: &Phone, minute| {
        let ends = seen(phone, job, minute).progress.ends.map(Span::as_minutes);
        (beside_on_both(phone, job, minute), ends)
    };
    let run = phone.start(100, "sand", job);
    phone.bench(148, BenchCommand::Done { run, n: 4 }).unwrap();
    phone.stop(160, run);
    assert_eq!(beside(&phone, 161).0, None, "all of it was planned");
    worked(&mut phone, job, ("bore", 200, 240));
    let again = crate::bench::Work { rework: true, ..crate::ledger::told::work("fill a hole", job) };
    let run = phone.bench(250, BenchCommand::Start { work: again, ago: Span::ZERO }).unwrap();
    phone.stop(256, run);
    assert_eq!(beside(&phone, 257).0, None, "what went wrong is of the plan: its factor is there for it");
    worked(&mut phone, job, ("coat", 300, 800));
    // The fifth has had its 12 minutes, and is not done for all that.
    assert_eq!(beside(&phone, 900), (Some((2, 106, 500)), Some(607)));
    let run = phone.start(901, "sand", job);
    phone.bench(902, BenchCommand::Done { run, n: 1 }).unwrap();
    phone.stop(903, run);
    assert_eq!(beside(&phone, 910), (Some((2, 108, 500)), Some(608)), "nothing is to come");
}

/// Operations planned, the minutes on them and on others, as the job's page and the bench say it.
#[track_caller]
fn beside_on_both(phone: &Phone, job: On, minute: i64) -> Option<(u32, i64, i64)> {
    let shop = Shop::of(&phone.book, at(minute));
    let of = |progress: Progress| progress.beside.map(|b| (b.planned, b.on_them.as_minutes(), b.on_others.as_minutes()));
    let kept = shop.job(id(job)).unwrap();
    let (at_the_bench, from) = progress_of(&shop, &kept, true);
    let page = seen(phone, job, minute).progress;
    assert_eq!(Progress { safe: None, ..page }, at_the_bench, "the same at the bench");
    assert_eq!(from.is_empty(), kept.kept.is_some());
    of(page)
}

/// Nothing was thought: both operations are known from a job before, and nobody knows what the whole takes.
#[test]
fn work_beside_a_plan_that_is_known_from_own_jobs_stands_apart_on_both_pages() {
    let mut phone = Phone::new("a");
    let (old, job) = (phone.job(0, "old"), phone.job(0, "next"));
    kind(&mut phone, old, "crate");
    kind(&mut phone, job, "boat");
    for (op, from) in [("sand", 100), ("bore", 300)] {
        worked(&mut phone, old, (op, from, from + 60));
        plan(&mut phone, job, op, None);
    }
    end(&mut phone, 3_000, old);
    keep(&mut phone, job, 3_001);
    worked(&mut phone, job, ("sand", 3_100, 3_170));
    assert_eq!(beside_on_both(&phone, job, 3_500), None, "nothing but what was planned");
    worked(&mut phone, job, ("coat", 3_200, 3_500));
    assert_eq!(beside_on_both(&phone, job, 3_600), Some((2, 70, 300)));
}

/// The estimate was given for two operations: the hours of a third, planned later, are no part of it until it is given again.
#[test]
fn what_is_planned_after_the_estimate_is_beside_it() {
    let mut phone = Phone::new("a");
    let job = phone.job(0, "next");
    kind(&mut phone, job, "boat");
    plan(&mut phone, job, "sand", Some(60));
    plan(&mut phone, job, "bore", Some(40));
    keep(&mut phone, job, 3);
    plan(&mut phone, job, "coat", Some(30));
    worked(&mut phone, job, ("sand", 100, 150));
    assert_eq!(beside_on_both(&phone, job, 200), None);
    worked(&mut phone, job, ("coat", 200, 240));
    assert_eq!(beside_on_both(&phone, job, 300), Some((2, 50, 40)));
    keep(&mut phone, job, 301);
    assert_eq!(beside_on_both(&phone, job, 310), None);
}

fn keep(phone: &mut Phone, job: On, minute: i64) {
    let given = seen(phone, job, minute).given().unwrap();
    phone.order(minute, Command::Estimate(EstimateCommand::Keep(given))).unwrap();
}

/// An hour was thought and an hour went by, and not one of five pieces was noted: what it takes in all is not what it took so far.
#[test]
fn where_no_piece_was_noted_nobody_says_what_it_takes_in_all() {
    let (mut phone, job) = five_stools();
    phone.order(3, Command::Estimate(EstimateCommand::SayWhole(WholePlanned { job: id(job), whole: true }))).unwrap();
    worked(&mut phone, job, ("sand", 100, 290));
    assert_eq!(seen(&phone, job, 300).progress.ends.map(Span::as_minutes), Some(280), "at hand: as it is likely");
    worked(&mut phone, job, ("oil", 300, 310));
    assert_eq!(seen(&phone, job, 310).progress.ends.map(Span::as_minutes), Some(290), "90 of 280 are left");
    worked(&mut phone, job, ("sand", 320, 330));
    worked(&mut phone, job, ("oil", 340, 350));
    assert_eq!(seen(&phone, job, 360).progress.ends, None);
}

/// Four lamps sanded in 80 minutes, and a cabinet of which 180 were thought: no kind, another kind, the same kind, and "other" of both.
#[test]
fn a_thought_is_nearer_than_another_kind_of_piece() {
    let after = |lamps: Option<&str>, cabinet: Option<&str>, thought: Option<i64>| {
        let mut phone = Phone::new("a");
        let (old, job) = (phone.job(0, "lamps"), phone.job(0, "cabinet"));
        let say = |phone: &mut Phone, on: On, piece: Option<&str>, n| {
            let piece = piece.and_then(Key::read);
            phone.note(1, JobDescribed { pieces: Some(n), piece, ..JobDescribed::of(id(on)) });
        };
        say(&mut phone, old, lamps, 4);
        say(&mut phone, job, cabinet, 1);
        plan(&mut phone, job, "sand", thought);
        worked(&mut phone, old, ("sand", 100, 180));
        end(&mut phone, 200, old);
        let row = seen(&phone, job, 9_000).rows.remove(0);
        (row.from, row.before.as_minutes())
    };
    let one = 22; // 80 / 3.70
    for kinds in [(None, None), (Some("box"), None), (None, Some("shelf")), (Some("box"), Some("shelf")), (Some("other"), Some("other"))] {
        assert_eq!(after(kinds.0, kinds.1, Some(180)), (Basis::Thought, 180), "{kinds:?}");
    }
    assert_eq!(after(Some("box"), Some("box"), Some(180)), (Basis::Kind, one));
    assert_eq!(after(Some("box"), Some("box"), None), (Basis::Kind, one));
    assert_eq!(after(None, None, None), (Basis::Own, one));
    assert_eq!(after(Some("box"), None, None), (Basis::Own, one));
    assert_eq!(after(Some("other"), Some("other"), None), (Basis::Own, one));
    assert_eq!(after(Some("box"), Some("shelf"), None), (Basis::Operation, 60), "the kind tells them apart");
}

/// Sawing, gluing and sanding in turns: no rest rises by working, and all of it is never less than what is done and what is to come.
#[test]
fn what_is_left_never_rises_by_working_on_it() {
    let (mut phone, job) = one_piece(&[("saw", Some(90)), ("glue", Some(40)), ("sand", None)]);
    let mut before = to_come(&phone, job, 99);
    assert_eq!(before[..2], [126, 56]); // x 1.4
    let turns = [("saw", 70), ("glue", 30), ("saw", 10), ("sand", 30), ("glue", 60), ("sand", 300), ("saw", 20)];
    let mut start = 100;
    for (op, minutes) in turns {
        worked(&mut phone, job, (op, start, start + minutes));
        let sheet = seen(&phone, job, start + minutes);
        let left: Vec<i64> = sheet.rows.iter().map(|row| row.to_come().as_minutes()).collect();
        assert!(left.iter().zip(&before).all(|(left, before)| left <= before), "{op}: {before:?} to {left:?}");
        let (in_all, ends) = (sheet.in_all().unwrap(), sheet.progress.so_far.plus(sheet.to_come.unwrap().safe));
        assert!(sheet.progress.ends.unwrap() <= in_all.likely && ends <= in_all.safe, "{op}: {in_all:?}");
        (before, start) = (left, start + minutes);
        if start == 170 {
            assert_eq!(before[0], 126 - 70, "with the factor, at hand or left");
        }
    }
    assert_eq!(before, [29, 0, 0], "the sawing took 100 of 126 and was the last, so it has what half of such times have left");
}

/// Demo B before any history, the drive planned first: 19 h x 1.4 = 26 h 36 in all, row by row, the drive 90 x 1.4 = 126 of it, and so much is to
/// come before anything is begun. Once all else is done the drive's own 90 min are to come, less what is driven.
#[test]
fn a_drive_counts_in_all_as_all_that_was_thought_and_is_to_come_as_planned_once_it_is_alone() {
    use crate::ledger::decide::BenchCommand;
    let mut phone = Phone::new("a");
    let job = phone.job(0, "bench");
    kind(&mut phone, job, "boat");
    let drive = |minutes| OperationPlanned {
        job: id(job),
        op: "drive".into(),
        kind: Kind::Deliver,
        stage: None,
        span: Some(minutes),
        pieces: None,
    };
    phone.note(1, drive(Span::minutes(90)));
    plan(&mut phone, job, "all else", Some(1_050));
    let sums = |sheet: &EstimateSheet| {
        let likely = sheet.rows.iter().map(|row| row.likely.as_minutes()).collect::<Vec<_>>();
        (likely, sheet.found.as_ref().unwrap().range.likely.as_minutes(), sheet.progress.to_come.unwrap().as_minutes())
    };
    let sheet = seen(&phone, job, 9);
    assert_eq!(sums(&sheet), (vec![1_470, 126], 1_596, 1_596));
    // What was planned is off together: the drive, planned first and driven last, says the same of it.
    let tenths: Vec<Decimal> = steps::tenths(&sheet).into_iter().map(|tenth| tenth.times).collect();
    let range = sheet.found.as_ref().unwrap().range;
    assert_eq!(tenths.len(), 1);
    let safe = tenths[0].checked_mul(Decimal::from(1_596)).unwrap().round_dp(0);
    assert!((safe - Decimal::from(range.safe.as_minutes())).abs() <= Decimal::ONE, "{safe} {range:?}");
    // With an allowance in its place: 90 x 1.075 = 96.75 and 1,050 x 1.075 = 1,128.75.
    let without = estimate(&Shop::of(&phone.book, at(9)), id(job), false).unwrap();
    assert_eq!(sums(&without), (vec![1_129, 97], 1_226, 1_226)); // 1,140 x 1.075 = 1,225.5
    let frame = phone.start(100, "all else", job);
    phone.bench(1_000, BenchCommand::Done { run: frame, n: 1 }).unwrap();
    phone.stop(1_100, frame);
    assert_eq!(sums(&seen(&phone, job, 1_110)), (vec![1_470, 126], 1_596, 90));
    let work = crate::bench::Work { kind: Kind::Deliver, ..crate::ledger::told::work("drive", job) };
    let run = phone.bench(1_200, BenchCommand::Start { work, ago: Span::ZERO }).unwrap();
    phone.stop(1_230, run);
    let sheet = seen(&phone, job, 1_240);
    assert_eq!(sheet.rows[1].left, Left::AsPlanned { thought: Span::minutes(90), gone: Span::minutes(30) });
    assert_eq!((sums(&sheet).2, sheet.in_all().unwrap().likely.as_minutes()), (60, 1_000 + 30 + 60));
}

/// 100 and 50 thought, 210 likely; 60 and 40 were taken, and all of it is noted as done: 100 in all, likely and safe. Sawn alone it is 60 and
/// 70 to come, 130 in all: the 80 that were not needed are none to come.
#[test]
fn what_is_done_took_what_it_took() {
    use crate::ledger::decide::BenchCommand;
    let mut phone = Phone::new("a");
    let job = phone.job(0, "job");
    kind(&mut phone, job, "boat");
    [("saw", 100), ("oil", 50)].into_iter().for_each(|(op, minutes)| plan(&mut phone, job, op, Some(minutes)));
    let mut done = |op: &str, from: i64, to: i64| {
        let run = phone.start(from, op, job);
        phone.bench(to - 1, BenchCommand::Done { run, n: 1 }).unwrap();
        phone.stop(to, run);
        seen(&phone, job, to + 1).in_all().map(|all| [all.likely, all.safe].map(Span::as_minutes)).unwrap()
    };
    assert_eq!(done("saw", 100, 160)[0], 130);
    assert_eq!(done("oil", 200, 240), [100, 100]);
}

/// 18 h for three, 9 h for one, 22 h for four: firsts of 18 / 2.85, 9 and 22 / 3.70 h, in the middle 6.97 h; five are 4.5 of it, 31 h 21.
#[test]
fn old_jobs_of_several_pieces_are_known_by_their_first() {
    let mut phone = Phone::new("a");
    let job = phone.job(0, "stools");
    phone.note(1, JobDescribed { pieces: Some(5), ..JobDescribed::of(id(job)) });
    let old = |name: &str, hours: i64, pieces| {
        let (piece, pieces) = (Key::read("stool"), Some(pieces));
        OldJobTold {
            name: name.into(),
            span: Span::minutes(hours * 60),
            thought: None,
            sum: None,
            piece,
            pieces,
            first: None,
            told_for: None,
        }
    };
    let three = vec![old("Three stools", 18, 3), old("Bar stool", 9, 1), old("Kids stools", 22, 4)];
    phone.order(2, Command::Estimate(EstimateCommand::Tell(three))).unwrap();
    // Its name tells the kind while none is said. They are no measure of a job of which nothing tells one.
    check(&phone, job, &[(Basis::Pieces, 3, 1_881)]);
    assert_eq!(seen(&phone, job, 9).whole.map(|whole| whole.by), Some(history::By::Named));
    let mirror = phone.job(2, "mirror");
    check(&phone, mirror, &[]);
    phone.note(9, JobDescribed { pieces: Some(5), piece: Key::read("stool"), ..JobDescribed::of(id(job)) });
    check(&phone, job, &[(Basis::Pieces, 3, 1_881)]);
    let whole = seen(&phone, job, 9).whole.unwrap();
    let firsts: Vec<i64> = whole.past.iter().map(|past| past.first().as_minutes()).collect();
    assert_eq!((firsts, whole.first.as_minutes(), whole.by), (vec![379, 540, 357], 418, history::By::Kind));
    // An operation nobody thought of is no share of pieces of other kinds: an hour for the first, 4.5 for five.
    let blank = phone.job(9, "blank");
    phone.note(9, JobDescribed { pieces: Some(5), ..JobDescribed::of(id(blank)) });
    phone.note(9, OperationPlanned { job: id(blank), op: "sand".into(), kind: Kind::Make, stage: None, span: None, pieces: None });
    check(&phone, blank, &[(Basis::Operation, 0, 270)]);
    // Nor are they a measure of a kind without a default of its own. What was told for that very job is.
    let job = phone.job(9, "shelves");
    phone.note(10, JobDescribed { piece: Key::read("shelf"), pieces: Some(5), ..JobDescribed::of(id(job)) });
    check(&phone, job, &[]);
    let told = OldJobTold { told_for: Some(id(job)), ..old("Rack stool", 10, 1) };
    phone.order(11, Command::Estimate(EstimateCommand::Tell(vec![told]))).unwrap();
    check(&phone, job, &[(Basis::Pieces, 1, 2_700)]); // 10 h x 4.5
    phone.note(12, JobDescribed { piece: Key::read("table"), ..JobDescribed::of(id(blank)) });
    check(&phone, blank, &[(Basis::Piece, 0, 5_832), (Basis::Piece, 0, 2_268)]); // 72 of 100, and the rest, of 30 h x 4.5
}

/// Nine hours were told under one job, ten under none, and an hour was measured; no kind is said of any of them. What was told under a job is of
/// that job alone, and none of them is a measure of one whose kind is known.
#[test]
fn what_was_told_under_a_job_is_no_measure_of_another() {
    use history::By;
    let old = |name: &str, hours: i64, told_for| OldJobTold {
        name: name.into(),
        span: Span::minutes(hours * 60),
        thought: None,
        sum: None,
        piece: None,
        pieces: None,
        first: None,
        told_for,
    };
    let check = |is_told: bool, others: bool, expected: [Option<(By, i64)>; 3]| {
        let mut phone = Phone::new("a");
        let [own, next, boat] = [(0, "own"), (1, "next"), (2, "boat")].map(|(minute, name)| phone.job(minute, name));
        kind(&mut phone, boat, "boat");
        let under_own = is_told.then(|| old("Big mirror", 9, Some(id(own))));
        let told: Vec<_> = under_own.into_iter().chain(others.then(|| old("Tray", 10, None))).collect();
        if !told.is_empty() {
            phone.order(3, Command::Estimate(EstimateCommand::Tell(told))).unwrap();
        }
        if others {
            let done = phone.job(4, "done");
            phone.note(4, JobDescribed { pieces: Some(1), ..JobDescribed::of(id(done)) });
            worked(&mut phone, done, ("saw", 100, 160));
            end(&mut phone, 200, done);
        }
        let found = [own, next, boat].map(|job| seen(&phone, job, 300).whole.map(|whole| (whole.by, whole.first.as_minutes())));
        assert_eq!(found, expected, "{is_told} {others}");
    };
    check(true, false, [Some((By::Told, 540)), None, None]);
    // The root of 60 x 600 minutes.
    check(false, true, [Some((By::NoKind, 190)), Some((By::NoKind, 190)), None]);
    check(true, true, [Some((By::Told, 540)), Some((By::NoKind, 190)), None]);
}

/// Three chairs took three hours, and no kind is known of them. A dining table, said or by its name, is none of them: it is as usual for one once it
/// is said, else nothing is known. Chairs again are by their name; a mirror is by a guess, and by that nothing is quoted.
#[test]
fn a_piece_of_a_known_kind_goes_by_no_piece_of_none() {
    use crate::sheet::quote::{NoQuote, quote};
    use history::By;
    let check = |name: &str, more: &str, by: Option<(By, i64)>, quoted: Option<NoQuote>| {
        let told = format!(
            "2026-03-02 08:00 +00:00 workshop EUR metric\nrate pay 16 hours 420 logged 350 costs 1050\njob old \"Ash chair\" 3 spec\n\
             start \"assemble\" make on old\n11:00 stop\nsell 3 old for 300\nend old\njob new \"{name}\" 1 order\nspend 20 wood on new\n{more}"
        );
        let story = crate::story::tell(&told);
        assert_eq!(story.refused, [], "{told}");
        let (shop, new) = (Shop::of(&story.book, story.now.at), story.names.job("new").unwrap());
        let sheet = estimate(&shop, new, true).unwrap();
        assert_eq!(sheet.whole.map(|whole| (whole.by, whole.first.as_minutes())), by, "{name} {more}");
        let waits = crate::ledger::fold::waits(&story.book);
        let given = crate::sheet::dates::Given { waits: &waits, guess: |_| None, with_factor: true, now: story.now };
        assert_eq!(quote(&shop, new, given).unwrap().range.err(), quoted, "{name} {more}");
    };
    let first = 63; // 180 / 2.85
    check("Big dining table", "", None, Some(NoQuote::Hours));
    check("Loss box", "", None, Some(NoQuote::Hours));
    check("Big dining table", "about new piece dining-table\n", Some((By::Usual, 3_000)), None);
    check("Loss box", "about new piece box\n", None, Some(NoQuote::Hours));
    check("Ash chair again", "", Some((By::Alike, first)), None);
    check("Chairs", "", Some((By::Alike, first)), None);
    check("Mirror", "", Some((By::NoKind, first)), Some(NoQuote::Guess));
    check("Mirror", "plan \"saw\" make 60 min for new\n", Some((By::NoKind, first)), None);
    // An old job without a kind is of that which its name tells.
    check("Big dining table", "old-job \"Old dining table\" 600 min\n", Some((By::Named, 600)), None);
}

/// An earlier stool took 480 min: 120 of jointing, 90 of gluing, 90 of sanding, 180 of coats. Of the next one sanding and coats are planned: all but
/// the 210 of the others, though the coats were thought of longer or turn out shorter. An operation that the earlier one did not have takes its
/// own hours off; what is done by others is of the rest.
#[test]
fn the_rest_is_what_operations_that_are_not_planned_took() {
    let check = |planned: &str, rest: Option<i64>| {
        let told = format!(
            "2026-03-02 08:00 +00:00 workshop EUR metric\njob old \"Oak stool\" 1 spec\nstart \"joint\" make on old\n\
             10:00 start \"glue\" make on old\n11:30 start \"sand\" make on old\n13:00 start \"coat\" make on old stage finish\n16:00 stop\nsell 1 old for 300\nend old\n\
             2026-03-03 08:00 job new \"Bar stool\" 1 spec\n{planned}"
        );
        let story = crate::story::tell(&told);
        assert_eq!(story.refused, [], "{told}");
        let sheet = estimate(&Shop::of(&story.book, story.now.at), story.names.job("new").unwrap(), true).unwrap();
        let found = sheet.rows.iter().find(|row| row.is_rest).map(|row| row.to_come().as_minutes());
        assert_eq!(found, rest, "{planned}");
    };
    let two = "plan \"Sand\" make for new\nplan \"coat\" make stage finish for new\n";
    check(two, Some(210));
    // Six hours of coats on a stool that is not sold yet: what else one takes is as before.
    let longer = "job big \"Big stool\" 1 spec\nstart \"coat\" make on big stage finish\nbatch 1 \"coat\" for big\n14:00 done 1\nstop\nconfirm\n2026-03-04 08:00 about new name \"Bar stools\"\n";
    check(&format!("{longer}{two}"), Some(210));
    check(&format!("{longer}{two}start \"coat\" make on new stage finish\n08:30 done 1\nstop\n"), Some(210));
    check(&format!("{two}plan \"carve\" make 100 min for new\n"), Some(70)); // 210 - 100 x 1.4
    check(&format!("{two}start \"joint\" make on new\n09:00 stop\n"), Some(150));
    check(&format!("{two}plan \"joint\" make for new\nplan \"glue\" make for new\n"), None);
}

/// Coats that had numbers are all in what is planned as coats.
#[test]
fn coats_with_numbers_are_in_the_coats_that_are_planned() {
    let told = "2026-03-02 08:00 +00:00 workshop EUR metric\njob old \"Oak stool\" 1 spec\nstart \"joint\" make on old\n\
                10:00 start \"coat 1\" make on old stage finish\n11:00 clamped coat 60 min\nstart \"coat 2\" make on old stage finish\n12:00 clamped coat 60 min\nstop\nsell 1 old for 300\nend old\n\
                2026-03-03 08:00 job new \"Bar stool\" 1 spec\nplan \"coat\" make stage finish for new\n";
    let story = crate::story::tell(told);
    assert_eq!(story.refused, []);
    let sheet = estimate(&Shop::of(&story.book, story.now.at), story.names.job("new").unwrap(), true).unwrap();
    assert_eq!(sheet.rows.iter().map(|row| (row.is_rest, row.likely.as_minutes())).collect::<Vec<_>>(), [(false, 120), (true, 120)]);
}
