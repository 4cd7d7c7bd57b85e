//! What a haul weighs against what the van may carry: an estimate; wet wood weighs far more.

use super::{Haul, Pile};
use crate::quantity::Mass;
use crate::wood::species::{Species, UNKNOWN_HARDWOOD};

/// The load of a haul.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Load {
    pub mass: Mass,
    /// What the van may carry, where that is known.
    pub carries: Option<Mass>,
    /// Some pile's wood is unknown and weighs as the heaviest plausible.
    pub guessed: bool,
}

impl Load {
    /// The bar warns at 80 % of what the van may carry.
    pub const WARNS_AT: f64 = 0.8;

    /// The share of what the van may carry.
    pub fn share(&self) -> Option<f64> {
        self.carries.filter(|most| 0.0 < most.as_kg()).map(|most| self.mass.as_kg() / most.as_kg())
    }

    pub fn warns(&self) -> bool {
        self.share().is_some_and(|share| Self::WARNS_AT <= share)
    }
}

impl Haul {
    /// The load: volume x density at 12 % moisture, over all piles that have a size.
    pub fn load(&self) -> Load {
        let carries = self.carries.map(|grams| Mass::kg(grams as f64 / 1000.0));
        self.piles.iter().fold(Load { carries, ..Load::default() }, |load, pile| match weight(pile) {
            Some((mass, guessed)) => Load { mass: load.mass.plus(mass), guessed: load.guessed || guessed, ..load },
            None => load,
        })
    }
}

/// The weight of a pile as taken, and whether its wood was guessed: unknown wood weighs as the heaviest plausible.
fn weight(pile: &Pile) -> Option<(Mass, bool)> {
    let all = pile.piece().ok().flatten()?.times(pile.taken).ok()?;
    let known = pile.wood.as_ref().and_then(|wood| Species::of(wood.as_str()).ok());
    let species = known.unwrap_or(&UNKNOWN_HARDWOOD);
    Some((species.density().mass(all), species.is_a_guess()))
}
