//! How exact numbers and money are spelled in a line: one spelling each, so that equal facts are equal bytes.

use crate::quantity::{Currency, Decimal, Money, Scalar, Spelled, exact};

/// An exact number, spelled `-?(0|[1-9]\d*)(\.\d*[1-9])?`, never `-0`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Exact(pub Decimal);

impl Exact {
    /// Reads the one spelling.
    pub fn read(text: &str) -> Option<Exact> {
        exact::read(text).map(Exact)
    }
}

impl Spelled for Exact {
    fn spell(&self) -> Scalar<'_> {
        Scalar::of(exact::write(self.0))
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        Exact::read(scalar.text()?)
    }
}

/// Money in a line: the amount, a space, the currency: `"11.4 USD"`.
impl Spelled for Money {
    fn spell(&self) -> Scalar<'_> {
        Scalar::of(format!("{} {}", exact::write(self.amount()), self.currency()))
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        let (amount, code) = scalar.text()?.split_once(' ')?;
        Money::whole(exact::read(amount)?, Currency::read(code).ok()?)
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
