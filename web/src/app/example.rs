//! The example: two jobs of an invented maker, told from their stories into a book of their own.
//!
//! In no total and no copy; it is filled once, where its book is empty, in one transaction.

use super::shelf::Posted;
use fivebar_core::ledger::line;
use fivebar_core::quantity::Id;
use fivebar_core::story::{BENCH, STANDS, tell};

/// All that the example's book holds, and the names of its people.
pub fn told() -> (Vec<Posted>, Vec<(Id, String)>) {
    let (mut lines, mut names) = (vec![], vec![]);
    for story in [STANDS, BENCH].map(tell) {
        lines.extend(story.book.entries().map(|(entry, _)| Posted { id: entry.id, line: line::write(entry) }));
        names.extend(story.people.iter().map(|(id, person)| (*id, person.name.clone())));
    }
    (lines, names)
}
