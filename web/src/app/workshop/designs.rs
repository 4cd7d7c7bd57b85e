//! Designs, heard: one is opened, named anew, dropped, made again.

use super::super::App;
use super::super::jobs::{self, draft};
use super::super::order::{Feel, Order};
use crate::parts::Place;
use fivebar_core::ledger::decide::{Command, Now, PlanCommand};
use fivebar_core::ledger::fold::Design;
use fivebar_core::quantity::Id;
use fivebar_core::refusal::Refusal;

/// What can be said of a design.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DesignTap {
    /// Opens it in the list, or closes it.
    Open(Id),
    /// Takes the name that is typed.
    Rename(Id),
    Drop(Id),
    /// A new job from it: its form opens.
    MakeAgain(Id),
}

/// Takes in what was said of a design.
pub fn heard(app: &mut App, tap: DesignTap, now: Now) {
    match tap {
        DesignTap::Open(id) => open(app, id),
        DesignTap::Rename(id) => rename(app, id, now),
        DesignTap::Drop(id) => drop_it(app, id, now),
        DesignTap::MakeAgain(id) => make_again(app, id, now),
    }
}

fn design(app: &App, id: Id) -> Option<Design> {
    app.shelf().workshop().designs.iter().find(|design| design.id == id).cloned()
}

fn open(app: &mut App, id: Id) {
    let opened = app.workshop.opened != Some(id);
    app.notice = None;
    app.workshop.opened = opened.then_some(id);
    app.workshop.text = design(app, id).filter(|_| opened).map(|design| design.name).unwrap_or_default();
}

/// The design has a new entry then; it stays open.
fn rename(app: &mut App, id: Id, now: Now) {
    let name = app.workshop.text.trim().to_owned();
    if name.is_empty() {
        return app.refuse(Refusal::NameMissing);
    }
    if app.order(&Command::Plan(PlanCommand::RenameDesign { design: id, name: name.clone() }), now).is_some() {
        app.workshop.opened = app.shelf().workshop().designs.iter().find(|design| design.is_named(&name)).map(|design| design.id);
        app.orders.push(Order::Feel(Feel::Start));
    }
}

fn drop_it(app: &mut App, id: Id, now: Now) {
    let Some(Design { name, .. }) = design(app, id) else { return };
    if app.order(&Command::Plan(PlanCommand::DropDesign { name }), now).is_some() {
        (app.workshop.opened, app.workshop.text) = (None, String::new());
        app.orders.push(Order::Feel(Feel::TakeBack));
    }
}

fn make_again(app: &mut App, id: Id, now: Now) {
    app.go(Place::Jobs);
    jobs::home(app);
    jobs::heard(app, jobs::Tap::Write(draft::What::New), now);
    draft::pick(app, draft::Pick::Design(id), now);
}
