//! Price points: the prices a maker likes to ask.

use super::sums::{less, minor, over, plus, times};
use crate::quantity::{Currency, Decimal, Money};
use crate::refusal::{Answer, Refusal};
use rust_decimal::RoundingStrategy;

/// Where prices may fall: any minor unit, whole 1, 5, 10, 25 or 50, or ending in 9.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Points {
    Minor,
    One,
    Five,
    Ten,
    TwentyFive,
    Fifty,
    Nine,
}

/// To the nearest point (half up), or up to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    Nearest,
    Up,
}

impl Points {
    pub const ALL: [Points; 7] = [Points::Minor, Points::One, Points::Five, Points::Ten, Points::TwentyFive, Points::Fifty, Points::Nine];

    /// Its key in a book.
    pub fn key(self) -> &'static str {
        match self {
            Points::Minor => "minor",
            Points::One => "1",
            Points::Five => "5",
            Points::Ten => "10",
            Points::TwentyFive => "25",
            Points::Fifty => "50",
            Points::Nine => "9",
        }
    }

    /// The points of a key.
    pub fn of(key: &str) -> Option<Points> {
        Points::ALL.into_iter().find(|points| points.key() == key)
    }

    /// How far one point lies from the next.
    pub fn step(self, currency: Currency) -> Decimal {
        match self {
            Points::Minor => minor(currency),
            Points::One => Decimal::ONE,
            Points::Five => Decimal::from(5),
            Points::Ten | Points::Nine => Decimal::TEN,
            Points::TwentyFive => Decimal::from(25),
            Points::Fifty => Decimal::from(50),
        }
    }

    /// How far below a whole step each point lies.
    fn below(self) -> Decimal {
        if self == Points::Nine { Decimal::ONE } else { Decimal::ZERO }
    }

    /// The point for an amount; at least the first one above nothing.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::{money::point::{Points, Rounding}, quantity::{Currency, Decimal}};
    /// let need = Decimal::new(14_956, 2);
    /// let at = |points: Points, way| points.round(need, way, Currency::USD).unwrap().to_string();
    /// assert_eq!(at(Points::Five, Rounding::Up), "150.00 USD");
    /// assert_eq!(at(Points::Nine, Rounding::Nearest), "149.00 USD");
    /// ```
    pub fn round(self, amount: Decimal, rounding: Rounding, currency: Currency) -> Answer<Money> {
        let steps = over(plus(amount, self.below())?, self.step(currency))?;
        let steps = super::sums::clean(steps).round_dp_with_strategy(0, rounding.strategy()).max(Decimal::ONE);
        self.at(steps, currency)
    }

    /// The next point above a price.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::{money::point::{Points, Rounding}, quantity::{Currency, Decimal, Money}};
    /// let price = Money::book(Decimal::from(150), Currency::USD).unwrap();
    /// assert_eq!(Points::Five.above(price).unwrap().to_string(), "155.00 USD");
    /// ```
    pub fn above(self, price: Money) -> Answer<Money> {
        let steps = over(plus(price.amount(), self.below())?, self.step(price.currency()))?;
        self.at(plus(steps.floor(), Decimal::ONE)?, price.currency())
    }

    fn at(self, steps: Decimal, currency: Currency) -> Answer<Money> {
        let price = less(times(steps, self.step(currency))?, self.below())?;
        Money::whole(price.normalize(), currency).ok_or(Refusal::MoneyOutOfRange { currency })
    }
}

impl Rounding {
    fn strategy(self) -> RoundingStrategy {
        match self {
            Rounding::Nearest => RoundingStrategy::MidpointAwayFromZero,
            Rounding::Up => RoundingStrategy::ToPositiveInfinity,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, usd};

    #[track_caller]
    fn check(points: Points, rounding: Rounding, amount: &str, wanted: &str) {
        assert_eq!(points.round(d(amount), rounding, Currency::USD), Ok(usd(wanted)));
    }

    #[test]
    fn points_near_and_up() {
        check(Points::Minor, Rounding::Nearest, "27.784", "27.78");
        check(Points::Minor, Rounding::Up, "27.781", "27.79");
        check(Points::One, Rounding::Up, "100.05", "101");
        check(Points::Five, Rounding::Up, "149.56", "150");
        check(Points::Five, Rounding::Up, "150", "150");
        check(Points::Five, Rounding::Nearest, "141.89", "140");
        check(Points::Five, Rounding::Nearest, "120.5", "120");
        check(Points::Five, Rounding::Nearest, "122.5", "125");
        check(Points::Ten, Rounding::Nearest, "145", "150");
        check(Points::TwentyFive, Rounding::Up, "126", "150");
        check(Points::Fifty, Rounding::Nearest, "124.99", "100");
        check(Points::Nine, Rounding::Up, "149.56", "159");
        check(Points::Nine, Rounding::Nearest, "144", "149");
        check(Points::Nine, Rounding::Nearest, "143.99", "139");
        check(Points::Five, Rounding::Nearest, "0.40", "5");
        check(Points::Nine, Rounding::Up, "0", "9");
    }

    #[test]
    fn points_come_back_from_their_key() {
        assert!(Points::ALL.into_iter().all(|points| Points::of(points.key()) == Some(points)));
        assert_eq!(Points::of("7"), None);
    }

    #[test]
    fn the_next_point_lies_above() {
        assert_eq!(Points::Nine.above(usd("149")), Ok(usd("159")));
        assert_eq!(Points::Nine.above(usd("148.99")), Ok(usd("149")));
        assert_eq!(Points::Minor.above(usd("148.99")), Ok(usd("149")));
        let yen = Money::whole(d("999"), Currency::read("JPY").unwrap()).unwrap();
        assert_eq!(Points::Minor.above(yen).unwrap().to_string(), "1000 JPY");
    }
}
