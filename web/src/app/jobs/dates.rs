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
use fivebar_core::sheet::dates::{DatesSheet, Given, Promise, dates, promises};
use fivebar_core::sheet::quote::{QuoteSheet, quote};
use std::rc::Rc;

/// What can be said of a job's dates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DatesTap {
    /// Moves the day that is chosen.
    By(i32),
    NoDay,
    /// The day that is chosen is promised.
    Promise,
    Quote,
    Share,
    /// It was handed on, or not.
    Handed(Handed),
    Print,
}

/// The day that is chosen and not promised yet; none takes the day away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Chosen(pub Option<Day>);

pub fn heard(app: &mut App, tap: DatesTap, now: Now) {
    let Some(job) = app.jobs.open else { return };
    match tap {
        DatesTap::By(by) => {
            let from = chosen(app, due(app, job)).unwrap_or(now.wall.day());
            app.jobs.day = Some(Chosen(Some(from.plus(by))));
        }
        DatesTap::NoDay => app.jobs.day = Some(Chosen(None)),
        DatesTap::Promise => {
            let day = chosen(app, due(app, job));
            if app.order(&Command::Dates(DatesCommand::Promise(DeadlineSet { job, day })), now).is_some() {
                app.jobs.day = None;
                app.orders.push(Order::Feel(Feel::Start));
            }
        }
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

/// The day as it stands on the page: chosen, else promised.
pub fn chosen(app: &App, due: Option<Day>) -> Option<Day> {
    app.jobs.day.map_or(due, |Chosen(day)| day)
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

/// What can be quoted for a job.
pub fn quoted(app: &App, job: Id) -> Option<QuoteSheet> {
    with_given(app, |given| quote(&app.shelf().shop(app.now.at), job, given).ok())
}

fn with_given<T>(app: &App, look: impl Fn(Given) -> T) -> T {
    let waits: Rc<Waits> = app.shelf().waits();
    look(Given { waits: &waits, guess, with_factor: !app.jobs.without_factor, now: app.now })
}
