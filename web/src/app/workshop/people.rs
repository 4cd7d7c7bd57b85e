//! Suppliers and people, heard: an entry holds no name; the name goes beside the book and can be forgotten for good.

use super::super::App;
use super::super::order::Order;
use super::super::shelf::Names;
use super::Over;
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::decide::{BookCommand, Command, Now};
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::ledger::line::document::person_beside;
use fivebar_core::ledger::people::Person;
use fivebar_core::quantity::Id;
use fivebar_core::refusal::Refusal;

/// Adds the person whose name is typed.
pub fn add(app: &mut App, role: Role, now: Now) {
    let name = app.workshop.text.trim().to_owned();
    if named(app, &Command::Book(BookCommand::AddPerson { role }), name, now) {
        app.workshop.text.clear();
        app.workshop.asks_role = false;
    }
}

/// Adds a person of this name by a command whose act begins with it; says whether it did. None is added without a name.
pub fn named(app: &mut App, adds: &Command, name: String, now: Now) -> bool {
    if name.is_empty() {
        return false;
    }
    let Some(written) = app.order(adds, now) else { return false };
    keep(app, written.act, Person::named(name));
    true
}

/// What is known of a person, being changed: name, phone and place, where the stairs stand too.
#[derive(Clone, Debug, PartialEq)]
pub struct Changing {
    pub id: Id,
    pub told: [String; 3],
}

/// Opens what is known of a person; of one who was forgotten there is nothing.
pub fn open(app: &mut App, person: Id) {
    let Some(who) = app.shelf().names.get(&person).cloned() else { return };
    let told = [who.name, who.phone.unwrap_or_default(), who.place.unwrap_or_default()];
    app.workshop.over = Over::Person(Box::new(Changing { id: person, told }));
}

pub fn told(app: &mut App, nth: usize, text: String) {
    if let Over::Person(changing) = &mut app.workshop.over
        && let Some(told) = changing.told.get_mut(nth)
    {
        (*told, app.notice) = (text, None);
    }
}

/// Keeps what is typed: beside the book, where no entry says it.
pub fn save(app: &mut App) {
    let Over::Person(changing) = &app.workshop.over else { return };
    let (id, [name, phone, place]) = (changing.id, changing.told.clone().map(|text| text.trim().to_owned()));
    if name.is_empty() {
        return app.refuse(Refusal::NameMissing);
    }
    (app.workshop.over, app.workshop.opened) = (Over::People, Some(id));
    let who = Person { name, phone: Some(phone).filter(|text| !text.is_empty()), place: Some(place).filter(|text| !text.is_empty()) };
    if app.shelf().names.get(&id).is_none_or(|known| *known == who) {
        return;
    }
    app.orders.push(Order::Append { which: app.which, lines: vec![], names: Names::default() });
    keep(app, id, who);
}

/// Forgets a name for good; until the next act the bar still brings it back.
pub fn forget(app: &mut App, person: Id, now: Now) {
    if app.order(&Command::Book(BookCommand::Forget { person }), now).is_some() {
        let who = app.shelf_mut().names.remove(&person);
        app.workshop.lately = who.map(|who| (person, who));
        let_go(app, person);
    }
}

/// An act was taken back, or put back: the name that goes with it comes and goes along.
pub fn undone(app: &mut App, act: Id) {
    let Some((Fact::Forgotten(forgotten), struck)) = app.shelf().book.entry(act).map(|(entry, struck)| (entry.fact.clone(), struck)) else {
        return;
    };
    let Some((person, who)) = app.workshop.lately.clone().filter(|(person, _)| *person == forgotten.person) else { return };
    if struck {
        keep(app, person, who);
    } else {
        app.shelf_mut().names.remove(&person);
        let_go(app, person);
    }
}

fn keep(app: &mut App, person: Id, who: Person) {
    beside_the_act(app, |names| names.kept.push((person.to_string(), person_beside(&who))));
    app.shelf_mut().names.insert(person, who);
}

fn let_go(app: &mut App, person: Id) {
    beside_the_act(app, |names| names.forgotten.push(person.to_string()));
}

/// Names go into the transaction of the act they belong to.
fn beside_the_act(app: &mut App, add: impl FnOnce(&mut Names)) {
    let appended = app.orders.iter_mut().rev().find_map(|order| if let Order::Append { names, .. } = order { Some(names) } else { None });
    if let Some(names) = appended {
        add(names);
    }
}

#[cfg(test)]
mod tests;
