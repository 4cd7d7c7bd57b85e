//! What no plan can pass, proven in whole numbers from whatever prices the linear programme found.

use super::pattern::Patterns;
use super::relax::Relaxed;
use super::stock::Stock;
use crate::plan::price::{self, Priced};

/// A unit of a price.
const SCALE: f64 = 1_048_576.0; // 2^20

/// The prices of all strips together, and the least of a row where its own cost counts too.
struct Paid {
    piles: Vec<Priced>,
    least: i128,
}

fn paid(stock: &Stock, patterns: &Patterns, prices: &[i64], cost: &dyn Fn(usize) -> i128) -> Paid {
    let price = |kind: &u8| i128::from(prices.get(usize::from(*kind)).copied().unwrap_or(0));
    let row = |(nth, pattern): (usize, &super::pattern::Pattern)| pattern.0.iter().map(price).fold(cost(nth), i128::saturating_add);
    let piles = stock.kinds.iter().zip(prices).map(|(kind, price)| Priced { count: i64::from(kind.count), most: i128::from(*price) });
    Paid { piles: piles.collect(), least: patterns.all.iter().enumerate().map(row).min().unwrap_or(0) }
}

/// No more rows than these.
pub(super) fn most_rows(stock: &Stock, patterns: &Patterns, relaxed: &Relaxed) -> usize {
    if !patterns.complete {
        return stock.rows;
    }
    if patterns.all.is_empty() {
        return 0;
    }
    let prices = price::whole(&relaxed.prices, SCALE * 4096.0);
    let paid = paid(stock, patterns, &prices, &|_| 0);
    let most = price::most_sets(&paid.piles, paid.least).and_then(|rows| usize::try_from(rows).ok());
    most.map_or(stock.rows, |most| most.min(stock.rows))
}

/// No plan of so many rows loses less.
pub(super) fn least_lost(stock: &Stock, patterns: &Patterns, relaxed: &Relaxed, rows: usize) -> i128 {
    let prices = price::whole(&relaxed.prices, SCALE);
    let lost = |nth: usize| patterns.all.get(nth).map_or(0, |pattern| pattern.cost(stock).0 as i128);
    let paid = paid(stock, patterns, &prices, &|nth| lost(nth).saturating_mul(SCALE as i128));
    price::least_consumed(&paid.piles, paid.least.saturating_mul(rows as i128), SCALE as i128).unwrap_or(0)
}

/// No more rows than these where strips may be cut: what they are long, less one cut where rows can't do without.
pub(super) fn most_rows_cut(stock: &Stock, patterns: &Patterns) -> usize {
    let long: f64 = stock.kinds.iter().map(|kind| kind.long * f64::from(kind.count)).sum();
    let exact = stock.rows as f64 * stock.panel == long;
    if 0 < stock.rows && exact && must_cut(stock, patterns, stock.rows) { stock.rows.saturating_sub(1) } else { stock.rows }
}

/// Whether so many rows can't be laid of whole strips alone: none comes out exactly, or one only, of strips all alike, that clashes with itself.
pub(super) fn must_cut(stock: &Stock, patterns: &Patterns, rows: usize) -> bool {
    if stock.kerf == 0.0 {
        return false; // a cut that takes nothing away loses nothing
    }
    let mut whole = patterns.all.iter().filter(|pattern| pattern.over(stock) == 0.0);
    match (whole.next(), whole.next()) {
        (None, _) => patterns.complete,
        (Some(one), None) => patterns.complete && 1 < rows && 0.0 < stock.stagger && 1 < one.0.len() && one.0.first() == one.0.last(),
        _ => false,
    }
}
