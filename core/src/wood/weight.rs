//! What wood weighs: density from specific gravity, adjusted for moisture, and the mass of a volume.
//!
//! Floats: good to a part in 10^12, where the wood itself varies by a tenth. Source: Wood Handbook (FPL-GTR-190), chapter 4.

use super::moisture::Moisture;
use crate::quantity::{Decimal, Mass, Volume};
use crate::refusal::{Answer, Refusal};

/// Mass of a cubic metre of wood, at some moisture.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Density(f64);

/// What to ask when a weight is possible and yet surprises.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// Wet, tropical, or thicker than entered?
    Heavy,
    /// Is it the scale, or the size?
    Light,
}

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
    /// No wood in the yard weighs as little: our judgement; the lightest of the trade weighs twice that.
    pub const LEAST: Density = Density(50.0);
    /// Solid cell wall, 7.8 lb a board foot (recalled): no wood weighs more.
    pub const MOST: Density = Density(1500.0);
    /// Green oak as it was weighed; green beech is 1070.
    const GREEN: Density = Density(1160.0);

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

    /// The same wood marked wet, quoted at 12 %: as heavy as green oak, or as itself where that is more.
    ///
    /// A guess on the heavy side for every wood, ours: green oak weighs 1160 kg a cubic metre, green beech 1070, and light woods
    /// drink as much more as they have less wood. Woods of more than 1160 hold little water, and how much nobody wrote down for us.
    /// Say beside every figure made of it that it is a guess.
    ///
    /// ```
    /// use fivebar_core::wood::weight::Density;
    /// let oak = Density::kg_per_cubic_metre(702.0);
    /// assert_eq!(oak.wet().as_kg_per_cubic_metre(), 1160.0);
    /// ```
    pub fn wet(self) -> Density {
        Density(self.0.max(Self::GREEN.0))
    }

    /// The density of a weighed volume, at the moisture it has.
    ///
    /// # Errors
    /// [`Refusal::NothingToShareBy`] without a volume.
    ///
    /// ```
    /// use fivebar_core::{quantity::{Mass, Volume}, wood::weight::Density};
    /// let pile = Density::of(Mass::kg(7.02), Volume::LITRE.times(10).unwrap()).unwrap();
    /// assert!((pile.as_kg_per_cubic_metre() - 702.0).abs() < 1e-9);
    /// ```
    pub fn of(mass: Mass, volume: Volume) -> Answer<Density> {
        if volume.is_zero() { Err(Refusal::NothingToShareBy) } else { Ok(Density(mass.as_kg() / volume.cubic_metres())) }
    }

    /// What to ask about a weight of hardwood: nothing from 2 to 5 lb a board foot (384 to 961 kg a cubic metre). The limits are ours, from
    /// 37 hardwoods between 2.2 and 4.2 lb, single samples up to 5.0, green oak 6.0. A light softwood is asked about too.
    ///
    /// # Errors
    /// [`Refusal::DensityOutOfRange`] below 50 or above 1500 kg a cubic metre.
    ///
    /// ```
    /// use fivebar_core::wood::weight::{Density, Doubt};
    /// let asked = |kg| Density::kg_per_cubic_metre(kg).doubt();
    /// assert_eq!((asked(702.0), asked(1160.0), asked(300.0)), (Ok(None), Ok(Some(Doubt::Heavy)), Ok(Some(Doubt::Light))));
    /// assert!(asked(1600.0).is_err());
    /// ```
    pub fn doubt(self) -> Answer<Option<Doubt>> {
        let pounds = self.plausible()?.mass(Volume::BOARD_FOOT).as_lb();
        Ok(match pounds {
            light if light < 2.0 => Some(Doubt::Light),
            heavy if 5.0 < heavy => Some(Doubt::Heavy),
            _ => None,
        })
    }

    /// The same, if any wood weighs that.
    ///
    /// # Errors
    /// [`Refusal::DensityOutOfRange`] below 50 or above 1500 kg a cubic metre.
    pub fn plausible(self) -> Answer<Density> {
        if (Self::LEAST..=Self::MOST).contains(&self) {
            Ok(self)
        } else {
            Err(Refusal::DensityOutOfRange { least: Decimal::from(50), most: Decimal::from(1500) })
        }
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

    #[test]
    fn wet_wood_is_as_heavy_as_green_oak_and_never_lighter_than_itself() {
        for (at_12, wet) in [(350.0, 1160.0), (770.0, 1160.0), (1160.0, 1160.0), (1250.0, 1250.0)] {
            check(Density(at_12).wet().0, wet, 1e-9);
        }
    }

    #[test]
    fn a_surprising_weight_is_asked_about() {
        let outside = Err(Refusal::DensityOutOfRange { least: Decimal::from(50), most: Decimal::from(1500) });
        let rows = [
            (0.0, outside.clone()),
            (0.25, outside.clone()),
            (0.27, Ok(Some(Doubt::Light))),
            (1.99, Ok(Some(Doubt::Light))),
            (2.01, Ok(None)),
            (3.4, Ok(None)),
            (4.99, Ok(None)),
            (5.01, Ok(Some(Doubt::Heavy))),
            (7.8, Ok(Some(Doubt::Heavy))),
            (7.81, outside.clone()),
            (f64::NAN, outside),
        ];
        for (pounds, asked) in rows {
            assert_eq!(Density::of(Mass::lb(pounds), Volume::BOARD_FOOT).unwrap().doubt(), asked, "{pounds}");
        }
        assert_eq!(Density::of(Mass::kg(1.0), Volume::ZERO), Err(Refusal::NothingToShareBy));
    }
}
