//! Field: tiles of one size in a repeating pattern.
//!
//! Every choice is tried or excluded by a sum that it can't pass, so the best found is the best there is.

pub mod check;
mod crossed;
mod follow;
mod grid;
pub mod lay;
mod near;
pub mod plan;
pub mod problem;
mod search;
pub mod short;
pub mod sides;
mod tally;
mod tiles;
pub mod why;

use super::{Planned, Sense};
use crate::plan::patience::Patience;
use near::Near;
use plan::Plan;
use problem::{Pattern, Problem};
use search::{Search, Tiles};

/// Beyond tolerance, deviation, pieces taken, cut pieces.
pub const SENSES: [Sense; 4] = [Sense::Less; 4];

/// As near the wanted size as can be, then of as few pieces; proven, where it may take long enough. No lots are drawn.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, _seed: u64) -> Planned<Plan> {
    let mut search = Search::new(problem, patience);
    let open = run(&mut search);
    let worth = search.best.figures().to_vec();
    let field = search.chosen.as_ref().and_then(|chosen| follow::field(problem, chosen));
    let bound = match open {
        None => worth.clone(),
        Some(least) => [least.beyond, least.off].map(i128::from).to_vec(),
    };
    search.patience.proved(&bound);
    Planned { plan: Plan { field }, worth, bound }
}

/// Tries all; what no untried field can come nearer than, where some are left.
fn run(search: &mut Search<'_, '_>) -> Option<Near> {
    search.patience.found(&search.best.figures());
    let all = Tiles::all(search.problem);
    let mut patterns = search.problem.patterns.clone();
    patterns.sort_unstable();
    patterns.dedup();
    for tiles in &all {
        let least = tiles.nearest();
        if search.best.near < least {
            break;
        }
        for pattern in &patterns {
            match pattern {
                Pattern::Crossed => crossed::search(search, tiles),
                _ => grid::search(search, tiles, *pattern),
            }
        }
        if search.patience.is_over() {
            return Some(if search.skipped { Near::default() } else { least.min(search.best.near) });
        }
    }
    search.skipped.then(Near::default)
}
