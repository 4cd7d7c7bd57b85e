//! The day as a list: every run and count with its time and where its minutes come from.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, undo};
use super::start::noon;
use super::{row, say, waits};
use crate::app::bench::day::{DayTap, View};
use crate::app::bench::{Tap, seen as from_here};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Look, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::{bench as words, common};
use fivebar_core::bench::Shares;
use fivebar_core::quantity::{Day, Listed, Span, Wall};
use fivebar_core::sheet::counts::{Counted, counts};
use fivebar_core::sheet::day::{DayLine, DaySheet, day};

/// The list of a day.
pub fn screen(app: &App, view: &View, seen: Seen<'_>) -> Screen {
    let sheet = day(&app.shelf().book, view.day, from_here(app));
    let counted = counts(&app.shelf().book, view.day);
    let own = sheet.total.own;
    let settle = if sheet.unsettled == 0 { String::new() } else { words::to_settle(sheet.unsettled, &seen.speech.count(sheet.unsettled)) };
    let top = Head::new(called(view.day, seen), seen.speech.day(noon(view.day, seen)))
        .fact(Fact::Strong(words::of_the_day(&seen.speech.span(own.total()), &settle)))
        .fact(saved_fact(app, seen));
    let worked = Span::ZERO < own.total();
    let main = el("main", "scr day")
        .kids(worked.then(|| bar(&sheet, seen)))
        .kids(worked.then(|| el("p", "t14").text(shares(&own, seen))))
        .kid(list(&sheet, &counted, view, seen))
        .kids(waits::of_day(view.day, app, seen))
        .kids(row::struck(&sheet, seen));
    Screen::new("bench/day", head(top), main).foot(foot(app, view.day, seen))
}

fn called(day: Day, seen: Seen<'_>) -> &'static str {
    let today = seen.now.day();
    match (day == today, day == today.before()) {
        (true, _) => words::TODAY,
        (_, true) => words::YESTERDAY,
        _ => words::THE_DAY,
    }
}

fn shares(own: &Shares, seen: Seen<'_>) -> String {
    let said = |span: Span, words: fn(&str) -> String| (Span::ZERO < span).then(|| words(&seen.speech.span(span)));
    let all = [said(own.measured, words::measured), said(own.corrected, words::corrected), said(own.recalled, words::recalled)];
    let all: Vec<String> = all.into_iter().flatten().listed();
    if own.measured == own.total() { words::ALL_MEASURED.to_owned() } else { all.join(", ") }
}

/// The day as a bar from the first start to the last end; open is what the clock ran on and was put right.
fn bar(sheet: &DaySheet, seen: Seen<'_>) -> El<Msg> {
    let minute = |wall: Wall| f64::from(wall.minute_of_day());
    let late = |from: f64, to: f64| if to < from { 1440.0 } else { to };
    let mut fills: Vec<Fill> = vec![];
    for line in &sheet.lines {
        let run = &line.run;
        let from = minute(run.started);
        let end = late(from, minute(line.ended.unwrap_or(seen.now)));
        let sure = line.wrong.map_or(end, |wrong| late(from, minute(Wall::new(wrong.at, run.started.offset))));
        let raw = run.tapped_stop.filter(|_| run.mended_stop.is_some()).map_or(end, |stop| late(from, minute(stop)));
        fills.push(Fill { from: sure, to: end.max(raw), look: Look::Open });
        fills.push(Fill { from, to: sure, look: Look::Ink });
    }
    fills.retain(|fill| fill.from < fill.to);
    // Solid stretches lie over open ones.
    let (open, ink): (Vec<Fill>, Vec<Fill>) = fills.into_iter().partition(|fill| fill.look == Look::Open);
    let fills: Vec<Fill> = open.into_iter().chain(ink).listed();
    let from = fills.iter().map(|fill| fill.from).fold(1440.0, f64::min) - 25.0;
    let to = fills.iter().map(|fill| fill.to).fold(0.0, f64::max) + 35.0;
    let drawn = Scale { width: seen.page.column(), from, to, rhythm: Some(Rhythm { tick: 15.0, long: 60.0 }), fills, ..Scale::default() };
    let hours = hours((from, to), sheet.day, seen);
    el("div", "on-board").kid(scale(&Scale { marks: hours, ..drawn }, words::THE_DAY))
}

/// Full hours to write under the bar, four or five of them.
fn hours((from, to): (f64, f64), day: Day, seen: Seen<'_>) -> Vec<Mark> {
    let room = (seen.page.column() / 80.0).max(2.0);
    let step = ((to - from) / 60.0 / room).ceil().max(1.0);
    let first = (from / 60.0).ceil();
    let start = noon(day, seen);
    let all = (0..24).map(|n| first + step * f64::from(n)).take_while(|hour| hour * 60.0 <= to && *hour < 24.0);
    all.map(|hour| {
        let since_noon = Span::minutes((hour - 12.0) as i64 * 60);
        Mark::bare(hour * 60.0, seen.speech.clock(Wall::new(start.at.plus(since_noon), start.offset)))
    })
    .listed()
}

/// Runs and counts together, by their time.
fn list(sheet: &DaySheet, counted: &[Counted], view: &View, seen: Seen<'_>) -> El<Msg> {
    if sheet.lines.is_empty() && counted.is_empty() {
        return el("p", "").text(words::NO_RUNS);
    }
    let names: Vec<&Option<String>> = sheet.lines.iter().map(|line| &line.name).listed();
    let mixed = names.windows(2).any(|pair| pair.first() != pair.last());
    let mut counts = counted.iter().peekable();
    let mut rows: Vec<El<Msg>> = vec![];
    for line in &sheet.lines {
        while let Some(count) = counts.next_if(|count| began(count) <= Some(line.run.started)) {
            rows.push(row::count(count, view, seen));
        }
        rows.push(run(line, mixed, view, seen));
    }
    rows.extend(counts.map(|count| row::count(count, view, seen)));
    el("section", "card list").kids(rows)
}

fn run(line: &DayLine, mixed: bool, view: &View, seen: Seen<'_>) -> El<Msg> {
    let name = if mixed { line.name.as_deref().unwrap_or(words::NO_JOB) } else { "" };
    row::run(line, name, view, seen)
}

fn began(counted: &Counted) -> Option<Wall> {
    counted.taps.first().map(|tap| tap.at)
}

fn foot(app: &App, shown: Day, seen: Seen<'_>) -> El<Msg> {
    let to = |day: Day| say(Tap::Day(DayTap::Show(day)));
    let later = key("key h56", words::DAY_AFTER, "", to(shown.next())).flag("disabled", seen.now.day() <= shown);
    el("footer", "foot")
        .kids(undo::bar(app, seen))
        .kid(el("div", "g2").kid(key("key h56", words::DAY_BEFORE, "", to(shown.before()))).kid(later))
        .kid(el("div", "g2").kid(key("key", words::MISSED, "", say(Tap::Day(DayTap::Missed)))).kid(key(
            "key",
            common::DONE,
            "",
            say(Tap::Close),
        )))
}
