//! The figures that are known, typed in already when a page is opened.

use super::keyed::MACHINES;
use super::{Page, Wood, known};
use crate::app::App;
use crate::app::form::Form;
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::ledger::kind::money::Measure;
use fivebar_core::quantity::reading::{Sign, Typing};
use fivebar_core::quantity::{Currency, Decimal, Key, Mass, Units, Volume, exact, half_up, writing};
use fivebar_core::wood::movement::{Across, Room};
use fivebar_core::wood::weight::Density;

/// A page with what is known of it typed in.
pub(super) fn filled(app: &App, page: Page) -> Wood {
    let (known, (currency, units)) = (known(app), app.begins_with());
    let typing = app.speech.typing(units);
    match &page {
        Page::Air => Wood::of(page, Form::of(2)),
        Page::Gluing => Wood::of(page, Form::of(1)),
        Page::Movement => movement(&known, typing),
        Page::OneWood(key) => one_wood(&known, key.clone(), typing),
        Page::Machine(key) => machine(&known, key.clone(), typing),
        Page::Saw => Wood::of(page, super::saw::filled(&known, typing)),
        Page::Van => {
            let grams = |grams: Option<i64>| grams.map_or(String::new(), |grams| plain(mass(grams, units), typing.sign));
            Wood::of(page, Form::filled([grams(known.wood.payload), grams(known.wood.person)]))
        }
        Page::Way => {
            let far = known.wood.yard_distance.map_or(String::new(), |far| writing::distance(far, typing));
            let span = known.wood.yard_span.map_or(String::new(), |span| span.as_minutes().to_string());
            Wood::of(page, Form::filled([far, span]))
        }
        Page::Price(wood) => price(&known, wood.clone(), (currency, typing)),
        Page::PriceOf => Wood { page, choosing: true, form: Form::of(1), ..price(&known, None, (currency, typing)) },
        Page::Woods | Page::Own | Page::Machines | Page::Yard => Wood::of(page, Form::default()),
    }
}

fn movement(known: &Workshop, typing: Typing) -> Wood {
    let (low, high) = known.wood.room.unwrap_or_else(heated);
    // Where the air leads wood to a moisture nobody knows its movement at, none is said.
    let now = known.wood.comes_to().filter(|now| (Across::LEAST..=Across::MOST).contains(now));
    let now = now.map_or(String::new(), |now| plain(rounded(now.as_per_cent(), 1), typing.sign));
    let form = Form::filled([String::new(), plain(low, typing.sign), plain(high, typing.sign), now]);
    Wood { chosen: Key::read(usual(typing.units)), ..Wood::of(Page::Movement, form) }
}

fn one_wood(known: &Workshop, key: Option<Key>, typing: Typing) -> Wood {
    let Some(own) = key.as_ref().and_then(|key| known.wood.woods.own_of(key)) else { return Wood::of(Page::OneWood(None), Form::of(3)) };
    let across = |of: Option<f64>| of.map_or(String::new(), |of| plain(rounded(of * 100.0, 4), typing.sign));
    let weight = plain(weight_of(own.density(), typing.units), typing.sign);
    let form = Form::filled([weight, across(own.tangential), across(own.radial)]);
    Wood { name: own.name.clone(), from: own.from.clone().unwrap_or_default(), ..Wood::of(Page::OneWood(key), form) }
}

fn machine(known: &Workshop, key: Option<Key>, typing: Typing) -> Wood {
    let least = key.as_ref().and_then(|key| known.wood.machines.get(key)).copied().unwrap_or_default();
    let side = |side: Option<_>| side.map_or(String::new(), |side| writing::length(side, typing));
    let form = Form::filled([side(least.length), side(least.width), side(least.thickness)]);
    let name = key.as_ref().and_then(|key| known.wood.machine_names.get(key)).cloned().unwrap_or_default();
    let first = MACHINES.first().and_then(|machine| Key::read(machine));
    Wood { chosen: key.clone().or(first), name, ..Wood::of(Page::Machine(key), form) }
}

fn price(known: &Workshop, wood: Option<Key>, (currency, typing): (Currency, Typing)) -> Wood {
    let price = known.board_prices.get(&(currency, wood.clone()));
    let form = Form::filled([price.map_or(String::new(), |price| plain(price.amount, typing.sign))]);
    let usual = if typing.units == Units::Inch { Measure::BoardFoot } else { Measure::Litre };
    let per = price.map_or(usual, |price| measure_of(price.per));
    Wood { chosen: wood.clone(), per, ..Wood::of(Page::Price(wood), form) }
}

/// The price of the wood that was chosen, where it has one; what was typed already stays.
pub(super) fn chosen_price(wood: &mut Wood, known: &Workshop, (currency, typing): (Currency, Typing)) {
    if wood.page == Page::PriceOf && !wood.typed {
        let filled = price(known, wood.chosen.clone(), (currency, typing));
        (wood.form, wood.per) = (filled.form, filled.per);
    }
}

/// A decimal as this language types it.
pub(super) fn plain(n: Decimal, sign: Sign) -> String {
    let written = exact::write(n);
    if sign == Sign::Comma { written.replace('.', ",") } else { written }
}

/// The wood that is asked about first.
fn usual(units: Units) -> &'static str {
    if units == Units::Inch { "ash-white" } else { "oak-european" }
}

/// A heated home, until the maker says another room.
pub(super) fn heated() -> (Decimal, Decimal) {
    (rounded(Room::HEATED.low().as_per_cent(), 1), rounded(Room::HEATED.high().as_per_cent(), 1))
}

/// The weight of a board foot in pounds, or of a cubic metre in kilograms.
pub fn weight_of(density: Density, units: Units) -> Decimal {
    match units {
        Units::Inch => rounded(density.mass(Volume::BOARD_FOOT).as_lb(), 2),
        Units::Metric => rounded(density.as_kg_per_cubic_metre(), 0),
    }
}

/// Grams in pounds or kilograms, as they were typed.
fn mass(grams: i64, units: Units) -> Decimal {
    let mass = Mass::kg(grams as f64 / 1000.0);
    rounded(if units == Units::Inch { mass.as_lb() } else { mass.as_kg() }, 1)
}

fn rounded(n: f64, digits: u32) -> Decimal {
    half_up(Decimal::try_from(n).unwrap_or_default(), digits)
}

/// The measure a price is for.
pub fn measure_of(per: Volume) -> Measure {
    [Measure::BoardFoot, Measure::CubicMetre].into_iter().find(|measure| measure.volume() == per).unwrap_or(Measure::Litre)
}
