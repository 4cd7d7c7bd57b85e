//! English: designs, and how many of one the wood gives.

use fivebar_core::quantity::begin_small;
use fivebar_core::sheet::outlook::Rejects;

pub const DESIGNS: &str = "Designs";
pub const NONE: &str = "No design yet.";
pub const HOW_KEPT: &str =
    "A job with parts is kept as a design under its Wood and plan. Then it is made again from here, or where a new job begins.";
pub const MAKE_AGAIN: &str = "Make again";
pub const NAME: &str = "Its name";
pub const RENAME: &str = "Rename";
pub const DROP: &str = "Drop it";
pub const CHANGE: &str = "To change it, make a job of it and keep that again under this name.";
pub const NO_PARTS: &str = "no parts";
pub const NO_OPERATIONS: &str = "no operations";

/// "4 × leg", by the maker's name for one.
pub fn part(n: &str, name: &str) -> String {
    format!("{n} × {name}")
}

/// "4 × leg, 2 × rail and 3 more".
pub fn parts_in_line(parts: &[String], more: usize, written: &str) -> String {
    let parts = parts.join(", ");
    if more == 0 { parts } else { format!("{parts} and {written} more") }
}

/// "sanding 40 min".
pub fn operation(op: &str, span: Option<&str>) -> String {
    span.map_or_else(|| begin_small(op), |span| format!("{} {span}", begin_small(op)))
}

/// "Keep again as Coffee table".
pub fn keep_again(name: &str) -> String {
    format!("Keep again as {name}")
}

// How many the wood gives
pub const WORKING: &str = "Working out how many the wood gives.";
pub const FAILED: &str = "How many the wood gives could not be worked out.";
pub const GIVES: &str = "What the wood gives";

/// "4 sure, 5 likely"; "5 sure"; "none sure, 2 likely"; "none likely".
pub fn sure_and_likely((sure, likely): (i64, i64), written: [&str; 2]) -> String {
    let [one, other] = written;
    match (sure, likely) {
        (_, ..=0) => "none likely".to_owned(),
        (..=0, _) => format!("none sure, {other} likely"),
        (sure, likely) if sure == likely => format!("{one} sure"),
        _ => format!("{one} sure, {other} likely"),
    }
}

pub fn all_sorted(n: &str) -> String {
    format!("{n}, all sorted")
}

/// "short of leg and rail stock"; where some can be made "short of leg stock for one more".
pub fn short_of(parts: &[String], more: bool) -> String {
    format!("short of {} stock{}", super::how::listed(parts), if more { " for one more" } else { "" })
}

/// "from the rack".
pub fn from_rack(gives: &str) -> String {
    format!("{gives} from the rack")
}

pub fn nothing_fits(part: &str) -> String {
    format!("none: no pieces fit the part {part}")
}

pub const RACK_EMPTY: &str = "none: the rack is empty";
/// Sticks of the very section need nothing over.
pub const NONE_FITS: &str = "none: nothing on the rack fits with what is over for planing; lengths from sticks may do without";

/// "7" where no more can come out; "at least 2, at most 4" of what was found and what is proven.
pub fn found((all, most): (i64, i64), written: [&str; 2]) -> String {
    let [one, other] = written;
    match all {
        _ if most <= all => one.to_owned(),
        ..=0 => format!("none was found yet, and at most {other} can be"),
        _ => format!("at least {one}, at most {other}"),
    }
}

/// How sure and likely are meant: how often it was played through, how far off the 95 may be, and what all good pieces give.
pub fn how(draws: &str, rejects: Rejects, off: &str, all: &str) -> [String; 2] {
    let by = match rejects {
        Rejects::Met => "the rejects met so far",
        Rejects::PartlyGuessed => {
            "the rejects met so far, and a guess for piles of which nothing like them was sorted yet: one in four rejected"
        }
        Rejects::Guessed => "a guess, as nothing like these piles was sorted yet: one in four rejected",
    };
    [
        format!(
            "Some pieces are not sorted yet. Sorting was played through {draws} times with {by}. \
             Sure: so many came out in 95 of 100 times, give or take {off}. Likely: in 80 of 100. \
             That share of rejects is not known for certain: how far it may be off counts too, so fewer are likely than by the share alone."
        ),
        format!("If every piece is good: {all}."),
    ]
}

/// Beside the keys of a job with such a plan.
pub const NOT_OF_PLANS: &str =
    "A design keeps parts and operations. A top in rows and a field of tiles are not kept in it: they are asked for in each job.";

/// How it was reckoned where nothing is left to chance.
pub const HOW_SORTED: &str = "Every piece is sorted, so nothing is left to chance. The plan says how to cut them.";

/// In so many draws more may be possible than the quick plan found.
pub fn open(n: &str) -> String {
    format!("In {n} of these a longer look might find more.")
}

pub const KEEP_DESIGN: &str = "Keep as a design";
pub const DESIGN_THERE: &str = "takes the place of the one there is";
pub const MAKE_FROM_DESIGN: &str = "Parts from a design";

/// "4 parts, 6 operations".
pub fn design_holds(parts: &str, one_part: bool, operations: &str, one: bool) -> String {
    format!("{parts} {}, {operations} {}", if one_part { "part" } else { "parts" }, if one { "operation" } else { "operations" })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_found_is_said_as_found_and_what_is_proven_as_proven() {
        let check = |all: i64, most: i64, wanted: &str| assert_eq!(found((all, most), [&all.to_string(), &most.to_string()]), wanted);
        check(7, 7, "7");
        check(0, 0, "0");
        check(2, 4, "at least 2, at most 4");
        check(0, 2, "none was found yet, and at most 2 can be");
    }
}
