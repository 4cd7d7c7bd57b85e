//! Big buttons: four targets for hands with glue on them. Leaving is a hold, so that a palm does not.

use super::super::{Screen, Seen};
use super::say;
use crate::app::bench::Tap;
use crate::app::{App, Common, Msg};
use crate::view::{El, el};
use crate::words::en::bench as words;
use fivebar_core::sheet::bench::BenchSheet;

/// How long a hold is.
const HOLD: u32 = 700;

/// The four keys.
pub fn screen(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Screen {
    let top = match &sheet.running {
        Some(slab) => (slab.run.work.op.clone(), seen.speech.span(slab.worked)),
        None => (words::NOTHING_RUNS.to_owned(), words::today(&seen.speech.span(sheet.today))),
    };
    let header = el("header", "head").kid(el("h1", "focus-here").attr("tabindex", "-1").text(top.0)).kid(el("p", "t30 w8").text(top.1));
    let main = el("main", "big").kid(first(sheet, seen)).kid(second(app, sheet)).kid(leave());
    let mut screen = Screen::new("bench/big", header, main);
    screen.bare = true;
    screen
}

fn first(sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    match (&sheet.running, &sheet.carry_on) {
        (Some(slab), _) => {
            let n = seen.speech.count(slab.batch.n);
            let done = words::done(&n, slab.batch.of.map(|of| seen.speech.count(of)).as_deref());
            huge("huge runs", words::ONE_MORE, &done, Tap::Done)
        }
        (None, Some(choice)) => huge("huge", &words::carry_on(&choice.op), "", Tap::Board(choice.clone())),
        (None, None) => huge("huge", words::START, words::START_UNDER, Tap::Other),
    }
}

fn second(app: &App, sheet: &BenchSheet) -> El<Msg> {
    let back = app.shelf().last_act.is_some();
    let keys = el("div", "g2").kids(back.then(|| {
        el("button", "key h176")
            .attr("type", "button")
            .on_tap(Msg::Common(Common::TakeBack))
            .kid(el("span", "t22 w8").text(words::TAKE_BACK))
    }));
    keys.kids(
        sheet.running.as_ref().map(|_| {
            el("button", "key solid h176").attr("type", "button").on_tap(say(Tap::Stop)).kid(el("span", "t30 w8").text(words::STOP))
        }),
    )
}

fn leave() -> El<Msg> {
    el("button", "key h88").attr("type", "button").on_hold(say(Tap::LeaveBig), HOLD).text(words::HOLD_TO_LEAVE)
}

fn huge(class: &'static str, words: &str, under: &str, tap: Tap) -> El<Msg> {
    el("button", class)
        .attr("type", "button")
        .on_tap(say(tap))
        .kid(el("span", "t30 w8").text(words.to_owned()))
        .kids((!under.is_empty()).then(|| el("span", "t22").text(under.to_owned())))
}
