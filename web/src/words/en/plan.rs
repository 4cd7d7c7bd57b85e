//! English: what can I make.

pub use super::design::{DESIGN_THERE, KEEP_DESIGN, MAKE_FROM_DESIGN, design_holds};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::plan::field::problem::Pattern;
use fivebar_core::quantity::Units;

pub const WHAT_CAN_I_MAKE: &str = "What can I make?";
pub const WHAT_IT_LOOKS_LIKE: &str = "What does it look like?";
pub const SHOW_PLAN: &str = "the plan it was cut by";
pub const NOT_USED: &str = "planned since, not used";
pub const PLAN: &str = "Plan";
pub const PLAN_AGAIN: &str = "Plan again";
pub const STOP_HERE: &str = "Stop here";
pub const PRINT: &str = "Print for the wall";
pub const PILES: &str = "Pieces to use";
pub const CHANGE: &str = "Change it";
pub const CHANGE_ROWS: &str = "Change rows";
pub const TO_FIGURES: &str = "Back to the figures";
pub const OTHER_SHAPE: &str = "Something else";

/// What each looks like.
pub fn shape(shape: Shape) -> (&'static str, &'static str) {
    match shape {
        Shape::Rows => ("A top in rows", "strips end to end, rows side by side"),
        Shape::Parts => ("The job’s parts", "cut from boards, wide ones glued up"),
        Shape::Sticks => ("Lengths from sticks", "the job’s parts, crosscut only"),
        Shape::Field => ("A field of tiles", "one size in a pattern"),
    }
}

pub const LONG: &str = "Long";
pub const WIDE: &str = "Wide";
pub const DEEP: &str = "Deep";
pub const HIGH: &str = "High";
pub const THICK: &str = "Thick";
pub const ROWS: &str = "Rows";
pub const JOINTS_APART: &str = "Joint to joint";
pub const NEAR_ENOUGH: &str = "May be off by";
pub const HOW_MANY: &str = "Pieces of the job";
pub const AS_MANY: &str = "As many as it gives";
pub const MAY_BE_CUT: &str = "Strips may be cut in pieces";
pub const END_SHORTENED: &str = "Only an end piece is cut";
pub const HOW_CUT: &str = "How strips are cut";
pub const PATTERN: &str = "Pattern";
pub const ANY_PATTERN: &str = "Whichever is nearest";
pub const TWO_WOODS: &str = "Two woods by turns";
pub const ROWS_LEFT_OPEN: &str = "Rows, and how thick it is, may stay empty: then they are as the pieces allow.";

pub fn pattern(pattern: Pattern) -> &'static str {
    match pattern {
        Pattern::Stack => "Straight",
        Pattern::Running => "Brick",
        Pattern::Basket => "Basket",
        Pattern::Herringbone => "Herringbone",
        Pattern::Crossed => "Crossed layers",
    }
}

/// "3 piles, 64 pieces".
pub fn in_use(piles: &str, one: bool, pieces: &str) -> String {
    format!("{piles} {}, {pieces}", if one { "pile" } else { "piles" })
}

pub const IN_THIS_JOB: &str = "in this job";
pub const ON_THE_RACK: &str = "on the rack";
pub const BOUGHT: &str = "bought";
pub const LEFT_OUT: &str = "left out";
pub const USED: &str = "used";
pub const NO_PIECES: &str = "There are no pieces yet: the rack is empty.";

// Boards to buy
pub const BOARDS_TO_BUY: &str = "Boards to buy";
pub const ADD_BOARDS: &str = "Add boards to buy";
pub const ADD_BOARDS_UNDER: &str = "the plan says how many";
pub const ADD_THEM: &str = "Add them";
pub const AT_MOST: &str = "At most";
pub const AT_MOST_OPEN: &str = "How many at most, and the price, may stay empty.";
pub const PRICE_EACH: &str = "Price each";
pub const NOT_BOUGHT: &str = "not bought yet, a tap takes them out";
pub const BUY_FIRST: &str = "Buy them first and write them down as boards you bought; then plan again.";
pub const ARE_BOUGHT: &str = "They are bought";
pub const ARE_BOUGHT_UNDER: &str = "write them down";

