//! Jobs, heard: the list, one job's page and its four rooms, and what is written down there.

mod aside;
pub mod cans;
pub mod dates;
pub mod doing;
pub mod draft;
pub mod estimate;
pub mod half;
pub mod homes;
mod meant;
mod save;
#[cfg(test)]
mod tests;

use super::bench::offered;
use super::news::Handed;
use super::order::{Feel, Order, Which};
use super::{App, Notice, form::Form, plan};
use crate::parts::Place;
use crate::parts::pad::Press;
use draft::{Draft, Pick, What};
use fivebar_core::bench::{On, Stage};
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::decide::{BookCommand, Command, GiveUpOrder, JobCommand, LetKeepOrder, MoneyCommand, Now, SaleCommand};
use fivebar_core::ledger::fold::TaxBy;
use fivebar_core::ledger::kind::money::{Home, JobTaxSet};
use fivebar_core::quantity::{Id, Key, Length};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::carried::freeze_for;
use fivebar_core::sheet::job::{JobSheet, job};

/// A room of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Room {
    Wood,
    /// What can I make.
    Plan,
    Hours,
    Sell,
    Back,
    /// The day it is to be done by, and the last day of each step.
    Dates,
    Quote,
    Photos,
}

/// The state of Jobs that is not in the book.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Jobs {
    /// The job that is open; none for the list.
    pub open: Option<Id>,
    /// The room that is open; none for the job's page.
    pub room: Option<Room>,
    /// What is being written down.
    pub draft: Option<Box<Draft>>,
    /// Forms that are half written and lie aside.
    aside: Vec<aside::Aside>,
    /// The sum at the tag before the pieces were rubbed out, which are typed anew.
    at_tag: Option<String>,
    pub search: String,
    /// All that have ended are shown, not the latest alone.
    pub all_ended: bool,
    /// A day that is over, asked about before it is saved.
    pub day: Option<dates::Asked>,
    /// The kinds of piece are shown, though one was said.
    pub kinds: bool,
    /// What became of a quote that was handed on.
    pub handed: Option<Handed>,
    /// The line of the spending that is opened.
    pub opened: Option<Id>,
    /// Old jobs that are half typed, as they are kept beside the book.
    pub half: String,
    /// It was looked whether the example is on this phone.
    pub looked: bool,
    /// The example was asked for and is not there yet.
    pub awaited: bool,
}

/// What can be said on Jobs.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    List,
    Open(Which, Id),
    /// Back to the job's page.
    Page,
    Room(Room),
    Plan(super::plan::Tap),
    Estimate(estimate::EstimateTap),
    Dates(dates::DatesTap),
    Search(String),
    /// Show all that have ended, or the latest alone.
    AllEnded,
    TryExample,
    RemoveExample,
    /// The job's next act.
    Next,
    /// Writes something down: opens its form.
    Write(What),
    At(usize),
    Press(Press),
    Say(usize, String),
    Pick(Pick),
    /// The side that is asked about is as it was typed, or it was meant in millimetres.
    IsSo(Length),
    Save,
    /// The other way to save a form: puts pieces back, takes a part away.
    Undo,
    Close,
    /// The operation of a run is done, of so many pieces.
    Whole(Id, u32),
    /// What a gallery still owes of a sale will not be paid.
    GiveUp(Id),
    /// What a buyer still owes of a sale will not be paid.
    Unpaid(Id),
    /// Takes one line back.
    Strike(Id),
    /// Opens a line of the spending, or closes it.
    Line(Id),
    /// Where a kind of cost belongs.
    Home(Key, Home),
    Typical(bool),
    /// What the job's pieces are taxed with.
    Tax(TaxBy),
    End,
    Reopen,
}

/// Takes in a tap on Jobs.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    let was_telling = half::is_telling(app);
    tapped(app, tap, now);
    half::keep(app, was_telling);
}

