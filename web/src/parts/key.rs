//! A key: one or two lines under the thumb.
use crate::parts::fraction::worded;
use crate::parts::ink::Text;
use crate::view::{El, el};

/// A key. `class` is `key` with its looks: `solid soft h48 h56 h88 h176 m fig t22 left wide`. An empty `under` leaves the second line out.
pub fn key<M>(class: &'static str, words: impl Into<Text>, under: impl Into<Text>, tap: M) -> El<M> {
    let under = under.into();
    bare(class, tap).kid(worded("span", "", words)).kids((!under.is_empty()).then(|| worded("span", "s", under)))
}

/// The key that takes what was typed: Enter is the same, while a pad waits.
pub fn done_key<M>(class: &'static str, words: impl Into<Text>, under: impl Into<Text>, tap: M) -> El<M> {
    key(class, words, under, tap).by_enter()
}

/// A key with a glyph before its words.
pub fn key_with<M>(class: &'static str, glyph: El<M>, lines: (Text, Text), tap: M) -> El<M> {
    let (words, under) = lines;
    bare(class, tap)
        .kid(el("span", "with").kid(glyph).kid(worded("span", "", words)))
        .kids((!under.is_empty()).then(|| worded("span", "s", under)))
}

/// A key that shows what a figure is before the figure: small line first.
pub fn figure_key<M>(what: impl Into<Text>, figure: impl Into<Text>, tap: M) -> El<M> {
    bare("key left", tap).kid(worded("span", "s", what)).kid(worded("span", "t22 w8", figure))
}

fn bare<M>(class: &'static str, tap: M) -> El<M> {
    el("button", class).attr("type", "button").on_tap(tap)
}
