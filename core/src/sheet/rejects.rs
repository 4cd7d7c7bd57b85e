//! What a supplier's hauls held so far: rejects by reason, by haul over time, by wood, and by pile over time.

use crate::haul::rejects::{Reason, Seen, by_reason};
use crate::haul::{Haul, Pile};
use crate::ledger::{Book, fold};
use crate::quantity::{Count, Decimal, Id, Key, Length, Listed, Sorted, Units, Wall, order_by_key};
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
    /// Piles that came more than once, the one that was sorted most first.
    pub again: Vec<OfPile>,
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

/// The same pile over several hauls: of one wood and one section, or of one name where the wood is not known.
#[derive(Clone, Debug, PartialEq)]
pub struct OfPile {
    pub wood: Option<Key>,
    pub name: Option<String>,
    /// Thickness and width, in the units of the haul it came with last.
    pub section: Section,
    pub units: Units,
    /// Hauls of which something of it was sorted, at least two, the oldest first.
    pub hauls: Vec<OfHaul>,
}

/// What the hauls of a supplier held, over all of them.
///
/// # Errors
/// [`crate::refusal::Refusal::NothingToShareBy`] never comes: without rejects there are no reasons.
pub fn rejects(book: &Book, supplier: Id) -> Answer<RejectsSheet> {
    let mut hauls: Vec<Haul> = fold::hauls(book).filter(|haul| haul.supplier == Some(supplier)).listed();
    hauls.reverse();
    let seen = Seen::pooled(hauls.iter().map(Haul::seen));
    Ok(RejectsSheet {
        seen,
        reasons: by_reason(&pooled_reasons(&hauls), seen.sorted())?,
        woods: woods(&hauls),
        again: again(&hauls),
        hauls: hauls.into_iter().filter_map(of_haul).listed(),
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
    let mut woods: Vec<OfWood> = sums.iter().filter_map(of).listed();
    order_by_key(&mut woods, |wood| Reverse(wood.seen.sorted()));
    woods
}

/// Thickness and width.
type Section = (Option<Length>, Option<Length>);

/// What makes a pile the same in another haul; none where nothing is known of it.
fn like(pile: &Pile) -> Option<(Option<Key>, Option<String>, Section)> {
    let name = if pile.wood.is_some() { None } else { Some(pile.name.clone()?) };
    Some((pile.wood.clone(), name, (pile.thickness, pile.width)))
}

fn again(hauls: &[Haul]) -> Vec<OfPile> {
    let mut found: Sorted<_, OfPile> = Sorted::new();
    for haul in hauls {
        for (like, seen) in sorted_of(haul).iter() {
            let Some(share) = seen.share() else { continue };
            let of = OfHaul { haul: haul.id, name: haul.name.clone(), began: haul.began, seen: *seen, share };
            let (wood, name, section) = like.clone();
            let pile = found.entry(like.clone()).or_insert_with(|| OfPile { wood, name, section, units: haul.units, hauls: vec![] });
            pile.units = haul.units;
            pile.hauls.push(of);
        }
    }
    let mut again: Vec<OfPile> = found.values().filter(|pile| 1 < pile.hauls.len()).cloned().listed();
    order_by_key(&mut again, |pile| Reverse(Seen::pooled(pile.hauls.iter().map(|of| of.seen)).sorted()));
    again
}

/// What sorting a haul showed, piles alike taken together.
fn sorted_of(haul: &Haul) -> Sorted<(Option<Key>, Option<String>, Section), Seen> {
    let mut sums: Sorted<_, Seen> = Sorted::new();
    for (like, seen) in haul.piles.iter().filter_map(|pile| Some((like(pile)?, pile.seen()))) {
        let sum = sums.entry(like).or_default();
        *sum = Seen::pooled([*sum, seen]);
    }
    sums
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

    /// Strips of one section in three hauls, in one of them as two piles; another section, and one that came once, are not in it.
    #[test]
    fn the_same_pile_over_several_hauls() {
        let strips = "ash-white 1 x 2 x 20 in";
        let sheet = sheet(&format!(
            "2026-03-03 09:00 leave for one\nsupplier works\npile a {strips}\ncount 8 a\nreject 2 a twist\ngood 6 a\n\
             pile once cherry-black 1 x 2 x 20 in\ncount 4 once\ngood 4 once\npile odd\ncount 4 odd\nreject 1 odd knot\ngood 3 odd\n\
             2026-03-10 09:00 leave for two\nsupplier works\npile b {strips}\ncount 4 b\nreject 1 b twist\ngood 3 b\n\
             pile longer ash-white 1 x 2 x 30 in\ncount 4 longer\nreject 3 longer twist\ngood 1 longer\npile thick ash-white 2 x 2 x 20 in\n\
             count 4 thick\ngood 4 thick\npile odd\ncount 2 odd\ngood 2 odd\n\
             2026-03-17 09:00 leave for three\nsupplier works\npile c {strips}\ncount 5 c\npile d {strips}\ncount 5 d\ngood 5 d\n"
        ));
        let again: Vec<_> = sheet.again.iter().map(|pile| (pile.wood.as_ref().map(Key::as_str), pile.name.as_deref())).collect();
        assert_eq!(again, [(Some("ash-white"), None), (None, Some("odd"))]);
        let shares = |nth: usize| sheet.again[nth].hauls.iter().map(|of| (of.seen.rejected, of.seen.sorted())).collect::<Vec<_>>();
        assert_eq!((shares(0), shares(1)), (vec![(2, 8), (4, 8), (0, 5)], vec![(1, 4), (0, 2)]));
        assert_eq!(sheet.again[0].section, (Some(Length::INCH), Length::INCH.times(2).ok()));
    }

    #[test]
    fn nothing_sorted_is_an_empty_sheet() {
        assert_eq!(sheet(""), RejectsSheet::default());
        assert_eq!(sheet("leave for one\nsupplier works\npile strips\ncount 5 strips"), RejectsSheet::default());
    }
}
