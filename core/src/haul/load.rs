//! What a haul weighs against what the van may carry: an estimate; wet wood weighs far more.

use super::{Haul, Pile};
use crate::quantity::{Count, Key, Mass};
use crate::wood::moisture::Moisture;
use crate::wood::species::{Species, UNKNOWN_HARDWOOD};
use crate::wood::weight::Density;

/// The load of a haul.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Load {
    pub mass: Mass,
    /// What the van may carry beside the people in it, where that is known.
    pub carries: Option<Mass>,
    /// Some pile's wood is unknown and weighs as the heaviest plausible.
    pub guessed: bool,
}

/// Who rides along today, beyond what the van's figure already allows for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aboard {
    pub people: Count,
    pub each: Mass,
}

/// How heavy a pile's wood is, and whether that is a guess.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heavy {
    pub density: Density,
    pub guessed: bool,
}

impl Load {
    /// The bar warns at 80 % of what the van may carry.
    pub const WARNS_AT: f64 = 0.8;

    /// The share of what the van may carry; none where that is not known, or nothing is left of it.
    pub fn share(&self) -> Option<f64> {
        self.carries.filter(|most| 0.0 < most.as_kg()).map(|most| self.mass.as_kg() / most.as_kg())
    }

    /// At 80 % of what the van may carry, or with any wood at all where the people already are too heavy.
    pub fn warns(&self) -> bool {
        let most = self.carries.filter(|_| 0.0 < self.mass.as_kg());
        most.is_some_and(|most| Self::WARNS_AT * most.as_kg() <= self.mass.as_kg())
    }
}

impl Aboard {
    /// One person and what is in their pockets: 80 kg. Our judgement, no source.
    pub const PERSON: Mass = Mass::kg(80.0);

    /// So many people of the usual weight.
    ///
    /// ```
    /// use fivebar_core::haul::Aboard;
    /// assert_eq!(Aboard::people(2).mass().as_kg(), 160.0);
    /// ```
    pub fn people(people: Count) -> Aboard {
        Aboard { people, each: Self::PERSON }
    }

    pub fn mass(self) -> Mass {
        Mass::kg(f64::from(self.people) * self.each.as_kg())
    }
}

impl Heavy {
    /// A wood of the tables at a moisture, at 12 % where none was read; unknown wood weighs as the heaviest plausible.
    /// Source: Wood Handbook (FPL-GTR-190), chapter 4.
    ///
    /// ```
    /// use fivebar_core::{haul::Heavy, quantity::Key, wood::moisture::Moisture};
    /// let ash = Key::read("ash-white");
    /// assert_eq!(Heavy::of(ash.as_ref(), None).density.as_kg_per_cubic_metre().round(), 672.0);
    /// let green = Moisture::per_cent(45.0).ok();
    /// assert_eq!(Heavy::of(ash.as_ref(), green).density.as_kg_per_cubic_metre().round(), 794.0);
    /// assert!(Heavy::of(None, None).guessed);
    /// ```
    pub fn of(wood: Option<&Key>, moisture: Option<Moisture>) -> Heavy {
        let known = wood.and_then(|wood| Species::of(wood.as_str()).ok());
        let species = known.unwrap_or(&UNKNOWN_HARDWOOD);
        let dry = species.density();
        Heavy { density: moisture.map_or(dry, |moisture| dry.at(moisture)), guessed: species.is_a_guess() }
    }
}

impl Haul {
    /// The load with nobody beside whom the van's figure allows for, each pile at 12 % moisture.
    pub fn load(&self) -> Load {
        self.load_with(Aboard::people(0), |pile| Heavy::of(pile.wood.as_ref(), None))
    }

    /// The load: volume x density over all piles that have a size, a band of lengths at its long end;
    /// against what the van may carry less the people in it.
    pub fn load_with(&self, aboard: Aboard, heavy: impl Fn(&Pile) -> Heavy) -> Load {
        let carries = self.carries.map(|grams| Mass::kg((grams as f64 / 1000.0 - aboard.mass().as_kg()).max(0.0)));
        let weighed = self.piles.iter().filter_map(|pile| weight(pile, heavy(pile)));
        weighed.fold(Load { carries, ..Load::default() }, |load, (mass, guessed)| Load {
            mass: load.mass.plus(mass),
            guessed: load.guessed || guessed,
            ..load
        })
    }
}

