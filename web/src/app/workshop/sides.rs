//! The side sales tax stands on, heard: where tags come to mean something else by it, that is asked about before.

use super::super::App;
use super::{Tap, till};
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now};
use fivebar_core::quantity::{Listed, Side};
use fivebar_core::sheet::tags::{TurnedTag, turned, turning};

/// What stays as it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stays {
    /// What buyers hand over: the tags change.
    Pay,
    /// What is on the tags: buyers hand over another sum.
    Tags,
}

/// Tags that come to mean something else with tax on this side, and are asked about: those of jobs that are over are not.
pub fn asked_about(app: &App, side: Side) -> Vec<TurnedTag> {
    tags(app, side).into_iter().filter(|tag| !tag.is_over).listed()
}

/// All of them; none where a sum leaves the range of money.
fn tags(app: &App, side: Side) -> Vec<TurnedTag> {
    turned(&app.shelf().shop(app.now.at), app.begins_with().0, side).unwrap_or_default()
}

/// Takes in what is said of it.
pub fn heard(app: &mut App, tap: &Tap, now: Now) {
    app.workshop.asks_side = false;
    match tap {
        Tap::Side(side) => ask(app, *side, now),
        Tap::Turn(stays) => turn(app, *stays, now),
        _ => app.workshop.side = None,
    }
}

/// A side is chosen: asked about where tags change with it, else written, and tags of jobs that are over go along.
fn ask(app: &mut App, side: Side, now: Now) {
    app.workshop.side = None;
    if tags(app, side).is_empty() {
        return till(app, |till| till.side = Some(side), now);
    }
    (app.workshop.side, app.notice) = (Some(side), None);
    if asked_about(app, side).is_empty() {
        turn(app, Stays::Pay, now);
        app.workshop.side = None;
    }
}

/// Takes the side that was asked about, in one act with what it does to the tags.
fn turn(app: &mut App, stays: Stays, now: Now) {
    let Some(side) = app.workshop.side else { return };
    let currency = app.begins_with().0;
    let tags = if stays == Stays::Pay { tags(app, side) } else { vec![] };
    let (till, tags) = turning(currency, side, &tags);
    if app.order(&Command::Money(MoneyCommand::TurnTax { till, tags }), now).is_some() {
        app.workshop.side = None;
    }
}
