//! The maker's own woods: what they weigh, how they move, where the figures are from.

use super::super::super::slots::Slot;
use super::{Asked, Screen, Seen, hint, laid_out, listed, open, tap};
use crate::app::workshop::wood::{Page, Wood, WoodTap, known, weight_of};
use crate::app::{App, Msg};
use crate::parts::field::{Field, field};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{air as words, yard};
use fivebar_core::quantity::{Key, Listed, Units, begin_large};
use fivebar_core::wood::weight::Doubt;
use fivebar_core::wood::woods::OwnWood;

/// The list, with a key for a new one.
pub fn list(app: &App, seen: Seen<'_>) -> Screen {
    let (known, units) = (known(app), app.begins_with().1);
    let rows: Vec<El<Msg>> = known.wood.woods.own().map(|(key, own)| one(key, own, units, seen)).listed();
    let none = rows.is_empty();
    let main = el("main", "scr")
        .kids(none.then(|| el("p", "t22 w8").text(words::NO_OWN)))
        .kids((!none).then(|| el("div", "rows").kids(rows)))
        .kid(el("div", "push"))
        .kid(key("key h88", words::ADD_OWN, "", open(Page::OneWood(None))));
    listed(("workshop/own-woods", words::OWN), main, app, seen)
}

fn one(key: &Key, own: &OwnWood, units: Units, seen: Seen<'_>) -> El<Msg> {
    let weight = seen.speech.number(weight_of(own.density(), units), 0, 2);
    let doubt = own.density().doubt().ok().flatten().map(|doubt| match doubt {
        Doubt::Light => words::LIGHT,
        Doubt::Heavy => words::HEAVY,
    });
    let stands = format!("{}, {weight} {}", words::YOURS, words::weight_unit(units));
    let said = [own.from.clone(), doubt.map(str::to_owned)].into_iter().flatten();
    super::line(begin_large(&own.name), stands, open(Page::OneWood(Some(key.clone()))))
        .key(key.to_string())
        .kids(said.map(|said| el("span", "t14 i2 whole").text(said)))
}

/// One of them.
pub fn page(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let units = app.begins_with().1;
    let title = if wood.page == Page::OneWood(None) { words::ADD_OWN } else { words::ONE_OWN };
    let mut asked = Asked::new("workshop/own-wood", words::OWN, title);
    let named = Field { id: "wood-name", label: words::NAME.into(), value: wood.name.clone(), ..Field::default() };
    let from = Field { id: "wood-from", label: words::FROM.into(), value: wood.from.clone(), ..Field::default() };
    asked.above = vec![field(named, |text| tap(WoodTap::Name(text))), field(from, |text| tap(WoodTap::From(text)))];
    asked.below = vec![hint(words::OWN_HINT)];
    asked.slots = vec![Slot::new(words::weighs(units), ""), Slot::new(words::FLAT_MOVES, ""), Slot::new(words::QUARTER_MOVES, "")];
    asked.other = matches!(wood.page, Page::OneWood(Some(_))).then(|| key("key h56", yard::TAKE_OFF, "", tap(WoodTap::Remove)));
    laid_out(asked, wood, app, seen)
}
