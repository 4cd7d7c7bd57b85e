//! Workshop: the rate, how one is paid, people, rack, costs, copies, help.

mod copies;
mod figures;
mod pages;
mod people;
mod rate;

use super::count::saved_fact;
use super::{Screen, Seen, undo};
use crate::app::workshop::{Over, Tap};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::workshop as words;
use fivebar_core::ledger::fold;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::rate::rate as rate_sheet;

/// The screen as it stands.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    match &app.workshop.over {
        Over::Nothing => first(app, seen),
        Over::Rate => rate::screen(app, seen),
        Over::Till => figures::till(app, seen),
        Over::Units => figures::units(app, seen),
        Over::Copies => copies::screen(app, seen),
        Over::Coming(coming) => copies::coming(coming, seen),
        Over::NoCopy(why) => copies::refused(why, seen),
        Over::Rack => pages::rack(app, seen),
        Over::People => people::screen(app, seen),
        Over::Costs => pages::costs(app, seen),
        Over::Hand => pages::hand(seen),
        Over::Cautions => pages::texts("workshop/cautions", words::CAUTIONS, &words::ALL_CAUTIONS),
        Over::Help => pages::texts("workshop/help", words::HELP, &words::HELP_PAGES),
        Over::About => pages::about(),
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
    let shop = Shop::of(&app.shelf().book, seen.now.at);
    let currency = app.begins_with().0;
    let stack = rate_sheet(&shop, currency).stack;
    let rate = stack.and_then(|rate| fivebar_core::quantity::Money::book(rate.per_hour, currency).ok());
    let rate = rate.map_or_else(|| words::RATE_MISSING.to_owned(), |rate| seen.speech.money(rate));
    let row = |name: &'static str, under: String, over: Over| key("key h56 left", name, under, open(over)).key(name);
    let main = el("main", "scr two")
        .kid(copies::age(app, seen))
        .kid(row(words::KEEP_A_COPY, words::KEEP_UNDER.into(), Over::Copies))
        .kid(row(words::YOUR_RATE, rate, Over::Rate))
        .kid(row(words::HOW_PAID, words::HOW_PAID_UNDER.into(), Over::Till))
        .kid(row(words::CURRENCY_UNITS, format!("{}, {}", currency.code(), figures::units_name(app.begins_with().1)), Over::Units))
        .kid(row(words::RACK, pages::on_rack(app, seen), Over::Rack))
        .kid(row(words::PEOPLE, people::how_many(app, seen), Over::People))
        .kid(row(words::COSTS, words::COSTS_UNDER.into(), Over::Costs))
        .kid(row(words::HAND, String::new(), Over::Hand))
        .kid(
            el("div", "g3").kids(
                [(words::HELP, Over::Help), (words::CAUTIONS, Over::Cautions), (words::ABOUT, Over::About)]
                    .map(|(name, over)| key("key h56", name, "", open(over))),
            ),
        );
    Screen::new("workshop", head(Head::new(seen.speech.day(seen.now), words::WORKSHOP).fact(saved_fact(app, seen))), main)
}

/// A page of the workshop, with the undo bar and the way back.
fn page(app: &App, (place, title): (&'static str, &str), main: El<Msg>, seen: Seen<'_>) -> Screen {
    let top = Head::new(words::WORKSHOP, title.to_owned()).fact(saved_fact(app, seen));
    Screen::new(place, head(top), main).foot(el("footer", "foot").kids(undo::bar(app, seen)).kid(back()))
}

fn back() -> El<Msg> {
    key("key h56", crate::words::en::common::DONE, "", say(Tap::Close))
}

/// Everything folded of the workshop.
fn known(app: &App) -> fold::Workshop {
    fold::workshop(&app.shelf().book)
}
