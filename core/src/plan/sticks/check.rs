//! Looks a plan over piece by piece, from what is cut out of which stick. It shares nothing with the planner.

use super::plan::{Plan, Stick};
use super::problem::Problem;

/// The first rule a plan breaks. Sticks and pieces are named by their place in the plan, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    NoSuchPile {
        stick: usize,
    },
    NoSuchPart {
        stick: usize,
        piece: usize,
    },
    /// Fewer than one time.
    Times {
        stick: usize,
    },
    /// More sticks than the pile has.
    TooMany {
        stick: usize,
        used: i64,
        there: i64,
    },
    /// Shorter than the machine takes.
    TooShort {
        stick: usize,
    },
    NoPieces {
        stick: usize,
    },
    /// The part may not come from that pile.
    NotFromThere {
        stick: usize,
        piece: usize,
    },
    /// Not where the pieces before it and their kerfs end.
    Misplaced {
        stick: usize,
        piece: usize,
        expected: i64,
    },
    /// The pieces and kerfs are longer than the trimmed stick.
    TooLong {
        stick: usize,
        by: i64,
    },
    Remainder {
        stick: usize,
        expected: i64,
    },
    /// A sum left the range of its type.
    OutOfRange,
}

/// What one stick of a plan comes to.
struct Cut {
    consumed: i64,
    cuts: i64,
}

/// The sets, the length consumed and the cuts of a plan, or the first rule it breaks.
///
/// # Errors
/// [`Broken`] names the rule, and the stick or piece.
///
/// ```
/// use fivebar_core::plan::sticks::{check::check, plan::{Piece, Plan, Stick}, problem::{Part, Pile, Problem}};
/// let rail = Part { id: "rail".into(), per_set: 2, length: 400, piles: None };
/// let pile = Pile { id: "A".into(), count: 5, length: 1000 };
/// let problem =
///     Problem { sets: None, kerf: 3, end_trim: 5, machine_min: 200, keep_min: 150, piles: vec![pile], parts: vec![rail] };
/// let pieces = vec![Piece { part: 0, at: 0 }, Piece { part: 0, at: 403 }];
/// // 1000 less two trims, two rails and two kerfs leaves 184, long enough to keep.
/// let plan = Plan { sticks: vec![Stick { pile: 0, times: 1, pieces, remainder: 184 }] };
/// assert_eq!(check(&problem, &plan), Ok([1, 816, 4]));
/// ```
pub fn check(problem: &Problem, plan: &Plan) -> Result<[i128; 3], Broken> {
    let mut used = vec![0_i64; problem.piles.len()];
    let mut made = vec![0_i64; problem.parts.len()];
    let (mut consumed, mut cuts) = (0_i128, 0_i128);
    for (nth, stick) in plan.sticks.iter().enumerate() {
        count(problem, stick, nth, &mut used)?;
        let cut = stick_of(problem, stick, nth)?;
        for piece in &stick.pieces {
            let made = made.get_mut(piece.part).ok_or(Broken::OutOfRange)?;
            *made = made.checked_add(stick.times).ok_or(Broken::OutOfRange)?;
        }
        consumed = summed(consumed, cut.consumed, stick.times).ok_or(Broken::OutOfRange)?;
        cuts = summed(cuts, cut.cuts, stick.times).ok_or(Broken::OutOfRange)?;
    }
    let sets = made.iter().zip(&problem.parts).filter_map(|(made, part)| made.checked_div(part.per_set)).min().unwrap_or(0);
    Ok([i128::from(problem.sets.map_or(sets, |most| sets.min(most))), consumed, cuts])
}

fn summed(sum: i128, one: i64, times: i64) -> Option<i128> {
    sum.checked_add(i128::from(one).checked_mul(i128::from(times))?)
}

fn count(problem: &Problem, stick: &Stick, nth: usize, used: &mut [i64]) -> Result<(), Broken> {
    let pile = problem.piles.get(stick.pile).ok_or(Broken::NoSuchPile { stick: nth })?;
    let used = used.get_mut(stick.pile).ok_or(Broken::NoSuchPile { stick: nth })?;
    if stick.times < 1 {
        return Err(Broken::Times { stick: nth });
    }
    *used = used.checked_add(stick.times).ok_or(Broken::OutOfRange)?;
    if pile.count < *used {
        return Err(Broken::TooMany { stick: nth, used: *used, there: pile.count });
    }
    if pile.length < problem.machine_min { Err(Broken::TooShort { stick: nth }) } else { Ok(()) }
}

fn stick_of(problem: &Problem, stick: &Stick, nth: usize) -> Result<Cut, Broken> {
    let pile = problem.piles.get(stick.pile).ok_or(Broken::NoSuchPile { stick: nth })?;
    let mut at = 0_i64;
    for (place, piece) in stick.pieces.iter().enumerate() {
        let part = problem.parts.get(piece.part).ok_or(Broken::NoSuchPart { stick: nth, piece: place })?;
        if part.piles.as_ref().is_some_and(|piles| !piles.contains(&stick.pile)) {
            return Err(Broken::NotFromThere { stick: nth, piece: place });
        }
        if piece.at != at {
            return Err(Broken::Misplaced { stick: nth, piece: place, expected: at });
        }
        at = at.checked_add(part.length).and_then(|at| at.checked_add(problem.kerf)).ok_or(Broken::OutOfRange)?;
    }
    if stick.pieces.is_empty() {
        return Err(Broken::NoPieces { stick: nth });
    }
    left_of(problem, stick, (nth, pile.length, at)).ok_or(Broken::OutOfRange)?
}

/// What is left behind the last piece, and what follows from it; `at` is where a further piece would begin.
fn left_of(problem: &Problem, stick: &Stick, (nth, length, at): (usize, i64, i64)) -> Option<Result<Cut, Broken>> {
    let trimmed = length.checked_sub(problem.end_trim.checked_mul(2)?)?;
    let left = trimmed.checked_sub(at.checked_sub(problem.kerf)?)?;
    if left < 0 {
        return Some(Err(Broken::TooLong { stick: nth, by: left.checked_neg()? }));
    }
    let behind = left.checked_sub(problem.kerf)?.max(0);
    let kept = if behind < problem.keep_min { 0 } else { behind };
    if stick.remainder != kept {
        return Some(Err(Broken::Remainder { stick: nth, expected: kept }));
    }
    let between = i64::try_from(stick.pieces.len()).ok()?.checked_sub(1)?;
    let ends = if 0 < problem.end_trim { 2 } else { 0 };
    let cuts = between.checked_add(ends)?.checked_add(i64::from(0 < left))?;
    Some(Ok(Cut { consumed: length.checked_sub(kept)?, cuts }))
}

#[cfg(test)]
mod tests;
