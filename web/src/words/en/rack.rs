//! English: the rack: looking for wood, what a pile is, what is done with it, the walk round, bought boards.

use super::count;
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::kind::haul::{Fate, Way};
use fivebar_core::quantity::{Id, Listed, Units};
use fivebar_core::sheet::stock::Drift;
use fivebar_core::sheet::stock::find::Order;

pub const FIND: &str = "Find";
pub const ANY_SIZE: &str = "any size";
pub const CLEAR: &str = "Clear";
pub const WOOD: &str = "Wood";
pub const ANY: &str = "any";
pub const FROM: &str = "From";
pub const ANYWHERE: &str = "anywhere";
pub const BOUGHT_ONLY: &str = "bought";
pub const ORDER: &str = "Order";
pub const LONG: &str = "How long, or longer";
pub const WIDE: &str = "How wide, or wider";
pub const THICK: &str = "How thick";
pub const OR_THICKER: &str = "or thicker";
pub const JUST_SO: &str = "just so";
pub const EMPTY_IS_ANY: &str = "Left empty, any will do.";
pub const SHOW_THEM: &str = "Show them";
pub const NOTHING_LIKE_IT: &str = "Nothing on the rack is like that.";
pub const LEAVE_SHORTER: &str = "Leave the shorter ones out";
pub const SHORTER: &str = "Too short";
pub const NO_SIZE: &str = "Some of these may do: a band, or no size yet";
pub const WALK_ROUND: &str = "Walk round";
pub const BOUGHT_BOARDS: &str = "Boards you bought";
pub const WRITE_DOWN: &str = "write them down";
pub const FORGOTTEN_SUPPLIER: &str = "name forgotten";

pub const ON_RACK: &str = "on the rack";
pub const FREE: &str = "free";
pub const AGE: &str = "begun";
pub const LIES: &str = "lies";
pub const MOISTURE: &str = "moisture";
pub const VOLUME: &str = "volume";
/// A pile that still lies at the bin, or is on the road.
pub const NOT_HOME_YET: &str = "not home yet";
pub const BOUGHT: &str = "bought boards";
pub const OFFCUTS: &str = "offcuts";
pub const WALKED: &str = "walked round";
pub const NEVER: &str = "never";
pub const NOT_SAID: &str = "not said";
pub const COST_UNKNOWN: &str = "cost not known";
pub const WET: &str = "wet";
pub const DRIFTED: &str = "by the rack’s counts";
pub const A_GONE_JOB: &str = "a job that was taken back";

pub const COUNT_IT: &str = "Count it";
pub const SET_APART: &str = "Set apart";
pub const FOR_A_JOB: &str = "for a job";
pub const FREE_AGAIN: &str = "Free again";
pub const GONE: &str = "Gone";
pub const GONE_UNDER: &str = "burnt, given, jigs";
pub const WHERE_IT_LIES: &str = "Where it lies";
pub const MOISTURE_KEY: &str = "Moisture";
pub const TAKE: &str = "Take";
pub const HISTORY: &str = "What happened to it";
pub const STRIKE: &str = "Strike";
pub const MEND: &str = "Put it right";
pub const OLD_IS_KEPT: &str = "What was written stays in the book beside it.";

pub const HOW_MANY_LIE: &str = "How many lie there?";
pub const FOUND: &str = "Found";
pub const HOW_MANY: &str = "How many?";
pub const WHY: &str = "Why, where it differs (no names here)";
pub const FOR_WHICH: &str = "For which job?";
pub const NO_JOBS: &str = "No job is in hand. Begin one on Jobs first.";
pub const TO_JOBS: &str = "To Jobs";
pub const CHOOSE_A_JOB: &str = "Choose the job.";
pub const GONE_WHERE: &str = "Where did they go?";
pub const PLACE: &str = "Where it lies (no names here)";
pub const EARLIER_PLACES: &str = "As before";
pub const PER_CENT_OF_DRY: &str = "Per cent of the dry wood, as a meter shows it.";
pub const PLAINLY_WET: &str = "Plainly wet";
pub const ALL_OF_THEM: &str = "all";
pub const ALL_FREE: &str = "all free ones";
pub const SAVE: &str = "Write it down";

pub const FEWER: &str = "Fewer";
pub const MORE: &str = "More";
pub const TYPE_IT: &str = "Type it";
pub const END_WALK: &str = "End the walk";
pub const SKIP: &str = "Skip";
pub const NONE_COUNTED: &str = "Nothing was counted.";
pub const NONE_DRIFTED: &str = "All as the book says.";

