//! Of a haul: whether it is bought boards, what it is worth, and what is wanted of it.

use super::{money, rounded};
use fivebar_core::haul::Haul;
use fivebar_core::haul::enough::Least;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Decimal, Id};
use fivebar_core::sheet::enough::{Wanted, enough};
use fivebar_core::sheet::past::past;
use fivebar_core::sheet::{Shop, worth};
use serde_json::{Value, json};

fn found(shop: &Shop, id: Id) -> Option<Haul> {
    fold::haul(shop.book, id)
}

pub fn is(shop: &Shop, id: Id) -> bool {
    found(shop, id).is_some_and(|haul| haul.bought)
}

/// None while something is missing, and of bought boards.
pub fn worth_of(shop: &Shop, id: Id) -> Option<Value> {
    let haul = found(shop, id).filter(worth::is_asked)?;
    let worth = worth::worth(shop, &haul, (&past(shop.book, &haul), None)).ok()?.worth?;
    Some(json!({
        "replaced": money(worth.replaced), "saved": money(worth.saved), "cost": money(worth.cost), "gain": money(worth.gain),
        "left_out": worth.left_out,
    }))
}

pub fn wanted(shop: &Shop, id: Id) -> Vec<Value> {
    let sheet = found(shop, id).map(|haul| enough(&haul, past(shop.book, &haul).seen)).unwrap_or_default();
    sheet.wants.iter().map(one).collect()
}

fn one(wanted: &Wanted) -> Value {
    let least = |least| if let Least::Taken(n) = least { json!(n) } else { Value::Null };
    json!({
        "pile": wanted.pile.to_string(),
        "part": wanted.want.part,
        "parts": wanted.want.wanted,
        "pieces": wanted.enough.pieces,
        "held": wanted.enough.held.taken(),
        "chance": rounded(Decimal::try_from(wanted.enough.chance).unwrap_or_default(), 4),
        "likely": least(wanted.enough.likely),
        "sure": least(wanted.enough.sure),
    })
}
