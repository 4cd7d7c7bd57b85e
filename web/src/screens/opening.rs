//! While the book is read: nothing is claimed about it, and each tap of an early thumb is shown and kept.

use super::{Screen, Seen};
use crate::app::{App, Msg, count::Tap};
use crate::parts::Place;
use crate::parts::head::{Head, head};
use crate::parts::tile::{First, first};
use crate::view::{El, el};
use crate::words::en::common as words;

/// Any place before its book was read. Count takes pieces already.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let shown = if app.place == Place::Count { board(app, seen) } else { el("p", "t17").text(words::OPENING) };
    let main = el("main", "scr").attr("aria-busy", "true").kid(shown);
    Screen::new(app.place.key(), head(Head::new(String::new(), app.place.name())), main)
}

fn board(app: &App, seen: Seen<'_>) -> El<Msg> {
    let counted = app.early_pieces();
    let figure = if 0 < counted { seen.speech.count(counted) } else { String::new() };
    let board = First { name: words::OPENING.into(), say: words::OPENING_COUNTS.into(), figure, aside: String::new(), counted };
    first(board, Msg::Count(Tap::First))
}
