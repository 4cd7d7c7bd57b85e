//! What is begun, or was missed: for which job, which operation, of which kind; and for missed time, from when to when.

use super::super::App;
use super::super::entry::Typed;
use super::{Over, ordered, start};
use fivebar_core::bench::{Kind, On, Stage, Work};
use fivebar_core::ledger::decide::{BenchCommand, Now};
use fivebar_core::quantity::{Clock, Day, reading};

/// The answers so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Starting {
    pub on: Option<On>,
    /// Typed by the maker; half-typed text is never in the book.
    pub op: String,
    pub chosen: Option<(String, Kind, Stage)>,
    pub rework: bool,
    /// The day of time that was missed; none for a start now.
    pub missed: Option<Day>,
    pub from: Option<Clock>,
    pub typed: Typed,
}

/// What can be said of a start.
#[derive(Clone, Debug, PartialEq)]
pub enum StartingTap {
    On(On),
    /// An operation that is known, with its kind.
    Op(String, Kind, Stage),
    Typed(String),
    /// The kind of the operation that was typed.
    Kind(Kind),
    Rework,
    /// A time by the clock, from or until.
    Clock,
}

/// Takes in an answer; the last one begins the work.
pub fn heard(app: &mut App, tap: StartingTap, now: Now) {
    let Over::Starting(starting) = &mut app.bench.over else { return };
    match tap {
        StartingTap::On(on) => starting.on = Some(on),
        StartingTap::Op(op, kind, stage) => starting.chosen = Some((op, kind, stage)),
        StartingTap::Typed(op) => starting.op = op,
        StartingTap::Kind(kind) => starting.chosen = Some((starting.op.trim().to_owned(), kind, kind.stage())),
        StartingTap::Rework => starting.rework = !starting.rework,
        StartingTap::Clock => return clock(app, now),
    }
    begin(app, now);
}

impl Starting {
    /// The work, once all of it was said.
    pub fn work(&self) -> Option<Work> {
        let (on, (op, kind, stage)) = self.on.zip(self.chosen.clone())?;
        Some(Work { op, kind, stage, on, person: None, rework: self.rework })
    }
}

fn begin(app: &mut App, now: Now) {
    let Over::Starting(starting) = &app.bench.over else { return };
    if let (Some(work), None) = (starting.work(), starting.missed) {
        start(app, work, now);
    }
}

/// From when, then until when: time that was missed is written down with the second.
fn clock(app: &mut App, now: Now) {
    let Over::Starting(starting) = &mut app.bench.over else { return };
    let Some(clock) = starting.typed.take(reading::clock) else { return };
    starting.typed = Typed::default();
    let (Some(from), Some(day), Some(work)) = (starting.from, starting.missed, starting.work()) else {
        starting.from = Some(clock);
        return;
    };
    let offset = now.wall.offset;
    let last = if clock < from { day.next() } else { day };
    ordered(app, BenchCommand::Recall { work, start: day.at(from, offset), stop: last.at(clock, offset), heads: 1 }, now);
    if app.notice.is_none() {
        app.bench.over = Over::Day(day, None);
    }
}
