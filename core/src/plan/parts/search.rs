//! Looks for a plan: rounds the linear programme, then frees some boards again and again and fills them better.

use super::pool::{Column, How, Pool};
use super::relax::{self, Relaxed, Shop, Tariff, Wanted};
use super::state::State;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

/// A column as the search sees it.
struct Sparse {
    cells: Vec<(usize, i64)>,
    kind: Option<usize>,
    cost: f64,
}

/// The search for so many sets, with what may be lacking.
pub(super) struct Search {
    pub sets: i64,
    pub state: State,
    /// Wood and what is lacking.
    pub cost: i64,
    /// No plan costs less, what is lacking included.
    pub least: i64,
    /// Where the search stands, which may be a little worse.
    now: State,
    now_cost: i64,
    /// So many tries without a better plan.
    idle: u64,
    lack: Vec<i64>,
    pub relaxed: Relaxed,
    sparse: Vec<Sparse>,
    /// By row: the columns that make it.
    covers: Vec<Vec<usize>>,
    pub tries: u64,
}

/// So many times the wood of a part is what lacking it costs.
pub(super) const LACK: i64 = 60;

impl Search {
    /// Begins with the linear programme, rounded.
    pub(super) fn new(shop: &Shop<'_>, pool: &mut Pool, (sets, near): (i64, Vec<f64>), patience: &mut Patience<'_>) -> Search {
        let state = State::empty(shop, sets);
        let lack = shop.lack(LACK);
        let wanted = Wanted { near, rounds: FIRST, ..wanted(&state, &lack) };
        let relaxed = shop.cheapest(pool, &wanted, patience);
        let mut search = Search {
            sets,
            cost: i64::MAX,
            least: relaxed.least,
            now: state.clone(),
            now_cost: i64::MAX,
            idle: 0,
            state,
            lack,
            relaxed,
            sparse: vec![],
            covers: vec![],
            tries: 0,
        };
        let mut state = search.state.clone();
        let first = search.relaxed.clone();
        search.dive(shop, pool, (&mut state, first), patience);
        state.trim(shop, pool);
        search.cost = state.cost(pool, &search.lack);
        (search.now, search.now_cost) = (state.clone(), search.cost);
        search.state = state;
        search.learn(shop, pool);
        search
    }

    /// Rounds what is left, a column at a time.
    fn dive(&self, shop: &Shop<'_>, pool: &mut Pool, (state, mut relaxed): (&mut State, Relaxed), patience: &mut Patience<'_>) {
        while !state.is_complete() {
            let mut took = false;
            let mut top = (0.0, None);
            for (nth, level) in &relaxed.levels {
                let Some(column) = pool.get(*nth) else { continue };
                let whole = ((level + 1e-6) as i64).min(self.room(state, column));
                if 0 < whole {
                    state.take(*nth, column, whole);
                    took = true;
                } else if top.0 < *level && 0 < self.room(state, column) {
                    top = (*level, Some(*nth));
                }
            }
            if !took {
                let Some((nth, column)) = top.1.and_then(|nth| Some((nth, pool.get(nth)?))) else { return };
                state.take(nth, column, 1);
            }
            if patience.is_over() {
                return;
            }
            let rounds = if self.tries == SECOND { DIVES } else { 0 };
            relaxed = shop.cheapest(pool, &Wanted { rounds, ..self.wanted(state) }, patience);
        }
    }

    /// What is left, from the columns that may be in a better plan.
    fn wanted(&self, state: &State) -> Wanted {
        let gap = if self.tries <= SECOND { f64::INFINITY } else { self.cost.saturating_sub(self.least) as f64 * 1.2 };
        let (near, kinds) = (self.relaxed.rows.clone(), self.relaxed.kinds.clone());
        Wanted { near, gap, kinds, ..wanted(state, &self.lack) }
    }

    fn room(&self, state: &State, column: &Column) -> i64 {
        column.kind().map_or(i64::MAX, |kind| state.boards.get(kind).copied().unwrap_or(0))
    }

    /// Whether rounding gets all that is left, after so many rounds for new cuts.
    pub(super) fn completes(&self, shop: &Shop<'_>, pool: &mut Pool, (state, rounds): (State, u32), patience: &mut Patience<'_>) -> bool {
        self.rounded(shop, pool, (state, rounds), patience).is_complete()
    }

    /// With what rounding gets of what is left.
    pub(super) fn filled(&self, shop: &Shop<'_>, pool: &mut Pool, state: State, patience: &mut Patience<'_>) -> State {
        self.rounded(shop, pool, (state, DIVES), patience)
    }

