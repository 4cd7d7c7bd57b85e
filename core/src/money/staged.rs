//! Deposits and staged sums that add up to the price, to the minor unit.

use super::sums::{book, not_below_nothing, plus, times};
use crate::quantity::{Decimal, Money};
use crate::refusal::{Answer, Refusal};

/// Splits a price by shares that make one. Each sum is the part reached so far less what was asked before,
/// so that they add up to the price whatever the shares.
///
/// # Errors
/// [`Refusal::StagesDoNotMeet`] when the shares do not make one, [`Refusal::BelowNothing`].
///
/// ```
/// use fivebar_core::{money::staged::stages, quantity::{Currency, Decimal, Money}};
/// let price = Money::book(Decimal::from(460), Currency::EUR).unwrap();
/// let sums = stages(price, &[Decimal::new(4, 1), Decimal::new(6, 1)]).unwrap();
/// assert_eq!(format!("{sums:?}"), "[184.00 EUR, 276.00 EUR]"); // deposit of 40 %, balance
/// ```
pub fn stages(price: Money, shares: &[Decimal]) -> Answer<Vec<Money>> {
    let (mut reached, mut asked, mut sums) = (Decimal::ZERO, Money::zero(price.currency()), Vec::new());
    for share in shares {
        reached = plus(reached, not_below_nothing(*share)?)?;
        let by_now = book(times(price.amount(), reached)?, price.currency())?;
        sums.push(by_now.minus(asked)?);
        asked = by_now;
    }
    if reached == Decimal::ONE { Ok(sums) } else { Err(Refusal::StagesDoNotMeet { sum: reached }) }
}

/// What is still due of a price. Below nothing when more was paid than asked.
///
/// # Errors
/// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
///
/// ```
/// use fivebar_core::{money::staged::due, quantity::{Currency, Decimal, Money}};
/// let euro = |n: i64| Money::book(Decimal::from(n), Currency::EUR).unwrap();
/// assert_eq!(due(euro(460), &[euro(184)]), Ok(euro(276)));
/// ```
pub fn due(price: Money, paid: &[Money]) -> Answer<Money> {
    price.minus(Money::sum(price.currency(), paid.iter().copied())?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, eur};

    #[track_caller]
    fn check(price: &str, shares: &[&str], wanted: Answer<&[&str]>) {
        let shares: Vec<_> = shares.iter().map(|s| d(s)).collect();
        assert_eq!(stages(eur(price), &shares), wanted.map(|sums| sums.iter().map(|s| eur(s)).collect()));
    }

    #[test]
    fn stages_add_up_to_the_price() {
        check("460", &["0.4", "0.6"], Ok(&["184", "276"]));
        check("100", &["0.333", "0.333", "0.334"], Ok(&["33.30", "33.30", "33.40"]));
        check("0.01", &["0.5", "0.5"], Ok(&["0.01", "0.00"]));
        check("99.99", &["0.25", "0.25", "0.25", "0.25"], Ok(&["25.00", "25.00", "24.99", "25.00"]));
        check("460", &["0.4", "0.5"], Err(Refusal::StagesDoNotMeet { sum: d("0.9") }));
        check("460", &["1.4", "-0.4"], Err(Refusal::BelowNothing { met: d("-0.4") }));
    }
}
