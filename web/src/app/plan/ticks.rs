//! A tick at the saw: no fact of the book, and an act all the same. The last of them is taken back, and made again, from any page.

use super::{Plan, beside, unused};
use crate::app::App;
use crate::app::order::{Feel, Order};
use fivebar_core::ledger::decide::Now;
use fivebar_core::quantity::Id;

/// A tick that was made or taken off, as long as nothing was written after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LastTick {
    pub job: Id,
    /// None where its plan was dropped: that is taken back in the same way.
    pub line: Option<usize>,
    /// It was made; else it was taken off.
    pub on: bool,
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

/// Makes a tick of the plan in hand, or takes it off.
pub fn tick(app: &mut App, line: usize) {
    let Some(job) = app.plan.given.as_ref().map(|given| given.ask.job) else { return };
    let on = turn(app, line);
    let of = app.plan.used;
    app.shelf_mut().was_ticked(Some(LastTick { job, line: Some(line), on, back: false, of }));
}

/// The last tick is taken back, or made again; its plan need not be in hand.
pub fn back(app: &mut App, mut tick: LastTick, now: Now) {
    let Some(line) = tick.line else { return super::drop::back(app, tick, now) };
    if tick.is_in_hand(&app.plan) {
        turn(app, line);
    } else if let Some(plan) = of_tick(app, &tick) {
        let in_hand = std::mem::replace(&mut app.plan, plan);
        turn(app, line);
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

/// Whether it is ticked then.
fn turn(app: &mut App, line: usize) -> bool {
    let on = !app.plan.ticked.remove(&line);
    if on {
        app.plan.ticked.insert(line);
        app.orders.push(Order::Feel(Feel::Start));
    }
    beside::keep(app);
    on
}
