//! Why no more sets can be cut, and what would unlock one more.

use super::problem::Problem;
use super::relax::Shop;
use super::search::Search;
use super::state::State;
use super::stock::{self, Rounding, Stock};
use super::{pool::Pool, strips};
use crate::plan::draw::Draw;
use crate::plan::fewest;
use crate::plan::patience::Patience;

/// What keeps the number of sets down. Parts are named by their place in the problem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// No more are wanted.
    Wish,
    /// One part alone: no more pieces of it come out of all boards it may come from.
    Part { part: usize },
    /// These parts together, for the boards that they share.
    Together { parts: Vec<usize> },
    /// Only a search through all plans would show it.
    Search,
}

/// What decides that no plan makes more than `sets` sets.
pub fn why(problem: &Problem, sets: i64, patience: &mut Patience<'_>) -> Why {
    if problem.sets.is_some_and(|wish| wish <= sets) {
        return Why::Wish;
    }
    let stock = Stock::of(problem, stock::measure(problem), Rounding::Free);
    let glued = problem.parts.iter().any(|part| part.glue);
    let Some(shop) = Shop::new(&stock, strips::least(&stock), glued).filter(|shop| shop.saw.is_exact) else { return Why::Search };
    for part in 0..stock.parts.len() {
        let prices = (0..stock.parts.len()).map(|own| if own == part { 1000 } else { 0 }).collect();
        if shop.most_at(prices, patience).is_some_and(|most| most <= sets) {
            return Why::Part { part };
        }
    }
    let (most, prices) = shop.most_sets(&mut Pool::default(), patience);
    let dear = prices.iter().enumerate().filter(|(_, price)| 0 < **price).map(|(part, _)| part);
    if most <= sets { Why::Together { parts: dear.collect() } } else { Why::Search }
}

/// So many tries to have less missing, and so many boards more at most.
const TRIES: u32 = 100;
const MORE_MOST: i64 = 64;

/// What would make one set more: such plans are known, fewer boards may do.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct More {
    /// So many of each part that lack, as few as were found: glued parts whose strips lack are lacking themselves.
    pub missing: Vec<(usize, i64)>,
    /// So many more boards of a pile, any one of these.
    pub any: Vec<(usize, i64)>,
    /// Part by part so many boards of a pile that give what is missing of it, all of these together; none where that was not found.
    pub each: Vec<(usize, usize, i64)>,
}

/// How many more boards would make one set more than `sets`, of piles of which more `may` be had.
pub fn unlock(problem: &Problem, (sets, seed): (i64, u64), may: &dyn Fn(usize) -> bool, patience: &mut Patience<'_>) -> More {
    let stock = Stock::of(problem, stock::measure(problem), Rounding::Safe);
    let Some(shop) = Shop::new(&stock, strips::worthwhile(&stock), false) else { return More::default() };
    let (mut pool, mut draw) = (Pool::default(), Draw::seeded(seed));
    shop.begin(&mut pool);
    let mut search = Search::new(&shop, &mut pool, (sets.saturating_add(1), vec![]), patience);
    for _ in 0..TRIES {
        if patience.is_over() || search.state.is_complete() {
            break;
        }
        search.improve(&shop, &mut pool, &mut draw, patience);
    }
    if search.state.is_complete() {
        return More::default();
    }
    let missing = missing(&shop, &pool, &search.state);
    let kinds = stock.kinds.iter().enumerate();
    let kinds: Vec<(usize, usize)> = kinds.filter_map(|(nth, kind)| Some((nth, *kind.piles.iter().find(|pile| may(**pile))?))).collect();
    let mut tries = Tries { shop: &shop, pool, search };
    let all = |nth: usize, tries: &mut Tries, patience: &mut Patience<'_>| tries.more(&tries.search.state.clone(), nth, patience);
    let any: Vec<(usize, i64)> = kinds.iter().filter_map(|(nth, pile)| Some((*pile, all(*nth, &mut tries, patience)?.0))).collect();
    let each = if any.is_empty() { tries.each(&kinds, patience).unwrap_or_default() } else { vec![] };
    More { missing, any, each }
}

fn missing(shop: &Shop<'_>, pool: &Pool, state: &State) -> Vec<(usize, i64)> {
    let mut state = state.clone();
    state.unglue(shop, pool);
    state.left.into_iter().take(shop.stock.parts.len()).enumerate().filter(|(_, left)| 0 < *left).collect()
}

struct Tries<'a> {
    shop: &'a Shop<'a>,
    pool: Pool,
    search: Search,
}

impl Tries<'_> {
    /// The fewest boards of a kind from which all that is missing was cut, and the plan then; `None` where no number up to the most would
    /// do.
    fn more(&mut self, from: &State, kind: usize, patience: &mut Patience<'_>) -> Option<(i64, State)> {
        let mut best = None;
        let most = from.left.iter().fold(0_i64, |sum, left| sum.saturating_add((*left).max(0))).saturating_mul(4).clamp(1, MORE_MOST);
        let n = fewest(most, &mut |n: i64| {
            let mut state: State = from.clone();
            state.boards.iter_mut().skip(kind).take(1).for_each(|there| *there = there.saturating_add(n));
            let filled = self.search.filled(self.shop, &mut self.pool, state, patience);
            let does = filled.is_complete();
            if does {
                best = Some((n, filled));
            }
            does
        })?;
        best.filter(|(found, _)| *found == n)
    }

    /// Part by part: what is missing of the others waits, and what was cut for those before is taken.
    fn each(&mut self, kinds: &[(usize, usize)], patience: &mut Patience<'_>) -> Option<Vec<(usize, usize, i64)>> {
        let (mut state, mut all) = (self.search.state.clone(), vec![]);
        for part in 0..self.shop.stock.parts.len() {
            let (mut alone, waits) = self.alone(&state, part);
            if !alone.is_complete() {
                let may = |kind: usize| self.shop.stock.kinds.get(kind).is_some_and(|kind| kind.may.get(part) == Some(&true));
                let own: Vec<(usize, usize)> = kinds.iter().copied().filter(|(kind, _)| may(*kind)).collect();
                let found = own.into_iter().filter_map(|(kind, pile)| Some((self.more(&alone, kind, patience)?, pile)));
                let ((n, then), pile) = found.min_by_key(|((n, _), _)| *n)?;
                all.push((part, pile, n));
                alone = then;
            }
            alone.left.iter_mut().zip(waits).for_each(|(left, waits)| *left = left.saturating_add(waits));
            state = alone;
        }
        Some(all)
    }

    /// The same with nothing missing but of one part and its strips; and what is missing of the others.
    fn alone(&self, state: &State, part: usize) -> (State, Vec<i64>) {
        let parts = self.shop.stock.parts.len();
        let of = |row: usize| row.checked_sub(parts).map_or(row, |nth| self.shop.saw.strips.get(nth).map_or(row, |strip| strip.part));
        let waits: Vec<i64> = state.left.iter().enumerate().map(|(row, left)| if of(row) == part { 0 } else { (*left).max(0) }).collect();
        let mut alone = state.clone();
        alone.left.iter_mut().zip(&waits).for_each(|(left, waits)| *left = left.saturating_sub(*waits));
        (alone, waits)
    }
}
