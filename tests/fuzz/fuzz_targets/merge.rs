//! Lines in any order, cut anywhere in two: the same book, and every fold of it ends.
#![no_main]

use fivebar_core::ledger::{Book, fold};

libfuzzer_sys::fuzz_target!(|given: (u8, Vec<String>)| {
    let (cut, lines) = given;
    let whole = Book::of_lines(lines.iter().map(String::as_str));
    let (one, other) = lines.split_at(usize::from(cut).min(lines.len()));
    let mut late = Book::of_lines(other.iter().rev().map(String::as_str));
    late.merge(one.iter().map(String::as_str));
    assert_eq!(late, whole);
    fold::hauls(&whole).count();
    fold::bench(&whole).runs().count();
});
