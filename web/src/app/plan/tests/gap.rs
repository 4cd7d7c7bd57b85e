//! What is said of what lies between a plan and its bound: by what was asked, what the plan makes, and what no plan can pass.

use super::told::{at_rack, says, typed, without};
use super::*;
use fivebar_core::plan::patience::{Patience, Progress};

/// A plan of the problem in hand, told with this bound.
fn told(app: &mut App, problem: &Asked, bound: impl Fn(&[i128]) -> Vec<i128>) {
    let found = problem.solve(&mut Patience::new(Some(20_000), &mut |_: Progress<'_>| true), 1);
    let bound = bound(&found.worth);
    app.told(crate::app::news::News::Planning(Planning::Done(Box::new(Answered { bound, ..found }))));
}

/// What was asked, with so many rows or sets made of it.
fn making(app: &App, made: i64) -> Asked {
    let mut asked = app.plan.given.as_ref().unwrap_or_else(|| panic!("{:?}", app.plan.why_not)).ready.asked.clone();
    match &mut asked {
        Asked::Rows(problem) => problem.rows = Some(made),
        Asked::Parts(problem) => problem.sets = Some(made),
        Asked::Sticks(problem) => problem.sets = Some(made),
        Asked::Field(problem) if made == 0 => problem.piles.iter_mut().for_each(|pile| pile.count = 0),
        Asked::Field(_) => (),
    }
    asked
}

/// How many are made, how much better the bound is figure by figure (a figure left out is not known), what the page says and what not.
type Row<'a> = (i64, &'a [i128], &'a [&'a str], &'a [&'a str]);

/// So many were asked for.
#[track_caller]
fn check(shape: Shape, asked: &str, (made, better, said, not): Row<'_>) {
    let part = "part \"slat\" 4 of 20 x 50 x 300 mm oak-european for tray\n";
    let mut app = at_rack(if matches!(shape, Shape::Parts | Shape::Sticks) { part } else { "" });
    heard(&mut app, [Tap::Open]);
    match shape {
        Shape::Rows => {
            heard(&mut app, without(1, vec![Tap::Shape(shape)]));
            typed(&mut app, &["1200", "400", asked]);
        }
        Shape::Field => {
            heard(&mut app, [Tap::Shape(shape), Tap::Pattern(0)]);
            typed(&mut app, &[asked, "1010"]);
        }
        _ => {
            heard(&mut app, [Tap::Shape(shape)]);
            typed(&mut app, &[asked]);
        }
    }
    heard(&mut app, [Tap::Go]);
    let more = shape != Shape::Field;
    let bound = |worth: &[i128]| {
        let one = |(nth, (worth, by)): (usize, (&i128, &i128))| if nth == 0 && more { worth + by } else { (worth - by).max(0) };
        worth.iter().zip(better).enumerate().map(one).collect()
    };
    let problem = making(&app, made);
    told(&mut app, &problem, bound);
    let found = app.plan.found.as_ref().unwrap_or_else(|| panic!("{shape:?} {made} {better:?}: {:?}", app.plan.stands));
    assert_eq!(0 < found.sheet.made, 0 < made, "{shape:?}");
    says(&app, said, not);
}

/// Of eight rows that were asked.
#[test]
fn rows_are_told_by_what_is_made_what_is_asked_and_the_bound() {
    let never = "can reach ";
    for row in [
        // Nothing is made: proven, or not found.
        (0, &[0][..], &["Not one row can be laid. No plan of oak can reach 1 row.", "not possible"][..], &["none found"][..]),
        (0, &[0, 0, 0], &["Not one row can be laid. No plan of oak can reach 1 row.", "not possible"], &["none found"]),
        (0, &[2], &["No plan of a row was found. No plan of oak can reach 3 rows.", "none found yet"], &["can be laid", "not possible"]),
        (0, &[8], &["No plan of a row was found.", "none found yet"], &["can be laid", never, "not possible"]),
        (0, &[], &["No plan of a row was found.", "none found yet"], &["can be laid", never, "not possible"]),
        // Some are: the bound is under what was asked, or reaches it.
        (5, &[1], &["5 of 8 rows. No plan of oak can reach 7 rows.", "best so far"], &["can make more", "most rows"]),
        (5, &[2], &["5 of 8 rows. No plan of oak can reach 8 rows.", "best so far"], &["can make more", "most rows"]),
        (5, &[3], &["5 of 8 rows.", "best so far"], &["can make more", never, "most rows"]),
        (5, &[0], &["5 of 8 rows. No plan of oak can make more.", "most rows"], &[never, "best so far"]),
        (5, &[0, 0, 1], &["5 of 8 rows. No plan of oak can make more.", "most rows"], &[never, "best so far"]),
        (5, &[0, 60_000], &["5 of 8 rows. No plan of oak can make more, or as many with more than ", "most rows"], &[never, "best so far"]),
        // All are.
        (8, &[0, 60_000], &["8 rows."], &[never, "can make more", "best so far"]),
    ] {
        check(Shape::Rows, "8", row);
    }
}

/// Of twenty pieces of the job that were asked.
#[test]
fn pieces_are_told_by_what_is_made_what_is_asked_and_the_bound() {
    let never = "No plan can reach";
    for shape in [Shape::Parts, Shape::Sticks] {
        for row in [
            (0, &[0][..], &["Not one piece can be made. No plan can reach 1 piece", "not possible"][..], &["none found"][..]),
            (0, &[3], &["No plan of one piece was found. No plan can reach 4 pieces", "none found yet"], &["can be made", "not possible"]),
            (0, &[20], &["No plan of one piece was found.", "none found yet"], &["can be made", never, "not possible"]),
            (12, &[7], &["Parts for 12 of 20 pieces. No plan can reach 20 pieces", "best so far"], &["can make more"]),
            (12, &[8], &["Parts for 12 of 20 pieces.", "best so far"], &["can make more", never]),
            (12, &[0], &["Parts for 12 of 20 pieces. No plan can make more", "most pieces"], &[never, "best so far"]),
            (12, &[0, 1], &["Parts for 12 of 20 pieces. No plan can make more, or as many with more than 0.1 % less "], &[never]),
        ] {
            check(shape, "20", row);
        }
    }
}

/// Tiles of 60 in rows of 58.
#[test]
fn fields_are_told_by_what_is_laid_and_the_bound() {
    let near = ["No field near enough was found.", "none found yet"];
    for row in [
        (0, &[0, 0, 0, 0][..], &["No field comes near enough.", "not possible"][..], &["none found", "was found"][..]),
        (0, &[1], &["No field comes near enough.", "not possible"], &["none found", "was found"]),
        (0, &[i128::from(i64::MAX)], &near, &["comes near enough", "not possible"]),
        (0, &[], &near, &["comes near enough", "not possible"]),
        (1, &[0, 0, 0, 0], &["nearest of these tiles"], &["so far"]),
        (1, &[0, 1], &["nearest so far"], &["nearest possible", "of these tiles"]),
        (1, &[], &["nearest so far"], &["nearest possible", "of these tiles"]),
    ] {
        check(Shape::Field, "310", row);
    }
}
