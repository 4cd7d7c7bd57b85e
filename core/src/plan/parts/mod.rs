//! Parts: a piece of furniture as a parts list, cut from boards.

pub mod again;
mod branch;
pub mod check;
mod cut;
mod fewer;
mod layout;
pub mod limit;
pub mod plan;
mod pool;
pub mod problem;
mod relax;
mod saw;
mod search;
mod short;
mod state;
mod stock;
mod strips;
mod sums;
pub mod why;
mod wider;

use super::{Figures, Planned, Sense};
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;
use layout::Layout;
use plan::{Plan, Short};
use pool::Pool;
use problem::Problem;
use relax::{Shop, Wanted};
use search::Search;
use state::State;
use stock::{Rounding, Stock};

/// Sets, volume consumed.
pub const SENSES: [Sense; 2] = [Sense::More, Sense::Less];

/// As many sets as can be cut, then from as little as can be; better the longer it may take.
pub fn solve(problem: &Problem, patience: &mut Patience<'_>, seed: u64) -> Planned<Plan> {
    let material = material(problem);
    patience.proved(&material);
    let measure = stock::measure(problem);
    let mut coarse = measure;
    loop {
        let stock = Stock::of(problem, coarse, Rounding::Safe);
        let strips = strips::worthwhile(&stock);
        if let Some(shop) = Shop::new(&stock, strips, false) {
            let free = Stock::of(problem, coarse, Rounding::Free);
            let glued = problem.parts.iter().any(|part| part.glue);
            let bounds = if glued && coarse != measure {
                None
            } else {
                Shop::new(&free, strips::least(&free), glued).filter(|shop| shop.saw.is_exact)
            };
            let mut job = Job {
                problem,
                shop,
                bounds,
                pool: Pool::default(),
                bound_pool: Pool::default(),
                near: vec![],
                most: material.first().copied().unwrap_or(0) as i64,
                least: None,
            };
            return job.run(patience, seed);
        }
        coarse = coarse.saturating_mul(2);
    }
}

/// No more sets than all boards have wood together.
fn material(problem: &Problem) -> Figures {
    let volume = |sizes: [i64; 3]| sizes.into_iter().map(i128::from).fold(1, i128::saturating_mul);
    let there = problem.piles.iter().map(|p| volume([p.length, p.width, p.thickness]).saturating_mul(i128::from(p.count)));
    let each = problem.parts.iter().map(|p| volume([p.length, p.width, p.thickness]).saturating_mul(i128::from(p.per_set)));
    let there = there.fold(0, i128::saturating_add);
    let sets = there.checked_div(each.fold(0, i128::saturating_add)).unwrap_or(0);
    vec![problem.sets.map_or(sets, |most| sets.min(i128::from(most)))]
}

/// At so many tries for a better plan the bound is sharpened.
const SHARPEN: u64 = 60;

/// So many tries for what is short, where nothing else is left to do.
const SHORT: u64 = 400;

struct Job<'a> {
    problem: &'a Problem,
    shop: Shop<'a>,
    /// Where bounds are proven; nothing where sums are too many.
    bounds: Option<Shop<'a>>,
    pool: Pool,
    bound_pool: Pool,
    /// Prices that are expected to be good.
    near: Vec<f64>,
    /// No plan makes more sets.
    most: i64,
    /// No plan of the most sets costs less.
    least: Option<i64>,
}

/// The best plan, and the one that comes nearest to a set more.
#[derive(Default)]
struct Found {
    best: Option<Search>,
    next: Option<Search>,
}

impl Found {
    fn sets(&self) -> i64 {
        self.best.as_ref().map_or(0, |best| best.sets)
    }
}

