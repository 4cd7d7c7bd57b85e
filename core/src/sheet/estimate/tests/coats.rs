//! What is left of coats of which the number was planned, and nobody said at the bench how many coats there are.

use super::*;
use crate::sheet::account::account;

/// An hour was thought for coating four pieces, 84 min with what is put on top: the first coat took 15 min for all of them.
fn coated() -> (Phone, On) {
    let (mut phone, job) = one_piece(&[("pegs", Some(50))]);
    let span = Some(Span::minutes(60));
    phone.note(2, OperationPlanned { job: id(job), op: "coat".into(), kind: Kind::Make, stage: None, span, pieces: Some(4) });
    coat(&mut phone, job, (100, 4));
    (phone, job)
}

/// A coat on so many pieces at once, a quarter of an hour.
fn coat(phone: &mut Phone, job: On, (minute, n): (i64, Count)) {
    let run = phone.start(minute, "coat", job);
    clamp(phone, minute + 14, (run, n, "coat"));
    phone.stop(minute + 15, run);
}

fn take_off(phone: &mut Phone, minute: i64) {
    let waits = crate::ledger::fold::waits(&phone.book).on().map(|wait| wait.id).collect();
    phone.order(minute, Command::Wait(crate::ledger::decide::WaitCommand::End { waits })).unwrap();
}

/// What is to come of the coats after an act; the hours of the job's price say the same.
#[track_caller]
fn check(act: impl FnOnce(&mut Phone, On), (minute, left): (i64, i64)) {
    let (mut phone, job) = coated();
    act(&mut phone, job);
    let shown = to_come(&phone, job, minute);
    assert_eq!(shown[1], left);
    let hours = account(&Shop::of(&phone.book, at(minute)), id(job)).unwrap().hours;
    assert_eq!(hours.to_come.map(Span::as_minutes), Some(shown.iter().sum()));
}

#[test]
fn what_the_plan_leaves_of_coats_is_to_come_until_they_are_done() {
    // All four have a coat: of the hour that was planned for coats three quarters are left, while it dries and when it is dry.
    check(|_, _| (), (116, 69));
    check(|phone, _| take_off(phone, 200), (201, 69));
    // One of the second coat: three of it would be 15 min at the pace, and a third may follow, as it may once all four have it.
    check(|phone, job| coat(phone, job, (300, 1)), (316, 54));
    check(|phone, job| coat(phone, job, (300, 4)), (316, 54));
    // Begun again, and no piece noted yet.
    let again = |phone: &mut Phone, job| worked(phone, job, ("coat", 300, 305));
    check(again, (306, 64));
    // Longer than was thought, as in a plan of which nobody said a number.
    check(|phone, job| worked(phone, job, ("coat", 300, 380)), (381, 0));
    let done = |phone: &mut Phone, job| {
        again(phone, job);
        phone.bench(310, BenchCommand::PlanBatch { job: id(job), op: "coat".into(), n: 4 }).unwrap();
    };
    check(done, (311, 0));
    let then = |phone: &mut Phone, job| {
        again(phone, job);
        worked(phone, job, ("pegs", 310, 315));
    };
    check(then, (316, 0));
    // Taken off, and a day later nobody came back to it.
    let dry = |phone: &mut Phone, job| {
        again(phone, job);
        take_off(phone, 310);
    };
    for (minute, left) in [(311, 64), (310 + 24 * 60 + 1, 0)] {
        check(dry, (minute, left));
    }
}

