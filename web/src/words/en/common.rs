//! English: what every place says.

use fivebar_core::quantity::{Units, begin_large};

pub const TAKE_BACK: &str = "Take back";
pub const PUT_BACK: &str = "Do it again";
pub const TAKEN_BACK: &str = "Taken back";
pub const NOTHING_TO_TAKE_BACK: &str = "Nothing to take back";
pub const STOPPED: &str = "The app stopped after an error of its own. All that was shown as saved is safe.";
pub const OPEN_AGAIN: &str = "Open it again";
pub const DONE: &str = "Done";
pub const NOT_NOW: &str = "Not now";
pub const STOP: &str = "Stop";
pub const TRY_AGAIN: &str = "Try again";
pub const UNDERSTOOD: &str = "All right";
pub const KEEP_A_COPY: &str = "Keep a copy";
pub const ON_THIS_PHONE: &str = "on this phone only";
pub const OPENING: &str = "Opening the book.";
pub const OPENING_COUNTS: &str = "Each tap here is a piece already.";
pub const FIRST_START: &str = "first start";
pub const EXAMPLE: &str = "Example, in no total";
pub const BACK_TO_YOURS: &str = "Back to yours";
pub const NEW_VERSION: &str = "A new version is ready. It starts again where you are.";
pub const USE_IT: &str = "Use it now";
pub const OTHER: &str = "other";

/// "saved 09:42".
pub fn saved(clock: &str) -> String {
    format!("saved {clock}")
}

/// "3 not saved".
pub fn not_saved(n: &str) -> String {
    format!("{n} not saved")
}

/// "1 entry is not saved."
pub fn entries_not_saved(n: usize, written: &str) -> String {
    if n == 1 { format!("{written} entry is not saved.") } else { format!("{written} entries are not saved.") }
}

pub const NOT_YET_SAVED: &str = "not saved yet";

/// "1 piece", "12 pieces".
pub fn pieces(n: u32, written: &str) -> String {
    if n == 1 { format!("{written} piece") } else { format!("{written} pieces") }
}

/// The unit of a piece's sides.
pub fn length_unit(units: Units) -> &'static str {
    match units {
        Units::Inch => "in",
        Units::Metric => "mm",
    }
}

pub fn volume_unit(units: Units) -> &'static str {
    match units {
        Units::Inch => "board feet",
        Units::Metric => "litres",
    }
}

pub fn mass_unit(units: Units) -> &'static str {
    match units {
        Units::Inch => "lb",
        Units::Metric => "kg",
    }
}

pub fn distance_unit(units: Units) -> &'static str {
    match units {
        Units::Inch => "mi",
        Units::Metric => "km",
    }
}

/// "new pile, 09:42".
pub fn of_when(what: &str, clock: &str) -> String {
    format!("{what}, {clock}")
}

/// "Cherry, B: a count".
pub fn of_pile(pile: &str, what: &str) -> String {
    format!("{pile}: {what}")
}

/// "struck: Shop stools".
pub fn struck(what: &str) -> String {
    format!("struck: {what}")
}

/// "taken back: start of sand, 09:42".
pub fn taken_back(what: &str) -> String {
    format!("taken back: {what}")
}

pub const NOTED: &str = "Noted";

/// A sentence that ends in what is written by others, such as a date: some end in a point themselves, and there is no second one.
pub fn sentence(mut said: String) -> String {
    if !said.ends_with('.') {
        said.push('.');
    }
    said
}

/// "to hand over, for Bea"; after a whole sentence one of its own: "A payment is due by Fri 8 May. For Bea."
pub fn and_whom(state: &str, whom: &str) -> String {
    match state {
        "" => whom.to_owned(),
        said if said.ends_with('.') => sentence(format!("{said} {}", begin_large(whom))),
        said => format!("{said}, {whom}"),
    }
}

#[cfg(test)]
mod tests {
    use crate::words::en::{bench, dates, jobs, waiting};

    /// Some languages write a date, or am and pm, with a point at its end: the sentence has no second one.
    #[test]
    fn a_date_that_ends_in_a_point_ends_its_sentence() {
        let day = "Do., 16. Apr.";
        for said in [
            jobs::state_part(day),
            jobs::state_waits("9:42 a.m."),
            dates::waits_after(day, day),
            dates::ready_only_by(day),
            dates::late("glue", Some(day)),
            dates::waits_past("Fri", ("finish", day), Some(day)),
            dates::begin("glue", day, None),
            dates::begin("glue", day, Some(day)),
            dates::ready_by(day),
            dates::good_until(day, None),
            dates::good_until(day, Some(day)),
            dates::ready_by_if(day, day),
            dates::last_holds_no_more([day, day, day]),
            dates::given("320 to 395", day, None),
            dates::given("320 to 395", day, Some(day)),
            waiting::more_will_ask(0, "0", day),
            waiting::more_will_ask(1, "1", day),
            waiting::more_will_ask(6, "6", day),
            waiting::ask_until("145", day),
            bench::clock_said("9:42 a.m.", Some("9:50 a.m.")),
            dates::behind_others("8 h 24", [day, day]),
            dates::late_begun(("glue", "3 h"), Some(day)),
            dates::go_on("glue", day, Some(day)),
        ] {
            assert!(said.ends_with('.') && !said.contains(".."), "{said}");
        }
    }
}
