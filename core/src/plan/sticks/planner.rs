//! The order of work: a bound, a first plan, more sets, less wood, a proof.

use super::branch::Branch;
use super::check::check;
use super::cutting::{Asked, Cut, Saw};
use super::dive::{Laid, dive};
use super::near::near;
use super::plan::Plan;
use super::problem::Problem;
use super::proving::Proving;
use super::relax::{self, Pool, Relaxed, Wanted};
use super::renew::Ways;
use super::stock::Stock;
use super::{SENSES, written};
use crate::plan::patience::Patience;
use crate::plan::{Figures, Planned, better};

/// So many steps are spent on a number of sets before it is given up for now.
const STEPS_FOR_SETS: u64 = 20_000;
/// Rounds of so many steps go to a proof too.
const PROVING_FROM: u64 = 4_000;
/// More cuts than these are not gone through by halves.
pub(super) const CUTS_MOST: usize = 4_000;

pub(super) struct Planner<'a> {
    problem: &'a Problem,
    pub saw: &'a Saw<'a>,
    pool: Pool,
    ways: Ways,
    best: Planned<Plan>,
    /// No plan of the sets in hand costs less.
    pub least: i128,
    pub proving: Option<Proving>,
    /// The plans gone through lie within this many halvings of the gap, next to the bound.
    narrow: u32,
}

pub(super) fn solve(problem: &Problem, patience: &mut Patience<'_>, seed: u64) -> Planned<Plan> {
    let stock = Stock::of(problem);
    let saw = Saw::new(&stock, stock.wood());
    let nothing = Planned { plan: Plan::default(), worth: vec![0; SENSES.len()], bound: vec![i128::from(stock.sets)] };
    let mut planner =
        Planner { problem, saw: &saw, pool: Pool::default(), ways: Ways::seeded(seed), best: nothing, least: 0, proving: None, narrow: 8 };
    planner.plan(patience);
    planner.best
}

