//! Every wood a maker can name: those of the tables, and the maker's own beside them.
//!
//! Invariant: a key of the tables always means the wood of the tables. An own wood never shadows it, not even in a book from before
//! the tables had that key.

use super::movement::Sawn;
use super::species::{Basis, Coefficient, Species, UNKNOWN_HARDWOOD, one};
use super::weight::Density;
use crate::quantity::{Decimal, Key, Sorted, in_small};
use crate::refusal::{Answer, Refusal};

/// A wood the maker wrote down.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnWood {
    pub name: String,
    /// Its weight at 12 %.
    pub basis: Basis,
    /// Movement for each point of moisture as a fraction of the width; none where the maker has no figure.
    pub radial: Option<f64>,
    pub tangential: Option<f64>,
    /// Where the figures are from, in the maker's words.
    pub from: Option<String>,
}

/// Whose figures a wood goes by, to be said beside what is made of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    Table,
    Own,
    Guess,
}

/// A wood to reckon with, from wherever it is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wood<'a> {
    pub name: &'a str,
    /// At 12 %.
    pub density: Density,
    pub radial: Option<Coefficient>,
    pub tangential: Option<Coefficient>,
    pub known: Known,
}

/// The woods of the tables and the maker's own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Woods {
    own: Sorted<Key, OwnWood>,
}

impl OwnWood {
    /// More than twice what any wood of the tables moves (American beech 0.00431), and less than a figure typed in per cent: ours.
    const COEFFICIENT_MOST: f64 = 0.01;

    /// Its density at 12 %.
    pub fn density(&self) -> Density {
        self.basis.density()
    }

    /// The same, if its figures can be those of a wood.
    ///
    /// # Errors
    /// [`Refusal::NameMissing`]; [`Refusal::DensityOutOfRange`] below 50 or above 1500 kg a cubic metre;
    /// [`Refusal::CoefficientOutOfRange`] for nothing, or above 0.01.
    pub fn plausible(self) -> Answer<OwnWood> {
        if self.name.trim().is_empty() {
            return Err(Refusal::NameMissing);
        }
        self.density().plausible()?;
        let moves = |coefficient: f64| 0.0 < coefficient && coefficient <= Self::COEFFICIENT_MOST;
        if [self.radial, self.tangential].into_iter().flatten().all(moves) {
            Ok(self)
        } else {
            Err(Refusal::CoefficientOutOfRange { most: Decimal::new(1, 2) })
        }
    }
}

impl Wood<'_> {
    /// How the width of a board moves; none where nobody knows.
    pub fn across(&self, sawn: Sawn) -> Option<Coefficient> {
        match sawn {
            Sawn::Flat => self.tangential,
            Sawn::Quarter => self.radial,
        }
    }

    /// The same wood marked wet: far heavier, and a guess whatever wood it is ([`Density::wet`]).
    ///
    /// ```
    /// use fivebar_core::wood::woods::Woods;
    /// let woods = Woods::default();
    /// let wet = woods.find("oak-european").unwrap().wet();
    /// assert!(wet.is_a_guess() && wet.density.as_kg_per_cubic_metre() == 1160.0);
    /// ```
    pub fn wet(self) -> Self {
        Wood { density: self.density.wet(), known: Known::Guess, ..self }
    }

    /// Is its weight our guess, to be said so beside every figure made of it?
    pub fn is_a_guess(&self) -> bool {
        self.known == Known::Guess
    }
}

impl<'a> From<&'a Species> for Wood<'a> {
    fn from(species: &'a Species) -> Wood<'a> {
        Wood {
            name: species.name,
            density: species.density(),
            radial: species.movement.map(|movement| movement.radial),
            tangential: species.movement.map(|movement| movement.tangential),
            known: if species.is_a_guess() { Known::Guess } else { Known::Table },
        }
    }
}

impl<'a> From<&'a OwnWood> for Wood<'a> {
    fn from(own: &'a OwnWood) -> Wood<'a> {
        let OwnWood { name, radial, tangential, .. } = own;
        Wood { name, density: own.density(), radial: radial.map(one), tangential: tangential.map(one), known: Known::Own }
    }
}

