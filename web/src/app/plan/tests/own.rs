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
