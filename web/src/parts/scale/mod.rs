//! The scale with named marks: how far along, between which marks. It is shown, or it is the input for money.
mod draw;
pub mod labels;
pub mod ticks;

use crate::parts::ink::num;
use crate::view::{El, el};
pub use ticks::Rhythm;

/// What a mark means; the colour only repeats what its word says.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Kind {
    #[default]
    Ink,
    Good,
    Under,
    Wait,
}

/// A named mark: a word and its figure.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mark {
    pub at: f64,
    pub word: String,
    pub figure: String,
    pub kind: Kind,
    /// Only the label, such as an hour under a day's ticks.
    pub bare: bool,
}

impl Mark {
    /// A mark at a value.
    pub fn new(at: f64, kind: Kind, word: impl Into<String>, figure: impl Into<String>) -> Self {
        Mark { at, word: word.into(), figure: figure.into(), kind, bare: false }
    }
    /// A label without a mark.
    pub fn bare(at: f64, word: impl Into<String>) -> Self {
        Mark { at, word: word.into(), bare: true, ..Mark::default() }
    }
}

/// How a filled stretch looks: solid is so far, open is to come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Look {
    Ink,
    Good,
    Under,
    Open,
    OpenWait,
}

/// A stretch above the line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    pub from: f64,
    pub to: f64,
    pub look: Look,
}

/// A hatched band with its label above: too close to call.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    pub from: f64,
    pub to: f64,
    pub word: String,
    pub figure: String,
}

/// The block the maker drags, with its figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    pub at: f64,
    pub figure: String,
}

/// A scale, `width` wide, from one value to another. What is left out stays away.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scale {
    pub width: f64,
    pub from: f64,
    pub to: f64,
    pub rhythm: Option<Rhythm>,
    pub marks: Vec<Mark>,
    pub fills: Vec<Fill>,
    pub needle: Option<f64>,
    pub band: Option<Band>,
    /// A mark far below: an arrow at the edge, with its word and figure.
    pub below: Option<(String, String)>,
    pub block: Option<Block>,
}

/// What a reader hears of a slider: its name, the value and nearest mark in words, the value as a number.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spoken {
    pub name: String,
    pub now: f64,
    pub words: String,
}

impl Scale {
    /// Where a value stands, in the drawing's units; values outside stand at the edge.
    pub fn x(&self, value: f64) -> f64 {
        let span = (self.to - self.from).abs().max(1e-9);
        let share = ((value - self.from) / span).clamp(0.0, 1.0);
        2.0 + share * (self.width - 4.0)
    }

    /// The value under a finger at `share` (0 to 1) of the scale's width.
    pub fn value_at(&self, share: f64) -> f64 {
        let along = ((share * self.width - 2.0) / (self.width - 4.0).max(1.0)).clamp(0.0, 1.0);
        self.from + along * (self.to - self.from)
    }
}

/// The scale to look at; `said` is what a reader hears, empty if the text beside it says it all.
pub fn scale<M>(scale: &Scale, said: &str) -> El<M> {
    let drawn = draw::drawn(scale);
    if said.is_empty() { drawn.attr("aria-hidden", "true") } else { drawn.attr("role", "img").attr("aria-label", said.to_owned()) }
}

/// The scale as input: a slider for finger and keyboard. Put `on_slide` and `on_key` on what comes back.
pub fn slider<M>(scale: &Scale, spoken: &Spoken) -> El<M> {
    el("div", "slider")
        .attr("role", "slider")
        .attr("tabindex", "0")
        .attr("aria-label", spoken.name.clone())
        .attr("aria-valuemin", num(scale.from))
        .attr("aria-valuemax", num(scale.to))
        .attr("aria-valuenow", num(spoken.now))
        .attr("aria-valuetext", spoken.words.clone())
        .kid(draw::drawn(scale).attr("aria-hidden", "true"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn offer(width: f64) -> Scale {
        Scale {
            width,
            from: 95.0,
            to: 156.0,
            marks: vec![
                Mark::new(101.0, Kind::Under, "not under", "101"),
                Mark::new(130.0, Kind::Good, "settle", "130"),
                Mark::new(140.0, Kind::Ink, "ask", "140"),
                Mark::new(149.56, Kind::Ink, "your rate", "150"),
            ],
            below: Some(("costs covered".into(), "28".into())),
            block: Some(Block { at: 130.0, figure: "130".into() }),
            ..Scale::default()
        }
    }

    #[test]
    fn a_finger_finds_the_value_it_points_at() {
        let scale = offer(330.0);
        for value in [95.0, 101.0, 130.0, 156.0] {
            let back = scale.value_at(scale.x(value) / scale.width);
            assert!((back - value).abs() < 1e-9, "{value}: {back}");
        }
        assert_eq!((scale.value_at(-1.0), scale.value_at(2.0)), (95.0, 156.0));
    }

    #[test]
    fn a_slider_says_where_it_is() {
        let spoken = Spoken { name: "Offer".into(), now: 130.0, words: "130, yes, at settle".into() };
        let shown = slider::<()>(&offer(330.0), &spoken).html();
        for part in [r#"role="slider""#, r#"aria-valuemin="95""#, r#"aria-valuenow="130""#, r#"aria-valuetext="130, yes, at settle""#] {
            assert!(shown.contains(part), "{part}: {shown}");
        }
    }

    /// A label that is wider than its scale is drawn smaller, and ends where the scale does.
    #[test]
    fn a_label_wider_than_its_scale_is_fitted() {
        for (width, is_fitted) in [(130.0, true), (160.0, false), (330.0, false)] {
            let marks = vec![Mark::new(40.62, Kind::Good, "per logged hour", "40.62")];
            let shown = scale::<()>(&Scale { width, to: 60.0, marks, ..Scale::default() }, "").html();
            assert_eq!(shown.contains("scale(0."), is_fitted, "{width}: {shown}");
        }
    }

    #[test]
    fn every_mark_keeps_its_label_on_any_page() {
        for width in [143.0, 268.0, 330.0, 452.0] {
            let shown = scale::<()>(&offer(width), "").html();
            for word in ["not under", "settle", "ask", "your rate", "costs covered"] {
                assert!(shown.contains(word), "{word} at {width}");
            }
        }
    }
}
