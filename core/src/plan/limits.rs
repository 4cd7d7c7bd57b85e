//! How large a plan may be. Within these, every sum of the four problems fits its type.

use crate::refusal::{Answer, PlanFigure, Refusal};

/// The most a length may be, in the plan's unit: a hundred metres in nanometres.
pub const LENGTH_MOST: i64 = 100_000_000_000;
/// The most nanometres a unit may have: a metre.
pub const UNIT_MOST: i64 = 1_000_000_000;
pub const PILES_MOST: i64 = 100;
pub const PARTS_MOST: i64 = 100;
/// The most pieces of one pile; of all piles together ten times that.
pub const PIECES_MOST: i64 = 9_999;
pub const EACH_MOST: i64 = 9_999;
pub const SETS_MOST: i64 = 1_000_000;
pub const ROWS_MOST: i64 = 1_000_000;
pub const LAYERS_MOST: i64 = 1_000;
/// The heaviest wood, in grams a litre.
pub const DENSITY_MOST: i64 = 2_000;

/// The figures of one thing, each within its ends.
pub struct Within<'a> {
    /// The pile or part that is looked at; nothing where it is the plan itself.
    pub of: Option<&'a str>,
}

impl Within<'_> {
    /// # Errors
    /// [`Refusal::PlanOutOfRange`] for a figure below `least` or above `most`.
    pub fn ends(&self, figure: PlanFigure, met: i64, [least, most]: [i64; 2]) -> Answer<()> {
        if (least..=most).contains(&met) {
            return Ok(());
        }
        let [met, least, most] = [met, least, most].map(i128::from);
        Err(Refusal::PlanOutOfRange { figure, of: self.of.map(str::to_owned), met, least, most })
    }

    /// A length that there must be some of.
    ///
    /// # Errors
    /// As [`Within::ends`], from 1 to [`LENGTH_MOST`].
    pub fn length(&self, figure: PlanFigure, met: i64) -> Answer<()> {
        self.ends(figure, met, [1, LENGTH_MOST])
    }

    /// A length that may be nothing.
    ///
    /// # Errors
    /// As [`Within::ends`], from 0 to [`LENGTH_MOST`].
    pub fn off(&self, figure: PlanFigure, met: i64) -> Answer<()> {
        self.ends(figure, met, [0, LENGTH_MOST])
    }

    /// How many there are of something.
    ///
    /// # Errors
    /// As [`Within::ends`].
    pub fn many(&self, figure: PlanFigure, met: usize, ends: [i64; 2]) -> Answer<()> {
        self.ends(figure, i64::try_from(met).unwrap_or(i64::MAX), ends)
    }
}

/// No two of a plan's piles, and no two of its parts, go by one name.
///
/// # Errors
/// [`Refusal::PlanNameTwice`].
pub fn named_once<'a>(names: impl Iterator<Item = &'a str>) -> Answer<()> {
    let mut seen = crate::quantity::Set::new();
    for name in names {
        if !seen.insert(name) {
            return Err(Refusal::PlanNameTwice { name: name.to_owned() });
        }
    }
    Ok(())
}
