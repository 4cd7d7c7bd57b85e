//! The plan in the maker's own piles, parts and unit.

use super::cutting::Cut;
use super::plan::{Piece, Plan, Stick};
use super::problem::Problem;
use super::stock::Stock;

/// Shares out sticks alike to their piles and pieces alike to their parts.
pub(super) fn plan(problem: &Problem, stock: &Stock, cuts: &[(Cut, i64)], sets: i64) -> Plan {
    let mut there: Vec<i64> = problem.piles.iter().map(|pile| pile.count).collect();
    let mut wanted: Vec<i64> = problem.parts.iter().map(|part| part.per_set.saturating_mul(sets)).collect();
    let mut plan = Plan::default();
    for (cut, times) in cuts {
        let mut left = *times;
        while 0 < left {
            let Some(pile) = stock.piles.get(cut.pile).and_then(|alike| first(&alike.own, &there)) else { break };
            let pieces = pieces(stock, cut, &wanted);
            let alike = there.get(pile).copied().unwrap_or(0).min(left).min(repeats(&pieces, &wanted));
            there.iter_mut().skip(pile).take(1).for_each(|there| *there = there.saturating_sub(alike));
            for part in &pieces {
                wanted.iter_mut().skip(*part).take(1).for_each(|wanted| *wanted = wanted.saturating_sub(alike));
            }
            plan.sticks.push(stick(problem, pile, alike, &pieces));
            left = left.saturating_sub(alike);
        }
    }
    plan
}

fn first(own: &[usize], left: &[i64]) -> Option<usize> {
    own.iter().copied().find(|place| left.get(*place).is_some_and(|left| 0 < *left))
}

/// Which parts one stick gives, the longest first.
fn pieces(stock: &Stock, cut: &Cut, wanted: &[i64]) -> Vec<usize> {
    let mut wanted = wanted.to_vec();
    let mut all = vec![];
    for (part, n) in stock.parts.iter().zip(&cut.counts) {
        for _ in 0..*n {
            let Some(own) = first(&part.own, &wanted).or(part.own.first().copied()) else { continue };
            wanted.iter_mut().skip(own).take(1).for_each(|wanted| *wanted = wanted.saturating_sub(1));
            all.push(own);
        }
    }
    all
}

/// How many sticks can be cut so before one of the parts is complete; at least one.
fn repeats(pieces: &[usize], wanted: &[i64]) -> i64 {
    let count = |part: usize| pieces.iter().filter(|own| **own == part).count() as i64;
    pieces.iter().filter_map(|part| wanted.get(*part)?.checked_div(count(*part))).min().unwrap_or(1).max(1)
}

fn stick(problem: &Problem, pile: usize, times: i64, parts: &[usize]) -> Stick {
    let mut at = 0_i64;
    let mut pieces = vec![];
    for part in parts {
        pieces.push(Piece { part: *part, at });
        let length = problem.parts.get(*part).map_or(0, |part| part.length);
        at = at.saturating_add(length).saturating_add(problem.kerf);
    }
    let length = problem.piles.get(pile).map_or(0, |pile| pile.length);
    let behind = length.saturating_sub(problem.end_trim.saturating_mul(2)).saturating_sub(at).max(0);
    Stick { pile, times, pieces, remainder: if behind < problem.keep_min { 0 } else { behind } }
}
