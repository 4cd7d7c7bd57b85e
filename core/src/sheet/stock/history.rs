//! The history of a pile as lines, the newest first; taps of one kind on one day stand in one line.

use crate::ledger::decide::Lying;
use crate::ledger::fold::of_pile;
use crate::ledger::kind::haul::Way;
use crate::ledger::mended;
use crate::ledger::{Book, Entry, Fact};
use crate::quantity::{Count, Id, Wall};
use std::rc::Rc;

/// One line of a pile's history.
#[derive(Clone, Debug, PartialEq)]
pub struct Line<'a> {
    /// The entry, or the latest of several.
    pub entry: Id,
    pub at: Wall,
    pub fact: &'a Fact,
    /// The pieces of all its taps, where it counts pieces.
    pub n: Count,
    /// It can be struck by itself: one count or one fact that belongs to no larger act, and not the pile's beginning.
    pub can_be_struck: bool,
    /// Its number or its reason can be put right.
    pub can_be_mended: bool,
    /// As it was written, where it was put right since.
    pub was: Option<Rc<Entry>>,
    /// The single acts where it stands for several, the newest first.
    pub acts: Vec<Line<'a>>,
}

/// What was done with a pile, the newest first.
pub fn history(book: &Book, at: Lying) -> Vec<Line<'_>> {
    let mut lines: Vec<Line<'_>> = vec![];
    for entry in of_pile(book, at.haul, at.pile).filter(|entry| tells(&entry.fact)) {
        match lines.last_mut().filter(|last| goes_with(last, entry)) {
            Some(last) => last.takes_in(single(book, entry)),
            None => lines.push(single(book, entry)),
        }
    }
    lines.iter_mut().for_each(|line| line.acts.reverse());
    lines.reverse();
    lines
}

fn single<'a>(book: &Book, entry: &'a Entry) -> Line<'a> {
    let (fact, n) = (&entry.fact, pieces(&entry.fact));
    let was = book.written(entry.id).filter(|written| written.fact != *fact);
    let can_be_mended = mended::can_be_mended(book, entry);
    Line { entry: entry.id, at: entry.wall, fact, n, can_be_struck: stands_alone(entry), can_be_mended, was, acts: vec![] }
}

impl<'a> Line<'a> {
    fn takes_in(&mut self, act: Line<'a>) {
        // What a plan left of a pile is one act, in however many facts.
        if let Fact::PiecesLeft(_) = act.fact {
            self.n = self.n.saturating_add(act.n);
            return;
        }
        if self.acts.is_empty() {
            self.acts.push(self.clone());
        }
        (self.entry, self.at, self.can_be_struck, self.can_be_mended, self.was) = (act.entry, act.at, false, false, None);
        self.n = self.n.saturating_add(act.n);
        self.acts.push(act);
    }
}

/// A count by weight or by layers is one act with how it came about.
fn stands_alone(entry: &Entry) -> bool {
    match (&entry.fact, entry.act) {
        (Fact::PileAdded(_), _) => false,
        (Fact::PiecesCounted(_), Some(act)) => act == entry.id,
        (_, act) => act.is_none(),
    }
}

/// How a count came about stands beside the count already, and what was mended in its place.
fn tells(fact: &Fact) -> bool {
    !matches!(fact, Fact::PileLayersCounted(_) | Fact::PilePiecesWeighed(_) | Fact::CountMended(_))
}

fn goes_with(last: &Line<'_>, entry: &Entry) -> bool {
    let alike = match (last.fact, &entry.fact) {
        // A count by weight or by layers has figures of its own.
        (Fact::PiecesCounted(one), Fact::PiecesCounted(other)) => [one, other].iter().all(|f| matches!(f.way, Way::Tap | Way::Bundle)),
        (Fact::PiecesSorted(_), Fact::PiecesSorted(_)) => true,
        (Fact::PiecesLeft(one), Fact::PiecesLeft(other)) => (one.of, one.job, last.at) == (other.of, other.job, entry.wall),
        (Fact::PiecesRejected(one), Fact::PiecesRejected(other)) => one.why == other.why,
        _ => false,
    };
    alike && last.at.day() == entry.wall.day()
}

fn pieces(fact: &Fact) -> Count {
    match fact {
        Fact::PiecesCounted(f) => f.n,
        Fact::PiecesMoved(f) => f.n,
        Fact::PiecesRecounted(f) => f.n,
        Fact::PiecesSorted(f) => f.n,
        Fact::PiecesRejected(f) => f.n,
        Fact::RejectsReturned(f) => f.n,
        Fact::PiecesTaken(f) => f.n,
        Fact::PiecesFreed(f) => f.n,
        Fact::PiecesLeft(f) => f.n,
        Fact::PileCounted(f) => f.n,
        Fact::PiecesReserved(f) => f.n,
        Fact::ReservationFreed(f) => f.n,
        Fact::LeftoversGone(f) => f.n,
        _ => 0,
    }
}
