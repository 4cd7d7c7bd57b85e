//! English: the ways in which a top could be made of the pieces there are.

use fivebar_core::quantity::begin_large;

pub const OTHER_WAYS: &str = "It could also be";
pub const ONE_WOOD: &str = "One wood, the least waste found";
pub const MAY_BE_MIXED: &str = "Woods may be mixed";
pub const MIXED_WOODS: &str = "woods mixed";
pub const WOOD_NOT_SAID: &str = "wood not said";

/// "oak, 25 thick".
pub fn thick(wood: &str, thick: &str) -> String {
    format!("{wood}, {}", so_thick(thick))
}

/// "oak 105 wide".
pub fn of_width(wood: &str, wide: &str) -> String {
    format!("{wood} {wide} wide")
}

/// "oak without ends".
pub fn without(wood: &str, pile: &str) -> String {
    format!("{wood} without {pile}")
}

pub const LEFT_FOR_LESS: &str = "left out for less waste";

/// "these pieces of oak".
pub fn these_of(wood: &str) -> String {
    format!("these pieces of {wood}")
}

pub const THESE_PIECES: &str = "these pieces";

pub fn so_thick(thick: &str) -> String {
    format!("{thick} thick")
}

/// "Chosen for little waste, by an estimate that takes the longest pieces first: oak, 25 thick, in 8 rows."; of what lies there, where
/// others are to be bought. The plan of these pieces may waste more than the estimate, and a plan of fewer less.
pub fn by_estimate(wood: &str, rows: &str, nothing_to_buy: bool) -> String {
    format!("{} for little waste, by an estimate that takes the longest pieces first: {wood}, in {rows}.", chosen(nothing_to_buy))
}

/// "Chosen for the least waste of 4 ways that were planned, each for a moment: oak, 25 thick, in 8 rows."
pub fn by_plans(wood: &str, rows: &str, (n, nothing_to_buy): (&str, bool)) -> String {
    format!("{} for the least waste of {n} ways that were planned, each for a moment: {wood}, in {rows}.", chosen(nothing_to_buy))
}

/// "Chosen for the least to buy, then for the least waste, of 4 ways that were planned, each for a moment: oak, 25 thick, in 8 rows."
pub fn by_least_to_buy(wood: &str, rows: &str, n: &str) -> String {
    format!("Chosen for the least to buy, then for the least waste, of {n} ways that were planned, each for a moment: {wood}, in {rows}.")
}

fn chosen(nothing_to_buy: bool) -> &'static str {
    if nothing_to_buy { "With nothing to buy, chosen" } else { "Chosen" }
}

pub const THICK_TAKEN: &str = "Pieces more than twice as thick as is needed are taken, too: without them not enough was found.";

/// "No plan of oak can make more."
pub fn held_of(said: &str, pieces: &str) -> String {
    said.strip_prefix("No plan ").map_or_else(|| said.to_owned(), |rest| format!("No plan of {pieces} {rest}"))
}

pub const MAY_BE_MORE_MIXED: &str = "With woods mixed it may be more.";

/// "10 rows of oak".
pub fn rows_of(rows: &str, wood: &str) -> String {
    format!("{rows} of {wood}")
}

/// "10 rows, about 30 % waste"; of one that was planned for a moment "10 rows, 31 % waste or less", as a
/// longer look may find less; "3 rows, about 9 % waste, with boards to buy"; "not enough for
/// 10 rows".
pub fn way(rows: &str, waste: Option<(&str, bool)>, buys: bool) -> String {
    let buys = if buys { ", with boards to buy" } else { "" };
    match waste {
        Some((waste, true)) => format!("{rows}, {waste} % waste or less{buys}"),
        Some((waste, false)) => format!("{rows}, about {waste} % waste{buys}"),
        None => format!("not enough for {rows}{buys}"),
    }
}

/// "As the pieces allow: 8 rows, 25 thick".
pub fn as_allowed(all: &str) -> String {
    format!("As the pieces allow: {all}.")
}

/// "Cherry does not fit 7 rows: 86 mm of its width can be used, and 86.8 mm are needed."
pub fn too_narrow(wood: &str, rows: &str, [usable, needed]: [&str; 2]) -> String {
    format!("{} does not fit {rows}: {usable} of its width can be used, and {needed} are needed.", begin_large(wood))
}

/// "No pieces of cherry to use fit this: choose another wood, or leave it open."
pub fn none_of(wood: &str) -> String {
    format!("No pieces of {wood} to use fit this: choose another wood, or leave it open.")
}