/// "Ash boards".
pub fn boards_of(wood: Option<&str>) -> String {
    wood.map_or_else(|| "Boards".to_owned(), |wood| format!("{wood} boards"))
}

pub fn each(price: &str) -> String {
    format!("{price} each")
}

/// "Buy 3 of D, 42.00 together."
pub fn buy(n: &str, letter: &str, cost: Option<&str>) -> String {
    cost.map_or_else(|| format!("Buy {n} of {letter}."), |cost| format!("Buy {n} of {letter}, {cost} together."))
}

/// "Buy 2 more of D, 28.00 together: 1 is bought."
pub fn buy_more([n, bought]: [&str; 2], one: bool, letter: &str, cost: Option<&str>) -> String {
    let is = if one { "is" } else { "are" };
    let cost = cost.map_or(String::new(), |cost| format!(", {cost} together"));
    format!("Buy {n} more of {letter}{cost}: {bought} {is} bought.")
}

/// "3 of D: bought."
pub fn is_bought(n: &str, letter: &str) -> String {
    format!("{n} of {letter}: bought.")
}

/// "All the boards to buy: 85.80."; where some are bought, of the others.
pub fn all_cost(cost: &str, begun: bool) -> String {
    let still = if begun { "still " } else { "" };
    format!("All the boards {still}to buy: {cost}.")
}

/// "write down 3 of D".
pub fn write_down(n: &str, letter: &str) -> String {
    format!("write down {n} of {letter}")
}

pub const ALL_BOUGHT: &str = "All of them are bought and written down: plan again with them.";

// What lies there comes before what is to buy
pub const NOTHING_TO_BUY: &str = "Nothing to buy: what lies there is enough.";
pub const BOARDS_BRING_NOTHING: &str = "With the boards to buy no more was found.";

/// "What lies there gives 3 pieces and no more: boards to buy fill the rest."; where no more was found of it: "Of what lies there alone 3
/// pieces were found: boards to buy fill the rest."
pub fn rack_gives(pieces: &str, one: bool, proven: bool) -> String {
    let was = if one { "was" } else { "were" };
    let (begin, end) = if proven { ("What lies there gives", "and no more") } else { ("Of what lies there alone", "found") };
    let found = if proven { end.to_owned() } else { format!("{was} {end}") };
    format!("{begin} {pieces} {found}: {FILL_THE_REST}")
}

/// The same of nothing; a field is laid whole, and nothing fills it.
pub fn rack_gives_none(shape: Shape, proven: bool) -> String {
    if shape == Shape::Field {
        return "Of what lies there alone no field near enough was found.".to_owned();
    }
    let none = "not one piece";
    let was = if proven { "comes" } else { "was found" };
    format!("Of what lies there alone {none} {was}: {FILL_THE_REST}")
}

pub(super) const FILL_THE_REST: &str = "boards to buy fill the rest.";

// Why pieces can't be used
pub const SIZE_MISSING: &str = "a size is missing";
pub const TOO_THIN: &str = "too thin";
pub const TOO_NARROW: &str = "too narrow";
pub const TOO_SHORT: &str = "too short";
pub const OTHER_WOOD: &str = "another wood than its parts";
pub const HELD_BACK: &str = "held back, more than twice as thick as is needed";
pub const OTHER_WIDTH: &str = "another width, left out for less waste";

pub fn under_machine(least: &str) -> String {
    format!("shorter than the {least} you set for a machine")
}

// Why there is nothing to plan
pub const NO_PARTS: &str = "No part is planned yet. Add the parts under Wood and plan, then come back.";
pub const NO_PILES: &str = "There are no pieces to plan with. Count a haul, or take up the rack.";
pub const NONE_FITS: &str = "None of the pieces fits. Pieces to use says why.";
pub const ONE_WOOD: &str = "All pieces to use are of one wood: two by turns need two.";

