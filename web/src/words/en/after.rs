//! English: what a haul came to, once it is sorted.

use fivebar_core::quantity::Units;
use fivebar_core::sheet::after::Lacking;

pub const AFTER: &str = "What it came to";
pub const A_GOOD_PIECE: &str = "A good piece";
pub const NOT_KNOWN: &str = "not known";
pub const TIMBER_YARD: &str = "Against the timber yard";

/// "A usable board foot".
pub fn measure(units: Units) -> &'static str {
    match units {
        Units::Inch => "A usable board foot",
        Units::Metric => "A usable litre",
    }
}

/// "$0.89 and 4 min".
pub fn both(money: &str, minutes: &str) -> String {
    format!("{money} and {minutes}")
}

/// "Beat it by $15".
pub fn beat(sum: &str) -> String {
    format!("beat it by {sum}")
}

/// "$12 dearer".
pub fn dearer(sum: &str) -> String {
    format!("{sum} dearer")
}

pub const EVEN: &str = "came out even";
pub const UNDER: &str =
    "Equal boards, less what was spent, your time at the pay you want, and 2 minutes a board foot of milling still ahead.";

/// "3 pieces are not sorted yet and count as good."
pub fn unsorted(n: u32, pieces: &str) -> String {
    if n == 1 {
        format!("{pieces} is not sorted yet and counts as good.")
    } else {
        format!("{pieces} are not sorted yet and count as good.")
    }
}

/// What to say so that it is known.
pub fn lacking(lacking: Lacking) -> &'static str {
    match lacking {
        Lacking::Distance => "Say how far it was, there and back.",
        Lacking::Mileage => "Say in Workshop, How you are paid, what a mile or km costs.",
        Lacking::Wheel => "Say the minutes at the wheel.",
        Lacking::InQuestion => "Settle on Bench what may be a stop that was forgotten.",
        Lacking::Sorting => "Sorting was not clocked: write its minutes down at the Bench.",
        Lacking::Size => "Size the piles that have good pieces.",
        Lacking::Pay => "Say in Workshop, Your rate, what an hour should pay.",
        Lacking::BoardPrice => "Say what boards cost in Workshop.",
    }
}
