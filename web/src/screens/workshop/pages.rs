//! The plain pages: rack, costs of no job, light and hand, cautions, help, about.

use super::super::count::{name, size};
use super::super::{Screen, Seen};
use super::{back, page, say};
use crate::app::workshop::Tap;
use crate::app::workshop::figures::Figure;
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::seg::{Seg, seg};
use crate::view::{El, el};
use crate::words::en::{common, workshop as words};
use fivebar_core::haul::Haul;
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Decimal;
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::count::tile;
use fivebar_core::sheet::workshop::workshop;

fn stocked(app: &App) -> Vec<Haul> {
    fold::hauls(&app.shelf().book).filter(|haul| haul.piles.iter().any(|pile| 0 < pile.on_rack())).collect()
}

/// How many good pieces lie on the rack.
pub fn on_rack(app: &App, seen: Seen<'_>) -> String {
    let pieces = stocked(app).iter().flat_map(|haul| &haul.piles).fold(0u32, |sum, pile| sum.saturating_add(pile.on_rack()));
    common::pieces(pieces, &seen.speech.count(pieces))
}

/// The rack: good pieces no job has, by haul and age.
pub fn rack(app: &App, seen: Seen<'_>) -> Screen {
    let hauls = stocked(app);
    let main = el("main", "scr").kids(hauls.is_empty().then(|| el("p", "").text(words::RACK_EMPTY))).kids(hauls.iter().map(|haul| {
        let weeks = haul.began.day().until(seen.now.day()).max(0) / 7;
        let head = words::weeks(&seen.speech.number(Decimal::from(weeks), 0, 0), &seen.speech.day(haul.began));
        let rows = haul.piles.iter().filter(|pile| 0 < pile.on_rack()).map(|pile| {
            let shown = tile(pile);
            let what = el("span", "").kid(el("b", "nm").text(name(&shown))).kid(crate::parts::fraction::worded(
                "span",
                "s",
                size(&shown, haul.units, seen.speech),
            ));
            el("div", "pile row mid").kid(what).kid(el("b", "t30 w8").text(seen.speech.count(pile.on_rack())))
        });
        el("section", "rackhaul").kid(el("h2", "").text(head)).kid(el("div", "card list").kids(rows))
    }));
    page(app, ("workshop/rack", words::RACK), main, seen)
}

/// Costs of no job this year.
pub fn costs(app: &App, seen: Seen<'_>) -> Screen {
    let shop = Shop::of(&app.shelf().book, seen.now.at);
    let costs = workshop(&shop, seen.now.offset).map(|sheet| sheet.costs).unwrap_or_default();
    let lists = costs.values().map(|year| {
        let lines = year.lines.iter().rev().map(|line| {
            let what = line.what.clone().unwrap_or_else(|| words::COSTS.to_owned());
            el("p", "row").kid(el("span", "").text(what)).kid(el("b", "").text(seen.speech.money(line.sum)))
        });
        el("section", "card").kid(el("p", "t22 w8").text(seen.speech.money(year.total))).kids(lines)
    });
    let empty = costs.is_empty().then(|| el("p", "").text(words::NO_COSTS));
    let main = el("main", "scr").kids(empty).kids(lists).kid(key("key h88", words::WRITE_DOWN, "", say(Tap::Figure(Figure::Spent))));
    page(app, ("workshop/costs", words::COSTS), main, seen)
}

/// Light or dark.
pub fn hand(seen: Seen<'_>) -> Screen {
    const THEMES: [(&str, &str); 3] = [("phone", words::AS_THE_PHONE), ("light", words::LIGHT), ("dark", words::DARK)];
    let _ = seen;
    let segs = THEMES.iter().map(|(_, name)| Seg::new(*name, false)).collect();
    let main = el("main", "scr").kid(seg(words::HAND, segs, |nth| say(Tap::Theme(THEMES.get(nth).map_or("phone", |(key, _)| *key)))));
    Screen::new("workshop/hand", head(Head::new(words::WORKSHOP, words::HAND)), main).foot(el("footer", "foot").kid(back()))
}

/// Headings and their lines.
pub fn texts(place: &'static str, title: &'static str, lines: &'static [(&'static str, &'static str)]) -> Screen {
    let main = el("main", "scr")
        .kids(lines.iter().map(|(name, text)| el("section", "said").kid(el("h2", "strong").text(*name)).kid(el("p", "").text(*text))));
    Screen::new(place, head(Head::new(words::WORKSHOP, title)), main).foot(el("footer", "foot").kid(back()))
}

/// What this is.
pub fn about() -> Screen {
    let lines: [El<Msg>; 3] = [words::VERSION, words::NO_NETWORK, words::LICENCES].map(|line| el("p", "").text(line));
    Screen::new("workshop/about", head(Head::new(words::WORKSHOP, words::ABOUT)), el("main", "scr").kids(lines))
        .foot(el("footer", "foot").kid(back()))
}
