//! English: Price: the list, an offer, pay and hours, a piece that is not in the list.

mod instead;
mod open;
mod under;

pub use instead::*;
pub use open::*;
pub use under::*;

use super::jobs::upper_first;
use crate::app::price::far::Far;
use fivebar_core::ledger::kind::sale::{Carried, Paid};
use fivebar_core::sheet::price::Gap;

pub const FOR_SALE: &str = "For sale";
pub const NOTHING_FOR_SALE: &str = "Nothing for sale";
pub const NOTHING_UNDER: &str = "A job with a price stands here. Until then, three figures will do.";
pub const ASK: &str = "ask";
/// In place of "ask" before the maker has set a price.
pub const BY_YOUR_RATE: &str = "by your rate";

/// `by your rate`; `your rate, by card` where that costs more than how the other figures of the list are paid.
pub fn by_your_rate(dearer: Option<Paid>) -> String {
    dearer.map_or_else(|| BY_YOUR_RATE.to_owned(), |paid| format!("{YOUR_RATE}, {}", by(paid)))
}

pub const SETTLE: &str = "settle";
pub const NOT_UNDER: &str = "not under";
/// The same figure, where the maker set a settle under it: it holds no more, the settle does.
pub const WAITING_WORTH: &str = "waiting is worth";
pub const COSTS_COVERED: &str = "costs covered";
pub const YOUR_RATE: &str = "your rate";
pub const LOWEST_PAY: &str = "lowest pay";
pub const NOT_SAID: &str = "not yet";
pub const THEY_OFFER_KEY: &str = "They offer…";
pub const MORE: &str = "More";
pub const SET_PRICE: &str = "Set its price";
pub const NOT_IN_THE_LIST: &str = "Not in the list";
pub const HOURS: &str = "Hours?";
pub const SPENT: &str = "Spent?";
pub const OFFERED: &str = "They offer?";
pub const AGREED: &str = "Agreed";
pub const AGREED_MARK: &str = "agreed";
pub const MADE_TO_ORDER: &str = "made to order";
pub const DUE: &str = "due";
pub const DUE_ROW: &str = "Due";
pub const IN: &str = "in";
pub const TO_ALL: &str = "Back to the list";
pub const COVERED: &str = "Price";
pub const NO_TAX_NO_FEE: &str = "No tax and no card fee are set: both count as none.";
pub const HOW_YOU_ARE_PAID: &str = "How you are paid";
pub const SAY_YOUR_RATE: &str = "What an hour must earn";

/// "3 left of 5, tag 145", "1 left of 5, 1 agreed, tag 145".
pub fn left_of([left, of]: [&str; 2], agreed: Option<&str>, tag: Option<&str>) -> String {
    let agreed = agreed.map(|agreed| format!(", {agreed} agreed")).unwrap_or_default();
    let tag = tag.map(|tag| format!(", tag {tag}")).unwrap_or_default();
    if left == of && of == "1" { format!("one piece{tag}") } else { format!("{left} left of {of}{agreed}{tag}") }
}

/// "5 to order, not agreed yet, tag 145".
pub fn to_agree((n, written): (u32, &str), tag: Option<&str>) -> String {
    let tag = tag.map(|tag| format!(", tag {tag}")).unwrap_or_default();
    let n = if n == 1 { "one piece" } else { written };
    format!("{n} to order, not agreed yet{tag}")
}

/// "one", "two", "three": a row of the list.
pub fn pieces_word(n: u32) -> Option<&'static str> {
    Some(match n {
        1 => "one",
        2 => "two",
        3 => "three",
        _ => return None,
    })
}

/// "One", "Two", "Three", "All 5": a key.
pub fn pieces_key(n: u32, written: &str) -> String {
    match n {
        1 => "One".to_owned(),
        2 => "Two".to_owned(),
        3 => "Three".to_owned(),
        _ => format!("All {written}"),
    }
}

pub const ONE_FEWER: &str = "One fewer";
pub const ONE_MORE: &str = "One more";

/// "4 of 12": how many are asked about of those that are free.
pub fn so_many_of(n: &str, free: &str) -> String {
    format!("{n} of {free}")
}

/// "Settle 130 is set by you." With midway where that is known: "Midway is 120."
pub fn settle_set(settle: &str, midway: Option<&str>) -> String {
    let midway = midway.map(|midway| format!(" Midway is {midway}.")).unwrap_or_default();
    format!("Settle {settle} is set by you.{midway}")
}

/// "Settle 130 is set by you and lies over what you ask: the ask will do."
pub fn settle_over_ask(settle: &str) -> String {
    format!("Settle {settle} is set by you and lies over what you ask: the ask will do.")
}

