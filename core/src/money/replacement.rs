//! What the wood of a piece would have cost as bought boards: for asking prices, never for a tax return.

use super::sums::{book, not_below_nothing, over, times};
use crate::quantity::{Currency, Decimal, Money, Volume};
use crate::refusal::Answer;

/// A price for equal boards, by the board foot, the litre or the cubic metre.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoardPrice {
    pub amount: Decimal,
    pub per: Volume,
    pub currency: Currency,
}

/// Of bought boards, what ends up in the piece, before the maker has history. Our judgement, no source.
pub const BOUGHT_YIELD: Decimal = Decimal::from_parts(70, 0, 0, false, 2);

/// Bought wood that equals so much finished wood: finished / yield x price.
///
/// # Errors
/// [`NothingToShareBy`](crate::refusal::Refusal::NothingToShareBy) for a yield or a measure of nothing, [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
///
/// ```
/// use fivebar_core::money::replacement::{BOUGHT_YIELD, BoardPrice, replaced};
/// use fivebar_core::quantity::{Currency, Decimal, Length, Volume};
/// let inches = |n: i64| Length::INCH.times(n).unwrap();
/// let foot = Volume::of(inches(12), inches(12), inches(1)).unwrap();
/// let ash = BoardPrice { amount: Decimal::new(475, 2), per: foot, currency: Currency::USD };
/// assert_eq!(replaced(foot.times(7).unwrap(), BOUGHT_YIELD, ash).unwrap().to_string(), "47.50 USD");
/// ```
pub fn replaced(finished: Volume, yielded: Decimal, price: BoardPrice) -> Answer<Money> {
    let boards = times(finished.share_of(price.per)?, not_below_nothing(price.amount)?)?;
    book(over(boards, not_below_nothing(yielded)?)?, price.currency)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, usd};
    use crate::quantity::Length;
    use crate::refusal::Refusal;

    fn eighths(a: i64, b: i64, c: i64, n: u32) -> Volume {
        let l = |n: i64| Length::INCH_64TH.times(8 * n).unwrap();
        Volume::of(l(a), l(b), l(c)).unwrap().times(n).unwrap()
    }

    /// One plant stand: top, 4 legs, 4 rails, 8 pegs. Five of them equal 14.11 bf of ash, 67.025 exactly.
    #[test]
    fn equal_bought_ash_of_the_demo() {
        let parts = [eighths(76, 76, 7, 5), eighths(12, 12, 144, 20), eighths(14, 6, 64, 20), eighths(4, 4, 6, 40)];
        let finished = parts.into_iter().try_fold(Volume::ZERO, Volume::plus).unwrap();
        let foot = eighths(96, 96, 8, 1);
        let ash = |yielded| replaced(finished, yielded, BoardPrice { amount: d("4.75"), per: foot, currency: usd("0").currency() });
        let boards = finished.board_feet().checked_div(BOUGHT_YIELD).unwrap();
        assert_eq!(crate::money::figures::shown(boards), "14.11");
        assert_eq!(ash(BOUGHT_YIELD), Ok(usd("67.03")));
        assert_eq!(ash(Decimal::ZERO), Err(Refusal::NothingToShareBy));
    }
}
