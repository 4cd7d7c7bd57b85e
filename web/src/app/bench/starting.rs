//! What is begun, or was missed: for which job, which operation, of which kind; and for missed time, from when to when.

use super::super::App;
use super::super::entry::Typed;
use super::offered::called;
use super::{Over, day, ordered, sheet, start};
use crate::words::en::count;
use fivebar_core::bench::{Kind, On, Stage, Work};
use fivebar_core::ledger::decide::{BenchCommand, Now};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Clock, Day, Id, Listed, Wall, reading};

/// The answers so far.
#[derive(Clone, Debug, PartialEq)]
pub struct Starting {
    pub on: On,
    /// Typed by the maker; half-typed text is never in the book.
    pub op: String,
    pub chosen: Option<(String, Kind, Stage)>,
    pub rework: bool,
    /// All of a long plan is shown.
    pub all: bool,
    /// All jobs are shown.
    pub jobs: bool,
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
    /// One that was found, of any job.
    Found(On, String, Kind, Stage),
    /// All of a long plan.
    All,
    /// All jobs.
    Jobs,
    /// The haul is sorted.
    Sort(Id),
    Typed(String),
    /// The kind of the operation that was typed.
    Kind(Kind),
    Rework,
    /// A time by the clock, from or until.
    Clock,
}

impl Starting {
    /// A start for the job in hand, else the newest that goes on, else for none.
    pub fn new(app: &App) -> Starting {
        let open = open(app);
        let hand = sheet(app).hand.map(|hand| hand.on).filter(|on| open.iter().any(|(job, _)| On::Job(*job) == *on));
        let on = hand.or(open.last().map(|(job, _)| On::Job(*job))).unwrap_or(On::Nothing);
        Starting {
            on,
            op: String::new(),
            chosen: None,
            rework: false,
            all: false,
            jobs: false,
            missed: None,
            from: None,
            typed: Typed::default(),
        }
    }

    /// The work, once all of it was said.
    pub fn work(&self) -> Option<Work> {
        let (op, kind, stage) = self.chosen.clone()?;
        Some(Work { op, kind, stage, on: self.on, person: None, rework: self.rework })
    }
}

/// Jobs that go on, with their names.
pub fn open(app: &App) -> Vec<(Id, String)> {
    fold::jobs(&app.shelf().book).filter(|job| job.ended.is_none()).map(|job| (job.id, job.name)).listed()
}

/// Takes in an answer; the last one begins the work.
pub fn heard(app: &mut App, tap: StartingTap, now: Now) {
    let joined =
        if let (StartingTap::Kind(kind), Over::Starting(starting)) = (&tap, &app.bench.over) { called(app, starting, *kind) } else { None };
    let Over::Starting(starting) = &mut app.bench.over else { return };
    match tap {
        StartingTap::On(on) => (starting.on, starting.all, starting.jobs) = (on, false, false),
        StartingTap::Op(op, kind, stage) => starting.chosen = Some((op, kind, stage)),
        StartingTap::Found(on, op, kind, stage) => (starting.on, starting.chosen) = (on, Some((op, kind, stage))),
        StartingTap::All => starting.all = true,
        StartingTap::Jobs => starting.jobs = true,
        StartingTap::Sort(haul) => {
            (starting.on, starting.chosen) = (On::Haul(haul), Some((count::SORT.to_owned(), Kind::Fetch, Stage::Sort)))
        }
        StartingTap::Typed(op) => starting.op = op,
        StartingTap::Kind(kind) => {
            let typed = (starting.op.trim().to_owned(), kind, kind.stage());
            starting.chosen = Some(joined.map_or(typed, |one| (one.op, one.kind, one.stage)));
        }
        StartingTap::Rework => starting.rework = !starting.rework,
        StartingTap::Clock => return clock(app, now),
    }
    begin(app, now);
}

fn begin(app: &mut App, now: Now) {
    let Over::Starting(starting) = &mut app.bench.over else { return };
    if let (Some(work), None) = (starting.work(), starting.missed) {
        // A refused start is asked again.
        starting.chosen = None;
        start(app, work, now);
    }
}

/// From when, then until when: time that was missed is written down with the second.
fn clock(app: &mut App, now: Now) {
    let Over::Starting(starting) = &mut app.bench.over else { return };
    let Some(clock) = starting.typed.take(reading::clock) else { return };
    starting.typed = Typed::default();
    let (Some(from), Some(on), Some(work)) = (starting.from, starting.missed, starting.work()) else {
        starting.from = Some(clock);
        return;
    };
    // An end before the beginning is meant for the day after, where that has come.
    let after = clock < from && app.moment_of(on.next(), clock).at <= now.wall.at;
    let last = if after { on.next() } else { on };
    let (start, stop) = (app.moment_of(on, from), app.moment_of(last, clock));
    // It is written with the offset of the time it tells of, by which its ends are shown.
    let now = Now { wall: Wall::new(now.wall.at, start.offset), ..now };
    ordered(app, BenchCommand::Recall { work, start: start.at, stop: stop.at, heads: 1 }, now);
    match &mut app.bench.over {
        // Refused: both ends are asked again.
        Over::Starting(starting) => starting.from = None,
        over => *over = day::list(on),
    }
}
