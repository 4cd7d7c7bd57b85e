//! What was typed on a page is read and written; a figure that can't be comes under the thumb with the reason.

use super::{Page, Wood, keyed, known, open};
use crate::app::App;
use crate::app::doubt::Side;
use crate::app::entry::moisture as per_cent;
use crate::app::workshop::Over;
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now, WoodCommand};
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::money::BoardPriceSet;
use fivebar_core::ledger::kind::wood::{AirRead, MachineMinimumSet, RoomRangeSet, SpeciesAdded, TimberYardSet, VanSet};
use fivebar_core::quantity::reading::{self, Misread, Typing};
use fivebar_core::quantity::{Currency, Decimal, Key, Mass, Span, Units, Volume, half_up};
use fivebar_core::refusal::Refusal;

/// The most degrees that are typed; the table's own ends are less.
const DEGREES: i64 = 999;
/// The most weight, for a board foot or a cubic metre, and the most money for it.
const MOST: i64 = 1_000_000;

/// Writes the page, and leaves it where that was done.
pub fn save(app: &mut App, now: Now) {
    let (known, (currency, units)) = (known(app), app.begins_with());
    let typing = app.speech.typing(units);
    let Over::Wood(wood) = &mut app.workshop.over else { return };
    if let Some(refusal) = there(wood, &known) {
        return app.refuse(refusal);
    }
    // Of these only what was corrected is written; the other kinds are said whole.
    if matches!(wood.page, Page::Saw | Page::Van | Page::Way) && wood.is_as_it_was() {
        let page = wood.page.clone();
        return left(app, page);
    }
    let command = match &wood.page {
        Page::Gluing => return glued(wood, typing),
        Page::Machine(_) | Page::OneWood(_) if nameless(wood) => return app.refuse(Refusal::NameMissing),
        Page::Air => air(wood, typing),
        Page::Movement => room(wood, typing),
        Page::OneWood(_) => own(wood, &known, typing),
        Page::Machine(_) => machine(wood, &known, typing),
        Page::Saw => super::saw::command(wood, typing),
        Page::Van => van(wood, typing),
        Page::Way => way(wood, typing),
        Page::PriceOf if wood.chosen.is_none() => None,
        Page::Price(_) | Page::PriceOf => price(wood, currency, typing),
        Page::Woods | Page::Own | Page::Machines | Page::Yard => None,
    };
    let page = wood.page.clone();
    let Some(command) = command else { return };
    if app.order(&command, now).is_some() {
        left(app, page);
    }
}

/// Air, movement and the van stay, with what they say now; the others lead back to their list, the saw's figures to the plan that asked.
fn left(app: &mut App, page: Page) {
    let from = if page == Page::Saw { app.workshop.asked_from } else { None };
    if let Some(from) = from {
        app.workshop.over = Over::Nothing;
        return app.go(from);
    }
    match page {
        Page::Air | Page::Van => {
            open(app, page);
            written(app);
        }
        Page::OneWood(_) => open(app, Page::Own),
        Page::Machine(_) | Page::Saw => open(app, Page::Machines),
        Page::Way | Page::Price(_) | Page::PriceOf => open(app, Page::Yard),
        _ => written(app),
    }
}

/// What was typed is in the book: nothing but taking it back is left to do here.
fn written(app: &mut App) {
    if let Over::Wood(wood) = &mut app.workshop.over {
        wood.fresh = true;
    }
}

/// A wood without a name, or a machine that is in no list.
fn nameless(wood: &Wood) -> bool {
    let in_list = matches!(wood.page, Page::Machine(_)) && wood.chosen.is_some();
    !in_list && wood.name.trim().is_empty()
}

/// The name of another wood or machine, or a machine of the list that has its figures already: nothing takes the place of another.
fn there(wood: &Wood, known: &Workshop) -> Option<Refusal> {
    match &wood.page {
        Page::OneWood(opened) => wood_there(&wood.name, opened.as_ref(), known),
        Page::Machine(opened) => machine_there(wood, opened.as_ref(), known),
        _ => None,
    }
}

fn wood_there(name: &str, opened: Option<&Key>, known: &Workshop) -> Option<Refusal> {
    let mut others = known.wood.woods.own().filter(|(key, _)| Some(*key) != opened);
    let (_, same) = others.find(|(_, own)| !keyed::differ(&own.name, name))?;
    Some(Refusal::WoodThere { name: same.name.clone() })
}

fn machine_there(wood: &Wood, opened: Option<&Key>, known: &Workshop) -> Option<Refusal> {
    let same = |machine: &&Key| match (&wood.chosen, known.wood.machine_names.get(*machine)) {
        (Some(chosen), _) => chosen == *machine,
        (None, Some(name)) => !keyed::differ(name, &wood.name),
        (None, None) => keyed::of_machine(&wood.name).as_ref() == Some(*machine),
    };
    let machine = known.wood.machines.keys().filter(|machine| Some(*machine) != opened).find(same)?;
    Some(Refusal::MachineThere { machine: machine.clone(), name: known.wood.machine_names.get(machine).cloned() })
}

fn glued(wood: &mut Wood, typing: Typing) {
    let Some(_) = wood.form.take(0, |text| per_cent(text, typing.sign)) else { return };
    let text = wood.form.text(0).to_owned();
    wood.glued.push(text);
    wood.form.put(0, String::new());
}

