//! Waits as tables of messages.

use super::super::waits::{Asked, Unit, WaitTap, minds};
use super::*;
use crate::app::news::{Handed, News};
use crate::app::order::Order;
use fivebar_core::bench::wait::{Warmth, What};
use fivebar_core::quantity::Key;

pub(super) fn wait(tap: WaitTap) -> Msg {
    Msg::Bench(Tap::Waits(tap))
}

/// Five tops, glued from 11:20 (minute 140 after nine) as drawing 7 has it.
fn gluing() -> Told {
    let mut told = Told::stands();
    told.start(140, "Glue tops");
    told.at(140, [tap(Tap::AskBatch)]);
    told.at(140, presses("5").into_iter().chain([tap(Tap::PadDone)]));
    told
}

const CLAMPED: [i64; 5] = [149, 158, 168, 177, 187];

pub(super) fn clamped(n: usize) -> Told {
    let mut told = gluing();
    for minute in CLAMPED.into_iter().take(n) {
        told.at(minute, [wait(WaitTap::Clamp)]);
    }
    told
}

pub(super) fn ids(told: &Told) -> Vec<Id> {
    told.app.shelf().waits().on().map(|wait| wait.id).collect()
}

/// With five in clamps the clock and the count of what runs come before what is told of the clamps, on a phone as on a narrow page.
#[test]
fn what_runs_comes_before_many_that_wait() {
    for (width, words) in [(390.0, ["\"slab\"", "In clamps"]), (320.0, ["\"slab\"", "In clamps"])] {
        let mut told = clamped(5);
        told.app.page = crate::parts::Page::new(width);
        let check = |shown: String, words: [&str; 2]| {
            let places = words.map(|word| shown.find(word).unwrap_or_else(|| panic!("{word} in {shown}")));
            assert!(places.is_sorted(), "{width} {words:?} {places:?}");
        };
        check(told.at(188, []), words);
        check(told.at(240, []), ["\"slab\"", "Top 1 can come out"]);
        // Two alone leave room for them.
        let mut few = clamped(2);
        few.app.page = crate::parts::Page::new(width);
        holds(&few.at(160, []), &["\"slab\""]);
    }
}

/// Two that come off tomorrow, both after midnight: each says so, for a clock alone is of today.
#[test]
fn the_last_off_time_names_its_day_too() {
    let mut told = clamped(2);
    let ids = ids(&told);
    for (minutes, wait) in [940, 1_400].into_iter().zip(ids) {
        let now = told.now(200);
        told.app
            .order(&Command::Wait(fivebar_core::ledger::decide::WaitCommand::Mend { wait, span: Span::minutes(minutes) }), now)
            .unwrap();
    }
    holds(&told.at(203, []), &["In clamps: first off Wed 4 March", ", last Wed 4 March"]);
}

#[test]
fn clamped_and_stop_are_two_ends_of_an_operation() {
    let mut told = gluing();
    let shown = told.at(140, []);
    holds(&shown, &["Clamped", "off 90 min from now", "Stop"]);
    lacks(&shown, &["1 more done", "In clamps"]);
    for minute in CLAMPED {
        told.at(minute, [wait(WaitTap::Clamp)]);
    }
    let shown = told.at(188, [tap(Tap::Stop)]);
    holds(&shown, &["In clamps: first off 12:59, last 13:37", "5 of 5"]);
    assert_eq!(told.minutes(), [("Glue tops".into(), 48)]);
    holds(&told.at(240, []), &["Top 1 can come out, since 12:59", "Top 1 off", "In clamps: first off 13:08, last 13:37"]);
    holds(&told.at(332, []), &["All 5 tops can come out, since 13:37", "All 5 off", "One by one"]);
    let all = ids(&told);
    let shown = told.at(332, [wait(WaitTap::Off(all))]);
    lacks(&shown, &["can come out"]);
    holds(&told.at(333, [Msg::Common(Common::TakeBack)]), &["All 5 tops can come out, since 13:37"]);
}

