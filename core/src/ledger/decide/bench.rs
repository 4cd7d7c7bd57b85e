//! Orders about time: start, switch, stop, mend.

use super::Act;
use crate::ledger::Book;
use crate::refusal::Answer;

/// What can be ordered.
#[derive(Clone, Debug, PartialEq)]
pub enum BenchCommand {}

pub(super) fn decide(_book: &Book, command: &BenchCommand, _act: &mut Act) -> Answer<()> {
    match *command {}
}
