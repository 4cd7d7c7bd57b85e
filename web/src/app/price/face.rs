//! The buyer's face, heard. While it shows, nothing else is heard: it is a lock, opened by a hold.

use super::Tap;
use crate::app::order::Order;
use crate::app::{App, Msg};
use fivebar_core::quantity::Id;

/// Turns the phone to the buyer.
pub fn show(app: &mut App, job: Id) {
    app.price.last_job = Some(job);
    app.price.face = Some(job);
    app.notice = None;
    app.orders.push(Order::Face(true));
}

/// Back to the maker.
pub fn hide(app: &mut App) {
    let turned = std::mem::take(&mut app.price.turned);
    if app.price.face.take().is_some() || turned {
        app.orders.push(Order::Face(false));
    }
}

/// Whether a message has to wait: only the hold that closes the face is heard while it shows, and what the phone itself answers,
/// which shows nothing here.
pub fn is_locked(app: &App, message: &Msg) -> bool {
    use crate::app::workshop::Tap::{Added, CopiedText, Handed, NotPicked, Picked};
    let answers = matches!(message, Msg::Workshop(Added(_) | CopiedText(_) | Handed(_) | NotPicked(_) | Picked(_)));
    let answers = answers || crate::app::photos::answers(message);
    (app.price.face.is_some() || app.price.turned) && !answers && !matches!(message, Msg::Price(Tap::Hide))
}

#[cfg(test)]
mod tests;