#[test]
fn the_list_takes_off_mends_and_strikes_each() {
    let mut told = clamped(2);
    let first = ids(&told)[0];
    let shown = told.at(190, [wait(WaitTap::Show), wait(WaitTap::Open(first))]);
    holds(
        &shown,
        &["Top 1", "off 12:59, in 49 min", "Top 2", "off 13:08, in 58 min", "key h88", "How long", "To a calendar", "Check that it rings"],
    );
    told.at(191, [wait(WaitTap::Ask(Asked::Wait(first)))]);
    let shown = told.at(191, presses("2").into_iter().chain([wait(WaitTap::Unit(Unit::Hours)), tap(Tap::PadDone)]));
    holds(&shown, &["off 13:29, in 1\u{20}h"]);
    holds(&told.at(192, [wait(WaitTap::Off(vec![first]))]), &["Taken off today", "taken off 12:12, before its time"]);
    let second = ids(&told)[0];
    lacks(&told.at(193, [day(DayTap::Strike(second))]), &["Top 2"]);
    holds(&told.at(194, [Msg::Common(Common::PutBack)]), &["Top 2"]);
}

#[test]
fn no_wait_and_more_than_a_year_are_refused_in_words() {
    for (typed, unit, said) in
        [("0", Unit::Minutes, "is no wait"), ("367", Unit::Days, "from 1 min to 366 days"), ("", Unit::Days, "class=\"why\"")]
    {
        let mut told = clamped(1);
        let first = ids(&told)[0];
        told.at(190, [wait(WaitTap::Show), wait(WaitTap::Ask(Asked::Wait(first))), wait(WaitTap::Unit(unit))]);
        let shown = told.at(190, presses(typed).into_iter().chain([tap(Tap::PadDone)]));
        holds(&shown, &[said, "bench/long"]);
        assert_eq!(told.app.shelf().waits().on().next().unwrap().span, Span::minutes(90));
    }
}

#[test]
fn how_an_operation_ends_is_the_makers_own() {
    let mut told = gluing();
    holds(
        &told.at(141, [wait(WaitTap::Usual("Glue tops".into()))]),
        &["How does it end?", "White or yellow glue", "90 min", "the tin decides"],
    );
    holds(&told.at(141, [wait(WaitTap::Warmth(Warmth::Cold))]), &["3 h", "cold shop"]);
    let epoxy = Key::read("epoxy").unwrap();
    holds(&told.at(141, [wait(WaitTap::Stuff(epoxy))]), &["24 h", "Epoxy, cold shop"]);
    told.at(142, [wait(WaitTap::Ask(Asked::Stuff("Glue tops".into())))]);
    holds(
        &told.at(142, presses("20").into_iter().chain([wait(WaitTap::Unit(Unit::Hours)), tap(Tap::PadDone)])),
        &["20 h", "as you set it"],
    );
    holds(&told.at(143, [tap(Tap::Close)]), &["Nothing waits."]);
    holds(&told.at(143, [tap(Tap::Close)]), &["off 20 h from now"]);
    told.at(144, [wait(WaitTap::Usual("Glue tops".into())), wait(WaitTap::What(None))]);
    let shown = told.at(144, [tap(Tap::Close), tap(Tap::Close)]);
    holds(&shown, &["1 more done"]);
    lacks(&shown, &["Clamped"]);
    // Sanding has none until it is said.
    told.start(150, "Sand");
    told.at(150, [wait(WaitTap::Usual("Sand".into())), wait(WaitTap::What(Some(What::Dry)))]);
    holds(&told.at(150, [tap(Tap::Close), tap(Tap::Close)]), &["Laid to dry", "dry 2 days from now"]);
}

