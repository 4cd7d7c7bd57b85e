//! A plan that is wanted no more: one that was never used lies on this phone alone and goes; one in use leaves its wood in the job or puts
//! it back.

use super::cut::book_after;
use super::{LastTick, Page, Plan, beside, in_use_by, stop, ticks, uncut, unused};
use crate::app::App;
use crate::app::order::{Feel, Order};
use crate::parts::Place;
use fivebar_core::ledger::decide::left_by;
use fivebar_core::ledger::decide::{BookCommand, Command, Now, PlanCommand, Uncut};
use fivebar_core::ledger::fold::{self, InUse, haul, job};
use fivebar_core::ledger::{Book, Fact};
use fivebar_core::quantity::{Count, Id, Listed};
use fivebar_core::sheet::make::keep::in_use;

/// A plan in use that is to be dropped: the pieces the job has of it, the boards of them that are ticked as cut, and what goes back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dropping {
    pub plan: Id,
    pub pieces: Count,
    pub cut: Count,
    /// Where boards are cut: the others.
    pub uncut: Option<Uncut>,
}

/// What is asked before the plan in hand is dropped; nothing where it is not in use.
pub fn dropping(app: &App) -> Option<Dropping> {
    let (plan, job) = (app.plan.used?, app.plan.given.as_ref()?.ask.job);
    let shop = app.shelf().shop(app.now.at);
    let plans = shop.job(job).ok()?.plans;
    let all = in_use(&shop, &plans);
    let of_it = |it: &InUse<'_>| {
        let (cut, uncut) = uncut(app, it).unzip();
        Dropping { plan, pieces: it.has(), cut: cut.unwrap_or(0), uncut }
    };
    all.iter().find(|it| it.plan.id == plan).map(of_it)
}

/// Pieces of the plan before that is in use again where a plan goes back, because this one took its place; none where none is.
pub fn in_use_again(app: &App, told: &Dropping) -> Option<Count> {
    let open = app.jobs.open?;
    let now = in_use_by(app, open);
    let then = book_after(app, &goes_back(app, told))?;
    let plans = job(&then, open)?.plans;
    let new = fold::in_use(&then, &plans).iter().filter(|it| now.iter().all(|(id, ..)| *id != it.plan.id)).map(InUse::has).listed();
    (!new.is_empty()).then(|| new.into_iter().fold(0, Count::saturating_add))
}

/// What puts the pieces of a plan in use back: of one that is partly cut the others, else its own act is taken back.
fn goes_back(app: &App, told: &Dropping) -> Command {
    if let Some(uncut) = &told.uncut {
        return Command::Plan(PlanCommand::PutBack(uncut.clone()));
    }
    Command::Book(BookCommand::TakeBack { act: act_of(app, told.plan) })
}

/// The act by which a plan was used.
fn act_of(app: &App, plan: Id) -> Id {
    app.shelf().book.entry(plan).and_then(|(entry, _)| entry.act).unwrap_or(plan)
}

/// The jobs that have pieces of what the plan in hand leaves of its boards, and how many each has.
pub fn who_has_its_leftovers(app: &App) -> Vec<(String, Count)> {
    let Some((plan, own)) = app.plan.used.zip(app.plan.given.as_ref().map(|given| given.ask.job)) else { return vec![] };
    let book = &app.shelf().book;
    let mut all: Vec<(Id, Count)> = vec![];
    for left in left_by(book, plan) {
        let pile = haul(book, left.at.haul).and_then(|haul| haul.pile(left.at.pile).cloned());
        for (job, n) in pile.into_iter().flat_map(|pile| pile.in_jobs.into_iter().listed()).filter(|(job, n)| *job != own && 0 < *n) {
            match all.iter_mut().find(|(of, _)| *of == job) {
                Some((_, has)) => *has = has.saturating_add(n),
                None => all.push((job, n)),
            }
        }
    }
    all.into_iter().filter_map(|(id, n)| Some((job(book, id)?.name, n))).listed()
}

/// Drops the plan in hand, or that which is asked again; of one in use it is asked first what becomes of its wood.
pub fn drop_it(app: &mut App) {
    stop(app);
    if dropping(app).is_some() {
        app.plan.drops = true;
        return;
    }
    let Some(job) = app.jobs.open else { return };
    if beside::dropped(app, job, true) {
        gone(app);
        app.shelf_mut().was_ticked(Some(LastTick { job, line: None, was: None, is: None, back: false, of: None }));
    }
}

