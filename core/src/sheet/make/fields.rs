//! A field in one pattern alone, or of one pile alone: what is planned of several at once is cut to sizes that one of them needs.

use super::{Field, Given, What, tiles};
use crate::plan::field::problem::Pattern;
use crate::quantity::Listed;
use crate::sheet::plan::pooled::with_alike;
use crate::sheet::plan::ready::ready;
use crate::sheet::plan::stock::Stack;
use crate::sheet::plan::trim::is_laid_whole;
use crate::sheet::plan::wish::Wish;

/// The same field in one pattern, of all its piles or of the one at a place; nothing where that is no problem.
pub fn alone(given: &Given, pattern: Pattern, source: Option<usize>) -> Option<Given> {
    let What::Field(field) = &given.ask.what else { return None };
    let figures = given.ready.figures.clone();
    let tiled = tiles(&Field { patterns: vec![pattern], ..field.clone() }, &figures);
    let places: Vec<usize> = source.map_or_else(|| (0..given.sources.len()).collect(), |place| vec![place]);
    let stock: Vec<Stack> = places.iter().map(|place| given.ready.sources.get(*place).map(|it| it.stack.clone())).collect::<Option<_>>()?;
    let ready = ready(Wish::Tiles(tiled.clone()), &stock, figures).ok()?;
    let whole = pattern != Pattern::Herringbone
        || ready.sources.iter().all(|source| is_laid_whole(&tiled, &ready.figures, &with_alike(&ready.sources, source)));
    let sources = places.iter().filter_map(|place| given.sources.get(*place).cloned()).listed();
    let own = places.iter().map(|place| given.own.get(*place).copied().unwrap_or(0)).collect();
    (whole && ready.sources.len() == sources.len()).then(|| Given { ready, sources, own, ..given.clone() })
}
