//! Rows that the distance from joint to joint keeps from being laid.

use super::rack_first::planned_out;
use super::told::{at_rack, says, typed};
use super::*;

/// Rows of two strips of 595 and one more joint at the least: with joints 400 apart no two rows are neighbours, however many boards there are. The
/// distance is named, and a key plans with one that does.
#[test]
fn joints_too_far_apart_are_named_and_nobody_is_sent_to_buy() {
    let lines = "pile planks oak-european 27 x 90 x 600 mm\ncount 40 planks\n";
    let mut app = at_rack(&format!("gone 37 strips burnt\ngone 31 ends burnt\n{lines}"));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    typed(&mut app, &["1200", "500", "6"]);
    app.plan.draft.form.put(3, "400".into());
    planned_out(&mut app, vec![Tap::Go]);
    assert!(app.plan.found.as_ref().unwrap().sheet.made < 2, "{}", page(&app));
    let never = ["can reach 7 rows", "Look for", "Add boards to buy", "need at least", "makes one row more"];
    says(&app, &[". How far apart the joints are decides: at ", "all 6 rows can be laid", "now 400 mm from joint to joint"], &never);
    let key = page(&app).split("Plan with joints ").nth(1).unwrap().split(' ').next().unwrap().parse::<i64>().unwrap();
    planned_out(&mut app, vec![Tap::JointsApart(Length::MM.times(key).unwrap())]);
    assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 6, "{}", page(&app));
    says(&app, &["joints "], &["decides"]);
}

/// Rows of a whole strip and one that is cut for it, as only ends are: their joints are asked 200 apart and come ten apart at the most, which the tape
/// has, or in one line. No distance of nothing is offered; what else is known of the rows is said, and nobody is sent to buy more of what is enough.
#[test]
fn joints_in_one_line_are_offered_to_nobody() {
    let lines = "pile planks oak-european 27 x 90 x 610 mm\ncount 40 planks\n";
    let mut app = at_rack(&format!("gone 37 strips burnt\ngone 31 ends burnt\n{lines}"));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    typed(&mut app, &["1200", "500", "6"]);
    app.plan.draft.form.put(3, "200".into());
    app.plan.draft.split = false;
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!(app.plan.found.as_ref().unwrap().sheet.made, 1, "{}", page(&app));
    let said = [
        "No plan of oak can make more, with only an end piece cut.",
        "the rows don’t come out of them with these joints and least pieces.",
    ];
    says(&app, &said, &["decides", "Plan with joints", "need at least", "Look for"]);
}
