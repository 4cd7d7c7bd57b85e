//! Bounds from prices: true for any whole-number prices, good or bad, so nothing has to be trusted but whole sums.
//!
//! Farley, "A note on bounding a class of linear programming problems, including cutting stock problems", Operations Research 38, 1990 (recalled).

/// A pile as a bound sees it: how many pieces, and the most that one of them can give at the prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Priced {
    pub count: i64,
    pub most: i128,
}

fn in_all(piles: &[Priced]) -> Option<i128> {
    piles.iter().try_fold(0_i128, |sum, pile| sum.checked_add(i128::from(pile.count).checked_mul(pile.most.max(0))?))
}

/// No plan makes more sets than this: what all piles can give at the prices, over the price of one set. `None` where a set costs nothing or a sum is too large.
///
/// sets <= floor(sum of count x most / price of one set).
///
/// ```
/// use fivebar_core::plan::price::{most_sets, Priced};
/// // A set is three rails, at a price of one each; twenty sticks give two rails each: 13 sets and one rail.
/// assert_eq!(most_sets(&[Priced { count: 20, most: 2 }], 3), Some(13));
/// ```
pub fn most_sets(piles: &[Priced], set: i128) -> Option<i128> {
    if set <= 0 { None } else { in_all(piles)?.checked_div(set) }
}

/// No plan that makes `worth` at the prices consumes less than this: `most` is here the worth of the best cut of one piece less `scale` for each unit consumed.
///
/// consumed >= ceil((worth - sum of count x most) / scale).
///
/// ```
/// use fivebar_core::plan::price::{least_consumed, Priced};
/// // Parts worth 100; no piece of wood gives more than it consumes, but for four that give 5 more.
/// assert_eq!(least_consumed(&[Priced { count: 4, most: 5 }], 100, 3), Some(27)); // 80 / 3
/// ```
pub fn least_consumed(piles: &[Priced], worth: i128, scale: i128) -> Option<i128> {
    if scale <= 0 {
        return None;
    }
    let over = worth.checked_sub(in_all(piles)?)?;
    let (whole, rest) = (over.checked_div_euclid(scale)?, over.checked_rem_euclid(scale)?);
    Some(whole.checked_add(i128::from(0 < rest))?.max(0))
}

/// Prices that floats chose, made whole: times `scale`, to the nearest, none below nothing or above 2^47: thirty thousand pieces of one board still fit 64 bits.
pub fn whole(prices: &[f64], scale: f64) -> Vec<i64> {
    const MOST: f64 = 140_737_488_355_328.0;
    let one = |price: &f64| if price.is_finite() { (price * scale).round().clamp(0.0, MOST) as i64 } else { 0 };
    prices.iter().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_too_large_or_free_proves_nothing() {
        let huge = [Priced { count: i64::MAX, most: i128::MAX }];
        assert_eq!([most_sets(&huge, 1), most_sets(&[], 0), least_consumed(&huge, 1, 1), least_consumed(&[], 5, 0)], [None; 4]);
        assert_eq!(most_sets(&[Priced { count: 3, most: -7 }], 2), Some(0));
        assert_eq!(least_consumed(&[], -5, 3), Some(0));
        assert_eq!(whole(&[0.5, -1.0, f64::NAN, 1e30], 3.0), [2, 0, 0, 140_737_488_355_328]);
    }
}
