//! English: what plans lack and is looked for at the next yard.

use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{begin_large, begin_small};

pub const LOOK_FOR_IT: &str = "Look for it at the next yard";
/// What is looked for already is not what this plan lacks.
pub const LOOK_FOR_THIS: &str = "Look for this instead";
pub const LOOKED_FOR: &str = "Looked for at the next yard:";
pub const LOOK_NO_MORE: &str = "Look for it no more";
pub const TITLE: &str = "What plans lack";
pub const BEFORE_YOU_GO: &str = "Look for";
pub const WHICH_DO: &str = "Piles here that do. Tap one that does all the same, or does not.";
pub const PLAN_AGAIN_THEN: &str = "Plan again with what comes home: whether so many do was not found.";
pub const UNSORTED_AND_RACK: &str =
    "What lies on the rack is not in these figures: a plan counts on it already, and where several do it counts once.";
pub const OR: &str = "or";
pub const NONE_HERE: &str = "none here would do yet";

/// "3 of European oak, 40 × 150 × 365 mm or larger".
pub fn piece(n: &str, least: bool, wood: Option<&str>, size: &str) -> String {
    let n = if least { format!("at least {n}") } else { n.to_owned() };
    let wood = wood.map_or("any wood".to_owned(), begin_small);
    format!("{n} of {wood}, {size} or larger")
}

/// "7 here would do".
pub fn here(n: &str) -> String {
    format!("{n} here would do")
}

/// "Bench: 5 more and it is likely".
pub fn of(job: &str, say: &str) -> String {
    format!("{job}: {}", begin_small(say))
}

/// "Bench: enough is here".
pub fn enough(job: &str) -> String {
    format!("{job}: enough is here")
}

/// "Bench: too many to reckon"; why stands on its card.
pub fn not_reckoned(job: &str) -> String {
    format!("{job}: too many to reckon")
}

/// "3 good ones are wanted".
pub fn wanted(n: &str, one: bool) -> String {
    if one { format!("{n} good one is wanted") } else { format!("{n} good ones are wanted") }
}

/// "Table looks for such pieces too, and they are in the figure."
pub fn with(others: &[String]) -> String {
    let looks = if others.len() == 1 { "looks" } else { "look" };
    format!("{} {looks} for such pieces too: the figure is of all.", others.join(", "))
}

/// "and 2 more".
pub fn and_more(n: &str) -> String {
    format!("and {n} more to look for")
}

/// "Then it is 8 rows."
pub fn makes(shape: Shape, n: &str, one: bool) -> String {
    let what = match (shape, one) {
        (Shape::Rows, true) => "row",
        (Shape::Rows, false) => "rows",
        (_, true) => "piece of the job",
        (_, false) => "pieces of the job",
    };
    format!("Then it is {n} {what}.")
}

/// "A top in rows".
pub fn heading(job: &str, what: &str) -> String {
    format!("{job}, {}", begin_small(what))
}

/// Several, of which any one does, or all are wanted.
pub fn listed(pieces: &[String], any: bool) -> String {
    begin_large(&pieces.join(if any { "; or " } else { "; and " }))
}

/// "D (Beech boards, 50 × 50 × 2,000 mm)".
pub fn letter_and_name(letter: &str, named: &str) -> String {
    format!("{letter} ({named})")
}

/// Of boards to buy of which no limit was said.
pub const ANY_NUMBER: &str = "any number";

/// "3 piles, 64 pieces, and boards to buy".
pub fn and_boards_to_buy(in_use: &str) -> String {
    format!("{in_use}, and boards to buy")
}
