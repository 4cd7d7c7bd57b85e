//! English: waits, their calendar, what fits meanwhile, how long is usual, quiet hours.

use super::bench::{OILY, holds};
use super::common::sentence;
use super::how::listed;
use crate::app::news::Handed;
use crate::words::Speech;
use fivebar_core::bench::meanwhile::From;
use fivebar_core::bench::wait::{Warmth, What};
use fivebar_core::quantity::{Listed, Span, begin_large, begin_small, in_small};
use fivebar_core::sheet::meanwhile::Why;

pub const WAITS: &str = "Waits";
pub const WAITS_AND_QUIET: &str = "Waits and quiet hours";
pub const NOTHING_WAITS: &str = "Nothing waits.";
pub const ONE_BY_ONE: &str = "One by one";
pub const MEND: &str = "How long";
pub const CALENDAR: &str = "To a calendar";
pub const CALENDAR_ONE: &str = "with an alarm for each";
pub const CHECK_IT_RINGS: &str = "Check that it rings: some calendars drop alarms of a file.";
pub const RINGS_HERE: &str = "It rings while this page is open and the phone is awake, and no longer. A locked phone stays silent.";
pub const RINGS_OFF: &str = "It does not ring: that was turned off in Workshop.";
pub const TAKEN_OFF: &str = "Taken off today";
pub const KEEPS_WAITS: &str = "the clock, not the waits";
pub const WAITS_ENDING: &str = "Waits ending today";
pub const OVER_BEFORE: &str = "Waits over since before today";
pub const STRIKE: &str = "Strike";
pub const PUT_BACK_ON: &str = "Put back on";
pub const ENDS_IN: &str = "How does it end?";
pub const NO_WAIT: &str = "No wait";
pub const HOW_WARM: &str = "How warm is the shop?";
pub const HOW_LONG: &str = "How long?";
pub const TIN_DECIDES: &str = "A guess of ours: the tin decides.";
pub const YOURS: &str = "as you set it";
pub const AS_USUAL: &str = "As usual";
pub const ONLY_THIS: &str = "Only for this operation";
pub const QUIET: &str = "Quiet hours";
pub const QUIET_NEVER: &str = "none";
pub const QUIET_FROM: &str = "Quiet from";
pub const QUIET_UNTIL: &str = "Quiet until";
pub const QUIET_UNDER: &str = "Nothing loud is offered then.";
pub const NO_QUIET: &str = "No quiet hours";
pub const DUST_ON_A_COAT: &str = "its dust would settle on a wet coat";
pub const IS_IT_LOUD: &str = "Is it loud?";
pub const LOUD: &str = "Loud";
pub const NOT_LOUD: &str = "Not loud";
pub const MINUTES: &str = "min";
pub const HOURS: &str = "h";
pub const DAYS: &str = "days";
pub const UNDER_WAY: &str = "under way";
pub const NOT_BEGUN: &str = "not begun";
pub const NOT_KNOWN_HOW_LONG: &str = "How long is not known";
pub const SHARED: &str = "Handed on.";
pub const PUT_AWAY: &str = "Not handed on.";
pub const NO_WAY: &str = "This phone can’t hand a file on.";

/// "the second 1:00 AM": a clock time that comes twice in the night in which clocks go back.
pub fn of_two(clock: &str, second: bool) -> String {
    format!("the {} {clock}", which_of_two(second))
}

/// "second", of two.
pub fn which_of_two(second: bool) -> &'static str {
    if second { "second" } else { "first" }
}

/// An operation ends in glue if its name holds one of these.
const GLUED: [&str; 3] = ["glue", "clamp", "laminat"];

/// An operation is loud if its name holds one of these.
const NOISY: [&str; 10] = ["sand", "rip", "saw", "joint", "plane", "rout", "thickness", "mill", "trim", "bore"];

/// The wait an operation's name tells of.
pub fn guess(op: &str) -> Option<What> {
    let glued = in_small(op);
    match (GLUED.iter().any(|word| glued.contains(word)), holds(op, &OILY)) {
        (true, _) => Some(What::Glue),
        (_, true) => Some(What::Coat),
        _ => None,
    }
}

