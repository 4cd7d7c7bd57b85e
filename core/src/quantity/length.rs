//! Length in whole nanometres, so that inches and millimetres are both exact.

use super::{Scalar, Spelled};
use crate::refusal::{Answer, Refusal};

/// A length, or a distance driven. Never negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    pub const ZERO: Length = Length(0);
    pub const MM: Length = Length(1_000_000);
    pub const TENTH_MM: Length = Length(100_000);
    pub const INCH: Length = Length(25_400_000);
    pub const INCH_64TH: Length = Length(396_875);
    pub const FOOT: Length = Length(304_800_000);
    pub const CM: Length = Length(10_000_000);
    pub const METRE: Length = Length(1_000_000_000);
    pub const KM: Length = Length(1_000_000_000_000);
    pub const MILE: Length = Length(1_609_344_000_000);
    /// The least a piece may measure.
    pub const PIECE_LEAST: Length = Length(1_000_000);
    /// The most a piece may measure: 20 m.
    pub const PIECE_MOST: Length = Length(20_000_000_000);
    /// The most one trip may measure: 10 000 km.
    pub const DISTANCE_MOST: Length = Length(10_000_000_000_000_000);

    /// A length of so many nanometres.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`] below nothing.
    pub fn nm(nm: i64) -> Answer<Length> {
        if nm < 0 { Err(Refusal::OutOfRange) } else { Ok(Length(nm)) }
    }

    pub const fn as_nm(self) -> i64 {
        self.0
    }

    /// `n` of this length.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::quantity::Length;
    /// assert_eq!(Length::INCH_64TH.times(64), Ok(Length::INCH));
    /// assert!(Length::MILE.times(i64::MAX).is_err());
    /// ```
    pub fn times(self, n: i64) -> Answer<Length> {
        self.0.checked_mul(n).ok_or(Refusal::OutOfRange).and_then(Length::nm)
    }

    /// This and another.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn plus(self, other: Length) -> Answer<Length> {
        self.0.checked_add(other.0).ok_or(Refusal::OutOfRange).map(Length)
    }

    /// Half of it, down to a whole nanometre.
    ///
    /// ```
    /// use fivebar_core::quantity::Length;
    /// assert_eq!(Length::INCH_64TH.half().as_nm(), 198_437);
    /// ```
    pub fn half(self) -> Length {
        Length(self.0 >> 1)
    }

    /// The same, if a piece may measure that.
    ///
    /// # Errors
    /// [`Refusal::LengthOutOfRange`] with both limits.
    ///
    /// ```
    /// use fivebar_core::quantity::Length;
    /// assert!(Length::METRE.times(20).unwrap().of_a_piece().is_ok());
    /// assert!(Length::INCH.times(1_125).unwrap().of_a_piece().is_err());
    /// ```
    pub fn of_a_piece(self) -> Answer<Length> {
        if Self::PIECE_LEAST <= self && self <= Self::PIECE_MOST {
            Ok(self)
        } else {
            Err(Refusal::LengthOutOfRange { met: self, least: Self::PIECE_LEAST, most: Self::PIECE_MOST })
        }
    }
}

/// In an entry: a decimal string of nanometres.
impl Spelled for Length {
    fn spell(&self) -> Scalar<'_> {
        Scalar::of(self.0.to_string())
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        let text = scalar.text()?;
        let spelled = text == "0" || (!text.starts_with('0') && text.bytes().all(|b| b.is_ascii_digit()));
        text.parse().ok().filter(|_| spelled).and_then(|nm| Length::nm(nm).ok())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, nm: Option<i64>) {
        assert_eq!(Length::unspell(&Scalar::of(text)).map(Length::as_nm), nm, "{text}");
    }

    #[test]
    fn stands_in_an_entry_as_whole_nanometres() {
        assert_eq!(Length::INCH_64TH.spell(), Scalar::of("396875"));
        assert_eq!(Length::unspell(&Scalar::Whole(396_875)), None);
        check("396875", Some(396_875));
        check("0", Some(0));
        for text in ["-1", "-0", "+1", "01", "1.0", " 1", "", "9223372036854775808", "null"] {
            check(text, None);
        }
    }

    #[test]
    fn both_systems_are_exact() {
        assert_eq!(Length::INCH_64TH.times(64), Ok(Length::INCH));
        assert_eq!(Length::FOOT.times(5_280), Ok(Length::MILE));
        assert_eq!(Length::MM.times(1_000_000), Ok(Length::KM));
        assert_eq!(Length::KM.times(10_000), Ok(Length::DISTANCE_MOST));
        assert_eq!((Length::CM.times(100), Length::METRE.times(20)), (Ok(Length::METRE), Ok(Length::PIECE_MOST)));
    }

    #[test]
    fn inv08_nothing_wraps() {
        let most = Length::nm(i64::MAX).unwrap();
        assert_eq!(most.plus(Length::nm(1).unwrap()), Err(Refusal::OutOfRange));
        assert_eq!(most.times(2), Err(Refusal::OutOfRange));
        assert_eq!(Length::MM.times(-1), Err(Refusal::OutOfRange));
        let outside = |met| Err(Refusal::LengthOutOfRange { met, least: Length::PIECE_LEAST, most: Length::PIECE_MOST });
        for met in [Length::ZERO, Length::nm(999_999).unwrap(), Length::nm(20_000_000_001).unwrap(), most] {
            assert_eq!(met.of_a_piece(), outside(met));
        }
    }
}
