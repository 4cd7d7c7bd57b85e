//! How old the copy is, and what would be lost with this phone: all that was written since.

use crate::bench::Bench;
use crate::ledger::fold::{self, Copy};
use crate::ledger::{Book, Entry, Fact};
use crate::quantity::{Count, Moment, Span};

/// The last copy and what came after it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct CopyAge {
    /// None where no copy was ever kept.
    pub last: Option<Copy>,
    /// Entries written since: all there are, where no copy was kept.
    pub entries: usize,
    /// Pieces counted since, and hours logged.
    pub pieces: Count,
    pub logged: Span,
    /// So much that it is said on every place.
    pub is_much: bool,
}

/// So many entries are said on every place: a long morning at the bins. [J]
const MUCH: usize = 100;
/// So many hours are: a day at the bench. [J]
const MUCH_TIME: Span = Span::minutes(8 * 60);
/// Fewer are after a month. [J]
const LONG: Span = Span::minutes(30 * 24 * 60);
const SOME: usize = 10;

/// What would be lost with this phone.
pub fn copy_age(book: &Book, bench: &Bench, now: Moment) -> CopyAge {
    let last = fold::workshop(book).copy;
    let is_new = |entry: &Entry| last.is_none_or(|copy| copy.upto < entry.stamp.0);
    let (mut entries, mut pieces) = (0usize, 0 as Count);
    for (entry, struck) in book.entries().rev().take_while(|(entry, _)| is_new(entry)) {
        match &entry.fact {
            Fact::CopyKept(_) => continue,
            Fact::PiecesCounted(f) if !struck => pieces = pieces.saturating_add(f.n),
            _ => {}
        }
        entries = entries.saturating_add(1);
    }
    let fresh = bench.runs().filter(|run| book.entry(run.id).is_some_and(|(entry, _)| is_new(entry)));
    let logged = Span::sum(fresh.map(|run| run.worked(now)));
    let is_old = last.is_some_and(|copy| LONG < copy.at.until(now)) && SOME <= entries;
    CopyAge { last, entries, pieces, logged, is_much: MUCH <= entries || MUCH_TIME <= logged || is_old }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::decide::{BookCommand, Command, Now, decide};
    use crate::ledger::{Clock, Device};
    use crate::quantity::Wall;
    use crate::story::{STANDS, tell};

    #[test]
    fn a_copy_leaves_nothing_that_would_be_lost() {
        let mut story = tell(STANDS);
        let age = |book: &Book, now: Moment| copy_age(book, &fold::bench(book), now);
        let before = age(&story.book, story.now.at);
        assert_eq!((before.last, before.pieces, before.is_much), (None, 133, true));
        assert_eq!(before.entries, story.book.len());
        let now = Now { wall: Wall::new(story.now.at.plus(Span::minutes(5)), story.now.offset), chance: [7; 10] };
        let command = Command::Book(BookCommand::NoteCopy { upto: now.wall.at });
        let mut clock = Clock::new(Device::new([9; 8]), story.book.last_stamp());
        for entry in decide(&story.book, &command, now).unwrap().stamped(&mut clock) {
            story.book.add(&entry);
        }
        let kept = age(&story.book, now.wall.at);
        assert_eq!((kept.entries, kept.pieces, kept.logged, kept.is_much), (0, 0, Span::ZERO, false));
        assert!(!age(&story.book, now.wall.at.plus(LONG).plus(LONG)).is_much, "nothing is written, nothing is lost");
    }
}
