//! The one sentence of looking back.

/// Which way a figure strayed from its plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strayed {
    Over,
    Under,
    AsPlanned,
}

/// The one sentence of looking back: what strayed, then what went as planned.
pub fn sentence(strayed: &[String], as_planned: &[&str]) -> String {
    let mut parts = strayed.to_vec();
    match as_planned {
        [] => {}
        [only] => parts.push(format!("{only} as planned")),
        [all @ .., last] => parts.push(format!("{} and {last} as planned", all.join(", "))),
    }
    let said = super::super::jobs::upper_first(&parts.join("; "));
    if said.is_empty() { said } else { format!("{said}.") }
}

/// "seven hours".
pub fn whole_hours(hours: &str, one: bool) -> String {
    format!("{hours} {}", if one { "hour" } else { "hours" })
}

/// "seven hours over", "1 h 20 over".
pub fn hours_strayed(strayed: Strayed, hours: &str) -> String {
    match strayed {
        Strayed::Over => format!("{hours} over"),
        Strayed::Under => format!("{hours} less than planned"),
        Strayed::AsPlanned => "hours as planned".into(),
    }
}

/// Small whole numbers in words, as a sentence begins with them.
pub fn number_word(n: i64) -> Option<&'static str> {
    let words = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];
    usize::try_from(n).ok().and_then(|n| words.get(n)).copied()
}

pub fn wood_strayed(strayed: Strayed) -> &'static str {
    match strayed {
        Strayed::Over => "less wood lost than thought",
        Strayed::Under => "more wood lost than thought",
        Strayed::AsPlanned => "wood as planned",
    }
}

pub fn price_strayed(strayed: Strayed) -> &'static str {
    match strayed {
        Strayed::Over => "sold over what was asked",
        Strayed::Under => "sold under what was asked",
        Strayed::AsPlanned => "price as planned",
    }
}

pub const WOOD_SMALL: &str = "wood";
pub const PRICE_SMALL: &str = "price";
pub const HOURS_SMALL: &str = "hours";
