//! English: estimates: what a job will likely take, where that is from, old jobs.

use fivebar_core::bench::estimate::Basis;
pub use fivebar_core::bench::estimate::whole::kind_in;
use fivebar_core::quantity::Listed;
use std::cmp::Ordering;

pub const ESTIMATE: &str = "Estimate";
pub const LIKELY: &str = "likely";
pub const ESTIMATED: &str = "estimated";
pub const SAFE: &str = "safe";
pub const SAFE_NOW: &str = "safe now";
pub const THOUGHT: &str = "thought";
pub const SO_FAR: &str = "so far";
/// What likely and safe are: of several operations or what is not planned yet, of one alone, or of a piece as a whole.
pub fn likely_under(several: bool, is_whole: bool) -> String {
    let likely = match (several, is_whole) {
        (true, false) => "the middle of each operation, added up",
        (true, true) => "the middle of each operation and of what is not planned yet, added up",
        (false, _) => "the middle: it takes more as often as less",
    };
    format!("Likely is {likely}; nine times in ten all of it takes no more than safe.")
}

pub const ESTIMATED_UNDER: &str =
    "Estimated is what it was to take before any of it was worked; likely is what was logged and what is still to come.";
pub const KEEP: &str = "Keep this estimate";
pub const KEEP_AGAIN: &str = "Keep this one instead";
pub const OLD_JOBS: &str = "Three old jobs";
pub const OLD_JOBS_UNDER: &str = "name, hours, pieces, price: a history in a minute";
pub const MORE_OLD_JOBS: &str = "More old jobs";
pub const OLD_JOB: &str = "Old job";
pub const OLD_JOBS_LIST: &str = "Old jobs";
pub const OLD_JOBS_STRUCK: &str = "Old jobs that were struck";
pub const NOTHING_YET: &str = "Nothing to go by yet. Say what kind of piece it is, plan its operations, or tell three old jobs.";
pub const NOTHING_OF_KIND: &str = "Nothing to go by yet. Plan its operations, or tell three old jobs.";
pub const WHAT_KIND: &str = "What kind of piece";
pub const BY_ITS_NAME: &str = "by its name: tap to say so";
/// "By your earlier jobs of this kind of piece. That it is a stand is a guess by its name."
pub fn by_name(kind: &str) -> String {
    format!("By your earlier jobs of this kind of piece. That it is a {kind} is a guess by its name.")
}

pub const BY_ANY: &str =
    "A guess, and no price is quoted by it: of those jobs no kind of piece is known, nor of this one. Say what kind of piece it is.";
pub const ANOTHER_KIND: &str = "Another kind";
pub const WITHOUT_FACTOR: &str = "Without the factor";
pub const WITH_FACTOR: &str = "With the factor";
/// "20 h 26, shorter: 7.5 % for rework instead".
pub fn other_way(span: &str, than: Ordering, by: &str) -> String {
    let way = match than {
        Ordering::Less => ", shorter",
        Ordering::Equal => ", as long",
        Ordering::Greater => ", longer",
    };
    format!("{span}{way}: {by}")
}

/// What the factor does where it is put on.
pub fn by_factor(times: &str) -> String {
    format!("× {times} on what you thought, nothing for rework")
}

/// What stands in its place, and on what: operations of your own jobs are counted without their rework, a whole piece that you made with it.
pub fn by_allowance(percent: &str, of_own: bool, of_whole: bool) -> String {
    let own = if of_own { ", on operations of your own jobs too" } else { "" };
    let whole = if of_whole { "; what a whole piece takes has its rework in it" } else { "" };
    format!("{percent} % for rework instead{own}{whole}")
}

/// "Safe is 12 h logged, 3 h 38 likely to come and 1 h 22 that it may run over: 17 h."
pub fn safe_made_of(logged: Option<&str>, likely: &str, over: &str, safe: &str) -> String {
    let known = match logged {
        Some(logged) => format!("{logged} logged, {likely} likely to come"),
        None => format!("{likely} likely"),
    };
    format!("Safe is {known} and {over} that it may run over: {safe}.")
}