/// Words that say of no part what is glued.
const WHOLE: [&str; 10] = ["glue", "gluing", "glueing", "reglue", "glue-up", "glue-ups", "up", "clamp", "clamping", "all"];

/// Whether an operation's name tells the part that it is done to: "Glue tops" does, "Glue up" does not.
pub fn of_part(op: &str) -> bool {
    in_small(op).split_whitespace().any(|word| !WHOLE.contains(&word))
}

/// "90 min".
pub fn minutes(n: &str) -> String {
    format!("{n} {MINUTES}")
}

/// Whether an operation is loud, as its name tells.
pub fn noisy(op: &str) -> bool {
    holds(op, &NOISY)
}

/// The end of an operation that a wait follows.
pub fn clamped(what: What) -> &'static str {
    match what {
        What::Glue => "Clamped",
        What::Coat => "Coated",
        What::Dry => "Laid to dry",
        What::Cure => "Left to cure",
        What::Other => "Waits",
    }
}

/// A kind of wait by its name.
pub fn what(what: What) -> &'static str {
    match what {
        What::Glue => "Glue",
        What::Coat => "Coat",
        What::Dry => "Drying",
        What::Cure => "Cure",
        What::Other => "Other",
    }
}

/// Where pieces of a kind of wait are: "In clamps".
pub fn state(what: Option<What>) -> &'static str {
    match what {
        Some(What::Glue) => "In clamps",
        Some(What::Coat) => "Coats",
        Some(What::Dry) => "Drying",
        Some(What::Cure) => "Curing",
        Some(What::Other) | None => "Waiting",
    }
}

/// "All 5 of them are in clamps until 14:20.", "3 of them are drying until Wed 09:05."
pub fn held((n, written): (u32, &str), left: u32, what: What, until: &str) -> String {
    let who = match n {
        1 if left == 1 => "It is".to_owned(),
        1 => format!("{written} of them is"),
        2 if left == 2 => "Both of them are".to_owned(),
        _ if n == left => format!("All {written} of them are"),
        _ => format!("{written} of them are"),
    };
    let how = match what {
        What::Glue => "in clamps",
        What::Coat | What::Dry => "drying",
        What::Cure => "curing",
        What::Other => "waiting",
    };
    sentence(format!("{who} {how} until {until}"))
}

/// "The coat below is wet until 10:55."
pub fn wet_below(until: &str) -> String {
    sentence(format!("The coat below is wet until {until}"))
}

/// A glue or a finish by its name.
pub fn stuff(key: &str) -> String {
    let name = match key {
        "pva" => "White or yellow glue",
        "polyurethane" => "PU glue",
        "epoxy" => "Epoxy",
        "hide" => "Hide glue",
        "contact" => "Contact glue",
        "oil" => "Oil",
        "varnish" => "Varnish",
        "water-based" => "Water-based finish",
        "shellac" => "Shellac",
        "lacquer" => "Lacquer",
        "paint" => "Paint",
        "wax" => "Wax",
        "wetted" => "Wetted wood",
        "finish" => "Any finish",
        other => return other.to_owned(),
    };
    name.to_owned()
}

pub fn warmth(warmth: Warmth) -> &'static str {
    match warmth {
        Warmth::Cold => "Cold",
        Warmth::Normal => "Normal",
        Warmth::Warm => "Warm",
    }
}

/// The thing an operation is done to, by its name: "top" of "Glue tops"; "piece" where it names none.
pub fn thing(op: &str) -> String {
    let last = op.split_whitespace().skip(1).last().map(in_small).unwrap_or_default();
    match last.strip_suffix('s') {
        Some(one) if 1 < one.len() && !one.ends_with('s') && one.chars().all(char::is_alphabetic) => one.to_owned(),
        _ => "piece".to_owned(),
    }
}

/// "top 3", "tops 2 to 4", "glue tops" where pieces have no number.
pub fn pieces(op: &str, first: Option<&str>, last: Option<&str>) -> String {
    match (first, last) {
        (Some(first), Some(last)) if first != last => format!("{}s {first} to {last}", thing(op)),
        (_, Some(last)) => format!("{} {last}", thing(op)),
        _ => begin_small(op),
    }
}

