//! What a page says beside its picture: glue, what is shorter than a machine's least, how far the looking is, how much less wood there could be.

use super::told::{at_rack, says};
use super::*;
use crate::app::news::News;
use fivebar_core::plan::patience::{Patience, Progress};

const RAILS: &str = "part \"rail\" 2 of 24 x 50 x 350 mm oak-european for tray\n";

/// Two rows of 980 touch along their length and each has one joint of 60, all 20 high: 22 000 mm², at 200 g a square metre 4.4 g.
#[test]
fn glue_is_said_by_its_area_weight_and_volume() {
    let mut app = opened("");
    asked(&mut app);
    let told = answer(&app);
    app.told(News::Planning(told));
    says(&app, &["Glue on 0.02 m², about 5 g or 5 ml."], &["fl oz"]);
}

#[test]
fn how_far_the_looking_is_stands_in_words() {
    let mut app = opened("");
    asked(&mut app);
    for (worth, bound, words) in [(1, 2, "So far 1 row, at most 2."), (2, 2, "So far 2 rows.")] {
        app.told(News::Planning(Planning::Better { worth: vec![worth, 9, 9], bound: vec![bound, 0, 0] }));
        says(&app, &[words], &[]);
    }
}

/// The rails of a list (2.4 litres of boards), of which what no plan can take less than is `percent` of what this one takes.
fn rails(lines: &str, percent: i128) -> App {
    let mut app = at_rack(&format!("{lines}{RAILS}"));
    heard(&mut app, [Tap::Open, Tap::Shape(Shape::Parts), Tap::Go]);
    let asked = app.plan.given.as_ref().unwrap().ready.asked.clone();
    let mut answered = asked.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    answered.bound = vec![answered.worth[0], answered.worth[1] * percent / 100];
    app.told(News::Planning(Planning::Done(Box::new(answered))));
    app
}

#[test]
fn how_much_less_wood_another_plan_could_take_is_said() {
    says(&rails("", 98), &["No plan takes more than 2.1 % less wood than this one"], &["best possible"]);
    says(&rails("", 100), &["Proven: no plan takes less wood, pieces counted whole."], &["% less wood"]);
}

#[test]
fn pieces_cut_shorter_than_a_machine_may_be_fed_carry_the_caution() {
    let caution = "Shorter than the minimum you set. Your machine’s manual decides.";
    says(&rails("machine planer length 400 mm\n", 100), &[caution], &[]);
    says(&rails("machine planer length 300 mm\n", 100), &[], &[caution]);
}

/// By hand: a top of 302 takes six strips of 58 less the joints; four legs of 40 x 352 come of two ends, three side by side in each.
#[test]
fn pieces_are_counted_by_their_piles() {
    let parts = "part \"top\" 1 of 25 x 300 x 900 mm oak-european for tray\npart \"leg\" 4 of 38 x 38 x 350 mm oak-european for tray\n";
    let (_, shown) = super::told::said(parts, &[Tap::Shape(Shape::Parts)], &["1"]);
    assert!(shown.contains("Used 8 of 68 pieces: A 6 of 37, B 2 of 31."), "{shown}");
    let (_, shown) = super::told::said(RAILS, &[Tap::Shape(Shape::Parts)], &["1"]);
    assert!(shown.contains("Used 1 of 37 pieces. Left"), "{shown}");
}

/// The wall has the list by pile also where the saw goes by rows.
#[test]
fn a_print_by_rows_has_the_list_by_pile_too() {
    let mut app = opened("");
    asked(&mut app);
    let told = answer(&app);
    app.told(News::Planning(told));
    heard(&mut app, [Tap::ByRow(true)]);
    let shown = page(&app);
    let (on_page, on_paper) = shown.split_once("ticks print-only").unwrap();
    assert!(on_page.contains("Row 1") && !on_page.contains("2 whole"), "{on_page}");
    assert!(on_paper.contains("2 whole, ends trimmed to 495"), "{on_paper}");
    heard(&mut app, [Tap::ByRow(false)]);
    says(&app, &["2 whole, ends trimmed to 495"], &["ticks print-only"]);
}
