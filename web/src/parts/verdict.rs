//! A verdict: a drawn sign, a word at 30, and what to say. Quiet enough for a stall.
use crate::parts::fraction::worded;
use crate::parts::glyph;
use crate::view::{El, el};

/// How an offer stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Sign {
    Yes,
    No,
    /// Too close: the maker's call.
    Close,
    /// Good enough to go on talking.
    Say,
}

/// A word longer than this many letters is set smaller on a narrow page.
const LONG: usize = 12;

/// The sign with its word and sentence.
pub fn verdict<M>(sign: Sign, word: impl Into<String>, say: impl Into<String>) -> El<M> {
    let (class, glyph) = match sign {
        Sign::Yes => ("c-good", glyph::tick()),
        Sign::No => ("c-under", glyph::cross()),
        Sign::Say => ("", glyph::raise()),
        Sign::Close => ("", glyph::level()),
    };
    let word = word.into();
    let long = if LONG < word.chars().count() { "vw long" } else { "vw" };
    let word_class = if class.is_empty() { long.to_owned() } else { format!("{long} {class}") };
    el("section", "verdict").kid(el("span", class).kid(glyph)).kid(el("span", word_class).text(word)).kid(worded("span", "say", say.into()))
}
