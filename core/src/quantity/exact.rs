//! A decimal in an entry: text with exactly one spelling, `-?(0|[1-9]\d*)(\.\d*[1-9])?` and never `-0`.
//!
//! For members of an entry: `#[serde(with = "quantity::exact")]`, or `exact::option` together with `default` and
//! `skip_serializing_if = "Option::is_none"`. A spelling that could not come from here is refused, so bytes stay stable.

use super::{Decimal, text};
use serde::{Deserializer, Serializer};

const SPELLING: &str = "a decimal string without needless zeros";

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

/// # Errors
/// Those of `out`.
pub fn serialize<S: Serializer>(decimal: &Decimal, out: S) -> Result<S::Ok, S::Error> {
    out.serialize_str(&write(*decimal))
}

/// # Errors
/// Anything but the one spelling.
pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Decimal, D::Error> {
    text::read(from, SPELLING, read)
}

/// The same for a member that may be missing. It is left out, never null.
pub mod option {
    use super::{Decimal, Deserializer, Serializer};

    /// # Errors
    /// Those of `out`.
    // The signature is serde's: it hands over a reference to the member.
    #[allow(clippy::ref_option)]
    pub fn serialize<S: Serializer>(decimal: &Option<Decimal>, out: S) -> Result<S::Ok, S::Error> {
        match decimal {
            Some(decimal) => super::serialize(decimal, out),
            None => out.serialize_none(),
        }
    }

    /// # Errors
    /// Anything but the one spelling; null too.
    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Decimal>, D::Error> {
        super::deserialize(from).map(Some)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::{Deserialize, Serialize};

    #[derive(Debug, PartialEq, Serialize, Deserialize)]
    struct Facts {
        #[serde(with = "super")]
        rate: Decimal,
        #[serde(default, skip_serializing_if = "Option::is_none", with = "super::option")]
        tax: Option<Decimal>,
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

    #[test]
    fn stands_in_an_entry_as_text_or_not_at_all() {
        let both = Facts { rate: Decimal::new(22_200, 3), tax: Some(Decimal::new(55, 1)) };
        let one = Facts { tax: None, ..both };
        for (facts, line) in
            [(&Facts { rate: Decimal::new(222, 1), ..both }, r#"{"rate":"22.2","tax":"5.5"}"#), (&one, r#"{"rate":"22.2"}"#)]
        {
            assert_eq!(serde_json::to_string(facts).unwrap(), line);
            assert_eq!(&serde_json::from_str::<Facts>(line).unwrap(), facts);
        }
        for line in
            [r#"{"rate":22.2}"#, r#"{"rate":"22.20"}"#, r#"{"rate":null}"#, r#"{"rate":"1","tax":null}"#, r#"{"rate":"1","tax":""}"#]
        {
            assert!(serde_json::from_str::<Facts>(line).is_err(), "{line}");
        }
    }
}
