//! Workshop: the age of the copy, the rate, how one is paid, people, rack, costs, this phone, help.

pub mod cans;
mod coming;
mod copies;
mod costs;
mod designs;
mod figures;
pub mod hours;
mod opening;
mod pages;
mod people;
mod rack;
mod rate;
mod sums;
mod taxes;
mod till;
mod tools;
mod wood;
mod year;

use super::count::saved_fact;
use super::{Screen, Seen, undo};
use crate::app::workshop::{Over, Tap};
use crate::app::{App, Common, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, copies as copy_words, dates, design, help, workshop as words};
use fivebar_core::ledger::fold::Workshop;
use std::rc::Rc;

pub use copies::{age_of, since};
pub use figures::per_cent;
pub use wood::movement_written;

/// The screen as it stands.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    match &app.workshop.over {
        Over::Nothing => first(app, seen),
        Over::Rate => rate::screen(app, seen),
        Over::CostsAndTax => rate::costs_and_tax(app, seen),
        Over::Tools => tools::screen(app, seen),
        Over::RealYear => year::screen(app, seen),
        Over::Till => till::screen(app, seen),
        Over::Hours => hours::screen(app, seen),
        Over::Units => till::units(app, seen),
        Over::Copies => copies::screen(app, seen),
        Over::Coming(coming) => coming::screen(coming, app, seen),
        Over::NoCopy(why) => coming::refused(why, seen),
        Over::Wipe => coming::wipe(app, seen),
        Over::Rack => rack::screen(app, seen),
        Over::Designs => designs::screen(app, seen),
        Over::People => people::screen(app, seen),
        Over::Supplier(id) => people::supplier(*id, app, seen),
        Over::Person(changing) => people::changing(changing, app, seen),
        Over::Costs => costs::screen(app, seen),
        Over::Hand => pages::hand(app),
        Over::Cautions => pages::cautions(),
        Over::Help => pages::help(app),
        Over::About => pages::about(),
        Over::Wood(of) => wood::screen(of, app, seen),
        Over::Figure(figure, typed, _) => figures::pad(*figure, typed, app, seen),
    }
}

fn say(tap: Tap) -> Msg {
    Msg::Workshop(tap)
}

fn open(over: Over) -> Msg {
    say(Tap::Open(over))
}

fn first(app: &App, seen: Seen<'_>) -> Screen {
    let (currency, units) = app.begins_with();
    let install = app
        .here
        .can_install
        .then(|| key("key soft h56", copy_words::INSTALL, copy_words::INSTALL_UNDER, Msg::Common(Common::Install)).key("install"));
    let copies = el("div", "col first-col").kid(copies::age(app, seen)).kid(copies::first_key(app)).kids(install);
    let rows = el("div", "rows")
        .kid(row(words::YOUR_RATE, rate::short(app, seen), Over::Rate))
        .kid(row(words::HOW_PAID, till::short(app, seen), Over::Till))
        .kid(row(dates::WORKING_HOURS, hours::short(app, seen), Over::Hours))
        .kid(row(words::COSTS, costs::short(app, seen), Over::Costs))
        .kid(row(words::RACK, rack::short(app, seen), Over::Rack))
        .kid(row(design::DESIGNS, designs::how_many(app, seen), Over::Designs))
        .kid(wood::woods_row())
        .kid(wood::machines_row(app, seen))
        .kid(wood::van_row(app, seen))
        .kid(wood::yard_row(app, seen))
        .kid(row(words::PEOPLE, people::how_many(app, seen), Over::People))
        .kid(row(words::CURRENCY_UNITS, format!("{}, {}", currency.code(), common::length_unit(units)), Over::Units))
        .kid(row(words::HAND, pages::hand_short(app), Over::Hand))
        .kid(row(help::HELP, String::new(), Over::Help))
        .kid(row(help::CAUTIONS, String::new(), Over::Cautions))
        .kid(row(help::ABOUT, String::new(), Over::About));
    let main = el("main", "scr two").kid(copies).kid(el("div", "col").kid(rows));
    let top = Head::new(seen.speech.day(seen.now), words::WORKSHOP).fact(saved_fact(app, seen));
    Screen::new("workshop", head(top), main)
}

/// A line of the index: what it opens, and how that stands.
fn row(name: &'static str, stands: String, over: Over) -> El<Msg> {
    line(name, stands, open(over)).key(name)
}

/// A line that opens something.
fn line(name: impl Into<String>, stands: String, tap: Msg) -> El<Msg> {
    el("button", "")
        .attr("type", "button")
        .on_tap(tap)
        .kid(el("span", "").text(name.into()))
        .kids((!stands.is_empty()).then(|| el("span", "s").text(stands)))
}

/// A page of the workshop, with the undo bar and the way back.
fn page(app: &App, (place, title): (&'static str, &str), main: El<Msg>, seen: Seen<'_>) -> Screen {
    let top = Head::new(words::WORKSHOP, title.to_owned()).fact(saved_fact(app, seen));
    Screen::new(place, head(top), main).foot(foot(app, seen))
}

/// The undo bar, with the way back beside it.
fn foot(app: &App, seen: Seen<'_>) -> El<Msg> {
    let foot = el("footer", "foot");
    match undo::one(app, seen) {
        Some(bar) => foot.kid(el("div", "um").kid(bar).kid(key("key h88 m", common::DONE, "", say(Tap::Close)))),
        None => foot.kid(back()),
    }
}

/// A page that only says something.
fn plain(place: &'static str, title: &str, main: El<Msg>) -> Screen {
    Screen::new(place, head(Head::new(words::WORKSHOP, title.to_owned())), main).foot(el("footer", "foot").kid(back()))
}

fn strong(fact: String) -> Fact {
    Fact::Strong(fact)
}

fn back() -> El<Msg> {
    key("key h56", common::DONE, "", say(Tap::Close))
}

/// Everything folded of the workshop.
fn known(app: &App) -> Rc<Workshop> {
    app.shelf().workshop()
}
