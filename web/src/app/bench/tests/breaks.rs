//! A break in a run: taken out, asked about, and not before the end of the run is settled.

use super::mending::{mend, opened, two_jobs, typed};
use super::*;

/// Sand from 9:00 to 10:00 with a piece: a break from 9:20 to 9:35 is taken out by the clock, in one act that is taken back whole.
#[test]
fn a_break_is_taken_out_of_a_run() {
    let (mut told, run) = two_jobs();
    opened(&mut told, 90, run);
    holds(&told.at(90, [mend(Mend::Which)]), &["A break in it"]);
    holds(&told.at(90, [mend(Mend::BreakFrom(Typed::default()))]), &["The break began at", "Sand, 09:00 to 10:00"]);
    let shown = told.at(90, typed("1030"));
    holds(&shown, &["Not taken: 10:30 is not within the run, which is 09:00 to 10:00."]);
    told.at(90, [mend(Mend::BreakFrom(Typed::default()))]);
    holds(&told.at(90, typed("920")), &["Back at work at"]);
    let before = told.minutes();
    let shown = told.at(91, typed("935"));
    holds(&shown, &["45 min", "Take back"]);
    assert_eq!(before.iter().filter(|(op, _)| op == "Sand").map(|(_, minutes)| minutes).sum::<i64>(), 60);
    let sand = |told: &Told| told.minutes().into_iter().filter(|(op, _)| op == "Sand").map(|(_, minutes)| minutes).collect::<Vec<_>>();
    let mut parts = sand(&told);
    parts.sort();
    assert_eq!(parts, [20, 25]);
    told.at(92, [Msg::Common(Common::TakeBack)]);
    assert_eq!(sand(&told), [60]);
}

/// More than five hours over noon, with a piece each hour: whether there was a break is asked at the stop, and leads to it in a tap.
#[test]
fn a_long_run_over_noon_is_asked_about() {
    let asked = "over noon. Was there a break in it?";
    let ran = |from: i64, to: i64| {
        let mut told = Told::stands();
        let run = told.start(from, "Sand");
        (1..).map(|hour| from + hour * 55).take_while(|at| *at < to).for_each(|at| drop(told.at(at, [tap(Tap::Done)])));
        lacks(&told.at(to, []), &[asked]);
        told.at(to, [tap(Tap::Stop)]);
        (told, run)
    };
    let check = |from: i64, to: i64, is_asked: bool| {
        let (mut told, _) = ran(from, to);
        assert_eq!(told.at(to + 1, []).contains(asked), is_asked, "{from} to {to}");
    };
    check(0, 300, false); // 9:00 to 14:00, five hours
    check(0, 320, true);
    check(200, 540, false); // from 12:20
    let (mut told, run) = ran(0, 320);
    holds(&told.at(321, []), &["Sand ran 5", "20, over noon. Was there a break in it?", ">A break in it<", ">No break<"]);
    holds(&told.at(322, [day(DayTap::Break(run))]), &["The break began at", "Sand, 09:00 to 14:20"]);
    told.at(322, typed("1200"));
    told.at(323, typed("1230"));
    assert_eq!(told.minutes(), [("Sand".to_owned(), 180), ("Sand".to_owned(), 110)]);
    lacks(&told.at(324, [Msg::Go(Place::Bench)]), &[asked]);
    let (mut told, run) = ran(0, 320);
    lacks(&told.at(322, [tap(Tap::Right(run))]), &[asked]);
    lacks(&told.at(24 * 60, []), &[asked]);
    // What was said before the next start is asked no more; the next start is never blocked.
    let (mut told, _) = ran(0, 320);
    told.start(330, "Trim");
    lacks(&told.at(331, []), &[asked]);
}

/// A clock that was forgotten for a night has no break before its end is said.
#[test]
fn the_end_of_a_run_in_question_comes_before_its_break() {
    let (mut told, _) = two_jobs();
    told.at(60, [tap(Tap::Other), op("Sand")]);
    let run = told.run();
    told.at(60 + 20 * 60, [tap(Tap::Stop)]);
    opened(&mut told, 60 + 20 * 60, run);
    let shown = told.at(60 + 20 * 60, [mend(Mend::BreakFrom(Typed::default()))]);
    holds(&shown, &["Not taken: when this run ended is not settled."]);
    lacks(&shown, &["The break began at"]);
}
