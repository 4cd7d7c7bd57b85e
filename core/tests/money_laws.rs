//! Laws of money, for any tax, fee and side, in currencies with no, two and three decimals.

use fivebar_core::money::charge::{Terms, get_of};
use fivebar_core::money::fee::Fee;
use fivebar_core::money::point::Points;
use fivebar_core::money::price::proposed;
use fivebar_core::money::share::{Draw, HaulCost, freeze, split};
use fivebar_core::money::staged::stages;
use fivebar_core::money::tax::Tax;
use fivebar_core::quantity::{Currency, Decimal, Money, Side, Span, Volume};
use fivebar_core::refusal::Refusal;
use proptest::prelude::*;

fn currency() -> impl Strategy<Value = Currency> {
    prop::sample::select(vec!["JPY", "USD", "EUR", "KWD"]).prop_map(|code| Currency::read(code).unwrap())
}

fn minor(n: i64, currency: Currency) -> Money {
    Money::book(Decimal::new(n, currency.digits()), currency).unwrap()
}

/// Tax to 500 %, a share of the card below the whole, and what it takes on top, in minor units: all that leave something of a charge.
/// Half of them as they are in the world: tax to 30 %, a card that takes a tenth at the most.
fn terms() -> impl Strategy<Value = (u32, u32, i64, bool)> {
    let usual = (0u32..300, 0u32..100, 0i64..200, any::<bool>());
    let any_at_all = (0u32..=5_000, 0u32..1_000, 0i64..20_000, any::<bool>());
    prop_oneof![usual, any_at_all].prop_filter("nothing is left of a charge", |terms| of(*terms, Currency::USD).take().is_ok())
}

/// Below this part of a charge the least price may lie further off than is looked; then it is refused as one that fees eat.
const NEXT_TO_NOTHING: Decimal = Decimal::from_parts(4, 0, 0, false, 3);
/// Prices from here on, in minor units, leave the range of money with the point above.
const NEAR_THE_END: i64 = 990_000_000;

fn of((tax, share, fixed, top): (u32, u32, i64, bool), currency: Currency) -> Terms {
    let side = if top { Side::Top } else { Side::Inside };
    let fee = Fee { share: Decimal::new(i64::from(share), 3), fixed: minor(fixed, currency).amount() };
    Terms { tax: Tax { rate: Decimal::new(i64::from(tax), 3), side }, fee }
}

/// A job that ended, when the haul had cost so much and so much more of it was good: what changed since moves no share of it.
fn ended() -> impl Strategy<Value = Option<(i64, i64)>> {
    prop::option::of((0i64..9_000_000, 0i64..2_000))
}

proptest! {
    /// What is booked of a proposed price covers the need; of the tag one price point below it does not, and where the point is the minor
    /// unit, of one minor unit less. With a coarser point a price between the two may cover too: it is no point.
    #[test]
    fn a_proposed_price_is_the_least_that_covers(currency in currency(), terms in terms(), points in prop::sample::select(Points::ALL.to_vec()), need in 1i64..9_000_000) {
        let terms = of(terms, currency);
        // Needs lie between minor units too.
        let need = Decimal::new(need, currency.digits() + 1);
        let keep = terms.take().unwrap().keep;
        let price = match proposed(need, terms, points, currency) {
            Ok(price) => price,
            Err(Refusal::FeesEatThePrice { .. }) => {
                prop_assert!(keep < NEXT_TO_NOTHING, "{keep} is kept");
                return Ok(());
            }
            Err(refusal) => {
                prop_assert_eq!(refusal, Refusal::MoneyOutOfRange { currency });
                prop_assert!(minor(NEAR_THE_END, currency).amount() < need / keep);
                return Ok(());
            }
        };
        prop_assert_eq!(terms.you_get(terms.tax.charge(price.tag).unwrap()).unwrap(), price.you_get);
        prop_assert!(need <= price.you_get.amount(), "{price:?}");
        let less = price.tag.amount() - points.step(currency);
        if less <= Decimal::ZERO {
            return Ok(());
        }
        let less = Money::book(less, currency).unwrap();
        let get = terms.you_get(terms.tax.charge(less).unwrap()).unwrap();
        prop_assert!(get.amount() < need, "{less} leaves {get} of {need}, so {} is not the least", price.tag);
        if points == Points::Minor {
            prop_assert_eq!(price.tag.minus(less).unwrap(), minor(1, currency));
        }
    }

    /// The exact sum that is left of a higher charge is never less; what is booked, by one minor unit at most.
    #[test]
    fn a_higher_offer_leaves_no_less(currency in currency(), terms in terms(), offer in 0i64..900_000, more in 1i64..900) {
        let terms = of(terms, currency);
        let [low, high] = [offer, offer + more].map(|n| minor(n, currency));
        let take = terms.take().unwrap();
        prop_assert!(get_of(low.amount(), take).unwrap() <= get_of(high.amount(), take).unwrap());
        let [low, high] = [low, high].map(|offer| terms.you_get(offer).unwrap());
        prop_assert!(low.minus(high).unwrap().amount() <= minor(1, currency).amount(), "{low} of {offer}, {high} of {more} more");
    }

    /// Staged sums add up to the price, whatever the shares.
    #[test]
    fn staged_sums_add_up(currency in currency(), price in 0i64..9_000_000, cuts in prop::collection::vec(0u32..=1_000, 0..6)) {
        let mut cuts = cuts;
        cuts.extend([0, 1_000]);
        cuts.sort_unstable();
        let shares: Vec<Decimal> = cuts.windows(2).map(|pair| Decimal::new(i64::from(pair[1] - pair[0]), 3)).collect();
        let price = minor(price, currency);
        let sums = stages(price, &shares).unwrap();
        prop_assert_eq!(Money::sum(currency, sums.iter().copied()).unwrap(), price);
        prop_assert!(sums.iter().all(|sum| Decimal::ZERO <= sum.amount()), "{sums:?}");
    }

    /// What jobs, rack and workshop bear of a haul is what it cost, to the minor unit and the minute.
    #[test]
    fn shares_of_costs_sum_to_the_whole(currency in currency(), cost in 0i64..9_000_000, minutes in 0i64..5_000, used in prop::collection::vec((1i64..900, ended()), 0..6), more in 0i64..2_000, lost in 0i64..500) {
        let volume = |n: i64| Volume::of_cubic_mm(Decimal::from(n * 1_000)).unwrap();
        let all: i64 = used.iter().map(|(n, _)| n).sum();
        let (cost, time) = (minor(cost, currency), Span::minutes(minutes));
        let haul = HaulCost { cost, time, good: volume(all + more), lost: volume(lost.min(more)), used: volume(all) };
        let draw = |(n, ended): &(i64, Option<(i64, i64)>)| match ended {
            None => Draw::Open { used: volume(*n) },
            Some((cost, more)) => {
                let then = HaulCost { cost: minor(*cost, currency), good: volume(n + more), lost: Volume::ZERO, used: volume(*n), time };
                Draw::Ended(freeze(&then, volume(*n)).unwrap())
            }
        };
        let draws: Vec<Draw> = used.iter().map(draw).collect();
        let split = split(&haul, &draws).unwrap();
        let shares = || split.jobs.iter().chain([&split.rack, &split.workshop]);
        prop_assert_eq!(Money::sum(currency, shares().map(|share| share.cost)).unwrap(), cost);
        prop_assert_eq!(Span::sum(shares().map(|share| share.time)), time);
    }
}
