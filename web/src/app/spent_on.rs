//! The day something was spent on: today, unless another is said. A receipt of December may be written down in January.

use super::jobs::draft::later;
use fivebar_core::ledger::decide::Now;
use fivebar_core::quantity::{Clock, Day, Moment};

/// Another day than today, and whether it is being chosen.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SpentOn {
    pub day: Option<Day>,
    pub asks: bool,
}

/// What can be said of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpentTap {
    /// Shows the choice, or is done with it.
    Ask,
    /// So many days later, or earlier.
    By(i32),
}

impl SpentOn {
    /// Takes in a tap; no day after today is taken.
    pub fn heard(&mut self, tap: SpentTap, now: Now) {
        let today = now.wall.day();
        match tap {
            SpentTap::Ask => self.asks = !self.asks,
            SpentTap::By(by) => self.day = Some(later(self.day.unwrap_or(today), by)).filter(|day| *day < today),
        }
    }

    /// Noon of that day, where it is not today.
    pub fn when(self, now: Now) -> Option<Moment> {
        let offset = now.wall.offset;
        self.day.filter(|day| *day < now.wall.day()).and_then(|day| Some(day.at(Clock::at(12, 0)?, offset)))
    }
}
