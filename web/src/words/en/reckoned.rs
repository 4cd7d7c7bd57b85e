//! English: what a plan was reckoned with, and what of its wood nobody has sorted.

use super::plan::listed;
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

/// "B, likely 34 of 40 good"; "A and B together, likely 39 of 60 good".
pub fn likely_good(letters: &[String], likely: &str, of: &str) -> String {
    let together = if 1 < letters.len() { " together" } else { "" };
    format!("{}{together}, likely {likely} of {of} good", listed(letters, "and"))
}

/// "1 of D is not sorted yet: of such wood about 25 % is rejected.": of so few that not one is likely good, though most are.
pub fn few_not_sorted(letters: &[String], (n, one): (&str, bool), rejects: &str) -> String {
    let are = if one { "is" } else { "are" };
    format!("{n} of {} {are} not sorted yet: of such wood about {rejects} % is rejected.", listed(letters, "and"))
}

/// "Not sorted yet, so some may be rejects: A, likely 11 of 12 good; B, likely 34 of 40 good.", and what likely counts.
pub fn not_sorted(piles: &[String]) -> String {
    let how = "Likely is four times in five; that the share of rejects may be off counts too.";
    format!("Not sorted yet, so some may be rejects: {}. {how}", piles.join("; "))
}

/// "It takes 68 of A, and likely 45 are good: 23 may be lacking."
pub fn takes_more_than_likely(letters: &[String], takes: &str, [good, lacking]: [&str; 2]) -> String {
    let are = if good == "1" { "is" } else { "are" };
    format!("It takes {takes} of {}, and likely {good} {are} good: {lacking} may be lacking.", listed(letters, "and"))
}

/// Where a plan lacks pieces.
pub const ALL_AS_GOOD: &str = "What it lacks counts all of them as good: get as many more as may be rejects.";