fn tapped(app: &mut App, tap: Tap, now: Now) {
    // What was refused is said until something else is typed, or the form or the page is left.
    let leaves = matches!(tap, Tap::Close | Tap::List | Tap::Page | Tap::Room(_));
    let goes_on = leaves || matches!(tap, Tap::Say(..) | Tap::Press(_) | Tap::At(_) | Tap::Pick(_));
    if goes_on && matches!(app.notice, Some(Notice::Refused(_))) {
        app.notice = None;
    }
    match tap {
        Tap::List => home(app),
        Tap::Open(which, id) => open(app, which, id),
        Tap::Page => app.jobs.room = None,
        Tap::Room(room) => {
            app.jobs.room = Some(room);
            (app.jobs.day, app.jobs.handed, app.jobs.kinds, app.jobs.opened) = (None, None, false, None);
        }
        Tap::Plan(tap) => super::plan::heard(app, tap, now),
        Tap::Estimate(tap) => estimate::heard(app, tap, now),
        Tap::Dates(tap) => dates::heard(app, tap, now),
        Tap::Search(text) => app.jobs.search = text,
        Tap::AllEnded => app.jobs.all_ended = !app.jobs.all_ended,
        Tap::TryExample => try_example(app),
        Tap::RemoveExample => app.orders.push(Order::RemoveExample),
        Tap::Next => doing::next(app, now),
        Tap::Write(what) => write(app, what),
        Tap::At(nth) => {
            with_form(app, |form| form.go(nth));
            // The figure in hand has the pad, whatever choice lay there.
            if let Some(draft) = &mut app.jobs.draft {
                (draft.picks.more, draft.picks.spent_on.asks, draft.picks.home.is_passed) = (false, false, true);
            }
        }
        Tap::Press(press) => pressed(app, press),
        Tap::Say(nth, text) => say(app, nth, text),
        Tap::Pick(pick) => draft::pick(app, pick, now),
        Tap::IsSo(side) => {
            let sign = app.speech.sign();
            with_form(app, |form| form.is_so(side, sign));
            save::save(app, now);
        }
        Tap::Save => save::save(app, now),
        Tap::Undo => save::undo(app, now),
        Tap::Close => app.jobs.draft = None,
        Tap::Whole(run, of) => {
            if super::bench::whole(app, (run, of), now) {
                app.jobs.draft = None;
            }
        }
        Tap::GiveUp(of) => give_up(app, of, now),
        Tap::Unpaid(sale) => unpaid(app, sale, now),
        Tap::Strike(entry) => strike(app, entry, now),
        Tap::Line(line) => app.jobs.opened = (app.jobs.opened != Some(line)).then_some(line),
        Tap::Home(kind, home) => homes::said(app, (kind, home), now),
        Tap::Tax(by) => set_tax(app, by, now),
        Tap::Typical(typical) => of_open(app, |job| JobCommand::Mark { job, typical }, now),
        Tap::End => end(app, now),
        Tap::Reopen => of_open(app, |job| JobCommand::Reopen { job }, now),
    }
}

/// A key of the pad.
fn pressed(app: &mut App, press: Press) {
    let (sign, was) = (app.speech.sign(), draft::as_asked(app).or_else(|| app.jobs.at_tag.take()));
    with_form(app, |form| form.press(press, sign));
    if let Some(draft) = &mut app.jobs.draft {
        (draft.picks.can.asks, draft.picks.short, draft.picks.far) = (None, None, None);
        draft.picks.home.is_passed = true;
    }
    draft::goes_along(app, was.clone());
    app.jobs.at_tag = was.filter(|_| draft::as_asked(app).is_none());
}

/// The list of all jobs.
pub fn home(app: &mut App) {
    (app.which, app.jobs.open, app.jobs.room, app.jobs.draft) = (Which::Own, None, None, None);
}

fn open(app: &mut App, which: Which, id: Id) {
    app.which = which;
    (app.jobs.open, app.jobs.room, app.jobs.draft) = (Some(id), None, None);
    app.notice = None;
}

/// Looks once whether the example is on this phone. It is never opened before Jobs is shown.
pub fn look_for_example(app: &mut App) {
    if !std::mem::replace(&mut app.jobs.looked, true) && app.example.is_none() {
        app.orders.push(Order::LookForExample);
    }
}

fn try_example(app: &mut App) {
    app.jobs.awaited = true;
    app.orders.push(Order::OpenExample);
}

/// The sheet of the open job; none on the list, or where the book in hand has no such job.
pub fn sheet(app: &App) -> Option<Answer<JobSheet>> {
    let id = app.jobs.open?;
    // Whatever was tapped for a buyer on Price: what a job leaves goes by what stands in the book.
    let shop = app.shelf().shop(app.now.at);
    shop.job(id).ok()?;
    Some(job(&shop, id))
}

