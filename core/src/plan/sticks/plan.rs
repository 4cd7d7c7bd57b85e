//! How the sticks are cut.

use super::problem::Problem;

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

impl Stick {
    /// The same with what is left behind its last cut as what goes back, where it is long enough to keep.
    pub(in crate::plan) fn left(&self, problem: &Problem) -> Stick {
        let end = |piece: &Piece| piece.at.saturating_add(problem.parts.get(piece.part).map_or(0, |part| part.length));
        let end = self.pieces.iter().map(end).max().unwrap_or(0);
        let long = problem.piles.get(self.pile).map_or(0, |pile| pile.length.saturating_sub(problem.end_trim.saturating_mul(2)));
        let behind = long.saturating_sub(end).saturating_sub(problem.kerf).max(0);
        Stick { remainder: if behind < problem.keep_min { 0 } else { behind }, ..self.clone() }
    }
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    pub sticks: Vec<Stick>,
}