pub const THICKNESS: &str = "Thick";
pub const WIDTH: &str = "Wide";
pub const LENGTH: &str = "Long";
pub const LONGEST: &str = "Up to";
pub const BOARDS: &str = "Boards";
pub const PAID: &str = "Paid, all";
pub const BOUGHT_UNDER: &str = "They lie on the rack with their price, and jobs take them like any pile.";
pub const WHICH_WOOD: &str = "Which wood?";
pub const FROM_WHOM: &str = "From whom?";

/// "18 in or longer", "18 in or longer, 1 in thick".
pub fn looked_for((long, wide): (Option<&str>, Option<&str>), thick: Option<(&str, bool)>) -> String {
    let long = long.map(|long| format!("{long} or longer"));
    let thick = thick.map(|(thick, just)| if just { format!("just {thick} thick") } else { format!("{thick} thick or more") });
    let said: Vec<String> = long.into_iter().chain(thick).chain(wide.map(|wide| format!("{wide} wide or more"))).listed();
    if said.is_empty() { ANY_SIZE.to_owned() } else { said.join(", ") }
}

pub fn order(order: Order) -> &'static str {
    match order {
        Order::Oldest => "oldest first",
        Order::Longest => "longest first",
        Order::Most => "most pieces",
    }
}

/// "Ash strips".
pub fn wood_and_name(wood: &str, name: &str) -> String {
    format!("{wood} {name}")
}

/// "4 of 6 piles, 46 pieces".
pub fn found(n: &str, of: &str, pieces: &str) -> String {
    format!("{n} of {of} piles, {pieces}")
}

/// "the line across the boards: 18 in".
pub fn mark(long: &str) -> String {
    format!("the line across the boards: {long}")
}

/// "2 piles are shorter: show all 6".
pub fn shorter(n: usize, written: &str, all: &str) -> String {
    if n == 1 { format!("{written} pile is shorter: show all {all}") } else { format!("{written} piles are shorter: show all {all}") }
}

/// "3 piles not looked at for 12 weeks".
pub fn not_looked_at(n: usize, written: &str, weeks: &str) -> String {
    if n == 1 {
        format!("{written} pile not looked at for {weeks} weeks")
    } else {
        format!("{written} piles not looked at for {weeks} weeks")
    }
}

/// "4 set apart for Bench".
pub fn apart_for(n: &str, job: &str) -> String {
    let job = if job.is_empty() { A_GONE_JOB } else { job };
    format!("{n} set apart for {job}")
}

/// "4 set apart for this job".
pub fn apart_for_it(n: &str) -> String {
    format!("{n} set apart for this job")
}

/// "4 set apart", in a row of the rack.
pub fn apart(n: &str) -> String {
    format!("{n} set apart")
}

/// "12 set apart for Stands: 10 left".
pub fn left_of(apart: &str, left: &str) -> String {
    format!("{apart}: {left} left")
}

/// "Ash strips, 12 set apart for Stands: 10 left".
pub fn of_pile(pile: &str, said: &str) -> String {
    format!("{pile}, {said}")
}

/// "in Bench".
pub fn in_job(job: &str) -> String {
    format!("in {}", if job.is_empty() { A_GONE_JOB } else { job })
}

/// "for Bench".
pub fn for_job(job: &str) -> String {
    format!("set apart for {}", if job.is_empty() { A_GONE_JOB } else { job })
}

/// "$5.50 a board foot".
pub fn a_measure(price: &str, units: Units) -> String {
    match units {
        Units::Inch => format!("{price} a board foot"),
        Units::Metric => format!("{price} a litre"),
    }
}

/// "11 %".
pub fn percent(written: &str) -> String {
    format!("{written} %")
}

/// "4 apart" under a job's name.
pub fn has_apart(n: &str) -> String {
    format!("{n} apart for it")
}

/// What a count of the rack means, with its figures written: by the counts, found, and the difference.
pub fn drift(drift: Drift, [told, found, differs]: [&str; 3]) -> String {
    match (drift.missing, drift.more) {
        (0, 0) => format!("{told} by the counts, {found} found."),
        (0, _) => format!("{told} by the counts, {found} found, {differs} more: what they cost comes off the workshop costs."),
        (1, _) => format!("{told} by the counts, {found} found, {differs} missing: its share goes to workshop costs."),
        _ => format!("{told} by the counts, {found} found, {differs} missing: their share goes to workshop costs."),
    }
}

/// "22 by the counts."
pub fn by_the_counts(told: &str) -> String {
    format!("{told} by the counts.")
}

/// "22 should lie here, last in a hand Thu 20 November".
pub fn looked_last(n: &str, day: &str) -> String {
    format!("{n} should lie here, last in a hand {day}")
}

