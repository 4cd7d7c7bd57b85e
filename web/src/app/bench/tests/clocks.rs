//! Clocks that change, and a phone that travels: what is shown of an end is what is typed for it, and what is left until an off time ends
//! at the clock that is shown. Minutes are after nine in New York on Tuesday 3 March 2026.

use super::super::waits::{WaitTap, waiting};
use super::*;
use crate::app::news::News;
use crate::app::order::Which;
use fivebar_core::ledger::decide::{Laid, WaitCommand};
use fivebar_core::quantity::{Key, Wall};

/// Midnight in world time as Sunday 8 March begins, and as Sunday 1 November does.
const SPRING: i64 = 4 * 1_440 + 600;
const AUTUMN: i64 = 243 * 1_440 - 840;

/// It changes its clocks at two in the morning of its own, two hours after New York.
fn denver(at: Moment) -> Offset {
    let summer = Moment::at(1_772_960_400_000)..Moment::at(1_793_520_000_000);
    Offset::minutes(if summer.contains(&at) { -360 } else { -420 }).unwrap()
}

/// No clock ever changes there.
fn tokyo(_: Moment) -> Offset {
    Offset::minutes(540).unwrap()
}

/// A coat of no job lies from a minute on for so long; looked at later, the clocks of now and of its off time, and the minutes between.
#[test]
fn what_is_left_ends_at_the_clock_that_is_shown() {
    let check = |(began, span): (i64, i64), looked: i64, shown: [&str; 2], left: i64, not: &str| {
        let mut told = Told::stands();
        let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(span) };
        told.start(began - 10, "Oil");
        told.at(began, [tap(Tap::Stop)]);
        let now = told.now(began);
        told.app.order(&Command::Wait(WaitCommand::Begin { op: "oil".into(), job: None, n: 1, laid }), now).unwrap();
        told.at(looked, []);
        let line = waiting(&told.app).on.remove(0);
        let clock = |wall: Wall| told.app.speech.clock(wall);
        assert_eq!(([clock(told.app.now), clock(line.off)], line.left.as_minutes()), (shown.map(String::from), left), "{began} {looked}");
        // On the bench, in the list of what waits, and on the big buttons.
        for messages in [vec![], vec![Msg::Bench(Tap::Waits(WaitTap::Show))], vec![tap(Tap::Close), tap(Tap::Big)]] {
            let page = told.at(looked, messages);
            holds(&page, &[shown[1]]);
            lacks(&page, &[not]);
        }
    };
    // From Saturday at 20:00 for 25 h 20: it was 21:20 by the clock of Saturday.
    check((SPRING + 60, 1_520), SPRING + 19 * 60, ["15:00", "22:20"], 440, "21:20");
    check((SPRING + 60, 1_520), SPRING + 12 * 60, ["08:00", "22:20"], 860, "21:20");
    check((AUTUMN, 1_520), AUTUMN + 20 * 60, ["15:00", "20:20"], 320, "21:20");
    check((AUTUMN, 1_520), AUTUMN + 13 * 60, ["08:00", "20:20"], 740, "21:20");
    // Before they change, by the clock of then: so many hours on the clock are one more, or one less.
    check((SPRING + 60, 1_520), SPRING + 120, ["21:00", "22:20"], 1_460, "21:20");
    check((AUTUMN, 1_520), AUTUMN + 60, ["21:00", "20:20"], 1_460, "21:20");
    // No clock changes.
    check((20, 90), 50, ["09:50", "10:50"], 60, "11:50");
}

/// Sanded from 10:06 on, one done at 10:45; the phone's clock is set back to 9:30: the 39 minutes that are noted stand, as they do at the stop, and
/// the bench says why none is added, until the clock is past that.
#[test]
fn a_clock_set_back_while_something_runs_is_said() {
    let mut told = Told::stands();
    told.start(66, "Sand");
    told.at(105, [tap(Tap::Done)]);
    let back = "The phone’s clock was set back";
    lacks(&told.at(106, []), &[back]);
    let shown = told.at(30, []);
    holds(&shown, &[back, "10:45", ">39</span>", "39 min on the job"]);
    lacks(&shown, &[">0</span>"]);
    holds(&told.at(31, [tap(Tap::Big)]), &[">39</span>", back, "10:45"]);
    told.at(32, [tap(Tap::LeaveBig)]);
    lacks(&told.at(110, []), &[back]);
    told.at(50, [tap(Tap::Stop)]);
    let bench = told.app.shelf().bench();
    let run = bench.runs().last().unwrap();
    assert_eq!(run.worked(told.app.now.at).as_minutes(), 39);
}

