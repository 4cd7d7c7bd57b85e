//! English: how an estimate comes about, a line for each step, with the figures a maker can work it back by.

use fivebar_core::bench::estimate::Over;
use fivebar_core::quantity::Listed;

/// "a", "a and b", "a, b and c".
pub fn listed(all: &[String]) -> String {
    match all {
        [] => String::new(),
        [one] => one.clone(),
        [many @ .., last] => format!("{} and {last}", many.join(", ")),
    }
}

fn root(n: usize) -> String {
    match n {
        2 => "the square root".into(),
        3 => "the 3rd root".into(),
        n => format!("the {n}th root"),
    }
}

/// "planned 3 h × 1.196 = 3 h 35"
pub fn planned(planned: &str, times: &str, likely: &str) -> String {
    format!("planned {planned} × {times} = {likely}.")
}

/// "planned 3 h, and 7.5 % for rework = 3 h 14"
pub fn with_rework(planned: &str, percent: &str, likely: &str) -> String {
    format!("planned {planned}, and {percent} % for rework = {likely}.")
}

/// "And 7.5 % for rework: 44 min."
pub fn and_rework(percent: &str, likely: &str) -> String {
    format!("And {percent} % for rework: {likely}.")
}

/// "instead of the 3 h planned, by 2 jobs of this kind of piece"
pub fn by(from: &str, planned: Option<&str>) -> String {
    let instead = planned.map(|planned| format!("instead of the {planned} planned, ")).unwrap_or_default();
    format!("{instead}by {from}")
}

/// "Lamps 1 h 18 for 4", "Lamps 2 h for 2 with a helper, whose time counts too"
pub fn took(job: &str, span: &str, several: Option<&str>, helped: bool) -> String {
    let several = several.map(|n| format!(" for {n}")).unwrap_or_default();
    format!("{job} {span}{several}{}", if helped { super::estimate::HELPED } else { "" })
}

/// " in 3 coats", " in 3 coats, so 30 min in 1"; in as many coats as it is to be nothing is brought.
pub fn in_coats(had: &str, brought: Option<(&str, &str)>) -> String {
    let brought = brought.map(|(n, span)| format!(", so {span} in {n}")).unwrap_or_default();
    format!(" in {had} {}{brought}", if had == "1" { "coat" } else { "coats" })
}

/// ", × 1.95 / 3.70 for 2 = 41 min"
pub fn brought_to(n: &str, [times, had]: [&str; 2], says: &str) -> String {
    format!(", × {times} / {had} for {n} = {says}")
}

/// ", of it 29.19 min beside the pieces and 10.81 min the first; 29.19 + 10.81 × 5.25 for 6 = 1 h 26"
pub fn brought_apart(n: &str, [setup, first, times]: [&str; 3], says: &str) -> String {
    format!(", {setup} min of it beside the pieces and {first} min for the first; {setup} + {first} × {times} for {n} = {says}")
}

/// "All 3 multiplied, and the 3rd root taken: 41 min."
pub fn middle(n: usize, says: &str) -> String {
    let all = if n == 2 { "Both".into() } else { format!("All {n}") };
    format!("{all} multiplied, and {} taken: {says}.", root(n))
}

/// "Each of the 9 for 2 pieces, from 35 min to 1 h 10; all multiplied, and the 9th root taken: 41 min."
pub fn middle_of_many((n, pieces): (usize, &str), [least, most]: [&str; 2], says: &str) -> String {
    format!("brought to {pieces} they say from {least} to {most}; all {n} multiplied, and {} taken: {says}.", root(n))
}

/// "By your own batches twice the pieces take 1.60 times as long."
pub fn doubling(times: &str) -> String {
    format!("By your own batches twice the pieces take {times} times as long.")
}

/// "nobody thought of it; of 20 h for the whole 13 % go to finish, shared by 2 operations: 1 h 18."
pub fn shared((whole, percent, stage): (&str, &str, &str), among: Option<&str>, likely: &str) -> String {
    let among = among.map(|n| format!(", shared by {n} operations")).unwrap_or_default();
    format!("nobody thought of it; of {whole} for the whole {percent} % go to {stage}{among}: {likely}.")
}

/// "nobody thought of it; a first guess of 1 h, × 3.70 for 4 pieces = 3 h 42."
pub fn guessed(one: &str, several: Option<(&str, &str)>, likely: &str) -> String {
    let several = several.map(|(n, times)| format!(", × {times} for {n} pieces = {likely}")).unwrap_or_default();
    format!("nobody thought of it; a first guess of {one}{several}.")
}

/// "Together 22 h 12, which was estimated."
pub fn estimated_then(likely: &str) -> String {
    format!("Together {likely}, which was estimated.")
}

/// "Less 1 h 10 worked: 38 min to come."
pub fn less(worked: &str, left: &str) -> String {
    format!("Less {worked} worked: {left} to come.")
}

