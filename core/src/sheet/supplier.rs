//! Before going: what the past hauls of a supplier were worth, by what was really good of them.

use super::fetched::{is_half_said, saved};
use super::shop::Shop;
use super::worth::counted;
use crate::haul::go::{Outlook, Past, go};
use crate::haul::rejects::Seen;
use crate::haul::worth::{Counting, Fetching, Milling, Terms, Worth, Yields};
use crate::haul::{Haul, Trip, Where};
use crate::ledger::fold;
use crate::ledger::kind::bench::Stage;
use crate::quantity::{Count, Decimal, Id, Listed, Money, Span};
use crate::refusal::Answer;

/// Whether going there pays, as far as it can be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Prospect {
    /// No trip there was ever counted.
    NoHistory,
    /// What an hour should pay was never said.
    PayMissing,
    /// None of the drives there has a rate.
    MileageMissing,
    Known(Outlook),
}

/// A supplier before the next trip.
#[derive(Clone, Debug, PartialEq)]
pub struct SupplierSheet {
    pub prospect: Prospect,
    /// Hauls of which a drive has a distance and no rate: in no figure.
    pub unpriced: Count,
    /// Hauls of which a drive has no distance or no minutes: those count as nothing.
    pub half_said: Count,
}

/// What the trips to a supplier were worth, in the currency of the newest. A haul that is still on its way, the one in hand, and
/// bought boards are no part of it. Each haul: equal boards of what was really good, unsorted pieces at the share expected, less
/// distance, gift and minutes at the pay you want; milling at 2 minutes a board foot where sorting was clocked, else sorting and
/// milling at 3.
///
/// # Errors
/// [`crate::refusal::Refusal::OutOfRange`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn supplier(shop: &Shop, supplier: Id, in_hand: Option<Id>) -> Answer<SupplierSheet> {
    let hauls = past(shop, supplier, in_hand);
    let (priced, unpriced): (Vec<&Haul>, Vec<&Haul>) = hauls.iter().partition(|haul| !haul.is_unpriced());
    let wanted = hauls.first().and_then(|haul| shop.workshop.pay(haul.currency));
    Ok(SupplierSheet {
        prospect: match (wanted, priced.is_empty(), unpriced.is_empty()) {
            (_, true, true) => Prospect::NoHistory,
            (_, true, false) => Prospect::MileageMissing,
            (None, ..) => Prospect::PayMissing,
            (Some(pay), ..) => known(shop, (&hauls, &priced), pay)?,
        },
        unpriced: count(unpriced.len()),
        half_said: count(priced.iter().filter(|haul| is_half_said(haul)).count()),
    })
}

/// Their past hauls, the newest first, of one currency.
fn past(shop: &Shop, supplier: Id, in_hand: Option<Id>) -> Vec<Haul> {
    let theirs = |haul: &Haul| haul.supplier == Some(supplier) && Some(haul.id) != in_hand && is_past(haul, shop);
    let mut hauls: Vec<Haul> = fold::hauls(shop.book).filter(theirs).listed();
    let newest = hauls.first().map(|haul| haul.currency);
    hauls.retain(|haul| Some(haul.currency) == newest);
    hauls
}

fn count(n: usize) -> Count {
    Count::try_from(n).unwrap_or(Count::MAX)
}

/// It was fetched, and is home or was sorted.
fn is_past(haul: &Haul, shop: &Shop) -> bool {
    let is_home = !matches!(haul.trip_now(shop.now).stands, Where::NotLeft | Where::Driving | Where::AtBin | Where::DrivingHome);
    !haul.bought && !haul.trips.is_empty() && (is_home || 0 < haul.seen().sorted())
}

fn known(shop: &Shop, (all, priced): (&[Haul], &[&Haul]), pay: Decimal) -> Answer<Prospect> {
    let past = |haul: &&Haul| {
        let others = all.iter().filter(|other| other.id != haul.id).map(Haul::seen);
        let worth = worth(shop, haul, (Seen::pooled(others), pay))?;
        Ok(Past { worth, trips: count(haul.trips.len()) })
    };
    let history = priced.iter().map(past).collect::<Answer<Vec<_>>>()?;
    Ok(go(&history)?.map_or(Prospect::NoHistory, Prospect::Known))
}

