//! Where more than one more was asked and lacks, what is looked for and bought is for all that were asked. By hand: a leg of 24 out of a board of 30.

use super::rack_first::{bought, planned_out};
use super::told::says;
use super::*;
use fivebar_core::sheet::make::Boards;

const TWO: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile boards maple-sycamore 1 x 3 x 30 in\n\
    count 2 boards\ngood 2 boards\njob tray \"Two\" 2 spec\npart \"Leg\" 4 of 3/4 x 2 x 24 in maple-sycamore for tray\n";

fn two(shape: Shape, lines: &str) -> App {
    let mut app = app_of(&format!("{TWO}{lines}"));
    heard(&mut app, [Tap::Open, Tap::Shape(shape)]);
    app
}

fn looked_for(app: &App) -> Vec<u32> {
    crate::app::sought::of_plan(app).unwrap().0.pieces.iter().map(|it| it.n).collect()
}

/// Two pieces are eight legs, two are there: two more boards are one piece, six are both.
#[test]
fn what_is_looked_for_and_bought_is_for_all_that_were_asked() {
    for shape in [Shape::Parts, Shape::Sticks] {
        let size = if shape == Shape::Sticks { "1 x 2 x 30 in" } else { "1 x 3 x 30 in" };
        let mut app = app_of(&TWO.replace("1 x 3 x 30 in", size));
        heard(&mut app, [Tap::Open, Tap::Shape(shape)]);
        planned_out(&mut app, vec![Tap::Go]);
        assert_eq!(app.plan.found.as_ref().map(|it| it.sheet.made), Some(0), "{shape:?}: {}", page(&app));
        says(&app, &["One lacks 2 of Leg. ", " make it. All 2 lack 6 of Leg. ", "6 more of A (", " make them."], &["one more only"]);
        assert_eq!(looked_for(&app), [6], "{shape:?}");
        assert_eq!(crate::app::sought::of_plan(&app).unwrap().0.makes, Some(2));
        heard(&mut app, [Tap::Buy]);
        assert_eq!(app.plan.draft.buying.as_ref().map(|it| it.form.slots[3].text.clone()), Some("6".to_owned()), "{shape:?}");
        heard(&mut app, [Tap::AddBoards]);
        planned_out(&mut app, vec![Tap::Go]);
        assert_eq!((app.plan.found.as_ref().map(|it| it.sheet.made), bought(&app)), (Some(2), 6), "{shape:?}: {}", page(&app));
    }
}

/// Two boards that aren't bought yet count in the plan: what is looked for is these and the four that lack, what is added to them is four.
#[test]
fn boards_the_plan_would_buy_are_looked_for_with_those_that_lack() {
    let mut app = two(Shape::Parts, "");
    planned_out(&mut app, vec![Tap::Go]);
    heard(&mut app, [Tap::LookFor]);
    let piece = app.own.workshop().sought[0].pieces[0].clone();
    let boards = Boards { wood: piece.wood, size: [piece.thickness, piece.width, piece.length], n: 2, price: None };
    app.plan.draft.bought.push(boards);
    planned_out(&mut app, vec![Tap::Go]);
    assert_eq!((app.plan.found.as_ref().map(|it| it.sheet.made), bought(&app)), (Some(1), 2), "{}", page(&app));
    says(&app, &["One more lacks 4 of Leg."], &["All 2", "Look for this instead"]);
    assert_eq!(looked_for(&app), [6]);
    heard(&mut app, [Tap::Buy]);
    assert_eq!(app.plan.draft.buying.as_ref().map(|it| it.form.slots[3].text.clone()), Some("4".to_owned()));
}

