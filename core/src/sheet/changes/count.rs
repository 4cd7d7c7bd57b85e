//! What was put right of a count, and when.

use crate::ledger::{Book, Entry, Fact, Subject, mended};
use crate::quantity::{Count, Id, Wall};

/// What was said of a count since.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OfCount {
    /// Its number was put right.
    Mended { was: Count, n: Count },
    /// It was struck, and is so still.
    Struck,
}

/// What was changed of a count by its entry, the first word first, each with when it was said.
pub fn of_count(book: &Book, count: Id) -> Vec<(Wall, OfCount)> {
    let mut found = vec![];
    let Some((written, (entry, struck))) = book.written(count).zip(book.entry(count)) else { return found };
    if let Some((mut was, (haul, _))) = mended::pieces(&written.fact).zip(mended::of_pile(&entry.fact)) {
        let mend = |entry: &Entry| match &entry.fact {
            Fact::CountMended(f) if f.entry == count => Some((entry.wall, f.n)),
            _ => None,
        };
        for (at, n) in book.about(Subject::Haul(haul)).filter_map(mend) {
            found.extend((was != n).then_some((at, OfCount::Mended { was, n })));
            was = n;
        }
    }
    let strikes = |entry: &&Entry| matches!(&entry.fact, Fact::Struck(f) if f.entries.contains(&count));
    let by = book.entries().rev().map(|(entry, _)| entry).find(strikes);
    found.extend(by.filter(|_| struck).map(|by| (by.wall, OfCount::Struck)));
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::kind::haul::{HaulBegan, PiecesTaken, PileAdded};
    use crate::ledger::kind::stock::CountMended;
    use crate::ledger::told::{Phone, at};
    use crate::quantity::{Currency, Units};

    #[test]
    fn each_word_on_a_count_is_told_with_what_it_was() {
        let mut phone = Phone::new("a");
        let haul = phone.note(0, HaulBegan { currency: Currency::USD, units: Units::Inch, name: None });
        let (label, wood, name) = ("A".into(), None, None);
        let pile = phone.note(1, PileAdded { haul, label, wood, name, thickness: None, width: None, length: None, length_to: None });
        let took = phone.note(10, PiecesTaken { haul, pile, job: haul, n: 5 });
        let mend = |phone: &mut Phone, minute, n| phone.note(minute, CountMended { haul, pile, entry: took, n, why: None });
        let told = |phone: &Phone| {
            of_count(&phone.book, took).into_iter().map(|(wall, it)| (at(0).until(wall.at).as_minutes(), it)).collect::<Vec<_>>()
        };
        assert_eq!(told(&phone), []);
        let first = mend(&mut phone, 20, 4);
        mend(&mut phone, 30, 3);
        let mended = |was, n| OfCount::Mended { was, n };
        assert_eq!(told(&phone), [(20, mended(5, 4)), (30, mended(4, 3))]);
        phone.take_back(40, first);
        assert_eq!(told(&phone), [(30, mended(5, 3))], "a word that was taken back is no change");
        phone.take_back(50, took);
        assert_eq!(told(&phone), [(30, mended(5, 3)), (50, OfCount::Struck)]);
    }
}
