//! English: what is said under a picture whose pieces are too small for their letters.

pub const TOO_SMALL: &str = "Too small for their letters:";
pub const TOO_SMALL_NAMES: &str = "Too small for their names:";
pub const CUT: &str = "cut; a tap says its number";
pub const ROW_BY_ROW: &str = "Row by row from the top, left to right; a figure is the number of a cut piece.";

/// "Row 1: 1 + 8 + 2 × A".
pub fn row(nth: &str, pieces: &[String]) -> String {
    format!("Row {nth}: {}", pieces.join(" + "))
}

pub const LIST: &str = "The list at the saw";
pub const BY_PILE: &str = "By pile";
pub const BY_ROW: &str = "By row";
/// What a tick of a row is.
pub const ROW_TICKED: &str = "From the top, left to right. Tick a row when all its pieces are cut: their boards count as cut.";

/// "row 2".
pub fn numbered(nth: &str) -> String {
    format!("row {nth}")
}

/// A line at the saw that has no tick of its own, or would stand as done without it.
pub const DONE_BY_ITS_ROWS: &str = "The rows that are ticked make this line done. Take their ticks off under By row.";

/// A row that has no tick of its own, or would stand as cut without it.
pub const DONE_BY_ITS_BOARDS: &str = "The boards that are ticked make this row done. Take their ticks off under By pile.";

/// "Row 2, piece 3".
pub fn piece_in_row(row: &str, piece: &str) -> String {
    format!("Row {row}, piece {piece}")
}

/// "A 905"; of a cut one "A 590, no. 1".
pub fn in_row(letter: &str, length: &str, number: Option<&str>) -> String {
    number.map_or_else(|| format!("{letter} {length}"), |number| format!("{letter} {length}, no. {number}"))
}

/// "2 × A".
pub fn so_many_of(n: &str, mark: &str) -> String {
    format!("{n} × {mark}")
}
