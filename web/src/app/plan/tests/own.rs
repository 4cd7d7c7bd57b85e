//! The job's own pieces are counted by one rule, whatever is made: those a plan before took are named, those it has by hand are not taken.

use super::told::{RACK, solved, typed};
use super::*;

const PARTS: &str = "part \"leg\" 4 of 20 x 50 x 450 mm oak-european for tray\n";

/// The same pieces of a rack with strips alone.
fn begun(lines: &str, shape: Shape) -> App {
    let story = tell(&format!("{RACK}{PARTS}gone 31 ends burnt\n{lines}"));
    assert_eq!(story.refused, []);
    let mut app = App::for_tests(Place::Jobs);
    app.own = Shelf::of(Device::new([1; 8]), story.book, Sorted::new());
    (app.now, app.jobs.open) = (Wall::new(story.now.at, story.now.offset), story.names.job("tray"));
    heard(&mut app, [Tap::Open, Tap::Shape(shape)]);
    if shape == Shape::Rows {
        typed(&mut app, &["1000", "100", "2"]);
    }
    app
}

fn planned(app: &mut App) -> String {
    heard(app, [Tap::Go]);
    solved(app);
    heard(app, [Tap::Stop]);
    page(app)
}

fn used(app: &App) -> u32 {
    app.plan.found.as_ref().unwrap().sheet.used.iter().map(|used| used.pieces).sum()
}

#[test]
fn the_jobs_own_pieces_are_counted_alike_in_rows_and_in_parts() {
    for shape in [Shape::Rows, Shape::Parts, Shape::Sticks] {
        // By a plan before: they lie on the rack for this one, and are named.
        let mut app = begun("", shape);
        planned(&mut app);
        let first = used(&app);
        heard(&mut app, [Tap::Use]);
        let shown = planned(&mut app);
        assert!(shown.contains(&format!("of 37 pieces. Of the 37, {first} are this job’s by the plan before.")), "{shape:?}: {shown}");
        assert!(shown.contains(&format!("takes {first} pieces, asks about {first} of the plan before")), "{shape:?}: {shown}");
        // By hand: they are asked for, none of them is taken from the rack, and none is of a plan before.
        let mut app = begun("take 9 strips for tray\n", shape);
        let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
        let [rack, own] = [false, true].map(|own| all.iter().find(|it| it.in_job == own && it.pile.label == "A").unwrap().which());
        heard(&mut app, [Tap::Turn(rack), Tap::Turn(own)]);
        let shown = planned(&mut app);
        assert!(shown.contains(" of 9 pieces.") && shown.contains("in the job already"), "{shape:?}: {shown}");
        assert!(!shown.contains("by the plan before"), "{shape:?}: {shown}");
        heard(&mut app, [Tap::Use]);
        assert!(page(&app).contains("The job has this wood."), "{shape:?}");
    }
}

/// Of alike pieces the job's own go first, as many as it has: the rest is of the rack.
#[test]
fn the_jobs_own_pieces_go_before_those_of_the_rack() {
    for (shape, has) in [(Shape::Rows, 9), (Shape::Rows, 1), (Shape::Parts, 9), (Shape::Parts, 1), (Shape::Sticks, 9), (Shape::Sticks, 1)] {
        let mut app = begun(&format!("take {has} strips for tray\n"), shape);
        let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
        let own = all.iter().find(|it| it.in_job).unwrap().which();
        heard(&mut app, [Tap::Turn(own)]);
        planned(&mut app);
        let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
        let of_job = |place: usize| given.sources[place].in_job;
        let own = found.sheet.used.iter().filter(|it| of_job(it.source)).map(|it| it.pieces).sum::<u32>();
        assert_eq!(own, used(&app).min(has), "{shape:?} {has}");
        assert!(1 < used(&app), "{shape:?}");
        heard(&mut app, [Tap::Use]);
        assert!(page(&app).contains("The job has this wood."), "{shape:?} {has}");
    }
}

/// Of another size they go first too, where the plan is worth the same: a thinner strip is planed to the same row.
#[test]
fn the_jobs_own_pieces_of_another_size_go_first_where_the_plan_is_worth_the_same() {
    let slim = "pile slim oak-european 25 x 62 x 1010 mm\ncount 9 slim\ntake 9 slim for tray\n";
    let mut app = begun(slim, Shape::Rows);
    let all = fivebar_core::sheet::make::sources(&app.shelf().shop(app.now.at), app.jobs.open.unwrap()).unwrap();
    let own = all.iter().find(|it| it.in_job).unwrap().which();
    heard(&mut app, [Tap::Turn(own)]);
    typed(&mut app, &["", "", "", "", "20"]);
    let shown = planned(&mut app);
    let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
    // Without the thicker ones of the rack the same rows waste less, and they are left out.
    assert!(given.left_out.iter().any(|(it, why)| !it.in_job && *why == fivebar_core::sheet::make::Unfit::LeftForLess), "of the rack");
    let of_rack = found.sheet.used.iter().filter(|it| !given.sources[it.source].in_job).map(|it| it.pieces).sum::<u32>();
    assert_eq!((of_rack, 1 < used(&app)), (0, true), "{shown}");
    assert!(shown.contains("in the job already"), "{shown}");
}

