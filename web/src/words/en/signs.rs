//! English: what is said under a picture whose pieces are too small for their letters.

pub const TOO_SMALL: &str = "Too small for their letters:";
pub const TOO_SMALL_NAMES: &str = "Too small for their names:";
pub const CUT: &str = "cut; a tap says its number";
pub const ROW_BY_ROW: &str = "Row by row from the top, left to right; a figure is the number of a cut piece.";

/// "Row 1: 1 + 8 + 2 × A".
pub fn row(nth: &str, pieces: &[String]) -> String {
    format!("Row {nth}: {}", pieces.join(" + "))
}

/// "2 × A".
pub fn so_many_of(n: &str, mark: &str) -> String {
    format!("{n} × {mark}")
}
