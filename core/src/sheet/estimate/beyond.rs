//! What a piece takes beyond the operations that are planned: by what the others took on earlier pieces, not by how long the planned ones are now.

use super::coats::without_number;
use super::history::OldPiece;
use super::parts::Whole;
use crate::bench::estimate::spread::minutes;
use crate::bench::estimate::{OnTop, Part, topped};
use crate::ledger::fold::Job;
use crate::quantity::{Listed, Set, Span, in_small};

/// Minutes of the whole less what its planned operations took of earlier pieces; of an operation that none of these had, and where none is known by
/// its operations, less what it likely takes (ours).
pub fn beyond(job: &Job, whole: &Whole, (parts, on_top): (&[Part], OnTop)) -> f64 {
    let had = job.operations.iter().map(|planned| names(&whole.past, &planned.op)).listed();
    let likely = had.iter().zip(parts).filter(|(had, _)| had.is_empty()).map(|(_, part)| topped(part, on_top).median);
    let likely: f64 = likely.sum();
    let planned: Set<&str> = had.iter().flat_map(Set::iter).copied().collect();
    whole.part.time.median * (1.0 - share(&whole.past, &planned)) - likely
}

/// The operations of earlier pieces that a planned one stands for: of its name, else coats of its name with a number.
fn names<'p>(past: &'p [OldPiece], op: &str) -> Set<&'p str> {
    let (name, all) = (in_small(op.trim()), past.iter().flat_map(|piece| piece.operations.keys()));
    let own: Set<&str> = all.clone().filter(|had| **had == name).map(String::as_str).collect();
    if !own.is_empty() {
        return own;
    }
    all.filter(|had| without_number(had).as_ref() == Some(&name)).map(String::as_str).collect()
}

/// Which part of the hours of earlier pieces these operations had.
fn share(past: &[OldPiece], planned: &Set<&str>) -> f64 {
    let all = || past.iter().flat_map(|piece| &piece.operations);
    let of_all = minutes(Span::sum(all().map(|(_, took)| *took)));
    let of_planned = minutes(Span::sum(all().filter(|(name, _)| planned.contains(name.as_str())).map(|(_, took)| *took)));
    if 0.0 < of_all { of_planned / of_all } else { 0.0 }
}
