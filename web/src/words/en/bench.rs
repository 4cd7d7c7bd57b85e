//! English: Bench, the day's list, big buttons.

use fivebar_core::bench::{Kind, Stage};

pub const NOTHING_RUNS: &str = "Nothing runs";
pub const WHAT_ARE_YOU_DOING: &str = "What are you doing?";
pub const START: &str = "Start";
pub const START_UNDER: &str = "a job, an operation, the clock";
pub const CARRY_ON: &str = "Carry on";
pub const STOP: &str = "Stop";
pub const OTHER: &str = "Other";
pub const ONE_MORE: &str = "1 more done";
pub const SEVERAL_MORE: &str = "several";
pub const HELPER_JOINS: &str = "Helper joins";
pub const HELPER_LEAVES: &str = "Helper leaves";
pub const OF_HOW_MANY: &str = "Of how many?";
pub const SAY_HOW_MANY: &str = "say of how many";
pub const HOW_MANY_DONE: &str = "How many more are done?";
pub const ALREADY_AT_IT: &str = "Already at it? Say when, then tap the board.";
pub const BIG_BUTTONS: &str = "Big buttons";
pub const THE_DAY: &str = "The day";
pub const TODAY: &str = "today";
pub const NO_JOB: &str = "No job";
pub const NO_JOB_UNDER: &str = "sharpening, tidying, learning";
pub const FOR_WHAT: &str = "For which job?";
pub const WHICH_OPERATION: &str = "Which operation?";
pub const OR_TYPE: &str = "Or type it, then say its kind";
pub const REWORK: &str = "Rework";
pub const REWORK_UNDER: &str = "done again, counted apart";
pub const SORT_HAUL: &str = "Sort the haul";
pub const STOPPED_WHEN: &str = "Stopped at";
pub const STOPPED_AT: &str = "Stopped at…";
pub const BY_THE_CLOCK: &str = "by the clock, such as 14:32";
pub const FROM_WHEN: &str = "From";
pub const UNTIL_WHEN: &str = "Until";
pub const MISSED: &str = "Add time I missed";
pub const DAY_BEFORE: &str = "Day before";
pub const DAY_AFTER: &str = "Day after";
pub const NO_RUNS: &str = "Nothing logged on this day.";
pub const MEND_START: &str = "Mend start";
pub const MEND_STOP: &str = "Mend stop";
pub const STRIKE: &str = "Strike";
pub const MEASURED: &str = "measured";
pub const CORRECTED: &str = "corrected";
pub const RECALLED: &str = "recalled";
pub const RUNS: &str = "runs";
pub const SETTLE_IT: &str = "Settle it now or in the day’s list. Start when you like.";
pub const HOLD_TO_LEAVE: &str = "Hold to leave big buttons";
pub const TAKE_BACK: &str = "Take back";
pub const TO_MEND: &str = "To look at again";
pub const DUST: &str = "Hardwood dust harms lungs. Collect it and mask as local rules say.";
pub const RAGS: &str = "Oily rags can heat up by themselves. Lay them flat outdoors, or as the tin says.";

/// "Bench, Tue 10 March".
pub fn bench_on(day: &str) -> String {
    format!("Bench, {day}")
}

/// "today 2 h 17".
pub fn today(span: &str) -> String {
    format!("today {span}")
}

/// "3 of 5 done", "3 done".
pub fn done(n: &str, of: Option<&str>) -> String {
    match of {
        Some(of) => format!("{n} of {of} done"),
        None => format!("{n} done"),
    }
}

/// "0 of 40".
pub fn of(n: &str, of: &str) -> String {
    format!("{n} of {of}")
}

/// "About 57 min left".
pub fn about_left(span: &str) -> String {
    format!("About {span} left")
}

/// "32 min each".
pub fn each(span: &str) -> String {
    format!("{span} each")
}

/// "1 h 41 in all".
pub fn in_all(span: &str) -> String {
    format!("{span} in all")
}

/// "2 at work".
pub fn heads(n: &str) -> String {
    format!("{n} at work")
}

/// "5 min ago".
pub fn ago(minutes: i64) -> String {
    format!("{minutes} min ago")
}

/// "Glue tops shows 3 h 12".
pub fn shows(op: &str, span: &str) -> String {
    format!("{op} shows {span}")
}

/// "47 min, until 12:07".
pub fn until(span: &str, clock: &str) -> String {
    format!("{span}, until {clock}")
}

/// "It was 3 h 12".
pub fn it_was(span: &str) -> String {
    format!("It was {span}")
}

/// "Carry on: sand".
pub fn carry_on(op: &str) -> String {
    format!("Carry on: {op}")
}

/// "3 h 38 in all".
pub fn all_day(span: &str) -> String {
    format!("{span} in all")
}

/// "2 h 50 measured, 47 min corrected, 1 min recalled".
pub fn shares(measured: &str, corrected: &str, recalled: &str) -> String {
    format!("{measured} measured, {corrected} corrected, {recalled} recalled")
}

/// "the clock said 11:20 to 14:32".
pub fn clock_said(from: &str, to: Option<&str>) -> String {
    match to {
        Some(to) => format!("the clock said {from} to {to}"),
        None => format!("the clock said {from}, and no stop"),
    }
}

/// Why an end was proposed, by its fact.
pub fn because(key: &str) -> &'static str {
    match key {
        "last-act" => "The last thing you noted was then.",
        "next-start" => "You began something else then.",
        "closing" => "The workshop closes then.",
        "batch" => "At your pace the batch was done then.",
        "usual" => "It usually takes that long.",
        _ => "By what such work usually takes.",
    }
}

/// A kind by its name.
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Fetch => "Fetch",
        Kind::Make => "Make",
        Kind::Sell => "Sell",
        Kind::Deliver => "Deliver",
        Kind::Office => "Office",
    }
}

/// Operations that most jobs have: common practice, with their kind and stage.
pub const USUAL: [(&str, Kind, Stage); 12] = [
    ("Trim", Kind::Make, Stage::Make),
    ("Joint and rip", Kind::Make, Stage::Make),
    ("Thickness", Kind::Make, Stage::Make),
    ("Glue up", Kind::Make, Stage::Make),
    ("Flatten", Kind::Make, Stage::Make),
    ("Bore", Kind::Make, Stage::Make),
    ("Sand", Kind::Make, Stage::Make),
    ("Assemble", Kind::Make, Stage::Make),
    ("Coat", Kind::Make, Stage::Finish),
    ("Photos", Kind::Sell, Stage::Sell),
    ("Messages", Kind::Office, Stage::Sell),
    ("Deliver", Kind::Deliver, Stage::Deliver),
];

/// Whether an operation raises hardwood dust, by its name.
pub fn is_dusty(op: &str) -> bool {
    holds(op, &["sand", "rip", "saw", "joint", "plane", "rout", "thickness", "mill"])
}

/// Whether an operation leaves oily rags, by its name.
pub fn leaves_rags(op: &str) -> bool {
    holds(op, &["coat", "oil", "finish", "varnish", "wipe"])
}

fn holds(op: &str, words: &[&str]) -> bool {
    let op = op.to_ascii_lowercase();
    words.iter().any(|word| op.contains(word))
}
