//! A parts list from boards: which pile each part may come from, and the problem of them all.

use super::{Bench, Given, Source, Unfit, WhyNot, in_common, lettered, named};
use crate::ledger::fold::Part;
use crate::plan::Asked;
use crate::plan::parts::problem::{self, Allow, Problem};
use crate::quantity::{Count, Length};

/// Whether a part may come from these pieces.
pub(super) type Takes = fn(&Bench, &Part, &Source) -> Result<(), Unfit>;

fn nm(length: Length) -> i64 {
    length.as_nm()
}

/// A part with what is added for final sizing: thickness, width, length.
pub(super) fn blank(bench: &Bench, part: &Part) -> [i64; 3] {
    let ([thickness, width, length], [long, wide, thick]) = (part.size.map(nm), bench.saw.over.map(nm));
    [thickness.saturating_add(thick), width.saturating_add(wide), length.saturating_add(long)]
}

pub(super) fn right_wood(part: &Part, source: &Source) -> bool {
    part.wood.is_none() || part.wood == source.pile.wood
}

/// The sides of a piece without what is trimmed off: thickness, width, length.
fn net(bench: &Bench, source: &Source) -> Option<[i64; 3]> {
    let pile = &source.pile;
    let off = |side: Length, trim: Length| nm(side).saturating_sub(nm(trim).saturating_mul(2));
    Some([nm(pile.thickness?), off(pile.width?, bench.saw.edge_trim), off(pile.length?, bench.saw.end_trim)])
}

/// Of the right wood, thick and long enough; a part may be glued up across.
pub(super) fn takes(bench: &Bench, part: &Part, source: &Source) -> Result<(), Unfit> {
    let net = net(bench, source).ok_or(Unfit::SizeMissing)?;
    let ([thick, _, long], [there, wide, length]) = (blank(bench, part), net);
    let least = bench.planed.max(bench.ripped);
    match () {
        () if !right_wood(part, source) => Err(Unfit::NoPart),
        () if there < thick => Err(Unfit::TooThin),
        () if wide < nm(bench.saw.strip).min(blank(bench, part)[1]) => Err(Unfit::TooNarrow),
        () if length < nm(least) => Err(Unfit::UnderMachine(least)),
        () if length < long => Err(Unfit::TooShort),
        () => Ok(()),
    }
}

/// Why no part may come from these pieces: the reason of the part that is nearest to it.
pub(super) fn unfit(bench: &Bench, source: &Source, takes: Takes) -> Option<Unfit> {
    let mut why = Some(Unfit::NoPart);
    for part in &bench.parts {
        match takes(bench, part, source) {
            Ok(()) => return None,
            Err(Unfit::NoPart) => {}
            Err(other) => why = Some(other),
        }
    }
    why
}

/// For each part the piles it may come from, by their places.
pub(super) fn places(bench: &Bench, sources: &[Source], takes: Takes) -> Result<Vec<Vec<usize>>, WhyNot> {
    if bench.parts.is_empty() {
        return Err(WhyNot::NoParts);
    }
    let of = |part: &Part| {
        let fit = sources.iter().enumerate().filter(|(_, source)| takes(bench, part, source).is_ok()).map(|(place, _)| place);
        let fit: Vec<usize> = fit.collect();
        if fit.is_empty() { Err(WhyNot::NoneForPart(part.name.clone())) } else { Ok(fit) }
    };
    bench.parts.iter().map(of).collect()
}

pub(super) fn given(sets: Option<Count>, bench: Bench, sources: Vec<Source>) -> Result<Given, WhyNot> {
    let places = places(&bench, &sources, takes)?;
    let widest = |piles: &[usize]| piles.iter().filter_map(|at| sources.get(*at)).filter_map(|source| net(&bench, source)).map(|net| net[1]).max();
    let part = |(place, (part, piles)): (usize, (&Part, Vec<usize>))| {
        let [thickness, width, length] = part.size.map(nm);
        // Wider than every board it may come from: it is glued up of strips. Ours.
        let glue = widest(&piles) < Some(blank(&bench, part)[1]);
        problem::Part { id: named(place), per_set: i64::from(part.n), length, width, thickness, glue, piles: Some(piles) }
    };
    let parts: Vec<problem::Part> = bench.parts.iter().zip(places).enumerate().map(part).collect();
    let from = lettered(sources, |_| 1);
    let (saw, [long, wide, thick]) = (bench.saw, bench.saw.over.map(nm));
    let pile = |(place, from): (usize, &super::From)| {
        let side = |side: Option<Length>| side.map_or(0, nm);
        let pile = &from.source.pile;
        let (length, width, thickness) = (side(pile.length), side(pile.width), side(pile.thickness));
        problem::Pile { id: named(place), count: i64::from(from.source.n), length, width, thickness }
    };
    let mut problem = Problem {
        sets: sets.map(i64::from),
        kerf: nm(saw.kerf),
        end_trim: nm(saw.end_trim),
        edge_trim: nm(saw.edge_trim),
        allow: Allow { length: long, width: wide, thickness: thick },
        joint: nm(saw.joint),
        strip_min: nm(saw.strip),
        plane_min: nm(bench.planed),
        rip_min: nm(bench.ripped),
        keep_min: nm(saw.keep),
        piles: from.iter().enumerate().map(pile).collect(),
        parts,
    };
    let unit = unit(&mut problem);
    Ok(Given::of(bench, Asked::Parts(problem), unit, from))
}

fn unit(problem: &mut Problem) -> Length {
    let Problem { kerf, end_trim, edge_trim, allow, joint, strip_min, plane_min, rip_min, keep_min, piles, parts, .. } = problem;
    let Allow { length, width, thickness } = allow;
    let piles = piles.iter_mut().flat_map(|pile| [&mut pile.length, &mut pile.width, &mut pile.thickness]);
    let sides = piles.chain(parts.iter_mut().flat_map(|part| [&mut part.length, &mut part.width, &mut part.thickness])).collect();
    in_common([kerf, end_trim, edge_trim, length, width, thickness, joint, strip_min, plane_min, rip_min, keep_min], sides)
}
