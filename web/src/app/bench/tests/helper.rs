//! A helper at the bench: joins, leaves, and what the pay costs the job.

use super::*;
use fivebar_core::quantity::Decimal;

#[test]
fn a_helper_joins_and_leaves() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    holds(&told.at(5, [tap(Tap::HelperJoins)]), &["What is the helper paid?", "Not paid", "not paid. Pay is a cost"]);
    holds(&told.at(5, [tap(Tap::PadDone)]), &["2 at work", "Helper since 09:05", "not paid", "Helper leaves"]);
    lacks(&told.at(15, [tap(Tap::HelperLeaves)]), &["2 at work"]);
    assert_eq!(told.app.shelf().bench().all_running().map(|run| run.labour(told.app.now.at).as_minutes()).sum::<i64>(), 25);
}

/// Who came before midnight came yesterday: the slab names the day, as the key does by which they leave.
#[test]
fn a_helper_who_came_yesterday_says_the_day() {
    let mut told = Told::stands();
    told.start(13 * 60, "Assemble"); // 22:00
    holds(&told.at(13 * 60 + 40, [tap(Tap::HelperJoins), tap(Tap::PadDone)]), &["Helper since 22:40"]);
    let shown = told.at(15 * 60 + 20, []); // 00:20
    holds(&shown, &["Helper since Tue 3 March 22:40"]);
    lacks(&shown, &["Helper since 22:40"]);
}

/// One of three took half an hour, a helper comes: what is left is by that pace, and whose time it is is said.
#[test]
fn whose_time_is_left_is_said_while_somebody_helps() {
    let mut told = Told::stands();
    told.start(0, "Sand");
    told.at(30, [tap(Tap::Done), tap(Tap::AskBatch)]);
    let shown = told.at(30, presses("3").into_iter().chain([tap(Tap::PadDone)]));
    holds(&shown, &["About 1 h left"]);
    lacks(&shown, &["your own time"]);
    told.at(30, [tap(Tap::HelperJoins)]);
    let shown = told.at(30, [tap(Tap::PadDone)]);
    holds(&shown, &["About 1 h left", "2 at work; what is left is your own time, at the pace so far"]);
}

/// Half an hour at 20 an hour is 10 on the job; what is no sum stays on the pad with why.
#[test]
fn a_helpers_pay_is_a_cost_of_the_job() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    let typed = |text: &str| text.chars().map(|digit| tap(Tap::Press(Press::Digit(digit.to_digit(10).unwrap() as u8)))).collect::<Vec<_>>();
    told.at(10, [tap(Tap::HelperJoins)]);
    holds(&told.at(10, typed("99999999999999").into_iter().chain([tap(Tap::PadDone)])), &["entry wrong", "class=\"why\""]);
    told.at(10, [tap(Tap::Close), tap(Tap::HelperJoins)]);
    holds(&told.at(10, typed("20")), &["USD", "Joins"]);
    holds(&told.at(10, [tap(Tap::PadDone)]), &["2 at work"]);
    told.at(40, [tap(Tap::HelperLeaves)]);
    let app = &told.app;
    let On::Job(job) = app.shelf().bench().all_running().next().unwrap().work.on else { unreachable!() };
    let account = fivebar_core::sheet::account::account(&app.shelf().shop(app.now.at), job).unwrap();
    assert_eq!(account.cost("helper").map(|sum| sum.to_string()), Some("10.00 USD".into()));
}

/// Thirty thousand an hour is asked about once; taken when it is said again, and asked anew of what is typed then.
#[test]
fn much_pay_is_asked_about() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    told.at(10, [tap(Tap::HelperJoins)]);
    let asked = "That is much for an hour. Is it meant?";
    holds(&told.at(10, presses("30000").into_iter().chain([tap(Tap::PadDone)])), &[asked]);
    lacks(&told.at(10, [tap(Tap::Press(Press::RubOut))]), &[asked]);
    holds(&told.at(10, presses("0").into_iter().chain([tap(Tap::PadDone)])), &[asked]);
    holds(&told.at(10, [tap(Tap::PadDone)]), &["2 at work"]);
    told.at(20, [tap(Tap::HelperJoins)]);
    holds(&told.at(20, presses("1000").into_iter().chain([tap(Tap::PadDone)])), &["3 at work"]);
}

