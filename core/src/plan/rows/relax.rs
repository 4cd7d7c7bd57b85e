//! What would be best if rows could be taken in fractions: a linear programme over patterns that come as its prices call for them.

use super::pattern::Pattern;
use crate::plan::lp::Lp;
use crate::plan::patience::Patience;

/// Patterns to choose from, and what one row of each is worth.
pub(super) struct Choice<'a> {
    pub patterns: &'a [Pattern],
    pub worth: &'a [f64],
}

#[derive(Clone, Debug, Default)]
pub(super) struct Relaxed {
    /// Patterns by their place, and how many rows of each.
    pub levels: Vec<(usize, f64)>,
    /// What a strip of each kind is worth.
    pub prices: Vec<f64>,
    /// What one more row is worth.
    pub row: f64,
    pub worth: f64,
}

const ROUNDS: u32 = 200;
const TURNS: u32 = 4_000;

impl Choice<'_> {
    /// What a row of the pattern would gain at these prices.
    fn gain(&self, nth: usize, prices: &[f64]) -> f64 {
        let paid = |pattern: &Pattern| pattern.0.iter().map(|kind| prices.get(usize::from(*kind)).unwrap_or(&0.0)).sum::<f64>();
        self.worth.get(nth).unwrap_or(&0.0) - self.patterns.get(nth).map_or(0.0, paid)
    }

    /// The best for so many rows from these strips; `which` patterns may be taken.
    pub(super) fn relaxed(&self, which: &[usize], left: &[u32], rows: usize, patience: &mut Patience<'_>) -> Relaxed {
        let right: Vec<f64> = left.iter().map(|n| f64::from(*n)).chain([rows as f64]).collect();
        let mut lp = Lp::new(&right, &vec![f64::INFINITY; right.len()]);
        let mut placed: Vec<usize> = vec![];
        let work = which.len().checked_div(120).unwrap_or(0).saturating_add(2);
        for _ in 0..ROUNDS {
            let prices = lp.prices();
            let new = self.called(which, left.len(), &prices);
            if new.is_empty() {
                break;
            }
            for nth in new {
                lp.add(*self.worth.get(nth).unwrap_or(&0.0), &self.cells(nth, left.len()));
                placed.push(nth);
            }
            lp.solve(TURNS);
            if !patience.spend(work as u64) {
                break;
            }
        }
        let mut prices = lp.prices();
        let row = prices.pop().unwrap_or(0.0);
        let levels = lp.taken().filter_map(|(column, level)| Some((*placed.get(column)?, level))).filter(|(_, level)| 1e-7 < *level);
        Relaxed { levels: levels.collect(), row, prices, worth: lp.worth() }
    }

    fn cells(&self, nth: usize, kinds: usize) -> Vec<(usize, f64)> {
        let pieces = self.patterns.get(nth).map(|pattern| &*pattern.0).unwrap_or_default();
        let runs = pieces.chunk_by(|a, b| a == b).filter_map(|run| Some((usize::from(*run.first()?), run.len() as f64)));
        runs.chain([(kinds, 1.0)]).collect()
    }

    /// For each longest kind, the pattern that gains most.
    fn called(&self, which: &[usize], kinds: usize, prices: &[f64]) -> Vec<usize> {
        let row = prices.get(kinds).unwrap_or(&0.0);
        let scale = prices.iter().fold(1.0_f64, |most, price| most.max(price.abs()));
        let mut best: Vec<(f64, Option<usize>)> = vec![(row + 1e-8 * scale, None); kinds];
        for nth in which {
            let gain = self.gain(*nth, prices);
            let first = self.patterns.get(*nth).and_then(|pattern| pattern.0.first());
            if let Some(best) = first.and_then(|first| best.get_mut(usize::from(*first)))
                && best.0 < gain
            {
                *best = (gain, Some(*nth));
            }
        }
        best.into_iter().filter_map(|(_, nth)| nth).collect()
    }

    /// The patterns that gain most at the prices, nearly all that a whole plan will need, and how much each gains less than nothing.
    pub(super) fn core(&self, relaxed: &Relaxed, most: usize) -> Vec<(f64, usize)> {
        let short = |nth| (relaxed.row - self.gain(nth, &relaxed.prices)).max(0.0);
        let mut all: Vec<(f64, usize)> = (0..self.patterns.len()).map(|nth| (short(nth), nth)).collect();
        all.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        all.truncate(most);
        all
    }
}