/// Degrees may lie below zero: the table's own cold end does.
fn degrees_of(text: &str, typing: Typing) -> Result<Decimal, Misread> {
    let (below, above) = text.trim().strip_prefix(['-', '\u{2212}']).map_or((false, text), |above| (true, above));
    let degrees = reading::number(above, typing.sign, Decimal::ZERO..=Decimal::from(DEGREES))?;
    Ok(if below { -degrees } else { degrees })
}

fn air(wood: &mut Wood, typing: Typing) -> Option<Command> {
    let degrees = wood.form.take(0, |text| degrees_of(text, typing))?;
    let humidity = wood.form.take(1, |text| reading::percent(text, typing.sign))?;
    let place = Some(wood.name.trim().to_owned()).filter(|place| !place.is_empty());
    let celsius = match typing.units {
        Units::Inch => {
            let ninths = degrees.checked_sub(Decimal::from(32))?.checked_mul(Decimal::from(5))?;
            half_up(ninths.checked_div(Decimal::from(9))?, 4)
        }
        Units::Metric => degrees,
    };
    Some(Command::Wood(WoodCommand::ReadAir(AirRead { temperature: Exact(celsius), humidity: Exact(humidity), place })))
}

fn room(wood: &mut Wood, typing: Typing) -> Option<Command> {
    let low = wood.form.take(1, |text| per_cent(text, typing.sign))?;
    let high = wood.form.take(2, |text| per_cent(text, typing.sign))?;
    Some(Command::Wood(WoodCommand::SetRoom(RoomRangeSet { low: Exact(low), high: Exact(high), job: None })))
}

fn own(wood: &mut Wood, known: &Workshop, typing: Typing) -> Option<Command> {
    let number = |text: &str| reading::number(text, typing.sign, Decimal::ZERO..=Decimal::from(MOST));
    let weight = wood.form.take(0, number)?;
    let tangential = wood.form.maybe(1, |text| reading::percent(text, typing.sign))?.map(share);
    let radial = wood.form.maybe(2, |text| reading::percent(text, typing.sign))?.map(share);
    let density = Exact(density(weight, typing.units));
    let name = wood.name.trim().to_owned();
    let taken = |key: &Key| known.wood.woods.own_of(key).is_some();
    let key = match &wood.page {
        Page::OneWood(Some(key)) => key.clone(),
        _ => keyed::new_wood(&name, taken)?,
    };
    let from = Some(wood.from.trim().to_owned()).filter(|from| !from.is_empty());
    Some(Command::Wood(WoodCommand::AddSpecies(SpeciesAdded { key, name, density, radial, tangential, from, gone: None })))
}

/// A share of per cent.
fn share(per_cent: Decimal) -> Exact {
    Exact(per_cent.checked_div(Decimal::ONE_HUNDRED).unwrap_or_default())
}

/// Kilograms a cubic metre of what a board foot weighs in pounds, to a hundredth of a kilogram.
fn density(weight: Decimal, units: Units) -> Decimal {
    match units {
        Units::Inch => {
            let pound = Decimal::try_from(Mass::lb(1.0).as_kg()).unwrap_or_default();
            let foot = Decimal::try_from(Volume::BOARD_FOOT.cubic_metres()).unwrap_or_default();
            let kg = weight.checked_mul(pound).and_then(|kg| kg.checked_div(foot));
            half_up(kg.unwrap_or(Decimal::MAX), 2)
        }
        Units::Metric => weight,
    }
}

fn machine(wood: &mut Wood, known: &Workshop, typing: Typing) -> Option<Command> {
    let length = Some(wood.form.side(0, Side::Least, typing)?);
    let width = wood.form.maybe_side(1, Side::Least, typing)?;
    let thickness = wood.form.maybe_side(2, Side::Least, typing)?;
    let own = Some(wood.name.trim().to_owned()).filter(|name| !name.is_empty());
    let taken = |key: &Key| known.wood.machines.contains_key(key);
    let (machine, name) = match &wood.chosen {
        Some(machine) => (machine.clone(), own),
        None => (keyed::new_machine(own.as_deref()?, taken)?, own),
    };
    Some(Command::Wood(WoodCommand::SetMachine(MachineMinimumSet { machine, thickness, width, length, name })))
}

fn van(wood: &mut Wood, typing: Typing) -> Option<Command> {
    let grams = |text: &str| reading::mass(text, typing).map(Mass::as_grams);
    let payload = Some(wood.form.take(0, grams)?).filter(|_| wood.is_corrected(0));
    let person = wood.form.maybe(1, grams)?.filter(|_| wood.is_corrected(1));
    Some(Command::Wood(WoodCommand::SetVan(VanSet { payload, person })))
}

fn way(wood: &mut Wood, typing: Typing) -> Option<Command> {
    let distance = Some(wood.form.take(0, |text| reading::distance(text, typing))?).filter(|_| wood.is_corrected(0));
    let span = Some(wood.form.take(1, |text| reading::span(text, typing.sign, Span::RUN_MOST))?).filter(|_| wood.is_corrected(1));
    Some(Command::Wood(WoodCommand::SetTimberYard(TimberYardSet { distance, span })))
}

fn price(wood: &mut Wood, currency: Currency, typing: Typing) -> Option<Command> {
    let amount = wood.form.take(0, |text| reading::number(text, typing.sign, Decimal::ZERO..=Decimal::from(MOST)))?;
    let facts = BoardPriceSet { currency, amount: Exact(amount), per: wood.per, wood: wood.chosen.clone() };
    Some(Command::Money(MoneyCommand::SetBoardPrice(facts)))
}
