//! How many pieces must sell before what was spent ahead is back: a stall, a fair, a market.

use super::sums::{less, over};
use crate::quantity::{Count, Decimal};
use crate::refusal::{Answer, Refusal};

/// Pieces that cover what was spent ahead: spent / (you get - what one costs), up to a whole piece.
/// Source: break-even units, OpenStax, Principles of Accounting 2.
///
/// # Errors
/// [`Refusal::NeverCovered`] when a piece leaves nothing, [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{money::cover::pieces_to_cover, quantity::Decimal};
/// let n = |n: i64| Decimal::from(n);
/// assert_eq!(pieces_to_cover(n(20_000), n(400), n(250)), Ok(134)); // 133.3 pieces
/// ```
pub fn pieces_to_cover(spent_ahead: Decimal, you_get: Decimal, one_costs: Decimal) -> Answer<Count> {
    let left = less(you_get, one_costs)?;
    if left <= Decimal::ZERO {
        return Err(Refusal::NeverCovered { left });
    }
    let pieces = over(spent_ahead.max(Decimal::ZERO), left)?.ceil();
    Count::try_from(pieces).map_err(|_| Refusal::OutOfRange)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::d;

    #[track_caller]
    fn check(ahead: &str, get: &str, costs: &str, wanted: Answer<Count>) {
        assert_eq!(pieces_to_cover(d(ahead), d(get), d(costs)), wanted);
    }

    /// A stall of 65.00 and 13.05 of driving; a stand brings 137.44 in notes and cost 9.90.
    #[test]
    fn a_stall_is_covered_by_whole_pieces() {
        check("78.05", "137.44", "9.90", Ok(1));
        check("378.05", "137.44", "9.90", Ok(3));
        check("0", "137.44", "9.90", Ok(0));
        check("78.05", "9.90", "9.90", Err(Refusal::NeverCovered { left: d("0") }));
    }
}
