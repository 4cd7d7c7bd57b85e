//! What is left of a charge after tax and fees.

use super::Decimal;
use serde::{Deserialize, Serialize};

/// Where the tax stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
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
