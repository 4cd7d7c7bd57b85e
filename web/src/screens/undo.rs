//! The bar that takes the last act of this tab back, and then puts it back: the same on every place.

use super::Seen;
use super::plan::saw::Line;
use crate::app::plan::LastTick;
use crate::app::{App, Common, Msg};
use crate::parts::Place;
use crate::parts::key::key;
use crate::parts::undo::{Undo, alone};
use crate::view::{El, el};
use crate::words::en::{acts, bench, changed, common, helper, signs as told};
use fivebar_core::bench::On;
use fivebar_core::ledger::book::subjects;
use fivebar_core::ledger::{Entry, Fact, Subject, fold};
use fivebar_core::quantity::{Count, Id, Listed, begin_small};
use fivebar_core::sheet::count::tile;
use fivebar_core::sheet::make::cut::{ALL, Ticks};
use std::rc::Rc;

/// The bar, while there is something to take back or to put back: it names what. After something was taken back, what was done before it
/// can be, too.
pub fn bar(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let one = one(app, seen)?;
    let more = app.shelf().to_put_back().and_then(|_| more(app, seen));
    Some(match more {
        Some(more) => el("div", "um").kid(one).kid(more),
        None => one,
    })
}

/// The same as one key, where another stands beside it.
pub fn one(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (back, named) = last(app, seen)?;
    if let Some(names) = old_jobs_struck(app) {
        return Some(alone(Undo { words: bench::PUT_BACK.into(), under: common::struck(&names) }, Msg::Common(Common::PutBack)));
    }
    if back {
        let under = named.map_or(common::TAKEN_BACK.into(), |what| common::taken_back(&what));
        return Some(alone(Undo { words: common::PUT_BACK.into(), under }, Msg::Common(Common::PutBack)));
    }
    let struck = to_take_back(app).and_then(|act| struck_by(act, app)).map(|names| common::struck(&names));
    let words = Undo { words: common::TAKE_BACK.into(), under: struck.or(named)? };
    Some(alone(words, Msg::Common(Common::TakeBack)))
}

/// The names of old jobs that were struck last.
fn old_jobs_struck(app: &App) -> Option<String> {
    let (_, act) = offered(app).filter(|(back, _)| *back)?;
    old_jobs_of(act, true, app)
}

/// The old jobs of an act that are struck, or that stand, by their names.
fn old_jobs_of(act: Id, are_struck: bool, app: &App) -> Option<String> {
    let book = &app.shelf().book;
    let told = book.act(act).into_iter().filter_map(|id| book.entry(id)).filter(|(_, struck)| *struck == are_struck);
    let name = |(entry, _): (&Entry, bool)| if let Fact::OldJobTold(f) = &entry.fact { Some(f.name.clone()) } else { None };
    let names = told.filter_map(name).listed();
    (!names.is_empty()).then(|| names.join(", "))
}

/// The names of the old jobs that an act struck, where it did nothing else.
fn struck_by(act: Id, app: &App) -> Option<String> {
    let book = &app.shelf().book;
    let entries = book.act(act).into_iter().filter_map(|id| book.entry(id)).listed();
    let [(Entry { fact: Fact::Struck(f), .. }, _)] = entries.as_slice() else { return None };
    let name = |id: &Id| if let Some((Entry { fact: Fact::OldJobTold(f), .. }, _)) = book.entry(*id) { Some(f.name.clone()) } else { None };
    let names = f.entries.iter().filter_map(name).listed();
    (!names.is_empty()).then(|| names.join(", "))
}

fn more(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shelf = app.shelf();
    let before = shelf.to_take_back().filter(|_| shelf.last_tick.is_none())?;
    Some(key("key h88 m", common::TAKE_BACK, act_named(before, app, seen)?, Msg::Common(Common::TakeBack)).key("more"))
}

/// The last thing that was done in this tab, in the book or at the saw, by what it did; and whether it was taken back.
pub fn last(app: &App, seen: Seen<'_>) -> Option<(bool, Option<String>)> {
    let shelf = app.shelf();
    if let Some(tick) = &shelf.last_tick {
        return Some((tick.back, Some(tick_named(tick, app, seen))));
    }
    let (back, act) = offered(app)?;
    Some((back, act_named(act, app, seen)))
}

/// The act a bar offers, on every place: the last one of this tab, and whether it was taken back. None where a tick at the saw came after it,
/// or all of it is long ago.
pub fn offered(app: &App) -> Option<(bool, Id)> {
    let shelf = app.shelf();
    let back = shelf.to_put_back();
    let act = back.or(shelf.last_act).filter(|_| shelf.last_tick.is_none() && shelf.is_fresh(app.now.at))?;
    Some((back.is_some(), act))
}

/// The act a bar offers to take back.
pub fn to_take_back(app: &App) -> Option<Id> {
    offered(app).filter(|(back, _)| !back).map(|(_, act)| act)
}

