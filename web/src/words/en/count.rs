//! English: Count, new pile, sort.

pub const NO_PIECES_YET: &str = "No pieces yet";
pub const TAP_THIS_BOARD: &str = "Tap this board, once for each piece.";
pub const NAME_LATER: &str = "name it now, or at home";
pub const NEW_PILE: &str = "New pile";
pub const NEW_PILE_UNDER: &str = "wood, thickness, width, length";
pub const EACH_TAP: &str = "each tap";
pub const ANY: &str = "n";
pub const HOW_MANY: &str = "How many with each tap?";
pub const SET_OUT: &str = "Set out";
pub const SET_OUT_UNDER: &str = "starts the trip’s clock, as you drive off";
pub const AT_THE_BIN: &str = "At the bin";
pub const HOME: &str = "Home";
pub const HOMEWARD: &str = "Homeward";
/// On the way: the trip goes on until it is tapped.
pub const IS_HOME: &str = "Home?";
pub const WEIGHT_UNKNOWN: &str = "weight not known";
pub const NOT_YET: &str = "not yet";
pub const DRIVING_HOME: &str = "driving, tap when home";
pub const SORT: &str = "Sort";
pub const NEW_HAUL: &str = "New haul";
pub const NEW_HAUL_UNDER: &str = "the last one stays as it is";
pub const SAME_HAUL: &str = "Another trip";
pub const SAME_HAUL_UNDER: &str = "for the same haul";
pub const WHOLE_HAUL: &str = "This haul";
pub const WHOLE_HAUL_UNDER: &str = "supplier, price, drive";
pub const NAME_AT_HOME: &str = "Name it at home";
pub const ANSWERED: &str = "Answered: tap one to change it";
pub const WOOD: &str = "Wood";
pub const THICKNESS: &str = "Thickness";
pub const WIDTH: &str = "Width";
pub const LENGTH: &str = "Length";
pub const WHICH_WOOD: &str = "Which wood?";
pub const MORE_WOODS: &str = "more";
pub const OTHER_SIZE: &str = "other";
pub const WOOD_UNKNOWN: &str = "not sure";
pub const HOW_LONG_ABOUT: &str = "how long, about?";
pub const PILE_NAME: &str = "Name";
pub const YOURS: &str = "yours";
pub const ABOARD: &str = "people today";
pub const THE_DRIVER: &str = "the driver";
pub const LOAD_AT_LONGEST: &str = "A pile of several lengths weighs as at its longest.";
pub const LOAD_GUESSED: &str = "Unknown or wet wood counts as the heaviest.";
pub const LOAD_UNKNOWN: &str = "say what the van carries";
pub const SIZES_MISSING: &str = "sizes missing";
pub const RECOUNT: &str = "Count again";
pub const EDIT_PILE: &str = "Name or size";
pub const SIZE: &str = "Size";
pub const SIZE_UNDER: &str = "or name";
pub const WHICH_PILE: &str = "Which pile?";
pub const GOOD: &str = "Good";
pub const REJECT_BECAUSE: &str = "Reject, because";
pub const LAST_SAFE: &str = "the last that is safe";
pub const NONE: &str = "none";
pub const GUESSED: &str = "unknown wood counts as the heaviest";
pub const CARRIES: &str = "The van carries";
pub const DISTANCE: &str = "There and back";
pub const DRIVE_UNPRICED: &str =
    "No rate for driving is set, so what this haul costs is not known. Set it in Workshop, How you are paid; 0 where it costs you nothing.";
pub const SUPPLIER: &str = "Supplier";
pub const WHOSE_BIN: &str = "Whose bin was it?";
pub const NEW_SUPPLIER: &str = "Someone new: the name";
pub const ADD_SUPPLIER: &str = "It was theirs";
pub const GIFT: &str = "Gift or price";
pub const LOADING_CAUTION: &str = "An estimate; wet wood weighs far more. The door label less people is the limit.";
pub const RECLAIMED_CAUTION: &str = "Sweep for metal; leave painted or treated wood.";

