//! Parts that are glued up of strips, because no board is wide enough for them, or too few are.

use super::{Given, Source, back, less, nm};
use crate::ledger::fold::Part;
use crate::ledger::kind::plan::DesignPart;
use crate::quantity::{Count, Length};
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::wish::{Parts, Wish};

/// The parts; which of them are glued up of strips where no board is wide enough, or too few are, [`is_glued`] says. The edges of a board
/// that a part takes the whole width of are planed as its faces are.
pub(super) fn listed(parts: &[Part], sets: Option<Count>, figures: &Figures, sources: &[Source]) -> Parts {
    let mut listed = Parts::of(parts, sets.map(i64::from), Length::ZERO);
    for (wanted, part) in listed.parts.iter_mut().zip(parts) {
        wanted.glue = is_glued(part, sets, figures, sources);
    }
    listed
}

/// With what each part is the rest of; it may be of strips, as it is glued in any case.
pub(super) fn with_rests(mut wish: Wish, rests: &[Option<Length>]) -> Wish {
    if let Wish::Parts(list) = &mut wish {
        for (part, whole) in list.parts.iter_mut().zip(rests) {
            (part.rest_of, part.glue) = (*whole, part.glue || whole.is_some());
        }
    }
    wish
}

/// Whether a part may be glued up: no board of its wood is thick, long and wide enough for it; of a wide part too few that lie there are,
/// and others give strips. Boards to buy that are wide enough keep no part from being glued up of what lies there. Ours.
fn is_glued(part: &Part, sets: Option<Count>, figures: &Figures, sources: &[Source]) -> bool {
    let [_, over_wide, _] = back(figures.allow).map(nm);
    let wide = nm(part.size[1]).saturating_add(over_wide);
    let (whole, narrow): (Vec<_>, Vec<_>) =
        sources.iter().filter_map(|source| Some((source, strip(part, figures, source)?))).partition(|(_, sides)| wide <= nm(sides[1]));
    if whole.is_empty() || narrow.is_empty() || !is_wide(part) {
        return whole.is_empty();
    }
    let lying = || whole.iter().filter(|(source, _)| source.bought.is_none());
    // What is wide enough only as its edges are planed is no strip as wide.
    if lying().any(|(_, sides)| less(sides[1], figures.edge_trim) < wide) {
        return false;
    }
    let give = lying().fold(0_i64, |sum, (source, sides)| sum.saturating_add(gives(part, figures, *sides).saturating_mul(source.n.into())));
    sets.is_none_or(|sets| give < i64::from(part.n).saturating_mul(sets.into()))
}

/// The sides of boards of a part's wood that are thick and long enough for it.
fn strip(part: &Part, figures: &Figures, source: &Source) -> Option<[Length; 3]> {
    let [thick, _, long] = back(figures.allow).map(nm);
    let of_it = part.wood.is_none() || part.wood == source.pile.wood;
    let fits = |[there, _, along]: &[Length; 3]| {
        nm(part.size[0]).saturating_add(thick) <= nm(*there) && nm(part.size[2]).saturating_add(long) <= less(*along, figures.end_trim)
    };
    source.sides().filter(|sides| of_it && fits(sides))
}

/// How many of a part come out of a board, each in one piece.
fn gives(part: &Part, figures: &Figures, [_, across, along]: [Length; 3]) -> i64 {
    let [_, wide, long] = back(figures.allow).map(nm);
    let kerf = nm(figures.kerf);
    let out_of = |net: i64, side: Length, over: i64| {
        net.saturating_add(kerf).checked_div(nm(side).saturating_add(over).saturating_add(kerf)).unwrap_or(0)
    };
    let [wide, long] =
        [out_of(less(across, figures.edge_trim), part.size[1], wide), out_of(less(along, figures.end_trim), part.size[2], long)];
    wide.saturating_mul(long)
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

/// A glued part of which some strips are cut, and what it lacks still.
#[derive(Clone, Debug, PartialEq)]
pub struct Begun {
    /// One of it.
    pub part: DesignPart,
    /// Strips that are cut.
    pub strips: Count,
    /// How wide the rest is, finished, and what is left of that where none is lacking: what is over, less two glued edges. In nm.
    rest: [i64; 2],
    /// No strip is narrower.
    least: Length,
}

impl Begun {
    /// Of a part none of whose strips is cut.
    pub(super) fn none(part: &DesignPart, figures: &Figures) -> Begun {
        let whole = nm(figures.joint).saturating_mul(2).saturating_sub(nm(figures.allow[1]));
        Begun { rest: [nm(part.width), whole], part: part.clone(), strips: 0, least: figures.strip_min }
    }

    /// With one strip more: what it has of the width is less for two glued edges. By hand: 170 with 2 over lacks, of two strips of 58 with
    /// edges of 1, 170 - 58 - 58 + 4 = 58, and 58 + 2 over is sawn for it: 58 + 58 + 60 - 4 = 172.
    pub(super) fn with(mut self, width: Length, figures: &Figures) -> Begun {
        let [rest, whole] = self.rest;
        self.rest = [rest.saturating_sub(nm(width)).saturating_add(nm(figures.joint).saturating_mul(2)), whole];
        self.strips = self.strips.saturating_add(1);
        self
    }

    /// Whether it is one of a part by its name and size.
    pub(super) fn is_of(&self, name: &str, size: [Length; 3]) -> bool {
        self.part.name == name && [self.part.thickness, self.part.width, self.part.length] == size
    }

    /// How wide the rest is as a part by itself; nothing where nothing is lacking.
    pub(super) fn lacks(&self) -> Option<Length> {
        let [rest, whole] = self.rest;
        let width = Length::nm(rest).ok().filter(|width| Length::ZERO < *width).unwrap_or(self.least);
        (whole < rest).then_some(width)
    }
}

/// One part by its name and size.
pub(super) fn is_same(one: &DesignPart, other: &DesignPart) -> bool {
    (&one.name, one.thickness, one.width, one.length) == (&other.name, other.thickness, other.width, other.length)
}
