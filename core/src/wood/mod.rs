//! Wood: species and weight.
use crate::quantity::Key;

/// Density at 12 % moisture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Density {
    pub kg_per_m3: f64,
    /// The wood is unknown: it counts as the heaviest plausible.
    pub guessed: bool,
}

/// The density of a wood by its key; unknown wood counts as the heaviest plausible hardwood.
pub fn density(_wood: Option<&Key>) -> Density {
    Density { kg_per_m3: 770.0, guessed: true }
}