/// "Not counted: 5 of Cherry trims".
pub fn not_counted_onto(n: &str, pile: &str) -> String {
    format!("Not counted: {n} onto {pile}")
}

/// "Not counted: 7 pieces".
pub fn not_counted(pieces: &str) -> String {
    format!("Not counted: {pieces}")
}

/// "Your 119 pieces, saved 09:31."
pub fn your_pieces_saved(pieces: &str, saved: &str) -> String {
    format!("Your {pieces}, {saved}.")
}

/// "count the 5".
pub fn count_the(n: &str) -> String {
    format!("count the {n}")
}

/// "Haul, Tue 3 March".
pub fn haul_of(day: &str) -> String {
    format!("Haul, {day}")
}

/// "Pile C".
pub fn pile(label: &str) -> String {
    format!("Pile {label}")
}

/// Nothing was asked for the wood.
pub const FOR_NOTHING: &str = "for nothing";

/// "New pile, C".
pub fn new_pile(label: &str) -> String {
    format!("New pile, {label}")
}

/// "counts now as pile C".
pub fn counts_now_as(label: &str) -> String {
    format!("counts now as “pile {label}”")
}

/// "102 pieces in 2 piles".
pub fn pieces_in_piles(pieces: &str, piles: usize) -> String {
    if piles == 1 { format!("{pieces} in 1 pile") } else { format!("{pieces} in {piles} piles") }
}

/// "Take back 5".
pub fn take_back(n: &str) -> String {
    format!("Take back {n}")
}

/// "Move last 12 to…".
pub fn move_last(n: &str) -> String {
    format!("Move last {n} to…")
}

/// "163.5 of 670 lb".
pub fn load(mass: &str, carries: &str, unit: &str) -> String {
    format!("{mass} of {carries} {unit}")
}

/// "at least 16.5 lb".
pub fn at_least(figure: &str) -> String {
    format!("at least {figure}")
}

/// "12 pieces without sizes".
pub fn without_sizes(pieces: &str) -> String {
    format!("{pieces} without sizes")
}

/// "163.5 lb".
pub fn weighs(mass: &str, unit: &str) -> String {
    format!("{mass} {unit}")
}

/// "warns at 80 %".
pub fn warns_at(share: &str) -> String {
    format!("warns at {share}")
}

/// "pieces. Count 5." after the figure, for a reader; after a single one "piece. Count 5."
pub fn tile_said(one: bool, armed: &str) -> String {
    format!("{}. Count {armed}.", if one { "piece" } else { "pieces" })
}

/// "under 9", "9 to 12", "over 36".
pub fn band(from: Option<&str>, to: Option<&str>) -> String {
    match (from, to) {
        (None, Some(to)) => format!("under {to}"),
        (Some(from), Some(to)) => format!("{from} to {to}"),
        (Some(from), None) => format!("over {from}"),
        (None, None) => String::new(),
    }
}

/// "How thick, in inches?"
pub fn how(side: &str, unit: &str) -> String {
    format!("{side}, in {unit}?")
}

pub const HOW_THICK: &str = "How thick";
pub const HOW_WIDE: &str = "How wide";
pub const HOW_LONG: &str = "How long, about";
pub const HOW_LONG_EXACT: &str = "How long";
pub const THICK: &str = "thick";
pub const WIDE: &str = "wide";
pub const LONG: &str = "long";
pub const AT_LEAST: &str = "at the least";

/// "That is 27 in thick. Millimetres?"
pub fn that_is(side: &str, way: Option<&str>, or_mm: bool) -> String {
    let way = way.map(|way| format!(" {way}")).unwrap_or_default();
    format!("That is {side}{way}. {}", if or_mm { "Millimetres?" } else { "Is it so?" })
}

/// "of kerf, and a blade takes no more than 10 mm".
pub fn of_kerf(most: &str) -> String {
    format!("of kerf, and a blade takes no more than {most}")
}

/// "Yes, 27 in".
pub fn keep(side: &str) -> String {
    format!("Yes, {side}")
}

pub const INCHES: &str = "inches";
pub const MILLIMETRES: &str = "millimetres";
pub const MEASURED_IN: &str = "Measured in";