    fn rounded(&self, shop: &Shop<'_>, pool: &mut Pool, (mut state, rounds): (State, u32), patience: &mut Patience<'_>) -> State {
        let relaxed = shop.cheapest(pool, &Wanted { rounds, ..wanted(&state, &self.lack) }, patience);
        self.dive(shop, pool, (&mut state, relaxed), patience);
        state
    }

    /// Takes note of columns that are new in the pool.
    fn learn(&mut self, shop: &Shop<'_>, pool: &Pool) {
        self.covers.resize(shop.rows(), vec![]);
        for (nth, column) in pool.columns.iter().enumerate().skip(self.sparse.len()) {
            let cells: Vec<(usize, i64)> = column.made.iter().copied().enumerate().filter(|(_, made)| *made != 0).collect();
            for (row, _) in cells.iter().filter(|(_, made)| 0 < *made) {
                if let Some(covers) = self.covers.get_mut(*row) {
                    covers.push(nth);
                }
            }
            self.sparse.push(Sparse { cells, kind: column.kind(), cost: column.cost as f64 });
        }
    }

    /// More columns: the prices shaken by up to a sixth, or only for what some boards make.
    pub(super) fn enrich(&mut self, shop: &Shop<'_>, pool: &mut Pool, draw: &mut Draw, patience: &mut Patience<'_>) {
        let shake = |price: &f64, by: u64| price * (0.85 + 0.3 * (by >> 11) as f64 / (1_u64 << 53) as f64);
        let dear = self.relaxed.rows.iter().fold(1.0_f64, |most, price| most.max(*price));
        let scale = (1e9 / dear).clamp(1.0, 1e6) as i64;
        let rows = self.relaxed.rows.iter().map(|price| (shake(price, draw.any()) * scale as f64) as i64).collect();
        let tariff = Tariff { rows, scale: if draw.below(5) == 0 { 0 } else { scale } };
        let mut tariff = if draw.below(2) == 0 { tariff } else { self.only_some(tariff, draw) };
        let mut state = self.now.clone();
        self.free(&mut state, pool, 2_usize.saturating_add(draw.below(8)), draw);
        // Prices never lead to a cut that lies between two others: where pieces are few, some of what is left leads there.
        let some = self.is_few(shop).then(|| state.left.iter().map(|left| some_of(*left, draw)).collect::<Vec<i64>>());
        for column in shop.look(&mut tariff, patience).1 {
            if let How::Cut(cut) = &column.how {
                for left in [Some(&state.left), some.as_ref()].into_iter().flatten() {
                    pool.add(shop.column(cut.fitted(shop.stock, &shop.saw.strips, (left, &self.relaxed.rows))));
                }
            }
            pool.add(column);
        }
        self.learn(shop, pool);
    }

    fn is_few(&self, shop: &Shop) -> bool {
        shop.set().iter().fold(0_i64, |sum, each| sum.saturating_add(each.saturating_mul(self.sets))) <= FEW
    }

    /// Prices for some of the rows alone.
    fn only_some(&self, mut tariff: Tariff, draw: &mut Draw) -> Tariff {
        let most = tariff.rows.len();
        for _ in 0..most.div_ceil(2) {
            if let Some(price) = tariff.rows.get_mut(draw.below(most)) {
                *price = 0;
            }
        }
        tariff
    }

    /// Frees some boards and fills them better, if it can; whether the plan is better now.
    pub(super) fn improve(&mut self, shop: &Shop<'_>, pool: &mut Pool, draw: &mut Draw, patience: &mut Patience<'_>) -> bool {
        self.tries = self.tries.saturating_add(1);
        self.idle = self.idle.saturating_add(1);
        if self.idle.is_multiple_of(HOME) {
            (self.now, self.now_cost) = (self.state.clone(), self.cost);
        }
        let mut state = self.now.clone();
        if self.tries == SECOND {
            state = State::empty(shop, self.sets);
            let wanted = Wanted { near: self.relaxed.rows.clone(), rounds: relax::ROUNDS, ..wanted(&state, &self.lack) };
            self.relaxed = shop.cheapest(pool, &wanted, patience);
            self.least = self.relaxed.least;
            self.dive(shop, pool, (&mut state, self.relaxed.clone()), patience);
        } else if self.idle.is_multiple_of(REDIVE) {
            let all = state.taken.iter().fold(0_i64, |sum, (_, times)| sum.saturating_add(*times));
            let share = if self.idle.is_multiple_of(AFRESH) { 80 } else { 25 };
            let many = usize::try_from(all).unwrap_or(0).saturating_mul(draw.below(40).saturating_add(share)).div_ceil(100).min(60);
            self.free(&mut state, pool, many, draw);
            let wanted = Wanted { rounds: 1, ..self.wanted(&state) };
            let relaxed = shop.cheapest(pool, &wanted, patience);
            self.dive(shop, pool, (&mut state, relaxed), patience);
        } else {
            let many = 2_usize.saturating_add(draw.below(7));
            self.free(&mut state, pool, many, draw);
            if !self.fill(&mut state, pool, draw, patience) {
                return false;
            }
        }
        state.trim(shop, pool);
        self.learn(shop, pool);
        if self.idle.is_multiple_of(AFRESH) {
            self.now_cost = i64::MAX;
        }
        self.accept(state, pool)
    }

