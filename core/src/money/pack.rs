//! What a can or pack costs for a litre, a kilogram or a metre, and whether that is worth asking about once.

use crate::quantity::{Decimal, Key, Money, half_up};

/// What a price is said for: the usual measure of its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    Litre,
    Quart,
    Kilogram,
    Pound,
    Metre,
}

impl Measure {
    /// The measure of a unit by its key in the book, and how many of the unit it holds; none of what is counted in pieces.
    fn of(unit: &str) -> Option<(Measure, i64)> {
        Some(match unit {
            "l" => (Measure::Litre, 1),
            "ml" => (Measure::Litre, 1_000),
            "fl-oz" => (Measure::Quart, 32),
            "kg" => (Measure::Kilogram, 1),
            "g" => (Measure::Kilogram, 1_000),
            "oz" => (Measure::Pound, 16),
            "m" => (Measure::Metre, 1),
            _ => return None,
        })
    }

    /// Prices from one to the other, in hundredths, are those of finishes, glues, abrasives and tapes: common practice, without a source. [J]
    fn usual(self) -> [i64; 2] {
        match self {
            Measure::Litre | Measure::Quart | Measure::Kilogram => [50, 10_000],
            Measure::Pound => [25, 5_000],
            Measure::Metre => [5, 5_000],
        }
    }
}

/// What so much of a unit for this sum costs for its measure, where that is far from what such things cost; none where it is usual, was a
/// gift, or is counted in pieces. In a currency without smaller coins everything costs a hundred times as many.
///
/// ```
/// use fivebar_core::money::pack::{Measure, unusual};
/// use fivebar_core::quantity::{Currency, Decimal, Key, Money};
/// let of = |sum: i64, holds: i64| unusual(Money::book(Decimal::from(sum), Currency::EUR).unwrap(), Decimal::from(holds), &Key::read("ml").unwrap());
/// assert_eq!(of(30, 750), None);
/// assert_eq!(of(90, 750).map(|(price, of)| (price.to_string(), of)), Some(("120.00 EUR".to_owned(), Measure::Litre)));
/// ```
pub fn unusual(sum: Money, holds: Decimal, unit: &Key) -> Option<(Money, Measure)> {
    let (measure, units) = Measure::of(unit.as_str()).filter(|_| !sum.is_zero())?;
    let digits = sum.currency().digits();
    let price = sum.amount().checked_mul(Decimal::from(units))?.checked_div(holds)?;
    let [least, most] = measure.usual().map(|hundredths| Decimal::new(hundredths, if digits == 0 { 0 } else { 2 }));
    let is_usual = (least..=most).contains(&price);
    let price = Money::whole(half_up(price, digits), sum.currency())?;
    (!is_usual).then_some((price, measure))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Currency;

    #[track_caller]
    fn check(sum: &str, code: &str, (holds, unit): (&str, &str), asked: Option<(&str, Measure)>) {
        let sum = Money::book(sum.parse().unwrap(), Currency::read(code).unwrap()).unwrap();
        let unit = Key::read(unit).unwrap();
        let found = unusual(sum, holds.parse().unwrap(), &unit).map(|(price, of)| (price.to_string(), of));
        assert_eq!(found, asked.map(|(price, of)| (price.to_owned(), of)));
    }

    #[test]
    fn what_costs_far_from_the_usual_is_asked_about() {
        check("34.90", "USD", ("32", "fl-oz"), None);
        check("349", "USD", ("32", "fl-oz"), Some(("349.00 USD", Measure::Quart)));
        check("100", "EUR", ("1", "l"), None);
        check("100.01", "EUR", ("1", "l"), Some(("100.01 EUR", Measure::Litre)));
        check("0.50", "EUR", ("1000", "ml"), None);
        check("24", "EUR", ("75000", "ml"), Some(("0.32 EUR", Measure::Litre)));
        check("12", "EUR", ("500", "g"), None);
        check("12", "EUR", ("50", "g"), Some(("240.00 EUR", Measure::Kilogram)));
        check("4", "USD", ("1", "oz"), Some(("64.00 USD", Measure::Pound)));
        check("60", "EUR", ("1", "m"), Some(("60.00 EUR", Measure::Metre)));
        check("9999", "EUR", ("1", "pieces"), None);
        check("0", "EUR", ("750", "ml"), None);
        check("9000", "JPY", ("750", "ml"), Some(("12000 JPY", Measure::Litre)));
        check("3000", "JPY", ("750", "ml"), None);
    }
}
