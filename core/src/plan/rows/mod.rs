//! Rows: a panel of brick-laid rows, each one strip wide, strips end to end.

mod alone;
mod bound;
mod chains;
pub mod check;
mod course;
mod cutbound;
mod cutter;
mod cutting;
mod dive;
pub mod ends;
mod fewcuts;
pub mod joints;
mod laying;
mod pattern;
mod pieces;
pub mod plan;
mod planner;
pub mod problem;
mod proving;
mod relax;
mod renew;
mod stock;
#[cfg(test)]
mod tests;
mod walk;
mod wall;
pub mod whole;
pub mod why;
mod written;

use super::{Planned, Sense};
use crate::plan::patience::Patience;
use plan::Plan;
use planner::Planner;
use problem::Problem;
use stock::Stock;

/// Rows, length lost, squares of the lengths used.
pub const SENSES: [Sense; 3] = [Sense::More, Sense::Less, Sense::Less];

/// As many rows as can be laid, then as little lost; better the longer it may take.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, seed: u64) -> Planned<Plan> {
    let stock = Stock::of(problem);
    let mut planner = Planner::new(problem, &stock, seed);
    planner.plan(patience);
    planner.best
}

/// A plan that is there already, better and better the longer it may take.
pub fn go_on(problem: &Problem, from: &Plan, patience: &mut Patience<'_>, seed: u64) -> Planned<Plan> {
    let stock = Stock::of(problem);
    let mut planner = Planner::new(problem, &stock, seed);
    planner.begin(from, patience);
    if problem.split {
        planner.cut_on(from.rows.len(), patience);
    } else {
        planner.plan(patience);
    }
    planner.best
}
