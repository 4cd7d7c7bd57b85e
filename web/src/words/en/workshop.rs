//! English: Workshop: its first page, the rate, how one is paid, rack, people, costs, theme and hand.

use super::common;
use crate::app::workshop::figures::Figure;
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::money::point::Points;
use fivebar_core::quantity::{Listed, Units};
use fivebar_core::sheet::rate::RatePart;

pub const WORKSHOP: &str = "Workshop";
pub const NOT_SAID: &str = "not said";
pub const NONE_YET: &str = "none yet";

pub const YOUR_RATE: &str = "Your rate";
pub const HOUR_MUST_EARN: &str = "What an hour must earn";
pub const FOR_EACH_HOUR: [&str; 2] = ["your rate, for each", "hour logged to a job"];
pub const NO_RATE_YET: &str = "Not worked out yet";
pub const RATE_IS_NO_WAGE: [&str; 2] = ["A rate is not a wage.", "Sums from your entries, not tax advice."];
pub const GOES_OUT: &str = "goes out";
pub const YOURS: &str = "yours";
pub const PAY: &str = "Pay";
pub const OVERHEAD: &str = "Workshop costs";
pub const WEAR: &str = "Tools wear";
pub const TAX: &str = "Tax on own work";
pub const PROFIT: &str = "Profit";
pub const PER_LOGGED_HOUR: &str = "per logged hour";
pub const YOUR_RATE_MARK: &str = "your rate";
pub const CHANGE_A_FIGURE: &str = "Change a figure";
pub const COSTS_AND_TAX: &str = "Costs and tax";
pub const COSTS_AND_TAX_KEY: &str = "costs and tax";
pub const REAL_YEAR: &str = "The real year";
pub const REAL_YEAR_KEY: &str = "the real year";
pub const YOUR_GUESS: &str = "guess, a year";
pub const SO_FAR: &str = "so far";
pub const WORKED: &str = "hours worked";
/// As it was measured, and what of it was not.
pub const ON_TRIPS: [&str; 3] = ["on trips", "on trips corrected", "on trips recalled"];
pub const LOGGED: &str = "logged to jobs";
pub const WORKSHOP_COSTS: &str = "workshop costs";
pub const AT_THE_REAL_YEAR: &str = "At this year’s hours and costs an hour must earn";
pub const YEAR_TOO_YOUNG: &str =
    "What an hour must earn by the real year is worked out once two months of it are noted, with your pay and logged hours.";
pub const ONE_HOME: &str =
    "Each cost has one home: here or on the job, never both. A rate per mile or km holds fuel, insurance and wear of the van.";

pub const HOW_PAID: &str = "How you are paid";
pub const SALES_TAX_STANDS: &str = "Sales tax stands";
pub const INSIDE: &str = "inside the tag";
pub const ON_TOP: &str = "on top of it";
pub const PAY_STAYS: &str = "What buyers pay stays";
pub const PAY_STAYS_UNDER: &str = "the tags change";
pub const PAY_NEARLY_UNDER: &str = "the tags change; to the cent where a tag can";
pub const NOT_TAKEN_YET: &str = "Not taken yet: say what stays, or Not now.";
pub const TAGS_STAY: &str = "The tags stay";
pub const TAGS_STAY_UNDER: &str = "buyers pay another sum";

/// "With tax on top 3 tags mean another sum:"
pub fn tags_change(n: usize, on_top: bool) -> String {
    let side = if on_top { "on top of the tag" } else { "inside the tag" };
    if n == 1 { format!("With tax {side} 1 tag means another sum.") } else { format!("With tax {side} {n} tags mean another sum.") }
}

/// "a buyer pays $680.00, and would pay $809.20; to pay the same its tag is $571.43."
pub fn tag_turned((pays, would): (&str, &str), same: &str) -> String {
    format!("a buyer pays {pays}, and would pay {would}. To pay the same, its tag is {same}.")
}

/// "a buyer pays $10.00, and would pay $10.89. To pay nearly the same, its tag is $9.18: a buyer pays $9.99."
pub fn tag_nearly((pays, would): (&str, &str), (near, then): (&str, &str)) -> String {
    format!("a buyer pays {pays}, and would pay {would}. To pay nearly the same, its tag is {near}: a buyer pays {then}.")
}

/// "2 more tags."
pub fn more_tags(n: usize) -> String {
    if n == 1 { "1 more tag.".into() } else { format!("{n} more tags.") }
}

