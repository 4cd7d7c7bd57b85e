//! English: the day to scale, what was put right and when, the week.

use fivebar_core::quantity::begin_large;
use fivebar_core::sheet::changes::How;

pub const DAY: &str = "Day";
pub const WEEK: &str = "Week";
pub const WHICH: &str = "Day or week";
pub const THIS_WEEK: &str = "This week";
pub const LAST_WEEK: &str = "Last week";
pub const WEEK_BEFORE: &str = "Week before";
pub const WEEK_AFTER: &str = "Week after";
pub const MIDNIGHT: &str = "midnight";
pub const BEFORE: &str = "from before midnight";
pub const AFTER: &str = "on after midnight";
pub const NOT_COUNTED: &str = "not counted";
pub const TWICE: &str = "hours of another run, not counted twice";
pub const RUNS: &str = "runs";
pub const NOTHING: &str = "nothing";
pub const ARROWS: &str = "Arrow keys go back and on.";
pub const RIGHT: &str = "said to be right as it is";
pub const PIECES: &str = "Pieces";
pub const ALL_DAY: &str = "The day to scale";

pub const JOB: &str = "Job";
pub const PIECES_DONE: &str = "Pieces done";
pub const ADD_HELPER: &str = "Add a helper";
pub const BREAK: &str = "A break in it";
pub const NO_BREAK: &str = "No break";

/// "Sand ran 5 h 20, over noon. Was there a break in it?"
pub fn over_noon(op: &str, span: &str) -> String {
    format!("{} ran {span}, over noon. Was there a break in it?", begin_large(op))
}

pub const BREAK_BEGAN: &str = "The break began at";
pub const BREAK_OVER: &str = "Back at work at";
pub const CAME: &str = "The helper came at";
pub const WENT: &str = "The helper went at";
pub const CAME_KEY: &str = "Came";
pub const WENT_KEY: &str = "Went";
pub const PAY_KEY: &str = "Pay";
pub const FROM_THE_START: &str = "From the start";
pub const TO_THE_END: &str = "To the end";
pub const STILL_HERE: &str = "Still here";
pub const HELPER: &str = "helper";
pub const NOT_PAID: &str = "not paid";

/// "8 h not counted".
pub fn not_counted(span: &str) -> String {
    format!("{span} {NOT_COUNTED}")
}

/// "2 helpers".
pub fn helpers(n: &str) -> String {
    format!("{n} helpers")
}

/// "helper 09:00 to 10:00, 18.00"; without a sum nobody said that they are paid.
pub fn helper(who: &str, clocks: &str, pay: Option<&str>) -> String {
    format!("{who} {clocks}, {}", pay.unwrap_or(NOT_PAID))
}

/// "helper came 08:00, after the end of the run: nothing counted".
pub fn came_after(who: &str, clock: &str) -> String {
    format!("{who} came {clock}, after the end of the run: nothing counted")
}

/// "went 09:05, counted to the end of the run".
pub fn counted_to_the_end(clock: &str) -> String {
    format!("went {clock}, counted to the end of the run")
}

/// "2 of them tapped after its end", of pieces that a mended stop left behind.
pub fn done_after(n: u32, written: &str) -> String {
    if n == 1 { format!("{written} of it tapped after its end") } else { format!("{written} of them tapped after its end") }
}

/// "noted Wed 4 March 07:50", of pieces that were not tapped while the run went on.
pub fn noted(day: &str, clock: &str) -> String {
    format!("noted {day} {clock}")
}

/// "all for Shelf".
pub fn all_for(job: &str) -> String {
    format!("all for {job}")
}

/// "18.00 an hour".
pub fn per_hour(pay: &str) -> String {
    format!("{pay} an hour")
}

/// "came 08:15".
pub fn came(clock: &str) -> String {
    format!("came {clock}")
}

/// "went 08:45".
pub fn went(clock: &str) -> String {
    format!("went {clock}")
}

/// "a helper who was forgotten: came 08:15, went 08:45", "helper still here: came 08:15", "helper: went 09:00".
pub fn of_helper(how: How, what: &str) -> String {
    let who = match how {
        How::Forgotten => "a helper who was forgotten",
        How::Stayed => "helper still here",
        How::Mended => HELPER,
    };
    format!("{who}: {what}")
}

