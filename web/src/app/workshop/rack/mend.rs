//! A line of a pile's history put right: how many it was, and why. The old line is kept.

use super::super::super::App;
use super::super::super::form::Form;
use super::super::super::order::{Feel, Order};
use super::{Page, deed};
use fivebar_core::ledger::decide::{Command, Lying, Now, StockCommand};
use fivebar_core::ledger::mended::pieces;
use fivebar_core::ledger::{Entry, Fact};
use fivebar_core::quantity::Id;

/// What a reason is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    None,
    /// In the maker's words.
    Words,
    /// Why it was rejected, or where it went.
    Rejected,
    Gone,
}

/// The line that is put right.
pub fn line(app: &App, line: Id) -> Option<&Entry> {
    app.shelf().book.entry(line).filter(|(_, struck)| !struck).map(|(entry, _)| entry)
}

/// What the reason of a count is.
pub fn reason(fact: &Fact) -> Reason {
    match fact {
        Fact::PiecesRecounted(_) | Fact::PileCounted(_) => Reason::Words,
        Fact::PiecesRejected(_) => Reason::Rejected,
        Fact::LeftoversGone(_) => Reason::Gone,
        _ => Reason::None,
    }
}

/// What stands is in the form already, and is typed over.
pub(super) fn fill(app: &mut App) {
    let Page::Mend(_, id) = app.workshop.rack.page else { return };
    let Some(fact) = line(app, id).map(|entry| entry.fact.clone()) else { return };
    let why = match &fact {
        Fact::PiecesRecounted(f) => f.why.clone(),
        Fact::PileCounted(f) => f.why.clone(),
        Fact::PiecesRejected(f) => Some(f.why.to_string()),
        Fact::LeftoversGone(f) => f.to.as_ref().map(ToString::to_string),
        _ => None,
    };
    let n = pieces(&fact).map(|n| n.to_string()).unwrap_or_default();
    (app.workshop.rack.form, app.workshop.rack.words) = (Form::filled([n]), why.unwrap_or_default());
}

/// Writes it, and shows the pile; or says in place why not.
pub(super) fn done(app: &mut App, (at, entry): (Lying, Id), now: Now) {
    let asked = line(app, entry).map(|entry| reason(&entry.fact));
    let Some(n) = deed::number(app) else { return };
    let why = Some(app.workshop.rack.words.trim().to_owned()).filter(|_| asked.is_some_and(|asked| asked != Reason::None));
    if app.order(&Command::Stock(at, StockCommand::Mend { entry, n, why }), now).is_some() {
        app.workshop.rack.show(Page::Pile(at));
        app.orders.push(Order::Feel(Feel::Start));
    }
}
