//! English: Price.
