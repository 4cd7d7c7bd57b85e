//! Sort: one pile at home, good or rejected and why.

use super::count::{Tile, tile};
use super::past::Past;
use crate::haul::Haul;
use crate::haul::rejects::Seen;
use crate::quantity::{Count, Id, Key, Listed};

/// The Sort screen of a pile.
#[derive(Clone, Debug, PartialEq)]
pub struct SortSheet {
    pub haul: Id,
    pub tile: Tile,
    /// Sorted as good.
    pub good: Count,
    /// Reasons that were used, with their pieces.
    pub rejects: Vec<(Key, Count)>,
    pub rejected: Count,
    /// Good and rejected together.
    pub sorted: Count,
    pub taken: Count,
    pub left: Count,
    /// Pieces that were not found when the rack was last walked round.
    pub missing: Count,
    /// Of each reason, the rejects that still lie there.
    pub lying: Vec<(Key, Count)>,
    /// Rejects that are gone, by where they went: jigs, burnt.
    pub gone: Vec<(Key, Count)>,
    /// The next pile of the haul with pieces to sort, and how many.
    pub next: Option<(Tile, Count)>,
    pub supplier: Option<Id>,
    /// The same supplier's rejects over all hauls, of what was sorted; `None` before there is any.
    pub supplier_so_far: Option<(Count, Count)>,
}

/// The screen of a pile, with what the supplier's other hauls showed; `None` when it is not there.
pub fn sort(haul: &Haul, pile: Id, past: &Past) -> Option<SortSheet> {
    let found = haul.pile(pile)?;
    let (good, rejected) = (found.sorted_good, found.rejected());
    Some(SortSheet {
        haul: haul.id,
        tile: tile(found),
        good,
        rejects: found.rejects.iter().map(|(why, n)| (why.clone(), *n)).listed(),
        rejected,
        sorted: good.saturating_add(rejected).min(found.taken),
        taken: found.taken,
        left: found.unsorted(),
        missing: Count::try_from(found.stock.drift.saturating_neg().max(0)).unwrap_or(Count::MAX),
        lying: found.rejects.keys().map(|why| (why.clone(), found.rejects_lying(why))).listed(),
        gone: found.rejects_gone().into_iter().listed(),
        next: next(haul, pile),
        supplier: haul.supplier,
        supplier_so_far: supplier_so_far(haul, past),
    })
}

/// The first pile behind this one that has pieces to sort, else the first of all.
fn next(haul: &Haul, pile: Id) -> Option<(Tile, Count)> {
    let behind = haul.piles.iter().skip_while(|other| other.id != pile);
    let after_it = behind.chain(&haul.piles).find(|other| other.id != pile && 0 < other.unsorted());
    after_it.map(|other| (tile(other), other.unsorted()))
}

/// Rejected and sorted pieces of a supplier, over every haul; none where nobody said whose bin it was.
fn supplier_so_far(haul: &Haul, past: &Past) -> Option<(Count, Count)> {
    haul.supplier?;
    let seen = Seen::pooled([haul.seen(), past.seen]);
    (0 < seen.sorted()).then_some((seen.rejected, seen.sorted()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::fold;
    use crate::sheet::past::past;
    use crate::story::tell;

    /// The pile that is sorted; then what lies there, what is gone, and the pile to go on with.
    #[track_caller]
    fn check(pile: &str, lying: &[(&str, Count)], gone: &[(&str, Count)], next: Option<(&str, Count)>) {
        let story = tell(
            "2026-03-02 09:00 -05:00 workshop USD inch\nleave for yard\npile one\ncount 9 one\npile two\ncount 4 two\npile three\n\
             count 2 three\nreject 5 one twist\nreject 1 one knot\nreturn 2 one twist to jigs\nreturn 1 one twist to burnt\n\
             return 1 one twist to good\ngood 2 three",
        );
        assert_eq!(story.refused, []);
        let ids = fold::hauls(&story.book).flat_map(|haul| haul.piles).find(|found| found.name.as_deref() == Some(pile)).unwrap().id;
        let haul = fold::haul(&story.book, story.names.haul("yard").unwrap()).unwrap();
        let sheet = sort(&haul, ids, &past(&story.book, &haul)).unwrap();
        let told = |counts: &[(Key, Count)]| counts.iter().map(|(key, n)| (key.as_str().to_owned(), *n)).collect::<Vec<_>>();
        let wanted = |counts: &[(&str, Count)]| counts.iter().map(|(key, n)| ((*key).to_owned(), *n)).collect::<Vec<_>>();
        assert_eq!((told(&sheet.lying), told(&sheet.gone)), (wanted(lying), wanted(gone)), "{pile}");
        assert_eq!(sheet.next.map(|(tile, n)| (tile.name.unwrap(), n)), next.map(|(name, n)| (name.to_owned(), n)), "{pile}");
    }

    #[test]
    fn what_lies_there_what_is_gone_and_which_pile_is_next() {
        check("one", &[("knot", 1), ("twist", 1)], &[("burnt", 1), ("jigs", 2)], Some(("two", 4)));
        check("two", &[], &[], Some(("one", 3)));
        check("three", &[], &[], Some(("one", 3)));
    }
}