#[test]
fn a_calendar_takes_one_wait_or_all_of_them() {
    let mut told = clamped(2);
    let first = ids(&told)[0];
    let calendar = |told: &mut Told, only| {
        let now = told.now(190);
        told.app.heard(wait(WaitTap::Calendar(only)), now).into_iter().find_map(|order| match order {
            Order::Calendar { name, text } => Some((name, text)),
            _ => None,
        })
    };
    let (name, all) = calendar(&mut told, None).unwrap();
    assert_eq!((name.as_str(), all.matches("BEGIN:VALARM").count()), ("waits-2026-03-03", 2));
    holds(&all, &["SUMMARY:Glue tops: top 1 off\r\n", "DTSTART:20260303T175900Z", "DESCRIPTION:stands. Since 11:29\\, 1 h 30."]);
    assert_eq!(calendar(&mut told, Some(first)).unwrap().1.matches("BEGIN:VEVENT").count(), 1);
    holds(&told.at(191, [wait(WaitTap::Handed(Handed::Downloaded("waits.ics".into())))]), &["keeps it as waits.ics"]);
    told.at(400, [wait(WaitTap::Show)]);
    assert_eq!(calendar(&mut told, Some(first)).map(|(_, text)| text.matches("BEGIN:VEVENT").count()), Some(1), "the moment is the tap's");
}

#[test]
fn it_rings_once_at_the_off_time_and_can_be_turned_off() {
    let rings = |told: &mut Told, minute: i64| {
        let now = told.now(minute).wall;
        let minds = minds(&told.app, now);
        let orders = told.app.told(News::Tick(now));
        assert_eq!(orders.contains(&Order::Ring), !told.app.said.is_empty() && told.app.here.rings);
        (minds, orders.contains(&Order::Ring))
    };
    let mut told = clamped(2);
    told.at(188, [tap(Tap::Stop)]);
    told.app.said.clear();
    assert_eq!(rings(&mut told, 238), (true, false));
    assert_eq!(rings(&mut told, 239), (true, true));
    assert_eq!(told.app.said, "Top 1 can come out.");
    told.app.said.clear();
    assert_eq!(rings(&mut told, 239), (false, false));
    assert_eq!(rings(&mut told, 240), (true, false), "once");
    told.app.here.rings = false;
    assert_eq!(rings(&mut told, 248), (true, false));
    assert_eq!(told.app.said, "Top 2 can come out.");
    // The first look after the page was opened finds it too; what was over by then is silent.
    let mut again = clamped(2);
    (again.app.bench.rung, again.app.now) = (None, again.now(240).wall);
    assert_eq!(rings(&mut again, 248), (true, true));
    // Neither does a clock that was days ahead keep it silent.
    let mut ahead = clamped(2);
    (ahead.app.bench.rung, ahead.app.now) = (None, ahead.now(90_000).wall);
    ahead.at(190, [tap(Tap::Stop)]);
    ahead.app.said.clear();
    assert_eq!(rings(&mut ahead, 239), (true, true));
    // Nothing waits: nothing is looked at.
    let mut idle = Told::stands();
    assert_eq!(rings(&mut idle, 10), (false, false));
}

