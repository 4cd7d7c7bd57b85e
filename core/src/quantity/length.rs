//! Length in whole nanometres, so that inches and millimetres are both exact.

use super::text;
use crate::refusal::{Answer, Refusal};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A length, or a distance driven. Never negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    pub const ZERO: Length = Length(0);
    pub const MM: Length = Length(1_000_000);
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
    pub fn half(self) -> Length {
        Length(self.0 >> 1)
    }

    /// The same, if a piece may measure that.
    ///
    /// # Errors
    /// [`Refusal::LengthOutOfRange`] with both limits.
    pub fn of_a_piece(self) -> Answer<Length> {
        if Self::PIECE_LEAST <= self && self <= Self::PIECE_MOST {
            Ok(self)
        } else {
            Err(Refusal::LengthOutOfRange { met: self, least: Self::PIECE_LEAST, most: Self::PIECE_MOST })
        }
    }
}

/// In an entry: a decimal string of nanometres.
impl Serialize for Length {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.collect_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for Length {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Length, D::Error> {
        text::read(from, "a decimal string of nanometres", |t| {
            let nm: i64 = t.parse().ok()?;
            (nm.to_string() == t).then_some(nm).and_then(|nm| Length::nm(nm).ok())
        })
    }
}
