//! When pieces were done: what a break took along to the rest of its run was noted before, and is of that moment still.

use crate::ledger::{Book, Entry, Fact};
use crate::quantity::{Listed, Moment};

/// The moment of which noted pieces are. Such as the act of a break noted anew are of the moment of those they stand for, and never before
/// the rest of the run begins.
pub fn noted_at(book: &Book, entry: &Entry) -> Option<Moment> {
    let (mut noted, mut least) = (entry, None);
    while let Some((before, start)) = taken_along(book, noted) {
        (noted, least) = (before, least.max(Some(start)));
    }
    least.map(|least| noted.at().max(least))
}

/// The pieces in whose place the act of a break noted these, and when the rest of the run begins; none where they were noted for themselves.
fn taken_along<'a>(book: &'a Book, noted: &Entry) -> Option<(&'a Entry, Moment)> {
    let (Fact::PiecesDone(f), Some(act)) = (&noted.fact, noted.act) else { return None };
    let (rest, _) = book.entry(f.run).filter(|(run, _)| run.act == Some(act))?;
    let Fact::RunRecalled(rest) = &rest.fact else { return None };
    let facts = book.act(act).into_iter().filter_map(|id| book.entry(id)).map(|(entry, _)| entry).listed();
    let is_noted = |entry: &&Entry| matches!(entry.fact, Fact::PiecesDone(_));
    let nth = facts.iter().copied().filter(is_noted).position(|one| one.id == noted.id)?;
    let struck = facts.iter().filter_map(|entry| if let Fact::Struck(f) = &entry.fact { Some(&f.entries) } else { None }).flatten();
    let before = struck.filter_map(|id| book.entry(*id)).map(|(entry, _)| entry).filter(is_noted).nth(nth)?;
    (before.stamp < noted.stamp).then_some((before, rest.start))
}
