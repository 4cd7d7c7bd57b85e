//! What the four plans have in common, still in units of the plan: pieces drawn, pieces sawn, what is glued and what is finished.

use super::{Lacking, Mark, Why};

/// A piece in the picture: left, top, width, height.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Rect {
    pub at: [i64; 4],
    pub source: usize,
    pub mark: Mark,
    pub part: Option<usize>,
}

/// A board or stick that is cut: where it lies and what of it goes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Board {
    pub at: [i64; 4],
    pub source: usize,
    pub number: i64,
    pub times: i64,
    pub left: Option<[i64; 4]>,
}

/// One piece of a pile and what is cut of it; so many alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Sawn {
    pub source: usize,
    pub times: i64,
    pub mark: Mark,
    /// Lengths, and which part.
    pub pieces: Vec<(i64, Option<usize>)>,
    pub remainder: i64,
    pub cuts: i64,
}

#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Draft {
    pub made: i64,
    pub outer: [i64; 2],
    pub rects: Vec<Rect>,
    pub boards: Vec<Board>,
    pub sawn: Vec<Sawn>,
    /// Square units.
    pub glue: i128,
    /// Finished wood by pile, in cubic units.
    pub finished: Vec<i128>,
    /// What of the taken wood is in the finished pieces, in cubic units: by their length alone where one section is planned.
    pub within: i128,
    /// All pieces have one section, so waste is told in length too.
    pub one_section: bool,
    /// Widths across the grain, and of which pile.
    pub across: Vec<(i64, usize)>,
    pub why: Option<Why>,
    pub short: Vec<Lacking>,
}
