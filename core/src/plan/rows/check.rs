//! Looks a plan over piece by piece, from what is cut out of which strip. It shares nothing with the planner.

use super::plan::{Piece, Plan};
use super::problem::Problem;
use crate::quantity::Sorted;

/// The first rule a plan breaks. Rows and pieces are named by their place in the plan, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Broken {
    /// More rows than are wanted.
    TooManyRows {
        rows: usize,
        most: i64,
    },
    Empty {
        row: usize,
    },
    NoSuchPile {
        row: usize,
        piece: usize,
    },
    /// A number the pile does not have.
    NoSuchStrip {
        row: usize,
        piece: usize,
    },
    /// The strip is shorter than the machine takes.
    ShortForMachine {
        row: usize,
        piece: usize,
    },
    /// Longer than the squared strip.
    TooLong {
        row: usize,
        piece: usize,
        most: i64,
    },
    /// Shorter than the least piece.
    TooShort {
        row: usize,
        piece: usize,
    },
    /// Shorter than the least end piece.
    ShortEnd {
        row: usize,
        piece: usize,
    },
    /// A strip gives one piece only, and gives a second one here.
    CutTwice {
        row: usize,
        piece: usize,
    },
    /// Shortened inside the row, or a second time in one row.
    Shortened {
        row: usize,
        piece: usize,
    },
    /// Not where the pieces before it end.
    Misplaced {
        row: usize,
        piece: usize,
        expected: i64,
    },
    /// The pieces of the row do not come to the panel's length.
    RowLength {
        row: usize,
        met: i64,
    },
    /// Joints of this row and the next are nearer than the stagger.
    Stagger {
        row: usize,
        joint: i64,
        other: i64,
    },
    /// The pieces of a strip, with their kerfs, are longer than it.
    StripTooLong {
        pile: usize,
        n: i64,
        by: i64,
    },
    /// The remainders are not what the plan leaves: this strip leaves so much.
    Remainder {
        pile: usize,
        n: i64,
        expected: i64,
    },
    /// A sum left the range of its type.
    OutOfRange,
}

type Strips = Sorted<(usize, i64), Vec<i64>>;

/// The rows, the length lost and the squares of a plan, or the first rule it breaks.
///
/// # Errors
/// [`Broken`] names the rule, and the row and piece.
///
/// ```
/// use fivebar_core::plan::rows::{check::check, plan::{Piece, Plan}, problem::{Pile, Problem}};
/// let pile = Pile { id: "A".into(), count: 3, length: 510 };
/// let problem = Problem {
///     length: 1000, rows: None, square: 5, kerf: 3, min_end: 100, min_piece: 80, machine_min: 150,
///     stagger: 60, split: false, keep_min: 50, piles: vec![pile],
/// };
/// let row = vec![Piece { pile: 0, n: 1, at: 0, length: 500 }, Piece { pile: 0, n: 2, at: 500, length: 500 }];
/// // Two strips, squared by 5 at each end: 20 lost.
/// assert_eq!(check(&problem, &Plan { rows: vec![row], remainders: vec![] }), Ok([1, 20, 520_200]));
/// ```
pub fn check(problem: &Problem, plan: &Plan) -> Result<[i128; 3], Broken> {
    if let Some(most) = problem.rows.filter(|most| i128::from(*most) < plan.rows.len() as i128) {
        return Err(Broken::TooManyRows { rows: plan.rows.len(), most });
    }
    let mut strips = Strips::new();
    let mut above: Vec<i64> = vec![];
    for (nth, row) in plan.rows.iter().enumerate() {
        let joints = row_of(problem, nth, row, &mut strips)?;
        if nth != 0 {
            stagger(problem, nth, &above, &joints)?;
        }
        above = joints;
    }
    used(problem, plan, &strips)
}

