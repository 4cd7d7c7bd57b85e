//! The day to scale, its week, the way through days, what was put right and when.

use super::*;
use crate::words::Plain;
use std::rc::Rc;

/// A step of a day: at a minute after nine, begin an operation, or stop.
fn worked(steps: &[(i64, Option<&str>)]) -> Told {
    let mut told = Told::stands();
    for (minute, step) in steps {
        match step {
            Some(name) => {
                told.start(*minute, name);
            }
            None => {
                told.at(*minute, [tap(Tap::Stop)]);
            }
        }
    }
    told
}

/// What was done; what the day to scale says of it, and the shapes it is drawn with.
#[test]
fn a_day_is_drawn_to_scale_and_told_to_a_reader() {
    let check = |steps: &[(i64, Option<&str>)], now: i64, said: &str, shapes: &[&str]| {
        let mut told = worked(steps);
        let today = told.today();
        let shown = told.at(now, [day(DayTap::Show(today))]);
        holds(&shown, &[&format!("aria-label=\"The day to scale: {said}\"")]);
        holds(&shown, shapes);
    };
    check(&[(0, Some("Saw")), (30, None)], 40, "Saw 09:00 to 09:30", &["class=\"fink\"", ">09:00<", ">11:00<"]);
    check(
        &[(0, Some("Saw")), (30, None), (45, Some("Sand"))],
        60,
        "Saw 09:00 to 09:30; 15 min nothing; Sand 09:45 to 10:00, runs",
        &["class=\"runs\""],
    );
    check(&[(14 * 60 + 30, Some("Oil"))], 15 * 60 - 1, "Oil 23:30 to 23:59, runs", &[">23:00<"]);
}

#[test]
fn a_run_over_midnight_is_torn_on_both_days_and_the_second_says_so() {
    let mut told = worked(&[(14 * 60 + 30, Some("Oil")), (15 * 60 + 40, None)]);
    let (first, second) = (told.today_at(0), told.today_at(15 * 60 + 40));
    let shown = told.at(15 * 60 + 50, [day(DayTap::Show(first))]);
    holds(&shown, &["Oil 23:30 to midnight, on after midnight", "class=\"night\"", ">midnight<"]);
    let shown = told.at(15 * 60 + 50, [day(DayTap::Show(second))]);
    holds(&shown, &["Oil 00:00 to 00:40, from before midnight", "Oil began at 23:30 the day before: 40 min of it are of this day."]);
    let run = fivebar_core::ledger::fold::bench(&told.app.shelf().book).runs().next().unwrap().id;
    holds(&told.at(15 * 60 + 50, [day(DayTap::Show(first)), day(DayTap::Open(run))]), &["40 min of it on the day after"]);
}

