//! English: the deal: tag and settle, what is agreed, payments, galleries, and what an act of Price takes back.

use super::{common, waiting};
use crate::app::price::Done;

pub const WHAT_ELSE: &str = "What else?";
pub const TAG_AND_SETTLE: &str = "Tag and settle";
pub const AGREE: &str = "Agree a price";
pub const AGREE_UNDER: &str = "hand over later, with a deposit";
pub const LEAVE_AT_GALLERY: &str = "Leave it with a gallery";
pub const GALLERY_PAID_OR_BACK: &str = "The gallery paid, or gives it back";

// --- tag and settle

pub const ITS_TAG: &str = "What is on the tag of each?";
pub const ITS_SETTLE: &str = "What would you take gladly?";
pub const FOR_ONE: &str = "for one piece";
pub const NO_SETTLE: &str = "No settle of my own";
pub const TAG_SHOWN: &str = "The buyer sees the tag, and nothing else of this.";
pub const TAG_BEFORE_TAX: &str = "Before tax: it comes on top.";
pub const SETTLE_HIDDEN: &str = "The buyer never sees it.";

/// "Tag 150, from your rate".
pub fn propose(tag: &str) -> String {
    format!("Tag {tag}, from your rate")
}

/// "The price point adds to it: 2.25 more to you than your rate needs."
pub fn point_adds(more: &str) -> String {
    format!("The price point adds to it: {more} more to you than your rate needs.")
}

// --- agree

pub const AGREED_PRICE: &str = "Agreed price";
pub const AGREED_WITH_TAX: &str = "Agreed price, with tax";
/// "The price was for 1 piece. Say it for 2 pieces."
pub fn price_was_for(before: &str, now: &str) -> String {
    format!("The price was for {before}. Say it for {now}.")
}

pub const DEPOSIT: &str = "Deposit";
pub const NO_DEPOSIT: &str = "none";
pub const FOR_WHOM: &str = "For whom";
/// Nobody was named, or the name is gone for good.
pub const SOMEONE: &str = "someone";
pub const SOMEBODY_NEW: &str = "somebody new";
pub const THEIR_NAME: &str = "Their name";

/// "for Bea": who it was agreed with.
pub fn for_whom(name: &str) -> String {
    format!("for {name}")
}

/// Of many pieces, how many are promised.
pub const TYPE_HOW_MANY: &str = "Type how many";
pub const BY_WHEN: &str = "Hand over by";
pub const NO_DATE: &str = "no date";

/// "Sat 14 March, as agreed".
pub fn as_agreed(day: &str) -> String {
    format!("{day}, as agreed")
}
pub const SAVE_AGREEMENT: &str = "Agreed";
pub const CHANGE_OF_ORDER: &str = "Change of order";

/// What the coins made more, or less, of what was owed.
pub fn rounded_to_coin(up: bool) -> &'static str {
    if up { "Rounded up to the coin" } else { "Rounded down to the coin" }
}

pub const PLANNED_ANEW: &str = "The payments are to be planned anew: they were of another sum.";

/// "30 %".
pub fn percent(share: &str) -> String {
    format!("{share} %")
}

/// "1 week", "2 weeks".
pub fn weeks(n: u32, written: &str) -> String {
    if n == 1 { format!("{written} week") } else { format!("{written} weeks") }
}

/// "460, deposit 184, by Sat 23 May", "2 for 170, deposit 51".
pub fn agreement((n, written): (u32, &str), price: &str, deposit: Option<&str>, day: Option<&str>) -> String {
    let price = if n == 1 { price.to_owned() } else { format!("{written} for {price}") };
    let deposit = deposit.map(|sum| format!(", deposit {sum}")).unwrap_or_default();
    let day = day.map(|day| format!(", by {day}")).unwrap_or_default();
    format!("{price}{deposit}{day}")
}

// --- the deal

