//! What is brought back, and what goes back for it.

pub const REFUND: &str = "Brought back";
pub const REFUND_UNDER: &str = "its money goes back";
pub const GOOD_UNDER: &str = "to be handed over again";
pub const MISTAKE: &str = "written by mistake";
/// Of what came in, where some of its pieces stay sold.
pub const CAME_BEYOND: &str = "Of it beyond what the rest costs";
pub const CAME_FOR_IT: &str = "Came in for it";
pub const HANDED_TO_COIN: &str = "Handed over, to the coin";
/// "183.29, rounded to the coin": under what was handed over.
pub fn to_the_coin(exact: &str) -> String {
    format!("{exact}, rounded to the coin")
}
pub const BACK_TO_COIN: &str = "Handed back, to the coin";
pub const TAX_REVERSED: &str = "Its tax, reversed";
pub const FEE_STAYS_PAID: &str = "Its part of the fee, which stays paid";
/// Of what came in ahead.
pub const ITS_FEE_STAYS_PAID: &str = "Its fee, which stays paid";
pub const COMES_BACK: &str = "Comes back";
pub const THEY_KEEP: &str = "They keep it";
pub const STAYS_SOLD: &str = "it stays sold";
/// Where some of the price is still due: it pays no more than that.
pub const OFF_THE_PRICE: &str = "Off the price";
pub const KEPT_FOR_LESS: &str = "Nothing comes back. It was sold for so much less, and its tax goes down with it.";
pub const KEPT_AND_DUE: &str = "Nothing comes back. What is still due goes down first, the rest is handed back.";
pub const PIECES_BACK: &str = "Pieces that come back";
pub const THE_ORDER: &str = "The order";
pub const ORDER_ENDS: &str = "The order ends";
pub const ORDER_STANDS: &str = "I make it good";
/// The same choice where no order of it stands.
pub const THE_SALE: &str = "What they get";
pub const MONEY_GOES_BACK: &str = "Their money back";

/// Of what is made good.
pub const NOTHING_GOES_BACK: &str = "Nothing goes back: what they paid stays paid for what you hand over again.";
pub const REST_STAYS_PAID: &str = "What you don’t hand back stays paid for what you hand over again.";
pub const NOTHING_WAS_PAID: &str = "Nothing was paid for it, so nothing goes back.";
/// Others of the order are still to be handed over.
pub const STANDS_FOR_THE_REST: &str = "The order stands.";

/// "2 pieces of the order stay sold." Where it ends with those that come back.
pub fn stay_sold(pieces: &str, n: fivebar_core::quantity::Count) -> String {
    format!("{pieces} of the order {} sold.", if n == 1 { "stays" } else { "stay" })
}

/// "20.00 stays with you."
pub fn stays_with_you(sum: &str) -> String {
    format!("{sum} stays with you.")
}

/// "184.00 of it kept".
pub fn kept(sum: &str) -> String {
    format!("{sum} kept")
}

/// "Brought back Mon 1 June".
pub fn reversed(day: &str) -> String {
    format!("{REFUND} {day}")
}

/// "1 piece brought back Mon 1 June".
pub fn some_back(n: fivebar_core::quantity::Count, count: &str, day: &str) -> String {
    format!("{} brought back {day}", crate::words::en::common::pieces(n, count))
}

/// "Money back Mon 1 June, they keep it".
pub fn money_back(day: &str) -> String {
    format!("Money back {day}, they keep it")
}

/// "Not paid Mon 1 June, they keep it": of a price that went down by what never came.
pub fn not_paid(day: &str) -> String {
    format!("Not paid {day}, they keep it")
}

/// "50.00 never paid": of a price that went down by more than that, the rest of which went back.
pub fn never_paid(sum: &str) -> String {
    format!("{sum} never paid")
}

/// "125.00 handed back, 20.00 kept".
pub fn went_back(sum: &str, kept: Option<&str>) -> String {
    kept.map_or_else(|| format!("{sum} handed back"), |kept| format!("{sum} handed back, {kept} kept"))
}

/// "tax of -7.56".
pub fn tax_back(sum: &str) -> String {
    format!("tax of {sum}")
}

/// "1 brought back": of the pieces of an agreement.
pub const BROUGHT_BACK_SMALL: &str = "brought back";
pub const CAME_TO_NOTHING_SMALL: &str = "came to nothing";

/// "2 of them handed over".
pub fn of_them(n: &str) -> String {
    format!("{n} of them ")
}