/// What a haul that is home was worth.
fn worth(shop: &Shop, haul: &Haul, (theirs, pay): (Seen, Decimal)) -> Answer<Worth> {
    let driven = haul.trips.iter().map(|trip| trip.cost(haul.currency)).collect::<Answer<Vec<_>>>()?;
    let sorting = shop.bench.of_haul(haul.id, shop.now).stage(Stage::Sort);
    let milling = if sorting == Span::ZERO { Milling::USUAL } else { Milling::AHEAD };
    let fetching = Fetching {
        distance: Money::sum(haul.currency, driven)?,
        gift: Money::sum(haul.currency, haul.costs.iter().copied())?,
        wheel: Span::sum(haul.trips.iter().map(Trip::wheel)),
        bins: Span::sum(haul.trips.iter().map(Trip::bin)).plus(sorting),
    };
    let piles = haul.piles.iter().map(|pile| counted(&shop.workshop, (haul, pile), theirs)).collect::<Answer<Vec<_>>>()?;
    Counting { piles, fetching, saved: saved(shop, haul)?, terms: Terms { pay, yields: Yields::USUAL, milling } }.worth()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::haul::go::{Decides, Verdict};
    use crate::story::tell;

    const START: &str = "2026-03-02 09:00 -05:00 workshop USD inch\nperson works supplier\nrate pay 20\nboards 7 a board-foot ash-white\n";

    /// Sixteen pieces of 1 x 3 x 48 in are 16 board feet, all good: 16 x 7 x 0.45 / 0.70 = 72.00 of boards. Milling takes 3 minutes a
    /// foot, 48 minutes, 16.00 at 20 an hour; the drive 60 minutes, 20.00; 10 miles at 0.60 are 6.00: it leaves 30.00.
    fn trip(day: u8, name: &str, drive: &str) -> String {
        format!(
            "2026-03-{day:02} 09:00 leave for {name}\nsupplier works\nat the bin\npile {name}s ash-white 1 x 3 x 48 in\n\
             count 16 {name}s\nhomeward\nhome\n{drive}\n"
        )
    }

    const DRIVE: &str = "trip wheel 60 min bin 0 min 10 miles at 0.60";

    fn sheet(lines: &str) -> SupplierSheet {
        let story = tell(&format!("{START}{lines}"));
        assert_eq!(story.refused, [], "{lines}");
        let shop = Shop::of(&story.book, story.now.at);
        supplier(&shop, story.names.person("works").unwrap(), story.names.haul("hand")).unwrap()
    }

    #[track_caller]
    fn check(lines: &str, verdict: Verdict, (trips, low, high): (Count, &str, &str), decides: &str) {
        let sheet = sheet(lines);
        let Prospect::Known(outlook) = sheet.prospect else { panic!("{sheet:?}") };
        let figures = (outlook.trips, outlook.low.to_string(), outlook.high.to_string());
        assert_eq!(figures, (trips, format!("{low} USD"), format!("{high} USD")), "{lines}");
        let (Decides::Minutes(sum) | Decides::Distance(sum) | Decides::Gift(sum) | Decides::Rejects(sum)) = outlook.decides else {
            panic!("{outlook:?}")
        };
        assert_eq!((outlook.verdict, sum.to_string()), (verdict, format!("{decides} USD")), "{lines}");
    }

    #[test]
    fn a_past_haul_is_worth_what_was_good_of_it() {
        let one = trip(3, "one", DRIVE);
        check(&format!("{one}good 16 ones"), Verdict::Go, (1, "30.00", "30.00"), "36.00");
        // Half of it rejected: 36.00 less of boards. What the rejects would have replaced and the minutes are the same: minutes are named.
        check(&format!("{one}reject 8 ones twist\ngood 8 ones"), Verdict::Skip, (1, "-6.00", "-6.00"), "36.00");
        // Nothing sorted: one in four is expected to be bad, 18.00 less.
        check(&one, Verdict::Go, (1, "12.00", "12.00"), "36.00");
        // Sorting was clocked at 30 minutes: 10.00, and 2 minutes a foot of milling, 10.67, in place of 16.00.
        let clocked = "recall \"sort\" fetch on one stage sort 2026-03-04 18:00 to 2026-03-04 18:30\n";
        check(&format!("{one}good 16 ones\n2026-03-04 19:00 {clocked}"), Verdict::Go, (1, "25.33", "25.33"), "40.67");
        // A present of 50.00 decides.
        check(&format!("{one}good 16 ones\nspend 50 gift on one"), Verdict::Skip, (1, "-20.00", "-20.00"), "50.00");
    }

    #[test]
    fn the_haul_in_hand_and_one_on_its_way_are_no_past() {
        let (one, hand) = (trip(3, "one", DRIVE), trip(9, "hand", DRIVE));
        check(&format!("{one}good 16 ones\n{hand}"), Verdict::Go, (1, "30.00", "30.00"), "36.00");
        let away = "2026-03-08 09:00 leave for away\nsupplier works\nat the bin";
        check(&format!("{one}good 16 ones\n{away}"), Verdict::Go, (1, "30.00", "30.00"), "36.00");
        assert_eq!(sheet(&hand).prospect, Prospect::NoHistory);
    }

    /// Prices and pay are said in dollars: hauls in dollars before the last one in euro are no part of what that comes to.
    #[test]
    fn the_newest_currency_counts() {
        let euro = format!("workshop EUR inch\nrate pay 20\nboards 7 a board-foot\n{}", trip(5, "two", DRIVE));
        let sheet = sheet(&format!("{}{euro}good 16 twos", trip(3, "one", DRIVE)));
        let Prospect::Known(outlook) = sheet.prospect else { panic!("{sheet:?}") };
        assert_eq!((outlook.trips, outlook.mean.to_string()), (1, "30.00 EUR".into()));
    }

    #[test]
    fn what_is_not_known_is_said() {
        assert_eq!(sheet(""), SupplierSheet { prospect: Prospect::NoHistory, unpriced: 0, half_said: 0 });
        let unpriced = trip(3, "one", "trip wheel 60 min 10 miles");
        assert_eq!(sheet(&unpriced), SupplierSheet { prospect: Prospect::MileageMissing, unpriced: 1, half_said: 0 });
        assert_eq!(sheet(&trip(3, "one", "trip wheel 60 min")).half_said, 1);
        let story = tell(&format!("{}{}", START.replace("rate pay 20\n", ""), trip(3, "one", DRIVE)));
        let shop = Shop::of(&story.book, story.now.at);
        let sheet = supplier(&shop, story.names.person("works").unwrap(), None).unwrap();
        assert_eq!(sheet.prospect, Prospect::PayMissing);
    }
}
