//! English: what has changed since a plan was made, what of it is missing, and what was left out of it.

use super::plan::{SAW_FIGURES, listed};
use fivebar_core::quantity::{begin_large, in_small};

/// "The size of A has changed since: plan again."
pub fn sizes(letters: &[String]) -> String {
    let (what, has) = if letters.len() == 1 { ("size", "has") } else { ("sizes", "have") };
    format!("The {what} of {} {has} changed since: plan again.", listed(letters, "and"))
}

/// "The count of A has changed since: the figures are of then. Plan again to count with it."; the plan can be used all the same.
pub fn counts(letters: &[String]) -> String {
    let (what, has, it) = if letters.len() == 1 { ("count", "has", "it") } else { ("counts", "have", "them") };
    format!("The {what} of {} {has} changed since: the figures are of then. Plan again to count with {it}.", listed(letters, "and"))
}

/// "The wood of A has changed since: plan again."
pub fn woods(letters: &[String]) -> String {
    let (what, has) = if letters.len() == 1 { ("wood", "has") } else { ("woods", "have") };
    format!("The {what} of {} {has} changed since: plan again.", listed(letters, "and"))
}

/// "A has another size or wood now than the plan was made for: plan again."
pub fn other_now(letters: &[String]) -> String {
    let has = if letters.len() == 1 { "has" } else { "have" };
    format!("{} {has} another size or wood now than the plan was made for: plan again.", listed(letters, "and"))
}

/// Over the list at the saw of a plan that is used.
pub const LIST_OF_BEFORE: &str = "This list is of before that changed.";

/// "Kerf and off long edges have changed since: plan again."
pub fn saw(places: &[usize]) -> String {
    let names: Vec<String> = places.iter().filter_map(|nth| SAW_FIGURES.get(*nth)).map(|name| in_small(name)).collect();
    let has = if names.len() == 1 { "has" } else { "have" };
    format!("{} {has} changed at the saw since: plan again.", begin_large(&listed(&names, "and")))
}

pub const MACHINES: &str = "What your machines take has changed since: plan again.";
pub const PARTS: &str = "The parts have changed since: plan again.";

/// "Leg and top have changed since: plan again."
pub fn parts(names: &[String]) -> String {
    let has = if names.len() == 1 { "has" } else { "have" };
    format!("{} {has} changed since: plan again.", begin_large(&listed(names, "and")))
}

// What is cut already
pub const CUT_SINCE: &str = "What is ticked as cut of the plan before has changed since: plan again.";

/// "18 pieces are cut and stay; planned anew: the other 12."
pub fn cut_and_rest((cut, one): (&str, bool), rest: &str) -> String {
    let are = if one { "piece is cut and stays" } else { "pieces are cut and stay" };
    format!("{cut} {are}; planned anew: the other {rest}.")
}

/// "3 strips are cut for parts that are glued up: only what these lack is planned anew, and the plan in use goes on with them."
pub fn strips_cut((cut, one): (&str, bool), goes_on: bool) -> String {
    let (of, lacks, them) = if one {
        ("strip is cut for a part that is glued up", "it lacks", "it")
    } else {
        ("strips are cut for parts that are glued up", "these lack", "them")
    };
    let on = if goes_on { format!(", and the plan in use goes on with {them}") } else { String::new() };
    format!("{cut} {of}: only what {lacks} is planned anew{on}.")
}

/// "2 boards are cut and stay in the job: none of them is planned with, and all of this is planned anew."
pub fn cut_boards(cut: &str, one: bool) -> String {
    if one {
        format!("{cut} board is cut and stays in the job: it is not planned with, and all of this is planned anew.")
    } else {
        format!("{cut} boards are cut and stay in the job: none of them is planned with, and all of this is planned anew.")
    }
}

/// "3 of these 8 rows are cut already, and are planned again here."
pub fn rows_cut((cut, one): (&str, bool), of: &str) -> String {
    let are = if one { "is" } else { "are" };
    format!("{cut} of these {of} rows {are} cut already, and {are} planned again here.")
}

pub fn other_rows(left: &str) -> String {
    format!("Plan the other {left} alone")
}

pub const ALL_ANEW: &str = "Plan all of it anew";
pub const ALL_ANEW_UNDER: &str = "with none of the rows that are cut";

