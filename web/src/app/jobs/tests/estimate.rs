//! Estimates on a job's page: old jobs typed, the kind of piece, what is kept, and what looking back says of it.

use super::*;
use crate::app::jobs::estimate::EstimateTap;

fn planned(maker: &mut Maker, op: &str, minutes: &str) {
    maker.tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, op.into())).figures(&[minutes]).tap(Tap::Save);
}

fn begun() -> Maker {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Hall bench".into())).tap(Tap::Save).tap(Tap::Room(Room::Hours));
    maker
}

/// Three rows, of which the last has no price; 1.42, 1.18 and 1.31 of what was thought warn of 25 h 26.
#[test]
fn three_old_jobs_warn_of_the_next_one() {
    let mut maker = begun();
    maker.shows(&["Nothing to go by yet", "Three old jobs"]);
    for (op, minutes) in [("make", "1080"), ("message", "60")] {
        planned(&mut maker, op, minutes);
    }
    // Each operation stands once, with what was planned and what is likely.
    maker.shows(&[
        "Make",
        "planned 18 h × 1.40",
        "25 h 12",
        "planned in all",
        "26 h 36 likely in all",
        "People take 1.40 of what they think",
    ]);
    maker.shows(&[
        "This is what is planned alone. Nothing says yet what the whole job takes",
        "How it is reckoned",
        "Thought 19 h × 1.40 = 26 h 36.",
    ]);
    assert_eq!(crate::screens::page(&maker.app).html().matches(">Message<").count(), 1);
    maker.tap(Tap::Write(What::OldJobs)).shows(&["Old job 1", "hours in all", "pieces", "thought", "sold for", "Old job 3"]);
    for (nth, name) in ["Coffee table", "Stools", "Shelf"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["28.4", "", "20", "390", "17.7", "2", "15", "220", "13.1", "1", "10"]).tap(Tap::Save);
    maker.shows(&[
        "25 h 26 likely in all",
        "Your jobs took 1.339 of what you thought (3 jobs).",
        "Thought 19 h × 1.339 = 25 h 26.",
        "The factor is the middle of 1.42, 1.18, 1.31 and twice the usual 1.4.",
        "Old jobs",
        "Coffee table",
        "28 h 24, 20 h thought",
        "17 h 42 for 2, 15 h thought",
    ]);
    maker
        .tap(Tap::Estimate(EstimateTap::Factor(false)))
        .shows(&["20 h 26 likely in all", "19 h of operations, and 7.5 % for rework on top of that: 20 h 2"]);
    maker.tap(Tap::Estimate(EstimateTap::Factor(true))).tap(Tap::Estimate(EstimateTap::Keep));
    maker.shows(&["Kept ", "25 h 26 likely", "Keep this one instead"]);
    let kept = maker.sheet().account.hours.judged_by;
    assert_eq!(kept.map(|span| span.as_minutes()), Some(1_140));
}

#[test]
fn a_row_that_is_not_right_is_not_lost() {
    let mut maker = begun();
    maker.tap(Tap::Write(What::OldJobs)).tap(Tap::Save).shows(&["Nothing was asked for"]);
    maker.figures(&["28.4"]).tap(Tap::Save).shows(&["Nothing was named", "28.4"]);
    maker.tap(Tap::Say(0, "Coffee table".into())).figures(&["0"]).tap(Tap::Save).shows(&["Coffee table", "0 min is not between 1 min"]);
    maker.figures(&["28.4", "0"]).tap(Tap::Save).shows(&["Nothing was asked for"]);
    maker.figures(&["28.4", "1", "", "0"]).tap(Tap::Save).shows(&["is no price"]);
    maker.figures(&["28.4", "1", "1", "5"]).tap(Tap::Save).shows(&["it took 28.4 of what you thought"]);
    maker.figures(&["28.4", "1", "20", "5"]).tap(Tap::Save).shows(&["Old jobs", "Coffee table"]);
    assert_eq!(maker.app.shelf().workshop().old_jobs[0].piece, Key::read("table"));
}

