//! What is short: the pieces one set more would lack, and how many more sticks of which pile would do.

use super::cutting::Saw;
use super::dive::{Laid, dive};
use super::planner::wanted;
use super::problem::Problem;
use super::relax::{self, Pool};
use super::renew::{Ways, renew};
use super::stock::Stock;
use crate::plan::fewest;
use crate::plan::patience::Patience;

/// So many tries to have less missing.
const TRIES: u32 = 60;

/// What a plan for one set more lacks. Parts and piles are named by their place in the problem.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Short {
    /// The pieces missing, as few by length as were found; a plan with no more missing is known.
    pub missing: Vec<(usize, i64)>,
    /// So many more sticks of a pile, any one of these, make the set complete: such a plan is known, fewer may do.
    pub unlock: Vec<(usize, i64)>,
}

/// What one set more than `sets` lacks; nothing where no more are wanted.
pub fn short(problem: &Problem, sets: i64, patience: &mut Patience<'_>, seed: u64) -> Option<Short> {
    if problem.sets.is_some_and(|wish| wish <= sets) {
        return None;
    }
    let stock = Stock::of(problem);
    let saw = Saw::new(&stock, stock.wood());
    let (mut pool, mut ways) = (Pool::default(), Ways::seeded(seed));
    let next = wanted(&stock, sets.saturating_add(1));
    let root = relax::cheapest(&saw, &mut pool, &next, patience);
    let mut laid = dive(&saw, &mut pool, (next, i64::MAX), &mut None, patience)?;
    for _ in 0..TRIES {
        if patience.is_over() || laid.left.is_met() {
            break;
        }
        renew(&saw, &mut pool, &mut laid, (&root, &mut ways), patience);
    }
    let missing = missing(problem, &stock, &laid);
    let unlock = stock.piles.iter().enumerate().filter_map(|(nth, pile)| {
        let more = more(&saw, &mut pool, (&laid, nth), patience)?;
        Some((*pile.own.first()?, more))
    });
    Some(Short { unlock: unlock.collect(), missing })
}

fn missing(problem: &Problem, stock: &Stock, laid: &Laid) -> Vec<(usize, i64)> {
    let mut all = vec![];
    for (part, left) in stock.parts.iter().zip(&laid.left.pieces) {
        let mut left = *left;
        for own in &part.own {
            let of = problem.parts.get(*own).map_or(0, |part| part.per_set).min(left);
            if 0 < of {
                all.push((*own, of));
            }
            left = left.saturating_sub(of);
        }
    }
    all
}

/// The fewest sticks of a pile from which all that is missing was cut; `None` where not even one for each piece would do.
fn more(saw: &Saw<'_>, pool: &mut Pool, (laid, pile): (&Laid, usize), patience: &mut Patience<'_>) -> Option<i64> {
    let mut does = |n: i64| {
        let mut left = laid.left.clone();
        left.sticks.iter_mut().skip(pile).take(1).for_each(|there| *there = there.saturating_add(n));
        dive(saw, pool, (left, i64::MAX), &mut None, patience).is_some_and(|laid| laid.left.is_met())
    };
    fewest(laid.left.pieces.iter().sum(), &mut does)
}
