//! What a scale shows: whole grams.

use super::Mass;
use crate::refusal::{Answer, Refusal};

/// A reading of a scale. Never negative, ten tonnes at most.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Grams(u32);

impl Grams {
    pub const ZERO: Grams = Grams(0);
    /// As much as one weighing may come to: ten tonnes.
    pub const MOST: Grams = Grams(10_000_000);
    pub const KG: Grams = Grams(1_000);

    /// So many grams.
    ///
    /// # Errors
    /// [`Refusal::WeightOutOfRange`] below nothing or above ten tonnes.
    pub fn new(grams: i64) -> Answer<Grams> {
        Self::ZERO.or_more(grams)
    }

    /// So many grams, at least these.
    ///
    /// # Errors
    /// [`Refusal::WeightOutOfRange`] below these or above ten tonnes.
    pub fn or_more(self, grams: i64) -> Answer<Grams> {
        let read = u32::try_from(grams).map(Grams).ok().filter(|grams| (self..=Self::MOST).contains(grams));
        read.ok_or(Refusal::WeightOutOfRange { least: self, most: Self::MOST })
    }

    /// A mass to the nearest gram.
    ///
    /// # Errors
    /// [`Refusal::WeightOutOfRange`] below nothing or above ten tonnes.
    ///
    /// ```
    /// use fivebar_core::quantity::{Grams, Mass};
    /// assert_eq!(Grams::of(Mass::lb(1.0)), Grams::new(454));
    /// ```
    pub fn of(mass: Mass) -> Answer<Grams> {
        if mass.as_kg().is_nan() {
            return Err(Refusal::WeightOutOfRange { least: Self::ZERO, most: Self::MOST });
        }
        Grams::new(mass.as_grams())
    }

    pub fn as_grams(self) -> u32 {
        self.0
    }

    pub fn mass(self) -> Mass {
        Mass::kg(f64::from(self.0) / 1000.0)
    }

    /// What is left after another is taken off; nothing if that was more.
    pub fn less(self, other: Grams) -> Grams {
        Grams(self.0.saturating_sub(other.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(grams: i64, wanted: Option<u32>) {
        assert_eq!(Grams::new(grams).map(Grams::as_grams).ok(), wanted);
        assert_eq!(Grams::of(Mass::kg(grams as f64 / 1000.0)).map(Grams::as_grams).ok(), wanted);
    }

    #[test]
    fn inv08_a_reading_has_limits() {
        check(0, Some(0));
        check(1, Some(1));
        check(10_000_000, Some(10_000_000));
        check(10_000_001, None);
        check(-1, None);
        assert_eq!(Grams::of(Mass::kg(f64::NAN)), Err(Refusal::WeightOutOfRange { least: Grams::ZERO, most: Grams::MOST }));
        assert_eq!(Grams::KG.or_more(999), Err(Refusal::WeightOutOfRange { least: Grams::KG, most: Grams::MOST }));
        assert_eq!(Grams(7).less(Grams(9)), Grams::ZERO);
        assert_eq!(Grams(1_250).mass(), Mass::kg(1.25));
    }
}
