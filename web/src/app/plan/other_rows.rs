//! A top of which rows are cut by a plan in use: planned again, the others come first; all of it anew is a tap away.

use super::cut::{alike, begun, cut_by, rows_before};
use super::{Draft, go, used};
use crate::app::App;
use fivebar_core::ledger::fold::{KeptPlan, in_use};
use fivebar_core::quantity::Count;
use fivebar_core::sheet::make::{Ask, Given, Pick, Top, What, cut};
use fivebar_core::sheet::plan::wish::{Panel, Wish};

/// A top of which rows are cut: its plans, as its rows are, how many of them are cut, and of how many; whether a plan of it is in use.
struct Begun {
    asked: Vec<Given>,
    panel: Panel,
    cut: Count,
    of: Count,
    is_in_use: bool,
}

/// What is asked is planned; of a top of which rows are cut the others, as long as some of them can be.
pub(super) fn first(app: &mut App) {
    let ask = typed(app).filter(|ask| !is_anew(app, ask));
    let others = ask.and_then(|ask| others_of(app, &ask)).filter(|others| used::given_to(app, others).is_ok());
    match others {
        Some(others) => plan(app, &others),
        None => go(app),
    }
}

/// The rows that are not cut are asked alone, as wide together as they are, and planned at once.
pub(super) fn alone(app: &mut App) {
    let ask = app.plan.given.as_ref().map(|given| given.ask.clone());
    if let Some(others) = ask.and_then(|ask| others_of(app, &ask)) {
        plan(app, &others);
    }
}

/// How many rows of the top in hand are not cut, where it is planned anew and they can be planned alone.
pub fn left_alone(app: &App) -> Option<Count> {
    let given = app.plan.given.as_ref().filter(|_| app.plan.used.is_none())?;
    let What::Top(others) = others_of(app, &given.ask)?.what else { return None };
    others.rows.filter(|_| given.cut.rows == 0)
}

/// All of the top in hand is asked as it was at first, and planned at once.
pub(super) fn all_anew(app: &mut App) {
    if let Some(all) = all_of(app) {
        plan(app, &all);
    }
}

/// All of the top of which the plan in hand makes the rows that are not cut.
pub fn all_of(app: &App) -> Option<Ask> {
    let given = app.plan.given.as_ref().filter(|given| 0 < given.cut.rows && app.plan.used.is_none())?;
    let Wish::Panel(panel) = &given.ready.wish else { return None };
    let begun = begun_tops(app, given).into_iter().find(|it| alike(&it.panel, panel))?;
    let whole = begun.asked.into_iter().max_by_key(rows)?;
    Some(Ask { what: whole.ask.what, ..given.ask.clone() })
}

/// In the form stands all of the top, as it was typed, where the rows that are not cut are planned; with what else is asked of these.
pub(super) fn in_form(app: &mut App) {
    if let Some(all) = typed(app).and_then(|ask| whole_of(app, ask)) {
        write(app, &all);
    }
}

/// What is asked of the other rows, of all of the top; nothing where other figures are typed than those of the plan in hand.
fn whole_of(app: &App, ask: Ask) -> Option<Ask> {
    let given = app.plan.given.as_ref().filter(|given| given.ask.job == ask.job)?;
    let is_rest = || rows_before(app, given).is_some_and(|rows| rows.is_rest());
    let (What::Top(rest), What::Top(asked), Wish::Panel(panel)) = (&ask.what, &given.ask.what, &given.ready.wish) else { return None };
    let is_it = (rest.length, rest.width, rest.rows) == (asked.length, asked.width, asked.rows);
    if !is_it || (given.cut.rows == 0 && !is_rest()) {
        return None;
    }
    let begun = begun_tops(app, given).into_iter().find(|it| alike(&it.panel, panel))?;
    let What::Top(all) = begun.asked.into_iter().max_by_key(rows)?.ask.what else { return None };
    let top = Top { length: rest.length, apart: rest.apart, split: rest.split, ..all };
    Some(Ask { what: What::Top(top), ..ask })
}

fn write(app: &mut App, ask: &Ask) {
    if let Ok(job) = app.shelf().shop(app.now.at).job(ask.job) {
        app.plan.draft = Draft::of(ask, app.speech.typing(job.units));
    }
}

fn plan(app: &mut App, ask: &Ask) {
    write(app, ask);
    go(app);
}

