//! What waiting is worth, with the band of doubt around it: `cargo bench -p fivebar-core --bench waiting`.
//!
//! Five pieces, eight weeks, eight people a week, twenty of them heard: a guess, what is believed of it, and not under for each.

use fivebar_core::quantity::{Currency, Decimal, Money, Take};
use fivebar_core::sale::demand::{Guess, USUAL_RATIO};
use fivebar_core::sale::learning::{Heard, Seen, belief};
use fivebar_core::sale::waiting::{Lot, waiting};
use std::time::Instant;

const TURNS: u32 = 20;

fn usd(whole: i64) -> Money {
    Money::book(Decimal::from(whole), Currency::USD).expect("in range")
}

fn main() {
    let guess = Guess { asks: Decimal::from(8), buys: Decimal::new(25, 2), at: usd(145), ratio: USUAL_RATIO, no_show: Decimal::new(2, 1) };
    let heard = [vec![Heard::Refused { price: usd(145) }; 15], vec![Heard::Bought { price: usd(130) }; 5]].concat();
    let seen = Seen { weeks: Decimal::from(3), asked: 20, never_came: 0, heard };
    let lot = Lot { pieces: 5, end: usd(60), each_ask: usd(4), each_day: usd(1), days: 56, least: None, most: None };
    let take = Take { keep: Decimal::new(92, 2), fixed: Decimal::new(1, 1) };
    let began = Instant::now();
    for _ in 0..TURNS {
        waiting(&guess.demand().expect("a guess"), &lot, take).expect("a value");
    }
    println!("one value of waiting        {:6.2} ms", began.elapsed().as_secs_f64() * 1e3 / f64::from(TURNS));
    let began = Instant::now();
    let mut last = None;
    for _ in 0..TURNS {
        last = Some(belief(&guess, &seen).and_then(|belief| belief.prospects(&lot, take)).expect("prospects"));
    }
    let last = last.expect("one");
    println!("with what is believed of it {:6.2} ms", began.elapsed().as_secs_f64() * 1e3 / f64::from(TURNS));
    for pieces in 1..=5 {
        let [low, high] = last.band(pieces, take).expect("a band");
        println!("not under for {pieces}: {} ({low} to {high})", last.likely.not_under(pieces).expect("a sum"));
    }
}