#[test]
fn what_fits_is_offered_while_nothing_runs_and_one_tap_starts_it() {
    let mut told = Told::stands();
    let stands = told.app.shelf().book.entries().next().map(|(entry, _)| entry.id).unwrap();
    let plan = |told: &mut Told, op: &str, minutes: i64| {
        let (job, now) = (stands, told.now(0));
        let planned = fivebar_core::ledger::kind::job::OperationPlanned {
            job,
            op: op.into(),
            kind: Kind::Make,
            stage: None,
            span: Some(Span::minutes(minutes)),
            pieces: None,
        };
        told.app.order(&Command::Job(JobCommand::PlanOperation(planned)), now).unwrap();
    };
    for (op, minutes) in [("Glue tops", 50), ("Flatten", 20), ("Pegs", 20), ("Taper", 40)] {
        plan(&mut told, op, minutes);
    }
    told.start(140, "Glue tops");
    told.at(149, [wait(WaitTap::Clamp)]);
    lacks(&told.at(150, []), &["what fits"]);
    let shown = told.at(150, [tap(Tap::Stop)]);
    holds(&shown, &["Until 12:59, 1 h 29: what fits", "about 28 min, planned 20 min"]);
    lacks(&shown, &["planned 40 min"]); // what comes after the pegs can't come before them
    // The same minute, without the factor: as Hours and money has it.
    let job = fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().unwrap().id;
    for (with, shown) in [(false, "about 22 min, planned 20 min"), (true, "about 28 min, planned 20 min")] {
        let now = told.now(150);
        let set = fivebar_core::ledger::kind::estimate::FactorSet { job, with };
        told.app.order(&Command::Estimate(fivebar_core::ledger::decide::EstimateCommand::SetFactor(set)), now).unwrap();
        holds(&told.at(150, []), &[shown]);
    }
    // Pegs are loud only if the maker says so; in quiet hours it is not offered then.
    told.at(200, [wait(WaitTap::Usual("Pegs".into())), wait(WaitTap::Loud(true)), tap(Tap::Close)]);
    told.at(200, [wait(WaitTap::Ask(Asked::QuietFrom))]);
    told.at(200, presses("1200").into_iter().chain([tap(Tap::PadDone)]));
    let shown = told.at(200, presses("1400").into_iter().chain([tap(Tap::PadDone)]));
    holds(&shown, &["12:00 to 14:00", "No quiet hours"]);
    lacks(&shown, &["what fits"]);
    holds(&told.at(201, [wait(WaitTap::NoQuiet)]), &["Until 12:59, 38 min: what fits"]);
}

#[test]
fn waits_stand_on_the_job_and_first_on_jobs() {
    let mut told = clamped(2);
    let stands = told.app.shelf().book.entries().next().map(|(entry, _)| entry.id).unwrap();
    told.at(190, [tap(Tap::Stop)]);
    let shown = told.at(191, [Msg::Go(Place::Jobs), Msg::Jobs(crate::app::jobs::Tap::List)]);
    holds(&shown, &["Waits ending today", "stands, Glue tops", "In clamps: first off 12:59, last 13:08"]);
    told.app.jobs.open = Some(stands);
    holds(&told.at(191, []), &["Waits", "In clamps: first off 12:59, last 13:08"]);
    holds(&told.at(240, []), &["Top 1 can come out, since 12:59", "In clamps: off 13:08"]);
    told.at(192, [wait(WaitTap::Show)]);
    assert_eq!(told.app.place, Place::Bench);
}

#[test]
fn waits_stand_in_the_day_and_are_struck_and_put_back_there() {
    let mut told = clamped(2);
    let (today, first) = (told.today(), ids(&told)[0]);
    told.at(240, [wait(WaitTap::Off(vec![first]))]);
    holds(&told.at(241, [day(DayTap::Show(today))]), &["Waits", "due 12:59, taken off 13:00", "due 13:08"]);
    let shown = told.at(242, [day(DayTap::Strike(first))]);
    lacks(&shown, &["due 12:59"]);
    holds(&told.at(243, [day(DayTap::PutBack(first))]), &["due 12:59, taken off 13:00"]);
}

fn job(told: &Told, name: &str) -> On {
    let jobs = fivebar_core::ledger::fold::jobs(&told.app.shelf().book);
    On::Job(jobs.into_iter().find(|job| job.name == name).unwrap().id)
}

fn other_job(told: &mut Told, name: &str) -> On {
    let (currency, units) = (Currency::USD, Units::Inch);
    let began = JobCommand::Begin { name: name.into(), currency, units, pieces: 1, made_for: For::Order };
    let now = told.now(0);
    told.app.order(&Command::Job(began), now).unwrap();
    job(told, name)
}