/// "1 h 30 worked, and no piece noted: 27 min to come. Of what has taken so long half is done by then."
pub fn longer(worked: &str, left: &str) -> String {
    format!("{worked} worked, and no piece noted: {left} to come. Of what has taken so long half is done by then.")
}

/// "Less 20 min worked: 1 h 10 to come, as planned: work that takes longer makes no drive longer."
pub fn as_planned(worked: Option<&str>, left: &str) -> String {
    let less = worked.map(|worked| format!("Less {worked} worked: ")).unwrap_or_default();
    format!("{less}{left} to come, as planned: work that takes longer makes no drive longer.")
}

/// "38 min to come, by the pieces that are left."
pub fn by_pieces(left: &str) -> String {
    format!("{left} to come, by the pieces that are left.")
}

/// Why nothing of an operation is to come any more.
pub fn over(over: Over) -> &'static str {
    match over {
        Over::Ended => "you are done with the job",
        Over::Gone => "the last piece is gone",
        Over::Made => "it is made",
        Over::Noted => "all its pieces are noted as done",
        Over::Waits => "all its pieces were put to wait",
        Over::NextBegun => "it had taken what was planned when the next step was begun",
        Over::Dries => "it has taken what was planned, and a coat dries",
        Over::Driven => "the drive took as long as was planned",
    }
}

/// "Nothing of it is to come: all its pieces are noted as done."
pub fn nothing_left(why: Over) -> String {
    format!("Nothing of it is to come: {}.", over(why))
}

/// "nothing to come: all its pieces are noted as done"
pub fn nothing_to_come(why: Over) -> String {
    format!("nothing to come: {}", over(why))
}

/// "Your jobs took 1.25, 1.25 and 0.80 of what you thought. With the usual 1.4, which counts as 2 jobs, all 5 multiplied and the 5th root taken:
/// 1.196."
pub fn factor(times: &str, ratios: &[String]) -> String {
    let n = ratios.len();
    match n {
        0 => format!("People take {times} of what they think, until your own jobs say otherwise."),
        _ => {
            let jobs = if n == 1 { "Your job" } else { "Your jobs" };
            let all = n.saturating_add(2);
            let root = root(all);
            format!(
                "{jobs} took {} of what you thought. With the usual 1.4, which counts as 2 jobs, all {all} multiplied and {root} taken: {times}.",
                listed(ratios)
            )
        }
    }
}

/// "Your 9 jobs took 1.08 of what you thought (all multiplied, and the 9th root taken). With the usual 1.4, which counts as 2 jobs: 1.13."
pub fn factor_of_many(times: &str, n: usize, own: &str) -> String {
    let root = root(n);
    format!(
        "Your {n} jobs took {own} of what you thought (all multiplied, and {root} taken). With the usual 1.4, which counts as 2 jobs: {times}."
    )
}

/// "Safe: 34 h 38 × 1.766 = 61 h 11. One time in ten it takes longer: so far apart your jobs lie, and few of them count as farther apart."
pub fn safe_of_one(likely: &str, times: &str, (safe, of_own): (&str, bool)) -> String {
    let why =
        if of_own { "so far apart your jobs lie, and few of them count as farther apart" } else { "a guess, until jobs of yours tell" };
    format!("Safe: {likely} × {times} = {safe}. One time in ten it takes longer: {why}.")
}

/// "Together 31 h 40, which is likely. One time in ten what you planned takes more than 1.766 times as long, Sand 1.9 times. Safe is 39 h: …"
pub fn drawn((draws, sum): (&str, &str), times: &[String], [half, safe]: [&str; 2]) -> String {
    format!(
        "Together {sum}, which is likely. One time in ten {} as long. Safe is {safe}: of {draws} jobs drawn by that, each operation by its own luck, nine in ten took no more, and half of them no more than {half}. Likely adds up what each operation takes in the middle, and that half is the middle of all together: what runs long runs further over than what is quick stays under.",
        listed(times)
    )
}

/// "what you planned takes more than 1.766 times", "Sand more than 1.9 times"
pub fn beyond(what: Option<&str>, times: &str, first: bool) -> String {
    let takes = if first { "takes more than" } else { "more than" };
    format!("{} {takes} {times} times", what.unwrap_or("what you planned"))
}

/// "Logged 12 h 5; to come 3 h 38, and 5 h to be safe, by the same luck with what is left: 15 h 43 likely, 17 h 5 safe."
pub fn begun(logged: &str, [left, safe]: [&str; 2], [likely_in_all, safe_in_all]: [&str; 2]) -> String {
    format!(
        "Logged {logged}; to come {left}, and {safe} to be safe, by the same luck with what is left: {likely_in_all} likely in all, {safe_in_all} safe."
    )
}

/// "Sand: planned 3 h × 1.196 = 3 h 35. Less 1 h worked: 2 h 35 to come."
pub fn line(op: &str, steps: &[String]) -> String {
    format!("{op}: {}", steps.iter().map(String::as_str).listed().join(" "))
}
