//! English: Bench, the day's list, big buttons.

use super::common::sentence;
use crate::words::Speech;
use fivebar_core::bench::repair::Because;
use fivebar_core::bench::{Doubt, Kind};
use fivebar_core::quantity::{Local, Wall, begin_small, in_small, large};
use fivebar_core::sheet::counts::Counting;

pub const NOTHING_RUNS: &str = "Nothing runs";
pub const WHAT_ARE_YOU_DOING: &str = "What are you doing?";
pub const WHAT_DID_YOU_DO: &str = "What did you do?";
pub const START: &str = "Start";
pub const FIRST_WORDS: &str = "One tap starts the clock, one stops it. It may be for a job, or for none.";
pub const STOP: &str = "Stop";
pub const OTHER: &str = "Other";
/// The same while something runs.
pub const SWITCH: &str = "Switch";
pub const ONE_MORE: &str = "1 more done";
/// Why a start is not taken back in big buttons.
pub const NOT_THE_START: &str = "it began over 2 min ago: strike it outside big buttons";
/// What was done before the app was opened is taken back in the day's list.
pub const NOTHING_SINCE: &str = "nothing since the app was opened";
pub const PLUS_ONE: &str = "+1 done";
pub const SEVERAL: &str = "+n";
pub const SEVERAL_SAID: &str = "+n: several more done";
pub const HELPER_JOINS: &str = "Helper joins";
pub const HELPER_PAY: &str = "What is the helper paid?";
pub const HELPER_PAY_UNDER: &str = "For an hour. Nothing typed: not paid. Pay is a cost of the job.";
pub const MUCH_PAY: &str = "That is much for an hour. Is it meant? The same key once more takes it.";
pub const AS_LAST_TIME: &str = "as last time";
pub const NOT_PAID: &str = "Not paid";
pub const JOINS: &str = "Joins";
pub const HELPER_LEAVES: &str = "Helper leaves";
pub const STILL_HERE: &str = "Still here";
pub const GONE: &str = "Gone";

pub const AT_IT_TOO: &str = "At it too";
pub const GONE_BY_THEN: &str = "Gone by then";
pub const HELPER_TO_SETTLE: &str = "helper not settled: nothing counted";
/// Of a run of which some counts.
pub const HELPER_REST_TO_SETTLE: &str = "helper not settled: counted to the last note";
pub const OF_HOW_MANY: &str = "Of how many?";
pub const ASK_HOW_MANY: &str = "of how many?";
pub const HOW_MANY_DONE: &str = "How many more are done?";
pub const FEWER_DONE: &str = "fewer were done";
pub const HOW_MANY_IN_ALL: &str = "How many were done in it?";
pub const ALREADY_AT_IT: &str = "Already at it? Say when, then tap the operation";
pub const BIG_BUTTONS: &str = "Big buttons";
pub const THE_DAY: &str = "The day";
pub const DAYS_LIST: &str = "the day’s list";
pub const TODAY: &str = "Today";
pub const YESTERDAY: &str = "Yesterday";
pub const NO_JOB: &str = "No job";
pub const NEXT: &str = "next";
pub const NOT_BEGUN: &str = "not begun";
pub const EARLIER: &str = "Earlier";
pub const WHICH_OPERATION: &str = "Which operation?";
pub const FOR_WHAT: &str = "For which job?";

pub const FIND_OR_TYPE: &str = "Find it, or type it";
pub const FOUND: &str = "Found";
pub const NEW_ONE: &str = "Or a new one: say its kind";
pub const AS_OFFICE: &str = "as office; or say its kind";
pub const DONE_WHOLE: &str = "Done";
pub const BESIDE: &str = "Beside the bench";
pub const LATELY: &str = "Lately";
pub const OTHER_JOBS: &str = "Other jobs";
pub const REWORK: &str = "Rework";
pub const REWORKED: &str = "rework";
pub const STOPPED_WHEN: &str = "Stopped at";
pub const STOPPED_AT: &str = "Stopped at…";
/// A stop that was tapped late, or not at all.
pub const STOPPED_EARLIER: &str = "Stopped earlier…";
pub const BY_THE_CLOCK: &str = "by the clock, 1432 for 14:32";
pub const BY_HALVES: &str = "by the clock, 515 and pm for 5:15 PM";
pub const CAME_TWICE: &str = "The clocks went back: this time came twice. Which is meant?";
pub const ON_WHICH_DAY: &str = "On which day?";

/// "2:30 never came that day: clocks went forward. Taken as 3:30."
pub fn never_came(typed: &str, taken: &str) -> String {
    format!("{typed} never came that day: clocks went forward. Taken as {taken}.")
}