/// With what else no figure can be shown without.
pub const WHAT_HAUL_COST: &str = "what its haul cost";

/// What no figure can be shown without.
pub fn gap(gap: Gap) -> &'static str {
    match gap {
        Gap::Tag => "its price",
        Gap::Costs => "what you spent",
        Gap::Hours => "the hours",
        Gap::HoursToCome => "hours to come",
        Gap::Rate => "your rate",
    }
}

/// Over the sums of the list, where the tag is before tax.
pub const ALL_WITH_TAX: &str = "with tax";

/// "One under 39 pays less than your lowest pay."
pub fn one_under_lowest(sum: &str) -> String {
    format!("One under {sum} pays less than your lowest pay.")
}

pub const SPENT_KEY: &str = "Write down what it took, or 0 if nothing";

/// "Not known yet: its price, the hours."
pub fn gaps(names: &[&str]) -> String {
    format!("Not known yet: {}.", names.join(", "))
}

/// "Show the buyer: plant stand".
pub fn show_this(name: &str) -> String {
    format!("Show the buyer: {name}")
}

/// "at 145".
pub fn at(price: &str) -> String {
    format!("at {price}")
}

pub const SHOW: &str = "Show the buyer";
pub const ON_PAPER: &str = "The list on paper";
pub const PAPER_IS_YOURS: &str = "This paper is for you, not for a buyer. A4 or Letter.";

/// "by card".
pub fn by(paid: Paid) -> &'static str {
    match paid {
        Paid::Card => "by card",
        Paid::Notes => "in notes",
        Paid::Bank => "by bank",
    }
}

/// What is in the list is sold without the tax that is usual.
pub const UNTAXED: &str = "no tax";
/// Prices of the list are of pieces that are brought, where that takes something.
pub const DELIVERED: &str = "with delivery";

/// "by card, tax inside".
pub fn by_with(paid: Paid, tax: Option<bool>) -> String {
    let tax = match tax {
        Some(true) => "tax inside",
        Some(false) => "tax on top",
        None => "no tax set",
    };
    format!("{}, {tax}", by(paid))
}

/// "they fetch".
pub fn carried(carried: Carried) -> &'static str {
    match carried {
        Carried::Fetched => "they fetch",
        Carried::Delivered => "you deliver",
    }
}

/// "delivered", "fetched", of what was agreed.
pub fn agreed_carried(carried: Option<Carried>) -> &'static str {
    match carried {
        Some(Carried::Delivered) => "Agreed, delivered",
        Some(Carried::Fetched) => "Agreed, fetched",
        None => AGREED,
    }
}

/// "0.00 of 40.00": what came in of a deposit.
pub fn of(came: &str, deposit: &str) -> String {
    format!("{came} of {deposit}")
}

/// "Deposit in 184.00", said in parts.
pub fn came_in(is_deposit: bool) -> &'static str {
    if is_deposit { "Deposit in" } else { "In so far" }
}

/// "late: it was for Sat 23 May".
pub fn late(day: &str) -> String {
    format!("late: it was for {day}")
}

/// "by Sat 23 May".
pub fn by_day(day: &str) -> String {
    format!("by {day}")
}

// --- an offer

pub const THEY_OFFER: &str = "They offer";
pub const THEY_OFFER_WITH_TAX: &str = "They offer, with tax";
/// "What do they say?", "What do they say for 2 together?"
pub fn what_they_say(n: u32, written: &str) -> String {
    if n == 1 { "What do they say?".to_owned() } else { format!("What do they say for {written} together?") }
}

pub const PAY_AND_HOURS: &str = "Pay and hours";
pub const BACK_TO_OFFER: &str = "Back to the offer";
pub const BACK_TO_AGREED: &str = "Back to what was agreed";
pub const NUMBER_PAD: &str = "number pad";
pub const NUMBER_PAD_WITH_TAX: &str = "number pad, with tax";
pub const ADD_TAX: &str = "It is without tax: add it";

/// "With tax: all that is handed over. The tag of 175 is 189.44."
pub fn with_tax(tag: Option<(&str, &str)>) -> String {
    let tag = tag.map(|(tag, charge)| format!(" The tag of {tag} is {charge}.")).unwrap_or_default();
    format!("With tax: all that is handed over.{tag}")
}

/// "175 before tax".
pub fn before_tax(tag: &str) -> String {
    format!("{tag} before tax")
}

