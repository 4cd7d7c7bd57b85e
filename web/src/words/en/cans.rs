//! English: cans and packs that several jobs use.

use fivebar_core::money::pack::Measure;

pub const SOME_OF: &str = "Some of a can that is open";
pub const ANOTHER: &str = "Of another pack";
pub const REST: &str = "What is left of it";
pub const ONCE: &str = "Not counted";
pub const COUNT_REST: &str = "Keep count";
pub const KEEPS_UNDER: &str = "The day above is the day on its lid; what is used is of today. Used may stay empty: nothing of it yet.";
pub const OPEN_CANS: &str = "Open cans and packs";
pub const USED_UP: &str = "Used up";
pub const IT_IS_EMPTY: &str = "It is empty";
pub const OF_CANS: &str = "rest of cans";
pub const OPEN_ONE: &str = "Open a can or pack";
pub const OPEN_UNDER: &str = "Jobs are charged for what they use of it; what is left once it is empty, or a year old, is a workshop cost.";
pub const NAME: &str = "What stands on the can";
pub const KIND: &str = "What it is";
pub const WHAT_IS_IT: &str = "Not written yet: say what it is.";

/// "120.00 for a litre? The same key once more takes it."
pub fn is_it_so(price: &str, of: Measure) -> String {
    let of = match of {
        Measure::Litre => "a litre",
        Measure::Quart => "a quart",
        Measure::Kilogram => "a kilogram",
        Measure::Pound => "a pound",
        Measure::Metre => "a metre",
    };
    format!("{price} for {of}? The same key once more takes it.")
}

pub const HOLDS: &str = "It holds";
pub const COST: &str = "Cost";
pub const LID: &str = "The day on its lid is the day above.";
pub const AMOUNT: &str = "How much";
pub const PART: &str = "Part of a full one";
pub const COMES_BACK: &str = "What came back";
pub const MONEY_BACK: &str = "Money";
pub const BACK_IN_CAN: &str = "Back in the can";
pub const USED: &str = "Used";
pub const AGED: &str = "a year open, it costs jobs nothing more";

/// A unit by its key.
pub fn unit(key: &str) -> String {
    key.replace('-', " ")
}

/// "4 back in the can".
pub fn back(amount: &str) -> String {
    format!("{amount} back in the can")
}

/// "9.5 fl oz put back twice: strike one of them on its job".
pub fn twice(amount: &str, of: &str) -> String {
    format!("{amount} {} put back twice: strike one of them on its job", unit(of))
}

/// "22.5 fl oz left".
pub fn left(left: &str, of: &str) -> String {
    format!("{left} {} left", unit(of))
}

/// "under a month open", "3 months open".
pub fn age(months: u32) -> String {
    match months {
        0 => "under a month open".into(),
        1 => "1 month open".into(),
        12.. => AGED.into(),
        months => format!("{months} months open"),
    }
}

/// "1 can or pack", "12 cans and packs".
pub fn used_up(n: usize) -> String {
    if n == 1 { "1 can or pack".into() } else { format!("{n} cans and packs") }
}

/// "32 fl oz", "32 fl oz, used up Fri 22 May".
pub fn held(holds: &str, of: &str, until: Option<&str>) -> String {
    let all = format!("{holds} {}", unit(of));
    until.map_or(all.clone(), |day| format!("{all}, used up {day}"))
}

/// "22.5 of 32 fl oz left, 3 months open".
pub fn stands((left, holds): (&str, &str), of: &str, months: u32) -> String {
    format!("{left} of {holds} {} left, {}", unit(of), age(months))
}
