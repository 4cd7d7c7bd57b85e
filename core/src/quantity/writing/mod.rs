//! Quantities as text: the inverse of [`super::reading`], and figures with the digits a measurement deserves.
//!
//! Two families. [`length`], [`distance`], [`money`], [`span`], [`clock`], [`mass`], [`decimal`] write everything: reading gives
//! back the same quantity. The `shown_` ones round for the eye and are never read back into an entry.

mod length;
mod measure;
mod number;
mod time;

pub use length::{InchParts, distance, inch_parts, length, shown_millimetres, whole_feet};
pub use measure::{grams, mass, money, shown_board_feet, shown_litres, shown_mass};
pub use number::{decimal, fixed};
pub use time::{clock, shown_span, span};
