//! Why a field is no nearer: tiles come in steps.

use super::plan::{Field, Lie};
use super::problem::Problem;

/// The side of a field that is most off (0 is the width, 1 the depth), whether a step more or a step less goes past what is wanted, and
/// how long the side is then, in the problem's unit. `None` where no side is off, or the courses cross and have no one step.
///
/// ```
/// use fivebar_core::plan::field::{plan::{Field, Lie}, problem::{Pattern, Problem, Target}, why::next};
/// let wide = |size| Problem { targets: [Some(Target { size, tolerance: 3 }), None, None], ..Problem::default() };
/// let lie = Lie::Rows { pattern: Pattern::Stack, columns: 7, rows: 2, turn: false };
/// let field = Field { lie, outer: [406, 362, 18], ..Field::default() };
/// assert_eq!(next(&wide(420), &field), Some((0, true, 464)));
/// assert_eq!(next(&wide(390), &field), Some((0, false, 348)));
/// assert_eq!(next(&wide(406), &field), None);
/// ```
pub fn next(problem: &Problem, field: &Field) -> Option<(usize, bool, i64)> {
    let Lie::Rows { columns, rows, turn, .. } = field.lie else { return None };
    let counts = if turn { [rows, columns] } else { [columns, rows] };
    let sides = problem.targets.iter().zip(field.outer).zip(counts).enumerate();
    let off = sides.filter_map(|(side, ((target, outer), n))| Some((target.as_ref()?.size.saturating_sub(outer), side, outer, n)));
    let (short, side, outer, n) = off.max_by_key(|(short, ..)| short.saturating_abs()).filter(|(short, ..)| *short != 0)?;
    let whole = outer.checked_add(problem.gap)?;
    let step = whole.checked_div(n).filter(|_| whole.checked_rem(n) == Some(0))?;
    let more = 0 < short;
    let other = if more { outer.checked_add(step)? } else { outer.checked_sub(step)? };
    (0 < other).then_some((side, more, other))
}
