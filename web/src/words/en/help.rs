//! English: help, cautions, about.

pub const CAUTIONS: &str = "Cautions";
pub const CAUTIONS_UNDER: &str = "Shown where they are needed. Local rules, your machine’s manual and those who hold a licence decide.";
pub const HELP: &str = "Help";
pub const ABOUT: &str = "About";
pub const VERSION: &str = concat!("Fivebar ", env!("CARGO_PKG_VERSION"));
pub const WHAT_IT_IS: &str = "Counts offcuts at the bin, minds the clock at the bench, and knows what an hour and a piece must earn.";
pub const NO_NETWORK: &str = "No network, no accounts. It asks nothing of any network but its own files, and tells nobody anything.";
pub const NOT_ADVICE: &str = "Not tax, legal or safety advice.";
pub const LICENCES: [(&str, &str); 2] = [
    ("The app", "MIT or Apache License 2.0, as you like."),
    ("The letters, Overpass", "SIL Open Font License 1.1. Its text comes with the app."),
];

/// Help, a heading and its lines.
pub const HELP_PAGES: [(&str, &str); 12] = [
    (
        "Count",
        "At the yard: one tap on a tile counts one piece, or as many as the key below says. A new pile takes five taps, or is named at home. Set out, at the bin, home: that is the trip’s clock.",
    ),
    ("Sort", "At home, under Count: good, or rejected and why. A piece not sorted yet counts as good."),
    (
        "Bench",
        "One tap starts an operation, a tap on another switches to it, Stop ends it. Glue and coats: Clamped counts one and stamps when it may come off. A forgotten start or stop is put right afterwards; the day’s list mends and strikes every run.",
    ),
    (
        "Price",
        "What is for sale and what you ask for it. When they offer, type what they say: one word of answer, and what to say instead. Show the buyer turns the phone into their page, with nothing private on it.",
    ),
    (
        "Jobs",
        "What you make: its wood, hours, money, sale, and what was learnt. The example is there to try; it is in no total and no copy.",
    ),
    (
        "Workshop",
        "What an hour must earn, how you are paid, suppliers and people, the rack, woods and air, machines, the van, the timber yard, copies, and this page.",
    ),
    ("Undo", "Every tap can be taken back: the bar names what. Everything older is struck or mended where it is listed."),
    (
        "Where your data is",
        "On this phone only, in the browser’s own store. “saved” stands there once it is written, never before. If the phone is lost, so is all that is in no copy.",
    ),
    (
        "Keep a copy",
        "Workshop, Keep a copy: one file with everything but the example. Send it to yourself, or put it on another device. Once a week is a good habit; the age of the last copy always stands on Workshop.",
    ),
    (
        "Bring one in",
        "On another phone, or on this one after a loss: Workshop, Keep a copy, Bring one in. You see what it adds before anything changes, and it never takes away.",
    ),
    (
        "On your home screen",
        "Open the app’s address in the phone’s browser, with a network, once. Then, in the browser’s menu or under its share key: Add to home screen. From then on it opens without a network. Do it before your first entry: on some phones the app on the home screen begins with a book of its own. If you began in the browser, keep a copy there and bring it in.",
    ),
    (
        "By keyboard",
        "1 to 5 open the places, but not from a form or an offer; U takes back, arrows move the scale; where figures are asked, they are typed on the pad. Single keys can be turned off under Theme and hand.",
    ),
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
    ("Delivery", "Lifting guides are for close, level lifts. Stairs and long loads: less weight, more people."),
    ("Loading", "An estimate; wet wood weighs far more. The door label less people is the limit."),
    ("Reclaimed wood", "Sweep for metal; leave painted or treated wood."),
    ("Rate, export", "Sums from your entries, not tax advice."),
];
