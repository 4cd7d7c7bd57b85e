//! A fair or a market: stall, drive and hours, how many cover them, and what so many leave for an hour.

use super::super::slots::{self, Slot};
use super::list::how_paid;
use super::{Screen, Seen, back, bare, choices, exact, fact, leave, per_hour};
use crate::app::price::fair::{FairTap, Stall, currency, sheet};
use crate::app::price::{Tap, sheet as list, shop};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::view::{El, el};
use crate::words::en::{common, fair as words, price};
use fivebar_core::quantity::{Clock, Currency, Listed, Money, Units, Wall};
use fivebar_core::refusal::Refusal;
use fivebar_core::sheet::fair::{Fair, FairSheet, SoldThere, past};

fn say(tap: FairTap) -> Msg {
    Msg::Price(Tap::Fair(tap))
}

/// The page.
pub fn screen(stall: &Stall, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(price::FOR_SALE, words::A_FAIR);
    let Some((job, currency)) = stall.job.and_then(|job| Some((job, currency(app, job)?))) else {
        let main = el("main", "price").kid(el("p", "t22 w8").text(words::NOTHING_TO_TAKE)).kid(el("p", "").text(words::NOTHING_UNDER));
        return Screen::new("price/fair", head(top), main.kid(el("div", "push")).kid(back()));
    };
    let rows = list(app).map(|sheet| sheet.for_sale).unwrap_or_default();
    let names = rows.iter().map(|row| (row.name.clone(), row.job == job)).listed();
    let ids = rows.iter().map(|row| row.job).listed();
    let which = (1 < names.len()).then(|| choices(names, move |nth| say(FairTap::Job(ids.get(nth).copied().unwrap_or(job)))));
    let main = el("main", "price form").kids(which).kids(match &stall.found {
        Some(found) => reckoned(found, app, seen),
        None => typed(stall, currency, (app, seen)),
    });
    Screen::new("price/fair", head(top), main).says_it()
}

fn typed(stall: &Stall, currency: Currency, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let units = stall.job.and_then(|job| shop(app).job(job).ok()).map_or(Units::Metric, |job| job.units);
    let asked = vec![
        Slot::new(words::STALL, currency.code()),
        Slot::new(words::DISTANCE, common::distance_unit(units)),
        Slot::new(words::HOURS, "h"),
    ];
    let mut shown = vec![
        el("p", "t14 i2").text(words::UNDER),
        slots::figures_told(&stall.form, &asked, (units, seen), |nth| say(FairTap::At(nth))),
        el("div", "push"),
    ];
    shown.extend(slots::pad(&stall.form, &asked, seen, |press| say(FairTap::Press(press))));
    shown.push(done_key("key solid h88", words::RECKON, "", say(FairTap::Reckon)));
    shown.push(leave());
    shown
}

fn reckoned(found: &Fair, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let shown = match sheet(app, found) {
        Ok(Ok(sheet)) => of(&sheet, seen),
        Ok(Err(lacks)) => vec![el("p", "").text(words::lacks(lacks))],
        Err(refusal @ Refusal::MileageUnknown { .. }) => vec![slots::no(&refusal, seen), how_paid()],
        Err(refusal) => vec![slots::no(&refusal, seen)],
    };
    let again = key("key", words::AGAIN, "", say(FairTap::Again));
    shown.into_iter().chain(earlier(app, seen)).chain([el("div", "push"), again, back()]).listed()
}

fn of(sheet: &FairSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let said = words::covers(sheet.covers, &seen.speech.count(sheet.covers), (sheet.free, &seen.speech.count(sheet.free)));
    let sum = |sum: Money| exact(sum, seen.speech);
    let hours = sheet.hours.map_or_else(|| words::NO_LOWEST.to_owned(), sum);
    let ahead = [fact(words::STALL, sum(sheet.stall)), fact(words::DRIVE, sum(sheet.drive)), fact(words::HOURS_AT_LOWEST, hours)];
    let one = words::one_leaves(&bare(sheet.ask, seen.speech), &sum(sheet.you_get), &sum(sheet.cost));
    let none = Money::zero(sheet.ask.currency());
    let hour = |amount| per_hour(amount, none, seen.speech);
    let an_hour = |at: &SoldThere| words::an_hour(&hour(at.per_hour), at.with_making.map(hour).as_deref());
    let sold = sheet.sold.iter().map(|at| fact(&words::sold(&seen.speech.count(at.n)), an_hour(at)));
    let table = |rows: Vec<El<Msg>>| el("section", "card tap").kid(el("table", "facts").kid(el("tbody", "").kids(rows)));
    vec![el("p", "t22 w8").attr("role", "status").text(said), table(ahead.to_vec()), el("p", "t14 i2").text(one), table(sold.listed())]
}

/// How many were sold where a stall was paid for before, the last three.
fn earlier(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let row = |it: &fivebar_core::sheet::fair::PastFair| {
        let day = seen.speech.day(Wall::new(it.day.at(Clock::NOON, seen.now.offset), seen.now.offset));
        el("p", "t14").text(words::earlier(&day, &seen.speech.count(it.sold), &seen.speech.count(it.there)))
    };
    past(&shop(app)).iter().take(EARLIER).map(row).listed()
}

const EARLIER: usize = 3;
