//! What wood weighs: density from specific gravity, adjusted for moisture, and the mass of a volume.
//!
//! Floats: good to a part in 10^12, where the wood itself varies by a tenth. Source: Wood Handbook (FPL-GTR-190), chapter 4.

use super::moisture::Moisture;
use crate::quantity::{Mass, Volume};

/// Mass of a cubic metre of wood, at some moisture.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Density(f64);

const WATER: f64 = 1000.0;
/// Shrinkage by volume for each unit of gravity, from fibre saturation to dry.
const SHRINKAGE: f64 = 0.265;

/// Specific gravity at a moisture, from the basic gravity (oven-dry mass by green volume): G = Gb / (1 - 0.265 Gb (1 - M / 30)).
///
/// ```
/// use fivebar_core::wood::{moisture::Moisture, weight::gravity_at};
/// assert!((gravity_at(0.51, Moisture::QUOTED) - 0.555).abs() < 0.0005); // black walnut; the table measured 0.55
/// ```
pub fn gravity_at(basic: f64, moisture: Moisture) -> f64 {
    basic / (1.0 - SHRINKAGE * basic * dryness(moisture))
}

/// The basic gravity behind a gravity at 12 %.
fn basic(at_12: f64) -> f64 {
    at_12 / (1.0 + SHRINKAGE * at_12 * dryness(Moisture::QUOTED))
}

/// How far below fibre saturation, from 0 to 1.
fn dryness(moisture: Moisture) -> f64 {
    (1.0 - moisture.as_per_cent() / Moisture::FIBRE_SATURATION.as_per_cent()).max(0.0)
}

impl Density {
    pub fn kg_per_cubic_metre(kg: f64) -> Density {
        Density(kg)
    }

    pub fn as_kg_per_cubic_metre(self) -> f64 {
        self.0
    }

    /// Density at 12 % of a specific gravity at 12 %: 1000 x G x 1.12.
    ///
    /// ```
    /// use fivebar_core::wood::weight::Density;
    /// assert!((Density::of_gravity(0.40).as_kg_per_cubic_metre() - 448.0).abs() < 1e-9);
    /// ```
    pub fn of_gravity(at_12: f64) -> Density {
        Density(WATER * at_12 * Moisture::QUOTED.factor())
    }

    /// The same wood at another moisture, quoted at 12 %: it weighs more with its water, and swells until fibre saturation.
    ///
    /// ```
    /// use fivebar_core::wood::{moisture::Moisture, weight::Density};
    /// let ash = Density::of_gravity(0.60);
    /// let green = ash.at(Moisture::per_cent(45.0).unwrap());
    /// assert_eq!(green.as_kg_per_cubic_metre().round(), 794.0);
    /// ```
    pub fn at(self, moisture: Moisture) -> Density {
        let at_12 = self.0 / (WATER * Moisture::QUOTED.factor());
        Density(WATER * gravity_at(basic(at_12), moisture) * moisture.factor())
    }

    /// What a volume of it weighs.
    ///
    /// ```
    /// use fivebar_core::{quantity::{Length, Volume}, wood::weight::Density};
    /// let inches = |n: i64| Length::INCH.times(n).unwrap();
    /// let foot = Volume::of(inches(12), inches(12), inches(1)).unwrap();
    /// assert!((Density::of_gravity(0.60).mass(foot).as_lb() - 3.496).abs() < 0.0005); // a board foot of white ash
    /// ```
    pub fn mass(self, volume: Volume) -> Mass {
        Mass::kg(self.0 * volume.cubic_metres())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Length;
    use crate::wood::species::Species;

    #[track_caller]
    fn check(got: f64, wanted: f64, within: f64) {
        assert!((got - wanted).abs() <= within, "{got} is not {wanted}");
    }

    fn pieces(unit: Length, sides: [i64; 3], n: u32) -> Volume {
        let [a, b, c] = sides.map(|s| unit.times(s).unwrap());
        Volume::of(a, b, c).unwrap().times(n).unwrap()
    }

    /// Kilograms and pounds of several lots.
    fn weigh(unit: Length, lots: &[(&str, [i64; 3], u32)]) -> Mass {
        let mass = |(key, sides, n): &(&str, [i64; 3], u32)| Species::of(key).unwrap().density().mass(pieces(unit, *sides, *n));
        lots.iter().map(mass).fold(Mass::default(), Mass::plus)
    }

    #[test]
    fn the_demo_hauls_and_the_bench() {
        let sixteenth = Length::INCH_64TH.times(4).unwrap();
        let ash = weigh(
            sixteenth,
            &[
                ("ash-white", [17, 36, 344], 64),
                ("ash-white", [28, 28, 304], 38),
                ("cherry-black", [13, 48, 176], 22),
                ("unknown-hardwood", [32, 64, 144], 9),
            ],
        );
        check(ash.as_lb(), 163.5, 0.05);
        let oak = [("oak-european", [40, 150, 365], 31), ("beech-european", [27, 62, 1010], 26), ("oak-european", [20, 45, 700], 18)];
        check(weigh(Length::MM, &oak).as_kg(), 86.9, 0.05);
        let bench = [
            ("oak-european", [1040, 340, 32], 1),
            ("oak-european", [290, 40, 16], 14),
            ("beech-european", [45, 45, 423], 4),
            ("beech-european", [270, 57, 24], 4),
            ("beech-european", [930, 57, 24], 2),
        ];
        check(weigh(Length::MM, &bench).as_kg(), 15.1, 0.05);
    }

    #[test]
    fn moisture_changes_the_weight() {
        let ash = Density::of_gravity(0.60);
        check(ash.at(Moisture::QUOTED).0, ash.0, 1e-9);
        let points = |m: f64| ash.at(Moisture::per_cent(m).unwrap()).0;
        assert!(points(8.0) < points(12.0) && points(12.0) < points(20.0) && points(30.0) < points(60.0));
        check(points(60.0) / points(30.0), 1.6 / 1.3, 1e-12);
    }
}
