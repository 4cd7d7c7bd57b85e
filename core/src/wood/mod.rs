//! Wood: species, their weight and how they move, moisture. Knows no pile and no price.
//!
//! Masses and moistures are floats with a stated tolerance; nothing here is money.

pub mod air;
mod europe;
pub mod minimum;
pub mod moisture;
pub mod movement;
mod north_america;
pub mod species;
pub mod weight;
pub mod woods;
