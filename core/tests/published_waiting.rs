//! The value of waiting against a published closed form and against sums made on another road.

mod published;

use fivebar_core::money::{charge::Terms, fee::Fee, tax::Tax};
use fivebar_core::quantity::{Count, Currency, Decimal, Money, Side, Take, half_up};
use fivebar_core::sale::demand::{Demand, Fewer, Guess};
use fivebar_core::sale::waiting::{Lot, Waiting, waiting};
use published::Ours::{Elsewhere, Figures};
use published::{Row, check_all, table, topic};
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
    let demand = Demand { come, ask: come, share: (-1.0_f64).exp(), at: 1.0, scale: 1.0, fewer: Fewer::ByShares };
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

/// One piece, so many who come in all the time left and of whom each costs so much, spread evenly: all buy up to `all`, none from 1 on.
fn evenly(come_in_all: f64, all: f64, each_ask: Decimal) -> Waiting {
    let days = 40_u16;
    let come = come_in_all / f64::from(days);
    let demand = Demand { come, ask: come, share: 1.0, at: all, scale: 1.0 - all, fewer: Fewer::Evenly };
    // Thousandths are said exactly.
    let dinar = |sum| Money::whole(sum, Currency::read("KWD").unwrap()).unwrap();
    let [zero, each_ask] = [Decimal::ZERO, each_ask].map(dinar);
    let lot = Lot { pieces: 1, end: zero, each_ask, each_day: zero, days, least: None, most: None };
    waiting(&demand, &lot, Take { keep: Decimal::ONE, fixed: Decimal::ZERO }).unwrap()
}

fn people(row: &Row) -> f64 {
    f64::try_from(row.input("Lt")).unwrap()
}

/// Topic `6-pricing-offers` of `check_values.json`: exponential demand (Gallego and van Ryzin 1994, and the derivation for what is worth something
/// at the end); a price posted where people would pay from 0 to 1; offers from 0 to 1 that are taken or left, for which the best price gains as
/// much where people would pay from 1/2 to 1; and the same without a last day, each offer at a cost: by as many as make it level.
#[test]
fn pricing_and_offers() {
    check_all(
        &topic("6-pricing-offers"),
        &[
            ("gvr-salvage", Figures(|row| vec![six(of_row(row, "a", row.input("s")).best_ask())])),
            ("gvr-*", Figures(price_and_value)),
            ("uniform-post", Figures(|row| vec![six(evenly(people(row), 0.0, Decimal::ZERO).value())])),
            ("uniform-offers", Figures(|row| vec![six(evenly(people(row), 0.5, Decimal::ZERO).value())])),
            ("moser-*", Elsewhere("one flow of ours for each offer, up to a million, in core/src/sale/waiting/tests.rs")),
            ("search-cost-*", Figures(|row| vec![six(evenly(400.0, 0.5, row.input("c")).value())])),
            ("search-discount", Elsewhere("nothing of ours makes money of later worth less: nobody looks further ahead than eight weeks")),
            (
                "secretary-*",
                Elsewhere("offers known by rank alone, and only the best one counts; ours are sums, and each brings what it is"),
            ),
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
