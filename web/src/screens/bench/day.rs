//! The day as a list: every run with its times and where its minutes come from; each can be mended or struck.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, undo};
use super::say;
use crate::app::bench::Tap;
use crate::app::bench::day::DayTap;
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Look, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::{bench as words, common};
use fivebar_core::quantity::{Clock, Day, Id, Span, Wall};
use fivebar_core::sheet::day::{DayLine, DaySheet, day};

/// The list of a day, with the run that is opened.
pub fn screen(app: &App, (shown, open): (Day, Option<Id>), seen: Seen<'_>) -> Screen {
    let sheet = day(&app.shelf().book, (shown, None), seen.now);
    let noon = Clock::at(12, 0).map(|noon| Wall::new(shown.at(noon, seen.now.offset), seen.now.offset)).unwrap_or(seen.now);
    let own = sheet.total.own;
    let top = Head::new(words::THE_DAY, seen.speech.day(noon))
        .fact(Fact::Strong(words::all_day(&seen.speech.span(own.total()))))
        .fact(saved_fact(app, seen));
    let span = |span: Span| seen.speech.span(span);
    let main = el("main", "scr day")
        .kids((!sheet.lines.is_empty()).then(|| bar(&sheet, seen)))
        .kid(el("p", "t14").text(words::shares(&span(own.measured), &span(own.corrected), &span(own.recalled))))
        .kid(list(&sheet, open, seen));
    Screen::new("bench/day", head(top), main).foot(foot(app, shown, seen))
}

/// The day as a bar from the first start to the last end.
fn bar(sheet: &DaySheet, seen: Seen<'_>) -> El<Msg> {
    let minute = |wall: Wall| f64::from(wall.minute_of_day());
    let ends = sheet.lines.iter().map(|line| (minute(line.run.started), line.ended.map_or(minute(seen.now), minute)));
    let ends: Vec<(f64, f64)> = ends.map(|(from, to)| (from, if to < from { 1440.0 } else { to })).collect();
    let from = ends.iter().map(|(from, _)| *from).fold(1440.0, f64::min);
    let to = ends.iter().map(|(_, to)| *to).fold(0.0, f64::max);
    let fills = ends.iter().map(|(from, to)| Fill { from: *from, to: *to, look: Look::Ink }).collect();
    let rhythm = Some(Rhythm { tick: 30.0, long: 60.0 });
    let drawn = Scale { width: seen.page.column(), from: from - 15.0, to: to + 15.0, rhythm, fills, ..Scale::default() };
    el("div", "on-board").kid(scale(&drawn, words::THE_DAY))
}

fn list(sheet: &DaySheet, open: Option<Id>, seen: Seen<'_>) -> El<Msg> {
    if sheet.lines.is_empty() {
        return el("p", "").text(words::NO_RUNS);
    }
    el("section", "card list").kids(sheet.lines.iter().map(|line| row(line, open == Some(line.run.id), seen)))
}

fn row(line: &DayLine, open: bool, seen: Seen<'_>) -> El<Msg> {
    let what = el("span", "op").kid(el("b", "").text(line.run.work.op.clone())).kid(el("span", "t14").text(provenance(line, seen)));
    let worked = if line.ended.is_some() { seen.speech.span(line.worked) } else { words::RUNS.to_owned() };
    let top = el("button", "dl")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(say(Tap::Day(DayTap::Open(line.run.id))))
        .kid(el("span", "tm").text(seen.speech.clock(line.run.started)))
        .kid(what)
        .kid(el("b", "n").text(worked));
    el("div", "run").key(line.run.id.to_string()).kid(top).kids(open.then(|| opened(line, seen)))
}

/// Where its minutes come from, and the job.
fn provenance(line: &DayLine, seen: Seen<'_>) -> String {
    let shares = line.shares;
    let word = match (shares.recalled, shares.corrected) {
        (recalled, _) if Span::ZERO < recalled => words::RECALLED,
        (_, corrected) if Span::ZERO < corrected => words::CORRECTED,
        _ => words::MEASURED,
    };
    let pieces = line.batch.n;
    let done = (0 < pieces).then(|| words::done(&seen.speech.count(pieces), None));
    [Some(word.to_owned()), line.name.clone(), done].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn opened(line: &DayLine, seen: Seen<'_>) -> El<Msg> {
    let run = &line.run;
    let mend = |start| say(Tap::Day(DayTap::Mend { run: run.id, start }));
    let said = words::clock_said(&seen.speech.clock(run.tapped), run.tapped_stop.map(|stop| seen.speech.clock(stop)).as_deref());
    let keys = el("div", "g3")
        .kid(key("key h56", words::MEND_START, "", mend(true)))
        .kid(key("key h56", words::MEND_STOP, "", mend(false)))
        .kid(key("key h56", words::STRIKE, "", say(Tap::Day(DayTap::Strike(run.id)))));
    el("div", "open").kids((!run.recalled).then(|| el("p", "t14").text(said))).kid(keys)
}

fn foot(app: &App, shown: Day, seen: Seen<'_>) -> El<Msg> {
    let today = seen.now.day();
    let later = match shown < today {
        true => key("key h56", words::DAY_AFTER, "", say(Tap::Day(DayTap::Show(shown.next())))),
        false => key("key h56", common::DONE, "", say(Tap::Close)),
    };
    el("footer", "foot")
        .kids(undo::bar(app, seen))
        .kid(key("key h56", words::MISSED, "", say(Tap::Day(DayTap::Missed))))
        .kid(el("div", "g2").kid(key("key h56", words::DAY_BEFORE, "", say(Tap::Day(DayTap::Show(shown.before()))))).kid(later))
}
