//! The least a machine takes, as its maker wrote it down, and what a piece lacks of it.
//!
//! Only a comparison: that a piece lacks nothing never says that it may be worked.

use crate::quantity::{Length, Listed};

/// The three sides of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sides {
    pub thickness: Length,
    pub width: Length,
    pub length: Length,
}

/// The least of each side; none where nothing is asked of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Minimum {
    pub thickness: Option<Length>,
    pub width: Option<Length>,
    pub length: Option<Length>,
}

/// What a piece lacks, and by how much.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lack {
    Shorter { by: Length },
    Narrower { by: Length },
    Thinner { by: Length },
}

impl Minimum {
    /// What a piece lacks of the minimum: its length first, then its width and thickness. The exact minimum lacks nothing.
    ///
    /// ```
    /// use fivebar_core::quantity::Length;
    /// use fivebar_core::wood::minimum::{Lack, Minimum, Sides};
    /// let inches = |n| Length::INCH.times(n).unwrap();
    /// let planer = Minimum { length: Some(inches(12)), ..Minimum::default() };
    /// let offcut = Sides { thickness: inches(1), width: inches(3), length: inches(9) };
    /// assert_eq!(planer.lacked_by(&offcut), [Lack::Shorter { by: inches(3) }]);
    /// ```
    pub fn lacked_by(&self, piece: &Sides) -> Vec<Lack> {
        let lacks = [
            lack(self.length, piece.length).map(|by| Lack::Shorter { by }),
            lack(self.width, piece.width).map(|by| Lack::Narrower { by }),
            lack(self.thickness, piece.thickness).map(|by| Lack::Thinner { by }),
        ];
        lacks.into_iter().flatten().listed()
    }
}

/// How much a side is under its least.
fn lack(least: Option<Length>, met: Length) -> Option<Length> {
    let by = least?.as_nm().checked_sub(met.as_nm()).filter(|by| 0 < *by)?;
    Length::nm(by).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(n: i64) -> Length {
        Length::MM.times(n).unwrap()
    }

    /// Against a minimum of 10 x 20 x 300 mm.
    #[track_caller]
    fn check([thickness, width, length]: [i64; 3], lacks: &[Lack]) {
        let minimum = Minimum { thickness: Some(mm(10)), width: Some(mm(20)), length: Some(mm(300)) };
        let piece = Sides { thickness: mm(thickness), width: mm(width), length: mm(length) };
        assert_eq!(minimum.lacked_by(&piece), lacks);
        assert_eq!(Minimum::default().lacked_by(&piece), []);
    }

    #[test]
    fn what_is_under_the_least_is_said_with_how_much() {
        let (shorter, narrower, thinner) = (Lack::Shorter { by: mm(50) }, Lack::Narrower { by: mm(2) }, Lack::Thinner { by: mm(1) });
        check([10, 20, 300], &[]);
        check([40, 90, 1010], &[]);
        check([10, 20, 250], &[shorter]);
        check([10, 18, 300], &[narrower]);
        check([9, 20, 300], &[thinner]);
        check([9, 18, 250], &[shorter, narrower, thinner]);
    }

    #[test]
    fn a_nanometre_is_lacked_too() {
        let minimum = Minimum { length: Some(Length::INCH), ..Minimum::default() };
        let piece = Sides { thickness: mm(1), width: mm(1), length: Length::nm(25_399_999).unwrap() };
        assert_eq!(minimum.lacked_by(&piece), [Lack::Shorter { by: Length::nm(1).unwrap() }]);
    }
}
