//! Machines, each with the least it may be fed.

use super::super::super::slots::Slot;
use super::{Asked, Screen, Seen, hint, how_many, laid_out, listed, open, row as to, tap};
use crate::app::workshop::wood::{MACHINES, Page, Wood, WoodTap, known};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::chips::{Chip, chips};
use crate::parts::field::{Field, field};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, plan, yard as words};
use fivebar_core::ledger::fold::WoodFacts;
use fivebar_core::quantity::{Key, Length, Listed, Units, begin_large};
use fivebar_core::wood::minimum::Minimum;

/// The line of the workshop's first page.
pub fn row(app: &App, seen: Seen<'_>) -> El<Msg> {
    to(words::MACHINES, how_many(known(app).wood.machines.len(), seen), Page::Machines).key(words::MACHINES)
}

/// A machine by its name, as it stands in a sentence.
pub fn name(machine: &Key, known: &WoodFacts) -> String {
    words::machine(machine.as_str(), known.machine_names.get(machine).map(String::as_str))
}

/// The list, with a key for a new one.
pub fn list(app: &App, seen: Seen<'_>) -> Screen {
    let known = known(app);
    let rows: Vec<El<Msg>> = known.wood.machines.iter().map(|(machine, least)| one(machine, least, &known.wood, (app, seen))).listed();
    let none = rows.is_empty();
    let main = el("main", "scr")
        .kids(none.then(|| el("p", "").text(words::NO_MACHINES)))
        .kids((!none).then(|| el("div", "rows").kids(rows)))
        .kids((!none).then(|| caution(words::NAMED_THERE)))
        .kid(el("div", "push"))
        .kid(key("key h56 wide", plan::SAW, plan::SAW_UNDER, open(Page::Saw)))
        .kid(key("key h88", words::ADD_MACHINE, "", open(Page::Machine(None))));
    listed(("workshop/machines", words::MACHINES), main, app, seen)
}

fn one(machine: &Key, least: &Minimum, known: &WoodFacts, (app, seen): (&App, Seen<'_>)) -> El<Msg> {
    let units = app.begins_with().1;
    let side = |side: Option<Length>| side.map(|side| format!("{} {}", seen.speech.length(side, units), common::length_unit(units)));
    let [length, width, thickness] = [least.length, least.width, least.thickness].map(side);
    let stands = words::least(length.as_deref(), width.as_deref(), thickness.as_deref());
    el("button", "")
        .attr("type", "button")
        .on_tap(open(Page::Machine(Some(machine.clone()))))
        .kid(el("span", "").text(begin_large(&name(machine, known))))
        .kid(worded("span", "s", stands))
        .key(machine.to_string())
}

/// One of them.
pub fn page(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let (known, units) = (known(app), app.begins_with().1);
    let old = if let Page::Machine(Some(machine)) = &wood.page { Some(machine) } else { None };
    let title = old.map_or(words::ADD_MACHINE.to_owned(), |machine| begin_large(&name(machine, &known.wood)));
    let mut asked = Asked::new("workshop/machine", words::MACHINES, title);
    asked.above = if old.is_some() { vec![] } else { which(wood) };
    asked.below = vec![hint(words::MANUAL)];
    asked.slots = [words::LEAST_LENGTH, words::LEAST_WIDTH, words::LEAST_THICKNESS].map(|side| Slot::side(side, units)).to_vec();
    asked.other = old.map(|_| key("key h56", words::TAKE_OFF, "", tap(WoodTap::Remove)));
    laid_out(asked, wood, app, seen)
}

/// The figures of the saw.
pub fn saw(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let units = app.begins_with().1;
    let mut asked = Asked::new("workshop/saw", words::MACHINES, plan::SAW);
    asked.above = vec![hint(plan::SAW_HINT)];
    asked.slots = plan::SAW_FIGURES.map(|label| Slot::side(label, units)).to_vec();
    asked.slots.push(Slot { whole: units == Units::Metric, ..Slot::new(plan::SAW_GLUE, plan::glue_unit(units)) });
    laid_out(asked, wood, app, seen)
}

fn which(wood: &Wood) -> Vec<El<Msg>> {
    let picked = |machine: &str| wood.chosen.as_ref().is_some_and(|chosen| chosen.as_str() == machine);
    let mut shown: Vec<Chip> = MACHINES.iter().map(|machine| Chip::choice(words::machine(machine, None), picked(machine))).listed();
    shown.push(Chip::choice(words::OTHER_MACHINE, wood.chosen.is_none()));
    let pick = |nth: usize| tap(WoodTap::Choose(MACHINES.get(nth).and_then(|machine| Key::read(machine))));
    let named = Field { id: "machine-name", label: words::MACHINE_NAME.into(), value: wood.name.clone(), ..Field::default() };
    let named = wood.chosen.is_none().then(|| field(named, |text| tap(WoodTap::Name(text))));
    [el("h2", "ink1").text(words::WHICH_MACHINE), chips("key h48", shown, pick)].into_iter().chain(named).listed()
}
