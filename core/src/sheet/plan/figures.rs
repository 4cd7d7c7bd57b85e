//! The figures of the shop that a plan goes by: what the saw takes, what is trimmed, what is kept, what the machines take.

use crate::ledger::fold::WoodFacts;
use crate::quantity::{Key, Length, Units};
use crate::refusal::Answer;
use crate::wood::minimum::Minimum;

/// All of them the maker's to change.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figures {
    pub kerf: Length,
    /// Off each end of a strip before it is laid.
    pub square: Length,
    /// Off each end and each long edge of a board.
    pub end_trim: Length,
    pub edge_trim: Length,
    /// Added to a finished part: length, width, thickness.
    pub allow: [Length; 3],
    /// Off each edge that is glued.
    pub joint: Length,
    /// The narrowest strip that is glued.
    pub strip_min: Length,
    /// What is left at least so long goes back to the rack.
    pub keep_min: Length,
    pub min_end: Length,
    pub min_piece: Length,
    /// How far joints of neighbouring rows keep apart.
    pub stagger: Length,
    pub machines: Machines,
    /// Grams of glue for a square metre of joint.
    pub spread: i64,
}

/// The least lengths that the maker's machines take; nothing where none is written down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Machines {
    /// Through the jointer, planer and drum sander.
    pub plane: Length,
    /// Along the fence of the table saw.
    pub rip: Length,
}

/// Machines that surface a piece, and those that rip it.
const SURFACING: [&str; 3] = ["jointer", "planer", "drum-sander"];
const RIPPING: [&str; 1] = ["table-saw"];

impl Figures {
    /// Before the maker says otherwise: round figures in the maker's units. Ours.
    ///
    /// # Errors
    /// [`crate::refusal::Refusal::OutOfRange`].
    ///
    /// ```
    /// use fivebar_core::{quantity::Units, sheet::plan::figures::Figures};
    /// let figures = Figures::usual(Units::Metric).unwrap();
    /// assert_eq!((figures.kerf.as_nm(), figures.stagger.as_nm()), (3_000_000, 100_000_000)); // 3 mm, 100 mm
    /// ```
    pub fn usual(units: Units) -> Answer<Figures> {
        // Half millimetres, and what comes near them in sixty-fourths of an inch.
        let of = |half_mm: i64, sixty_fourths: i64| match units {
            Units::Metric => Length::MM.half().times(half_mm),
            Units::Inch => Length::INCH_64TH.times(sixty_fourths),
        };
        Ok(Figures {
            kerf: of(6, 8)?,
            square: of(5, 6)?,
            end_trim: of(12, 16)?,
            edge_trim: of(4, 4)?,
            allow: [of(4, 4)?, of(4, 4)?, of(4, 4)?],
            joint: of(1, 1)?,
            strip_min: of(40, 48)?,
            keep_min: of(500, 640)?,
            min_end: of(200, 256)?,
            min_piece: of(120, 160)?,
            stagger: of(200, 256)?,
            machines: Machines::default(),
            spread: 200,
        })
    }

    /// The same with the minimums of the maker's machines.
    pub fn with_machines(self, facts: &WoodFacts) -> Figures {
        let least = |of: &[&str]| {
            let known = of.iter().filter_map(|machine| facts.machines.get(&Key::read(machine)?));
            known.filter_map(|minimum: &Minimum| minimum.length).max().unwrap_or_default()
        };
        Figures { machines: Machines { plane: least(&SURFACING), rip: least(&RIPPING) }, ..self }
    }
}
