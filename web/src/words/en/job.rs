//! English: the four rooms of a job, and its forms.
mod back;
mod open;
mod strayed;

pub use back::*;
pub use open::*;
pub use strayed::*;

use fivebar_core::ledger::kind::sale::Instead;
use fivebar_core::quantity::Listed;

pub const THE_JOB: &str = "The job";

// Wood and plan
pub const TAKEN: &str = "Taken from the rack";
pub const NONE_TAKEN: &str = "No wood is taken yet.";
pub const FOREIGN_WOOD: &str =
    "Some of it was counted in another currency. Write down one sum for it under Hours and money, as the share of the hauls.";
pub const DRIVE_UNPRICED: &str =
    "It was fetched by a drive without a rate, so what it costs is not known. Set the rate in Workshop, How you are paid.";
pub const ON_RACK: &str = "On the rack";
pub const RACK_EMPTY: &str = "The rack is empty. Count a haul, or sort one, and its good pieces stand here.";
pub const PARTS: &str = "Parts of one piece";
pub const NO_PARTS_BUT_PLANNED: &str = "No part is listed; what is planned is under What can I make.";
pub const NO_PARTS: &str = "No part is planned yet. With parts, weight and yield are known.";
pub const ADD_PART: &str = "Add a part";
pub const WOOD_TAKEN: &str = "Taken for good";
pub const FINISHED: &str = "Finished";
pub const OF_TAKEN: &str = "Finished of taken";
pub const PLANNED_OF_TAKEN: &str = "Planned of taken";
pub const PLANNED_OF_TAKEN_AND_LACKED: &str = "Planned of taken and missing";
pub const PLANNED_OF_HAUL: &str = "Planned of all fetched";
pub const PLANNED_OF_THAT: &str = "Planned of that";
/// "The job has 2 pieces more than its plans use: what is planned is of the plans alone."
pub fn more_than_plans(n: &str, one: bool) -> String {
    let pieces = if one { "piece" } else { "pieces" };
    format!("The job has {n} {pieces} more than its plans use: what is planned is of the plans alone.")
}

/// "The job has 2 pieces fewer than its plans use: what is planned is what they were to give."
pub fn fewer_than_plans(n: &str, one: bool) -> String {
    let pieces = if one { "piece" } else { "pieces" };
    format!("The job has {n} {pieces} fewer than its plans use: what is planned is what they were to give.")
}

pub const MORE_THAN_TAKEN: &str = "The parts are more than the wood taken holds.";
pub const WHOLE_HAUL: &str = "All that was fetched with it";
pub const OF_HAUL: &str = "Finished of all fetched";
pub const HAUL_LESS_LEFT: &str = "Fetched, without the good wood left over";
pub const HAUL_LESS_LEFT_AND_LACKED: &str = "Fetched, without the good wood left over, with what is missing";
pub const OF_HAUL_LESS_LEFT: &str = "Finished of that";
pub const BY_THE_MIDDLE: &str =
    "Pieces of a range of lengths count here by its middle, or as they were measured; a plan reckons them at their shortest.";
pub const BOUGHT_BOARDS: &str = "Equal bought boards";
pub const SIZES_MISSING: &str = "a size is missing";
pub const TAKE: &str = "Take";
pub const PUT_BACK: &str = "Put back";
pub const HOW_MANY: &str = "How many";
pub const ALL_OF_THEM: &str = "all";
pub const PART: &str = "Part";
pub const PART_NAME: &str = "What it is called";
pub const N_OF_ONE: &str = "How many";
pub const THICK: &str = "Thick";
pub const WIDE: &str = "Wide";
pub const LONG: &str = "Long";
pub const WOOD: &str = "Wood";
pub const NO_WOOD: &str = "not said";
pub const MORE_WOODS: &str = "more";
pub const TAKE_PART_AWAY: &str = "Take the part away";

/// Where its pieces will live.
pub const ROOM: &str = "Where it will stand";
/// As the maker's rooms are in order: see `ROOMS` of the draft.
pub const ROOMS: [&str; 4] = ["Dry flat", "Heated home", "Heated at times", "Not heated"];
pub const NO_PART_MOVES: &str = "Say the wood of a part, and how far its width moves stands here.";
pub const FLAT_SAWN_MOST: &str = "Through the year, across the grain, as flat-sawn: the most it may move.";