/// Stopped at 9:30 in New York, looked at in Denver: the phone's own clock showed 7:30 when that was saved.
#[test]
fn what_was_saved_is_by_the_clock_of_here() {
    let mut told = Told::stands();
    told.start(10, "Oil");
    told.at(30, [tap(Tap::Stop)]);
    let (which, at) = (Which::Own, told.app.now);
    let ids = told.app.shelf().book.entries().map(|(entry, _)| entry.id).collect();
    told.app.told(News::Saved { which, ids, at });
    let page = told.at(31, []);
    holds(&page, &["saved 09:30"]);
    told.app.offset_at = Some(denver);
    let page = told.at(41, []);
    holds(&page, &["saved 07:30"]);
    lacks(&page, &["saved 09:30"]);
}

/// Glue laid at 23:50 on the eve of 1 November, for 70 minutes and for 130: off at the first 1:00 and at the second, an hour later.
#[test]
fn off_times_that_come_twice_are_told_apart() {
    let mut told = Told::stands();
    let laid = |span| Laid { what: Key::read("glue").unwrap(), stuff: None, span: Span::minutes(span) };
    told.start(AUTUMN + 220, "Glue tops");
    told.at(AUTUMN + 230, [tap(Tap::Stop)]);
    told.app.offset_at = Some(new_york);
    for (nth, span) in [(0, 70), (1, 130)] {
        let now = told.now(AUTUMN + 230 + nth);
        told.app
            .order(&Command::Wait(WaitCommand::Begin { op: "glue tops".into(), job: None, n: 1, laid: laid(span - nth) }), now)
            .unwrap();
    }
    let both = ["the first 01:00", "the second 01:00"];
    holds(&told.at(AUTUMN + 240, []), &both);
    holds(&told.at(AUTUMN + 240, [Msg::Bench(Tap::Waits(WaitTap::Show))]), &both);
    let big = told.at(AUTUMN + 240, [tap(Tap::Close), tap(Tap::Big)]);
    holds(&big, &[both[1], " the first</span>", ">01:00<"]);
    // One that comes once is said as ever.
    let now = told.now(AUTUMN + 240);
    told.app.order(&Command::Wait(WaitCommand::Begin { op: "glue legs".into(), job: None, n: 1, laid: laid(200) }), now).unwrap();
    holds(&told.at(AUTUMN + 240, [Msg::Bench(Tap::Waits(WaitTap::Show))]), &[" 02:20"]);
    lacks(&told.at(AUTUMN + 240, []), &["the first 02:20", "the second 02:20"]);
}

/// A run from a minute on in New York, and what the question shows later there, or in Denver.
#[track_caller]
fn asked(began: i64, (looked, place): (i64, fn(Moment) -> Offset), shows: &[&str], not: &[&str]) -> (Told, Id) {
    let mut told = Told::stands();
    let run = told.start(began, "Saw");
    told.app.offset_at = Some(place);
    let shown = told.at(looked, []);
    holds(&shown, shows);
    lacks(&shown, not);
    (told, run)
}

/// The same with the end that is proposed typed by the clock: the minutes that the run has then.
fn typed(began: i64, (looked, place): (i64, fn(Moment) -> Offset), until: &str, now: &str, not: &[&str]) {
    let (mut told, run) = asked(began, (looked, place), &[until, &format!(">{now}<")], not);
    told.at(looked, [tap(Tap::StoppedAt(run))]);
    let digits: String = until.chars().filter(char::is_ascii_digit).collect();
    told.at(looked, presses(&digits).into_iter().chain([tap(Tap::PadDone)]));
    let asked = told.app.bench.asked;
    assert!(!asked, "{until} is one moment");
    assert_eq!(told.minutes(), [("Saw".into(), 60)], "{until}");
}

