//! What an act took back, or made stand again: an act that does nothing else is told by the other.

use super::book::whole;
use crate::ledger::{Book, Entry, Fact};
use crate::quantity::{Id, Listed};

/// An act, or the payment of a sale, that another took back, or made stand again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turned {
    TakenBack(Id),
    StandsAgain(Id),
}

/// What an act turned; none where it did anything of its own, or turned less than a whole act but for the payment of a sale.
pub fn turned(book: &Book, act: Id) -> Option<Turned> {
    let facts = book.act(act).into_iter().filter_map(|id| book.entry(id)).map(|(entry, _)| &entry.fact).listed();
    let (entries, stands) = match facts.first()? {
        Fact::Struck(f) => (&f.entries, false),
        Fact::Restored(f) => (&f.entries, true),
        _ => return None,
    };
    // With a plan goes what was put back for it, and what it put back comes again.
    let of_plan = entries.iter().any(|id| is(book, *id, |fact| matches!(fact, Fact::PlanUsed(_))));
    let follows = |fact: &&Fact| match fact {
        Fact::Struck(_) | Fact::Restored(_) => true,
        Fact::PiecesFreed(_) => of_plan,
        _ => false,
    };
    let first = *entries.first()?;
    let act = book.entry(first)?.0.act;
    let is_payment = entries.iter().all(|id| is(book, *id, |fact| matches!(fact, Fact::PaymentReceived(_))));
    let is_some = is_payment && act.is_some_and(|act| is_within(book, act, entries));
    let whole = act.into_iter().chain([first]).find(|of| is_whole(book, *of, (entries, of_plan)));
    // A payment of a sale is struck without it, and goes by its own name.
    let of = whole.or(Some(first).filter(|_| is_some))?;
    facts.iter().all(follows).then_some(if stands { Turned::StandsAgain(of) } else { Turned::TakenBack(of) })
}

/// They are all of one act, and need not be all of it.
fn is_within(book: &Book, act: Id, entries: &[Id]) -> bool {
    let whole = whole(book, act).unwrap_or_default();
    entries.iter().all(|id| whole.contains(id))
}

/// All of an act is there, and nothing else. A pile that another needs stays, or comes with it.
fn is_whole(book: &Book, act: Id, (entries, of_plan): (&[Id], bool)) -> bool {
    let is_pile = |id: &Id| is(book, *id, |fact| matches!(fact, Fact::PileAdded(_)));
    let whole = whole(book, act).unwrap_or_default();
    let is_all = !whole.is_empty() && whole.iter().all(|id| entries.contains(id) || is_pile(id));
    is_all && entries.iter().all(|id| whole.contains(id) || is_pile(id) || of_plan)
}

fn is(book: &Book, id: Id, what: fn(&Fact) -> bool) -> bool {
    book.entry(id).is_some_and(|(Entry { fact, .. }, _)| what(fact))
}
