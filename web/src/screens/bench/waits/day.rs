//! Waits of a day in its list: when each began and came off; those that were struck can be put back.

use super::super::super::Seen;
use super::super::say;
use crate::app::bench::Tap;
use crate::app::bench::day::DayTap;
use crate::app::bench::waits::{clock, kept, pieces};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as bench_words, waits as words};
use fivebar_core::quantity::{Day, begin_large};
use fivebar_core::sheet::waits::{WaitLine, struck};

/// The waits of a day.
pub fn of_day(day: Day, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let lines = kept(app, |kept| kept.of_day(day, app.now));
    let gone = struck(&app.shelf().book, day);
    if lines.is_empty() && gone.is_empty() {
        return vec![];
    }
    let tapped = |id: String| el("div", "tapped").key(id);
    let strike = |line: &WaitLine| key("key h48", bench_words::STRIKE, "", say(Tap::Day(DayTap::Strike(line.wait.id))));
    let row = |line: &WaitLine| {
        let what =
            el("span", "op").kid(el("b", "").text(begin_large(&pieces(app, line)))).kid(el("span", "t14").text(stands(line, app, seen)));
        tapped(line.wait.id.to_string()).kid(el("span", "t14 i2").text(seen.speech.clock(line.wait.began))).kid(what).kid(strike(line))
    };
    let rows = lines.iter().map(row);
    let gone = gone.iter().map(|wait| {
        tapped(wait.id.to_string())
            .kid(el("span", "t14 i2").text(seen.speech.clock(wait.began)))
            .kid(el("b", "gone").text(wait.op.clone()))
            .kid(key("key h48", bench_words::PUT_BACK, "", say(Tap::Day(DayTap::PutBack(wait.id)))))
    });
    vec![el("h2", "").text(words::WAITS), el("section", "card list").kids(rows).kids(gone)]
}

/// "due 13:18, off at 13:20".
fn stands(line: &WaitLine, app: &App, seen: Seen<'_>) -> String {
    let due = words::off_by(&clock(app, line.off));
    match line.wait.ended {
        Some(off) => format!("{due}, {}", words::was_off(&seen.speech.clock(off.at), off.early)),
        None => due,
    }
}
