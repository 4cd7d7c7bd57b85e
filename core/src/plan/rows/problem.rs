//! What is to be laid, and from which strips.

use crate::plan::limits::{self, Within, named_once};
use crate::refusal::{Answer, PlanFigure};

/// Strips alike. All planning is on the low end of their band.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pile {
    pub id: String,
    pub count: i64,
    pub length: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problem {
    /// The finished length of every row.
    pub length: i64,
    /// No more rows than these, where there is a wish.
    pub rows: Option<i64>,
    /// Taken off each end of each strip before anything else.
    pub square: i64,
    pub kerf: i64,
    pub min_end: i64,
    pub min_piece: i64,
    pub machine_min: i64,
    pub stagger: i64,
    /// Strips may be cut on purpose into any number of pieces.
    pub split: bool,
    pub keep_min: i64,
    pub piles: Vec<Pile>,
}

impl Problem {
    /// Every figure is one that can be planned with.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::PlanOutOfRange`] names the figure and its limits; `PlanNameTwice` the name.
    pub fn check(&self) -> Answer<()> {
        let all = Within { of: None };
        all.length(PlanFigure::Length, self.length)?;
        all.ends(PlanFigure::Rows, self.rows.unwrap_or(0), [0, limits::ROWS_MOST])?;
        all.off(PlanFigure::Trim, self.square)?;
        all.off(PlanFigure::Kerf, self.kerf)?;
        for least in [self.min_end, self.min_piece, self.machine_min] {
            all.off(PlanFigure::Least, least)?;
        }
        all.off(PlanFigure::Stagger, self.stagger)?;
        all.off(PlanFigure::Keep, self.keep_min)?;
        all.many(PlanFigure::Piles, self.piles.len(), [0, limits::PILES_MOST])?;
        for pile in &self.piles {
            let one = Within { of: Some(&pile.id) };
            one.length(PlanFigure::Length, pile.length)?;
            one.ends(PlanFigure::Pieces, pile.count, [0, limits::PIECES_MOST])?;
        }
        named_once(self.piles.iter().map(|pile| &*pile.id))
    }
}
