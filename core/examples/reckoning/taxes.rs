//! Sales tax as it was recorded, by currency and year.

use super::{money, rounded};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Currency, Decimal, Money, Set, Wall};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::taxes::{AtRate, YearTaxes, taxes};
use serde_json::{Map, Value, json};

/// Every year in which something was sold or came back, the first of a currency first.
pub fn told(shop: &Shop) -> Vec<Value> {
    let year = |at: Wall| at.day().as_ymd().0;
    let mut years: Set<(Currency, i32)> = Set::new();
    for job in fold::jobs(shop.book) {
        let sold = job.selling.sales.iter().map(|sale| sale.at);
        let back = job
            .selling
            .sales
            .iter()
            .flat_map(|sale| sale.reversed.map(|back| back.at).into_iter().chain(sale.back.iter().map(|back| back.at)));
        let galleries = job.selling.consignments_paid.iter().map(|paid| paid.at);
        years.extend(sold.chain(back).chain(galleries).map(|at| (job.currency, year(at))));
    }
    years.iter().map(|(currency, year)| of_year(shop, *currency, *year)).collect()
}

fn of_year(shop: &Shop, currency: Currency, year: i32) -> Value {
    let head = |found: Value| json!({ "currency": currency.code(), "year": year, "recorded": found });
    match taxes(shop, currency, year) {
        Ok(found) => head(recorded(&found)),
        Err(refusal) => head(json!({ "refused": format!("{refusal:?}") })),
    }
}

fn recorded(found: &YearTaxes) -> Value {
    let one = |at: &AtRate| json!({ "sales": at.sales, "taken": money(at.taken), "tax": money(at.tax) });
    let by_rate: Map<String, Value> = found.by_rate.iter().map(|(rate, at)| (rounded(*rate, 4), one(at))).collect();
    let of = |(rate, tax): (&Option<Decimal>, &Money)| json!({ "rate": rate.map(|rate| rounded(rate, 4)), "tax": money(*tax) });
    json!({ "by_rate": by_rate, "by_galleries": found.by_galleries.iter().map(of).collect::<Vec<_>>(), "tax": money(found.tax) })
}
