//! What comes off a piece before it is what is laid, by one rule for rows, parts, sticks and tiles.
//!
//! | | each end | each long edge | each glued edge |
//! |---|---|---|---|
//! | strips of rows, tiles | `square` | `edge_trim` | `joint` |
//! | a row alone, crossed tiles: glued to nothing | `square` | planed | |
//! | boards for parts | `end_trim` | `edge_trim`; planed where one part takes all of the width | `joint` |
//! | sticks for parts | `end_trim` | planed; as it is where it is just right | |
//!
//! A kerf goes between pieces, and before what is left to keep. What is planed takes what is over in width, of a row alone nothing. Parts
//! are cut with what is over in all three directions; of rows and tiles the thickness alone is.

use super::figures::Figures;
use super::wish::Tiles;
use crate::plan::field::problem::Pattern;
use crate::quantity::Length;
use crate::refusal::Answer;

/// How wide a strip is sawn that is so wide once both edges are jointed.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`].
pub(in crate::sheet) fn sawn(strip: Length, figures: &Figures) -> Answer<Length> {
    strip.plus(figures.joint.times(2)?)
}

/// Off the length, the width and the thickness of a piece that becomes a tile.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`].
pub(in crate::sheet) fn of_tile(tiles: &Tiles, figures: &Figures) -> Answer<[Length; 3]> {
    let [_, over_wide, over_thick] = figures.allow;
    let wide = if is_glued(tiles) { sawn(figures.edge_trim.times(2)?, figures)? } else { over_wide };
    Ok([figures.square.times(2)?, wide, over_thick])
}

/// The two sides of a part cut from a stick, the smaller first: as it is finished, and with what is over.
pub(in crate::sheet) fn of_stick([thick, wide]: [Length; 2], [over_thick, over_wide]: [Length; 2]) -> [[i64; 2]; 2] {
    let side = |finished: Length, over: Length| [finished.as_nm(), finished.as_nm().saturating_add(over.as_nm())];
    let [one, other] = [side(thick, over_thick), side(wide, over_wide)];
    if one[1] <= other[1] { [one, other] } else { [other, one] }
}

/// Whether the side of a stick does for one of a part: with what is over; one that is just right is not planed, and needs none.
pub(in crate::sheet) fn is_enough(there: Length, [finished, with_over]: [i64; 2]) -> bool {
    there.as_nm() == finished || with_over <= there.as_nm()
}

/// Nothing of a piece of these sides is left for a tile.
pub(in crate::sheet) fn is_all(tiles: &Tiles, figures: &Figures, [thickness, width, length]: [Length; 3]) -> bool {
    of_tile(tiles, figures).is_ok_and(|off| [length, width, thickness].iter().zip(off).any(|(side, off)| *side <= off))
}

/// Tiles are glued edge to edge where nothing is open between them and they are not crossed alone.
pub(super) fn is_glued(tiles: &Tiles) -> bool {
    tiles.gap == Length::ZERO && tiles.patterns.iter().any(|pattern| *pattern != Pattern::Crossed)
}
