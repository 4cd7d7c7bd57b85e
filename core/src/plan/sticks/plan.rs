//! How the sticks are cut.

/// A piece of a part, named by its place in the problem.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Piece {
    pub part: usize,
    /// From the trimmed end.
    pub at: i64,
}

/// So many sticks of a pile cut alike.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stick {
    pub pile: usize,
    pub times: i64,
    pub pieces: Vec<Piece>,
    /// What goes back to the rack of each; 0 where it is too short to keep.
    pub remainder: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    pub sticks: Vec<Stick>,
}
