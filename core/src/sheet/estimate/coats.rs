//! Whether an operation is one coat of several that are planned, and how many coats were put on by one.

use crate::bench::{Bench, On};
use crate::ledger::fold::Job;
use crate::quantity::{Count, Listed, Local, Offset, in_small};
use crate::sheet::Shop;
use crate::sheet::waits::Kept;

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

/// The name of an operation without the number of its coat, in small letters; none of one that has no number.
pub fn without_number(op: &str) -> Option<String> {
    let words = in_small(op);
    let rest = words.split_whitespace().filter(|word| !has_number(word)).listed().join(" ");
    (has_number(op) && !rest.is_empty()).then_some(rest)
}

/// On how many pieces a coat is: as was said before the maker was done with it, else as the job has.
pub fn each(bench: &Bench, job: &Job, op: &str) -> Count {
    bench.coated_each(On::Job(job.id), op).unwrap_or(job.pieces).max(1)
}

/// Coats that were put on by one operation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Coats {
    /// So many, the last of them on some pieces or on all.
    pub n: Count,
    /// On so many pieces each.
    pub each: Count,
}

impl Coats {
    /// What so many noted pieces of an operation are as coats; none of one that is no coat, or where they may be parts of the pieces.
    pub fn of(shop: &Shop, job: &Job, (op, noted): (&str, Count)) -> Option<Coats> {
        let on = On::Job(job.id);
        let each = each(&shop.bench, job, op);
        if !shop.bench.is_coated(on, op) || is_one_coat(&shop.bench, job, op) {
            return None;
        }
        let kept = Kept { waits: shop.waits(), bench: &shop.bench, book: shop.book, local: Local::new(Offset::UTC, None) };
        let n = kept.coat_of((on, op), noted, || Some(job.pieces)).map_or(1, |(nth, ..)| nth);
        (noted <= each.saturating_mul(n)).then_some(Coats { n, each })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn coats_are_told_by_their_names() {
        assert_eq!(["Coat 1", "2. coat", "1st coat", "Coat", "Oil", ""].map(has_number), [true, true, true, false, false, false]);
        let names = ["Coat 1", "2. coat", "Oil coat 3", "3", "Coat"].map(without_number);
        assert_eq!(names.each_ref().map(Option::as_deref), [Some("coat"), Some("coat"), Some("oil coat"), None, None]);
        let apart = [("First coat", "second coat"), ("coat oil", "coat wax"), ("oil", "wax"), ("coat", "coat"), ("coat", "last coat")];
        assert_eq!(apart.map(|(one, other)| differs_by_a_word(one, other)), [true, true, false, false, false]);
    }
}