impl Woods {
    /// It is none of the maker's own any more.
    pub fn remove(&mut self, key: &Key) {
        self.own.remove(key);
    }

    /// A name that no other own wood has: two phones brought together may have said one name each.
    fn told_apart(&self, key: &Key, name: String) -> String {
        let same = |name: &str, own: &OwnWood| in_small(own.name.trim()) == in_small(name.trim());
        let taken = |name: &str| self.own.iter().any(|(other, own)| other != key && same(name, own));
        let numbered = || (2..=99).map(|n| format!("{name} {n}")).find(|name| !taken(name));
        if taken(&name) { numbered().unwrap_or_else(|| name.clone()) } else { name.clone() }
    }

    /// Adds a wood of the maker's own, or corrects it. A name that another has gets a number.
    ///
    /// # Errors
    /// [`Refusal::WoodInTable`] for a key the tables have; as [`OwnWood::plausible`].
    ///
    /// ```
    /// use fivebar_core::quantity::Key;
    /// use fivebar_core::wood::{species::Basis, woods::{Known, OwnWood, Woods}};
    /// let plum = OwnWood { name: "plum".into(), basis: Basis::Density(790.0), radial: None, tangential: None, from: None };
    /// let mut woods = Woods::default();
    /// woods.add(Key::read("plum").unwrap(), plum.clone()).unwrap();
    /// assert_eq!(woods.find("plum").unwrap().known, Known::Own);
    /// assert!(woods.add(Key::read("ash-white").unwrap(), plum).is_err());
    /// ```
    pub fn add(&mut self, key: Key, wood: OwnWood) -> Answer<()> {
        if Species::of(key.as_str()).is_ok() {
            return Err(Refusal::WoodInTable { key: key.as_str().into() });
        }
        let wood = wood.plausible()?;
        let name = self.told_apart(&key, wood.name);
        self.own.insert(key, OwnWood { name, ..wood });
        Ok(())
    }