pub fn none_for_part(part: &str) -> String {
    format!("No pieces to use fit this part: {part}.")
}

/// "3 bought of 27 × 150 × 2,400; the plan wants B, 27 × 152 × 2,400 mm: count them all the same, and plan again with what they are."
pub fn bought_otherwise((n, one): (&str, bool), letter: &str, [bought, wanted]: [&str; 2], may_count: bool) -> String {
    let then = match (may_count, one) {
        (true, true) => "count it all the same, and plan again with what it is",
        (true, false) => "count them all the same, and plan again with what they are",
        (false, _) => "more than a tenth off, so none is counted",
    };
    format!("{n} bought of {bought}; the plan wants {letter}, {wanted}: {then}.")
}

/// "Count 3 as B".
pub fn count_as(n: &str, letter: &str) -> String {
    format!("Count {n} as {letter}")
}

/// "99 rows would each be 3 mm wide, your least strip is 20 mm."; of one alone "A row would be 3 mm wide".
pub fn narrow(rows: Option<&str>, [wide, least]: [&str; 2]) -> String {
    let rows = rows.map_or_else(|| "A row would be".to_owned(), |n| format!("{n} rows would each be"));
    format!("{rows} {wide} wide, your least strip is {least}.")
}

pub const PLANNING: &str = "Planning";
pub const LOOKING_ON: &str = "Looking for a better one.";
pub const FAILED: &str = "The planning failed. Nothing is lost: plan again, or change a figure.";
pub const CHANGED: &str = "The rack has changed since: some of these pieces are not free any more. Plan again.";
pub const BEST_POSSIBLE: &str = "best possible";
pub const BEST_SO_FAR: &str = "best so far";

/// "so far 8 rows, at most 9".
pub fn so_far(shape: Shape, made: &str, one: bool, most: Option<&str>) -> String {
    let most = most.map_or(String::new(), |most| format!(", at most {most}"));
    format!("So far {made} {}{most}.", things(shape, one))
}

/// Rows, or pieces.
pub fn things(shape: Shape, one: bool) -> &'static str {
    match (shape, one) {
        (Shape::Rows, true) => "row",
        (Shape::Rows, false) => "rows",
        (_, true) => "piece",
        (_, false) => "pieces",
    }
}

/// "8 rows.", "6 of 8 rows."; of parts for how many of the job they are: "Parts for 2 of 3 pieces."
pub fn made(shape: Shape, made: &str, one: bool, wanted: Option<&str>) -> String {
    let of = if matches!(shape, Shape::Parts | Shape::Sticks) { "Parts for " } else { "" };
    match wanted {
        Some(wanted) => format!("{of}{made} of {wanted} {}.", things(shape, false)),
        None => format!("{of}{made} {}.", things(shape, one)),
    }
}

/// "No plan needs fewer than 24 strips."; where rows or wood were left open, of which: "No plan of 10 rows of oak needs fewer".
pub fn no_fewer((pieces, one): (&str, bool), strips: bool, of: Option<&str>) -> String {
    let of = of.map_or_else(String::new, |of| format!(" of {of}"));
    format!("No plan{of} needs fewer than {pieces} {}.", taken(strips, one))
}

/// What is taken: strips where pieces are ripped first.
fn taken(strips: bool, one: bool) -> &'static str {
    match (strips, one) {
        (true, true) => "strip",
        (true, false) => "strips",
        (false, true) => "piece",
        (false, false) => "pieces",
    }
}

pub const NO_PLAN_MORE: &str = "No plan can make more.";
pub const NO_NEARER: &str = "No field of these pieces comes nearer.";
/// Tiles are planned as large as their pieces give, or as make the sides asked; others are not looked at.
pub const NO_NEARER_AT_FULL_SIZE: &str = "No field of tiles of these sizes comes nearer; others may.";