/// "3 of the 8 rows are cut already; these are the others."
pub fn others_of_rows((cut, one): (&str, bool), of: &str) -> String {
    let are = if one { "is" } else { "are" };
    format!(
        "{cut} of the {of} rows {are} cut already; these are the others. Their joints keep apart among themselves, not from those of the cut rows: look at each joint beside a cut row by eye, and where two come near, turn that row or lay it elsewhere."
    )
}

/// "2 of A, 310 and 280".
pub fn cut_of(n: &str, letter: &str, lengths: &[String]) -> String {
    format!("{n} of {letter}, {}", listed(lengths, "and"))
}

/// "Cut already, in no row: 2 of A, 310 and 280; 1 of B, 418. The rows they were for are planned anew."
pub fn loose(all: &[String]) -> String {
    format!("Cut already, in no row: {}. The rows they were for are planned anew.", all.join("; "))
}

/// "No plan can make more, of the boards that are not cut. The pieces that are cut may make more."
pub fn of_the_uncut(never: &str) -> String {
    let never = if never.is_empty() { String::new() } else { format!("{}, of the boards that are not cut. ", never.trim_end_matches('.')) };
    format!("{never}The pieces that are cut may make more.")
}

pub const BEST_OF_THE_UNCUT: &str = "most rows of the boards not cut";

/// "A 310: row 2, piece 1"; of a longer one "A 310, cut to 280: row 2, piece 1".
pub fn spot(piece: &str, cut_to: Option<&str>, at: &str) -> String {
    let cut = cut_to.map_or(String::new(), |length| format!(", cut to {length}"));
    format!("{piece}{cut}: {at}")
}

/// "They may lie in place of pieces of this plan, which need not be cut then. A 310: row 2, piece 1; A 280: row 3, piece 2."
pub fn may_lie(spots: &[String]) -> String {
    let who = if spots.len() == 1 { "It may lie" } else { "They may lie" };
    format!("{who} in place of pieces of this plan, which need not be cut then. {}.", spots.join("; "))
}

/// "1 of them is shorter than any piece of these rows that is left."
pub fn lie_nowhere(n: &str, [one, all]: [bool; 2]) -> String {
    let who = match (one, all) {
        (true, true) => "It is".to_owned(),
        (false, true) => "They are".to_owned(),
        (true, false) => "One of them is".to_owned(),
        (false, false) => format!("{n} of them are"),
    };
    format!("{who} shorter than any piece of these rows that is still to be cut.")
}

/// "4 of 6 rows".
pub fn so_many_rows_of(n: &str, of: &str) -> String {
    format!("{n} of {of} rows")
}

/// "The plan before goes on with the 7 boards that are not cut; this one takes 8."
pub fn goes_on((uncut, one): (&str, bool), takes: &str) -> String {
    format!("The plan before goes on with {}, and makes all its rows; this one takes {takes}.", that_go_on(uncut, one))
}

/// "The plan before goes on with the 6 boards that are not cut, and makes 9 of 11 rows; this one 8."
pub fn goes_on_to((uncut, one): (&str, bool), [makes, of, this]: [&str; 3]) -> String {
    format!("The plan before goes on with {}, and makes {makes} of {of} rows; this one {this}.", that_go_on(uncut, one))
}

/// "The plan before goes on with the 6 boards that are not cut, and makes 9 of 11 rows, too; this one takes 7."
pub fn goes_on_as_far((uncut, one): (&str, bool), [makes, of]: [&str; 2], takes: &str) -> String {
    format!("The plan before goes on with {}, and makes {makes} of {of} rows, too; this one takes {takes}.", that_go_on(uncut, one))
}

fn that_go_on(n: &str, one: bool) -> String {
    if one { "the one board that is not cut".to_owned() } else { format!("the {n} boards that are not cut") }
}

/// "The plan before makes all 7 rows with the 12 boards that are not cut: nothing is to be bought for it."
pub fn before_makes_all(rows: &str, (uncut, one): (&str, bool)) -> String {
    let boards = that_go_on(uncut, one);
    format!("The plan before makes all {rows} rows with {boards}: nothing is to be bought for it.")
}

pub const TO_PLAN_BEFORE: &str = "Back to the plan before";

/// "This other way: 4 of 5 rows. No plan can make more."
pub fn other_way(made: &str) -> String {
    format!("This other way: {made}")
}

