//! Why a piece can't be used for what is asked.

use super::{Given, Top, Unfit, top};
use crate::ledger::fold::Part;
use crate::quantity::Length;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::off::{is_enough, of_stick};
use crate::sheet::plan::wish::{Wanted, Wish};

/// What is added for final sizing as thickness, width, length.
pub(super) fn back([long, wide, thick]: [Length; 3]) -> [Length; 3] {
    [thick, wide, long]
}

pub(super) fn under(least: Length, length: Length) -> Option<Unfit> {
    (length < least).then_some(Unfit::UnderMachine(least))
}

pub(super) fn nm(length: Length) -> i64 {
    length.as_nm()
}

pub(super) fn less(length: Length, each: Length) -> i64 {
    nm(length).saturating_sub(nm(each).saturating_mul(2))
}

/// What a plan had planed is not planed again for a top just as thick.
pub(super) fn unfit_top(top: &Top, figures: &Figures, (sides, planed): ([Length; 3], bool)) -> Option<Unfit> {
    let [thickness, width, length] = sides;
    let just = planed && top.thickness == Some(thickness);
    let thick = top.thickness.map_or(0, |finished| nm(finished).saturating_add(nm(back(figures.allow)[0])));
    let rips = top.rows.map(|rows| top::rips((rows, top::strip(top, rows, figures)), (width, planed), figures));
    let least = if rips.is_some_and(|rips| 1 < rips) { figures.machines.plane.max(figures.machines.rip) } else { figures.machines.plane };
    match () {
        () if nm(thickness) < thick && !just => Some(Unfit::TooThin),
        () if rips == Some(0) || less(width, figures.edge_trim) <= 0 => Some(Unfit::TooNarrow),
        () if length < least => Some(Unfit::UnderMachine(least)),
        () if less(length, figures.square) < nm(figures.min_piece) => Some(Unfit::TooShort),
        () => None,
    }
}

/// One part from one board, or from a stick that has its section already.
pub(super) fn unfit_part(part: &Part, figures: &Figures, (sides, by_length): ([Length; 3], bool)) -> Option<Unfit> {
    if by_length {
        return unfit_stick(part, figures, sides);
    }
    let [thickness, width, length] = sides;
    let [thick, wide, long] = [0, 1, 2].map(|nth: usize| {
        let side = |sides: &[Length; 3]| sides.get(nth).map_or(0, |side| nm(*side));
        side(&part.size).saturating_add(side(&back(figures.allow)))
    });
    // The edges of what a part takes the whole width of are planed, not trimmed off.
    let narrow = less(width, figures.edge_trim) < wide.min(nm(figures.strip_min)) && nm(width) < wide;
    let least = figures.machines.plane.max(figures.machines.rip);
    match () {
        () if nm(thickness) < thick => Some(Unfit::TooThin),
        () if narrow => Some(Unfit::TooNarrow),
        () if length < least => Some(Unfit::UnderMachine(least)),
        () if less(length, figures.end_trim) < long => Some(Unfit::TooShort),
        () => None,
    }
}

/// Of a pile of a parts plan, by its place, that gives strips alone and no part is glued up of them: the part it comes nearest to, and how
/// much it is too narrow for it. Nothing where some part comes out of it.
pub fn too_narrow(given: &Given, place: usize) -> Option<(&str, Length)> {
    let (Wish::Parts(list), Some(source)) = (&given.ready.wish, given.ready.sources.get(place)) else { return None };
    let figures = &given.ready.figures;
    let [thickness, width, length] = source.size;
    let [over_thick, over_wide, over_long] = back(figures.allow).map(nm);
    let lacks = |part: &Wanted| {
        let [thick, wide, long] = part.size.map(nm);
        let of_it = part.wood.is_none() || part.wood == source.stack.wood;
        let is_long = long.saturating_add(over_long) <= less(length, figures.end_trim);
        let fits = of_it && is_long && thick.saturating_add(over_thick) <= nm(thickness);
        let by = wide.saturating_add(over_wide).saturating_sub(nm(width));
        fits.then_some(if part.glue { 0 } else { by.max(0) })
    };
    let all = list.parts.iter().filter_map(|part| Some((part.name.as_str(), lacks(part)?)));
    let (part, by) = all.min_by_key(|(_, by)| *by).filter(|(_, by)| 0 < *by)?;
    Some((part, Length::nm(by).ok()?))
}

/// As [`unfit_part`], of a stick, either way round.
fn unfit_stick(part: &Part, figures: &Figures, [thickness, width, length]: [Length; 3]) -> Option<Unfit> {
    let [_, wide, thick] = figures.allow;
    let [low, high] = of_stick([part.size[0], part.size[1]], [thick, wide]);
    match () {
        () if !is_enough(thickness.min(width), low) => Some(Unfit::TooThin),
        () if !is_enough(thickness.max(width), high) => Some(Unfit::TooNarrow),
        () if length < figures.machines.plane => Some(Unfit::UnderMachine(figures.machines.plane)),
        () if less(length, figures.end_trim) < nm(part.size[2]) => Some(Unfit::TooShort),
        () => None,
    }
}
