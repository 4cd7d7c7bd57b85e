//! What is wanted, as the maker says it.

use crate::ledger::fold::Part;
use crate::plan::field::problem::{Mix, Pattern};
use crate::quantity::Length;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wish {
    Panel(Panel),
    Parts(Parts),
    /// The same by length alone, from sticks of one section.
    Sticks(Parts),
    Tiles(Tiles),
}

/// A panel of rows, each as wide as one strip.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Panel {
    pub length: Length,
    /// As many rows as make this width; as many as there can be where it is not said.
    pub width: Option<Length>,
    pub thickness: Length,
    /// One row, finished.
    pub strip: Length,
    /// Strips may be cut on purpose.
    pub split: bool,
}

/// Parts of one piece of furniture, and how many such pieces.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Parts {
    pub sets: Option<i64>,
    pub parts: Vec<Wanted>,
}

/// A part, finished.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    pub name: String,
    pub n: i64,
    /// Thickness, width, length.
    pub size: [Length; 3],
    /// It may be glued up of strips.
    pub glue: bool,
    /// The wood it must be of, where one is said.
    pub wood: Option<String>,
}

/// A field of tiles. Sizes: width, depth, height, each with what it may be off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tiles {
    pub patterns: Vec<Pattern>,
    pub mix: Vec<Mix>,
    pub size: [Option<(Length, Length)>; 3],
    pub layers: [i64; 2],
    pub gap: Length,
    pub open: [Length; 2],
    pub overhang: Length,
    pub cut_min: Length,
    pub turn: bool,
}

impl Panel {
    /// So many rows make the width, the last one over it where they don't come out.
    pub fn rows(&self) -> Option<i64> {
        let (width, strip) = (self.width?.as_nm(), self.strip.as_nm());
        width.checked_add(strip)?.checked_sub(1)?.checked_div(strip)
    }
}

impl Parts {
    /// The parts of a job, for so many pieces; those wider than any piece there is are glued up.
    pub fn of(parts: &[Part], sets: Option<i64>, widest: Length) -> Parts {
        let one = |part: &Part| Wanted {
            name: part.name.clone(),
            n: i64::from(part.n),
            size: part.size,
            glue: widest < part.size[1],
            wood: part.wood.as_ref().map(ToString::to_string),
        };
        Parts { sets, parts: parts.iter().map(one).collect() }
    }
}