// Why no more
pub const NO_STRIPS: &str = "No strip is long enough for a piece.";
pub const NOT_OUT: &str = "They are long enough together, but the rows don’t come out of them with these joints and least pieces.";
pub const STICKS_SHORT: &str = "All the sticks together are too short for one more.";

/// "23 strips give 8,280 of the 8,320 mm asked."
pub fn one_fewer(fewer: &str, one: bool, strips: bool, [gives, asked]: [&str; 2]) -> String {
    let (things, give) = (taken(strips, one), if one { "gives" } else { "give" });
    format!("{fewer} {things} {give} {gives} of the {asked} asked.")
}

/// "The strips, 40 × 43.5, give 9.6 rows end to end."
pub fn strips_give(section: Option<&str>, rows: &str) -> String {
    let section = section.map_or(String::new(), |section| format!(", {section},"));
    format!("The strips{section} give {rows} rows end to end.")
}

/// "The leg decides: no more of it come out of these pieces."
pub fn part_decides(part: &str) -> String {
    format!("The {part} decides: no more of it come out of these pieces.")
}

/// "Leg and rail decide: they need the same pieces."
pub fn parts_decide(parts: &[String]) -> String {
    format!("{} decide: they need the same pieces.", fivebar_core::quantity::begin_large(&and(parts)))
}

/// "One tile more makes it 464 mm wide.", "One block more …" where tiles lie in blocks.
pub fn one_step(blocks: bool, [wide, more]: [bool; 2], other: &str) -> String {
    let (tiles, side) = (if more { "more" } else { "fewer" }, if wide { "wide" } else { "deep" });
    let one = if blocks { "block" } else { "tile" };
    format!("One {one} {tiles} makes it {other} {side}.")
}

pub fn and(all: &[String]) -> String {
    listed(all, "and")
}

/// "A, B or C".
pub fn listed(all: &[String], last: &str) -> String {
    match all {
        [before @ .., one] if !before.is_empty() => format!("{} {last} {one}", before.join(", ")),
        all => all.concat(),
    }
}

/// "The job is of 1 piece, and this is for 2 pieces."
pub fn beyond_the_job(job: &str, asked: &str) -> String {
    format!("The job is of {job}, and this is for {asked}.")
}

/// "One more lacks 2 of leg and 1 of rail."; where there is none yet, "One lacks …".
pub fn lacks(parts: &[String], first: bool) -> String {
    format!("{} lacks {}.", one_more(first), and(parts))
}

/// The same where one more is not ruled out: "One more was not found: the nearest lacks 1 of top."
pub fn lacks_so_far(parts: &[String], first: bool) -> String {
    format!("{} was not found: the nearest lacks {}.", one_more(first), and(parts))
}

fn one_more(first: bool) -> &'static str {
    if first { "One" } else { "One more" }
}

pub fn so_many_of(n: &str, what: &str) -> String {
    format!("{n} of {what}")
}

/// "12 more of A (top stock, 27 × 80 × 700 mm)".
pub fn more_of(n: &str, letter: &str, named: &str) -> String {
    format!("{n} more of {letter} ({named})")
}

/// "12 more of A (top stock, 27 × 80 × 700 mm) make it."
pub fn makes_it(more: &str, one: bool) -> String {
    format!(" {more} {} it.", if one { "makes" } else { "make" })
}

/// " All 3 lack 6 of leg and 1 of top." With pieces that give them: "12 more of A (…) make them." By another plan than the one that is drawn: " All
/// 4, for which this wood is cut another way, lack 14 of leg and 4 of top."
pub fn all_lack(asked: &str, (parts, is_other): (&[String], bool), from: Option<&str>) -> String {
    let from = from.map_or(String::new(), |from| format!(" {from} make them."));
    let other = if is_other { ", for which this wood is cut another way," } else { "" };
    format!(" All {asked}{other} lack {}.{from}", and(parts))
}

