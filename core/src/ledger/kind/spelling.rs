//! How exact numbers and money are spelled in a line: one spelling each, so that equal facts are equal bytes.

use crate::quantity::{Currency, Decimal, Money};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de::Error};
use std::borrow::Cow;
use std::str::FromStr;

/// An exact number, spelled `-?(0|[1-9]\d*)(\.\d*[1-9])?`, never `-0`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Exact(pub Decimal);

impl Exact {
    fn spell(self) -> String {
        let plain = self.0.normalize();
        if plain.is_zero() { "0".into() } else { plain.to_string() }
    }

    /// Reads the one spelling.
    pub fn read(text: &str) -> Option<Exact> {
        let number = Exact(Decimal::from_str(text).ok()?);
        (number.spell() == text).then_some(number)
    }
}

impl Serialize for Exact {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.serialize_str(&self.spell())
    }
}

impl<'de> Deserialize<'de> for Exact {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Exact, D::Error> {
        Exact::read(&Cow::<str>::deserialize(from)?).ok_or_else(|| D::Error::custom("an exact number"))
    }
}

/// Money in a line: the amount, a space, the currency: `"11.4 USD"`.
impl Serialize for Money {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.collect_str(&format_args!("{} {}", Exact(self.amount()).spell(), self.currency()))
    }
}

impl<'de> Deserialize<'de> for Money {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Money, D::Error> {
        let text = Cow::<str>::deserialize(from)?;
        let money = || {
            let (amount, code) = text.split_once(' ')?;
            Money::whole(Exact::read(amount)?.0, Currency::read(code).ok()?)
        };
        money().ok_or_else(|| D::Error::custom("an amount and a currency"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, good: bool) {
        assert_eq!(Exact::read(text).is_some(), good, "{text}");
    }

    #[test]
    fn an_exact_number_has_one_spelling() {
        for good in ["0", "1", "-1", "0.5", "-0.05", "10.25", "123456789.000001"] {
            check(good, true);
        }
        for bad in ["", "-0", "00", "01", "1.", "1.0", "1.50", ".5", "+1", "1e3", "1_000", " 1", "NaN", "1,5"] {
            check(bad, false);
        }
    }
}
