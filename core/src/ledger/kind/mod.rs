//! The members of every kind of entry, one file per room. A released kind is never edited: see docs/STORAGE.md.

mod spelling;

pub mod bench;
pub mod book;
pub mod haul;
pub mod job;
pub mod money;
pub mod sale;

pub use spelling::Exact;

/// Writes kinds as structs: members before the semicolon are always there, those behind it may be missing.
macro_rules! kinds {
    ($($(#[$about:meta])* $name:ident { $($(#[$must_about:meta])* $must:ident: $must_type:ty),* ; $($(#[$may_about:meta])* $may:ident: $may_type:ty),* })+) => {
        $(
            $(#[$about])*
            #[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
            pub struct $name {
                $($(#[$must_about])* pub $must: $must_type,)*
                $($(#[$may_about])* #[serde(default, skip_serializing_if = "Option::is_none")] pub $may: Option<$may_type>,)*
            }
        )+
    };
}
pub(crate) use kinds;