/// A board more than the plan uses: the figures of the plan stay, and what differs is said; also where the job has no parts.
#[test]
fn a_board_more_takes_no_figure_away() {
    use fivebar_core::ledger::decide::{HaulCommand, JobCommand};
    use fivebar_core::ledger::kind::job::PartPlanned;
    let mut app = super::later::planned("");
    let job = app.jobs.open.unwrap();
    let [thickness, width, length] = [20, 120, 980].map(|n| fivebar_core::quantity::Length::MM.times(n).unwrap());
    let none = PartPlanned { job, name: "top".into(), n: 0, thickness, width, length, wood: None };
    super::later::order(&mut app, Command::Job(JobCommand::PlanPart(none)));
    heard(&mut app, [Tap::Use]);
    let wood = |app: &App| fivebar_core::sheet::account::account(&app.shelf().shop(app.now.at), job).unwrap().wood;
    let before = wood(&app);
    assert!(before.finished.is_some() && before.finished_of_used.is_some());
    let said = "The job has 1 piece more than its plans use: what is planned is of the plans alone.";
    let shown = |app: &mut App| {
        app.jobs.room = Some(Room::Wood);
        page(app)
    };
    assert!(!shown(&mut app).contains(said));
    let Lying { haul, pile } = app.plan.given.as_ref().unwrap().sources[0].which().0;
    super::later::order(&mut app, Command::Haul(HaulCommand::Take { haul, pile, job, n: 1 }));
    assert_eq!(wood(&app).finished, before.finished);
    assert!(wood(&app).finished_of_used < before.finished_of_used && wood(&app).finished_of_used.is_some());
    let shown = shown(&mut app);
    assert!(shown.contains(said), "{shown}");
}

/// A design keeps no top in rows: where the job has one it is said beside the keys of designs.
#[test]
fn what_no_design_keeps_is_said_where_designs_are_kept() {
    let said = "A top in rows and a field of tiles are not kept in it";
    for (shape, is_said) in [(Shape::Rows, true), (Shape::Parts, false)] {
        let mut app = begun("", shape);
        planned(&mut app);
        for used in [false, true] {
            heard(&mut app, used.then_some(Tap::Use));
            app.jobs.room = Some(Room::Wood);
            assert_eq!(page(&app).contains(said), is_said, "{shape:?} {used}");
            app.jobs.room = Some(Room::Plan);
        }
    }
}

/// The rack is counted after a plan took its wood: planned again it has what lies there and its own; and dropped, all of it is there.
#[test]
fn the_jobs_own_pieces_stay_when_the_rack_is_counted() {
    use fivebar_core::ledger::decide::StockCommand;
    for shape in [Shape::Rows, Shape::Parts, Shape::Sticks] {
        let mut app = begun("", shape);
        planned(&mut app);
        let first = used(&app);
        heard(&mut app, [Tap::Use]);
        let which = app.plan.given.as_ref().unwrap().sources[0].which().0;
        super::later::order(&mut app, Command::Stock(which, StockCommand::CountRack { n: 8, why: None }));
        let all = 8 + first;
        let shown = planned(&mut app);
        assert!(
            shown.contains(&format!("of {all} pieces. Of the {all}, {first} are this job’s by the plan before.")),
            "{shape:?}: {shown}"
        );
        let plan = crate::app::plan::in_use_by(&app, app.jobs.open.unwrap())[0].0;
        heard(&mut app, [Tap::Kept(plan), Tap::Drop, Tap::DropAnd(false)]);
        assert_eq!(super::later::strips_of(&app), (all, 0), "{shape:?}");
        super::later::put_back(&mut app);
        assert_eq!(super::later::strips_of(&app), (8, first), "{shape:?}");
        super::later::take_back(&mut app);
        assert_eq!(super::later::strips_of(&app), (all, 0), "{shape:?}");
    }
}

/// Of pieces alike those that are free go before those that were bought, and those that are sorted before those that are not.
#[test]
fn what_costs_less_is_taken_first() {
    let bought = "2026-03-05 09:00 buy 29 boards oak-european 27 x 62 x 1010 mm for 116\n";
    let unsorted = "2026-03-05 09:00 leave for next\npile more oak-european 27 x 62 x 1010 mm\ncount 29 more\n";
    for (lines, good) in [(bought, ""), (unsorted, "good 37 strips\n")] {
        for shape in [Shape::Rows, Shape::Parts, Shape::Sticks] {
            let mut app = begun(&format!("{good}{lines}"), shape);
            let shown = planned(&mut app);
            let (given, found) = (app.plan.given.as_ref().unwrap(), app.plan.found.as_ref().unwrap());
            assert_eq!(given.sources.len(), 2, "{shape:?}");
            let taken = found.sheet.used.iter().filter(|it| 0 < it.pieces).map(|it| given.sources[it.source].n).collect::<Vec<_>>();
            assert_eq!(taken, [37], "{shape:?}: {shown}");
            assert!(given.ready.asked.holds(&found.answered), "{shape:?}");
        }
    }
}
