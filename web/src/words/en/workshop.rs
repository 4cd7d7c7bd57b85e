//! English: Workshop, copies, help, cautions.

use super::refusal::Said;
use fivebar_core::ledger::line::document::DocumentTrouble;

pub const ON_THIS_PHONE_ONLY: &str = "On this phone only.";
pub const NO_COPY_YET: &str = "No copy was ever kept.";
pub const KEEP_A_COPY: &str = "Keep a copy";
pub const KEEP_UNDER: &str = "one file: send it, or put it where you like";
pub const EXAMPLE_STAYS_OUT: &str = "The example stays out of it.";
pub const BRING_ONE_IN: &str = "Bring one in";
pub const BRING_UNDER: &str = "from another phone, or an older copy";
pub const NOTHING_CHANGED: &str = "Nothing is changed yet. What is here stays: a copy only ever adds.";
pub const ADD_THESE: &str = "Add these";
pub const HERE: &str = "here";
pub const ADDS: &str = "it adds";
pub const THEN: &str = "then";
pub const JOBS: &str = "jobs";
pub const PILES: &str = "piles";
pub const PIECES: &str = "pieces counted";
pub const HOURS: &str = "hours logged";
pub const PUT_AWAY: &str = "No copy was kept: the sheet was put away.";
pub const NO_WAY: &str = "No copy was kept: this browser has no way to hand a file on.";
pub const ADDED: &str = "Added. Each part can be taken back where it stands.";
pub const YOUR_RATE: &str = "Your rate";
pub const RATE_UNDER: &str = "what an hour must earn";
pub const RATE_MISSING: &str = "say what you want per hour";
pub const PER_LOGGED_HOUR: &str = "for each hour logged to jobs";
pub const HOW_PAID: &str = "How you are paid";
pub const HOW_PAID_UNDER: &str = "sales tax, card fee, price points, mileage";
pub const CURRENCY_UNITS: &str = "Currency and units";
pub const PEOPLE: &str = "Suppliers and people";
pub const RACK: &str = "Rack";
pub const COSTS: &str = "Workshop costs";
pub const COSTS_UNDER: &str = "spending of no job, this year";
pub const HAND: &str = "Light and hand";
pub const CAUTIONS: &str = "Cautions";
pub const HELP: &str = "Help";
pub const ABOUT: &str = "About";
pub const WORKSHOP: &str = "Workshop";
pub const NOT_SAID: &str = "not said";
pub const RATE_IS_NO_WAGE: &str = "A rate is not a wage. Sums from your entries, not tax advice.";
pub const GOES_OUT: &str = "goes out";
pub const YOURS: &str = "yours";
pub const PAY: &str = "Pay";
pub const OVERHEAD: &str = "Workshop costs";
pub const WEAR: &str = "Tools wear";
pub const TAX: &str = "Tax on own work";
pub const PROFIT: &str = "Profit";
pub const CHANGE_A_FIGURE: &str = "Change a figure";
pub const INSIDE: &str = "inside the tag";
pub const ON_TOP: &str = "on top";
pub const INCHES: &str = "Inches, board feet";
pub const MILLIMETRES: &str = "Millimetres, litres";
pub const FOR_NEW_ONES: &str = "For new hauls and jobs; those begun stay as they are.";
pub const RACK_EMPTY: &str = "Nothing on the rack. Good pieces of your hauls lie here until a job takes them.";
pub const NAME: &str = "Name";
pub const SUPPLIER: &str = "Supplier";
pub const BUYER: &str = "Buyer";
pub const HELPER: &str = "Helper";
pub const GALLERY: &str = "Gallery";
pub const MAKER: &str = "Maker";
pub const FORGET: &str = "Forget";
pub const FORGET_UNDER: &str = "the name is gone for good";
pub const NOBODY: &str = "Nobody yet. Names stay beside the book, on this phone and in your copies.";
pub const WHAT_FOR: &str = "What for";
pub const WRITE_DOWN: &str = "Write down spending";
pub const NO_COSTS: &str = "Nothing spent on the workshop this year.";
pub const AS_THE_PHONE: &str = "as the phone";
pub const LIGHT: &str = "light";
pub const DARK: &str = "dark";
pub const PRICE_POINTS: &str = "Round proposed prices up to";
pub const SALES_TAX_STANDS: &str = "Sales tax stands";
pub const NO_NETWORK: &str = "No account, no server, no telemetry. It asks nothing of any network but its own files.";
pub const LICENCES: &str = "MIT OR Apache-2.0. Font Overpass: SIL Open Font License 1.1.";
pub const VERSION: &str = concat!("Fivebar ", env!("CARGO_PKG_VERSION"));