/// What all pieces lack that were asked was not found.
pub const OF_ONE_MORE_ONLY: &str = " That is for one more only.";

/// One board more of a line at the saw.
pub const ONE_MORE: &str = "+1";

/// "3 of 5".
pub fn so_many_cut(n: &str, of: &str) -> String {
    format!("{n} of {of}")
}

/// "One more cut, 3 of 5 now: 212 + 2 × 71", as it is read out.
pub fn one_more_cut(line: &str, n: &str, of: &str) -> String {
    format!("One more cut, {n} of {of} now: {line}")
}

/// "3 more of A and 2 more of B bring it nearer."
pub fn brings_nearer(more: &[String]) -> String {
    format!("{} bring it nearer.", and(more))
}

// At the saw
pub fn at_the_saw(unit: &str) -> String {
    format!("At the saw, {unit}")
}

pub fn joints_apart(length: &str) -> String {
    format!("joints {length} apart")
}

/// "A: oak tread ends, ripped in three".
pub fn pile_of(letter: &str, name: &str, ripped: Option<&str>) -> String {
    ripped.map_or(format!("{letter}: {name}"), |n| format!("{letter}: {name}, ripped in {n}"))
}

pub fn ripped_in(n: i64, written: String) -> String {
    match n {
        2 => "two".into(),
        3 => "three".into(),
        4 => "four".into(),
        5 => "five".into(),
        6 => "six".into(),
        _ => written,
    }
}

pub fn cut_to(n: &str, length: &str) -> String {
    format!("{n} cut to {length}")
}

pub fn whole(n: &str, length: &str) -> String {
    format!("{n} whole, ends trimmed to {length}")
}

/// "3 boards: 2 × 432 leg".
pub fn alike(shape: Shape, n: &str, cut: &str) -> String {
    let boards = match shape {
        Shape::Rows => "strips",
        Shape::Parts => "boards",
        Shape::Sticks => "sticks",
        Shape::Field => "tiles",
    };
    format!("{n} {boards}: {cut}")
}

/// "2 of 71": so many of a length, which is no size.
pub fn times(n: &str, length: &str) -> String {
    format!("{n} of {length}")
}

pub fn goes_back(length: &str) -> String {
    format!("{length} left to keep")
}

/// What a pile of left pieces is called: "left of tread ends, 426".
pub fn left_of_pile(name: Option<&str>, label: &str, length: &str) -> String {
    let of = match name {
        // What is left of what was left is no more than that.
        Some(name) if name.starts_with(LEFT_OF) => name.rsplit_once(", ").map_or(name, |(of, _)| of).to_owned(),
        name => format!("{LEFT_OF}{}", name.map_or_else(|| label.to_owned(), fivebar_core::quantity::begin_small)),
    };
    format!("{of}, {length}")
}

const LEFT_OF: &str = "left of ";

/// The tapped piece: "1, 256 long: oak tread ends, 256 + 101".
pub fn piece(mark: &str, length: &str, name: &str, cut: &str) -> String {
    format!("{mark}, {length} long: {name}, {cut}")
}

/// The tapped part: "leg, 432: B 2, boards. At the saw: 2 × 432 × 40 × 38, leg", with what is left of the board.
pub fn part_piece([part, length]: [&str; 2], [mark, name]: [&str; 2], cut: &str, left: Option<&str>) -> String {
    let left = left.map_or(String::new(), |left| format!("; {left}"));
    format!("{part}, {length}: {mark}, {name}. At the saw: {cut}{left}")
}

pub const TAP_A_PIECE: &str = "Tap a piece to see where it comes from.";

/// "Used 24 of 33 pieces."; "Used all 5 pieces."; of one alone "Used the one piece."
pub fn used_of(used: &str, of: &str) -> String {
    match (used == of, used) {
        (true, "1") => "Used the one piece.".to_owned(),
        (true, "2") => "Used both pieces.".to_owned(),
        (true, _) => format!("Used all {of} pieces."),
        (false, _) => format!("Used {used} of {of} pieces."),
    }
}

