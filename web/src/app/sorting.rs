//! Sort, heard: good, or rejected and why; rejects that go back, to jigs or to the fire; the clock of sorting.

use super::App;
use super::count::{Over, bundle};
use super::entry::Typed;
use super::order::{Feel, Order};
use crate::words::en::count as words;
use fivebar_core::bench::{Kind, On, Stage, Work};
use fivebar_core::haul::Pile;
use fivebar_core::ledger::decide::{BenchCommand, Command, HaulCommand, Now};
use fivebar_core::ledger::fold;
use fivebar_core::ledger::kind::haul::Fate;
use fivebar_core::quantity::{Id, Key, Listed, Span};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::sort::{self, SortSheet};

/// How many each tap sorts. Armed by itself: ten left armed at the yard never reject ten at home.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sorting {
    pub armed: u32,
    /// The number behind the key n.
    pub other: Option<u32>,
    /// All are sorted, and the next reason is of one that was good: the maker says so first, or it is a slip.
    pub of_good: bool,
}

impl Default for Sorting {
    fn default() -> Self {
        Sorting { armed: 1, other: None, of_good: false }
    }
}

/// What can be said while a pile is sorted, besides good and rejected.
#[derive(Clone, Debug, PartialEq)]
pub enum SortTap {
    Arm(u32),
    OtherBundle,
    PadDone,
    /// One that was sorted good is bad, or not after all.
    GoodIsBad,
    /// The page of what was rejected.
    Rejects,
    /// Rejected pieces that go somewhere.
    Return(Key, Fate),
    /// The clock of sorting starts.
    Start,
}

/// Opens a pile to sort: one by one, whatever was armed for another.
pub fn open(app: &mut App, pile: Id) {
    (app.count.over, app.count.sorting) = (Over::Sort(pile), Sorting::default());
}

/// Takes in what is said while a pile is sorted.
pub fn heard(app: &mut App, tap: SortTap, now: Now) {
    match tap {
        SortTap::Arm(n) => app.count.sorting.armed = n,
        SortTap::OtherBundle => {
            if let Some((_, pile)) = in_hand(app) {
                app.count.over = Over::SortBundle(pile, Typed::default());
            }
        }
        SortTap::PadDone => pad_done(app),
        SortTap::GoodIsBad => app.count.sorting.of_good = !app.count.sorting.of_good,
        SortTap::Rejects => {
            if let Some((_, pile)) = in_hand(app) {
                app.count.over = Over::Rejects(pile);
            }
        }
        SortTap::Return(why, to) => back(app, why, to, now),
        SortTap::Start => start(app, now),
    }
}

/// Good pieces, as many as are armed.
pub fn good(app: &mut App, now: Now) {
    let Some((haul, pile)) = in_hand(app) else { return };
    let n = armed(app, left(app, pile));
    sorted(app, HaulCommand::Sort { haul, pile, n }, (None, n), now);
}

/// Rejected pieces, as many as are armed, for a reason.
pub fn reject(app: &mut App, why: Key, now: Now) {
    let Some((haul, pile)) = in_hand(app) else { return };
    let left = left(app, pile);
    // What lies on the rack goes first: a job gives back no more than is tapped where nothing else is left.
    let n = match on_rack(app, pile) {
        0 => armed(app, left),
        there => armed(app, left).min(there),
    };
    // What was sorted good stays so, unless it is said before: else a tap on a reason after the last piece is a slip.
    if left == 0 && std::mem::take(&mut app.count.sorting.of_good) {
        return sorted(app, HaulCommand::Reject { haul, pile, n: 1, why: why.clone() }, (Some(why), 1), now);
    }
    if left == 0 {
        return app.refuse(Refusal::NotThatMany { asked: n, there: 0 });
    }
    sorted(app, HaulCommand::Reject { haul, pile, n, why: why.clone() }, (Some(why), n), now);
}

/// The pile that is sorted, as its screen shows it.
pub fn in_sight(app: &App) -> Option<SortSheet> {
    in_hand(app).and_then(|(_, pile)| of(app, pile))
}

/// A pile of the haul in hand, to be sorted.
pub fn of(app: &App, pile: Id) -> Option<SortSheet> {
    let haul = app.shelf().haul()?;
    sort::sort(&haul, pile, &app.shelf().past(&haul))
}