/// "150, with tax,": in the midst of a sentence.
pub fn held_with_tax(sum: &str) -> String {
    format!("{sum}, with tax,")
}
pub const CARD: &str = "Card";
pub const NOTES: &str = "Notes";
pub const BANK: &str = "Bank";
pub const THEY_FETCH: &str = "They fetch";
pub const I_DELIVER: &str = "I deliver";
pub const HOW_PAID: &str = "How it is paid";
pub const HOW_CARRIED: &str = "How it goes";
pub const HOW_MANY: &str = "How many";
pub const OFFER: &str = "Offer";
pub const NO_ASK: &str = "Set a price first, or say what they offer.";

/// "Ash plant stand, 3 left".
pub fn name_left(name: &str, left: &str) -> String {
    format!("{name}, {left} left")
}

/// "Ask 145": before the buyer has spoken.
pub fn ask_word(ask: &str) -> String {
    format!("Ask {ask}")
}

pub const THEN_DRAG: &str = "Then set the block to what they say.";
pub const YES: &str = "Yes";
pub const IT_IS_ASK: &str = "It is what you ask.";
/// "It is your settle.", where the maker set it; else it is reckoned.
pub fn it_is_settle(is_set: bool) -> String {
    format!("It is {}.", settle_of(is_set))
}

fn settle_of(is_set: bool) -> &'static str {
    if is_set { "your settle" } else { "the settle as reckoned" }
}

pub const ANOTHER_SUM: &str = "Another sum";
pub const NO_DELIVERY_PLANNED: &str = "Nothing of a delivery is planned: it counts no hours and no costs.";
pub const NO_MORE_DELIVERY_PLANNED: &str = "No more of a delivery is planned.";

pub const DELIVERY_LEFT_OUT: &str = "They fetch it: the delivery that is planned is left out.";

/// "Of it the delivery: 1 h 30 and 48.60, one drive to this buyer."
pub fn delivery_is_in(span: &str, costs: &str) -> String {
    format!("Of it the delivery: {span} and {costs}, one drive to this buyer.")
}

/// "15 over your settle.", "15 over the settle as reckoned."
pub fn over_settle(more: &str, is_set: bool) -> String {
    format!("{more} over {}.", settle_of(is_set))
}

/// "5 over what you ask."
pub fn over_ask(more: &str) -> String {
    format!("{more} over what you ask.")
}

/// "It is your settle, and 29 more than waiting is worth."
pub fn and_over_waiting(said: &str, more: &str) -> String {
    format!("{}, and {more} more than waiting is worth.", said.trim_end_matches('.'))
}

/// "It is what you ask, and as much as waiting is worth."
pub fn and_as_waiting(said: &str) -> String {
    format!("{}, and as much as waiting is worth.", said.trim_end_matches('.'))
}

/// "1 over your settle, and 4 under what waiting is worth."
pub fn yet_under_waiting(said: &str, less: &str) -> String {
    format!("{}, and {less} under what waiting is worth.", said.trim_end_matches('.'))
}

/// "Say 145": a word of verdict.
pub fn say(sum: &str) -> String {
    format!("Say {sum}")
}

/// "Say 145." after another word.
pub fn say_then(sum: &str) -> String {
    format!("Say {sum}.")
}

pub const PAYS_SO_FAR: &str = "It pays the hours so far; hours to come are not known.";
pub const GOOD_ENOUGH: &str = "It pays your rate: go on talking.";
pub const MORE_THAN_WAITING: &str = "It is no less than waiting is worth: go on talking.";
pub const TOO_CLOSE: &str = "Too close";

/// "96 to 128: your call."
pub fn your_call([low, high]: [&str; 2]) -> String {
    format!("{}: your call.", from_to(low, high))
}

/// "Not under 111, known no nearer than 96 to 128: in between it is your call."; where a part of that is a no or a yes all the same,
/// "…: from 100 to 120 it is your call."
pub fn known_no_nearer(word: &str, sum: &str, ([low, high], [from, to]): ([&str; 2], [&str; 2])) -> String {
    let call = if (low, high) == (from, to) { "in between".to_owned() } else { format!("from {}", from_to(from, to)) };
    format!("{} {sum}, known no nearer than {}: {call} it is your call.", upper_first(word), from_to(low, high))
}

