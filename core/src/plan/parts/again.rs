//! The same boards counted otherwise, asked again and again: cuts that were found once serve again.

use super::pool::Pool;
use super::problem::Problem;
use super::relax::Shop;
use super::search::Search;
use super::state::State;
use super::stock::{self, Rounding, Stock};
use super::strips;
use crate::plan::patience::Patience;

/// Cuts that are known, from asking to asking.
#[derive(Default)]
pub struct Cuts {
    pool: Pool,
}

/// So many boards of each pile, which give at least so many sets and at most so many.
#[derive(Clone, Debug)]
pub struct Ask {
    pub boards: Vec<i64>,
    pub least: i64,
    pub most: i64,
}

/// So many sets below the most are tried, and so many rounds for new cuts are gone for the first of them.
const DOWN: i64 = 3;
const ROUNDS: u32 = 2;
/// Fewer widths of glue strips than a plan has: it is quicker, and hides a set now and then.
const WIDTHS: usize = 8;

impl Cuts {
    /// The most sets that rounding finds for each of the counts, until patience is over; where widths are too many to try, what is known.
    pub fn sets(&mut self, problem: &Problem, asked: &[Ask], patience: &mut Patience<'_>) -> Vec<i64> {
        let stock = Stock::of(problem, stock::measure(problem), Rounding::Safe);
        let known = || asked.iter().map(|ask| ask.least).collect();
        let Some(shop) = Shop::new(&stock, strips::some(&stock, WIDTHS), false) else { return known() };
        shop.begin(&mut self.pool);
        let most = asked.iter().map(|ask| ask.most).max().unwrap_or(0);
        let search = Search::new(&shop, &mut self.pool, (most, vec![]), patience);
        let mut found = vec![];
        for ask in asked {
            let sets = self.most(&shop, &search, ask, patience);
            if patience.is_over() {
                break;
            }
            found.push(sets);
        }
        found
    }

    fn most(&mut self, shop: &Shop<'_>, search: &Search, ask: &Ask, patience: &mut Patience<'_>) -> i64 {
        let there =
            |kind: &stock::Kind| kind.piles.iter().filter_map(|pile| ask.boards.get(*pile)).fold(0_i64, |sum, n| sum.saturating_add(*n));
        let boards: Vec<i64> = shop.stock.kinds.iter().map(there).collect();
        let mut down = 0_i64;
        let mut sets = ask.most;
        while ask.least < sets {
            let state = State { boards: boards.clone(), ..State::empty(shop, sets) };
            let rounds = if down == 0 { ROUNDS } else { 0 };
            if search.completes(shop, &mut self.pool, (state.clone(), 0), patience)
                || 0 < rounds && search.completes(shop, &mut self.pool, (state, rounds), patience)
            {
                return sets;
            }
            down = down.saturating_add(1);
            // Where the most is far off, halving is quicker than going down.
            sets = if down < DOWN { sets.saturating_sub(1) } else { ask.least.saturating_add(sets.saturating_sub(ask.least) / 2) };
        }
        ask.least
    }
}
