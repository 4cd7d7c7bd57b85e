//! Sticks: parts of one cross-section from sticks, by length alone.

pub mod plan;
pub mod problem;

use super::{Figures, Planned, Sense};
use crate::plan::patience::Patience;
use plan::Plan;
use problem::Problem;

/// Sets, length consumed, cuts.
pub const SENSES: [Sense; 3] = [Sense::More, Sense::Less, Sense::Less];

/// As many sets as can be cut, then from as little as can be; better the longer it may take.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, _seed: u64) -> Planned<Plan> {
    let planned = Planned { plan: Plan::default(), worth: vec![0; SENSES.len()], bound: material(problem) };
    patience.proved(&planned.bound);
    patience.found(&planned.worth);
    planned
}

/// No more sets than all sticks are long together.
fn material(problem: &Problem) -> Figures {
    let long = problem.piles.iter().map(|pile| i128::from(pile.count).saturating_mul(i128::from(pile.length)));
    let each = problem.parts.iter().map(|part| i128::from(part.per_set).saturating_mul(i128::from(part.length)));
    let sets = long.sum::<i128>().checked_div(each.sum()).unwrap_or(0);
    vec![problem.sets.map_or(sets, |most| sets.min(i128::from(most)))]
}