/// What the last one was paid is a key the next time, in the job's currency.
#[test]
fn a_helper_joins_for_what_the_last_was_paid() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    lacks(&told.at(10, [tap(Tap::HelperJoins)]), &["as last time"]);
    told.at(10, presses("18").into_iter().chain([tap(Tap::PadDone)]));
    told.at(40, [tap(Tap::HelperLeaves)]);
    let shown = told.at(50, [tap(Tap::HelperJoins)]);
    holds(&shown, &["as last time", "18.00"]);
    lacks(&told.at(50, presses("2")), &["as last time"]);
    let pay = Money::book(Decimal::from(18), Currency::USD).unwrap();
    holds(&told.at(50, [tap(Tap::JoinsFor(pay))]), &["2 at work"]);
    let paid =
        |told: &Told| told.app.shelf().bench().all_running().flat_map(|run| run.heads.clone()).map(|head| head.pay).collect::<Vec<_>>();
    assert_eq!(paid(&told), [Some(pay), Some(pay)]);
}

/// Time of the sorting of a haul in euros, a helper forgotten: asked and taken in euros.
#[test]
fn a_helper_who_was_forgotten_at_a_haul_is_paid_in_its_currency() {
    let mut told = Told::empty();
    let begin = fivebar_core::ledger::decide::HaulCommand::BeginBare { currency: Currency::EUR, units: Units::Inch };
    told.app.order(&Command::Haul(begin), nth(0)).unwrap();
    let haul = told.app.shelf().haul().unwrap().id;
    told.at(1, [Msg::Go(Place::Bench), tap(Tap::Other), starting(StartingTap::Sort(haul))]);
    let (run, today) = (told.run(), told.today());
    told.at(61, [tap(Tap::Stop), day(DayTap::Show(today)), day(DayTap::Open(run))]);
    told.at(61, [day(DayTap::Mend(Box::new(Mend::Came(day::Helper::default(), Typed::default())))), tap(Tap::PadDone)]);
    holds(&told.at(61, [tap(Tap::PadDone)]), &["EUR"]);
    lacks(&told.at(61, presses("15").into_iter().chain([tap(Tap::PadDone)])), &["Not taken"]);
    let paid = told.app.shelf().bench().run(run).unwrap().paid(told.app.now.at);
    assert_eq!(paid.iter().map(|paid| paid.1.to_string()).collect::<Vec<_>>(), ["15.00 EUR"]);
}

/// Two unload: both are counted, and one who leaves leaves the other there.
#[test]
fn a_second_helper_joins_beside_the_first() {
    let mut told = Told::stands();
    told.start(0, "Carry");
    told.at(0, [tap(Tap::HelperJoins), tap(Tap::PadDone)]);
    holds(&told.at(10, []), &["2 at work", "Helper joins", "Helper leaves"]);
    holds(&told.at(10, [tap(Tap::HelperJoins), tap(Tap::PadDone)]), &["3 at work"]);
    holds(&told.at(20, [tap(Tap::HelperLeaves)]), &["2 at work", "Helper leaves"]);
    told.at(30, [tap(Tap::Stop)]);
    let bench = told.app.shelf().bench();
    assert_eq!(bench.runs().map(|run| run.labour(told.app.now.at).as_minutes()).sum::<i64>(), 30 + 30 + 10);
}

