//! How a quantity stands in an entry: as a text, a whole number, or yes and no, with exactly one spelling.

use std::borrow::Cow;

/// What a member of an entry may be, lists and members apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Scalar<'a> {
    Text(Cow<'a, str>),
    Whole(i64),
    Yes(bool),
}

impl<'a> Scalar<'a> {
    /// The text, if it is one.
    pub fn text(&self) -> Option<&str> {
        if let Scalar::Text(text) = self { Some(text) } else { None }
    }

    pub fn whole(&self) -> Option<i64> {
        if let Scalar::Whole(whole) = self { Some(*whole) } else { None }
    }

    /// A text that was just spelled.
    pub fn of(text: impl Into<Cow<'a, str>>) -> Scalar<'a> {
        Scalar::Text(text.into())
    }
}

/// A quantity that stands in an entry.
pub trait Spelled: Sized {
    fn spell(&self) -> Scalar<'_>;
    /// `None` for anything but the one spelling.
    fn unspell(scalar: &Scalar<'_>) -> Option<Self>;
}

/// Spells the cases of a closed list by a key each.
macro_rules! spelled {
    ($name:ident: $($case:ident $key:literal),+ $(,)?) => {
        impl crate::quantity::Spelled for $name {
            fn spell(&self) -> crate::quantity::Scalar<'_> {
                crate::quantity::Scalar::of(match self { $($name::$case => $key,)+ })
            }
            fn unspell(scalar: &crate::quantity::Scalar<'_>) -> Option<Self> {
                match scalar.text()? { $($key => Some($name::$case),)+ _ => None }
            }
        }
    };
}
pub(crate) use spelled;

impl Spelled for String {
    fn spell(&self) -> Scalar<'_> {
        Scalar::of(self.as_str())
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        scalar.text().map(str::to_owned)
    }
}

impl Spelled for bool {
    fn spell(&self) -> Scalar<'_> {
        Scalar::Yes(*self)
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        if let Scalar::Yes(yes) = scalar { Some(*yes) } else { None }
    }
}

impl Spelled for u32 {
    fn spell(&self) -> Scalar<'_> {
        Scalar::Whole(i64::from(*self))
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        u32::try_from(scalar.whole()?).ok()
    }
}

impl Spelled for i64 {
    fn spell(&self) -> Scalar<'_> {
        Scalar::Whole(*self)
    }
    fn unspell(scalar: &Scalar<'_>) -> Option<Self> {
        scalar.whole()
    }
}
