//! The ledger: every fact as an entry, folded into a book. It holds facts and computes no price.
//!
//! Carries invariants 1, 2, 3, 5 and 10: entries are the truth, only added, and any order of arrival gives the same book.

pub mod book;
pub mod damage;
pub mod decide;
pub mod entry;
pub mod fold;
pub mod kind;
pub mod line;
pub mod mended;
pub mod merge;
pub mod people;
mod places;
pub mod stamp;
mod subjects;
#[cfg(test)]
pub(crate) mod told;

pub use book::{Book, Subject};
pub use damage::Damage;
pub use entry::{Entry, Fact};
pub use stamp::{Clock, Device, Stamp};
