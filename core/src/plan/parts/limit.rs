//! Limits on sets that hold whatever number of boards there turns out to be.

use super::pool::Pool;
use super::problem::{Part, Problem};
use super::relax::{Shop, Tariff};
use super::stock::{self, Rounding, Stock};
use super::strips;
use crate::plan::patience::Patience;

/// What a board gives at most of what a set costs: no plan makes more sets than all boards give together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Limit {
    /// The price of a set.
    pub set: i128,
    /// By pile: the most that one board of it is worth.
    pub most: Vec<i128>,
    /// The part that is the dearest of the set; none where all wood counts alike.
    pub part: Option<usize>,
}

impl Limit {
    /// What so many boards of each pile are worth.
    pub fn worth(&self, boards: &[i64]) -> i128 {
        let each = boards.iter().zip(&self.most).map(|(n, most)| i128::from(*n).saturating_mul(*most));
        each.fold(0, i128::saturating_add)
    }

    /// No more sets than these: floor(sum of boards x most / set).
    ///
    /// ```
    /// use fivebar_core::plan::parts::limit::Limit;
    /// // A set is four legs at a price of one each; a board of one pile gives one leg, of the other two.
    /// let limit = Limit { set: 4, most: vec![1, 2], part: Some(0) };
    /// assert_eq!(limit.sets(&[9, 5]), 4); // 19 legs
    /// ```
    pub fn sets(&self, boards: &[i64]) -> i64 {
        self.worth(boards).checked_div(self.set).and_then(|sets| i64::try_from(sets).ok()).unwrap_or(i64::MAX)
    }
}

/// Each part alone, and all wood by its volume.
pub fn alone(problem: &Problem, patience: &mut Patience<'_>) -> Vec<Limit> {
    let mut limits = vec![by_volume(problem)];
    let parts = problem.parts.len();
    let prices = |own: usize| (0..parts).map(|part| if part == own { 1000 } else { 0 }).collect();
    limits.extend((0..parts).filter_map(|own| at(problem, prices(own), patience)));
    limits
}

/// All parts together, at the prices that so many boards of each pile ask for.
pub fn together(problem: &Problem, boards: &[i64], patience: &mut Patience<'_>) -> Option<Limit> {
    let (stock, glued) = free(&problem.with(boards));
    let shop = Shop::new(&stock, strips::least(&stock), glued).filter(|shop| shop.saw.is_exact)?;
    let (_, prices) = shop.most_sets(&mut Pool::default(), patience);
    if prices.is_empty() { None } else { at(problem, prices, patience) }
}

impl Problem {
    /// The same with so many boards of each pile.
    pub fn with(&self, boards: &[i64]) -> Problem {
        let mut other = self.clone();
        for (pile, n) in other.piles.iter_mut().zip(boards) {
            pile.count = *n;
        }
        other
    }
}

fn free(problem: &Problem) -> (Stock, bool) {
    (Stock::of(problem, stock::measure(problem), Rounding::Free), problem.parts.iter().any(|part| part.glue))
}

/// At these prices of the parts.
fn at(problem: &Problem, rows: Vec<i64>, patience: &mut Patience<'_>) -> Option<Limit> {
    let (stock, glued) = free(&problem.with(&vec![1; problem.piles.len()]));
    let shop = Shop::new(&stock, strips::least(&stock), glued).filter(|shop| shop.saw.is_exact)?;
    let mut tariff = Tariff { rows, scale: 0 };
    let best = shop.look(&mut tariff, patience).0;
    let worth = |(n, price): (i64, &i64)| i128::from(n).saturating_mul(i128::from(*price));
    let costs: Vec<i128> = shop.set().into_iter().zip(&tariff.rows).map(worth).collect();
    let mut most = vec![0; problem.piles.len()];
    for (kind, best) in stock.kinds.iter().zip(&best) {
        most.iter_mut().enumerate().filter(|(pile, _)| kind.piles.contains(pile)).for_each(|(_, most)| *most = i128::from(*best));
    }
    let part = costs.iter().enumerate().max_by_key(|(nth, cost)| (**cost, std::cmp::Reverse(*nth))).map(|(nth, _)| nth);
    let set = costs.into_iter().fold(0, i128::saturating_add);
    (best.len() == stock.kinds.len() && 0 < set).then_some(Limit { set, most, part })
}

fn by_volume(problem: &Problem) -> Limit {
    let volume = |sides: [i64; 3]| sides.into_iter().map(i128::from).fold(1, i128::saturating_mul);
    let each = |part: &Part| volume([part.length, part.width, part.thickness]).saturating_mul(i128::from(part.per_set));
    Limit {
        set: problem.parts.iter().map(each).fold(0, i128::saturating_add),
        most: problem.piles.iter().map(|pile| volume([pile.length, pile.width, pile.thickness])).collect(),
        part: None,
    }
}
