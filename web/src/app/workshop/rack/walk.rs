//! A walk round the rack: pile by pile, so many still, another number, or skipped. Nothing is corrected without an answer.

use super::super::super::App;
use super::super::super::form::Form;
use super::super::super::order::{Feel, Order};
use super::{Page, deed};
use fivebar_core::ledger::decide::{Command, Lying, Now, StockCommand};
use fivebar_core::quantity::{Count, Listed};
use fivebar_core::sheet::stock;

/// The piles to look at, and which of them is in front of the maker.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Walk {
    pub piles: Vec<Lying>,
    pub at: usize,
    /// Another number is typed.
    pub other: bool,
}

impl Walk {
    pub fn here(&self) -> Option<Lying> {
        self.piles.get(self.at).copied()
    }
}

/// Sets out to the piles nobody looked at for long; where there are none, to all of them.
pub fn begin(app: &mut App) {
    let shop = app.shelf().shop(app.now.at);
    let piles = stock::stock(&shop).unwrap_or_default();
    let stale = stock::stale(&piles);
    let piles = if stale.is_empty() { piles.iter().map(|pile| pile.at).listed() } else { stale };
    if !piles.is_empty() {
        app.workshop.rack.show(Page::Walk(Walk { piles, at: 0, other: false }));
    }
}

/// As many lie there as the book says.
pub fn same(app: &mut App, now: Now) {
    let Some(at) = here(app) else { return };
    let told = stock::pile(&app.shelf().shop(now.wall.at), at).map(|pile| pile.on_rack);
    if let Ok(n) = told {
        count(app, at, n, now);
    }
}

/// Another number lies there: the pad comes up for it first, then it is written.
pub fn counted(app: &mut App, now: Now) {
    let Page::Walk(walk) = &mut app.workshop.rack.page else { return };
    if !walk.other {
        walk.other = true;
        app.workshop.rack.form = Form::of(1);
        return;
    }
    if let Some((at, n)) = here(app).zip(deed::number(app)) {
        count(app, at, n, now);
    }
}

fn count(app: &mut App, at: Lying, n: Count, now: Now) {
    let before = deed::before(app, at, now);
    if app.order(&Command::Stock(at, StockCommand::CountRack { n, why: None }), now).is_some() {
        deed::gave_up(app, before, n);
        app.orders.push(Order::Feel(Feel::Start));
        next(app);
    }
}

/// On to the next pile; after the last, back to the rack.
pub fn next(app: &mut App) {
    let rack = &mut app.workshop.rack;
    let Page::Walk(walk) = &mut rack.page else { return };
    (walk.at, walk.other) = (walk.at.saturating_add(1), false);
    if walk.here().is_none() {
        rack.page = Page::List;
    }
}

fn here(app: &App) -> Option<Lying> {
    if let Page::Walk(walk) = &app.workshop.rack.page { walk.here() } else { None }
}
