//! Lines and copies of every version that was ever released: they open for ever.
//!
//! A new kind adds a line to tests/museum/kinds.txt; a line there is never edited once its kind is released.

mod museum_piece;

use fivebar_core::ledger::line::{self, Line};
use fivebar_core::ledger::{Book, Fact};
use museum_piece::kinds;
use std::collections::BTreeSet;

#[test]
fn inv10_every_line_of_the_museum_is_read_and_written_to_the_byte() {
    for text in kinds().lines() {
        let Line::Known(entry) = line::read(text) else { panic!("not read: {text}") };
        assert_eq!(line::write(&entry), text);
    }
}

#[test]
fn every_kind_has_a_line_in_the_museum() {
    let book = Book::of_lines(kinds().lines());
    let there: BTreeSet<&str> = book.entries().map(|(entry, _)| entry.fact.kind()).collect();
    for kind in Fact::KINDS {
        assert!(there.contains(kind), "{kind} has no line in tests/museum/kinds.txt");
    }
    assert_eq!(book.damaged().count(), 0);
}
