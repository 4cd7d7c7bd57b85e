//! Laws of waiting, over guesses of any kind, with tax, fees and all that waiting costs.
//!
//! Costs of waiting keep the law of the days: they are the same however many are left, so what one more is worth is free of them; and
//! where they take what the first would bring, waiting ends at once and each is worth its end.

use fivebar_core::quantity::{Currency, Decimal, Money, Take};
use fivebar_core::sale::demand::{Demand, Guess};
use fivebar_core::sale::waiting::{Lot, Waiting, waiting};
use proptest::prelude::*;

/// Steps of the sum are no finer: a part of the price that is guessed at.
const DUST: f64 = 1e-5;

fn usd(cents: i64) -> Money {
    Money::book(Decimal::new(cents, 2), Currency::USD).unwrap()
}

/// People a week to 40, a share that buys, a price to 3000, how many times as many at a fifth less, who never turns up.
fn guess() -> impl Strategy<Value = Guess> {
    (0_i64..400, 1_i64..=100, 500_i64..300_000, 110_i64..500, 0_i64..80).prop_map(|(asks, buys, at, ratio, no_show)| Guess {
        asks: Decimal::new(asks, 1),
        buys: Decimal::new(buys, 2),
        at: usd(at),
        ratio: Decimal::new(ratio, 2),
        no_show: Decimal::new(no_show, 2),
    })
}

/// Pieces, their end as a share of the price, what each who asks costs, what a day costs, and the least that is asked as a share of the price.
type LotDrawn = (u32, i64, i64, i64, Option<i64>);

/// To nine pieces, worth up to a fifth more than the price in the end; each who asks costs up to 20.00, a day up to 15.00, both
/// nothing half the time.
fn lot() -> impl Strategy<Value = LotDrawn> {
    let costs = |most| prop_oneof![Just(0), 0_i64..most];
    (1_u32..10, 0_i64..120, costs(2_000), costs(1_500), prop_oneof![Just(None), (20_i64..200).prop_map(Some)])
}

fn take() -> impl Strategy<Value = Take> {
    (300_i64..=1_000, 0_i64..500).prop_map(|(keep, fixed)| Take { keep: Decimal::new(keep, 3), fixed: Decimal::new(fixed, 2) })
}

fn of(demand: &Demand, guess: &Guess, (pieces, share, each_ask, each_day, least): LotDrawn, (days, take): (u16, Take)) -> Waiting {
    let of_price = |share| Money::book(guess.at.amount() * Decimal::new(share, 2), Currency::USD).unwrap();
    let (end, least) = (of_price(share), least.map(of_price));
    waiting(demand, &Lot { pieces, end, each_ask: usd(each_ask), each_day: usd(each_day), days, least, most: None }, take).unwrap()
}

proptest! {
    /// For a fixed number not under never rises as days run out, and never falls below what one is worth at the end; nor for several.
    #[test]
    fn not_under_falls_with_the_days_and_never_below_the_end(guess in guess(), lot in lot(), take in take(), days in 0_u16..56, more in 1_u16..=56) {
        let (demand, more) = (guess.demand().unwrap(), more.min(56 - days));
        let [few, many, over] = [days, days + more, 0].map(|days| of(&demand, &guess, lot, (days, take)));
        let dust = DUST * f64::try_from(guess.at.amount() / take.keep).unwrap();
        for pieces in 1..=lot.0 {
            let under = |waits: &Waiting| waits.under(pieces).unwrap();
            prop_assert!(under(&few) <= under(&many) + dust, "{pieces}: {} in {days} days, {} in {more} more", under(&few), under(&many));
            prop_assert!(under(&over) <= under(&few) + dust, "{pieces}: {} in {days} days, {} at the end", under(&few), under(&over));
        }
    }

    /// A sale raises it: with one fewer left not under for one is never lower. What waiting costs never raises what they bring together.
    #[test]
    fn a_sale_raises_it_and_costs_do_not(guess in guess(), lot in lot(), take in take(), days in 0_u16..=56) {
        let demand = guess.demand().unwrap();
        let under = |lot| of(&demand, &guess, lot, (days, take)).under(1).unwrap();
        let dust = DUST * f64::try_from(guess.at.amount() / take.keep).unwrap();
        let (pieces, share, ..) = lot;
        if 1 < pieces {
            prop_assert!(under(lot) <= under((pieces - 1, share, lot.2, lot.3, lot.4)) + dust);
        }
        let (costly, free) = (of(&demand, &guess, lot, (days, take)).value(), of(&demand, &guess, (pieces, share, 0, 0, lot.4), (days, take)).value());
        prop_assert!(costly <= free + dust * f64::from(pieces));
    }
}
