//! Pieces at galleries by the consignment they are of: each has its own terms.

use super::selling::{Consigned, GalleryTerms, Selling};
use crate::quantity::{Count, Id, Listed, Money, Wall};

/// One consignment: its terms, and what became of its pieces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lot {
    pub id: Id,
    pub at: Wall,
    pub gallery: Option<Id>,
    pub tag: Money,
    pub terms: GalleryTerms,
    pub n: Count,
    pub sold: Count,
    pub back: Count,
}

impl Lot {
    /// Pieces that are there still.
    pub fn there(&self) -> Count {
        self.n.saturating_sub(self.sold).saturating_sub(self.back)
    }
}

impl Selling {
    /// What galleries were given, the oldest first. What does not say of which consignment it is, is of the oldest of that gallery that has
    /// some: galleries sell and give back what has stood there longest.
    pub fn lots(&self) -> Vec<Lot> {
        let lot = |given: &Consigned| {
            let (tag, terms) = given.sum.zip(given.terms)?;
            Some(Lot { id: given.entry, at: given.at, gallery: given.gallery, tag, terms, n: given.n, sold: 0, back: 0 })
        };
        let mut lots = self.consigned.iter().filter_map(lot).listed();
        let all =
            || self.consignments_paid.iter().map(|paid| (paid, true)).chain(self.consignments_returned.iter().map(|back| (back, false)));
        let named = all().filter(|(gone, _)| gone.lot.is_some());
        for (gone, is_sold) in named.chain(all().filter(|(gone, _)| gone.lot.is_none())) {
            let mut left = gone.n;
            for is_near in [true, false] {
                for lot in lots.iter_mut().filter(|lot| near(gone, lot) == Some(is_near)) {
                    // What is named counts whole, so that too many are found out.
                    let n = if gone.lot.is_some() { left } else { left.min(lot.there()) };
                    let place = if is_sold { &mut lot.sold } else { &mut lot.back };
                    (*place, left) = (place.saturating_add(n), left.saturating_sub(n));
                }
            }
        }
        lots
    }

    pub fn lot(&self, id: Id) -> Option<Lot> {
        self.lots().into_iter().find(|lot| lot.id == id)
    }
}

/// Whether it is of this consignment first; none where another is named.
fn near(gone: &Consigned, lot: &Lot) -> Option<bool> {
    match gone.lot {
        Some(named) => (named == lot.id).then_some(true),
        None => Some(gone.gallery.is_none() || gone.gallery == lot.gallery),
    }
}