fn typed(app: &App) -> Option<Ask> {
    let job = app.shelf().shop(app.now.at).job(app.jobs.open?).ok()?;
    app.plan.draft.clone().ask(job.id, app.speech.typing(job.units))
}

/// The plan in hand is of all of it, though rows are cut: that is what was wanted.
fn is_anew(app: &App, ask: &Ask) -> bool {
    app.plan.used.is_none()
        && app.plan.given.as_ref().is_some_and(|given| given.ask == *ask && given.cut.rows == 0 && 0 < cut_of(app, given))
}

fn cut_of(app: &App, given: &Given) -> Count {
    rows_before(app, given).map_or(0, |rows| rows.cut).max(given.cut.boards())
}

/// The rows that are not cut of the top that is asked: as thick, of the wood, and in rows as wide as those that are.
fn others_of(app: &App, ask: &Ask) -> Option<Ask> {
    let What::Top(top) = &ask.what else { return None };
    let given = app.plan.given.as_ref().filter(|given| given.ask.job == ask.job)?;
    let begun = begun_tops(app, given).into_iter().find(|it| it.asked.iter().any(|given| is_asked(top, given)))?;
    let last = begun.asked.last()?;
    let left = begun.of.checked_sub(begun.cut).filter(|left| 0 < *left)?;
    let width = begun.panel.strip.times(left.into()).ok()?;
    let thickness = begun.panel.thickness;
    let mixed = matches!(&last.ask.what, What::Top(top) if top.mixed);
    let wood = last.sources.first().and_then(|source| source.pile.wood.clone());
    let pick = (!mixed).then_some(Pick { wood, thickness, thick: false, wide: None, without: None });
    let top = Top { width, rows: Some(left), thickness: Some(thickness), mixed, pick, ..top.clone() };
    Some(Ask { what: What::Top(top), ..ask.clone() })
}

/// Whether it is the top of a plan, as far as it is said.
fn is_asked(top: &Top, given: &Given) -> bool {
    let (Wish::Panel(panel), What::Top(before)) = (&given.ready.wish, &given.ask.what) else { return false };
    let wood = given.sources.first().and_then(|source| source.pile.wood.as_ref());
    (top.length, Some(top.width), top.mixed) == (panel.length, panel.width, before.mixed)
        && top.thickness.is_none_or(|thickness| thickness == panel.thickness)
        && top.rows.is_none_or(|rows| panel.rows() == Some(rows.into()))
        && top.pick.as_ref().is_none_or(|pick| pick.wood.as_ref() == wood)
}

/// Tops of the job of which rows are cut and a plan is in use, each with all its plans, the oldest first.
fn begun_tops(app: &App, given: &Given) -> Vec<Begun> {
    let plans = app.shelf().shop(app.now.at).job(given.ask.job).map(|job| job.plans).unwrap_or_default();
    let in_use: Vec<_> = in_use(&app.shelf().book, &plans).into_iter().map(|it| it.plan.id).collect();
    let mut all: Vec<Begun> = vec![];
    // A plan of the other rows is one of the top, too, before anything is ticked of it.
    let used = |kept: &KeptPlan| if in_use.contains(&kept.id) { cut_by(app, kept) } else { None };
    for (id, plan) in plans.iter().filter_map(|kept| Some((kept.id, begun(app, kept).or_else(|| used(kept))?))) {
        let Some((given, found)) = plan.given.zip(plan.found) else { continue };
        let Wish::Panel(panel) = &given.ready.wish else { continue };
        let (cut, of, is_in_use) = (cut::rows_cut(&found.sheet, &plan.ticked), rows(&given), in_use.contains(&id));
        match all.iter_mut().find(|it| alike(&it.panel, panel)) {
            Some(it) => {
                (it.cut, it.of) = (it.cut.saturating_add(cut), it.of.max(of));
                it.is_in_use |= is_in_use;
                it.asked.push(*given);
            }
            None => all.push(Begun { panel: panel.clone(), cut, of, is_in_use, asked: vec![*given] }),
        }
    }
    all.retain(|it| 0 < it.cut && it.is_in_use);
    all
}

/// Rows of a plan as it was asked.
fn rows(given: &Given) -> Count {
    let rows = if let Wish::Panel(panel) = &given.ready.wish { panel.rows() } else { None };
    rows.and_then(|rows| Count::try_from(rows).ok()).unwrap_or(0)
}
