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
    let kinds = stock.kinds.iter().enumerate();
    let kinds: Vec<(usize, usize)> = kinds.filter_map(|(nth, kind)| Some((nth, *kind.piles.iter().find(|pile| may(**pile))?))).collect();
    let mut free = search.state.clone();
    free.unglue(&shop, &pool);
    let missing = free.left.iter().take(stock.parts.len()).copied().enumerate().filter(|(_, left)| 0 < *left).collect();
    let mut tries = Tries { shop: &shop, pool, search };
    // Of a glued part the very strips that lack may come out of no board: then it is glued of others.
    for from in [tries.search.state.clone(), free] {
        let all = |(nth, pile): &(usize, usize)| Some((*pile, tries.more(&from, *nth, patience)?.0));
        let any: Vec<(usize, i64)> = kinds.iter().filter_map(all).collect();
        let each = if any.is_empty() { tries.each(&from, &kinds, patience).unwrap_or_default() } else { vec![] };
        if !any.is_empty() || !each.is_empty() {
            return More { missing, any, each };
        }
    }
    More { missing, ..More::default() }
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
        let pieces = from.left.iter().enumerate().map(|(row, left)| (*left).max(0).saturating_mul(self.strips(row, kind)));
        let most = pieces.fold(0_i64, i64::saturating_add).saturating_mul(4).clamp(1, MORE_MOST);
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

    /// So many strips as wide as boards of a kind make a part that is glued up; one piece makes any other.
    fn strips(&self, row: usize, kind: usize) -> i64 {
        let Some(part) = self.shop.stock.parts.get(row).filter(|part| part.glue) else { return 1 };
        let wide = self.shop.stock.kinds.get(kind).map_or(1, |kind| kind.wide.max(1));
        part.need.saturating_add(wide).saturating_sub(1).checked_div(wide).unwrap_or(1).max(1)
    }

    /// Part by part: what is missing of the others waits, and what was cut for those before is taken.
    fn each(&mut self, from: &State, kinds: &[(usize, usize)], patience: &mut Patience<'_>) -> Option<Vec<(usize, usize, i64)>> {
        let (mut state, mut all) = (from.clone(), vec![]);
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
