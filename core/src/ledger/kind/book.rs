//! Facts of the book itself.

use super::kinds;
use crate::quantity::{Currency, Id, Moment, Units, spelled};

/// What a person is to the maker. Names, phones and places live in a side store by the entry's id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    Supplier,
    Buyer,
    Helper,
    Gallery,
    Maker,
}

spelled!(Role: Supplier "supplier", Buyer "buyer", Helper "helper", Gallery "gallery", Maker "maker");

kinds! {
    /// The currency and units that new hauls and jobs begin with.
    WorkshopSet { ; currency: Currency, units: Units }
    /// A person is known; the id is the entry's, the name is not here.
    PersonAdded { role: Role; }
    /// A person's name is gone for good: an old copy can't bring it back.
    Forgotten { person: Id; }
    /// A copy was kept outside this phone, holding all up to a moment.
    CopyKept { upto: Moment; }
    /// A photo was taken or chosen: of a job, a haul, a pile, or of none of them. The picture lies beside the book, by the id `photo`.
    /// `spending`: it is the receipt of that entry, and names no job; missing, it is no receipt.
    PhotoTaken { photo: Id; job: Id, haul: Id, pile: Id, spending: Id }
    /// A photo is not wanted any more; its picture stays until the next copy.
    PhotoRemoved { photo: Id; }
    /// Entries were taken back.
    Struck { entries: Vec<Id>; }
    /// Entries that were taken back stand again.
    Restored { entries: Vec<Id>; }
}
