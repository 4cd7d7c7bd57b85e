//! Whether other patterns could do better is gone through beside the search, in a share of its steps.

use super::pattern::{Pattern, Patterns};
use super::planner::Planner;
use super::renew::Chosen;
use super::stock::Stock;
use crate::plan::branch::{Branch, Limit, Many, Of, Way};
use crate::plan::patience::Patience;

/// So many steps at least at a time; a quarter of what was spent in all.
const FIRST: u64 = 100;
/// Squares above these are no longer exact in floats.
const EXACT: i128 = 1 << 53;

/// How far it has come.
#[derive(Default)]
pub(super) struct Proving {
    branch: Option<Branch>,
    /// The least length lost is proven, and squares are gone through.
    by_squares: bool,
    /// Nothing more can be proven.
    is_over: bool,
    /// So many steps are to be spent before it goes on.
    waits: u64,
}

impl Planner<'_> {
    /// Goes on with it where it is time; a choice that would be better, if its rows can be laid.
    pub(super) fn prove(&mut self, patterns: &Patterns, rows: usize, patience: &mut Patience<'_>) -> Option<Chosen> {
        let listed = patterns.all.len().checked_div(2).unwrap_or(0) as u64;
        if self.proving.is_over || patience.steps() < self.proving.waits.max(listed) || self.best.plan.rows.len() < rows {
            return None;
        }
        let steps = patience.steps().checked_div(4).unwrap_or(0).max(FIRST);
        let until = patience.steps().saturating_add(steps);
        let mut better = None;
        while better.is_none() && !self.proving.is_over && !self.best.is_proven() && patience.steps() < until && !patience.is_over() {
            better = self.prove_more(patterns, rows, (until, patience));
        }
        self.proving.waits = patience.steps().saturating_add(patience.steps() >> 1);
        better
    }

    fn prove_more(&mut self, patterns: &Patterns, rows: usize, (until, patience): (u64, &mut Patience<'_>)) -> Option<Chosen> {
        let [lost, squares] = self.cost()?;
        let under = if self.proving.by_squares { squares } else { lost };
        let mut branch = match self.proving.branch.take() {
            Some(branch) if self.proving.by_squares || branch.under <= under => branch,
            Some(branch) => self.begun(branch.all, rows, [lost, squares])?,
            None => {
                let all = patterns.all.iter().enumerate().map(|of| way(self.stock, of)).collect();
                self.begun(all, rows, [lost, squares])?
            }
        };
        branch.under = branch.under.min(under);
        branch.go(until.saturating_sub(patience.steps()), patience);
        self.prove_to(branch.bound(), rows, patience);
        let best = branch.best.take();
        if branch.is_done() {
            let is_least = branch.bound() == lost && !self.proving.by_squares;
            self.proving.is_over = !is_least;
            if is_least {
                self.proving.by_squares = true;
                self.proving.branch = self.by_squares(branch.all, rows, [lost, squares]);
            }
        } else {
            self.proving.branch = Some(branch);
        }
        best.map(|best| self.chosen(patterns, best))
    }

    /// Length lost and squares of the best, in the common unit.
    fn cost(&self) -> Option<[i128; 2]> {
        let unit = i128::from(self.stock.unit);
        let [_, lost, squares] = *self.best.worth.as_slice() else { return None };
        Some([lost.checked_div(unit)?, squares.checked_div(unit.checked_mul(unit)?)?])
    }

    fn begun(&mut self, mut all: Vec<Way>, rows: usize, [lost, squares]: [i128; 2]) -> Option<Branch> {
        all.iter_mut().for_each(|way| way.cuts.clear());
        let mut branch = Branch::new(all, Many::Just(rows as i64), limits(self.stock), lost.saturating_add(1));
        branch.under = lost;
        self.proving.is_over = EXACT <= squares;
        if self.proving.is_over { None } else { Some(branch) }
    }

    /// What can be in a plan of the least length lost, by squares.
    fn by_squares(&self, mut all: Vec<Way>, rows: usize, [lost, squares]: [i128; 2]) -> Option<Branch> {
        for way in &mut all {
            std::mem::swap(&mut way.cost, &mut way.second);
            way.cuts.clear();
        }
        let mut limits = limits(self.stock);
        limits.push(Limit { of: Of::Second, least: 0, most: i64::try_from(lost).ok()? });
        Some(Branch::new(all, Many::Just(rows as i64), limits, squares))
    }

    fn prove_to(&mut self, least: i128, rows: usize, patience: &mut Patience<'_>) {
        let unit = i128::from(self.stock.unit);
        let lost = self.best.worth.get(1).copied().unwrap_or(0);
        let bound = match self.proving.by_squares {
            false => vec![rows as i128, least.saturating_mul(unit)],
            true => vec![rows as i128, lost, least.saturating_mul(unit).saturating_mul(unit)],
        };
        if self.best.bound.len() < bound.len() || self.best.bound < bound {
            self.proved(bound, patience);
        }
    }

    fn chosen(&self, patterns: &Patterns, best: Vec<(usize, i64)>) -> Chosen {
        let mut chosen = Chosen { taken: vec![], left: self.stock.counts() };
        for (nth, times) in best {
            let Some(pattern) = patterns.all.get(nth) else { continue };
            for _ in 0..times {
                if pattern.take(&mut chosen.left) {
                    chosen.taken.push(pattern.clone());
                }
            }
        }
        chosen
    }
}

/// A pattern as one way among others, by the length it loses.
pub(super) fn way(stock: &Stock, (nth, pattern): (usize, &Pattern)) -> Way {
    let (lost, squares) = pattern.cost(stock);
    let runs = pattern.0.chunk_by(|a, b| a == b);
    let strips = runs.filter_map(|run| Some((usize::from(*run.first()?), run.len() as i64)));
    Way { nth, things: strips.collect(), cost: lost as i64, second: squares as i64, cuts: vec![] }
}

pub(super) fn limits(stock: &Stock) -> Vec<Limit> {
    let kinds = stock.kinds.iter().enumerate();
    kinds.map(|(nth, kind)| Limit { of: Of::Thing(nth), least: 0, most: i64::from(kind.count) }).collect()
}