#[test]
fn the_question_is_by_the_clock_by_which_its_answer_is_read() {
    // 10:00 in New York, seen in Denver at 13:00, where it was 15:00 in New York: all of it by the clock of New York, and that is said.
    typed(60, (360, denver), "11:00", "15:00 there", &[">13:00<", ">15:00<", "until 09:00"]);
    asked(60, (360, denver), &["Since 10:00, by the clock there.", "until 11:00 there"], &["there, by"]);
    typed(60, (360, new_york), "11:00", "15:00", &[">13:00<"]);
    // Over the night the clocks go forward: from 22:30, and from 1:30, of which the hour ends at 3:30. Seen at 8:20.
    typed(SPRING + 210, (SPRING + 740, new_york), "23:30", "08:20", &[">07:20<"]);
    typed(SPRING + 390, (SPRING + 740, new_york), "03:30", "08:20", &[">07:20<", "until 02:30"]);
    // Over the night they go back: from 0:10 to 1:10 before, and 8:20 after.
    asked(AUTUMN + 250, (AUTUMN + 800, new_york), &["until 01:10", ">08:20<"], &[">09:20<"]);
    typed(AUTUMN + 230, (AUTUMN + 800, new_york), "00:50", "08:20", &[">09:20<"]);
}

/// From 0:20 on 1 November, stopped at 3:10, put right to the second 1:40: the line, and what was changed.
#[test]
fn what_was_put_right_stands_by_one_clock() {
    let mut told = Told::stands();
    let run = told.start(AUTUMN + 260, "Saw");
    told.at(AUTUMN + 490, [tap(Tap::Stop)]);
    let now = told.now(AUTUMN + 500);
    let at = now.wall.at.minus(Span::minutes(100));
    told.app.order(&Command::Bench(BenchCommand::StopAt { run, at, by: Mender::Typed }), now).unwrap();
    let today = told.today_at(AUTUMN + 500);
    let shown = told.at(AUTUMN + 510, [day(DayTap::Show(today)), day(DayTap::Open(run))]);
    holds(&shown, &["ended at 01:40", "stop 01:40", "00:20", "03:10"]);
    lacks(&shown, &["02:40"]);
    assert_eq!(told.minutes(), [("Saw".into(), 140)]);
}

/// From 0:20 on 1 November, seen at 3:00; 1:40 came twice, at 80 and at 140 minutes.
#[test]
fn a_clock_time_that_came_twice_is_asked_about() {
    let check = |text: &str, looked: i64, key: Option<(i64, &[&str])>, minutes: i64| {
        let mut told = Told::stands();
        let run = told.start(AUTUMN + 260, "Saw");
        told.at(looked, [tap(Tap::StoppedAt(run))]);
        let shown = told.at(looked, presses(text).into_iter().chain([tap(Tap::PadDone)]));
        if let Some((minute, keys)) = key {
            holds(&shown, &["this time came twice"]);
            holds(&shown, keys);
            let at = told.now(AUTUMN + minute).wall.at;
            told.at(looked, [tap(Tap::Meant(at))]);
        }
        assert_eq!(told.minutes(), [("Saw".into(), minutes)], "{text} at {looked}");
    };
    let keys: &[&str] = &["Sun 1 November, 1 h 20", "Sun 1 November, 2 h 20"];
    check("0140", AUTUMN + 480, Some((340, keys)), 80);
    check("0140", AUTUMN + 480, Some((400, keys)), 140);
    check("0230", AUTUMN + 480, None, 190);
    check("0050", AUTUMN + 480, None, 30);
    // At 1:50 for the first time only one 1:40 has come.
    check("0140", AUTUMN + 350, None, 80);
}

