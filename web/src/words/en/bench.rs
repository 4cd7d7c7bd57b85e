//! English: Bench.
