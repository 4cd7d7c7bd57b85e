//! Count: the haul in hand, its piles as tiles, its trip, and what all of it weighs.

use crate::haul::{Haul, Load, Pile, TripNow, Van};
use crate::ledger::{Book, Entry, Fact, Subject, fold};
use crate::quantity::{Count, Id, Key, Length, Listed, Moment, Units, Volume, Wall, order_by_key};

/// The Count screen of a haul.
#[derive(Clone, Debug, PartialEq)]
pub struct CountSheet {
    pub haul: Id,
    pub units: Units,
    pub began: Wall,
    pub pieces: Count,
    /// Pieces in piles without a size are in no volume, and in no weight where none of them was weighed.
    pub unsized_pieces: Count,
    pub unweighed_pieces: Count,
    pub volume: Volume,
    pub load: Load,
    pub tiles: Vec<Tile>,
    pub trip: TripNow,
    /// The newest count that stands: its pile, its pieces, its moment.
    pub last: Option<LastCount>,
    /// Whether some of it was sorted or rejected.
    pub sorting_begun: bool,
}

/// One pile.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    pub pile: Id,
    pub label: String,
    pub name: Option<String>,
    pub wood: Option<Key>,
    /// Its wood by the maker's own name, where that is in no table.
    pub own: Option<String>,
    pub size: Size,
    pub taken: Count,
    pub good: Count,
    pub rejected: Count,
    /// Of the good ones, those that were sorted as such.
    pub sorted_good: Count,
}

/// Thickness, width, and length or the ends of its band.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Size {
    pub thickness: Option<Length>,
    pub width: Option<Length>,
    pub length: Option<Length>,
    pub length_to: Option<Length>,
}

/// The newest count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LastCount {
    pub pile: Id,
    pub n: Count,
    /// The counts in a row onto this pile, together: what a wrong pile was given and still has.
    pub run: Count,
    pub at: Wall,
}

/// The haul in hand: the one begun last. Boards that were bought are no haul to count.
pub fn current(book: &Book) -> Option<Haul> {
    in_hand(book, || fold::van(book))
}

/// The same where the van may be known already; it is asked only where nobody said what the haul's own may carry.
pub fn in_hand(book: &Book, van: impl Fn() -> Van) -> Option<Haul> {
    let began = |subject: Subject| {
        let Subject::Haul(id) = subject else { return None };
        let entry = book.entry(id).filter(|(_, struck)| !struck)?.0;
        // By its stamp: a clock that was fast and put right since makes no haul the newest.
        matches!(entry.fact, Fact::HaulBegan(_)).then_some((entry.stamp, id))
    };
    let mut begun: Vec<_> = book.subjects().filter_map(began).listed();
    order_by_key(&mut begun, |(stamp, id)| std::cmp::Reverse((*stamp, *id)));
    let (_, newest) = begun.into_iter().find(|(_, id)| !fold::is_bought(book, *id))?;
    haul_in_hand(book, newest, van)
}

/// A haul that was taken in hand again.
pub fn haul_in_hand(book: &Book, id: Id, van: impl Fn() -> Van) -> Option<Haul> {
    let haul = fold::haul(book, id)?;
    let van = if haul.carries.is_none() { van() } else { haul.van };
    Some(Haul { van, ..haul })
}

/// The screen of the haul in hand; `None` before the first tap of all.
pub fn count(book: &Book, now: Moment) -> Option<CountSheet> {
    current(book).map(|haul| count_of(book, &haul, now))
}

/// The screen of a haul that was folded already.
pub fn count_of(book: &Book, haul: &Haul, now: Moment) -> CountSheet {
    CountSheet {
        haul: haul.id,
        units: haul.units,
        began: haul.began,
        pieces: haul.taken(),
        unsized_pieces: haul.unsized_pieces(),
        unweighed_pieces: haul.unweighed_pieces(),
        volume: haul.volume(Pile::brought).unwrap_or_default(),
        load: haul.load(),
        tiles: haul.piles.iter().filter(|pile| pile.left == 0 && !was_left(book, pile) || 0 < pile.brought()).map(tile).listed(),
        trip: haul.trip_now(now),
        last: last_count(book, haul.id),
        sorting_begun: haul.piles.iter().any(|pile| 0 < pile.sorted_good || 0 < pile.rejected()),
    }
}

/// Whether an empty pile came of what was left of another, which lies there no more: nobody named it at the yard.
fn was_left(book: &Book, pile: &Pile) -> bool {
    let act = book.entry(pile.id).and_then(|(entry, _)| entry.act).map(|act| book.act(act)).unwrap_or_default();
    let is_left = |id: Id| book.entry(id).is_some_and(|(entry, _)| matches!(&entry.fact, Fact::PiecesLeft(f) if f.pile == pile.id));
    pile.taken == 0 && act.into_iter().any(is_left)
}