pub const WHOLE_PIECE: &str = "All of it";
pub const REST: &str = "Not planned yet";
pub const IS_WHOLE: &str = "Nothing else is to be done";
pub const IS_WHOLE_UNDER: &str = "what is planned is all of it";
pub const SAID_WHOLE: &str = "You said that what is planned is all of it.";
pub const NOT_WHOLE: &str = "More is to be done";
pub const HOW: &str = "How it is reckoned";
pub const HOW_THEN: &str = "How it was estimated when its work began";
pub const GAIN: &str = "Each further piece alike takes 5 % of the first less, down to 70 %.";
pub const AGAINST: &str = "Against the estimate";
pub const IT_TOOK: &str = "hours in all";
pub const PIECES: &str = "pieces";
pub const YOU_THOUGHT: &str = "thought";
pub const SOLD_FOR: &str = "sold for";
pub const OLD_JOBS_ASK: &str = "Hours of all its pieces together. A name that tells no kind of piece counts as this job's kind.";

/// Kinds of piece that have no usual hours, in the order they are shown behind the others.
pub const MORE_PIECES: [&str; 6] = ["shelf", "cabinet", "lamp", "box", "board", "other"];

/// The kinds of piece, as they are called.
pub fn piece(key: &str) -> String {
    key.replace('-', " ")
}

/// "25 h 26 likely in all".
pub fn likely(span: &str) -> String {
    format!("{span} {LIKELY} in all")
}

/// "26 h 03 in all", of a job that has ended.
pub fn took(span: &str) -> String {
    format!("{span} in all")
}

/// "19 h thought, 25 h 26 estimated", of a job that has ended.
pub fn took_beside(thought: Option<&str>, estimated: Option<&str>) -> String {
    let both = [(thought, THOUGHT), (estimated, ESTIMATED)];
    both.into_iter().filter_map(|(span, word)| span.map(|span| format!("{span} {word}"))).listed().join(", ")
}

/// "Kind of piece: stool".
pub fn kind_of_piece(piece: &str) -> String {
    format!("Kind of piece: {piece}")
}

/// What was likely is worked, and it may take longer: "It took what was likely; to be safe, up to 3 h more are to come."
pub fn may_come(safe: &str) -> String {
    format!("It took what was likely; to be safe, up to {safe} more is to come.")
}

/// "To come: 12 h, and 15 h to be safe."
pub fn to_come(span: &str, safe: &str) -> String {
    format!("To come: {span}, and {safe} to be safe.")
}

/// "Such pieces take 41 min as a whole. What is planned is all of it or takes as long, so nothing is added."
pub fn planned_is_more(whole: &str) -> String {
    format!("Such pieces take {whole} as a whole. What is planned is all of it or takes as long, so nothing is added.")
}

/// "This is what is planned alone. By other pieces the whole takes 31 h 21." What would say the rest depends on whether the kind of piece is said, and
/// on whether old jobs were told.
pub fn planned_alone(whole: Option<&str>, kind: Option<&str>, told: bool) -> String {
    let other = if kind.is_some() { "pieces of other kinds" } else { "other pieces" };
    let whole = whole.map_or("Nothing says yet what the whole job takes".to_owned(), |span| format!("By {other} the whole takes {span}"));
    let say = match kind.map(|kind| (kind, kind_in(kind).is_some())) {
        None if told => "Tap what kind of piece it is, above: the old jobs of that kind say the rest.".to_owned(),
        None => "Say what kind of piece it is, or tell old jobs of that kind, and the rest is in it.".to_owned(),
        Some((kind, true)) => format!("Tell old jobs with \u{201c}{}\u{201d} in their name, and the rest is in it.", piece(kind)),
        Some((_, false)) => "Jobs of that kind that you are done with will say the rest.".to_owned(),
    };
    format!("This is what is planned alone. {whole}. {say}")
}

/// Behind what an earlier job took.
pub const HELPED: &str = " with a helper, whose time counts too";

/// "Three stools: 18 h for 3, so 6 h 19 for the first.", "Stool: 2 h with a helper, whose time counts too."
pub fn old_piece(name: &str, span: &str, several: Option<(&str, &str)>, helped: bool) -> String {
    let helped = if helped { HELPED } else { "" };
    match several {
        Some((n, first)) => format!("{name}: {span} for {n}{helped}, so {first} for the first."),
        None => format!("{name}: {span}{helped}."),
    }
}

/// "In the middle 6 h 58 (multiplied, and the 3rd root taken)."
pub fn middle(span: &str, n: &str) -> String {
    format!("In the middle {span} (all {n} multiplied, and the root of it taken).")
}

