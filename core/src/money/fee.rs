//! What a card or a marketplace keeps of a payment: a share and something fixed, half up for each payment.

use super::sums::{book, not_below_nothing, plus, share, times};
use crate::quantity::{Decimal, Money};
use crate::refusal::Answer;

/// 2.6 % and 0.10 a payment, say. Notes and coins cost nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fee {
    pub share: Decimal,
    pub fixed: Decimal,
}

impl Fee {
    pub const NONE: Fee = Fee { share: Decimal::ZERO, fixed: Decimal::ZERO };

    /// The fee on one payment.
    ///
    /// # Errors
    /// [`ShareOutOfRange`](crate::refusal::Refusal::ShareOutOfRange),
    /// [`BelowNothing`](crate::refusal::Refusal::BelowNothing) for a fixed part below nothing.
    ///
    /// ```
    /// use fivebar_core::{money::fee::Fee, quantity::{Currency, Decimal, Money}};
    /// let card = Fee { share: Decimal::new(26, 3), fixed: Decimal::new(10, 2) };
    /// let fee = card.of(Money::book(Decimal::from(145), Currency::USD).unwrap()).unwrap();
    /// assert_eq!(fee.to_string(), "3.87 USD");
    /// ```
    pub fn of(self, payment: Money) -> Answer<Money> {
        let bite = times(payment.amount(), share(self.share)?)?;
        book(plus(bite, not_below_nothing(self.fixed)?)?, payment.currency())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, usd};
    use crate::refusal::Refusal;

    #[track_caller]
    fn check(share: &str, fixed: &str, payment: &str, wanted: Answer<Money>) {
        assert_eq!(Fee { share: d(share), fixed: d(fixed) }.of(usd(payment)), wanted);
    }

    #[test]
    fn fees_are_per_payment() {
        check("0.026", "0.10", "145", Ok(usd("3.87")));
        check("0.026", "0.10", "130", Ok(usd("3.48")));
        check("0", "0", "145", Ok(usd("0")));
        check("1", "0", "145", Err(Refusal::ShareOutOfRange { met: d("1") }));
        check("0.1", "-1", "145", Err(Refusal::BelowNothing { met: d("-1") }));
    }
}
