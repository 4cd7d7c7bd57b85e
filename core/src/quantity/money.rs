//! Exact sums of money in one currency. Rounding is half up to the minor unit, named, and done once per booked line.

use super::Currency;
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

    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
    pub fn plus(self, other: Money) -> Answer<Money> {
        if self.currency != other.currency {
            return Err(Refusal::CurrenciesMixed { one: self.currency, other: other.currency });
        }
        let sum = self.amount.checked_add(other.amount).ok_or(Refusal::OutOfRange)?;
        Money::book(sum, self.currency)
    }

    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
    pub fn minus(self, other: Money) -> Answer<Money> {
        self.plus(Money { amount: other.amount.checked_mul(Decimal::NEGATIVE_ONE).ok_or(Refusal::OutOfRange)?, ..other })
    }

    /// The sum of several in `currency`.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
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