pub const WHICH_ONE: &str = "That is longer than a working day. Which is meant?";
pub const AS_THE_JOB: &str = "as the job says";
pub const AS_IT_STANDS: &str = "as it stands";
pub const FROM_AGAIN: &str = "From";
pub const FROM_WHEN: &str = "From";
pub const UNTIL_WHEN: &str = "Until";
pub const MISSED: &str = "Add time I missed";
pub const DAY_BEFORE: &str = "Day before";
pub const DAY_AFTER: &str = "Day after";
pub const NO_RUNS: &str = "Nothing logged on this day.";
pub const MEND: &str = "Mend";
pub const MEND_START: &str = "Start";
pub const MEND_STOP: &str = "Stop";
pub const MEND_OP: &str = "Operation";
pub const STARTED_WHEN: &str = "Started at";
pub const STRIKE: &str = "Strike";
pub const STRIKE_HELPER: &str = "Strike helper";
pub const STRUCK: &str = "Struck";
pub const PUT_BACK: &str = "Undo strike";
pub const RIGHT_AS_IT_IS: &str = "Right as it is";
pub const ALL_MEASURED: &str = "all measured";
pub const MEASURED: &str = "measured";
pub const CORRECTED: &str = "corrected";
pub const RECALLED: &str = "recalled";
pub const LOOKS_TOO_LONG: &str = "looks too long";

/// "30 min of it to settle".
pub fn of_it_to_settle(span: &str) -> String {
    format!("{span} of it to settle")
}
pub const RUNS: &str = "runs";
pub const SETTLE_IT: &str = "Settle it now or in the day’s list. Start when you like.";
pub const HOLD_TO_LEAVE: &str = "Hold to leave big buttons";
pub const TAKE_BACK: &str = "Take back";
pub const PUT_IT_BACK: &str = "Do it again";
pub const CARRY_ON: &str = "Carry on";
pub const STAYS_AWAKE: &str = "The screen stays on, if the phone allows.";
pub const DUST: &str = "Hardwood dust harms lungs. Collect it and mask as local rules say.";
pub const RAGS: &str = "Oily rags can heat up by themselves. Lay them flat outdoors, or as the tin says.";
pub const START_MARK: &str = "start";
pub const STOP_MARK: &str = "stop";
pub const NOW_MARK: &str = "now";

/// "Bench, Tue 10 March".
pub fn bench_on(day: &str) -> String {
    format!("Bench, {day}")
}

/// "today 2 h 17".
pub fn today(span: &str) -> String {
    format!("today {span}")
}

/// "One more than 5: are there more, or was it a slip?"
pub fn beyond(n: u32, more: &str, of: &str) -> String {
    let more = if n == 1 { "One".to_owned() } else { more.to_owned() };
    format!("{more} more than {of}: are there more, or was it a slip?")
}

/// "There are 6".
pub fn so_many(n: &str) -> String {
    format!("There are {n}")
}

/// "8 h 12 on the job".
pub fn on_the_job(span: &str) -> String {
    format!("{span} on the job")
}

/// "11 h on the job, and 13 h to settle".
pub fn on_the_job_to_settle(settled: &str, open: &str) -> String {
    format!("{}, and {open} to settle", on_the_job(settled))
}

/// "and one to settle".
pub fn to_settle(n: u32, written: &str) -> String {
    if n == 1 { "and one to settle".into() } else { format!("and {written} to settle") }
}

/// "3 h 38 in all", "2 h 21 and one to settle".
pub fn of_the_day(span: &str, settle: &str) -> String {
    if settle.is_empty() { in_all(span) } else { format!("{span} {settle}") }
}

/// "1 run to look at again".
pub fn to_look_at(n: usize, written: &str) -> String {
    if n == 1 { format!("{written} run to look at again") } else { format!("{written} runs to look at again") }
}

/// "Sand started".
pub fn started(op: &str) -> String {
    format!("{op} started")
}

/// "Not taken: it would end at 07:30, and it begins at 08:00."
pub fn ends_first(start: &str, end: &str) -> String {
    sentence(format!("Not taken: it would end at {end}, and it begins at {start}"))
}

/// "Not taken: 15:00 has not come yet, it is 08:30."
pub fn not_yet(met: &str, now: &str) -> String {
    sentence(format!("Not taken: {met} has not come yet, it is {now}"))
}

/// "Not taken: 07:30 is not within the run, which is 08:00 to 10:00."
pub fn not_in_run(met: &str, run: &str) -> String {
    sentence(format!("Not taken: {met} is not within the run, which is {run}"))
}

