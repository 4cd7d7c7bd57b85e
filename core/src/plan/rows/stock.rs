//! The strips as the planner sees them: in the largest common unit, alike ones put together, what no machine takes left out.
//!
//! Lengths are whole numbers held in floats, which hold every sum of the search exactly (a row is far below 2^53).

use super::problem::Problem;
use crate::plan::common;

/// Strips of one length.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Kind {
    /// As it lies on the rack.
    pub low: f64,
    /// Squared at both ends.
    pub long: f64,
    pub count: u32,
    /// The piles it stands for, by their place in the problem.
    pub own: Vec<usize>,
}

#[derive(Clone, Debug, PartialEq)]
pub(super) struct Stock {
    /// The longest first.
    pub kinds: Vec<Kind>,
    pub panel: f64,
    pub square: f64,
    pub kerf: f64,
    /// The least piece at an end of a row.
    pub end: f64,
    /// The least piece anywhere.
    pub least: f64,
    pub stagger: f64,
    pub keep: f64,
    pub split: bool,
    /// No more rows than these: the wish, or what the strips are long together.
    pub rows: usize,
    /// The largest unit in which all is whole.
    pub unit: i64,
}

impl Stock {
    pub(super) fn of(problem: &Problem) -> Stock {
        let unit = unit(problem);
        let whole = |length: i64| length.checked_div(unit).unwrap_or(length) as f64;
        let kinds = kinds(problem, &whole);
        let long: f64 = kinds.iter().map(|kind| kind.long * f64::from(kind.count)).sum();
        let panel = whole(problem.length);
        let most = problem.rows.map_or(f64::MAX, |rows| rows as f64);
        let [square, kerf, stagger, keep] = [problem.square, problem.kerf, problem.stagger, problem.keep_min].map(whole);
        let (end, least) = (whole(problem.min_end).max(1.0), whole(problem.min_piece).max(1.0));
        let end = end.max(least);
        let apart = if panel - 2.0 * end < stagger { alone(&kinds, panel) * 2.0 + 1.0 } else { f64::MAX };
        let rows = (long / panel).floor().min(most).min(apart) as usize;
        Stock { kinds, panel, square, kerf, end, least, stagger, keep, split: problem.split, rows, unit }
    }

    pub(super) fn kind(&self, nth: u8) -> &Kind {
        static NONE: Kind = Kind { low: 0.0, long: 0.0, count: 0, own: Vec::new() };
        self.kinds.get(usize::from(nth)).unwrap_or(&NONE)
    }

    pub(super) fn long(&self, kind: u8) -> f64 {
        self.kind(kind).long
    }

    pub(super) fn counts(&self) -> Vec<u32> {
        self.kinds.iter().map(|kind| kind.count).collect()
    }

    /// What goes back of a strip that has `left` behind its last piece.
    pub(super) fn returned(&self, left: f64) -> f64 {
        let rest = left - self.kerf;
        if 0.0 < rest && self.keep <= rest { rest } else { 0.0 }
    }
}

/// The largest unit in which all lengths are whole.
fn unit(problem: &Problem) -> i64 {
    let rest = [problem.square, problem.kerf, problem.min_end, problem.min_piece, problem.stagger, problem.keep_min];
    let piles = problem.piles.iter().map(|pile| pile.length);
    rest.into_iter().chain(piles).fold(problem.length, common).max(1)
}

/// How many rows at most have no joint: where joints always clash, every other row must be one of these.
fn alone(kinds: &[Kind], panel: f64) -> f64 {
    kinds.iter().map(|kind| f64::from(kind.count) * (kind.long / panel).floor()).sum()
}

fn kinds(problem: &Problem, whole: &dyn Fn(i64) -> f64) -> Vec<Kind> {
    let mut all: Vec<Kind> = vec![];
    for (nth, pile) in problem.piles.iter().enumerate() {
        let low = whole(pile.length);
        let long = low - 2.0 * whole(problem.square);
        let count = u32::try_from(pile.count).unwrap_or(0);
        if pile.length < problem.machine_min || count == 0 || long < whole(problem.min_piece).max(1.0) {
            continue;
        }
        match all.iter_mut().find(|kind| kind.low == low) {
            Some(kind) => {
                kind.count = kind.count.saturating_add(count);
                kind.own.push(nth);
            }
            None => all.push(Kind { low, long, count, own: vec![nth] }),
        }
    }
    all.sort_by(|a, b| b.low.total_cmp(&a.low));
    all
}
