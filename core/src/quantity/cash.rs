//! Cash rounding: where the smallest coins are gone, a sum handed over in coins is rounded to a step; cards are not.

use super::{Currency, Decimal, Money, half_up};
use crate::refusal::{Answer, Refusal};

/// The step cash is rounded to, in minor units: 5 for five cents or five rappen, 1 for no rounding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Cash(u32);

impl Cash {
    /// Every minor unit has a coin.
    pub const EXACT: Cash = Cash(1);
    /// No smallest coin is larger: a thousand of a currency's main unit with two decimals.
    const MOST: u32 = 100_000;

    /// The step of the smallest coin: a minor unit or so many of them, as the maker rounds.
    ///
    /// # Errors
    /// [`Refusal::CoinOutOfRange`] for less than a minor unit, or for more than any smallest coin.
    ///
    /// ```
    /// use fivebar_core::quantity::{Cash, Currency, Decimal, Money};
    /// let quarter = Money::book(Decimal::new(25, 2), Currency::USD).unwrap();
    /// assert_eq!(Cash::of(quarter).unwrap().as_minor_units(), 25);
    /// ```
    pub fn of(coin: Money) -> Answer<Cash> {
        let minor = |steps: u32| Money::book(Decimal::new(steps.into(), coin.currency().digits()), coin.currency());
        let steps = coin.amount().checked_div(minor(1)?.amount()).and_then(|steps| u32::try_from(steps).ok());
        match steps.filter(|steps| (1..=Self::MOST).contains(steps)) {
            Some(steps) => Ok(Cash(steps)),
            None => Err(Refusal::CoinOutOfRange { met: coin, least: minor(1)?, most: minor(Self::MOST)? }),
        }
    }

    pub fn as_minor_units(self) -> u32 {
        self.0
    }

    /// The step Unicode CLDR (currencyData) has for a currency. Only a proposal: shops in some countries round without one there.
    pub fn usual(currency: Currency) -> Cash {
        match currency.code() {
            "CAD" | "CHF" => Cash(5),
            "DKK" => Cash(50),
            _ => Cash::EXACT,
        }
    }
}

/// The least sum in coins that is no less than this one.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`] where rounding up leaves the range.
///
/// ```
/// use fivebar_core::quantity::{Cash, Currency, Decimal, Money, up_to_cash};
/// let chf = Currency::read("CHF").unwrap();
/// let sum = Money::book(Decimal::new(592, 2), chf).unwrap();
/// assert_eq!(up_to_cash(sum, Cash::usual(chf)).unwrap().to_string(), "5.95 CHF");
/// ```
pub fn up_to_cash(sum: Money, cash: Cash) -> Answer<Money> {
    let near = round_to_cash(sum, cash)?;
    if sum.amount() <= near.amount() { Ok(near) } else { near.plus(step(cash, sum.currency())?) }
}

fn step(cash: Cash, currency: Currency) -> Answer<Money> {
    Money::book(Decimal::new(i64::from(cash.0), currency.digits()), currency)
}

/// What is handed over in coins for a sum: to the nearest step, half up, alike for a refund.
///
/// By the Government of Canada, phasing out the penny: the total after tax ending in 1, 2, 6, 7 goes down, in 3, 4, 8, 9 up.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`] where rounding up leaves the range.
///
/// ```
/// use fivebar_core::quantity::{Cash, Currency, Decimal, Money, round_to_cash};
/// let chf = Currency::read("CHF").unwrap();
/// let sum = Money::book(Decimal::new(597, 2), chf).unwrap();
/// assert_eq!(round_to_cash(sum, Cash::usual(chf)).unwrap().to_string(), "5.95 CHF");
/// ```
pub fn round_to_cash(sum: Money, cash: Cash) -> Answer<Money> {
    let step = step(cash, sum.currency())?.amount();
    let steps = sum.amount().checked_div(step).ok_or(Refusal::OutOfRange)?;
    Money::book(half_up(steps, 0).checked_mul(step).ok_or(Refusal::OutOfRange)?, sum.currency())
}
