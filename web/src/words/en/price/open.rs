//! What a price does not count, or counts by a guess.

/// "15 h more are in question: a stop may have been forgotten. No price here counts them, nor 277.50 for who helped in them; Bench settles it."
pub fn in_question(span: &str, pay: Option<&str>) -> String {
    let pay = pay.map(|pay| format!(", nor {pay} for who helped in them")).unwrap_or_default();
    format!("{span} more are in question: a stop may have been forgotten. No price here counts them{pay}; Bench settles it.")
}

/// The same of a job that has ended: all that was logged is what it took.
pub fn in_question_counted(span: &str, pay: Option<&str>) -> String {
    let pay = pay.map(|pay| format!(", but not {pay} for who helped in them")).unwrap_or_default();
    format!(
        "{span} of its hours are in question: a stop may have been forgotten. As the job is done with, prices count them{pay}; Bench settles it."
    )
}

/// "12 h of work on its haul are in question, and in no figure here; Bench settles it."
pub fn haul_in_question(span: &str) -> String {
    format!("{span} of work on its haul are in question, and in no figure here; Bench settles it.")
}

/// "15 h more in question, not counted here." Under the word of an offer.
pub fn not_counted(span: &str) -> String {
    format!("{span} more in question, not counted here.")
}

/// "15 h in question, counted here." Of a job that is done with.
pub fn counted_in_question(span: &str) -> String {
    format!("{span} in question, counted here.")
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
