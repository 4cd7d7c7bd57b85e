//! The problem in its own small figures: lengths over their greatest common measure, boards alike put together.

use super::problem::{Part, Problem};

/// Boards that are alike for planning.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Kind {
    /// Rough length.
    pub low: i64,
    /// Trimmed.
    pub long: i64,
    pub wide: i64,
    /// As wide as the widest part that takes the whole width.
    pub whole: i64,
    /// Cost of one unit of length.
    pub rate: i64,
    pub count: i64,
    /// By their place in the problem.
    pub piles: Vec<usize>,
    pub may: Vec<bool>,
}

impl Kind {
    /// So much of the trimmed width a piece takes: all of it where it takes the whole width, so that nothing lies beside it.
    pub(super) fn across(&self, wide: i64) -> i64 {
        wide.min(self.wide)
    }

    fn sizes(&self) -> [i64; 5] {
        [self.low, self.long, self.wide, self.whole, self.rate]
    }
}

/// A part as it is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Blank {
    pub long: i64,
    pub wide: i64,
    pub glue: bool,
    /// Glued: how wide its strips must be together, each less two glued edges.
    pub need: i64,
    pub each: i64,
    /// What one finished part comes to, in units of cost.
    pub weight: i64,
}

#[derive(Clone, Debug)]
pub(super) struct Stock {
    /// Units of the problem in one of these.
    pub measure: i64,
    pub kerf: i64,
    /// Off both glued edges of a strip.
    pub joint: i64,
    pub strip_min: i64,
    pub plane_min: i64,
    pub rip_min: i64,
    pub keep_min: i64,
    pub kinds: Vec<Kind>,
    pub parts: Vec<Blank>,
    /// Volume of one unit of cost, in the problem's units.
    pub unit: i128,
    pub sets: Option<i64>,
}

/// Where the measure is coarse: to what can surely be cut, or to what nothing can pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Rounding {
    Safe,
    Free,
}

/// No board costs more than this.
const COST_MOST: i128 = 1 << 32;

pub(super) fn common(one: i128, other: i128) -> i128 {
    let (mut one, mut other) = (one.unsigned_abs(), other.unsigned_abs());
    while let Some(rest) = one.checked_rem(other) {
        (one, other) = (other, rest);
    }
    i128::try_from(one).unwrap_or(1)
}

fn down(size: i64, by: i64) -> i64 {
    size.div_euclid(by.max(1))
}

fn up(size: i64, by: i64) -> i64 {
    down(size.saturating_add(by.saturating_sub(1)), by)
}

pub(super) fn trimmed(size: i64, trim: i64) -> i64 {
    size.saturating_sub(trim.saturating_mul(2))
}

/// Length and width of the blank of a part.
pub(super) fn blank(problem: &Problem, part: &Part) -> [i64; 2] {
    [part.length.saturating_add(problem.allow.length), part.width.saturating_add(problem.allow.width)]
}

/// What all lengths and widths of a problem are whole multiples of.
pub(super) fn measure(problem: &Problem) -> i64 {
    let p = problem;
    // Joints come in twos: a strip has one at each edge.
    let mut all = vec![p.kerf, p.joint.saturating_mul(2), p.strip_min, p.plane_min, p.rip_min, p.keep_min];
    for (nth, pile) in p.piles.iter().enumerate() {
        all.extend([pile.length, trimmed(pile.length, p.end_trim), p.trimmed(nth), p.wide(nth)]);
    }
    all.extend(p.parts.iter().flat_map(|part| blank(p, part)));
    let all = all.into_iter().fold(0, |measure, size| common(measure, i128::from(size)));
    i64::try_from(all).unwrap_or(1).max(1)
}

/// Whether a part may be cut from a pile: by wood, wish and thickness.
fn may(problem: &Problem, part: &Part, pile: usize) -> bool {
    let thick = part.thickness.saturating_add(problem.allow.thickness);
    let fits = problem.piles.get(pile).is_some_and(|pile| thick <= pile.thickness);
    fits && part.piles.as_ref().is_none_or(|piles| piles.contains(&pile))
}

