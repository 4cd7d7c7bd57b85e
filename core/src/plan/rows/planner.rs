//! In what order things are tried: small cases to the end, else patterns first, their rows laid, and better patterns as long as there is patience.

use super::bound;
use super::check::check;
use super::cutbound;
use super::pattern::Patterns;
use super::plan::Plan;
use super::problem::Problem;
use super::proving::Proving;
use super::relax::Choice;
use super::renew::{Chosen, Core, Rank};
use super::stock::Stock;
use super::walk::walked;
use super::wall::Wall;
use super::written::{self, Laid};
use super::{Planned, SENSES};
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// So many patterns a plan is made of at most.
const CORE: usize = 3000;
/// So often rows are laid that do not come out clear, before one row less is tried.
const TRIES: u32 = 12;
/// So many turns are spent on mending a wall.
const TURNS: u32 = 2500;

pub(super) struct Planner<'a> {
    problem: &'a Problem,
    pub stock: &'a Stock,
    pub best: Planned<Plan>,
    pub draw: Draw,
    /// The best so far, as it was before its strips were named.
    pub laid: Laid,
    pub proving: Proving,
}

impl<'a> Planner<'a> {
    pub(super) fn new(problem: &'a Problem, stock: &'a Stock, seed: u64) -> Planner<'a> {
        let best = Planned { plan: Plan::default(), worth: vec![0; SENSES.len()], bound: vec![stock.rows as i128] };
        Planner { problem, stock, best, draw: Draw::seeded(seed), laid: Laid::default(), proving: Proving::default() }
    }

    pub(super) fn plan(&mut self, patience: &mut Patience<'_>) {
        let patterns = Patterns::of(self.stock, &mut self.draw, patience);
        patience.spend(patterns.all.len().div_ceil(50) as u64);
        if self.stock.split {
            let most = bound::most_rows_cut(self.stock, &patterns);
            self.proved(vec![most as i128], patience);
            self.prove_cut(&patterns, most, patience);
            return self.cut(&patterns, most, patience);
        }
        let all: Vec<usize> = (0..patterns.all.len()).collect();
        let ones = vec![1.0; all.len()];
        let most = Choice { patterns: &patterns.all, worth: &ones }.relaxed(&all, &self.stock.counts(), self.stock.rows, patience);
        let most = bound::most_rows(self.stock, &patterns, &most);
        self.proved(vec![most as i128], patience);
        if let Some((rows, is_best)) = walked(self.stock, &patterns, most, patience) {
            self.take(&Laid::of(&Wall::of(self.stock, rows)), patience);
            if is_best {
                return self.proved(self.best.worth.clone(), patience);
            }
        }
        self.whole(&patterns, most, patience);
    }

    pub(super) fn proved(&mut self, bound: Vec<i128>, patience: &mut Patience<'_>) {
        patience.proved(&bound);
        self.best.bound = bound;
    }

    /// The bounds of rows whose strips may be cut.
    fn prove_cut(&mut self, patterns: &Patterns, most: usize, patience: &mut Patience<'_>) {
        let stock = self.stock;
        let whole = |cost: f64, by: i64| (cost as i128).saturating_mul(i128::from(by));
        if most == 0 {
            return self.proved(vec![0, 0, 0], patience);
        }
        let Some(lost) = cutbound::least_lost(stock, patterns, most, patience) else { return };
        let mut bound = vec![most as i128, whole(lost, stock.unit)];
        let squares = cutbound::least_squares(stock, patterns, most, lost);
        bound.extend(squares.map(|squares| whole(squares, stock.unit).saturating_mul(i128::from(stock.unit))));
        self.proved(bound, patience);
    }

    /// Rows of strips that are not cut on purpose.
    fn whole(&mut self, patterns: &Patterns, most: usize, patience: &mut Patience<'_>) {
        let mut laid = false;
        for rows in (1..=most).rev() {
            if patience.is_over() || laid {
                break;
            }
            let core = self.core(patterns, rows, most, patience);
            let provable = if rows == most && patterns.complete { Some(patterns) } else { None };
            laid = self.search((&core, provable), u64::MAX, patience);
        }
    }

    /// From a plan that is there.
    pub(super) fn begin(&mut self, from: &Plan, patience: &mut Patience<'_>) {
        written::laid(self.stock, from).into_iter().for_each(|laid| self.take(&laid, patience));
    }

    fn rows(&self) -> usize {
        self.best.plan.rows.len()
    }

    /// The patterns for so many rows; and what is proven of the length lost, where no plan has more rows.
    pub(super) fn core(&mut self, patterns: &Patterns, rows: usize, most: usize, patience: &mut Patience<'_>) -> Core<'a> {
        let stock = self.stock;
        let costs: Vec<(f64, f64)> = patterns.all.iter().map(|pattern| pattern.cost(stock)).collect();
        let dear = 8.0 * stock.kinds.first().map_or(0.0, |kind| kind.low).max(stock.panel);
        let worth: Vec<f64> = costs.iter().map(|(lost, _)| dear - lost).collect();
        let choice = Choice { patterns: &patterns.all, worth: &worth };
        let all: Vec<usize> = (0..patterns.all.len()).collect();
        let relaxed = choice.relaxed(&all, &stock.counts(), rows, patience);
        if rows == most && patterns.complete && !patience.is_over() {
            let least = bound::least_lost(stock, patterns, &relaxed, rows);
            self.proved(vec![most as i128, least.saturating_mul(i128::from(stock.unit))], patience);
        }
        let (more, which): (Vec<f64>, Vec<usize>) = choice.core(&relaxed, CORE).into_iter().unzip();
        let least = dear * rows as f64 - relaxed.worth;
        let patterns = which.iter().filter_map(|nth| patterns.all.get(*nth).cloned()).collect();
        Core { stock, patterns, costs: which.iter().filter_map(|nth| costs.get(*nth).copied()).collect(), more, dear, least, rows }
    }

    /// Better and better choices of patterns, laid where they promise more; ends early where rows never come out clear.
    pub(super) fn search(&mut self, (core, provable): (&Core<'_>, Option<&Patterns>), steps: u64, patience: &mut Patience<'_>) -> bool {
        let ends = patience.steps().saturating_add(steps);
        let mut chosen = core.first(self.stock.counts(), 0.0, &mut self.draw, patience);
        let mut laid: Option<(Rank, Wall<'a>)> = None;
        let mut tries = 0_u32;
        while patience.spend(1) && patience.steps() < ends && !self.best.is_proven() {
            if let Some(better) = provable.and_then(|patterns| self.prove(patterns, core.rows, patience)) {
                (chosen, tries) = (better, 0);
            }
            let rank = core.rank(&chosen);
            let promises = laid.as_ref().is_none_or(|(own, _)| rank < *own);
            if promises && tries < TRIES {
                tries = tries.saturating_add(1);
                let wall = self.laid(core, &chosen, patience);
                let own = wall.as_ref().map(|wall| core.rank(&wall.chosen()));
                if let (Some(wall), Some(own)) = (wall, own)
                    && laid.as_ref().is_none_or(|(laid, _)| own < *laid)
                {
                    laid = Some((own, wall));
                }
            }
            if tries == TRIES && laid.is_none() {
                return false;
            }
            if promises
                && let Some((own, wall)) = &mut laid
                && let Some(other) = wall.renewed(core, &mut self.draw, patience)
            {
                let better = core.rank(&other.chosen());
                if better < *own {
                    self.take(&Laid::of(&other), patience);
                }
                if better <= *own {
                    (*own, *wall) = (better, other);
                }
            }
            let other = core.renewed(&chosen, &mut self.draw, patience);
            let better = core.rank(&other);
            if better < rank {
                tries = 0;
            }
            if better <= rank {
                chosen = other;
            }
        }
        laid.is_some()
    }

    /// Lays the rows of a choice, in the end with other patterns where it can't be helped; what comes out clear with all its rows.
    fn laid(&mut self, core: &Core<'_>, chosen: &Chosen, patience: &mut Patience<'_>) -> Option<Wall<'a>> {
        let mut wall = Wall::new(self.stock);
        wall.lay(chosen.taken.clone(), &mut self.draw, patience);
        let clear = wall.mend(TURNS, &core.patterns, &mut self.draw, patience);
        if !clear && self.rows() < wall.rows.len() {
            wall.clear(&mut self.draw, patience);
        }
        if clear || self.rows() < wall.rows.len() {
            self.take(&Laid::of(&wall), patience);
        }
        clear.then_some(wall)
    }

    pub(super) fn take(&mut self, laid: &Laid, patience: &mut Patience<'_>) {
        let counts: Vec<i64> = self.problem.piles.iter().map(|pile| pile.count).collect();
        let Some(plan) = written::plan(self.stock, &counts, laid) else { return };
        let Ok(worth) = check(self.problem, &plan) else { return };
        let worth = worth.to_vec();
        if super::super::better(&SENSES, &worth, &self.best.worth) {
            (self.best.plan, self.best.worth) = (plan, worth);
            self.laid.clone_from(laid);
            patience.found(&self.best.worth);
        }
    }
}
