//! What the standing entries about a subject add up to. Total and pure: a fact that no longer makes sense changes nothing.

mod haul;

pub use haul::{haul, hauls};
