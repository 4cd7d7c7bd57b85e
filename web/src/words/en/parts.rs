//! English: what the parts themselves say, mostly to a screen reader.

pub const PLACES: &str = "Places";
pub const COUNT: &str = "Count";
pub const BENCH: &str = "Bench";
pub const PRICE: &str = "Price";
pub const JOBS: &str = "Jobs";
pub const WORKSHOP: &str = "Workshop";

pub const RUNNING: &str = "Running";
pub const PAD: &str = "Number pad";
pub const FRACTIONS: &str = "Fractions of an inch";
pub const HALF_OF_DAY: &str = "Before or after noon";
pub const AM: &str = "am";
pub const PM: &str = "pm";
pub const RUB_OUT: &str = "Rub out the last figure";
pub const BELOW_NOTHING: &str = "below zero";
pub const POINT: &str = "Decimal point";
pub const COMMA: &str = "Decimal comma";

pub const WHY: &str = "Why";
pub const SAFE: &str = "Safe";
pub const TO_DO: &str = "To do";

/// A fraction of an inch, said: "1 half", "13 sixteenths".
pub fn fraction(over: u32, under: u32) -> String {
    let part = match under {
        2 => "half",
        3 => "third",
        4 => "quarter",
        8 => "eighth",
        16 => "sixteenth",
        32 => "thirty-second",
        64 => "sixty-fourth",
        _ => return format!("{over} over {under}"),
    };
    match (over, part) {
        (1, _) => format!("1 {part}"),
        (_, "half") => format!("{over} halves"),
        _ => format!("{over} {part}s"),
    }
}

/// The fraction after a whole number: "and 13 sixteenths".
pub fn and_fraction(over: u32, under: u32) -> String {
    format!("and {}", fraction(over, under))
}

#[cfg(test)]
mod tests {
    #[test]
    fn fractions_are_said_as_at_the_saw() {
        for (over, under, said) in
            [(1, 2, "1 half"), (3, 2, "3 halves"), (13, 16, "13 sixteenths"), (1, 4, "1 quarter"), (3, 7, "3 over 7")]
        {
            assert_eq!(super::fraction(over, under), said);
        }
    }
}