pub const TO_COIN: &str = "Notes and coins";
pub const TO_NEAREST_COIN: &str = "Nearest coin";
pub const UP_TO_COIN: &str = "Up to the coin";
pub const PRICE_POINTS: &str = "Proposed prices go up to the next";
pub const TILL_UNDER: &str = "Fees are per payment, each way of paying its own. What is paid in coins is rounded to the smallest coin.";

pub const CURRENCY_UNITS: &str = "Currency and units";
pub const INCHES: &str = "Inches, board feet";
pub const MILLIMETRES: &str = "Millimetres, litres";
pub const UNITS: &str = "Units";
pub const CURRENCY: &str = "Currency";
pub const OTHER_CURRENCY: &str = "Another, by its letters";
pub const NO_SUCH_CURRENCY: &str = "No currency begins so.";
pub const FOR_NEW_ONES: &str = "For new hauls and jobs; those begun stay as they are.";

pub const PEOPLE: &str = "Suppliers and people";
pub const NAME: &str = "A name";
pub const THEIR_NAME: &str = "Name";
pub const PHONE: &str = "Phone";
pub const PLACE: &str = "Place, stairs and floor too";
pub const PHONE_AND_PLACE: &str = "Name, phone and place";
pub const ADD_AS: &str = "Add as";
pub const SUPPLIER: &str = "Supplier";
pub const BUYER: &str = "Buyer";
pub const HELPER: &str = "Helper";
pub const GALLERY: &str = "Gallery";
pub const MAKER: &str = "Maker";
pub const FORGET: &str = "Forget them";
pub const FORGOTTEN_UNDER: &str = "Take back brings them back until the next thing you write. After that name, phone and place are gone for good, and an old copy can’t bring them back. What you wrote of them stays.";
pub const NOBODY: &str = "Nobody yet.";
pub const NAMES_STAY: &str = "Names, phones and places stay beside the book, on this phone and in your copies, and can be forgotten.";

pub const RACK: &str = "Rack";
pub const RACK_EMPTY: &str = "Nothing on the rack. Good pieces of your hauls lie here until a job takes them.";
pub const OLDEST_FIRST: &str = "oldest first";

pub const COSTS: &str = "Workshop costs";
pub const THIS_YEAR: &str = "this year";
pub const NO_COSTS: &str = "Nothing this year yet.";
pub const COSTS_UNDER: &str = "Spending of no job: rent, insurance, a blade.";
pub const OF_HAULS: &str = "rejects and drift of hauls";
pub const OF_HELPERS: &str = "helpers at work of no job";
pub const WRITE_DOWN: &str = "Write down spending for";
pub const IN_YOUR_WORDS: &str = "In your words (no names here)";
pub const STRIKE: &str = "Strike";

pub const HAND: &str = "Theme and hand";
pub const THEME: &str = "Theme";
pub const AS_THE_PHONE: &str = "as the phone";
pub const LIGHT: &str = "light";
pub const DARK: &str = "dark";
pub const TEXT: &str = "Text";
pub const LARGE: &str = "large";
pub const LARGER: &str = "larger";
pub const SINGLE_KEYS: &str = "Single keys of a keyboard";
pub const SINGLE_KEYS_UNDER: &str = "1 to 5 open the places, or are typed where figures are asked; U takes back.";
pub const BUZZES: &str = "Taps are felt, where the phone can";
pub const RINGS: &str = "It rings when a wait is over";
pub const ON: &str = "on";
pub const OFF: &str = "off";

/// A figure by its name.
pub fn figure(figure: Figure, units: Units) -> &'static str {
    match figure {
        Figure::Pay => "pay you want",
        Figure::Lowest => "lowest pay",
        Figure::Hours => "hours a year",
        Figure::Logged => "logged to jobs",
        Figure::Costs => "workshop costs a year",
        Figure::Wear => "tools wear a year",
        Figure::OwnTax => "tax on own work",
        Figure::Profit => "profit",
        Figure::SalesTax => "sales tax",
        Figure::Fee(Paid::Card) => "card fee",
        Figure::FeeFixed(Paid::Card) => "card, each payment",
        Figure::Fee(Paid::Bank) => "bank fee",
        Figure::FeeFixed(Paid::Bank) => "bank, each payment",
        Figure::Fee(Paid::Notes) => "fee on notes",
        Figure::FeeFixed(Paid::Notes) => "notes, each payment",
        Figure::Cash => "smallest coin",
        Figure::Mileage if units == Units::Inch => "rate per mile",
        Figure::Mileage => "rate per km",
    }
}

