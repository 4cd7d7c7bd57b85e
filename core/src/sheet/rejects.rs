//! What a supplier's hauls held so far: rejects by reason, by haul over time, by wood.

use crate::haul::rejects::{Reason, Seen, by_reason};
use crate::haul::{Haul, Pile};
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Decimal, Id, Key, Sorted, Wall, order_by_key};
use crate::refusal::Answer;
use std::cmp::Reverse;

/// All that sorting showed of a supplier.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RejectsSheet {
    pub seen: Seen,
    /// The most frequent first, each as a share of all sorted pieces.
    pub reasons: Vec<Reason>,
    /// Hauls of which something was sorted, the oldest first.
    pub hauls: Vec<OfHaul>,
    /// The wood that was sorted most first.
    pub woods: Vec<OfWood>,
}

/// One haul of it.
#[derive(Clone, Debug, PartialEq)]
pub struct OfHaul {
    pub haul: Id,
    pub name: Option<String>,
    pub began: Wall,
    pub seen: Seen,
    pub share: Decimal,
}

/// Piles of one wood over all hauls; where the wood is not known, those of one name.
#[derive(Clone, Debug, PartialEq)]
pub struct OfWood {
    pub wood: Option<Key>,
    pub name: Option<String>,
    pub seen: Seen,
    pub share: Decimal,
}

/// What the hauls of a supplier held, over all of them.
///
/// # Errors
/// [`crate::refusal::Refusal::NothingToShareBy`] never comes: without rejects there are no reasons.
pub fn rejects(book: &Book, supplier: Id) -> Answer<RejectsSheet> {
    let mut hauls: Vec<Haul> = fold::hauls(book).filter(|haul| haul.supplier == Some(supplier)).collect();
    hauls.reverse();
    let seen = Seen::pooled(hauls.iter().map(Haul::seen));
    Ok(RejectsSheet {
        seen,
        reasons: by_reason(&pooled_reasons(&hauls), seen.sorted())?,
        woods: woods(&hauls),
        hauls: hauls.into_iter().filter_map(of_haul).collect(),
    })
}

fn piles(hauls: &[Haul]) -> impl Iterator<Item = &Pile> {
    hauls.iter().flat_map(|haul| &haul.piles)
}

fn pooled_reasons(hauls: &[Haul]) -> Sorted<Key, Count> {
    let mut sums: Sorted<Key, Count> = Sorted::new();
    for (why, n) in piles(hauls).flat_map(|pile| &pile.rejects) {
        let sum = sums.entry(why.clone()).or_default();
        *sum = sum.saturating_add(*n);
    }
    sums
}

fn of_haul(haul: Haul) -> Option<OfHaul> {
    let seen = haul.seen();
    Some(OfHaul { haul: haul.id, share: seen.share()?, seen, name: haul.name, began: haul.began })
}

fn woods(hauls: &[Haul]) -> Vec<OfWood> {
    let mut sums: Sorted<(Option<Key>, Option<String>), Seen> = Sorted::new();
    for pile in piles(hauls) {
        let name = if pile.wood.is_some() { None } else { pile.name.clone() };
        let sum = sums.entry((pile.wood.clone(), name)).or_default();
        *sum = Seen::pooled([*sum, pile.seen()]);
    }
    let of = |((wood, name), seen): (&(Option<Key>, Option<String>), &Seen)| {
        Some(OfWood { wood: wood.clone(), name: name.clone(), seen: *seen, share: seen.share()? })
    };
    let mut woods: Vec<OfWood> = sums.iter().filter_map(of).collect();
    order_by_key(&mut woods, |wood| Reverse(wood.seen.sorted()));
    woods
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::story::tell;

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nperson works supplier\n";

    fn sheet(lines: &str) -> RejectsSheet {
        let story = tell(&format!("{START}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        rejects(&story.book, story.names.person("works").unwrap()).unwrap()
    }

    const TWO: &str = "2026-03-03 09:00 leave for one\nsupplier works\npile strips ash-white\ncount 20 strips\npile bits\ncount 4 bits\n\
        reject 5 strips twist\ngood 15 strips\nreject 1 bits knot\ngood 3 bits\n\
        2026-03-10 09:00 leave for two\nsupplier works\npile squares ash-white\ncount 30 squares\nreject 2 squares twist\n\
        reject 7 squares end-check\ngood 7 squares\n2026-03-11 09:00 leave for three\nsupplier works\npile more\ncount 9 more\n";

    #[test]
    fn rejects_by_reason_by_haul_and_by_wood() {
        let sheet = sheet(TWO);
        assert_eq!((sheet.seen.rejected, sheet.seen.sorted()), (15, 40));
        let reasons: Vec<_> = sheet.reasons.iter().map(|reason| (reason.why.as_str(), reason.rejected, reason.share)).collect();
        // 7 of 40, 7 of 40 and 1 of 40.
        assert_eq!(reasons, [("end-check", 7, Decimal::new(175, 3)), ("twist", 7, Decimal::new(175, 3)), ("knot", 1, Decimal::new(25, 3))]);
        let hauls: Vec<_> = sheet.hauls.iter().map(|of| (of.name.as_deref().unwrap(), of.seen.sorted(), of.share)).collect();
        // 6 of 24, then 9 of 16; of the third nothing was sorted.
        assert_eq!(hauls, [("one", 24, Decimal::new(25, 2)), ("two", 16, Decimal::new(5625, 4))]);
        let woods: Vec<_> =
            sheet.woods.iter().map(|of| (of.wood.as_ref().map(Key::as_str), of.name.as_deref(), of.seen.rejected)).collect();
        assert_eq!(woods, [(Some("ash-white"), None, 14), (None, Some("bits"), 1)]);
    }

    #[test]
    fn nothing_sorted_is_an_empty_sheet() {
        assert_eq!(sheet(""), RejectsSheet::default());
        assert_eq!(sheet("leave for one\nsupplier works\npile strips\ncount 5 strips"), RejectsSheet::default());
    }
}
