//! English: Jobs: the list, a new job, a job's page.

use super::common::sentence;
use fivebar_core::bench::Division;
use fivebar_core::ledger::kind::bench::{Kind, Stage};
use fivebar_core::ledger::kind::job::For;
use fivebar_core::quantity::{Units, begin_large, begin_small, in_small};

pub const NONE_YET: &str = "Yours: none yet";
pub const NEW_JOB: &str = "New job";
pub const NEW_JOB_UNDER: &str = "a name, how many, to order or to sell";
pub const TRY_EXAMPLE: &str = "Try the example";
pub const TRY_EXAMPLE_UNDER: &str = "two finished jobs, in no total and in no copy";
pub const FETCHING_EXAMPLE: &str = "The example is being written…";
pub const EXAMPLE: &str = "Example";
pub const EXAMPLE_UNDER: &str = "two jobs, in no total and in no copy";
pub const REMOVE: &str = "Remove";
pub const SEARCH: &str = "Search by name";
pub const NAME_AND_PIECES: &str = "Name and pieces";
pub const ALL_JOBS: &str = "All jobs";
pub const DUE_AND_OWED: &str = "Due and owed";
pub const FOR_SALE: &str = "For sale";
pub const IN_HAND: &str = "In hand";
pub const ENDED: &str = "Ended";
pub const SO_FAR_LEGEND: &str = "so far: fetch, sort, make, finish, sell";
pub const TO_COME: &str = "to come";
pub const UNREADABLE: &str = "This job can’t be worked out";

pub const SO_FAR: &str = "So far";
pub const NOTHING_LOGGED: &str = "nothing logged yet";
pub const COSTS: &str = "Costs";
pub const FROM_GALLERY: &str = "From the gallery";
pub const FROM_GALLERY_SMALL: &str = "due from the gallery";
pub const DUE_FROM_GALLERY: &str = "Still due from the gallery";
pub const GIVEN_UP: &str = "Will not be paid by the gallery";
pub const BEYOND_GALLERY: &str = "Of it, beyond what was due";
pub const TAX_AND_FEES: &str = "Tax and fees";
/// "Fees still to come, by card": of what is due.
pub fn fees_to_come(by: Option<&str>) -> String {
    by.map_or("Fees still to come".to_owned(), |by| format!("Fees still to come, {by}"))
}
pub const FEES_LOST: &str = "Fees of what went back";
pub const COSTS_UNKNOWN: &str = "nothing noted yet";
pub const AS_IT_STANDS: &str = "Left per hour, as it stands";

/// "Left per hour, as it stands, by card": where what is still to come bears a fee.
pub fn as_it_stands_by(by: &str) -> String {
    format!("{AS_IT_STANDS}, {by}")
}

pub const LEFT_IN_ALL: &str = "Left in all";

/// The key behind the latest that have ended: "61 more that have ended".
pub fn more_ended(n: usize) -> String {
    format!("{n} more that {} ended", if n == 1 { "has" } else { "have" })
}

/// The key that takes the others away again: "The latest 12 alone".
pub fn latest_ended(n: usize) -> String {
    format!("The latest {n} alone")
}

/// "Left per hour, 3 unsold".
pub fn rest_unsold(written: &str) -> String {
    format!("Left per hour, {written} unsold")
}

/// "3 unsold at nothing, left in all": of a job that is done with.
pub fn at_nothing(written: &str) -> String {
    format!("{written} unsold at nothing, left in all")
}

/// "Left per hour, 3 unsold, 2 of them at the gallery".
pub fn rest_some_at_gallery(all: &str, there: &str) -> String {
    format!("{}, {there} of them at the gallery", rest_unsold(all))
}

/// "Left per hour, 2 unsold, at the gallery".
pub fn rest_at_gallery(all: &str) -> String {
    format!("{}, at the gallery", rest_unsold(all))
}