/// "The parts of 2 pieces are all cut. To plan more of them, ask for more pieces of the job."
pub fn all_cut(sets: &str, one: bool) -> String {
    let pieces = if one { "piece" } else { "pieces" };
    format!("The parts of {sets} {pieces} are all cut. To plan more of them, ask for more pieces of the job.")
}

/// "The other parts, 12."; "Of the other 12 parts some lack wood."
pub fn rest_made(rest: &str, all: bool) -> String {
    if all { format!("The other parts, {rest}.") } else { format!("The other parts, {rest}, do not all come out of these pieces.") }
}

/// "Of what lies there alone the other parts do not all come: boards to buy fill the rest."
pub fn rack_gives_no_rest(proven: bool) -> String {
    let none = if proven { "the other parts do not all come" } else { "no plan of all the other parts was found" };
    format!("Of what lies there alone {none}: {}", super::plan::FILL_THE_REST)
}

/// "The other parts, 12: no plan of all of them was found."
pub fn rest_not_found(rest: &str) -> String {
    format!("The other parts, {rest}: no plan of all of them was found.")
}

pub const REST_NEVER: &str = "No plan of them gives all.";

/// "They lack 2 of leg and 1 of rail."
pub fn rest_lacks(parts: &[String]) -> String {
    format!("They lack {}.", listed(parts, "and"))
}

// What an older book does not say
pub const NO_NAMES: &str = "This is an older plan: some of its parts have no name here, and go by their places.";
pub const NO_SIZES: &str = "This is an older plan: how thick and wide some of its pieces were is not known, so nothing is said by volume.";

/// "part 2".
pub fn nth_part(n: &str) -> String {
    format!("part {n}")
}

// What was left out
/// "Beech, C left out: nothing of it is needed."
pub fn left_out(name: &str, why: &str) -> String {
    format!("{name} left out: {why}.")
}

/// "Strips, beech", where other strips are of oak; "Strips, C".
pub fn with_its(name: &str, tells: &str) -> String {
    format!("{name}, {tells}")
}

/// "Beech, C was left out as it was then, and has changed since: plan again."
pub fn left_out_changed(name: &str) -> String {
    format!("{name} was left out as it was then, and has changed since: plan again.")
}

/// "Seat from oak, A: too narrow."
pub fn not_for_part(part: &str, pile: &str, why: &str) -> String {
    format!("{} from {}: {why}.", begin_large(part), fivebar_core::quantity::begin_small(pile))
}

/// "too narrow for rail by 1 mm": in small letters, as it stands behind the pile.
pub fn narrow_for(part: &str, by: &str) -> String {
    format!("too narrow for {part} by {by}")
}

pub const NOT_NEEDED: &str = "nothing of it is needed";
/// "C has just the section of strip: 7 of it alone do, 1.3 board feet."
pub fn does_with_less(letter: &str, parts: &[String], (n, one): (&str, bool), volume: &str) -> String {
    format!("{letter} has just the section of {}: {n} of it alone {}, {volume}.", super::plan::and(parts), if one { "does" } else { "do" })
}

pub const BY_YOU: &str = "not among the pieces to use";
pub const NARROW_FOR_ROWS: &str = "too narrow for these rows";

pub fn leave_out(part: &str) -> String {
    format!("Leave out {part}")
}

/// "Without seat, rail: no whole piece is planned."
pub fn without(parts: &str) -> String {
    format!("Without {parts}: no whole piece is planned.")
}

pub fn take_in(part: &str) -> String {
    format!("Take in {part} again")
}

pub const LEFT_OUT_UNDER: &str = "left out of this plan";
pub const PLANS_WITHOUT: &str = "plans without it";

// The wood of the plan before
/// "takes 9 pieces, asks about 9 of the plan before".
pub fn takes_and_asks(takes: &str, before: &str) -> String {
    format!("{takes}, asks about {before} of the plan before")
}

// What was put back of the wood of plans
/// "The job has 11 of the 14 boards its plans need; 3 of A are back on the rack."
pub fn lacking([has, needs]: [&str; 2], [there, gone]: [&[String]; 2], (plan, one): (bool, bool)) -> String {
    let plans = if plan { "plan needs" } else { "plans need" };
    let is = |one: bool| if one { "is" } else { "are" };
    let back = (!there.is_empty()).then(|| format!("; {} {} back on the rack", listed(there, "and"), is(one)));
    let missing = (!gone.is_empty()).then(|| format!("; {} no longer there for it", listed(gone, "and")));
    format!("The job has {has} of the {needs} boards its {plans}{}{}.", back.unwrap_or_default(), missing.unwrap_or_default())
}