    /// Goes on from a plan that is not much worse; whether it is better than all before.
    fn accept(&mut self, state: State, pool: &Pool) -> bool {
        let cost = state.cost(pool, &self.lack);
        if self.now_cost.saturating_add(self.slack()) < cost {
            return false;
        }
        (self.now, self.now_cost) = (state, cost);
        let better = cost < self.cost;
        if better {
            (self.state, self.cost, self.idle) = (self.now.clone(), cost, 0);
        }
        better
    }

    /// How much worse the next may be.
    fn slack(&self) -> i64 {
        if self.idle.is_multiple_of(3) { self.cost.saturating_sub(self.least).max(0) / 8 } else { 0 }
    }

    fn fill(&self, state: &mut State, pool: &Pool, draw: &mut Draw, patience: &mut Patience<'_>) -> bool {
        let mut fill = Fill {
            search: self,
            left: state.left.clone(),
            boards: state.boards.clone(),
            put: vec![],
            skipped: vec![false; state.left.len()],
            cost: state.wood(pool) as f64,
            best: (self.now_cost.saturating_add(self.slack()) as f64 + 0.5, None),
            nodes: 0,
            shake: draw.any(),
        };
        let bound = fill.cost + fill.worth_left() - fill.worth_boards();
        fill.go(bound);
        patience.spend(fill.nodes.checked_div(20).unwrap_or(0).saturating_add(1));
        let Some(put) = fill.best.1 else { return false };
        for nth in put {
            if let Some(column) = pool.get(nth) {
                state.take(nth, column, 1);
            }
        }
        true
    }

    /// Puts back some of what is taken: anything, or what makes the same rows as a first one.
    fn free(&self, state: &mut State, pool: &Pool, many: usize, draw: &mut Draw) {
        let mut near: Option<usize> = None;
        let related = draw.below(2) == 0;
        for _ in 0..many {
            let shares =
                |nth: usize| near.is_none_or(|row| self.sparse.get(nth).is_some_and(|s| s.cells.iter().any(|(own, _)| *own == row)));
            let fits: Vec<(usize, i64)> = state.taken.iter().copied().filter(|(nth, _)| shares(*nth)).collect();
            let fits = if fits.is_empty() { state.taken.clone() } else { fits };
            let all = fits.iter().fold(0_i64, |sum, (_, times)| sum.saturating_add(*times));
            let mut lot = draw.below(usize::try_from(all).unwrap_or(0)) as i64;
            let Some((nth, _)) = fits.iter().find(|(_, times)| {
                lot = lot.saturating_sub(*times);
                lot < 0
            }) else {
                return;
            };
            if let Some(column) = pool.get(*nth) {
                state.take(*nth, column, -1);
            }
            if related && let Some(sparse) = self.sparse.get(*nth) {
                near = sparse.cells.get(draw.below(sparse.cells.len())).map(|(row, _)| *row);
            }
        }
    }
}

/// Any number up to so many.
fn some_of(left: i64, draw: &mut Draw) -> i64 {
    usize::try_from(left).map_or(0, |left| i64::try_from(draw.below(left.saturating_add(1))).unwrap_or(0))
}

fn wanted(state: &State, lack: &[i64]) -> Wanted {
    Wanted {
        rows: state.left.clone(),
        most: state.boards.clone(),
        least: vec![0; state.boards.len()],
        lack: lack.to_vec(),
        near: vec![],
        rounds: 0,
        gap: f64::INFINITY,
        kinds: vec![],
    }
}

/// Fills what was freed: depth first, the dearest row first, cut off by what the linear programme says can't be saved.
struct Fill<'a> {
    search: &'a Search,
    left: Vec<i64>,
    boards: Vec<i64>,
    put: Vec<usize>,
    /// Rows of which no more is made: what is left is lacking.
    skipped: Vec<bool>,
    cost: f64,
    best: (f64, Option<Vec<usize>>),
    nodes: u64,
    shake: u64,
}