/// "As it is: 22".
pub fn as_it_is(n: &str) -> String {
    format!("As it is: {n}")
}

/// "Found 19".
pub fn found_n(n: &str) -> String {
    format!("Found {n}")
}

/// "3 of 4 piles counted".
pub fn walked(n: &str, of: &str) -> String {
    format!("{n} of {of} piles counted")
}

/// "1 of 3".
pub fn nth_of(nth: &str, of: &str) -> String {
    format!("{nth} of {of}")
}

/// "Set 4 apart".
pub fn set_apart_n(n: &str) -> String {
    if n.is_empty() { SET_APART.to_owned() } else { format!("Set {n} apart") }
}

/// "Take 4".
pub fn take_n(n: &str) -> String {
    if n.is_empty() { TAKE.to_owned() } else { format!("Take {n}") }
}

pub const NONE_LIES_THERE: &str = "none lies there";
pub const NONE_FREE: &str = "none there is free";

/// "4 free again".
pub fn free_n(n: &str) -> String {
    if n.is_empty() { FREE_AGAIN.to_owned() } else { format!("{n} free again") }
}

/// Where pieces of no job went, by the key of the book; a key of a newer version is shown as it is.
pub fn gone_to(key: &str) -> String {
    match key {
        "burnt" => "burnt".to_owned(),
        "given" => "given away".to_owned(),
        "jigs" => "to jigs".to_owned(),
        other => other.replace('-', " "),
    }
}

/// A line of a pile's history: what was done, in a few words. `n` is its number of pieces, `job` the name of its job.
pub fn told(fact: &Fact, (n, job): (&str, &str), here: Id) -> String {
    match fact {
        Fact::PileAdded(_) => "begun".to_owned(),
        Fact::PileDescribed(_) => "name or size".to_owned(),
        Fact::PiecesCounted(f) => match f.way {
            Way::Tap | Way::Bundle => format!("{n} counted"),
            Way::Layers => format!("{n} counted by layers"),
            Way::Weight => format!("{n} counted by weight"),
        },
        Fact::PiecesMoved(f) if f.to == here => format!("{n} came from another pile"),
        Fact::PiecesMoved(_) => format!("{n} went to another pile"),
        Fact::PiecesRecounted(f) => with_reason(format!("counted again: {n}"), f.why.as_deref()),
        Fact::PiecesSorted(_) => format!("{n} sorted good"),
        Fact::PiecesRejected(f) => format!("{n} rejected: {}", fivebar_core::quantity::in_small(&count::reason(f.why.as_str()))),
        Fact::RejectsReturned(f) => match f.to {
            Fate::Good => format!("{n} good after all"),
            Fate::Jigs => format!("{n} rejected, to jigs"),
            Fate::Burnt => format!("{n} rejected, burnt"),
        },
        Fact::PiecesTaken(_) => format!("{n} to {}", named(job)),
        Fact::PiecesFreed(_) => format!("{n} back from {}", named(job)),
        Fact::PiecesLeft(_) => format!("{n} left over by {}", named(job)),
        Fact::PieceMeasured(_) => "a piece measured".to_owned(),
        Fact::EnoughSet(_) => "what you need of it".to_owned(),
        Fact::MoistureRead(f) => match f.wet {
            Some(true) => "plainly wet".to_owned(),
            Some(false) if f.percent.is_none() => "not wet any more".to_owned(),
            _ => "moisture read".to_owned(),
        },
        Fact::PileCounted(f) => with_reason(format!("walked round: {n}"), f.why.as_deref()),
        Fact::PilePlaced(f) if f.place.is_empty() => "lies nowhere special".to_owned(),
        Fact::PilePlaced(f) => format!("lies {}", f.place),
        Fact::PiecesReserved(_) => format!("{n} set apart for {}", named(job)),
        Fact::ReservationFreed(_) => format!("{n} free again, were for {}", named(job)),
        Fact::LeftoversGone(f) => format!("{n} gone: {}", gone_to(f.to.as_ref().map_or("burnt", |to| to.as_str()))),
        other => super::acts::named(other).to_owned(),
    }
}

/// "22 counted, in 5 counts".
pub fn in_acts(what: &str, acts: &str) -> String {
    format!("{what}, in {acts} counts")
}

/// "20 counted, was 22".
pub fn was(what: &str, old: &str) -> String {
    format!("{what}; was {old}")
}

fn named(job: &str) -> &str {
    if job.is_empty() { A_GONE_JOB } else { job }
}

fn with_reason(what: String, why: Option<&str>) -> String {
    why.map_or(what.clone(), |why| format!("{what}, {why}"))
}
