//! Costs of no job this year, each to be struck; and new ones written down.

use super::super::jobs::forms;
use super::super::jobs::hours::{came_back, how};
use super::super::{Screen, Seen, homes, receipts};
use super::opening::{Keys, Told, opening};
use super::{page, say};
use crate::app::workshop::Tap;
use crate::app::workshop::cans::CanTap;
use crate::app::workshop::figures::spending;
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::chips::{Chip, chips};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{cans as can_words, costs as cost_words, refusal, workshop as words};
use fivebar_core::ledger::fold::{Booked, DISTANCE};
use fivebar_core::ledger::kind::money::Home;
use fivebar_core::quantity::{Listed, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::costs::{home_of, on_jobs_too};
use fivebar_core::sheet::workshop::{WorkshopSheet, YearCosts, workshop};

/// How it stands, on one line: the year's sum in the maker's currency.
pub fn short(app: &App, seen: Seen<'_>) -> String {
    let shop = app.shelf().shop(seen.now.at);
    let year = workshop(&shop, seen.now.offset).ok().and_then(|sheet| sheet.costs.get(&app.begins_with().0).map(|year| year.total));
    year.map_or_else(|| words::NONE_YET.to_owned(), |sum| format!("{} {}", seen.speech.money(sum), words::THIS_YEAR))
}

/// The page.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let shop = app.shelf().shop(seen.now.at);
    let sheet = workshop(&shop, seen.now.offset);
    let years: Vec<El<Msg>> = match &sheet {
        Ok(sheet) => all_years(sheet, app, seen),
        Err(refusal) => vec![el("p", "why").text(refusal::refused(refusal, seen.speech).what)],
    };
    if let Some(draft) = &app.workshop.spending {
        return forms::screen(draft, None, app, seen);
    }
    if let Some(draft) = &app.workshop.can {
        return super::cans::form(draft, app, seen);
    }
    let spending = spending(app);
    let kinds = spending.iter().copied().chain([DISTANCE]).map(|kind| Chip::tap(words::spending(kind))).listed();
    let down = chips("key h56", kinds, move |nth| spending.get(nth).map_or(say(Tap::Drive), |kind| say(Tap::Spend(kind))));
    let can = key("key h56", can_words::OPEN_ONE, "", say(Tap::Can(CanTap::New)));
    let main = el("main", "scr")
        .kids(super::cans::open(app, seen))
        .kids(both(&shop, app, seen))
        .kids(years)
        .kids(super::cans::used_up(app, seen))
        .kid(el("div", "push"))
        .kid(el("h2", "").text(words::WRITE_DOWN))
        .kid(down)
        .kid(can);
    page(app, ("workshop/costs", words::COSTS), main, seen)
}

/// Kinds that these costs and jobs both have, each with its two homes.
fn both(shop: &Shop<'_>, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (known, currency) = (&shop.workshop, app.begins_with().0);
    let kinds = on_jobs_too(shop.book, known, (currency, seen.now.day().as_ymd().0));
    let each = kinds.into_iter().map(|kind| {
        let name = homes::name(&kind);
        let is_said = home_of(known, currency, &kind).is_some();
        let said = caution(if is_said { cost_words::on_jobs(&name) } else { cost_words::in_both(&name) });
        let to = |home: Home, words: &'static str| key("key h56", words, "", say(Tap::Home(kind.clone(), home)));
        let jobs = (!is_said).then(|| to(Home::Job, cost_words::ON_JOBS));
        el("section", "").key(kind.to_string()).kid(said).kid(el("div", "g2").kids(jobs).kid(to(Home::Rate, cost_words::IN_RATE)))
    });
    each.listed()
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

/// A line; opened, its receipts and what can be done with it.
fn row(line: &Booked, app: &App, seen: Seen<'_>) -> El<Msg> {
    let name = line.kind.as_ref().map_or("", |kind| words::spending(kind.as_str())).to_owned();
    let receipts = receipts::of(line.entry, app);
    let back = line.back.filter(|_| line.can.is_none()).map(|_| cost_words::CAME_BACK.to_owned());
    let under = [Some(seen.speech.day(line.at)), back, line.what.clone(), how(line, seen), receipts::there(&receipts)];
    let under = under.into_iter().flatten().listed().join(", ");
    let came = came_back(line, say(Tap::CameBack(line.entry)));
    let keys = came.into_iter().chain(receipts::take(line.entry, &receipts, app)).listed();
    let keys = Keys { above: receipts::pictures(&receipts, app), keys };
    opening(line.entry, Told { name, under, figure: seen.speech.money(line.sum) }, app, keys)
}
