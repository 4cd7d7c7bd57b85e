//! English: whether there is enough, and whether the trip pays.

use fivebar_core::quantity::Listed;
use fivebar_core::quantity::{begin_large, begin_small};

pub const ENOUGH: &str = "Enough?";
pub const WANTED_OF_IT: &str = "What you need of this haul";
pub const YOU_CAN_STOP: &str = "You can stop";
pub const NOT_FROM_HERE: &str = "Not from this supplier";
pub const LIKELY: &str = "likely";
/// Where nothing of theirs was ever sorted.
pub const LIKELY_BY_GUESS: &str = "a guess: likely";
pub const SURE: &str = "sure";
pub const READING: &str = "reading the book";
pub const BY_A_GUESS: &str = "Goes by a guess, one reject in four, until something is sorted.";
pub const DOES_IT_PAY: &str = "Does it pay?";
pub const THIS_TRIP: &str = "Does this trip pay?";
pub const REPLACES: &str = "Boards it replaces";
pub const SAVED_TRIP: &str = "Trip to the timber yard saved";
pub const THE_DRIVE: &str = "The drive";
pub const AS_LAST_TIME: &str = "as far as last time";
pub const NO_DRIVE: &str = "Without a drive: no trip was begun for this haul.";
pub const GIFT: &str = "Gift and price";
pub const MINUTES: &str = "Your minutes";
pub const SAVES: &str = "Saves";
pub const COSTS: &str = "Costs";
pub const AHEAD: &str = "Ahead";
pub const SHORT: &str = "Short";
pub const NOTHING_COUNTED: &str = "nothing is counted yet";
pub const COUNT_THE_YARD: &str = "Does it save a trip to the timber yard?";
pub const YES_COUNT_IT: &str = "Yes, count it";
pub const NO: &str = "No";
pub const YARD_UNKNOWN: &str = "Say how far the timber yard is";
pub const YARD_UNPRICED: &str = "Say what driving costs";
pub const SAY_PAY: &str = "What you want for an hour";
pub const SAY_PAY_UNDER: &str = "in Workshop, Your rate";
pub const SAY_DISTANCE: &str = "How far the drive is";
pub const SAY_DISTANCE_UNDER: &str = "both ways, on this haul";
pub const SAY_MILEAGE: &str = "What driving costs";
pub const SAY_MILEAGE_UNDER: &str = "in Workshop, How you are paid; 0 where it costs you nothing";
pub const SAY_PRICE: &str = "What equal boards cost";
pub const SAY_PRICE_UNDER: &str = "in Workshop";
pub const SAY_PILE: &str = "What is counted";
pub const SAY_PILE_UNDER: &str = "size and wood of a pile, under Name or size";
pub const THREE_IN_FOUR: &str = "a guess: three pieces in four are good";
pub const STILL_TO_SAY: &str = "It is worked out once this is said:";
pub const NOBODY_PAYS: &str = "Offcuts replace bought boards. What is left after the drive, gifts and your minutes is the gain.";
pub const UNKNOWN_REPLACES_NOTHING: &str = "Unknown wood replaces nothing.";
pub const HOW_IT_GOES_SORTED: &str =
    "The good pieces count. 0.45 of good offcuts and 0.70 of bought boards end up in a piece; milling takes 2 minutes a board foot.";
pub const HOW_IT_GOES: &str = "Of the pieces, those count that are good or expected to be. 0.45 of good offcuts and 0.70 of bought boards end up in a piece; sorting and milling take 3 minutes a board foot.";

/// "2 more and you are sure".
pub fn more_and_sure(n: &str) -> String {
    format!("{n} more and you are sure")
}

/// "9 more and it is likely".
pub fn more_and_likely(n: &str) -> String {
    format!("{n} more and it is likely")
}

/// "Legs: 2 more and you are sure".
pub fn of_part(part: &str, say: &str) -> String {
    format!("{}: {}", begin_large(part), begin_small(say))
}

/// "38, for 20 legs".
pub fn held_for(held: &str, wanted: &str) -> String {
    format!("{held}, for {wanted}")
}

/// "with 25 rails of the same pile".
pub fn with_others(others: &[String]) -> String {
    format!("with {} of the same pile", others.join(", "))
}

/// "Goes by 133 pieces of theirs that were sorted."
pub fn by_the_past(pieces: &str) -> String {
    format!("Goes by {pieces} of theirs that were sorted before.")
}

/// "Left out: 6 that were short, as no part is longer than these pieces, and 4 that were wet, as wood dries."
pub fn says_nothing(short: Option<&str>, wet: Option<&str>) -> Option<String> {
    let short = short.map(|n| format!("{n} that were short, as no part is longer than these pieces"));
    let wet = wet.map(|n| format!("{n} that were wet, as wood dries"));
    let all: Vec<String> = [short, wet].into_iter().flatten().listed();
    (!all.is_empty()).then(|| format!("Left out of the rejects: {}.", all.join("; ")))
}

/// "Trip pays, $13 ahead".
pub fn pays(sum: &str) -> String {
    format!("Trip pays, {sum} ahead")
}

/// "Pays, $13 ahead".
pub fn pays_short(sum: &str) -> String {
    format!("Pays, {sum} ahead")
}

/// "$12 short".
pub fn short(sum: &str) -> String {
    format!("{sum} short")
}

/// "saves $97, costs $84".
pub fn saves_costs(saves: &str, costs: &str) -> String {
    format!("saves {saves}, costs {costs}")
}

/// "saves $97, costs $84, without a drive".
pub fn without_a_drive(said: &str) -> String {
    format!("{said}, without a drive")
}

/// "9 more Ash legs evens it".
pub fn evens(n: &str, pile: &str) -> String {
    format!("{n} more of {pile} evens it")
}

pub const NEVER_EVENS: &str = "no pile evens it";
pub const NO_MORE_NEEDED: &str = "it pays as it is";

/// "3 figures to say first".
pub fn figures_first(n: usize, written: &str) -> String {
    if n == 1 { format!("{written} figure to say first") } else { format!("{written} figures to say first") }
}

/// "46 min at the wheel with the way home, 38 min at the bins, and 2 h 07 planned for sorting and milling".
pub fn minutes_of(wheel: &str, bins: &str, ahead: &str) -> String {
    format!("{wheel} at the wheel with the way home, {bins} at the bins, and {ahead} planned for sorting and milling")
}

/// The same once all is sorted by the clock.
pub fn minutes_sorted(wheel: &str, bins: &str, (sorting, ahead): (&str, &str)) -> String {
    format!("{wheel} at the wheel, {bins} at the bins, {sorting} sorting, and {ahead} planned for milling")
}

/// "12 pieces are in no figure: no size, or no price for their wood."
pub fn left_out(n: u32, pieces: &str) -> String {
    let are = if n == 1 { "is" } else { "are" };
    format!("{pieces} {are} in no figure: without a size, or without a price for their wood.")
}

/// "20 legs", "1 leg"; "20 × leg" where the name is said of one.
pub fn parts(written: &str, n: u32, part: &str) -> String {
    if n == 1 || part.ends_with('s') { format!("{written} {part}") } else { format!("{written} × {part}") }
}

pub const ALL_KNOWN: &str = "All of it is sorted: what is good is known.";
pub const THIS_PILE: &str = "This pile, or what you need of it";

pub const NEEDED: &str = "needed";

/// "36 good, 10 needed".
pub fn good_of(good: &str, needed: &str) -> String {
    format!("{good} good, {needed} needed")
}

/// "for 20 legs".
pub fn for_parts(parts: &str) -> String {
    format!("for {parts}")
}