#[test]
fn a_kind_of_piece_is_enough_to_begin_with() {
    let mut maker = begun();
    maker.shows(&["What kind of piece", "dining table"]);
    maker.tap(Tap::Estimate(EstimateTap::Piece("bench"))).shows(&["20 h likely in all", "All of it", "usual for such a piece"]);
    // It can be another one at any time.
    maker.shows(&["Kind of piece: bench", "Usual for a bench: 20 h."]);
    assert!(!crate::screens::page(&maker.app).html().contains("dining table"));
    maker.tap(Tap::Estimate(EstimateTap::Kinds)).shows(&["dining table", "shelf", "other"]);
    maker.tap(Tap::Estimate(EstimateTap::Piece("shelf"))).shows(&["Kind of piece: shelf", "Nothing to go by yet"]);
    assert!(!crate::screens::page(&maker.app).html().contains("dining table"));
}

/// Three old jobs are something to go by, whatever kind of piece is said or not, and their figures can be worked back.
#[test]
fn three_old_jobs_are_enough_and_are_worked_back() {
    let mut maker = Maker::new();
    maker.tap(Tap::Write(What::New)).tap(Tap::Say(0, "Stools".into())).figures(&["5"]).tap(Tap::Save);
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Write(What::OldJobs));
    for (nth, name) in ["Three stools", "Bar stool", "Kids stools"].into_iter().enumerate() {
        maker.tap(Tap::Say(nth, name.into()));
    }
    maker.figures(&["18", "3", "", "", "9", "", "", "", "22", "4"]).tap(Tap::Save);
    let worked = [
        "31 h 21 likely in all",
        "Three stools: 18 h for 3, so 6 h 19 for the first.",
        "Bar stool: 9 h.",
        "Kids stools: 22 h for 4, so 5 h 57 for the first.",
        "In the middle 6 h 58 (all 3 multiplied, and the root of it taken).",
        "5 pieces take 4.50 of the first: 31 h 21.",
        "Each further piece alike takes 5 % of the first less, down to 70 %.",
    ];
    maker.shows(&worked);
    let nothing = |maker: &Maker| crate::screens::page(&maker.app).html().contains("Nothing to go by yet");
    assert!(!nothing(&maker) && !crate::screens::page(&maker.app).html().contains("for rework"));
    for kind in ["shelf", "other", "stool"] {
        maker.tap(Tap::Estimate(EstimateTap::Piece(kind))).shows(&worked[..1]);
        assert!(!nothing(&maker));
    }
    // One planned operation does not stand for the whole: 200 min x 1.4 = 4 h 40, and the rest of 31 h 21.
    maker.tap(Tap::Write(What::Plan(None))).tap(Tap::Say(0, "Sand".into())).figures(&["200", "5"]).tap(Tap::Save);
    maker.shows(&["Not planned yet", "26 h 41", "Nothing else is to be done", "Less what is planned, 4 h 40: 26 h 41 not planned yet."]);
    maker.tap(Tap::Page).tap(Tap::Room(Room::Dates)).shows(&["what is not planned yet", "26 h 41", "Sand", "4 h 40"]);
    maker.tap(Tap::Room(Room::Hours)).tap(Tap::Estimate(EstimateTap::Whole(true)));
    maker.shows(&["4 h 40 likely in all", "More is to be done", "You said that what is planned is all of it."]);
}

/// Demo B: what was warned of, and what the next estimate learns.
#[test]
fn looking_back_says_what_was_warned_of() {
    let mut maker = Maker::told(&[BENCH]);
    maker.room("bench", Room::Back).shows(&["Next estimate × 1.344", "was × 1.339", "It had warned: 25 h 26, not 19 h."]);
}

#[test]
fn a_job_shows_how_far_it_has_come() {
    let mut maker = Maker::told(&[BENCH.split("2026-05-11").next().unwrap()]);
    // 55 + 212 + 171 + 118 + 268 + 66 + 97 min so far.
    maker.open("bench").shows(&["Against the estimate", "19 h thought, 25 h 26 likely, 16 h 27 so far", "in all, as it goes."]);
    // The same figure under the same word on every page.
    maker.shows(&["fetch 1 h 23, sort 31 min, make 15 h 32, ", " sell and office 55 min, "]);
    maker.tap(Tap::Room(Room::Hours)).shows(&["fetch 1 h 23, sort 31 min, make 15 h 32, office 55 min"]);
    maker.tap(Tap::Page).say(Msg::Jobs(Tap::Next));
    maker.app.go(Place::Bench);
    maker.shows(&["19 h thought, 25 h 26 likely, 16 h 27 so far"]);
}
