//! What a price does not count, or counts by a guess.

/// "15 h more is to settle on Bench: a stop may have been forgotten. No price here counts it, nor 277.50 for who helped in it."
pub fn in_question(span: &str, pay: Option<&str>) -> String {
    let pay = pay.map(|pay| format!(", nor {pay} for who helped in it")).unwrap_or_default();
    format!("{span} more is to settle on Bench: a stop may have been forgotten. No price here counts it{pay}.")
}

/// The same of a job that has ended: all that was logged is what it took.
pub fn in_question_counted(span: &str, pay: Option<&str>) -> String {
    let pay = pay.map(|pay| format!(", but not {pay} for who helped in it")).unwrap_or_default();
    format!("{span} of its hours is to settle on Bench: a stop may have been forgotten. As the job is done with, prices count it{pay}.")
}

/// "12 h of work on its haul is to settle on Bench, and in no figure here."
pub fn haul_in_question(span: &str) -> String {
    format!("{span} of work on its haul is to settle on Bench, and in no figure here.")
}

/// "15 h more to settle, not counted here." Under the word of an offer.
pub fn not_counted(span: &str) -> String {
    format!("{span} more to settle, not counted here.")
}

/// "15 h to settle, counted here." Of a job that is done with.
pub fn counted_in_question(span: &str) -> String {
    format!("{span} to settle, counted here.")
}

/// "A buyer sees 150 on it until its tag is set to what is asked by now." Where waiting brought the ask down.
pub fn buyer_sees(tag: &str) -> String {
    format!("A buyer sees {tag} on it until its tag is set to what is asked by now.")
}

/// "1 h 26 of its hours are a guess, by 1 earlier job." By none it is what such a piece usually takes.
pub fn guessed_hours(span: &str, jobs: Option<(bool, &str)>) -> String {
    match jobs {
        None => format!("{span} of its hours are a guess, by what such pieces take."),
        Some((true, n)) => format!("{span} of its hours are a guess, by {n} earlier job."),
        Some((false, n)) => format!("{span} of its hours are a guess, by {n} earlier jobs."),
    }
}
