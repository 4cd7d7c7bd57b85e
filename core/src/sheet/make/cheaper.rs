//! Of pieces alike a plan takes first those that cost less: free ones before bought ones, bought ones by what their haul cost, its drives in
//! it, those of which that is not known last, and any of them before boards that are still to be bought. Then those that are set apart for the
//! job, those that are sorted, and the older ones. Ours.

use super::own::{instead, used};
use super::{Given, Source, What};
use crate::haul::Haul;
use crate::ledger::fold;
use crate::plan::{Answered, Planned};
use crate::quantity::{Currency, Decimal, Listed, Moment, Sorted, order_by_key};
use crate::sheet::Shop;
use crate::sheet::haul::known_cost;
use std::cmp::Reverse;

/// What is taken first comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Rank {
    to_buy: bool,
    bought: bool,
    /// Of what was bought: that its cost is not known in the currency of the job, and for a board foot.
    unknown: bool,
    cost: Decimal,
    not_for_it: bool,
    unsorted: bool,
    began: Moment,
}

/// Of a field the piles alike in the order in which they are taken, the job's own first: to it they are one.
pub(super) fn in_order(shop: &Shop, (what, currency): (&What, Currency), mut sources: Vec<Source>) -> Vec<Source> {
    if !matches!(what, What::Field(_)) {
        return sources;
    }
    let of = |source: &Source| (source.sides(), source.pile.wood.clone());
    let mut done: Vec<usize> = vec![];
    for place in 0..sources.len() {
        let alike = |other: &usize| sources.get(place).map(of) == sources.get(*other).map(of);
        let places = (place..sources.len()).filter(alike).listed();
        if places.len() < 2 || done.contains(&place) {
            continue;
        }
        let mut own = places.iter().filter_map(|place| sources.get(*place).cloned()).listed();
        order_by_key(&mut own, |source| (source.bought.is_some(), !source.in_job, rank(shop, source, Some(currency))));
        for (place, source) in places.iter().zip(own) {
            sources.iter_mut().skip(*place).take(1).for_each(|it| *it = source.clone());
        }
        done.extend(places);
    }
    sources
}

/// The same plan of the pieces that cost less, where others alike are left over.
pub fn cheaper_first(shop: &Shop, given: &Given, answered: Answered) -> Answered {
    let all = 0..given.sources.len();
    let pairs = all.clone().flat_map(|first| all.clone().map(move |other| (first, other)));
    let alike = pairs.filter(|(first, other)| first != other && alike(given, [*first, *other])).listed();
    let currency = shop.job(given.ask.job).ok().map(|job| job.currency);
    // A haul is read only where there is something to choose.
    let mut ranks: Sorted<usize, Rank> = Sorted::new();
    for (place, _) in &alike {
        if let (false, Some(source)) = (ranks.contains_key(place), given.sources.get(*place)) {
            ranks.insert(*place, rank(shop, source, currency));
        }
    }
    let mut pairs = alike.into_iter().filter(|(first, other)| ranks.get(first) < ranks.get(other)).listed();
    // The best are filled first, from the worst.
    order_by_key(&mut pairs, |(first, other)| (ranks.get(first).copied(), Reverse(ranks.get(other).copied())));
    let mut best = answered;
    for (first, other) in pairs {
        let n = moves(given, (used(&best.plan, first), used(&best.plan, other)), (first, other));
        if 0 < n {
            let moved = Planned { plan: instead(&best.plan, (first, other), n), worth: best.worth.clone(), bound: best.bound.clone() };
            if given.ready.asked.holds(&moved) {
                best = moved;
            }
        }
    }
    best
}

