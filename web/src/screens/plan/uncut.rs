//! A top of fewer rows than were asked while pieces of rows that were begun are cut: those are not planned with, so what is proven holds for
//! the boards that are not cut, and what would have to be bought is not known.

use super::super::Seen;
use super::{joints, limits, told, ways};
use crate::app::App;
use crate::app::plan::{Found, loose};
use crate::words::en::{changed, plan as words, ways as way_words};
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::PlanSheet;
use fivebar_core::sheet::plan::wish::Wish;

/// Whether cut pieces that lie in no row may make more rows than the plan.
pub fn is_more_there(given: &Given, sheet: &PlanSheet, app: &App) -> bool {
    let is_fewer = matches!(&given.ready.wish, Wish::Panel(panel) if panel.rows().is_some_and(|asked| sheet.made < asked));
    is_fewer && !loose(app).is_empty()
}

/// What no plan can do, with what that holds for: "No plan can make more, of the boards that are not cut. The pieces that are cut may make more."
pub fn held(given: &Given, found: &Found, (app, seen): (&App, Seen<'_>)) -> String {
    if let Some(said) = joints::decide(given, &found.sheet, seen) {
        return said;
    }
    if !is_more_there(given, &found.sheet, app) {
        return limits::held(&of_pieces(&told::bound(given, found, seen), given, app), given, seen);
    }
    let sheet = &found.sheet;
    let is_known = !found.answered.bound.is_empty() && !matches!(sheet.proof.gap, Some((0, ..)));
    changed::of_the_uncut(&if is_known { limits::held(&of_pieces(words::NO_PLAN_MORE, given, app), given, seen) } else { String::new() })
}

/// Of one wood it is said which: another, or several, may do better.
fn of_pieces(said: &str, given: &Given, app: &App) -> String {
    ways::pieces_of(given, app).map_or_else(|| said.to_owned(), |pieces| way_words::held_of(said, &pieces))
}

/// What the plan is best at.
pub fn standing(given: &Given, found: &Found, app: &App) -> Option<&'static str> {
    let is_open = found.answered.bound.is_empty() || matches!(found.sheet.proof.gap, Some((0, ..)));
    let said = if is_open { words::BEST_SO_FAR } else { changed::BEST_OF_THE_UNCUT };
    is_more_there(given, &found.sheet, app).then_some(said)
}