/// "4 of the 8 here are not cut, by what is ticked at the saw; more would lie on the rack as whole ones."
pub fn not_cut(whole: &str, here: &str) -> String {
    format!("{whole} of the {here} here are not cut, by what is ticked at the saw; more would lie on the rack as whole ones.")
}

/// "A top in rows, used Mon, Mar 2 09:40: the job keeps no board of this plan, and it is in use no more."
pub fn no_board_of(shape: &str, used: &str) -> String {
    format!("{shape}, {used}: the job keeps no board of this plan, and it is in use no more.")
}

pub fn take_again(one: bool) -> &'static str {
    if one { "Take it again" } else { "Take them again" }
}

/// "3 of A".
pub fn take_again_under(there: &[String]) -> String {
    listed(there, "and")
}

/// "The same wood and thickness go for left of strips, 293."
pub fn goes_along(piles: &[String], (thick, wide): (bool, bool)) -> String {
    let sides = match (thick, wide) {
        (false, false) => "wood goes",
        (true, false) => "wood and thickness go",
        (false, true) => "wood and width go",
        (true, true) => "wood, thickness and width go",
    };
    format!("The same {sides} for {}, where it was taken from the board as it was.", listed(piles, "and"))
}

/// "3 only after the saw": it is on boards that are not cut yet.
pub fn after_the_saw(n: Option<&str>) -> String {
    n.map_or_else(|| "only after the saw".to_owned(), |n| format!("{n} only after the saw"))
}

// A plan that is wanted no more
pub const DROP: &str = "Drop this plan";
pub const DROP_UNUSED: &str = "it was not used";
pub const DROP_IN_USE: &str = "asks what becomes of its wood";
pub const PLAN_DROPPED: &str = "a plan dropped";

/// "The job has 9 pieces by this plan. Do they stay in it?"
pub fn drops(pieces: &str) -> String {
    format!("The job has {pieces} by this plan. Do they stay in it?")
}

pub const DROP_STAYS_UNDER: &str = "they are cut, or for something else of it";
pub const DROP_BACK_UNDER: &str = "where they were, with what it left";

// The last tick at the saw
pub const A_LINE: &str = "a line at the saw";

/// "tick of 2 × 71"; "tick taken off 2 × 71".
pub fn tick_of(line: &str, on: bool) -> String {
    if on { format!("tick of {line}") } else { format!("tick taken off {line}") }
}

/// "in the job already, in place of the plan before".
pub fn takes_in_place(takes: &str) -> String {
    format!("{takes}, in place of the plan before")
}

/// "The plan before is of 8 pieces the job had already. Does it stay?"
pub fn plan_of_own(pieces: &str) -> String {
    format!("The plan before is of {pieces} the job had already.")
}

pub const DOES_IT_STAY: &str = "Does it stay?";

pub const IT_STAYS: &str = "It stays";
pub const IT_STAYS_UNDER: &str = "it is cut, or for something else of it";
pub const GOES: &str = "Take it back";
pub const GOES_UNDER: &str = "with what it left on the rack";

/// "4 boards are ticked as cut. The job has 9 pieces by the plan before. Do they stay?"
pub fn is_cut(n: &str, one: bool, asked: &str) -> String {
    if one { format!("{n} board is ticked as cut. {asked}") } else { format!("{n} boards are ticked as cut. {asked}") }
}

/// "If a tick is wrong, take it off at the saw, then plan again."
pub fn wrong_tick(then: &str) -> String {
    format!("If a tick is wrong, take it off at the saw, then {then}.")
}

/// "Put back, the plan before it is in use again, with its 4 pieces."
pub fn in_use_again(pieces: &str) -> String {
    format!("Put back, the plan before it is in use again, with its {pieces}.")
}

pub const THEN_DROP: &str = "drop the plan there";
pub const THEN_PLAN: &str = "plan again";
pub const TAKE_TICK_OFF: &str = "to take off a wrong tick";

