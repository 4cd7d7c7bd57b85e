//! Sticks that are wider than a part cut of them: what is ripped off beside it before it is planed.

use super::off::{is_enough, of_stick};
use super::ready::{Ready, Source};
use super::wish::Wish;
use super::{CutLine, PlanSheet};
use crate::quantity::{Length, Listed};

/// How wide a piece of a stick is ripped, and what is left beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rip {
    /// The part it is for, by its place in the list.
    pub part: usize,
    /// With what is over for planing.
    pub wide: Length,
    /// One strip, a kerf less than the rest of the width. It is waste.
    pub beside: Length,
}

/// Of a part cut from a stick; nothing where no more than a kerf is over in width, which is planed off. Ours.
pub(super) fn of_part(ready: &Ready, source: &Source, part: usize) -> Option<Rip> {
    let Wish::Sticks(list) = &ready.wish else { return None };
    let [thick, wide, _] = list.parts.get(part)?.size;
    if thick == Length::ZERO || wide == Length::ZERO {
        return None;
    }
    let [_, over_wide, over_thick] = ready.figures.allow;
    let [_, high] = of_stick([thick, wide], [over_thick, over_wide]);
    let across = source.size[0].max(source.size[1]);
    let over = across.as_nm().checked_sub(high[1])?;
    let beside = over.checked_sub(ready.figures.kerf.as_nm())?;
    let is_ripped = 0 < beside && is_enough(across, high) && across.as_nm() != high[0];
    Some(Rip { part, wide: Length::nm(high[1]).ok()?, beside: Length::nm(beside).ok()? }).filter(|_| is_ripped)
}

/// How often the saw goes along such a stick: once where all its parts are ripped alike, else once for each that is.
pub(super) fn cuts(ready: &Ready, source: &Source, parts: &[usize]) -> i64 {
    let all = parts.iter().map(|part| of_part(ready, source, *part).map(|rip| rip.wide)).listed();
    let alike = all.first().is_some_and(|first| all.iter().all(|other| other == first));
    let n = all.iter().flatten().count();
    if alike { n.min(1) } else { n }.try_into().unwrap_or(i64::MAX)
}

impl PlanSheet {
    /// What is ripped of the sticks of a pile, once for each part.
    pub fn rips(&self, ready: &Ready, place: usize) -> Vec<Rip> {
        let Some(source) = ready.sources.get(place) else { return vec![] };
        let of_it = |line: &&CutLine| line.source == place;
        let mut parts = self.lines.iter().filter(of_it).flat_map(|line| line.pieces.iter().filter_map(|cut| cut.part)).listed();
        parts.sort_unstable();
        parts.dedup();
        parts.into_iter().filter_map(|part| of_part(ready, source, part)).listed()
    }
}