/// What is asked when the figure is typed.
pub fn ask(figure: Figure, units: Units) -> &'static str {
    match figure {
        Figure::Pay => "What pay do you want for an hour?",
        Figure::Lowest => "What is the least you work an hour for?",
        Figure::Hours => "How many hours do you work in a year?",
        Figure::Logged => "How many of them can be logged to jobs?",
        Figure::Costs => "What does the workshop cost in a year?",
        Figure::Wear => "What do tools lose in a year?",
        Figure::OwnTax => "What tax falls on your own work?",
        Figure::Profit => "What profit on top?",
        Figure::SalesTax => "What is the sales tax?",
        Figure::Fee(Paid::Card) => "What share does a card take?",
        Figure::FeeFixed(Paid::Card) => "What does a card take for each payment?",
        Figure::Fee(Paid::Bank) => "What share does the bank take of a transfer?",
        Figure::FeeFixed(Paid::Bank) => "What does the bank take for each transfer?",
        Figure::Fee(Paid::Notes) => "What share does it cost to be paid in notes?",
        Figure::FeeFixed(Paid::Notes) => "What does each payment in notes cost?",
        Figure::Cash => "What is the smallest coin?",
        Figure::Mileage if units == Units::Inch => "What does a mile cost?",
        Figure::Mileage => "What does a kilometre cost?",
    }
}

/// A word of help under the question.
pub fn ask_under(figure: Figure) -> &'static str {
    match figure {
        Figure::Pay => "For every hour worked, before income tax.",
        Figure::Lowest => {
            "For an hour logged to a job, before workshop costs. No price that pays less is proposed but your own tag or settle."
        }
        Figure::Hours => "All of them: sharpening, tidying and learning too.",
        Figure::Logged => "The rest is sharpening, tidying, learning.",
        Figure::Costs => "Rent, insurance, heat: what belongs to no job.",
        Figure::Wear => "Cost less what it will still be worth, over its years.",
        Figure::OwnTax => "What you owe on earnings besides income tax.",
        Figure::Profit => "A share of pay, costs and tax.",
        Figure::Mileage => "It holds fuel, insurance and wear of the van.",
        Figure::Cash => "Sums in notes and coins are rounded to it.",
        _ => "",
    }
}

/// "2 more blanks after it. Not now leaves them."
pub fn more_blanks(n: usize) -> String {
    if n == 1 { "1 more blank after it. Not now leaves it.".into() } else { format!("{n} more blanks after it. Not now leaves them.") }
}

/// What is spent on no job, by its key in the book.
pub fn spending(kind: &str) -> &'static str {
    match kind {
        "rent" => "Rent",
        "insurance" => "Insurance",
        "power" => "Power",
        "edges" => "Blades, edges",
        "tools" => "Tools",
        "distance" => "A drive",
        "helper" => "Helper",
        "glue" => "Glue",
        "discs" => "Sanding discs",
        "finish" => "Finish",
        _ => "Other",
    }
}

/// A word of help over what is spent on no job, by its key in the book.
pub fn spending_under(kind: &str) -> Option<&'static str> {
    (kind == "insurance").then_some("Of the workshop: the rate for a drive holds the van’s.")
}

/// A part of the rate by its name in a sentence.
pub fn part(part: RatePart) -> &'static str {
    match part {
        RatePart::Pay => "the pay you want",
        RatePart::Lowest => "the lowest pay",
        RatePart::Hours => "your hours a year",
        RatePart::Logged => "the hours logged to jobs",
        RatePart::Costs => "workshop costs",
        RatePart::Wear => "tools wear",
        RatePart::Tax => "tax on own work",
        RatePart::Profit => "profit",
    }
}

/// "Missing: the pay you want, your hours a year. Then it can be worked out."
pub fn missing(parts: &[&str]) -> String {
    format!("Missing: {}. Then it is worked out.", parts.join(", "))
}

/// "Counted as nothing, as you have not said it: tools wear, profit."
pub fn counted_as_nothing(parts: &[&str]) -> String {
    format!("Not said, so nothing is in it for {}.", parts.join(", "))
}

/// "20.00 × 480 h over 300".
pub fn pay_note(pay: &str, hours: &str, logged: &str) -> String {
    format!("{pay} × {hours} h over {logged}")
}

