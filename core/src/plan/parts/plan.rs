//! How the boards are cut, and how strips go together. Piles and parts are named by their place in the problem.

use super::problem::Problem;

/// Which way a board is cut first: along its length into bands, or across into sections.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum First {
    #[default]
    Rip,
    Cross,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Piece {
    pub part: usize,
    /// Within its band, from the trimmed end or edge.
    pub at: i64,
    pub length: i64,
    pub width: i64,
}

/// A band, or a section where the board is crosscut first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Band {
    pub size: i64,
    /// From the trimmed edge, or end.
    pub at: i64,
    pub pieces: Vec<Piece>,
}

/// So many boards of a pile cut alike.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Board {
    pub pile: usize,
    pub times: i64,
    /// How much of the trimmed length is used.
    pub stretch: i64,
    pub first: First,
    pub bands: Vec<Band>,
    /// What goes back to the rack of each; 0 where nothing does.
    pub remainder: i64,
}

impl Board {
    /// The same made no longer than its pieces need before it is cut, where the rest is at least as long as is kept.
    pub fn shortened(&self, problem: &Problem, kept: i64) -> Board {
        let long = problem.piles.get(self.pile).map_or(0, |pile| pile.length.saturating_sub(problem.end_trim.saturating_mul(2)));
        let pieces = self.bands.iter().flat_map(|band| band.pieces.iter().map(|piece| piece.at.saturating_add(piece.length)));
        let needed = match self.first {
            First::Rip => pieces.max().unwrap_or(0).max(problem.rip_min),
            First::Cross => self.bands.iter().map(|band| band.at.saturating_add(band.size)).max().unwrap_or(0),
        };
        let stretch = needed.max(problem.plane_min);
        let remainder = long.saturating_sub(stretch).saturating_sub(problem.kerf);
        if remainder < kept.max(1) { self.clone() } else { Board { stretch, remainder, ..self.clone() } }
    }
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Strip {
    pub pile: usize,
    pub width: i64,
}

/// So many parts glued up alike, of one strip or several.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Panel {
    pub part: usize,
    pub times: i64,
    pub strips: Vec<Strip>,
}

/// A plan for one set more, and how many pieces of which part it lacks.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Short {
    pub missing: Vec<(usize, i64)>,
    pub boards: Vec<Board>,
    pub panels: Vec<Panel>,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    pub boards: Vec<Board>,
    pub panels: Vec<Panel>,
    pub short: Option<Short>,
}
