//! One of a list: which wood, from whom, in which order.

use super::super::super::{Screen, Seen};
use super::super::page;
use super::{Choice, RackTap, piles, say, supplier};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::view::{El, el};
use crate::words::en::{rack as words, woods};
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::quantity::{Id, Key, Listed};
use fivebar_core::sheet::stock::find::{From, Order, Wanted, there};
use fivebar_core::wood::species::listed;

/// The answers as keys, each with what a tap on it says.
type Answers = Vec<(Chip, RackTap)>;

/// The page of one choice.
pub fn screen(choice: Choice, app: &App, seen: Seen<'_>) -> Screen {
    let (title, answers) = match choice {
        Choice::Wood => (words::WOOD, of_wood(app, seen)),
        Choice::From => (words::FROM, of_from(app, seen)),
        Choice::Order => (words::ORDER, of_order(app)),
        Choice::BoughtWood | Choice::PileWood(_) => (words::WHICH_WOOD, bought_wood(app)),
        Choice::BoughtFrom => (words::FROM_WHOM, bought_from(app)),
    };
    let main = el("main", "scr picks").kid(keys(answers));
    page(app, ("workshop/rack-choice", title), main, seen)
}

fn keys(answers: Answers) -> El<Msg> {
    let (shown, taps): (Vec<Chip>, Vec<RackTap>) = answers.into_iter().unzip();
    chips("key h56", shown, move |nth| say(taps.get(nth).cloned().unwrap_or(RackTap::Clear)))
}

fn wanted(app: &App, change: impl FnOnce(&mut Wanted)) -> RackTap {
    let mut wanted = app.workshop.rack.wanted.clone();
    change(&mut wanted);
    RackTap::Want(wanted)
}

fn of_wood(app: &App, seen: Seen<'_>) -> Answers {
    let (now, known) = (&app.workshop.rack.wanted.wood, super::super::known(app));
    let one = |wood: Option<Key>| {
        let name = wood.as_ref().map_or(words::ANY.to_owned(), |wood| woods::among(wood, &known.wood.woods));
        (Chip::choice(name, *now == wood), wanted(app, |wanted| wanted.wood = wood))
    };
    let woods = there(&piles(app, seen)).0;
    std::iter::once(None).chain(woods.into_iter().map(Some)).map(one).listed()
}

fn of_from(app: &App, seen: Seen<'_>) -> Answers {
    let now = app.workshop.rack.wanted.from;
    let one = |from: From| (Chip::choice(super::from(from, app), now == from), wanted(app, |wanted| wanted.from = from));
    let all = piles(app, seen);
    let bought = all.iter().any(|pile| pile.haul.bought).then_some(From::Bought);
    let suppliers = there(&all).1.into_iter().map(From::Supplier);
    std::iter::once(From::Anywhere).chain(suppliers).chain(bought).map(one).listed()
}

fn of_order(app: &App) -> Answers {
    let now = app.workshop.rack.wanted.order;
    let one = |order: Order| (Chip::choice(words::order(order), now == order), wanted(app, |wanted| wanted.order = order));
    [Order::Oldest, Order::Longest, Order::Most].map(one).into()
}

/// The maker's own woods, the usual ones, then every other of the tables.
fn bought_wood(app: &App) -> Answers {
    let (units, known) = (app.begins_with().1, super::super::known(app));
    let own = known.wood.woods.own().map(|(key, _)| (key.clone(), woods::among(key, &known.wood.woods)));
    let usual = woods::usual(units);
    let others = listed(units).map(|species| species.key).filter(|key| !usual.contains(key));
    let listed = usual.iter().map(|key| (*key, woods::name(key))).chain(others.map(|key| (key, woods::name(key))));
    let listed = listed.filter_map(|(key, name)| Some((Key::read(key)?, name)));
    let now = &app.workshop.rack.wood;
    own.chain(listed).map(|(key, name)| (Chip::choice(name, now.as_ref() == Some(&key)), RackTap::Wood(key))).listed()
}

fn bought_from(app: &App) -> Answers {
    let now = app.workshop.rack.from;
    let known = super::super::known(app);
    let known = known.people.iter().filter(|person| person.role == Role::Supplier);
    let one = |from: Option<Id>| {
        let name = from.map_or(words::NOT_SAID.to_owned(), |id| supplier(id, app));
        (Chip::choice(name, now == from), RackTap::From(from))
    };
    std::iter::once(None).chain(known.map(|person| Some(person.id))).map(one).listed()
}
