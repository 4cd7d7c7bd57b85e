//! Which operations the start screen offers: those of the job, of its kind of piece, what is done beside the bench; or what is found.

use super::super::App;
use super::starting::{Starting, open};
use crate::words::en::bench as words;
use crate::words::en::operations::{BESIDE, OF_NO_JOB, Usual, is_one, making, means, of_any};
use fivebar_core::bench::{Kind, On, Stage};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Id, Key, Listed, in_small};
use fivebar_core::sheet::estimate::coats::without_number;

/// So many of a long plan are shown before all are asked for.
pub const AT_FIRST: usize = 12;

/// So many are found at once.
const FOUND: usize = 12;

/// An operation that one tap begins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Offered {
    pub on: On,
    pub op: String,
    pub kind: Kind,
    pub stage: Stage,
    /// The name of its job, where that is not the one in hand.
    pub name: Option<String>,
}

/// What is offered for what is begun.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Offers {
    /// Of the job, or of its kind of piece; what is still to be done first.
    pub first: Vec<Offered>,
    /// Planned and behind.
    pub behind: Vec<Offered>,
    /// Fetching, selling, office, delivery.
    pub beside: Vec<Offered>,
    /// By what was typed, of any job.
    pub found: Vec<Offered>,
    /// So many of the first are left out until all are asked for.
    pub more: usize,
}

/// What is offered.
pub fn offers(app: &App, starting: &Starting) -> Offers {
    let typed = in_small(starting.op.trim());
    if !typed.is_empty() {
        return Offers { found: found(app, starting, &typed), ..Offers::default() };
    }
    let on = starting.on;
    let (mut first, behind) = planned(app, on);
    // A plan of a few operations is not all there is to do.
    let there = |one: &Offered| first.iter().chain(&behind).any(|own| is_same(own, one));
    let others = unplanned(app, on).into_iter().filter(|one| !there(one)).listed();
    first.extend(others);
    // What is usual stands aside for a form of its name that is the maker's.
    let of_kind = of_its_kind(app, on).into_iter().filter(|usual| !first.iter().chain(&behind).any(|own| is_one(&own.op, &usual.op)));
    let of_kind = of_kind.listed();
    first.extend(of_kind);
    let mut beside = named(on, BESIDE);
    beside.retain(|usual| !first.iter().chain(&behind).any(|own| is_one(&own.op, &usual.op)));
    let more = if starting.all { 0 } else { first.len().saturating_sub(AT_FIRST) };
    if 0 < more {
        first.truncate(AT_FIRST);
    }
    Offers { first, behind, beside, found: vec![], more }
}

/// One that goes by the name that was typed, of what is begun, and of that kind: it is joined, and no other made beside it.
pub fn called(app: &App, starting: &Starting, kind: Kind) -> Option<Offered> {
    let typed = in_small(starting.op.trim());
    let on = starting.on;
    let (first, behind) = planned(app, on);
    let beside = named(on, BESIDE);
    let all = first.into_iter().chain(behind).chain(unplanned(app, on)).chain(of_its_kind(app, on)).chain(beside);
    all.into_iter().find(|one| one.kind == kind && in_small(&one.op) == typed)
}

/// One whose name is what was typed, or a form of it, and so tells its kind: of what is begun, else of any job, else of what is usual. "Coat 2" is what a
/// coat is.
pub fn told(app: &App, on: On, typed: &str) -> Option<Offered> {
    if typed.trim().is_empty() {
        return None;
    }
    let (first, behind) = planned(app, on);
    let jobs = open(app).into_iter().rev().map(|(job, _)| On::Job(job)).filter(|other| *other != on);
    let of_jobs = jobs.flat_map(|other| done(app, other)).map(|one| Offered { on, ..one });
    let all = first.into_iter().chain(behind).chain(done(app, on)).chain(of_jobs).chain(usual(app, on)).listed();
    let called = |name: &str| all.iter().find(|one| is_one(&one.op, name)).cloned();
    called(typed).or_else(|| called(&without_number(typed)?))
}

fn is_same(one: &Offered, other: &Offered) -> bool {
    in_small(&one.op) == in_small(&other.op)
}

fn named(on: On, usual: impl IntoIterator<Item = Usual>) -> Vec<Offered> {
    usual.into_iter().map(|(op, kind, stage)| Offered { on, op: op.to_owned(), kind, stage, name: None }).listed()
}

/// What is planned for a job: still to be done, and behind.
fn planned(app: &App, on: On) -> (Vec<Offered>, Vec<Offered>) {
    let On::Job(job) = on else { return (vec![], vec![]) };
    let bench = app.shelf().bench();
    let all = fold::planned_operations(&app.shelf().book, job).into_iter();
    let all = all.map(|(op, kind, stage)| Offered { on, op, kind, stage, name: None });
    all.partition(|one| {
        let batch = bench.batch(on, &one.op, app.now.at);
        !batch.is_done()
    })
}

/// What was done of it, the latest first.
fn unplanned(app: &App, on: On) -> Vec<Offered> {
    let mut offered: Vec<Offered> = vec![];
    for one in done(app, on) {
        if !offered.iter().any(|own| is_same(own, &one)) {
            offered.push(one);
        }
    }
    offered
}

