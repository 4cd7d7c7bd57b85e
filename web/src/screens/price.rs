//! Price.

use super::{Screen, Seen};
use crate::app::App;
use crate::parts::Place;
use crate::parts::head::{Head, head};
use crate::view::el;

/// The screen as it stands.
pub fn screen(_app: &App, _seen: Seen<'_>) -> Screen {
    Screen::new("price", head(Head::new("", Place::Price.name())), el("main", "scr"))
}
