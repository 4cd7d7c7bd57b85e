//! A tick at the saw: no fact of the book, and an act all the same. The last of them is taken back, and made again, from any page.

use super::cut::lay_in_hand;
use super::{Plan, beside, unused};
use crate::app::App;
use crate::app::order::{Feel, Order};
use fivebar_core::ledger::decide::Now;
use fivebar_core::quantity::{Count, Id};
use fivebar_core::sheet::make::cut::{Ticks, boards, rows_done};

/// A tick that was made or taken off, as long as nothing was written after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LastTick {
    pub job: Id,
    /// None where its plan was dropped: that is taken back in the same way.
    pub line: Option<usize>,
    /// Boards of the line that were ticked before, and after.
    pub was: Option<Count>,
    pub is: Option<Count>,
    /// It was taken back.
    pub back: bool,
    /// The entry of its plan, where its wood was taken.
    pub(super) of: Option<Id>,
}

impl LastTick {
    /// Whether it is of the plan in hand.
    pub fn is_in_hand(&self, plan: &Plan) -> bool {
        plan.is_of(self.job) && plan.used == self.of
    }
}

/// Ticks a line of the plan in hand, or takes that off.
pub fn tick(app: &mut App, line: usize) {
    ticked(app, line, |ticks| ticks.turn(line));
}

/// Ticks one board more of a line.
pub fn one_more(app: &mut App, line: usize) {
    let Some(sheet) = app.plan.found.as_ref().map(|found| &found.sheet) else { return };
    let cut = boards(sheet, &app.plan.ticked).get(line).copied();
    let Some((cut, has)) = cut.zip(sheet.lines.get(line).map(|line| line.n)) else { return };
    ticked(app, line, |ticks| ticks.one_more(line, (cut, has)));
}

fn ticked(app: &mut App, line: usize, tick: impl FnOnce(&mut Ticks)) {
    let Some(job) = app.plan.given.as_ref().map(|given| given.ask.job) else { return };
    // Who has begun to cut cuts by this plan: no better one takes its place.
    let shown = |app: &App| app.plan.found.as_ref().map(|found| found.answered.plan.clone());
    let cut_by = shown(app);
    super::stop(app);
    if shown(app) != cut_by {
        return;
    }
    let (was, cut) = (app.plan.ticked.line(line), cut_of(app, line));
    tick(&mut app.plan.ticked);
    lay_in_hand(app);
    // Of a line that its rows make done, or a row that its boards do, there is nothing to see: it is said, and the tick is none.
    if cut.is_some() && cut == cut_of(app, line) {
        app.plan.ticked.put(line, was);
        lay_in_hand(app);
        app.plan.by_its_rows = true;
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    let (is, of) = (app.plan.ticked.line(line), app.plan.used);
    kept(app, was < is);
    app.shelf_mut().was_ticked(Some(LastTick { job, line: Some(line), was, is, back: false, of }));
}

/// Boards of a line that are cut, by its own tick or by its rows; of a row 1 where it is, by its own tick or by its boards.
fn cut_of(app: &App, line: usize) -> Option<i64> {
    let sheet = &app.plan.found.as_ref()?.sheet;
    match Ticks::row_of(line) {
        Some(row) => rows_done(sheet, &app.plan.ticked).get(row).map(|done| i64::from(*done)),
        None => boards(sheet, &app.plan.ticked).get(line).copied(),
    }
}

/// The last tick is taken back, or made again; its plan need not be in hand.
pub fn back(app: &mut App, mut tick: LastTick, now: Now) {
    let Some(line) = tick.line else { return super::drop::back(app, tick, now) };
    if tick.is_in_hand(&app.plan) {
        turn(app, line, tick);
    } else if let Some(plan) = of_tick(app, &tick) {
        let in_hand = std::mem::replace(&mut app.plan, plan);
        turn(app, line, tick);
        app.plan = in_hand;
    }
    tick.back = !tick.back;
    app.shelf_mut().was_ticked(Some(tick));
}

fn of_tick(app: &App, tick: &LastTick) -> Option<Plan> {
    let Some(of) = tick.of else { return unused(app, tick.job) };
    super::kept_of(app, tick.job, of)
}

/// A plan that was never used goes, and its ticks with it.
pub fn gone(app: &mut App) {
    let of_it =
        |tick: LastTick| tick.of.is_none() && (tick.is_in_hand(&app.plan) || tick.line.is_none() && app.jobs.open == Some(tick.job));
    if app.shelf().last_tick.is_some_and(of_it) {
        app.shelf_mut().was_ticked(None);
    }
}

/// A line is ticked as it was before, or as it was after.
fn turn(app: &mut App, line: usize, tick: LastTick) {
    let (from, to) = if tick.back { (tick.was, tick.is) } else { (tick.is, tick.was) };
    app.plan.ticked.put(line, to);
    lay_in_hand(app);
    kept(app, from < to);
}

fn kept(app: &mut App, more: bool) {
    if more {
        app.orders.push(Order::Feel(Feel::Start));
    }
    beside::keep(app);
}
