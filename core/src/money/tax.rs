//! Sales tax: one line for each sale record, half up. Inside the tag, or on top of it with the tag rounded first.

use super::sums::{book, minor, not_below_nothing, over, plus, times};
use crate::quantity::{Decimal, Money, Side};
use crate::refusal::Answer;

/// A rate of sales tax or VAT (0.055 for 5.5 %) and where it stands. Copied into each sale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tax {
    pub rate: Decimal,
    pub side: Side,
}

/// A charge taken apart: `before + tax` is what the buyer handed over, to the minor unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taxed {
    pub before: Money,
    pub tax: Money,
}

impl Tax {
    pub const NONE: Tax = Tax { rate: Decimal::ZERO, side: Side::Inside };

    /// 1 + t.
    ///
    /// # Errors
    /// [`BelowNothing`](crate::refusal::Refusal::BelowNothing).
    pub fn factor(self) -> Answer<Decimal> {
        plus(Decimal::ONE, not_below_nothing(self.rate)?)
    }

    /// Takes a charge apart. Inside: tax = q t / (1 + t), half up. On top: the tag q / (1 + t) is rounded first.
    ///
    /// # Errors
    /// [`BelowNothing`](crate::refusal::Refusal::BelowNothing) for a rate below nothing, [`OutOfRange`](crate::refusal::Refusal::OutOfRange).
    ///
    /// ```
    /// use fivebar_core::{money::tax::Tax, quantity::{Currency, Decimal, Money, Side}};
    /// let tax = Tax { rate: Decimal::new(55, 3), side: Side::Inside };
    /// let parts = tax.apart(Money::book(Decimal::from(145), Currency::USD).unwrap()).unwrap();
    /// assert_eq!((parts.tax.to_string().as_str(), parts.before.to_string().as_str()), ("7.56 USD", "137.44 USD"));
    /// ```
    pub fn apart(self, charge: Money) -> Answer<Taxed> {
        let (factor, currency) = (self.factor()?, charge.currency());
        Ok(match self.side {
            Side::Inside => {
                let tax = book(over(times(charge.amount(), self.rate)?, factor)?, currency)?;
                Taxed { before: charge.minus(tax)?, tax }
            }
            Side::Top => {
                let before = book(over(charge.amount(), factor)?, currency)?;
                Taxed { before, tax: charge.minus(before)? }
            }
        })
    }

    /// Whether the buyer hands over more than the tag says.
    pub fn is_on_top(self) -> bool {
        self.side == Side::Top && !self.rate.is_zero()
    }

    /// What the buyer hands over for a tag: the tag itself, or with its tax on top.
    ///
    /// # Errors
    /// [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    ///
    /// ```
    /// use fivebar_core::{money::tax::Tax, quantity::{Currency, Decimal, Money, Side}};
    /// let tax = Tax { rate: Decimal::new(55, 3), side: Side::Top };
    /// let charge = tax.charge(Money::book(Decimal::from(145), Currency::USD).unwrap()).unwrap();
    /// assert_eq!(charge.to_string(), "152.98 USD");
    /// ```
    pub fn charge(self, tag: Money) -> Answer<Money> {
        match self.side {
            Side::Inside => Ok(tag),
            Side::Top => tag.plus(book(times(tag.amount(), not_below_nothing(self.rate)?)?, tag.currency())?),
        }
    }

    /// The exact tag that a charge stands for, before any rounding.
    ///
    /// # Errors
    /// [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`OutOfRange`](crate::refusal::Refusal::OutOfRange).
    pub fn tag(self, charge: Decimal) -> Answer<Decimal> {
        match self.side {
            Side::Inside => Ok(charge),
            Side::Top => over(charge, self.factor()?),
        }
    }

    /// The highest tag that asks no more than a sum, its tax booked with it: not every sum is the charge of a tag.
    ///
    /// # Errors
    /// [`BelowNothing`](crate::refusal::Refusal::BelowNothing), [`OutOfRange`](crate::refusal::Refusal::OutOfRange).
    ///
    /// ```
    /// use fivebar_core::{money::tax::Tax, quantity::{Currency, Decimal, Money, Side}};
    /// let tax = Tax { rate: Decimal::new(19, 2), side: Side::Top };
    /// let within = |cents: i64| tax.tag_within(Money::book(Decimal::new(cents, 2), Currency::EUR).unwrap()).unwrap().to_string();
    /// assert_eq!([within(119), within(118)], ["1.00 EUR", "0.99 EUR"]);
    /// ```
    pub fn tag_within(self, sum: Money) -> Answer<Money> {
        let (mut tag, step) = (book(self.tag(sum.amount())?, sum.currency())?, book(minor(sum.currency()), sum.currency())?);
        // A tag half up lies above the exact one by half a unit at most, and so does its tax: a step or two, more only where the tax is as much again.
        while !tag.is_zero() && sum.amount() < self.charge(tag)?.amount() {
            tag = tag.minus(step)?;
        }
        Ok(tag)
    }
}

