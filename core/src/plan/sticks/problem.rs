//! Which parts are wanted, and from which sticks they may be cut.

use crate::plan::limits::{self, Within, named_once};
use crate::refusal::{Answer, PlanFigure};

/// Sticks alike. All planning is on the low end of their band.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pile {
    pub id: String,
    pub count: i64,
    pub length: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Part {
    pub id: String,
    pub per_set: i64,
    pub length: i64,
    /// The piles it may come from, by their place; any where nothing is said.
    pub piles: Option<Vec<usize>>,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problem {
    /// No more sets than these, where there is a wish.
    pub sets: Option<i64>,
    pub kerf: i64,
    /// Off each end of each stick.
    pub end_trim: i64,
    pub machine_min: i64,
    /// What is left at least so long goes back to the rack.
    pub keep_min: i64,
    pub piles: Vec<Pile>,
    pub parts: Vec<Part>,
}

impl Problem {
    /// Every figure is one that can be planned with.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::PlanOutOfRange`] names the figure and its limits; `PlanNameTwice` the name.
    pub fn check(&self) -> Answer<()> {
        let all = Within { of: None };
        all.ends(PlanFigure::Sets, self.sets.unwrap_or(0), [0, limits::SETS_MOST])?;
        all.off(PlanFigure::Kerf, self.kerf)?;
        all.off(PlanFigure::Trim, self.end_trim)?;
        all.off(PlanFigure::Least, self.machine_min)?;
        all.off(PlanFigure::Keep, self.keep_min)?;
        all.many(PlanFigure::Piles, self.piles.len(), [0, limits::PILES_MOST])?;
        all.many(PlanFigure::Parts, self.parts.len(), [1, limits::PARTS_MOST])?;
        for pile in &self.piles {
            let one = Within { of: Some(&pile.id) };
            one.length(PlanFigure::Length, pile.length)?;
            one.ends(PlanFigure::Pieces, pile.count, [0, limits::PIECES_MOST])?;
        }
        for part in &self.parts {
            let one = Within { of: Some(&part.id) };
            one.length(PlanFigure::Length, part.length)?;
            one.ends(PlanFigure::Each, part.per_set, [1, limits::EACH_MOST])?;
        }
        named_once(self.piles.iter().map(|pile| &*pile.id))?;
        named_once(self.parts.iter().map(|part| &*part.id))
    }
}
