//! The pads of Bench: how many pieces, and what the clock said.

use super::super::{Screen, Seen};
use super::say;
use crate::app::bench::{Tap, pay_currency};
use crate::app::entry::Typed;
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::pad;
use crate::view::{El, el};
use crate::words::en::{bench as words, common, refusal};
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Id, Units};

/// What a pad asks: the screen's name, its title, the line above it, what Done says.
pub struct Asked {
    pub place: &'static str,
    pub title: &'static str,
    pub small: String,
    pub done: Msg,
}

/// How many pieces.
pub fn count((place, title): (&'static str, &'static str), typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let small = app.running().map(|strip| strip.op).unwrap_or_default();
    typing(Asked { place, title, small, done: say(Tap::PadDone) }, "", typed, seen)
}

/// So many more done; and the way to put right of how many.
pub fn more(typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let mut screen = count(("bench/more", words::HOW_MANY_DONE), typed, app, seen);
    screen.main = screen.main.kid(key("key soft h48", words::ASK_HOW_MANY, "", say(Tap::AskBatch)));
    screen
}

/// What a helper is paid for an hour, if anything.
pub fn helper(typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let small = app.running().map(|strip| strip.op).unwrap_or_default();
    let asked = Asked { place: "bench/helper", title: words::HELPER_PAY, small, done: say(Tap::PadDone) };
    let currency = pay_currency(app);
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let done = if typed.text.is_empty() { words::NOT_PAID } else { words::JOINS };
    laid_out(asked, (words::HELPER_PAY_UNDER, currency.code(), Some(sign), done), typed, seen)
}

/// When a run stopped.
pub fn stopped(run: Id, typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let small = from(app, Some(run), seen);
    clock(Asked { place: "bench/stopped", title: words::STOPPED_WHEN, small, done: say(Tap::PadDone) }, typed, seen)
}

/// When a run began or stopped, put right.
pub fn mend((title, run): (&'static str, Option<Id>), typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let small = from(app, run, seen);
    clock(Asked { place: "bench/mend", title, small, done: say(Tap::PadDone) }, typed, seen)
}

/// "Glue tops, from 11:20".
fn from(app: &App, run: Option<Id>, seen: Seen<'_>) -> String {
    let bench = app.shelf().bench();
    let run = run.and_then(|run| bench.run(run));
    run.map(|run| words::from_clock(&run.work.op, &seen.speech.clock(run.started))).unwrap_or_default()
}

/// A pad for a clock time.
pub fn clock(asked: Asked, typed: &Typed, seen: Seen<'_>) -> Screen {
    typing(asked, words::BY_THE_CLOCK, typed, seen)
}

fn typing(asked: Asked, how: &'static str, typed: &Typed, seen: Seen<'_>) -> Screen {
    laid_out(asked, (how, "", None, common::DONE), typed, seen)
}

/// The line above the keys, the unit, the decimal key, and what Done says.
type Keys<'a> = (&'static str, &'a str, Option<char>, &'static str);

fn laid_out(asked: Asked, (how, unit, sign, done): Keys<'_>, typed: &Typed, seen: Seen<'_>) -> Screen {
    let main = el("main", "scr")
        .kid(pad::entry(&typed.text, unit, typed.wrong.is_some()))
        .kids(typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Metric))))
        .kids((!how.is_empty() && typed.wrong.is_none()).then(|| el("p", "t14 i2").text(how)))
        .kid(el("div", "push"))
        .kid(pad::pad(sign, |press| say(Tap::Press(press))));
    let keys: El<Msg> = el("footer", "foot").kid(
        el("div", "um back").kid(key("key h88 m", common::NOT_NOW, "", say(Tap::Close))).kid(key("key solid h88", done, "", asked.done)),
    );
    Screen::new(asked.place, head(Head::new(asked.small, asked.title)), main).foot(keys)
}