/// "A stool usually takes 6 h."
pub fn usual(piece: &str, span: &str) -> String {
    format!("Usual for a {piece}: {span}.")
}

/// "5 pieces take 4.50 of the first: 31 h 21."
pub fn of_several(n: &str, times: &str, span: &str) -> String {
    format!("{n} pieces take {times} of the first: {span}.")
}

/// "Less what is planned, 4 h 40: 26 h 41 not planned yet." As it went on earlier pieces, where their operations are known: "Less what is planned, as
/// it went on such pieces, 4 h 40: 26 h 41 not planned yet."
pub fn rest_of(is_as_before: bool, planned: &str, rest: &str) -> String {
    let before = if is_as_before { ", as it went on such pieces" } else { "" };
    format!("Less what is planned{before}, {planned}: {rest} not planned yet.")
}

/// "Thought 19 h × 1.339 = 25 h 26."
pub fn times_factor(thought: &str, times: &str, likely: &str) -> String {
    format!("Thought {thought} × {times} = {likely}.")
}

/// "32 h 18 safe".
pub fn safe(span: &str) -> String {
    format!("{span} {SAFE}")
}

/// "19 h thought, 25 h 26 estimated, 12 h 10 so far".
pub fn progress(thought: Option<&str>, estimated: Option<&str>, so_far: &str) -> String {
    let all = [(thought, THOUGHT), (estimated, ESTIMATED), (Some(so_far), SO_FAR)];
    all.into_iter().filter_map(|(span, word)| span.map(|span| format!("{span} {word}"))).listed().join(", ")
}

/// "1 h 40 thought, 2 h 20 estimated for 2 operations, 2 h 25 so far on them; 8 h 21 on others".
pub fn progress_beside(
    thought: Option<&str>,
    estimated: Option<&str>,
    (n, is_one): (&str, bool),
    [on_them, on_others]: [&str; 2],
) -> String {
    let known = [(thought, THOUGHT), (estimated, ESTIMATED)];
    let known = known.into_iter().filter_map(|(span, word)| span.map(|span| format!("{span} {word}"))).listed().join(", ");
    let (operations, them) = if is_one { ("operation", "it") } else { ("operations", "them") };
    format!("{known} for {n} {operations}, {on_them} {SO_FAR} on {them}; {on_others} on others")
}

/// "Sand is past what was planned: 3 h 20, and 4 h 55 so far."
pub fn past_plan(op: &str, planned: &str, so_far: &str) -> String {
    format!("Past what was planned for {op}: {planned}, and {so_far} so far.")
}

/// "25 h 40 likely in all, as it goes."
pub fn ends(span: &str) -> String {
    format!("{}, as it goes.", likely(span))
}

/// Where the figure of one operation is from.
pub fn from(basis: Basis, jobs: &str, one: bool) -> String {
    let jobs_word = if one { "job" } else { "jobs" };
    match basis {
        Basis::Design => format!("{jobs} {jobs_word} of this design"),
        Basis::Kind => format!("{jobs} {jobs_word} of this kind of piece"),
        Basis::Own => format!("{jobs} of your {}", if one { "jobs" } else { jobs_word }),
        Basis::Thought => "as you thought".into(),
        Basis::Pieces => format!("{jobs} earlier {jobs_word}, as a whole"),
        Basis::Piece => "usual for such a piece".into(),
        Basis::Operation => "a first guess".into(),
    }
}

/// Where all of it is from: "89 % your own history, 11 % what you thought."
pub fn shares(shares: &[(Basis, String)]) -> String {
    match shares {
        [(only, _)] => format!("All of it by {}.", by(*only)),
        all => format!("{}.", all.iter().map(|(basis, share)| format!("{share} % {}", by(*basis))).listed().join(", ")),
    }
}

fn by(basis: Basis) -> &'static str {
    match basis {
        Basis::Design => "this design’s history",
        Basis::Kind => "your history of this kind of piece",
        Basis::Own => "your own history",
        Basis::Thought => "what you thought",
        Basis::Pieces => "earlier jobs as a whole",
        Basis::Piece => "what is usual for such a piece",
        Basis::Operation => "first guesses",
    }
}