/// "Not taken: sand for Stools is there already, 08:00 to 09:30, and no minute is paid twice."
pub fn in_another(op: &str, job: Option<&str>, run: &str) -> String {
    let job = job.map(|job| format!(" for {job}")).unwrap_or_default();
    format!("Not taken: {op}{job} is there already, {run}, and no minute is paid twice.")
}

/// "08:00 to 09:30", "08:00 on".
pub fn clocks(from: &str, to: Option<&str>) -> String {
    to.map_or_else(|| format!("{from} on"), |to| format!("{from} to {to}"))
}

pub const MEND_THAT: &str = "Mend that run";
pub const LATER: &str = "Say one after it began.";
pub const MEND_IT_FIRST: &str = "Say another time, or mend that run first.";

/// "Sand stopped, 31 min".
pub fn stopped(op: &str, span: &str) -> String {
    format!("{op} stopped, {span}")
}

/// "Tue 3 March 19:15, 5 h 15".
pub fn reads(when: &str, span: Option<&str>) -> String {
    span.map_or_else(|| when.to_owned(), |span| format!("{when}, {span}"))
}

/// "of 5, change".
pub fn of_so_many(n: &str) -> String {
    format!("of {n}: change")
}

/// "3 of 5 done", "3 done".
pub fn done(n: &str, of: Option<&str>) -> String {
    match of {
        Some(of) => format!("{n} of {of} done"),
        None => format!("{n} done"),
    }
}

/// "Coat 2: 3 of 4 done".
pub fn of_coat(coat: &str, done: &str) -> String {
    format!("Coat {coat}: {done}")
}

/// "0 of 40".
pub fn of(n: &str, of: &str) -> String {
    format!("{n} of {of}")
}

/// "About 57 min left".
pub fn about_left(span: &str) -> String {
    format!("About {span} left")
}

/// "16 min in the next", "30 min after the last": time that is in no pace. `Some(true)`: all pieces are done.
pub fn apart(span: &str, done: Option<bool>) -> String {
    let said = match done {
        Some(true) => "after the last",
        Some(false) => "in the next",
        None => "since",
    };
    format!("{span} {said}")
}

/// "from 50 min to 1 h 04"; shorter where there is little room.
pub fn range(from: &str, to: &str, short: bool) -> String {
    if short { format!("{from} to {to}") } else { format!("from {from} to {to}") }
}

/// "32 min each".
pub fn each(span: &str) -> String {
    format!("{span} each")
}

/// "this one 2 h 40 so far": the piece at hand takes longer than the others did.
pub fn this_one(span: &str) -> String {
    format!("this one {span} so far")
}

/// "This piece 1 h so far, the others 15 min each."
pub fn slow_piece(so_far: &str, each: &str) -> String {
    format!("This piece {so_far} so far, the others {each} each.")
}

/// "14 min each so far": all its pieces together, by so many.
pub fn each_so_far(span: &str) -> String {
    format!("{span} each so far")
}

/// "next, a notch for each 5".
pub fn notch_for_each(state: &str, n: &str) -> String {
    format!("{state}, a notch for each {n}")
}

/// "1 h 41 in all".
pub fn in_all(span: &str) -> String {
    format!("{span} in all")
}

/// "2 at work".
pub fn heads(n: &str) -> String {
    format!("{n} at work")
}

/// "2 at work; what is left is your own time, at the pace so far".
pub fn heads_and_left(heads: &str) -> String {
    format!("{heads}; what is left is your own time, at the pace so far")
}

/// "Also at coat, 13:40 to 14:10?"
pub fn at_it_too(op: &str, clocks: &str) -> String {
    format!("Also at {}, {clocks}?", begin_small(op))
}

/// "5 min ago".
pub fn ago(minutes: i64) -> String {
    format!("{minutes} min ago")
}

/// "Glue tops shows 3 h 12".
pub fn shows(op: &str, span: &str) -> String {
    format!("{op} shows {span}")
}

/// "stopped 14:21 after 31 min".
pub fn stood(clock: &str, span: &str) -> String {
    format!("stopped {clock} after {span}")
}

/// "29 more planned": operations of the job that lie in the list of all.
pub fn more_of_it(n: &str) -> String {
    format!("{n} more planned")
}

/// "5 more jobs".
pub fn more_jobs(n: &str) -> String {
    format!("{n} more jobs")
}

/// "All 40".
pub fn all_of(n: &str) -> String {
    format!("All {n}")
}

