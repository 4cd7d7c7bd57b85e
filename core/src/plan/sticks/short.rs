//! What is short: the pieces one set more would lack, and how many more sticks of which pile would do.

use super::cutting::Saw;
use super::dive::{Laid, dive};
use super::plan::Plan;
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

/// What one set more than the `sets` of a plan lacks; nothing where no more are wanted.
pub fn short(problem: &Problem, (plan, sets): (&Plan, i64), patience: &mut Patience<'_>, seed: u64) -> Option<Short> {
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
    let missing = missing(problem, &stock, &laid).unwrap_or_else(|| beside(problem, plan, sets.saturating_add(1)));
    let unlock = stock.piles.iter().enumerate().filter_map(|(nth, pile)| {
        let more = more(&saw, &mut pool, (&laid, nth), patience)?;
        Some((*pile.own.first()?, more))
    });
    Some(Short { unlock: unlock.collect(), missing })
}

/// What is not cut, where that is no more than the set that is lacking has; else sets that are there were given up for it.
fn missing(problem: &Problem, stock: &Stock, laid: &Laid) -> Option<Vec<(usize, i64)>> {
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
        if 0 < left {
            return None;
        }
    }
    Some(all)
}

/// What is missing of so many sets where what a plan leaves of its sticks, and those it does not use, are cut too: the longest first.
fn beside(problem: &Problem, plan: &Plan, sets: i64) -> Vec<(usize, i64)> {
    let mut lacks: Vec<i64> = problem.parts.iter().map(|part| part.per_set.saturating_mul(sets)).collect();
    let mut rooms: Vec<(usize, i64, i64)> = vec![];
    let net = |pile: &super::problem::Pile| pile.length.saturating_sub(problem.end_trim.saturating_mul(2));
    let mut unused: Vec<i64> = problem.piles.iter().map(|pile| if problem.machine_min <= pile.length { pile.count } else { 0 }).collect();
    for stick in &plan.sticks {
        unused.iter_mut().skip(stick.pile).take(1).for_each(|left| *left = left.saturating_sub(stick.times));
        let mut end = 0_i64;
        for piece in &stick.pieces {
            let long = problem.parts.get(piece.part).map_or(0, |part| part.length);
            end = end.max(piece.at.saturating_add(long).saturating_add(problem.kerf));
            lacks.iter_mut().skip(piece.part).take(1).for_each(|lacks| *lacks = lacks.saturating_sub(stick.times));
        }
        let room = problem.piles.get(stick.pile).map_or(0, |pile| net(pile).saturating_sub(end));
        rooms.push((stick.pile, room, stick.times));
    }
    rooms.extend(problem.piles.iter().zip(unused).enumerate().map(|(nth, (pile, left))| (nth, net(pile), left)));
    let mut order: Vec<usize> = (0..problem.parts.len()).collect();
    order.sort_by_key(|nth| std::cmp::Reverse(problem.parts.get(*nth).map(|part| part.length)));
    for (pile, mut room) in rooms.into_iter().flat_map(|(pile, room, times)| (0..times).map(move |_| (pile, room))) {
        if lacks.iter().all(|lacks| *lacks <= 0) {
            break;
        }
        for nth in &order {
            let Some((part, lacks)) = problem.parts.get(*nth).zip(lacks.get_mut(*nth)) else { continue };
            let may = part.piles.as_ref().is_none_or(|piles| piles.contains(&pile));
            let step = part.length.saturating_add(problem.kerf);
            let fits = room.saturating_add(problem.kerf).checked_div(step).unwrap_or(0);
            let cut = if may { fits.min(*lacks).max(0) } else { 0 };
            *lacks = lacks.saturating_sub(cut);
            room = room.saturating_sub(cut.saturating_mul(step));
        }
    }
    lacks.into_iter().enumerate().filter(|(_, lacks)| 0 < *lacks).collect()
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