/// "tick of 2 × 71"; of a plan that is not in hand, that it was one.
fn tick_named(tick: &LastTick, app: &App, seen: Seen<'_>) -> String {
    let plan = &app.plan;
    let in_hand = plan.given.as_ref().zip(plan.found.as_ref()).filter(|_| tick.is_in_hand(plan));
    if tick.line.is_none() {
        return of_job(changed::PLAN_DROPPED, Some(tick.job), app);
    }
    if let Some(row) = tick.line.and_then(Ticks::row_of) {
        let row = told::numbered(&seen.speech.count(Count::try_from(row.saturating_add(1)).unwrap_or(Count::MAX)));
        return of_job(&changed::tick_of(&row, tick.was < tick.is), Some(tick.job), app);
    }
    let line = in_hand.and_then(|(given, found)| Some(Line::of(found.sheet.lines.get(tick.line?)?, given, seen).text));
    let line = line.as_deref().unwrap_or(changed::A_LINE);
    let board = |n: Count| changed::boards_cut_of(&seen.speech.count(n), line);
    let what = tick.is.filter(|n| *n != ALL).map_or_else(|| changed::tick_of(line, tick.was < tick.is), board);
    of_job(&what, Some(tick.job), app)
}

/// What an act did, and when: "start of sand, 09:42".
pub fn act_named(act: Id, app: &App, seen: Seen<'_>) -> Option<String> {
    let shelf = app.shelf();
    let entries: Vec<_> = shelf.book.act(act).into_iter().filter_map(|id| shelf.book.entry(id)).map(|(entry, _)| entry).listed();
    if let Some(dropped) = entries.iter().find(|entry| drops(entry, app)).filter(|_| !entries.iter().any(|entry| is_plan(entry))) {
        let what = of_job(changed::PLAN_DROPPED, entries.iter().find_map(|entry| job_of(entry)), app);
        return Some(common::of_when(&what, &seen.clock(dropped.wall)));
    }
    let mended = entries.iter().find(|entry| matches!(entry.fact, Fact::CountMended(_)));
    let by_way =
        entries.iter().find(|entry| matches!(entry.fact, Fact::PilePiecesWeighed(_) | Fact::PileLayersCounted(_) | Fact::WaitBegan(_)));
    let done_with = entries.iter().find(|entry| matches!(&entry.fact, Fact::BatchPlanned(f) if f.done == Some(true)));
    let told = mended.or(done_with).or(by_way).or(entries.iter().find(|entry| weighty(&entry.fact))).or(entries.first())?;
    let what = match &told.fact {
        Fact::HelperMended(_) => helper_gone(told, app, seen).unwrap_or_else(|| acts::named(&told.fact).to_owned()),
        Fact::RunStarted(run) => acts::start_of(&run.op),
        Fact::BatchPlanned(f) if f.done == Some(true) => begin_small(&bench::done_with(&f.op)),
        fact => acts::named(fact).to_owned(),
    };
    let along = entries.iter().find(|entry| is_person(&entry.fact) && entry.id != told.id);
    let what = along.map_or_else(|| what.clone(), |person| acts::along(&what, acts::named(&person.fact)));
    let what = of_pile(told, app).map_or_else(|| of_job(&what, job_of(told), app), |pile| common::of_pile(&pile, &what));
    Some(common::of_when(&what, &seen.clock(told.wall)))
}

/// Who left what runs, where an act said no more than that.
fn helper_gone(told: &Entry, app: &App, seen: Seen<'_>) -> Option<String> {
    let Fact::HelperMended(said) = &told.fact else { return None };
    let is_gone = said.to == Some(told.wall.at) && said.from.is_none() && said.pay.is_none();
    let bench = app.shelf().bench();
    let run = bench.run(said.run).filter(|_| is_gone)?;
    let head = run.heads.iter().find(|head| head.id == said.helper)?;
    Some(helper::gone(&super::bench::foot::paid_since(run, head, seen)))
}

/// Whether a plan that was in use is in use no more by it.
fn drops(entry: &Entry, app: &App) -> bool {
    let of_use = |id: &Id| app.shelf().book.entry(*id).is_some_and(|(entry, _)| matches!(entry.fact, Fact::PlanUsed(_)));
    matches!(&entry.fact, Fact::Struck(f) if f.entries.iter().any(of_use))
}

fn is_plan(entry: &Entry) -> bool {
    matches!(entry.fact, Fact::PlanKept(_))
}

/// An act of another job than the one that is open names its job.
fn of_job(what: &str, job: Option<Id>, app: &App) -> String {
    let other = job.filter(|job| app.place == Place::Jobs && app.jobs.open.is_some_and(|open| open != *job));
    let name = other.and_then(|job| fold::name_of(&app.shelf().book, On::Job(job)));
    name.map_or_else(|| what.to_owned(), |name| changed::of_other_job(what, &name))
}

fn job_of(entry: &Entry) -> Option<Id> {
    subjects(entry).into_iter().flatten().find_map(|subject| if let Subject::Job(id) = subject { Some(id) } else { None })
}

/// The pile it was done with, by name: the page may show another.
fn of_pile(entry: &Entry, app: &App) -> Option<String> {
    let Some(Subject::Haul(haul)) = subjects(entry).into_iter().flatten().next() else { return None };
    let [pile, other] = fold::piles_of(entry);
    let shelf = app.shelf();
    let haul = shelf.haul().filter(|in_hand| in_hand.id == haul).or_else(|| fold::haul(&shelf.book, haul).map(Rc::new))?;
    haul.pile(pile.filter(|_| other.is_none())?).map(|pile| super::count::name(&tile(pile)))
}

fn is_person(fact: &Fact) -> bool {
    matches!(fact, Fact::PersonAdded(_))
}

/// A haul, a stop or a person that only came along with the act does not name it.
fn weighty(fact: &Fact) -> bool {
    !is_person(fact) && !matches!(fact, Fact::HaulBegan(_) | Fact::RunStopped(_) | Fact::OfferHeard(_) | Fact::BatchPlanned(_))
}
