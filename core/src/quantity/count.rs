//! Whole pieces, never negative.

/// Pieces alike.
pub type Count = u32;

/// The most pieces one pile may hold.
pub const PILE_MOST: Count = 9_999;
