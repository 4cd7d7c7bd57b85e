//! One charge is what the buyer hands over: what the maker gets of it, and what to charge so that a need is met.

use super::sums::{less, not_below_nothing, over, plus, share, times};
use super::{fee::Fee, tax::Tax};
use crate::quantity::{Decimal, Money, Take};
use crate::refusal::{Answer, Refusal};

/// How a sale is taxed and paid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Terms {
    pub tax: Tax,
    pub fee: Fee,
}

impl Terms {
    /// No tax, no fee: what is handed over is what you get.
    pub const PLAIN: Terms = Terms { tax: Tax::NONE, fee: Fee::NONE };

    /// Of a charge q the maker keeps q (1 / (1 + t) - f) - c.
    ///
    /// # Errors
    /// [`Refusal::FeesEatThePrice`] when nothing would be kept, [`Refusal::ShareOutOfRange`], [`Refusal::BelowNothing`].
    pub fn take(self) -> Answer<Take> {
        let keep = less(over(Decimal::ONE, self.tax.factor()?)?, share(self.fee.share)?)?;
        if keep <= Decimal::ZERO {
            return Err(Refusal::FeesEatThePrice { tax: self.tax.rate, fee: self.fee.share });
        }
        Ok(Take { keep, fixed: not_below_nothing(self.fee.fixed)? })
    }

    /// What you get, booked: the charge less its tax line less its fee.
    ///
    /// # Errors
    /// [`Refusal::ShareOutOfRange`], [`Refusal::BelowNothing`], [`Refusal::MoneyOutOfRange`].
    ///
    /// ```
    /// use fivebar_core::money::{charge::Terms, fee::Fee, tax::Tax};
    /// use fivebar_core::quantity::{Currency, Decimal, Money, Side};
    /// let tax = Tax { rate: Decimal::new(55, 3), side: Side::Inside };
    /// let card = Fee { share: Decimal::new(26, 3), fixed: Decimal::new(10, 2) };
    /// let charge = Money::book(Decimal::from(145), Currency::USD).unwrap();
    /// assert_eq!(Terms { tax, fee: card }.you_get(charge).unwrap().to_string(), "133.57 USD"); // 145 - 7.56 - 3.87
    /// ```
    pub fn you_get(self, charge: Money) -> Answer<Money> {
        self.tax.apart(charge)?.before.minus(self.fee.of(charge)?)
    }
}

/// What to charge so that a need is met: q = (N + c) / (1 / (1 + t) - f), unrounded.
///
/// # Errors
/// [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{money::charge::charge_for, quantity::{Decimal, Take, half_up}};
/// let take = Take { keep: Decimal::new(971, 3), fixed: Decimal::new(30, 2) }; // 2.9 % and 0.30
/// assert_eq!(half_up(charge_for(Decimal::from(100), take).unwrap(), 2), Decimal::new(1033, 1)); // 103.30
/// ```
pub fn charge_for(need: Decimal, take: Take) -> Answer<Decimal> {
    over(plus(need, take.fixed)?, take.keep)
}

/// What you get of a charge, unrounded.
///
/// # Errors
/// [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{money::charge::get_of, quantity::{Decimal, Take}};
/// let take = Take { keep: Decimal::new(971, 3), fixed: Decimal::new(30, 2) };
/// assert_eq!(get_of(Decimal::from(100), take), Ok(Decimal::new(968, 1)));
/// ```
pub fn get_of(charge: Decimal, take: Take) -> Answer<Decimal> {
    less(times(charge, take.keep)?, take.fixed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, shown, usd};
    use crate::quantity::Side;
    use crate::quantity::sums::clean;

    fn terms(tax: &str, side: Side, share: &str, fixed: &str) -> Terms {
        Terms { tax: Tax { rate: d(tax), side }, fee: Fee { share: d(share), fixed: d(fixed) } }
    }

    #[track_caller]
    fn check(terms: Terms, charge: &str, get: &str) {
        assert_eq!(terms.you_get(usd(charge)), Ok(usd(get)));
    }

    #[test]
    fn what_you_get_is_booked_line_by_line() {
        check(terms("0.055", Side::Inside, "0.026", "0.10"), "145", "133.57");
        check(terms("0.055", Side::Inside, "0", "0"), "130", "123.22");
        check(terms("0.055", Side::Top, "0.026", "0.10"), "152.98", "140.92");
        check(Terms::PLAIN, "145", "145");
    }

    #[test]
    fn a_charge_gives_back_its_need() {
        let take = terms("0.055", Side::Inside, "0.026", "0.10").take().unwrap();
        assert_eq!(shown(take.keep.checked_mul(d("1000")).unwrap()), "921.87");
        for need in ["0", "0.01", "25.512", "137.7588", "9999.99"] {
            assert_eq!(clean(get_of(charge_for(d(need), take).unwrap(), take).unwrap()), d(need), "{need}");
        }
    }

    #[test]
    fn fees_that_eat_the_price_are_refused() {
        let greedy = terms("0.25", Side::Top, "0.8", "0");
        assert_eq!(greedy.take(), Err(Refusal::FeesEatThePrice { tax: d("0.25"), fee: d("0.8") }));
    }
}
