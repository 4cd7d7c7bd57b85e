//! Every design, and how many of it the rack gives.

use fivebar_core::ledger::fold::Design;
use fivebar_core::plan::outlook::outlook;
use fivebar_core::quantity::{Currency, Units};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::make::WhyNot;
use fivebar_core::sheet::outlook::{Wood, of_designs};
use serde_json::{Value, json};

/// One seed for all: the same copy always gives the same text.
const SEED: u64 = 1;

pub fn told(shop: &Shop) -> Vec<Value> {
    let designs = &shop.workshop.designs;
    let units = shop.workshop.units.unwrap_or(Units::Inch);
    let woods = of_designs(shop, designs, (shop.workshop.currency.unwrap_or(Currency::USD), units));
    designs.iter().zip(woods).map(|(design, wood)| one(design, wood)).collect()
}

fn one(design: &Design, wood: Result<Wood, WhyNot>) -> Value {
    let found = wood.as_ref().ok().map(|wood| (wood, outlook(&wood.hoped, SEED)));
    let of = |figure: fn(&fivebar_core::plan::outlook::Outlook) -> i64| found.as_ref().map(|(_, found)| figure(found));
    json!({
        "id": design.id.to_string(),
        "name": design.name,
        "parts": design.parts.len(),
        "operations": design.operations.len(),
        "sorted": found.as_ref().map(|(wood, _)| wood.is_sorted()),
        "sure": of(|found| found.sure),
        "likely": of(|found| found.likely),
        "all": of(|found| found.all),
        "short": found.as_ref().and_then(|(wood, found)| wood.parts.get(*found.short.first()?)),
        "draws": of(|found| found.draws.into()),
    })
}
