//! Rows whose strips may be cut: chains of cuts and rows cut anew in their places, by turns.

use super::cutting::Cutting;
use super::dive::part;
use super::laying::laid_out;
use super::pattern::Patterns;
use super::planner::Planner;
use crate::plan::patience::Patience;

/// So many steps the plan without cuts gets.
const WHOLE: u64 = 6000;
/// So many steps of each round go to chains, and so many to rows in their places.
const CHAINS: u64 = 16_000;
const PLACES: u64 = 8000;
/// So many turns an annealing of chains takes, and one of rows in their places.
const CHAIN_TURNS: f64 = 300.0;
const PLACE_TURNS: f64 = 8000.0;

impl<'a> Planner<'a> {
    /// From the best without cuts, better and better ones with cuts.
    pub(super) fn cut(&mut self, patterns: &Patterns, most: usize, patience: &mut Patience<'_>) {
        if 0 < most && !patterns.all.is_empty() {
            let core = self.core(patterns, most, usize::MAX, patience);
            self.search((&core, None), WHOLE, patience);
        }
        while patience.spend(1) && !self.best.is_proven() {
            self.chains(most, patience);
            self.places(most, patience);
        }
    }

    /// The same from a plan that has all rows.
    pub(super) fn cut_on(&mut self, most: usize, patience: &mut Patience<'_>) {
        while patience.spend(1) && !self.best.is_proven() {
            self.places(most, patience);
            self.chains(most, patience);
        }
    }

    /// The best so far where it has all rows, to go on from.
    fn best_cut(&self, most: usize) -> Cutting<'a> {
        if self.laid.rows.len() < most { Cutting::new(self.stock) } else { Cutting::of(self.stock, &self.laid) }
    }

    /// Rows from chains of cuts, annealed again and again, from nothing and from the best by turns; laid where they promise more.
    fn chains(&mut self, most: usize, patience: &mut Patience<'_>) {
        let ends = patience.steps().saturating_add(CHAINS);
        let mut best = self.best_cut(most).rank();
        let mut now = Cutting::new(self.stock);
        let mut turn = 0.0;
        let mut is_fresh = true;
        while patience.spend(2) && patience.steps() < ends && !self.best.is_proven() {
            turn += 1.0;
            if CHAIN_TURNS < turn {
                is_fresh = !is_fresh;
                (now, turn) = (if is_fresh { Cutting::new(self.stock) } else { self.best_cut(most) }, 0.0);
            }
            if now.rows.len() < most && now.chain(&mut self.draw) {
                continue;
            }
            let Some(other) = now.rechained(&mut self.draw) else { continue };
            if !self.is_let_in(&now, &other, 0.3 * libm::pow(0.05, turn / CHAIN_TURNS)) {
                continue;
            }
            now = other;
            if now.rank() < best
                && let Some(rows) = laid_out(self.stock, &now.rows, &mut self.draw, patience)
            {
                now.rows = rows;
                best = now.rank();
                self.take(&now.laid(), patience);
            }
        }
    }

    /// Some rows anew in their places again and again, at first with worse ones let in.
    fn places(&mut self, most: usize, patience: &mut Patience<'_>) {
        let ends = patience.steps().saturating_add(PLACES);
        let mut now = self.best_cut(most);
        let mut best = now.rank();
        let mut turn = 0.0;
        while patience.spend(1) && patience.steps() < ends && !self.best.is_proven() {
            turn = (turn + 1.0 / PLACE_TURNS) % 1.0;
            if now.rows.len() < most && now.grow(&mut self.draw, patience) {
            } else if let Some(other) = now.renewed(&mut self.draw, patience)
                && self.is_let_in(&now, &other, 0.3 * libm::pow(0.02, turn))
            {
                now = other;
            }
            if now.rank() < best {
                best = now.rank();
                self.take(&now.laid(), patience);
            }
        }
    }

    /// Whether another plan is taken: one that is no worse always, a worse one by chance, rather where it is warm (in kerfs).
    fn is_let_in(&mut self, now: &Cutting<'_>, other: &Cutting<'_>, warm: f64) -> bool {
        let worse = (other.rank().1 - now.rank().1) / (warm * self.stock.kerf.max(1.0));
        other.rank() <= now.rank() || part(&mut self.draw) < libm::exp(-worse)
    }
}
