//! The problem as the planner sees it: in its largest common unit, sticks and parts that are alike put together, what no machine takes left out.

use super::problem::Problem;
use crate::plan::common;

/// Parts alike: of one length, from the same piles.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Part {
    /// With the kerf behind it.
    pub size: i64,
    pub each: i64,
    /// The parts it stands for, by their place in the problem.
    pub own: Vec<usize>,
}

/// Sticks alike: of one length, for the same parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pile {
    pub count: i64,
    pub low: i64,
    /// What pieces with their kerfs may fill: the trimmed length and one kerf more.
    pub room: i64,
    /// Which of the parts may come from it.
    pub may: Vec<bool>,
    pub own: Vec<usize>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Stock {
    pub parts: Vec<Part>,
    pub piles: Vec<Pile>,
    pub kerf: i64,
    pub keep: i64,
    /// Cuts for the two trims.
    pub ends: i64,
    /// The largest unit in which all is whole.
    pub unit: i64,
    /// No more sets than these.
    pub sets: i64,
}

impl Stock {
    pub(super) fn of(problem: &Problem) -> Stock {
        let parts = parts(problem);
        let piles = piles(problem, &parts);
        let most = piles.iter().fold(0_i64, |sum, pile| sum.saturating_add(pile.count.saturating_mul(pile.room)));
        let least = parts.iter().fold(0_i64, |sum, part| sum.saturating_add(part.each.saturating_mul(part.size)));
        let sets = most.checked_div(least).unwrap_or(0).min(problem.sets.unwrap_or(i64::MAX));
        let ends = if 0 < problem.end_trim { 2 } else { 0 };
        let mut stock = Stock { parts, piles, kerf: problem.kerf, keep: problem.keep_min, ends, unit: 1, sets };
        stock.in_largest_unit();
        stock
    }

    /// What is consumed of a stick whose pieces and kerfs fill `used` of its room.
    pub(super) fn consumed(&self, pile: &Pile, used: i64) -> i64 {
        let behind = pile.room.saturating_sub(used).saturating_sub(self.kerf).max(0);
        if behind < self.keep { pile.low } else { pile.low.saturating_sub(behind) }
    }

    /// No plan that wastes no piece makes more cuts: the pieces, and three for each stick.
    pub(super) fn cuts_most(&self) -> i64 {
        let pieces = self.parts.iter().fold(0_i64, |sum, part| sum.saturating_add(part.each.saturating_mul(self.sets)));
        let sticks = self.piles.iter().fold(0_i64, |sum, pile| sum.saturating_add(pile.count)).min(pieces);
        pieces.saturating_add(sticks.saturating_mul(2))
    }

    /// What a unit of wood costs where a cut costs 1: more than all cuts together, as far as sums allow.
    pub(super) fn wood(&self) -> i64 {
        let long = self.piles.iter().fold(1_i64, |sum, pile| sum.saturating_add(pile.count.saturating_mul(pile.low)));
        let most = (1_i64 << 60).checked_div(long).unwrap_or(1).max(1);
        self.cuts_most().saturating_add(1).min(most)
    }

    fn in_largest_unit(&mut self) {
        let mut unit = self.kerf;
        self.parts.iter().for_each(|part| unit = common(unit, part.size));
        self.piles.iter().for_each(|pile| unit = common(common(unit, pile.low), pile.room));
        let unit = unit.max(1);
        let over = |length: &mut i64| *length = length.checked_div(unit).unwrap_or(*length);
        over(&mut self.kerf);
        self.keep = self.keep.checked_add(unit.saturating_sub(1)).and_then(|keep| keep.checked_div(unit)).unwrap_or(self.keep);
        self.parts.iter_mut().for_each(|part| over(&mut part.size));
        for pile in &mut self.piles {
            over(&mut pile.low);
            over(&mut pile.room);
        }
        self.unit = unit;
    }
}

fn parts(problem: &Problem) -> Vec<Part> {
    let mut all: Vec<Part> = vec![];
    for (nth, part) in problem.parts.iter().enumerate() {
        let size = part.length.saturating_add(problem.kerf);
        let like = |other: &&mut Part| {
            other
                .own
                .first()
                .and_then(|own| problem.parts.get(*own))
                .is_some_and(|other| other.length == part.length && other.piles == part.piles)
        };
        match all.iter_mut().find(like) {
            Some(other) => {
                other.each = other.each.saturating_add(part.per_set);
                other.own.push(nth);
            }
            None => all.push(Part { size, each: part.per_set, own: vec![nth] }),
        }
    }
    all.sort_by_key(|part| std::cmp::Reverse(part.size));
    all
}

fn piles(problem: &Problem, parts: &[Part]) -> Vec<Pile> {
    let mut all: Vec<Pile> = vec![];
    for (nth, pile) in problem.piles.iter().enumerate() {
        let room = pile.length.saturating_sub(problem.end_trim.saturating_mul(2)).saturating_add(problem.kerf);
        let allowed = |part: &Part| {
            part.own
                .first()
                .and_then(|own| problem.parts.get(*own))
                .is_some_and(|part| part.piles.as_ref().is_none_or(|piles| piles.contains(&nth)))
        };
        let may: Vec<bool> = parts.iter().map(allowed).collect();
        let fits = parts.iter().zip(&may).any(|(part, may)| *may && part.size <= room);
        if pile.length < problem.machine_min || pile.count == 0 || !fits {
            continue;
        }
        match all.iter_mut().find(|other| other.low == pile.length && other.may == may) {
            Some(other) => {
                other.count = other.count.saturating_add(pile.count);
                other.own.push(nth);
            }
            None => all.push(Pile { count: pile.count, low: pile.length, room, may, own: vec![nth] }),
        }
    }
    all
}
