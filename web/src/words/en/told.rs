//! English: what a plan says of itself: sizes at the saw, waste, how near it comes to what was asked, what is proven.

use super::plan::listed;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{begin_large, begin_small};
use fivebar_core::sheet::make::buy::Kinds;
use fivebar_core::sheet::plan::Known;

// Sizes
/// "Rows 56.9 mm wide, together 398.3, 0.3 more than asked, planed to 25 thick."; with those that are cut already "all 7 together 398.3".
pub fn rows((wide, n): (&str, Option<&str>), together: Option<(&str, Option<&str>)>, thick: &str) -> String {
    let all_of = n.map_or(String::new(), |n| format!("all {n} "));
    let more = |more: &str| format!(", {more} more than asked");
    let together = together.map_or(String::new(), |(all, over)| format!(", {all_of}together {all}{}", over.map_or(String::new(), more)));
    format!("Rows {wide} wide{together}, planed to {thick} thick.")
}

/// "Rows 2 3/16 in wide, planed to 1 thick. Glued up they are 24 1/16: saw the last to 2 1/8, and the top is 24 wide."; with those that are cut
/// already "All 11 rows glued up are 24 1/16".
pub fn rows_sawn(rows: &str, (n, all): (Option<&str>, &str), [last, asked]: [&str; 2]) -> String {
    let glued = n.map_or_else(|| "Glued up they are".to_owned(), |n| format!("All {n} rows glued up are"));
    format!("{rows} {glued} {all}: saw the last to {last}, and the top is {asked} wide.")
}

/// "rip each in three 43.5 wide", "rip 57.9 wide".
pub fn rip(ripped: Option<&str>, wide: &str) -> String {
    ripped.map_or_else(|| format!("rip {wide} wide"), |n| format!("rip each in {n} {wide} wide"))
}

/// "rip 79 wide for rail, the strip of 20 left beside is waste"; of one part alone without its name.
pub fn rip_first(wide: &str, part: Option<&str>, beside: &str) -> String {
    let of = part.map(|part| format!(" for {part}")).unwrap_or_default();
    format!("rip {wide} wide{of}, the strip of {beside} left beside is waste")
}

pub fn joint(wide: &str) -> String {
    format!("joint to {wide}")
}

pub fn plane(thick: &str) -> String {
    format!("plane to {thick} thick")
}

/// "Rip each in three 43.5 wide, joint to 42.5, plane to 32 thick."
pub fn steps(steps: &[String]) -> String {
    format!("{}.", begin_large(&steps.join(", ")))
}

/// "A: strips. Rip 41 wide, joint to 40."
pub fn of_pile(pile: &str, steps: &str) -> String {
    format!("{pile}. {steps}")
}

/// "902 × 100 × 27, top"; "2 of 352 × 40 × 40, leg".
pub fn cut(n: Option<&str>, size: &str, part: &str) -> String {
    n.map_or_else(|| format!("{size}, {part}"), |n| format!("{n} of {size}, {part}"))
}

pub const SIZES_AS_FINISHED: &str = "Long × wide × thick, as finished.";

/// How sizes at the saw are meant.
pub fn sizes_over([long, wide, thick]: [&str; 3]) -> String {
    if long == wide && wide == thick {
        return format!("Long × wide × thick, with {long} over each way to finish.");
    }
    format!("Long × wide × thick, with {long}, {wide} and {thick} over to finish.")
}

pub fn finish_title(glued: bool, unit: &str) -> String {
    format!("{}, {unit}", if glued { "Glue up and finish" } else { "Finish" })
}

/// "4 × leg: 350 × 38 × 38".
pub fn finish(n: &str, part: &str, size: &str) -> String {
    format!("{n} × {part}: {size}")
}

/// What a part of which strips are cut lacks still.
pub fn rest_of(part: &str) -> String {
    format!("rest of {part}")
}

/// "When it was taken: used 9 of 10 pieces. Left 1 whole." The rack may hold others since.
pub fn when_taken(used: &str) -> String {
    format!("When it was taken: {}", begin_small(used))
}

/// "Top (2 of them)": parts alike of which one thing is said.
pub fn so_many_alike(part: &str, n: &str) -> String {
    format!("{part} ({n} of them)")
}

/// "1 × rest of top, glued up with its strips that are cut: 900 × 170 × 20".
pub fn with_its_strips(rest: &str) -> String {
    format!("{rest}, glued up with its strips that are cut")
}