/// From 2:20 on 1 November, seen at 3:20, its start put right: 1:40 came twice, 100 and 160 minutes before; 0:50 came 210 minutes before.
#[test]
fn a_start_that_came_twice_is_asked_about() {
    let check = |text: &str, meant: Option<i64>, minutes: i64, shown: &str| {
        let looked = AUTUMN + 500;
        let mut told = Told::stands();
        let run = told.start(AUTUMN + 440, "Saw");
        let on = told.today_at(looked);
        told.at(looked, [day(DayTap::Show(on)), day(DayTap::Open(run)), day(DayTap::Mend(Box::new(Mend::Start(Typed::default()))))]);
        let asked = told.at(looked, presses(text).into_iter().chain([tap(Tap::PadDone)]));
        if let Some(minute) = meant {
            holds(&asked, &["this time came twice", "Sun 1 November, 2 h 40", "Sun 1 November, 1 h 40"]);
            let at = told.now(AUTUMN + minute).wall.at;
            told.at(looked, [tap(Tap::Meant(at))]);
        }
        holds(&told.at(looked, []), &[&format!(">{shown}<")]);
        assert_eq!(told.minutes(), [("Saw".into(), minutes)], "{text}");
    };
    check("0140", Some(340), 160, "01:40");
    check("0140", Some(400), 100, "01:40");
    check("0050", None, 210, "00:50");
    check("0210", None, 70, "02:10");
}

