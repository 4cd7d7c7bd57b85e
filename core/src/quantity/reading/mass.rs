//! Weights as read off a scale: `163.5 lb`, `74 kg`, `12 lb 8 oz`, `850 g`.

use super::super::{Decimal, Mass, Units, exact};
use super::settle::{DENOMINATORS, Pick, Worth, in_order, settle, worth};
use super::terms::{Term, terms};
use super::{Misread, Quantity, Read, Typing, tidy};

/// Nanograms, in which each unit is whole: the ounce is a sixteenth of the pound of 1959.
const KILOGRAM: i64 = 1_000_000_000_000;
const GRAM: i64 = 1_000_000_000;
const POUND: i64 = 453_592_370_000;
const OUNCE: i64 = 28_349_523_125;

/// A weight up to ten tonnes; pounds or kilograms where no unit stands, by the units of the book.
///
/// # Errors
/// Each of [`Misread`] but `NotWhole`; finer than a nanogram is too fine.
///
/// ```
/// use fivebar_core::quantity::{Mass, Units, reading::{Sign, Typing, mass}};
/// let typing = Typing { units: Units::Inch, sign: Sign::Point };
/// assert_eq!(mass("100 lb", typing), Ok(Mass::kg(45.359237)));
/// assert_eq!(mass("86.9 kg", typing), Ok(Mass::kg(86.9)));
/// ```
pub fn mass(text: &str, typing: Typing) -> Read<Mass> {
    let terms = terms(tidy(text)?, typing.sign)?;
    let units = units_of(&terms, typing.units)?;
    settle(&terms, Quantity::Mass, |pick| one(&terms, &units, pick))
}

fn units_of(terms: &[Term], units: Units) -> Read<Vec<i64>> {
    let mut found: Vec<i64> = Vec::new();
    for term in terms {
        let unit = match (term.unit.as_deref(), units) {
            (Some("lb" | "lbs" | "pound" | "pounds"), _) => POUND,
            (Some("oz" | "ounce" | "ounces"), _) => OUNCE,
            (Some("kg" | "kilo" | "kilos"), _) => KILOGRAM,
            (Some("g"), _) => GRAM,
            (Some(met), _) => return Err(Misread::UnknownUnit { met: met.into() }),
            (None, Units::Inch) if found.last() == Some(&POUND) => OUNCE,
            (None, Units::Inch) => POUND,
            (None, Units::Metric) => KILOGRAM,
        };
        if !matches!((found.as_slice(), unit), ([], _) | ([POUND], OUNCE) | ([KILOGRAM], GRAM)) {
            return Err(Misread::NotANumber { met: term.text.clone() });
        }
        found.push(unit);
    }
    in_order(terms, &found)?;
    Ok(found)
}

fn one(terms: &[Term], units: &[i64], pick: Pick) -> Read<Mass> {
    let sum = terms.iter().zip(units).try_fold(Worth::NOTHING, |sum, (term, unit)| sum.plus(worth(term, Decimal::from(*unit), pick)?));
    let out = |met| Misread::OutOfRange { met, least: Quantity::Mass(Mass::ZERO), most: Quantity::Mass(Mass::MOST), might_be: None };
    let Some(worth) = sum else { return Err(out(None)) };
    let kg = worth.exact.checked_div(Decimal::from(KILOGRAM)).and_then(exact::to_float);
    let Some(met) = kg.map(Mass::kg) else { return Err(out(None)) };
    if Mass::MOST < met {
        return Err(out(Some(Quantity::Mass(met))));
    }
    // A third of a pound is a weight like any other: only the denominator itself is looked at.
    let odd_denominator = worth.odd_denominator.filter(|met| !DENOMINATORS.contains(met));
    Worth { odd_denominator, ..worth }.whole(true, Quantity::Mass(met)).map(|_| met)
}