/// "47 min, until 12:07".
pub fn until(span: &str, clock: &str) -> String {
    format!("{span}, until {clock}")
}

/// "The same, 2 of 5 done", of an end without the pieces that were done by then.
pub fn stays(done: &str) -> String {
    format!("The same, {done}")
}

/// "It was 3 h 12".
pub fn it_was(span: &str) -> String {
    format!("It was {span}")
}

/// "Still at it, 3 h 12": the clock is right, and goes on.
pub fn still_at_it(span: &str) -> String {
    // The figure and its unit stay on one line.
    format!("Still at it, {}", span.replace(' ', "\u{a0}"))
}

/// "Done with glue up": nothing of it is left to do.
pub fn done_with(op: &str) -> String {
    format!("Done with {}", begin_small(op))
}

/// "Sand, 1 h 12": what Stop stops.
pub fn stops(op: &str, span: &str) -> String {
    // The figure and its unit stay on one line.
    format!("{op}, {}", span.replace(' ', "\u{a0}"))
}

/// "Carry on: sand". A name that begins with one capital goes on small.
pub fn carry_on(op: &str) -> String {
    let mut letters = op.chars();
    match (letters.next(), letters.next()) {
        (Some(_), Some(second)) if second != large(second) => format!("{CARRY_ON}: {}", begin_small(op)),
        _ => format!("{CARRY_ON}: {op}"),
    }
}

/// "Sort: the haul of Tue 3 March".
pub fn haul_of(day: &str) -> String {
    format!("the haul of {day}")
}

/// "2 h 50 measured".
pub fn measured(span: &str) -> String {
    format!("{span} measured")
}

/// "47 min corrected".
pub fn corrected(span: &str) -> String {
    format!("{span} corrected")
}

/// "1 min recalled".
pub fn recalled(span: &str) -> String {
    format!("{span} recalled")
}

/// "corrected: ended at 12:07; the clock showed 3 h 12".
pub fn ended_at(clock: &str, raw: &str) -> String {
    // The figure and its unit stay on one line.
    format!("corrected: ended at {clock}; the clock showed {}", raw.replace(' ', "\u{a0}"))
}

/// "corrected: began at 11:05; the tap came at 11:20".
pub fn began_at(clock: &str, raw: &str) -> String {
    format!("corrected: began at {clock}; the tap came at {raw}")
}

/// "The clock said 11:20 to 14:32.", with their days where it was over a night.
pub fn clock_said(from: &str, to: Option<&str>) -> String {
    match to {
        Some(to) => sentence(format!("The clock said {from} to {to}")),
        None => format!("The clock said {from}, and no stop."),
    }
}

/// "As clocked, 3 h 12": a correction is lifted.
pub fn again(span: &str) -> String {
    format!("As clocked, {span}")
}

/// "until 12:10" beside "from 12:09".
pub fn from_clock(op: &str, clock: &str) -> String {
    format!("{op}, from {clock}")
}

/// "at 12:07", "on Mon, Mar 2 12:07" of another day.
pub fn at(when: &str, is_other_day: bool) -> String {
    format!("{} {when}", if is_other_day { "on" } else { "at" })
}

/// Why an end was proposed: the last piece, "The last of 5 was done at 12:07.".
pub fn last_done(n: u32, written: &str, clock: &str) -> String {
    if n == 1 { sentence(format!("The one piece was done {clock}")) } else { sentence(format!("The last of {written} was done {clock}")) }
}

/// "Since Tue 3 March 13:00."
pub fn since(when: &str, there: Option<&str>) -> String {
    let there = there.map(|there| format!(", {there}")).unwrap_or_default();
    sentence(format!("Since {when}{there}"))
}

/// "14:20", "14:20 there" of the clock of another place.
pub fn clock(wall: Wall, (speech, local): (&dyn Speech, Local)) -> String {
    let clock = speech.clock(wall);
    if local.shows(wall) { clock } else { format!("{clock} there") }
}

/// Of times that were clocked where another clock goes.
pub const CLOCK_THERE: &str = "by the clock there";

/// "by the clock of the start, UTC-5", where that place may have changed its clocks meanwhile.
pub fn clock_of_start(utc: &str) -> String {
    format!("by the clock of the start, {utc}")
}

/// "UTC-5".
pub fn utc(is_behind: bool, hours: &str) -> String {
    format!("UTC{}{hours}", if is_behind { "-" } else { "+" })
}

/// What big buttons say of a run that looks like a forgotten stop.
pub fn forgotten_stop(since: &str) -> String {
    format!("It runs since {since}. Was the stop forgotten? Leave big buttons to say when it was.")
}

