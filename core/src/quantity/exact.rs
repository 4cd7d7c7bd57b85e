//! A decimal in an entry: text with exactly one spelling, `-?(0|[1-9]\d*)(\.\d*[1-9])?` and never `-0`.
//!
//! A spelling that could not come from here is refused, so bytes stay stable.

use super::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// The one spelling of a decimal.
///
/// ```
/// use fivebar_core::quantity::{Decimal, exact};
/// assert_eq!(exact::write(Decimal::new(-1_250, 3)), "-1.25");
/// assert_eq!(exact::write(Decimal::new(0, 2)), "0");
/// ```
pub fn write(decimal: Decimal) -> String {
    if decimal.is_zero() { "0".into() } else { decimal.normalize().to_string() }
}

/// The decimal of its one spelling; `None` for any other spelling, and for more digits than a decimal holds.
///
/// ```
/// use fivebar_core::quantity::{Decimal, exact};
/// assert_eq!(exact::read("-1.25"), Some(Decimal::new(-125, 2)));
/// assert_eq!(exact::read("-1.250"), None);
/// ```
pub fn read(text: &str) -> Option<Decimal> {
    Decimal::from_str_exact(text).ok().filter(|decimal| write(*decimal) == text)
}

/// Fifteen digits: whole floats below this are exact, and so are those next to them.
const WHOLE: i64 = 1_000_000_000_000_000;
/// The powers of ten that are floats exactly.
const PLACES: u32 = 22;

/// The float nearest to a decimal. Two floats that are exact have the nearest one as their quotient, so this holds for up to
/// fifteen digits; one of more digits may come out beside it. Source: Clinger, How to read floating point numbers accurately, 1990
/// (recalled).
///
/// ```
/// use fivebar_core::quantity::{Decimal, exact};
/// assert_eq!(exact::to_float(Decimal::new(869, 1)), Some(86.9));
/// ```
pub fn to_float(decimal: Decimal) -> Option<f64> {
    let plain = decimal.normalize();
    match i64::try_from(plain.mantissa()) {
        Ok(whole) if whole.abs() < WHOLE && plain.scale() <= PLACES => Some(whole as f64 / tens(plain.scale())),
        _ => plain.to_f64(),
    }
}

/// The shortest decimal that is this float and no other, or, where that has more than fifteen digits, the float as it is.
/// `None` for what is no number.
///
/// ```
/// use fivebar_core::quantity::{Decimal, exact};
/// assert_eq!(exact::of_float(86.9), Some(Decimal::new(869, 1)));
/// ```
pub fn of_float(float: f64) -> Option<Decimal> {
    let digits = |places| {
        let whole = (float * tens(places)).round();
        let is_it = whole.abs() < WHOLE as f64 && whole / tens(places) == float;
        is_it.then(|| Decimal::new(whole as i64, places))
    };
    (0..=PLACES).find_map(digits).or_else(|| Decimal::from_f64_retain(float))
}

fn tens(places: u32) -> f64 {
    10_f64.powi(i32::try_from(places).unwrap_or(i32::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The standard reading and writing of floats is the measure, for weights to the nanogram.
        #[test]
        fn floats_are_what_the_standard_library_says(nanograms in 0..WHOLE, places in 0..=12_u32) {
            let decimal = Decimal::new(nanograms / 10_i64.pow(12 - places), places).normalize();
            let float: f64 = decimal.to_string().parse().unwrap();
            prop_assert_eq!(to_float(decimal), Some(float));
            prop_assert_eq!(of_float(float).map(|d| d.to_string()), Some(float.to_string()));
        }

        #[test]
        fn a_float_of_any_digits_comes_back(float in 0.0..10_000.0_f64) {
            let back = of_float(float).and_then(to_float).unwrap();
            prop_assert!((back - float).abs() <= 2.0 * f64::EPSILON * float, "{} {}", float, back);
        }
    }

    #[test]
    fn what_is_no_number_has_no_decimal() {
        for float in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300] {
            assert_eq!(of_float(float), None, "{float}");
        }
    }

    #[track_caller]
    fn check(text: &str, spelled: bool) {
        assert_eq!(read(text).map(write).as_deref(), spelled.then_some(text), "{text}");
    }

    #[test]
    fn a_decimal_has_one_spelling() {
        for text in
            ["0", "1", "10", "-1", "0.5", "-0.5", "0.05", "12.345", "79228162514264337593543950335", "0.0000000000000000000000000001"]
        {
            check(text, true);
        }
        for text in [
            "",
            "-",
            ".",
            "-0",
            "0.0",
            "-0.0",
            "00",
            "01",
            "-01",
            "1.",
            ".5",
            "1.50",
            "1.0",
            "+1",
            " 1",
            "1 ",
            "1e3",
            "1_000",
            "0x1",
            "1,5",
            "NaN",
            "--1",
            "1.2.3",
            "½",
            "79228162514264337593543950336",
            "0.00000000000000000000000000001",
            "1.00000000000000000000000000001",
        ] {
            check(text, false);
        }
    }
}
