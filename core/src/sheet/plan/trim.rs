//! Tiles cut and ripped smaller than their pieces give, so that they make the sides that are asked. Ours.

use super::figures::Figures;
use super::ready::Source;
use super::wish::Tiles;
use crate::plan::field::problem::Pattern;
use crate::quantity::Length;

/// One way of a tile along one side of the field: as long as the tile is finished, and how many make the side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Along {
    tile: i64,
    n: i64,
}

/// Length and width of what a tile is made of, with what is over, where tiles as large as they come make no field near enough, and smaller
/// ones of as few pieces as there are do. Rows of tiles alone: the others are laid of whole ones.
pub(super) fn trimmed(tiles: &Tiles, figures: &Figures, source: &Source) -> Option<[Length; 2]> {
    let in_rows = tiles.patterns.iter().any(|pattern| matches!(pattern, Pattern::Stack | Pattern::Running));
    let [over_long, over_wide, _] = figures.allow.map(Length::as_nm);
    let [_, wide, long] = source.size.map(Length::as_nm);
    let (long, wide) = (long.checked_sub(over_long)?, wide.checked_sub(over_wide)?);
    let [width, depth, _] = tiles.size;
    let step = step(figures);
    let way = |[along, across]: [Option<(Length, Length)>; 2]| {
        let (one, other) = (fit(long, along, step)?, fit(wide, across, step)?);
        let long_enough = tiles.cut_min.as_nm() <= one.tile && figures.strip_min.as_nm() <= other.tile;
        (long_enough && one.n.checked_mul(other.n)? <= source.count).then_some([one, other])
    };
    let turned = Some([depth, width]).filter(|_| tiles.turn);
    let ways = [Some([width, depth]), turned].into_iter().flatten().filter_map(way);
    let [one, other] = ways.min_by_key(|[one, other]| one.n.saturating_mul(other.n))?;
    let smaller = one.tile < long || other.tile < wide;
    let length = |tile: i64, over: i64| tile.checked_add(over).and_then(|nm| Length::nm(nm).ok());
    if in_rows && smaller && tiles.gap == Length::ZERO {
        Some([length(one.tile, over_long)?, length(other.tile, over_wide)?])
    } else {
        None
    }
}

/// Whole ones where they come near enough; else the fewest that are smaller, to what a tape reads.
fn fit(full: i64, side: Option<(Length, Length)>, step: i64) -> Option<Along> {
    let Some((side, near)) = side else { return Some(Along { tile: full, n: 1 }) };
    let (side, near) = (side.as_nm(), near.as_nm());
    let whole = side.checked_add(full.checked_div(2)?)?.checked_div(full)?.max(1);
    if whole.checked_mul(full)?.abs_diff(side) <= near.unsigned_abs() {
        return Some(Along { tile: full, n: whole });
    }
    let n = side.checked_add(full)?.checked_sub(1)?.checked_div(full)?;
    let tile = side.checked_div(n)?.checked_div(step)?.checked_mul(step)?;
    (side.checked_sub(tile.checked_mul(n)?)? <= near && 0 < tile).then_some(Along { tile, n })
}

/// What a tape at the saw reads: tenths of a millimetre, else thirty-seconds of an inch.
pub(in crate::sheet) fn step(figures: &Figures) -> i64 {
    let (tenth, inch) = (Length::TENTH_MM.as_nm(), Length::INCH_64TH.as_nm().saturating_mul(2));
    if figures.kerf.as_nm().checked_rem(tenth) == Some(0) { tenth } else { inch }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand, in millimetres: tiles of 1008 or 60 along a side of so much, within 3.
    #[test]
    fn tiles_make_the_side_that_is_asked() {
        let check = |full: i64, side: Option<i64>, wanted: Option<(i64, i64)>| {
            let mm = |n: i64| Length::MM.times(n).unwrap();
            let met = fit(full * 1_000_000, side.map(|side| (mm(side), mm(3))), 100_000);
            assert_eq!(met, wanted.map(|(tenths, n)| Along { tile: tenths * 100_000, n }), "{full} {side:?}");
        };
        check(1008, Some(600), Some((6000, 1)));
        check(1008, Some(1600), Some((8000, 2)));
        check(1008, Some(2018), Some((10080, 2)));
        check(60, Some(300), Some((600, 5)));
        check(60, Some(302), Some((600, 5)));
        check(60, Some(320), Some((533, 6)));
        check(60, None, Some((600, 1)));
    }
}
