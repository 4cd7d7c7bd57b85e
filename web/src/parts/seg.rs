//! Segments: one of a few, side by side, the chosen one in ink.
use crate::parts::fraction::worded;
use crate::view::{El, el};

/// One segment.
#[derive(Clone, Debug, Default)]
pub struct Seg {
    pub words: String,
    pub under: String,
    pub chosen: bool,
    /// The chosen one is a running clock and amber.
    pub runs: bool,
}

impl Seg {
    /// A segment, chosen or not.
    pub fn new(words: impl Into<String>, chosen: bool) -> Self {
        Seg { words: words.into(), chosen, ..Seg::default() }
    }
    /// With a small line below.
    pub fn under(mut self, under: impl Into<String>) -> Self {
        self.under = under.into();
        self
    }
    /// The chosen one, and its clock runs.
    pub fn running(mut self) -> Self {
        (self.chosen, self.runs) = (true, true);
        self
    }
}

/// Segments all equally wide, for short words.
pub fn even<M>(name: impl Into<String>, segs: Vec<Seg>, choose: impl Fn(usize) -> M) -> El<M> {
    drawn("seg", name.into(), segs, choose)
}

/// The segments under one name, each as wide as its words; `choose` makes the message from the number of the one tapped.
pub fn seg<M>(name: impl Into<String>, segs: Vec<Seg>, choose: impl Fn(usize) -> M) -> El<M> {
    drawn("seg own", name.into(), segs, choose)
}

fn drawn<M>(class: &'static str, name: String, segs: Vec<Seg>, choose: impl Fn(usize) -> M) -> El<M> {
    el("div", class).attr("role", "group").attr("aria-label", name).kids(segs.into_iter().enumerate().map(|(i, seg)| {
        el("button", if seg.runs { "runs" } else { "" })
            .attr("type", "button")
            .attr("aria-pressed", if seg.chosen { "true" } else { "false" })
            .on_tap(choose(i))
            .kid(worded("span", "", seg.words))
            .kids((!seg.under.is_empty()).then(|| worded("span", "s", seg.under)))
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_segment_is_pressed() {
        let shown = seg("How paid", vec![Seg::new("Card", true), Seg::new("Notes", false)], |i| i).html();
        assert_eq!(shown.matches(r#"aria-pressed="true""#).count(), 1);
        assert_eq!(shown.matches(r#"aria-pressed="false""#).count(), 1);
    }
}