/// "6 to 10 %".
pub fn room_between(low: &str, high: &str) -> String {
    format!("{low} to {high} %")
}

/// "moisture from 6 to 10 %", and whether the maker said so of the job.
pub fn lives_in(between: &str, is_said: bool) -> String {
    if is_said { format!("moisture from {between}") } else { format!("not said: moisture from {between}") }
}

/// "Top, 12 in wide: 3/16 in".
pub fn part_moves(part: &str, width: &str, moves: &str) -> String {
    format!("{part}, {width} wide: moves {moves}")
}

// Hours and money
pub const MINUTES: &str = "Hours";
pub const BY_OPERATION: &str = "By operation";
pub const NONE_LOGGED: &str = "Nothing is logged yet. The clock is on Bench; time you missed goes into its day’s list.";
pub const FETCH_SHARE: &str = "Share of the hauls";
pub const PLANNED: &str = "Planned";
pub const PLANNED_IN_ALL: &str = "planned in all";
pub const LIKELY_OF_THESE: &str = "likely of these";
pub const NONE_PLANNED: &str = "Nothing is planned. With minutes planned, the price knows what is still to come.";
pub const ADD_OPERATION: &str = "Plan an operation";
pub const OPERATION: &str = "Operation";
pub const KIND: &str = "Kind";
pub const CHOOSE: &str = "choose one";
pub const CONSIGN_TITLE: &str = "To a gallery";
pub const FINISH: &str = "finish";
/// "3 coats on 4 pieces", "3 coats on 1 piece": what is noted of an operation that was put on so many times.
pub fn coats_on(coats: &str, each: &str) -> String {
    format!("{coats} coats on {each}")
}

/// "12 pieces, of a job of 4": of more than the job has, as parts or coats.
pub fn pieces_beyond(pieces: &str, of: &str) -> String {
    format!("{pieces}, of a job of {of}")
}

pub const COATS_EACH: &str = "One coat is one operation: plan Coat 1, Coat 2, Coat 3. Each has its own minutes and dries by itself.";
/// Of all pieces of an operation together.
pub const MIN: &str = "Minutes in all";
pub const PIECES: &str = "Pieces";
pub const SPENT: &str = "Spent";
pub const NONE_SPENT: &str = "Nothing is written down yet.";
pub const WRITE_SPENDING: &str = "Write down spending";
pub const HAUL_SHARE: &str = "share of the hauls";
pub const HELPER: &str = "Helper";
pub const NOT_PAID: &str = "not paid";

/// "1 h 30 paid, 30 min not", of those who worked along.
pub fn paid_and_not(paid: &str, unpaid: &str) -> String {
    format!("{paid} paid, {unpaid} not")
}

pub const HELPERS: &str = "helpers by the hour";
pub const IN_ALL: &str = "In all";
pub const STILL_TO_COME: &str = "Still to come";
pub const STRIKE: &str = "Strike";
pub const WAY: &str = "How it comes about";
pub const WAY_SUM: &str = "Sum";
pub const WAY_EACH: &str = "n × each";
pub const WAY_SHARE: &str = "Of a pack";
pub const WAY_DRIVE: &str = "Driven";
pub const SUM: &str = "Sum";
pub const SUM_WITH_TAX: &str = "Sum, with tax";
pub const HOW_MANY_USED: &str = "Used up";
pub const EACH: &str = "Each";
pub const USED_OF_PACK: &str = "Used";
pub const PACK_HOLDS: &str = "Pack holds";
pub const PACK_COST: &str = "Pack cost";
pub const WHAT_FOR: &str = "What for";
pub const FOR_DELIVERY: &str = "To deliver";
pub const TO_DELIVER: &str = "to deliver";
pub const FOR_ELSE: &str = "For something else";
pub const DISTANCE: &str = "There and back";
pub const RATE: &str = "Rate";
pub const AS_SET: &str = "as set";
pub const WHICH: &str = "Which one (no names)";
pub const MEASURED: &str = "measured";
pub const CORRECTED: &str = "corrected";
pub const RECALLED: &str = "recalled";

