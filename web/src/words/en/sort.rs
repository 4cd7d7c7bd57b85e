//! English: sorting a pile, and what becomes of its rejects.
use fivebar_core::quantity::Listed;

pub const START: &str = "Start sorting";
pub const HOW_MANY: &str = "How many with each tap?";
pub const REJECTS: &str = "Rejects";
pub const GOOD_AFTER_ALL: &str = "Good after all";
pub const TO_JIGS: &str = "To jigs";
pub const BURNT: &str = "Burnt";
pub const NOTHING_SORTED: &str = "Nothing sorted yet";
pub const ALL_SORTED: &str = "All sorted";
pub const GOOD_IS_BAD: &str = "A good one turned out bad";
pub const TAP_WHY: &str = "Tap why it is rejected: there is one good piece fewer then.";
pub const HAUL_SORTED: &str = "Nothing of this haul is left to sort.";
pub const NO_REJECTS: &str = "Nothing of this pile was rejected.";
pub const ALL_GONE: &str = "all gone";

/// "Sort, Wed 4 March".
pub fn on_day(sort: &str, day: &str) -> String {
    format!("{sort}, {day}")
}

/// "supplier: Stair works".
pub fn from(supplier: &str) -> String {
    format!("supplier: {supplier}")
}

/// "Next: Ash squares".
pub fn next(pile: &str) -> String {
    format!("Next: {pile}")
}

pub const MORE_THERE: &str = "There are more";
pub const MORE_THERE_UNDER: &str = "count the pile again";

/// "The last tap took 4: no more were counted."
pub fn took_only(n: u32, written: &str) -> String {
    let were = if n == 1 { "no other was" } else { "no more were" };
    format!("The last tap took {written}: {were} counted.")
}

/// "5 of these are in Stool. A bad one is put back from it and rejected."
pub fn in_job(n: u32, written: &str, job: &str) -> String {
    format!("{written} of these {} in {job}. A bad one is put back from it and rejected.", if n == 1 { "is" } else { "are" })
}

/// "5 of these are in 2 jobs: put a bad one back on the page of its job first."
pub fn in_jobs(written: &str, jobs: usize) -> String {
    format!("{written} of these are in {jobs} jobs: put a bad one back on the page of its job first.")
}

/// "2 missing since the rack was walked round."
pub fn missing(n: &str) -> String {
    format!("{n} missing since the rack was walked round.")
}

/// "38 to sort".
pub fn to_sort(n: &str) -> String {
    format!("{n} to sort")
}

/// "Rejects: 8".
pub fn rejects(n: &str) -> String {
    format!("Rejects: {n}")
}

/// "Take back 1: to jigs".
pub fn take_back(n: &str, to: &str) -> String {
    format!("Take back {n}: {to}")
}

/// "40 pieces, 30 good, 10 rejected": as far as it is sorted.
pub fn so_far(pieces: &str, good: &str, rejected: Option<&str>) -> String {
    format!("{pieces}, {good} good, {} rejected", rejected.unwrap_or("none"))
}

/// "16 rejected, 4 of them gone".
pub fn rejected(n: &str, gone: Option<&str>) -> String {
    gone.map_or_else(|| format!("{n} rejected"), |gone| format!("{n} rejected, {gone} of them gone"))
}

/// "5 of 8 still there".
pub fn still_there(lying: &str, rejected: &str) -> String {
    format!("{lying} of {rejected} still there")
}

/// "Gone: 3 burnt, 1 to jigs."
pub fn gone(parts: &[(String, String)]) -> String {
    let parts: Vec<String> = parts.iter().map(|(n, to)| format!("{n} {to}")).listed();
    format!("Gone: {}.", parts.join(", "))
}

/// Where a reject went, by its key.
pub fn went(to: &str) -> String {
    match to {
        "jigs" => "to jigs".to_owned(),
        other => other.replace('-', " "),
    }
}
