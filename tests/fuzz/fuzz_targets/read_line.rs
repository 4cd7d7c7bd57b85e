//! No line panics or is lost, and what is read is written to the byte unless it had members no one knows.
#![no_main]

use fivebar_core::ledger::Book;
use fivebar_core::ledger::line::{Line, read, write};

libfuzzer_sys::fuzz_target!(|text: &str| {
    if let Line::Known(entry) = read(text) {
        assert_eq!(read(&write(&entry)), Line::Known(entry));
    }
    assert!(Book::of_lines([text]).lines().eq([text]));
});