/// "the gallery pays 144 for the 2 there"; "the galleries pay 216 for the 3 there".
pub fn gallery_pays((n, written): (u32, &str), sum: &str, are_several: bool) -> String {
    let who = if are_several { "the galleries pay" } else { "the gallery pays" };
    if n == 1 { format!("{who} {sum} for the one there") } else { format!("{who} {sum} for the {written} there") }
}

/// "if the gallery pays 144 for the 2 there".
pub fn if_gallery(pays: &str) -> String {
    format!("if {pays}")
}

/// "if it goes at 120, by card, and the gallery pays 144 for the 2 there".
pub fn and_gallery(if_go: &str, pays: &str) -> String {
    format!("{if_go}, and {pays}")
}

/// "if the other 3 go at 140, by card".
pub fn if_rest_go((n, written): (u32, &str), ask: &str, by: &str) -> String {
    if n == 1 { format!("if it goes at {ask}, {by}") } else { format!("if the other {written} go at {ask}, {by}") }
}

pub const AFTER_WORKSHOP: &str = "After workshop costs";
pub const NOT_KNOWN: &str = "not known yet";
pub const WOOD_AND_PLAN: &str = "Wood and plan";
pub const HOURS_AND_MONEY: &str = "Hours and money";
pub const SELL_AND_DELIVER: &str = "Sell and deliver";
pub const LOOK_BACK: &str = "Look back";
pub const NO_WOOD_YET: &str = "no wood taken yet";
pub const NOTHING_YET: &str = "nothing yet";
pub const NO_PRICE_YET: &str = "no price yet";
pub const AFTER_HAND_OVER: &str = "after hand-over";
/// Where all is handed over, and what an hour left is not known.
pub const HOW_IT_WENT: &str = "how it went";
pub const DONE_WITH_IT: &str = "done with it";
pub const MADE_TO_ORDER: &str = "made to order";
pub const MADE_ON_SPEC: &str = "made on spec";
pub const DUE_AT_HAND_OVER: &str = "due at hand-over";
pub const DEPOSIT_DUE: &str = "deposit due";
pub const THEN_AT_HAND_OVER: &str = "then at hand-over";
/// After a deposit that is due: "then 150.00".
pub fn then(sum: &str) -> String {
    format!("then {sum}")
}
pub const STILL_DUE: &str = "still due";
/// Of pieces of an order that were handed over: before what is due at the hand-over of the others.
pub const OWED_NOW: &str = "owed now";
pub const THEN_STILL_DUE: &str = "then still due";
pub const DEPOSIT_IN: &str = "deposit in";
/// Where pieces of the order were handed over: what came in is no deposit alone.
pub const IN_SO_FAR: &str = "in so far";
pub const PAID: &str = "paid";
/// Where a gallery handed over its part beside it.
pub const PAID_BY_BUYERS: &str = "paid by buyers";
pub const CAME_IN: &str = "Came in";
pub const WENT_BACK: &str = "Handed back";
/// What pieces of an order were sold for before it was changed.
/// Beside the price that was agreed.
pub const OFF_THE_PRICE: &str = "Off the price";

pub const BEFORE_CHANGE: &str = "Handed over before the change";
pub const PAID_FOR_OTHERS: &str = "Paid for others sold";
/// Beside an order that is open: of another, or of a sale that was taken back.
pub const KEPT_OF_OTHERS: &str = "Kept of what came to nothing";
pub const NOTHING_PAID: &str = "nothing paid yet";
pub const CAUTION_DELIVERY: &str = "Lifting guides are for close, level lifts. Stairs and long loads: less weight, more people.";
pub const CAUTION_TIP: &str = "Can tip. Fix to the wall; local furniture rules may apply.";

pub const NAME: &str = "Name";
/// Under the name of a job, where it is typed.
pub const BUYERS_READ_IT: &str = "Buyers read it where you show them the piece.";
pub const NAME_MISSING: &str = "It needs a name.";
pub const HOW_MANY_ALIKE: &str = "How many alike";
pub const OTHER: &str = "other";
pub const MADE_FOR: &str = "Made for";
pub const TO_SELL: &str = "To sell later";
pub const TO_ORDER: &str = "To order";
pub const START_JOB: &str = "Begin this job";
pub const CHANGE: &str = "Change";
pub const KEPT_FOR_GOOD: &str = "Currency and units, fixed with the start";
pub const UNITS: &str = "Units";
pub const CURRENCY: &str = "Currency";
pub const INCHES: &str = "Inches";
pub const MILLIMETRES: &str = "Millimetres";