/// Each word under the line of hours with its left edge, its right one, and how wide the line is.
fn hours(shown: &str) -> Vec<(f64, f64)> {
    let line = shown.split(r#"<svg class="sc tl""#).nth(1).unwrap().split("</svg>").next().unwrap();
    let texts = line.split("<text ").skip(1);
    let one = |text: &str| {
        let left: f64 = text.split(r#"x=""#).nth(1).unwrap().split('"').next().unwrap().parse().unwrap();
        let word = text.split('>').nth(1).unwrap().split('<').next().unwrap().to_owned();
        (left, left + crate::parts::letters::plain(&word, 14.0))
    };
    texts.map(one).collect()
}

/// A day that begins at midnight, one that ends there, and one of both, on clocks of twelve hours and of 24, at every width: no hour is
/// written over another.
#[test]
fn hours_are_never_written_over_each_other() {
    for (start, stop) in [(14 * 60 + 30, 15 * 60 + 40), (14 * 60 + 30, 17 * 60), (3 * 60, 15 * 60 + 5), (20 * 60, 38 * 60)] {
        for (halves, width) in [(true, 320.0), (true, 390.0), (true, 430.0), (false, 320.0), (false, 390.0), (false, 700.0)] {
            let mut told = worked(&[(start, Some("Oil")), (stop, None)]);
            told.app.speech = Rc::new(Plain { halves, ..Plain::default() });
            told.app.page = crate::parts::Page::new(width);
            let run = fivebar_core::ledger::fold::bench(&told.app.shelf().book).runs().next().unwrap().id;
            told.at(stop + 1, [tap(Tap::Right(run))]);
            let first = told.today_at(start);
            for shown in [first, first.next()] {
                let shown = told.at(stop + 10, [day(DayTap::Show(shown))]);
                if shown.contains("sc tl\" viewBox") {
                    let hours = hours(&shown);
                    let apart = |pair: &[(f64, f64)]| pair[0].1 + 4.0 <= pair[1].0;
                    assert!(!hours.is_empty() && hours.windows(2).all(apart), "{start} {width} {halves}: {hours:?} {shown}");
                }
            }
        }
    }
}

/// A stop that was forgotten over night stretches neither day to the night; how long does not count is said.
#[test]
fn a_forgotten_stop_does_not_draw_the_night() {
    let mut told = worked(&[(8 * 60, Some("Saw")), (23 * 60, None), (23 * 60 + 5, Some("Oil")), (23 * 60 + 65, None)]);
    let (first, second) = (told.today_at(0), told.today_at(23 * 60));
    let shown = told.at(23 * 60 + 70, [day(DayTap::Show(first))]);
    holds(&shown, &["7 h not counted</span>", ">17:00<"]);
    lacks(&shown, &[">midnight<", ">22:00<", "class=\"night\""]);
    let shown = told.at(23 * 60 + 70, [day(DayTap::Show(second))]);
    holds(&shown, &["8 h not counted</span>", ">08:00<"]);
    lacks(&shown, &[">00:00<", ">04:00<", "class=\"night\""]);
}

#[test]
fn the_hours_of_a_forgotten_stop_are_open_on_the_day_after_too() {
    let mut told = worked(&[(8 * 60, Some("Saw")), (23 * 60, None)]);
    let second = told.today_at(23 * 60);
    let shown = told.at(23 * 60 + 10, [day(DayTap::Show(second))]);
    let said = "Saw began at 17:00 the day before and is to settle: 8 h of it lie on this day and are not counted.";
    holds(&shown, &["Saw, from before midnight, not counted 00:00 to 08:00", said, "not counted</span>"]);
    let bench = told.at(23 * 60 + 11, [Msg::Bench(Tap::Close)]);
    holds(&bench, &["0 min on the job, and 15 h to settle", "and one to settle"]);
}

/// Left running from Tuesday 16:40 over two nights, to Thursday: which day it was is said.
#[test]
fn a_run_of_two_days_before_is_said_with_its_day() {
    let mut told = worked(&[(460, Some("Oil")), (460 + 40 * 60, None)]);
    let third = told.today_at(460 + 40 * 60);
    let shown = told.at(460 + 40 * 60 + 5, [day(DayTap::Show(third))]);
    holds(&shown, &["Oil began at 16:40 on Tue 3 March and is to settle: 8 h 40 of it lie on this day and are not counted."]);
    lacks(&shown, &["the day before"]);
}

/// Sawn from 9:00, left running from 17:00 to 7:50 and put right; boring from 17:10 to 17:40 was written down: of the 14 h 50 too much
/// 6 h 30 lie on the first day and 7 h 50 on the second.
#[test]
fn what_does_not_count_is_without_what_another_run_counts() {
    let mut told = worked(&[(0, Some("Saw")), (22 * 60 + 50, None)]);
    let (first, second) = (told.today_at(0), told.today_at(22 * 60 + 50));
    let run = told.app.shelf().bench().runs().next().unwrap().id;
    told.at(23 * 60, [tap(Tap::StoppedAt(run))]);
    told.at(23 * 60, presses("1700").into_iter().chain([tap(Tap::PadDone)]));
    holds(&told.at(23 * 60 + 1, [day(DayTap::Show(first))]), &["7 h not counted</span>"]);
    let shown = told.at(23 * 60 + 1, [day(DayTap::Show(second))]);
    let said = "Saw began at 09:00 the day before and was put right: 7 h 50 that its clock ran on this day are not counted.";
    holds(&shown, &["7 h 50 not counted</span>", said]);
    lacks(&shown, &["Nothing logged"]);
    let [start, stop] = [490, 520].map(|minute| told.now(minute).wall.at);
    let work = Work { op: "Bore".into(), ..told.app.shelf().bench().runs().next().unwrap().work.clone() };
    let now = told.now(23 * 60 + 2);
    told.app.order(&Command::Bench(BenchCommand::Recall { work, start, stop, heads: 1 }), now).unwrap();
    holds(&told.at(23 * 60 + 3, [day(DayTap::Show(first))]), &["6 h 30 not counted</span>", "8 h corrected", "30 min recalled"]);
}

/// Begun half an hour before the tap, two hours after it: the row says how much of it is corrected.
#[test]
fn a_row_says_how_much_of_it_is_corrected() {
    let mut told = Told::stands();
    told.at(30, [tap(Tap::Ago(30)), tap(Tap::Other)]);
    told.at(30, [op("Sand")]);
    told.at(150, [tap(Tap::Stop)]);
    let today = told.today();
    let shown = told.at(151, [day(DayTap::Show(today))]);
    holds(&shown, &["corrected: began at 09:00; the tap came at 09:30, 30 min corrected", "2 h measured", ">2 h 30<"]);
}

#[test]
fn what_was_put_right_is_open_to_scale_and_said_with_its_moment() {
    let mut told = worked(&[(0, Some("Sand")), (60, None)]);
    let (run, today) = (told.app.shelf().bench().runs().next().unwrap().id, told.today());
    told.at(62, [day(DayTap::Show(today)), day(DayTap::Open(run)), day(DayTap::Mend(Box::new(Mend::Stop(Typed::default()))))]);
    let shown = told.at(62, presses("0930").into_iter().chain([tap(Tap::PadDone), day(DayTap::Open(run))]));
    holds(&shown, &["Sand 09:00 to 09:30, corrected, not counted 09:30 to 10:00", "class=\"kerf\"", "30 min corrected", "not counted"]);
    holds(&told.at(62, [day(DayTap::Open(run))]), &["Put right Tue 3 March 10:02: stop 09:30."]);
}

#[test]
fn a_piece_that_was_done_can_be_struck() {
    let mut told = worked(&[(0, Some("Sand"))]);
    told.at(20, [tap(Tap::Done)]);
    told.at(40, [tap(Tap::Done), tap(Tap::Stop)]);
    let run = told.app.shelf().bench().runs().next().cloned().unwrap();
    let today = told.today();
    holds(&told.at(50, [day(DayTap::Show(today)), day(DayTap::Open(run.id))]), &["2 done, measured", ">1 done<"]);
    holds(&told.at(51, [day(DayTap::Strike(run.notches[0].id)), day(DayTap::Open(run.id))]), &["1 done, measured", "Do it again"]);
}

/// Sanded on Tuesday; on Wednesday at 07:50 a piece of it is noted: it says when, and a piece that was tapped by the clock alone.
#[test]
fn a_piece_that_was_noted_later_says_when() {
    let mut told = worked(&[(0, Some("Sand"))]);
    told.at(20, [tap(Tap::Done)]);
    told.at(40, [tap(Tap::Stop)]);
    let (run, today) = (told.app.shelf().bench().runs().next().unwrap().id, told.today());
    let now = told.now(1_370);
    told.app.order(&Command::Bench(BenchCommand::Done { run, n: 1 }), now).unwrap();
    let shown = told.at(1_371, [day(DayTap::Show(today)), day(DayTap::Open(run))]);
    holds(&shown, &[">09:20<", ">noted Wed 4 March 07:50<"]);
}

#[test]
fn days_and_weeks_are_walked_by_keys() {
    let mut told = worked(&[(0, Some("Saw")), (60, None), (1440, Some("Sand")), (1440 + 30, None)]);
    let now = 1440 + 40;
    let today = told.today_at(now);
    let walks = |told: &mut Told, key: &str| told.at(now, [Msg::Key(key.into())]);
    holds(&told.at(now, [day(DayTap::Show(today))]), &["Today", "Wed 4 March", "30 min in all"]);
    holds(&walks(&mut told, "ArrowLeft"), &["Yesterday", "Tue 3 March", "1 h in all"]);
    holds(&walks(&mut told, "ArrowRight"), &["Wed 4 March"]);
    holds(&walks(&mut told, "ArrowRight"), &["Wed 4 March"]);
    let shown = told.at(now, [day(DayTap::Weekly(true))]);
    holds(&shown, &["This week", "Week from Mon 2 March", "1 h 30 in all", "all measured", "Tue 3 March", "Make 1 h 30", "nothing"]);
    lacks(&shown, &["Thu 5 March"]);
    holds(&walks(&mut told, "ArrowLeft"), &["Last week", "Week from Mon 23 February", "0 min in all"]);
    holds(&walks(&mut told, "ArrowRight"), &["This week"]);
    holds(&walks(&mut told, "ArrowRight"), &["This week"]);
    holds(&told.at(now, [day(DayTap::Weekly(false))]), &["bench/day"]);
    holds(&walks(&mut told, "Escape"), &["Carry on: sand"]);
    // Nothing is walked where no day is shown.
    holds(&walks(&mut told, "ArrowLeft"), &["Carry on: sand"]);
}

/// Whose the time of a day was: said once where all of it was of one job, on each row where it was not.
#[test]
fn a_day_of_one_job_names_it() {
    let mut told = worked(&[(0, Some("Saw")), (30, Some("Sand")), (60, None)]);
    let today = told.today();
    let shown = told.at(61, [day(DayTap::Show(today))]);
    holds(&shown, &["all for stands"]);
    assert_eq!(shown.matches("stands").count(), 1);
    told.at(62, [tap(Tap::Close), tap(Tap::Other), starting(StartingTap::On(On::Nothing)), op("Tidy")]);
    let shown = told.at(70, [day(DayTap::Show(today))]);
    holds(&shown, &["measured, stands", "measured, No job"]);
    lacks(&shown, &["all for"]);
    holds(&told.at(70, [day(DayTap::Weekly(true))]), &["Make 1 h, No job 8 min"]);
}

/// Tidied for the first time, found running the next morning: nothing is usual of it.
#[test]
fn a_guess_is_not_called_usual() {
    let mut told = worked(&[(0, Some("Tidy"))]);
    let shown = told.at(1_380, []);
    holds(&shown, &["A guess: nothing was noted", "a guess"]);
    lacks(&shown, &["as usual"]);
}

/// From 22:00 over midnight for 2 h 15, of which 15 min are the next day's: said on the row; the next day has it, and is not empty.
#[test]
fn a_row_over_midnight_says_what_is_of_the_day_after() {
    let ten = 13 * 60;
    let mut told = worked(&[(ten, Some("Oil")), (ten + 135, None)]);
    let (first, second) = (told.today_at(ten), told.today_at(ten + 135));
    holds(&told.at(ten + 140, [day(DayTap::Show(first))]), &["2 h in all", ">2 h 15<", "15 min of it on the day after"]);
    let next = told.at(ten + 140, [day(DayTap::Show(second))]);
    holds(&next, &["15 min in all", "Oil began at 22:00 the day before"]);
    lacks(&next, &["Nothing logged"]);
}

/// Fifteen hours in question are in no day's total: the list of jobs says so beside its own.
#[test]
fn hours_in_question_are_said_in_the_list_of_jobs_too() {
    let mut told = worked(&[(8 * 60, Some("Saw")), (23 * 60, None)]);
    told.app.place = Place::Jobs;
    holds(&told.at(23 * 60 + 10, []), &["0 min, and 15 h to settle"]);
}

/// Ten and a half minutes on each of three days: 31.5 in the week, and its rows, by day and by what they were for, add up to what is over them.
#[test]
fn the_rows_of_a_week_add_up_to_its_head() {
    let mut told = Told::stands();
    for nth in 0..3 {
        let now = told.now(3 * 1_440);
        let start = told.now(nth * 1_440).wall.at;
        let on = if nth == 2 {
            On::Nothing
        } else {
            fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().map_or(On::Nothing, |job| On::Job(job.id))
        };
        let work = Work { op: "Sand".into(), kind: Kind::Make, stage: Stage::Make, on, person: None, rework: false };
        let recall = BenchCommand::Recall { work, start, stop: start.plus(Span::ms(630_000)), heads: 1 };
        told.app.order(&Command::Bench(recall), now).unwrap();
    }
    let on = told.today_at(3 * 1_440);
    let shown = told.at(3 * 1_440, [day(DayTap::Show(on)), day(DayTap::Weekly(true))]);
    let figures = |from: &str| shown.split(from).skip(1).filter_map(|rest| rest.split('<').next()).map(str::to_owned).collect::<Vec<_>>();
    assert_eq!(figures("t17 w8\">"), ["nothing", "11 min", "11 min", "10 min", "nothing", "21 min", "11 min"]);
    holds(&shown, &["32 min in all", "Make 21 min, No job 11 min"]);
}
