//! English: before going to a supplier, and what sorting showed of them.

use fivebar_core::quantity::begin_large;

pub const GOING: &str = "Going there?";
pub const GOING_UNDER: &str = "what each supplier’s trips were worth";
pub const BEFORE_GOING: &str = "Before going";
pub const NOBODY: &str = "No supplier is known by name yet. Say whose bin it was on the haul’s own page.";
pub const GO: &str = "Go";
pub const SKIP: &str = "Skip";
pub const YOUR_CALL: &str = "Your call";
pub const NOT_KNOWN: &str = "Not known";
pub const NO_HISTORY: &str = "No history: count one trip and it will know.";
pub const PAY_MISSING: &str = "Say in Workshop, Your rate, what an hour should pay, and it will know.";
pub const MILEAGE_MISSING: &str = "Say in Workshop, How you are paid, what a mile or km costs, and it will know.";
pub const NOTHING_SORTED: &str = "Nothing sorted from them yet";
pub const HAUL_BY_HAUL: &str = "Haul by haul";
pub const GUESS_MARK: &str = "the mark is the guess, one in four";
pub const WHY: &str = "Why";
pub const OF_ALL_SORTED: &str = "of all pieces sorted";
pub const BY_WOOD: &str = "By wood";
pub const SAME_PILE: &str = "The same pile, haul by haul";
pub const NOT_NAMED: &str = "not named";
pub const ALL_SO_FAR: &str = "all so far";
pub const SUPPLIER: &str = "Supplier";

/// "Go: 3 trips left between $4 and $31".
pub fn short(verdict: &str, why: &str) -> String {
    format!("{verdict}: {why}")
}

/// "the one trip left $12".
pub fn one_trip(sum: &str) -> String {
    format!("the one trip left {sum}")
}

/// "3 trips left $12 each".
pub fn alike(trips: &str, sum: &str) -> String {
    format!("{trips} trips left {sum} each")
}

/// "3 trips left between $4 and $31".
pub fn between(trips: &str, low: &str, high: &str) -> String {
    format!("{trips} trips left between {low} and {high}")
}

/// "most of 9 trips left between $4 and $31".
pub fn most_between(trips: &str, low: &str, high: &str) -> String {
    format!("most of {trips} trips left between {low} and {high}")
}

/// "most of 9 trips left $12".
pub fn most_alike(trips: &str, sum: &str) -> String {
    format!("most of {trips} trips left {sum}")
}

/// "On the average $12 a trip."
pub fn mean(sum: &str) -> String {
    format!("On the average {sum} a trip.")
}

/// "minutes cost most, $62 a trip".
pub fn minutes(sum: &str) -> String {
    format!("minutes cost most, {sum} a trip")
}

/// "the drive costs most, $17 a trip".
pub fn distance(sum: &str) -> String {
    format!("the drive costs most, {sum} a trip")
}

/// "gift and price cost most, $11 a trip".
pub fn gift(sum: &str) -> String {
    format!("gift and price cost most, {sum} a trip")
}

/// "rejects cost most, $24 a trip".
pub fn rejects(sum: &str) -> String {
    format!("rejects cost most, {sum} a trip")
}

/// "Not known: 80 % of the wood has no price. …"
pub fn no_price(share: &str) -> String {
    format!("{share} of the wood has no price. Name the wood, or say what boards cost in Workshop.")
}

/// A sentence of a clause: "Minutes cost most, $62 a trip."
pub fn sentence(clause: &str) -> String {
    if clause.is_empty() { String::new() } else { begin_large(clause) + "." }
}

/// "12 pieces are in no figure: their size or price is not known."
pub fn left_out(n: u32, pieces: &str) -> String {
    if n == 1 {
        format!("{pieces} is in no figure: its size or price is not known.")
    } else {
        format!("{pieces} are in no figure: their size or price is not known.")
    }
}

/// "1 haul is in no figure: its drive has no rate."
pub fn unpriced(n: u32, written: &str) -> String {
    if n == 1 {
        format!("{written} haul is in no figure: its drive has no rate.")
    } else {
        format!("{written} hauls are in no figure: their drives have no rate.")
    }
}

/// "Of 2 hauls the distance or the minutes at the wheel were never said: they count as nothing."
pub fn half_said(n: u32, written: &str) -> String {
    let hauls = if n == 1 { "haul" } else { "hauls" };
    format!("Of {written} {hauls} the distance or the minutes at the wheel were never said: they count as nothing.")
}

/// "5 of 20".
pub fn of(rejected: &str, sorted: &str) -> String {
    format!("{rejected} of {sorted}")
}

/// "Rejects by haul: Tue 3 March 25 %, …", for a reader.
pub fn said(name: &str, figure: &str) -> String {
    format!("{name}: {figure}")
}
