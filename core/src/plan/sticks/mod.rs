//! Sticks: parts of one cross-section from sticks, by length alone.

mod branch;
pub mod check;
mod cutting;
mod dive;
mod near;
pub mod plan;
mod planner;
pub mod problem;
mod proving;
mod relax;
mod renew;
pub mod short;
mod stock;
mod sums;
pub mod why;
mod written;

use super::{Planned, Sense};
use crate::plan::patience::Patience;
use plan::Plan;
use problem::Problem;

/// Sets, length consumed, cuts.
pub const SENSES: [Sense; 3] = [Sense::More, Sense::Less, Sense::Less];

/// As many sets as can be cut, then from as little wood as can be, then by as few cuts; better the longer it may take.
///
/// The plan passes [`check::check`], and no plan passes the bound, however short the patience was.
///
/// ```
/// use fivebar_core::plan::{patience::Patience, sticks::{problem::{Part, Pile, Problem}, solve}};
/// let rail = Part { id: "rail".into(), per_set: 3, length: 400, piles: None };
/// let pile = Pile { id: "A".into(), count: 20, length: 1000 };
/// let problem =
///     Problem { sets: None, kerf: 3, end_trim: 5, machine_min: 200, keep_min: 150, piles: vec![pile], parts: vec![rail] };
/// let mut goes_on = |_: fivebar_core::plan::patience::Progress| true;
/// let planned = solve(&problem, &mut Patience::new(Some(10_000), &mut goes_on), 1);
/// // Two rails from each of 20 sticks are 13 sets of three, from nineteen sticks and one rail of the last: 19 x 816 + 413.
/// assert_eq!(planned.worth, [13, 15_917, 79]);
/// assert!(planned.is_proven());
/// ```
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, seed: u64) -> Planned<Plan> {
    planner::solve(problem, patience, seed)
}

#[cfg(test)]
mod tests;
