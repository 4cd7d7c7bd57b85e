//! What was written about one pile, line by line: its history, and when it was last in a hand.

use crate::ledger::{Book, Entry, Fact, Subject};
use crate::quantity::{Id, Wall};

/// Every standing entry that names a pile, the oldest first.
pub fn of_pile(book: &Book, haul: Id, pile: Id) -> impl DoubleEndedIterator<Item = &Entry> {
    book.about(Subject::Haul(haul)).filter(move |entry| piles_of(entry).contains(&Some(pile)))
}

/// When its pieces were last in a hand: counted, moved, sorted, taken, gone, measured or looked at where they lie. A name, a size, a
/// wish or a job's name on it is written anywhere, and tells nothing of what lies there.
pub fn last_touched(book: &Book, haul: Id, pile: Id) -> Option<Wall> {
    let told = |entry: &&Entry| {
        !matches!(
            entry.fact,
            Fact::PileDescribed(_)
                | Fact::EnoughSet(_)
                | Fact::PiecesReserved(_)
                | Fact::ReservationFreed(_)
                | Fact::PilePiecesWeighed(_)
                | Fact::CountMended(_)
        )
    };
    of_pile(book, haul, pile).filter(told).map(|entry| entry.wall).max_by_key(|wall| wall.at)
}

/// The piles a fact is about: two where pieces moved.
pub fn piles_of(entry: &Entry) -> [Option<Id>; 2] {
    let one = match &entry.fact {
        Fact::PiecesMoved(f) => return [Some(f.from), Some(f.to)],
        Fact::PileAdded(_) => entry.id,
        Fact::PileDescribed(f) => f.pile,
        Fact::PiecesCounted(f) => f.pile,
        Fact::PiecesRecounted(f) => f.pile,
        Fact::PiecesSorted(f) => f.pile,
        Fact::PiecesRejected(f) => f.pile,
        Fact::RejectsReturned(f) => f.pile,
        Fact::PiecesTaken(f) => f.pile,
        Fact::PiecesFreed(f) => f.pile,
        Fact::PilePiecesWeighed(f) => f.pile,
        Fact::PileLayersCounted(f) => f.pile,
        Fact::PieceMeasured(f) => f.pile,
        Fact::EnoughSet(f) => f.pile,
        Fact::MoistureRead(f) => f.pile,
        Fact::PileCounted(f) => f.pile,
        Fact::PilePlaced(f) => f.pile,
        Fact::PiecesReserved(f) => f.pile,
        Fact::ReservationFreed(f) => f.pile,
        Fact::LeftoversGone(f) => f.pile,
        Fact::CountMended(f) => f.pile,
        _ => return [None, None],
    };
    [Some(one), None]
}
