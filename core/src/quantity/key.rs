//! Keys of open lists: species, reasons, kinds of spending. Small letters, digits and hyphens, at most 32.

use super::{Scalar, Spelled};
use std::fmt;

/// A key such as `ash-white` or `end-check`. A list may grow in a newer version; an older one keeps what it does not know.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(Box<str>);

impl Key {
    /// `None` for anything but 1 to 32 small letters, digits and hyphens.
    pub fn read(text: &str) -> Option<Key> {
        let fits = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
        ((1..=32).contains(&text.len()) && text.bytes().all(fits)).then(|| Key(text.into()))
    }

    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Debug for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Spelled for Key {
    fn spell(&self) -> Scalar<'_> {
        Scalar::of(&*self.0)
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        Key::read(scalar.text()?)
    }
}
