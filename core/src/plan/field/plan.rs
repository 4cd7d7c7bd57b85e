//! The field that is laid, and what follows from the choice.

use super::problem::{Mix, Pattern};

/// How the tiles lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lie {
    /// Columns and rows, of tiles, blocks or cells; turned: width and depth change places.
    Rows { pattern: Pattern, columns: i64, rows: i64, turn: bool },
    /// Crossed courses: lines, tiles end to end in each, the opening between lines; first along the width, then along the depth.
    Crossed { lines: [i64; 2], ends: [i64; 2], open: [i64; 2] },
}

impl Default for Lie {
    fn default() -> Self {
        Lie::Rows { pattern: Pattern::Stack, columns: 0, rows: 0, turn: false }
    }
}

/// What is taken of a pile: whole tiles, cut pieces, and pieces taken for both.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    pub pile: usize,
    pub whole: i64,
    pub cut: i64,
    pub taken: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Field {
    pub mix: Mix,
    /// One pile, or two; the first is colour 0.
    pub piles: Vec<usize>,
    pub lie: Lie,
    pub layers: i64,
    pub tile: [i64; 3],
    pub outer: [i64; 3],
    pub pieces: Vec<Taken>,
    /// In square units.
    pub glue_area: i128,
    /// In grams, half up.
    pub weight: i128,
}

/// The field, or none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    pub field: Option<Field>,
}
