//! What the four plans have in common, still in units of the plan: pieces drawn, pieces sawn, what is glued and what is finished.

use super::{Ends, GlueUp, Laid, Mark, Why};

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
    /// Length, width and thickness, and which part.
    pub pieces: Vec<([i64; 3], Option<usize>)>,
    pub remainder: i64,
    pub cuts: i64,
}

/// How often the saw goes through for so many pieces one behind the other: in front of the first and behind each where ends are trimmed,
/// else between them, and behind the last where something is `over`.
pub(super) fn cuts(pieces: usize, trimmed: bool, over: bool) -> i64 {
    let pieces = i64::try_from(pieces).unwrap_or(i64::MAX);
    if trimmed { pieces.saturating_add(1) } else { pieces.saturating_sub(1).saturating_add(i64::from(over)) }
}

/// A width across the grain, and of which pile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Wide {
    pub width: i64,
    pub source: usize,
    pub part: Option<usize>,
    pub glued: bool,
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
    /// What is left of the wood after cutting, before planing, in cubic units.
    pub within: i128,
    /// All pieces have one section, so waste is told in length too.
    pub one_section: bool,
    /// The section of a part is not known: nothing is said by volume.
    pub no_section: bool,
    pub across: Vec<Wide>,
    /// The same in width and in depth of a field that is glued both ways.
    pub by_side: [Vec<Wide>; 2],
    pub glue_ups: Vec<GlueUp>,
    pub laid: Option<Laid>,
    pub why: Option<Why>,
    pub ends: Ends,
}
