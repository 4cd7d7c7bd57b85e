//! Floats to the last bit: a terminal and a phone hold the same figures.

use fivebar_core::quantity::chance::{BetaBinomial, student};
use fivebar_core::quantity::{Currency, Decimal, Money, Take};
use fivebar_core::sale::demand::{Guess, USUAL_RATIO};
use fivebar_core::sale::learning::{Heard, Seen, belief};
use fivebar_core::sale::waiting::Lot;

pub fn chances_are_as_pinned() {
    let at_least = |(n, alpha, beta), k| BetaBinomial::new(n, alpha, beta).unwrap().at_least(k);
    let ours = [
        at_least((38, 9.0, 3.0), 20),
        at_least((999, 0.06, 19.94), 990),
        at_least((9_999, 2_010.0, 709.5), 7_500),
        student(0.95, 4).unwrap(),
        student(0.8, 1).unwrap(),
        student(0.95, 9_998).unwrap(),
    ];
    let pinned =
        [4606642186702074777_u64, 4053291669513073540, 4593645478342737264, 4613434417370609114, 4614112746015610798, 4611506780959957627];
    assert_eq!(ours.map(f64::to_bits), pinned);
}

/// A guess, what was heard since, and five pieces for eight weeks with all that waiting costs.
fn five_pieces() -> (Guess, Seen, Lot, Take) {
    let usd = |whole: i64| Money::book(Decimal::from(whole), Currency::USD).unwrap();
    let guess = Guess { asks: Decimal::from(8), buys: Decimal::new(25, 2), at: usd(145), ratio: USUAL_RATIO, no_show: Decimal::new(2, 1) };
    let heard = [vec![Heard::Refused { price: usd(145) }; 15], vec![Heard::Bought { price: usd(130) }; 5]].concat();
    let seen = Seen { weeks: Decimal::from(3), asked: 20, never_came: 0, heard };
    let lot = Lot { pieces: 5, end: usd(60), each_ask: usd(4), each_day: usd(1), days: 56, least: None, most: None };
    (guess, seen, lot, Take { keep: Decimal::new(92, 2), fixed: Decimal::new(1, 1) })
}

/// The value of waiting, not under, the best price to ask and the chances, then the band of not under.
pub fn waiting_is_as_pinned() {
    let (guess, seen, lot, take) = five_pieces();
    let found = belief(&guess, &seen).unwrap().prospects(&lot, take).unwrap();
    let waits = &found.likely;
    let ours = [waits.value(), waits.under(1).unwrap(), waits.under(5).unwrap(), waits.best_ask(), waits.none_sold(), waits.some_stay()];
    let pinned =
        [4648245310244179995_u64, 4638369904810757351, 4648684013682569245, 4639851837890750382, 4503503605580527370, 4579108992516188627];
    assert_eq!(ours.map(f64::to_bits), pinned, "{ours:?}");
    assert_eq!(found.band(1, take).unwrap().map(|sum| sum.to_string()), ["108.77 USD", "136.29 USD"]);
}