/// "for Shelf", "for no job".
pub fn moved(job: Option<&str>) -> String {
    format!("for {}", job.unwrap_or("no job"))
}

/// "Helpers 1 h 30, 24.00".
pub fn along(span: &str, pay: &str) -> String {
    if pay.is_empty() { format!("Helpers {span}, not paid") } else { format!("Helpers {span}, {pay}") }
}

/// "Another clock from 13:30 on: it shows 07:30.", where the work goes on in another place.
pub fn other_clock(before: &str, after: &str) -> String {
    format!("Another clock from {before} on: it shows {after}.")
}

/// "Trim 08:10 to 08:51", for a reader.
pub fn from_to(what: &str, from: &str, to: &str) -> String {
    format!("{what} {from} to {to}")
}

/// "oil 13:50 on, over midnight".
pub fn on_from(what: &str, from: &str) -> String {
    format!("{what} {from} on, over midnight")
}

/// "oil since Tue 3 March 13:50".
pub fn since(what: &str, when: &str) -> String {
    format!("{what} since {when}")
}

/// "7 min bare".
pub fn gap(span: &str) -> String {
    format!("{span} nothing")
}

/// "waits: top 1 11:29 to 12:59".
pub fn waited(list: &str) -> String {
    format!("waits: {list}")
}

/// "The day to scale: …".
pub fn to_scale(list: &str) -> String {
    format!("{ALL_DAY}: {list}")
}

/// "23:30 the day before", "23:30 on Wed 4 March".
pub fn earlier(clock: &str, day: Option<&str>) -> String {
    day.map_or_else(|| format!("{clock} the day before"), |day| format!("{clock} on {day}"))
}

/// "Sand began at 23:30 the day before: 40 min of it are of this day."
pub fn of_the_eve(op: &str, when: &str, span: &str) -> String {
    format!("{op} began at {when}: {span} of it are of this day.")
}

/// "Sand began at 17:00 the day before and is to settle: 8 h of it lie on this day and are not counted."
pub fn of_the_eve_to_settle(op: &str, when: &str, span: &str) -> String {
    format!("{op} began at {when} and is to settle: {span} of it lie on this day and are not counted.")
}

/// "Saw began at 17:00 the day before and was put right: 7 h 50 that its clock ran on this day are not counted."
pub fn of_the_eve_put_right(op: &str, when: &str, span: &str) -> String {
    format!("{op} began at {when} and was put right: {span} that its clock ran on this day are not counted.")
}

/// "20 min of it on the day after".
pub fn on_the_day_after(span: &str) -> String {
    format!("{span} of it on the day after")
}

/// "Put right Tue 10 March 14:33: start 11:05, stop 12:07".
pub fn put_right(when: &str, what: &str) -> String {
    format!("Put right {when}: {what}.")
}

/// "4, was 5", of a count that was put right.
pub fn was(n: &str, was: &str) -> String {
    format!("{n}, was {was}")
}

/// "Struck Tue 10 March 14:33."
pub fn struck(when: &str) -> String {
    format!("Struck {when}.")
}

/// "3 done 09:20 struck", "3 done 09:20 struck, 2 done instead".
pub fn pieces_struck(marks: &[String], anew: Option<&str>) -> String {
    let instead = anew.map(|anew| format!(", {anew} instead")).unwrap_or_default();
    format!("{} struck{instead}", marks.join(", "))
}

/// "start 11:05".
pub fn start(clock: &str) -> String {
    format!("start {clock}")
}

/// "stop 12:07, as proposed".
pub fn stop(clock: &str, proposed: bool) -> String {
    if proposed { format!("stop {clock}, as proposed") } else { format!("stop {clock}") }
}

/// "called scrape".
pub fn called(op: &str) -> String {
    format!("called {op}")
}

/// "Week from Mon 2 March".
pub fn week_from(day: &str) -> String {
    format!("Week from {day}")
}

/// "Make 12 h 40".
pub fn of_kind(kind: &str, span: &str) -> String {
    format!("{kind} {span}")
}
