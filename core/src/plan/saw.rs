//! The maker's own figures at the saw. What was never said goes by a usual figure, marked ours in docs/FORMULAS.md.

use crate::quantity::{Length, Units};

/// What the saw takes, and what is kept and asked for. Lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Saw {
    /// What a cut takes.
    pub kerf: Length,
    /// Off each end of a strip for a top, and off each end of any other board.
    pub square: Length,
    pub end_trim: Length,
    /// Off each long edge of a board.
    pub edge_trim: Length,
    /// Added to a finished part for final sizing: length, width, thickness.
    pub over: [Length; 3],
    /// Off each glued edge.
    pub joint: Length,
    /// What is left and shorter is waste.
    pub keep: Length,
    /// From a joint to those of the next row, at least.
    pub apart: Length,
    /// The least piece at the end of a row, and anywhere in it.
    pub end_piece: Length,
    pub piece: Length,
    /// The narrowest strip that is glued.
    pub strip: Length,
}

/// How many figures there are.
pub const FIGURES: usize = 13;

impl Saw {
    /// The usual figures, on the rule of the units. Our judgement, no source.
    ///
    /// ```
    /// use fivebar_core::{plan::saw::Saw, quantity::{Length, Units}};
    /// assert_eq!(Saw::usual(Units::Metric).kerf, Length::MM.times(3).unwrap());
    /// assert_eq!(Saw::usual(Units::Inch).kerf, Length::INCH_64TH.times(8).unwrap());
    /// ```
    pub fn usual(units: Units) -> Saw {
        let (unit, figures): (Length, [i64; FIGURES]) = match units {
            Units::Metric => (Length::TENTH_MM, [30, 25, 60, 20, 30, 20, 30, 5, 2_500, 1_000, 1_000, 600, 250]),
            Units::Inch => (Length::INCH_64TH, [8, 8, 16, 4, 8, 4, 8, 2, 640, 256, 256, 160, 64]),
        };
        Saw::of(figures.map(|n| unit.times(n).unwrap_or_default()))
    }

    /// From its figures in their order.
    pub fn of(figures: [Length; FIGURES]) -> Saw {
        let [kerf, square, end_trim, edge_trim, long, wide, thick, joint, keep, apart, end_piece, piece, strip] = figures;
        Saw { kerf, square, end_trim, edge_trim, over: [long, wide, thick], joint, keep, apart, end_piece, piece, strip }
    }

    /// Its figures in their order: kerf, square, end and edge trims, over in length, width and thickness, joint, least worth keeping,
    /// joints apart, least end piece, least piece, least strip.
    pub fn figures(self) -> [Length; FIGURES] {
        let [long, wide, thick] = self.over;
        let Saw { kerf, square, end_trim, edge_trim, joint, keep, apart, end_piece, piece, strip, .. } = self;
        [kerf, square, end_trim, edge_trim, long, wide, thick, joint, keep, apart, end_piece, piece, strip]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_figures_keep_their_order() {
        for units in [Units::Metric, Units::Inch] {
            assert_eq!(Saw::of(Saw::usual(units).figures()), Saw::usual(units));
        }
    }

    /// The usual metric figures are those the bench top of the drawing was planned with.
    #[test]
    fn the_usual_figures_are_those_of_the_drawn_top() {
        let saw = Saw::usual(Units::Metric);
        let tenths = [saw.kerf, saw.square, saw.keep, saw.apart, saw.end_piece, saw.piece].map(|side| side.as_nm() / 100_000);
        assert_eq!(tenths, [30, 25, 2_500, 1_000, 1_000, 600]);
    }
}
