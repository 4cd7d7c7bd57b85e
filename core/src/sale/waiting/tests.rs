use super::super::demand::{Fewer, Guess, USUAL_RATIO};
use super::*;

fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn usd(text: &str) -> Money {
    Money::book(d(text), Currency::USD).unwrap()
}

fn all() -> Take {
    Take { keep: Decimal::ONE, fixed: Decimal::ZERO }
}

fn guess() -> Guess {
    Guess { asks: d("3"), buys: d("0.25"), at: usd("145"), ratio: USUAL_RATIO, no_show: d("0") }
}

fn lot() -> Lot {
    Lot { pieces: 5, end: usd("60"), each_ask: usd("0"), each_day: usd("0"), days: 28, least: None, most: None }
}

fn of(lot: &Lot) -> Waiting {
    waiting(&guess().demand().unwrap(), lot, all()).unwrap()
}

#[test]
fn with_no_day_left_a_piece_is_worth_its_end() {
    let over = of(&Lot { days: 0, ..lot() });
    assert_eq!((over.not_under(1), over.not_under(5)), (Ok(usd("60")), Ok(usd("300"))));
    assert_eq!((over.none_sold(), over.some_stay(), over.next_sale()), (1.0, 1.0, Ok(None)));
}

#[test]
fn where_nobody_asks_waiting_brings_nothing() {
    let nobody = Guess { asks: d("0"), ..guess() }.demand().unwrap();
    let waits = waiting(&nobody, &Lot { each_day: usd("1"), ..lot() }, all()).unwrap();
    assert_eq!((waits.not_under(1), waits.to_ask(), waits.none_sold()), (Ok(usd("60")), 0.0, 1.0));
}

/// For a fixed number of pieces not under never rises as days run out, and never falls below what one is worth at the end.
#[test]
fn not_under_falls_with_the_days_and_rises_with_a_sale() {
    for pieces in 1..=5 {
        let mut before = 0.0;
        for days in 0..=56 {
            let now = of(&Lot { pieces, days, ..lot() }).under(1).unwrap();
            assert!(before <= now + 1e-9 && 60.0 <= now + 1e-9, "{pieces} pieces, {days} days: {now} after {before}");
            before = now;
        }
    }
    for pieces in 2..=5 {
        let fewer = of(&Lot { pieces: pieces - 1, ..lot() }).under(1).unwrap();
        assert!(of(&Lot { pieces, ..lot() }).under(1).unwrap() < fewer);
    }
}

/// One piece where one in e^p buys at p and x = λτ / e: V = ln(1 + x), so by hand not sold at all: 1 / (1 + x).
#[test]
fn the_chance_that_nothing_is_sold_has_a_closed_form() {
    for come in [0.05, 0.5, 2.0] {
        let demand = Demand { come, ask: come, share: libm::exp(-1.0), at: 1.0, scale: 1.0, fewer: Fewer::ByShares };
        let lot = Lot { pieces: 1, end: usd("0"), each_ask: usd("0"), each_day: usd("0"), days: 20, least: None, most: None };
        let waits = waiting(&demand, &lot, all()).unwrap();
        let x = come * 20.0 / std::f64::consts::E;
        assert!((waits.none_sold() - 1.0 / (1.0 + x)).abs() < 1e-6, "{come}: {}", waits.none_sold());
        assert!((waits.some_stay() - waits.none_sold()).abs() < 1e-12);
    }
}

/// Where the least to be asked is more than would be best at every moment, it is asked throughout: of those who come a share s buys at p, so by hand
/// V = p - (p - end) e^-λsτ, and not sold at all is e^-λsτ.
#[test]
fn at_one_price_throughout_waiting_has_a_closed_form() {
    for (come, least) in [(0.05, 3), (0.5, 3), (2.0, 6)] {
        let demand = Demand { come, ask: come, share: libm::exp(-1.0), at: 1.0, scale: 1.0, fewer: Fewer::ByShares };
        let least_sum = Some(Money::book(Decimal::from(least), Currency::USD).unwrap());
        let lot = Lot { pieces: 1, end: usd("1"), each_ask: usd("0"), each_day: usd("0"), days: 20, least: least_sum, most: None };
        let waits = waiting(&demand, &lot, all()).unwrap();
        let price = f64::from(least);
        let stays = libm::exp(-come * libm::exp(-price) * 20.0);
        assert!((waits.value() - (price - (price - 1.0) * stays)).abs() < 1e-6, "{come}: {}", waits.value());
        assert!((waits.none_sold() - stays).abs() < 1e-6, "{come}: {}", waits.none_sold());
    }
}

