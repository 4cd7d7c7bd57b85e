//! Tiles of a field: how long they may be, and of which boards a herringbone is laid whole.

use super::fit::{nm, under};
use super::{Field, Source, Unfit, What, WhyNot, tiles};
use crate::plan::field::problem::Pattern;
use crate::quantity::{Length, Listed};
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::off::is_all;
use crate::sheet::plan::pooled::with_alike;
use crate::sheet::plan::ready::{Ready, ready};
use crate::sheet::plan::stock::Stack;
use crate::sheet::plan::tiles::out_of;
use crate::sheet::plan::trim::{is_laid_whole, shortest_whole};
use crate::sheet::plan::wish::{Tiles, Wish};

pub(super) fn unfit_tile(field: &Field, figures: &Figures, sides: [Length; 3]) -> Option<Unfit> {
    let none = field.tile.is_some_and(|tile| out_of(sides[2], tile, figures) == Some(0));
    match () {
        () if is_all(&tiles(field, figures), figures, sides) => Some(Unfit::TooThin),
        () if none => Some(Unfit::TooShort),
        () => under(figures.machines.plane, sides[2]),
    }
}

/// A tile shorter than the least piece, or longer than comes out of any of these boards.
pub(super) fn refused(what: &What, figures: &Figures, used: &[(Source, Option<Unfit>)]) -> Option<WhyNot> {
    let What::Field(field) = what else { return None };
    let tile = field.tile?;
    let least = figures.min_piece;
    if tile < least {
        return Some(WhyNot::TileShort { tile, least });
    }
    let ends = nm(figures.square).saturating_mul(2);
    let longest = used.iter().filter_map(|(source, _)| source.pile.length).max()?;
    let longest = Length::nm(nm(longest).saturating_sub(ends).max(0)).ok()?;
    (longest < tile).then_some(WhyNot::TileLong { tile, longest })
}

/// Leaves out the boards a herringbone can't be laid whole of, and says which; among several patterns the herringbone itself.
///
/// # Errors
/// [`WhyNot::TileToSay`] where none are left.
pub(super) fn of_whole(
    what: &What,
    made: &mut Ready,
    sources: &mut Vec<Source>,
    stock: impl Fn(&[Source]) -> Vec<Stack>,
) -> Result<Vec<(Source, Unfit)>, WhyNot> {
    let mut long = if let What::Field(field) = what { too_long(field, made) } else { vec![] };
    let Wish::Tiles(mut tiles) = made.wish.clone() else { return Ok(vec![]) };
    if long.is_empty() {
        return Ok(vec![]);
    }
    let (alone, mut out) = (tiles.patterns.as_slice() == [Pattern::Herringbone], vec![]);
    if alone {
        let stubby = too_stubby(&tiles, made);
        long.extend(&stubby);
        if long.len() == made.sources.len() {
            return Err(to_say(made));
        }
        let why = |place: usize| if stubby.contains(&place) { Unfit::TooShort } else { Unfit::TooLong };
        let placed = std::mem::take(sources).into_iter().enumerate();
        let (gone, left): (Vec<_>, Vec<_>) = placed.partition(|(place, _)| long.contains(place));
        *sources = left.into_iter().map(|(_, source)| source).listed();
        out = gone.into_iter().map(|(place, source)| (source, why(place))).listed();
    } else {
        tiles.patterns.retain(|pattern| *pattern != Pattern::Herringbone);
    }
    *made = ready(Wish::Tiles(tiles), &stock(sources), made.figures.clone())?;
    Ok(out)
}

/// The boards a herringbone can't be laid whole of, by their places: it needs shorter tiles.
fn too_long(field: &Field, ready: &Ready) -> Vec<usize> {
    let Wish::Tiles(tiles) = &ready.wish else { return vec![] };
    if field.tile.is_some() || !field.patterns.contains(&Pattern::Herringbone) {
        return vec![];
    }
    let all = ready.sources.iter().enumerate();
    all.filter(|(_, source)| !is_laid_whole(tiles, &ready.figures, &with_alike(&ready.sources, source))).map(|(place, _)| place).listed()
}

/// The boards that give no herringbone, since they are less than twice as long as wide.
fn too_stubby(tiles: &Tiles, ready: &Ready) -> Vec<usize> {
    let all = ready.sources.iter().enumerate();
    all.filter(|(_, source)| shortest_whole(tiles, &ready.figures, &with_alike(&ready.sources, source)).is_none())
        .map(|(place, _)| place)
        .listed()
}

/// That a tile length is to be said, and how long the shortest tile of whole boards is.
fn to_say(ready: &Ready) -> WhyNot {
    let Wish::Tiles(tiles) = &ready.wish else { return WhyNot::NoneFits };
    let tile = ready.sources.iter().filter_map(|source| shortest_whole(tiles, &ready.figures, &with_alike(&ready.sources, source))).min();
    let side = tiles.size.iter().take(2).flatten().map(|(side, _)| *side).min();
    tile.zip(side).map_or(WhyNot::NoneFits, |(tile, side)| WhyNot::TileToSay { tile, side })
}
