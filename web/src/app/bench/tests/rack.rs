//! The rack of a full bench: six jobs, forty operations; switching, carrying on, finding.

use super::*;
use fivebar_core::quantity::Listed;
use fivebar_core::story;

const MANY: &str = include_str!("../../../../../tests/stories/many-jobs.txt");

/// The story's bench at 14:21 of its last day, or as much later.
fn full(later: i64) -> Told {
    let mut told = Told::empty();
    let lines = story::tell(MANY).book.lines().map(str::to_owned).listed();
    told.app.shelf_mut().heard(lines.iter().map(String::as_str), nth(0).wall.at);
    told.at(WHEN + later, []);
    told
}

/// 14:21 on Tuesday 10 March, in minutes after nine on 3 March; the clocks went forward between.
const WHEN: i64 = 7 * 1440 + 5 * 60 + 21 - 60;

#[test]
fn the_story_is_taken_whole() {
    assert_eq!(story::tell(MANY).refused, []);
}

/// Drawing 4: what runs, about what is left, the next operation; then the latest, and one board for each other job.
#[test]
fn what_is_next_and_each_other_job_is_one_tap_away() {
    let shown = full(0).at(WHEN, []);
    holds(&shown, &[">31</span>", "3 of 5 done", "About 57 min left", "from 50 min to 1 h 04", "32 min each", "1 h 41 in all"]);
    let mut at = 0;
    for board in
        ["Taper", "\"slab\"", "Pegs", "Lately", "Sharpen", "Crosscut rough", "Other jobs", "Hall shoe bench", "Sand faces", "Blanket chest"]
    {
        let place = shown.get(at..).and_then(|rest| rest.find(board));
        at += place.unwrap_or_else(|| panic!("`{board}` after the one before it in {shown}"));
    }
    holds(&shown, &["All operations", "more of this job"]);
    assert!(shown.matches("class=\"board\"").count() <= 16, "{}", shown.matches("class=\"board\"").count());
}

#[test]
fn a_caller_stops_it_in_one_tap_and_it_says_where_it_stood() {
    let mut told = full(0);
    let shown = told.at(WHEN, [tap(Tap::Stop)]);
    holds(&shown, &["Carry on: sand", "stopped 14:21 after 31 min, about 57 min left", "3 of 5"]);
    // What was broken off lies before what fits until something is off.
    assert!(shown.find("Carry on: sand") < shown.find("what fits"), "{shown}");
    let carry = sheet(&told.app).carry_on.unwrap();
    holds(&told.at(WHEN + 9, [tap(Tap::Board(carry))]), &["\"slab\"", "3 of 5 done"]);
}

#[test]
fn one_tap_switches_to_another_job() {
    let mut told = full(0);
    let board = sheet(&told.app).rack.jobs.into_iter().find(|choice| choice.op == "Sand faces").unwrap();
    let shown = told.at(WHEN, [tap(Tap::Board(board))]);
    holds(&shown, &["Hall shoe bench, oak and beech", "3 of 5 done", "Ash plant stands"]);
    assert_eq!(told.app.shelf().bench().all_running().count(), 1);
}

/// Typed on the start screen: what is found.
#[test]
fn forty_operations_are_found_by_their_letters_and_by_their_job() {
    let mut told = full(0);
    let shown = told.at(WHEN, [tap(Tap::Other)]);
    holds(&shown, &["Ash plant stands", "another of 7", "Pegs", "Beside the bench", "Fetch", "Market"]);
    lacks(&shown, &["Milking stools"]);
    let table = told.app.shelf().bench().runs().find(|run| run.work.op == "Story stick").map(|run| run.work.on).unwrap();
    holds(&told.at(WHEN, [starting(StartingTap::Jobs)]), &["Milking stools", "No job"]);
    let shown = told.at(WHEN, [starting(StartingTap::On(table))]);
    holds(&shown, &["Story stick", "All 40"]);
    lacks(&shown, &["Fix the top"]);
    holds(&told.at(WHEN, [starting(StartingTap::All)]), &["Fix the top", "Deliver and set up"]);
    let shown = told.at(WHEN, [starting(StartingTap::Typed("tenon".into()))]);
    holds(&shown, &["Found", "Apron tenons", "Or a new one: say its kind"]);
    lacks(&shown, &["Story stick"]);
    let shown = told.at(WHEN, [starting(StartingTap::Typed("pegs".into()))]);
    holds(&shown, &["Pegs", "Ash plant stands"]);
    let pegs = told.app.shelf().bench().running(None).map(|run| run.work.on).unwrap();
    told.at(WHEN, [starting(StartingTap::Found(pegs, "Pegs".into(), Kind::Make, Stage::Make))]);
    let work = sheet(&told.app).running.unwrap().run.work;
    assert_eq!((work.op.as_str(), work.on), ("Pegs", pegs));
}

/// A kind of piece: an operation it has, one it has not.
#[test]
fn a_job_without_a_plan_has_the_operations_of_its_kind_of_piece() {
    for (piece, has, has_not) in [("stool", "Shape seat", "Fix top"), ("table", "Fix top", "Shape seat"), ("bench", "Frames", "Fix top")] {
        let mut told = Told::stands();
        let job = fivebar_core::ledger::fold::jobs(&told.app.shelf().book).next().unwrap().id;
        let pick = crate::app::jobs::estimate::EstimateTap::Piece(piece);
        told.at(0, [Msg::Go(Place::Jobs), Msg::Jobs(crate::app::jobs::Tap::Open(crate::app::order::Which::Own, job))]);
        told.at(0, [Msg::Jobs(crate::app::jobs::Tap::Estimate(pick)), Msg::Go(Place::Bench)]);
        let shown = told.at(1, [tap(Tap::Other)]);
        holds(&shown, &[has, "Coat", "Messages"]);
        lacks(&shown, &[has_not]);
    }
    // Time of no job, and every kind in two taps.
    let mut told = Told::stands();
    holds(&told.at(0, [tap(Tap::Other), starting(StartingTap::On(On::Nothing))]), &["Sharpen", "Tidy", "Learn"]);
    holds(&told.at(0, [starting(StartingTap::Typed("Sweep".into()))]), &["Fetch", "Make", "Sell", "Deliver", "Office"]);
}

/// One planned operation hides none of the others: what was done of the job, and what its kind takes, stand behind it and are found.
#[test]
fn a_plan_of_one_operation_is_not_all_there_is() {
    let mut told = Told::stands();
    told.start(0, "Assemble");
    told.at(30, [tap(Tap::Stop)]);
    let shown = told.at(31, [tap(Tap::Other)]);
    assert!(shown.contains("Assemble"), "{shown}");
    holds(&told.at(32, [tap(Tap::Starting(StartingTap::Typed("glu".into())))]), &["Glue"]);
}
