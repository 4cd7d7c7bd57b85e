//! Price points: the prices a maker likes to ask.

use super::sums::{less, minor, over, plus, times};
use crate::quantity::{Currency, Decimal, Money};
use crate::refusal::{Answer, Refusal};
use rust_decimal::RoundingStrategy;

/// Where prices may fall: any minor unit, whole 1, 5, 10, 25 or 50, or ending in 9; and whole 100, 500 or 1000 where a unit of money is small.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Points {
    Minor,
    One,
    Five,
    Ten,
    TwentyFive,
    Fifty,
    Hundred,
    FiveHundred,
    Thousand,
    Nine,
}

/// To the nearest point (half up), or up to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    Nearest,
    Up,
}

/// How far a key or a drag goes from one price to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    pub by: Decimal,
    /// How far below a whole step each price lies.
    below: Decimal,
    currency: Currency,
}

impl Points {
    pub const ALL: [Points; 10] = [
        Points::Minor,
        Points::One,
        Points::Five,
        Points::Ten,
        Points::TwentyFive,
        Points::Fifty,
        Points::Hundred,
        Points::FiveHundred,
        Points::Thousand,
        Points::Nine,
    ];

    /// Those to choose from in a currency: one without decimals has no minor unit beside one, and goes by larger steps. Ours.
    ///
    /// ```
    /// use fivebar_core::{money::point::Points, quantity::Currency};
    /// let keys = |currency: &str| Points::of_currency(Currency::read(currency).unwrap()).map(Points::key).collect::<Vec<_>>().join(" ");
    /// assert_eq!(keys("EUR"), "minor 1 5 10 25 50 100 9");
    /// assert_eq!(keys("JPY"), "1 10 50 100 500 1000 9");
    /// ```
    pub fn of_currency(currency: Currency) -> impl Iterator<Item = Points> {
        let is_small = currency.digits() == 0;
        Points::ALL.into_iter().filter(move |points| match points {
            Points::Minor | Points::Five | Points::TwentyFive => !is_small,
            Points::FiveHundred | Points::Thousand => is_small,
            _ => true,
        })
    }

    /// Those prices go by where none were chosen: fives, or hundreds in a currency without decimals. Ours.
    pub fn usual(currency: Currency) -> Points {
        if currency.digits() == 0 { Points::Hundred } else { Points::Five }
    }

    /// Its key in a book.
    pub fn key(self) -> &'static str {
        match self {
            Points::Minor => "minor",
            Points::One => "1",
            Points::Five => "5",
            Points::Ten => "10",
            Points::TwentyFive => "25",
            Points::Fifty => "50",
            Points::Hundred => "100",
            Points::FiveHundred => "500",
            Points::Thousand => "1000",
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
            Points::Hundred => Decimal::ONE_HUNDRED,
            Points::FiveHundred => Decimal::from(500),
            Points::Thousand => Decimal::ONE_THOUSAND,
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
        self.from_one_to_next(currency).round(amount, rounding)
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
        self.from_one_to_next(price.currency()).above(price)
    }

    /// The step from one point to the next.
    pub fn from_one_to_next(self, currency: Currency) -> Step {
        Step { by: self.step(currency), below: self.below(), currency }
    }
}

/// Of a price, the most that a step of the ladder is: in the ladder 1, 2, 5, 10, … there is always one between 1.2 % and this. Ours.
const STEP_MOST: Decimal = Decimal::from_parts(3, 0, 0, false, 2);

