//! A decimal in an entry: text with exactly one spelling, `-?(0|[1-9]\d*)(\.\d*[1-9])?` and never `-0`.
//!
//! A spelling that could not come from here is refused, so bytes stay stable.

use super::Decimal;

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

#[cfg(test)]
mod tests {
    use super::*;
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