fn write(app: &mut App, what: What) {
    if what == What::New {
        app.which = Which::Own;
    }
    app.notice = None;
    if what == What::OldJobs {
        app.jobs.draft = draft::begin(app, what).map(|draft| half::filled(draft, &app.jobs.half)).map(Box::new);
    } else {
        aside::open(app, app.jobs.open, what);
    }
}

fn with_form(app: &mut App, act: impl FnOnce(&mut Form)) {
    if let Some(draft) = &mut app.jobs.draft {
        act(&mut draft.form);
    }
}

fn say(app: &mut App, nth: usize, text: String) {
    let Some(draft) = &mut app.jobs.draft else { return };
    draft.nameless &= nth != 0;
    if let Some(place) = draft.words.get_mut(nth) {
        *place = text;
    }
    told_by_name(app);
}

/// The kind of a planned operation, where its name tells it.
fn told_by_name(app: &mut App) {
    let (Some(draft), Some(job)) = (&app.jobs.draft, app.jobs.open) else { return };
    let name = draft.words.first().filter(|_| draft.what == What::Plan(None));
    let told = name.and_then(|name| offered::told(app, On::Job(job), name));
    if let (Some(told), Some(draft)) = (told, &mut app.jobs.draft) {
        (draft.picks.kind, draft.picks.finish) = (told.kind, told.stage == Stage::Finish);
    }
}

/// Takes back the whole act an entry came with: a sale goes with its payment and fee.
pub fn strike(app: &mut App, entry: Id, now: Now) {
    let known = app.shelf().book.entry(entry).map(|(entry, _)| entry);
    let payment = known.is_some_and(|entry| matches!(entry.fact, Fact::PaymentReceived(_)));
    let (entry, command) = if payment {
        (entry, BookCommand::StrikePayment { payment: entry })
    } else {
        let act = known.and_then(|entry| entry.act).unwrap_or(entry);
        (act, BookCommand::TakeBack { act })
    };
    if !plan::asked_of(app, entry) && app.order(&Command::Book(command), now).is_some() {
        app.shelf_mut().took_back(entry);
        app.orders.push(Order::Feel(Feel::TakeBack));
    }
}

fn set_tax(app: &mut App, by: TaxBy, now: Now) {
    let Some(job) = app.jobs.open else { return };
    let tax = if let TaxBy::Named(id) = by { Some(id) } else { None };
    let untaxed = (by == TaxBy::Untaxed).then_some(true);
    app.order(&Command::Money(MoneyCommand::SetJobTax(JobTaxSet { job, tax, untaxed })), now);
}

fn of_open(app: &mut App, command: impl FnOnce(Id) -> JobCommand, now: Now) {
    if let Some(id) = app.jobs.open {
        app.order(&Command::Job(command(id)), now);
    }
}

fn give_up(app: &mut App, of: Id, now: Now) {
    let Some(job) = app.jobs.open else { return };
    app.order(&Command::Sale(SaleCommand::GiveUpRest(GiveUpOrder { job, of, when: None })), now);
}

fn unpaid(app: &mut App, sale: Id, now: Now) {
    let Some(job) = app.jobs.open else { return };
    let due =
        |job: &fivebar_core::ledger::fold::Job| Some(job.selling.unpaid(job.currency).ok()?.into_iter().find(|(of, _)| of.id == sale)?.1);
    let Some(sum) = app.shelf().shop(now.wall.at).job(job).ok().as_ref().and_then(due) else { return };
    app.order(&Command::Sale(SaleCommand::LetKeep(LetKeepOrder { job, sale, sum, when: None })), now);
}

/// Done with this job: what its hauls cost it is frozen as the sheet has it now.
fn end(app: &mut App, now: Now) {
    let Some(id) = app.jobs.open else { return };
    let hauls = {
        let shop = app.shelf().shop(now.wall.at);
        shop.job(id).and_then(|job| freeze_for(&shop, &job))
    };
    match hauls {
        Ok(hauls) => {
            if app.order(&Command::Job(JobCommand::End { job: id, hauls }), now).is_some() {
                app.orders.push(Order::Feel(Feel::Stop));
            }
        }
        Err(refusal) => app.refuse(refusal),
    }
}

/// Jobs was chosen in the bar: chosen again, it shows the list.
pub fn chosen(app: &mut App, before: Place) {
    if before == Place::Jobs {
        home(app);
    }
    look_for_example(app);
}
