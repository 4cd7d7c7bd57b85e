//! What the plan in hand is known to make of a job's parts: how many the wood gives is never told under it.

use super::super::App;
use super::Plan;
use fivebar_core::plan::Answered;
use fivebar_core::quantity::Id;
use fivebar_core::sheet::outlook::Made;

pub fn makes(app: &App, job: Id) -> Option<Made> {
    let given = app.plan.given.as_ref().filter(|given| given.ask.job == job)?;
    Made::of((given, &app.plan.found.as_ref()?.sheet), app.plan.used.is_some())
}

/// A plan as it comes from the planner, of the sticks that are missed least.
pub fn spared(plan: &Plan, answered: Answered) -> Answered {
    let Some(given) = &plan.given else { return answered };
    given.ready.spared(answered)
}