/// "Top: 5 of 58 wide and 2 of 34, side by side".
pub fn glue_up(n: Option<&str>, part: &str, strips: &[String]) -> String {
    let n = n.map_or(String::new(), |n| format!("{n} × "));
    format!("Glue {n}{part} of {} wide", listed(strips, "and"))
}

/// "Glue Top of 1 × 116, 1 × 111 and 1 × 108 wide: together 333, sawn to 332".
pub fn then_saw(glue: &str, together: &str, to: &str) -> String {
    format!("{glue}: together {together}, sawn to {to}")
}

/// "Glue Top of 6 × 58 wide, 5 oak and 1 maple side by side".
pub fn of_woods(glue: &str, strips: &[String]) -> String {
    format!("{glue}, {} side by side", listed(strips, "and"))
}

/// "5 oak".
pub fn so_many_in(n: &str, wood: &str) -> String {
    format!("{n} {wood}")
}

/// "Top is glued up of several woods, as none is said for it: oak and maple."
pub fn of_several_woods(part: &str, woods: &[String]) -> String {
    format!("{} is glued up of several woods, as none is said for it: {}.", begin_large(part), listed(woods, "and"))
}

/// "Strip (20 of them) is cut of several woods, as none is said for it: cherry and walnut."
pub fn cut_of_several_woods(part: &str, woods: &[String]) -> String {
    format!("{} is cut of several woods, as none is said for it: {}.", begin_large(part), listed(woods, "and"))
}

/// "Top is glued up of several woods, as none is said for it: the strips that are cut are oak, the others maple."
pub fn begun_of_another(part: &str, cut: &[String], rest: &[String]) -> String {
    let (cut, rest) = (listed(cut, "and"), listed(rest, "and"));
    format!(
        "{} is glued up of several woods, as none is said for it: the strips that are cut are {cut}, the others {rest}.",
        begin_large(part)
    )
}

/// "Set the wood of top".
pub fn set_wood(part: &str) -> String {
    format!("Set the wood of {}", fivebar_core::quantity::begin_small(part))
}

pub const SET_WOOD_UNDER: &str = "then plan again, and it is of that alone";

/// "Slat is glued up: A is 1 mm too narrow for 2 over in width. With 1 over one strip does."; it is glued for what is over alone.
pub fn too_narrow_for_over(part: &str, pile: &str, [by, over, with]: [&str; 3], boards: Option<[&str; 2]>) -> String {
    let does = boards.map_or_else(
        || "one strip does".to_owned(),
        |[n, of]| format!("{n} {} instead of {of}", if n == "1" { "board does" } else { "boards do" }),
    );
    format!("{} is glued up: {pile} is {by} too narrow for {over} over in width. With {with} over {does}.", begin_large(part))
}

/// "Top is glued up: with what is over it is cut 302 mm wide, and the widest board that is thick and long enough is B, 150 mm."
pub fn glued_up(part: &str, [needs, widest]: [&str; 2], letter: &str) -> String {
    let part = begin_large(part);
    format!(
        "{part} is glued up: with what is over it is cut {needs} wide, and the widest board that is thick and long enough is {letter}, {widest}."
    )
}

/// "Plan with 1 over in width".
pub fn with_over(over: &str) -> String {
    format!("Plan with {over} over in width")
}

pub const IN_THIS_PLAN: &str = "in this plan, for all its parts";

/// "1 over in width in this plan".
pub fn over_in_width(over: &str) -> String {
    format!("{over} over in width in this plan")
}

pub const OVER_AS_SET: &str = "plan with the saw’s figure again";

pub fn strips(n: &str, wide: &str) -> String {
    format!("{n} × {wide}")
}

/// "A is 12–18 in long, and reckoned at 12, its shortest."
pub fn at_its_shortest(letter: &str, [from, to]: [&str; 2]) -> String {
    format!("{letter} is {from}–{to} long, and reckoned at {from}, its shortest.")
}

// Waste
/// The same in length alone.
pub fn waste_in_length(lost: &str, of: &str, unit: &str, percent: &str) -> String {
    format!("In length {lost} of {of} {unit} is waste, {percent} %.")
}

/// A yield names its two volumes; what goes back to the rack is not taken for good.
pub fn waste([wasted, taken]: [&str; 2], (unit, back): (&str, bool), percent: &str) -> String {
    let taken_as = if back { "taken for good" } else { "taken" };
    format!("Waste {wasted} of {taken} {unit} {taken_as}, {percent} %")
}

