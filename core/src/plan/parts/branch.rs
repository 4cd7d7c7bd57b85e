//! A sharper bound on wood: how many boards of a kind are used is a whole number.
//!
//! Branch and bound: Land and Doig, Econometrica 28, 1960 (recalled).

use super::pool::Pool;
use super::relax::{Relaxed, Shop, Wanted};
use crate::plan::patience::Patience;

/// More boards than these are not gone through.
pub(super) const BOARDS_MOST: i64 = 64;
const BOXES_MOST: usize = 150;
/// How far from whole a number of boards may be by rounding.
const WHOLE: f64 = 1e-5;

/// No plan for what is wanted costs less than this; at most `best`, which a plan costs.
pub(super) fn least(shop: &Shop<'_>, pool: &mut Pool, (wanted, best): (&Wanted, i64), patience: &mut Patience<'_>) -> i64 {
    let mut open = vec![wanted.clone()];
    let mut least = best;
    let mut looked = 0_usize;
    while let Some(one) = open.pop() {
        looked = looked.saturating_add(1);
        if BOXES_MOST < looked || patience.is_over() {
            return i64::MIN;
        }
        let relaxed = shop.cheapest(pool, &one, patience);
        if best <= relaxed.least {
            continue;
        }
        let Some((kind, boards)) = between(shop, pool, &relaxed) else {
            least = least.min(relaxed.least);
            continue;
        };
        let (mut fewer, mut more) = (one.clone(), one);
        if let (Some(most), Some(least)) = (fewer.most.get_mut(kind), more.least.get_mut(kind)) {
            (*most, *least) = ((*most).min(boards), (*least).max(boards.saturating_add(1)));
        }
        open.push(fewer);
        open.push(more);
    }
    least
}

/// The kind whose number of boards is farthest from whole, and that number rounded down.
fn between(shop: &Shop<'_>, pool: &Pool, relaxed: &Relaxed) -> Option<(usize, i64)> {
    let mut used = vec![0.0_f64; shop.stock.kinds.len()];
    for (kind, level) in relaxed.levels.iter().filter_map(|(nth, level)| Some((pool.get(*nth)?.kind()?, level))) {
        used.iter_mut().skip(kind).take(1).for_each(|sum| *sum += level);
    }
    let far = |(kind, used): (usize, &f64)| (kind, *used, (used - used.round()).abs());
    let farthest = used.iter().enumerate().map(far).filter(|(.., far)| WHOLE < *far).max_by(|a, b| a.2.total_cmp(&b.2));
    farthest.map(|(kind, used, _)| (kind, used.floor() as i64))
}
