//! Of the plans that take the same strips: whole strips where whole strips do it, for no other plan has as few joints; else what leaves
//! most to keep.

use super::check::check;
use super::plan::Plan;
use super::problem::Problem;
use super::{SENSES, go_on, solve};
use crate::plan::better;
use crate::plan::patience::{Patience, Progress};
use crate::quantity::Set;

/// Another plan of the strips that one takes, `taken`, where as many pieces as strips make as much of no more length; else the one that goes
/// on from it, by what is left to keep.
pub fn first(problem: &Problem, taken: &Problem, plan: &Plan, (steps, seed): (u64, u64)) -> Plan {
    let mut goes_on = |_: Progress<'_>| true;
    let mut look = Patience::new(Some(steps), &mut goes_on);
    let whole = Problem { split: false, ..taken.clone() };
    let from = if taken.split && !is_whole(plan) { bare(solve(&whole, &mut look, seed).plan) } else { plan.clone() };
    let as_good = check(problem, plan).ok().zip(check(problem, &from).ok());
    let as_good = as_good.is_some_and(|(found, other)| !better(&SENSES, &found, &other));
    let mut look = Patience::new(Some(steps), &mut goes_on);
    if as_good && is_whole(&from) {
        bare(go_on(&whole, &from, &mut look, seed).plan)
    } else {
        bare(go_on(taken, plan, &mut look, seed).plan)
    }
}

/// Whether each strip gives one piece.
fn is_whole(plan: &Plan) -> bool {
    let pieces = || plan.rows.iter().flatten().map(|piece| (piece.pile, piece.n));
    pieces().collect::<Set<_>>().len() == pieces().count()
}

/// What is left to keep is not counted where strips are counted whole.
fn bare(plan: Plan) -> Plan {
    Plan { remainders: vec![], ..plan }
}