/// "7 on the rack, 2 of the plan before": pieces there are to use.
pub fn by_the_plan_before(free: &str, lying: &str, before: &str) -> String {
    format!("{free} {lying}, {before} of the plan before")
}

/// "Used 9 of 71 pieces, ripped into 12 strips."
pub fn used_for_strips([used, of, strips]: [&str; 3], one: bool) -> String {
    let used = used_of(used, of);
    format!("{}, for {strips} {}.", used.trim_end_matches('.'), if one { "strip" } else { "strips" })
}

/// " 7 of the 36 are in this job by the plan before."
pub fn own(own: &str, of: &str) -> String {
    format!(" Of the {of}, {own} are this job’s by the plan before.")
}

/// "2 strips of 365".
pub fn strips_of(n: &str, one: bool, length: &str) -> String {
    format!("{n} {} of {length}", if one { "strip" } else { "strips" })
}

/// "Left 9 whole and one of 293."
pub fn left(whole: Option<&str>, pieces: Vec<String>) -> String {
    let all: Vec<String> = whole.map(|whole| format!("{whole} whole")).into_iter().chain(pieces).collect();
    if all.is_empty() { String::new() } else { format!(" Left {}.", and(&all)) }
}

pub fn left_of(n: &str, one: bool, length: &str) -> String {
    if one { format!("one of {length}") } else { format!("{n} of {length}") }
}

/// "one of 293, planed to 25".
pub fn planed_to(rest: &str, thick: &str) -> String {
    format!("{rest}, planed to {thick}")
}

/// "too thin: a plan had it planed, from 30 mm".
pub fn planed_from(thin: &str, rough: &str) -> String {
    format!("{thin}: a plan had it planed, from {rough}")
}

/// "12 cuts, with trimming.": both ends of each piece are trimmed.
pub fn saw_cuts(n: &str, one: bool, trimmed: bool) -> String {
    format!("{n} {}{}.", if one { "cut" } else { "cuts" }, if trimmed { ", with trimming" } else { "" })
}

pub fn moves(width: &str, moves: &str) -> String {
    format!("Across its {width} it moves {moves} through the year at most.")
}

pub const NEEDS_ROOM: &str = "A wide glued top needs room to move: fasten it so that it can.";

pub const USE_IT: &str = "Use these";

/// "Use these 24".
pub fn use_these(n: &str) -> String {
    format!("Use these {n}")
}

pub fn takes(pieces: &str) -> String {
    format!("takes {pieces}")
}

pub const IN_JOB_ALREADY: &str = "in the job already";
pub const IS_USED: &str = "The job has this wood.";
pub const PICTURE: &str = "The plan to scale";
/// A board of the cutting diagram, for who can't see it.
pub fn board(mark: &str) -> String {
    format!("Board {mark} with its cuts, to scale")
}

pub const KEPT_AS_HATCHED: &str = "Hatched is left to keep, grey is waste.";
pub const GREY_IS_WASTE: &str = "Grey is waste.";
pub const JOB_ENDED: &str = "The job has ended.";

// The saw
pub const SAW: &str = "The saw’s figures";
pub const SAW_UNDER: &str = "kerf, trims, what is worth keeping";
pub const SAW_HINT: &str = "Every plan goes by these. They are usual ones until you say yours.";
pub const SAW_FIGURES: [&str; 13] = [
    "Kerf",
    "Off strip ends",
    "Off board ends",
    "Off long edges",
    "Over in length",
    "Over in width",
    "Over in thickness",
    "Off glued edges",
    "Worth keeping",
    "Joint to joint",
    "Least end piece",
    "Least piece",
    "Least strip",
];
pub const SAW_GLUE: &str = "Glue";

/// What is spread on a face, in the units in which a plan tells its glue.
pub fn glue_unit(units: Units) -> &'static str {
    if units == Units::Inch { "fl oz/sq ft" } else { "g/m²" }
}
