//! Words about rates of sales tax.

pub const TAX_OF_JOB: &str = "Tax of these pieces";
pub const TAX_OF_SALE: &str = "Tax of this sale";
pub const NO_TAX: &str = "No tax";
pub const USUAL: &str = "usual";
pub const AGREED: &str = "as agreed";
pub const OTHER_RATES: &str = "Other tax rates";
pub const OTHER_UNDER: &str = "For pieces and sales that are not taxed as usual. No tax needs no rate of its own.";
pub const ANOTHER: &str = "Another tax rate";
pub const NAME: &str = "Its name, such as reduced";
pub const RATE: &str = "Rate";
pub const STANDS: &str = "It stands";
pub const DROP: &str = "Offer it no more";
pub const DROP_UNDER: &str = "jobs that have it keep it";
pub const EACH_ITS_TAX: &str = "tax as each says";
pub const RECORDED: &str = "Sales tax recorded in";
pub const BY_GALLERIES: &str = "of what galleries sold";
pub const RECORDED_UNDER: &str = "The lines of your sales as they were written, not tax advice.";

/// "inside" the tag, "on top" of it, small beside a rate.
pub fn side(on_top: bool) -> &'static str {
    if on_top { "on top" } else { "inside" }
}

/// "usual, inside": under a rate.
pub fn stands(which: &str, on_top: bool) -> String {
    format!("{which}, {}", side(on_top))
}

/// "7 %, inside".
pub fn rate_at(rate: &str, on_top: bool) -> String {
    format!("{rate}, {}", side(on_top))
}

/// "at 7 %", in the list of a year; "without tax".
pub fn at(rate: Option<&str>) -> String {
    rate.map_or_else(|| "without tax".to_owned(), |rate| format!("at {rate}"))
}

/// "3 sales, 435.00".
pub fn sold(n: i32, shown: &str, taken: &str) -> String {
    let sales = if n == 1 { "sale" } else { "sales" };
    format!("{shown} {sales}, {taken}")
}

/// "no tax", "tax: Reduced, 2 %", under a piece that is not taxed as usual.
pub fn not_usual(named: Option<(&str, &str)>) -> String {
    named.map_or_else(|| "no tax".to_owned(), |(name, rate)| format!("tax: {name}, {rate}"))
}
