//! Dates of a job, heard: the day it is to be done by, and its quote.

use super::super::App;
use super::super::news::Handed;
use super::super::order::{Feel, Order};
use crate::words::en::dates::FILE;
use crate::words::en::waits::guess;
use fivebar_core::bench::wait::Waits;
use fivebar_core::ledger::decide::{Command, DatesCommand, Now};
use fivebar_core::ledger::kind::dates::DeadlineSet;
use fivebar_core::quantity::{Day, Id, Wall};
use fivebar_core::sheet::dates::{DatesSheet, Given, Promise, dates, dates_of, promises};
use fivebar_core::sheet::estimate::EstimateSheet;
use fivebar_core::sheet::quote::{QuoteSheet, quote};
use std::rc::Rc;

/// What can be said of a job's dates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DatesTap {
    /// Moves the day it is to be done by, and saves it; one that is over is asked about first.
    By(i32),
    /// There is no day, and that is saved.
    NoDay,
    /// The day that is over is meant all the same, or it is not.
    ItIsSo(bool),
    Quote,
    Share,
    /// It was handed on, or not.
    Handed(Handed),
    Print,
}

/// A day that is over: asked about, and not saved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked(pub Day);

pub fn heard(app: &mut App, tap: DatesTap, now: Now) {
    let Some(job) = app.jobs.open else { return };
    match tap {
        DatesTap::By(by) => {
            let from = app.jobs.day.map(|Asked(day)| day).or(due(app, job)).unwrap_or(now.wall.day());
            let day = from.plus(by);
            if day < now.wall.day() {
                app.jobs.day = Some(Asked(day));
            } else {
                promise(app, (job, Some(day)), now);
            }
        }
        DatesTap::NoDay => promise(app, (job, None), now),
        DatesTap::ItIsSo(true) => {
            if let Some(Asked(day)) = app.jobs.day {
                promise(app, (job, Some(day)), now);
            }
        }
        DatesTap::ItIsSo(false) => app.jobs.day = None,
        DatesTap::Quote => {
            let fact = quoted(app, job).and_then(|sheet| sheet.fact());
            if fact.is_some_and(|fact| app.order(&Command::Dates(DatesCommand::Quote(fact)), now).is_some()) {
                app.orders.push(Order::Feel(Feel::Start));
            }
        }
        DatesTap::Share => {
            let text = crate::screens::quote_text(app, job);
            app.orders.extend(text.map(|text| Order::Note { name: FILE.into(), text }));
        }
        DatesTap::Handed(handed) => app.jobs.handed = Some(handed),
        DatesTap::Print => app.orders.push(Order::Print),
    }
}

/// Each tap is saved.
fn promise(app: &mut App, (job, day): (Id, Option<Day>), now: Now) {
    app.jobs.day = None;
    if app.order(&Command::Dates(DatesCommand::Promise(DeadlineSet { job, day })), now).is_some() {
        app.orders.push(Order::Feel(Feel::Start));
    }
}

/// The day said with the job.
fn due(app: &App, job: Id) -> Option<Day> {
    app.shelf().shop(app.now.at).job(job).ok()?.described.due.map(Wall::day)
}

/// A job's dates as they stand.
pub fn sheet(app: &App, job: Id) -> Option<DatesSheet> {
    with_given(app, |given| dates(&app.shelf().shop(app.now.at), job, given).ok())
}

/// What was promised of jobs, without reckoning how far their hours may spread.
pub fn promised(app: &App, jobs: &[Id]) -> Vec<(Id, Promise)> {
    if jobs.is_empty() { vec![] } else { with_given(app, |given| promises(&app.shelf().shop(app.now.at), jobs, given)) }
}

/// What was promised of a job of which the estimate was made before, with the safe days.
pub fn promise_by(app: &App, sheet: &EstimateSheet) -> Option<Promise> {
    let shop = app.shelf().shop(app.now.at);
    let job = shop.job(sheet.job).ok()?;
    with_given(app, |given| dates_of(&shop, (&job, sheet), given).promise())
}

/// What can be quoted for a job.
pub fn quoted(app: &App, job: Id) -> Option<QuoteSheet> {
    with_given(app, |given| quote(&app.shelf().shop(app.now.at), job, given).ok())
}

fn with_given<T>(app: &App, look: impl Fn(Given) -> T) -> T {
    let waits: Rc<Waits> = app.shelf().waits();
    look(Given { waits: &waits, guess, with_factor: true, now: app.now })
}
