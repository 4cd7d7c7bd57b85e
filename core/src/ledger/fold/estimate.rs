//! Estimates as they were given, and old jobs that count as history, from their entries.

use crate::ledger::kind::estimate::{EstimateMade, OldJobTold};
use crate::ledger::{Book, Entry, Fact};
use crate::quantity::{Count, Decimal, Id, Key, Money, Span, Wall, in_small};

/// An estimate as it was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kept {
    pub at: Wall,
    pub low: Span,
    pub likely: Span,
    pub high: Span,
    /// What was thought, before the factor.
    pub thought: Option<Span>,
    pub factor: Option<Decimal>,
    /// Jobs the factor was learnt from.
    pub jobs: Option<Count>,
    pub allowance: Option<Decimal>,
}

/// A job from before the book, as the maker told it.
#[derive(Clone, Debug, PartialEq)]
pub struct OldJob {
    pub entry: Id,
    /// The entry by which it was first told, before it was put right.
    pub first: Id,
    pub name: String,
    pub span: Span,
    /// What was thought of it.
    pub thought: Option<Span>,
    pub sum: Option<Money>,
    pub piece: Option<Key>,
    pub pieces: Count,
    /// The job it was told for: of its kind of piece where none was told.
    pub told_for: Option<Id>,
}

impl Kept {
    /// One whose figures do not lie in their order says nothing.
    pub(super) fn of(entry: &Entry, f: &EstimateMade) -> Option<Kept> {
        let sound = Span::ZERO < f.low && f.low <= f.likely && f.likely <= f.high;
        let thought = f.thought.filter(|thought| Span::ZERO < *thought);
        let [factor, allowance] = [f.factor, f.allowance].map(|exact| exact.map(|exact| exact.0));
        let (low, likely, high, jobs) = (f.low, f.likely, f.high, f.jobs);
        sound.then_some(Kept { at: entry.wall, low, likely, high, thought, factor, jobs, allowance })
    }
}

impl OldJob {
    /// It was told in just these words.
    pub fn is_so(&self, told: &OldJobTold) -> bool {
        let (name, n) = (told.name.trim(), told.pieces.unwrap_or(1).max(1));
        let figures = (self.span, self.thought, self.sum, n) == (told.span, told.thought, told.sum, self.pieces);
        self.name == name && figures && self.piece == told.piece
    }

    /// What it took of what was thought, where that is known.
    pub fn ratio(&self) -> Option<Decimal> {
        Decimal::from(self.span.as_ms()).checked_div(Decimal::from(self.thought?.as_ms()))
    }
}

/// The same name replaces an old job, and so does what puts the same right; one that took no time is none.
pub(super) fn told(old: &mut Vec<OldJob>, entry: &Entry, f: &OldJobTold) {
    let (name, first) = (in_small(f.name.trim()), f.first.unwrap_or(entry.id));
    old.retain(|there| there.first != first && in_small(there.name.trim()) != name);
    if Span::ZERO < f.span {
        let pieces = f.pieces.unwrap_or(1).max(1);
        let (name, span, thought) = (f.name.clone(), f.span, f.thought.filter(|thought| Span::ZERO < *thought));
        old.push(OldJob { entry: entry.id, first, name, span, thought, sum: f.sum, piece: f.piece.clone(), pieces, told_for: f.told_for });
    }
}

/// Old jobs that were struck, or taken back, as they were told last; none of which another telling stands.
pub fn struck_old_jobs(book: &Book, standing: &[OldJob]) -> Vec<OldJob> {
    let mut struck = vec![];
    for entry in book.struck() {
        if let Fact::OldJobTold(f) = &entry.fact {
            told(&mut struck, entry, f);
        }
    }
    let stands = |old: &OldJob| standing.iter().any(|other| other.first == old.first || in_small(&other.name) == in_small(&old.name));
    struck.retain(|old| !stands(old));
    struck
}
