//! What a maker types, read as a quantity: `3 5/8`, `2' 6 1/2"`, `92 mm`, `1h30`, `2.32pm`, `11,40 €`.
//!
//! The rules, one for all kinds:
//! - Nothing is guessed. What could be two numbers is refused with both, what is too fine with the nearest, what is past a
//!   limit with the limit. The text a refusal carries is what was met, never more than [`TEXT_MOST`] characters.
//! - The decimal sign comes in with the language. A lone comma before three digits (`1,250`) is refused under either sign,
//!   a lone point before three digits (`1.250`) where the comma is the decimal sign. Everything else is clear: `1,25` and
//!   `1,250.50` have one reading whatever the language.
//! - Reading what [`super::writing`] wrote gives the same quantity.

mod clock;
mod count;
mod length;
mod mass;
mod misread;
mod money;
mod number;
mod settle;
mod span;
mod terms;

pub use clock::clock;
pub use count::{count, count_within, number, percent};
pub use length::{distance, length, length_within, thickness};
pub use mass::mass;
pub use misread::{Misread, Quantity};
pub use money::money;
pub use span::span;

use super::Units;

/// The most characters one typed figure may have.
pub const TEXT_MOST: usize = 64;

/// The decimal sign of the language the maker chose.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Sign {
    Point,
    Comma,
}

/// How this maker writes: what a number without a unit means, and which sign stands before decimals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Typing {
    pub units: Units,
    pub sign: Sign,
}

/// A figure or why it is none.
pub type Read<T> = Result<T, Misread>;

/// The text without the room around it, or why it can't be read at all.
fn tidy(text: &str) -> Read<&str> {
    let text = text.trim();
    if text.is_empty() {
        Err(Misread::Empty)
    } else if text.chars().nth(TEXT_MOST).is_some() {
        Err(Misread::TooLong { most: TEXT_MOST })
    } else if text.starts_with(['-', '\u{2212}', '\u{2013}']) {
        Err(Misread::Negative { met: text.into() })
    } else {
        Ok(text)
    }
}

#[cfg(test)]
mod tests;
