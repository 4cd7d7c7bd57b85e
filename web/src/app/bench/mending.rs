//! A run put right: its ends, its job, its operation, of how many pieces it is, and who worked along.

use super::super::App;
use super::super::entry::Typed;
use super::day::{Helper, Mend};
use super::{Over, batch_of, ends, in_all, is_meant, ordered, pay_on, run_of, said, some, wrong};
use fivebar_core::bench::{Kind, On, Run, Stage};
use fivebar_core::ledger::decide::{BenchCommand, Now};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Currency, Id, Moment, Money, PILE_MOST, reading};
use fivebar_core::refusal::Refusal;

/// The run that is opened.
fn opened(app: &App) -> Option<Run> {
    let Over::Day(view) = &app.bench.over else { return None };
    view.open.and_then(|run| run_of(app, run))
}

/// What is put right of it.
fn mend(app: &App) -> Option<Mend> {
    if let Over::Day(view) = &app.bench.over { view.mend.clone() } else { None }
}

/// Takes what was typed.
pub(super) fn done(app: &mut App, now: Now) {
    let (Some(run), Some(mend)) = (opened(app), mend(app)) else { return };
    let sign = app.speech.sign();
    match mend {
        Mend::Start(typed) => said(app, ends::start(app, &run, &typed.text), now),
        Mend::Stop(typed) => said(app, ends::stop(app, &run, &typed.text), now),
        Mend::Op(text) => {
            let op = Some(text.trim().to_owned());
            ordered(app, BenchCommand::Mend { run: run.id, start: None, stop: None, op }, now);
        }
        Mend::Of(_) => {
            let n = if let Over::Day(view) = &mut app.bench.over { view.typed().and_then(|typed| some(typed, sign)) } else { None };
            n.into_iter().for_each(|n| batch_of(app, n, now));
        }
        Mend::Done(_) => {
            let count = |typed: &mut Typed| typed.take(|text| reading::count(text, sign, PILE_MOST));
            let n = if let Over::Day(view) = &mut app.bench.over { view.typed().and_then(count) } else { None };
            n.into_iter().for_each(|n| in_all(app, (run.id, n), now));
        }
        // Nothing typed of one who was forgotten: from the start, to the end.
        Mend::Came(helper @ Helper { id: None, .. }, typed) if typed.text.is_empty() => {
            then(app, Mend::Went(Helper { from: Some(run.started.at), ..helper }, Default::default()));
        }
        Mend::Went(helper @ Helper { id: None, .. }, typed) if typed.text.is_empty() => then(app, Mend::Pay(helper, Default::default())),
        Mend::Came(_, typed) | Mend::Went(_, typed) | Mend::BreakFrom(typed) | Mend::BreakTo(_, typed) => {
            match ends::along(app, &run, &typed.text) {
                Ok(said) => at(app, said.at.at, now),
                Err(why) => wrong(app, why),
            }
        }
        Mend::Pay(helper, typed) => paid(app, (&run, helper), &typed.text, now),
        Mend::Which | Mend::Job => {}
    }
}

fn then(app: &mut App, mend: Mend) {
    (app.notice, app.bench.on_day) = (None, None);
    if let Over::Day(view) = &mut app.bench.over {
        view.mend = Some(mend);
    }
}

/// Writes down the moment that was meant.
pub(super) fn at(app: &mut App, at: Moment, now: Now) {
    let (Some(run), Some(mend)) = (opened(app).map(|run| run.id), mend(app)) else { return };
    let stop = |stop| BenchCommand::Mend { run, start: None, stop, op: None };
    let helper = |helper, from, to| BenchCommand::MendHelper { run, helper, from, to, pay: None };
    match mend {
        Mend::Start(_) => ordered(app, begun(app, run, at), now),
        Mend::Stop(_) => ordered(app, stop(Some(at)), now),
        Mend::BreakFrom(_) => match outside_break(app, at, now.wall.at) {
            Some(refused) => app.refuse(refused),
            None => then(app, Mend::BreakTo(at, Default::default())),
        },
        Mend::BreakTo(from, _) => ordered(app, BenchCommand::Break { run, from, to: at }, now),
        Mend::Came(Helper { id: Some(id), .. }, _) => ordered(app, helper(id, Some(at), None), now),
        Mend::Went(Helper { id: Some(id), .. }, _) => ordered(app, helper(id, None, Some(at)), now),
        Mend::Came(forgotten, _) => match outside(app, (at, None), now.wall.at) {
            Some(refused) => app.refuse(refused),
            None => then(app, Mend::Went(Helper { from: Some(at), ..forgotten }, Default::default())),
        },
        Mend::Went(forgotten, _) => match outside(app, (forgotten.from.unwrap_or(at), Some(at)), now.wall.at) {
            Some(refused) => app.refuse(refused),
            None => then(app, Mend::Pay(Helper { to: Some(at), ..forgotten }, Default::default())),
        },
        _ => {}
    }
}