impl Job<'_> {
    fn run(&mut self, patience: &mut Patience<'_>, seed: u64) -> Planned<Plan> {
        let mut draw = Draw::seeded(seed);
        self.prove(patience);
        let mut found = Found::default();
        let mut sets = self.most;
        while 0 < sets {
            let search = Search::new(&self.shop, &mut self.pool, (sets, self.near.clone()), patience);
            if search.state.is_complete() {
                found.best = Some(search);
                break;
            }
            found.next = Some(search);
            sets = sets.saturating_sub(1);
            if patience.is_over() {
                break;
            }
        }
        if let Some(best) = &found.best {
            patience.found(&self.worth(best));
        }
        self.improve(&mut found, &mut draw, patience);
        self.planned(found.best.as_ref(), found.next.as_ref())
    }

    /// What no plan can pass; what was met on the way is tried for plans.
    fn prove(&mut self, patience: &mut Patience<'_>) {
        let Some(shop) = &self.bounds else { return };
        let mut pool = std::mem::take(&mut self.bound_pool);
        let (most, _why) = shop.most_sets(&mut pool, patience);
        self.most = self.most.min(most);
        let wanted = all_of(shop, self.most);
        let relaxed = shop.cheapest(&mut pool, &wanted, patience);
        self.least = Some(relaxed.least.max(0));
        patience.proved(&[i128::from(self.most)]);
        for column in &pool.columns {
            if let pool::How::Cut(cut) = &column.how {
                self.pool.add(self.shop.column(strips::narrowed(self.shop.stock, &self.shop.saw.strips, cut)));
            }
        }
        self.shop.begin(&mut self.pool);
        self.bound_pool = pool;
        self.near = relaxed.rows.clone();
        for strip in &self.shop.saw.strips {
            let rate = relaxed.rows.get(strip.part).copied().unwrap_or(0.0);
            self.near.push(rate * self.shop.stock.units(strip.wide) as f64);
        }
        for (part, price) in self.shop.stock.parts.iter().zip(&mut self.near).filter(|(part, _)| part.glue) {
            *price *= part.need as f64;
        }
    }

    /// Where there are few boards: goes through how many of each are used.
    fn sharpen(&mut self, best: &Search, patience: &mut Patience<'_>) {
        let Some(shop) = &self.bounds else { return };
        let few = shop.stock.kinds.iter().fold(0_i64, |sum, kind| sum.saturating_add(kind.count)) <= branch::BOARDS_MOST;
        let wood = best.state.wood(&self.pool);
        if !few || best.sets != self.most || self.least.is_none_or(|least| wood <= least) || shop.stock.unit != self.shop.stock.unit {
            return;
        }
        let wanted = all_of(shop, self.most);
        let least = branch::least(shop, &mut self.bound_pool, (&wanted, wood), patience);
        self.least = self.least.max(Some(least));
    }

    /// Better and better, until patience is over or nothing is left to do.
    fn improve(&mut self, found: &mut Found, draw: &mut Draw, patience: &mut Patience<'_>) {
        let mut turn = 0_u64;
        while !patience.is_over() {
            turn = turn.wrapping_add(1);
            let sets = found.sets();
            let wished = self.shop.stock.sets.is_none_or(|wish| sets < wish);
            let done = found.best.as_ref().map_or(self.most == 0, |best| self.least == Some(best.cost));
            let on_next =
                wished && (done || found.best.is_none() || turn.is_multiple_of(12) || (sets < self.most && !turn.is_multiple_of(4)));
            if on_next && found.next.as_ref().is_none_or(|next| next.sets != sets.saturating_add(1)) {
                found.next = Some(Search::new(&self.shop, &mut self.pool, (sets.saturating_add(1), self.near.clone()), patience));
            }
            let nearly = |next: &Search| next.cost <= next.least || SHORT < next.tries;
            if done && (!wished || found.next.as_ref().is_some_and(nearly)) {
                return;
            }
            self.turn(found, (on_next, turn.is_multiple_of(16)), draw, patience);
        }
    }

    /// One try, for a better plan or for one set more.
    fn turn(&mut self, found: &mut Found, (on_next, enrich): (bool, bool), draw: &mut Draw, patience: &mut Patience<'_>) {
        let Some(search) = (if on_next { found.next.as_mut() } else { found.best.as_mut() }) else { return };
        if enrich {
            search.enrich(&self.shop, &mut self.pool, draw, patience);
        }
        let better = search.improve(&self.shop, &mut self.pool, draw, patience);
        if on_next && search.state.is_complete() {
            found.best = found.next.take();
        } else if on_next || !better {
            let ripe = found.best.as_ref().filter(|best| !on_next && best.tries == SHARPEN);
            ripe.into_iter().for_each(|best| self.sharpen(best, patience));
            return;
        }
        if let Some(best) = &found.best {
            patience.found(&self.worth(best));
        }
    }

    fn worth(&self, search: &Search) -> Figures {
        vec![i128::from(search.sets), i128::from(search.state.wood(&self.pool)).saturating_mul(self.shop.stock.unit)]
    }

    fn planned(&mut self, best: Option<&Search>, next: Option<&Search>) -> Planned<Plan> {
        let state = best.map(|best| best.state.spared(&self.shop, &mut self.pool));
        let layout = Layout { problem: self.problem, stock: self.shop.stock, strips: &self.shop.saw.strips };
        let (boards, panels) = state.map(|state| layout.of(&self.pool, &state)).unwrap_or_default();
        let sets = best.map_or(0, |best| best.sets);
        let short = next.filter(|next| next.sets == sets.saturating_add(1)).map(|next| {
            let state = short::nearest(&self.shop, &mut self.pool, next, best);
            let (boards, panels) = layout.of(&self.pool, &state);
            let missing = state.left.iter().take(self.problem.parts.len()).copied().enumerate().filter(|(_, left)| 0 < *left).collect();
            Short { missing, boards, panels }
        });
        let mut plan = fewer::fewer(self.problem, wider::widened(self.problem, Plan { boards, panels, short: None }));
        plan.short = short;
        if check::check(self.problem, &plan).is_err() {
            plan.short = None;
        }
        let worth = check::check(self.problem, &plan).map_or(vec![0, 0], |worth| worth.to_vec());
        let unit = self.bounds.as_ref().map_or(1, |shop| shop.stock.unit);
        let mut bound = vec![i128::from(self.most)];
        if worth.first() == bound.first()
            && let Some(least) = self.least
        {
            bound.push(i128::from(least).saturating_mul(unit));
        }
        Planned { plan, worth, bound }
    }
}

/// So many sets out of all boards, as near as can be.
fn all_of(shop: &Shop<'_>, sets: i64) -> Wanted {
    let state = State::empty(shop, sets);
    Wanted {
        rows: state.left,
        least: vec![0; state.boards.len()],
        most: state.boards,
        lack: shop.lack(search::LACK),
        near: vec![],
        rounds: relax::ROUNDS,
        gap: f64::INFINITY,
        kinds: vec![],
    }
}

#[cfg(test)]
mod tests;
