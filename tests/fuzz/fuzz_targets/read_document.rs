//! No document panics, and what is read of one is the same once it was written and read again.
#![no_main]

use fivebar_core::ledger::Book;
use fivebar_core::ledger::line::document::{read, write};

libfuzzer_sys::fuzz_target!(|text: &str| {
    let Ok(copy) = read(text) else { return };
    let book = Book::of_lines(copy.lines.iter().map(|line| &**line));
    let again = write(&book, &copy.people, copy.photos.as_ref(), copy.made);
    let again = read(&again).expect("what we wrote is read");
    assert_eq!(Book::of_lines(again.lines.iter().map(|line| &**line)), book);
});