// Sell and deliver
pub const STILL_THERE: &str = "Still there";
pub const SETTLE: &str = "Settle";
pub const NONE: &str = "none";
pub const NOT_YET: &str = "not yet";
pub const WORKED_OUT: &str = "worked out";
pub const WORK_IT_OUT: &str = "Work it out again";
pub const TAG_SMALL: &str = "given, its tag";
pub const REST_GIVEN_UP: &str = "will not be paid";
pub const HANDED_OVER: &str = "sold there, paid to you";

/// "1 agreed", of pieces.
pub fn so_many_agreed(n: &str) -> String {
    format!("{n} agreed")
}

/// "9.0 kg by its parts": what nobody weighed.
pub fn by_parts(weight: &str) -> String {
    format!("{weight} by its parts")
}
pub const REST_HANDED_OVER: &str = "the rest of a sale";
pub const STILL_DUE_FROM_GALLERY: &str = "Still due";
pub const NOT_FOR_SALE: &str = "Not for sale any more";
pub const NOT_FOR_SALE_UNDER: &str = "What it cost stays with this job.";
pub const WHAT_BECAME: &str = "What became of it";
pub const YOURS_NOW: &str = "Yours now";
pub const GIVEN_AWAY: &str = "Given away";
pub const BROKEN: &str = "Broken";

/// "yours now", "given away", "broken".
pub fn instead(why: Instead) -> &'static str {
    match why {
        Instead::Yours => "yours now",
        Instead::Given => "given away",
        Instead::Broken => "broken",
    }
}

pub const SIZE: &str = "Size and weight";
pub const FACTS: &str = "For the buyer, in words";
pub const FACTS_UNDER: &str = "wood, finish, care, delivery";
pub const MISSING: &str = "missing";
pub const WIDTH: &str = "Width";
pub const DEPTH: &str = "Depth";
pub const HEIGHT: &str = "Height";
pub const WEIGHT: &str = "Weight";
pub const FINISH_WORDS: &str = "Finish";
pub const CARE: &str = "Care";
pub const DELIVERY: &str = "Delivery";
pub const AGREEMENTS: &str = "Agreed";
pub const SALES: &str = "Sold";
pub const PAYMENTS: &str = "Paid in";
pub const GALLERY: &str = "Gallery";
pub const AGREE: &str = "Agreed";
pub const AGREE_UNDER: &str = "for later";
pub const SELL: &str = "Sold";
pub const SELL_UNDER: &str = "now";
pub const CONSIGN: &str = "Gallery";
pub const CONSIGN_UNDER: &str = "it sells";
pub const GIVEN_BACK: &str = "given back";
pub const CAME_BACK: &str = "Came back";
pub const GALLERY_PAID: &str = "The gallery paid";
pub const SHARE_BEFORE_TAX: &str = "Share before tax";
pub const GALLERY_TAX: &str = "It sends in tax";
pub const MY_TAX: &str = "I send in tax";
pub const GALLERY_SHARE: &str = "It keeps, %";
pub const PAY: &str = "Payment in";
pub const HAND_BACK: &str = "Hand back";
pub const HANDED_BACK: &str = "handed back";
pub const HAND_OVER: &str = "Hand over";
pub const CAME_TO_NOTHING: &str = "Came to nothing";
pub const CALLED_OFF: &str = "Called off";
pub const WHY_NOTHING: &str = "Why it came to nothing";
pub const NO_TAX_ON_KEPT: &str = "No tax is reckoned on what is kept; whether some is due, ask whoever does your taxes.";
pub const CAME_AHEAD: &str = "Came in ahead";
pub const TO_HAND_BACK_OF_IT: &str = "Handed back";
pub const DUE: &str = "Due";
pub const DUE_NOW: &str = "Due now";
pub const BACK_NOW: &str = "To hand back";

