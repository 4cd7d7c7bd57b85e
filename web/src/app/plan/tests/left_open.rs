//! Figures that are left open, a planning that is called off, and how far a top moves.

use super::told::{at_rack, said, says, solved, typed};
use super::*;
use crate::app::news::News;

/// Depth and height may be left open: what was asked is said whole. Width may not.
#[test]
fn a_field_with_open_sides_is_said_whole() {
    let field = [Tap::Shape(Shape::Field), Tap::Pattern(0)];
    for (figures, asked) in [
        (&["62"][..], "Asked: straight, 62 mm wide. It is just so."),
        (&["62", "1010"], "Asked: straight, 62 × 1010 mm. It is just so."),
        (&["62", "", "25"], "Asked: straight, 62 mm wide, 25 high. It is just so."),
        (&["62", "1010", "25"], "Asked: straight, 62 × 1010 mm, 25 high. It is just so."),
    ] {
        let (app, shown) = said("", &field, figures);
        assert!(shown.contains(asked), "{figures:?}: {shown}");
        says(&app, &[], &[", .", "mm,,", "  ", "× mm", "Asked: ,"]);
    }
    for (shape, figures) in [(Shape::Field, &["", "1010"][..]), (Shape::Rows, &["1200"]), (Shape::Rows, &["", "400"])] {
        let mut app = at_rack("");
        heard(&mut app, [Tap::Open, Tap::Shape(shape)]);
        typed(&mut app, figures);
        let orders = heard(&mut app, [Tap::Go]);
        assert!(orders.contains(&Order::Feel(Feel::Refused)) && app.plan.given.is_none(), "{shape:?} {figures:?}");
        says(&app, &["jobs/plan-ask"], &[]);
    }
}

/// "Stop here" keeps what was found, calls off the planner, and hears nothing of it any more; before anything was found the figures can be changed.
#[test]
fn stop_here_calls_the_planning_off() {
    for is_found in [false, true] {
        let mut app = opened("");
        asked(&mut app);
        says(&app, &["Stop here", "Planning …"], &[]);
        let done = answer(&app);
        if is_found {
            let Planning::Done(first) = answer(&app) else { panic!("done") };
            let open = Answered { bound: vec![2, first.worth[1] - 4], ..*first };
            app.told(News::Planning(Planning::Done(Box::new(open))));
            says(&app, &["Stop here", "Looking for a better one"], &[]);
        }
        let orders = heard(&mut app, [Tap::Stop]);
        assert_eq!(orders.iter().filter(|order| **order == Order::StopPlan).count(), 1, "{orders:?}");
        says(&app, &["Plan again"], &["Stop here", "Planning …"]);
        let before = page(&app);
        assert_eq!(app.told(News::Planning(done)), []);
        assert_eq!(page(&app), before, "what comes late is not heard");
        assert_eq!(page(&app).contains("Use these 4"), is_found);
        assert!(!heard(&mut app, [Tap::Stop]).contains(&Order::StopPlan), "it is called off once");
    }
}

/// A flat-sawn oak top of 340 moves 3.7 mm over 3 points: 340 x 3 x 0.0036.
#[test]
fn how_far_a_top_moves_over_the_room_is_said() {
    let ends = super::told::without(0, vec![Tap::Shape(Shape::Rows)]);
    let mut app = at_rack("room 8 11 for tray\n");
    heard(&mut app, [Tap::Open]);
    heard(&mut app, ends);
    typed(&mut app, &["1040", "340", "8"]);
    heard(&mut app, [Tap::Go]);
    solved(&mut app);
    says(&app, &["Across its 340 mm it moves 3.7 mm"], &[]);
}
