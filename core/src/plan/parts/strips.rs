//! How wide glue strips are cut, and which go together.

use super::cut::{Band, Cut, Pieces, Strip};
use super::plan::First;
use super::stock::Stock;
use super::sums::{NONE, Sums};
use crate::quantity::Set;

/// So many widths for one part at most; and for all parts together, but for a few each.
const WIDTHS_MOST: usize = 44;
const WIDTHS_IN_ALL: usize = 88;
const WIDTHS_FEW: usize = 4;
/// So many widths on the way to a part at most.
const STATES_MOST: usize = 4_000;

/// Where strips may have any width: the least width of each glued part.
pub(super) fn least(stock: &Stock) -> Vec<Strip> {
    let glued = stock.parts.iter().enumerate().filter(|(_, part)| part.glue);
    glued.map(|(part, _)| Strip { part, wide: stock.strip_min }).collect()
}

/// The widths worth cutting: what boards leave beside fixed parts, and what completes such strips to a part.
pub(super) fn worthwhile(stock: &Stock) -> Vec<Strip> {
    some(stock, WIDTHS_IN_ALL)
}

/// The first so many of these, shared among the parts.
pub(super) fn some(stock: &Stock, in_all: usize) -> Vec<Strip> {
    let glued: Vec<usize> = stock.parts.iter().enumerate().filter(|(_, part)| part.glue).map(|(part, _)| part).collect();
    let most = in_all.checked_div(glued.len()).unwrap_or(0).clamp(WIDTHS_FEW, WIDTHS_MOST);
    glued.into_iter().flat_map(|part| of_part(stock, part, most).into_iter().map(move |wide| Strip { part, wide })).collect()
}

struct Widths {
    most: usize,
    least: i64,
    need: i64,
    units: Vec<i64>,
    known: Set<i64>,
}

impl Widths {
    /// A strip of so many width units; one that makes the part alone is as wide as it must be.
    fn add(&mut self, units: i64) {
        let units = units.min(self.need.max(self.least));
        if self.least <= units && self.units.len() < self.most && self.known.insert(units) {
            self.units.push(units);
        }
    }
}

fn of_part(stock: &Stock, nth: usize, most: usize) -> Vec<i64> {
    let Some(part) = stock.parts.get(nth) else { return vec![] };
    let mut widths = Widths { most, least: stock.units(stock.strip_min).max(1), need: part.need, units: vec![], known: Set::new() };
    let kinds: Vec<_> = stock.kinds.iter().filter(|kind| kind.may.get(nth) == Some(&true)).collect();
    let full: Vec<i64> = kinds.iter().map(|kind| stock.units(kind.wide)).collect();
    full.iter().for_each(|units| widths.add(*units));
    for parts in 1..=6_i64 {
        widths.add(part.need.saturating_add(parts).saturating_sub(1).checked_div(parts).unwrap_or(0));
    }
    complete(&mut widths, &full);
    for kind in &kinds {
        let step = |part: &super::stock::Blank, may: &bool| if *may && !part.glue { part.wide.saturating_add(stock.kerf) } else { 0 };
        let steps: Vec<i64> = stock.parts.iter().zip(&kind.may).map(|(part, may)| step(part, may)).collect();
        let beside = Sums::of(&steps, kind.wide, 12).map(|sums| sums.fills).unwrap_or_default();
        beside.iter().for_each(|fill| widths.add(stock.units(kind.wide.saturating_sub(*fill))));
    }
    let beside = widths.units.clone();
    for kind in &kinds {
        // what a board leaves beside a strip, and beside two
        for units in &beside {
            let strip = units.saturating_add(stock.joint).saturating_add(stock.kerf);
            widths.add(stock.units(kind.wide.saturating_sub(strip)));
        }
    }
    let all = widths.units.clone();
    complete(&mut widths, &all);
    widths.units.sort_unstable();
    widths.units.into_iter().map(|units| units.saturating_add(stock.joint)).collect()
}

