//! Facts of woods, machines, air, the van and the timber yard.

use super::{Exact, kinds};
use crate::quantity::{Id, Key, Length, Span};

kinds! {
    /// A wood of the maker's own: kilograms a cubic metre at 12 % moisture; movement as the fraction of the width for each point of
    /// moisture; `from` says where the figures are from. The same key replaces it; a published key is never replaced. `gone`: it is a
    /// wood of the maker's no more (it is, where it is missing).
    SpeciesAdded { key: Key, name: String, density: Exact; radial: Exact, tangential: Exact, from: String, gone: bool }
    /// The least a machine may be fed, by its manual; with no side said, the machine has none any more. `name` is the maker's own word
    /// for a machine no list has.
    MachineMinimumSet { machine: Key; thickness: Length, width: Length, length: Length, name: String }
    /// The air of a room: degrees Celsius and relative humidity in per cent.
    AirRead { temperature: Exact, humidity: Exact; place: String }
    /// The moistures in per cent a piece will live between: of one job, or of any.
    RoomRangeSet { low: Exact, high: Exact; job: Id }
    /// What the van may carry with nobody in it, and what a person weighs, in grams.
    VanSet { ; payload: i64, person: i64 }
    /// A trip to the timber yard, both ways.
    TimberYardSet { ; distance: Length, span: Span }
}
