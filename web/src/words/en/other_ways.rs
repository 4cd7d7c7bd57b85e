//! English: other ways to a price: bought wood, a shop that sells again, a gallery, a like piece, a multiple of materials.

pub const OTHER_WAYS: &str = "Other ways to a price";
pub const OTHER_WAYS_UNDER: &str = "bought wood, a shop, a gallery, a like piece";
pub const BACK: &str = "Back";
pub const FOR_ONE_PAID: &str = "One piece, paid in the way that costs most";
pub const NO_MARKS: &str = "Nothing is known of costs and hours yet: only prices seen elsewhere can stand here.";
pub const HOURS_OPEN: &str = "Hours to come are not known: no way proposes a price before they are planned.";

// --- the wood, bought

pub const BOUGHT: &str = "With bought wood";
pub const BOUGHT_MARK: &str = "bought wood";
pub const BOARDS: &str = "Equal boards, for all";
pub const OF_HAULS: &str = "Share of the hauls, for all";
pub const FETCHING: &str = "Fetching and sorting, for all";
pub const THEN_LOWEST: &str = "Lowest pay is then";
pub const THEN_RATE: &str = "Your rate is then";
pub const BOUGHT_UNDER: &str = "Boards take the place of the hauls and their minutes. For an asking price, never for a tax return.";
pub const BOUGHT_TOO: &str = "Bought wood that is booked on this job stays in its costs and counts beside these boards.";

/// "70 % of a bought board ends in the parts, so there are more boards than parts."
pub fn board_yield(share: &str) -> String {
    format!("{share} % of a bought board ends in the parts, so there are more boards than parts.")
}
pub const NO_PARTS: &str = "List its parts under Wood and plan: boards go by what is in them.";
pub const BOARDS_COST: &str = "What boards cost";

/// "Ash: what its boards cost is not said yet.", of any wood where a part names none.
pub fn no_board_price(wood: Option<&str>) -> String {
    match wood {
        Some(wood) => format!("{wood}: what its boards cost is not said yet."),
        None => "What boards cost is not said yet.".to_owned(),
    }
}

/// "Tag 155".
pub fn tag(sum: &str) -> String {
    format!("Tag {sum}")
}

/// "2.25 over what your rate needs".
pub fn beyond(more: &str) -> String {
    format!("{more} over what your rate needs")
}

// --- a shop that buys it

pub const SHOP: &str = "A shop that sells it again";
pub const SHOP_KEEPS: &str = "It keeps of its price before tax";
pub const MUST_PAY: &str = "It pays you";
pub const ITS_TAG: &str = "Its tag";
pub const TO_COVER: &str = "To reach";
pub const SHOP_UNDER: &str = "It pays without tax, by bank. Keeping half of its price is common practice.";
pub const UNDER_SPENT: &str = "It is under what you spent: sell none so.";

/// "At your tag of 145".
pub fn your_tag(tag: &str) -> String {
    format!("At your tag of {tag}")
}

/// "At a tag of 150, by your rate,": before a tag is set.
pub fn tag_by_rate(tag: &str) -> String {
    format!("At a tag of {tag}, by your rate,")
}

/// "At your tag of 145 it pays 68.72."
pub fn pays_at(tag: &str, pays: &str) -> String {
    format!("{tag} it pays {pays}.")
}

/// "That leaves $8.54 an hour."
pub fn leaves(an_hour: &str) -> String {
    format!("That leaves {an_hour} an hour.")
}

// --- a gallery

pub const A_GALLERY: &str = "A gallery";
pub const TAG_FOR_LOWEST: &str = "Tag for your lowest pay";
pub const TAG_FOR_RATE: &str = "Tag for your rate";
pub const NOTHING_KEPT: &str = "Its share and the tax leave nothing of a tag.";

/// "At your tag of 145 you get 82.46."
pub fn get_at(tag: &str, get: &str) -> String {
    format!("{tag} you get {get}.")
}

// --- a like piece

pub const LIKE: &str = "A like piece elsewhere";
pub const LIKE_MARK: &str = "like piece";
pub const LIKE_NONE: &str = "What did one like it cost at a fair, in a shop, in a listing?";
pub const NOTE_LIKE: &str = "Note a like piece";
pub const LIKE_SUM: &str = "What was its price?";
pub const LIKE_SUM_WITH_TAX: &str = "What was its price, with tax?";
pub const WAS_ASKED: &str = "Asked";
pub const WAS_SOLD: &str = "Sold for it";
pub const LIKE_WAS: &str = "It was";
pub const LIKE_WHAT: &str = "Size, or a note (no names here)";
pub const LIKE_ON: &str = "Seen on";
pub const SEEN_THEN: &str = "Seen then";
pub const STRIKE: &str = "Strike";
pub const LIKE_UNDER: &str = "A mark of its own: it is no cost, and no mark moves by it.";

/// "asked, Sat 18 April"; "asked, with tax, Sat 18 April" where tags are before it.
pub fn seen(sold: bool, day: &str, with_tax: bool) -> String {
    format!("{}{}, {day}", if sold { "sold" } else { "asked" }, if with_tax { ", with tax" } else { "" })
}

/// "$24.10 an hour here".
pub fn an_hour_here(an_hour: &str) -> String {
    format!("{an_hour} an hour here")
}

// --- materials

/// "3 times materials".
pub fn times_materials(times: &str) -> String {
    format!("{times} times materials")
}

/// "29.71 and 32.16 with tax".
pub fn and_with_tax(price: &str, charge: &str) -> String {
    format!("{price} and {charge} with tax")
}

/// "3 times 9.90 is 29.71; that leaves $0.35 an hour."
pub fn why_not(times: &str, spent: &str, price: &str, an_hour: Option<&str>) -> String {
    let leaves = an_hour.map(|an_hour| format!("; that leaves {an_hour} an hour")).unwrap_or_default();
    format!("{times} times {spent} is {price}{leaves}.")
}

pub const HAULS_IN_IT: &str = "The wood is in it at its share of the hauls, with the drives there. No other drive, helper or stall is.";
pub const WHY_NOT: &str = "It goes by what was spent. Wood that was free makes it small, whatever the hours.";
