//! English: where no piece fits, what a part needs, what there is, and what helps.

use fivebar_core::quantity::begin_large;

/// "Seat is 32 × 410 × 430 mm, and is cut of boards of 34 × 416 × 440 mm or larger."
pub fn needs(part: &str, size: &str, of: &str, sticks: bool) -> String {
    let what = if sticks { "sticks" } else { "boards" };
    format!("{} is {size}, and is cut of {what} of {of} or larger.", begin_large(part))
}

/// "Seat is 32 × 410 × 430 mm, and is cut of boards 34 mm or thicker and 440 mm or longer; narrow ones are glued up."
pub fn needs_glued(part: &str, size: &str, thick: &str, long: &str) -> String {
    format!("{} is {size}, and is cut of boards {thick} or thicker and {long} or longer; narrow ones are glued up.", begin_large(part))
}

/// "Of the pieces there are the longest is 500, the widest 65 and the thickest 30 mm."; those of one wood.
pub fn largest(wood: Option<&str>, [long, wide, thick]: [&str; 3], unit: &str) -> String {
    let of = wood.map_or_else(|| "Of the pieces there are".to_owned(), |wood| format!("Of {wood}"));
    format!("{of} the longest is {long}, the widest {wide} and the thickest {thick} {unit}.")
}

/// "There is no cherry among the pieces."
pub fn none_of(wood: &str) -> String {
    format!("There is no {wood} among the pieces.")
}

/// "Make seat as a top in rows"
pub fn as_top(part: &str) -> String {
    format!("Make {part} as a top in rows")
}

pub const AS_TOP_UNDER: &str = "of shorter pieces end to end, glued side by side";

/// Sticks are never glued side by side.
pub fn glued_there(part: &str) -> String {
    format!("{part} is glued up there of narrow ones")
}