/// Nothing lies there, and three boards to buy are one row of the top: two more are offered to be bought, as the next row takes, beside those
/// that the plan has.
#[test]
fn boards_to_buy_for_a_top_are_all_that_it_lacks() {
    let mut app = opened("take 12 strips for tray\ntake 5 thin for tray\n");
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Rows)]);
    app.plan.draft.bought.push(super::rack_first::boards(3, 500));
    planned_out(&mut app, vec![Tap::At(3), Tap::Press(Press::Digit(5)), Tap::Go]);
    assert_ne!(bought(&app), 0, "{}", page(&app));
    assert_eq!(looked_for(&app), [2]);
    heard(&mut app, [Tap::Buy]);
    let offered = app.plan.draft.buying.as_ref().map(|it| it.form.slots[3].text.clone());
    assert_eq!(offered, Some("2".to_owned()));
}

/// Two woods lack at once: of each what all that were asked lack. Six legs and two tops, of which one is there.
#[test]
fn each_wood_is_looked_for_as_much_of_as_all_lack() {
    let mut app = two(
        Shape::Parts,
        "pile oak oak-white 1 x 9 x 24 in\ncount 1 oak\ngood 1 oak\npart \"Seat\" 1 of 3/4 x 8 x 20 in oak-white for tray\n",
    );
    planned_out(&mut app, vec![Tap::Go]);
    says(&app, &["One lacks 2 of Leg. ", "All 2 lack 6 of Leg and 1 of Seat."], &["one more only"]);
    let mut wanted = looked_for(&app);
    wanted.sort_unstable();
    assert_eq!(wanted, [1, 6]);
}

const STANDS: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile maple maple-sycamore 1 x 3 x 30 in\n\
    pile oak oak-white 1 1/2 x 1 1/2 x 33 in\njob tray \"Stand\" 5 spec\n\
    part \"Leg\" 4 of 1 1/4 x 1 1/4 x 16 in oak-white for tray\npart \"Top\" 1 of 3/4 x 12 x 18 in maple-sycamore for tray\n";

fn stands(lines: &str) -> App {
    let mut app = app_of(&format!("{STANDS}{lines}"));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::At(0), Tap::Press(Press::RubOut)]);
    planned_out(&mut app, vec![Tap::Go]);
    app
}

/// Eight oak boards are sixteen legs, and three pieces take twelve: the top decides, which five boards of maple make one of. That no plan makes
/// more than four is by the legs, and is not what holds it at three.
#[test]
fn a_part_decides_only_where_the_plan_makes_all_that_it_lets() {
    let app = stands("count 17 maple\ngood 17 maple\ncount 8 oak\ngood 8 oak\n");
    assert_eq!(app.plan.found.as_ref().map(|it| it.sheet.made), Some(3), "{}", page(&app));
    says(&app, &["3 more of A"], &["Leg decides"]);
}

/// Two tops take ten boards of maple: one more takes five more, glued up, and no board as wide as the top.
#[test]
fn a_glued_part_is_looked_for_in_boards_as_its_strips_are_cut_of() {
    let app = stands("count 10 maple\ngood 10 maple\ncount 11 oak\ngood 11 oak\n");
    assert_eq!(app.plan.found.as_ref().map(|it| it.sheet.made), Some(2), "{}", page(&app));
    says(&app, &["5 more of A"], &[]);
    assert_eq!(looked_for(&app), [5]);
}

/// Nothing is made, so the plan lacks all eight legs of two pieces: where more are said to be lacking, the wood goes into other parts than in this plan.
#[test]
fn what_all_lack_by_another_plan_says_so() {
    use fivebar_core::sheet::plan::Unlock;
    for (n, said) in [(8, "All 2 lack 8 of Leg."), (9, "All 2, for which this wood is cut another way, lack 9 of Leg.")] {
        let mut app = two(Shape::Parts, "");
        planned_out(&mut app, vec![Tap::Go]);
        let found = app.plan.found.as_mut().unwrap();
        assert_eq!(found.sheet.made, 0);
        let lacks = |n, all| Unlock::Part { part: 0, n, from: None, own: None, all };
        found.sheet.short = vec![lacks(2, false), lacks(n, true)];
        says(&app, &[said], &[]);
    }
}