/// Where boards are ticked as cut of a plan that an act uses, that act is not taken back: it is asked what becomes of the wood, as where the
/// plan is dropped. False where none is.
pub fn asked_of(app: &mut App, act: Id) -> bool {
    let book = &app.shelf().book;
    let standing = book.act(act).into_iter().filter_map(|id| book.entry(id)).filter(|(_, struck)| !struck);
    let used = standing.filter_map(|(entry, _)| if let Fact::PlanUsed(f) = &entry.fact { Some((f.job, f.plan)) } else { None }).next();
    let Some((job, plan)) = used.filter(|(_, plan)| !as_it_was_used(app, *plan)) else { return false };
    let shop = app.shelf().shop(app.now.at);
    let plans = shop.job(job).map(|job| job.plans).unwrap_or_default();
    let is_cut = in_use(&shop, &plans).iter().any(|it| it.plan.id == plan && uncut(app, it).is_some());
    if is_cut {
        app.place = Place::Jobs;
        (app.jobs.open, app.jobs.draft) = (Some(job), None);
        super::open(app);
        super::show(app, plan);
        app.plan.drops = true;
        app.orders.push(Order::Feel(Feel::Refused));
    }
    is_cut
}

/// The plan in hand was used a moment ago, and nothing was ticked since: taking that back loses no tick.
fn as_it_was_used(app: &App, plan: Id) -> bool {
    app.plan.used == Some(plan) && app.plan.ticked_before.as_ref() == Some(&app.plan.ticked)
}

/// The same of one in use: its wood stays, or goes back to where it was; what is cut of it stays always.
pub fn drop_as(app: &mut App, stays: bool, now: Now) {
    let (Some(plan), Some(job)) = (app.plan.used, app.jobs.open) else { return };
    if stays {
        if in_book(app, (plan, true), now) {
            gone(app);
            app.shelf_mut().was_ticked(Some(LastTick { job, line: None, was: None, is: None, back: false, of: Some(plan) }));
        }
        return;
    }
    let whole = || Command::Book(BookCommand::TakeBack { act: act_of(app, plan) });
    let command = dropping(app).map_or_else(whole, |told| goes_back(app, &told));
    if app.order(&command, now).is_some() {
        if let Command::Book(BookCommand::TakeBack { act }) = command {
            app.shelf_mut().took_back(act);
        }
        beside::dropped_of(app, plan, true);
        app.orders.push(Order::Feel(Feel::TakeBack));
        gone(app);
    }
}

fn in_book(app: &mut App, (plan, drops): (Id, bool), now: Now) -> bool {
    let command = if drops { PlanCommand::Drop { plan } } else { PlanCommand::TakeUp { plan } };
    let done = app.order(&Command::Plan(command), now).is_some();
    if done {
        beside::dropped_of(app, plan, drops);
    }
    done
}

/// Nothing is in hand: another can be asked. The figures that planning again filled in were of the plan that goes.
fn gone(app: &mut App) {
    ticks::gone(app);
    if app.plan.again.is_some() || app.plan.given.as_ref().is_some_and(|given| 0 < given.cut.rows) {
        app.plan.asked.retain(|(of, _)| Some(*of) != app.jobs.open);
    }
    app.plan = Plan { asked: std::mem::take(&mut app.plan.asked), page: Page::Choose, dropped: true, ..Plan::default() };
}

impl LastTick {
    /// The plan in use that an act of the book dropped, or took in use again, as it was done last.
    pub fn of_drop(book: &Book, act: Id) -> Option<LastTick> {
        let fact = |id: &Id| book.entry(*id).map(|(entry, _)| &entry.fact);
        let (entries, back) = match fact(book.act(act).first()?)? {
            Fact::Struck(f) => (&f.entries, false),
            Fact::Restored(f) => (&f.entries, true),
            _ => return None,
        };
        let [Fact::PlanUsed(f)] = entries.iter().filter_map(fact).listed()[..] else { return None };
        Some(LastTick { job: f.job, line: None, was: None, is: None, back, of: Some(f.plan) })
    }
}

/// A drop is taken back, or made again.
pub fn back(app: &mut App, mut last: LastTick, now: Now) {
    let drops = last.back;
    let done = match last.of {
        Some(plan) => in_book(app, (plan, drops), now),
        None => beside::dropped(app, last.job, drops),
    };
    if !done {
        return;
    }
    if app.jobs.open == Some(last.job) {
        gone(app);
        if !drops {
            let plan = last.of.and_then(|plan| super::kept_of(app, last.job, plan)).or_else(|| unused(app, last.job));
            let asked = std::mem::take(&mut app.plan.asked);
            app.plan = Plan { asked, ..plan.unwrap_or_default() };
        }
    }
    last.back = !last.back;
    app.shelf_mut().was_ticked(Some(last));
}
