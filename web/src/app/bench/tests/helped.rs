//! A helper put right: forgotten, with the times and the pay, and what cannot be.

use super::mending::{mend, opened, two_jobs, typed};
use super::*;
use fivebar_core::ledger::fold;

/// Forgotten at noon: from, until, pay; then each put right, and struck. Half an hour at 20 is 10.
#[test]
fn a_helper_who_was_forgotten_is_added_and_their_times_and_pay_are_put_right() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 61, run);
    let forgot = mend(crate::app::bench::mending::forgotten());
    holds(&told.at(61, [forgot.clone()]), &["The helper came at", "Sand, 09:00 to 10:00", "From the start"]);
    holds(&told.at(61, typed("0900")), &["The helper went at", "To the end"]);
    holds(&told.at(61, typed("0930")), &["What is the helper paid?", "Not paid"]);
    let shown = told.at(61, typed("20"));
    holds(
        &shown,
        &["helper 09:00 to 09:30, $10.00", "$20.00 an hour", "Helpers 30 min, $10.00", "class=\"fink\"", "helper 09:00 to 09:30"],
    );
    holds(&shown, &["a helper who was forgotten: came 09:00, went 09:30, $20.00 an hour", "Came", "Went", "Pay"]);
    let id = told.app.shelf().bench().run(run).unwrap().heads[0].id;
    told.at(62, [mend(Mend::Went(crate::app::bench::mending::helper(id), Typed::default()))]);
    // Beyond the run: said with the times of the run, and what was typed stays.
    let shown = told.at(62, typed("1001"));
    holds(&shown, &["10:01 is not within the run, which is 09:00 to 10:00", ">1001<"]);
    told.at(62, [tap(Tap::Close), mend(Mend::Went(crate::app::bench::mending::helper(id), Typed::default()))]);
    holds(&told.at(62, typed("1000")), &["helper 09:00 to 10:00, $20.00", "helper: went 10:00"]);
    told.at(63, [mend(Mend::Pay(crate::app::bench::mending::helper(id), Typed::default()))]);
    holds(&told.at(63, [tap(Tap::PadDone)]), &["helper 09:00 to 10:00, not paid"]);
    let today = told.today();
    holds(&told.at(64, [day(DayTap::Week(today))]), &["Helpers 1 h, not paid"]);
    opened(&mut told, 64, run);
    lacks(&told.at(64, [day(DayTap::Strike(id)), day(DayTap::Open(run))]), &["helper 09:00"]);
    // Nothing typed: all the time, not paid.
    opened(&mut told, 65, run);
    let shown = told.at(65, [forgot, tap(Tap::PadDone), tap(Tap::PadDone), tap(Tap::PadDone)]);
    holds(&shown, &["helper 09:00 to 10:00, not paid"]);
}

#[test]
fn the_job_says_its_helpers_with_their_hours_and_pay() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    told.at(10, [tap(Tap::HelperJoins)]);
    told.at(10, typed("20"));
    told.at(70, [tap(Tap::Stop)]);
    let job = fold::jobs(&told.app.shelf().book).next().unwrap().id;
    told.app.place = Place::Jobs;
    told.app.jobs.open = Some(job);
    told.app.jobs.room = Some(crate::app::jobs::Room::Hours);
    holds(&told.at(71, []), &["Spent", "Helper", "1 h", "$20.00"]);
}

/// A stop put right to before the helper went, or came: the row says that the pay ends with the run.
#[test]
fn a_helper_beyond_the_end_of_a_run_is_said() {
    let check = |came: i64, stop: &str, said: &str, not: &str| {
        let mut told = Told::stands();
        let run = told.start(0, "Sand");
        told.at(came, [tap(Tap::HelperJoins)].into_iter().chain(presses("18")).chain([tap(Tap::PadDone)]));
        told.at(came + 20, [tap(Tap::HelperLeaves)]);
        told.at(120, [tap(Tap::Stop)]);
        opened(&mut told, 121, run);
        told.at(121, [mend(Mend::Stop(Typed::default()))]);
        let shown = told.at(121, typed(stop));
        holds(&shown, &[said]);
        lacks(&shown, &[not]);
    };
    check(20, "1000", "helper 09:20 to 09:40, $6.00", "counted to the end");
    check(20, "0930", "helper 09:20 to 09:30, $3.00, went 09:40, counted to the end of the run", "nothing counted");
    check(40, "0930", "helper came 09:40, after the end of the run: nothing counted", "$0.00");
}

/// Of one who was forgotten in the sanding from nine to ten: each time is refused where it is typed, with what it met.
#[test]
fn when_a_forgotten_helper_came_is_refused_at_once() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 90, run);
    told.at(90, [mend(Mend::Came(day::Helper::default(), Typed::default()))]);
    let outside = "08:30 is not within the run, which is 09:00 to 10:00";
    holds(&told.at(90, typed("0830")), &[outside, "The helper came at", ">0830<"]);
    let rub = std::iter::repeat_n(tap(Tap::Press(Press::RubOut)), 4);
    holds(&told.at(90, rub.chain(typed("0915"))), &["The helper went at"]);
    holds(&told.at(90, typed("1015")), &["10:15 is not within the run", "The helper went at"]);
    let rub = std::iter::repeat_n(tap(Tap::Press(Press::RubOut)), 4);
    holds(&told.at(90, rub.chain(typed("0910"))), &["it would end at 09:10, and it begins at 09:15", "The helper went at"]);
    let rub = std::iter::repeat_n(tap(Tap::Press(Press::RubOut)), 4);
    holds(&told.at(90, rub.chain(typed("0945"))), &["What is the helper paid?"]);
    told.at(90, [tap(Tap::PadDone)]);
    assert_eq!(told.app.shelf().bench().run(run).unwrap().labour(told.app.now.at).as_minutes(), 60 + 30);
}

/// In a run from 23:30 to 00:30 a helper's times have the keys of both days, as the maker's own have; of a run in one day there is no choice.
#[test]
fn a_helpers_times_have_the_days_of_the_run() {
    let mut told = Told::stands();
    let run = told.start(870, "Sand");
    told.at(930, [tap(Tap::Stop)]);
    let on = told.today_at(870);
    told.at(1_500, [day(DayTap::Show(on)), day(DayTap::Open(run)), mend(crate::app::bench::mending::forgotten())]);
    let shown = told.at(1_500, presses("0010"));
    holds(&shown, &["The helper came at", "Wed 4 March 00:10", "On which day?", "Tue 3 March", "Wed 4 March"]);
    let shown = told.at(1_500, [tap(Tap::OnDay(on)), tap(Tap::PadDone)]);
    holds(&shown, &["00:10 is not within the run", "The helper came at", ">0010<"]);
    let shown = told.at(1_500, [tap(Tap::OnDay(on.next())), tap(Tap::PadDone)]);
    holds(&shown, &["The helper went at", "On which day?"]);
    told.at(1_500, [tap(Tap::PadDone), tap(Tap::PadDone)]);
    assert_eq!(told.app.shelf().bench().run(run).unwrap().labour(told.app.now.at).as_minutes(), 60 + 20);
    let (mut told, run) = two_jobs();
    opened(&mut told, 90, run);
    lacks(&told.at(90, [mend(crate::app::bench::mending::forgotten())]), &["On which day?"]);
}