/// Help, a heading and its lines.
pub const HELP_PAGES: [(&str, &str); 8] = [
    (
        "Count",
        "At the yard: one tap on a tile counts one piece, or as many as the key below is set to. A new pile takes five taps, or is named at home. Leaving, at the bin, home: the trip’s clock.",
    ),
    ("Sort", "At home: good, or rejected and why. An unsorted piece counts as good."),
    (
        "Bench",
        "One tap starts an operation, another switches to the next, Stop ends it. Forgot it? It asks, and never holds you up. The day’s list mends and strikes every run.",
    ),
    (
        "Price",
        "What is for sale, what you ask, and what to say when they offer. Show the buyer turns the phone into their page: nothing private is on it.",
    ),
    ("Jobs", "What you make: its wood, hours, money, sale, and what was learnt. Try the example there."),
    (
        "Where your data is",
        "On this phone only, in the browser’s own store. “saved” stands there only when it is. Keep a copy, and keep it somewhere else.",
    ),
    (
        "On your phone",
        "Open the app’s address, add it to the home screen, open it once with a network. Do that before you write anything that matters: on some phones the page and the installed app do not share one store.",
    ),
    ("Undo", "Every tap can be taken back: the bar names what. Everything older can be struck or mended where it is listed."),
];

/// Cautions and where they stand.
pub const ALL_CAUTIONS: [(&str, &str); 12] = [
    ("Short pieces", "Shorter than the minimum you set. Your machine’s manual decides."),
    ("Dust", "Hardwood dust harms lungs. Collect it and mask as local rules say."),
    ("Rags", "Oily rags can heat up by themselves. Lay them flat outdoors, or as the tin says."),
    ("Tall pieces", "Can tip. Fix to the wall; local furniture rules may apply."),
    ("For a child", "Children’s furniture has its own law: gaps, strength, finish, labels. Check before selling."),
    ("With glass", "Ask the glazier for safety glass and its thickness; state it on the receipt."),
    ("For food", "Use a finish its maker rates for food, fully cured."),
    ("Load on legs", "Not a strength test."),
    ("Delivery", "Lifting guides are for close, level lifts. Stairs and long loads: fewer kilos, more people."),
    ("Loading", "An estimate; wet wood weighs far more. The door label less people is the limit."),
    ("Reclaimed wood", "Sweep for metal; leave painted or treated wood."),
    ("Rate, export", "Sums from your entries, not tax advice."),
];

/// "Last copy Tue 19 May, 12 entries since."
pub fn last_copy(day: &str, since: &str) -> String {
    format!("Last copy {day}, {since} since.")
}

/// "1 entry", "12 entries".
pub fn entries(n: usize, written: &str) -> String {
    if n == 1 { format!("{written} entry") } else { format!("{written} entries") }
}

/// "would be lost with this phone".
pub fn would_be_lost(entries: &str) -> String {
    format!("{entries} would be lost with this phone.")
}

/// "Kept as fivebar-2026-05-22.json. Put it somewhere else than this phone."
pub fn kept_as(name: &str) -> String {
    format!("Kept as {name}. Put it somewhere else than this phone.")
}

/// "from a copy of 11 May".
pub fn made_on(day: &str) -> String {
    format!("made {day}")
}

/// "spent, USD".
pub fn spent(currency: &str) -> String {
    format!("spent, {currency}")
}

/// "taken, USD".
pub fn taken(currency: &str) -> String {
    format!("taken, {currency}")
}

/// "3 lines are damaged and stay set aside."
pub fn damaged(n: &str) -> String {
    format!("Damaged, kept and set aside: {n}.")
}

/// "2 lines are from a newer version."
pub fn newer(n: &str) -> String {
    format!("From a newer version, kept and not yet read: {n}.")
}

/// "5 weeks, from Tue 3 March".
pub fn weeks(n: &str, day: &str) -> String {
    format!("{n} weeks, from {day}")
}

/// Why a file could not be brought in.
pub fn no_copy(why: &DocumentTrouble, n: impl Fn(usize) -> String) -> Said {
    let (why, to_do) = match why {
        DocumentTrouble::NotJson => ("It is no copy of Fivebar.".to_owned(), "Choose the file that was kept."),
        DocumentTrouble::NotACopy => ("It is a file of another kind.".to_owned(), "Choose the file that was kept."),
        DocumentTrouble::CutShort => {
            ("It ends before its end: not all of it arrived.".to_owned(), "Send it again, or choose another copy.")
        }
        DocumentTrouble::Newer { version, ours } => {
            (format!("A newer version made it ({version}; this one reads {ours})."), "Open the app with a network to get the new version.")
        }
        DocumentTrouble::TooLarge { bytes, most } => {
            (format!("It holds {} bytes; at most {} are read.", n(*bytes), n(*most)), "Keep a copy without photos.")
        }
        DocumentTrouble::TooMany { entries, most } => (
            format!("Together that would be {} entries; a book holds at most {}.", n(*entries), n(*most)),
            "Begin a new book on another phone.",
        ),
        DocumentTrouble::Altered => ("Something in it was changed on the way.".to_owned(), "Choose another copy."),
    };
    Said { what: "Nothing was brought in.".into(), why, safe: "What is here is unchanged.".into(), to_do: to_do.into() }
}
