//! What one set more lacks: the plan that comes nearest to it, glued parts counted as parts.

use super::pool::Pool;
use super::relax::Shop;
use super::search::Search;
use super::state::State;
use crate::plan::patience::{Patience, Progress};

/// Steps for going on from the best plan: a few rounds of rounding.
const STEPS: u64 = 400;

/// Of a set more the plan that lacks the least finished wood: what the search for it has, a part whose strips are lacking taken as lacking
/// itself, or the best plan with what the boards left beside it give.
pub(super) fn nearest(shop: &Shop<'_>, pool: &mut Pool, next: &Search, best: Option<&Search>) -> State {
    let mut found = next.state.clone();
    found.unglue(shop, pool);
    let is_more = |best: &&Search| best.sets.saturating_add(1) == next.sets && shop.stock.parts.iter().any(|part| part.glue);
    let Some(best) = best.filter(is_more) else { return found };
    let mut from = best.state.clone();
    from.left.iter_mut().zip(shop.set()).for_each(|(left, each)| *left = left.saturating_add(each));
    let mut goes_on = |_: Progress<'_>| true;
    let mut other = next.filled(shop, pool, from, &mut Patience::new(Some(STEPS), &mut goes_on));
    other.unglue(shop, pool);
    if lacking(shop, &other) < lacking(shop, &found) { other } else { found }
}

/// The finished wood of the parts that are missing.
fn lacking(shop: &Shop<'_>, state: &State) -> i64 {
    let each = state.left.iter().zip(&shop.stock.parts).map(|(left, part)| (*left).max(0).saturating_mul(part.weight));
    each.fold(0, i64::saturating_add)
}
