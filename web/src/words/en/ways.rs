//! English: the ways in which a top could be made of the pieces there are.

pub const OTHER_WAYS: &str = "It could also be";
pub const ONE_WOOD: &str = "One wood, the least waste";
pub const MAY_BE_MIXED: &str = "Woods may be mixed";
pub const MIXED_WOODS: &str = "woods mixed";
pub const WOOD_NOT_SAID: &str = "wood not said";

/// "oak, 25 thick".
pub fn thick(wood: &str, thick: &str) -> String {
    format!("{wood}, {}", so_thick(thick))
}

pub fn so_thick(thick: &str) -> String {
    format!("{thick} thick")
}

/// "For about the least waste by volume: oak, 25 thick, in 8 rows."
pub fn least_waste(wood: &str, rows: &str) -> String {
    format!("For about the least waste by volume: {wood}, in {rows}.")
}

/// "10 rows of oak".
pub fn rows_of(rows: &str, wood: &str) -> String {
    format!("{rows} of {wood}")
}

/// "10 rows, about 30 % waste"; "not enough for 10 rows".
pub fn way(rows: &str, enough: bool, waste: &str) -> String {
    if enough { format!("{rows}, about {waste} % waste") } else { format!("not enough for {rows}") }
}

/// "As the pieces allow: 8 rows, 25 thick".
pub fn as_allowed(all: &str) -> String {
    format!("As the pieces allow: {all}.")
}
