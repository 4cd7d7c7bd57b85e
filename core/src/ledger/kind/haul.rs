//! Facts of hauls, trips and piles.

use super::{Exact, kinds};
use crate::quantity::{Count, Currency, Id, Key, Length, Span, Spelled, Units, spelled};

/// Where a trip stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Step {
    /// Driving off.
    Leaving,
    /// At the bin.
    AtBin,
    /// Driving home.
    Homeward,
    /// Back home.
    Home,
}

spelled!(Step: Leaving "leaving", AtBin "at-bin", Homeward "homeward", Home "home");

/// How pieces were counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    Tap,
    Bundle,
    Layers,
    Weight,
}

spelled!(Way: Tap "tap", Bundle "bundle", Layers "layers", Weight "weight");

/// Where rejected pieces go back to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fate {
    Good,
    Jigs,
    Burnt,
}

spelled!(Fate: Good "good", Jigs "jigs", Burnt "burnt");

impl Fate {
    /// Where a piece went that does not come back; none where it is good after all.
    pub fn gone_to(self) -> Option<Key> {
        if self == Fate::Good { None } else { Key::read(self.spell().text()?) }
    }
}

/// The unit a rate per distance is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Per {
    Mile,
    Km,
}

spelled!(Per: Mile "mile", Km "km");

kinds! {
    /// A haul was begun; its id is the entry's. Currency and units are fixed here.
    HaulBegan { currency: Currency, units: Units; name: String }
    /// What is said of a haul: its name, its supplier (a person's id), what the van may carry in grams, how many people are in the van;
    /// whether it is bought boards (no, where it is missing), whether it saves a trip to the timber yard (no, where it is missing).
    HaulDescribed { haul: Id; name: String, supplier: Id, carries: i64, people: Count, bought: bool, saves_trip: bool }
    /// A trip of a haul was begun, driving off; its id is the entry's.
    TripBegan { haul: Id; }
    /// A trip reached a step.
    TripStepped { haul: Id, trip: Id, step: Step; }
    /// What a trip measured: distance and its rate; times where the stamps were wrong or missing. `share` of the drive was for this haul,
    /// the rest for other errands; all of it where it is missing.
    TripDescribed { haul: Id, trip: Id; distance: Length, rate: Exact, per: Per, wheel: Span, bin: Span, share: Exact }
    /// A pile was begun; its id is the entry's. `label` is A, B, C; wood is a species key.
    PileAdded { haul: Id, label: String; wood: Key, name: String, thickness: Length, width: Length, length: Length, length_to: Length }
    /// A pile was named, sized or corrected; members that are missing stay as they were.
    PileDescribed { haul: Id, pile: Id; wood: Key, name: String, thickness: Length, width: Length, length: Length, length_to: Length }
    /// Pieces were counted onto a pile.
    PiecesCounted { haul: Id, pile: Id, n: Count, way: Way; }
    /// Pieces counted on one pile belong to another.
    PiecesMoved { haul: Id, from: Id, to: Id, n: Count; }
    /// A pile was counted again: this is what is there, whatever was counted before.
    PiecesRecounted { haul: Id, pile: Id, n: Count; why: String }
    /// Pieces were sorted as good.
    PiecesSorted { haul: Id, pile: Id, n: Count; }
    /// Pieces were rejected, for a reason.
    PiecesRejected { haul: Id, pile: Id, n: Count, why: Key; }
    /// Rejected pieces turned out good, went to jigs, or were burnt.
    RejectsReturned { haul: Id, pile: Id, n: Count, why: Key, to: Fate; }
    /// Pieces went to a job.
    PiecesTaken { haul: Id, pile: Id, job: Id, n: Count; }
    /// Pieces came back from a job to their pile.
    PiecesFreed { haul: Id, pile: Id, job: Id, n: Count; }
    /// What was left of pieces that a job took of pile `of` lies on the rack again, as pieces of `pile`.
    PiecesLeft { haul: Id, pile: Id, of: Id, job: Id, n: Count; }
}

impl HaulDescribed {
    /// Nothing is said of it yet.
    pub fn of(haul: Id) -> HaulDescribed {
        HaulDescribed { haul, name: None, supplier: None, carries: None, people: None, bought: None, saves_trip: None }
    }
}

impl TripDescribed {
    /// Nothing is measured of it yet.
    pub fn of(haul: Id, trip: Id) -> TripDescribed {
        TripDescribed { haul, trip, distance: None, rate: None, per: None, wheel: None, bin: None, share: None }
    }
}