/// What the waste is made of, as far as it is something; of both, what rounds to nothing is something still.
pub fn waste_parts(shape: Shape, [cutting, sizing]: [Option<&str>; 2], both: bool) -> String {
    let sizing_is = match shape {
        Shape::Parts => "planing and finishing",
        Shape::Sticks => "planing to size",
        Shape::Rows | Shape::Field => "ripping and planing",
    };
    match [cutting, sizing] {
        [Some(cutting), Some(sizing)] => format!(": cutting {cutting}, {sizing_is} {sizing}."),
        [None, Some(_)] if both => format!(", nearly all of it by {sizing_is}."),
        [None, Some(_)] => format!(", all of it by {sizing_is}."),
        [Some(_), None] if both => ", nearly all of it by cutting.".to_owned(),
        [Some(_), None] => ", all of it by cutting.".to_owned(),
        [None, None] => ".".to_owned(),
    }
}

// What is proven
pub const FEWEST_STRIPS: &str = "fewest strips";
pub const FEWEST_PIECES: &str = "fewest pieces";
pub const LEAST_IN_LENGTH: &str = "least waste in length";
pub const LEAST_TAKEN: &str = "least length taken";
/// Rows, thickness or wood were left open: others were not looked at to the end.
pub const BEST_OF_THESE_ROWS: &str = "best of these rows";
pub const BEST_OF_END_CUT: &str = "best with only an end cut";

/// "No plan of 6 rows of oak with only an end piece cut needs fewer".
pub fn end_cut_each(rows: Option<&str>) -> String {
    format!("{} {WITH_AN_END_CUT}", rows.unwrap_or("these rows"))
}

/// In each row one piece may be shortened, the first or the last.
pub const WITH_AN_END_CUT: &str = "with only an end piece cut";

pub const NOT_POSSIBLE: &str = "not possible";
pub const NONE_FOUND: &str = "none found yet";
pub const MOST_ROWS: &str = "most rows";
pub const MOST_PIECES: &str = "most pieces";
pub const NEAREST_POSSIBLE: &str = "nearest possible";
pub const NEAREST_AT_FULL_SIZE: &str = "nearest of these tiles";
pub const NEAREST_SO_FAR: &str = "nearest so far";

/// "Proven: the rows and the strips. Not proven: the waste, which may be less by at most 38 mm in length."
pub fn waste_may_be_less(proven: &str, by: &str) -> String {
    format!("Proven: {proven}. Not proven: the waste, which may be less by at most {by} in length.")
}

/// The same where pieces are counted whole.
pub fn taken_may_be_less(proven: &str, by: &str) -> String {
    format!("Proven: {proven}. Not proven: the length taken, which may be less by at most {by}.")
}

/// What is proven of rows beside the waste.
pub fn rows_and(fewest: bool, strips: bool) -> &'static str {
    match (fewest, strips) {
        (false, _) => "the rows",
        (true, true) => "the rows and the strips",
        (true, false) => "the rows and the pieces",
    }
}

/// "Proven: the pieces. Not proven: the wood. At least 24.8 litres are needed, where boards may be taken in part; this plan takes 27.5 of
/// whole ones."
pub fn wood_may_be_less([least, takes]: [&str; 2], unit: &str) -> String {
    format!(
        "Proven: how many. Not proven: the wood. No less than {least} {unit} can do, reckoned as if boards were taken in part; this plan takes {takes} of whole ones."
    )
}

pub const NONE_LOSES_LESS: &str = "Proven: no plan of these rows has less waste in length.";
pub const MORE_BUT_LESS: &str = "Proven: no plan of these rows has less waste in length. Not proven: how few strips would do.";
pub const NONE_TAKES_LESS: &str = "Proven: no plan takes less wood.";
/// The same where pieces are counted whole.
pub const NONE_TAKES_LESS_LENGTH: &str = "Proven of the length of strips alone, not of their width or volume: from these piles, in rows so wide, none takes less, pieces counted whole.";
pub const MORE_BUT_LESS_LENGTH: &str = "Proven of the length of strips alone, not of their width or volume: from these piles, in rows so wide, none takes less, pieces counted whole. Not proven: how few would do.";
pub const NONE_TAKES_LESS_WHOLE: &str = "Proven: no plan takes less wood, pieces counted whole.";
pub const LENGTH_AND_REST_MAY_BE_BETTER: &str =
    "Proven: the rows and the length taken. Not proven: how it shares out short and long strips.";