/// 40 min were thought for coating four pieces, 56 with what is put on top: the first coat took 30 min for all of them, the next day one piece of
/// the second took 20. Three are left of it at 10 min each, where the plan leaves 6; less what the next one took so far.
#[test]
fn a_further_coat_that_is_under_way_has_its_pieces_to_come() {
    let begun = |pieces: Count| {
        let (mut phone, job) = one_piece(&[("pegs", Some(50))]);
        let span = Some(Span::minutes(40));
        phone.note(2, OperationPlanned { job: id(job), op: "coat".into(), kind: Kind::Make, stage: None, span, pieces: Some(4) });
        for (minute, took, n) in [(100, 30, 4), (1_600, 20, pieces)] {
            let run = phone.start(minute, "coat", job);
            clamp(&mut phone, minute + took, (run, n, "coat"));
            phone.stop(minute + took, run);
        }
        (phone, job)
    };
    let left = |(phone, job): &(Phone, On), minute| {
        let shown = to_come(phone, *job, minute);
        let hours = account(&Shop::of(&phone.book, at(minute)), id(*job)).unwrap().hours;
        assert_eq!(hours.to_come.map(Span::as_minutes), Some(shown.iter().sum()));
        shown[1]
    };
    assert_eq!(left(&begun(1), 1_621), 30);
    // All four have it: by the plan alone.
    assert_eq!(left(&begun(4), 1_621), 6);
    let mut on = begun(1);
    on.0.start(1_630, "coat", on.1);
    assert_eq!(left(&on, 1_634), 26);
    // Done with it as it is, or left for another step.
    let mut done = begun(1);
    let all = crate::ledger::kind::bench::BatchPlanned { job: id(done.1), op: "coat".into(), n: 5, done: Some(true) };
    done.0.note(1_625, all);
    assert_eq!(left(&done, 1_640), 0);
    let mut then = begun(1);
    worked(&mut then.0, then.1, ("pegs", 1_625, 1_630));
    assert_eq!(left(&then, 1_640), 0);
}

/// A tray of three whose coats are planned by themselves, an hour each: the first is on all of them in 29 minutes, dries, and is dry. It is done,
/// nothing of it is to come nor dries again, and the next is the second coat; begun again, it is done all the same.
#[test]
fn a_coat_that_is_planned_by_itself_is_done_with_its_pieces() {
    use crate::sheet::job::{NextAct, job};
    let check = |names: [&str; 2], pieces: &str, then: &str, (left, next): ([i64; 2], &str)| {
        let [one, two] = names;
        let plan = |op: &str| format!("plan \"{op}\" make 60 min for tray{pieces}\n");
        let told = format!(
            "2026-03-02 08:00 +00:00 workshop EUR metric\njob tray \"Tray\" 3 order\n{}{}\
             09:00 start \"{one}\" make on tray stage finish\n09:29 clamped 3 coat 1440 min as first\n09:29 stop\n{then}",
            plan(one),
            plan(two)
        );
        let story = crate::story::tell(&told);
        assert_eq!(story.refused, [], "{told}");
        let (shop, tray) = (Shop::of(&story.book, story.now.at), story.names.job("tray").unwrap());
        let rows = estimate(&shop, tray, false).unwrap().rows;
        let shown = rows.iter().map(|row| row.to_come().as_minutes()).collect::<Vec<_>>();
        assert_eq!(shown, left, "{names:?} {then}");
        assert_eq!(job(&shop, tray).unwrap().next, NextAct::WorkOn { op: Some(next.into()) }, "{names:?} {then}");
        let waits = crate::ledger::fold::waits(&story.book);
        let given = crate::sheet::dates::Given { waits: &waits, guess: |_| None, with_factor: false, now: story.now };
        let dates = crate::sheet::dates::dates(&shop, tray, given).unwrap().rows;
        assert!(dates.iter().all(|row| row.op.as_deref() != Some(one) || row.only_waits()), "{names:?} {then}");
    };
    let dry = "2026-03-03 15:00 +00:00 off first\n";
    for pieces in [" pieces 3", ""] {
        for names in [["Coat 1", "Coat 2"], ["First coat", "Second coat"]] {
            check(names, pieces, "09:40 start \"x\" office on tray\n09:41 stop\n", ([0, 64], names[1]));
            check(names, pieces, dry, ([0, 64], names[1]));
        }
    }
    let again = format!("{dry}15:10 start \"Coat 1\" make on tray stage finish\n15:15 stop\n");
    check(["Coat 1", "Coat 2"], " pieces 3", &again, ([0, 64], "Coat 2"));
}