/// Pieces to sort of which the rack has none: how many jobs in hand have, and which job where it is one alone.
pub fn in_jobs(app: &App, pile: Id) -> Option<(u32, Vec<Id>)> {
    let haul = app.shelf().haul()?;
    let looked_at = |pile: &Pile| if app.count.sorting.of_good { pile.good() } else { pile.unsorted() };
    let pile = haul.pile(pile).filter(|pile| 0 < looked_at(pile) && pile.on_rack() == 0)?;
    let goes_on = |job: &Id| !fold::is_ended(&app.shelf().book, On::Job(*job));
    let jobs = pile.in_jobs.iter().filter(|(job, n)| 0 < **n && goes_on(job)).map(|(job, n)| (*job, *n)).listed();
    let n = jobs.iter().fold(0, |sum: u32, (_, n)| sum.saturating_add(*n)).min(looked_at(pile));
    (!jobs.is_empty()).then(|| (n, jobs.into_iter().map(|(job, _)| job).listed()))
}

/// What the last tap took, where fewer were left than it would have sorted.
pub fn took_only(app: &App) -> Option<u32> {
    let (_, n) = app.count.last_sorted.as_ref()?;
    app.shelf().last_act?;
    Some(*n).filter(|n| *n < app.count.sorting.armed)
}

/// What each tap sorts, but never more than are left.
fn armed(app: &App, left: u32) -> u32 {
    app.count.sorting.armed.min(left.max(1))
}

fn left(app: &App, pile: Id) -> u32 {
    app.shelf().haul().and_then(|haul| haul.pile(pile).map(Pile::unsorted)).unwrap_or(0)
}

/// Good pieces of a pile that no job has.
fn on_rack(app: &App, pile: Id) -> u32 {
    app.shelf().haul().and_then(|haul| haul.pile(pile).map(|pile| pile.on_rack().min(pile.good()))).unwrap_or(0)
}

fn in_hand(app: &App) -> Option<(Id, Id)> {
    let (Over::Sort(pile) | Over::SortBundle(pile, _) | Over::Rejects(pile)) = app.count.over else { return None };
    app.shelf().haul().map(|haul| (haul.id, pile))
}

fn pad_done(app: &mut App) {
    let sign = app.speech.sign();
    let Over::SortBundle(pile, typed) = &mut app.count.over else { return };
    let pile = *pile;
    if let Some(n) = bundle(typed, sign) {
        (app.count.sorting, app.count.over) = (Sorting { armed: n, other: Some(n), of_good: false }, Over::Sort(pile));
    }
}

/// Rejected pieces of a reason turn out good, go to jigs, or are burnt: as many as are armed, never more than lie there.
fn back(app: &mut App, why: Key, to: Fate, now: Now) {
    let (Some((haul, pile)), Some(sheet)) = (in_hand(app), in_sight(app)) else { return };
    let lying = sheet.lying.iter().find(|(other, _)| *other == why).map_or(0, |(_, n)| *n);
    let n = armed(app, lying);
    if app.order(&Command::Haul(HaulCommand::Return { haul, pile, n, why, to }), now).is_some() {
        app.count.last_sorted = None;
        app.orders.push(Order::Feel(Feel::Count(n)));
    }
}

fn start(app: &mut App, now: Now) {
    let Some((haul, _)) = in_hand(app).filter(|_| app.running().is_none()) else { return };
    let (op, on) = (words::SORT.to_owned(), On::Haul(haul));
    let work = Work { op, kind: Kind::Fetch, stage: Stage::Sort, on, person: None, rework: false };
    if app.order(&Command::Bench(BenchCommand::Start { work, ago: Span::ZERO }), now).is_some() {
        app.count.last_sorted = None;
        app.orders.push(Order::Feel(Feel::Start));
    }
}

fn sorted(app: &mut App, command: HaulCommand, what: (Option<Key>, u32), now: Now) {
    let n = what.1;
    if app.order(&Command::Haul(command), now).is_some() {
        app.count.last_sorted = Some(what);
        app.orders.push(Order::Feel(Feel::Count(n)));
    }
}

#[cfg(test)]
mod tests;
