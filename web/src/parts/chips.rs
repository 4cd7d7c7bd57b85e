//! Chips: keys with the figures or answers people say.
use crate::parts::fraction::worded;
use crate::view::{El, el};

/// One chip. `chosen` is None where a chip is a tap and no choice stays.
#[derive(Clone, Debug, Default)]
pub struct Chip {
    pub words: String,
    pub under: String,
    pub chosen: Option<bool>,
}

impl Chip {
    /// A chip that is only tapped.
    pub fn tap(words: impl Into<String>) -> Self {
        Chip { words: words.into(), ..Chip::default() }
    }
    /// A chip that stays chosen or not.
    pub fn choice(words: impl Into<String>, chosen: bool) -> Self {
        Chip { words: words.into(), chosen: Some(chosen), ..Chip::default() }
    }
    /// With a small line below.
    pub fn under(mut self, under: impl Into<String>) -> Self {
        self.under = under.into();
        self
    }
}

/// Chips three to a row, each `class` high (`key t22`, `key h88`, `key h56`); `tap` makes the message from its number.
pub fn chips<M>(class: &'static str, chips: Vec<Chip>, tap: impl Fn(usize) -> M) -> El<M> {
    row("chips three", class, chips, tap)
}

/// Chips four to a row, such as the bundle keys.
pub fn bundle<M>(chips: Vec<Chip>, tap: impl Fn(usize) -> M) -> El<M> {
    row("g4", "key fig", chips, tap)
}

/// Chips four to a row, each `class` high.
pub fn bundle_of<M>(class: &'static str, chips: Vec<Chip>, tap: impl Fn(usize) -> M) -> El<M> {
    row("g4", class, chips, tap)
}

/// Chips as many to a row as fit.
pub fn flowing<M>(class: &'static str, chips: Vec<Chip>, tap: impl Fn(usize) -> M) -> El<M> {
    row("chips", class, chips, tap)
}

/// Chips in rows as `outer` lays them out.
pub fn in_rows<M>(outer: &'static str, class: &'static str, chips: Vec<Chip>, tap: impl Fn(usize) -> M) -> El<M> {
    row(outer, class, chips, tap)
}

fn row<M>(outer: &'static str, class: &'static str, chips: Vec<Chip>, tap: impl Fn(usize) -> M) -> El<M> {
    el("div", outer).attr("role", "group").kids(chips.into_iter().enumerate().map(|(i, chip)| {
        let key = el("button", class).attr("type", "button").on_tap(tap(i));
        let key = chip.chosen.into_iter().fold(key, |key, on| key.attr("aria-pressed", if on { "true" } else { "false" }));
        key.kid(worded("span", "", chip.words)).kids((!chip.under.is_empty()).then(|| worded("span", "s", chip.under)))
    }))
}