/// Sticks are planned by their length, and never ripped: a stick of a larger section counts no more.
pub const NONE_LONGER_BY_CROSSCUTS: &str = "Proven: no plan takes less in length by crosscuts alone.";
pub const NONE_LONGER_BY_CROSSCUTS_WHOLE: &str = "Proven: no plan takes less in length by crosscuts alone, pieces counted whole.";
pub const CUTS_MAY_BE_FEWER: &str = "Proven: how many, and the length taken, by crosscuts alone. Not proven: that no fewer cuts do.";
/// "if all are as short as 24 in"; of one pile among others, "if all of A are as short as 24 in".
pub fn if_as_short(of: Option<&str>, shortest: &str) -> String {
    let of = of.map_or_else(String::new, |of| format!(" of {of}"));
    format!("if all{of} are as short as {shortest}")
}

pub const OF_THEIR_PILES: &str = "the shortest of their piles";
pub const BY_CROSSCUTS: &str = "by crosscuts alone";
pub const BUYING_NONE: &str = "with nothing bought";
pub const BUYING_NO_MORE: &str = "with no more bought than these";

/// "best with these boards: 2 of G, 1 of H".
pub fn best_with_boards(boards: &str) -> String {
    format!("best with these boards: {boards}")
}

pub const BEST_OF_BOARDS: &str = "best with the boards you named";

/// "Proven: no plan takes less wood, with these boards to buy: 2 of G, 1 of H. Others, or fewer kinds of them, may do with less."; where
/// each kind was tried alone, that; where it holds of all that were named, "… with any of the boards you named."
pub fn proven_with_boards(said: &str, boards: &str, kinds: Kinds) -> String {
    if kinds == Kinds::All {
        return held_for(said, &["with any of the boards you named".to_owned()]);
    }
    let said = held_for(said, &[format!("with these boards to buy: {boards}")]);
    let tried = match kinds {
        Kinds::EachAlone => EACH_ALONE,
        Kinds::InPairs => IN_PAIRS,
        Kinds::Together | Kinds::All => "Others, or fewer kinds of them, may do with less.",
    };
    format!("{said} {tried}")
}

/// What was tried is no proof: other mixes of kinds were not, nor all numbers of them.
const EACH_ALONE: &str = "Each kind you named was tried alone, and all together: of these plans this one buys the least.";
const IN_PAIRS: &str = "Each kind you named was tried alone, every two of them, and all together: of these plans this one buys the least.";

/// "without the 4 pieces in the job that are left out".
pub fn without_own(n: &str, one: bool) -> String {
    if one {
        "without the one piece in the job that is left out".to_owned()
    } else {
        format!("without the {n} pieces in the job that are left out")
    }
}

/// "No plan can make more, by crosscuts alone."
pub fn held_for(said: &str, limits: &[String]) -> String {
    let limits: Vec<String> = limits.iter().map(|limit| format!(", {limit}")).collect();
    format!("{}{}.", said.trim_end_matches('.'), limits.concat())
}

/// "D has just the section of rail, which is only crosscut: nothing need be over in thickness or width."
pub fn just_right(letter: &str, part: &str) -> String {
    format!("{letter} has just the section of {part}, which is only crosscut: nothing need be over in thickness or width.")
}

/// "D is wide enough for two of cleat side by side, and gives one here."
pub fn wide_enough_for_two(letter: &str, part: &str) -> String {
    format!("{letter} is wide enough for two of {part} side by side, and gives one here.")
}

/// "One whole tile is planned of each piece, though A and B would give two. To plan with both, saw them in two and count them as such."
pub fn one_tile_each(letters: &[String]) -> String {
    let all = super::plan::and(letters);
    format!(
        "One whole tile is planned of each piece, though {all} would give two. To plan with both, saw them in two and count them as such."
    )
}

/// "3 of strip, 19 7/8 in each, need 60 3/8 in with kerf and both ends trimmed, and A is 60 in: it gives 2."
pub fn trims_decide([n, gives]: [&str; 2], part: &str, [each, needs, long]: [&str; 3], letter: &str) -> String {
    format!("{n} of {part}, {each} each, need {needs} with kerf and both ends trimmed, and {letter} is {long}: it gives {gives}.")
}

pub const PLAN_THE_PARTS: &str = "Plan the job’s parts";
pub const RIPPED_TOO: &str = "two side by side, ripped too";
pub const REST_MAY_BE_BETTER: &str = "Proven: the rows and the waste in length. Not proven: how it shares out short and long strips.";

