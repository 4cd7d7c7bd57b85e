//! Time that was missed and ends that are typed, told as tables.

use super::*;

#[test]
fn time_that_was_missed_is_written_down_by_the_clock() {
    let mut told = Told::stands();
    let yesterday = told.today_at(0).before();
    told.at(0, [day(DayTap::Show(yesterday)), day(DayTap::Missed)]);
    holds(&told.at(0, []), &["What did you do?", "Mon 2 March"]);
    told.at(0, [op("Saw")]);
    holds(&told.at(0, presses("1400").into_iter().chain([starting(StartingTap::Clock)])), &["Until", "Saw, from 14:00"]);
    let shown = told.at(0, presses("1530").into_iter().chain([starting(StartingTap::Clock)]));
    holds(&shown, &["Yesterday", "Mon 2 March", "1 h 30 in all", "1 h 30 recalled"]);
    // The same stretch again is refused, and asked again.
    told.at(1, [day(DayTap::Missed), op("Rip")]);
    told.at(1, presses("1500").into_iter().chain([starting(StartingTap::Clock)]));
    let shown = told.at(1, presses("1600").into_iter().chain([starting(StartingTap::Clock)]));
    holds(&shown, &["role=\"alert\"", "From"]);
    holds(&told.at(1, [tap(Tap::Close)]), &["Yesterday"]);
    assert_eq!(told.minutes(), [("Saw".into(), 90)]);
}

/// A run from one minute to another, its start mended to a clock time: so many minutes then, or refused.
#[test]
fn a_start_is_mended_to_before_midnight() {
    let check = |(from, to): (i64, Option<i64>), clock: &str, minutes: Option<i64>| {
        let mut told = Told::stands();
        let run = told.start(from, "Sand");
        if let Some(to) = to {
            told.at(to, [tap(Tap::Stop)]);
        }
        let (now, on) = (to.unwrap_or(from + 50), told.today_at(from));
        told.at(now, [day(DayTap::Show(on)), day(DayTap::Open(run)), day(DayTap::Mend(Box::new(Mend::Start(Typed::default()))))]);
        let shown = told.at(now, presses(clock).into_iter().chain([tap(Tap::PadDone)]));
        assert_eq!(shown.contains("role=\"alert\""), minutes.is_none(), "{clock}: {shown}");
        assert_eq!(told.minutes(), [("Sand".into(), minutes.unwrap_or(now - from))], "{clock}");
    };
    let ten_past_midnight = 15 * 60 + 10;
    check((ten_past_midnight, Some(ten_past_midnight + 50)), "2350", Some(70));
    check((ten_past_midnight, None), "2350", Some(70));
    check((ten_past_midnight, Some(ten_past_midnight + 50)), "0005", Some(55));
    check((0, Some(60)), "0845", Some(75));
    check((0, Some(60)), "1030", None);
}

