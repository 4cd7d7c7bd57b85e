//! English: the page of one pile.

use super::common::length_unit;
use fivebar_core::quantity::Units;

pub const MORE: &str = "More";
pub const MORE_UNDER: &str = "need, weight";
pub const TAKE: &str = "Take";
pub const MAYBE: &str = "Maybe";
pub const LEAVE: &str = "Leave";
/// On a tile, where there is room for one word.
pub const MAYBE_TILE: &str = "maybe";
pub const LEAVE_TILE: &str = "leave";
pub const NOTHING_TO_JUDGE: &str = "No piece of it is counted yet.";
pub const NOT_JUDGED: &str = "Say its wood and its length, and this says whether to take it.";

pub const NEED: &str = "What you need of it";
pub const NEED_MORE: &str = "I need some of this pile";
pub const NEED_UNDER: &str = "how many, for which part";
pub const COUNT_IT: &str = "Count it";
pub const KNOW_IT: &str = "Its size and moisture";
pub const BY_LAYERS: &str = "By layers";
pub const BY_LAYERS_UNDER: &str = "so many in each";
pub const BY_WEIGHT: &str = "By weight";
pub const BY_WEIGHT_UNDER: &str = "a few, then all";
pub const AGAIN_UNDER: &str = "and say why";
pub const MEASURE: &str = "Measure a piece";
pub const MOISTURE: &str = "Moisture";
pub const NONE_MEASURED: &str = "none measured";
pub const NOT_READ: &str = "not read";
pub const SIZE_MISSING: &str = "size missing";

pub const HOW_MANY_NEEDED: &str = "I need";
pub const ONE_PIECE_GIVES: &str = "One piece gives";
pub const ONE_PART_TAKES: &str = "One part takes";
pub const PARTS: &str = "parts";
pub const PIECES: &str = "pieces";
/// `3 more`, of what an earlier pile did not come to.
pub fn still_missing(n: &str) -> String {
    format!("{n} still missing")
}

pub const FOR_WHAT: &str = "For which part?";
pub const PIECES_ALONE: &str = "just pieces";
pub const OTHER_PART: &str = "other";
pub const PART_NAME: &str = "The part’s name";
pub const NONE_TAKES_AWAY: &str = "0 takes it away.";

pub const LAYERS: &str = "Layers";
pub const IN_EACH: &str = "In each";
pub const REST: &str = "The rest";

pub const SAMPLE: &str = "First pieces";
pub const SAMPLE_WEIGHS: &str = "They weigh, bare";
pub const ALL_WEIGHS: &str = "All weighs";
pub const TOGETHER: &str = "together";
pub const ONE_BY_ONE: &str = "one by one";
pub const FIRST_PIECES: &str = "The first pieces";
pub const THIS_ONE: &str = "This one";
pub const NEXT_ONE: &str = "And the next";
pub const HOW_SINGLY: &str = "Weigh five or more one by one: so it is known how much they differ. Then all of them.";
pub const TARE: &str = "Box or strap";

pub const MEASURED_FIRST: &str = "Leave out what you did not measure.";
pub const USE_MEAN: &str = "Use the mean of each side as the size";

pub const WET: &str = "Wet";
pub const NOT_WET: &str = "Not wet";
pub const WET_UNDER: &str = "by eye or hand";
pub const METER: &str = "The meter reads";

pub const THERE_ARE: &str = "There are";
pub const AGAIN_BECAUSE: &str = "Count again, because";
pub const REASONS: [&str; 4] = ["miscounted", LEFT_THERE, "some fell out", "someone took some"];
pub const LEFT_THERE: &str = "left there";
pub const OTHER_REASON: &str = "other";
pub const REASON: &str = "The reason";
pub const TO_PILES: &str = "All piles";

pub const BY_GUESS: &str = "from a guess: one in four rejected";

/// "± 9", said so that a reader hears it too.
pub fn off(n: &str) -> String {
    format!("± {n}")
}

/// "counted by weight: from 109 to 127".
pub fn weighed_between(least: &str, most: &str) -> String {
    format!("counted by weight: from {least} to {most}")
}

/// "29 good, 9 rejected".
pub fn sorted(good: &str, rejected: &str) -> String {
    format!("{good} sorted good, {rejected} rejected")
}

/// "9.5 board feet, ± 5 %".
pub fn volume(volume: &str, off: &str) -> String {
    format!("{volume}, ± {off} %")
}

/// "82 lb, as weighed", "84 lb by what was weighed, ± 3 %".
pub fn as_weighed(mass: &str, off: Option<&str>) -> String {
    off.map_or_else(|| format!("{mass}, as weighed"), |off| format!("{mass} by those that were weighed, ± {off} %"))
}

