//! Of the plans that take as little off the rack, one that leaves as much of it to keep; rows are whole strips before that.
//!
//! A page counts boards whole: its `keep_min` is longer than the longest board, so that nothing left of one counts as kept. By how much it
//! is longer is the least that is kept in truth.

use super::patience::Patience;
use super::{Answered, Asked, Made, better, parts, rows, sticks};
use crate::quantity::Set;

/// What a plan is asked with where boards are counted whole, and `kept` is the least that goes back to the rack: nothing goes back as 0.
pub fn counted_whole(lengths: impl Iterator<Item = i64>, kept: i64) -> i64 {
    lengths.max().unwrap_or(0).saturating_add(kept.max(1))
}

/// The least that goes back where boards are counted whole; nothing where the plan itself counts what is left.
pub fn kept(lengths: impl Iterator<Item = i64>, keep_min: i64) -> Option<i64> {
    keep_min.checked_sub(lengths.max().unwrap_or(0)).filter(|kept| 0 < *kept)
}

/// Steps for the second look: as part of those of the first, and at least so many. Ours.
const PART: u64 = 8;
const LEAST: u64 = 400;

/// The same boards cut so that more is left of them, where such a plan is found; it makes as many and takes no more.
pub(super) fn most_left(asked: &Asked, found: Answered, patience: &mut Patience<'_>, seed: u64) -> Answered {
    let steps = patience.steps().checked_div(PART).unwrap_or(0).saturating_add(LEAST);
    let Some(plan) = of_taken(asked, &found.plan, (patience, steps), seed) else { return found };
    let other = Answered { worth: asked.worth(&plan).unwrap_or_default(), plan, bound: found.bound.clone() };
    let as_good = other.worth.len() == found.worth.len() && !better(asked.senses(), &found.worth, &other.worth);
    if as_good { other } else { found }
}

/// A plan of the boards alone that another takes, counting what is left of them; nothing where none that is found leaves more.
fn of_taken(asked: &Asked, found: &Made, (patience, steps): (&mut Patience<'_>, u64), seed: u64) -> Option<Made> {
    Some(match (asked, found) {
        (Asked::Rows(problem), Made::Rows(plan)) => {
            let mut taken = problem.clone();
            taken.keep_min = kept(problem.piles.iter().map(|pile| pile.length), problem.keep_min)?;
            taken.rows = i64::try_from(plan.rows.len()).ok();
            let strips: Set<(usize, i64)> = plan.rows.iter().flatten().map(|piece| (piece.pile, piece.n)).collect();
            only(taken.piles.iter_mut().map(|pile| &mut pile.count), strips.iter().map(|(pile, _)| (*pile, 1)));
            Made::Rows(rows::whole::first(problem, &taken, plan, (patience, steps, seed)))
        }
        (Asked::Parts(problem), Made::Parts(plan)) => {
            let mut taken = problem.clone();
            taken.keep_min = kept(problem.piles.iter().map(|pile| pile.length), problem.keep_min)?;
            taken.sets = Some(sets(asked, found)?);
            only(taken.piles.iter_mut().map(|pile| &mut pile.count), plan.boards.iter().map(|board| (board.pile, board.times)));
            let mut other = patience.again(steps, |look| parts::solve(&taken, look, seed)).plan;
            let leaves = |boards: &[parts::plan::Board], panels: &[parts::plan::Panel]| {
                let boards = boards.iter().map(|board| board.shortened(&taken, taken.keep_min)).collect();
                parts::check::check(&taken, &parts::plan::Plan { boards, panels: panels.to_vec(), short: None }).ok()
            };
            let [own, more] = [leaves(&plan.boards, &plan.panels), leaves(&other.boards, &other.panels)];
            more.filter(|more| own.is_none_or(|own| better(&parts::SENSES, more, &own)))?;
            for board in &mut other.boards {
                let long = problem.piles.get(board.pile)?.length;
                (board.stretch, board.remainder) = (long.saturating_sub(problem.end_trim.saturating_mul(2)), 0);
            }
            Made::Parts(parts::plan::Plan { short: plan.short.clone(), ..other })
        }
        (Asked::Sticks(problem), Made::Sticks(plan)) => {
            let mut taken = problem.clone();
            taken.keep_min = kept(problem.piles.iter().map(|pile| pile.length), problem.keep_min)?;
            taken.sets = Some(sets(asked, found)?);
            only(taken.piles.iter_mut().map(|pile| &mut pile.count), plan.sticks.iter().map(|stick| (stick.pile, stick.times)));
            let mut other = patience.again(steps, |look| sticks::solve(&taken, look, seed)).plan;
            let own = sticks::plan::Plan { sticks: plan.sticks.iter().map(|stick| stick.left(&taken)).collect() };
            let [own, more] = [&own, &other].map(|plan| sticks::check::check(&taken, plan).ok());
            more.filter(|more| own.is_none_or(|own| better(&sticks::SENSES, more, &own)))?;
            other.sticks.iter_mut().for_each(|stick| stick.remainder = 0);
            Made::Sticks(other)
        }
        _ => return None,
    })
}

/// Of each pile the boards that a plan takes, and no others.
fn only<'a>(counts: impl Iterator<Item = &'a mut i64>, taken: impl Iterator<Item = (usize, i64)>) {
    let taken: Vec<(usize, i64)> = taken.collect();
    for (nth, count) in counts.enumerate() {
        let own = taken.iter().filter(|(pile, _)| *pile == nth);
        *count = own.fold(0, |sum, (_, n)| sum.saturating_add(*n));
    }
}

/// How many sets a plan makes; nothing where it makes none.
fn sets(asked: &Asked, plan: &Made) -> Option<i64> {
    asked.worth(plan)?.first().and_then(|sets| i64::try_from(*sets).ok()).filter(|sets| 0 < *sets)
}

#[cfg(test)]
mod tests;