/// "16 of 61 rejected".
pub fn rejected_of(rejected: &str, sorted: &str) -> String {
    format!("{rejected} of {sorted} rejected")
}

/// "Ash strips, 61 of 64".
pub fn sorted_of(name: &str, sorted: &str, taken: &str) -> String {
    format!("{name}, {sorted} of {taken}")
}

/// "3 to go".
pub fn to_go(n: &str) -> String {
    format!("{n} to go")
}

/// "Take back 1 reject: short".
pub fn take_back_reject((n, written): (u32, &str), why: &str) -> String {
    if n == 1 { format!("Take back {written} reject: {why}") } else { format!("Take back {written} rejects: {why}") }
}

/// "Take back 1 good".
pub fn take_back_good(n: &str) -> String {
    format!("Take back {n} good")
}

/// A reject reason by its key; a key from a newer version is shown as it is.
pub fn reason(key: &str) -> String {
    let known = match key {
        "end-check" => "End check",
        "twist" => "Twist",
        "glue-paint" | "glue-or-paint" => "Glue or paint",
        "short" => "Short",
        "knot" => "Knot",
        "metal" => "Metal",
        "sapwood" => "Sapwood",
        "crack" => "Crack",
        "wet" => "Wet",
        "unknown" => "Unknown",
        "other" => "Other",
        _ => return key.replace('-', " "),
    };
    known.to_owned()
}

/// Every reason there is a key for.
pub const REASONS: [&str; 11] =
    ["end-check", "twist", "glue-paint", "short", "knot", "crack", "metal", "sapwood", "wet", "unknown", "other"];

pub const AT_THE_WHEEL: &str = "At the wheel";
pub const AT_THE_BINS: &str = "At the bins";
pub const GUESS: &str = "guess";
pub const THIS_PILE: &str = "this pile";
pub const THE_SUPPLIER: &str = "supplier";

/// "26 %".
pub fn percent(written: &str) -> String {
    format!("{written} %")
}

pub const SHARE: &str = "The drive was for this";
pub const ALL_OF_IT: &str = "all of it";
pub const HALF: &str = "half";
pub const SHARE_UNDER: &str = "Other errands on the way carry the rest of the miles and of the time at the wheel.";
pub const NEVER_ENDED: &str = "This trip was never ended.";
pub const SAY_THE_TIMES: &str = "Say the times";

/// "Last at the bin at 09:42. 46 min at the wheel and 38 min there?"
pub fn ended_when(clock: &str, wheel: &str, bin: &str) -> String {
    let seen = super::common::sentence(format!("Last seen at {clock}"));
    format!("{seen} With the way home as long as the way there: {wheel} at the wheel, {bin} at the bin.")
}

/// "Yes, home".
pub const YES_HOME: &str = "Yes, so it was";

/// "I need … of Ash strips".
pub fn i_need_of(pile: &str) -> String {
    format!("I need … of {pile}")
}

pub const OTHER_HAULS: &str = "Other hauls";
pub const OTHER_HAULS_UNDER: &str = "to count, sort or bring home";
pub const EARLIER_HAUL: &str = "An earlier haul. Back to the newest";

/// "75 pieces, 12 to sort".
pub fn still_to_sort(pieces: &str, unsorted: &str) -> String {
    format!("{pieces}, {unsorted} to sort")
}

/// "75 pieces, not home yet".
pub fn not_home_yet(pieces: &str) -> String {
    format!("{pieces}, not home yet")
}

/// "Move 12 of Ash squares to which pile?"
pub fn move_to_which(n: &str, pile: &str) -> String {
    format!("Move {n} of {pile} to which pile?")
}

/// "17 lb too many".
pub fn too_heavy(mass: &str, unit: &str) -> String {
    format!("{mass} {unit} over, leave some")
}

/// "near the limit, warns at 80 %".
pub fn near_limit(warns: &str) -> String {
    format!("near the limit, {warns}")
}

pub const OR_MORE: &str = "or more";
pub const VAN_UNDER: &str = "said in Workshop, Van";
