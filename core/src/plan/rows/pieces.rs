//! The pieces of rows cut otherwise from the same strips: where each piece lies stays, which strip it is cut from does not.

use super::plan::{Piece, Plan};
use super::problem::Problem;
use super::whole::squared;
use crate::plan::limits::PARTS_MOST;
use crate::plan::patience::Patience;
use crate::plan::sticks::{self, plan::Stick};
use crate::quantity::Sorted;

/// The same rows with the pieces cut so that most is left to keep, and of that by the fewest cuts; nothing where no way is found.
pub(super) fn shared(problem: &Problem, plan: &Plan, (patience, steps, seed): (&mut Patience<'_>, u64, u64)) -> Option<Plan> {
    let mut lengths: Sorted<i64, i64> = Sorted::new();
    for piece in plan.rows.iter().flatten() {
        let n = lengths.entry(piece.length).or_default();
        *n = n.checked_add(1)?;
    }
    let parts: Vec<sticks::problem::Part> = lengths
        .iter()
        .map(|(length, n)| sticks::problem::Part { id: length.to_string(), per_set: *n, length: *length, piles: None })
        .collect();
    let pile = |pile: &super::problem::Pile| sticks::problem::Pile { id: pile.id.clone(), count: pile.count, length: pile.length };
    let asked = sticks::problem::Problem {
        sets: Some(1),
        kerf: problem.kerf,
        end_trim: problem.square,
        machine_min: problem.machine_min,
        keep_min: problem.keep_min,
        piles: problem.piles.iter().map(pile).collect(),
        parts,
    };
    if i64::try_from(asked.parts.len()).is_ok_and(|parts| PARTS_MOST < parts) {
        return None;
    }
    let found = patience.again(steps, |look| sticks::solve(&asked, look, seed));
    if found.worth.first() != Some(&1) {
        return None;
    }
    let mut named = named(&asked, &found.plan.sticks);
    let mut plan = plan.clone();
    for piece in plan.rows.iter_mut().flatten() {
        (piece.pile, piece.n) = named.get_mut(&piece.length)?.pop()?;
    }
    Some(plan)
}

/// Rows of the longest strips, uncut, and an end piece each, at the left and at the right by turns. From which strips is not said yet.
pub(super) fn ends(problem: &Problem) -> Option<Plan> {
    let long = (0..problem.piles.len()).map(|pile| squared(problem, pile)).max().filter(|long| 0 < *long)?;
    let end = problem.min_end.max(problem.min_piece).max(1);
    let uncut = problem.length.checked_sub(end)?.checked_div(long)?.max(0);
    let mut row = vec![long; usize::try_from(uncut).ok()?];
    row.push(problem.length.checked_sub(uncut.checked_mul(long)?)?);
    let laid = |nth: i64| {
        let mut at = 0_i64;
        let mut lengths = row.clone();
        if nth.rem_euclid(2) == 1 {
            lengths.reverse();
        }
        let piece = |length: i64| {
            at = at.saturating_add(length);
            Piece { pile: 0, n: 1, at: at.saturating_sub(length), length }
        };
        lengths.into_iter().map(piece).collect()
    };
    Some(Plan { rows: (0..problem.rows?).map(laid).collect(), remainders: vec![] })
}

/// For each length the strips it is cut from, piece by piece.
fn named(asked: &sticks::problem::Problem, sticks: &[Stick]) -> Sorted<i64, Vec<(usize, i64)>> {
    let mut named: Sorted<i64, Vec<(usize, i64)>> = Sorted::new();
    let mut used = vec![0_i64; asked.piles.len()];
    for stick in sticks {
        for _ in 0..stick.times {
            let Some(n) = used.get_mut(stick.pile) else { continue };
            *n = n.saturating_add(1);
            for part in stick.pieces.iter().filter_map(|piece| asked.parts.get(piece.part)) {
                named.entry(part.length).or_default().push((stick.pile, *n));
            }
        }
    }
    named
}