/// "coat 2 of piece 1".
pub fn coat_of(coat: &str, piece: &str) -> String {
    format!("coat {coat} of {piece}")
}

/// "The coat below was to be dry at 10:55."
pub fn onto_wet(clock: &str) -> String {
    format!("The coat below was to be dry at {clock}.")
}

/// How long something waits: from two days on in days, to the hour. "36 h", "6 days 20 h".
pub fn how_long(span: Span, speech: &dyn Speech) -> String {
    let minutes = span.as_minutes();
    if minutes < 2 * 1_440 {
        return speech.span(span);
    }
    let hours = (minutes + 30) / 60;
    let (days, rest) = (speech.count(u32::try_from(hours / 24).unwrap_or(u32::MAX)), hours % 24);
    if rest == 0 { format!("{days} {DAYS}") } else { format!("{days} {DAYS} {rest} {HOURS}") }
}

/// "Top 1 can come out, since", above the clock.
pub fn out_since_at(piece: &str, n: u32, what: What) -> String {
    format!("{} {}, since", begin_large(piece), can(Some(what), n <= 1))
}

/// "By the clock there: top 1 off at", above the clock.
pub fn by_another(there: &str, said: &str) -> String {
    format!("{}: {}", begin_large(there), begin_small(said))
}

/// What a wait ends with, by its kind: "off" out of clamps, "dry" for the next coat. Of several kinds, "over".
pub fn ready(what: Option<What>) -> &'static str {
    match what {
        Some(What::Glue) => "off",
        Some(What::Coat | What::Dry) => "dry",
        Some(What::Cure) => "cured",
        Some(What::Other) | None => "over",
    }
}

/// The key that ends one.
pub fn end_it(what: What) -> &'static str {
    match what {
        What::Glue => "It is off",
        What::Coat | What::Dry => "It is dry",
        What::Cure => "It is cured",
        What::Other => "It is over",
    }
}

/// What can be done once it is over.
fn can(what: Option<What>, one: bool) -> String {
    let is = if one { "is" } else { "are" };
    match what {
        Some(What::Glue) => "can come out".into(),
        Some(What::Coat) => format!("{is} dry for the next coat"),
        Some(What::Dry | What::Cure) => format!("{is} {}", ready(what)),
        Some(What::Other) | None => "can go on".into(),
    }
}

/// "Top 3 off at", "Piece 1 dry at", above the clock.
pub fn off_at(piece: &str, what: What) -> String {
    format!("{} {} at", begin_large(piece), ready(Some(what)))
}

/// "top 4, off 90 min from now".
pub fn next_off(piece: &str, span: &str, what: What) -> String {
    format!("{piece}, {}", off_in(span, what))
}

/// "off 90 min from now", "dry 24 h from now".
pub fn off_in(span: &str, what: What) -> String {
    format!("{} {span} from now", ready(Some(what)))
}

/// "Top 3 clamped, off at 13:18", to be heard.
pub fn clamped_said(piece: &str, what: What, clock: &str) -> String {
    format!("{} {}, {} at {clock}", begin_large(piece), begin_small(clamped(what)), ready(Some(what)))
}

/// "In clamps: first off 14:58, last 15:14", "Coats: dry 13:50".
pub fn first_last(what: Option<What>, first: &str, last: Option<&str>) -> String {
    let (state, ready) = (state(what), ready(what));
    match last {
        Some(last) => format!("{state}: first {ready} {first}, last {last}"),
        None => format!("{state}: {ready} {first}"),
    }
}

/// "All 5 tops can come out, since 13:37"; "Top 2 can come out, since 13:08"; "Piece 1 is dry for the next coat, since 13:50".
pub fn can_come_out(n: (u32, &str), thing: &str, (all, since): (bool, &str), kind: Option<What>) -> String {
    format!("{} {since}", can_since(n, thing, all, kind))
}

