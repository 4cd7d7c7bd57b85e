//! Wood: species, their weight and how they move, moisture. Knows no pile and no price.
//!
//! Masses and moistures are floats with a stated tolerance; nothing here is money.

mod europe;
mod north_america;
pub mod species;
pub mod weight;