/// "20.00 × 118 h 20 over 80 h".
pub fn pay_note_real(pay: &str, worked: &str, logged: &str) -> String {
    format!("{pay} × {worked} over {logged}")
}

/// "Of 62.52, 36.90 is yours".
pub fn of_it_yours(rate: &str, yours: &str) -> String {
    format!("Of {rate}, {yours} is yours")
}

/// "over all 480 h".
pub fn over_all(hours: &str) -> String {
    format!("over all {hours} h")
}

/// "The hours worked: measured 40 h, recalled 60 h, on trips 3 h."
pub fn hours_from(parts: &str) -> String {
    format!("The hours worked: {parts}.")
}

/// "Logged to jobs: 1 h 22 of it is for wood on the rack, which no job has yet."
pub fn on_rack(span: &str) -> String {
    format!("Logged to jobs: {span} of it is for wood on the rack, which no job has yet.")
}

/// "39 % of the year has passed." Of a book begun in it: "Since Sat 18 Apr: 12 % of a year."
pub fn passed(percent: &str, since: Option<&str>) -> String {
    since.map_or_else(|| format!("{percent} of the year has passed."), |since| format!("Since {since}: {percent} of a year."))
}

/// "$62.52 an hour".
pub fn an_hour(rate: &str) -> String {
    format!("{rate} an hour")
}

/// "480 h".
pub fn hours(hours: &str) -> String {
    format!("{hours} h")
}

/// "pay $20.00 an hour, not all said".
pub fn pay_alone(pay: &str) -> String {
    format!("pay {pay} an hour, the rest not said")
}

/// "35 min logged", "16 h logged, and 15 h to settle".
pub fn logged_so_far(span: &str, open: Option<&str>) -> String {
    let open = open.map(|open| format!(", and {open} to settle")).unwrap_or_default();
    format!("{span} logged{open}")
}

/// "2.6 %", "2.9 % and $0.30", "$0.30": the fee of a card.
pub fn card_fee(share: Option<&str>, fixed: Option<&str>) -> Option<String> {
    let said = share.into_iter().chain(fixed).listed();
    (!said.is_empty()).then(|| said.join(" and "))
}

/// "sales tax 5.5 %, card 2.6 % and $0.10, driving 0.67 a mi".
pub fn paid_so(tax: Option<&str>, card: Option<&str>, drive: Option<(&str, Units)>) -> Option<String> {
    let drive = drive.map(|(rate, per)| format!("driving {rate} a {}", common::distance_unit(per)));
    let said = [tax.map(|tax| format!("sales tax {tax}")), card.map(|card| format!("card {card}")), drive];
    let said: Vec<String> = said.into_iter().flatten().listed();
    (!said.is_empty()).then(|| said.join(", "))
}

/// Where only less than these is said of how one is paid.
pub const MOST_NOT_SAID: &str = "sales tax, card and driving not said";

/// "not said for JPY, kept for EUR".
pub fn not_said_for(here: &str, others: &str) -> String {
    format!("{NOT_SAID} for {here}, kept for {others}")
}

/// "Anna is not added yet. …"
pub fn not_added(name: &str) -> String {
    format!("{name} is not added yet. Tap what they are. Done leaves without them.")
}

/// A price point: "whole 5", "cent", "ending in 9".
pub fn point(points: Points) -> &'static str {
    match points {
        Points::Minor => "cent",
        Points::Nine => "…9",
        other => other.key(),
    }
}

/// "46 pieces in 4 piles".
pub fn pieces_in_piles(pieces: &str, piles: usize, written: &str) -> String {
    if piles == 1 { format!("{pieces} in {written} pile") } else { format!("{pieces} in {written} piles") }
}

/// "11 weeks", "1 week", "this week".
pub fn weeks(n: i64, written: &str) -> String {
    match n {
        ..=0 => "this week".to_owned(),
        1 => format!("{written} week"),
        _ => format!("{written} weeks"),
    }
}

/// ", from 3 March".
pub fn from_day(day: &str) -> String {
    format!(", from {day}")
}

/// "Lies longer than " … a board of this length, for a reader.
pub fn board_said(size: &str) -> String {
    format!("A board of {size}")
}

/// The unit of a rate for a distance.
pub fn per_distance(currency: &str, units: Units) -> String {
    format!("{currency} / {}", common::distance_unit(units))
}