/// Two at 20.00 and 12.00 an hour: the key says who goes, and nothing of it where their pay is the same.
#[test]
fn who_leaves_is_said_by_their_pay() {
    let mut told = Told::stands();
    told.start(0, "Carry");
    for pay in ["20", "12"] {
        told.at(0, [tap(Tap::HelperJoins)].into_iter().chain(presses(pay)).chain([tap(Tap::PadDone)]));
    }
    let both = [
        "Helper leaves</span><span class=\"s\">$12.00 an hour, since 09:00",
        "Helper leaves</span><span class=\"s\">$20.00 an hour, since 09:00",
    ];
    holds(&told.at(10, []), &both);
    let paid = |told: &Told| {
        let paid = told.app.shelf().bench().run(told.run()).unwrap().paid(told.app.now.at);
        paid.iter().map(|paid| (paid.1.to_string(), paid.2.as_minutes())).collect::<Vec<_>>()
    };
    let shown = told.at(30, [tap(Tap::HelperLeaves)]);
    lacks(&shown, &["Helper leaves</span><span class=\"s\">"]);
    assert_eq!(paid(&told), [("20.00 USD".to_owned(), 30), ("12.00 USD".to_owned(), 30)]);
    told.at(31, [Msg::Common(Common::TakeBack)]);
    // The other one goes, and then the one who is left: 40 and 50 minutes.
    let first = told.app.shelf().bench().run(told.run()).unwrap().heads[0].id;
    lacks(&told.at(40, [tap(Tap::Leaves(first))]), &["Helper leaves</span><span class=\"s\">"]);
    told.at(50, [tap(Tap::HelperLeaves)]);
    told.at(60, []);
    assert_eq!(paid(&told), [("20.00 USD".to_owned(), 40), ("12.00 USD".to_owned(), 50)]);
}

/// One at 18.00 from 9:10, one unpaid from 9:20: each key says since when, and the bar says who is gone.
#[test]
fn who_was_taken_off_is_said() {
    let mut told = Told::stands();
    told.start(0, "Carry");
    told.at(10, [tap(Tap::HelperJoins)].into_iter().chain(presses("18")).chain([tap(Tap::PadDone)]));
    holds(&told.at(20, [tap(Tap::HelperJoins), tap(Tap::PadDone)]), &["$18.00 an hour, since 09:10", "not paid, since 09:20"]);
    let first = told.app.shelf().bench().run(told.run()).unwrap().heads[0].id;
    holds(&told.at(40, [tap(Tap::Leaves(first))]), &["helper gone ($18.00 an hour, since 09:10), 09:40"]);
    holds(&told.at(50, [tap(Tap::HelperLeaves)]), &["helper gone (not paid, since 09:20), 09:50"]);
}

/// An hour and a half at 18.00 and half an hour unpaid: the hours of the job say which is which, and nothing of it where all are paid.
#[test]
fn hours_that_are_paid_stand_apart_from_those_that_are_not() {
    use crate::app::jobs::{Room, Tap as JobsTap};
    let mut told = Told::stands();
    let job = fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().unwrap().id;
    let hours = |told: &mut Told, minute| {
        let open = Msg::Jobs(JobsTap::Open(crate::app::Which::Own, job));
        let shown = told.at(minute, [Msg::Go(Place::Jobs), open, Msg::Jobs(JobsTap::Room(Room::Hours))]);
        told.at(minute, [Msg::Go(Place::Bench)]);
        shown
    };
    told.start(0, "Carry");
    told.at(0, [tap(Tap::HelperJoins)].into_iter().chain(presses("18")).chain([tap(Tap::PadDone)]));
    told.at(90, [tap(Tap::Stop)]);
    lacks(&hours(&mut told, 91), &["paid"]);
    told.start(100, "Sand");
    told.at(100, [tap(Tap::HelperJoins), tap(Tap::PadDone)]);
    told.at(130, [tap(Tap::Stop)]);
    holds(&hours(&mut told, 131), &["1 h 30 paid, 30 min not", "27.00"]);
}

/// Forgotten, and paid as the last one was: half an hour at 18.00, in one tap.
#[test]
fn a_helper_who_was_forgotten_is_paid_as_the_last_one_was() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    told.at(0, [tap(Tap::HelperJoins)].into_iter().chain(presses("18")).chain([tap(Tap::PadDone)]));
    told.at(10, [tap(Tap::HelperLeaves), tap(Tap::Stop)]);
    let run = told.start(20, "Glue up");
    told.at(50, [tap(Tap::Stop)]);
    let today = told.today();
    told.at(51, [day(DayTap::Show(today)), day(DayTap::Open(run))]);
    told.at(51, [day(DayTap::Mend(Box::new(Mend::Came(day::Helper::default(), Typed::default())))), tap(Tap::PadDone)]);
    let shown = told.at(51, [tap(Tap::PadDone)]);
    holds(&shown, &["as last time", "18.00"]);
    let pay = Money::book(Decimal::from(18), Currency::USD).unwrap();
    holds(&told.at(52, [tap(Tap::JoinsFor(pay))]), &["Today", "$9.00"]);
    let paid = told.app.shelf().bench().run(run).unwrap().paid(told.app.now.at);
    assert_eq!(paid.iter().map(|paid| (paid.1.to_string(), paid.2.as_minutes())).collect::<Vec<_>>(), [("18.00 USD".to_owned(), 30)]);
}

