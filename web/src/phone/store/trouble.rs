//! Why the store did not do what it was asked: a closed list, told apart by the platform's own names alone.
use crate::phone::name_of;
use wasm_bindgen::prelude::*;

/// Why the store did not do what it was asked. Nothing of a failed write is saved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// The device has no room left.
    Full,
    /// An entry of that id is saved already, with other bytes.
    Known,
    /// A newer version of the app holds the book.
    Newer,
    /// The platform has no store, as in some private windows.
    NoStore,
    /// Another tab still holds the book; it goes on when that one lets go.
    Blocked,
    /// The platform dropped the book and it could not be opened again.
    Lost,
    /// The platform took the write back and gave no cause.
    Aborted,
    /// The app stopped all writing after a fault; a reload opens the book again.
    Stopped,
    /// The platform refused, by its own name for the reason.
    Refused { name: String },
}

impl Trouble {
    /// The trouble behind one of the platform's names for what went wrong.
    pub fn named(name: &str) -> Self {
        match name {
            "QuotaExceededError" => Trouble::Full,
            "ConstraintError" => Trouble::Known,
            "VersionError" => Trouble::Newer,
            "SecurityError" => Trouble::NoStore,
            "InvalidStateError" | "UnknownError" => Trouble::Lost,
            "AbortError" => Trouble::Aborted,
            name => Trouble::Refused { name: name.into() },
        }
    }
}

impl From<JsValue> for Trouble {
    fn from(thrown: JsValue) -> Self {
        Trouble::named(&name_of(&thrown))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_name_the_platform_uses_has_its_trouble() {
        for (name, trouble) in [
            ("QuotaExceededError", Trouble::Full),
            ("ConstraintError", Trouble::Known),
            ("VersionError", Trouble::Newer),
            ("SecurityError", Trouble::NoStore),
            ("InvalidStateError", Trouble::Lost),
            ("UnknownError", Trouble::Lost),
            ("AbortError", Trouble::Aborted),
        ] {
            assert_eq!(Trouble::named(name), trouble);
        }
        assert_eq!(Trouble::named("DataError"), Trouble::Refused { name: "DataError".into() }, "an unknown name is kept as a fact");
    }
}
