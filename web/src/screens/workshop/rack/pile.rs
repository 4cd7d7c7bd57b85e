//! A pile's own page: how it stands, what can be done with it, and what happened to it.

use super::super::super::mend::told_of;
use super::super::super::{Screen, Seen};
use super::super::page;
use super::row::{aged, given_up, lying, name};
use super::{Page, RackTap, say, supplier};
use crate::app::mend::MendTap;
use crate::app::workshop::rack::Ask;
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, count, rack as words, refusal};
use fivebar_core::ledger::decide::Lying;
use fivebar_core::ledger::mended::pieces;
use fivebar_core::quantity::{Count, Id, Money, in_small};
use fivebar_core::sheet::stock::history::{Line, history};
use fivebar_core::sheet::stock::{self, StockPile};

/// The page.
pub fn screen(at: Lying, app: &App, seen: Seen<'_>) -> Screen {
    match stock::pile(&app.shelf().shop(seen.now.at), at) {
        Ok(pile) => {
            let free = pile.free;
            of((&super::lies(pile, app), free), app, seen)
        }
        Err(why) => {
            let main = el("main", "scr").kid(el("p", "why").text(refusal::refused(&why, seen.speech).what));
            page(app, ("workshop/rack-pile", ""), main, seen)
        }
    }
}

/// The page of a pile as it lies there, and how many of it are free by the book.
fn of((pile, free): (&StockPile, Count), app: &App, seen: Seen<'_>) -> Screen {
    let lines = history(&app.shelf().book, pile.at);
    let happened = lines.iter().map(|line| told(line, pile.at.pile, app, seen));
    let second = el("div", "col").kid(el("h2", "gap").text(words::HISTORY)).kid(el("section", "card list").kids(happened));
    let first = el("div", "col")
        .kid(lying(pile, seen))
        .kid(size_key(pile))
        .kids(given_up(app, seen))
        .kid(keys(pile, free))
        .kid(facts(pile, app, seen));
    page(app, ("workshop/rack-pile", &name(pile)), el("main", "scr two racked").kid(first).kid(second), seen)
}

fn size_key(pile: &StockPile) -> El<Msg> {
    key("key soft h48 wide", count::EDIT_PILE, "", say(RackTap::Show(Page::Ask(pile.at, Ask::Size))))
}

fn keys(pile: &StockPile, free: Count) -> El<Msg> {
    let one = |ask: Ask, words: &'static str, under: &'static str, possible: bool| {
        key("key", words, under, say(RackTap::Show(Page::Ask(pile.at, ask)))).key(words).flag("disabled", !possible)
    };
    // What is not cut off yet can be taken and set apart as far as the book has it.
    let (there, free) = (0 < pile.on_rack.max(pile.uncut), 0 < free);
    let apart = free || !pile.apart.is_empty();
    el("div", "g2")
        .kid(one(Ask::Count, words::COUNT_IT, "", true))
        .kid(one(Ask::Take, words::TAKE, words::FOR_A_JOB, there))
        .kid(one(Ask::Apart, words::SET_APART, words::FOR_A_JOB, apart))
        .kid(one(Ask::Gone, words::GONE, words::GONE_UNDER, free))
        .kid(one(Ask::Place, words::WHERE_IT_LIES, "", true))
        .kid(one(Ask::Moisture, words::MOISTURE_KEY, "", true))
}

/// How it stands: a word, and a figure or an answer beside it.
fn facts(pile: &StockPile, app: &App, seen: Seen<'_>) -> El<Msg> {
    let n = |n: u32| seen.speech.count(n);
    let mut rows: Vec<(String, String)> = vec![(words::FREE.into(), n(pile.free))];
    rows.extend(pile.apart.iter().map(|it| (words::for_job(&it.name), n(it.n))));
    rows.extend(pile.used.iter().map(|it| (words::in_job(&it.name), n(it.n))));
    rows.extend(pile.gone.iter().map(|(to, gone)| (words::gone_to(to.as_str()), n(*gone))));
    rows.extend((pile.drift != 0).then(|| (words::DRIFTED.into(), drifted(pile.drift, seen))));
    let volume = pile.volume.filter(|volume| !volume.is_zero());
    let units = pile.haul.units;
    rows.extend(volume.map(|it| (words::VOLUME.into(), format!("{} {}", seen.speech.volume(it, units), common::volume_unit(units)))));
    rows.extend(pile.place.clone().map(|place| (words::LIES.into(), place)));
    rows.extend(damp(pile, seen).map(|damp| (words::MOISTURE.into(), damp)));
    rows.push((words::AGE.into(), format!("{}, {}", seen.speech.day(pile.since), aged(pile.weeks, seen))));
    rows.extend(pile.haul.supplier.map(|id| (in_small(words::FROM), supplier(id, app))));
    rows.push((words::WALKED.into(), pile.walked.map_or(words::NEVER.into(), |at| seen.speech.day(at))));
    rows.push((if pile.haul.bought { words::BOUGHT } else { words::OFFCUTS }.into(), price(pile, seen)));
    el("section", "card list stands").kids(
        rows.into_iter()
            .map(|(what, figure)| el("p", "row").key(what.clone()).kid(el("span", "i2").text(what)).kid(el("b", "").text(figure))),
    )
}

