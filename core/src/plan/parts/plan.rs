//! How the boards are cut, and how strips go together. Piles and parts are named by their place in the problem.

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