/// Where several tiles come out of a board: as many as its ends give of the shorter ones are looked for with one way to share them out.
pub const NO_NEARER_OF_WHOLE_TILES: &str = "No field of so many tiles of these sizes comes nearer. The shorter ones are cut of the ends of the boards, \
    the longest first: shared out otherwise, the same boards may give a few tiles more.";

/// Of any pattern the one that was planned alone.
pub const NO_NEARER_IN_PATTERN: &str = "No field of tiles of these sizes in this pattern comes nearer; others may.";

/// "How near it comes is looked at first; the waste is 42.9 %. Leave piles out under Pieces to use to try others."
pub fn only_near(percent: &str, several: bool) -> String {
    let try_others = if several { " To try other piles, leave these out under Pieces to use." } else { "" };
    format!("How near it comes is looked at first; the waste is {percent} %.{try_others}")
}

/// "How near it comes is looked at first: of 12 fields that were planned none as near wastes less than this, 22.9 %."
pub fn least_of_as_near(n: &str, percent: &str) -> String {
    format!("How near it comes is looked at first: of {n} fields that were planned none as near wastes less than this, {percent} %.")
}

// One cut in each row
/// "An end piece would be 95 mm, your least is 100 mm. With it 6 rows can be laid."; "With it 7 strips do."
pub fn short_end([end, least]: [&str; 2], gives: &str) -> String {
    format!("An end piece would be {end}, your least is {least}. With it {gives}.")
}

pub fn can_be_laid(rows: &str, one: bool) -> String {
    format!("{rows} {} can be laid", if one { "row" } else { "rows" })
}

pub fn strips_do(strips: &str, one: bool) -> String {
    format!("{strips} {}", if one { "strip does" } else { "strips do" })
}

/// "Each end is cut from a strip of its own. Cut in pieces, 7 strips do."
pub fn own_strip(strips: &str) -> String {
    format!("Each end is cut from a strip of its own. Cut in pieces, {strips}.")
}

pub const LEAST_END: &str = "Least end piece";
pub const LEAST_PIECE: &str = "Least piece";
pub const LEAST_STRIP: &str = "Least strip";
/// "How far apart the joints are decides: at 9 in all 9 rows can be laid of these pieces."
pub fn joints_decide(apart: &str, rows: &str, [one, all]: [bool; 2]) -> String {
    let rows = match (all, one) {
        (true, true) => "the one row".to_owned(),
        (true, false) => format!("all {rows} rows"),
        (false, true) => "one row".to_owned(),
        (false, false) => format!("{rows} rows"),
    };
    format!("How far apart the joints are decides: at {apart} {rows} can be laid of these pieces.")
}

/// "Plan with joints 9 in apart", and beneath it what is asked now.
pub fn joints_nearer(apart: &str, now: &str) -> [String; 2] {
    [format!("Plan with joints {apart} apart"), format!("now {now} from joint to joint")]
}

pub const CUT_IN_PIECES: &str = "Plan with strips cut in pieces";
pub const END_IS_CUT: &str = "now only an end piece is cut";

/// "This is the top of one of 2."
pub fn of_one(top: bool, of: &str) -> String {
    format!("This is the {} of one of {of}.", if top { "top" } else { "field" })
}

/// The fewest that are proven, and what the plan takes where that is more.
pub fn takes_more(pieces: &str) -> String {
    format!("This one takes {pieces}.")
}

// How near
/// "600 × 300 mm, 20 high"; of one side alone "600 mm wide".
pub fn sides(across: [Option<&str>; 2], high: Option<&str>) -> String {
    let across = match across {
        [Some(wide), Some(deep)] => format!("{wide} × {deep}"),
        [Some(wide), None] => format!("{wide} wide"),
        [None, Some(deep)] => format!("{deep} deep"),
        [None, None] => return high.map_or_else(String::new, |high| format!("{high} high")),
    };
    high.map_or_else(|| across.clone(), |high| format!("{across}, {high} high"))
}

/// "Brick, 600 × 300 mm, 40 high, in 2 layers."
pub fn field(pattern: &str, sides: &str, layers: Option<&str>) -> String {
    let layers = layers.map_or_else(String::new, |layers| format!(", in {layers} layers"));
    format!("{pattern}, {sides}{layers}.")
}

/// "None within 3 mm was found. The nearest, of tiles 318 × 118, is 592 × 363 mm, 38 high."
pub fn not_within(near: &str, [long, wide]: [&str; 2], nearest: &str) -> String {
    format!("None within {near} was found. The nearest, of tiles {long} × {wide}, is {nearest}.")
}

