//! What plans lack, heard: looked for at the next yard, and what does for it there.

use super::App;
use super::plan::{already_cut, none_for};
use fivebar_core::ledger::decide::{Command, Lying, Now, PlanCommand, StockCommand};
use fivebar_core::ledger::fold::{PlanSought, Sought};
use fivebar_core::ledger::kind::stock::{PiecesSought, SoughtPiece};
use fivebar_core::quantity::{Count, Id, Listed};
use fivebar_core::sheet::make::seek::{seek, seek_part};
use fivebar_core::sheet::past::Past;
use fivebar_core::sheet::sought::{LookedFor, Looking};

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum Tap {
    /// All of it, over the tiles.
    Open,
    /// What that entry looks for is looked for no more.
    NoMore(Id),
    /// A pile does for that piece of an entry, or does not.
    Suits(Id, (Id, Count), bool),
}

/// Everything that is looked for, with what is counted of it in the haul in hand.
pub fn looked_for(app: &App) -> Vec<LookedFor> {
    let shelf = app.shelf();
    if app.is_glimpse() {
        return vec![];
    }
    match shelf.haul() {
        Some(haul) => shelf.known(&haul).looking.sheet(Some(&haul), &shelf.past(&haul)),
        None => Looking::of(&shelf.book, &shelf.workshop(), None).sheet(None, &Past::default()),
    }
}

/// What the plan in hand lacks, as it would be looked for; and what is looked for of it already.
pub fn of_plan(app: &App) -> Option<(PiecesSought, Option<Sought>)> {
    let pieces = if let Some(pieces) = of_part(app) { pieces } else { of_found(app)? };
    let of = (pieces.job, PlanSought::from(&pieces));
    let there = app.shelf().workshop().sought.iter().find(|one| (one.job, one.plan) == of).cloned();
    Some((pieces, there))
}

fn of_found(app: &App) -> Option<PiecesSought> {
    let (given, found) = app.plan.given.as_ref().zip(app.plan.found.as_ref())?;
    seek(&app.shelf().book, given, &found.sheet)
}

/// Where nothing fits a part, what it can be cut of.
fn of_part(app: &App) -> Option<PiecesSought> {
    let (ask, part) = none_for(app)?;
    seek_part(&app.shelf().shop(app.now.at), &ask, (&part, &already_cut(app, ask.job)))
}

/// Whether it is what is looked for; what was there then may lie elsewhere now.
pub fn is_same(pieces: &PiecesSought, there: &Sought) -> bool {
    let bare = |all: &[SoughtPiece]| all.iter().map(|it| SoughtPiece { there: None, ..it.clone() }).listed();
    bare(&pieces.pieces) == bare(&there.pieces)
}

/// What the plan in hand lacks is looked for.
pub fn look_for(app: &mut App, now: Now) {
    let Some((pieces, _)) = of_plan(app) else { return };
    app.order(&Command::Plan(PlanCommand::LookFor(Box::new(pieces))), now);
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: Tap, now: Now) {
    match tap {
        Tap::Open => app.count.over = super::count::Over::Sought,
        Tap::NoMore(sought) => {
            app.order(&Command::Plan(PlanCommand::LookNoMore { sought }), now);
        }
        Tap::Suits(pile, (sought, nth), suits) => {
            let Some(haul) = app.shelf().haul().map(|haul| haul.id) else { return };
            app.order(&Command::Stock(Lying { haul, pile }, StockCommand::Suits { sought, nth, suits }), now);
        }
    }
}