/// What is put right of a run from one minute to another, seen two days later: the end, the day that is tapped by its place among those that are
/// offered, the clock; the days that are offered, the one that was chosen by itself, and the minutes then. What is longer than a working day is
/// asked about, and meant.
#[test]
fn an_end_is_moved_over_midnight() {
    let check = |(from, to): (i64, i64), (is_start, nth, clock): (bool, Option<usize>, &str), days: &[&str], minutes: i64| {
        let (mut told, now) = (Told::stands(), 2 * 1_440);
        let run = told.start(from, "Sand");
        told.at(to, [tap(Tap::Stop)]);
        let (on, end) = (told.today_at(from), if is_start { Mend::Start } else { Mend::Stop });
        told.at(now, [day(DayTap::Show(on)), day(DayTap::Open(run)), day(DayTap::Mend(Box::new(end(Typed::default()))))]);
        let first = if is_start { on.before() } else { on };
        let tapped = nth.map(|nth| tap(Tap::OnDay(first.plus(i32::try_from(nth).unwrap()))));
        let shown = told.at(now, presses(clock).into_iter().chain(tapped));
        let chips: Vec<String> = shown
            .split("On which day?")
            .skip(1)
            .flat_map(|group| group.split("aria-pressed=\""))
            .skip(1)
            .map(|chip| {
                format!(
                    "{}{}",
                    if chip.starts_with("true") { "*" } else { "" },
                    chip.split("<span>").nth(1).unwrap().split('<').next().unwrap()
                )
            })
            .take(3)
            .collect();
        assert_eq!(chips, days, "{clock}");
        told.at(now, [tap(Tap::PadDone)]);
        if told.app.bench.asked {
            let it = told.app.shelf().bench().run(run).cloned().unwrap();
            let meant = if is_start { ends::start(&told.app, &it, clock) } else { ends::stop(&told.app, &it, clock) };
            told.at(now, [tap(Tap::Meant(meant.unwrap().at.at))]);
        }
        assert_eq!(told.minutes(), [("Sand".into(), minutes)], "{clock}");
    };
    // From 22:00 on Tuesday to 01:00.
    let evening = (780, 960);
    check(evening, (true, None, "0015"), &["Mon 2 March", "Tue 3 March", "*Wed 4 March"], 45);
    check(evening, (true, None, "2330"), &["Mon 2 March", "*Tue 3 March", "Wed 4 March"], 90);
    check(evening, (true, Some(1), "0015"), &["Mon 2 March", "*Tue 3 March", "Wed 4 March"], 1_485);
    check(evening, (true, Some(0), "2330"), &["*Mon 2 March", "Tue 3 March", "Wed 4 March"], 1_530);
    check(evening, (false, None, "0030"), &["Tue 3 March", "*Wed 4 March", "Thu 5 March"], 150);
    check(evening, (false, Some(0), "2330"), &["*Tue 3 March", "Wed 4 March", "Thu 5 March"], 90);
    check(evening, (false, Some(2), "0030"), &["Tue 3 March", "Wed 4 March", "*Thu 5 March"], 1_590);
    // Refused, and nothing is changed: a stop before the start, a start after the stop, longer than two days.
    check(evening, (false, Some(0), "2100"), &["*Tue 3 March", "Wed 4 March", "Thu 5 March"], 180);
    check(evening, (true, Some(2), "0130"), &["Mon 2 March", "Tue 3 March", "*Wed 4 March"], 180);
    // Within a day: no start is of the day after its end.
    check((0, 60), (true, Some(0), "2330"), &["*Mon 2 March", "Tue 3 March"], 630);
}

/// Of today alone there is no choice; and what was said of one end says nothing of the other.
#[test]
fn a_day_is_asked_where_there_are_several() {
    let mut told = Told::stands();
    let run = told.start(0, "Sand");
    lacks(&told.at(60, [tap(Tap::StoppedAt(run))]), &["On which day?"]);
    told.at(61, [tap(Tap::Close), tap(Tap::Stop)]);
    let on = told.today_at(0);
    let mend = |end: fn(Typed) -> Mend| day(DayTap::Mend(Box::new(end(Typed::default()))));
    let shown = told.at(62, [day(DayTap::Show(on)), day(DayTap::Open(run)), mend(Mend::Start), tap(Tap::OnDay(on.before()))]);
    holds(&shown, &["aria-pressed=\"true\"><span>Mon 2 March"]);
    told.at(62, [tap(Tap::Close)]);
    assert_eq!(told.app.bench.on_day, None);
    holds(&told.at(62, [mend(Mend::Start)]), &["aria-pressed=\"true\"><span>Tue 3 March"]);
    // A day without a time is no start.
    told.at(62, [tap(Tap::OnDay(on.before())), tap(Tap::PadDone)]);
    assert_eq!(told.minutes(), [("Sand".into(), 61)]);
}

/// Work from Saturday 20:00 over the night the clocks go forward, asked about on Sunday at 09:00: minutes to a typed end.
#[test]
fn a_typed_end_is_by_the_clock_of_its_moment() {
    for stopped in [false, true] {
        for (clock, minutes) in [("2230", 150), ("0130", 330), ("0330", 390), ("0800", 660)] {
            let (from, now) = (4 * 1440 + 660, 5 * 1440 - 60);
            let mut told = Told::stands();
            let run = told.start(from, "Sand");
            let on = told.today_at(from);
            if stopped {
                told.at(now, [tap(Tap::Stop), day(DayTap::Show(on)), day(DayTap::Open(run))]);
                told.at(now, [day(DayTap::Mend(Box::new(Mend::Stop(Typed::default()))))]);
            } else {
                told.at(now, [tap(Tap::StoppedAt(run))]);
            }
            told.at(now, presses(clock).into_iter().chain([tap(Tap::PadDone)]));
            assert_eq!(told.minutes(), [("Sand".into(), minutes)], "{clock}, stopped before: {stopped}");
        }
    }
}

