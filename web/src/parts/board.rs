//! An operation as a board in the rack, with its notches.
use crate::parts::fraction::worded;
use crate::parts::notches::{Notches, on_board};
use crate::view::{El, el};

/// What a board says.
#[derive(Clone, Debug, Default)]
pub struct Board {
    pub operation: String,
    /// "last 14 min each", "next", "not begun".
    pub under: String,
    /// "5 of 5".
    pub done: String,
    pub notches: Notches,
}

/// A board; a tap on it starts or switches to its operation.
pub fn board<M>(board: Board, tap: M) -> El<M> {
    let name =
        el("span", "").kid(worded("span", "nm", board.operation)).kids((!board.under.is_empty()).then(|| worded("span", "s", board.under)));
    el("button", "board")
        .attr("type", "button")
        .on_tap(tap)
        .kids((board.notches.of > 0).then(|| on_board(board.notches)))
        .kid(name)
        .kids((!board.done.is_empty()).then(|| el("span", "of").text(board.done)))
}

/// A board that asks something: its notches, then what the screen puts on it.
pub fn asking<M>(notches: Notches, inside: impl IntoIterator<Item = El<M>>) -> El<M> {
    el("section", "board ask").kids((notches.of > 0).then(|| on_board(notches))).kids(inside)
}
