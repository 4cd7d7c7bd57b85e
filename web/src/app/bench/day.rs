//! The day's list, heard: every run and count can be opened, mended or struck, and time that was missed written down.

use super::super::App;
use super::super::entry::Typed;
use super::starting::Starting;
use super::{Over, mending, ordered, run_of};
use crate::parts::Place;
use crate::parts::pad::Press;
use fivebar_core::bench::{Kind, On, Stage};
use fivebar_core::ledger::decide::{BenchCommand, BookCommand, Command, Now};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Day, Id, Moment};

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
    /// Time that was missed and met this run: its form, as it was left.
    pub back: Option<Box<Starting>>,
}

/// A helper whose times are put right, or who was forgotten.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Helper {
    /// Of the entry by which they came; none for one who was forgotten.
    pub id: Option<Id>,
    /// What was said so far of one who was forgotten: from when, and until when; none to the end.
    pub from: Option<Moment>,
    pub to: Option<Moment>,
}

/// What is put right of a run.
#[derive(Clone, Debug, PartialEq)]
pub enum Mend {
    /// Which of them is asked.
    Which,
    /// Of which job it was.
    Job,
    /// Of how many pieces its operation is.
    Of(Typed),
    /// So many were done in it, whatever was tapped.
    Done(Typed),
    /// When a helper came, went, and what they are paid.
    Came(Helper, Typed),
    Went(Helper, Typed),
    Pay(Helper, Typed),
    Start(Typed),
    Stop(Typed),
    /// When a break in it began, and then when it was over.
    BreakFrom(Typed),
    BreakTo(Moment, Typed),
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
    Mend(Box<Mend>),
    /// The operation as it was typed.
    Op,
    /// An operation that is known, with its kind.
    Picked(String, Kind, Stage),
    /// The run was of this job, or of none.
    Move(On),
    /// The line of a run, opened to be mended; back leads where it was asked for.
    See(Id),
    /// The same, and when a break in it began.
    Break(Id),
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
        if let Some(typed) = self.typed() {
            typed.press(press, sign);
        }
    }

    /// What is under the thumb.
    pub(super) fn typed(&mut self) -> Option<&mut Typed> {
        match &mut self.mend {
            Some(Mend::Start(typed) | Mend::Stop(typed) | Mend::Of(typed) | Mend::Done(typed)) => Some(typed),
            Some(Mend::BreakFrom(typed) | Mend::BreakTo(_, typed)) => Some(typed),
            Some(Mend::Came(_, typed) | Mend::Went(_, typed) | Mend::Pay(_, typed)) => Some(typed),
            Some(Mend::Which | Mend::Job | Mend::Op(_)) | None => None,
        }
    }
}

/// The list of a day, with nothing opened.
pub fn list(day: Day) -> Over {
    Over::Day(Box::new(View { day, week: false, open: None, mend: None, back: None }))
}

/// The Monday of the week of a day.
pub fn monday(day: Day) -> Day {
    day.plus(i32::try_from(day.weekday()).map_or(0, i32::saturating_neg))
}

fn weekly(day: Day) -> Over {
    Over::Day(Box::new(View { day, week: true, open: None, mend: None, back: None }))
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
                app.shelf_mut().stands_again(act);
            }
        }
        DayTap::AsStamped(run) => as_stamped(app, run, now),
        DayTap::Op => mending::done(app, now),
        DayTap::Picked(op, kind, stage) => mending::picked(app, (op, kind, stage), now),
        DayTap::Move(on) => mending::moved(app, on, now),
        DayTap::See(run) => see(app, run),
        DayTap::Break(run) => {
            see(app, run);
            heard(app, DayTap::Mend(Box::new(Mend::BreakFrom(Typed::default()))), now);
        }
        DayTap::Open(id) => {
            if let Over::Day(view) = &mut app.bench.over {
                (view.open, view.mend) = ((view.open != Some(id)).then_some(id), None);
            }
        }
        DayTap::Mend(mend) => {
            let unsettled = if let Mend::BreakFrom(_) = &*mend { mending::unsettled(app, now.wall.at) } else { None };
            if let Some(refused) = unsettled {
                app.refuse(refused);
            } else if let Over::Day(view) = &mut app.bench.over {
                view.mend = Some(*mend);
            }
        }
    }
}

/// Opens the line of a run; time that was missed and met it waits until it is mended.
fn see(app: &mut App, run: Id) {
    let Some(began) = run_of(app, run) else { return };
    let back = match std::mem::take(&mut app.bench.over) {
        Over::Starting(starting) => Some(starting),
        Over::Day(view) => view.back,
        _ => None,
    };
    (app.notice, app.place) = (None, Place::Bench);
    app.bench.over = Over::Day(Box::new(View { day: began.started.day(), week: false, open: Some(run), mend: None, back }));
}

/// The day that is listed; today where none is.
fn shown(app: &App) -> Day {
    if let Over::Day(view) = &app.bench.over { view.day } else { app.now.day() }
}

fn strike(app: &mut App, act: Id, now: Now) {
    if app.order(&Command::Book(BookCommand::TakeBack { act }), now).is_some() {
        app.shelf_mut().took_back(act);
    }
}

fn as_stamped(app: &mut App, run: Id, now: Now) {
    let Some(run) = app.shelf().bench().run(run).cloned() else { return };
    let start = run.mended_start.map(|_| run.tapped.at);
    let stop = run.mended_stop.and(run.tapped_stop).map(|stop| stop.at);
    ordered(app, BenchCommand::Mend { run: run.id, start, stop, op: None }, now);
}
