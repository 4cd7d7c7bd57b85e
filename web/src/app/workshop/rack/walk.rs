//! A walk round the rack, place by place: so many still, fewer, more, or skipped; at its end, what drifted. Nothing is corrected without
//! an answer.

use super::super::super::App;
use super::super::super::form::Form;
use super::super::super::order::{Feel, Order};
use super::{Page, deed};
use fivebar_core::ledger::decide::{Command, Lying, Now, StockCommand};
use fivebar_core::quantity::{Count, Id, PILE_MOST};
use fivebar_core::sheet::stock::{self, StockPile};

/// The piles to look at, and which of them is in front of the maker; behind the last one stands what drifted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Walk {
    pub piles: Vec<Lying>,
    pub at: usize,
    /// As many as are found, where they are not as many as the book says.
    pub found: Option<Count>,
    /// Their number is typed.
    pub typing: bool,
    /// The counts of this walk, in their order.
    pub counts: Vec<Counted>,
}

/// A pile as it was counted on the walk: its entry, and the pile as it was before.
#[derive(Clone, Debug, PartialEq)]
pub struct Counted {
    pub entry: Id,
    pub before: StockPile,
    pub found: Count,
}

impl Walk {
    pub fn here(&self) -> Option<Lying> {
        self.piles.get(self.at).copied()
    }

    fn go(&mut self, at: usize) {
        (self.at, self.found, self.typing) = (at, None, false);
    }
}

/// Sets out to every pile of the rack.
pub fn begin(app: &mut App) {
    let piles = stock::round(&stock::stock(&app.shelf().shop(app.now.at)).unwrap_or_default());
    if !piles.is_empty() {
        app.workshop.rack.show(Page::Walk(Walk { piles, ..Walk::default() }));
    }
}

/// As many lie there as the page shows: what the book says, or what was found.
pub fn counted(app: &mut App, now: Now) {
    let Some((at, before)) = here(app).and_then(|at| Some((at, deed::before(app, at, now)?))) else { return };
    let n = walk(app).and_then(|walk| walk.found).unwrap_or(before.on_rack);
    let why = deed::words(app).filter(|_| n != before.on_rack);
    let Some(written) = app.order(&Command::Stock(at, StockCommand::CountRack { n, why }), now) else { return };
    deed::gave_up(app, Some(before.clone()), n);
    app.orders.push(Order::Feel(Feel::Start));
    if let Some(walk) = walk(app) {
        walk.counts.push(Counted { entry: written.act, before, found: n });
    }
    next(app);
}

/// One fewer, or one more, than the page shows.
pub fn step(app: &mut App, more: bool, now: Now) {
    let Some(before) = here(app).and_then(|at| deed::before(app, at, now)) else { return };
    let Some(walk) = walk(app) else { return };
    let shown = walk.found.unwrap_or(before.on_rack);
    let n = if more { shown.saturating_add(1).min(PILE_MOST) } else { shown.saturating_sub(1) };
    walk.found = Some(n).filter(|n| *n != before.on_rack);
}

/// The pad comes up for their number.
pub fn type_it(app: &mut App) {
    if let Some(walk) = walk(app) {
        walk.typing = true;
        app.workshop.rack.form = Form::of(1);
    }
}

/// What was typed stands on the page, with what it means, before it is written.
pub fn typed(app: &mut App, now: Now) {
    let Some(before) = here(app).and_then(|at| deed::before(app, at, now)) else { return };
    let Some(n) = deed::number(app) else { return };
    if let Some(walk) = walk(app) {
        (walk.found, walk.typing) = (Some(n).filter(|n| *n != before.on_rack), false);
    }
}

/// On to the next pile; after the last, what drifted.
pub fn next(app: &mut App) {
    app.workshop.rack.words.clear();
    if let Some(walk) = walk(app) {
        walk.go(walk.at.saturating_add(1));
    }
}

/// From the pad back to the pile; from a pile to what drifted so far; none where the walk itself is left.
pub fn leave(walk: &Walk) -> Option<Walk> {
    let end = walk.piles.len();
    match walk.typing {
        true => Some(Walk { typing: false, ..walk.clone() }),
        false if walk.at < end && !walk.counts.is_empty() => Some(Walk { at: end, found: None, ..walk.clone() }),
        false => None,
    }
}

/// A count of this walk was taken back: its pile is in front of the maker again; put back, the next one is.
pub fn undone(app: &mut App, act: Id, stands: bool) {
    let Some(walk) = walk(app) else { return };
    let Some(at) = walk.counts.iter().rfind(|it| it.entry == act).map(|it| it.before.at) else { return };
    let Some(nth) = walk.piles.iter().position(|pile| *pile == at) else { return };
    match stands {
        false => walk.go(nth),
        true if walk.at == nth => walk.go(nth.saturating_add(1)),
        true => {}
    }
}

fn walk(app: &mut App) -> Option<&mut Walk> {
    if let Page::Walk(walk) = &mut app.workshop.rack.page { Some(walk) } else { None }
}

fn here(app: &App) -> Option<Lying> {
    if let Page::Walk(walk) = &app.workshop.rack.page { walk.here() } else { None }
}
