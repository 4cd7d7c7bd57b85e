//! The van and what it may carry; the timber yard, the way there and what boards cost.

use super::super::super::slots::Slot;
use super::air::chooses;
use super::{Asked, Screen, Seen, chosen, every_wood, hint, laid_out, listed, open, row as to};
use crate::app::workshop::wood::{Page, Wood, WoodTap, known, measure_of};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{air, common, woods, workshop, yard as words};
use fivebar_core::haul::Aboard;
use fivebar_core::ledger::fold::WoodFacts;
use fivebar_core::money::replacement::BoardPrice;
use fivebar_core::quantity::{Decimal, Key, Listed, Mass, Money, Units, writing};

/// The line of the workshop's first page.
pub fn van_row(app: &App, seen: Seen<'_>) -> El<Msg> {
    let stands = known(app).wood.van().payload.map(|payload| whole(payload, app.begins_with().1, seen));
    to(words::VAN, stands.unwrap_or_else(|| workshop::NOT_SAID.to_owned()), Page::Van).key(words::VAN)
}

fn whole(mass: Mass, units: Units, seen: Seen<'_>) -> String {
    format!("{} {}", seen.speech.whole_mass(mass, units), common::mass_unit(units))
}

/// What it may carry, and what a person weighs.
pub fn van(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let units = app.begins_with().1;
    let unit = common::mass_unit(units);
    let mut asked = Asked::new("workshop/van", workshop::WORKSHOP, words::VAN);
    let beside = known(app).wood.van().carries_beside(Aboard::DRIVER);
    let lead = beside.map_or_else(|| words::VAN_ASK.to_owned(), |mass| words::beside_one(&whole(mass, units, seen)));
    asked.above = vec![el("p", "t22 w8").text(lead), el("p", "t14 i2").text(words::van_hint(&whole(Aboard::PERSON, units, seen)))];
    asked.slots = vec![Slot::new(words::PAYLOAD, unit), Slot::new(words::PERSON, unit)];
    laid_out(asked, wood, app, seen)
}

/// The line of the workshop's first page.
pub fn row(app: &App, seen: Seen<'_>) -> El<Msg> {
    let stands = said_way(&known(app).wood, app.begins_with().1, seen).unwrap_or_else(|| workshop::NOT_SAID.to_owned());
    to(words::YARD, stands, Page::Yard).key(words::YARD)
}

fn said_way(known: &WoodFacts, units: Units, seen: Seen<'_>) -> Option<String> {
    let far = known.yard_distance.map(|far| words::distance(&writing::distance(far, seen.speech.typing(units)), units));
    let span = known.yard_span.map(|span| seen.speech.span(span));
    words::way(far.as_deref(), span.as_deref())
}

/// The way, and each price.
pub fn list(app: &App, seen: Seen<'_>) -> Screen {
    let (known, (currency, units)) = (known(app), app.begins_with());
    let not_said = || workshop::NOT_SAID.to_owned();
    let way = to(words::WAY, said_way(&known.wood, units, seen).unwrap_or_else(not_said), Page::Way);
    let any = known.board_prices.get(&(currency, None)).map_or_else(not_said, |price| said(price, seen));
    let one =
        |wood: &Key, price: &BoardPrice| to(woods::among(wood, &known.wood.woods), said(price, seen), Page::Price(Some(wood.clone())));
    let of_woods = known.board_prices.iter().filter(|((of, _), _)| *of == currency);
    let of_woods = of_woods.filter_map(|((_, wood), price)| Some(one(wood.as_ref()?, price).key(wood.as_ref()?.to_string())));
    let prices = el("div", "rows").kid(to(words::ANY_WOOD, any, Page::Price(None)).key("any")).kids(of_woods);
    let main = el("main", "scr")
        .kid(el("div", "rows").kid(way))
        .kid(hint(words::WAY_HINT))
        .kid(el("h2", "gap").text(words::BOARDS_COST))
        .kid(prices)
        .kid(hint(words::PRICES_UNDER))
        .kid(el("div", "push"))
        .kid(key("key h56", words::PRICE_OF_WOOD, "", open(Page::PriceOf)));
    listed(("workshop/yard", words::YARD), main, app, seen)
}

fn said(price: &BoardPrice, seen: Seen<'_>) -> String {
    let digits = price.currency.digits() as u8;
    let sum = Money::book(price.amount, price.currency).ok().filter(|sum| sum.amount() == price.amount);
    let plain = |amount: Decimal| format!("{} {}", seen.speech.number(amount, digits, 6), price.currency.code());
    words::price(&sum.map_or_else(|| plain(price.amount), |sum| seen.speech.money(sum)), measure_of(price.per))
}

/// There and back.
pub fn way(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let mut asked = Asked::new("workshop/way", words::YARD, words::WAY);
    asked.above = vec![hint(words::WAY_HINT)];
    asked.slots = vec![Slot::new(words::WAY, common::distance_unit(app.begins_with().1)), Slot::new(words::MINUTES, "min")];
    laid_out(asked, wood, app, seen)
}

/// What boards of a wood cost, or of any without a price of its own.
pub fn price(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let (known, (currency, units)) = (known(app), app.begins_with());
    let mut asked = Asked::new("workshop/price", words::YARD, words::PRICE);
    let nothing = if wood.page == Page::PriceOf { air::CHOOSE_WOOD } else { words::ANY_WOOD };
    let answer = wood.chosen.as_ref().map_or(nothing.to_owned(), |key| woods::among(key, &known.wood.woods));
    let measures = words::measures(units);
    let segs = measures.iter().map(|per| Seg::new(words::each(*per), *per == wood.per)).listed();
    asked.above = vec![chosen(words::WHICH_WOOD, answer, wood.choosing), even(words::MEASURE, segs, chooses(measures.map(WoodTap::Per)))];
    asked.instead = wood.choosing.then(|| every_wood(wood, app));
    asked.save = asked.save.filter(|_| !wood.choosing);
    asked.slots = vec![Slot::new(words::PRICE_SLOT, currency.code())];
    laid_out(asked, wood, app, seen)
}
