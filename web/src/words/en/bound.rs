//! English: what no plan can do, and what was not found.

use super::plan::things;
use fivebar_core::ledger::kind::plan::Shape;

pub fn nothing(shape: Shape) -> &'static str {
    match shape {
        Shape::Rows => "Not one row can be laid.",
        Shape::Parts | Shape::Sticks => "Not one piece can be made.",
        Shape::Field => "No field comes near enough.",
    }
}

/// The same where it is not proven.
pub fn none_found(shape: Shape) -> &'static str {
    match shape {
        Shape::Rows => "No plan of a row was found.",
        Shape::Parts | Shape::Sticks => "No plan of one piece was found.",
        Shape::Field => "No field near enough was found.",
    }
}

/// "No plan can reach 10 rows."
pub fn never(shape: Shape, n: &str, one: bool) -> String {
    format!("No plan can reach {n} {}.", things(shape, one))
}

/// Pieces are counted whole; older plans counted what goes back as not taken. Rows and sticks are planned by their length.
pub fn takes_less(shape: Shape, percent: &str, whole: bool) -> String {
    format!("No plan takes more than {} than this one{}.", less(shape, percent), counted(whole))
}

/// Of fewer than were asked: "No plan can make more, or as many with more than 2 % less wood."
pub fn no_more_nor_less(shape: Shape, percent: &str, whole: bool) -> String {
    format!("No plan can make more, or as many with more than {}{}.", less(shape, percent), counted(whole))
}

fn less(shape: Shape, percent: &str) -> String {
    format!("{percent} % less {}", if shape == Shape::Parts { "wood" } else { "length" })
}

fn counted(whole: bool) -> &'static str {
    if whole { ", pieces counted whole" } else { "" }
}