/// The names a plan of a job may take: those that the clock has for it, and what was done of it, but for those planned already.
pub fn to_plan(app: &App, job: Id) -> Vec<Offered> {
    let on = On::Job(job);
    let (first, behind) = planned(app, on);
    let mut offered: Vec<Offered> = vec![];
    for one in names(app, on).into_iter().filter(|one| one.kind != Kind::Fetch) {
        if !first.iter().chain(&behind).chain(&offered).any(|own| is_one(&own.op, &one.op)) {
            offered.push(one);
        }
    }
    offered
}

/// A name that is there, of which the one that was typed is another form; none where it is there itself.
pub fn form_of(app: &App, job: Id, typed: &str) -> Option<Offered> {
    let on = On::Job(job);
    let (first, behind) = planned(app, on);
    let all = first.into_iter().chain(behind).chain(names(app, on)).filter(|one| is_one(&one.op, typed)).listed();
    let is_there = all.iter().any(|one| one.op == typed.trim());
    all.into_iter().next().filter(|_| !is_there)
}

/// What was done of a job, what its kind of piece takes, and what is done beside the bench.
fn names(app: &App, on: On) -> Vec<Offered> {
    unplanned(app, on).into_iter().chain(of_its_kind(app, on)).chain(named(on, BESIDE)).listed()
}

/// What the maker did of it, the latest first.
fn done(app: &App, on: On) -> Vec<Offered> {
    let bench = app.shelf().bench();
    let runs = bench.on(on).rev().filter(|run| run.work.stage != Stage::Sort && run.work.person.is_none());
    let mut seen: Vec<&str> = vec![];
    let mut offered = vec![];
    for run in runs {
        if !seen.contains(&run.work.op.as_str()) {
            seen.push(&run.work.op);
            offered.push(Offered { on, op: run.work.op.clone(), kind: run.work.kind, stage: run.work.stage, name: None });
        }
    }
    offered
}

/// What was made on other jobs of its kind of piece, as it was said or as its name tells: those that have ended first, the newest of them first.
fn of_others_like_it(app: &App, on: On) -> Vec<Offered> {
    let book = &app.shelf().book;
    let On::Job(id) = on else { return vec![] };
    let Some(piece) = fold::job(book, id).and_then(|job| job.kind_of_piece()) else { return vec![] };
    let alike = fold::jobs(book).filter(|other| other.id != id && other.kind_of_piece().as_ref() == Some(&piece));
    let (ended, open): (Vec<_>, Vec<_>) = alike.map(|job| (job.id, job.ended.is_some())).partition(|one| one.1);
    let mut offered: Vec<Offered> = vec![];
    for (other, _) in ended.into_iter().rev().chain(open.into_iter().rev()) {
        // As they came to be done.
        for one in done(app, On::Job(other)).into_iter().rev().filter(|one| one.kind == Kind::Make) {
            if !offered.iter().any(|own| is_one(&own.op, &one.op)) {
                offered.push(Offered { on, ..one });
            }
        }
    }
    offered
}

/// What was done for its kind of piece before, and what that takes; for no job, what is done for none.
fn of_its_kind(app: &App, on: On) -> Vec<Offered> {
    let mut offered = of_others_like_it(app, on);
    let usual = usual_of_kind(app, on).into_iter().filter(|usual| !offered.iter().any(|own| is_one(&own.op, &usual.op))).listed();
    offered.extend(usual);
    offered
}

fn usual_of_kind(app: &App, on: On) -> Vec<Offered> {
    let piece = if let On::Job(job) = on { fold::job(&app.shelf().book, job).and_then(|job| job.described.piece) } else { None };
    let of_none = if on == On::Nothing { named(on, OF_NO_JOB) } else { vec![] };
    of_none.into_iter().chain(named(on, making(piece.as_ref().map(Key::as_str)))).listed()
}

/// What holds the letters that were typed, or means what they say: of the job in hand, of the other jobs, of what is usual for its
/// kind of piece, beside the bench and for no job, then of what other kinds of piece take.
fn found(app: &App, starting: &Starting, typed: &str) -> Vec<Offered> {
    let mut jobs: Vec<(On, Option<String>)> = vec![(starting.on, None)];
    jobs.extend(open(app).into_iter().rev().map(|(job, name)| (On::Job(job), Some(name))).filter(|(on, _)| *on != starting.on));
    let mut found: Vec<Offered> = vec![];
    for (on, name) in jobs {
        let (first, behind) = planned(app, on);
        for one in first.into_iter().chain(behind).chain(done(app, on)).filter(|one| means(&one.op, typed)) {
            if !found.iter().any(|own| own.on == on && is_same(own, &one)) {
                found.push(Offered { name: name.clone(), ..one });
            }
        }
    }
    for one in usual(app, starting.on).into_iter().filter(|one| means(&one.op, typed)) {
        if !found.iter().any(|own| is_same(own, &one)) {
            found.push(one);
        }
    }
    found.truncate(FOUND);
    found
}

/// What is usual: for the kind of piece of what is begun, beside the bench, for no job, for any piece.
fn usual(app: &App, on: On) -> Vec<Offered> {
    let beside = named(on, BESIDE);
    let of_none = named(On::Nothing, OF_NO_JOB).into_iter().filter(|_| on != On::Nothing);
    let of_none = of_none.map(|one| Offered { name: Some(words::NO_JOB.to_owned()), ..one });
    of_its_kind(app, on).into_iter().chain(beside).chain(of_none).chain(named(on, of_any())).listed()
}
