//! What keeps a job from its next act, or from use.

use super::super::Seen;
use super::super::bench::waits;
use crate::app::App;
use crate::app::bench::waits::next_held_up;
use crate::words::en::jobs as words;
use fivebar_core::sheet::job::{JobSheet, NextAct};

/// What stands in the way of saying that it is made, or of what comes next.
pub enum Holds {
    /// The next operation: every piece waits for it.
    Next(String),
    /// It is made, and not for use yet: what hardens, and until when.
    Use(String),
}

/// What does of a job.
pub fn holds(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Option<Holds> {
    if matches!(sheet.next, NextAct::SetTag) {
        let (op, day) = super::dates::hardens(app, sheet.job, seen)?;
        return Some(Holds::Use(words::state_hardens((&op, &day))));
    }
    held_up(sheet, app, seen).map(Holds::Next)
}

/// What comes next, and until when each piece waits for it.
fn held_up(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Option<String> {
    let NextAct::WorkOn { op: Some(op) } = &sheet.next else { return None };
    Some(words::state_held(&waits::held(&next_held_up(app, sheet)?, seen), op))
}
