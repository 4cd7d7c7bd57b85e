//! Jobs.

use super::{Screen, Seen};
use crate::app::App;
use crate::parts::Place;
use crate::parts::head::{Head, head};
use crate::view::el;

/// The screen as it stands.
pub fn screen(_app: &App, _seen: Seen<'_>) -> Screen {
    Screen::new("jobs", head(Head::new("", Place::Jobs.name())), el("main", "scr"))
}
