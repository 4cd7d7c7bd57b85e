//! Orders about jobs: begin, describe, plan, end.

use super::Act;
use crate::ledger::Book;
use crate::refusal::Answer;

/// What can be ordered.
#[derive(Clone, Debug, PartialEq)]
pub enum JobCommand {}

pub(super) fn decide(_book: &Book, command: &JobCommand, _act: &mut Act) -> Answer<()> {
    match *command {}
}
