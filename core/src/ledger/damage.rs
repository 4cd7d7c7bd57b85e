//! What came from outside and is no entry: kept with its bytes, set aside, reported. Never dropped.

use crate::quantity::Id;

/// Why a line was set aside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// Not JSON, or not the members an entry has.
    NotAnEntry,
    /// An entry, but not spelled in the one way entries are spelled.
    NotCanonical,
    /// A kind we know whose members do not hold.
    BadFact,
    /// An id we have already, with other bytes.
    SameIdOtherBytes,
}

/// A line that was set aside, with its bytes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Damage {
    pub line: Box<str>,
    pub why: Why,
    /// The id, where it could still be read.
    pub id: Option<Id>,
}