/// The joints of a row, its pieces looked at one by one.
fn row_of(problem: &Problem, nth: usize, row: &[Piece], strips: &mut Strips) -> Result<Vec<i64>, Broken> {
    let mut joints = vec![];
    let mut at = 0_i64;
    let mut shortened = false;
    let last = row.len().checked_sub(1).ok_or(Broken::Empty { row: nth })?;
    for (place, piece) in row.iter().enumerate() {
        let is_end = place == 0 || place == last;
        let full = piece_of(problem, (nth, place), piece, is_end)?;
        let own = strips.entry((piece.pile, piece.n)).or_default();
        if !problem.split {
            if !own.is_empty() {
                return Err(Broken::CutTwice { row: nth, piece: place });
            }
            if piece.length < full && (shortened || !is_end) {
                return Err(Broken::Shortened { row: nth, piece: place });
            }
            shortened |= piece.length < full;
        }
        own.push(piece.length);
        if piece.at != at {
            return Err(Broken::Misplaced { row: nth, piece: place, expected: at });
        }
        at = at.checked_add(piece.length).ok_or(Broken::OutOfRange)?;
        joints.push(at);
    }
    joints.pop();
    if at == problem.length { Ok(joints) } else { Err(Broken::RowLength { row: nth, met: at }) }
}

/// The squared length of the strip a piece comes from.
fn piece_of(problem: &Problem, (row, place): (usize, usize), piece: &Piece, is_end: bool) -> Result<i64, Broken> {
    let pile = problem.piles.get(piece.pile).ok_or(Broken::NoSuchPile { row, piece: place })?;
    if !(1..=pile.count).contains(&piece.n) {
        return Err(Broken::NoSuchStrip { row, piece: place });
    }
    if pile.length < problem.machine_min {
        return Err(Broken::ShortForMachine { row, piece: place });
    }
    let full = squared(problem, pile.length).ok_or(Broken::OutOfRange)?;
    if full < piece.length {
        return Err(Broken::TooLong { row, piece: place, most: full });
    }
    if piece.length < problem.min_piece.max(1) {
        return Err(Broken::TooShort { row, piece: place });
    }
    if is_end && piece.length < problem.min_end { Err(Broken::ShortEnd { row, piece: place }) } else { Ok(full) }
}

fn squared(problem: &Problem, length: i64) -> Option<i64> {
    length.checked_sub(problem.square.checked_mul(2)?)
}

fn stagger(problem: &Problem, nth: usize, above: &[i64], joints: &[i64]) -> Result<(), Broken> {
    for joint in above {
        for other in joints {
            if joint.abs_diff(*other) < problem.stagger.unsigned_abs() {
                return Err(Broken::Stagger { row: nth.saturating_sub(1), joint: *joint, other: *other });
            }
        }
    }
    Ok(())
}

/// The figures, from the strips that are used and what goes back of them.
fn used(problem: &Problem, plan: &Plan, strips: &Strips) -> Result<[i128; 3], Broken> {
    let mut back: Sorted<(usize, i64), i64> = Sorted::new();
    for rest in &plan.remainders {
        if rest.length < 1 || back.insert((rest.pile, rest.n), rest.length).is_some() || !strips.contains_key(&(rest.pile, rest.n)) {
            return Err(Broken::Remainder { pile: rest.pile, n: rest.n, expected: 0 });
        }
    }
    let (mut lost, mut squares) = (0_i128, 0_i128);
    for ((pile, n), pieces) in strips.iter() {
        let low = problem.piles.get(*pile).map_or(0, |pile| pile.length);
        let (used, left) = left_of(problem, low, pieces).ok_or(Broken::OutOfRange)?;
        if left < 0 {
            return Err(Broken::StripTooLong { pile: *pile, n: *n, by: left.saturating_neg() });
        }
        let behind = left.saturating_sub(problem.kerf).max(0);
        let rest = if behind < problem.keep_min { 0 } else { behind };
        if back.get(&(*pile, *n)).copied().unwrap_or(0) != rest {
            return Err(Broken::Remainder { pile: *pile, n: *n, expected: rest });
        }
        let [low, used, rest] = [low, used, rest].map(i128::from);
        lost = lost.saturating_add(low).saturating_sub(used).saturating_sub(rest);
        let square = |length: i128| length.saturating_mul(length);
        squares = squares.saturating_add(square(low)).saturating_sub(square(rest));
    }
    Ok([plan.rows.len() as i128, lost, squares])
}

/// What the pieces of a strip come to, and what is left of it behind them.
fn left_of(problem: &Problem, low: i64, pieces: &[i64]) -> Option<(i64, i64)> {
    let used = pieces.iter().try_fold(0_i64, |sum, piece| sum.checked_add(*piece))?;
    let between = i64::try_from(pieces.len()).ok()?.checked_sub(1)?.checked_mul(problem.kerf)?;
    Some((used, squared(problem, low)?.checked_sub(used)?.checked_sub(between)?))
}

#[cfg(test)]
mod tests;
