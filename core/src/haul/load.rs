//! What a haul weighs against what the van may carry: an estimate; wet wood weighs far more.

use super::sample::Mean;
use super::{Haul, Pile};
use crate::quantity::{Count, Key, Mass};
use crate::wood::moisture::Moisture;
use crate::wood::species::{Species, UNKNOWN_HARDWOOD};
use crate::wood::weight::Density;
use crate::wood::woods::Wood;

/// The load of a haul.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Load {
    pub mass: Mass,
    /// What the van may carry beside the people in it, where that is known.
    pub carries: Option<Mass>,
    /// Some pile's wood is unknown and weighs as the heaviest plausible.
    pub guessed: bool,
    /// Some pile of a length band weighs as at its long end.
    pub at_longest: bool,
}

/// Who is in the van today.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aboard {
    pub people: Count,
    pub each: Mass,
}

/// The van as the workshop knows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Van {
    /// What it may carry with nobody in it.
    pub payload: Option<Mass>,
    /// What a person weighs.
    pub person: Mass,
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

    /// What is too much of it; none where it is not, or what the van may carry is not known.
    ///
    /// ```
    /// use fivebar_core::{haul::Load, quantity::Mass};
    /// let load = Load { mass: Mass::kg(450.0), carries: Some(Mass::kg(372.0)), ..Load::default() };
    /// assert_eq!(load.over().unwrap().as_kg(), 78.0);
    /// assert!(Load { carries: Some(Mass::kg(450.0)), ..load }.over().is_none());
    /// ```
    pub fn over(&self) -> Option<Mass> {
        let over = self.mass.as_kg() - self.carries?.as_kg();
        (0.0 < over).then(|| Mass::kg(over))
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
    /// Somebody drives: where nothing is said, it is one. Ours.
    pub const DRIVER: Count = 1;

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

impl Default for Van {
    fn default() -> Van {
        Van { payload: None, person: Aboard::PERSON }
    }
}

impl Van {
    /// What it may still carry with so many people in it; nothing where they are too heavy already.
    ///
    /// ```
    /// use fivebar_core::haul::Van;
    /// use fivebar_core::quantity::Mass;
    /// let van = Van { payload: Some(Mass::kg(700.0)), ..Van::default() };
    /// assert_eq!(van.carries_beside(2).unwrap().as_kg(), 540.0);
    /// ```
    pub fn carries_beside(self, people: Count) -> Option<Mass> {
        let aboard = Aboard { people, each: self.person }.mass();
        self.payload.map(|all| Mass::kg((all.as_kg() - aboard.as_kg()).max(0.0)))
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
        Heavy::of_wood(known.unwrap_or(&UNKNOWN_HARDWOOD).into(), moisture)
    }

    /// Any wood at a moisture, at 12 % where none was read.
    pub fn of_wood(wood: Wood<'_>, moisture: Option<Moisture>) -> Heavy {
        let dry = wood.density;
        Heavy { density: moisture.map_or(dry, |moisture| dry.at(moisture)), guessed: wood.is_a_guess() }
    }

    /// The wood of a pile, the maker's own too, with the water that was read in it; a wet pile by the heavy guess
    /// ([`Density::wet`]), unknown wood as the heaviest plausible.
    ///
    /// ```
    /// use fivebar_core::haul::{Heavy, Pile};
    /// use fivebar_core::quantity::{Id, Key, Moment};
    /// let ash = Pile { wood: Key::read("ash-white"), ..Pile::new(Id::new(Moment::at(0), [0; 10])) };
    /// assert_eq!(Heavy::of_pile(&ash).density.as_kg_per_cubic_metre().round(), 672.0);
    /// ```
    pub fn of_pile(pile: &Pile) -> Heavy {
        let wood = pile.known_wood();
        match pile.dampness {
            Some(damp) if damp.wet => Heavy::of_wood(wood.wet(), None),
            damp => Heavy::of_wood(wood, damp.and_then(|damp| damp.moisture())),
        }
    }
}

impl Haul {
    /// What the van may carry of wood: as it was said of this haul, else its payload less the people in it today.
    pub fn may_carry(&self) -> Option<Mass> {
        let said = self.carries.map(|grams| Mass::kg(grams as f64 / 1000.0));
        said.or_else(|| self.van.carries_beside(self.people.unwrap_or(Aboard::DRIVER)))
    }

    /// The load: volume x density over all piles that have a size, a band of lengths at its long end, each with the water read in it.
    pub fn load(&self) -> Load {
        self.load_with(Heavy::of_pile)
    }

    /// The load where the weight of a pile's wood is known otherwise.
    pub fn load_with(&self, heavy: impl Fn(&Pile) -> Heavy) -> Load {
        let weighed = self.piles.iter().filter_map(|pile| weight(pile, heavy(pile)));
        weighed.fold(Load { carries: self.may_carry(), ..Load::default() }, |load, pile| Load {
            mass: load.mass.plus(pile.mass),
            guessed: load.guessed || pile.guessed,
            at_longest: load.at_longest || pile.at_longest,
            ..load
        })
    }
}

/// The weight of a pile as taken, and by what it goes: as weighed; else by its volume, that of measured pieces at the high
/// end of its interval, that of a size at the long end of its band.
fn weight(pile: &Pile, heavy: Heavy) -> Option<Load> {
    if let Some(weighs) = pile.weighs() {
        return Some(Load { mass: weighs.mass, ..Load::default() });
    }
    let by_size = || pile.longest_piece().ok().flatten();
    let (sampled, there) = (pile.sampled().ok().flatten(), 0 < pile.brought());
    let at_longest = there && pile.length_to.is_some() && sampled.is_none_or(|sampled| sampled.off.is_none());
    let (piece, more) = match sampled {
        Some(Mean { mean, off: Some(off) }) => (mean, 1.0 + off),
        // One piece alone says nothing of the longest.
        Some(Mean { mean, off: None }) => (by_size().map_or(mean, |longest| longest.max(mean)), 1.0),
        None => (by_size()?, 1.0),
    };
    let all = heavy.density.mass(piece.times(pile.brought()).ok()?);
    Some(Load { mass: Mass::kg(all.as_kg() * more), guessed: heavy.guessed && there, at_longest, ..Load::default() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::haul::{Dampness, Measured, Weighed};
    use crate::quantity::{Currency, Decimal, Id, Length, Moment, Offset, Units, Wall};
    use crate::wood::species::Basis;
    use crate::wood::woods::OwnWood;

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

    /// Three of forty were measured, 0.9 to 1.1 m: the mean of 1 m, and 23.9 % more, as in the table of `sample`. One alone counts where
    /// it is longer than the size. Weighed pieces weigh what the scale showed, whatever the wood.
    #[test]
    fn what_was_measured_or_weighed_goes_before_the_size() {
        let cm = |n: i64| Measured { length: Length::CM.times(n).ok(), ..Measured::default() };
        let of = |measured: Vec<Measured>| haul(None, vec![Pile { measured, ..pile(Some("oak-european"), 40, (100, None)) }]).load();
        assert!((of(vec![cm(90), cm(100), cm(110)]).mass.as_kg() - 280.8 * 1.23892).abs() < 0.01);
        check(of(vec![cm(50)]), 280.8, None, false);
        check(of(vec![cm(200)]), 561.6, None, false);
        let weighed = Weighed {
            counted: id(7),
            sample: 10,
            sample_weight: 8_000,
            weight: 33_000,
            tare: 1_000,
            spread: None,
            singles: None,
            counts: true,
        };
        let piles = vec![Pile { weighed: vec![weighed], taken: 40, ..Pile::new(id(3)) }];
        let load = haul(None, piles);
        check(load.load(), 32.0, None, false);
        assert_eq!((load.load().guessed, load.unsized_pieces(), load.unweighed_pieces()), (false, 40, 0));
    }

    /// Ten pieces of a metre, a tenth of a cubic metre, of a wood and as damp.
    #[track_caller]
    fn damp(wood: Option<&str>, (percent, wet): (Option<i64>, bool), (kg, guessed): (f64, bool)) {
        let at = Wall::new(Moment::at(0), Offset::UTC);
        let own = OwnWood { name: "plum".into(), basis: Basis::Density(790.0), radial: None, tangential: None, from: None };
        let own = Some(own).filter(|_| wood == Some("plum"));
        let dampness = Some(Dampness { percent: percent.map(Decimal::from), wet, at });
        let load = haul(None, vec![Pile { dampness, own, ..pile(wood, 10, (100, None)) }]).load();
        assert!((load.mass.as_kg() - kg).abs() < 0.05, "{wood:?} {percent:?}: {load:?}");
        assert_eq!(load.guessed, guessed, "{wood:?} {percent:?}");
    }

    /// At 60 %: gravity 0.627 at 12 % is 0.570 basic, and 570 kg with 60 % of water 912. Our own sums by the handbook: these rows pin.
    #[test]
    fn a_pile_weighs_with_its_own_wood_and_its_water() {
        damp(Some("oak-european"), (None, false), (70.2, false));
        damp(Some("oak-european"), (Some(12), false), (70.2, false));
        damp(Some("oak-european"), (Some(60), false), (91.2, false));
        damp(Some("oak-european"), (None, true), (116.0, true));
        damp(Some("oak-european"), (Some(20), true), (116.0, true));
        damp(Some("plum"), (None, false), (79.0, false));
        damp(Some("plum"), (Some(12), false), (79.0, false));
        damp(Some("nobody-knows"), (None, false), (77.0, true));
        damp(None, (None, true), (116.0, true));
    }

    #[test]
    fn any_weight_can_be_asked_for() {
        let piles = vec![pile(Some("oak-european"), 10, (100, None)), pile(Some("beech-european"), 10, (100, None))];
        let any = haul(None, piles).load_with(|_| Heavy { density: Density::kg_per_cubic_metre(1_000.0), guessed: true });
        check(any, 200.0, None, false);
        assert!(any.guessed);
    }

    #[test]
    fn people_come_off_what_the_van_may_carry() {
        let oak = |carries, pieces| haul(carries, vec![pile(Some("oak-european"), pieces, (100, None))]);
        let van = |payload: f64, each: f64| Van { payload: Some(Mass::kg(payload)), person: Mass::kg(each) };
        let with = |pieces, payload, people| Haul { van: van(payload, 80.0), people, ..oak(None, pieces) }.load();
        check(with(10, 300.0, Some(0)), 70.2, Some(300.0), false);
        check(with(10, 300.0, None), 70.2, Some(220.0), false);
        check(with(10, 300.0, Some(2)), 70.2, Some(140.0), false);
        check(with(10, 247.0, Some(2)), 70.2, Some(87.0), true);
        check(with(10, 150.0, Some(2)), 70.2, Some(0.0), true);
        check(with(0, 150.0, Some(2)), 0.0, Some(0.0), false);
        let light = Haul { van: van(300.0, 50.0), people: Some(2), ..oak(None, 10) };
        check(light.load(), 70.2, Some(200.0), false);
        assert_eq!(with(10, 150.0, Some(2)).share(), None);
        let said = Haul { van: van(700.0, 80.0), people: Some(3), ..oak(Some(87_750), 10) };
        check(said.load(), 70.2, Some(87.75), true);
        check(oak(None, 10).load(), 70.2, None, false);
    }
}
