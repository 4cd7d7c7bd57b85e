//! Waits of a day in its list: when each began and came off; those that were struck can be put back.

use super::super::super::Seen;
use super::super::row::{elsewhere, time_class};
use super::super::say;
use crate::app::bench::Tap;
use crate::app::bench::day::{DayTap, View};
use crate::app::bench::waits::{clock_on, pieces, plain_on};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as bench_words, waits as words};
use fivebar_core::quantity::{Day, Listed, Moment, Wall, begin_large};
use fivebar_core::sheet::waits::{StruckWait, WaitLine, struck};

/// The waits of a day: each whose it is, when it began and came off; opened, with a key to strike it.
pub fn of_day(lines: &[WaitLine], view: &View, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    if lines.is_empty() {
        return vec![];
    }
    let rows = lines.iter().map(|line| row(line, view, app, seen));
    vec![el("h2", "").text(words::WAITS), el("section", "card list").kids(rows)]
}

fn row(line: &WaitLine, view: &View, app: &App, seen: Seen<'_>) -> El<Msg> {
    let id = line.wait.id;
    let open = view.open == Some(id);
    let of = [Some(line.op.clone()), line.name.clone()].into_iter().flatten().listed().join(", ");
    let by = |at: Moment| line.wait.wall(at, seen.local);
    let began = by(line.wait.began.at);
    let is_eve = view.day == seen.now.day() && began.day() == view.day.before();
    let since = match began.day() == view.day {
        true => None,
        false if is_eve => Some(words::since_yesterday(&plain_on(app, began, began.day()))),
        false => Some(words::waits_since(&plain_on(app, began, view.day))),
    };
    let under = [Some(of), since, Some(stands(line, by, (view.day, app))), elsewhere(line.wait.by(seen.local), seen)]
        .into_iter()
        .flatten()
        .listed()
        .join("; ");
    let what = el("span", "op").kid(el("b", "").text(begin_large(&pieces(app, line)))).kid(el("span", "t14").text(under));
    // One that came over midnight began at no clock time of this day.
    let at = if began.day() == view.day { seen.speech.clock(began) } else { String::new() };
    let top = el("button", "dl")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(say(Tap::Day(DayTap::Open(id))))
        .kid(el("span", time_class(seen)).text(at))
        .kid(what);
    let keys = open.then(|| el("div", "less").kid(key("key h56", bench_words::STRIKE, "", say(Tap::Day(DayTap::Strike(id))))));
    el("div", "run").key(id.to_string()).kid(top).kids(keys)
}

/// Waits of a day that were struck, each with a key that puts it back.
pub fn struck_rows(day: Day, app: &App) -> Vec<El<Msg>> {
    let row = |wait: StruckWait| {
        el("div", "tapped")
            .key(wait.id.to_string())
            .kid(el("span", "t14 i2").text(clock_on(app, wait.began, day)))
            .kid(el("b", "gone").text(words::struck_wait(&wait.op)))
            .kid(key("key h48", bench_words::PUT_BACK, "", say(Tap::Day(DayTap::PutBack(wait.id)))))
    };
    struck(&app.shelf().book, day).into_iter().map(row).listed()
}

/// "due 13:18, taken off 13:20".
fn stands(line: &WaitLine, by: impl Fn(Moment) -> Wall, (day, app): (Day, &App)) -> String {
    let due = words::off_by(&plain_on(app, by(line.wait.off()), day));
    match line.wait.ended.filter(|off| off.taken) {
        Some(off) => format!("{due}, {}", words::was_off(&plain_on(app, by(off.at.at), day), off.early)),
        None => due,
    }
}