/// Five stands that were coated twice, 40 minutes and 30: five more take as long, by their number at the bench, in the plan or in the job; of four
/// chairs with ten slats each forty are forty.
#[test]
fn two_coats_are_learnt_as_all_that_the_pieces_take() {
    let likely = |pieces: Count, planned: Option<Count>, next: Count, is_said: bool| {
        let mut phone = Phone::new("a");
        let (job, more) = (phone.job(0, "stands"), phone.job(1, "more"));
        for (of, n) in [(job, planned), (more, Some(next))] {
            phone.note(1, JobDescribed { pieces: Some(5), ..JobDescribed::of(id(of)) });
            phone.note(1, OperationPlanned { job: id(of), op: "coat".into(), kind: Kind::Make, stage: None, span: None, pieces: n });
        }
        for (from, to) in [(100, 140), (2_000, 2_030)] {
            let run = phone.start(from, "coat", job);
            clamp(&mut phone, to, (run, pieces, "coat"));
            phone.stop(to, run);
        }
        if is_said {
            let (job, op, n, done) = (id(job), "coat".into(), pieces.saturating_mul(2), Some(true));
            phone.note(2_031, crate::ledger::kind::bench::BatchPlanned { job, op, n, done });
        }
        end(&mut phone, 4_000, job);
        let row = seen(&phone, more, 9_000).rows.remove(0);
        assert_eq!(row.from, Basis::Own);
        row.before.as_minutes()
    };
    // The same where the maker was done with it by its key, which writes as many pieces as were noted.
    for is_said in [false, true] {
        let all = [likely(5, None, 5, is_said), likely(5, Some(5), 5, is_said), likely(20, Some(40), 40, is_said)];
        assert_eq!(all, [70; 3], "{is_said}");
    }
}

/// Two stands had three coats of half an hour by one operation, or by three with numbers; two low stands are to be coated.
fn second(first: &str, then: &str, more: &str) -> (Vec<(i64, i64)>, Vec<i64>) {
    let (rows, dates) = seen_of_both(first, then, more);
    let waits = |row: &crate::sheet::dates::DateRow| row.wait.as_ref().map_or(row.wet, |(_, span)| span.plus(row.wet)).as_minutes() / 60;
    (rows, dates.rows.iter().map(waits).collect())
}

/// The hours of its operations, likely and to come, and its dates.
fn seen_of_both(first: &str, then: &str, more: &str) -> (Vec<(i64, i64)>, crate::sheet::dates::DatesSheet) {
    let all = if then.contains("plan ") { "all-planned two\n" } else { "" };
    let told = format!(
        "2026-03-02 08:00 +00:00 workshop EUR metric\njob one \"Bar stand\" 2 spec\nabout one piece stand\n{first}end one\n\
         2026-03-09 08:00 job two \"Low stand\" 2 spec\nabout two piece stand\n{then}{all}{more}"
    );
    let story = crate::story::tell(&told);
    assert_eq!(story.refused, [], "{told}");
    let (shop, two) = (Shop::of(&story.book, story.now.at), story.names.job("two").unwrap());
    let rows = estimate(&shop, two, true).unwrap().rows;
    let shown = rows.iter().map(|row| (row.likely.as_minutes(), row.to_come().as_minutes())).collect();
    let given = crate::sheet::dates::Given {
        waits: shop.waits(),
        guess: |op| op.to_lowercase().contains("coat").then_some(crate::bench::wait::What::Coat),
        with_factor: true,
        now: story.now,
    };
    (shown, crate::sheet::dates::dates(&shop, two, given).unwrap())
}