/// "from 3 hauls of The stair works".
pub fn by_supplier(n: u32, hauls: &str, supplier: Option<&str>) -> String {
    let of = supplier.unwrap_or("this supplier");
    if n == 1 { format!("from {hauls} haul of {of}") } else { format!("from {hauls} hauls of {of}") }
}

/// "under 8 in, your shortest part".
pub fn under_part(length: &str) -> String {
    format!("under {length}, your shortest part")
}

/// "under 12 in, the minimum you set for a machine".
pub fn under_machine(length: &str) -> String {
    format!("under {length}, the minimum you set for a machine")
}

/// "its short pieces are under 12 in, …".
pub fn short_ones(under: &str) -> String {
    format!("its short pieces are {under}")
}

/// "a piece takes $0.12 more of your time than it saves".
pub fn costs_more(sum: &str) -> String {
    format!("a piece costs {sum} more in your time than it replaces")
}

/// "a piece leaves $0.43 after its own minutes".
pub fn leaves(sum: &str) -> String {
    format!("a piece leaves {sum} after its own minutes")
}

/// "12 of 20 of this wood from them were rejects".
pub fn rejects(rejected: &str, sorted: &str) -> String {
    format!("{rejected} of {sorted} of this wood from them were rejects")
}

pub const WOOD_UNKNOWN: &str = "nobody knows the wood, so it replaces nothing";
pub const MARKED_WET: &str = "it is wet";
pub const NOTHING_AGAINST: &str = "nothing you wrote down speaks against it";

/// "the meter read 31 %, over 20 %".
pub fn too_wet(read: &str, limit: &str) -> String {
    format!("the meter read {read} %, over {limit} %")
}

/// "the rack holds 22 like it, and you need 22".
pub fn enough_on_rack(pieces: &str, needed: &str) -> String {
    format!("the rack holds {pieces} like it, and you need {needed}")
}

/// "22 like it lie unused for 31 weeks"; "1 like it lies unused for 31 weeks".
pub fn lies_unused(pieces: &str, one: bool, weeks: &str) -> String {
    format!("{pieces} like it {} unused for {weeks} weeks", if one { "lies" } else { "lie" })
}

/// "Shorter than the minimum you set for the jointer, 12 in. Your machine’s manual decides."
pub fn shorter(machine: &str, least: &str) -> String {
    format!("Shorter than the minimum you set for the {machine}, {least}. Your machine’s manual decides.")
}

/// "with the 30 counted before, 83".
pub fn with_before(before: &str, all: &str) -> String {
    format!("with the {before} counted before, {all}")
}

/// What goes on the scale: a pile that was begun by hand is weighed without what was counted.
pub fn how_to_weigh(begun: bool) -> String {
    let rest = if begun { " Leave out what is counted already." } else { "" };
    format!("Weigh five or more by themselves, put them back, then weigh all of them.{rest}")
}

/// "Put right: 118 counted by weight".
pub fn put_right(what: &str) -> String {
    format!("Put right: {what}")
}

/// "about 118 pieces, from 109 to 127".
pub fn about(pieces: &str, least: &str, most: &str) -> String {
    format!("about {pieces}, from {least} to {most}")
}

/// "single pieces are taken to differ by 10 %: cut to one size".
pub fn spread(percent: &str, band: bool) -> String {
    let kind = if band { "a band of lengths" } else { "cut to one size" };
    format!("single pieces are taken to differ by {percent} %: {kind}, a guess")
}

/// "Measure 9 more, and the volume is off by 5 % at most."
pub fn to_measure(n: &str) -> String {
    format!("Measure {n} more, and the volume is off by 5 % at most.")
}

/// "single pieces differ by 14 %, by 8 of them".
pub fn spread_found(percent: &str, n: &str) -> String {
    format!("single pieces differ by {percent} %, by {n} of them")
}

/// "5 pieces so far; a tap takes one out".
pub fn singles(n: &str) -> String {
    format!("{n} so far. A tap takes one out.")
}

/// "3 measured".
pub fn measured(n: &str) -> String {
    format!("{n} measured")
}

/// "Length 20 in, from 15 to 25", "Width 2 in, all alike".
pub fn mean(side: &str, mean: &str, ends: Option<(&str, &str)>, units: Units) -> String {
    let unit = length_unit(units);
    match ends {
        Some((from, to)) if from == to => format!("{side} {mean} {unit}, all alike"),
        Some((from, to)) => format!("{side} {mean} {unit}, from {from} to {to}"),
        None => format!("{side} {mean} {unit}, one piece"),
    }
}

/// "14.5 %, Tue 3 March".
pub fn read_on(moisture: &str, day: &str) -> String {
    format!("{moisture}, {day}")
}

/// "14.5 %, wet".
pub fn and_wet(percent: Option<&str>) -> String {
    percent.map_or_else(|| "wet".to_owned(), |percent| format!("{percent}, wet"))
}
