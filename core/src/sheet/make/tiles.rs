//! A field of tiles of one size.

use super::{Bench, Given, Source, Tiles, Unfit, in_common, lettered, named};
use crate::plan::Asked;
use crate::plan::field::problem::{Allow, Mix, Pattern, Pile, Problem, Target};
use crate::quantity::Length;

/// No more layers than these are tried. Ours.
const LAYERS_MOST: i64 = 4;

fn nm(length: Length) -> i64 {
    length.as_nm()
}

pub(super) fn unfit(_: &Tiles, bench: &Bench, source: &Source) -> Option<Unfit> {
    let pile = &source.pile;
    let Some(((thickness, width), length)) = pile.thickness.zip(pile.width).zip(pile.length) else { return Some(Unfit::SizeMissing) };
    let [long, wide, thick] = bench.saw.over;
    match () {
        () if thickness <= thick => Some(Unfit::TooThin),
        () if width <= wide => Some(Unfit::TooNarrow),
        () if length < bench.planed => Some(Unfit::UnderMachine(bench.planed)),
        () if length <= long => Some(Unfit::TooShort),
        () => None,
    }
}

pub(super) fn given(tiles: &Tiles, bench: Bench, sources: Vec<Source>) -> Given {
    let from = lettered(sources, |_| 1);
    let saw = bench.saw;
    let pile = |(place, from): (usize, &super::From)| {
        let (source, side) = (&from.source, |side: Option<Length>| side.map_or(0, nm));
        let species = source.pile.wood.as_ref().map_or_else(String::new, |wood| wood.as_str().to_owned());
        let (length, width, thickness) = (side(source.pile.length), side(source.pile.width), side(source.pile.thickness));
        Pile { id: named(place), species, count: i64::from(source.n), length, width, thickness, density: 0 }
    };
    let [long, wide, thick] = saw.over.map(nm);
    let crossed = tiles.patterns.contains(&Pattern::Crossed);
    let target = |side: Length| Target { size: nm(side), tolerance: nm(tiles.tolerance) };
    let mut problem = Problem {
        unit: 1,
        patterns: tiles.patterns.clone(),
        mix: if tiles.two { vec![Mix::Single, Mix::Alternate] } else { vec![Mix::Single] },
        targets: tiles.sides.map(|side| side.map(target)),
        layers: [1, if tiles.sides[2].is_some() || crossed { LAYERS_MOST } else { 1 }],
        gap: 0,
        open: [0, if crossed { nm(saw.keep) } else { 0 }],
        overhang: if crossed { nm(tiles.tolerance) } else { 0 },
        kerf: nm(saw.kerf),
        allow: Allow { length: long, width: wide, thickness: thick },
        machine_min: nm(bench.planed),
        cut_min: nm(saw.piece),
        turn: true,
        piles: from.iter().enumerate().map(pile).collect(),
    };
    let unit = unit(&mut problem);
    problem.unit = nm(unit);
    Given::of(bench, Asked::Field(problem), unit, from)
}

fn unit(problem: &mut Problem) -> Length {
    let Problem { targets, open, overhang, kerf, allow, machine_min, cut_min, piles, .. } = problem;
    let Allow { length, width, thickness } = allow;
    let piles = piles.iter_mut().flat_map(|pile| [&mut pile.length, &mut pile.width, &mut pile.thickness]);
    let targets = targets.iter_mut().flatten().flat_map(|target| [&mut target.size, &mut target.tolerance]);
    let sides = piles.chain(targets).chain(open.iter_mut()).collect();
    in_common([overhang, kerf, length, width, thickness, machine_min, cut_min], sides)
}