impl Planner<'_> {
    fn plan(&mut self, patience: &mut Patience<'_>) {
        let (most, _) = relax::most_sets(self.saw, &mut self.pool, patience);
        self.prove(vec![i128::from(most)], patience);
        let tried = self.first(most, patience);
        for (sets, laid) in tried {
            if patience.is_over() || self.reach(sets, laid, patience) {
                return;
            }
        }
        if self.best.bound == [0] {
            self.prove(vec![0, 0, 0], patience);
        }
    }

    /// A first try at so many sets, one set less, and so on until one comes out.
    fn first(&mut self, most: i64, patience: &mut Patience<'_>) -> Vec<(i64, Laid)> {
        let mut tried = vec![];
        for sets in (1..=most).rev() {
            let Some(laid) = dive(self.saw, &mut self.pool, (wanted(self.saw.stock, sets), i64::MAX), &mut None, patience) else { break };
            self.take(&laid, sets, patience);
            let met = laid.left.is_met();
            tried.push((sets, laid));
            if met || patience.is_over() {
                break;
            }
        }
        tried
    }

    /// Looks for a plan of so many sets and betters it until it is proven; whether there is one.
    fn reach(&mut self, sets: i64, mut laid: Laid, patience: &mut Patience<'_>) -> bool {
        let wanted = wanted(self.saw.stock, sets);
        let root = relax::cheapest(self.saw, &mut self.pool, &wanted, patience);
        if !laid.left.is_met() && !self.find(&root, &mut laid, sets, patience) {
            return false;
        }
        self.least = root.least;
        self.prove_cost(sets, root.least, patience);
        let mut steps = 1_000_u64;
        while !self.best.is_proven() && !patience.is_over() {
            self.renew(&root, (&mut laid, sets), steps, patience);
            self.by_halves(&root, (&mut laid, sets), steps.checked_div(2).unwrap_or(0), patience);
            if PROVING_FROM <= steps {
                self.prove_further(&root, (&mut laid, sets), steps.checked_div(4).unwrap_or(0), patience);
            }
            steps = steps.saturating_mul(2);
        }
        true
    }

    /// A plan for sets that the first try left short; where there are none, that is proven.
    fn find(&mut self, root: &Relaxed, laid: &mut Laid, sets: i64, patience: &mut Patience<'_>) -> bool {
        let until = patience.steps().saturating_add(STEPS_FOR_SETS);
        let mut steps = 100_u64;
        while !laid.left.is_met() && patience.steps() < until && !patience.is_over() {
            self.renew(root, (laid, sets), steps, patience);
            if !laid.left.is_met() && self.is_impossible(root, (laid, sets), steps, patience) {
                self.prove(vec![i128::from(sets.saturating_sub(1))], patience);
                return false;
            }
            steps = steps.saturating_mul(4);
        }
        laid.left.is_met()
    }

    /// Goes through all plans for so many sets; whether there are none. Where there is one, it is laid.
    fn is_impossible(&mut self, root: &Relaxed, (laid, sets): (&mut Laid, i64), steps: u64, patience: &mut Patience<'_>) -> bool {
        if self.best.bound.first() != Some(&i128::from(sets)) {
            return false; // one set more may still be possible
        }
        let wanted = wanted(self.saw.stock, sets);
        let Some(near) = near(self.saw, &asked(root, &wanted), (&root.most, i64::MAX / 8), CUTS_MOST) else { return false };
        let mut branch = Branch::new(self.saw, &near, wanted, i64::MAX);
        branch.go(steps, patience);
        let is_void = branch.is_void();
        if let Some(best) = branch.best.take() {
            self.lay(laid, sets, named(&near, best), patience);
        }
        is_void
    }

    fn renew(&mut self, root: &Relaxed, (laid, sets): (&mut Laid, i64), steps: u64, patience: &mut Patience<'_>) {
        let until = patience.steps().saturating_add(steps);
        while patience.steps() < until && patience.spend(1) && !self.best.is_proven() {
            if super::renew::renew(self.saw, &mut self.pool, laid, (root, &mut self.ways), patience) && laid.left.is_met() {
                self.take(laid, sets, patience);
            }
        }
    }

    /// Goes through the plans that are cheaper: first those next to the bound, of which there are few, then more of them.
    fn by_halves(&mut self, root: &Relaxed, (laid, sets): (&mut Laid, i64), steps: u64, patience: &mut Patience<'_>) {
        let until = patience.steps().saturating_add(steps);
        while patience.steps() < until && !patience.is_over() && !self.best.is_proven() {
            let known = i128::from(laid.rank(self.saw).1);
            let gap = known.saturating_sub(self.least) >> self.narrow;
            let under = self.least.saturating_add(gap.max(1)).min(known);
            let left = until.saturating_sub(patience.steps());
            let is_done = self.halve(root, (laid, sets), (under, left), patience);
            self.narrow = if is_done { self.narrow.saturating_sub(1) } else { self.narrow.saturating_add(1) };
            if 16 < self.narrow {
                self.narrow = 8;
                return;
            }
        }
    }

    /// Goes through the plans that cost less than `under`; whether all of them.
    fn halve(&mut self, root: &Relaxed, (laid, sets): (&mut Laid, i64), (under, steps): (i128, u64), patience: &mut Patience<'_>) -> bool {
        let wanted = wanted(self.saw.stock, sets);
        let over = i64::try_from(under.saturating_sub(root.least)).unwrap_or(i64::MAX);
        let slack = over.saturating_mul(root.scale);
        patience.spend(10);
        let Some(near) = near(self.saw, &asked(root, &wanted), (&root.most, slack), CUTS_MOST) else { return false };
        let mut branch = Branch::new(self.saw, &near, wanted, i64::try_from(under).unwrap_or(i64::MAX));
        branch.go(steps, patience);
        let (bound, best) = (branch.bound(), branch.best.take());
        if let Some(best) = best {
            self.lay(laid, sets, named(&near, best), patience);
        }
        self.least = self.least.max(bound);
        self.prove_cost(sets, bound, patience);
        branch.is_done()
    }

    pub(super) fn lay(&mut self, laid: &mut Laid, sets: i64, cuts: Vec<(Cut, i64)>, patience: &mut Patience<'_>) {
        *laid = Laid { cuts: vec![], left: wanted(self.saw.stock, sets) };
        for (cut, times) in &cuts {
            laid.add(cut, *times);
        }
        self.take(laid, sets, patience);
    }

    /// Takes a plan where it passes the checker and is better than the best so far.
    fn take(&mut self, laid: &Laid, sets: i64, patience: &mut Patience<'_>) {
        let plan = written::plan(self.problem, self.saw.stock, &laid.cuts, sets);
        let Ok(worth) = check(self.problem, &plan) else { return };
        let worth: Figures = worth.to_vec();
        if better(&SENSES, &worth, &self.best.worth) && !better(&SENSES, &worth, &self.best.bound) {
            (self.best.plan, self.best.worth) = (plan, worth);
            patience.found(&self.best.worth);
        }
    }

    fn prove(&mut self, bound: Figures, patience: &mut Patience<'_>) {
        if bound != self.best.bound {
            self.best.bound = bound;
            patience.proved(&self.best.bound);
        }
    }

    /// What the least cost says of wood and cuts, where no plan makes more sets.
    pub(super) fn prove_cost(&mut self, sets: i64, least: i128, patience: &mut Patience<'_>) {
        let sets = i128::from(sets);
        if self.best.bound.first() != Some(&sets) {
            return;
        }
        let stock = self.saw.stock;
        let (wood, unit) = (i128::from(self.saw.wood), i128::from(stock.unit));
        let cuts_most = i128::from(stock.cuts_most());
        let whole = least.checked_div(wood).unwrap_or(0);
        let rest = least.checked_rem(wood).unwrap_or(0);
        // A plan of least cost has at most so many cuts; what is more of the cost must be wood.
        let bound = match (cuts_most < wood, rest <= cuts_most) {
            (true, true) => vec![sets, whole.saturating_mul(unit), rest],
            (true, false) => vec![sets, whole.saturating_add(1).saturating_mul(unit), 0],
            (false, _) => vec![sets, least.saturating_sub(cuts_most).max(0).checked_div(wood).unwrap_or(0).saturating_mul(unit)],
        };
        if self.best.bound.len() == 1 || better(&SENSES, &self.best.bound, &bound) {
            self.prove(bound, patience);
        }
    }
}

pub(super) fn wanted(stock: &Stock, sets: i64) -> Wanted {
    let pieces = stock.parts.iter().map(|part| part.each.saturating_mul(sets)).collect();
    Wanted { pieces, sticks: stock.piles.iter().map(|pile| pile.count).collect() }
}

pub(super) fn asked<'a>(root: &'a Relaxed, wanted: &'a Wanted) -> Asked<'a> {
    Asked { prices: &root.prices, limits: &wanted.pieces, scale: root.scale }
}

/// Cuts by their places in a list.
pub(super) fn named(cuts: &[Cut], places: Vec<(usize, i64)>) -> Vec<(Cut, i64)> {
    places.into_iter().filter_map(|(place, times)| Some((cuts.get(place)?.clone(), times))).collect()
}
