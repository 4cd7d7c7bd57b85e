//! Why no more sets can be cut: what decides the bound.

use super::cutting::{Asked, Saw};
use super::problem::Problem;
use super::relax::{self, Pool};
use super::stock::Stock;
use crate::plan::patience::Patience;
use crate::plan::price::{self, Priced};

/// What keeps the number of sets down. Parts are named by their place in the problem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// No more are wanted.
    Wish,
    /// One part alone: no more pieces of it come out of all sticks it may come from.
    Part { part: usize },
    /// All sticks together are too short for one set more, kerfs and what fits taken into account.
    Wood,
    /// These parts together, for the sticks that they share.
    Together { parts: Vec<usize> },
    /// Only a search through all plans shows it.
    Search,
}

/// What decides that no plan makes more than `sets` sets.
pub fn why(problem: &Problem, sets: i128, patience: &mut Patience<'_>) -> Why {
    if problem.sets.is_some_and(|wish| i128::from(wish) <= sets) {
        return Why::Wish;
    }
    let stock = Stock::of(problem);
    let saw = Saw::new(&stock, stock.wood());
    let only = |nth: usize| (0..stock.parts.len()).map(|part| i64::from(part == nth)).collect::<Vec<_>>();
    for (nth, part) in stock.parts.iter().enumerate() {
        if at_prices(&saw, &only(nth), patience).is_some_and(|most| most <= sets) {
            return Why::Part { part: part.own.first().copied().unwrap_or(0) };
        }
    }
    let sizes: Vec<i64> = stock.parts.iter().map(|part| part.size).collect();
    if at_prices(&saw, &sizes, patience).is_some_and(|most| most <= sets) {
        return Why::Wood;
    }
    let (most, prices) = relax::most_sets(&saw, &mut Pool::default(), patience);
    let dear = stock.parts.iter().zip(&prices).filter(|(_, price)| 0 < **price).flat_map(|(part, _)| part.own.iter().copied());
    if i128::from(most) <= sets { Why::Together { parts: dear.collect() } } else { Why::Search }
}

/// The most sets at these prices.
fn at_prices(saw: &Saw<'_>, prices: &[i64], patience: &mut Patience<'_>) -> Option<i128> {
    let limits = vec![i64::MAX; prices.len()];
    let most = saw.most(&Asked { prices, limits: &limits, scale: 0 }, patience);
    let piles = saw.stock.piles.iter().zip(&most).map(|(pile, most)| Priced { count: pile.count, most: i128::from(*most) });
    let one = |(price, part): (&i64, &super::stock::Part)| i128::from(*price).saturating_mul(i128::from(part.each));
    let set = prices.iter().zip(&saw.stock.parts).map(one).fold(0, i128::saturating_add);
    price::most_sets(&piles.collect::<Vec<_>>(), set)
}
