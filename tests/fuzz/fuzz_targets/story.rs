//! No story panics, and the same story gives the same book.
#![no_main]

use fivebar_core::story::tell;

libfuzzer_sys::fuzz_target!(|text: &str| assert_eq!(tell(text).book, tell(text).book));