/// How many go from the one to the other: strips of one board stay together.
fn moves(given: &Given, (of_first, of_other): (i64, i64), (first, other): (usize, usize)) -> i64 {
    let Some((source, ripped)) = given.ready.sources.get(first).map(|source| (source, source.ripped.max(1))) else { return 0 };
    let whole = of_first.checked_rem(ripped) == Some(0);
    let free = if whole { source.count.saturating_sub(of_first) } else { 0 };
    let own = given.own.get(other).copied().unwrap_or(0);
    let stay = of_other.saturating_sub(free).max(i64::from(own).saturating_mul(ripped)).max(0);
    let stay = stay.saturating_add(ripped).saturating_sub(1).checked_div(ripped).unwrap_or(0).saturating_mul(ripped);
    of_other.saturating_sub(stay)
}

fn alike(given: &Given, places: [usize; 2]) -> bool {
    let [one, other] = places.map(|place| given.sources.get(place).zip(given.ready.sources.get(place)));
    one.zip(other).is_some_and(|((one, planned), (other, planned_too))| {
        let of = |source: &Source| (source.sides(), source.pile.wood.clone(), source.in_job, source.planed);
        let cut = |it: &crate::sheet::plan::ready::Source| (it.size, it.ripped, it.tiles);
        one.sides().is_some() && of(one) == of(other) && cut(planned) == cut(planned_too)
    })
}

fn rank(shop: &Shop, source: &Source, currency: Option<Currency>) -> Rank {
    let haul = fold::haul(shop.book, source.pile.haul);
    let pile = haul.as_ref().and_then(|haul| haul.pile(source.pile.pile));
    let of_volume = |haul: &Haul| {
        let known = known_cost(shop, haul).ok()?.filter(|_| Some(haul.currency) == currency)?;
        known.cost.amount().checked_div(known.good.board_feet())
    };
    let bought = haul.as_ref().filter(|haul| haul.bought);
    let cost = bought.and_then(of_volume);
    Rank {
        to_buy: source.bought.is_some(),
        bought: bought.is_some(),
        unknown: bought.is_some() && cost.is_none(),
        cost: cost.unwrap_or_default(),
        not_for_it: source.pile.for_it == 0,
        unsorted: pile.is_some_and(|pile| 0 < pile.unsorted()),
        began: source.pile.began.at,
    }
}

#[cfg(test)]
mod tests {
    use super::super::sources;
    use super::*;
    use crate::story::tell;

    /// Bought boards by the order in which a plan takes of them: forty of 120 dollars are those of two dollars for a board foot.
    #[track_caller]
    fn check(bought: &[(&str, &str)], order: &[&str]) {
        let boards = bought.iter().map(|(name, said)| format!("buy 40 {name} oak-european 1 x 6 x 36 in for {said}\n"));
        let story = tell(&format!(
            "2026-03-02 09:00 -05:00 workshop USD inch\njob tray \"Tray\" 1 spec\nperson ada helper\n{}",
            boards.collect::<String>()
        ));
        assert_eq!(story.refused, []);
        let shop = Shop::of(&story.book, story.now.at);
        let mut ranks = sources(&shop, story.names.job("tray").unwrap()).unwrap();
        order_by_key(&mut ranks, |source| rank(&shop, source, Some(Currency::USD)));
        let names = ranks.iter().map(|source| source.pile.name.clone().unwrap_or_default()).listed();
        assert_eq!(names, order, "{bought:?}");
    }

    #[test]
    fn what_costs_nobody_knows_is_not_the_cheapest() {
        check(&[("unpriced", "0"), ("priced", "120")], &["priced", "unpriced"]);
        check(&[("priced", "120"), ("gift", "0\nspend 0 wood on gift")], &["gift", "priced"]);
        check(&[("unpriced", "0"), ("gift", "0\nspend 0 wood on gift")], &["gift", "unpriced"]);
        // A drive of 10 miles at a dollar is a cost that is known; one without a rate is none.
        let driven = |rate: &str| format!("60\nleave for driven\nhome\ntrip 10 miles {rate}");
        let (known, unknown) = (driven("at 1"), driven(""));
        check(&[("unpriced", "0"), ("priced", "65"), ("driven", &known)], &["priced", "driven", "unpriced"]);
        check(&[("priced", "120"), ("driven", &unknown)], &["priced", "driven"]);
    }
}
