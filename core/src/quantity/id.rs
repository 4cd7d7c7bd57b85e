//! Names of entries and of what they began: UUID version 7 (RFC 9562), made of a moment and chance that come in.

use super::{Moment, Scalar, Spelled};
use std::fmt;
use uuid::{Builder, Uuid};

/// The name of an entry, and of the haul, pile, run or job it began.
// As one number, which orders names as their bytes do; entries are put in order and found by it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(u128);

/// A version 7 name has 48 bits for the moment.
const TIME_MOST: u64 = (1 << 48) - 1;

impl Id {
    /// A version 7 name from the moment and ten bytes of chance. A moment before 1970 or past 10889 counts as the nearer end.
    ///
    /// ```
    /// use fivebar_core::quantity::{Id, Moment};
    /// let id = Id::new(Moment::at(1_645_557_742_000), [0; 10]);
    /// assert_eq!(id.to_string(), "017f22e2-79b0-7000-8000-000000000000");
    /// ```
    pub fn new(at: Moment, chance: [u8; 10]) -> Id {
        let ms = u64::try_from(at.ms()).unwrap_or(0).min(TIME_MOST);
        Id(Builder::from_unix_timestamp_millis(ms, &chance).into_uuid().as_u128())
    }

    /// Reads the hyphenated lower-case form; `None` for anything else.
    pub fn read(text: &str) -> Option<Id> {
        // Of the forms that are read, one has 36 letters.
        let spelled = text.len() == 36 && !text.bytes().any(|b| b.is_ascii_uppercase());
        if spelled { Uuid::try_parse(text).ok().map(|name| Id(name.as_u128())) } else { None }
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", Uuid::from_u128(self.0).as_hyphenated())
    }
}

impl fmt::Debug for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self}")
    }
}

impl Spelled for Id {
    fn spell(&self) -> Scalar<'_> {
        Scalar::of(self.to_string())
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        Id::read(scalar.text()?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The example of RFC 9562, appendix A.6: 2022-02-22 14:22:22.000 -05:00.
    #[test]
    fn makes_the_example_of_rfc_9562() {
        let chance = [0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f];
        let id = Id::new(Moment::at(1_645_557_742_000), chance);
        assert_eq!(id.to_string(), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
        assert_eq!(Id::read("017f22e2-79b0-7cc3-98c4-dc0c0c07398f"), Some(id));
    }

    #[test]
    fn inv08_a_moment_past_its_ends_does_not_wrap() {
        let name = |ms| Id::new(Moment::at(ms), [0; 10]).to_string();
        assert_eq!((name(-1), name(i64::MAX)), (name(0), name((1 << 48) - 1)));
        assert!(name(i64::MAX).starts_with("ffffffff-ffff-7"));
    }

    #[test]
    fn other_forms_are_no_name() {
        for text in
            ["", "017F22E2-79B0-7CC3-98C4-DC0C0C07398F", "017f22e279b07cc398c4dc0c0c07398f", "{017f22e2-79b0-7cc3-98c4-dc0c0c07398f}"]
        {
            assert_eq!(Id::read(text), None, "{text}");
        }
    }
}