/// The weight of a pile as taken, and whether its wood was guessed.
fn weight(pile: &Pile, heavy: Heavy) -> Option<(Mass, bool)> {
    let all = pile.longest_piece().ok().flatten()?.times(pile.taken).ok()?;
    Some((heavy.density.mass(all), heavy.guessed))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Currency, Id, Length, Moment, Offset, Units, Wall};

    fn id(n: u8) -> Id {
        Id::new(Moment::at(0), [n; 10])
    }

    /// A pile of pieces of 100 by 100 mm and so many centimetres: a litre for each 10 cm.
    fn pile(wood: Option<&str>, taken: Count, (from, to): (i64, Option<i64>)) -> Pile {
        let cm = |n: i64| Length::CM.times(n).unwrap();
        let side = Some(cm(10));
        let wood = wood.and_then(Key::read);
        Pile { wood, taken, thickness: side, width: side, length: Some(cm(from)), length_to: to.map(cm), ..Pile::new(id(2)) }
    }

    fn haul(carries: Option<i64>, piles: Vec<Pile>) -> Haul {
        let began = Wall::new(Moment::at(0), Offset::UTC);
        Haul { carries, piles, ..Haul::new(id(1), (Currency::EUR, Units::Metric), began) }
    }

    #[track_caller]
    fn check(load: Load, mass: f64, carries: Option<f64>, warns: bool) {
        assert!((load.mass.as_kg() - mass).abs() < 1e-9, "{load:?}");
        assert_eq!((load.carries.map(Mass::as_kg), load.warns()), (carries, warns), "{load:?}");
    }

    /// 702 kg a cubic metre of oak, 770 of what nobody knows.
    #[test]
    fn a_pile_weighs_by_its_long_end_and_its_wood() {
        let oak = |taken, band| haul(None, vec![pile(Some("oak-european"), taken, band)]);
        check(oak(10, (100, None)).load(), 70.2, None, false);
        check(oak(10, (50, Some(100))).load(), 70.2, None, false);
        assert!(!oak(1, (50, None)).load().guessed);
        let unknown = haul(None, vec![pile(None, 10, (100, None)), Pile { taken: 5, ..Pile::new(id(3)) }]);
        check(unknown.load(), 77.0, None, false);
        assert!(unknown.load().guessed);
    }

    #[test]
    fn wet_wood_weighs_more() {
        let wet = Moisture::per_cent(60.0).ok();
        let piles = || vec![pile(Some("oak-european"), 10, (100, None)), pile(Some("beech-european"), 10, (100, None))];
        let wet_oak = |pile: &Pile| Heavy::of(pile.wood.as_ref(), wet.filter(|_| pile.wood == Key::read("oak-european")));
        let load = haul(None, piles()).load_with(Aboard::people(0), wet_oak);
        let oak = Species::of("oak-european").unwrap().density().at(Moisture::per_cent(60.0).unwrap());
        check(load, oak.as_kg_per_cubic_metre() / 10.0 + 71.2, None, false);
        let any =
            haul(None, piles()).load_with(Aboard::people(0), |_| Heavy { density: Density::kg_per_cubic_metre(1_000.0), guessed: true });
        check(any, 200.0, None, false);
        assert!(any.guessed);
    }

    #[test]
    fn people_come_off_what_the_van_may_carry() {
        let oak = |carries, pieces| haul(Some(carries), vec![pile(Some("oak-european"), pieces, (100, None))]);
        let with = |haul: Haul, people| haul.load_with(Aboard::people(people), |pile| Heavy::of(pile.wood.as_ref(), None));
        check(with(oak(300_000, 10), 0), 70.2, Some(300.0), false);
        check(with(oak(300_000, 10), 2), 70.2, Some(140.0), false);
        check(with(oak(247_000, 10), 2), 70.2, Some(87.0), true);
        check(with(oak(150_000, 10), 2), 70.2, Some(0.0), true);
        check(with(oak(150_000, 0), 2), 0.0, Some(0.0), false);
        check(oak(87_750, 10).load(), 70.2, Some(87.75), true);
        let light = Aboard { people: 2, each: Mass::kg(50.0) };
        check(oak(300_000, 10).load_with(light, |pile| Heavy::of(pile.wood.as_ref(), None)), 70.2, Some(200.0), false);
        assert_eq!(with(oak(150_000, 10), 2).share(), None);
    }
}
