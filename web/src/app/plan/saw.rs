//! The lists at the saw: from anywhere to that of a job, and from one of its plans to another.

use super::{Page, Plan, beside, cut_by, in_use_by, open, stop};
use crate::app::jobs::Room;
use crate::app::{App, order};
use crate::parts::Place;
use fivebar_core::quantity::Id;

/// The saw's list of a job, straight from the list of jobs or from the bench; of one of its plans where it has several.
pub(super) fn at_the_saw(app: &mut App, job: Id, plan: Option<Id>) {
    app.place = Place::Jobs;
    (app.which, app.jobs.open, app.jobs.draft) = (order::Which::Own, Some(job), None);
    open(app);
    // What lies in hand may be another plan, made since.
    if let Some(plan) = plan.or_else(|| beside::to_cut(app, job)).or_else(|| in_use_by(app, job).last().map(|(plan, ..)| *plan)) {
        show(app, plan);
    }
}

/// A plan of the open job that is used takes the place of the one in hand.
pub(super) fn show(app: &mut App, plan: Id) {
    app.jobs.room = Some(Room::Plan);
    // What was asked before it was opened is asked no more.
    (app.plan.asks, app.plan.drops) = (false, false);
    if app.plan.used == Some(plan) {
        return app.plan.page = Page::Answer;
    }
    let Some(job) = app.jobs.open else { return };
    let plans = app.shelf().shop(app.now.at).job(job).map(|job| job.plans).unwrap_or_default();
    if let Some(kept) = plans.iter().find(|it| it.used && it.id == plan).and_then(|it| cut_by(app, it)) {
        stop(app);
        let turned_to = app.plan.turned_to.wrapping_add(1);
        app.plan = Plan { asked: std::mem::take(&mut app.plan.asked), turned_to, ..kept };
    }
}

/// Whether what opens for a job that has wood by a plan is another one, made since and not used.
pub fn opens_unused(app: &App, job: Id) -> bool {
    let used = in_use_by(app, job);
    let is_used = |plan: Id| used.iter().any(|(id, ..)| *id == plan);
    if app.plan.is_of(job) {
        return !used.is_empty() && !app.plan.used.is_some_and(is_used);
    }
    let last = used.last().map(|(.., at)| at.at);
    beside::of(app, job).zip(last).is_some_and(|(it, last)| last < it.plan.at.at && !it.of.is_some_and(is_used))
}