/// "Stays for the other 2": what came in ahead and is not used by what is handed over now.
pub fn stays_for((n, written): (u32, &str)) -> String {
    if n == 1 { "Stays for the other".to_owned() } else { format!("Stays for the other {written}") }
}

/// "Of it this piece", "Of it these 2": the part of what is agreed that is for what is handed over now, where others stay.
pub fn part_of_it((n, written): (u32, &str)) -> String {
    if n == 1 { "Of it this piece".to_owned() } else { format!("Of it these {written}") }
}

/// What the buyer pays for it, what came in ahead among it.
pub const WHOLE_PRICE: &str = "Whole price";
pub const RECEIVED: &str = "Received";
/// Where a gallery handed over its part beside it.
pub const RECEIVED_FROM_BUYERS: &str = "Received from buyers";
pub const HOW_PAID: &str = "How it is paid";
pub const NOTES: &str = "Notes";
pub const CARD: &str = "Card";
pub const BANK: &str = "Bank";
pub const LATER: &str = "Later";
pub const HOW_CARRIED: &str = "Who carries it";
pub const DELIVERED: &str = "Delivered";
pub const FETCHED: &str = "Fetched";
pub const TODAY: &str = "today";
pub const SPENT_THEN: &str = "It was that day";
pub const SPENT_ON: &str = "Spent";
pub const SPENT_ON_UNDER: &str = "The day on the receipt: a cost is of the year it was spent in.";
pub const DAY: &str = "day";
pub const DAYS: &str = "days";
pub const REPLACED: &str = "replaced by another";
pub const DONE: &str = "handed over";

// Look back
pub const LEFT_PER_HOUR: &str = "left per hour";
pub const NOTHING_LEFT_YET: &str = "Nothing is sold yet. What an hour left stands here after the hand-over.";
pub const NO_HOURS_LOGGED: &str = "No hours are logged, so nobody knows what one left.";
pub const ALL_HOURS_OPEN: &str = "All its hours are to settle on Bench, so nobody knows what one left.";
pub const NO_COSTS_KNOWN: &str = "What it cost is not known, so nobody knows what an hour left.";
pub const HOURS: &str = "Hours";
pub const PRICE: &str = "Price";
pub const AS_PLANNED: &str = "as planned";
pub const RATIOS_SAID: &str = "Hours, wood and price against plan";
pub const NO_RATIOS: &str = "With planned minutes, parts and a price, plan and fact stand side by side here.";
pub const NOT_TYPICAL: &str = "Not typical";
pub const NOT_TYPICAL_UNDER: &str = "leave it out of history";
pub const TYPICAL: &str = "Typical after all";
pub const TYPICAL_UNDER: &str = "is left out of history";
pub const LESSON: &str = "Write the lesson";
pub const LESSON_UNDER: &str = "one line, in words";
pub const LESSON_AGAIN: &str = "Change the lesson";
pub const LESSON_FIELD: &str = "What was learnt (no names)";
pub const END: &str = "Done with this job";
pub const END_UNDER: &str = "its share of the hauls is fixed";
/// "1 piece is not sold: once you are done with the job it stays for sale.", "2 pieces are not sold: they are still for sale."; of one without a
/// tag, that it leaves the list.
pub fn unsold((n, written): (u32, &str), (has_tag, is_ended): (bool, bool)) -> String {
    let (pieces, they) = if n == 1 { ("piece is", "it") } else { ("pieces are", "they") };
    let stay = match (has_tag, is_ended, n) {
        (true, true, 1) => "is still for sale",
        (true, true, _) => "are still for sale",
        (true, false, 1) => "stays for sale once you are done with the job",
        (true, false, _) => "stay for sale once you are done with the job",
        (false, true, _) => "left the list, having no tag",
        (false, false, 1) => "has no tag and leaves the list once you are done with the job",
        (false, false, _) => "have no tag and leave the list once you are done with the job",
    };
    format!("{written} {pieces} not sold: {they} {stay}.")
}

pub const REOPEN: &str = "Take it up again";
pub const REOPEN_UNDER: &str = "its share of the hauls is worked out anew";
pub const THE_LESSON: &str = "The lesson";

