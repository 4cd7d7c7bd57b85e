//! How much of a field lies across the grain in one line: what is glued side by side moves as one width.

use super::plan::{Field, Lie};
use super::problem::{Pattern, Problem};

/// In width and in depth, the most that closed tiles lie side by side across their grain in any one line; `None` where tiles lie one way
/// alone, are not glued to each other, or their courses cross.
///
/// ```
/// use fivebar_core::plan::field::{plan::{Field, Lie}, problem::{Pattern, Problem}, sides::side_by_side};
/// let of = |pattern, columns, rows| {
///     let lie = Lie::Rows { pattern, columns, rows, turn: false };
///     side_by_side(&Problem::default(), &Field { lie, tile: [300, 60, 18], ..Field::default() })
/// };
/// // Ten cells of 60: of each line five are tiles that stand, five one that lies. Four cells deep there are no more than four that lie.
/// assert_eq!(of(Pattern::Herringbone, 10, 10), Some([300, 300]));
/// assert_eq!(of(Pattern::Herringbone, 10, 4), Some([300, 240]));
/// // Blocks of five by turns: two of three stand in every other line of three, and one of two.
/// assert_eq!(of(Pattern::Basket, 3, 2), Some([600, 300]));
/// assert_eq!(of(Pattern::Running, 3, 2), None);
/// ```
pub fn side_by_side(problem: &Problem, field: &Field) -> Option<[i64; 2]> {
    let Lie::Rows { pattern, columns, rows, turn } = field.lie else { return None };
    let [length, width, _] = field.tile;
    let cells = length.checked_div(width).filter(|_| problem.gap == 0)?;
    let (period, tiles) = match pattern {
        Pattern::Herringbone => (cells.checked_mul(2)?, 1),
        Pattern::Basket => (2, cells),
        _ => return None,
    };
    let lies = |column: i64, row: i64| match pattern {
        Pattern::Herringbone => column.saturating_sub(row).rem_euclid(period) < cells,
        _ => column.saturating_add(row).rem_euclid(2) == 0,
    };
    // Lines a period apart are alike.
    let stand = |row: i64| (0..columns).filter(|column| !lies(*column, row)).count();
    let lie = |column: i64| (0..rows).filter(|row| lies(column, *row)).count();
    let most = |all: Option<usize>| i64::try_from(all.unwrap_or(0)).ok()?.checked_mul(tiles)?.checked_mul(width);
    let mut sides = [most((0..rows.min(period)).map(stand).max())?, most((0..columns.min(period)).map(lie).max())?];
    if turn {
        sides.reverse();
    }
    Some(sides)
}
