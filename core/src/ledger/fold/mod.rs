//! What the standing entries about a subject add up to. Total and pure: a fact that no longer makes sense changes nothing.

mod bench;
mod haul;
mod name;

pub use bench::{bench, last_act};
pub use haul::{haul, hauls};
pub use name::{name_of, not_typical, planned_operations};
