//! Exact sums of money in one currency. Rounding is half up to the minor unit, named, and done once per booked line.

use super::{Count, Currency};
use crate::refusal::{Answer, Refusal};
use rust_decimal::{Decimal, RoundingStrategy};
use std::fmt;

/// The most minor units a sum may hold, either way.
const MOST_MINOR_UNITS: i64 = 1_000_000_000;

/// A booked sum: whole minor units of one currency.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Money {
    // Invariant: a whole number of minor units within the limit, without trailing zeros.
    amount: Decimal,
    currency: Currency,
}

/// Half up to `digits`, away from zero, so that a refund reverses a sale to the cent.
///
/// ```
/// use fivebar_core::quantity::{Decimal, half_up};
/// assert_eq!(half_up(Decimal::new(16_675, 3), 2), Decimal::new(1_668, 2));
/// assert_eq!(half_up(Decimal::new(-16_675, 3), 2), Decimal::new(-1_668, 2));
/// ```
pub fn half_up(amount: Decimal, digits: u32) -> Decimal {
    amount.round_dp_with_strategy(digits, RoundingStrategy::MidpointAwayFromZero).normalize()
}

impl Money {
    pub fn zero(currency: Currency) -> Money {
        Money { amount: Decimal::ZERO, currency }
    }

    /// A booked line: the exact amount, half up to the minor unit.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    ///
    /// ```
    /// use fivebar_core::quantity::{Currency, Decimal, Money};
    /// let drive = Money::book(Decimal::new(16_675, 3), Currency::USD).unwrap(); // 23 miles at 0.725
    /// assert_eq!(drive.to_string(), "16.68 USD");
    /// ```
    pub fn book(exact: Decimal, currency: Currency) -> Answer<Money> {
        let amount = half_up(exact, currency.digits());
        let most = Decimal::new(MOST_MINOR_UNITS, currency.digits());
        if amount.abs() <= most { Ok(Money { amount, currency }) } else { Err(Refusal::MoneyOutOfRange { currency }) }
    }

    /// The most a sum may hold, either way: 10^9 minor units.
    pub fn most(currency: Currency) -> Money {
        Money { amount: Decimal::new(MOST_MINOR_UNITS, currency.digits()).normalize(), currency }
    }

    /// An amount that already is whole minor units; `None` if it is not or is out of range.
    ///
    /// ```
    /// use fivebar_core::quantity::{Currency, Decimal, Money};
    /// assert!(Money::whole(Decimal::new(1_140, 2), Currency::USD).is_some());
    /// assert!(Money::whole(Decimal::new(11_405, 3), Currency::USD).is_none());
    /// ```
    pub fn whole(amount: Decimal, currency: Currency) -> Option<Money> {
        Money::book(amount, currency).ok().filter(|m| m.amount == amount)
    }

    pub fn amount(self) -> Decimal {
        self.amount
    }

    pub fn currency(self) -> Currency {
        self.currency
    }

    pub fn is_zero(self) -> bool {
        self.amount.is_zero()
    }

    /// So many times this sum.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    ///
    /// ```
    /// use fivebar_core::quantity::{Currency, Decimal, Money};
    /// let tag = Money::book(Decimal::from(145), Currency::USD).unwrap();
    /// assert_eq!(tag.times(3).unwrap().to_string(), "435.00 USD");
    /// ```
    pub fn times(self, n: Count) -> Answer<Money> {
        Money::book(self.amount.checked_mul(Decimal::from(n)).ok_or(Refusal::OutOfRange)?, self.currency)
    }

    /// This and another sum of the same currency.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
    pub fn plus(self, other: Money) -> Answer<Money> {
        if self.currency != other.currency {
            return Err(Refusal::CurrenciesMixed { one: self.currency, other: other.currency });
        }
        let sum = self.amount.checked_add(other.amount).ok_or(Refusal::OutOfRange)?;
        Money::book(sum, self.currency)
    }

    /// What is left after another is taken off; may be below nothing.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
    pub fn minus(self, other: Money) -> Answer<Money> {
        self.plus(Money { amount: other.amount.checked_mul(Decimal::NEGATIVE_ONE).ok_or(Refusal::OutOfRange)?, ..other })
    }

    /// The sum of several in `currency`.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`]; [`Refusal::MoneyOutOfRange`], if only on the way.
    ///
    /// ```
    /// use fivebar_core::quantity::{Currency, Decimal, Money};
    /// let lines = [1_668, 1_140].map(|cents| Money::whole(Decimal::new(cents, 2), Currency::USD).unwrap());
    /// assert_eq!(Money::sum(Currency::USD, lines).unwrap().to_string(), "28.08 USD");
    /// ```
    pub fn sum(currency: Currency, lines: impl IntoIterator<Item = Money>) -> Answer<Money> {
        lines.into_iter().try_fold(Money::zero(currency), Money::plus)
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digits = usize::try_from(self.currency.digits()).unwrap_or(2);
        write!(f, "{:.digits$} {}", self.amount, self.currency)
    }
}

impl fmt::Debug for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn usd(cents: i64) -> Money {
        Money::whole(Decimal::new(cents, 2), Currency::USD).unwrap()
    }

    #[track_caller]
    fn check(thousandths: i64, cents: i64) {
        assert_eq!(Money::book(Decimal::new(thousandths, 3), Currency::USD), Ok(usd(cents)), "{thousandths}");
    }

    #[test]
    fn inv07_a_booked_line_is_half_up_once_and_alike_both_ways() {
        for (thousandths, cents) in [(0, 0), (4, 0), (5, 1), (14, 1), (15, 2), (16_675, 1_668), (999_994, 99_999), (999_995, 100_000)] {
            check(thousandths, cents);
            check(-thousandths, -cents);
        }
    }

    #[test]
    fn nothing_below_nothing_is_written_as_nothing() {
        for none in [Money::book(Decimal::new(-1, 3), Currency::USD), usd(-5).plus(usd(5)), Money::zero(Currency::USD).minus(usd(0))] {
            assert_eq!(none.map(|m| (m.to_string(), m.is_zero())), Ok(("0.00 USD".into(), true)));
        }
        assert_eq!(usd(-5).to_string(), "-0.05 USD");
    }

    #[test]
    fn past_the_limit_is_refused() {
        let (most, no) = (Money::most(Currency::USD), Err(Refusal::MoneyOutOfRange { currency: Currency::USD }));
        assert_eq!(most, usd(1_000_000_000));
        assert_eq!((most.plus(usd(1)), most.minus(usd(-1))), (no.clone(), no.clone()));
        assert_eq!(usd(0).minus(most).and_then(|m| m.minus(usd(1))), no);
        assert_eq!((Money::book(Decimal::MAX, Currency::USD), Money::book(Decimal::MIN, Currency::USD)), (no.clone(), no));
        let yen = Currency::read("JPY").unwrap();
        assert_eq!(Money::most(yen).to_string(), "1000000000 JPY");
        assert_eq!(Money::whole(Decimal::new(5, 1), yen), None);
    }

    #[test]
    fn two_currencies_make_no_sum() {
        let no = Err(Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR });
        let euro = Money::zero(Currency::EUR);
        assert_eq!((usd(5).plus(euro), usd(5).minus(euro), Money::sum(Currency::USD, [euro])), (no.clone(), no.clone(), no));
    }
}