/// Three coats, each on both stands on a day of its own.
fn coats(job: &str, names: [&str; 3]) -> String {
    let day = |(nth, name): (usize, &str)| {
        format!("2026-03-0{} 09:00 start \"{name}\" make on {job} stage finish\n09:30 clamped 2 coat 1440 min\n09:30 stop\n", nth + 3)
    };
    names.into_iter().enumerate().map(day).collect()
}

#[test]
fn coats_are_learnt_with_how_many_there_were() {
    let coat = |pieces: &str| format!("plan \"Coat\" make 90 min for one{pieces}\n");
    let plan = "plan \"Coat\" make 60 min for two pieces 2\n";
    let one = coats("one", ["Coat"; 3]);
    // As many pieces as were planned, or as the job has.
    for first in [format!("{}{one}", coat(" pieces 2")), format!("{}{one}", coat("")), one.clone()] {
        assert_eq!(second(&first, plan, ""), (vec![(90, 90)], vec![72]), "{first}");
    }
    // With one coat on, two are to come, and three dry; each day the same end.
    let begun =
        |n: usize| coats("two", ["Coat"; 3]).replace("2026-03-0", "2026-03-1").split_inclusive("stop\n").take(n).collect::<String>();
    let first = format!("{}{one}", coat(" pieces 2"));
    assert_eq!(second(&first, plan, &begun(1)), (vec![(90, 60)], vec![72]));
    assert_eq!(second(&first, plan, &begun(2)), (vec![(90, 30)], vec![48]));
    assert_eq!(second(&first, plan, &begun(3)), (vec![(90, 0)], vec![24]));
    // Said to be done after two.
    assert_eq!(second(&first, plan, &format!("{}batch 2 \"Coat\" for two\n", begun(2))), (vec![(90, 0)], vec![24]));
    // One coat with a number is one of them, and those with numbers are together what coats without one are.
    assert_eq!(second(&first, "plan \"Coat 2\" make 60 min for two pieces 2\n", ""), (vec![(30, 30)], vec![24]));
    let numbered = format!(
        "plan \"Coat 1\" make for one\nplan \"Coat 2\" make for one\nplan \"Coat 3\" make for one\n{}",
        coats("one", ["Coat 1", "Coat 2", "Coat 3"])
    );
    assert_eq!(second(&numbered, plan, ""), (vec![(90, 90)], vec![72]));
    assert_eq!(second(&numbered, "plan \"Coat 4\" make 60 min for two pieces 2\n", ""), (vec![(30, 30)], vec![24]));
}

/// Two hours were planned for coats, and the first took half an hour: the rest is to come, and the day it is ready does not move by the second.
#[test]
fn coats_that_were_planned_are_not_over_with_the_first() {
    let plan = "plan \"Coat\" make 120 min for two pieces 2\n";
    let begun =
        |n: usize| coats("two", ["Coat"; 3]).replace("2026-03-0", "2026-03-1").split_inclusive("stop\n").take(n).collect::<String>();
    assert_eq!(second("", plan, &begun(1)), (vec![(168, 138)], vec![48]));
    assert_eq!(second("", plan, &begun(2)), (vec![(168, 108)], vec![48]));
    assert_eq!(second("", plan, &format!("{}batch 2 \"Coat\" for two\n", begun(1))), (vec![(168, 0)], vec![24]));
}

