//! What is laid: rows from the top, pieces from the left.

/// A piece of the strip `n` (from 1) of a pile, named by its place in the problem.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Piece {
    pub pile: usize,
    pub n: i64,
    /// From the panel's left edge.
    pub at: i64,
    pub length: i64,
}

/// What goes back to the rack of the strip `n` of a pile.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Remainder {
    pub pile: usize,
    pub n: i64,
    pub length: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    pub rows: Vec<Vec<Piece>>,
    pub remainders: Vec<Remainder>,
}
