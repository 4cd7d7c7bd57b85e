//! Tiles cut and ripped smaller than their pieces give, so that they make the sides that are asked. Ours.

use super::figures::Figures;
use super::off::of_tile;
use super::ready::Source;
use super::wish::Tiles;
use crate::plan::field::problem::Pattern;
use crate::quantity::Length;

/// One way of a tile along one side of the field: as long as the tile is finished, and how many make the side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Along {
    pub tile: i64,
    pub n: i64,
}

/// Length and width of what a tile is made of, with what is over, where tiles as large as they come make no field near enough, and smaller
/// ones of as few pieces as there are do. Rows of tiles alone: the others are laid of whole ones.
pub(super) fn trimmed(tiles: &Tiles, figures: &Figures, source: &Source) -> Option<[Length; 2]> {
    if let Some(long) = tiles.long {
        return so_long(long, (tiles, figures), source);
    }
    if tiles.patterns.as_slice() == [Pattern::Basket] {
        return woven(tiles, figures, source);
    }
    if tiles.patterns.as_slice() == [Pattern::Herringbone] {
        return herringbone(tiles, figures, source);
    }
    let in_rows = tiles.patterns.iter().any(|pattern| matches!(pattern, Pattern::Stack | Pattern::Running));
    let [over_long, over_wide, _] = of_tile(tiles, figures).ok()?.map(Length::as_nm);
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

/// Tiles of the length that was asked: in rows as wide as make the other side, in a basket and a herringbone so that several side by side
/// are as long as one.
fn so_long(long: Length, (tiles, figures): (&Tiles, &Figures), source: &Source) -> Option<[Length; 2]> {
    let [over_long, over_wide, _] = of_tile(tiles, figures).ok()?;
    let wide = source.size[1].as_nm().checked_sub(over_wide.as_nm())?;
    let across = match tiles.patterns.as_slice() {
        [Pattern::Basket] => side_by_side(long.as_nm(), wide, (tiles, figures), |tile, beside| tile.checked_mul(beside)),
        [Pattern::Herringbone] => side_by_side(long.as_nm(), wide, (tiles, figures), |tile, _| Some(tile)),
        [Pattern::Crossed] => None,
        _ => in_rows(long.as_nm(), wide, (tiles, figures), source),
    };
    Some([long.plus(over_long).ok()?, Length::nm(across.unwrap_or(wide)).ok()?.plus(over_wide).ok()?])
}

/// How wide tiles so long are in rows, the long side as near as it comes.
fn in_rows(long: i64, wide: i64, (tiles, figures): (&Tiles, &Figures), source: &Source) -> Option<i64> {
    let there = source.count.checked_mul(source.tiles)?;
    let way = |[along, across]: [Option<(Length, Length)>; 2]| {
        let other = fit(wide, across, step(figures)).filter(|other| figures.strip_min.as_nm() <= other.tile)?;
        let (n, off) = nearest(long, along)?;
        (n.checked_mul(other.n)? <= there).then_some((off, n.saturating_mul(other.n), other.tile))
    };
    let [width, depth, _] = tiles.size;
    let ways = [Some([width, depth]), Some([depth, width]).filter(|_| tiles.turn)].into_iter().flatten().filter_map(way);
    ways.min().map(|(.., tile)| tile)
}

/// How many tiles come nearest to a side, and how far off they are where that is too far.
fn nearest(long: i64, side: Option<(Length, Length)>) -> Option<(i64, u64)> {
    let Some((side, near)) = side else { return Some((1, 0)) };
    let n = side.as_nm().checked_add(long.checked_div(2)?)?.checked_div(long)?.max(1);
    let off = n.checked_mul(long)?.abs_diff(side.as_nm());
    Some((n, if off <= near.as_nm().unsigned_abs() { 0 } else { off }))
}

/// The widest tile so many of which side by side are as long as one, before others that make both sides, before those that are a little less.
fn side_by_side(long: i64, wide: i64, (tiles, figures): (&Tiles, &Figures), block: impl Fn(i64, i64) -> Option<i64>) -> Option<i64> {
    let blocks = Blocks { sides: [tiles.size[0], tiles.size[1]], step: step(figures) };
    let way = |beside: i64| {
        let tile = long.checked_div(beside)?.checked_div(blocks.step)?.checked_mul(blocks.step)?;
        let is_wide_enough = figures.strip_min.as_nm() <= tile && tile <= wide;
        let exact = tile.checked_mul(beside) == Some(long);
        is_wide_enough.then_some((exact, blocks.many(block(tile, beside)?).is_some(), tile))
    };
    (2..=BESIDE).filter_map(way).max().map(|(.., tile)| tile)
}

/// Whether a tile of a herringbone is no longer than either side that is asked: else none of it is laid whole both ways.
pub(in crate::sheet) fn is_laid_whole(tiles: &Tiles, figures: &Figures, source: &Source) -> bool {
    shortest_whole(tiles, figures, source).is_none_or(|tile| {
        tiles.size.iter().take(2).flatten().all(|(side, near)| tile.as_nm() <= side.as_nm().saturating_add(near.as_nm()))
    })
}

/// How long such a tile is, of a pile ripped as it would be; nothing where it gives none.
pub(in crate::sheet) fn shortest_whole(tiles: &Tiles, figures: &Figures, source: &Source) -> Option<Length> {
    let alone = Tiles { patterns: vec![Pattern::Herringbone], ..tiles.clone() };
    let [over_long, over_wide, _] = of_tile(&alone, figures).ok()?.map(Length::as_nm);
    let [long, wide] = trimmed(&alone, figures, source).unwrap_or([source.size[2], source.size[1]]).map(Length::as_nm);
    let (long, wide) = (long.checked_sub(over_long)?, wide.checked_sub(over_wide)?);
    let beside = long.checked_div(wide).filter(|beside| 2 <= *beside)?;
    wide.checked_mul(beside).and_then(|nm| Length::nm(nm).ok())
}

/// The same of a basket: so many tiles side by side are as long as one, and as many of these blocks as make both sides.
fn woven(tiles: &Tiles, figures: &Figures, source: &Source) -> Option<[Length; 2]> {
    let [over_long, over_wide, _] = of_tile(tiles, figures).ok()?.map(Length::as_nm);
    let [_, wide, long] = source.size.map(Length::as_nm);
    let (long, wide) = (long.checked_sub(over_long)?, wide.checked_sub(over_wide)?);
    let blocks = Blocks { sides: [tiles.size[0], tiles.size[1]], step: step(figures) };
    // As large as they come first.
    let as_they_come = blocks.many(long.checked_div(wide)?.checked_mul(wide)?);
    let there = |n: i64, beside: i64| n.checked_mul(beside).is_some_and(|all| all <= source.count);
    if tiles.gap != Length::ZERO || as_they_come.is_some_and(|n| there(n, long.checked_div(wide).unwrap_or(0))) {
        return None;
    }
    let least = figures.strip_min.as_nm().max(1);
    let ways = (2..=long.checked_div(least)?.min(BESIDE)).flat_map(|beside| {
        let most = long.min(wide.saturating_mul(beside));
        let long_enough = tiles.cut_min.as_nm().max(least.saturating_mul(beside));
        blocks.sizes(beside, [long_enough, most]).map(move |(tile, n)| (beside, tile, n))
    });
    let fits = ways.filter(|(beside, _, n)| there(*n, *beside));
    let (beside, tile, _) = fits.min_by_key(|(beside, _, n)| n.saturating_mul(*beside))?;
    let length = |tile: i64, over: i64| tile.checked_add(over).and_then(|nm| Length::nm(nm).ok());
    Some([length(tile.checked_mul(beside)?, over_long)?, length(tile, over_wide)?])
}

/// The same of a herringbone, which is of cells as wide as a tile each way: the widest that make both sides. The tile stays as long as it is.
fn herringbone(tiles: &Tiles, figures: &Figures, source: &Source) -> Option<[Length; 2]> {
    let [over_long, over_wide, _] = of_tile(tiles, figures).ok()?.map(Length::as_nm);
    let [_, wide, long] = source.size.map(Length::as_nm);
    let (long, wide) = (long.checked_sub(over_long)?, wide.checked_sub(over_wide)?);
    let cells = Blocks { sides: [tiles.size[0], tiles.size[1]], step: step(figures) };
    // Each piece gives so many cells at the most.
    let there = |n: i64, cell: i64| long.checked_div(cell)?.checked_mul(source.count).map(|all| n <= all);
    let as_they_come = cells.many(wide).and_then(|n| there(n, wide)).unwrap_or(false);
    if tiles.gap != Length::ZERO || as_they_come {
        return None;
    }
    let least = tiles.cut_min.as_nm().max(figures.strip_min.as_nm()).max(1);
    let fits = cells.sizes(1, [least, wide.min(long.checked_div(2)?)]).filter(|(cell, n)| there(*n, *cell) == Some(true));
    let (cell, _) = fits.max_by_key(|(cell, _)| *cell)?;
    Some([source.size[2], cell.checked_add(over_wide).and_then(|nm| Length::nm(nm).ok())?])
}

/// More tiles side by side, or more blocks along a side, are not tried.
const BESIDE: i64 = 20;
const ALONG: i64 = 100;

/// Square blocks, or cells, that make both sides of a field, as far as these are asked.
struct Blocks {
    sides: [Option<(Length, Length)>; 2],
    step: i64,
}

impl Blocks {
    /// Widths of a tile, so many of which side by side are a block between two sizes, and how many blocks there are of each.
    fn sizes(&self, beside: i64, [least, most]: [i64; 2]) -> impl Iterator<Item = (i64, i64)> {
        let asked = self.sides.iter().flatten().map(|(side, _)| side.as_nm());
        let tile = move |side: i64, along: i64| {
            let tile = side.checked_div(along.checked_mul(beside)?)?.checked_div(self.step)?.checked_mul(self.step)?;
            let block = tile.checked_mul(beside).filter(|block| (least..=most).contains(block))?;
            Some((tile, self.many(block)?))
        };
        asked.flat_map(move |side| (1..=ALONG).filter_map(move |along| tile(side, along)))
    }

    /// How many blocks so large make both sides near enough; nothing where none do.
    fn many(&self, block: i64) -> Option<i64> {
        let along = |side: &Option<(Length, Length)>| {
            let Some((side, near)) = side else { return Some(1) };
            let n = side.as_nm().checked_add(block.checked_div(2)?)?.checked_div(block)?.max(1);
            (n.checked_mul(block)?.abs_diff(side.as_nm()) <= near.as_nm().unsigned_abs()).then_some(n)
        };
        let [one, other] = [along(&self.sides[0])?, along(&self.sides[1])?];
        one.checked_mul(other)
    }
}

/// Whole ones where they come near enough; else the fewest that are smaller, to what a tape reads.
pub(super) fn fit(full: i64, side: Option<(Length, Length)>, step: i64) -> Option<Along> {
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

/// Less than this is not sawn off a top that is wider than was asked: a millimetre, or what a tape reads in inches. Ours.
pub(in crate::sheet) fn least_sawn(figures: &Figures) -> Length {
    if step(figures) == Length::TENTH_MM.as_nm() { Length::MM } else { Length::nm(step(figures)).unwrap_or_default() }
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