impl Stock {
    pub(super) fn of(problem: &Problem, measure: i64, rounding: Rounding) -> Stock {
        let safe = rounding == Rounding::Safe;
        let short = |size: i64| if safe { down(size, measure) } else { up(size, measure) };
        let size = |size: i64| if safe { up(size, measure) } else { down(size, measure) };
        let thick = |pile: &super::problem::Pile| i128::from(pile.width).saturating_mul(i128::from(pile.thickness));
        let face = problem.piles.iter().map(thick).fold(0, common).max(1);
        let dear = problem
            .piles
            .iter()
            .map(|pile| thick(pile).saturating_mul(i128::from(down(pile.length, measure).max(1))).checked_div(face).unwrap_or(0));
        let coarse = dear.max().unwrap_or(1).checked_div(COST_MOST).unwrap_or(0).saturating_add(1);
        let per_length = face.saturating_mul(coarse);
        let unit = per_length.saturating_mul(i128::from(measure));
        let joint = size(problem.joint.saturating_mul(2));
        let parts = problem.parts.iter().map(|part| {
            let [length, width] = blank(problem, part);
            let volume = [part.length, part.width, part.thickness].into_iter().map(i128::from).fold(1, i128::saturating_mul);
            let (long, wide) = (size(length).max(1), size(width).max(1));
            let weight = i64::try_from(volume.checked_div(unit).unwrap_or(0)).unwrap_or(i64::MAX).saturating_add(1);
            Blank { long, wide, glue: part.glue, need: wide.saturating_sub(joint).max(1), each: part.per_set.max(1), weight }
        });
        let mut stock = Stock {
            measure,
            kerf: size(problem.kerf),
            joint,
            strip_min: size(problem.strip_min).max(1),
            plane_min: size(problem.plane_min),
            rip_min: size(problem.rip_min),
            keep_min: size(problem.keep_min),
            parts: parts.collect(),
            kinds: vec![],
            unit,
            sets: problem.sets,
        };
        for (nth, pile) in problem.piles.iter().enumerate() {
            let kind = Kind {
                low: down(pile.length, measure),
                long: short(trimmed(pile.length, problem.end_trim)),
                wide: short(problem.trimmed(nth)),
                whole: short(problem.wide(nth)),
                rate: i64::try_from(thick(pile).checked_div(per_length).unwrap_or(0)).unwrap_or(i64::MAX),
                count: pile.count,
                piles: vec![nth],
                may: vec![],
            };
            stock.take(problem, kind);
        }
        stock
    }

    /// Puts a pile to those that are alike; what gives no part at all is left out.
    fn take(&mut self, problem: &Problem, mut kind: Kind) {
        let nth = kind.piles.first().copied().unwrap_or(0);
        kind.may = problem.parts.iter().zip(&self.parts).map(|(part, blank)| may(problem, part, nth) && self.fits(blank, &kind)).collect();
        kind.wide = kind.wide.max(1);
        if kind.count < 1 || kind.long < self.plane_min.max(1) || kind.whole < 1 || !kind.may.contains(&true) {
            return;
        }
        let alike = |k: &&mut Kind| (k.sizes(), &k.may) == (kind.sizes(), &kind.may);
        match self.kinds.iter_mut().find(alike) {
            Some(own) => {
                own.count = own.count.saturating_add(kind.count);
                own.piles.push(nth);
            }
            None => self.kinds.push(kind),
        }
    }

    fn fits(&self, part: &Blank, kind: &Kind) -> bool {
        let wide = if part.glue { self.strip_min.max(1) <= kind.wide } else { part.wide <= kind.whole };
        part.long <= kind.long && wide && self.rip_min <= kind.long
    }

    /// What goes back to the rack behind a stretch.
    pub(super) fn rest(&self, kind: &Kind, stretch: i64) -> i64 {
        let rest = kind.long.saturating_sub(stretch).saturating_sub(self.kerf);
        if stretch < kind.long && 0 < self.keep_min && self.keep_min <= rest { rest } else { 0 }
    }

    pub(super) fn cost(&self, kind: &Kind, stretch: i64) -> i64 {
        kind.low.saturating_sub(self.rest(kind, stretch)).saturating_mul(kind.rate)
    }

    /// Width units of a strip towards its part.
    pub(super) fn units(&self, wide: i64) -> i64 {
        wide.saturating_sub(self.joint)
    }
}