/// "All 5 tops can come out, since", above the clock.
pub fn can_since((n, written): (u32, &str), thing: &str, all: bool, kind: Option<What>) -> String {
    let what = match (n, all) {
        (1, _) => begin_large(thing),
        (2, true) => format!("Both {thing}s"),
        (_, true) => format!("All {written} {thing}s"),
        (_, false) => format!("{written} {thing}s"),
    };
    format!("{what} {}, since", can(kind, n == 1))
}

/// "2 pieces can come out".
pub fn so_many_out((n, written): (u32, &str), kind: Option<What>) -> String {
    format!("{written} {} {}", if n == 1 { "piece" } else { "pieces" }, can(kind, n == 1))
}

/// "Shelf, glue legs. Both pieces can come out, since 13:37".
pub fn of_work(work: Option<&str>, said: String) -> String {
    work.map_or_else(|| said.clone(), |work| format!("{}. {said}", begin_large(work)))
}

/// "Pieces 2 to 4 are dry for the next coat, since 13:50": so many that wait as one.
pub fn these_can_come_out(n: u32, named: &str, since: &str, kind: What) -> String {
    format!("{} {}, since {since}", begin_large(named), can(Some(kind), n <= 1))
}

/// "All 5 off", "Both dry".
pub fn all_off(n: u32, written: &str, what: Option<What>) -> String {
    if n == 2 { format!("Both {}", ready(what)) } else { format!("All {written} {}", ready(what)) }
}

/// "3 tops off", beside something else.
pub fn some_off(written: &str, thing: &str, what: Option<What>) -> String {
    format!("{written} {thing}s {}", ready(what))
}

/// "Top 3 off", "Piece 1 dry".
pub fn one_off(piece: &str, what: What) -> String {
    format!("{} {}", begin_large(piece), ready(Some(what)))
}

/// "off 13:18, in 42 min".
pub fn off_and_left(clock: &str, left: &str, what: What) -> String {
    format!("{} {clock}, in {left}", ready(Some(what)))
}

/// "can come out, since 13:18".
pub fn out_since(clock: &str, what: What, n: u32) -> String {
    format!("{}, since {clock}", can(Some(what), n <= 1))
}

/// "due 13:18".
pub fn off_by(clock: &str) -> String {
    format!("due {clock}")
}

/// "since Tue 3 March 13:50".
pub fn waits_since(when: &str) -> String {
    format!("since {when}")
}

/// "since yesterday 17:40".
pub fn since_yesterday(clock: &str) -> String {
    format!("since yesterday {clock}")
}

/// "oil, a wait".
pub fn struck_wait(op: &str) -> String {
    format!("{op}, a wait")
}

/// "taken off 13:20, before its time": when it was tapped, whenever it was dry.
pub fn was_off(clock: &str, early: bool) -> String {
    let early = if early { ", before its time" } else { "" };
    format!("taken off {clock}{early}")
}

/// "Until 12:59, 52 min: what fits".
pub fn fits_until(clock: &str, gap: &str) -> String {
    format!("Until {clock}, {gap}: what fits")
}

/// In the last minute nothing is looked for: "Due now: 13:50."
pub fn due_now(clock: &str) -> String {
    format!("Due now: {clock}.")
}

/// Why nothing is offered: what is missing for it, or that what is known takes longer, is too loud, or needs what waits.
pub fn nothing_fits(clock: &str, gap: &str, why: Why) -> String {
    let whys = [(why.too_long, "may take longer"), (why.too_loud, "is too loud now"), (why.needs, "needs pieces that wait")];
    let whys: Vec<&str> = whys.into_iter().filter(|(is, _)| *is).map(|(_, said)| said).collect();
    match whys.split_last() {
        Some((last, [])) => format!("Until {clock}, {gap}: all that is known {last}."),
        Some((last, before)) => format!("Until {clock}, {gap}: all that is known {}, or {last}.", before.join(", ")),
        None => format!(
            "Until {clock}, {gap}: nothing is known that fits. Plan operations with their minutes, or log sharpening and tidying once."
        ),
    }
}

/// "9 of 14, about 45 min, at your pace".
pub fn part_of(part: &str, left: &str, about: &str) -> String {
    format!("{part} of {left}, {about}")
}

