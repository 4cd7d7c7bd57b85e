//! The two unit systems a book may be kept in.

use super::spelled;

/// Inches, board feet and pounds, or millimetres, litres and kilograms.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Units {
    Inch,
    Metric,
}

spelled!(Units: Inch "inch", Metric "metric");
