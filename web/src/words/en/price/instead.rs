//! English: what to say in place of a better price, and against what each way is more.

use super::pieces_word;
use fivebar_core::sheet::offer::Ask;

pub const ASK_NOTES: &str = "Ask for notes first:";
pub const ASK_FETCH: &str = "Ask them to fetch it:";

/// "Offer two for 240:", "Offer 4 for 480:"
pub fn offer_together((n, written): (u32, &str), sum: &str) -> String {
    format!("Offer {} for {sum}:", pieces_word(n).unwrap_or(written))
}

/// "Two for 240", "4 for 480": what to say in place of a better price.
pub fn together((n, written): (u32, &str), sum: &str) -> String {
    format!("{} for {sum}", super::super::jobs::upper_first(pieces_word(n).unwrap_or(written)))
}

pub const INSTEAD: &str = "What to say instead";
pub const SAME_AND_TIME: &str = "the same, and time";
pub const ONE_MORE_UNDER: &str = "One more is made at the pace of the others, at your rate, without selling it.";

/// What stands under the ways: against what each is more.
pub const MORE_LEFT_UNDER: &str = "More left than by their offer, with all costs off.";

/// "In notes": one way beside a better price.
pub fn instead(ask: Ask, sum: &str) -> String {
    match ask {
        Ask::Notes => "In notes".to_owned(),
        Ask::Fetch => "They fetch it".to_owned(),
        Ask::Together(n) => together((n, &n.to_string()), sum),
        Ask::OneMore => format!("One more, {sum} or more"),
        Ask::Later => "A later date".to_owned(),
    }
}

/// "3.48 more, $19.32 an hour".
pub fn more_and_an_hour(more: &str, an_hour: &str) -> String {
    format!("{more} more, {an_hour} an hour")
}

/// "3.48 more left than by their offer."
pub fn more_left(more: &str) -> String {
    format!("{more} more left than by their offer.")
}

/// "191.88 more to you now than by their offer, costs not off. Kept for later, …": beside what is given for several together.
pub fn more_now_or_kept(more: &str, kept: &str) -> String {
    format!(
        "{more} more to you now than by their offer, costs not off. Kept for later, one is worth about {kept} to you, as it may stay unsold, with tax and fee off both."
    )
}
