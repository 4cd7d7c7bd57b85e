//! What no plan can pass where strips may be cut on purpose: how few strips are long enough, their squaring, and the fewest cuts.

use super::bound::must_cut;
use super::fewcuts::FewCuts;
use super::pattern::Patterns;
use super::stock::Stock;
use crate::plan::patience::Patience;

/// Panels longer than this, in the common unit, get no bound but that on rows.
const LONG: f64 = 400_000.0;
/// So many choices of strips are looked through for the squares.
const CHOICES: u64 = 30_000;

/// So many rests are looked at one by one; with more of them a kerf for each is counted, and no waste.
const RESTS: u32 = 4;

/// The least length lost by any plan of so many rows, in the common unit.
///
/// The strips used are as long as the rows, what is wasted and what goes back. Squaring is lost of each; a strip that gives
/// back a rest also gives a piece and loses a kerf; where whole strips alone can't do it, something is lost; and the pieces
/// that the rows need at least are cut from the strips with a kerf for each more than strips.
pub(super) fn least_lost(stock: &Stock, patterns: &Patterns, rows: usize, patience: &mut Patience<'_>) -> Option<f64> {
    let wanted = stock.panel * rows as f64;
    if LONG < wanted || rows == 0 {
        return None;
    }
    let waste: f64 = if must_cut(stock, patterns, rows) { 1.0 } else { 0.0 };
    let few = fewest(stock, wanted, patience);
    let cuts = FewCuts::of(stock, rows);
    let longest = stock.kinds.first().map_or(0.0, |kind| kind.long);
    let (rest, most) = (stock.keep.max(1.0) + stock.kerf, longest - stock.least - stock.kerf);
    let mut least = f64::MAX;
    for (sum, n) in few {
        let over = sum - wanted;
        for back in (0..=RESTS).map(f64::from).take_while(|back| waste.max(back * rest) <= over && (*back == 0.0 || returns(stock))) {
            let wasted = if back < f64::from(RESTS) { over - back * most.max(0.0) } else { 0.0 };
            least = least.min(cuts.least_lost(n, back, wasted.max(waste).max(back * stock.kerf)));
        }
    }
    (!patience.is_over() && least < f64::MAX).then_some(least)
}

/// Whether what is left of some strip can be long enough to go back.
fn returns(stock: &Stock) -> bool {
    stock.kinds.first().is_some_and(|longest| stock.keep.max(1.0) + stock.kerf <= longest.long)
}

/// The fewest strips for each sum from `wanted` on, as far as a plan could need; exact, with each pile shared out in lots of 1, 2, 4 and so on.
fn fewest(stock: &Stock, wanted: f64, patience: &mut Patience<'_>) -> Vec<(f64, f64)> {
    let longest = stock.kinds.first().map_or(0.0, |kind| kind.long);
    let total: f64 = stock.kinds.iter().map(|kind| kind.long * f64::from(kind.count)).sum();
    let rests = f64::from(RESTS) * (stock.keep.min(longest) + stock.kerf + 1.0);
    let ends = (wanted + longest + rests).min(total) as usize;
    let none = u32::MAX;
    let mut least: Vec<u32> = vec![none; ends.saturating_add(1)];
    least.iter_mut().take(1).for_each(|n| *n = 0);
    for kind in &stock.kinds {
        let (mut left, mut lot) = (kind.count, 1_u32);
        while 0 < left && !patience.is_over() {
            let many = lot.min(left);
            let long = (kind.long * f64::from(many)) as usize;
            for sum in (long..least.len()).rev() {
                let before = least.get(sum.saturating_sub(long)).copied().unwrap_or(none);
                if let Some(own) = least.get_mut(sum) {
                    *own = before.saturating_add(many).min(*own);
                }
            }
            (left, lot) = (left.saturating_sub(many), lot.saturating_mul(2));
            patience.spend((least.len() as u64).div_ceil(400));
        }
    }
    least.into_iter().enumerate().skip(wanted as usize).filter(|(_, n)| *n < none).map(|(sum, n)| (sum as f64, f64::from(n))).collect()
}

/// The least squares of any plan of so many rows that loses `lost`: that fixes what goes back, whatever strips are taken.
pub(super) fn least_squares(stock: &Stock, patterns: &Patterns, rows: usize, lost: f64) -> Option<f64> {
    let choices = stock.kinds.iter().try_fold(1_u64, |all, kind| all.checked_mul(u64::from(kind.count).checked_add(1)?))?;
    if CHOICES < choices {
        return None;
    }
    let waste: f64 = if must_cut(stock, patterns, rows) { 1.0 } else { 0.0 };
    let cuts = FewCuts::of(stock, rows);
    let mut taken: Vec<u32> = vec![0; stock.kinds.len()];
    let mut best = f64::MAX;
    for _ in 0..choices {
        let sums = stock.kinds.iter().zip(&taken).fold((0.0, 0.0, 0.0), |sum, (kind, n)| {
            let n = f64::from(*n);
            (sum.0 + n, sum.1 + n * kind.long, sum.2 + n * kind.low * kind.low)
        });
        let wasted = lost - 2.0 * stock.square * sums.0;
        let rest = sums.1 - stock.panel * rows as f64 - wasted;
        let back = if rest == 0.0 { 0.0 } else { 1.0 };
        if waste.max(cuts.lost(sums.0, back)) <= wasted && (rest == 0.0 || returns(stock) && stock.keep.max(1.0) <= rest) {
            best = best.min(sums.2 - rest * rest);
        }
        for (n, kind) in taken.iter_mut().zip(&stock.kinds) {
            if *n < kind.count {
                *n = n.saturating_add(1);
                break;
            }
            *n = 0;
        }
    }
    (best < f64::MAX).then_some(best)
}
