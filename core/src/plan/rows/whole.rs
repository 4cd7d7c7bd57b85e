//! Of the plans that take the same strips: the one of the fewest joints, then of the fewest cuts, then the one that leaves most to keep.

use super::alone;
use super::check::check;
use super::pieces;
use super::plan::Plan;
use super::problem::Problem;
use super::{SENSES, go_on, solve};
use crate::plan::better;
use crate::plan::patience::Patience;
use crate::quantity::{Set, Sorted};

/// Another plan of the strips that one takes, `taken`: each row out of one strip where that does it; else the one of the fewest joints that
/// is found, of whole strips and of rows out of one strip as far as they go.
pub fn first(problem: &Problem, taken: &Problem, plan: &Plan, (patience, steps, seed): (&mut Patience<'_>, u64, u64)) -> Plan {
    let found = check(problem, plan).ok();
    let as_good = |other: &Plan| found.zip(check(problem, other).ok()).is_some_and(|(found, other)| !better(&SENSES, &found, &other));
    let whole = Problem { split: false, ..taken.clone() };
    if !taken.split {
        return bare(patience.again(steps, |look| go_on(taken, plan, look, seed)).plan);
    }
    if let Some(alone) = alone::all(taken).filter(&as_good) {
        return alone;
    }
    let mut best = plan.clone();
    let mut meet = |other: Plan| {
        if as_good(&other) && rank(taken, &other) < rank(taken, &best) {
            best = other;
        }
    };
    // Two of these looks are as long as the one that goes on from the best.
    let brief = steps.div_ceil(2);
    if !is_whole(plan) {
        meet(bare(patience.again(brief, |look| solve(&whole, look, seed)).plan));
    }
    if let Some(rest) = alone::rest(taken) {
        let others = patience.again(brief, |look| solve(&rest, look, seed)).plan;
        meet(alone::with(taken, bare(others)));
    }
    let ends = pieces::ends(taken).and_then(|ends| pieces::shared(taken, &ends, (&mut *patience, brief, seed)));
    ends.into_iter().for_each(&mut meet);
    // Where all that is left counts, what is lost is the cuts.
    let any = if is_whole(&best) { whole } else { Problem { keep_min: 1, ..taken.clone() } };
    let on = bare(patience.again(steps, |look| go_on(&any, &best, look, seed)).plan);
    let better = |on: &Plan, best: &Plan| as_good(on) && rank(taken, on) < rank(taken, best);
    let best = if better(&on, &best) { on } else { best };
    let shared = pieces::shared(taken, &best, (patience, brief, seed));
    shared.filter(|on| better(on, &best)).unwrap_or(best)
}

/// Joints, cuts and what is left to keep, the more the less: the least is best.
fn rank(problem: &Problem, plan: &Plan) -> [i128; 3] {
    let mut strips: Sorted<(usize, i64), (i64, i64)> = Sorted::new();
    for piece in plan.rows.iter().flatten() {
        let (pieces, long) = strips.entry((piece.pile, piece.n)).or_default();
        (*pieces, *long) = (pieces.saturating_add(1), long.saturating_add(piece.length).saturating_add(problem.kerf));
    }
    let [mut pieces, mut cuts, mut left] = [0_i128; 3];
    for ((pile, _), (n, long)) in strips {
        let cut = Cut::of(problem, pile, (n, long.saturating_sub(problem.kerf)));
        pieces = pieces.saturating_add(n.into());
        (cuts, left) = (cuts.saturating_add(cut.cuts.into()), left.saturating_add(cut.left.into()));
    }
    [pieces, cuts, left.saturating_neg()]
}

/// What is cut of a strip: how often, its ends apart, and what goes back of it.
pub(super) struct Cut {
    pub cuts: i64,
    pub left: i64,
}

impl Cut {
    /// Of so many pieces, with the kerfs between them so long.
    pub(super) fn of(problem: &Problem, pile: usize, (pieces, long): (i64, i64)) -> Cut {
        let behind = squared(problem, pile).saturating_sub(long);
        let left = behind.saturating_sub(problem.kerf);
        Cut {
            cuts: pieces.saturating_sub(1).saturating_add(i64::from(0 < behind)),
            left: if left < problem.keep_min { 0 } else { left.max(0) },
        }
    }
}

/// How long a strip of a pile is when both its ends are squared.
pub(super) fn squared(problem: &Problem, pile: usize) -> i64 {
    problem.piles.get(pile).map_or(0, |pile| pile.length.saturating_sub(problem.square.saturating_mul(2)))
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

#[cfg(test)]
mod tests;