/// Two pieces of the shelf and two of the box are in clamps, and the stands are in hand: each work has its line, its time and its key.
#[test]
fn what_can_come_out_is_told_by_its_job() {
    let mut told = Told::stands();
    for (start, name) in [(10, "shelf"), (40, "box")] {
        let on = other_job(&mut told, name);
        told.at(start, [tap(Tap::Other), starting(StartingTap::On(on)), op("Glue up")]);
        told.at(start + 5, [wait(WaitTap::Clamp)]);
        told.at(start + 9, [wait(WaitTap::Clamp), tap(Tap::Stop)]);
    }
    let stands = job(&told, "stands");
    told.at(60, [tap(Tap::Other), starting(StartingTap::On(stands)), op("Sand")]);
    let shown = told.at(300, [tap(Tap::Stop)]);
    holds(&shown, &["Shelf, glue up. Both pieces can come out, since ", "Box, glue up. Both pieces can come out, since "]);
    assert_eq!(shown.matches("Both off").count(), 2, "{shown}");
    lacks(&shown, &["All 4"]);
}

/// Oiled on Tuesday at 10:00 for the shelf, while the stands are in hand: whose it is, which operation, which day, and what it is then.
#[test]
fn a_wait_says_whose_it_is_what_it_is_for_and_since_which_day() {
    let mut told = Told::stands();
    let shelf = other_job(&mut told, "shelf");
    let stands = job(&told, "stands");
    told.at(50, [tap(Tap::Other), starting(StartingTap::On(shelf)), op("Oil")]);
    holds(&told.at(59, []), &["Coated", "dry 24 h from now"]);
    told.at(60, [wait(WaitTap::Clamp), tap(Tap::Stop)]);
    told.at(61, [tap(Tap::Other), starting(StartingTap::On(stands)), op("Sand")]);
    holds(&told.at(62, []), &["Coats: dry Wed 4 March 10:00"]);
    told.at(120, [tap(Tap::Stop)]);
    holds(&told.at(121, [wait(WaitTap::Show)]), &["dry Wed 4 March 10:00, in", "Oil, shelf", ">It is dry<"]);
    // The next morning: the day is not drawn back to midnight for it, and it began yesterday.
    let next = 24 * 60;
    told.at(next, [tap(Tap::Other), starting(StartingTap::On(stands)), op("Sand")]);
    let today = told.today_at(next + 40);
    let shown = told.at(next + 40, [day(DayTap::Show(today))]);
    holds(&shown, &["Oil, shelf; since yesterday 10:00; due 10:00", "waits: piece 1 since Tue 3 March 10:00", ">09:00<"]);
    lacks(&shown, &[">00:00<", ">02:00<", ">03:00<"]);
    let shown = told.at(next + 61, [tap(Tap::Close)]);
    holds(&shown, &["Shelf, oil, piece 1 is dry for the next coat, since 10:00", "Piece 1 dry"]);
    holds(&told.at(next + 61, [tap(Tap::Big)]), &["stands"]);
    // Struck in its opened line, it stands under what was struck and can be put back.
    let id = ids(&told)[0];
    let shown = told.at(next + 62, [tap(Tap::LeaveBig), day(DayTap::Show(today))]);
    lacks(&shown, &["Strike"]);
    holds(&told.at(next + 62, [day(DayTap::Open(id))]), &["Strike"]);
    for shown in [today, today.before()] {
        let struck = told.app.shelf().waits().wait(id).is_none();
        let strike = (!struck).then(|| day(DayTap::Strike(id)));
        holds(&told.at(next + 63, strike.into_iter().chain([day(DayTap::Show(shown))])), &["Struck", "Oil, a wait", "Undo strike"]);
    }
    holds(&told.at(next + 63, [wait(WaitTap::Show)]), &["Struck", "Tue 3 March 10:00", "Oil, a wait", "Undo strike"]);
    told.at(next + 64, [day(DayTap::PutBack(id))]);
    assert_eq!(ids(&told), [id]);
}