/// Time that was missed on 1 November, from 1:40 to 2:30: as it is meant an hour apart, and drawn as long as it was.
#[test]
fn missed_time_that_began_twice_is_asked_about() {
    let check = |minute: i64, minutes: i64| {
        let noon = AUTUMN + 17 * 60;
        let mut told = Told::stands();
        let on = told.today_at(noon);
        told.at(noon, [day(DayTap::Show(on)), day(DayTap::Missed), op("Saw")]);
        let asked = told.at(noon, presses("0140").into_iter().chain([starting(StartingTap::Clock)]));
        holds(&asked, &["this time came twice", ">The first 01:40<"]);
        let at = told.now(AUTUMN + minute).wall.at;
        holds(&told.at(noon, [tap(Tap::Meant(at))]), &["Saw, from 01:40"]);
        let shown = told.at(noon, presses("0230").into_iter().chain([starting(StartingTap::Clock)]));
        assert_eq!(told.minutes(), [("Saw".into(), minutes)], "{minute}");
        let drawn = shown.split(r#"<svg class="sc tl""#).nth(1).and_then(|rest| rest.split("</svg>").next()).unwrap();
        // 358 px are the three hours from 20 minutes before it.
        let board = format!("M39.78 10H{:.2}V32", (20 + minutes) as f64 * 358.0 / 180.0);
        holds(drawn, &["Saw 01:40 to 02:30", ">02:00</text>", &board]);
    };
    check(340, 110);
    check(400, 50);
}

/// Clocked in New York from 10:00 with a piece at 10:20, stopped in Denver at 10:40 by the clock of New York; and pieces that wait since 9:20.
#[test]
fn after_a_flight_a_run_and_a_wait_are_shown_by_one_clock_each() {
    let mut told = Told::stands();
    let laid = Laid { what: Key::read("glue").unwrap(), stuff: None, span: Span::minutes(90) };
    let run = told.start(60, "Glue tops");
    let now = told.now(80);
    told.app.order(&Command::Wait(WaitCommand::Clamp { run, n: 1, laid }), now).unwrap();
    told.app.offset_at = Some(denver);
    told.app.now = Wall::new(told.app.now.at, denver(told.app.now.at));
    let stopped = Wall::new(told.now(100).wall.at, denver(told.app.now.at));
    told.app.order(&Command::Bench(BenchCommand::Stop { run }), Now { wall: stopped, chance: [77; 10] }).unwrap();
    let today = told.today_at(110);
    let shown = told.at(110, [day(DayTap::Show(today)), day(DayTap::Open(run))]);
    holds(&shown, &[">10:00<", "10:20", "The clock said 10:00 to 10:40.", "by the clock there", "due 11:50"]);
    // The key that takes the stop back says when that was tapped, here.
    lacks(&shown, &["to 08:40", "due 09:50", "08:20"]);
}

/// In New York glue laid at 9:10 for two hours, and a run from 9:20 to 10:00; in Denver another from 8:30 to 9:00 by its clock, 10:30 to 11:00 in
/// New York. Whatever page says a moment of New York says it by the clock of New York, and that it is one of there.
#[test]
fn after_a_flight_a_moment_is_said_by_one_clock_on_all_pages() {
    let check = |messages: fn(&mut Told) -> Vec<Msg>, looked: i64, shows: &[&str], not: &[&str]| {
        let mut told = Told::stands();
        let run = told.start(10, "Glue tops");
        let laid = Laid { what: Key::read("glue").unwrap(), stuff: None, span: Span::minutes(120) };
        let now = told.now(10);
        told.app.order(&Command::Wait(WaitCommand::Clamp { run, n: 1, laid }), now).unwrap();
        told.at(20, [tap(Tap::Other), op("Saw")]);
        told.at(60, [tap(Tap::Stop)]);
        told.app.offset_at = Some(denver);
        told.at(90, [tap(Tap::Other), op("Sand")]);
        told.at(120, [tap(Tap::Stop)]);
        let messages = messages(&mut told);
        let shown = told.at(looked, messages);
        holds(&shown, shows);
        lacks(&shown, not);
    };
    let bench = |_: &mut Told| vec![];
    let waits = |_: &mut Told| vec![Msg::Bench(Tap::Waits(WaitTap::Show))];
    let big = |_: &mut Told| vec![tap(Tap::Big)];
    let jobs = |told: &mut Told| {
        told.app.place = Place::Jobs;
        vec![]
    };
    let list = |told: &mut Told| vec![day(DayTap::Show(told.today()))];
    let off = "11:10 there";
    check(bench, 122, &["off 11:10 there", "Until 11:10 there, 8 min", "stopped 09:00"], &["09:10", "stopped 11:00"]);
    check(bench, 132, &["since 11:10 there"], &["09:10"]);
    check(waits, 122, &["off 11:10 there, in 8 min"], &["09:10"]);
    check(waits, 132, &["since 11:10 there"], &["09:10"]);
    check(big, 122, &["By the clock there: top 1 off at", ">11:10<"], &["09:10"]);
    check(jobs, 122, &[off], &["09:10"]);
    // The rows, and the line of hours: that another clock begins where the work elsewhere did.
    let rows = [">09:10<", ">09:20<", ">08:30<", "due 11:10", "by the clock there", "Another clock from 10:30 on: it shows 08:30."];
    check(list, 122, &rows, &["due 09:10", "due 11:10 there"]);
}

/// From 0:20 on 1 November, seen at 3:00 and put right to the first 1:40: the bench says the clock of the list.
#[test]
fn what_was_stopped_is_said_by_the_clock_of_then() {
    let mut told = Told::stands();
    let run = told.start(AUTUMN + 260, "Saw");
    let now = told.now(AUTUMN + 480);
    let at = told.now(AUTUMN + 340).wall.at;
    told.app.order(&Command::Bench(BenchCommand::StopAt { run, at, by: Mender::Typed }), now).unwrap();
    let shown = told.at(AUTUMN + 490, []);
    holds(&shown, &["stopped 01:40 after 1 h 20"]);
    lacks(&shown, &["00:40"]);
}

/// In New York from 22:30 on the eve, stopped at 8:20 after a night in which the clocks changed, and put right elsewhere, after a flight:
/// its stop and its start, with what is typed, what is shown before and after, and the minutes then.
#[test]
fn after_a_flight_what_is_typed_is_of_the_clock_of_then() {
    type Place = fn(Moment) -> Offset;
    let check = |(began, ended): (i64, i64), place: Place, (mend, text): (Mend, &str), shows: &[&str], minutes: i64| {
        let mut told = Told::stands();
        let run = told.start(began, "Saw");
        told.at(ended, [tap(Tap::Stop)]);
        let on = told.today_at(began);
        told.app.offset_at = Some(place);
        let looked = ended + 600;
        told.at(looked, [day(DayTap::Show(on)), day(DayTap::Open(run)), day(DayTap::Mend(Box::new(mend)))]);
        let shown = told.at(looked, presses(text).into_iter().chain([tap(Tap::PadDone)]));
        lacks(&shown, &["Not taken", "came twice"]);
        assert_eq!(told.minutes(), [("Saw".into(), minutes)], "{text} {began}");
        holds(&shown, shows);
    };
    let stop = |text| (Mend::Stop(Typed::default()), text);
    let start = |text| (Mend::Start(Typed::default()), text);
    let (spring, autumn) = ((SPRING + 210, SPRING + 740), (AUTUMN + 150, AUTUMN + 800));
    let there = "by the clock there";
    for place in [new_york as Place, denver] {
        check(spring, place, stop("2330"), &["22:30", "ended at 23:30", "The clock said Sat 7 March 22:30 to Sun 8 March 08:20."], 60);
        check(spring, place, stop("0330"), &["ended at 03:30"], 240);
        check(spring, place, start("2300"), &["23:00"], 500);
        check(spring, place, start("2130"), &["21:30"], 590);
        check(
            autumn,
            place,
            stop("2330"),
            &["22:30", "ended at 23:30", "The clock said Sat 31 October 22:30 to Sun 1 November 08:20."],
            60,
        );
        check(autumn, place, stop("0330"), &["ended at 03:30"], 360);
        check(autumn, place, start("2300"), &["23:00"], 620);
        check(autumn, place, start("2130"), &["21:30"], 710);
    }
    check(spring, denver, stop("2330"), &[there], 60);
    // Nobody knows there when the clocks changed: all of it by the clock of the start, and which that is.
    let of_start = "by the clock of the start, UTC-5";
    check(spring, tokyo, stop("2330"), &["ended at 23:30", "The clock said Sat 7 March 22:30 to Sun 8 March 07:20.", of_start], 60);
    check(spring, tokyo, stop("0330"), &["ended at 03:30", of_start], 300);
    check(
        autumn,
        tokyo,
        stop("0330"),
        &["ended at 03:30", "The clock said Sat 31 October 22:30 to Sun 1 November 09:20.", "by the clock of the start, UTC-4"],
        300,
    );
}

/// Eight in the morning after the clocks went back in New York; time from 1:35 to 1:55 is written down: the bar says when that was, and so does
/// the head of the page that is loaded anew.
#[test]
fn what_is_written_down_is_stamped_by_the_clock_of_then() {
    let check = |looked: i64, shown: &str| {
        let mut told = Told::stands();
        told.app.offset_at = Some(new_york);
        let on = told.today_at(looked);
        told.at(looked, [day(DayTap::Show(on)), day(DayTap::Missed), op("Saw")]);
        told.at(looked, presses("0035").into_iter().chain([starting(StartingTap::Clock)]));
        told.at(looked, presses("0055").into_iter().chain([starting(StartingTap::Clock)]));
        assert_eq!(told.minutes(), [("Saw".into(), 20)]);
        holds(&told.at(looked, []), &[&format!("time written down, {shown}"), ">00:35<"]);
        let (entry, _) = told.app.shelf().book.entries().next_back().unwrap();
        assert_eq!(told.app.speech.clock(entry.wall), shown);
    };
    check(AUTUMN + 13 * 60 + 15, "08:15");
    check(SPRING + 12 * 60 + 15, "08:15");
}

/// The keys of both say which is which, the earlier one first, wherever a clock time is typed.
#[test]
fn of_a_time_that_came_twice_each_key_says_which() {
    let noon = AUTUMN + 17 * 60;
    let both = ["The first 01:40", "The second 01:40"];
    let mut told = Told::stands();
    let on = told.today_at(noon);
    told.at(noon, [day(DayTap::Show(on)), day(DayTap::Missed), op("Saw")]);
    told.at(noon, presses("0130").into_iter().chain([starting(StartingTap::Clock)]));
    let first = told.now(AUTUMN + 330).wall.at;
    told.at(noon, [tap(Tap::Meant(first))]);
    let until = told.at(noon, presses("0140").into_iter().chain([starting(StartingTap::Clock)]));
    let mut told = Told::stands();
    told.at(noon, [day(DayTap::Show(on)), day(DayTap::Missed), op("Saw")]);
    let from = told.at(noon, presses("0140").into_iter().chain([starting(StartingTap::Clock)]));
    let mut told = Told::stands();
    let run = told.start(AUTUMN + 260, "Saw");
    told.at(AUTUMN + 480, [tap(Tap::StoppedAt(run))]);
    let stopped = told.at(AUTUMN + 480, presses("0140").into_iter().chain([tap(Tap::PadDone)]));
    for shown in [until, from, stopped] {
        holds(&shown, &both);
        assert!(shown.find(both[0]) < shown.find(both[1]), "{shown}");
    }
}

/// At two in the morning of 8 March the clock showed three: half past two never came, and it is said as what it is taken.
#[test]
fn a_time_that_never_came_is_said() {
    let noon = SPRING + 16 * 60;
    let said = "02:30 never came that day: clocks went forward. Taken as 03:30.";
    let mut told = Told::stands();
    let on = told.today_at(noon);
    told.at(noon, [day(DayTap::Show(on)), day(DayTap::Missed), op("Saw")]);
    holds(&told.at(noon, presses("0230")), &[said]);
    told.at(noon, [starting(StartingTap::Clock)]);
    lacks(&told.at(noon, presses("0430")), &["never came"]);
    let mut told = Told::stands();
    let run = told.start(SPRING + 5 * 60, "Saw");
    told.at(SPRING + 9 * 60, [tap(Tap::StoppedAt(run))]);
    holds(&told.at(SPRING + 9 * 60, presses("0230")), &[said]);
}

/// Oiled in New York on the afternoon before its clocks went back, seen in Denver the day after: taken off at 20:00 by the clock of New York, it was
/// due at 14:50 there, not at 15:50. Still on, nobody knows what that clock did: all of it by the clock of the start.
#[test]
fn after_a_flight_a_wait_knows_that_the_clocks_there_changed() {
    let check = |ended: Option<i64>, shown: &[&str]| {
        let mut told = Told::stands();
        let laid = Laid { what: Key::read("coat").unwrap(), stuff: None, span: Span::minutes(1_440) };
        let began = AUTUMN - 250;
        let run = told.start(began - 10, "Oil");
        let now = told.now(began);
        told.app.order(&Command::Wait(WaitCommand::Clamp { run, n: 1, laid }), now).unwrap();
        told.at(began + 1, [tap(Tap::Stop)]);
        let wait = told.app.shelf().waits().on().next().unwrap().id;
        if let Some(minute) = ended {
            told.at(minute, [Msg::Bench(Tap::Waits(WaitTap::Off(vec![wait])))]);
        }
        told.app.offset_at = Some(denver);
        let looked = AUTUMN + 30 * 60;
        let on = told.today_at(AUTUMN + 20 * 60);
        holds(&told.at(looked, [day(DayTap::Show(on))]), shown);
    };
    check(Some(AUTUMN + 25 * 60), &["due 14:50, taken off 20:00; by the clock there"]);
    check(None, &["due 15:50; by the clock of the start, UTC-4"]);
}

/// What runs shows the minutes that the day has of it: 32 min 40 s are 33 in both, and 32 min 20 s are 32.
#[test]
fn what_runs_and_the_day_round_alike() {
    let mut told = Told::stands();
    told.start(0, "Sand");
    for (seconds, minutes) in [(20, 32), (40, 33)] {
        told.at(32, []);
        let now = told.app.now;
        told.app.now = Wall::new(now.at.plus(fivebar_core::quantity::Span::ms(seconds * 1_000)), now.offset);
        let shown = crate::screens::page(&told.app).html();
        holds(&shown, &[&format!("{minutes} min"), &format!(">{minutes}</span>"), &format!("{minutes} min")]);
    }
}

/// Pieces that were noted as soon as it began take no time each: what it took is said, and of no piece.
#[test]
fn nothing_is_said_to_take_no_time() {
    let mut told = Told::stands();
    told.start(0, "Sand");
    told.at(0, [tap(Tap::Done), tap(Tap::Done)]);
    lacks(&told.at(18, []), &["0 min each"]);
    let shown = told.at(18, [tap(Tap::Stop), tap(Tap::Other), op("Saw")]);
    holds(&shown, &["Sand", "18 min"]);
    lacks(&shown, &["0 min each"]);
}

/// Begun at nine, a piece noted half an hour later, and the phone's clock set back by twenty minutes before the stop: what is said is what stands
/// in the book.
#[test]
fn a_clock_that_was_set_back_tells_no_less_than_is_written_down() {
    let mut told = Told::stands();
    told.start(0, "Sand");
    told.at(30, [tap(Tap::Done)]);
    told.at(10, [tap(Tap::Stop)]);
    assert_eq!(told.minutes(), [("Sand".into(), 30)]);
    assert_eq!(told.app.said, "Sand stopped, 30 min");
}