/// No more pieces than these are few.
const FEW: i64 = 40;
/// So many rounds before a first plan; at so many tries the programme is solved to its end and rounded again.
const FIRST: u32 = 12;
const SECOND: u64 = 20;
/// So many rounds for more columns at each step of rounding.
const DIVES: u32 = 2;
/// After so many tries the search goes back to the best plan; after so many it rounds a larger share anew.
const HOME: u64 = 400;
const REDIVE: u64 = 40;
/// After so many it begins afresh, wherever that leads.
const AFRESH: u64 = 600;
const NODES_MOST: u64 = 300;
const BROAD: usize = 5;
const DEEP: usize = 24;

impl Fill<'_> {
    fn worth_left(&self) -> f64 {
        self.left.iter().zip(&self.search.relaxed.rows).map(|(left, price)| (*left).max(0) as f64 * price).sum()
    }

    fn worth_boards(&self) -> f64 {
        self.boards.iter().zip(&self.search.relaxed.kinds).map(|(boards, price)| *boards as f64 * price).sum()
    }

    /// What a column loses over the linear programme, and what it covers.
    fn loss(&self, sparse: &Sparse) -> (f64, f64) {
        let mut covers = 0.0;
        for (row, made) in &sparse.cells {
            let left = self.left.get(*row).copied().unwrap_or(0);
            let less = left.max(0).saturating_sub(left.saturating_sub(*made).max(0));
            covers += less as f64 * self.search.relaxed.rows.get(*row).unwrap_or(&0.0);
        }
        let stock = sparse.kind.and_then(|kind| self.search.relaxed.kinds.get(kind)).unwrap_or(&0.0);
        (sparse.cost + stock - covers, covers)
    }

    fn go(&mut self, bound: f64) {
        self.nodes = self.nodes.saturating_add(1);
        let lacking = self.left.iter().zip(&self.search.lack).map(|(left, lack)| (*left).max(0) as f64 * *lack as f64).sum::<f64>();
        if self.cost + lacking < self.best.0 {
            self.best = (self.cost + lacking, Some(self.put.clone()));
        }
        let worth = self.left.iter().zip(&self.search.relaxed.rows).zip(&self.skipped).enumerate();
        let open =
            worth.filter(|(_, ((left, _), skipped))| 0 < **left && !**skipped).map(|(row, ((left, price), _))| (row, *left as f64 * price));
        let Some((row, worth)) = open.max_by(|a, b| a.1.total_cmp(&b.1)) else { return };
        if DEEP <= self.put.len() {
            return;
        }
        let mut ways: Vec<(f64, f64, usize)> = vec![];
        for nth in self.search.covers.get(row).map_or(&[][..], |covers| covers) {
            let Some(sparse) = self.search.sparse.get(*nth) else { continue };
            if sparse.kind.is_some_and(|kind| self.boards.get(kind).is_none_or(|boards| *boards < 1)) {
                continue;
            }
            let (loss, covers) = self.loss(sparse);
            if self.best.0 <= bound + loss {
                continue;
            }
            self.shake = self.shake.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let shaken = 0.7 + 0.6 * (self.shake >> 40) as f64 / (1_u64 << 24) as f64;
            ways.push((loss / covers.max(1.0) * shaken, loss, *nth));
        }
        ways.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (_, loss, nth) in ways.into_iter().take(BROAD) {
            if NODES_MOST < self.nodes {
                return;
            }
            if self.best.0 <= bound + loss {
                continue;
            }
            self.put(nth, 1);
            self.go(bound + loss);
            self.put(nth, -1);
        }
        self.skip(row, worth, bound);
    }

    /// Goes on without any more of a row, where that may be worth it.
    fn skip(&mut self, row: usize, worth: f64, bound: f64) {
        let lacking = self.left.get(row).copied().unwrap_or(0) as f64 * self.search.lack.get(row).copied().unwrap_or(0) as f64;
        let bound = bound + lacking - worth;
        if self.best.0 <= bound || NODES_MOST < self.nodes {
            return;
        }
        self.skipped.iter_mut().skip(row).take(1).for_each(|skipped| *skipped = true);
        self.go(bound);
        self.skipped.iter_mut().skip(row).take(1).for_each(|skipped| *skipped = false);
    }

    fn put(&mut self, nth: usize, times: i64) {
        let Some(sparse) = self.search.sparse.get(nth) else { return };
        for (row, made) in &sparse.cells {
            if let Some(left) = self.left.get_mut(*row) {
                *left = left.saturating_sub(made.saturating_mul(times));
            }
        }
        if let Some(boards) = sparse.kind.and_then(|kind| self.boards.get_mut(kind)) {
            *boards = boards.saturating_sub(times);
        }
        self.cost += sparse.cost * times as f64;
        if 0 < times {
            self.put.push(nth);
        } else {
            self.put.pop();
        }
    }
}
