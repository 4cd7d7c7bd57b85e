//! Designs that are kept from a job, or that it was made from.

use crate::app::App;
use crate::app::order::{Feel, Order};
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::decide::{Command, Now, PlanCommand};
use fivebar_core::quantity::Id;

/// Keeps a design from the job in hand, under a name or the job's own.
pub fn keep_design(app: &mut App, name: Option<String>, now: Now) {
    let Some(job) = app.jobs.open else { return };
    let Ok(own) = app.shelf().shop(app.now.at).job(job).map(|job| job.name) else { return };
    of_job(app, |job| PlanCommand::KeepDesign { job, name: name.unwrap_or(own) }, now);
}

/// One act about the job in hand.
pub fn of_job(app: &mut App, command: impl FnOnce(Id) -> PlanCommand, now: Now) {
    let Some(job) = app.jobs.open else { return };
    if app.order(&Command::Plan(command(job)), now).is_some() {
        app.orders.push(Order::Feel(Feel::Start));
    }
}

/// The name of the design the open job was made from, as that was kept then.
pub fn made_from(app: &App) -> Option<String> {
    let design = app.shelf().shop(app.now.at).job(app.jobs.open?).ok()?.design?;
    match &app.shelf().book.entry(design)?.0.fact {
        Fact::DesignKept(kept) => Some(kept.name.clone()),
        _ => None,
    }
}