/// Two tops in clamps and three coats are over: each kind has its words and its key, on the bench and on the list, at every width.
#[test]
fn what_is_over_is_ended_by_its_kind() {
    let mut told = clamped(2);
    told.at(190, [tap(Tap::Stop)]);
    told.start(200, "Oil");
    for minute in [201, 202, 203] {
        told.at(minute, [wait(WaitTap::Clamp)]);
    }
    told.at(204, [tap(Tap::Stop)]);
    let next = 24 * 60 + 210;
    let kinds = ["Both tops can come out, since Tue 3 March 13:08", "Both off", "Oil. All 3 pieces are dry for the next coat", "All 3 dry"];
    let shown = told.at(next, []);
    holds(&shown, &kinds);
    lacks(&shown, &["All 5", "can go on"]);
    // Two ended the day before and are not those of today.
    let shown = told.at(next, [Msg::Go(Place::Jobs), Msg::Jobs(crate::app::jobs::Tap::List)]);
    holds(&shown, &["Waits ending today", "Waits over since before today"]);
    assert!(shown.find("stands, Oil") < shown.find("Waits over since before today"), "{shown}");
    assert!(shown.find("Waits over since before today") < shown.find("stands, Glue tops"), "{shown}");
    // While something runs on a narrow page, the keys are a tap away.
    told.app.page = crate::parts::Page::new(320.0);
    told.app.place = Place::Bench;
    told.start(next + 1, "Pegs");
    holds(&told.at(next + 2, []), &[kinds[0], kinds[2]]);
    holds(&told.at(next + 2, [wait(WaitTap::Show)]), &["Both off", "All 3 dry"]);
    let coats: Vec<Id> = told.app.shelf().waits().on().filter(|wait| wait.what() == What::Coat).map(|wait| wait.id).collect();
    let shown = told.at(next + 3, [wait(WaitTap::Off(coats))]);
    holds(&shown, &["Both off", "taken off 12:33"]);
    assert_eq!(ids(&told).len(), 2);
}

/// Five stands oiled at 9:06, 9:12 and so on, half an hour of cleaning after them; at ten the next day the second coat: on the same five,
/// and nothing of the brushes is its first.
#[test]
fn a_second_coat_begins_with_the_first_piece() {
    let mut told = Told::stands();
    told.start(0, "Oil");
    for minute in [6, 12, 18, 24, 30] {
        told.at(minute, [wait(WaitTap::Clamp)]);
    }
    holds(&told.at(30, []), &["5 done", "6 min each"]);
    told.at(60, [tap(Tap::Stop)]);
    let next = 24 * 60 + 60;
    told.start(next, "Oil");
    lacks(&told.at(next, []), &["this one", "This one", "so far, the others", "Stopped earlier"]);
    holds(&told.at(next, [tap(Tap::Big)]), &["coat 2 of piece 1, dry 24 h from now"]);
    told.at(next + 6, [wait(WaitTap::Clamp)]);
    assert_eq!(told.app.said, "Coat 2 of piece 1 coated, dry at Thu 5 March 10:06");
    told.at(next + 6, [tap(Tap::LeaveBig)]);
    holds(&told.at(next + 7, []), &["Coat 2: 1 of 5 done"]);
    holds(&told.at(next + 7, [wait(WaitTap::Show)]), &["Coat 2 of piece 1", "Piece 5"]);
}

/// What a phone that is locked can't do is said beside what waits, and where the ringing is switched on or off.
#[test]
fn that_a_locked_phone_stays_silent_is_said() {
    const SILENT: &str = "It rings while this page is open and the phone is awake, and no longer. A locked phone stays silent.";
    let hand = |told: &mut Told| {
        let show = crate::app::workshop::Tap::ShowPage(crate::app::workshop::Over::Hand);
        told.at(170, [Msg::Go(Place::Workshop), Msg::Workshop(show)])
    };
    let rings = |on| Msg::Workshop(crate::app::workshop::Tap::Choose(crate::app::here::Chosen::Rings(on)));
    let mut told = clamped(1);
    holds(&told.at(160, [wait(WaitTap::Show)]), &[SILENT]);
    holds(&hand(&mut told), &[SILENT]);
    told.at(170, [rings(false)]);
    holds(&hand(&mut told), &[SILENT]);
    lacks(&told.at(171, [Msg::Go(Place::Bench), wait(WaitTap::Show)]), &[SILENT]);
}