/// "about 35 min, at your pace", "about 56 min, planned 40 min".
pub fn about(span: &str, from: From, planned: Option<&str>) -> String {
    let other = planned.filter(|planned| from == From::Planned && *planned != span);
    if let Some(planned) = other {
        return format!("about {span}, planned {planned}");
    }
    let why = match from {
        From::Pace => "at your pace",
        From::History => "as before",
        From::Planned => "as planned",
        From::Unknown => return UNDER_WAY.to_owned(),
    };
    format!("about {span}, {why}")
}

/// What an event of the calendar is called: "Glue tops: top 3 off".
pub fn event(op: &str, piece: &str, what: What) -> String {
    let ready = ready(Some(what));
    if begin_small(op) == piece { format!("{op}: {ready}") } else { format!("{op}: {piece} {ready}") }
}

/// What it says: the job, and since when it waits.
pub fn event_text(job: Option<&str>, began: &str, span: &str) -> String {
    let since = format!("Since {began}, {span}.");
    job.map(|job| format!("{job}. {since}")).unwrap_or(since)
}

/// "White or yellow glue, normal shop: 90 min".
pub fn usual_of(stuff: &str, warmth: Warmth) -> String {
    let shop = match warmth {
        Warmth::Cold => "cold shop",
        Warmth::Normal => "normal shop",
        Warmth::Warm => "warm shop",
    };
    format!("{stuff}, {shop}")
}

/// "from 20:00 to 07:30".
pub fn quiet(from: &str, until: &str) -> String {
    format!("{from} to {until}")
}

/// "Add a wait: sand".
pub fn add(op: &str) -> String {
    format!("Add a wait: {}", begin_small(op))
}

/// What became of a calendar file.
pub fn handed(handed: &Handed) -> String {
    match handed {
        Handed::Shared(_) => SHARED.into(),
        Handed::Downloaded(name) => format!("The browser keeps it as {name}: open it in your calendar."),
        Handed::PutAway => PUT_AWAY.into(),
        Handed::NoWay => NO_WAY.into(),
    }
}

/// "Top 3 can come out.", "Pieces 2 to 4 are dry for the next coat.", when it rings.
pub fn rings(piece: &str, what: What, n: u32) -> String {
    format!("{} {}.", begin_large(piece), can(Some(what), n <= 1))
}

/// "Clamps off 14:58 and 15:14", "Clamps off 2:58 and 3:14 PM".
pub fn off_at_both(what: Option<What>, off: &[String]) -> String {
    let places = if what == Some(What::Glue) { "Clamps" } else { state(what) };
    // Of times in the same half of the day it is said once.
    let half = |clock: &String| clock.rsplit_once(char::is_whitespace).map(|(figures, half)| (figures.to_owned(), half.to_owned()));
    let halves: Vec<(String, String)> = off.iter().filter_map(half).filter(|(_, half)| half.ends_with('M')).listed();
    let one_half = halves.len() == off.len() && halves.windows(2).all(|pair| matches!(pair, [one, other] if one.1 == other.1));
    let said = match (off, halves.last()) {
        ([.., last], Some(_)) if one_half => {
            let figures = halves.iter().map(|(figures, _)| figures.clone()).take(halves.len().saturating_sub(1));
            listed(&figures.chain([last.clone()]).listed())
        }
        _ => listed(off),
    };
    format!("{places} {} {said}", ready(what))
}

