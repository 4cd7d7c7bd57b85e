//! The undo bar: two thirds wide, it names what it takes back; a side key stands beside it.
use crate::parts::glyph;
use crate::parts::key::{key, key_with};
use crate::view::{El, el};

/// What the bar takes back: "Take back 5", and of what, when.
#[derive(Clone, Debug, Default)]
pub struct Undo {
    pub words: String,
    pub under: String,
}

/// The bar with a key beside it.
pub fn undo<M>(undo: Undo, back: M, side: (String, M)) -> El<M> {
    el("div", "um").kid(alone(undo, back)).kid(key("key h88 m", side.0, "", side.1))
}

/// The bar by itself, as wide as its place.
pub fn alone<M>(undo: Undo, back: M) -> El<M> {
    key_with("key h88 m", glyph::undo(), (undo.words.into(), undo.under.into()), back).wary()
}
