//! The woods the book knows, by keys that stay: what each weighs at 12 % moisture and how much it moves.
//!
//! Coefficients and densities are floats as printed; whether a figure was seen in its source stands beside it.

use super::weight::Density;
use super::{europe, north_america};
use crate::quantity::{Key, Units};
use crate::refusal::{Answer, Refusal};

/// One wood of the tables.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Species {
    /// Stays as it is for ever: books hold it.
    pub key: &'static str,
    /// English name.
    pub name: &'static str,
    pub botanical: &'static str,
    pub basis: Basis,
    /// How the weight is known.
    pub status: Status,
    /// None where nobody publishes it.
    pub movement: Option<Movement>,
}

/// What the source gives for the weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Basis {
    /// Specific gravity at 12 %: oven-dry mass by volume at 12 %.
    Gravity(f64),
    /// Kilograms a cubic metre at 12 %.
    Density(f64),
}

impl Basis {
    /// The density at 12 % that follows from it.
    pub fn density(self) -> Density {
        match self {
            Basis::Gravity(at_12) => Density::of_gravity(at_12),
            Basis::Density(at_12) => Density::kg_per_cubic_metre(at_12),
        }
    }
}

/// How a figure is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Seen in the text named.
    Read,
    /// Seen in a page that repeats the source.
    ReadSecondHand,
    /// From memory.
    Recalled,
    /// One of two figures read, one recalled.
    Mixed,
    /// Follows from other figures.
    Computed,
    /// Our own guess on the heavy side.
    Guess,
}

/// Movement across the grain: the fraction of the width for each point of moisture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movement {
    pub radial: Coefficient,
    pub tangential: Coefficient,
    pub status: Status,
}

/// A coefficient, and the span between sources where they differ.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coefficient {
    pub usual: f64,
    pub least: f64,
    pub most: f64,
}

pub(super) const fn one(usual: f64) -> Coefficient {
    Coefficient { usual, least: usual, most: usual }
}

pub(super) const fn span(usual: f64, least: f64, most: f64) -> Coefficient {
    Coefficient { usual, least, most }
}

/// A wood the maker can't name yet: as heavy as a common hardwood plausibly is, and marked as a guess.
/// Wet wood weighs far more. Our judgement, no source.
pub const UNKNOWN_HARDWOOD: Species = Species {
    key: "unknown-hardwood",
    name: "unknown hardwood",
    botanical: "",
    basis: Basis::Density(770.0),
    status: Status::Guess,
    movement: None,
};

/// Whether the key says what wood it is, not that nobody knows.
pub fn is_known(key: &Key) -> bool {
    key.as_str() != UNKNOWN_HARDWOOD.key
}

impl Species {
    /// The wood of a key.
    ///
    /// # Errors
    /// [`Refusal::WoodUnknown`].
    ///
    /// ```
    /// use fivebar_core::wood::species::Species;
    /// assert_eq!(Species::of("ash-white").unwrap().name, "white ash");
    /// assert!(Species::of("unknown-hardwood").unwrap().is_a_guess());
    /// assert!(Species::of("White Ash").is_err());
    /// ```
    pub fn of(key: &str) -> Answer<&'static Species> {
        all().find(|s| s.key == key).ok_or_else(|| Refusal::WoodUnknown { key: key.into() })
    }

    /// Its density at 12 %: as printed, or 1000 x gravity x 1.12 kilograms a cubic metre (Wood Handbook, chapter 4).
    ///
    /// ```
    /// use fivebar_core::wood::species::Species;
    /// assert_eq!(Species::of("ash-white").unwrap().density().as_kg_per_cubic_metre().round(), 672.0);
    /// assert_eq!(Species::of("oak-european").unwrap().density().as_kg_per_cubic_metre(), 702.0);
    /// ```
    pub fn density(&self) -> Density {
        self.basis.density()
    }

    /// Is its weight our guess, to be said so beside every figure made of it?
    pub fn is_a_guess(&self) -> bool {
        self.status == Status::Guess
    }
}

/// Every wood of one table.
pub const fn north_american() -> &'static [Species] {
    &north_america::WOODS
}

/// Every wood of one table.
pub const fn european() -> &'static [Species] {
    &europe::WOODS
}

/// Every wood, those of the place first: North American for inches, European for millimetres; the unknown last.
///
/// ```
/// use fivebar_core::{quantity::Units, wood::species::listed};
/// assert_eq!(listed(Units::Inch).next().unwrap().name, "black walnut");
/// assert_eq!(listed(Units::Metric).next().unwrap().name, "European oak");
/// assert_eq!(listed(Units::Metric).last().unwrap().name, "unknown hardwood");
/// ```
pub fn listed(units: Units) -> impl Iterator<Item = &'static Species> {
    let (near, far) = match units {
        Units::Inch => (north_american(), european()),
        Units::Metric => (european(), north_american()),
    };
    near.iter().chain(far).chain([&UNKNOWN_HARDWOOD])
}

fn all() -> impl Iterator<Item = &'static Species> {
    listed(Units::Inch)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn keys_are_plain_and_never_twice() {
        let keys: Vec<_> = all().map(|s| s.key).collect();
        for key in &keys {
            assert!(key.bytes().all(|b| b.is_ascii_lowercase() || b == b'-') && !key.is_empty(), "{key}");
            assert_eq!(Species::of(key).unwrap().key, *key);
        }
        assert_eq!(keys.iter().collect::<BTreeSet<_>>().len(), keys.len());
        assert_eq!(keys.len(), 44);
    }

    #[test]
    fn the_usual_figure_lies_within_its_span() {
        for (species, movement) in all().filter_map(|s| s.movement.map(|m| (s.key, m))) {
            for c in [movement.radial, movement.tangential] {
                assert!(c.least <= c.usual && c.usual <= c.most, "{species}: {c:?}");
            }
        }
    }

    #[test]
    fn a_key_nobody_knows_is_refused() {
        assert_eq!(Species::of("balsa"), Err(Refusal::WoodUnknown { key: "balsa".into() }));
    }
}