/// "Ash plant stands, 5".
pub fn name(name: &str, pieces: u32, written: &str) -> String {
    if pieces == 1 { name.to_owned() } else { format!("{name}, {written}") }
}

/// "Nothing found for “stool”."
pub fn nothing_found(search: &str) -> String {
    format!("No job is called “{}”.", search.trim())
}

/// "Deliver Sat 23 May".
pub fn hand_over_by(day: &str) -> String {
    format!("Hand over {day}")
}

pub const TO_HAND_OVER: &str = "To hand over";

/// "tag $145".
pub fn tag(sum: &str) -> String {
    format!("tag {sum}")
}

/// "4 sold, 1 not for sale".
pub fn gone_and(gone: String, kept: u32, written: &str) -> String {
    if kept == 0 { gone } else { format!("{gone}, {written} not for sale") }
}

const NONE_SOLD_YET: &str = "none sold yet";
/// The job is done with, and nothing of it is left to sell.
pub const NONE_SOLD: &str = "none sold";

/// "4 sold, 1 at the gallery".
pub fn gone(sold: u32, gallery: u32, (sold_written, gallery_written): (&str, &str)) -> String {
    match (sold, gallery) {
        (0, 0) => NONE_SOLD_YET.into(),
        (_, 0) => format!("{sold_written} sold"),
        (0, _) => format!("{gallery_written} at the gallery"),
        _ => format!("{sold_written} sold, {gallery_written} at the gallery"),
    }
}

/// "22.46 due from the gallery".
pub fn gallery_owes(due: &str) -> String {
    format!("{due} due from the gallery")
}

/// "1 left".
pub fn left(n: &str) -> String {
    format!("{n} left")
}

/// "Next: milling".
pub fn next(what: &str) -> String {
    format!("Next: {}", lower_first(what))
}

/// "19.09 left per hour".
pub fn per_hour(sum: &str) -> String {
    format!("{sum} left per hour")
}

/// "ended Sun 10 May".
pub fn ended_on(day: &str) -> String {
    format!("ended {day}")
}

/// "since Tue 14 April".
pub fn since(day: &str) -> String {
    format!("since {day}")
}

pub fn made_for(made_for: For) -> &'static str {
    match made_for {
        For::Spec => MADE_ON_SPEC,
        For::Order => MADE_TO_ORDER,
    }
}

/// The stages of a job's life, for the bar.
pub fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Fetch => "fetch",
        Stage::Sort => "sort",
        Stage::Make => "make",
        Stage::Finish => "finish",
        Stage::Sell => "sell and office",
        Stage::Deliver => "deliver",
    }
}

/// A stretch still to come after one of the same stage that is done: "make on".
pub fn stage_on(of: Stage) -> String {
    format!("{} on", stage(of))
}

pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Fetch => "fetch",
        Kind::Make => "make",
        Kind::Sell => "sell",
        Kind::Deliver => "deliver",
        Kind::Office => "office",
    }
}

/// What hours were for: the words of the bar, where selling and office are one.
pub fn division(of: Division) -> &'static str {
    match of {
        Division::Fetch => stage(Stage::Fetch),
        Division::Sort => stage(Stage::Sort),
        Division::Make => stage(Stage::Make),
        Division::Finish => stage(Stage::Finish),
        Division::Sell => kind(Kind::Sell),
        Division::Office => kind(Kind::Office),
        Division::Deliver => stage(Stage::Deliver),
    }
}

pub const SETTLE_ON_BENCH: &str = "What is to settle is on Bench: a stop may have been forgotten.";

