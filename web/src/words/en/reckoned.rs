//! English: what a plan was reckoned with, and what of its wood nobody has sorted.

use fivebar_core::quantity::in_small;

/// "kerf 3"; "least piece 60".
pub fn figure_of(name: &str, length: &str) -> String {
    format!("{} {length}", in_small(name))
}

/// "machines from 300".
pub fn machines_from(least: &str) -> String {
    format!("machines from {least}")
}

/// "Reckoned with kerf 3, off board ends 6, worth keeping 250, in mm."
pub fn reckoned_with(figures: &[String], unit: &str) -> String {
    format!("Reckoned with {}, in {unit}.", figures.join(", "))
}

/// "B, likely 34 of 40 good".
pub fn likely_good(letter: &str, likely: &str, of: &str) -> String {
    format!("{letter}, likely {likely} of {of} good")
}

/// "Not sorted yet, so some may be rejects: A, likely 11 of 12 good; B, likely 34 of 40 good."
pub fn not_sorted(piles: &[String]) -> String {
    format!("Not sorted yet, so some may be rejects: {}.", piles.join("; "))
}
