//! Why a field is no nearer: tiles come in steps, or a larger one would cut pieces shorter than may be.

use super::plan::{Field, Lie};
use super::problem::{Pattern, Problem};
use super::tally::Laid;

/// How long the pieces are that a larger field cuts at its border, where that is shorter than the least piece: of a running bond half a tile,
/// of a herringbone a single width. `None` where the field is as large as is wanted, or another pattern is asked, too.
///
/// ```
/// use fivebar_core::plan::field::{plan::{Field, Lie}, problem::{Pattern, Problem, Target}, why::least_piece};
/// let wide = Some(Target { size: 240, tolerance: 3 });
/// let problem = |cut_min| Problem { targets: [wide, None, None], patterns: vec![Pattern::Herringbone], cut_min, ..Problem::default() };
/// let lie = Lie::Rows { pattern: Pattern::Herringbone, columns: 4, rows: 1, turn: false };
/// let field = Field { lie, outer: [80, 20, 18], tile: [80, 20, 18], ..Field::default() };
/// assert_eq!(least_piece(&problem(25), &field), Some(20));
/// assert_eq!(least_piece(&problem(20), &field), None);
/// ```
pub fn least_piece(problem: &Problem, field: &Field) -> Option<i64> {
    let Lie::Rows { pattern, .. } = field.lie else { return None };
    let [long, wide, _] = field.tile;
    let laid = Laid::of(pattern, *problem.mix.first().unwrap_or(&Default::default()), [long, wide], problem.gap)?;
    let [first, last] = laid.halves();
    let cut = match pattern {
        Pattern::Running => first.min(last),
        Pattern::Herringbone => wide,
        Pattern::Stack | Pattern::Basket | Pattern::Crossed => return None,
    };
    let short = problem.targets.iter().zip(field.outer).take(2).any(|(target, outer)| target.is_some_and(|target| outer < target.size));
    (problem.patterns.as_slice() == [pattern] && short && cut < problem.cut_min).then_some(cut)
}

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
/// assert_eq!(next(&wide(470), &field), None); // a step more is nearer: something else is in its way
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
    let wanted = problem.targets.get(side).copied().flatten()?.size;
    let past = if more { wanted < other } else { other < wanted };
    (0 < other && past).then_some((side, more, other))
}
