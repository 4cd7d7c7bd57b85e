//! What stands on the pieces of a picture: on a screen no smaller than is read there, on paper as it comes out.

use crate::app::Msg;
use crate::parts::ink::{Pair, letters};
use crate::parts::letters::{bold, plain};
use crate::view::El;

/// Sizes of letters, the largest first, each with its class: the largest that fits into a piece is drawn.
const SIZES: [(f64, &str); 5] = [(14.0, "mk"), (11.0, "mk s11"), (9.0, "mk s9"), (7.0, "mk s7"), (5.0, "mk s5")];

/// The least that is read on a screen, in px; and on paper: 6 points.
const ON_SCREEN: f64 = 11.0;
const ON_PAPER: f64 = 8.0;

/// A piece where it is drawn, and whether its label is bold.
#[derive(Clone, Copy)]
pub struct Place {
    pub at: Pair,
    pub size: Pair,
    pub bold: bool,
    /// So much larger than on a screen it is on paper.
    pub on_paper: f64,
}

impl Place {
    /// The first of the texts that fits, at the largest size it fits in.
    fn fits<'a>(&self, texts: &'a [String], least: f64) -> Option<(&'a String, &'static (f64, &'static str))> {
        let wide = |text: &str, size: f64| if self.bold { bold(text, size) } else { plain(text, size) };
        let fits = |text: &str, size: f64| size * 0.86 <= self.size.1 && wide(text, size) + size * 0.2 <= self.size.0;
        let sized = |text: &'a String| SIZES.iter().find(|(size, _)| least <= *size && fits(text, *size)).map(|size| (text, size));
        texts.iter().filter(|text| !text.is_empty()).find_map(sized)
    }

    /// Whether any of the texts can be read on it on a screen.
    pub fn is_read(&self, texts: &[String]) -> bool {
        self.fits(texts, ON_SCREEN).is_some()
    }

    /// Whether any of them can be read on paper.
    pub fn is_read_on_paper(&self, texts: &[String]) -> bool {
        self.fits(texts, ON_PAPER / self.on_paper).is_some()
    }

    /// The label of a screen, and where paper has another, that.
    pub fn labels(&self, screen: &[String], paper: &[String]) -> Vec<El<Msg>> {
        let (shown, printed) = (self.fits(screen, ON_SCREEN), self.fits(paper, ON_PAPER / self.on_paper));
        if shown == printed {
            return shown.map(|label| self.label(label, "")).into_iter().collect();
        }
        let shown = shown.map(|label| self.label(label, " no-print"));
        shown.into_iter().chain(printed.map(|label| self.label(label, " print-only"))).collect()
    }

    fn label(&self, (text, (size, class)): (&String, &(f64, &'static str)), only: &str) -> El<Msg> {
        let middle = (self.at.0 + self.size.0 / 2.0, self.at.1 + self.size.1 / 2.0 + size * 0.36);
        letters(format!("{class}{}{only}", if self.bold { " b" } else { "" }), middle, text.clone())
    }
}
