//! Parts that are glued up of strips, because no board is wide enough for them.

use super::{Given, Source, back, less, nm};
use crate::ledger::fold::Part;
use crate::quantity::{Count, Length};
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::wish::{Parts, Wish};

/// The parts; one that no board of its wood is thick, wide and long enough for is glued up of strips. The edges of a board that it takes
/// the whole width of are planed as its faces are.
pub(super) fn listed(parts: &[Part], sets: Option<Count>, figures: &Figures, sources: &[Source]) -> Parts {
    let [thick, wide, long] = back(figures.allow).map(nm);
    let mut listed = Parts::of(parts, sets.map(i64::from), Length::ZERO);
    for (wanted, part) in listed.parts.iter_mut().zip(parts) {
        let [thickness, width, length] = part.size.map(nm);
        let fits = |source: &Source| {
            let whole = |[there, across, along]: [Length; 3]| {
                thickness.saturating_add(thick) <= nm(there)
                    && width.saturating_add(wide) <= nm(across)
                    && length.saturating_add(long) <= less(along, figures.end_trim)
            };
            (part.wood.is_none() || part.wood == source.pile.wood) && source.sides().is_some_and(whole)
        };
        wanted.glue = !sources.iter().any(fits);
    }
    listed
}

/// A part so many times as wide as it is thick is one to glue up of narrower boards. Ours.
const WIDE_FROM: i64 = 4;

/// Whether a part is wide for how thick it is: such as is glued up, or made as a top.
pub fn is_wide(part: &Part) -> bool {
    let [thickness, width, _] = part.size;
    thickness.times(WIDE_FROM).is_ok_and(|least| least <= width)
}

/// Why a part is glued up: how wide it is cut, and how wide the widest is that is thick and long enough for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooWide {
    pub needs: Length,
    pub widest: Length,
    /// Of that pile.
    pub source: usize,
}

/// Why a part by its place is glued up; nothing where a board is wide enough, or none is known to be thick and long enough.
pub fn too_wide(given: &Given, part: usize) -> Option<TooWide> {
    let Wish::Parts(parts) = &given.ready.wish else { return None };
    let wanted = parts.parts.get(part).filter(|part| part.glue)?;
    let figures = &given.ready.figures;
    let [thick, wide, long] = [0, 1, 2].map(|side: usize| {
        let side = |all: &[Length; 3]| all.get(side).map_or(0, |side| nm(*side));
        side(&wanted.size).saturating_add(side(&back(figures.allow)))
    });
    let all = given.ready.sources.iter().enumerate().filter(|(_, source)| wanted.wood.is_none() || source.stack.wood == wanted.wood);
    let fit = all.filter(|(_, source)| thick <= nm(source.size[0]) && long <= less(source.size[2], figures.end_trim));
    let (place, widest) = fit.map(|(place, source)| (place, source.size[1])).max_by_key(|(_, wide)| *wide)?;
    (nm(widest) < wide).then_some(TooWide { needs: Length::nm(wide).ok()?, widest, source: place })
}
