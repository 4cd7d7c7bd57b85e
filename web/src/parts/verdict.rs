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

/// The sign with its word and sentence.
pub fn verdict<M>(sign: Sign, word: impl Into<String>, say: impl Into<String>) -> El<M> {
    let (class, glyph, word_class) = match sign {
        Sign::Yes => ("c-good", glyph::tick(), "vw c-good"),
        Sign::No => ("c-under", glyph::cross(), "vw c-under"),
        Sign::Say => ("", glyph::raise(), "vw"),
        Sign::Close => ("", glyph::level(), "vw"),
    };
    el("section", "verdict").kid(el("span", class).kid(glyph)).kid(el("span", word_class).text(word.into())).kid(worded(
        "span",
        "say",
        say.into(),
    ))
}
