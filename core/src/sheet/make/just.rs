//! A plan of sticks counts their length and not their section: a pile that has just the section of a part may do alone, with less wood. Told by laying its pieces out in sticks of that pile, the longest first, each in the first stick with room. Ours.

use super::Given;
use crate::plan::Asked;
use crate::plan::sticks::problem::Problem;
use crate::quantity::{Count, Length, Listed, Volume, order_by_key};
use crate::sheet::plan::wish::Wish;
use crate::sheet::plan::{Cut, PlanSheet};
use std::cmp::Reverse;

/// So many pieces of a pile would do alone for these parts, by their places, with less wood than a plan takes for them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Just {
    pub source: usize,
    pub parts: Vec<usize>,
    pub n: Count,
    pub volume: Volume,
}

/// The piles of which that is so.
pub fn of_less_wood(given: &Given, sheet: &PlanSheet) -> Vec<Just> {
    let Asked::Sticks(problem) = &given.ready.asked else { return vec![] };
    (0..given.sources.len()).filter_map(|place| instead(given, (problem, sheet), place)).listed()
}

fn instead(given: &Given, (problem, sheet): (&Problem, &PlanSheet), place: usize) -> Option<Just> {
    let parts = (0..problem.parts.len()).filter(|part| is_just(given, problem, (place, *part))).listed();
    let mut pieces: Vec<i64> = vec![];
    let mut takes = Volume::ZERO;
    let of_these = |cut: &Cut| cut.part.is_some_and(|part| parts.contains(&part));
    for line in sheet.lines.iter().filter(|line| line.pieces.iter().any(of_these)) {
        // What something else is cut of does not stay on the rack.
        line.pieces.iter().all(of_these).then_some(())?;
        let source = given.ready.sources.get(line.source)?;
        let [thickness, width, _] = source.size;
        // What goes back of them is not taken.
        let back = Volume::of(thickness, width, line.remainder.unwrap_or_default()).ok()?;
        takes = takes.plus(source.stack.volume().ok()?.less(back).times(Count::try_from(line.n).ok()?).ok()?).ok()?;
        for cut in &line.pieces {
            let length = problem.parts.get(cut.part?)?.length;
            let n = usize::try_from(line.n.checked_mul(cut.n)?).ok()?;
            pieces.extend(std::iter::repeat_n(length, n));
        }
    }
    let n = sticks(problem, place, pieces).filter(|n| 0 < *n)?;
    let volume = given.ready.sources.get(place)?.stack.volume().ok()?.times(n).ok()?;
    // What other parts are cut of is not free.
    let others = sheet.lines.iter().filter(|line| line.source == place && !line.pieces.iter().any(of_these));
    let others = others.fold(0_i64, |sum, line| sum.saturating_add(line.n));
    let is_there = i64::from(n).saturating_add(others) <= problem.piles.get(place)?.count;
    let parts = parts.into_iter().filter(|part| sheet.lines.iter().flat_map(|line| &line.pieces).any(|cut| cut.part == Some(*part)));
    (is_there && volume < takes).then(|| Just { source: place, parts: parts.listed(), n, volume })
}

/// The very section, either way round, and a wood that it may be of.
fn is_just(given: &Given, problem: &Problem, (place, part): (usize, usize)) -> bool {
    let Wish::Sticks(parts) = &given.ready.wish else { return false };
    let of = |size: [Length; 3]| (size[0].min(size[1]), size[0].max(size[1]));
    let sections = given.ready.sources.get(place).zip(parts.parts.get(part)).map(|(stick, part)| (of(stick.size), of(part.size)));
    let may = problem.parts.get(part).is_some_and(|part| part.piles.as_ref().is_none_or(|piles| piles.contains(&place)));
    may && sections.is_some_and(|(stick, part)| stick == part)
}

/// So many sticks of a pile give all of these; none where one is too short.
fn sticks(problem: &Problem, place: usize, mut pieces: Vec<i64>) -> Option<Count> {
    let pile = problem.piles.get(place).filter(|pile| problem.machine_min <= pile.length)?;
    // A kerf goes between two pieces: each takes one, and the stick has one more.
    let room = pile.length.checked_sub(problem.end_trim.checked_mul(2)?)?.checked_add(problem.kerf)?;
    order_by_key(&mut pieces, |piece| Reverse(*piece));
    let mut begun: Vec<i64> = vec![];
    for piece in pieces {
        let takes = piece.checked_add(problem.kerf).filter(|takes| *takes <= room)?;
        match begun.iter_mut().find(|left| takes <= **left) {
            Some(left) => *left = left.saturating_sub(takes),
            None => begun.push(room.saturating_sub(takes)),
        }
    }
    Count::try_from(begun.len()).ok()
}
