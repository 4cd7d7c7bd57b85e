//! How old the copy is, and what would be lost with this phone: all that was written since.

use crate::bench::{Bench, Run};
use crate::ledger::fold::Copy;
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
    /// Sales, by galleries too, and what came in ahead of what was agreed.
    pub sales: Count,
    pub deposits: Count,
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

/// What would be lost with this phone, where the last copy is known.
pub fn copy_age(book: &Book, bench: &Bench, last: Option<Copy>, now: Moment) -> CopyAge {
    let is_new = |entry: &Entry| last.is_none_or(|copy| copy.upto < entry.stamp.0);
    let fresh = bench.runs().filter(|run| last.is_none() || book.entry(run.id).is_some_and(|(entry, _)| is_new(entry)));
    // What is to settle is no work before somebody says so.
    let worked = |run: &Run| match bench.in_question(run, now) {
        Some(_) => bench.proven(run, now).map_or(Span::ZERO, |at| run.started.at.until(at)),
        None => run.worked(now),
    };
    let logged = Span::sum(fresh.map(worked));
    let age = CopyAge { last, logged, ..CopyAge::default() };
    let age = book.entries().rev().take_while(|(entry, _)| is_new(entry)).fold(age, |age, (entry, struck)| age.and(entry, struck));
    let is_old = last.is_some_and(|copy| LONG < copy.at.until(now)) && SOME <= age.entries;
    CopyAge { is_much: age.is_much || MUCH_TIME <= logged || is_old, ..age }
}

impl CopyAge {
    /// With one more entry that no copy holds.
    pub fn and(self, entry: &Entry, struck: bool) -> CopyAge {
        let (mut pieces, mut sales, mut deposits) = (self.pieces, self.sales, self.deposits);
        match &entry.fact {
            Fact::CopyKept(_) => return self,
            _ if struck => {}
            Fact::PiecesCounted(f) => pieces = pieces.saturating_add(f.n),
            Fact::PieceSold(_) | Fact::ConsignmentPaid(_) => sales = sales.saturating_add(1),
            Fact::PaymentReceived(f) if f.sale.is_none() => deposits = deposits.saturating_add(1),
            _ => {}
        }
        let entries = self.entries.saturating_add(1);
        CopyAge { entries, pieces, sales, deposits, is_much: self.is_much || MUCH <= entries, ..self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::decide::{BookCommand, Command, Now, decide};
    use crate::ledger::fold;
    use crate::ledger::{Clock, Device};
    use crate::quantity::Wall;
    use crate::story::{STANDS, tell};

    /// An hour of sanding, and a stop that was forgotten over night: before that is answered an hour would be lost.
    #[test]
    fn a_night_that_nobody_answered_for_is_no_work_that_would_be_lost() {
        let told = |more: &str| {
            let day =
                "2026-03-02 09:00 +00:00 workshop EUR metric\njob shelf \"Shelf\" 1 order\n10:00 start \"sand\" make on shelf\n11:00 stop";
            let story = tell(&format!("{day}\n17:00 start \"oil\" make on shelf as oiling\n{more}"));
            assert_eq!(story.refused, []);
            let age = copy_age(&story.book, &fold::bench(&story.book), None, story.now.at);
            (age.logged.as_minutes(), age.is_much)
        };
        assert_eq!(told("2026-03-03 08:00 plan \"saw\" make 5 min for shelf"), (60, false));
        assert_eq!(told("2026-03-03 08:00 stop"), (60, false));
        assert_eq!(told("2026-03-03 08:00 stop\n08:01 confirm run oiling"), (960, true));
    }

    /// What a gallery sold is a sale as any other; one that is struck is none.
    #[test]
    fn a_sale_by_a_gallery_would_be_lost_too() {
        let told = |more: &str| {
            let day = "2026-03-02 09:00 -05:00 workshop USD inch\njob stands \"Stands\" 3 spec\nconsign 2 stands tag 145 share 0.4\n";
            let story = tell(&format!("{day}{more}"));
            assert_eq!(story.refused, []);
            copy_age(&story.book, &fold::bench(&story.book), None, story.now.at).sales
        };
        assert_eq!([told(""), told("gallery pays 82.46 for 1 stands\n"), told("gallery pays 82.46 for 1 stands\nundo\n")], [0, 1, 0]);
        assert_eq!(told("gallery pays 82.46 for 1 stands\nsell 1 stands for 145 notes\n"), 2);
    }

    #[test]
    fn a_copy_leaves_nothing_that_would_be_lost() {
        let mut story = tell(STANDS);
        let age = |book: &Book, now: Moment| copy_age(book, &fold::bench(book), fold::workshop(book).copy, now);
        let before = age(&story.book, story.now.at);
        assert_eq!((before.last, before.pieces, before.sales, before.deposits, before.is_much), (None, 133, 5, 0, true));
        assert_eq!(before.entries, story.book.len());
        let now = Now { wall: Wall::new(story.now.at.plus(Span::minutes(5)), story.now.offset), chance: [7; 10] };
        let command = Command::Book(BookCommand::NoteCopy { upto: now.wall.at });
        let mut clock = Clock::new(Device::new([9; 8]), story.book.last_stamp());
        for entry in decide(&story.book, &command, now).unwrap().stamped(&story.book, &mut clock) {
            story.book.add(&entry);
        }
        let kept = age(&story.book, now.wall.at);
        assert_eq!((kept.entries, kept.pieces, kept.logged, kept.is_much), (0, 0, Span::ZERO, false));
        assert!(!age(&story.book, now.wall.at.plus(LONG).plus(LONG)).is_much, "nothing is written, nothing is lost");
    }
}