fn drifted(drift: i64, seen: Seen<'_>) -> String {
    let written = seen.speech.count(u32::try_from(drift.unsigned_abs()).unwrap_or(u32::MAX));
    if drift < 0 { format!("−{written}") } else { format!("+{written}") }
}

fn damp(pile: &StockPile, seen: Seen<'_>) -> Option<String> {
    let damp = pile.dampness?;
    let percent = damp.percent.filter(|_| !damp.wet).map(|percent| words::percent(&seen.speech.number(percent, 0, 1)));
    let said = percent.unwrap_or_else(|| words::WET.to_owned());
    (damp.wet || damp.percent.is_some()).then(|| format!("{said}, {}", seen.speech.day(damp.at)))
}

/// What a measure of it cost, as a job would carry it.
fn price(pile: &StockPile, seen: Seen<'_>) -> String {
    let sum = pile.haul.cost_per_good.and_then(|cost| Money::book(cost, pile.haul.currency).ok());
    sum.map_or(words::COST_UNKNOWN.to_owned(), |sum| words::a_measure(&seen.speech.money(sum), pile.haul.units))
}

fn told(line: &Line<'_>, here: Id, app: &App, seen: Seen<'_>) -> El<Msg> {
    let open = app.workshop.rack.opened == Some(line.entry);
    let what = said(line, here, app, seen);
    if !line.can_be_struck && !line.can_be_mended && line.acts.is_empty() {
        return el("div", "dl").key(line.entry.to_string()).kid(what);
    }
    let top = el("button", "dl")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(say(RackTap::Line(line.entry)))
        .kid(what);
    let alone = (open && line.acts.is_empty()).then(|| el("div", "opened").kid(ways(line)));
    let acts = if open { line.acts.as_slice() } else { &[] };
    let act = |act: &Line<'_>| el("div", "dl").key(format!("act {}", act.entry)).kid(said(act, here, app, seen)).kid(ways(act));
    el("div", "").key(line.entry.to_string()).kid(top).kids(alone).kids(acts.iter().map(act))
}

/// What was done, and when.
fn said(line: &Line<'_>, here: Id, app: &App, seen: Seen<'_>) -> El<Msg> {
    let what = told_of((line.fact, line.n), here, app, seen);
    let was = line.was.as_ref().map(|was| told_of((&was.fact, pieces(&was.fact).unwrap_or(0)), here, app, seen));
    let what = was.map_or(what.clone(), |was| words::was(&what, &was));
    let what = if line.acts.is_empty() { what } else { words::in_acts(&what, &seen.speech.count(count_of(&line.acts))) };
    el("span", "op")
        .kid(el("span", "").text(what))
        .kid(el("span", "t14 i2").text(common::of_when(&seen.speech.day(line.at), &seen.speech.clock(line.at))))
}

fn count_of(acts: &[Line<'_>]) -> u32 {
    u32::try_from(acts.len()).unwrap_or(u32::MAX)
}

/// A line is struck, or put right.
fn ways(line: &Line<'_>) -> El<Msg> {
    let mend = line.can_be_mended.then(|| key("key h56", words::MEND, "", Msg::Mend(MendTap::Open(line.entry))));
    let strike = line.can_be_struck.then(|| key("key h56", words::STRIKE, "", say(RackTap::Strike(line.entry))));
    el("div", "ways").kids(mend).kids(strike)
}