/// "Estimated by what you thought and first guesses."; none of nothing.
pub fn estimated_by(from: &[Basis]) -> Option<String> {
    let all = from.iter().map(|basis| by(*basis)).listed();
    let (last, before) = all.split_last()?;
    let both = if before.is_empty() { (*last).to_owned() } else { format!("{} and {last}", before.join(", ")) };
    Some(format!("Estimated by {both}."))
}

/// Figures as a sentence of their own.
pub fn as_sentence(said: &str) -> String {
    format!("{said}.")
}

/// "5 % for rework on 1 h 20 of operations: 1 h 24. That is in it."
pub fn allowance(percent: &str, before: &str, after: &str) -> String {
    format!("{before} of operations, and {percent} % for rework on top of that: {after}. It is in the figure above.")
}

/// "Kept Tue 14 April: 25 h 26, and 32 h 18 to be safe".
pub fn kept(day: &str, estimated: &str, safe: &str) -> String {
    format!("Kept {day}: {estimated}, and {safe} to be safe")
}

/// "28 h 24 for 2, 20 h thought, 390.00".
pub fn old_job(span: &str, pieces: Option<&str>, thought: Option<&str>, sum: Option<&str>) -> String {
    let span = pieces.map_or_else(|| span.to_owned(), |n| format!("{span} for {n}"));
    let thought = thought.map(|thought| format!("{thought} {THOUGHT}"));
    let all = [Some(span), thought, sum.map(str::to_owned)];
    all.into_iter().flatten().listed().join(", ")
}

/// "Old job 2".
pub fn old_job_name(n: &str) -> String {
    format!("Old job {n}")
}

/// "28.4 h".
pub fn hours(typed: &str) -> String {
    format!("{typed} h")
}

/// "Next estimate × 1.344".
pub fn next_estimate(times: &str) -> String {
    format!("Next estimate × {times}")
}

/// "was × 1.339".
pub fn was(times: &str) -> String {
    format!("was × {times}")
}

/// "It had warned: 25 h 26, not 19 h."
pub fn warned(likely: &str, thought: &str) -> String {
    format!("It had warned: {likely}, not {thought}.")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn likely_is_said_as_it_is_reckoned() {
        let check = |of, said: &str| {
            assert_eq!(likely_under(of, false), format!("Likely is {said}; nine times in ten all of it takes no more than safe."))
        };
        check(true, "the middle of each operation, added up");
        check(false, "the middle: it takes more as often as less");
        assert!(likely_under(true, true).contains("of what is not planned yet"));
        assert!(!likely_under(false, true).contains("operation"), "none is planned");
    }

    #[test]
    fn what_was_not_planned_is_no_part_of_the_plan() {
        let check = |thought, estimated, n, is_one, said: &str| {
            assert_eq!(progress_beside(thought, estimated, (n, is_one), ["2 h 25", "8 h 21"]), said);
        };
        check(Some("1 h 40"), None, "2", false, "1 h 40 thought for 2 operations, 2 h 25 so far on them; 8 h 21 on others");
        check(Some("1 h"), Some("2 h"), "1", true, "1 h thought, 2 h estimated for 1 operation, 2 h 25 so far on it; 8 h 21 on others");
    }

    #[test]
    fn what_is_said_is_not_asked_for_again() {
        let told = "By other pieces the whole takes 9 h. Tap what kind of piece it is, above: the old jobs of that kind say the rest.";
        assert_eq!(planned_alone(Some("9 h"), None, true), format!("This is what is planned alone. {told}"));
        let check =
            |whole, kind, said: &str| assert_eq!(planned_alone(whole, kind, false), format!("This is what is planned alone. {said}"));
        let ask = "Say what kind of piece it is, or tell old jobs of that kind, and the rest is in it.";
        check(None, None, &format!("Nothing says yet what the whole job takes. {ask}"));
        check(Some("128 h"), None, &format!("By other pieces the whole takes 128 h. {ask}"));
        let tell = "Tell old jobs with \u{201c}dining table\u{201d} in their name, and the rest is in it.";
        check(Some("128 h"), Some("dining-table"), &format!("By pieces of other kinds the whole takes 128 h. {tell}"));
        let done = "Jobs of that kind that you are done with will say the rest.";
        check(None, Some("other"), &format!("Nothing says yet what the whole job takes. {done}"));
    }
}
