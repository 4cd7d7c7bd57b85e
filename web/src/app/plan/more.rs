//! What would give more than a plan that was opened: searched for behind the tap.

use super::Page;
use crate::app::App;
use crate::app::order::Order;
use fivebar_core::sheet::plan::sheet;

/// After every tap: what would give more than a plan that was opened is searched for once the page is painted.
pub fn follow(app: &mut App) {
    let plan = &mut app.plan;
    if plan.page == Page::Answer && !plan.awaits_paint && plan.found.as_ref().is_some_and(|found| !found.looked) {
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
    if let Ok(all) = sheet(&given.ready, &found.answered, given.room) {
        (found.sheet.short, found.sheet.proof) = (all.short, all.proof);
    }
    true
}
