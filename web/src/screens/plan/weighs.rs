//! What it weighs and the glue it takes: of all that is made, with what is cut of it before; of the rest where that is not known.

use super::super::Seen;
use super::anew;
use super::saw::number;
use super::told::{is_top, tenth};
use crate::app::App;
use crate::words::en::{common, weighs as words};
use fivebar_core::quantity::{Mass, Units};
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::make::begun::of_all;
use fivebar_core::sheet::make::weighs::{cut_weighs, has_rests, strips_glued};
use fivebar_core::sheet::plan::wish::Wish;
use fivebar_core::sheet::plan::{Glue, PlanSheet};

/// What a figure is of.
#[derive(Clone, Copy, PartialEq)]
enum Of {
    /// One piece, or so many of the job.
    Pieces(i64),
    /// So many rows, all of a top with those that are cut.
    Rows(i64),
    /// What is not cut yet.
    Rest,
    /// The same with the strips that are cut of it.
    RestAndStrips,
}

/// The sheet with the figures of all of it, and what its weight and its glue are of.
pub struct All {
    pub sheet: PlanSheet,
    weight: Of,
    glue: Of,
}

pub fn all(given: &Given, sheet: &PlanSheet, app: &App) -> All {
    if let Some(all) = anew::whole(given, sheet, app) {
        return All { sheet: of_all(given, sheet, all), weight: Of::Rows(all.rows), glue: Of::Rows(all.rows) };
    }
    let is_rest = 0 < given.cut.rows || !given.cut.parts.is_empty();
    let (sheet, glue) = with_strips(given, sheet);
    if !is_rest {
        let of = if matches!(given.ready.wish, Wish::Parts(_) | Wish::Sticks(_)) { Of::Pieces(sheet.made) } else { Of::Pieces(1) };
        return All { sheet, weight: of, glue: of };
    }
    match cut_weighs(&app.shelf().shop(app.now.at), given) {
        Some(cut) => {
            let (weight, weight_guessed) = (sheet.weight.plus(cut.weight), sheet.weight_guessed || cut.guessed);
            All { sheet: PlanSheet { weight, weight_guessed, ..sheet }, weight: Of::Pieces(given.cut.sets.into()), glue }
        }
        None => All { sheet, weight: Of::Rest, glue },
    }
}

/// Glue is told of all that is not glued yet, as far as that is known: strips that are cut are glued to the rest of their part.
fn with_strips(given: &Given, sheet: &PlanSheet) -> (PlanSheet, Of) {
    let Some(more) = strips_glued(given) else { return (sheet.clone(), Of::Rest) };
    let area = sheet.glue.area + more;
    let glue = Glue { area, grams: (area * given.ready.figures.spread as f64).ceil() as i64 };
    (PlanSheet { glue, ..sheet.clone() }, Of::RestAndStrips)
}

pub fn weight(given: &Given, all: &All, seen: Seen<'_>) -> Option<String> {
    let (weight, unit) = (seen.speech.mass(all.sheet.weight, given.units), common::mass_unit(given.units));
    let of = match all.weight {
        Of::Pieces(0 | 1) => words::IT_WEIGHS.to_owned(),
        Of::Pieces(n) => words::pieces_weigh(&number(n, seen)),
        Of::Rows(n) => words::rows_weigh(&number(n, seen)),
        Of::Rest | Of::RestAndStrips => words::REST_WEIGHS.to_owned(),
    };
    let without = &given.ask.without;
    let of = if without.is_empty() { of } else { words::without(&without.join(", "), &of) };
    (Mass::ZERO < all.sheet.weight).then(|| words::weighs(&of, &weight, unit, all.sheet.weight_guessed))
}

/// Square feet of a square metre, and millilitres of a fluid ounce.
const SQUARE_FEET: f64 = 10.763_910_4;
const FLUID_OUNCE: f64 = 29.573_529_6;

pub fn glue(given: &Given, all: &All, seen: Seen<'_>) -> Option<String> {
    let glue = &all.sheet.glue;
    let rows = if let Of::Rows(n) = all.glue { words::for_all_rows(&number(n, seen)) } else { String::new() };
    let of = match all.glue {
        Of::Pieces(_) | Of::Rows(_) => rows.as_str(),
        Of::RestAndStrips => words::WITH_CUT_STRIPS,
        Of::Rest if has_rests(given) => words::WITHOUT_CUT_STRIPS,
        Of::Rest if is_top(given) => words::AMONG_NEW_ROWS,
        Of::Rest => words::FOR_THE_REST,
    };
    (0.0 < glue.area).then(|| match given.units {
        Units::Metric => words::glue(of, &tenth(glue.area, seen), &number(glue.grams, seen), &number(glue.millilitres(), seen)),
        Units::Inch => {
            let ounces = (glue.millilitres() as f64 / FLUID_OUNCE * 10.0).ceil() / 10.0;
            words::glue_in_ounces(of, &tenth(glue.area * SQUARE_FEET, seen), &tenth(ounces, seen))
        }
    })
}
