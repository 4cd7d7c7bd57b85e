//! Orders about selling: hear an offer, agree, sell, take payment.

use super::Act;
use crate::ledger::Book;
use crate::refusal::Answer;

/// What can be ordered.
#[derive(Clone, Debug, PartialEq)]
pub enum SaleCommand {}

pub(super) fn decide(_book: &Book, command: &SaleCommand, _act: &mut Act) -> Answer<()> {
    match *command {}
}
