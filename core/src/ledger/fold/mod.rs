//! What the standing entries about a subject add up to. Total and pure: a fact that no longer makes sense changes nothing.

mod bench;
mod haul;
mod name;

pub use bench::{bench, last_act};
pub use haul::{haul, hauls};
pub use name::{counts_as_history, name_of, planned_operations};
