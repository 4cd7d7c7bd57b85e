//! What is begun, or was missed: for which job, which operation, of which kind; and for missed time, from when to when.

use super::super::App;
use super::super::entry::Typed;
use super::offered::{Offered, called};
use super::{Over, day, ends, ordered, said, sheet, start_ago, wrong};
use crate::words::en::count;
use fivebar_core::bench::{Kind, On, Stage, Work};
use fivebar_core::ledger::decide::{BenchCommand, Now};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Day, Id, Listed, Moment, Span, Wall};
use fivebar_core::refusal::Refusal;

/// The answers so far.
#[derive(Clone, Debug, PartialEq)]
pub struct Starting {
    pub on: On,
    /// Typed by the maker; half-typed text is never in the book.
    pub op: String,
    pub chosen: Option<(String, Kind, Stage)>,
    pub rework: bool,
    /// The maker said for which job.
    pub said: bool,
    /// A call or a message: for which job it is, is asked first.
    pub asks: Option<(String, Kind, Stage)>,
    /// When that was asked: it began then, whenever the answer comes.
    pub asked: Option<Moment>,
    /// All of a long plan is shown.
    pub all: bool,
    /// All jobs are shown.
    pub jobs: bool,
    /// The day of time that was missed; none for a start now.
    pub missed: Option<Day>,
    pub from: Option<Wall>,
    pub typed: Typed,
    /// What was typed of the end that is not under the thumb.
    pub other: String,
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
    /// It is making, and finishes the piece.
    Finish,
    Rework,
    /// A time by the clock, from or until.
    Clock,
    /// From when, once more.
    From,
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
            said: false,
            asks: None,
            asked: None,
            all: false,
            jobs: false,
            missed: None,
            from: None,
            typed: Typed::default(),
            other: String::new(),
        }
    }

    /// What was typed, of this kind and stage; one that goes by its name already is joined.
    fn typed_as(&mut self, (kind, stage): (Kind, Stage), joined: Option<Offered>) {
        let typed = (self.op.trim().to_owned(), kind, stage);
        self.chosen = Some(joined.map_or(typed, |one| (one.op, one.kind, one.stage)));
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
    let joined = match (&tap, &app.bench.over) {
        (StartingTap::Kind(kind), Over::Starting(starting)) => called(app, starting, *kind),
        (StartingTap::Finish, Over::Starting(starting)) => called(app, starting, Kind::Make),
        _ => None,
    };
    let Over::Starting(starting) = &mut app.bench.over else { return };
    match tap {
        StartingTap::On(on) => {
            (starting.on, starting.all, starting.jobs, starting.said) = (on, false, false, true);
            starting.chosen = starting.asks.take().or(starting.chosen.take());
        }
        StartingTap::Op(op, kind, stage) => starting.chosen = Some((op, kind, stage)),
        StartingTap::Found(on, op, kind, stage) => {
            starting.said |= starting.on != on;
            (starting.on, starting.chosen) = (on, Some((op, kind, stage)));
        }
        StartingTap::All => starting.all = true,
        StartingTap::Jobs => starting.jobs = true,
        StartingTap::Sort(haul) => {
            (starting.on, starting.chosen) = (On::Haul(haul), Some((count::SORT.to_owned(), Kind::Fetch, Stage::Sort)))
        }
        StartingTap::Typed(op) => starting.op = op,
        StartingTap::Kind(kind) => starting.typed_as((kind, kind.stage()), joined),
        StartingTap::Finish => starting.typed_as((Kind::Make, Stage::Finish), joined),
        StartingTap::Rework => starting.rework = !starting.rework,
        StartingTap::Clock => return clock(app, now),
        StartingTap::From => return other_end(app, None),
    }
    ask(app, now);
    begin(app, now);
}

/// Whoever calls may call for another job than the one in hand: what is done at the desk and not planned for it asks for which, once.
fn ask(app: &mut App, now: Now) {
    let Over::Starting(starting) = &app.bench.over else { return };
    let (Some((op, kind, _)), On::Job(job)) = (&starting.chosen, starting.on) else { return };
    let book = &app.shelf().book;
    if *kind != Kind::Office || starting.said || fold::planned_operations(book, job).iter().any(|(planned, ..)| planned == op) {
        return;
    }
    if let Over::Starting(starting) = &mut app.bench.over {
        (starting.asks, starting.asked) = (starting.chosen.take(), Some(now.wall.at));
    }
}

fn begin(app: &mut App, now: Now) {
    let Over::Starting(starting) = &mut app.bench.over else { return };
    if let (Some(work), None) = (starting.work(), starting.missed) {
        // A refused start is asked again.
        starting.chosen = None;
        let waited = starting.asked.take().map_or(Span::ZERO, |asked| asked.until(now.wall.at).max(Span::ZERO));
        start_ago(app, work, waited, now);
    }
}

/// From when, then until when: time that was missed is written down with the second. What was refused stays where it was typed.
fn clock(app: &mut App, now: Now) {
    let Over::Starting(starting) = &app.bench.over else { return };
    let (Some(on), text) = (starting.missed, starting.typed.text.clone()) else { return };
    app.notice = None;
    match starting.from {
        None => match ends::from(app, on, &text) {
            Err(why) => wrong(app, why),
            Ok(meant) if now.wall.at <= meant.at.at => app.refuse(Refusal::NotYet { met: meant.at.at, now: now.wall.at }),
            Ok(meant) if meant.is_asked() => app.bench.asked = true,
            Ok(meant) => other_end(app, Some(meant.at)),
        },
        Some(from) => said(app, ends::until(app, (on, from), &text), now),
    }
}

/// The other of the two ends comes under the thumb, with what was typed of it.
fn other_end(app: &mut App, from: Option<Wall>) {
    let Over::Starting(starting) = &mut app.bench.over else { return };
    let other = std::mem::replace(&mut starting.other, std::mem::take(&mut starting.typed.text));
    (starting.from, starting.typed) = (from, Typed::left(other));
}

/// The moment that was meant: from when; else until when, and time that was missed is written down.
pub(super) fn meant(app: &mut App, at: Moment, now: Now) {
    let Over::Starting(starting) = &app.bench.over else { return };
    match starting.from {
        None => other_end(app, Some(app.local().wall(at))),
        Some(_) => until(app, at, now),
    }
}

fn until(app: &mut App, stop: Moment, now: Now) {
    let Over::Starting(starting) = &app.bench.over else { return };
    let (Some(start), Some(on), Some(work)) = (starting.from, starting.missed, starting.work()) else { return };
    // Its ends are shown by the clock of the time it tells of.
    ordered(app, BenchCommand::RecallBy { work, start, stop, heads: 1 }, now);
    if !matches!(app.bench.over, Over::Starting(_)) {
        app.bench.over = day::list(on);
    }
}
