//! Orders about money: spend, drive, set what an hour must earn.

use super::Act;
use crate::ledger::Book;
use crate::refusal::Answer;

/// What can be ordered.
#[derive(Clone, Debug, PartialEq)]
pub enum MoneyCommand {}

pub(super) fn decide(_book: &Book, command: &MoneyCommand, _act: &mut Act) -> Answer<()> {
    match *command {}
}