/// A kind of spending by its key; one that this list does not know is shown as it is spelled.
pub fn spending(key: &str) -> String {
    let known = match key {
        "haul" => HAUL_SHARE,
        "distance" => "driving",
        "discs" => "sanding discs",
        "edges" => "edges, sharpening",
        "boards" => "bought wood",
        "stall" => "stall",
        _ => return key.replace('-', " "),
    };
    known.to_owned()
}

/// Kinds of spending for the chips, the most usual first.
pub const SPENDING: [&str; 15] = [
    "glue", "discs", "finish", "bolts", "edges", "power", "boards", "packing", "tags", "stall", "helper", "felt", "pads", "glass", "other",
];

/// "Call it Sand, the name that is there".
pub fn same_as(op: &str) -> String {
    format!("Call it {op}, the name that is there")
}

/// "25 of 47".
pub fn of(n: &str, there: &str) -> String {
    format!("{n} of {there}")
}

/// "22 on the rack".
pub fn on_rack(n: &str) -> String {
    format!("{n} on the rack")
}

/// "25 here, 22 on the rack".
pub fn here_and_rack(here: &str, rack: &str) -> String {
    format!("{here} here, {rack} on the rack")
}

/// "Take 25".
pub fn take_n(n: &str) -> String {
    if n.is_empty() { TAKE.to_owned() } else { format!("{TAKE} {n}") }
}

/// "Put 25 back".
pub fn put_back_n(n: &str) -> String {
    if n.is_empty() { PUT_BACK.to_owned() } else { format!("Put {n} back") }
}

/// "Put 25 back all the same".
pub fn put_back_anyway(n: &str) -> String {
    format!("{} all the same", put_back_n(n))
}

/// "4 legs": how many of a part one piece has.
pub fn part_of(n: &str, name: &str) -> String {
    format!("{n} × {name}")
}

/// Beside measured, corrected and recalled: what the hauls of a job bring along, as it was measured, and what of it was not.
pub const FROM_HAULS: [&str; 3] = ["share of the hauls", "share of the hauls corrected", "share of the hauls recalled"];
pub const STILL_TO_SETTLE: &str = "to settle";

/// "measured 13 h 42, corrected 47 min, recalled 1 min".
pub fn provenance(parts: &[(&str, String)]) -> String {
    parts.iter().map(|(word, span)| format!("{word} {span}")).listed().join(", ")
}

/// "14 at 0.62".
pub fn each_of(n: &str, each: &str) -> String {
    format!("{n} at {each}")
}

/// "9.5 of a pack of 32 at 34.90".
pub fn share_of(used: &str, of: &str, pack: &str) -> String {
    format!("{used} of a pack of {of} at {pack}")
}

/// "18 mi at 0.725", "30 km at 0.30".
pub fn driven(distance: &str, unit: &str, rate: &str) -> String {
    format!("{distance} {unit} at {rate}")
}

/// "2 for $290.00".
pub fn n_for(n: &str, sum: &str) -> String {
    format!("{n} for {sum}")
}

/// "by Sat 23 May".
pub fn by_day(day: &str) -> String {
    format!("by {day}")
}

/// Beside a deposit that was agreed.
pub const NOTHING_CAME_IN: &str = "nothing came in";

/// "deposit 184.00".
pub fn deposit_of(sum: &str) -> String {
    format!("deposit {sum}")
}

/// "tax 7.56 of it".
pub fn tax_of_it(sum: &str) -> String {
    format!("tax {sum} of it")
}

/// "fee 3.87".
pub fn fee_of_it(sum: &str) -> String {
    format!("fee {sum}")
}

/// "left per hour, 356.07 in all over 27 h 57", "left per hour so far, 4 of 5 sold, with costs and hours of all 5: 482.70 in all over 25 h 17".
pub fn kept_over(sold: Option<(&str, &str)>, sum: &str, span: &str) -> String {
    let of = sold.map_or(",".to_owned(), |(sold, of)| format!(" so far, {sold} of {of} sold, with costs and hours of all {of}:"));
    format!("{LEFT_PER_HOUR}{of} {sum} in all over {span}")
}

