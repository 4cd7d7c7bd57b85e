//! The parts a screen is built from: pure functions from words and numbers to elements.
//!
//! Parts take text that is already worded and hold no sentences; what they say to a screen reader is in `words`.
pub mod bars;
pub mod board;
pub mod caution;
pub mod chips;
#[cfg(test)]
mod contrast;
pub mod day_steps;
pub mod field;
pub mod fraction;
pub mod glyph;
pub mod head;
pub mod ink;
pub mod key;
pub mod letters;
pub mod load_bar;
pub mod notches;
pub mod notice;
pub mod pad;
pub mod page;
pub mod paid_bar;
pub mod place_bar;
pub mod rack;
pub mod ratio;
pub mod scale;
pub mod seg;
pub mod share_bar;
pub mod slab;
pub mod so_far;
pub mod stack;
pub mod steps;
pub mod strip;
pub mod tile;
pub mod timeline;
pub mod undo;
pub mod verdict;

pub use page::Page;
pub use place_bar::Place;
