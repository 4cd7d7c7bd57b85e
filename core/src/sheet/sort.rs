//! Sort: one pile at home, good or rejected and why.

use super::count::{Tile, tile};
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Id, Key};

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
    pub supplier: Option<Id>,
    /// The same supplier's rejects over all hauls, of what was sorted; `None` before there is any.
    pub supplier_so_far: Option<(Count, Count)>,
}

/// The screen of a pile; `None` when it is not there.
pub fn sort(book: &Book, haul: Id, pile: Id) -> Option<SortSheet> {
    let folded = fold::haul(book, haul)?;
    let found = folded.pile(pile)?;
    let (good, rejected) = (found.sorted_good, found.rejected());
    Some(SortSheet {
        haul,
        tile: tile(found),
        good,
        rejects: found.rejects.iter().map(|(why, n)| (why.clone(), *n)).collect(),
        rejected,
        sorted: good.saturating_add(rejected).min(found.taken),
        taken: found.taken,
        left: found.unsorted(),
        supplier: folded.supplier,
        supplier_so_far: supplier_so_far(book, folded.supplier),
    })
}

/// Rejected and sorted pieces of a supplier, over every haul.
fn supplier_so_far(book: &Book, supplier: Option<Id>) -> Option<(Count, Count)> {
    supplier?;
    let piles = fold::hauls(book).filter(|haul| haul.supplier == supplier).flat_map(|haul| haul.piles);
    let sums = piles.fold((0u32, 0u32), |(rejected, sorted), pile| {
        let here = pile.rejected();
        (rejected.saturating_add(here), sorted.saturating_add(here).saturating_add(pile.sorted_good))
    });
    (0 < sums.1).then_some(sums)
}
