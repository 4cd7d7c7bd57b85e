//! Tiles of a length that was asked, several out of each board: what is off each end of it, and a kerf between them. Ours.

use super::Mark;
use super::draft::{Sawn, cuts};
use super::figures::Figures;
use super::ready::{Ready, Source};
use crate::plan::field::plan::Field;
use crate::plan::field::problem::Problem;
use crate::quantity::{Length, Listed};
use crate::refusal::{Answer, Refusal};

/// How many tiles come out of a board; none where it is too short for one.
///
/// ```
/// # use fivebar_core::{quantity::{Length, Units}, sheet::plan::{figures::Figures, tiles::out_of}};
/// let mm = |n: i64| Length::MM.times(n).unwrap();
/// let figures = Figures::usual(Units::Metric).unwrap(); // 3 mm kerf, 2.5 mm off each end
/// assert_eq!(out_of(mm(680), mm(160), &figures), Some(4)); // 4 x 160 + 3 x 3 + 5 = 654
/// assert_eq!(out_of(mm(653), mm(160), &figures), Some(3));
/// assert_eq!(out_of(mm(164), mm(160), &figures), Some(0));
/// ```
pub fn out_of(board: Length, tile: Length, figures: &Figures) -> Option<i64> {
    let [board, tile, kerf] = [board, tile, figures.kerf].map(Length::as_nm);
    let ends = figures.square.as_nm().checked_mul(2)?;
    let each = tile.checked_add(kerf)?;
    Some(board.checked_sub(ends)?.checked_add(kerf)?.checked_div(each)?.max(0))
}

/// What is over of a board behind so many tiles, its ends in it.
///
/// ```
/// # use fivebar_core::{quantity::{Length, Units}, sheet::plan::{figures::Figures, tiles::over}};
/// let mm = |n: i64| Length::MM.times(n).unwrap();
/// assert_eq!(over(mm(680), (mm(160), 4), &Figures::usual(Units::Metric).unwrap()), Some(mm(31))); // 680 - 640 - 9
/// ```
pub fn over(board: Length, (tile, n): (Length, i64), figures: &Figures) -> Option<Length> {
    let kerfs = figures.kerf.as_nm().checked_mul(n.checked_sub(1)?)?;
    let rest = board.as_nm().checked_sub(tile.as_nm().checked_mul(n)?)?.checked_sub(kerfs)?;
    Length::nm(rest).ok()
}

/// A board as its tiles come out of it: the lengths of its pieces, and whether some of them are of a tile that is cut further.
struct Board {
    pieces: Vec<i64>,
    cut: bool,
}

/// The boards of a pile that a field takes: first those of whole tiles, then those with tiles that are `cut` further.
///
/// # Errors
/// [`Refusal::PlanBroken`] where they do not come out of the boards there are.
pub(super) fn boards(ready: &Ready, (problem, field): (&Problem, &Field), whole: &Sawn, cut: &[Sawn]) -> Answer<Vec<Sawn>> {
    let source = ready.sources.get(whole.source).ok_or(Refusal::PlanBroken)?;
    let each = usize::try_from(source.tiles).ok().filter(|each| 0 < *each).ok_or(Refusal::PlanBroken)?;
    let full = whole.times.checked_div(source.tiles).ok_or(Refusal::PlanBroken)?;
    let single = || whole.pieces.iter().map(|([length, ..], _)| *length).listed();
    let rest = whole.times.checked_rem(source.tiles).and_then(|rest| usize::try_from(rest).ok()).unwrap_or(0);
    let begun = std::iter::repeat_n((single(), false), rest);
    let further = cut.iter().map(|tile| (tile.pieces.iter().map(|([length, ..], _)| *length).listed(), true));
    let tiles = begun.chain(further).listed();
    let of = |tiles: &[(Vec<i64>, bool)]| Board {
        pieces: tiles.iter().flat_map(|(pieces, _)| pieces.iter().copied()).listed(),
        cut: tiles.iter().any(|(_, cut)| *cut),
    };
    let alike = (0 < full).then(|| (full, Board { pieces: single().repeat(each), cut: false }));
    let all = alike.into_iter().chain(tiles.chunks(each).map(|tiles| (1, of(tiles)))).listed();
    let n = all.iter().fold(0_i64, |sum, (times, _)| sum.saturating_add(*times));
    if source.count < n {
        return Err(Refusal::PlanBroken);
    }
    all.iter().map(|(times, board)| sawn(ready, (problem, field), (whole.source, source), (*times, board))).collect()
}

fn sawn(
    ready: &Ready,
    (problem, field): (&Problem, &Field),
    (place, source): (usize, &Source),
    (times, board): (i64, &Board),
) -> Answer<Sawn> {
    let long = source.size[2].as_nm().checked_div(ready.unit).unwrap_or(0);
    let taken = board.pieces.iter().fold(problem.allow.length, |sum, piece| sum.saturating_add(*piece).saturating_add(problem.kerf));
    // A kerf goes between two pieces, and one before what is left.
    let behind = long.saturating_sub(taken.saturating_sub(problem.kerf));
    if behind < 0 {
        return Err(Refusal::PlanBroken);
    }
    Ok(Sawn {
        source: place,
        times,
        mark: if board.cut { Mark::Number(0) } else { Mark::Letter },
        cuts: cuts(board.pieces.len(), 0 < problem.allow.length, 0 < behind),
        pieces: board.pieces.iter().map(|length| ([*length, field.tile[1], field.tile[2]], None)).collect(),
        remainder: ready.kept(behind.saturating_sub(problem.kerf)),
    })
}
