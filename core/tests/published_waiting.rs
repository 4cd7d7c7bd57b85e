//! The value of waiting against a published closed form and against sums made on another road.

mod published;

use fivebar_core::money::{charge::Terms, fee::Fee, tax::Tax};
use fivebar_core::quantity::{Count, Currency, Decimal, Money, Side, Take, half_up};
use fivebar_core::sale::demand::{Demand, Guess};
use fivebar_core::sale::waiting::{Lot, Waiting, waiting};
use published::Ours::{Elsewhere, Figures};
use published::{Ours, Row, check_all, table, topic};
use std::collections::BTreeMap;

type Line = BTreeMap<String, String>;

fn exact(line: &Line, name: &str) -> Decimal {
    line[name].parse().unwrap_or_else(|why| panic!("{name} {}: {why}", line[name]))
}

fn float(line: &Line, name: &str) -> f64 {
    line[name].parse().unwrap()
}

fn usd(amount: Decimal) -> Money {
    Money::book(amount, Currency::USD).unwrap()
}

#[track_caller]
fn near(what: &str, ours: f64, theirs: f64, off: f64) {
    assert!((ours - theirs).abs() <= off, "{what}: {ours}, not {theirs}");
}

/// `dynamic_pricing_exponential.csv`: J_n(t) = ln of the sum of (at / e)^i / i! up to n, best price 1 + J_n - J_(n-1);
/// Gallego and van Ryzin 1994 (the file's source; eight digits).
#[test]
fn exponential_demand_is_the_closed_form() {
    for line in table("dynamic_pricing_exponential.csv") {
        let waits = exponential(line["units_left_n"].parse().unwrap(), float(&line, "a_times_t"), Decimal::ZERO);
        near("value", waits.value(), float(&line, "J_closed_form"), 1e-6);
        near("price", waits.best_ask(), float(&line, "price_optimal"), 1e-6);
    }
}

/// So many who come in all the time left, of whom one in e to the price buys; what stays is worth so much at the end.
fn exponential(pieces: Count, come_in_all: f64, end: Decimal) -> Waiting {
    let days = 20_u16;
    let come = come_in_all / f64::from(days);
    let demand = Demand { come, ask: come, share: (-1.0_f64).exp(), at: 1.0, scale: 1.0 };
    let zero = usd(Decimal::ZERO);
    let lot = Lot { pieces, end: usd(end), each_ask: zero, each_day: zero, days, least: None, most: None };
    waiting(&demand, &lot, Take { keep: Decimal::ONE, fixed: Decimal::ZERO }).unwrap()
}

/// To the six digits that are printed.
fn six(figure: f64) -> Decimal {
    half_up(Decimal::from_f64_retain(figure).unwrap(), 6)
}

fn of_row(row: &Row, come: &str, end: Decimal) -> Waiting {
    exponential(Count::try_from(row.input("n")).unwrap(), row.input(come).try_into().unwrap(), end)
}

/// Topic `6-pricing-offers` of `check_values.json`: the rows of exponential demand are reckoned (Gallego and van Ryzin 1994, and the
/// derivation for what is worth something at the end).
///
/// The others speak of offers whose spread is known: even from 0 to 1 (Moser 1956; `moser_sequence.csv` is the same row by row), or
/// known by rank alone. Here nobody knows that spread: a maker guesses who asks and who buys, and what is learnt keeps the shape of
/// exponential demand. So there is no formula for them to check, and none is written for their sake (DECISIONS 10).
#[test]
fn pricing_and_offers() {
    const EVEN: Ours = Elsewhere("offers spread evenly from 0 to 1; ours are exponential");
    check_all(
        &topic("6-pricing-offers"),
        &[
            ("gvr-salvage", Figures(|row| vec![six(of_row(row, "a", row.input("s")).best_ask())])),
            ("gvr-*", Figures(price_and_value)),
            ("uniform-*", EVEN),
            ("moser-*", EVEN),
            ("search-cost-*", Elsewhere("offers spread evenly without a last day; what each who asks costs is in patience.csv")),
            ("search-discount", Elsewhere("money of later is not worth less here: eight weeks at most")),
            ("secretary-*", Elsewhere("offers known by rank alone; ours are sums")),
        ],
    );
}

fn price_and_value(row: &Row) -> Vec<Decimal> {
    let waits = of_row(row, "a_t", Decimal::ZERO);
    vec![six(waits.best_ask()), six(waits.value())]
}

/// Half of the last digit that `patience.csv` prints.
const PRINTED: f64 = 5e-5;

/// `patience.csv`: the general case, with tax, fees, no-shows and the costs of waiting (computed, by an independent script).
#[test]
fn the_general_case_is_as_another_road_has_it() {
    for line in table("patience.csv") {
        let of = |name| exact(&line, name);
        let guess = Guess {
            asks: of("asks_per_week_A"),
            buys: of("buy_share_b"),
            at: usd(of("price_ref")),
            ratio: of("ratio_at_a_fifth_less_k"),
            no_show: of("no_show_u"),
        };
        let lot = Lot {
            pieces: line["pieces_n"].parse().unwrap(),
            end: usd(of("end_value_each_S")),
            each_ask: usd(of("cost_per_ask_m")),
            each_day: usd(of("cost_per_day_h")),
            days: line["days_left"].parse().unwrap(),
            least: None,
            most: None,
        };
        let tax = Tax { rate: of("tax_inside_t"), side: Side::Inside };
        let take = Terms { tax, fee: Fee { share: of("fee_share_f"), fixed: of("fee_fixed_c") } }.take().unwrap();
        let waits = waiting(&guess.demand().unwrap(), &lot, take).unwrap();
        let ours = [waits.value(), waits.one_more(), waits.under(1).unwrap(), waits.best_ask()];
        let names = ["value_V_n", "value_of_one_more", "not_under_charge", "best_ask_charge"];
        for (name, ours) in names.into_iter().zip(ours) {
            let theirs = float(&line, name);
            near(&format!("{line:?} {name}"), ours, theirs, (theirs.abs() * 1e-4).max(PRINTED));
        }
    }
}

/// `moser_sequence.csv` (Moser 1956, recalled): marked, not reckoned. Its rows follow from hearing each offer before it is answered,
/// V_(n+1) = E max(X, V_n) = (1 + V_n^2) / 2; asking a price gains half of that at every row, so it is another question (DECISIONS 10).
#[test]
fn offers_that_are_heard_are_another_question() {
    let mut before = 0.0;
    for line in table("moser_sequence.csv") {
        let (value, accept) = (float(&line, "value_V_n"), float(&line, "accept_current_if_at_least_V_(n-1)"));
        near("accepted from", accept, before, 1e-9);
        near("value", value, accept.mul_add(accept, 1.0) / 2.0, 1e-8);
        let gain = |nth: u32| (1.0 - f64::from(nth) / 1e4) * (f64::from(nth) / 1e4 - accept);
        let asked = (0..=10_000).map(gain).fold(0.0, f64::max);
        near("gained by asking, twice", 2.0 * asked, value - accept, 1e-6);
        before = value;
    }
}
