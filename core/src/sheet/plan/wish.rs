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
    /// How wide the part is, where strips of it are cut already and this is the rest that is glued to them.
    pub rest_of: Option<Length>,
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
    /// How long a tile is, several of which may come out of a piece; as long as the pieces give where it is not said.
    pub long: Option<Length>,
}

impl Panel {
    /// So many rows make the width, the last one over it where they don't come out.
    pub fn rows(&self) -> Option<i64> {
        let (width, strip) = (self.width?.as_nm(), self.strip.as_nm());
        width.checked_add(strip)?.checked_sub(1)?.checked_div(strip)
    }

    /// The last of so many rows, once it is sawn to what makes the width that was asked: rows are as wide as a tape reads, and together may
    /// be wider. Nothing where they come out, or by less than `least`, which is sanded off; nor where there are fewer than make the width.
    ///
    /// ```
    /// # use fivebar_core::{quantity::Length, sheet::plan::wish::Panel};
    /// let inch = |of_32: i64| Length::INCH_64TH.times(2 * of_32).unwrap();
    /// // Eleven rows of 2 3/16 are 24 1/16; for 24 the last is 2 1/8.
    /// let panel = Panel { length: inch(960), width: Some(inch(768)), thickness: inch(24), strip: inch(70), split: true };
    /// assert_eq!(panel.last_row(11, inch(1)), Some(inch(68)));
    /// ```
    pub fn last_row(&self, rows: i64, least: Length) -> Option<Length> {
        let (width, strip) = (self.width.filter(|_| self.rows() == Some(rows))?.as_nm(), self.strip.as_nm());
        let last = width.checked_sub(strip.checked_mul(rows.checked_sub(1)?)?)?;
        Length::nm(last).ok().filter(|_| 0 < last && last.checked_add(least.as_nm()).is_some_and(|it| it <= strip))
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
            rest_of: None,
        };
        Parts { sets, parts: parts.iter().map(one).collect() }
    }
}
