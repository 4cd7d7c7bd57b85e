//! Sort, heard: good, or rejected and why.

use super::App;
use super::count::{Over, sheet};
use super::order::{Feel, Order};
use fivebar_core::ledger::decide::{Command, HaulCommand, Now};
use fivebar_core::quantity::{Id, Key};
use fivebar_core::sheet::sort;

/// One good piece.
pub fn good(app: &mut App, now: Now) {
    let Some((haul, pile)) = in_hand(app) else { return };
    let n = armed(app, (haul, pile));
    sorted(app, HaulCommand::Sort { haul, pile, n }, (None, n), now);
}

/// One rejected piece, for a reason.
pub fn reject(app: &mut App, why: Key, now: Now) {
    let Some((haul, pile)) = in_hand(app) else { return };
    let n = armed(app, (haul, pile));
    sorted(app, HaulCommand::Reject { haul, pile, n, why: why.clone() }, (Some(why), n), now);
}

/// What each tap sorts, but never more than are left.
fn armed(app: &App, (haul, pile): (Id, Id)) -> u32 {
    let left = sort::sort(&app.shelf().book, haul, pile).map_or(0, |sheet| sheet.left);
    app.count.armed.min(left.max(1))
}

fn in_hand(app: &App) -> Option<(Id, Id)> {
    let Over::Sort(pile) = app.count.over else { return None };
    sheet(app).map(|sheet| (sheet.haul, pile))
}

fn sorted(app: &mut App, command: HaulCommand, what: (Option<Key>, u32), now: Now) {
    let n = what.1;
    if app.order(&Command::Haul(command), now).is_some() {
        app.count.last_sorted = Some(what);
        app.orders.push(Order::Feel(Feel::Count(n)));
    }
}