impl Step {
    /// The step by the size of a price: the largest of 1, 2, 5, 10, 20, 50, … and of their tenths that is no more than 3 % of it, and never less than
    /// the minor unit. Ours: a key goes by what is worth a word, in yen as in dinars. It ends as the points do.
    ///
    /// ```
    /// use fivebar_core::{money::point::{Points, Step}, quantity::{Currency, Decimal, Money}};
    /// let euro = |sum: i64| Money::book(Decimal::from(sum), Currency::EUR).unwrap();
    /// let step = |price: i64| Step::by_size(euro(price), Points::Five).by.to_string();
    /// assert_eq!([8, 145, 1_450, 30_000].map(step), ["0.2", "2", "20", "500"]);
    /// ```
    pub fn by_size(price: Money, points: Points) -> Step {
        let (most, currency) = (price.amount().saturating_mul(STEP_MOST), price.currency());
        let mut by = minor(currency);
        let mut ladder = [2, 5, 10].map(|of| by.saturating_mul(Decimal::from(of)));
        while let Some(larger) = ladder.iter().rev().find(|step| **step <= most) {
            let is_last = *larger == ladder[2];
            by = *larger;
            if !is_last {
                break;
            }
            ladder = ladder.map(|step| step.saturating_mul(Decimal::TEN));
        }
        let below = if Decimal::ONE < by { points.below() } else { Decimal::ZERO };
        Step { by: by.normalize(), below, currency }
    }

    /// The price for an amount; at least the first one above nothing.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
    pub fn round(self, amount: Decimal, rounding: Rounding) -> Answer<Money> {
        let steps = over(plus(amount, self.below)?, self.by)?;
        self.at(super::sums::clean(steps).round_dp_with_strategy(0, rounding.strategy()).max(Decimal::ONE))
    }

    /// The next price above one.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
    pub fn above(self, price: Money) -> Answer<Money> {
        let steps = over(plus(price.amount(), self.below)?, self.by)?;
        self.at(plus(steps.floor(), Decimal::ONE)?)
    }

    fn at(self, steps: Decimal) -> Answer<Money> {
        let (price, currency) = (less(times(steps, self.by)?, self.below)?, self.currency);
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

    /// Between one and three per cent of the price, in currencies of no, two and three decimals; a price of next to nothing goes by the minor unit.
    #[test]
    fn a_step_is_of_the_size_of_the_price() {
        for (code, price, by) in [
            ("JPY", "30000", "500"),
            ("JPY", "4980", "100"),
            ("JPY", "12", "1"),
            ("EUR", "145", "2"),
            ("EUR", "8", "0.2"),
            ("EUR", "0.30", "0.01"),
            ("EUR", "100000", "2000"),
            ("KWD", "12.5", "0.2"),
            ("KWD", "0.05", "0.001"),
            ("KWD", "120", "2"),
        ] {
            let currency = Currency::read(code).unwrap();
            let price = Money::whole(d(price), currency).unwrap();
            let step = Step::by_size(price, Points::Five);
            assert_eq!(step.by, d(by), "{code} {price}");
            let next = step.above(price).unwrap();
            assert!(price.amount() < next.amount() && next.amount() - price.amount() <= step.by, "{code} {price} {next}");
            let share = step.by / price.amount();
            assert!(step.by == minor(currency) || (d("0.012") <= share && share <= d("0.03")), "{code} {price} {share}");
        }
        let nine = Step::by_size(usd("1450"), Points::Nine);
        assert_eq!((nine.by, nine.above(usd("1449"))), (d("20"), Ok(usd("1459"))));
    }

    #[test]
    fn points_come_back_from_their_key() {
        assert!(Points::ALL.into_iter().all(|points| Points::of(points.key()) == Some(points)));
        assert_eq!(Points::of("7"), None);
        // As books have them that were written before there were larger ones.
        let old = ["minor", "1", "5", "10", "25", "50", "9"].map(|key| Points::of(key).unwrap().key());
        assert_eq!(old, ["minor", "1", "5", "10", "25", "50", "9"]);
    }

    /// A bench of 21,535 yen is asked for with 21,600 where nothing was chosen, 22,000 by thousands.
    #[test]
    fn a_currency_without_decimals_has_larger_steps() {
        let yen = Currency::read("JPY").unwrap();
        let at = |points: Points| points.round(d("21535"), Rounding::Up, yen).unwrap().to_string();
        assert_eq!([Points::usual(yen), Points::FiveHundred, Points::Thousand].map(at), ["21600 JPY", "22000 JPY", "22000 JPY"]);
        assert_eq!(Points::usual(Currency::USD), Points::Five);
        assert!([yen, Currency::EUR].into_iter().all(|currency| Points::of_currency(currency).any(|of| of == Points::usual(currency))));
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
