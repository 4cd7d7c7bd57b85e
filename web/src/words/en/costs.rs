//! English: where costs belong, what came back of one, its receipt, tools that wear.

pub const CAME_BACK: &str = "Some of it came back";
pub const OR_SO_MANY: &str = "or so many";
pub const WHAT_CAME_BACK: &str = "Sent back, or salvage (no names)";
pub const HOME: &str = "Where it belongs";
pub const ON_JOBS: &str = "On each job";
pub const IN_RATE: &str = "In the rate";
/// Done was tapped before it was said where a kind belongs.
pub const SAY_HOME: &str = "Say where it belongs. Done again leaves that open.";
pub const HELPER_TWICE: &str = "A helper is paid by the hour here and written down as spending: if it is the same pay, strike one.";
pub const RECEIPT: &str = "Photo of the receipt";
pub const RECEIPT_OF: &str = "The receipt";
pub const RECEIPT_THERE: &str = "receipt";
pub const NOT_HERE: &str = "Its picture is not on this phone.";

/// "Where does Power belong? Each cost has one home."
pub fn where_home(kind: &str) -> String {
    format!("{kind}: on each job as used, or in your rate? It is asked once.")
}

/// "Power is in your rate: on a job it counts twice."
pub fn in_rate(kind: &str) -> String {
    format!("{kind} belongs in your rate: on a job it counts twice.")
}

/// "Power belongs on jobs: in workshop costs it counts twice."
pub fn on_jobs(kind: &str) -> String {
    format!("{kind} belongs on jobs: in workshop costs it counts twice.")
}

/// "Power is in these costs and on jobs: it may count twice. Where does it belong?"
pub fn in_both(kind: &str) -> String {
    format!("{kind} is in these costs and on jobs of this year: it may count twice. Where does it belong?")
}

pub const TOOL_TWICE: &str = "A tool that is in workshop costs and among your tools counts twice.";

/// "42.47 by your tools", "254.79 by your guess": the wear of the real year.
pub fn wear_by(wear: &str, guessed: bool) -> String {
    format!("{wear} {}", if guessed { "by your guess" } else { "by your tools" })
}

/// "Power is on this job and in this year's workshop costs."
pub fn twice(kind: &str) -> String {
    format!("{kind} is on this job and in this year’s workshop costs: it may count twice. Where does it belong?")
}

pub const TOOLS: &str = "Tools";
pub const NO_TOOLS: &str = "No tools yet.";
pub const TOOLS_UNDER: &str =
    "What a tool cost, less what it fetches at the end, over its years. The sum is proposed to your rate, never written by itself.";
pub const NEW_TOOL: &str = "Another tool";
pub const TOOL_NAME: &str = "Which tool";
pub const PRICE: &str = "Cost";
pub const YEARS: &str = "Years";
pub const FETCHES: &str = "Fetches at the end";
pub const SHARE: &str = "Of what is left, a year";
pub const WEARS: &str = "How it wears";
pub const STRAIGHT: &str = "As much each year";
pub const DECLINING: &str = "Most at first";
pub const BOUGHT: &str = "Bought";

pub const SOLD_IT: &str = "It was sold";
pub const NOT_SOLD: &str = "Strike the sale";
pub const SOLD_FOR: &str = "Sold for";
pub const SOLD_IN: &str = "In the year";
pub const SOLD_UNDER: &str =
    "It wears nothing from that year on. More or less than what was left of its cost is said in its line: a sum, not tax advice.";

/// "Sold in 2027 for $800.00, $50.00 more than was left of its cost".
pub fn sold(year: &str, sum: &str, gain: Option<(bool, &str)>) -> String {
    let gain = gain.map(|(more, gain)| format!(", {gain} {} than was left of its cost", if more { "more" } else { "less" }));
    format!("Sold in {year} for {sum}{}", gain.unwrap_or_default())
}

/// "wear in 2026".
pub fn wear_in(year: &str) -> String {
    format!("wear in {year}")
}

/// "1,200.00 in 2026, 4 years".
pub fn tool(cost: &str, year: &str, years: u32) -> String {
    let word = if years == 1 { "year" } else { "years" };
    format!("{cost} in {year}, {years} {word}")
}

/// "By your tools in 2026".
pub fn by_tools(year: &str) -> String {
    format!("by your tools in {year}")
}

/// "IRS, business miles, 2026".
pub fn published(year: &str) -> String {
    format!("published for {year}: US standard rate for business miles, IRS")
}

/// "24,000.00 for an hour: is that so?"
pub fn is_it_so(sum: &str) -> String {
    format!("{sum} for one hour: is that so?")
}

pub const IT_IS_SO: &str = "It is so";

/// "2 back".
pub fn so_many_back(n: &str) -> String {
    format!("{n} back")
}

/// "Left empty, the rate is 0.30 a km, as in Workshop."
pub fn rate_as_set(rate: &str, unit: &str) -> String {
    format!("Left empty, the rate is {rate} a {unit}, as in Workshop.")
}
