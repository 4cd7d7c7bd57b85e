//! English: what a plan weighs finished, and the glue it takes.

/// "Glue on 0.3 m², about 54 g or 50 ml."; of what is not cut yet "Glue for the rest on …".
pub fn glue(of: &str, area: &str, grams: &str, ml: &str) -> String {
    format!("Glue{of} on {area} m², about {grams} g or {ml} ml.")
}

pub fn glue_in_ounces(of: &str, area: &str, ounces: &str) -> String {
    format!("Glue{of} on {area} sq ft, about {ounces} fl oz.")
}

pub const FOR_THE_REST: &str = " for the rest";
/// The rests of parts, and the strips of these that are cut.
pub const WITH_CUT_STRIPS: &str = " for the rest and the strips that are cut";
pub const WITHOUT_CUT_STRIPS: &str = " for the rest, without the joints to strips that are cut,";
/// Rows that are fewer than were asked.
pub const AMONG_NEW_ROWS: &str = " for these rows, without those that are cut,";

/// Of a top of which rows are cut: " for all 9 rows".
pub fn for_all_rows(n: &str) -> String {
    format!(" for all {n} rows")
}

/// "all 9 rows weigh"
pub fn rows_weigh(n: &str) -> String {
    format!("all {n} rows weigh")
}

pub const IT_WEIGHS: &str = "it weighs";
pub const REST_WEIGHS: &str = "the rest, without what is cut already, weighs";

pub fn pieces_weigh(n: &str) -> String {
    format!("the {n} pieces together weigh")
}

/// "without leg it weighs": parts that the maker left out, and what is cut of them.
pub fn without(parts: &str, of: &str) -> String {
    format!("without {parts} {of}")
}

/// "Finished it weighs 4 kg."; "Finished the 3 pieces together weigh 12 kg."
pub fn weighs(of: &str, weight: &str, unit: &str, guessed: bool) -> String {
    format!("Finished {of} {weight} {unit}{}.", if guessed { ", by the heaviest plausible wood" } else { "" })
}