/// Three coats a day apart and seven days of hardening: begun on Monday the 9th at eight, the third goes on on the 11th, and it is hard on the
/// 18th. By one operation, or by three with numbers; and after each coat that was put on on its day.
#[test]
fn hardening_begins_with_the_last_coat() {
    let hard = "usual cure normal 10080 min\n";
    let day = |first: &str, then: &str, more: &str| {
        let (_, dates) = seen_of_both(first, &format!("{hard}{then}"), more);
        dates.likely.map(|ready| ready.day).unwrap()
    };
    let (one, march) = (coats("one", ["Coat"; 3]), |day| crate::quantity::Day::ymd(2026, 3, day).unwrap());
    let plan = "plan \"Coat\" make 90 min for two pieces 2\n";
    assert_eq!(day(&one, plan, ""), march(18));
    let numbered: String = (1..=3).map(|nth| format!("plan \"Coat {nth}\" make 30 min for two pieces 2\n")).collect();
    assert_eq!(day(&one, &numbered, ""), march(18));
    let begun =
        |n: usize| coats("two", ["Coat"; 3]).replace("2026-03-0", "2026-03-1").split_inclusive("stop\n").take(n).collect::<String>();
    // Nothing is planned of it: it waits as the earlier one did.
    assert_eq!(day(&one, "", ""), march(18));
    // On at 09:30 on the 13th, 14th and 15th, where Sundays are worked; else the third goes on on Monday the 16th.
    let sundays = format!("workdays on sun\n{plan}");
    assert_eq!([1, 2, 3].map(|n| day(&one, &sundays, &begun(n))), [march(22); 3]);
    assert_eq!([2, 3].map(|n| day(&one, plan, &begun(n))), [march(23), march(22)]);
    // The first coat is on one of the two: the other is coated now, and does not wait for it.
    assert_eq!(day(&one, plan, &begun(1).replace("clamped 2", "clamped 1")), march(22));
}

/// The last coat is not taken off, and nothing else is made: a day after it was to be dry another is waited for no more, however it came off.
#[test]
fn a_coat_that_nobody_takes_off_does_not_keep_its_plan_to_come() {
    let begun = format!("plan \"Coat\" make 120 min for two pieces 2\n{}", coats("two", ["Coat"; 3]).replace("2026-03-0", "2026-03-1"));
    let first: String = begun.split_inclusive("stop\n").take(1).collect();
    let left = |more: &str| second("", &first, &format!("{more}job three \"Box\" 1 spec\n")).0;
    // On at 09:30 on the 13th and dry a day later.
    assert_eq!(left("2026-03-15 09:29 "), [(168, 138)]);
    assert_eq!(left("2026-03-15 09:30 "), [(168, 0)]);
    assert_eq!(left("2026-04-15 09:30 "), [(168, 0)]);
    assert_eq!(left("2026-04-15 09:00 off\n09:30 "), [(168, 0)]);
}

/// A coat that dries in an hour is on at 09:02 and 09:32; at 10:07 the first of the two has its second, while the other is wet until 10:32: only then
/// its second coat goes on, and dries another hour. Where the first piece alone has its first coat, the other waits for nothing.
#[test]
fn the_others_of_a_coat_wait_until_they_are_dry() {
    let begun = |more: &str| {
        let plan = "plan \"Coat\" make 90 min for two pieces 2\nends-in \"Coat\" coat 60 min\n\
                    2026-03-10 09:00 start \"Coat\" make on two stage finish\n";
        let (_, dates) = seen_of_both("", &format!("{plan}09:02 clamped 1 coat 60 min\n{more}"), "");
        let wait = |row: &crate::sheet::dates::DateRow| row.wait.as_ref().map(|(_, span)| span.as_minutes());
        dates.rows.iter().map(|row| (wait(row), row.wet.as_minutes())).collect::<Vec<_>>()
    };
    let both = "09:32 clamped 1 coat 60 min\n09:35 stop\n";
    let again = "start \"Coat\" make on two stage finish\n";
    assert_eq!(begun("09:05 stop\n"), [(Some(60), 0)]);
    assert_eq!(begun(both), [(Some(60), 57)]);
    assert_eq!(begun(&format!("{both}10:05 {again}10:07 clamped 1 coat 60 min\n10:08 stop\n")), [(Some(60), 24)]);
    assert_eq!(begun(&format!("{both}10:40 {again}10:42 clamped 1 coat 60 min\n10:43 stop\n")), [(Some(60), 0)]);
}
