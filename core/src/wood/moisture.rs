//! The water in wood, and how far apart two pieces are in it.
//!
//! Floats: a meter reads to a tenth of a per cent and is right to one.

use crate::quantity::{Decimal, Mass};
use crate::refusal::{Answer, Refusal};

/// Water in wood, in per cent of its oven-dry mass.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Moisture(f64);

/// What lies between two moistures, in points: from 8 to 11 % are 3.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Points(f64);

impl Moisture {
    /// The moisture densities are quoted at.
    pub const QUOTED: Moisture = Moisture(12.0);
    /// Above this, wood swells no more (Wood Handbook, chapter 13).
    pub const FIBRE_SATURATION: Moisture = Moisture(30.0);
    /// In per cent: no wood holds more water. Ours.
    pub const MOST: Decimal = Decimal::from_parts(250, 0, 0, false, 0);

    /// So many per cent.
    ///
    /// # Errors
    /// [`Refusal::MoistureOutOfRange`] below nothing or above 250.
    ///
    /// ```
    /// use fivebar_core::wood::moisture::Moisture;
    /// assert!(Moisture::per_cent(8.0).is_ok());
    /// assert!(Moisture::per_cent(-1.0).is_err());
    /// ```
    pub fn per_cent(met: f64) -> Answer<Moisture> {
        let most = f64::try_from(Self::MOST).unwrap_or_default();
        if (0.0..=most).contains(&met) { Ok(Moisture(met)) } else { Err(Refusal::MoistureOutOfRange { most: Self::MOST }) }
    }

    pub(super) const fn known(per_cent: f64) -> Moisture {
        Moisture(per_cent)
    }

    pub fn as_per_cent(self) -> f64 {
        self.0
    }

    /// What oven-dry wood weighs with this much water.
    ///
    /// ```
    /// use fivebar_core::{quantity::Mass, wood::moisture::Moisture};
    /// let wet = Moisture::per_cent(10.0).unwrap().with(Mass::kg(0.1));
    /// assert!((wet.as_kg() - 0.11).abs() < 1e-12);
    /// ```
    pub fn with(self, dry: Mass) -> Mass {
        Mass::kg(dry.as_kg() * self.factor())
    }

    pub(super) fn factor(self) -> f64 {
        1.0 + self.0 / 100.0
    }

    /// The points between this and another, whichever is wetter.
    ///
    /// ```
    /// use fivebar_core::wood::moisture::Moisture;
    /// let (dry, wet) = (Moisture::per_cent(8.0).unwrap(), Moisture::per_cent(11.0).unwrap());
    /// assert_eq!((dry.apart(wet).as_points(), wet.apart(dry).as_points()), (3.0, 3.0));
    /// ```
    pub fn apart(self, other: Moisture) -> Points {
        Points((self.0 - other.0).abs())
    }
}

impl Points {
    /// More than this apart, pieces are not glued together yet: common practice, not from a table.
    pub const GLUED_MOST: Points = Points(2.0);
    /// Far below what a meter shows: two readings of tenths that are 2 points apart count as 2.
    const SLACK: f64 = 1e-9;

    /// So many points; below nothing is nothing.
    pub fn of(points: f64) -> Points {
        Points(points.max(0.0))
    }

    pub fn as_points(self) -> f64 {
        self.0
    }

    /// Are pieces so far apart not to be glued together yet?
    ///
    /// ```
    /// use fivebar_core::wood::moisture::Points;
    /// assert!(!Points::of(2.0).too_far_to_glue());
    /// assert!(Points::of(2.1).too_far_to_glue());
    /// ```
    pub fn too_far_to_glue(self) -> bool {
        Self::GLUED_MOST.0 + Self::SLACK < self.0
    }
}

/// How far the driest and the wettest of several pieces are apart; nothing for one piece or none.
///
/// ```
/// use fivebar_core::wood::moisture::{Moisture, spread};
/// let rails = [8.5, 11.0, 9.0].map(|m| Moisture::per_cent(m).unwrap());
/// assert_eq!(spread(&rails).as_points(), 2.5);
/// assert!(spread(&rails).too_far_to_glue());
/// ```
pub fn spread(pieces: &[Moisture]) -> Points {
    let driest = pieces.iter().map(|moisture| moisture.0).reduce(f64::min);
    let wettest = pieces.iter().map(|moisture| moisture.0).reduce(f64::max);
    Points(driest.zip(wettest).map_or(0.0, |(dry, wet)| wet - dry))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_no_wood_holds_is_refused() {
        for met in [-0.1, 250.1, f64::NAN] {
            assert_eq!(Moisture::per_cent(met), Err(Refusal::MoistureOutOfRange { most: Decimal::from(250) }));
        }
    }

    #[track_caller]
    fn check(pieces: &[f64], points: f64, waits: bool) {
        let pieces: Vec<_> = pieces.iter().map(|m| Moisture::per_cent(*m).unwrap()).collect();
        let apart = spread(&pieces);
        assert!((apart.as_points() - points).abs() < 1e-9, "{apart:?}");
        assert_eq!(apart.too_far_to_glue(), waits, "{apart:?}");
    }

    #[test]
    fn glue_waits_beyond_two_points() {
        check(&[], 0.0, false);
        check(&[9.0], 0.0, false);
        check(&[8.0, 8.0], 0.0, false);
        check(&[7.9, 9.9], 2.0, false);
        check(&[10.1, 8.1], 2.0, false);
        check(&[8.0, 10.1], 2.1, true);
        check(&[12.0, 9.0, 11.0], 3.0, true);
    }
}
