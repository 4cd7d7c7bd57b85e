//! While the book is read: nothing is claimed about it, and each tap of an early thumb is shown and kept.

use super::{Screen, Seen};
use crate::app::{App, Msg, count::Tap};
use crate::parts::Place;
use crate::parts::head::{Head, head};
use crate::parts::tile::{First, first};
use crate::view::el;
use crate::words::en::common as words;

/// Any place before its book was read. Count takes pieces already.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let main = el("main", "scr").attr("aria-busy", "true");
    let (place, main) = match app.place {
        Place::Count => ("count", main.kid(board(app, seen))),
        Place::Bench => ("bench", main.kid(waits())),
        Place::Price => ("price", main.kid(waits())),
        Place::Jobs => ("jobs", main.kid(waits())),
        Place::Workshop => ("workshop", main.kid(waits())),
    };
    Screen::new(place, head(Head::new(String::new(), app.place.name())), main)
}

fn waits() -> crate::view::El<Msg> {
    el("p", "t17").text(words::OPENING)
}

fn board(app: &App, seen: Seen<'_>) -> crate::view::El<Msg> {
    let counted = app.early_pieces();
    let board = First {
        name: words::OPENING.into(),
        say: words::OPENING_COUNTS.into(),
        figure: if 0 < counted { seen.speech.count(counted) } else { String::new() },
        aside: String::new(),
        counted,
    };
    first(board, Msg::Count(Tap::First))
}