/// Stamped on Saturday, written down on Monday, the clocks went forward between: its clock is that of Saturday.
#[test]
fn time_that_was_missed_is_by_the_clock_of_its_day() {
    let (saturday, monday) = (4 * 1440, 6 * 1440 - 60);
    let mut told = Told::stands();
    told.start(saturday - 30, "Sand");
    told.at(saturday + 60, [tap(Tap::Stop)]);
    let day_before = told.today_at(saturday);
    told.at(monday, [day(DayTap::Show(day_before)), day(DayTap::Missed), op("Saw")]);
    told.at(monday, presses("1000").into_iter().chain([starting(StartingTap::Clock)]));
    let shown = told.at(monday, presses("1200").into_iter().chain([starting(StartingTap::Clock)]));
    holds(&shown, &["Sat 7 March", ">08:30<", ">10:00<"]);
    assert_eq!(told.minutes(), [("Sand".into(), 90), ("Saw".into(), 120)]);
}

/// From 8:00 to 12:00 at nine was refused: the figures that are typed next take its place, and what was said of it goes.
#[test]
fn what_was_refused_is_typed_over() {
    let mut told = Told::stands();
    let today = told.today_at(0);
    told.at(0, [day(DayTap::Show(today)), day(DayTap::Missed), op("Saw")]);
    told.at(0, presses("0800").into_iter().chain([starting(StartingTap::Clock)]));
    holds(&told.at(0, presses("1200").into_iter().chain([starting(StartingTap::Clock)])), &["Not taken: 12:00 has not come yet"]);
    let shown = told.at(0, presses("0845"));
    lacks(&shown, &["Not taken", "role=\"alert\""]);
    told.at(0, [starting(StartingTap::Clock)]);
    assert_eq!(told.minutes(), [("Saw".into(), 45)]);
}

/// An old day's list was left open: coming back from Jobs, there is the clock; a time that is half typed is there still.
#[test]
fn the_bench_comes_back_to_its_clock() {
    let mut told = Told::stands();
    let run = told.start(0, "Sand");
    let on = told.today_at(0);
    told.at(5, [day(DayTap::Show(on.before())), Msg::Go(Place::Jobs)]);
    holds(&told.at(6, [Msg::Go(Place::Bench)]), &["Sand", ">6<", "Stop"]);
    told.at(7, [day(DayTap::Show(on)), day(DayTap::Open(run)), day(DayTap::Mend(Box::new(Mend::Start(Typed::default()))))]);
    told.at(7, presses("08"));
    holds(&told.at(8, [Msg::Go(Place::Jobs), Msg::Go(Place::Bench)]), &["Started at"]);
}

/// Four hours are planned, and begun at 16:00; forgotten, and asked about in the evening: until its end is said, the workshop closes at 18:00, as it
/// is shown.
#[test]
fn the_closing_that_is_shown_is_held() {
    let check = |hours: Option<(u8, u8)>, clock: &str| {
        let mut told = Told::stands();
        let job = fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().unwrap().id;
        let planned = fivebar_core::ledger::kind::job::OperationPlanned {
            job,
            op: "Carve".into(),
            kind: Kind::Make,
            stage: None,
            span: Some(fivebar_core::quantity::Span::minutes(240)),
            pieces: None,
        };
        let now = told.now(0);
        told.app.order(&Command::Job(JobCommand::PlanOperation(planned)), now).unwrap();
        if let Some((hour, minute)) = hours {
            let closing = fivebar_core::quantity::Clock::at(hour.into(), minute.into());
            let said = fivebar_core::ledger::kind::dates::WorkdaysSet::of(None, closing, [None; 7]);
            let now = told.now(1);
            told.app.order(&Command::Dates(fivebar_core::ledger::decide::DatesCommand::SetWorkdays(said)), now).unwrap();
        }
        told.start(7 * 60, "Carve");
        holds(&told.at(14 * 60, []), &[clock]);
    };
    check(None, "until 18:00");
    check(Some((18, 0)), "until 18:00");
    check(Some((19, 0)), "until 19:00");
}