/// What completes strips of these widths to a part.
fn complete(widths: &mut Widths, units: &[i64]) {
    for own in units {
        for many in 1..=4 {
            widths.add(widths.need.saturating_sub(own.saturating_mul(many)));
        }
    }
    for (nth, own) in units.iter().enumerate() {
        for other in units.iter().skip(nth) {
            widths.add(widths.need.saturating_sub(*own).saturating_sub(*other));
        }
    }
}

/// A cut whose strips have any width, with the next smaller widths that are planned with.
pub(super) fn narrowed(stock: &Stock, strips: &[Strip], cut: &Cut) -> Cut {
    let mut cut = cut.clone();
    let glued = |part: usize| stock.parts.get(part).is_some_and(|part| part.glue);
    for piece in cut.bands.iter_mut().flat_map(|band| &mut band.pieces).filter(|piece| glued(piece.part)) {
        let within = strips.iter().filter(|strip| strip.part == piece.part && strip.wide <= piece.wide);
        match within.map(|strip| strip.wide).max() {
            Some(wide) => piece.wide = wide,
            None => piece.many = 0,
        }
    }
    cut.without(stock, strips, &[])
}

/// For each width a way to make its part that has it, with as little too much as can be.
pub(super) fn starters(stock: &Stock, strips: &[Strip]) -> Vec<(usize, Vec<(usize, i64)>)> {
    let prices: Vec<i64> = strips.iter().map(|strip| stock.units(strip.wide).saturating_mul(1000).saturating_add(1)).collect();
    let ways = ways(stock, strips);
    let need = |part: usize| stock.parts.get(part).map_or(0, |part| part.need);
    let reached: Vec<Reached> = ways.iter().map(|way| Reached::of(way, need(way.part), &prices)).collect();
    let one = |(nth, strip): (usize, &Strip)| {
        let way = reached.iter().find(|reached| reached.way.part == strip.part)?;
        let left = need(strip.part).saturating_sub(stock.units(strip.wide));
        let mut used = if left <= 0 { vec![] } else { way.cheapest(left)?.1 };
        match used.iter_mut().find(|own| own.0 == nth) {
            Some(own) => own.1 = own.1.saturating_add(1),
            None => used.push((nth, 1)),
        }
        used.sort_unstable();
        Some((strip.part, used))
    };
    strips.iter().enumerate().filter_map(one).collect()
}

/// Boards ripped into strips alone: one of each width, and beside it as wide ones as still fit.
pub(super) fn ripped(stock: &Stock, strips: &[Strip]) -> Vec<Cut> {
    let mut cuts = vec![];
    for (nth, kind) in stock.kinds.iter().enumerate().filter(|(_, kind)| stock.rip_min <= kind.long) {
        for strip in strips.iter().filter(|strip| kind.may.get(strip.part) == Some(&true)) {
            let long = stock.parts.get(strip.part).map_or(i64::MAX, |part| part.long).saturating_add(stock.kerf);
            let many = kind.long.saturating_add(stock.kerf).checked_div(long).unwrap_or(0);
            let (mut left, mut next, mut bands) = (kind.wide, Some(strip.wide).filter(|wide| *wide <= kind.wide), vec![]);
            while let Some(wide) = next {
                bands.push(Band { size: wide, pieces: vec![Pieces { part: strip.part, wide, many }] });
                left = left.saturating_sub(wide).saturating_sub(stock.kerf);
                next = strips.iter().filter(|own| own.part == strip.part && own.wide <= left).map(|own| own.wide).max();
            }
            let cut = Cut { kind: nth, first: First::Rip, stretch: kind.long, bands };
            cuts.push(cut.without(stock, strips, &[]));
        }
    }
    cuts
}

/// The widths of one part, and what they add up to on the way to it.
pub(super) struct Way {
    pub part: usize,
    /// Strip, and width units.
    own: Vec<(usize, i64)>,
    sums: Sums,
}

