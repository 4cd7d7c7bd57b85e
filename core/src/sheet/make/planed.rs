//! What is left of boards that a plan had planed before they were cut: it is thinner than the boards were.

use crate::ledger::decide::Lying;
use crate::ledger::{Book, Fact, Subject, fold};
use crate::quantity::{Length, Listed};
use crate::sheet::rack::RackPile;

/// Whether a pile on the rack is nothing but planed rests.
pub(super) fn is_planed(book: &Book, pile: &RackPile) -> bool {
    pile.rests && planed_from(book, Lying { haul: pile.haul, pile: pile.pile }).is_some()
}

/// How thick the boards were of which a pile holds nothing but planed rests; none where it is as thick as they were, or holds others.
pub fn planed_from(book: &Book, at: Lying) -> Option<Length> {
    let haul = fold::haul(book, at.haul)?;
    let pile = haul.pile(at.pile).filter(|pile| 0 < pile.left && pile.left == pile.taken)?;
    let into = |fact: &Fact| if let Fact::PiecesLeft(f) = fact { (f.pile == at.pile).then_some(f.of) } else { None };
    let of = book.about(Subject::Haul(at.haul)).filter_map(|entry| into(&entry.fact)).listed();
    let thick = of.iter().map(|of| haul.pile(*of)?.thickness).collect::<Option<Vec<_>>>()?;
    thick.into_iter().min().filter(|rough| pile.thickness.is_some_and(|now| now < *rough))
}
