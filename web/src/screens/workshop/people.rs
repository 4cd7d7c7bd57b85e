//! Suppliers and people: names stay beside the book and can be forgotten for good.

use super::super::{Screen, Seen};
use super::{known, page, say};
use crate::app::workshop::Tap;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::workshop as words;
use fivebar_core::ledger::fold::Person;
use fivebar_core::ledger::kind::book::Role;

const ROLES: [(Role, &str); 5] = [
    (Role::Supplier, words::SUPPLIER),
    (Role::Buyer, words::BUYER),
    (Role::Helper, words::HELPER),
    (Role::Gallery, words::GALLERY),
    (Role::Maker, words::MAKER),
];

/// Those whose name is known.
fn named(app: &App) -> Vec<(Person, String)> {
    let people = known(app).people.into_iter();
    people.filter_map(|person| Some((person, app.shelf().names.get(&person.id)?.clone()))).collect()
}

/// How many there are.
pub fn how_many(app: &App, seen: Seen<'_>) -> String {
    match named(app).len() {
        0 => String::new(),
        n => seen.speech.number(fivebar_core::quantity::Decimal::from(n), 0, 0),
    }
}

/// The page of people.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let people = named(app);
    let asked =
        Field { id: "person", label: words::NAME.into(), value: app.workshop.text.clone(), keyboard: Keyboard::Words, ..Field::default() };
    let roles = (!app.workshop.text.trim().is_empty()).then(|| {
        let shown = ROLES.iter().map(|(_, name)| Chip::tap(*name)).collect();
        chips("key h56", shown, |nth| say(Tap::AddPerson(ROLES.get(nth).map_or(Role::Supplier, |(role, _)| *role))))
    });
    let main = el("main", "scr")
        .kid(field(asked, |text| say(Tap::Typed(text))))
        .kids(roles)
        .kids(people.is_empty().then(|| el("p", "").text(words::NOBODY)))
        .kids(people.iter().map(|(person, name)| row(person, name)));
    page(app, ("workshop/people", words::PEOPLE), main, seen)
}

fn row(person: &Person, name: &str) -> El<Msg> {
    let role = ROLES.iter().find(|(role, _)| *role == person.role).map_or("", |(_, name)| *name);
    el("div", "um")
        .key(person.id.to_string())
        .kid(el("p", "who").kid(el("b", "").text(name.to_owned())).kid(el("span", "t14 i2").text(role)))
        .kid(key("key h56", words::FORGET, "", say(Tap::Forget(person.id))))
}
