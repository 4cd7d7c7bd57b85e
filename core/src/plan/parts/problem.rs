//! Which parts are wanted, and from which boards they may be cut.

use crate::plan::limits::{self, Within, named_once};
use crate::refusal::{Answer, PlanFigure};

/// Boards alike. All planning is on the low end of their band.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pile {
    pub id: String,
    pub count: i64,
    pub length: i64,
    pub width: i64,
    pub thickness: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Part {
    pub id: String,
    pub per_set: i64,
    pub length: i64,
    pub width: i64,
    pub thickness: i64,
    /// It may be made of strips side by side.
    pub glue: bool,
    /// The piles it may come from by wood and wish, by their place; any where nothing is said. Thickness is another matter.
    pub piles: Option<Vec<usize>>,
}

/// What is added to a finished part for final sizing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Allow {
    pub length: i64,
    pub width: i64,
    pub thickness: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problem {
    /// No more sets than these, where there is a wish.
    pub sets: Option<i64>,
    pub kerf: i64,
    /// Off each end of each board.
    pub end_trim: i64,
    /// Off each long edge of each board.
    pub edge_trim: i64,
    /// A part that takes the whole width of a board with what is over has its edges planed as its faces are, not trimmed; all others have
    /// theirs trimmed.
    pub planed: bool,
    pub allow: Allow,
    /// Off each glued edge.
    pub joint: i64,
    pub strip_min: i64,
    pub plane_min: i64,
    pub rip_min: i64,
    /// What is left at least so long goes back to the rack; 0: nothing ever does.
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
        self.check_shop()?;
        for pile in &self.piles {
            let one = Within { of: Some(&pile.id) };
            sizes(&one, [pile.length, pile.width, pile.thickness])?;
            one.ends(PlanFigure::Pieces, pile.count, [0, limits::PIECES_MOST])?;
        }
        for part in &self.parts {
            let one = Within { of: Some(&part.id) };
            sizes(&one, [part.length, part.width, part.thickness])?;
            one.ends(PlanFigure::Each, part.per_set, [1, limits::EACH_MOST])?;
        }
        named_once(self.piles.iter().map(|pile| &*pile.id))?;
        named_once(self.parts.iter().map(|part| &*part.id))
    }

    /// How wide a board of a pile is once its edges are trimmed.
    pub fn trimmed(&self, pile: usize) -> i64 {
        self.piles.get(pile).map_or(0, |own| own.width.saturating_sub(self.edge_trim.saturating_mul(2)))
    }

    /// The same, or as wide as the widest part that takes its whole width.
    ///
    /// ```
    /// use fivebar_core::plan::parts::problem::{Allow, Part, Pile, Problem};
    /// let leg = Part { per_set: 4, length: 450, width: 42, thickness: 42, ..Part::default() };
    /// let stick = Pile { count: 4, length: 480, width: 45, thickness: 45, ..Pile::default() };
    /// let trimmed = Problem { edge_trim: 2, allow: Allow { width: 2, ..Allow::default() }, piles: vec![stick], parts: vec![leg], ..Problem::default() };
    /// assert_eq!(trimmed.wide(0), 41);
    /// assert_eq!(Problem { planed: true, ..trimmed }.wide(0), 44); // the leg, and 2 over
    /// ```
    pub fn wide(&self, pile: usize) -> i64 {
        let Some(own) = self.piles.get(pile) else { return 0 };
        let of_it = |part: &&Part| {
            let thick = part.thickness.saturating_add(self.allow.thickness) <= own.thickness;
            self.planed && !part.glue && thick && part.piles.as_ref().is_none_or(|piles| piles.contains(&pile))
        };
        let whole = self.parts.iter().filter(of_it).map(|part| part.width.saturating_add(self.allow.width));
        whole.filter(|wide| *wide <= own.width).fold(self.trimmed(pile), i64::max)
    }

    fn check_shop(&self) -> Answer<()> {
        let all = Within { of: None };
        all.ends(PlanFigure::Sets, self.sets.unwrap_or(0), [0, limits::SETS_MOST])?;
        all.off(PlanFigure::Kerf, self.kerf)?;
        for trim in [self.end_trim, self.edge_trim] {
            all.off(PlanFigure::Trim, trim)?;
        }
        for allowance in [self.allow.length, self.allow.width, self.allow.thickness] {
            all.off(PlanFigure::Allowance, allowance)?;
        }
        all.off(PlanFigure::Joint, self.joint)?;
        for least in [self.strip_min, self.plane_min, self.rip_min] {
            all.off(PlanFigure::Least, least)?;
        }
        all.off(PlanFigure::Keep, self.keep_min)?;
        all.many(PlanFigure::Piles, self.piles.len(), [0, limits::PILES_MOST])?;
        all.many(PlanFigure::Parts, self.parts.len(), [1, limits::PARTS_MOST])
    }
}

fn sizes(one: &Within<'_>, [length, width, thickness]: [i64; 3]) -> Answer<()> {
    one.length(PlanFigure::Length, length)?;
    one.length(PlanFigure::Width, width)?;
    one.length(PlanFigure::Thickness, thickness)
}