/// "and 3 more".
pub fn and_more(n: &str) -> String {
    format!("and {n} more")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_piece_is_called_by_what_the_operation_names() {
        let check = |op: &str, called: &str| assert_eq!(thing(op), called, "{op}");
        check("Glue tops", "top");
        check("strip glue-ups", "piece");
        check("Glue up", "piece");
        check("Oil", "piece");
        check("Glues", "piece");
        check("Varnish the glass", "piece");
        check("Coat two stands", "stand");
        assert_eq!(pieces("Glue tops", Some("2"), Some("4")), "tops 2 to 4");
        assert_eq!(pieces("Glue tops", Some("3"), Some("3")), "top 3");
        assert_eq!(pieces("Varnish", None, None), "varnish");
    }

    #[test]
    fn the_name_tells_the_part_that_is_glued() {
        let check = |op: &str, part: bool| assert_eq!(of_part(op), part, "{op}");
        check("Glue tops", true);
        check("strip glue-ups", true);
        check("Glue up", false);
        check("Glue-up", false);
        check("Clamp all", false);
    }

    #[test]
    fn the_name_tells_the_wait_and_the_noise() {
        let check = |op: &str, wait: Option<What>, loud: bool| assert_eq!((guess(op), noisy(op)), (wait, loud), "{op}");
        check("Glue tops", Some(What::Glue), false);
        check("strip glue-ups", Some(What::Glue), false);
        check("Coat", Some(What::Coat), false);
        check("finish", Some(What::Coat), false);
        check("Reglue two tops", Some(What::Glue), false);
        check("Sand faces", None, true);
        check("Messages", None, false);
    }

    #[test]
    fn sentences_count_what_they_name() {
        assert_eq!(can_come_out((5, "5"), "top", (true, "13:37"), Some(What::Glue)), "All 5 tops can come out, since 13:37");
        assert_eq!(can_come_out((2, "2"), "top", (true, "13:08"), Some(What::Glue)), "Both tops can come out, since 13:08");
        assert_eq!(can_come_out((2, "2"), "piece", (false, "13:08"), Some(What::Glue)), "2 pieces can come out, since 13:08");
        assert_eq!(can_come_out((1, "1"), "top 2", (false, "13:08"), Some(What::Glue)), "Top 2 can come out, since 13:08");
        assert_eq!(first_last(Some(What::Glue), "14:20", Some("14:48")), "In clamps: first off 14:20, last 14:48");
        let dry = "Piece 1 is dry for the next coat, since Wed 13:50";
        assert_eq!(can_come_out((1, "1"), "piece 1", (true, "Wed 13:50"), Some(What::Coat)), dry);
        let several = "Pieces 2 to 4 are dry for the next coat, since 13:50";
        assert_eq!(these_can_come_out(3, "pieces 2 to 4", "13:50", What::Coat), several);
        assert_eq!(these_can_come_out(1, "top 2", "13:08", What::Glue), "Top 2 can come out, since 13:08");
        assert_eq!(out_since("13:50", What::Dry, 3), "are dry, since 13:50");
        assert_eq!(can_come_out((3, "3"), "piece", (true, "13:50"), Some(What::Cure)), "All 3 pieces are cured, since 13:50");
        assert_eq!(first_last(Some(What::Coat), "13:50", None), "Coats: dry 13:50");
        let both = |one: &str, two: &str| off_at_both(Some(What::Glue), &[one.into(), two.into()]);
        assert_eq!(both("14:58", "15:14"), "Clamps off 14:58 and 15:14");
        assert_eq!(both("2:58\u{a0}PM", "3:14\u{a0}PM"), "Clamps off 2:58 and 3:14\u{a0}PM");
        assert_eq!(both("11:58\u{a0}AM", "1:14\u{a0}PM"), "Clamps off 11:58\u{a0}AM and 1:14\u{a0}PM");
        let three = ["10:42\u{a0}AM", "10:51\u{a0}AM", "11:01\u{a0}AM"].map(str::to_owned);
        assert_eq!(off_at_both(Some(What::Glue), &three), "Clamps off 10:42, 10:51 and 11:01\u{a0}AM");
        assert_eq!(off_at_both(Some(What::Coat), &["13:50".into()]), "Coats dry 13:50");
        assert_eq!(rings("top 3", What::Glue, 1), "Top 3 can come out.");
        assert_eq!(rings("pieces 2 to 4", What::Coat, 3), "Pieces 2 to 4 are dry for the next coat.");
        assert_eq!(rings("piece 1", What::Dry, 1), "Piece 1 is dry.");
        assert_eq!(event("Glue tops", "top 3", What::Glue), "Glue tops: top 3 off");
        assert_eq!(event("Oil", "oil", What::Coat), "Oil: dry");
        assert_eq!(event_text(Some("Stands"), "11:48", "1 h 30"), "Stands. Since 11:48, 1 h 30.");
    }
}