pub const SOLD_NOT_PAID: &str = "Sold, not paid yet";
pub const OWED_BEFORE: &str = "Owed of pieces handed over before";
pub const OTHER_SUM: &str = "Another sum came in";
pub const CHANGE: &str = "Change the order";
pub const WHAT_IF: &str = "Another price?";
pub const HANDED_OVER: &str = "Handed over";
pub const CAME_TO_NOTHING: &str = "It came to nothing";
pub const DEPOSIT_BACK: &str = "deposit handed back";
pub const NOTHING_CAME_IN: &str = "nothing came in";
pub const NOTHING_TO_HAND_BACK: &str = "nothing to hand back";
pub const HOW_MUCH_CAME: &str = "How much came in?";

/// "1 of 2": of the pieces that were agreed, how many are handed over.
pub fn of_all(handed: &str, of: &str) -> String {
    format!("{handed} of {of}")
}

/// "Change the order to 430".
pub fn change_to(sum: &str) -> String {
    format!("{CHANGE} to {sum}")
}

/// "Handed over, 276.00 paid by card".
pub fn handed_over_paid(sum: &str, by: &str) -> String {
    format!("Handed over, {sum} paid {by}")
}

/// "Deposit 184.00 came in, by card".
pub fn deposit_in(sum: &str, by: &str) -> String {
    format!("Deposit {sum} came in, {by}")
}

/// "276.00 came in, by card".
pub fn came_in(sum: &str, by: &str) -> String {
    format!("{sum} came in, {by}")
}

/// "Handed back, its fee of 4.65 stays with you."
pub fn back_without_fee(fee: &str) -> String {
    format!("Handed back, its fee of {fee} stays with you.")
}

/// "deposit of 184.00 kept".
pub fn deposit_kept(sum: &str) -> String {
    format!("deposit of {sum} kept")
}

/// "for 1 piece; 12.00 less than its terms say": a gallery handed over another sum.
pub fn less_than_terms(under: &str, less: &str) -> String {
    format!("{under}; {less} less than its terms say")
}

/// "for 3 pieces".
pub fn for_pieces(pieces: &str) -> String {
    format!("for {pieces}")
}

// --- several payments

pub const IN_PARTS: &str = "Several payments";
pub const IN_ONE_SUM: &str = "In one sum after all";
pub const AT_HAND_OVER: &str = "at hand-over";
pub const PAID: &str = "paid";
pub const OTHER_PART: &str = "Another sum";
pub const SAVE_PARTS: &str = "Paid like this";
pub const WORK_OWED: &str = "Came in ahead, owed as work";

/// "in 3".
pub fn parts(n: &str) -> String {
    format!("in {n}")
}

/// "Payment 2".
pub fn part(nth: &str) -> String {
    format!("Payment {nth}")
}

/// "Payment 2 comes in".
pub fn its_day(part: &str) -> String {
    format!("{part} comes in")
}

/// "by Fri 8 May".
pub fn by_day(day: &str) -> String {
    format!("by {day}")
}

/// "Besides, 199.60 is owed now for what was handed over.": of an order that was changed, whose payments are of the rest alone.
pub fn owed_beside(sum: &str) -> String {
    format!("Besides, {sum} is owed now for what was handed over.")
}

/// "460.00 of 460.00".
pub fn added_up(sum: &str, price: &str) -> String {
    format!("{sum} of {price}")
}

/// "Payment 2, by Fri 8 May".
pub fn part_by(part: &str, by: &str) -> String {
    format!("{part}, {by}")
}

/// "138.00 lacking".
pub fn lacking(sum: &str) -> String {
    format!("{sum} to come")
}

// --- galleries

pub const GALLERY: &str = "At the gallery";
pub const TO_GALLERY: &str = "To the gallery";
pub const ITS_SHARE: &str = "The gallery keeps";
pub const SHARE_OF: &str = "Its share is taken";
pub const BEFORE_TAX: &str = "Before tax";
pub const WITH_TAX: &str = "Of the whole tag";
/// Of a settle, where tax comes on top of the tag.
pub const WITH_TAX_SMALL: &str = "with tax";
pub const WHO_PAYS_TAX: &str = "Who sends in the tax";
pub const GALLERY_PAYS: &str = "The gallery";
pub const I_PAY: &str = "I do";
pub const OTHER: &str = "other";
pub const GALLERY_PAID: &str = "Gallery paid";
pub const GIVEN_BACK: &str = "Given back";

