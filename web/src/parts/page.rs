//! How much room there is. Drawings are laid out for it; everything else is left to the stylesheet.

/// The page's width in px at the size of text the maker chose: `inner width × 16 / root font size`.
///
/// A phone of 390 px with text at 200 % is a page of 195: labels then take more rows instead of running into each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Page {
    pub width: f64,
}

const RAIL: f64 = 120.0;
const COLUMN: f64 = 480.0;
const CARD_EDGE: f64 = 28.0;

impl Page {
    /// A page of this width.
    pub fn new(width: f64) -> Self {
        Page { width }
    }
    /// A laptop: side rail and two columns.
    pub fn is_wide(self) -> bool {
        self.width >= 900.0
    }
    /// 320 px, or large text: names over sizes, details folded.
    pub fn is_narrow(self) -> bool {
        self.width <= 352.0
    }
    /// The width of what lies straight on the board, in one column.
    pub fn column(self) -> f64 {
        let margin = if self.is_narrow() { 12.0 } else { 16.0 };
        let one = if self.is_wide() { (self.width - RAIL - 72.0) / 2.0 } else { self.width - 2.0 * margin };
        if self.is_wide() { one.min(COLUMN) } else { one.max(100.0) }
    }
    /// The width inside a card.
    pub fn card(self) -> f64 {
        self.column() - CARD_EDGE
    }
}

impl Default for Page {
    fn default() -> Self {
        Page { width: 390.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_column_is_as_wide_as_in_the_drawings() {
        for (page, column, card) in [(390.0, 358.0, 330.0), (320.0, 296.0, 268.0), (195.0, 171.0, 143.0), (1280.0, 480.0, 452.0)] {
            assert_eq!((Page::new(page).column(), Page::new(page).card()), (column, card), "{page}");
        }
    }
}
