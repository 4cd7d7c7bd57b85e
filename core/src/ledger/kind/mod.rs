//! The members of every kind of entry, one file per room. A released kind is never edited: see docs/STORAGE.md.

mod spelling;

pub mod bench;
pub mod book;
pub mod dates;
pub mod estimate;
pub mod haul;
pub mod job;
pub mod money;
pub mod plan;
pub mod sale;
pub mod stock;
pub mod wait;
pub mod wood;

pub use spelling::Exact;

/// Writes kinds as structs: members before the semicolon are always there, those behind it may be missing.
macro_rules! kinds {
    ($($(#[$about:meta])* $name:ident { $($must:ident: $must_type:ty),* ; $($may:ident: $may_type:ty),* })+) => {
        $(
            $(#[$about])*
            #[derive(Clone, Debug, PartialEq)]
            pub struct $name {
                $(pub $must: $must_type,)*
                $(pub $may: Option<$may_type>,)*
            }

            impl crate::ledger::line::Member for $name {
                fn read(tree: &crate::ledger::line::Tree<'_>) -> Option<Self> {
                    Some($name {
                        $($must: tree.must(stringify!($must))?,)*
                        $($may: tree.may(stringify!($may))?,)*
                    })
                }
                fn write(&self) -> crate::ledger::line::Tree<'_> {
                    crate::ledger::line::Tree::members(vec![
                        $((stringify!($must), Some(crate::ledger::line::Member::write(&self.$must))),)*
                        $((stringify!($may), self.$may.as_ref().map(crate::ledger::line::Member::write)),)*
                    ])
                }
            }
        )+
    };
}
pub(crate) use kinds;