/// "Put back the 58 not cut".
pub fn put_back_uncut(n: &str) -> String {
    format!("Put back the {n} not cut")
}

/// "the 4 cut stay in the job"; "the one that is cut stays in the job".
pub fn cut_stay(n: &str, one: bool) -> String {
    if one { "the one that is cut stays in the job".to_owned() } else { format!("the {n} cut stay in the job") }
}

/// "3 cut of 5 × 71".
pub fn boards_cut_of(n: &str, line: &str) -> String {
    format!("{n} cut of {line}")
}

/// Over the question.
pub const WHAT_OF_ITS_WOOD: &str = "What becomes of its wood?";

/// "The job has 9 pieces by the plan before. Do they stay?"
pub fn has_by_plan_before(pieces: &str) -> String {
    format!("The job has {pieces} by the plan before.")
}

pub const DO_THEY_STAY: &str = "Do they stay?";

/// "The job has 9 pieces by the plan before. Do they stay? What it has by other plans stays."
pub const OTHERS_STAY: &str = "What it has by other plans stays.";

/// "Both make leg and rail."
pub fn both_make(all: &[String]) -> String {
    format!("Both make {}.", listed(all, "and"))
}

/// "Put back, all of them go: rail has no wood then."; "Taken back, rail has no plan."
pub fn made_alone(all: &[String], goes_back: bool) -> String {
    let (all, has) = (listed(all, "and"), if all.len() == 1 { "has" } else { "have" });
    if goes_back { format!("Put back, all of them go: {all} {has} no wood then.") } else { format!("Taken back, {all} {has} no plan.") }
}

pub const THE_TOP: &str = "the top";
pub const THE_FIELD: &str = "the field";

pub const THEY_STAY: &str = "They stay";
pub const THEY_STAY_UNDER: &str = "they are cut, or for something else of it";
pub const PUT_BACK: &str = "Put them back";
pub const PUT_BACK_UNDER: &str = "these are taken instead";

// The way to a pile, and to the saw
pub const THE_PILES: &str = "Its piles";
pub const PILE_UNDER: &str = "its size and its count";

pub const OTHER_PLANS: &str = "Its other plans";
pub const PLAN_IN_USE: &str = "The plan in use";
pub const PLANS_IN_USE: &str = "The plans in use";

/// "used Mon, Mar 2 09:40".
pub fn used_on(when: &str) -> String {
    format!("used {when}")
}

pub const AT_THE_SAW: &str = "At the saw";
pub const TO_THE_SAW: &str = "To the list at the saw";

/// "4 of 6 lines left to cut": a line at the saw may be many cuts.
pub fn cuts_left(left: &str, of: &str) -> String {
    match (left == of, of) {
        (true, "1") => "The one line is left to cut".to_owned(),
        (true, "2") => "Both lines left to cut".to_owned(),
        _ => format!("{left} of {of} lines left to cut"),
    }
}

/// "Shoe bench: 4 of 6 lines left to cut".
pub fn of_job(job: &str, left: &str) -> String {
    format!("{job}: {left}")
}

/// "A top in rows, used Mon, Mar 2 09:40": which of a job's lists at the saw.
pub fn of_plan(shape: &str, used: &str) -> String {
    format!("{shape}, {used}")
}

/// "new job, Board".
pub fn of_other_job(what: &str, job: &str) -> String {
    format!("{what}, {job}")
}

/// "They can't stay: this plan takes 8 of A from the rack, where 7 lie without them. To keep them, choose other piles and plan again."
pub fn too_few_if_they_stay(letter: &str, takes: &str, (there, one): (&str, bool)) -> String {
    let lie = if one { "lies" } else { "lie" };
    format!(
        "They can’t stay: this plan takes {takes} of {letter} from the rack, where {there} {lie} without them. To keep them, choose other piles and plan again."
    )
}

/// "Hall bench has 2 pieces of what this plan leaves of its boards."
pub fn has_of_its_leftovers(job: &str, pieces: &str) -> String {
    format!("{job} has {pieces} of what this plan leaves of its boards.")
}

/// "3 pieces; the job has 2"
pub fn more_than_the_job(made: &str, job: &str) -> String {
    format!("{made}; the job has {job}")
}

/// "3 pieces; the job has 2, takes 22 pieces from the rack"
pub fn and_under(more: &str, under: &str) -> String {
    format!("{more}, {under}")
}
