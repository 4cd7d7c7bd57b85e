//! Tiles of a length that was asked, several out of each board: what is off each end of it, and a kerf between them. Ours.

use super::Mark;
use super::draft::{Sawn, cuts};
use super::figures::Figures;
use super::pooled::there;
use super::ready::{Ready, Source};
use crate::plan::field::plan::Field;
use crate::plan::field::problem::Problem;
use crate::quantity::{Length, Listed, order_by_key};
use crate::refusal::{Answer, Refusal};
use std::cmp::Reverse;

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

/// A board as it is cut: the lengths of its pieces, and whether some of them are shorter than a tile.
struct Board {
    pieces: Vec<i64>,
    cut: bool,
}

/// The boards of a pile that a field takes: first those of whole tiles, then those that shorter pieces come of too, each of what is left behind the
/// longer ones.
///
/// # Errors
/// [`Refusal::PlanBroken`] where they do not come out of the boards there are.
pub(super) fn boards(ready: &Ready, (problem, field): (&Problem, &Field), whole: &Sawn, cut: &[Sawn]) -> Answer<Vec<Sawn>> {
    let source = ready.sources.get(whole.source).ok_or(Refusal::PlanBroken)?;
    let tile = whole.pieces.first().map(|([length, ..], _)| *length).ok_or(Refusal::PlanBroken)?;
    let long = source.size[2].as_nm().checked_div(ready.unit).unwrap_or(0);
    let room = long.saturating_sub(problem.allow.length);
    if source.tiles < 1 || room < taken(tile, source.tiles, problem.kerf) {
        return Err(Refusal::PlanBroken);
    }
    let cut = cut.iter().map(|tile| tile.pieces.iter().map(|([length, ..], _)| *length).listed()).listed();
    let all = fewest((tile, whole.times, source.tiles), cut, (room, problem.kerf));
    if there(ready, problem, whole.source) < count(&all) {
        return Err(Refusal::PlanBroken);
    }
    all.iter().map(|(times, board)| sawn(ready, (problem, field), (whole.source, source), (*times, board))).collect()
}

/// The boards that do with the shorter pieces each by itself, or with as many as come of a tile together: the fewer, and the first where they are as
/// many.
fn fewest(whole: (i64, i64, i64), cut: Vec<Vec<i64>>, saw: (i64, i64)) -> Vec<(i64, Board)> {
    let alone = packed(whole, cut.iter().flatten().map(|piece| vec![*piece]).listed(), saw);
    let by_tile = packed(whole, cut, saw);
    if count(&by_tile) < count(&alone) { by_tile } else { alone }
}

fn count(boards: &[(i64, Board)]) -> i64 {
    boards.iter().fold(0, |sum, (times, _)| sum.saturating_add(*times))
}

/// So many pieces of a length with a kerf between.
fn taken(length: i64, n: i64, kerf: i64) -> i64 {
    length.saturating_mul(n).saturating_add(kerf.saturating_mul(n.saturating_sub(1)))
}

/// Whole tiles out of boards of so many each, then the shorter pieces, those that are longest together first, each lot from the first board with room
/// for it (ours): whole boards by how many there are, the others one by one.
fn packed((tile, whole, each): (i64, i64, i64), mut shorter: Vec<Vec<i64>>, (room, kerf): (i64, i64)) -> Vec<(i64, Board)> {
    let full = whole.checked_div(each).unwrap_or(0);
    let rest = whole.saturating_sub(full.saturating_mul(each));
    let of = |n: i64| usize::try_from(n).map(|n| vec![tile; n]).unwrap_or_default();
    let sum = |pieces: &[i64]| pieces.iter().fold(0_i64, |sum, piece| sum.saturating_add(*piece).saturating_add(kerf));
    let fits = |pieces: &[i64], lot: &[i64]| sum(pieces).saturating_add(sum(lot)).saturating_sub(kerf) <= room;
    let mut begun = [Some(of(rest)).filter(|pieces| !pieces.is_empty())].into_iter().flatten().listed();
    let mut untouched = full;
    order_by_key(&mut shorter, |lot| Reverse(sum(lot)));
    for lot in shorter {
        match begun.iter_mut().find(|pieces| fits(pieces, &lot)) {
            Some(pieces) => pieces.extend(lot),
            // What is over behind the whole tiles of a board, else a board of its own.
            None if 0 < untouched && fits(&of(each), &lot) => {
                untouched = untouched.saturating_sub(1);
                begun.push([of(each), lot].concat());
            }
            None => begun.push(lot),
        }
    }
    let alike = (0 < untouched).then(|| (untouched, Board { pieces: of(each), cut: false }));
    let begun = begun.into_iter().map(|pieces| (1, Board { cut: pieces.iter().any(|piece| *piece < tile), pieces }));
    alike.into_iter().chain(begun).listed()
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Tiles of 201, two to a board of 408 with a kerf of 6: four of 98 and four of 97 are four boards by themselves, and two where each tile gives
    /// both (98 + 97 + 98 + 97 + 3 x 6 = 408). A piece of 180 goes behind two whole tiles of 100, one of 190 does not.
    #[test]
    fn no_board_more_is_taken_than_tiles_by_themselves_would() {
        let check = |whole: (i64, i64, i64), cut: Vec<Vec<i64>>, boards: Vec<(i64, Vec<i64>)>| {
            let all: Vec<_> = fewest(whole, cut, (408, 6)).into_iter().map(|(times, board)| (times, board.pieces)).collect();
            assert_eq!(all, boards);
        };
        check((201, 0, 2), vec![vec![98, 97]; 4], vec![(1, vec![98, 97, 98, 97]); 2]);
        check((100, 6, 2), vec![vec![180]], vec![(2, vec![100, 100]), (1, vec![100, 100, 180])]);
        check((100, 6, 2), vec![vec![197]], vec![(3, vec![100, 100]), (1, vec![197])]);
        check((201, 1, 2), vec![vec![98, 97]], vec![(1, vec![201, 98, 97])]);
    }
}