/// "4.00 of it still due from a gallery.": beside what an hour left.
pub fn due_of_it(sum: &str) -> String {
    format!("{sum} of it still due from a gallery.")
}

/// "−40.00 in all.": where nobody knows what an hour left.
pub fn in_all(sum: &str) -> String {
    format!("{sum} in all.")
}

/// "5 h 22 still to come": in the sentence about plan and fact, while work goes on.
pub fn still_to_come(span: &str) -> String {
    format!("{span} still to come")
}

/// "left per hour, with all that is likely to come, 25 h 26": under the figure while work is to come.
pub fn left_by_likely(span: &str) -> String {
    format!("{LEFT_PER_HOUR}, with all that is likely to come, {span}")
}

/// "left per hour, with what is agreed and not handed over yet": under the figure while a part of an order is still to go.
pub const LEFT_WITH_AGREED: &str = "left per hour, with what is agreed and not handed over yet";

/// "left per hour, less the fee of what is still owed": under the figure once all is gone and not all is paid.
pub const LEFT_WITH_FEES: &str = "left per hour, less the fee of what is still owed";

/// The same where no fee is to come, but planned costs are; and where both are.
pub const LEFT_WITH_COSTS: &str = "left per hour, with what is still to be spent";
pub const LEFT_WITH_FEES_AND_COSTS: &str = "left per hour, less the fee of what is still owed and what is still to be spent";

/// "2 are agreed and not handed over yet."
pub fn still_agreed(n: u32, written: &str) -> String {
    format!("{written} {} agreed and not handed over yet.", if n == 1 { "is" } else { "are" })
}

/// "17.04, had what was planned taken 19 h; 13.03 the 25 h 26 that were likely", "… that were likely when its work began": where no estimate
/// was kept.
pub fn had_it_held((sum, planned): (&str, &str), likely: Option<(&str, &str)>, kept: bool) -> String {
    let then = if kept { "" } else { " when its work began" };
    let likely = likely.map(|(sum, span)| format!("; {sum} the {span} that were likely{then}")).unwrap_or_default();
    format!("{sum}, had what was planned taken {planned}{likely}")
}

/// Below it, where nothing says any more what was likely.
pub const LIKELY_IS_GONE: &str =
    "Nothing says what was likely before its work began: it was planned since. An estimate can be kept under Hours and money.";

/// "16.09 after workshop costs, 13.41 over every hour worked".
pub fn after_workshop(after: &str, every: &str) -> String {
    format!("{after} after workshop costs, {every} over every hour worked")
}

/// "26 h 03, planned 19 h".
pub fn against(actual: &str, planned: &str) -> String {
    format!("{actual}, planned {planned}")
}

/// "48.9 % of used, planned 45 %".
pub fn wood_against(actual: &str, planned: &str) -> String {
    format!("{actual} % of used, planned {planned} %")
}

/// "460, asked 460"; "460 from buyers, asked 460", where a gallery sold some.
pub fn price_against(actual: &str, asked: &str, beside_gallery: bool) -> String {
    let whose = if beside_gallery { " from buyers" } else { "" };
    format!("{actual}{whose}, asked {asked}")
}

/// "Not in that price: 1 by a gallery for 74.38, 1 given away."
pub fn not_in_price(gone: &[String]) -> String {
    format!("Not in that price: {}.", gone.join(", "))
}

/// "Not sold: 1 broken, 2 given away."
pub fn not_sold(gone: &[String]) -> String {
    format!("Not sold: {}.", gone.join(", "))
}

/// "1 by a gallery for 74.38"; "2 by galleries for 144".
pub fn by_gallery(n: &str, sum: &str, are_several: bool) -> String {
    format!("{n} by {} for {sum}", if are_several { "galleries" } else { "a gallery" })
}

/// "1 h 10 so far".
pub fn took_so_far(span: &str) -> String {
    format!("{span} so far")
}

/// "planned 3 h 20", "planned 3 h 20 × 1.4": with the factor that makes it likely.
pub fn planned_times(span: &str, factor: Option<&str>) -> String {
    factor.map_or_else(|| format!("planned {span}"), |times| format!("planned {span} × {times}"))
}