/// "Helpers 1 h 30, 24.00 up to then, and nothing after it."
pub fn counts_until_then(helpers: &str) -> String {
    format!("{helpers} up to then, and nothing after it.")
}

/// Who came with the very last thing that was noted.
pub const NO_HELPER_THEN: &str = "No time of a helper counts up to then, and none after it.";

/// Why an end was proposed: "The last thing you noted was at 12:34." It says the time itself, wherever it stands on the page.
pub fn because(why: Because, clock: &str) -> String {
    match why {
        Because::LastAct => sentence(format!("The last thing you noted was {clock}")),
        Because::NextStart => sentence(format!("You began something else {clock}")),
        Because::Closing => sentence(format!("The workshop closes {clock}")),
        Because::Batch => sentence(format!("At your pace the batch was done {clock}")),
        Because::Usual => "It usually takes no longer than that.".to_owned(),
        Because::Planned => "A guess: so much was left of what you planned.".to_owned(),
        Because::Default => "A guess: nothing was noted for long after the start, and there are no three earlier runs to go by.".to_owned(),
    }
}

/// The mark of a proposed end on the bar.
pub fn end_mark(why: Because) -> &'static str {
    match why {
        Because::LastAct => "last noted",
        Because::NextStart => "next start",
        Because::Closing => "closing",
        Because::Batch => "batch done",
        Because::Usual => "as usual",
        Because::Planned => "as planned",
        Because::Default => "a guess",
    }
}

/// Why a run is to be looked at again.
pub fn doubt(doubt: Doubt) -> &'static str {
    match doubt {
        Doubt::EndedElsewhere { .. } => "ended by a start on the other phone",
        Doubt::Overlaps { .. } => "overlaps time written down later",
        Doubt::ClockSetBack => "the phone’s clock was set back",
        Doubt::TooLong => "longer than 48 hours",
    }
}

/// Why no minute is added to what runs.
pub fn clock_set_back(clock: &str) -> String {
    format!("The phone’s clock was set back: it is before {clock}, when this was last noted. Until it is past that no minute is added.")
}

/// "Start: phone call".
pub fn start_new(op: &str) -> String {
    format!("Start: {}", begin_small(op))
}

/// What pieces were counted for.
pub fn counting(counting: Counting) -> &'static str {
    match counting {
        Counting::Taken => "Count: onto a pile",
        Counting::Good => "Sort: good",
        Counting::Rejected => "Sort: rejected",
        Counting::ToJob => "Count: to the bench",
        Counting::Freed => "Count: back to the rack",
        Counting::Again => "Count: the pile again",
        Counting::OnRack => "Rack: walked round",
        Counting::Gone => "Rack: gone",
        Counting::LeftOver => "Rack: left over",
    }
}

/// Making that finishes the piece.
pub const FINISH: &str = "Finish";

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

/// Sanding has a first run of its own each day.
pub const SANDED: [&str; 1] = ["sand"];

/// So has ripping.
pub const RIPPED: [&str; 1] = ["rip"];

/// An operation raises hardwood dust if its name holds one of these.
pub const DUSTY: [&str; 9] = ["sand", "rip", "saw", "joint", "plane", "planing", "rout", "thickness", "mill"];

/// What is behind one of these is a place: "drive to the mill".
const TO_A_PLACE: [&str; 6] = ["the", "to", "from", "at", "a", "by"];

/// An operation leaves oily rags if its name holds one of these.
pub const OILY: [&str; 6] = ["coat", "oil", "finish", "varnish", "wax", "wiping on"];

/// Whether offcuts are milled so, by the name of what was done while fetching them: "plane offcuts", "milling", and no "drive to the sawmill".
pub fn is_milling(op: &str, words: &[&str]) -> bool {
    let op = in_small(op);
    let before = std::iter::once("").chain(op.split_whitespace());
    let is_done = |before: &str, word: &str| !TO_A_PLACE.contains(&before) && !before.starts_with("saw") && word != "sawmill";
    op.split_whitespace().zip(before).any(|(word, before)| is_done(before, word) && holds(word, words))
}

/// Whether a word of an operation's name begins with one of these: "strip" is no "rip".
pub fn holds(op: &str, words: &[&str]) -> bool {
    let op = in_small(op);
    let begins = |at: usize| op.get(..at).and_then(|before| before.chars().next_back()).is_none_or(|letter| !letter.is_alphabetic());
    words.iter().any(|word| op.match_indices(word).any(|(at, _)| begins(at)))
}
