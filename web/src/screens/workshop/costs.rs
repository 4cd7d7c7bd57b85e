//! Costs of no job this year, each to be struck; and new ones written down.

use super::super::{Screen, Seen};
use super::opening::{Told, opening};
use super::{page, say};
use crate::app::workshop::Tap;
use crate::app::workshop::figures::{Figure, SPENDING};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{cans as can_words, refusal, workshop as words};
use fivebar_core::ledger::fold::{Booked, Can};
use fivebar_core::quantity::{Listed, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::workshop::{WorkshopSheet, YearCosts, workshop};

/// How it stands, on one line: the year's sum in the maker's currency.
pub fn short(app: &App, seen: Seen<'_>) -> String {
    let shop = Shop::of(&app.shelf().book, seen.now.at);
    let year = workshop(&shop, seen.now.offset).ok().and_then(|sheet| sheet.costs.get(&app.begins_with().0).map(|year| year.total));
    year.map_or_else(|| words::NONE_YET.to_owned(), |sum| format!("{} {}", seen.speech.money(sum), words::THIS_YEAR))
}

/// The page.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let shop = Shop::of(&app.shelf().book, seen.now.at);
    let sheet = workshop(&shop, seen.now.offset);
    let years: Vec<El<Msg>> = match &sheet {
        Ok(sheet) => all_years(sheet, app, seen),
        Err(refusal) => vec![el("p", "why").text(refusal::refused(refusal, seen.speech).what)],
    };
    let kinds = SPENDING.iter().map(|kind| Chip::tap(words::spending(kind))).listed();
    let down = chips("key h56", kinds, |nth| say(Tap::Figure(Figure::Spent(SPENDING.get(nth).copied().unwrap_or("workshop")))));
    let main =
        el("main", "scr").kids(cans(app, seen)).kids(years).kid(el("div", "push")).kid(el("h2", "").text(words::WRITE_DOWN)).kid(down);
    page(app, ("workshop/costs", words::COSTS), main, seen)
}

/// Cans with something in them: what is left, how old it is, what it is still worth.
fn cans(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let known = app.shelf().workshop();
    let rows = known.cans.iter().rev().filter(|can| !can.left().is_zero());
    let rows = rows.map(|can| can_row(can, app, seen)).listed();
    (!rows.is_empty()).then(|| el("section", "year").kid(el("h2", "").text(can_words::OPEN_CANS)).kid(el("div", "card list").kids(rows)))
}

fn can_row(can: &Can, app: &App, seen: Seen<'_>) -> El<Msg> {
    let [left, holds] = [can.left(), can.holds].map(|n| seen.speech.number(n, 0, 2));
    let today = seen.now.day();
    let under = can_words::stands((&left, &holds), can.unit.as_str(), can.months(today));
    let worth = can.worth(today).map(|worth| seen.speech.money(worth)).unwrap_or_default();
    let empty = key("key h56", can_words::IT_IS_EMPTY, "", say(Tap::EmptyCan(can.id)));
    opening(can.id, Told { name: can.what.clone(), under, figure: worth }, app, vec![empty])
}

/// This year, and under it those before.
fn all_years(sheet: &WorkshopSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let none = || vec![el("p", "t22 w8").text(words::NO_COSTS), el("p", "").text(words::COSTS_UNDER)];
    let this = sheet.costs.values().map(|year| of_year(year, words::THIS_YEAR, app, seen));
    let before = sheet.earlier.iter().flat_map(|(of, years)| {
        let of = of.to_string();
        years.values().map(move |year| of_year(year, &of, app, seen))
    });
    let none = if sheet.costs.is_empty() { none() } else { vec![] };
    none.into_iter().chain(this).chain(before).listed()
}

fn of_year(year: &YearCosts, of: &str, app: &App, seen: Seen<'_>) -> El<Msg> {
    let total = el("p", "row").kid(el("b", "t30 w8").text(seen.speech.money(year.total))).kid(el("span", "t14").text(of.to_owned()));
    let part = |name: &'static str, sum: Money| {
        (!sum.is_zero()).then(|| el("div", "dl").kid(el("span", "op").text(name)).kid(el("span", "n").text(seen.speech.money(sum))))
    };
    let (hauls, helpers) = (part(words::OF_HAULS, year.of_hauls), part(words::OF_HELPERS, year.of_helpers));
    let cans = part(can_words::OF_CANS, year.of_cans);
    let lines = year.lines.iter().rev().map(|line| row(line, app, seen));
    el("section", "year").kid(total).kid(el("div", "card list").kids(lines).kids(cans).kids(helpers).kids(hauls))
}

fn row(line: &Booked, app: &App, seen: Seen<'_>) -> El<Msg> {
    let name = line.kind.as_ref().map_or("", |kind| words::spending(kind.as_str())).to_owned();
    let day = seen.speech.day(line.at);
    let under = line.what.as_ref().map_or_else(|| day.clone(), |what| format!("{day}, {what}"));
    opening(line.entry, Told { name, under, figure: seen.speech.money(line.sum) }, app, vec![])
}
