//! The two unit systems a book may be kept in.

use serde::{Deserialize, Serialize};

/// Inches, board feet and pounds, or millimetres, litres and kilograms.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Units {
    Inch,
    Metric,
}
