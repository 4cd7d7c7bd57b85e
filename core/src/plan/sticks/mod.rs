//! Sticks: parts of one cross-section from sticks, by length alone.

pub mod check;
mod cutting;
mod dive;
pub mod plan;
pub mod problem;
mod relax;
mod renew;
mod stock;
mod sums;
mod written;

use super::{Figures, Planned, Sense};
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;
use cutting::Saw;
use dive::Laid;
use plan::Plan;
use problem::Problem;
use relax::{Pool, Wanted};
use stock::Stock;

/// Sets, length consumed, cuts.
pub const SENSES: [Sense; 3] = [Sense::More, Sense::Less, Sense::Less];

/// As many sets as can be cut, then from as little as can be; better the longer it may take.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, seed: u64) -> Planned<Plan> {
    let stock = Stock::of(problem);
    let saw = Saw::new(&stock, wood(&stock));
    let mut pool = Pool::default();
    let (most, _) = relax::most_sets(&saw, &mut pool, patience);
    let mut planner = Planner { saw: &saw, pool, best: Planned { plan: Plan::default(), worth: vec![0; 3], bound: vec![i128::from(most)] }, draw: Draw::seeded(seed) };
    planner.patience_proved(patience);
    planner.plan(problem, most, patience);
    planner.best
}

/// What a unit of wood costs where a cut costs 1: more than all cuts of any plan that wastes no piece.
fn wood(stock: &Stock) -> i64 {
    let pieces = stock.parts.iter().fold(0_i64, |sum, part| sum.saturating_add(part.each.saturating_mul(stock.sets)));
    pieces.saturating_mul(3).saturating_add(1)
}

struct Planner<'a> {
    saw: &'a Saw<'a>,
    pool: Pool,
    best: Planned<Plan>,
    draw: Draw,
}

impl Planner<'_> {
    fn patience_proved(&self, patience: &mut Patience<'_>) {
        patience.proved(&self.best.bound);
    }

    fn wanted(&self, sets: i64) -> Wanted {
        let stock = self.saw.stock;
        let pieces = stock.parts.iter().map(|part| part.each.saturating_mul(sets)).collect();
        Wanted { pieces, sticks: stock.piles.iter().map(|pile| pile.count).collect() }
    }

    fn plan(&mut self, problem: &Problem, most: i64, patience: &mut Patience<'_>) {
        let mut laid: Vec<(i64, Laid)> = vec![];
        let mut sets = most;
        while 0 < sets {
            let wanted = self.wanted(sets);
            let relaxed = relax::cheapest(self.saw, &mut self.pool, &wanted, patience);
            eprintln!("sets {sets} least {} = {} {} lacking {} steps {} pool {}", relaxed.least, relaxed.least / i128::from(self.saw.wood) * i128::from(self.saw.stock.unit), relaxed.least % i128::from(self.saw.wood), relaxed.lacking, patience.steps(), self.pool.cuts.len());
            let one = dive::dive(self.saw, &mut self.pool, wanted, &mut None, patience);
            eprintln!("  dive {:?} steps {}", one.rank(self.saw), patience.steps());
            let met = one.left.is_met();
            if met {
                self.take(problem, &one, sets, patience);
            }
            laid.push((sets, one));
            if met || patience.is_over() {
                break;
            }
            sets = sets.saturating_sub(1);
        }
        for (sets, laid) in laid {
            self.improve(problem, laid, sets, patience);
        }
    }

    fn improve(&mut self, problem: &Problem, mut laid: Laid, sets: i64, patience: &mut Patience<'_>) {
        let began = patience.steps(); let mut n = 0;
        while patience.spend(1) { n += 1;
            if renew::renew(self.saw, &mut self.pool, &mut laid, &mut self.draw, patience) {
                eprintln!("  renew {sets} {:?} steps {}", laid.rank(self.saw), patience.steps());
                if laid.left.is_met() {
                self.take(problem, &laid, sets, patience);
                }
            }
            if !laid.left.is_met() && began + 30000 < patience.steps() { return; }
        }
        eprintln!("renews {n}");
    }

    fn take(&mut self, problem: &Problem, laid: &Laid, sets: i64, patience: &mut Patience<'_>) {
        let plan = written::plan(problem, self.saw.stock, &laid.cuts, sets);
        let Ok(worth) = check::check(problem, &plan) else { eprintln!("{:?}", check::check(problem, &plan)); return };
        let worth: Figures = worth.to_vec();
        if super::better(&SENSES, &worth, &self.best.worth) {
            (self.best.plan, self.best.worth) = (plan, worth);
            patience.found(&self.best.worth);
        }
    }
}