/// For each glued part the widths that can be put together.
pub(super) fn ways(stock: &Stock, strips: &[Strip]) -> Vec<Way> {
    let glued = stock.parts.iter().enumerate().filter(|(_, part)| part.glue);
    let way = |(part, blank): (usize, &super::stock::Blank)| {
        let of_part = strips.iter().enumerate().filter(|(_, strip)| strip.part == part);
        let mut own: Vec<(usize, i64)> = of_part.map(|(nth, strip)| (nth, stock.units(strip.wide))).collect();
        loop {
            let units: Vec<i64> = own.iter().map(|(_, units)| *units).collect();
            match Sums::of(&units, blank.need.saturating_sub(1), STATES_MOST) {
                Some(sums) => return Way { part, own, sums },
                None => drop(own.drain(..own.len().div_ceil(4))),
            }
        }
    };
    glued.map(way).collect()
}

/// The cheapest strips that are as wide as is needed, at a price for each strip: how much, and which.
pub(super) fn cheapest(way: &Way, need: i64, prices: &[i64]) -> Option<(i64, Vec<(usize, i64)>)> {
    Reached::of(way, need, prices).cheapest(need)
}

/// The widths that a way reaches, at a price for each strip: all that is asked of it up to some width is answered from one list.
struct Reached<'w> {
    way: &'w Way,
    /// Strip, width units, price.
    own: Vec<(usize, i64, i64)>,
    /// At each width the least it costs, and the last strip.
    least: Vec<(i64, usize)>,
}

impl Reached<'_> {
    fn of<'w>(way: &'w Way, most: i64, prices: &[i64]) -> Reached<'w> {
        let Way { own, sums, .. } = way;
        let own: Vec<(usize, i64, i64)> = own.iter().map(|(nth, units)| (*nth, *units, prices.get(*nth).copied().unwrap_or(0))).collect();
        let mut least: Vec<(i64, usize)> = vec![(0, 0)];
        for place in 1..sums.fills.partition_point(|fill| *fill < most) {
            let before = |nth: usize| sums.from(place).get(nth).filter(|from| **from != NONE);
            let of = |(nth, (_, _, price)): (usize, &(usize, i64, i64))| {
                Some((least.get(*before(nth)? as usize)?.0.saturating_add(*price), nth))
            };
            let Some(found) = own.iter().enumerate().filter_map(of).min() else { break };
            least.push(found);
        }
        Reached { way, own, least }
    }

    /// As wide as is needed, which is no wider than all this was made for.
    fn cheapest(&self, need: i64) -> Option<(i64, Vec<(usize, i64)>)> {
        let Reached { way: Way { sums, .. }, own, least } = self;
        let narrower = sums.fills.partition_point(|fill| *fill < need).max(1);
        let on_the_way = least.get(..narrower)?;
        let ends = sums.fills.iter().zip(on_the_way).enumerate().flat_map(|(place, (fill, (cost, _)))| {
            let last = own.iter().enumerate().filter(move |(_, (_, units, _))| need <= fill.saturating_add(*units));
            last.map(move |(nth, (_, _, price))| (cost.saturating_add(*price), place, nth))
        });
        let (cost, mut place, mut last) = ends.min()?;
        let mut used: Vec<(usize, i64)> = vec![];
        loop {
            let (nth, ..) = own.get(last)?;
            match used.iter_mut().find(|own| own.0 == *nth) {
                Some(own) => own.1 = own.1.saturating_add(1),
                None => used.push((*nth, 1)),
            }
            if place == 0 {
                used.sort_unstable();
                return Some((cost, used));
            }
            last = least.get(place)?.1;
            place = *sums.from(place).get(last)? as usize;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Strips of 30, 45 and 70 for a part of 200, at prices of their own: what is answered from the list of all of it is what a list made for it says.
    #[test]
    fn one_list_answers_every_width() {
        let own = vec![(0, 30), (1, 45), (2, 70)];
        let sums = Sums::of(&[30, 45, 70], 199, STATES_MOST).unwrap();
        let (way, prices) = (Way { part: 0, own, sums }, [31, 44, 70]);
        let all = Reached::of(&way, 200, &prices);
        for need in 1..=200 {
            assert_eq!(all.cheapest(need), cheapest(&way, need, &prices), "{need}");
        }
        assert_eq!(all.cheapest(200).map(|(cost, _)| cost), Some(202), "70 and three of 45, or two of 70 and two of 30");
    }
}