/// What runs, as an id of the switch that is asked about.
fn last_run(told: &Told) -> Id {
    told.app.shelf().bench().runs().last().unwrap().id
}

/// A helper from 9:00 for 15 an hour; a switch at 9:30 asks; what is said then, and the minutes of all heads at the second run by 11:00.
#[test]
fn a_switch_asks_whether_the_helper_is_still_here() {
    let check = |answer: Option<fn(Id) -> Tap>, labour: i64, shown: &[&str], not: &[&str]| {
        let mut told = Told::stands();
        told.start(0, "Carry");
        told.at(0, [tap(Tap::HelperJoins)].into_iter().chain(presses("15")).chain([tap(Tap::PadDone)]));
        told.start(30, "Assemble");
        holds(&told.at(31, []), &["A helper was at carry until 09:30.", "Still here", "Gone"]);
        let asked = last_run(&told);
        let page = told.at(35, answer.map(|answer| tap(answer(asked))));
        holds(&page, shown);
        lacks(&page, not);
        told.at(120, [tap(Tap::Stop)]);
        let bench = told.app.shelf().bench();
        let runs = bench.runs().map(|run| run.labour(told.app.now.at).as_minutes()).collect::<Vec<_>>();
        assert_eq!(runs, [60, labour]);
    };
    check(None, 90, &["Still here"], &["2 at work"]);
    check(Some(Tap::HelpersStay), 180, &["2 at work", "Take back"], &["Still here"]);
    check(Some(Tap::HelpersGone), 90, &["Take back"], &["2 at work", "Still here"]);
}

/// Busy hands answer later: the question outlasts the next switch, the stop and the app, and the row says so until then.
#[test]
fn the_question_after_a_helper_stays_until_it_is_answered() {
    let asked = "A helper was at carry until 09:30. Also at assemble, 09:30 to 10:00?";
    let check = |answer: fn(Id) -> Tap, then: &[&str], labour: [i64; 3]| {
        let mut told = Told::stands();
        told.start(0, "Carry");
        told.at(0, [tap(Tap::HelperJoins)].into_iter().chain(presses("15")).chain([tap(Tap::PadDone)]));
        told.start(30, "Assemble");
        let run = last_run(&told);
        told.start(60, "Sand");
        holds(&told.at(61, []), &[asked, "At it too", "Gone by then"]);
        told.at(90, [tap(Tap::Stop)]);
        holds(&told.at(91, []), &[asked]);
        let today = told.today();
        holds(&told.at(92, [day(DayTap::Show(today))]), &["helper not settled: nothing counted"]);
        let page = told.at(93, [day(DayTap::Open(run))]);
        holds(&page, &[asked]);
        let page = told.at(95, [tap(answer(run)), tap(Tap::Close)]);
        lacks(&page, &[asked]);
        holds(&page, then);
        let bench = told.app.shelf().bench();
        assert_eq!(bench.runs().map(|run| run.labour(told.app.now.at).as_minutes()).collect::<Vec<_>>(), labour);
    };
    // Who was at the second may have been at the third too: that is asked next.
    check(Tap::HelpersStay, &["A helper was at assemble until 10:00. Also at sand, 10:00 to 10:30?"], [60, 60, 30]);
    check(Tap::HelpersGone, &[], [60, 30, 30]);
}

