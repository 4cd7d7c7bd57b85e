//! A side that is larger than such a side is: it is asked about before it is taken, alike wherever a side is typed.

use fivebar_core::quantity::reading::{self, Misread, Typing};
use fivebar_core::quantity::{Length, Units};

/// What kind of side it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    Thickness,
    Width,
    Length,
    /// The least a machine takes, or what is worth keeping.
    Least,
    /// What is cut off, or left over for the saw.
    Allowance,
    /// What the blade takes.
    Kerf,
}

/// A side that is larger than such sides are, and what it is where it was meant in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    pub of: Side,
    pub side: Length,
    pub in_mm: Option<Length>,
}

impl Side {
    /// A side as it is typed; a thickness may be a quarter name too.
    ///
    /// # Errors
    /// [`Misread`].
    pub fn read(self, text: &str, typing: Typing) -> Result<Length, Misread> {
        if self == Side::Thickness { reading::thickness(text, typing) } else { reading::length(text, typing) }
    }

    /// What is asked about it: a foot or 300 mm thick, 40 in or 1 m wide, 20 ft or 6 m long, 2 ft or 600 mm at the least, 2 in or
    /// 50 mm cut off, 3/8 in or 10 mm of kerf. Ours.
    pub fn doubt(self, (side, text): (Length, &str), typing: Typing) -> Option<Doubt> {
        let plausible = |side: Length| self.usual_most(typing.units).is_none_or(|most| side <= most);
        if plausible(side) {
            return None;
        }
        let metric = Typing { units: Units::Metric, ..typing };
        let in_mm = reading::length(text, metric).ok().filter(|other| *other != side && plausible(*other));
        Some(Doubt { of: self, side, in_mm })
    }

    /// The most such a side usually is.
    pub fn usual_most(self, units: Units) -> Option<Length> {
        let (eighths, mm) = match self {
            Side::Thickness => (96, 300),
            Side::Width => (320, 1_000),
            Side::Length => (1_920, 6_000),
            Side::Least => (192, 600),
            Side::Allowance => (16, 50),
            Side::Kerf => (3, 10),
        };
        match units {
            Units::Inch => Length::INCH_64TH.times(8).and_then(|eighth| eighth.times(eighths)).ok(),
            Units::Metric => Length::MM.times(mm).ok(),
        }
    }
}

#[cfg(test)]
mod tests;
