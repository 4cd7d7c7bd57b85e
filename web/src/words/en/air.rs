//! English: woods and air: what air makes of wood, how wood moves, what is glued together, the maker's own woods.

use fivebar_core::quantity::Units;

pub const WOODS_AND_AIR: &str = "Woods and air";
pub const ROW_UNDER: &str = "air, movement, your own";

pub const AIR: &str = "Air";
pub const COMES_HERE: [&str; 2] = ["is where wood", "comes to rest here"];
pub const NO_AIR: &str = "Read a thermometer and a hygrometer where the wood lies.";
pub const NO_AIR_UNDER: &str = "Wood comes to rest in weeks, thick wood in months.";
pub const WHERE: &str = "Where, if you like";
pub const AIR_NOW: &str = "Read now";
pub const WARM: &str = "warm";
pub const DAMP: &str = "damp";
pub const WRITE_DOWN: &str = "Write it down";
pub const DRY_SEASON: &str = "dry season";
pub const DAMP_SEASON: &str = "damp season";
pub const HERE: &str = "here";

pub const MOVEMENT: &str = "Movement";
pub const MOVEMENT_UNDER: &str = "how far a width moves";
pub const FLAT: &str = "flat-sawn";
pub const QUARTER: &str = "quarter-sawn";
pub const WOOD: &str = "Wood";
pub const CHOOSE_WOOD: &str = "choose one";
pub const WIDTH: &str = "width";
pub const DRY: &str = "dry";
pub const DAMPEST: &str = "damp";
pub const NOW: &str = "now";
pub const NO_WIDTH: &str = "Type a width across the grain.";
pub const NO_COEFFICIENT: &str = "How this wood moves is in no table here. Choose a wood like it, or leave plenty.";
pub const ROOM_HINT: &str = "Moistures of the wood through the year: 6 to 10 % is a heated home, our guess.";
pub const SAY_NOW: &str = "Say the moisture it has now, and the slot is worked out.";
pub const SET_ROOM: &str = "This is my room";

pub const GLUING: &str = "Before gluing";
pub const GLUING_UNDER: &str = "how far apart";
pub const READING: &str = "moisture of a piece";
pub const ADD_READING: &str = "Add it";
pub const NO_READINGS: &str = "Read the pieces with a meter: two or more.";
pub const ONE_READING: &str = "One more reading, and they are set side by side.";
pub const TOO_FAR: &str = "More than 2 points: not glued together yet.";
pub const NEAR_ENOUGH: &str = "No more than 2 points.";
pub const COMMON_PRACTICE: &str = "Common practice, from no table.";
pub const TAKE_OUT: &str = "A tap takes one out.";

pub const OWN: &str = "Your own woods";
pub const NO_OWN: &str = "None yet. A wood that is in no list weighs as the heaviest until you add it.";
pub const ADD_OWN: &str = "Add a wood";
pub const ONE_OWN: &str = "A wood of yours";
pub const NAME: &str = "Its name";
pub const FROM: &str = "Where the figures are from";
pub const FLAT_MOVES: &str = "flat, %";
pub const QUARTER_MOVES: &str = "quarter, %";
pub const OWN_HINT: &str = "Weight at 12 % moisture. Movement in % of the width for each point, as flat- and quarter-sawn; or empty.";
pub const YOURS: &str = "yours";
pub const LIGHT: &str = "Light for a hardwood: is it the scale, or the size?";
pub const HEAVY: &str = "Heavy: wet, or tropical?";

/// The unit of a weight.
pub fn weight_unit(units: Units) -> &'static str {
    match units {
        Units::Inch => "lb a board foot",
        Units::Metric => "kg a cubic metre",
    }
}

/// The same where there is little room: over a figure.
pub fn weighs(units: Units) -> &'static str {
    match units {
        Units::Inch => "lb a bd ft",
        Units::Metric => "kg a m³",
    }
}

/// The mark of degrees.
pub fn degree_unit(units: Units) -> &'static str {
    match units {
        Units::Inch => "°F",
        Units::Metric => "°C",
    }
}

/// "wood comes to 9.2 % here".
pub fn comes_to(per_cent: &str) -> String {
    format!("wood comes to {per_cent} here")
}

/// "70 °F and 50 % damp, Tue 3 March".
pub fn read_on(degrees: &str, humidity: &str, day: &str) -> String {
    format!("{degrees} and {humidity} damp, {day}")
}

/// "70 °F and 50 % damp, Tue 3 March, the loft".
pub fn read_at(read: &str, place: &str) -> String {
    format!("{read}, {place}")
}

/// "Moves 3.7 mm".
pub fn moves(length: &str) -> String {
    format!("Moves {length}")
}

/// "from 6 to 10 %".
pub fn between(low: &str, high: &str) -> String {
    format!("from {low} to {high} %")
}

/// "Sources differ: 3.2 to 3.7 mm."
pub fn sources_differ(least: &str, most: &str) -> String {
    format!("Sources differ: {least} to {most}.")
}

/// "Leave a slot of 1.3 mm to swell into. It may shrink 3.7 mm. Both are rounded up."
pub fn slot(swells: Option<&str>, shrinks: Option<&str>) -> String {
    match (swells, shrinks) {
        (Some(swells), Some(shrinks)) => format!("Leave a slot of {swells} to swell into. It may shrink {shrinks}. Both are rounded up."),
        (Some(swells), None) => format!("Leave a slot of {swells}, rounded up, to swell into. It will not shrink."),
        (None, Some(shrinks)) => format!("It is as damp as it gets: no slot to swell into. It may shrink {shrinks}, rounded up."),
        (None, None) => "It is as damp as it gets: no slot to swell into. It will not shrink.".to_owned(),
    }
}

/// "2.5 points apart".
pub fn apart(points: &str, one: bool) -> String {
    if one { format!("{points} point apart") } else { format!("{points} points apart") }
}
