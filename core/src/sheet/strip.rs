//! The amber strip on every place but the bench: what runs, and for how long.

use crate::bench::{Bench, On};
use crate::ledger::{Book, fold};
use crate::quantity::{Id, Span, Wall};

/// What runs.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    pub run: Id,
    pub op: String,
    pub on: On,
    pub name: Option<String>,
    pub worked: Span,
}

/// The strip of a person; none while nothing runs.
pub fn strip(book: &Book, person: Option<Id>, now: Wall) -> Option<Strip> {
    strip_of(&fold::bench(book), book, person, now)
}

/// The same from a bench that was folded already.
pub fn strip_of(bench: &Bench, book: &Book, person: Option<Id>, now: Wall) -> Option<Strip> {
    let run = bench.running(person)?;
    let (op, on) = (run.work.op.clone(), run.work.on);
    Some(Strip { run: run.id, op, on, name: fold::name_of(book, on), worked: run.worked(now.at) })
}
