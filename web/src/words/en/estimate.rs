//! English: estimates: what a job will likely take, where that is from, old jobs.

use fivebar_core::bench::estimate::Basis;
use fivebar_core::quantity::{Listed, in_small};

pub const ESTIMATE: &str = "Estimate";
pub const LIKELY: &str = "likely";
pub const SAFE: &str = "safe";
pub const THOUGHT: &str = "thought";
pub const SO_FAR: &str = "so far";
pub const LIKELY_UNDER: &str = "Half the time no more than likely, nine times in ten no more than safe.";
pub const KEEP: &str = "Keep this estimate";
pub const KEEP_AGAIN: &str = "Keep this one instead";
pub const OLD_JOBS: &str = "Three old jobs";
pub const OLD_JOBS_UNDER: &str = "name, hours, price: a history in a minute";
pub const MORE_OLD_JOBS: &str = "More old jobs";
pub const OLD_JOBS_LIST: &str = "Old jobs";
pub const NOTHING_YET: &str = "Nothing to go by yet. Say what kind of piece it is, plan its operations, or tell three old jobs.";
pub const WHAT_KIND: &str = "What kind of piece";
pub const WITHOUT_FACTOR: &str = "Without the factor";
pub const WITH_FACTOR: &str = "With the factor";
pub const WHOLE_PIECE: &str = "All of it";
pub const AGAINST: &str = "Against the estimate";
pub const IT_TOOK: &str = "hours";
pub const YOU_THOUGHT: &str = "thought";
pub const SOLD_FOR: &str = "sold for";
pub const OLD_JOBS_ASK: &str = "Only name and hours are asked. What you had thought teaches how far off you are.";

/// The kinds of piece that have a default, as they are called.
pub fn piece(key: &str) -> String {
    key.replace('-', " ")
}

/// The kind of piece in a name: "Oak coffee table" is a table.
pub fn kind_in(name: &str) -> Option<&'static str> {
    let name = in_small(name);
    let found =
        ["stool", "stand", "bench", "table"].into_iter().find(|kind| name.split(|c: char| !c.is_alphanumeric()).any(|word| is(word, kind)));
    if found == Some("table") && name.contains("dining") { Some("dining-table") } else { found }
}

fn is(word: &str, kind: &str) -> bool {
    word == kind || word.strip_prefix(kind).is_some_and(|end| end == "s" || end == "es")
}

/// "25 h 26 likely".
pub fn likely(span: &str) -> String {
    format!("{span} {LIKELY}")
}

/// "32 h 18 safe".
pub fn safe(span: &str) -> String {
    format!("{span} {SAFE}")
}

/// "19 h thought, 25 h 26 likely, 12 h 10 so far".
pub fn progress(thought: Option<&str>, likely: Option<&str>, so_far: &str) -> String {
    let all = [(thought, THOUGHT), (likely, LIKELY), (Some(so_far), SO_FAR)];
    all.into_iter().filter_map(|(span, word)| span.map(|span| format!("{span} {word}"))).listed().join(", ")
}

/// "About 25 h 40 in all, as it goes."
pub fn ends(span: &str) -> String {
    format!("About {span} in all, as it goes.")
}

/// Where the figure of one operation is from.
pub fn from(basis: Basis, jobs: &str, one: bool) -> String {
    let jobs_word = if one { "job" } else { "jobs" };
    match basis {
        Basis::Design => format!("{jobs} {jobs_word} of this design"),
        Basis::Own => format!("{jobs} of your {}", if one { "jobs" } else { jobs_word }),
        Basis::Thought => "as you thought".into(),
        Basis::Pieces => format!("{jobs} earlier {jobs_word}, as a whole"),
        Basis::Piece => "usual for such a piece".into(),
        Basis::Operation => "a first guess".into(),
    }
}

/// Where all of it is from: "89 % your own history, 11 % what you thought."
pub fn shares(shares: &[(Basis, String)]) -> String {
    let word = |basis: Basis| match basis {
        Basis::Design => "this design’s history",
        Basis::Own => "your own history",
        Basis::Thought => "what you thought",
        Basis::Pieces => "earlier jobs as a whole",
        Basis::Piece => "what is usual for such a piece",
        Basis::Operation => "first guesses",
    };
    match shares {
        [(only, _)] => format!("All of it by {}.", word(*only)),
        all => format!("{}.", all.iter().map(|(basis, share)| format!("{share} % {}", word(*basis))).listed().join(", ")),
    }
}

/// "Your jobs took 1.34 of what you thought (3 jobs)."
pub fn factor(times: &str, n: usize, jobs: &str) -> String {
    match n {
        0 => format!("People take {times} of what they think, until your own jobs say otherwise."),
        1 => format!("By one job and what is usual: {times} of what you thought."),
        _ => format!("Your jobs took {times} of what you thought ({jobs} jobs)."),
    }
}

/// "5 % for rework on top."
pub fn allowance(percent: &str) -> String {
    format!("{percent} % for rework on top.")
}

/// "Kept Tue 14 April: 25 h 26 likely, 32 h 18 safe".
pub fn kept(day: &str, likely: &str, safe: &str) -> String {
    format!("Kept {day}: {likely} {LIKELY}, {safe} {SAFE}")
}

/// "28 h 24, 20 h thought, 390.00".
pub fn old_job(span: &str, thought: Option<&str>, sum: Option<&str>) -> String {
    let thought = thought.map(|thought| format!("{thought} {THOUGHT}"));
    let all = [Some(span.to_owned()), thought, sum.map(str::to_owned)];
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
    fn a_kind_of_piece_is_read_from_a_name() {
        let cases = [
            ("Oak coffee table", Some("table")),
            ("Dining table, ash", Some("dining-table")),
            ("Two benches", Some("bench")),
            ("Beech stools, a pair", Some("stool")),
            ("Standing desk", None),
            ("Wall shelf", None),
            ("", None),
        ];
        for (name, kind) in cases {
            assert_eq!(kind_in(name), kind, "{name}");
        }
    }
}
