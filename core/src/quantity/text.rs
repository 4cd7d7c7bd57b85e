//! How a quantity stands in an entry: as text that has exactly one spelling.

use serde::{Deserialize, Deserializer, de::Error};
use std::borrow::Cow;

/// Reads a text member through `make`; refuses it with what was expected.
pub fn read<'de, D: Deserializer<'de>, T>(from: D, expected: &'static str, make: impl Fn(&str) -> Option<T>) -> Result<T, D::Error> {
    let text = Cow::<str>::deserialize(from)?;
    make(&text).ok_or_else(|| D::Error::custom(expected))
}
