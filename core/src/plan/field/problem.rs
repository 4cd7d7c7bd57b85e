//! How large a field is wanted, in which patterns, and of which tiles.

use crate::plan::limits::{self, Within, named_once};
use crate::refusal::{Answer, PlanFigure};

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pattern {
    #[default]
    Stack,
    Running,
    Basket,
    Herringbone,
    Crossed,
}

/// One pile, or two of different woods by turns.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mix {
    #[default]
    Single,
    Alternate,
}

/// A wanted size, and how far from it is near enough.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Target {
    pub size: i64,
    pub tolerance: i64,
}

/// Pieces alike. All planning is on the low end of their band.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pile {
    pub id: String,
    /// The wood: two of one mix must differ in it.
    pub species: String,
    pub count: i64,
    pub length: i64,
    pub width: i64,
    pub thickness: i64,
    /// Grams a litre.
    pub density: i64,
    /// How long a piece is that cut tiles come from, where whole ones are planned shorter than it is; else nothing.
    pub whole: i64,
}

impl Pile {
    /// The length that cut tiles come from.
    pub fn cut_from(&self) -> i64 {
        self.length.max(self.whole)
    }
}

/// What is taken off each piece for final sizing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Allow {
    pub length: i64,
    pub width: i64,
    pub thickness: i64,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Problem {
    /// Nanometres of a unit, for the weight alone.
    pub unit: i64,
    pub patterns: Vec<Pattern>,
    pub mix: Vec<Mix>,
    /// Width, depth, height; nothing where it does not matter.
    pub targets: [Option<Target>; 3],
    pub layers: [i64; 2],
    /// Between neighbouring tiles.
    pub gap: i64,
    /// Between the lines of crossed courses.
    pub open: [i64; 2],
    pub overhang: i64,
    pub kerf: i64,
    pub allow: Allow,
    pub machine_min: i64,
    pub cut_min: i64,
    pub turn: bool,
    pub piles: Vec<Pile>,
}

impl Problem {
    /// Every figure is one that can be planned with.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::PlanOutOfRange`] names the figure and its limits; `PlanNameTwice` the name.
    pub fn check(&self) -> Answer<()> {
        self.check_field()?;
        for pile in &self.piles {
            let one = Within { of: Some(&pile.id) };
            one.length(PlanFigure::Length, pile.length)?;
            one.ends(PlanFigure::Length, pile.whole, [0, limits::LENGTH_MOST])?;
            one.length(PlanFigure::Width, pile.width)?;
            one.length(PlanFigure::Thickness, pile.thickness)?;
            one.ends(PlanFigure::Pieces, pile.count, [0, limits::PIECES_MOST])?;
            one.ends(PlanFigure::Density, pile.density, [0, limits::DENSITY_MOST])?;
            one.ends(PlanFigure::Thickness, pile.thickness, [1, self.thickest(pile)])?;
        }
        named_once(self.piles.iter().map(|pile| &*pile.id))
    }

    /// How thick the pieces of a pile may be for their weight to be a figure: with 128 bits to spare for anything of wood.
    fn thickest(&self, pile: &Pile) -> i64 {
        const MOST: i128 = 50_000_000_000_000_000_000_000_000_000_000_000_000;
        let unit = i128::from(self.unit);
        let by = [unit, unit, unit, pile.density.into(), pile.count.into(), pile.length.into(), pile.width.into()];
        let most = by.iter().fold(MOST, |most, by| most.checked_div((*by).max(1)).unwrap_or(0));
        i64::try_from(most).unwrap_or(i64::MAX)
    }

    fn check_field(&self) -> Answer<()> {
        let all = Within { of: None };
        all.ends(PlanFigure::Unit, self.unit, [1, limits::UNIT_MOST])?;
        for target in self.targets.iter().flatten() {
            all.off(PlanFigure::Target, target.size)?;
            all.off(PlanFigure::Tolerance, target.tolerance)?;
        }
        let [fewest, most] = self.layers;
        all.ends(PlanFigure::Layers, fewest, [1, limits::LAYERS_MOST])?;
        all.ends(PlanFigure::Layers, most, [fewest, limits::LAYERS_MOST])?;
        let [narrow, wide] = self.open;
        all.off(PlanFigure::Gap, self.gap)?;
        all.off(PlanFigure::Gap, narrow)?;
        all.ends(PlanFigure::Gap, wide, [narrow, limits::LENGTH_MOST])?;
        all.off(PlanFigure::Overhang, self.overhang)?;
        all.off(PlanFigure::Kerf, self.kerf)?;
        for allowance in [self.allow.length, self.allow.width, self.allow.thickness] {
            all.off(PlanFigure::Allowance, allowance)?;
        }
        for least in [self.machine_min, self.cut_min] {
            all.off(PlanFigure::Least, least)?;
        }
        all.many(PlanFigure::Piles, self.piles.len(), [0, limits::PILES_MOST])
    }
}
