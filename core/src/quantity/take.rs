//! What is left of a charge after tax and fees.

use super::{Decimal, spelled};

/// Where the tax stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The tag already holds it.
    Inside,
    /// It comes on top of the tag.
    Top,
}

/// Of a charge q the maker gets `keep` x q - `fixed`. Passed between money and sale by the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Take {
    pub keep: Decimal,
    pub fixed: Decimal,
}

spelled!(Side: Inside "inside", Top "top");