/// "96 to 128": the band by itself, where there is no room for more.
pub fn from_to(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

/// "Or say 130." where it is the maker's own call.
pub fn or_say(sum: &str) -> String {
    format!("Or say {sum}.")
}

pub const END_BRINGS_MORE: &str = "The end brings more";

/// "In the end it brings 152, more than your tag 145: raise the tag, or mend the guess.", "In the end they bring 304, more than the 290 you ask: …".
pub fn end_over_ask(n: u32, [end, ask]: [&str; 2], is_tag: bool) -> String {
    let brings = if n == 1 { "it brings" } else { "they bring" };
    let ask = if is_tag { format!("your tag {ask}") } else { format!("the {ask} you ask") };
    format!("In the end {brings} {end}, more than {ask}: raise the tag, or mend the guess.")
}

pub const WAITING_IS_BETTER: &str = "Waiting is better";
pub const BELOW_YOUR_RATE: &str = "Below your rate";

/// "Your rate needs 150."
pub fn rate_needs(sum: &str) -> String {
    format!("Your rate needs {sum}.")
}

pub const BELOW_LOWEST_PAY: &str = "Below your lowest pay";

/// "Your lowest pay needs 76."
pub fn lowest_needs(sum: &str) -> String {
    format!("Your lowest pay needs {sum}.")
}

/// "Your lowest pay needs 76, more than you ask."
pub fn lowest_needs_over_ask(sum: &str) -> String {
    format!("Your lowest pay needs {sum}, more than you ask.")
}

pub const UNDER_SPENT: &str = "Under what you spent";

/// "28 covers your costs."
pub fn covers(sum: &str) -> String {
    format!("{sum} covers your costs.")
}

/// "Agreed 460".
pub fn agreed(price: &str) -> String {
    format!("Agreed {price}")
}

/// "276 due."
pub fn is_due(due: &str) -> String {
    format!("{due} due.")
}

pub const NOTHING_DUE: &str = "All of it is paid.";
pub const NO_WORD_YET: &str = "No word yet";
/// "Below your settle"
pub fn below_settle(is_set: bool) -> String {
    format!("Below {}", settle_of(is_set))
}

pub const MISSING_ASK: &str = "Set its price, then there is something to say.";
pub const MISSING_RATE: &str = "It covers your costs. Say what an hour must earn, in Workshop.";
pub const MISSING_HOURS: &str = "It pays the hours so far. Hours to come are not known: plan them, or set its price.";
pub const MISSING_COSTS: &str = "What you spent on it is not noted yet.";

/// "130, yes": what a reader hears of the block.
pub fn block_said(sum: &str, verdict: &str) -> String {
    format!("{sum}, {verdict}")
}

/// "−5" and "+5".
pub fn step(step: &str, up: bool) -> String {
    format!("{}{step}", if up { '+' } else { '−' })
}

/// "1450 is five times your tag of 145 or more. If it is so, tap again."
pub fn is_it_meant(sum: (Far, &str), tag: &str) -> String {
    format!("{} If it is so, tap again.", far_from_tag(sum, tag))
}

/// "83 times your tag of 120: is it right?"
pub fn times_your_tag(times: &str, tag: &str) -> String {
    format!("{times} times your tag of {tag}: is it right?")
}

/// "14.50 is a fifth of your tag of 145 or less."
pub fn far_from_tag((far, sum): (Far, &str), tag: &str) -> String {
    match far {
        Far::Over => format!("{sum} is five times your tag of {tag} or more."),
        Far::Under => format!("{sum} is a fifth of your tag of {tag} or less."),
    }
}

/// "Sold at 130".
pub fn sold_at(sum: &str) -> String {
    format!("Sold at {sum}")
}

/// "Sold at 130", "2 sold at 220": of what was sold last.
pub fn so_many_sold_at((n, written): (u32, &str), sum: &str) -> String {
    if n == 1 { sold_at(sum) } else { format!("{written} sold at {sum}") }
}

/// "Sold at 130", "Sold, 5 for 150": a key.
pub fn sold_so_many(n: u32, written: &str, sum: &str) -> String {
    if n == 1 { sold_at(sum) } else { format!("Sold, {written} for {sum}") }
}

/// "1 of 3, by card, they fetch".
pub fn sold_how(n: &str, free: &str, paid: Paid, carried_so: Carried) -> String {
    format!("{n} of {free}, {}, {}", by(paid), carried(carried_so))
}

/// "1 of 3, in notes, they fetch; 203.37 to the coin": what is handed over in coins is not what was said.
pub fn to_the_coin(how: &str, sum: &str) -> String {
    format!("{how}; {sum} to the coin")
}

/// "No sale: note 130".
pub fn no_sale(sum: &str) -> String {
    format!("No sale: note {sum}")
}

pub const THEY_LEFT: &str = "they left";
pub const THEY_TOOK: &str = "they took it";

/// "I said 135".
pub fn i_said(sum: &str) -> String {
    format!("I said {sum}")
}

pub const HAND_OVER_LATER: &str = "Agree, hand over later";

// --- pay and hours

pub const HANDED_OVER: &str = "They hand over";
pub const TAX: &str = "Tax in it";
pub const FEE: &str = "Fee";
pub const YOU_GET: &str = "You get";
pub const COSTS: &str = "Costs";
pub const LEFT: &str = "Left";
pub const TIME: &str = "Hours";
pub const AFTER_WORKSHOP: &str = "After workshop costs";
pub const EVERY_HOUR: &str = "Over every hour worked";
pub const TAG: &str = "Tag";
pub const SETTLE_KEY: &str = "Settle";
pub const SETTLE_WORKED_OUT: &str = "Settle, worked out";
/// Where tax comes on top the two are not of a kind, and say so.
pub const TAG_BEFORE_TAX: &str = "Tag, before tax";
pub const TAG_OF_EACH: &str = "Tag of each";
pub const TAG_OF_EACH_BEFORE_TAX: &str = "Tag of each, before tax";
pub const SETTLE_WITH_TAX: &str = "Settle, with tax";
pub const SETTLE_WORKED_OUT_WITH_TAX: &str = "Settle, worked out, with tax";
pub const OFFERS_HEARD: &str = "Offers heard";
pub const WITH_TO_COME: &str = "Costs and hours with what is still to come, as the job’s own page has it.";
pub const ALL_WORKED: &str = "Nothing of its work is to come: these are all its hours.";
pub const IT_IS_MADE: &str = "It is made";
pub const IT_IS_MADE_UNDER: &str = "nothing of its work is to come";
pub const HOURS_SO_FAR_ONLY: &str = "Hours so far. Hours to come are not known, so it leaves less for each.";
pub const PAY_UNKNOWN: &str = "Left per hour is not known before costs and hours are.";

/// "130 for one" or "260 for 2": an offer that was heard.
pub fn heard(sum: &str, n: u32, written: &str) -> String {
    if n == 1 { sum.to_owned() } else { format!("{sum} for {written}") }
}

// --- a piece that is not in the list

pub const WHAT_IT_LEAVES: &str = "What it leaves";
pub const QUICK_UNDER: &str = "No job needed, nothing is written";
pub const PER_HOUR: &str = "Left per hour";
pub const PER_HOUR_SO_FAR: &str = "Left per hour so far";
pub const START_AGAIN: &str = "Start again";
pub const AT_RATE: &str = "Your rate or more.";
pub const THREE_FIGURES: &str = "Three figures, then what is left for each hour.";

/// "Below your rate, 22.20."
pub fn below_rate(rate: &str) -> String {
    format!("Below your rate, {rate}.")
}

/// "Below your lowest pay, 12."
pub fn below_lowest(lowest: &str) -> String {
    format!("Below your lowest pay, {lowest}.")
}

pub const LESS_THAN_SPENT: &str = "Less than you spent.";
pub const RATE_NOT_SAID: &str = "Say what an hour must earn, and this has a word to it.";

/// "By card: 7.62 of tax and 2.70 of fee go off it first."
pub fn taken_off(how: Paid, tax: Option<&str>, fee: Option<&str>) -> Option<String> {
    let all = tax.map(|tax| format!("{tax} of tax")).into_iter().chain(fee.map(|fee| format!("{fee} of fee")));
    let all: Vec<String> = all.collect();
    let verb = if all.len() == 1 { "goes" } else { "go" };
    (!all.is_empty()).then(|| format!("Paid {}: {} {verb} off it first.", by(how), all.join(" and ")))
}

/// The unit beside hours.
pub const HOUR_UNIT: &str = "h";

// --- the buyer's face

/// "each", "each, with tax": under the price.
pub fn price_is(each: bool, with_tax: bool) -> Option<&'static str> {
    Some(match (each, with_tax) {
        (true, true) => "each, with tax",
        (true, false) => "each",
        (false, true) => "with tax",
        (false, false) => return None,
    })
}

pub const HOLD_TO_CLOSE: &str = "Hold to close";
pub const SIZE: &str = "Size";
pub const WEIGHT: &str = "Weight";
pub const WOOD: &str = "Wood";
pub const FINISH: &str = "Finish";
pub const CARE: &str = "Care";
pub const DELIVERY: &str = "Delivery";

/// "9 1⁄2 × 9 1⁄2 in, 18 7⁄8 in high".
pub fn size(width: &str, depth: &str, height: &str, unit: &str) -> String {
    format!("{width} × {depth} {unit}, {height} {unit} high")
}

/// "1040 × 340 mm": what is known of it.
pub fn part_of_size(sides: &[String], unit: &str) -> String {
    format!("{} {unit}", sides.join(" × "))
}
