//! The day's list, heard: every run can be opened, mended or struck, and time that was missed written down.

use super::super::App;
use super::super::entry::Typed;
use super::starting::Starting;
use super::{Over, ordered};
use fivebar_core::ledger::decide::{BenchCommand, BookCommand, Command, Now};
use fivebar_core::quantity::{Day, Id, reading};

/// An end of a run that is put right by the clock.
#[derive(Clone, Debug, PartialEq)]
pub struct Mending {
    pub run: Id,
    pub day: Day,
    /// Its start; else its stop.
    pub start: bool,
    pub typed: Typed,
}

/// What can be said of a day.
#[derive(Clone, Debug, PartialEq)]
pub enum DayTap {
    Show(Day),
    /// Opens a run, or closes it.
    Open(Id),
    Mend {
        run: Id,
        start: bool,
    },
    /// Takes a run back; the bar puts it back.
    Strike(Id),
    Missed,
}

/// Takes in a tap on the day's list.
pub fn heard(app: &mut App, tap: DayTap, now: Now) {
    let shown = shown(app);
    match tap {
        DayTap::Show(day) => app.bench.over = Over::Day(day, None),
        DayTap::Open(run) => {
            let open = matches!(app.bench.over, Over::Day(_, Some(other)) if other == run);
            app.bench.over = Over::Day(shown, (!open).then_some(run));
        }
        DayTap::Mend { run, start } => {
            app.bench.over = Over::Mending(Mending { run, day: shown, start, typed: Typed::default() });
        }
        DayTap::Strike(run) => strike(app, run, now),
        DayTap::Missed => app.bench.over = Over::Starting(Box::new(Starting { missed: Some(shown), ..Starting::default() })),
    }
}

/// The day that is listed; today where none is.
fn shown(app: &App) -> Day {
    match &app.bench.over {
        Over::Day(day, _) => *day,
        Over::Mending(mending) => mending.day,
        _ => app.now.day(),
    }
}

fn strike(app: &mut App, run: Id, now: Now) {
    if app.order(&Command::Book(BookCommand::TakeBack { act: run }), now).is_some() {
        let shelf = app.shelf_mut();
        (shelf.last_act, shelf.taken_back) = (None, Some(run));
    }
}

/// Writes the end that was typed.
pub fn mended(app: &mut App, now: Now) {
    let Over::Mending(mending) = &mut app.bench.over else { return };
    let Some(clock) = mending.typed.take(reading::clock) else { return };
    let (run, is_start, day) = (mending.run, mending.start, mending.day);
    let Some(started) = app.shelf().bench().run(run).map(|run| run.started) else { return };
    let same = started.day().at(clock, started.offset);
    let late = !is_start && same < started.at;
    let at = if late { started.day().next().at(clock, started.offset) } else { same };
    let (start, stop) = if is_start { (Some(at), None) } else { (None, Some(at)) };
    ordered(app, BenchCommand::Mend { run, start, stop, op: None }, now);
    if app.notice.is_none() {
        app.bench.over = Over::Day(day, Some(run));
    }
}
