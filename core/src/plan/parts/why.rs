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

/// How many more boards of a pile, any one of these, would make one set more than `sets`: such a plan is known, fewer may do.
pub fn unlock(problem: &Problem, sets: i64, patience: &mut Patience<'_>, seed: u64) -> Vec<(usize, i64)> {
    let stock = Stock::of(problem, stock::measure(problem), Rounding::Safe);
    let Some(shop) = Shop::new(&stock, strips::worthwhile(&stock), false) else { return vec![] };
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
        return vec![];
    }
    let kinds = stock.kinds.iter().enumerate();
    let more = kinds.filter_map(|(nth, kind)| Some((*kind.piles.first()?, more(&shop, &mut pool, (&search, nth), patience)?)));
    more.collect()
}

/// The fewest boards of a kind from which all that is missing was cut; `None` where no number up to the most would do.
fn more(shop: &Shop<'_>, pool: &mut Pool, (search, kind): (&Search, usize), patience: &mut Patience<'_>) -> Option<i64> {
    let mut does = |n: i64| {
        let mut state: State = search.state.clone();
        state.boards.iter_mut().skip(kind).take(1).for_each(|there| *there = there.saturating_add(n));
        search.complete(shop, pool, state, patience)
    };
    let most = search.state.left.iter().fold(0_i64, |sum, left| sum.saturating_add((*left).max(0))).saturating_mul(4).clamp(1, MORE_MOST);
    fewest(most, &mut does)
}