/// "Asked: brick, 600 × 300 mm, 20 high. It is 8 narrower, 63 deeper, 18 higher."
pub fn asked(asked: &str, off: Option<&[String]>) -> String {
    match off {
        None => format!("Asked: {asked}."),
        Some([]) => format!("Asked: {asked}. It is just so."),
        Some(off) => format!("Asked: {asked}. It is {}.", off.join(", ")),
    }
}

/// How a side differs: the width, the depth, the height.
pub fn off(side: usize, more: bool, by: &str) -> String {
    let word = match (side, more) {
        (0, true) => "wider",
        (0, false) => "narrower",
        (1, true) => "deeper",
        (1, false) => "less deep",
        (_, true) => "higher",
        (_, false) => "lower",
    };
    format!("{by} {word}")
}

/// "1 mm narrower, 399 mm, needs 7 rows."
pub fn narrower(by: &str, width: &str, (rows, one): (&str, bool)) -> String {
    format!("{by} narrower, {width}, needs {rows} {}.", if one { "row" } else { "rows" })
}

/// "Strips: too narrow for 7 rows in 400 mm."
pub fn too_narrow_for(pile: &str, (rows, one): (&str, bool), width: &str) -> String {
    format!("{pile}: too narrow for {rows} {} in {width}.", if one { "row" } else { "rows" })
}

/// "Left out: beech, C, too thin; ash, D, too short."
pub fn left_out(piles: &[String], more: Option<&str>) -> String {
    let more = more.map_or(String::new(), |n| format!("; and {n} more, see Pieces to use"));
    format!("Left out: {}{more}.", piles.join("; "))
}

/// "Its tiles lie both ways, and so it moves: each across its own 57 mm by 0.4 mm through the year at most."
pub fn moves_both_ways(blocks: bool, width: &str, moves: &str) -> String {
    let what = if blocks { "blocks" } else { "tiles" };
    format!("Its {what} lie both ways, and so it moves: each across its own {width} by {moves} through the year at most.")
}

/// "2 more of A or 3 more of B make one row more.", "15 more of A make all 8 rows."; where fewer may do "With 17 more of A all 8 rows were
/// found."; where no plan was found "All 8 rows need at least 15 more of A."
pub fn makes_rows(more: &str, one: bool, all: Option<&str>, known: Known) -> String {
    let rows = all.map_or_else(|| "one row more".to_owned(), |rows| format!("all {rows} rows"));
    match (known, all.is_some()) {
        (Known::Least, _) => format!("{more} {} {rows}.", if one { "makes" } else { "make" }),
        (Known::Found, true) => format!("With {more} {rows} were found."),
        (Known::Found, false) => format!("With {more} {rows} was found."),
        (Known::AtLeast, _) => format!("{} need at least {more}.", begin_large(&rows)),
    }
}

/// "5 mm in its width, 300 mm of which lie across the grain".
pub fn side_moves(width: bool, moves: &str, across: &str) -> String {
    format!("{moves} in its {}, {across} of which lie across the grain", if width { "width" } else { "depth" })
}

/// "Its tiles lie both ways, and so it moves through the year: at most 5 mm in its width, 300 mm of which lie across the grain, and 4.1 mm in
/// its depth, 240 mm of which lie across the grain."
pub fn moves_in_all(sides: &[String]) -> String {
    format!("Its tiles lie both ways, and so it moves through the year: at most {}.", sides.join(", and "))
}

/// "The top, 300 mm wide, moves 4.3 mm through the year at most."
pub fn part_moves(part: &str, width: &str, moves: &str) -> String {
    format!("The {part}, {width} wide, moves {moves} through the year at most.")
}

pub const PRINTED_EARLY: &str = "Printed before the search was done: a better plan may have been found since.";

/// "A 8 of 20", "B 4": all of a pile, or boards to buy.
pub fn of_one_pile(letter: &str, n: &str, of: Option<&str>) -> String {
    of.map_or_else(|| format!("{letter} {n}"), |of| format!("{letter} {n} of {of}"))
}

/// "Used 12 of 31 pieces: A 8 of 20, B 4."; of one pile as it is.
pub fn by_pile(used: String, piles: &[String]) -> String {
    if piles.len() < 2 { used } else { format!("{}: {}.", used.trim_end_matches('.'), piles.join(", ")) }
}
