//! The value of waiting against a published closed form and against sums made on another road.

mod published;

use fivebar_core::money::{charge::Terms, fee::Fee, tax::Tax};
use fivebar_core::quantity::{Currency, Decimal, Money, Side, Take};
use fivebar_core::sale::demand::{Demand, Guess};
use fivebar_core::sale::waiting::{Lot, waiting};
use published::table;
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
        let days = 20.0;
        let come = float(&line, "a_times_t") / days;
        let demand = Demand { come, ask: come, share: (-1.0_f64).exp(), at: 1.0, scale: 1.0 };
        let zero = usd(Decimal::ZERO);
        let pieces = line["units_left_n"].parse().unwrap();
        let lot = Lot { pieces, end: zero, each_ask: zero, each_day: zero, days: days as u16 };
        let waits = waiting(&demand, &lot, Take { keep: Decimal::ONE, fixed: Decimal::ZERO }).unwrap();
        near("value", waits.value(), float(&line, "J_closed_form"), 1e-6);
        near("price", waits.best_ask(), float(&line, "price_optimal"), 1e-6);
    }
}

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
        };
        let tax = Tax { rate: of("tax_inside_t"), side: Side::Inside };
        let take = Terms { tax, fee: Fee { share: of("fee_share_f"), fixed: of("fee_fixed_c") } }.take().unwrap();
        let waits = waiting(&guess.demand().unwrap(), &lot, take).unwrap();
        let ours = [waits.value(), waits.one_more(), waits.under(1).unwrap(), waits.best_ask()];
        let names = ["value_V_n", "value_of_one_more", "not_under_charge", "best_ask_charge"];
        for (name, ours) in names.into_iter().zip(ours) {
            let theirs = float(&line, name);
            near(&format!("{line:?} {name}"), ours, theirs, theirs.abs() * 1e-4 + 1e-4);
        }
    }
}
