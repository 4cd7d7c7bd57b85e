//! Lengths from sticks: parts whose section a stick has already.

use super::listed::{blank, places, right_wood};
use super::{Bench, Given, Source, Unfit, WhyNot, in_common, lettered, named};
use crate::ledger::fold::Part;
use crate::plan::Asked;
use crate::plan::sticks::problem::{self, Problem};
use crate::quantity::{Count, Length};

fn nm(length: Length) -> i64 {
    length.as_nm()
}

/// Of the right wood, long enough, and large enough across, either way round.
pub(super) fn takes(bench: &Bench, part: &Part, source: &Source) -> Result<(), Unfit> {
    let pile = &source.pile;
    let ((thickness, width), length) = pile.thickness.zip(pile.width).zip(pile.length).ok_or(Unfit::SizeMissing)?;
    let [a, b, _] = blank(bench, part);
    let (there, wanted) = ([nm(thickness).min(nm(width)), nm(thickness).max(nm(width))], [a.min(b), a.max(b)]);
    let net = nm(length).saturating_sub(nm(bench.saw.end_trim).saturating_mul(2));
    match () {
        () if !right_wood(part, source) => Err(Unfit::NoPart),
        () if there[0] < wanted[0] => Err(Unfit::TooThin),
        () if there[1] < wanted[1] => Err(Unfit::TooNarrow),
        () if length < bench.planed => Err(Unfit::UnderMachine(bench.planed)),
        () if net < blank(bench, part)[2] => Err(Unfit::TooShort),
        () => Ok(()),
    }
}

pub(super) fn given(sets: Option<Count>, bench: Bench, sources: Vec<Source>) -> Result<Given, WhyNot> {
    let places = places(&bench, &sources, takes)?;
    let part = |(place, (part, piles)): (usize, (&Part, Vec<usize>))| {
        let (per_set, length) = (i64::from(part.n), blank(&bench, part)[2]);
        problem::Part { id: named(place), per_set, length, piles: Some(piles) }
    };
    let parts = bench.parts.iter().zip(places).enumerate().map(part).collect();
    let from = lettered(sources, |_| 1);
    let pile = |(place, from): (usize, &super::From)| {
        let length = from.source.pile.length.map_or(0, nm);
        problem::Pile { id: named(place), count: i64::from(from.source.n), length }
    };
    let saw = bench.saw;
    let mut problem = Problem {
        sets: sets.map(i64::from),
        kerf: nm(saw.kerf),
        end_trim: nm(saw.end_trim),
        machine_min: nm(bench.planed),
        keep_min: nm(saw.keep),
        piles: from.iter().enumerate().map(pile).collect(),
        parts,
    };
    let Problem { kerf, end_trim, machine_min, keep_min, piles, parts, .. } = &mut problem;
    let sides = piles.iter_mut().map(|pile| &mut pile.length).chain(parts.iter_mut().map(|part| &mut part.length)).collect();
    let unit = in_common([kerf, end_trim, machine_min, keep_min], sides);
    Ok(Given::of(bench, Asked::Sticks(problem), unit, from))
}