pub const GALLERY_OWES: &str = "Sold by a gallery, not paid in full";
pub const REST_TO_COME: &str = "The rest is to come";
pub const LESS_THAN_TERMS: &str = "Less than its terms say";
pub const THAT_IS_ALL: &str = "That is all";
pub const OF_THE_REST: &str = "What lacks";
pub const STILL_OWES: &str = "It still owes";
pub const WILL_NOT_BE_PAID: &str = "This will not be paid";
pub const SALE_STAYS: &str = "The sale stays; what came is what was paid";
pub const PAID_IN_PART: &str = "Paid in part";

/// "Of 82.46": all that a gallery owed.
pub fn gallery_owed(whole: &str) -> String {
    format!("Of {whole}")
}

/// "for 1 piece; 22.46 still due": the rest is to come.
pub fn rest_due(under: &str, due: &str) -> String {
    format!("{under}; {due} still due")
}

pub const NOT_NAMED: &str = "not named";
pub const AT_WHOM: &str = "With";
pub const YOU_GET_EACH: &str = "For each sold you get";
pub const HANDED_OVER_EACH: &str = "For each sold it hands over";
pub const LEFT_ON: &str = "Left there";
pub const SOLD_FOR: &str = "Sold for";
pub const OTHER_PRICE: &str = "Not sold at the tag";
pub const HOW_MUCH_PAID: &str = "What did the buyer hand over, tax in?";

/// "At Fern".
pub fn at(name: &str) -> String {
    format!("At {name}")
}

/// "82.46 to you for each sold".
pub fn to_you_each(sum: &str) -> String {
    format!("{sum} to you for each sold")
}

/// "2 there, tag 145".
pub fn there(n: &str, tag: &str) -> String {
    format!("{n} there, tag {tag}")
}

/// "At Fern: 2 there, tag 145, since Sat 18 April": one consignment of several.
pub fn lot(at: &str, there: &str, day: &str) -> String {
    format!("{at}: {there}, since {day}")
}

/// "Gallery paid 82.46".
pub fn gallery_paid(sum: &str) -> String {
    format!("Gallery paid {sum}")
}

/// "Left 2 there".
pub fn left_there(pieces: &str) -> String {
    format!("{pieces} left there")
}

/// "1 piece came back".
pub fn came_back(pieces: &str) -> String {
    format!("{pieces} came back")
}

/// What an act of Price did, with the figure as written.
fn did(done: Done, figure: &str) -> String {
    match done {
        Done::Sold(_) => format!("sold at {figure}"),
        Done::Heard(_) => format!("offer of {figure}"),
        Done::Agreed(_) => format!("agreed {figure}"),
        Done::InParts(_) => format!("payments of {figure}"),
        Done::Cancelled(_) => "came to nothing".to_owned(),
        Done::Received(_) => format!("{figure} came in"),
        Done::Consigned(_) => format!("{figure} to the gallery"),
        Done::Returned(_) => format!("{figure} given back"),
        Done::GalleryPaid(_) => format!("gallery paid {figure}"),
        Done::GivenUp(_) => format!("{figure} will not be paid"),
        Done::Tagged(_) => format!("tag {figure}"),
        Done::Settled => "settle".to_owned(),
        Done::Asked(false) => waiting::ASKED.to_owned(),
        Done::NeverCame | Done::Asked(true) => waiting::DID_NOT_TURN_UP.to_owned(),
        Done::Guessed => waiting::GUESSED.to_owned(),
        Done::LikeSeen(_) => format!("a like piece at {figure}"),
        Done::Resale => "what a shop keeps".to_owned(),
    }
}

/// "Take back: sold at 130": what the bar takes back.
pub fn take_back(done: Done, figure: &str) -> String {
    format!("Take back: {}", did(done, figure))
}

/// "taken back: sold at 130, Plant stands": what it puts back, and of which piece.
pub fn taken_back(done: Done, figure: &str, name: &str) -> String {
    common::taken_back(&format!("{}, {name}", did(done, figure)))
}
