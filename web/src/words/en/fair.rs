//! English: a fair or a market.

use fivebar_core::sheet::fair::Lacks;

pub const A_FAIR: &str = "A fair or a market";
pub const NOTHING_TO_TAKE: &str = "Nothing is for sale yet.";
pub const NOTHING_UNDER: &str = "A stall is reckoned by the price of a piece: tag one first.";
pub const UNDER: &str = "How many cover the stall, by what you get of one and what it cost. Nothing of it is written down.";
pub const STALL: &str = "Stall";
pub const DISTANCE: &str = "There and back";
pub const HOURS: &str = "Hours there";
pub const DRIVE: &str = "Drive";
pub const HOURS_AT_LOWEST: &str = "Hours at your lowest pay";
pub const NO_LOWEST: &str = "not said: not covered";
pub const RECKON: &str = "How many cover it";
pub const AGAIN: &str = "Other figures";

/// What a stall can't be reckoned without.
pub fn lacks(lacks: Lacks) -> &'static str {
    match lacks {
        Lacks::Price => "Not known: it has no price yet.",
        Lacks::Cost => "Not known: some of what it cost is lacking.",
        Lacks::Both => "Not known: it needs a price, and what it cost.",
    }
}

/// "3 sold cover the stall.", "3 would cover the stall, and you have 2."
pub fn covers(n: u32, written: &str, (free, there): (u32, &str)) -> String {
    match n {
        0 => "Nothing has to be sold: it costs nothing.".into(),
        n if free < n => format!("{written} would cover the stall, and you have {there}."),
        1 => "1 sold covers the stall.".into(),
        _ => format!("{written} sold cover the stall."),
    }
}

/// "Of 145 for one you get 133.57; it cost 12.51."
pub fn one_leaves(ask: &str, you_get: &str, cost: &str) -> String {
    format!("Of {ask} for one you get {you_get}; it cost {cost}.")
}

/// "7 sold".
pub fn sold(n: &str) -> String {
    format!("{n} sold")
}

/// "$18.20 an hour there, $12.37 with the making".
pub fn an_hour(there: &str, with_making: Option<&str>) -> String {
    match with_making {
        Some(with) => format!("{there} an hour there, {with} with the making"),
        None => format!("{there} an hour there; the making is not counted"),
    }
}

/// "Sat 18 April: 4 of 5 sold."
pub fn earlier(day: &str, sold: &str, there: &str) -> String {
    format!("{day}: {sold} of {there} sold.")
}
