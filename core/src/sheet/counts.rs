//! What was counted on a day: pieces onto piles, again and on the rack, sorted, to a job and back, gone and left over, each count with its
//! taps.

use super::count::{Tile, tile};
use crate::haul::Haul;
use crate::ledger::decide::Lying;
use crate::ledger::{Book, Entry, Fact, fold, mended};
use crate::quantity::{Count, Day, Id, Listed, Sorted, Wall, order_by_key};

/// What pieces were counted for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Counting {
    /// Onto a pile.
    Taken,
    /// Sorted as good.
    Good,
    Rejected,
    /// From the rack to a job.
    ToJob,
    /// From a job back to the rack.
    Freed,
    /// All of the pile again.
    Again,
    /// What lies on the rack.
    OnRack,
    /// Off the rack, for no job.
    Gone,
    /// Left of pieces that a job took.
    LeftOver,
}

impl Counting {
    /// Says how many there are, whatever was counted before.
    fn is_whole(self) -> bool {
        matches!(self, Counting::Again | Counting::OnRack)
    }
}

/// Pieces of one pile, counted on one day for one thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Counted {
    pub counting: Counting,
    pub at: Lying,
    pub pile: Tile,
    /// What stands of it: the last word where that says how many there are. None where such a word was struck.
    pub n: Option<Count>,
    /// Every tap, the earliest first.
    pub taps: Vec<Tap>,
}

/// One count, standing or struck; the id is the entry's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tap {
    pub id: Id,
    pub at: Wall,
    pub n: Count,
    pub struck: bool,
    /// It is struck by itself; what a plan left goes with that plan.
    pub can_be_struck: bool,
    /// It stands, and its number can be put right.
    pub can_be_mended: bool,
}

/// What was counted on a day, the earliest first.
pub fn counts(book: &Book, day: Day) -> Vec<Counted> {
    let mut found: Sorted<(Counting, Id, Id), Vec<Tap>> = Sorted::new();
    let on_it = book.since(day).filter(|(entry, _)| entry.wall.day() == day).listed();
    for (entry, struck) in on_it.into_iter().rev() {
        let Some((counting, (haul, pile), n)) = counted(entry) else { continue };
        let can_be_struck = counting != Counting::LeftOver;
        // What is not on the rack for now comes and goes with the boards of its plan.
        if struck && !can_be_struck {
            continue;
        }
        let taps = found.entry((counting, haul, pile)).or_default();
        match taps.last_mut().filter(|last| !can_be_struck && last.at == entry.wall) {
            Some(last) => last.n = last.n.saturating_add(n),
            None => {
                let can_be_mended = !struck && mended::can_be_mended(book, entry);
                taps.push(Tap { id: entry.id, at: entry.wall, n, struck, can_be_struck, can_be_mended });
            }
        }
    }
    let mut hauls: Sorted<Id, Option<Haul>> = Sorted::new();
    let mut lines: Vec<Counted> = vec![];
    for ((counting, haul, pile), taps) in found.iter() {
        if !hauls.contains_key(haul) {
            hauls.insert(*haul, fold::haul(book, *haul));
        }
        let at = Lying { haul: *haul, pile: *pile };
        let pile = hauls.get(haul).and_then(Option::as_ref).and_then(|haul| haul.pile(*pile)).map(tile);
        let mut standing = taps.iter().filter(|tap| !tap.struck).map(|tap| tap.n);
        let n = if counting.is_whole() { standing.next_back() } else { Some(standing.fold(0, Count::saturating_add)) };
        lines.extend(pile.map(|pile| Counted { counting: *counting, at, pile, n, taps: taps.clone() }));
    }
    order_by_key(&mut lines, |line| line.taps.first().map(|tap| tap.at));
    lines
}

