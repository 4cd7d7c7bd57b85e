//! What would give more than a plan: looked for beside the page, once the page of the plan is painted.

use super::{Page, Stands};
use crate::app::App;
use crate::app::order::Order;
use fivebar_core::plan::unlock::{Locked, Unlocks};
use fivebar_core::sheet::plan::locked;

/// After every tap and all news: a plan that came in hand is painted before anything is searched for. What is still made better is not
/// searched, unless that takes long.
pub fn follow(app: &mut App) {
    let plan = &mut app.plan;
    let first = matches!(plan.stands, Stands::UnderWay { ms: super::FIRST, .. });
    if plan.page == Page::Answer && !first && !plan.awaits_paint && plan.found.as_ref().is_some_and(|found| !found.looked) {
        plan.awaits_paint = true;
        app.orders.push(Order::Painted);
    }
}

/// The page is painted; true where that was waited for here. Another plan may be in hand by then.
pub fn painted(app: &mut App) -> bool {
    if !std::mem::take(&mut app.plan.awaits_paint) {
        return false;
    }
    let Some((given, found)) = app.plan.given.as_ref().zip(app.plan.found.as_mut()).filter(|(_, found)| !found.looked) else { return true };
    found.looked = true;
    app.orders.push(Order::Unlock(Box::new(locked(&given.ready, &found.answered))));
    true
}

/// What was found, where the plan is still in hand.
pub fn unlocked(app: &mut App, of: &Locked, unlocks: Option<Unlocks>) {
    let Some((given, found)) = app.plan.given.as_ref().zip(app.plan.found.as_mut()) else { return };
    if locked(&given.ready, &found.answered) == *of {
        unlocks.into_iter().for_each(|unlocks| found.sheet = found.sheet.clone().with_unlocks(&given.ready, unlocks));
    }
}
