//! When dust is spoken of, and rags: after each coat, and when the day ends.

use super::super::waits::WaitTap;
use super::*;
use fivebar_core::ledger::kind::dates::WorkdaysSet;
use fivebar_core::quantity::Clock;

const RAGS: &str = "Oily rags can heat up";
const DUST: &str = "Hardwood dust harms lungs";

/// The workshop closes at that hour.
fn closing(told: &mut Told, hour: u8) {
    let now = told.now(0);
    let said = WorkdaysSet::of(None, Clock::at(hour.into(), 0), [None; 7]);
    told.app.order(&Command::Dates(fivebar_core::ledger::decide::DatesCommand::SetWorkdays(said)), now).unwrap();
}

#[test]
fn rags_are_named_as_soon_as_a_coat_is_done_and_at_the_last_stop() {
    let mut told = Told::stands();
    told.start(0, "Coat");
    lacks(&told.at(1, []), &[RAGS]);
    holds(&told.at(10, [Msg::Bench(Tap::Waits(WaitTap::Clamp))]), &[RAGS, "Coats: dry Wed 4 March 09:10"]);
    told.at(12, [tap(Tap::Stop)]);
    told.start(20, "Pegs");
    lacks(&told.at(30, [tap(Tap::Stop)]), &[RAGS]);
    holds(&told.at(8 * 60 + 1, []), &[RAGS]); // 17:01
}

/// A coat done leaves rags, be it the day's first or not: each is spoken of until something else is done.
#[test]
fn rags_are_named_after_every_coat() {
    let mut told = Told::stands();
    for began in [0, 120, 240] {
        told.start(began, "Coat");
        lacks(&told.at(began + 5, []), &[RAGS]);
        holds(&told.at(began + 30, [tap(Tap::Stop)]), &[RAGS]);
        told.start(began + 40, "Pegs");
        holds(&told.at(began + 41, []), &[RAGS]);
        lacks(&told.at(began + 60, [tap(Tap::Stop)]), &[RAGS]);
    }
}

/// Begun before midnight and done after it: the rags are of the day they are left on.
#[test]
fn rags_of_a_coat_done_after_midnight_are_named() {
    let mut told = Told::stands();
    told.start(14 * 60 + 30, "Coat"); // 23:30
    holds(&told.at(15 * 60 + 20, [tap(Tap::Stop)]), &[RAGS]); // 00:20
}

/// The day ends an hour before closing at the soonest, as it was said; without a coat nothing is said of rags.
#[test]
fn the_days_end_goes_by_the_closing_that_was_said() {
    let check = |op: &str, hour: Option<u8>, clock: (i64, i64), is_named: bool| {
        let mut told = Told::stands();
        hour.into_iter().for_each(|hour| closing(&mut told, hour));
        told.start(0, op);
        told.at(20, [tap(Tap::Stop)]);
        told.start(30, "Pegs");
        told.at(60, [tap(Tap::Stop)]);
        let shown = told.at((clock.0 - 9) * 60 + clock.1, []);
        assert_eq!(shown.contains(RAGS), is_named, "{op}, closing {hour:?}, at {clock:?}");
    };
    for (hour, [before, from]) in [(None, [(16, 59), (17, 0)]), (Some(16), [(14, 59), (15, 0)]), (Some(20), [(18, 59), (19, 0)])] {
        check("Coat", hour, before, false);
        check("Coat", hour, from, true);
        check("Trim", hour, from, false);
    }
}

/// A run that goes on past closing keeps the day open; at its stop the rags of the morning are named.
#[test]
fn a_run_left_on_past_closing_ends_the_day_at_its_stop() {
    let mut told = Told::stands();
    closing(&mut told, 17);
    told.start(0, "Coat");
    told.at(20, [tap(Tap::Stop)]);
    told.start(30, "Trim");
    lacks(&told.at(60, [tap(Tap::Stop)]), &[RAGS]);
    told.start(6 * 60, "Pegs"); // 15:00
    lacks(&told.at(7 * 60 + 30, []), &[RAGS]); // 16:30, still at it
    lacks(&told.at(9 * 60 + 30, []), &[RAGS]); // 18:30, closed since 17:00
    holds(&told.at(9 * 60 + 31, [tap(Tap::Stop)]), &[RAGS]);
}

/// The day's first dusty work, and its first sanding, whatever was done before; a drive to the sawmill is neither.
#[test]
fn dust_is_named_at_the_first_of_the_day() {
    let mut told = Told::stands();
    let ring = starting(StartingTap::Op("Ring the mill".into(), Kind::Office, Stage::Sell));
    told.at(0, [tap(Tap::Other), ring]);
    lacks(&told.at(1, []), &[DUST]);
    for (began, op, is_named) in [(20, "Thickness", true), (40, "Joint", false), (60, "Sand", true), (80, "Sand", false)] {
        told.start(began, op);
        let shown = told.at(began + 1, []);
        if is_named { holds(&shown, &[DUST]) } else { lacks(&shown, &[DUST]) }
    }
}

/// Sanding has a first of its own each day, whatever was ripped before it; so has ripping.
#[test]
fn sanding_and_ripping_each_have_a_first_of_the_day() {
    let check = |ops: &[(&str, bool)]| {
        let mut told = Told::stands();
        for (nth, (op, is_named)) in ops.iter().enumerate() {
            let began = nth as i64 * 60;
            told.start(began, op);
            let shown = told.at(began + 1, []);
            if *is_named { holds(&shown, &[DUST]) } else { lacks(&shown, &[DUST]) }
        }
    };
    check(&[("Joint and rip", true), ("Glue up", false), ("Sand", true), ("Joint and rip", false), ("Sand", false)]);
    check(&[("Sand", true), ("Joint and rip", true), ("Thickness", false)]);
}

/// Milling offcuts belongs to fetching, and raises dust; the way to the mill does not, nor what is said of it on the phone.
#[test]
fn dust_is_named_where_offcuts_are_milled() {
    let check = |op: &str, (kind, stage): (Kind, Stage), is_named: bool| {
        let mut told = Told::stands();
        told.at(0, [tap(Tap::Other), starting(StartingTap::Op(op.into(), kind, stage))]);
        assert_eq!(told.at(1, []).contains(DUST), is_named, "{op}");
    };
    for op in ["Milling", "Mill offcuts", "Planing", "Plane the boards", "Sort and rip", "Ripping offcuts"] {
        check(op, (Kind::Fetch, Stage::Sort), true);
    }
    for op in ["Fetch", "Drive to the mill", "Drive to the sawmill", "Way to the saw mill", "Pick up at the mill", "Sort"] {
        check(op, (Kind::Fetch, Stage::Fetch), false);
    }
    check("Planing", (Kind::Make, Stage::Make), true);
    check("Ring the mill", (Kind::Office, Stage::Sell), false);
}
