//! What a price does not pay: your rate, the lowest pay, what was spent; and costs that nobody brings in.

/// "It is what you ask, but under your rate, which needs 150.": beside a yes.
pub fn but_under_rate(said: &str, sum: &str) -> String {
    but(said, &format!("under your rate, which needs {sum}."))
}

/// "It is what you ask, but under your lowest pay, which needs 76."
pub fn but_under_lowest(said: &str, sum: &str) -> String {
    but(said, &format!("under your lowest pay, which needs {sum}."))
}

fn but(said: &str, under: &str) -> String {
    if said.is_empty() { format!("But {under}") } else { format!("{}, but {under}", said.trim_end_matches('.')) }
}

pub const THE_TAG: &str = "The tag";
/// What is asked, before the buyer has spoken.
pub const THAT: &str = "That";

/// "The tag is under your rate: 293 pays it.", with tax where that comes on top.
pub fn under_rate(what: &str, sum: &str) -> String {
    format!("{what} is under your rate: {sum} pays it.")
}

/// "The tag is under your lowest pay: 76 pays it."
pub fn under_lowest(what: &str, sum: &str) -> String {
    format!("{what} is under your lowest pay: {sum} pays it.")
}

/// "The tag is under what you spent: 28 covers it."
pub fn under_costs(what: &str, sum: &str) -> String {
    format!("{what} is under what you spent: {sum} covers it.")
}

/// "293 with tax".
pub fn sum_with_tax(sum: &str) -> String {
    format!("{sum} with tax")
}

/// "12.63 of the costs are fees of what was handed back."
pub fn fees_lost(sum: &str) -> String {
    format!("{sum} of the costs are fees of what was handed back.")
}

/// "4.50 of 9.00": what the pieces on hand bear of it.
pub fn of_all(one: &str, all: &str) -> String {
    format!("{one} of {all}")
}

/// "the one that is left, fetched or brought", "all 3 that are left, fetched or brought".
pub fn of_those_left(n: u32, left: &str) -> String {
    if n == 1 { "the one that is left, fetched or brought".to_owned() } else { format!("all {left} that are left, fetched or brought") }
}

pub const OF_THOSE_AGREED: &str = "what is agreed and to be brought";
pub const OF_THOSE_GONE: &str = "those that are gone";

/// "16.08 and 1 h driven to deliver: in the costs of all 3 that are left, fetched or brought."
pub fn driven(what: &[String], of: &str) -> String {
    format!("{} driven to deliver: in the costs of {of}.", what.join(" and "))
}

/// "Tag it 50.00": what is asked came down under the tag.
pub fn tag_it(sum: &str) -> String {
    format!("Tag it {sum}")
}

/// "a buyer reads 64.20".
pub fn buyer_reads(tag: &str) -> String {
    format!("a buyer reads {tag}")
}