/// A helper who came at 9:20 to what was said later to be over since 9:15: no word of them being there before, nor of a stay forgotten.
#[test]
fn who_came_after_the_switch_that_was_said_is_not_put_before_it() {
    let mut told = Told::stands();
    told.start(0, "Sand");
    told.at(20, [tap(Tap::HelperJoins), tap(Tap::PadDone)]);
    told.at(30, [tap(Tap::Ago(15)), tap(Tap::Other), op("Assemble")]);
    let page = told.at(31, []);
    holds(&page, &["A helper came at 09:20.", "Still here"]);
    lacks(&page, &["A helper was at"]);
    let (run, today) = (last_run(&told), told.today());
    let page = told.at(35, [tap(Tap::HelpersStay(run)), day(DayTap::Show(today)), day(DayTap::Open(run))]);
    holds(&page, &["helper still here: came 09:20"]);
    lacks(&page, &["forgotten", "not settled"]);
}

/// Forgotten over night: the card says since when, which day its end is of, and what counts of the helper then.
#[test]
fn a_forgotten_stop_says_its_day_and_what_the_helper_gets() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    told.at(60, [tap(Tap::HelperJoins)]);
    told.at(60, presses("20").into_iter().chain([tap(Tap::PadDone)]));
    told.at(120, [tap(Tap::Done)]);
    lacks(&told.at(500, []), &["Since Tue"]);
    let said = ["Since Tue 3 March 09:00.", "2 h, until Tue 3 March 11:00", "Helpers 1 h, $20.00 up to then, and nothing after it."];
    holds(&told.at(23 * 60, []), &said);
}

/// The same night on the list of its day: until it is answered hours and helper are in what is said of the day up to the last piece, and where none
/// was noted not at all, running or stopped, seen the day after; the row marks the stay. Said to be right, or ended where it was, both count.
#[test]
fn a_helper_of_a_forgotten_stop_is_in_the_sums_of_that_day_up_to_the_last_piece() {
    let check = |stopped: bool, answer: fn(Id) -> Tap, (said, week): (&str, &str)| {
        let night = |came: i64, noted: bool| {
            let mut told = Told::stands();
            let (run, today) = (told.start(0, "Assemble"), told.today());
            told.at(came, [tap(Tap::HelperJoins)]);
            told.at(came, presses("20").into_iter().chain([tap(Tap::PadDone)]));
            if noted {
                told.at(120, [tap(Tap::Done)]);
            }
            if stopped {
                told.at(23 * 60, [tap(Tap::Stop)]);
            }
            (told, run, today)
        };
        let (mut told, _, today) = night(0, false);
        let page = told.at(23 * 60 + 1, [day(DayTap::Show(today))]);
        holds(&page, &["0 min and one to settle", "helper not settled: nothing counted"]);
        lacks(&page, &["Helpers ", "of it to settle"]);
        lacks(&told.at(23 * 60 + 1, [day(DayTap::Week(today))]), &["Helpers "]);
        let (mut told, run, today) = night(60, true);
        let page = told.at(23 * 60 + 1, [day(DayTap::Show(today))]);
        let rest = if stopped { "21 h of it to settle" } else { "21 h 01 of it to settle" };
        holds(&page, &["2 h and one to settle", "helper not settled: counted to the last note", rest, "Helpers 1 h, $20.00"]);
        holds(&told.at(23 * 60 + 1, [day(DayTap::Week(today))]), &["Helpers 1 h, $20.00"]);
        let page = told.at(23 * 60 + 1, [tap(answer(run)), day(DayTap::Show(today))]);
        holds(&page, &[said]);
        lacks(&page, &["not settled", "to settle"]);
        holds(&told.at(23 * 60 + 1, [day(DayTap::Week(today))]), &[week]);
    };
    let two_hours = |run| Tap::Proposed(run, nth(0).wall.at.plus(Span::minutes(120)));
    check(false, two_hours, ("Helpers 1 h, $20.00", "Helpers 1 h, $20.00"));
    check(true, two_hours, ("Helpers 1 h, $20.00", "Helpers 1 h, $20.00"));
    // From 10:00 to midnight of that day, to 8:00 of the next.
    check(true, Tap::Right, ("Helpers 14 h, $280.00", "Helpers 22 h, $440.00"));
}