/// What a tile shows of a pile.
pub fn tile(pile: &Pile) -> Tile {
    Tile {
        pile: pile.id,
        label: pile.label.clone(),
        name: pile.name.clone(),
        wood: pile.wood.clone(),
        own: pile.own.as_ref().map(|own| own.name.clone()),
        size: Size { thickness: pile.thickness, width: pile.width, length: pile.length, length_to: pile.length_to },
        taken: pile.taken,
        good: pile.good(),
        rejected: pile.rejected(),
        sorted_good: pile.sorted_good,
    }
}

/// The newest count, with those just before it onto the same pile; what was moved or counted again since is in no run.
fn last_count(book: &Book, haul: Id) -> Option<LastCount> {
    let about = || book.about(Subject::Haul(haul)).rev();
    let (pile, n, at) = about().find_map(counted)?;
    let since = about().take_while(|entry| !matches!(entry.fact, Fact::PiecesMoved(_) | Fact::PiecesRecounted(_))).filter_map(counted);
    let run = since.take_while(|(other, ..)| *other == pile).fold(0, |run: Count, (_, n, _)| run.saturating_add(n));
    Some(LastCount { pile, n, run, at })
}

fn counted(entry: &Entry) -> Option<(Id, Count, Wall)> {
    match &entry.fact {
        Fact::PiecesCounted(f) => Some((f.pile, f.n, entry.wall)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::kind::haul::{HaulBegan, PiecesCounted, PiecesMoved, PiecesRecounted, PileAdded, Way};
    use crate::ledger::told::Phone;
    use crate::quantity::Currency;

    fn began(phone: &mut Phone, minute: i64) -> Id {
        phone.note(minute, HaulBegan { currency: Currency::USD, units: Units::Inch, name: None })
    }

    /// The newest count and its run after `told`, piles by their place: counts onto a pile, else moves from it to the other one.
    #[track_caller]
    fn check(told: &[(&str, usize, Count)], last: (usize, Count, Count)) {
        let mut phone = Phone::new("a");
        let haul = began(&mut phone, 0);
        let piles = ["A", "B"].map(|label| {
            let (wood, name, label) = (None, None, label.into());
            phone.note(1, PileAdded { haul, label, wood, name, thickness: None, width: None, length: None, length_to: None })
        });
        for (what, pile, n) in told {
            let (n, pile, to) = (*n, piles[*pile], piles[1 - pile]);
            match *what {
                "count" => phone.note(2, PiecesCounted { haul, pile, n, way: Way::Bundle }),
                "recount" => phone.note(2, PiecesRecounted { haul, pile, n, why: None }),
                _ => phone.note(2, PiecesMoved { haul, from: pile, to, n }),
            };
        }
        let found = count(&phone.book, phone.wall(3).at).and_then(|sheet| sheet.last).unwrap();
        assert_eq!((found.pile, found.n, found.run), (piles[last.0], last.1, last.2), "{told:?}");
    }

    #[test]
    fn the_last_counts_in_a_row_are_those_a_pile_still_has() {
        check(&[("count", 0, 5), ("count", 1, 10), ("count", 1, 2)], (1, 2, 12));
        check(&[("count", 1, 12), ("move", 1, 12), ("count", 1, 1)], (1, 1, 1));
        check(&[("count", 1, 12), ("move", 1, 12)], (1, 12, 0));
        check(&[("count", 1, 12), ("recount", 1, 10), ("count", 1, 1)], (1, 1, 1));
    }

    /// Boards bought on the way do not take the haul out of hand; another haul does, and it is found again.
    #[test]
    fn bought_boards_are_no_haul_to_count() {
        let lines = "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\n09:30 at the bin\npile ash\ncount 10 ash\n\
            09:40 buy 4 planks ash-white 1 x 6 x 96 in for 88\n";
        let of = |lines: &str| {
            let story = crate::story::tell(lines);
            (current(&story.book).map(|haul| haul.id), story)
        };
        let (first, story) = of(lines);
        assert_eq!(first, story.names.haul("yard"));
        let (second, story) = of(&format!("{lines}10:00 leave for mill\npile oak\ncount 5 oak\n"));
        assert_eq!(second, story.names.haul("mill"));
        let again = haul_in_hand(&story.book, story.names.haul("yard").unwrap(), || fold::van(&story.book)).unwrap();
        assert_eq!(again.taken(), 10);
    }

    /// The first haul was begun with a clock a day fast, the second once it was put right.
    #[test]
    fn the_haul_in_hand_is_the_one_begun_last_by_its_stamp() {
        let mut phone = Phone::new("a");
        let (fast, right) = (began(&mut phone, 1_440), began(&mut phone, 60));
        assert_ne!(fast, right);
        assert_eq!(current(&phone.book).map(|haul| haul.id), Some(right));
    }
}
