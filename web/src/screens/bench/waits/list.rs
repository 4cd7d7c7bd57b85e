//! The list of all that waits: each with its off time and a key; the calendar; what was taken off today.

use super::super::super::count::saved_fact;
use super::super::super::{Screen, Seen, undo};
use super::super::say;
use super::card::{all_keys, left};
use super::{meanwhile, wait};
use crate::app::bench::Tap;
use crate::app::bench::day::DayTap;
use crate::app::bench::waits::{Asked, WaitTap, Waiting, clock, of_two, pieces, waiting, whose};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as bench_words, common, waits as words};
use fivebar_core::quantity::{Listed, begin_large};
use fivebar_core::sheet::waits::WaitLine;

/// The list.
pub fn list(waits: &Waiting, app: &App, seen: Seen<'_>) -> Screen {
    let sheet = waiting(app);
    let top = Head::new(bench_words::bench_on(&seen.speech.day(seen.now)), words::WAITS).fact(saved_fact(app, seen));
    let none = sheet.on.is_empty().then(|| el("p", "t22 w8").text(words::NOTHING_WAITS));
    let rows = sheet.on.iter().map(|line| row(line, waits, app, seen)).listed();
    let on = (!rows.is_empty()).then(|| el("section", "card list").kids(rows));
    let any_coming = sheet.on.iter().any(|line| !line.over);
    let calendar = any_coming.then(|| key("key h56", words::CALENDAR, words::CALENDAR_ONE, wait(WaitTap::Calendar(None))));
    let handed = waits.handed.as_ref().map(|told| el("p", "w7").attr("role", "status").text(words::handed(told)));
    let check = any_coming.then(|| el("p", "t14").text(words::CHECK_IT_RINGS));
    let rings = if app.here.rings { words::RINGS_HERE } else { words::RINGS_OFF };
    let main = el("main", "scr waiting")
        .kids(none)
        .kids(all_keys(&sheet.on, seen))
        .kids(on)
        .kids(calendar)
        .kids(handed)
        .kids(check)
        .kid(el("p", "t14 i2").text(rings))
        .kids(meanwhile(app, seen))
        .kids(ended(&sheet.ended, app, seen))
        .kids(gone(app))
        .kids(settings(app, seen));
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(key("key solid h56", common::DONE, "", say(Tap::Close)));
    Screen::new("bench/waits", head(top), main).foot(foot)
}

/// One wait; opened, what can be done with it besides.
fn row(line: &WaitLine, waits: &Waiting, app: &App, seen: Seen<'_>) -> El<Msg> {
    let id = line.wait.id;
    let open = waits.open == Some(id);
    let when = if line.over { words::out_since(&clock(app, line.off), line.ends(), line.wait.still()) } else { left(line, app, seen) };
    let of = [Some(line.op.clone()), line.name.clone()].into_iter().flatten().listed().join(", ");
    let about = el("button", "dl tap")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(wait(WaitTap::Open(id)))
        .kid(el("span", "t22 w8").text(begin_large(&pieces(app, line))))
        .kid(el("span", "w7 c-wait").text(when))
        .kid(el("span", "s i2").text(of))
        .kids(super::card::onto_wet(line, app).map(|said| el("span", "s i2").text(said)));
    let off = key("key h88", words::end_it(line.wait.what()), "", wait(WaitTap::Off(vec![id])));
    let off = off.attr("aria-label", format!("{}: {}", words::end_it(line.wait.what()), pieces(app, line)));
    let more = open.then(|| {
        el("div", "less")
            .kid(key("key h56", words::MEND, "", wait(WaitTap::Ask(Asked::Wait(id)))))
            .kids((!line.over).then(|| key("key h56", words::CALENDAR, "", wait(WaitTap::Calendar(Some(id))))))
            .kid(key("key h56", words::STRIKE, "", say(Tap::Day(DayTap::Strike(id)))))
    });
    el("div", "waitrow").key(id.to_string()).kid(el("div", "offrow").kid(about).kid(off)).kids(more)
}

/// What was taken off today; each can be put back on.
fn ended(lines: &[WaitLine], app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    if lines.is_empty() {
        return vec![];
    }
    let row = |line: &WaitLine| {
        let at =
            line.wait.ended.map(|off| words::was_off(&of_two(app, line.wait.wall(off.at.at, seen.local)), off.early)).unwrap_or_default();
        el("p", "dl")
            .key(format!("off{}", line.wait.id))
            .kid(el("span", "w7").text(begin_large(&whose(app, line))))
            .kid(el("span", "right").text(at))
    };
    vec![el("h2", "").text(words::TAKEN_OFF), el("section", "card list").kids(lines.iter().map(row))]
}

/// What was struck of today's waits; each can be put back.
fn gone(app: &App) -> Vec<El<Msg>> {
    let rows = super::day::struck_rows(app.now.day(), app);
    if rows.is_empty() {
        return vec![];
    }
    vec![el("h2", "").text(bench_words::STRUCK), el("section", "card list").kids(rows)]
}

/// Something new that waits after the last run; how its operation ends; quiet hours.
fn settings(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let bench = app.shelf().bench();
    let last = bench.running(None).or_else(|| bench.last_stopped(None)).cloned();
    let add = last.as_ref().map(|run| key("key h56", words::add(&run.work.op), "", wait(WaitTap::Ask(Asked::New(Box::new(run.clone()))))));
    let usual = last.map(|run| key("key h56", words::ENDS_IN, run.work.op.clone(), wait(WaitTap::Usual(run.work.op))));
    let quiet = app.shelf().waits().usuals.quiet;
    let at = |clock| super::super::start::noon_at(clock, seen);
    let hours = quiet.map_or(words::QUIET_NEVER.to_owned(), |quiet| words::quiet(&at(quiet.from), &at(quiet.until)));
    let lift = quiet.map(|_| key("key h56", words::NO_QUIET, "", wait(WaitTap::NoQuiet)));
    let keys = el("div", "less").kid(key("key h56", words::QUIET, hours, wait(WaitTap::Ask(Asked::QuietFrom)))).kids(lift);
    let under = el("p", "t14 i2").text(words::QUIET_UNDER);
    add.into_iter().chain(usual).chain([keys, under]).listed()
}