    /// The wood of a key: of the tables, else the maker's own.
    ///
    /// # Errors
    /// [`Refusal::WoodUnknown`].
    pub fn find(&self, key: &str) -> Answer<Wood<'_>> {
        let own = || Key::read(key).and_then(|key| self.own.get(&key)).map(Wood::from);
        Species::of(key).map(Wood::from).or_else(|unknown| own().ok_or(unknown))
    }

    /// The wood of a key; one that is not named, or that nobody knows, weighs as the heaviest plausible and is marked as a guess.
    ///
    /// ```
    /// use fivebar_core::wood::woods::Woods;
    /// let woods = Woods::default();
    /// assert!(!woods.find_or_guess(Some("ash-white")).is_a_guess());
    /// assert!(woods.find_or_guess(Some("plum")).is_a_guess() && woods.find_or_guess(None).is_a_guess());
    /// ```
    pub fn find_or_guess(&self, key: Option<&str>) -> Wood<'_> {
        key.and_then(|key| self.find(key).ok()).unwrap_or(Wood::from(&UNKNOWN_HARDWOOD))
    }

    /// The maker's own wood of a key, as it was written down.
    pub fn own_of(&self, key: &Key) -> Option<&OwnWood> {
        self.own.get(key)
    }

    /// The maker's own woods, in the order of their keys.
    pub fn own(&self) -> impl Iterator<Item = (&Key, &OwnWood)> {
        self.own.iter()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_name_said_twice_is_told_apart() {
        let mut woods = Woods::default();
        let key = |text: &str| Key::read(text).unwrap();
        for (at, name) in [("plum", "plum"), ("plum-2", "Plum"), ("own", "plum"), ("plum", "plum"), ("pear", "pear")] {
            woods.add(key(at), OwnWood { name: name.into(), ..plum() }).unwrap();
        }
        let names = |woods: &Woods| woods.own().map(|(_, own)| own.name.clone()).collect::<Vec<_>>();
        assert_eq!(names(&woods), ["plum 3", "pear", "plum", "Plum 2"]);
        woods.remove(&key("plum"));
        assert_eq!(names(&woods), ["plum 3", "pear", "Plum 2"]);
    }

    fn plum() -> OwnWood {
        let from = Some("the sawyer at the mill".into());
        OwnWood { name: "plum".into(), basis: Basis::Density(790.0), radial: Some(0.002), tangential: None, from }
    }

    fn add(key: &str, wood: OwnWood) -> Answer<Woods> {
        let mut woods = Woods::default();
        woods.add(Key::read(key).unwrap(), wood).map(|()| woods)
    }

    #[test]
    fn an_own_wood_reckons_like_one_of_the_tables() {
        let woods = add("plum", plum()).unwrap();
        let found = woods.find("plum").unwrap();
        assert_eq!((found.name, found.known, found.density), ("plum", Known::Own, Density::kg_per_cubic_metre(790.0)));
        assert_eq!((found.across(Sawn::Quarter), found.across(Sawn::Flat)), (Some(one(0.002)), None));
        assert_eq!(woods.own().count(), 1);
        let ash = woods.find("ash-white").unwrap();
        assert_eq!((ash.known, ash.tangential), (Known::Table, Some(one(0.00274))));
        assert_eq!(woods.find_or_guess(Some("pear")), Wood::from(&UNKNOWN_HARDWOOD));
        assert_eq!(woods.find("pear"), Err(Refusal::WoodUnknown { key: "pear".into() }));
        assert_eq!(woods.find("Not a key!"), Err(Refusal::WoodUnknown { key: "Not a key!".into() }));
        assert_eq!(woods.find("unknown-hardwood").unwrap().known, Known::Guess);
    }

    #[test]
    fn a_key_of_the_tables_is_never_shadowed() {
        for key in ["ash-white", "oak-european", "unknown-hardwood"] {
            assert_eq!(add(key, plum()), Err(Refusal::WoodInTable { key: key.into() }));
            let forced = Woods { own: Sorted::from_iter([(Key::read(key).unwrap(), plum())]) };
            assert_eq!(forced.find(key).unwrap(), Wood::from(Species::of(key).unwrap()));
        }
    }

    #[test]
    fn a_later_figure_corrects_an_own_wood() {
        let mut woods = add("plum", plum()).unwrap();
        woods.add(Key::read("plum").unwrap(), OwnWood { basis: Basis::Gravity(0.7), ..plum() }).unwrap();
        assert_eq!(woods.find("plum").unwrap().density, Density::of_gravity(0.7));
        let (lost, there) = (woods.add(Key::read("plum").unwrap(), OwnWood { name: " ".into(), ..plum() }), woods.own().count());
        assert_eq!((lost, there), (Err(Refusal::NameMissing), 1));
    }

    #[test]
    fn figures_of_no_wood_are_refused() {
        let heavy = Refusal::DensityOutOfRange { least: 50.into(), most: 1500.into() };
        for basis in [Basis::Density(49.9), Basis::Density(1501.0), Basis::Gravity(0.04), Basis::Gravity(1.35), Basis::Density(f64::NAN)] {
            assert_eq!(add("plum", OwnWood { basis, ..plum() }), Err(heavy.clone()), "{basis:?}");
        }
        for basis in [Basis::Density(50.0), Basis::Density(1500.0), Basis::Gravity(0.05), Basis::Gravity(1.3)] {
            assert!(add("plum", OwnWood { basis, ..plum() }).is_ok(), "{basis:?}");
        }
        let moves = Refusal::CoefficientOutOfRange { most: Decimal::new(1, 2) };
        for met in [0.0, -0.001, 0.36, 0.0101, f64::NAN] {
            assert_eq!(add("plum", OwnWood { radial: Some(met), ..plum() }), Err(moves.clone()), "{met}");
            assert_eq!(add("plum", OwnWood { tangential: Some(met), ..plum() }), Err(moves.clone()), "{met}");
        }
        assert!(add("plum", OwnWood { tangential: Some(0.01), ..plum() }).is_ok());
    }
}
