//! The clock on the wall where somebody looks: clocks go forward and back, and the phone knows when.

use super::{Moment, Offset, Wall};

/// What that clock shows at a moment; where the phone does not know it goes on as now.
///
/// ```
/// use fivebar_core::quantity::{Local, Moment, Offset};
/// let (winter, summer) = (Offset::minutes(60).unwrap(), Offset::minutes(120).unwrap());
/// let local = Local::new(summer, Some(|at| Offset::minutes(if at < Moment::at(0) { 60 } else { 120 }).unwrap_or_default()));
/// assert_eq!([-1, 0].map(|ms| local.wall(Moment::at(ms)).offset), [winter, summer]);
/// assert_eq!(Local::new(winter, None).wall(Moment::at(0)).offset, winter);
/// ```
#[derive(Clone, Copy, Debug, Default)]
pub struct Local {
    now: Offset,
    offset_at: Option<fn(Moment) -> Offset>,
}

impl Local {
    pub fn new(now: Offset, offset_at: Option<fn(Moment) -> Offset>) -> Local {
        Local { now, offset_at }
    }

    pub fn wall(self, at: Moment) -> Wall {
        Wall::new(at, self.offset_at.map_or(self.now, |offset_at| offset_at(at)))
    }

    /// Whether it showed that: else it is the clock of another place.
    pub fn shows(self, wall: Wall) -> bool {
        self.wall(wall.at).offset == wall.offset
    }
}