/// "11 h 10, and 6 h 30 to settle".
pub fn of_it_to_settle(total: &str, open: &str) -> String {
    format!("{total}, and {open} to settle")
}

/// "277.50 to settle".
pub fn all_to_settle(open: &str) -> String {
    format!("{open} to settle")
}

/// "25 h 34, 1 h 30 to come".
pub fn so_far_and(total: &str, still: Option<&str>) -> String {
    match still {
        Some(still) => format!("{total}, {still}"),
        None => total.to_owned(),
    }
}

/// "Agreed €460.00".
pub fn agreed(sum: &str) -> String {
    format!("Agreed {sum}")
}

/// "Kept €120.00": of what came to nothing.
pub fn kept(sum: &str) -> String {
    format!("Kept {sum}")
}

/// "Sold €460.00".
pub fn sold(sum: &str) -> String {
    format!("Sold {sum}")
}

/// "Sold €450.00, 51.00 kept": beside what came to nothing.
pub fn sold_and_kept(sum: &str, kept: &str) -> String {
    format!("{}, {kept} kept", sold(sum))
}

/// "Fri 17 April, to be delivered".
pub fn when_how(day: &str, how: &str) -> String {
    format!("{day}, {how}")
}

pub const DELIVERED: &str = "delivered";
pub const FETCHED: &str = "fetched";
pub const TO_BE_DELIVERED: &str = "to be delivered";
pub const TO_BE_FETCHED: &str = "to be fetched";

/// "Costs, 48.60 of it to come".
pub fn costs_to_come(sum: &str) -> String {
    format!("Costs, {sum} of it to come")
}

/// The unit of a volume, short: board feet, litres.
pub fn volume_short(units: Units) -> &'static str {
    match units {
        Units::Inch => "bf",
        Units::Metric => "L",
    }
}

/// "27 pieces, 43.7 L".
pub fn wood_under(pieces: &str, volume: Option<&str>) -> String {
    volume.map_or_else(|| pieces.to_owned(), |volume| format!("{pieces}, {volume}"))
}

/// Without its size the share of the haul it came with can't be known.
pub fn no_size(pile: &str) -> String {
    format!("{pile} has no size: until it has one, what the haul cost this job is not known. Count, then Sort, gives it one.")
}

/// "25 h 34, 55.33 spent".
pub fn hours_under(hours: Option<&str>, spent: Option<&str>) -> String {
    match (hours, spent) {
        (Some(hours), Some(spent)) => format!("{hours}, {spent} spent"),
        (Some(hours), None) => hours.to_owned(),
        (None, Some(spent)) => format!("{spent} spent"),
        (None, None) => NOTHING_YET.to_owned(),
    }
}

/// "460 agreed, 276 due".
pub fn agreed_due(agreed: &str, due: &str) -> String {
    format!("{agreed} agreed, {due} due")
}

/// "460 agreed, paid", "100 agreed, 50 to hand back".
pub fn agreed_paid(agreed: &str, over: Option<&str>) -> String {
    format!("{agreed} agreed, {}", over.map_or(PAID.to_owned(), to_hand_back))
}

/// "left per hour 12.74".
pub fn back_under(sum: &str) -> String {
    format!("{sum} an hour")
}

/// What runs: "Sand is running."
pub fn running(op: &str) -> String {
    format!("{} is running.", upper_first(op))
}

pub const GO_TO_BENCH: &str = "Go to the bench";
pub const STATE_HAND_OVER: &str = "Ready to hand over.";
pub const STATE_DELIVERY: &str = "Ready. Delivery to come.";
pub const STATE_COLLECT: &str = "Handed over. Money is due.";
pub const STATE_HAND_BACK: &str = "More came in than is owed.";
pub const STATE_WOOD: &str = "No wood yet.";
/// "12 set apart, none taken yet."
pub fn state_apart(n: &str) -> String {
    format!("{n} set apart, none taken yet.")
}

pub const STATE_BEGIN: &str = "Not made yet.";
pub const STATE_BEGUN: &str = "Begun. No next step is planned.";