/// The start by the clock it was shown by.
fn begun(app: &App, run: Id, at: Moment) -> BenchCommand {
    let place = run_of(app, run).map_or(app.local().wall(at), |run| run.wall(at, app.local()));
    BenchCommand::StartAt { run, at: place }
}

/// Why there is no break of the run that is opened yet.
pub(super) fn unsettled(app: &App, now: Moment) -> Option<Refusal> {
    let run = opened(app)?;
    app.shelf().bench().is_doubtful(&run, now).then_some(Refusal::EndToSettle { run: run.id })
}

/// Why no break of the run that is opened can begin then.
fn outside_break(app: &App, from: Moment, now: Moment) -> Option<Refusal> {
    let run = opened(app)?;
    let (start, end) = (run.started.at, run.end(now));
    (from < start || end <= from).then_some(Refusal::BreakNotInRun { met: from, start, end })
}

/// Why somebody can't have worked along from then to then in the run that is opened.
fn outside(app: &App, (from, to): (Moment, Option<Moment>), now: Moment) -> Option<Refusal> {
    let run = opened(app)?;
    let (start, end) = (run.started.at, run.end(now));
    let met = std::iter::once(from).chain(to).find(|at| *at < start || end < *at);
    let backwards = to.filter(|to| *to <= from).map(|end| Refusal::EndNotAfterStart { start: from, end });
    met.map(|met| Refusal::NotInRun { met, start, end }).or(backwards)
}

/// What a helper is paid for an hour; nothing typed is no pay.
fn paid(app: &mut App, (run, helper): (&Run, Helper), text: &str, now: Now) {
    let (currency, sign) = (currency(app, run), app.speech.sign());
    let pay = if text.is_empty() { Ok(None) } else { reading::money(text, currency, sign).map(Some) };
    if let Ok(pay) = pay
        && !is_meant(app, pay)
    {
        return;
    }
    match (pay, helper) {
        (Err(why), _) => wrong(app, why),
        (Ok(pay), Helper { id: Some(id), .. }) => {
            let pay = pay.or(Some(Money::zero(currency)));
            ordered(app, BenchCommand::MendHelper { run: run.id, helper: id, from: None, to: None, pay }, now);
        }
        (Ok(pay), Helper { from, to, .. }) => {
            ordered(app, BenchCommand::RecallHelper { run: run.id, from: from.unwrap_or(run.started.at), to, pay }, now);
        }
    }
}

/// One who was forgotten, or whose pay is asked, is paid as the last one was.
pub(super) fn for_last(app: &mut App, pay: Money, now: Now) {
    let (Some(run), Some(Mend::Pay(helper, _))) = (opened(app).map(|run| (run.id, run.started.at)), mend(app)) else { return };
    let (run, started) = run;
    match helper {
        Helper { id: Some(id), .. } => {
            ordered(app, BenchCommand::MendHelper { run, helper: id, from: None, to: None, pay: Some(pay) }, now);
        }
        Helper { from, to, .. } => {
            ordered(app, BenchCommand::RecallHelper { run, from: from.unwrap_or(started), to, pay: Some(pay) }, now);
        }
    }
}

/// What pay in a run is reckoned in.
pub fn currency(app: &App, run: &Run) -> Currency {
    pay_on(app, run.work.on)
}

/// An operation that was picked from those of its job.
pub(super) fn picked(app: &mut App, (op, kind, stage): (String, Kind, Stage), now: Now) {
    if let Some(run) = opened(app) {
        ordered(app, BenchCommand::Rename { run: run.id, op, kind, stage }, now);
    }
}

/// It was of another job, or of none.
pub(super) fn moved(app: &mut App, on: On, now: Now) {
    if let Some(run) = opened(app) {
        ordered(app, BenchCommand::Move { run: run.id, on }, now);
    }
}

/// How many pieces the job of a run has.
pub fn pieces_of(app: &App, on: On) -> Option<u32> {
    let On::Job(job) = on else { return None };
    fold::job(&app.shelf().book, job).map(|job| job.pieces).filter(|n| 0 < *n)
}

/// The job by its name.
pub fn name(app: &App, on: On) -> Option<String> {
    fold::name_of(&app.shelf().book, on)
}

/// Of one who was forgotten.
pub fn forgotten() -> Mend {
    Mend::Came(Helper::default(), Default::default())
}

/// Of one who came with this entry.
pub fn helper(id: Id) -> Helper {
    Helper { id: Some(id), ..Helper::default() }
}
