//! Boards that were bought: wood, size, how many, and what was paid for all of them.

use super::super::super::jobs::entry::Slot;
use super::super::super::{Screen, Seen};
use super::ask::{Asked, laid_out};
use super::{Choice, Page, RackTap, say, supplier};
use crate::app::{App, Msg};
use crate::view::{El, el};
use crate::words::en::{rack as words, woods, workshop};
use fivebar_core::quantity::Listed;

/// The page.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let ((currency, units), rack) = (app.begins_with(), &app.workshop.rack);
    let from = rack.from.map_or(words::NOT_SAID.to_owned(), |id| supplier(id, app));
    let chosen = el("div", "g2").kid(answer(words::WOOD, wood(app), Choice::BoughtWood)).kid(answer(words::FROM, from, Choice::BoughtFrom));
    let sides = [words::THICKNESS, words::WIDTH, words::LENGTH].map(|side| Slot::side(side, units));
    let slots = sides.into_iter().chain([Slot::whole(words::BOARDS), Slot::new(words::PAID, currency.code())]).listed();
    let asked = Asked {
        place: "workshop/rack-buy",
        small: workshop::RACK.into(),
        title: words::BOUGHT_BOARDS.into(),
        above: vec![chosen],
        slots,
        units,
        save: words::SAVE.into(),
        ready: true,
        other: None,
        below: vec![el("p", "i2").text(words::BOUGHT_UNDER)],
    };
    laid_out(asked, app, seen)
}

/// The wood that is chosen.
pub fn wood(app: &App) -> String {
    let known = super::super::known(app);
    app.workshop.rack.wood.as_ref().map_or(words::NOT_SAID.to_owned(), |wood| woods::among(wood, &known.wood.woods))
}

/// An answer that is chosen, and the way to choose another.
pub fn answer(what: &'static str, chosen: String, choice: Choice) -> El<Msg> {
    el("button", "key left")
        .attr("type", "button")
        .key(what)
        .on_tap(say(RackTap::Show(Page::Choose(choice))))
        .kid(el("span", "s").text(what))
        .kid(el("span", "").text(chosen))
}
