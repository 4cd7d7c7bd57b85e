//! What was struck of the pieces that were noted in a run, and what was noted instead.

use crate::bench::Notch;
use crate::ledger::{Book, Entry, Fact};
use crate::quantity::{Count, Id, Listed, Wall, order_by_key};

/// Pieces noted in a run that one act struck.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StruckPieces {
    /// When they were struck.
    pub at: Wall,
    pub marks: Vec<Notch>,
    /// So many were noted instead.
    pub anew: Count,
}

/// What pieces of a run are struck, the first act first. What was noted in the place of others is no more once
/// they stand again.
pub fn struck_pieces(book: &Book, run: Id) -> Vec<StruckPieces> {
    let mark = |entry: &Entry| match &entry.fact {
        Fact::PiecesDone(f) if f.run == run => Some(Notch { id: entry.id, at: entry.at(), n: f.n }),
        _ => None,
    };
    let mut left = book.struck().into_iter().filter_map(mark).listed();
    let mut found = vec![];
    for (entry, _) in book.entries().rev() {
        if left.is_empty() {
            break;
        }
        let Fact::Struck(f) = &entry.fact else { continue };
        let (marks, others): (Vec<Notch>, Vec<Notch>) = left.into_iter().partition(|mark| f.entries.contains(&mark.id));
        left = others;
        let noted = noted(book, entry);
        if !marks.is_empty() && !takes_back(book, &f.entries) && noted.iter().all(|(of, _)| *of == run) {
            let anew = noted.iter().fold(0, |sum: Count, (_, n)| sum.saturating_add(*n));
            found.push(StruckPieces { at: entry.wall, marks, anew });
        }
    }
    found.reverse();
    found
}

/// The same that can be put back, by their time: none was noted instead.
pub fn can_be_put_back(book: &Book, run: Id) -> Vec<Notch> {
    let mut marks = struck_pieces(book, run).into_iter().filter(|it| it.anew == 0).flat_map(|it| it.marks).listed();
    order_by_key(&mut marks, |mark| mark.at);
    marks
}

/// The facts of the act of an entry.
fn of_act<'a>(book: &'a Book, entry: &Entry) -> impl Iterator<Item = &'a Fact> {
    let act = entry.act.map(|act| book.act(act)).unwrap_or_default();
    act.into_iter().filter_map(|id| book.entry(id)).map(|(entry, _)| &entry.fact)
}

/// Whether what was struck with them stands again by it.
fn takes_back(book: &Book, entries: &[Id]) -> bool {
    entries.iter().any(|id| book.entry(*id).is_some_and(|(entry, _)| matches!(entry.fact, Fact::Struck(_))))
}

/// Pieces that the act of an entry noted, by their run.
fn noted(book: &Book, entry: &Entry) -> Vec<(Id, Count)> {
    of_act(book, entry).filter_map(|fact| if let Fact::PiecesDone(f) = fact { Some((f.run, f.n)) } else { None }).listed()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::On;
    use crate::ledger::decide::{BenchCommand, BookCommand, Command};
    use crate::ledger::told::{Phone, at};

    /// When it was struck, the pieces of each mark and when they were noted, and those noted instead.
    type Told = (i64, Vec<(i64, Count)>, Count);

    fn told(phone: &Phone, run: Id) -> Vec<Told> {
        let minute = |moment| at(0).until(moment).as_minutes();
        let marks = |it: &StruckPieces| it.marks.iter().map(|mark| (minute(mark.at), mark.n)).listed();
        struck_pieces(&phone.book, run).iter().map(|it| (minute(it.at.at), marks(it), it.anew)).listed()
    }

    #[test]
    fn what_was_struck_of_the_pieces_of_a_run() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "saw", On::Nothing);
        let [first, ..] = [(10, 1), (20, 2), (30, 3)].map(|(minute, n)| phone.bench(minute, BenchCommand::Done { run, n }).unwrap());
        phone.stop(100, run);
        assert_eq!(told(&phone, run), []);
        phone.take_back(110, first);
        assert_eq!(told(&phone, run), [(110, vec![(10, 1)], 0)]);
        // Of five four: the last mark goes, and two are noted instead.
        phone.bench(120, BenchCommand::DoneInAll { run, n: 4 }).unwrap();
        assert_eq!(told(&phone, run), [(110, vec![(10, 1)], 0), (120, vec![(30, 3)], 2)]);
        assert_eq!(can_be_put_back(&phone.book, run).iter().map(|mark| mark.id).listed(), [first]);
        phone.order(130, Command::Book(BookCommand::Restore { act: first })).unwrap();
        assert_eq!(told(&phone, run), [(120, vec![(30, 3)], 2)]);
        assert_eq!(phone.runs().run(run).unwrap().done(), 5);
        // Of five three: what was noted instead goes in turn, and comes again whole where that is taken back.
        let fewer = phone.bench(140, BenchCommand::DoneInAll { run, n: 3 }).unwrap();
        let by = phone.book.entry(fewer).and_then(|(entry, _)| entry.act).unwrap_or(fewer);
        assert_eq!(told(&phone, run)[1..], [(140, vec![(120, 2)], 0)]);
        phone.take_back(150, by);
        phone.bench(160, BenchCommand::DoneInAll { run, n: 4 }).unwrap();
        assert_eq!(told(&phone, run)[1..], [(160, vec![(120, 2)], 1)]);
        let by = phone.book.entries().last().and_then(|(entry, _)| entry.act).unwrap();
        phone.take_back(170, by);
        assert_eq!((told(&phone, run), phone.runs().run(run).unwrap().done()), (vec![(120, vec![(30, 3)], 2)], 5));
    }

    /// A break strikes none.
    #[test]
    fn a_break_strikes_no_pieces() {
        let mut phone = Phone::new("a");
        let run = phone.start(0, "saw", On::Nothing);
        phone.bench(80, BenchCommand::Done { run, n: 2 }).unwrap();
        phone.stop(100, run);
        phone.bench(110, BenchCommand::Break { run, from: at(20), to: at(40) }).unwrap();
        assert_eq!((told(&phone, run), phone.runs().runs().map(|run| run.done()).listed()), (vec![], vec![2, 0]));
    }
}
