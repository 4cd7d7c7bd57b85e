//! Refusals and troubles, put into words.

use super::Seen;
use crate::app::news::Trouble as Why;
use crate::parts::notice::Trouble;
use crate::words::en::refusal as words;
use fivebar_core::refusal::Refusal;

/// A refusal in words: what did not happen, what is safe, what to do.
pub fn refused(refusal: &Refusal, seen: Seen<'_>) -> Trouble {
    let said = words::refused(refusal, seen.speech);
    Trouble { what: said.what, why: String::new(), safe: said.safe, to_do: said.to_do }
}

/// What could not be saved, in words.
pub fn not_saved(why: Why, lines: usize, _seen: Seen<'_>) -> Trouble {
    shown(words::not_saved(why, lines))
}

/// A book that could not be opened, in words.
pub fn not_opened(why: Why) -> Trouble {
    shown(words::not_opened(why))
}

/// The example could not be opened.
pub fn no_example(why: Why) -> Trouble {
    shown(words::no_example(why))
}

/// The browser had thrown the book away; so many entries are back.
pub fn brought_back(entries: &str) -> Trouble {
    shown(words::brought_back(entries))
}

/// The store was emptied under the open book.
pub fn emptied() -> Trouble {
    shown(words::emptied())
}

/// A trouble as the page shows it.
pub fn shown(said: words::Said) -> Trouble {
    Trouble { what: said.what, why: said.why, safe: said.safe, to_do: said.to_do }
}
