//! What of a job or its haul is to settle on Bench, or asked about once.

use crate::app::price::far::Far;

/// "14 h of it is to settle on Bench: a stop may have been forgotten."
pub fn to_settle(span: &str) -> String {
    format!("{span} of it is to settle on Bench: a stop may have been forgotten.")
}

/// "14 h more is to settle on Bench and in none of these figures: a stop may have been forgotten."
pub fn beside_these(span: &str) -> String {
    format!("{span} more is to settle on Bench and in none of these figures: a stop may have been forgotten.")
}

/// "12 h of work on its haul is to settle on Bench first: what is answered for after this job is done with is the workshop's."
pub fn haul_before_the_end(span: &str) -> String {
    format!("{span} of work on its haul is to settle on Bench first: what is answered for after this job is done with is the workshop's.")
}

/// "14.50 is a fifth of your tag of 145.00 or less. Done again if that is so."
pub fn far_from_tag(sum: (Far, &str), tag: &str) -> String {
    format!("{} Done again if that is so.", crate::words::en::price::far_from_tag(sum, tag))
}

/// "477.30 is less than the 752.50 that were agreed. It is the whole price, with what came in before. Done again if that is so."
pub fn less_than_agreed(typed: &str, agreed: &str) -> String {
    format!(
        "{typed} is less than the {agreed} that were agreed. It is the whole price, with what came in before. Done again if that is so."
    )
}
