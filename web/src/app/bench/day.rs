//! The day's list, heard: every run and count can be opened, mended or struck, and time that was missed written down.

use super::super::App;
use super::super::entry::Typed;
use super::starting::Starting;
use super::{Over, begun, ended, ordered, run_of};
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{BenchCommand, BookCommand, Command, Now};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Day, Id, reading};

/// The day that is listed.
#[derive(Clone, Debug, PartialEq)]
pub struct View {
    pub day: Day,
    /// Its week is shown.
    pub week: bool,
    /// The run, or the first tap of a count, that is opened.
    pub open: Option<Id>,
    /// What is put right of the run that is opened.
    pub mend: Option<Mend>,
}

/// What is put right of a run.
#[derive(Clone, Debug, PartialEq)]
pub enum Mend {
    /// Which of the three is asked.
    Which,
    Start(Typed),
    Stop(Typed),
    /// The operation, half-typed.
    Op(String),
}

/// What can be said of a day.
#[derive(Clone, Debug, PartialEq)]
pub enum DayTap {
    Show(Day),
    /// The week in which a day lies.
    Week(Day),
    /// The week of the day that is listed, or a day again.
    Weekly(bool),
    /// So many days or weeks on, or back; never past today.
    Walk(i32),
    /// Opens a run or a count, or closes it.
    Open(Id),
    /// Begins to put something right of the run that is opened.
    Mend(Mend),
    /// The operation as it was typed.
    Op,
    /// The ends as the clock had stamped them.
    AsStamped(Id),
    /// Takes a run or a count back; the bar puts it back.
    Strike(Id),
    /// Puts back what was struck.
    PutBack(Id),
    Missed,
}

impl View {
    pub(super) fn press(&mut self, press: Press, sign: Sign) {
        if let Some(Mend::Start(typed) | Mend::Stop(typed)) = &mut self.mend {
            typed.press(press, sign);
        }
    }
}

/// The list of a day, with nothing opened.
pub fn list(day: Day) -> Over {
    Over::Day(Box::new(View { day, week: false, open: None, mend: None }))
}

/// The Monday of the week of a day.
pub fn monday(day: Day) -> Day {
    day.plus(i32::try_from(day.weekday()).map_or(0, i32::saturating_neg))
}

fn weekly(day: Day) -> Over {
    Over::Day(Box::new(View { day, week: true, open: None, mend: None }))
}

/// On or back by days, or by weeks where the week is shown.
fn walk(app: &mut App, steps: i32) {
    let Over::Day(view) = &app.bench.over else { return };
    let (week, from) = (view.week, if view.week { monday(view.day) } else { view.day });
    let to = from.plus(steps.saturating_mul(if week { 7 } else { 1 }));
    if to <= app.now.day() && view.mend.is_none() {
        app.bench.over = if week { weekly(to) } else { list(to) };
    }
}

/// Takes in a tap on the day's list.
pub fn heard(app: &mut App, tap: DayTap, now: Now) {
    match tap {
        DayTap::Show(day) => app.bench.over = list(day),
        DayTap::Week(day) => app.bench.over = weekly(day),
        DayTap::Weekly(true) => app.bench.over = weekly(shown(app)),
        DayTap::Weekly(false) => app.bench.over = list(shown(app).min(app.now.day())),
        DayTap::Walk(steps) => walk(app, steps),
        DayTap::Missed => app.bench.over = Over::Starting(Box::new(Starting { missed: Some(shown(app)), ..Starting::new(app) })),
        DayTap::Strike(id) => strike(app, id, now),
        DayTap::PutBack(act) => {
            if app.order(&Command::Book(BookCommand::Restore { act }), now).is_some() {
                app.shelf_mut().last_act = Some(act);
            }
        }
        DayTap::AsStamped(run) => as_stamped(app, run, now),
        DayTap::Op => mended(app, now),
        DayTap::Open(id) => {
            if let Over::Day(view) = &mut app.bench.over {
                (view.open, view.mend) = ((view.open != Some(id)).then_some(id), None);
            }
        }
        DayTap::Mend(mend) => {
            if let Over::Day(view) = &mut app.bench.over {
                view.mend = Some(mend);
            }
        }
    }
}

/// The day that is listed; today where none is.
fn shown(app: &App) -> Day {
    if let Over::Day(view) = &app.bench.over { view.day } else { app.now.day() }
}

fn strike(app: &mut App, act: Id, now: Now) {
    if app.order(&Command::Book(BookCommand::TakeBack { act }), now).is_some() {
        let shelf = app.shelf_mut();
        (shelf.last_act, shelf.taken_back) = (None, Some(act));
    }
}

fn as_stamped(app: &mut App, run: Id, now: Now) {
    let Some(run) = app.shelf().bench().run(run).cloned() else { return };
    let start = run.mended_start.map(|_| run.tapped.at);
    let stop = run.mended_stop.and(run.tapped_stop).map(|stop| stop.at);
    ordered(app, BenchCommand::Mend { run: run.id, start, stop, op: None }, now);
}

/// Writes down what was typed of the run that is opened.
pub(super) fn mended(app: &mut App, now: Now) {
    let Over::Day(view) = &mut app.bench.over else { return };
    let Some(run) = view.open else { return };
    let (mut start, mut stop, mut op) = (None, None, None);
    match &mut view.mend {
        Some(Mend::Start(typed)) => start = typed.take(reading::clock),
        Some(Mend::Stop(typed)) => stop = typed.take(reading::clock),
        Some(Mend::Op(text)) => op = Some(text.trim().to_owned()),
        Some(Mend::Which) | None => {}
    }
    let Some(it) = run_of(app, run).filter(|_| start.is_some() || stop.is_some() || op.is_some()) else { return };
    let start = start.map(|clock| begun(&it, clock, now.wall.at));
    let stop = stop.map(|clock| ended(app, &it, clock));
    ordered(app, BenchCommand::Mend { run, start, stop, op }, now);
}