/// Nothing is planned next: whether any of it was worked.
pub fn state_open(is_begun: bool) -> &'static str {
    if is_begun { STATE_BEGUN } else { STATE_BEGIN }
}

pub const STATE_OFF: &str = "What waits can come off.";

/// "Waits until 14:20."
pub fn state_waits(clock: &str) -> String {
    sentence(format!("Waits until {clock}"))
}

pub const STATE_TAG: &str = "Made, and without a tag.";

/// "Oil hardens until Tue 10 Mar": of what is made, and is not for use before.
pub fn hardens((op, day): (&str, &str)) -> String {
    format!("{} hardens until {day}", upper_first(op))
}

/// "Oil hardens until Tue 10 Mar. Without a tag."
pub fn state_hardens(of: (&str, &str)) -> String {
    format!("{} Without a tag.", sentence(hardens(of)))
}

pub const STATE_ALL_GONE: &str = "All gone. Nothing is left to do.";
pub const STATE_ENDED: &str = "You are done with this job.";
pub const HAND_OVER: &str = "Hand it over";
pub const TAKE_PAYMENT: &str = "Take the payment";
pub const TO_HAND_BACK: &str = "to hand back";
pub const HAND_BACK: &str = "Hand it back";
pub const TAKE_WOOD: &str = "Take wood";
pub const TAKE_WOOD_UNDER: &str = "from the piles on the rack";
pub const WRITE_TAG: &str = "Write the tag";
pub const SELL_ONE: &str = "Sell one";
pub const GALLERY_PAID: &str = "The gallery paid";

/// "Next: milling." or "Milling, 3 of 5 done."
pub fn state_work(op: &str) -> String {
    format!("Next: {}.", lower_first(op))
}

/// "All 5 of them are in clamps until 14:20. Then: coat 1."
pub fn state_held(held: &str, op: &str) -> String {
    format!("{held} Then: {}.", lower_first(op))
}

/// "Start milling".
pub fn start(op: &str) -> String {
    format!("Start {}", lower_first(op))
}

/// "then 276.00 due".
pub fn then_due(sum: &str) -> String {
    format!("then {sum} due")
}

/// "276.00 due".
pub fn due(sum: &str) -> String {
    format!("{sum} due")
}

/// "A payment is due by Fri 8 May."
pub fn state_part(day: &str) -> String {
    sentence(format!("A payment is due by {day}"))
}

/// "1 of 2 handed over": of what was agreed.
pub fn of_them_handed_over(handed: &str, of: &str) -> String {
    format!("{handed} of {of} handed over")
}

/// "20.00 to hand back".
pub fn to_hand_back(sum: &str) -> String {
    format!("{sum} {TO_HAND_BACK}")
}

/// "planned 3 h".
pub fn planned(span: &str) -> String {
    format!("planned {span}")
}

pub const AGREE: &str = "Agree on the price";

/// "3 to order, not agreed yet."
pub fn state_agree(n: (u32, &str)) -> String {
    sentence(super::price::to_agree(n, None))
}

/// "3 left to sell."
pub fn state_sell(n: &str) -> String {
    format!("{n} left to sell.")
}

/// "Money is due. 1 left to sell."
pub fn state_due_and_sell(n: &str) -> String {
    format!("Money is due. {}", state_sell(n))
}

/// "1 at the gallery."
pub fn state_gallery(n: &str) -> String {
    format!("{n} at the gallery.")
}

/// "1 h 30 to come as planned", "2 h to come".
pub fn still(span: &str, planned: bool) -> String {
    if planned { format!("{span} to come as planned") } else { format!("{span} to come") }
}

/// "about 1 h 30".
pub fn about(span: &str) -> String {
    format!("about {span}")
}

/// Currency and units as the workshop has them: "USD, inches".
pub fn in_currency(code: &str, units: &str) -> String {
    format!("{code}, {}", in_small(units))
}

pub fn lower_first(text: &str) -> String {
    begin_small(text)
}

pub fn upper_first(text: &str) -> String {
    begin_large(text)
}
