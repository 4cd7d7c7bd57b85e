//! English: the van, the timber yard and what boards cost there, machines and what they take.

use super::common;
use fivebar_core::ledger::kind::money::Measure;
use fivebar_core::quantity::{Listed, Units};

pub const VAN: &str = "Van";
pub const OTHER_WOODS: &str = "other woods";
pub const PAYLOAD: &str = "load on its label";
pub const PERSON: &str = "a person";
pub const VAN_ASK: &str = "Say it once, and Count shows the load against it.";

pub const YARD: &str = "Timber yard";
pub const WAY: &str = "There and back";
pub const MINUTES: &str = "It takes";
pub const WAY_HINT: &str = "A haul that saves you this drive is worth more.";
pub const BOARDS_COST: &str = "What boards cost";
pub const ANY_WOOD: &str = "Any wood";
pub const PRICE_OF_WOOD: &str = "Price of one wood";
pub const PRICE: &str = "Price of boards";
pub const PRICE_SLOT: &str = "price";
pub const PRICES_UNDER: &str = "What your wood replaces is reckoned by these.";
pub const MEASURE: &str = "for each";
pub const WHICH_WOOD: &str = "Wood";

pub const MACHINES: &str = "Machines";
pub const MACHINE: &str = "A machine";
pub const NO_MACHINES: &str =
    "None yet. Set the least length each may be fed, from its manual, and short piles are named where you plan and work.";
pub const ADD_MACHINE: &str = "Add a machine";
pub const WHICH_MACHINE: &str = "Which machine?";
pub const OTHER_MACHINE: &str = "other";
pub const MACHINE_NAME: &str = "Your word for it";
pub const LEAST_LENGTH: &str = "least length";
pub const LEAST_WIDTH: &str = "width";
pub const LEAST_THICKNESS: &str = "thickness";
pub const MANUAL: &str = "From the machine’s manual, which decides. Width and thickness may stay empty.";
pub const NAMED_THERE: &str = "Piles shorter than these are named where you plan and work. Your machine’s manual decides.";
pub const TAKE_OFF: &str = "Take it off the list";
pub const SHORT_CAUTION: &str = "Shorter than the minimum you set. Your machine’s manual decides.";

/// A machine by its key in the book, as it stands in a sentence.
pub fn machine(key: &str, own: Option<&str>) -> String {
    own.map_or_else(|| key.replace('-', " "), str::to_owned)
}

/// "12 in long, 3⁄8 in thick".
pub fn least(length: Option<&str>, width: Option<&str>, thickness: Option<&str>) -> String {
    let said = |side: Option<&str>, word: &str| side.map(|side| format!("{side} {word}"));
    [said(length, "long"), said(width, "wide"), said(thickness, "thick")].into_iter().flatten().listed().join(", ")
}

/// What a side lacks, as a word.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lacks {
    Length,
    Width,
    Thickness,
}

impl Lacks {
    fn word(self) -> &'static str {
        match self {
            Lacks::Length => "shorter",
            Lacks::Width => "narrower",
            Lacks::Thickness => "thinner",
        }
    }
}

/// "shorter than the 12 in you set for the jointer".
pub fn lacks(lacks: Lacks, least: &str, machine: &str) -> String {
    format!("{} than the {least} you set for the {machine}", lacks.word())
}

/// "Cherry trims, 11 in, are shorter than the 12 in you set for the jointer. Your machine’s manual decides."
pub fn too_short(pile: &str, met: &str, lacks: &[String]) -> String {
    format!("{pile}, {met}, are {}. Your machine’s manual decides.", lacks.join(" and "))
}

/// What the payload is, and what a person weighs where the maker says nothing.
pub fn van_hint(person: &str) -> String {
    format!("As its door label or papers say, with nobody in it. A person weighs {person} until you say otherwise: our guess.")
}

/// "670 lb beside the driver".
pub fn beside_one(mass: &str) -> String {
    format!("{mass} beside the driver")
}

/// "20 mi, 1 h".
pub fn way(far: Option<&str>, span: Option<&str>) -> Option<String> {
    let said: Vec<&str> = [far, span].into_iter().flatten().listed();
    (!said.is_empty()).then(|| said.join(", "))
}

/// "a board foot".
pub fn each(per: Measure) -> &'static str {
    match per {
        Measure::BoardFoot => "a board foot",
        Measure::Litre => "a litre",
        Measure::CubicMetre => "a cubic metre",
    }
}

/// "$4.75 a board foot".
pub fn price(sum: &str, per: Measure) -> String {
    format!("{sum} {}", each(per))
}

/// The measures boards are sold by in these units.
pub fn measures(units: Units) -> [Measure; 2] {
    match units {
        Units::Inch => [Measure::BoardFoot, Measure::CubicMetre],
        Units::Metric => [Measure::Litre, Measure::CubicMetre],
    }
}

/// "20 mi".
pub fn distance(far: &str, units: Units) -> String {
    format!("{far} {}", common::distance_unit(units))
}