fn counted(entry: &Entry) -> Option<(Counting, (Id, Id), Count)> {
    Some(match &entry.fact {
        Fact::PiecesCounted(f) => (Counting::Taken, (f.haul, f.pile), f.n),
        Fact::PiecesSorted(f) => (Counting::Good, (f.haul, f.pile), f.n),
        Fact::PiecesRejected(f) => (Counting::Rejected, (f.haul, f.pile), f.n),
        Fact::PiecesTaken(f) => (Counting::ToJob, (f.haul, f.pile), f.n),
        Fact::PiecesFreed(f) => (Counting::Freed, (f.haul, f.pile), f.n),
        Fact::PiecesRecounted(f) => (Counting::Again, (f.haul, f.pile), f.n),
        Fact::PileCounted(f) => (Counting::OnRack, (f.haul, f.pile), f.n),
        Fact::LeftoversGone(f) => (Counting::Gone, (f.haul, f.pile), f.n),
        Fact::PiecesLeft(f) => (Counting::LeftOver, (f.haul, f.pile), f.n),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::kind::haul::{HaulBegan, PiecesCounted, PiecesLeft, PiecesRecounted, PileAdded, Way};
    use crate::ledger::kind::stock::{LeftoversGone, PileCounted};
    use crate::ledger::told::Phone;
    use crate::quantity::{Currency, Offset, Units};
    use crate::story::STANDS;

    /// Counted on the second day, then with the clock set back on the first; and 18 hours to the east, where the day begins before.
    #[test]
    fn a_count_is_of_the_day_its_clock_showed_whatever_its_stamp() {
        let mut phone = Phone::new("a");
        let haul = phone.note(0, HaulBegan { currency: Currency::USD, units: Units::Inch, name: None });
        let (label, wood, name) = ("A".into(), None, None);
        let pile = phone.note(1, PileAdded { haul, label, wood, name, thickness: None, width: None, length: None, length_to: None });
        let mut count = |minute: i64, n: Count, offset: i64| {
            phone.offset = Offset::minutes(offset).unwrap();
            phone.note(minute, PiecesCounted { haul, pile, n, way: Way::Tap })
        };
        count(600, 1, 0);
        let east = count(1_440 + 500, 2, 1_080);
        count(2_880, 4, 0);
        count(700, 8, 0);
        phone.take_back(2_900, east);
        let first = Wall::default().day();
        let shown = |day| counts(&phone.book, day).iter().map(|line| (line.n, line.taps.len())).collect::<Vec<_>>();
        assert_eq!([first, first.next(), first.plus(2)].map(shown), [vec![(Some(9), 2)], vec![], vec![(Some(4), 2)]]);
    }

    /// Counted again and on the rack, the last word stands; pieces that were left by one act are one line, and such as are off the rack none.
    #[test]
    fn what_was_found_again_and_what_was_left_are_listed() {
        let mut phone = Phone::new("a");
        let haul = phone.note(0, HaulBegan { currency: Currency::USD, units: Units::Inch, name: None });
        let (label, wood, name) = ("A".into(), None, None);
        let pile = phone.note(1, PileAdded { haul, label, wood, name, thickness: None, width: None, length: None, length_to: None });
        let of = phone.note(
            2,
            PileAdded { haul, label: "B".into(), wood: None, name: None, thickness: None, width: None, length: None, length_to: None },
        );
        phone.note(3, PiecesRecounted { haul, pile, n: 12, why: None });
        phone.note(4, PileCounted { haul, pile, n: 11, why: None });
        let last = phone.note(5, PileCounted { haul, pile, n: 10, why: None });
        phone.note(6, LeftoversGone { haul, pile, n: 3, to: None });
        let lots = [1, 2, 1].map(|n| phone.note(7, PiecesLeft { haul, pile, of, job: of, n }));
        let shown = |phone: &Phone| {
            let told = |line: &Counted| {
                (line.counting, line.n, line.taps.iter().map(|tap| (tap.n, tap.can_be_struck, tap.can_be_mended)).listed())
            };
            counts(&phone.book, Wall::default().day()).iter().map(told).listed()
        };
        use Counting::{Again, Gone, LeftOver, OnRack};
        let tap = |n| (n, true, true);
        let mut lines = vec![
            (Again, Some(12), vec![tap(12)]),
            (OnRack, Some(10), vec![tap(11), tap(10)]),
            (Gone, Some(3), vec![tap(3)]),
            (LeftOver, Some(4), vec![(4, false, false)]),
        ];
        assert_eq!(shown(&phone), lines);
        phone.take_back(8, last);
        phone.note(9, crate::ledger::kind::book::Struck { entries: lots[1..].to_vec() });
        lines[1] = (OnRack, Some(11), vec![tap(11), (10, true, false)]);
        lines[3] = (LeftOver, Some(1), vec![(1, false, false)]);
        assert_eq!(shown(&phone), lines);
    }

    #[test]
    fn a_day_of_the_demo_lists_each_count_by_its_pile() {
        let story = crate::story::tell(STANDS);
        let days: Vec<Day> = story.book.entries().map(|(entry, _)| entry.wall.day()).collect();
        let shown = |nth: i32| {
            let first = days.iter().min().copied().unwrap();
            let day = (0..nth).fold(first, |day, _| day.next());
            counts(&story.book, day).iter().map(|c| (c.counting, c.pile.label.clone(), c.n.unwrap(), c.taps.len())).collect::<Vec<_>>()
        };
        use Counting::{Good, Rejected, Taken, ToJob};
        let named =
            |lines: &[(Counting, &str, Count, usize)]| lines.iter().map(|(c, l, n, t)| (*c, (*l).to_owned(), *n, *t)).collect::<Vec<_>>();
        assert_eq!(shown(2), named(&[(Taken, "A", 64, 7), (Taken, "B", 38, 6), (Taken, "C", 22, 3), (Taken, "D", 9, 1)]));
        assert_eq!(shown(3)[..3], named(&[(Rejected, "A", 17, 4), (Good, "A", 47, 1), (Rejected, "B", 9, 3)]));
        assert_eq!(shown(4), named(&[(ToJob, "A", 25, 1), (ToJob, "B", 20, 1), (ToJob, "C", 5, 1)]));
        assert_eq!(shown(1), []);
    }
}
