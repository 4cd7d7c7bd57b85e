//! Suppliers and people: names stay beside the book and can be forgotten for good.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, supplier as past};
use super::{known, line, open, page, say};
use crate::app::workshop::people::Changing;
use crate::app::workshop::{Over, Tap};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, workshop as words};
use fivebar_core::ledger::fold::Person;
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::quantity::{Id, Listed, in_small, order_by_key};

const ROLES: [(Role, &str); 5] = [
    (Role::Supplier, words::SUPPLIER),
    (Role::Buyer, words::BUYER),
    (Role::Helper, words::HELPER),
    (Role::Gallery, words::GALLERY),
    (Role::Maker, words::MAKER),
];

/// Those whose name is known, by what they are and then by name.
fn named(app: &App) -> Vec<(Person, String)> {
    let people = known(app).people.clone().into_iter();
    let mut people: Vec<_> = people.filter_map(|person| Some((person, app.shelf().name(person.id)?.clone()))).listed();
    let place = |role: Role| ROLES.iter().position(|(other, _)| *other == role);
    order_by_key(&mut people, |(person, name)| (place(person.role), in_small(name)));
    people
}

/// How many there are.
pub fn how_many(app: &App, seen: Seen<'_>) -> String {
    match named(app).len() {
        0 => words::NONE_YET.to_owned(),
        n => seen.speech.number(fivebar_core::quantity::Decimal::from(n), 0, 0),
    }
}

/// The page of people.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let people = named(app);
    let value = app.workshop.text.clone();
    let typed = !value.trim().is_empty();
    let asked = Field { id: "person", label: words::NAME.into(), value, keyboard: Keyboard::Words, ..Field::default() };
    let roles = typed.then(|| {
        let shown = ROLES.iter().map(|(_, name)| Chip::tap(*name)).listed();
        let roles = chips("key h56", shown, |nth| say(Tap::AddPerson(ROLES.get(nth).map_or(Role::Supplier, |(role, _)| *role))));
        el("div", "adding").kid(el("h2", "").text(words::ADD_AS)).kid(roles)
    });
    let list = el("div", "rows").kids(people.iter().map(|(person, name)| row(person, name, app)));
    let main = el("main", "scr")
        .kid(field(asked, |text| say(Tap::Typed(text))))
        .kids(
            (typed && app.workshop.asks_role)
                .then(|| el("p", "why").attr("role", "alert").text(words::not_added(app.workshop.text.trim()))),
        )
        .kids(roles)
        .kids(people.is_empty().then(|| el("p", "t22 w8").text(words::NOBODY)))
        .kids((!people.is_empty()).then_some(list))
        .kid(el("p", "t14 i2").text(words::NAMES_STAY));
    page(app, ("workshop/people", words::PEOPLE), main, seen)
}

/// A supplier's past, and the name that can be forgotten.
pub fn supplier(id: Id, app: &App, seen: Seen<'_>) -> Screen {
    let name = app.shelf().name(id).cloned();
    let forget = name.is_some().then(|| opened(id, app));
    page(app, ("workshop/supplier", &name.unwrap_or_else(|| words::SUPPLIER.to_owned())), past::main(id, app, seen).kids(forget), seen)
}

/// Phone and place, the way to change them, and the name that can be forgotten.
fn opened(id: Id, app: &App) -> El<Msg> {
    let known = app.shelf().names.get(&id).cloned().unwrap_or_default();
    let said = [known.phone, known.place].into_iter().flatten().map(|text| el("p", "w8").text(text));
    el("div", "opened")
        .kids(said)
        .kid(key("key h56", words::PHONE_AND_PLACE, "", say(Tap::Person(id))).key("change"))
        .kid(el("p", "t14 i2").text(words::FORGOTTEN_UNDER))
        .kid(key("key h56", words::FORGET, "", say(Tap::Forget(id))).key("forget"))
}

/// Name, phone and place, being changed.
pub fn changing(changing: &Changing, app: &App, seen: Seen<'_>) -> Screen {
    let asked = [("who", words::THEIR_NAME), ("phone", words::PHONE), ("place", words::PLACE)];
    let fields = asked.into_iter().zip(&changing.told).enumerate().map(|(nth, ((id, label), value))| {
        let keyboard = if id == "phone" { Keyboard::Phone } else { Keyboard::Words };
        let asked = Field { id, label: label.into(), value: value.clone(), keyboard, fleeting: true, ..Field::default() };
        field(asked, move |text| say(Tap::Told(nth, text)))
    });
    let main = el("main", "scr").kids(fields).kid(el("p", "t14 i2").text(words::NAMES_STAY));
    let keys = el("div", "g2").kid(key("key h88 m", common::NOT_NOW, "", say(Tap::Close))).kid(key(
        "key solid h88 m",
        common::DONE,
        "",
        say(Tap::SavePerson),
    ));
    let top = Head::new(words::PEOPLE, changing.told.first().cloned().unwrap_or_default()).fact(saved_fact(app, seen));
    Screen::new("workshop/person", head(top), main).foot(el("footer", "foot").kid(keys))
}

fn row(person: &Person, name: &str, app: &App) -> El<Msg> {
    if person.role == Role::Supplier {
        return el("div", "").key(person.id.to_string()).kid(line(name, words::SUPPLIER.to_owned(), open(Over::Supplier(person.id))));
    }
    let role = ROLES.iter().find(|(role, _)| *role == person.role).map_or("", |(_, name)| *name);
    let is_open = app.workshop.opened == Some(person.id);
    let top = line(name, role.to_owned(), say(Tap::Line(person.id))).attr("aria-expanded", if is_open { "true" } else { "false" });
    let forget = is_open.then(|| opened(person.id, app));
    el("div", "").key(person.id.to_string()).kid(top).kids(forget)
}