/// Tax the maker owes on several sales: the recorded lines, summed; never worked out again from their sum. None for no sale.
///
/// # Errors
/// [`CurrenciesMixed`](crate::refusal::Refusal::CurrenciesMixed), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
///
/// ```
/// use fivebar_core::{money::tax::{Tax, owed}, quantity::{Currency, Decimal, Money, Side}};
/// let tax = Tax { rate: Decimal::new(55, 3), side: Side::Inside };
/// let line = |n: i64| tax.apart(Money::book(Decimal::from(n), Currency::USD).unwrap()).unwrap();
/// let owed = owed(&[line(145), line(145), line(145), line(130)]).unwrap();
/// assert_eq!(owed.unwrap().to_string(), "29.46 USD"); // worked out from their sum it would be 29.45
/// ```
pub fn owed(lines: &[Taxed]) -> Answer<Option<Money>> {
    let mut owed = None;
    for line in lines {
        owed = Some(owed.unwrap_or(Money::zero(line.tax.currency())).plus(line.tax)?);
    }
    Ok(owed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, usd};
    use crate::quantity::Currency;
    use crate::refusal::Refusal;

    const INSIDE: Tax = Tax { rate: Decimal::from_parts(55, 0, 0, false, 3), side: Side::Inside };
    const TOP: Tax = Tax { side: Side::Top, ..INSIDE };

    #[track_caller]
    fn check(tax: Tax, charge: &str, before: &str, line: &str) {
        assert_eq!(tax.apart(usd(charge)), Ok(Taxed { before: usd(before), tax: usd(line) }));
    }

    #[test]
    fn one_line_for_each_sale() {
        check(INSIDE, "145", "137.44", "7.56");
        check(INSIDE, "130", "123.22", "6.78");
        check(TOP, "152.98", "145.00", "7.98");
        check(Tax::NONE, "145", "145", "0");
        check(INSIDE, "-145", "-137.44", "-7.56");
        let sales = ["145", "145", "145", "130"].map(|q| INSIDE.apart(usd(q)).unwrap());
        assert_eq!(owed(&sales), Ok(Some(usd("29.46"))));
        assert_eq!(owed(&[]), Ok(None));
    }

    /// Law: a tag charged and taken apart is that tag again, to the cent, at every rate.
    #[test]
    fn a_tag_comes_back_from_its_charge() {
        for rate in ["0", "0.055", "0.07", "0.08875", "0.19", "0.25"] {
            let tax = Tax { rate: d(rate), side: Side::Top };
            for cents in (1..40_000).step_by(37) {
                let tag = Money::book(Decimal::new(cents, 2), usd("0").currency()).unwrap();
                assert_eq!(tax.apart(tax.charge(tag).unwrap()).unwrap().before, tag, "{rate} {tag}");
            }
        }
    }

    /// Law: a tag within a sum asks no more than it, and a minor unit above it asks more.
    #[test]
    fn a_tag_within_a_sum_is_the_highest_that_asks_no_more() {
        for (code, rate) in
            [("USD", "0"), ("USD", "0.055"), ("USD", "0.07"), ("USD", "0.08875"), ("EUR", "0.19"), ("EUR", "0.25"), ("EUR", "1.6")]
        {
            within(Currency::read(code).unwrap(), d(rate));
        }
        ["0.08", "0.1"].into_iter().for_each(|rate| within(Currency::read("JPY").unwrap(), d(rate)));
        ["0.05", "0.15"].into_iter().for_each(|rate| within(Currency::read("KWD").unwrap(), d(rate)));
        assert_eq!(INSIDE.tag_within(usd("145")), Ok(usd("145")));
    }

    #[track_caller]
    fn within(currency: Currency, rate: Decimal) {
        let tax = Tax { rate, side: Side::Top };
        let minor = Money::book(super::super::sums::minor(currency), currency).unwrap();
        for units in (10..40_000).step_by(7) {
            let sum = Money::book(Decimal::new(units, currency.digits()), currency).unwrap();
            let tag = tax.tag_within(sum).unwrap();
            assert!(tax.charge(tag).unwrap().amount() <= sum.amount(), "{rate} on {tag} is more than {sum}");
            assert!(sum.amount() < tax.charge(tag.plus(minor).unwrap()).unwrap().amount(), "{rate} {tag} {sum}");
        }
    }

    #[test]
    fn a_rate_below_nothing_is_refused() {
        let tax = Tax { rate: d("-0.1"), ..TOP };
        assert_eq!(tax.apart(usd("1")), Err(Refusal::BelowNothing { met: d("-0.1") }));
        assert_eq!(tax.charge(usd("1")), Err(Refusal::BelowNothing { met: d("-0.1") }));
    }
}