/// Larger steps are near enough for a band.
#[test]
fn about_is_within_a_ten_thousandth() {
    for (asks, days) in [("0.5", 10), ("3", 28), ("40", 56)] {
        let demand = Guess { asks: d(asks), ..guess() }.demand().unwrap();
        let lot = Lot { days, each_ask: usd("4"), each_day: usd("1.50"), ..lot() };
        let (fine, coarse) = (waiting(&demand, &lot, all()).unwrap(), about(&demand, &lot, all()).unwrap());
        for pieces in 1..=5 {
            let (fine, coarse) = (fine.under(pieces).unwrap(), coarse.under(pieces).unwrap());
            assert!((coarse / fine - 1.0).abs() < 1e-4, "{asks} a week: {pieces} for {coarse}, not {fine}");
        }
    }
}

#[track_caller]
fn check(lot: Lot, refused: Refusal) {
    assert_eq!(waiting(&guess().demand().unwrap(), &lot, all()), Err(refused));
}

#[test]
fn what_nobody_has_is_refused() {
    check(Lot { pieces: 0, ..lot() }, Refusal::NothingAsked);
    check(Lot { pieces: 1_000_000, ..lot() }, Refusal::TooManyWait { left: 1_000_000, most: 200 });
    check(Lot { days: 57, ..lot() }, Refusal::DaysOutOfRange { met: 57, least: 0, most: 56 });
    check(Lot { end: usd("-1"), ..lot() }, Refusal::MoneyBelowNothing { met: usd("-1") });
    check(Lot { each_day: usd("-1"), ..lot() }, Refusal::MoneyBelowNothing { met: usd("-1") });
    let euro = Money::zero(Currency::EUR);
    check(Lot { each_ask: euro, ..lot() }, Refusal::CurrenciesMixed { one: Currency::USD, other: Currency::EUR });
    assert_eq!(of(&lot()).not_under(6), Err(Refusal::NotThatMany { asked: 6, there: 5 }));
}

/// `tests/checks/moser_sequence.csv` (Moser 1956, recalled; the Cayley-Moser problem): n offers are still to come, each spread evenly from 0 to 1,
/// and each is taken or left. A price brings as much where people would pay from 1/2 to 1, spread evenly: with one who surely comes, the best
/// price gains (1 - V)^2 / 2 beyond V, as hearing the offer does. Each row is one flow of ours from the row before.
#[test]
fn offers_spread_evenly_are_worth_what_is_published() {
    let mut waits = evenly();
    let rows = include_str!("../../../../tests/checks/moser_sequence.csv").lines().skip(1);
    let mut n = 0;
    for row in rows {
        let figures: Vec<f64> = row.split(',').map(|figure| figure.parse().unwrap()).collect();
        let [left, value, accept, _] = figures[..] else { panic!("{row}") };
        n += 1;
        assert_eq!(left, f64::from(n));
        assert!((waits.one_more() - accept).abs() < 1e-9, "{row}: accepted from {}", waits.one_more());
        hear_one_more(&mut waits);
        assert!((waits.value() - value).abs() < 1e-9, "{row}: worth {}", waits.value());
    }
    assert_eq!(n, 20);
}

/// None of those offers is to come yet.
fn evenly() -> Waiting {
    let evenly = Demand { come: 1.0, ask: 1.0, share: 1.0, at: 0.5, scale: 0.5, fewer: Fewer::Evenly };
    let lot = Lot { pieces: 1, end: usd("0"), days: 1, ..lot() };
    UnderWay::begun(&evenly, &lot, all(), FINE).unwrap().waiting
}

fn hear_one_more(waits: &mut Waiting) {
    waits.left = moved(&waits.left, 1.0, &waits.flow(&waits.left, 0.0));
}

/// The rows `moser-*` of `tests/checks/check_values.json` by the same steps: the values at so many, the third as a fraction (exact: 128 is a
/// power of two), and n (1 - V) of a million (Gnedin, arXiv 2601.04371, read).
#[test]
fn the_same_offers_as_far_as_a_million() {
    let all: serde_json::Value = serde_json::from_str(include_str!("../../../../tests/checks/check_values.json")).unwrap();
    let named = |row: &&serde_json::Value| row["id"].as_str().unwrap().starts_with("moser-");
    let mut rows: Vec<_> = all["topics"]["6-pricing-offers"].as_array().unwrap().iter().filter(named).collect();
    let offers = |row: &serde_json::Value| row["inputs"]["n"].as_u64().unwrap_or(3);
    rows.sort_by_key(|row| offers(row));
    let (mut waits, mut heard) = (evenly(), 0);
    for row in &rows {
        (heard..offers(row)).for_each(|_| hear_one_more(&mut waits));
        heard = offers(row);
        let value = waits.value();
        let (ours, off) = match row["id"].as_str().unwrap() {
            "moser-exact" => (value, 0.0),
            "moser-asymptote" => (heard as f64 * (1.0 - value), row["tolerance"].as_f64().unwrap()),
            _ => (value, row["tolerance"].as_f64().unwrap()),
        };
        let theirs = if row["expected"] == "89/128" { 89.0 / 128.0 } else { row["expected"].as_f64().unwrap() };
        assert!((ours - theirs).abs() <= off, "{row}: {ours}");
    }
    assert_eq!((rows.len(), heard), (9, 1_000_000));
}
