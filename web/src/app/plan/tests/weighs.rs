//! What it weighs and the glue it takes, while some of it is cut: of all of it as far as that is known, else of the rest by that name.

use super::told::{at_rack, says, solved};
use super::*;

/// Four legs, each the longest a strip of 1010 gives, of whatever wood; of beech there are six boards as long.
const LEGS: &str = "part \"leg\" 4 of 20 x 50 x 550 mm for tray\n";
const TOP: &str = "part \"top\" 1 of 20 x 170 x 900 mm for tray\n";
const BEECH: &str = "pile boards beech-european 27 x 62 x 1010 mm\ncount 6 boards\ngone 31 strips burnt\n";

fn planned(app: &mut App) {
    app.now = Wall::new(app.now.at.plus(fivebar_core::quantity::Span::minutes(1)), app.now.offset);
    heard(app, [Tap::Go]);
    solved(app);
    heard(app, [Tap::Stop]);
}

fn begun(lines: &str, (shape, sets): (Shape, u8)) -> App {
    let mut app = at_rack(lines);
    heard(&mut app, [Tap::Open, Tap::Shape(shape), Tap::At(0), Tap::Press(Press::Digit(sets))]);
    planned(&mut app);
    app
}

/// The sentence of the page on its weight.
fn weight(app: &App) -> String {
    let shown = page(app);
    let (_, behind) = shown.split_once("Finished ").unwrap_or_else(|| panic!("{shown}"));
    behind.split('<').next().unwrap().to_owned()
}

/// Some boards are cut and the others planned again: the weight is of all of it, before and behind the tap that uses it, and when it is read again.
#[track_caller]
fn check(lines: &str, (shape, sets): (Shape, u8), cut: usize) -> String {
    let mut app = begun(lines, (shape, sets));
    let all = weight(&app);
    heard(&mut app, [Tap::Use]);
    for _ in 0..cut {
        let lines = &app.plan.found.as_ref().unwrap().sheet.lines;
        let next = (0..lines.len()).find(|nth| !app.plan.ticked.is_done(*nth)).unwrap();
        heard(&mut app, [Tap::OneMore(next)]);
    }
    planned(&mut app);
    assert_eq!(weight(&app), all);
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    assert_eq!(weight(&app), all);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    assert_eq!(weight(&again), all);
    all
}

/// By hand: a leg of 20 x 50 x 550 is 0.55 litres; 12 of them are 6.6 litres of oak, at 702 grams each 4.63 kg.
#[test]
fn what_is_cut_is_in_the_weight() {
    for shape in [Shape::Parts, Shape::Sticks] {
        let said = check(LEGS, (shape, 3), 5);
        assert!(said.starts_with("the 3 pieces together weigh 4.6 "), "{said}");
        assert!(check(LEGS, (shape, 1), 1).starts_with("it weighs "));
    }
    // Some legs of each wood.
    check(&format!("{LEGS}{BEECH}"), (Shape::Parts, 3), 7);
}

/// Strips of a part that lacks others weigh too; the glue of what is cut is not known.
#[test]
fn strips_that_are_cut_are_in_the_weight() {
    for cut in 1..=3 {
        check(&format!("{LEGS}{TOP}"), (Shape::Parts, 1), cut);
    }
    let mut app = begun(TOP, (Shape::Parts, 2));
    says(&app, &["Glue on "], &["Glue for the rest"]);
    heard(&mut app, [Tap::Use, Tap::OneMore(0)]);
    planned(&mut app);
    says(&app, &["Glue for the rest and the strips that are cut on 0.08 m²"], &["Glue on "]);
}

/// By hand: three strips make a top of 170 and two joints of 902 x 22, 0.04 m². One is cut, or two are: the others are glued to them, and all of
/// it is still to be glued. Where the phone does not know how many are cut, it says what it does not count.
#[test]
fn strips_that_are_cut_and_not_glued_are_in_the_glue() {
    for cut in 1..=2 {
        let mut app = begun(TOP, (Shape::Parts, 1));
        says(&app, &["Glue on 0.04 m²"], &[]);
        heard(&mut app, [Tap::Use]);
        heard(&mut app, (0..cut).map(|_| Tap::OneMore(0)));
        planned(&mut app);
        let all = ["Glue for the rest and the strips that are cut on 0.04 m²"];
        says(&app, &all, &["Glue on "]);
        heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
        says(&app, &all, &[]);
        let mut again = reloaded(&app);
        heard(&mut again, [Tap::Open]);
        let alone = "Glue for the rest, without the joints to strips that are cut, on 0.02 m²";
        let (said, not): (&[&str], &[&str]) = if cut == 1 { (&[alone], &all) } else { (&[], &["Glue "]) };
        says(&again, said, not);
    }
}

/// Nothing says of which wood the legs are that are cut.
#[test]
fn where_the_weight_of_what_is_cut_is_not_known_it_is_that_of_the_rest() {
    let mut app = begun(&format!("{LEGS}gone 37 strips burnt\npile odd 27 x 62 x 1010 mm\ncount 9 odd\n"), (Shape::Parts, 2));
    says(&app, &["Finished the 2 pieces together weigh "], &[]);
    heard(&mut app, [Tap::Use, Tap::OneMore(0)]);
    planned(&mut app);
    says(&app, &["Finished the rest, without what is cut already, weighs "], &["together weigh"]);
}

/// A leg and a top, and the legs are left out, of which some are cut: it weighs as the top alone, and says so. By hand: 20 x 170 x 900 is
/// 3.06 litres of oak, at 702 grams each 2.15 kg.
#[test]
fn parts_that_are_left_out_are_in_no_weight_and_named() {
    let mut app = begun(&format!("{LEGS}{TOP}"), (Shape::Parts, 1));
    assert!(!weight(&app).contains("without"));
    // A line that cuts legs alone: they come first in the list.
    let lines = &app.plan.found.as_ref().unwrap().sheet.lines;
    let nth = lines.iter().position(|line| line.pieces.iter().all(|cut| cut.part == Some(0))).unwrap();
    heard(&mut app, [Tap::Use, Tap::OneMore(nth), Tap::Change, Tap::LeaveOut("leg".into())]);
    planned(&mut app);
    assert!(weight(&app).starts_with("without leg it weighs 2.1"), "{}", weight(&app));
    heard(&mut app, [Tap::Use, Tap::UseAnd(false)]);
    let all = weight(&app);
    let mut again = reloaded(&app);
    heard(&mut again, [Tap::Open]);
    assert_eq!(weight(&again), all);
    assert!(all.starts_with("without leg it weighs 2.1"), "{all}");
}
