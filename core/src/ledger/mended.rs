//! A count that was put right: the line stays as it was written, and the book goes by the last word on it, in the place of the line.

use super::entry::Fact;
use super::kind::haul::{PiecesCounted, PiecesRecounted, PiecesRejected, PiecesSorted, Way};
use super::kind::stock::{CountMended, LeftoversGone, PileCounted};
use crate::quantity::{Count, Id, Key};

/// The fact as it was put right; none where it is no count of that pile.
pub fn mended(fact: &Fact, by: &CountMended) -> Option<Fact> {
    if of_pile(fact)? != (by.haul, by.pile) {
        return None;
    }
    let (n, why) = (by.n, by.why.as_deref());
    let words = |old: &Option<String>| why.map_or(old.clone(), |why| Some(why.to_owned()).filter(|why| !why.is_empty()));
    let key = why.and_then(Key::read);
    Some(match fact.clone() {
        Fact::PiecesCounted(f) => PiecesCounted { n, ..f }.into(),
        Fact::PiecesRecounted(f) => PiecesRecounted { n, why: words(&f.why), ..f }.into(),
        Fact::PileCounted(f) => PileCounted { n, why: words(&f.why), ..f }.into(),
        Fact::PiecesSorted(f) => PiecesSorted { n, ..f }.into(),
        Fact::PiecesRejected(f) => PiecesRejected { n, why: key.unwrap_or_else(|| f.why.clone()), ..f }.into(),
        Fact::LeftoversGone(f) => LeftoversGone { n, to: key.or_else(|| f.to.clone()), ..f }.into(),
        _ => return None,
    })
}

/// Whether it is a count that can be put right. One by weight or by layers comes about by other figures: it is struck, and counted again.
pub fn can_be_mended(fact: &Fact) -> bool {
    match fact {
        Fact::PiecesCounted(f) => matches!(f.way, Way::Tap | Way::Bundle),
        fact => pieces(fact).is_some(),
    }
}

/// The pile a count that can be mended is of, with its haul.
fn of_pile(fact: &Fact) -> Option<(Id, Id)> {
    Some(match fact {
        Fact::PiecesCounted(f) => (f.haul, f.pile),
        Fact::PiecesRecounted(f) => (f.haul, f.pile),
        Fact::PileCounted(f) => (f.haul, f.pile),
        Fact::PiecesSorted(f) => (f.haul, f.pile),
        Fact::PiecesRejected(f) => (f.haul, f.pile),
        Fact::LeftoversGone(f) => (f.haul, f.pile),
        _ => return None,
    })
}

/// The pieces of a count that can be mended.
pub fn pieces(fact: &Fact) -> Option<Count> {
    Some(match fact {
        Fact::PiecesCounted(f) => f.n,
        Fact::PiecesRecounted(f) => f.n,
        Fact::PileCounted(f) => f.n,
        Fact::PiecesSorted(f) => f.n,
        Fact::PiecesRejected(f) => f.n,
        Fact::LeftoversGone(f) => f.n,
        _ => return None,
    })
}
