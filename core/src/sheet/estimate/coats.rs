//! Whether an operation is one coat of several that are planned, and whether a further one was begun on it.

use crate::bench::{Batch, Bench, On, Run};
use crate::ledger::fold::Job;
use crate::quantity::{Listed, Moment};

/// Whether an operation of a job is one coat and no more, as it was planned: its name has a number, or another coat of the job is planned beside
/// it, one that was put on or is called the same but for a word. Ours: who plans each coat apart puts the next one on under its own name.
pub fn is_one_coat(bench: &Bench, job: &Job, op: &str) -> bool {
    let on = On::Job(job.id);
    let is_planned = job.operations.iter().any(|planned| planned.op == op);
    let beside = |other: &str| other != op && (bench.is_coated(on, other) || differs_by_a_word(op, other));
    bench.is_coated(on, op) && is_planned && (has_number(op) || job.operations.iter().any(|other| beside(&other.op)))
}

/// "Coat 2", "2. coat".
fn has_number(op: &str) -> bool {
    op.split_whitespace().any(|word| word.starts_with(|sign: char| sign.is_ascii_digit()))
}

/// "First coat" and "second coat", "coat oil" and "coat wax".
fn differs_by_a_word(op: &str, other: &str) -> bool {
    let [op, other] = [op, other].map(|name| name.split_whitespace().map(str::to_lowercase).listed());
    let apart = op.iter().zip(&other).filter(|(one, other)| one != other).count();
    1 < op.len() && op.len() == other.len() && apart == 1
}

/// Whether a further coat was begun on an operation of which every piece had one: some of them have it, or a run of it began since the last was
/// noted.
pub fn is_begun_again<'a>(runs: impl Iterator<Item = &'a Run> + Clone, batch: &Batch) -> bool {
    let runs = runs.filter(|run| !run.work.rework);
    let last = runs.clone().flat_map(|run| &run.notches).map(|notch| notch.at).max().unwrap_or(Moment::at(i64::MIN));
    let is_on_some = batch.of.is_some_and(|of| of < batch.n && batch.n.checked_rem(of).is_some_and(|some| 0 < some));
    batch.is_done() && (is_on_some || runs.clone().any(|run| last < run.started.at))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn coats_are_told_by_their_names() {
        assert_eq!(["Coat 1", "2. coat", "1st coat", "Coat", "Oil", ""].map(has_number), [true, true, true, false, false, false]);
        let apart = [("First coat", "second coat"), ("coat oil", "coat wax"), ("oil", "wax"), ("coat", "coat"), ("coat", "last coat")];
        assert_eq!(apart.map(|(one, other)| differs_by_a_word(one, other)), [true, true, false, false, false]);
    }
}
