//! Big buttons: four targets for hands with glue on them. Leaving is a hold, so that a palm does not.

use super::super::{Screen, Seen};
use super::rack::notches;
use super::{say, slab};
use crate::app::bench::Tap;
use crate::app::{App, Common, Msg};
use crate::parts::notches::on_slab;
use crate::view::{El, el};
use crate::words::en::{acts, bench as words};
use fivebar_core::quantity::Span;
use fivebar_core::sheet::bench::BenchSheet;

/// How long a hold is, in milliseconds.
const HOLD: u32 = 1000;

/// The four keys.
pub fn screen(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Screen {
    let main = el("main", "big").kid(first(sheet, seen)).kid(second(app, sheet)).kid(leave());
    let mut screen = Screen::new("bench/big", top(sheet, seen), main);
    screen.bare = true;
    screen
}

/// The operation, and its minutes to be read from the bench.
fn top(sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let title = sheet.running.as_ref().map_or(words::NOTHING_RUNS.to_owned(), |slab| slab.run.work.op.clone());
    let (figure, unit) = match &sheet.running {
        Some(slab) => slab::figure(slab.worked, seen),
        None => (seen.speech.span(sheet.today), ""),
    };
    let left = sheet.running.as_ref().and_then(|slab| slab.batch.remaining()).filter(|left| Span::ZERO < *left);
    let under = match (&sheet.running, left) {
        (None, _) => words::TODAY.to_owned(),
        (Some(_), Some(left)) => words::about_left(&seen.speech.span(left)),
        (Some(_), None) => String::new(),
    };
    let time = el("p", "off")
        .kid(el("span", "t22 w7").text(under))
        .kid(el("span", "time").kid(el("span", "t80 w8").text(figure)).kids((!unit.is_empty()).then(|| el("span", "t30 w8").text(unit))));
    el("header", "head bighead")
        .kid(el("h1", "focus-here").attr("tabindex", "-1").text(title))
        .kid(time)
        .kid(el("p", "t14 i2").text(words::STAYS_AWAKE))
}

fn first(sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    match (&sheet.running, &sheet.carry_on) {
        (Some(slab), _) => {
            let n = seen.speech.count(slab.batch.n);
            let done = words::done(&n, slab.batch.of.map(|of| seen.speech.count(of)).as_deref());
            let notches = notches(&slab.batch);
            let key = huge("huge slab", words::PLUS_ONE, done, say(Tap::Done));
            key.kids((0 < notches.of).then(|| on_slab(notches)))
        }
        (None, Some(choice)) => huge("huge", words::CARRY_ON, choice.op.clone(), say(Tap::Board(choice.clone()))),
        (None, None) => huge("huge", words::START, words::WHAT_ARE_YOU_DOING.to_owned(), say(Tap::Other)),
    }
}

fn second(app: &App, sheet: &BenchSheet) -> El<Msg> {
    let shelf = app.shelf();
    let told = shelf.last_act.and_then(|act| shelf.book.act(act).last().copied()).and_then(|id| shelf.book.entry(id));
    let (words_of, under, tap) = match (shelf.taken_back, told) {
        (Some(_), _) => (words::PUT_IT_BACK, "", Common::PutBack),
        (None, Some((entry, _))) => (words::TAKE_BACK, acts::named(&entry.fact), Common::TakeBack),
        (None, None) => (words::TAKE_BACK, "", Common::TakeBack),
    };
    let nothing = shelf.taken_back.is_none() && shelf.last_act.is_none();
    let back = large("key h176", words_of, under, Msg::Common(tap)).flag("disabled", nothing);
    let stop = large("key solid h176", words::STOP, "", say(Tap::Stop)).flag("disabled", sheet.running.is_none());
    el("div", "g2").kid(back).kid(stop)
}

fn leave() -> El<Msg> {
    el("button", "key h88").attr("type", "button").on_hold(say(Tap::LeaveBig), HOLD).text(words::HOLD_TO_LEAVE)
}

fn large(class: &'static str, words: &'static str, under: &'static str, tap: Msg) -> El<Msg> {
    el("button", class)
        .attr("type", "button")
        .on_tap(tap)
        .kid(el("span", "t30 w8").text(words))
        .kids((!under.is_empty()).then(|| el("span", "t17 w5").text(under)))
}

fn huge(class: &'static str, words: &'static str, under: String, tap: Msg) -> El<Msg> {
    el("button", class).attr("type", "button").on_tap(tap).kid(el("span", "t60 w8").text(words)).kid(el("span", "t22 w7").text(under))
}
