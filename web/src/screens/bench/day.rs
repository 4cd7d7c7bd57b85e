//! The day as a list: every run and count with its time and where its minutes come from.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, undo};
use super::start::noon;
use super::{row, say, timeline, waits, week};
use crate::app::bench::day::{DayTap, View};
use crate::app::bench::waits::kept;
use crate::app::bench::{Tap, seen as from_here};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{bench as words, common, day as said};
use fivebar_core::bench::Run;
use fivebar_core::bench::day::parts;
use fivebar_core::quantity::{Day, Listed, Span, Wall};
use fivebar_core::sheet::counts::{Counted, counts};
use fivebar_core::sheet::day::{DaySheet, day_from};
use fivebar_core::sheet::timeline::Timeline;

/// The list of a day.
pub fn screen(app: &App, view: &View, seen: Seen<'_>) -> Screen {
    let sheet = day_from((&app.shelf().bench(), &app.shelf().book), view.day, from_here(app));
    let counted = counts(&app.shelf().book, view.day);
    let waits = kept(app, |kept| kept.of_day(view.day, app.now));
    let own = sheet.total.own;
    let settle = if sheet.unsettled == 0 { String::new() } else { words::to_settle(sheet.unsettled, &seen.speech.count(sheet.unsettled)) };
    let top = Head::new(called(view.day, seen), seen.speech.day(noon(view.day, seen)))
        .fact(Fact::Strong(words::of_the_day(&seen.speech.span(own.total()), &settle)))
        .fact(saved_fact(app, seen));
    let line = timeline::line(&sheet, waits.clone(), app);
    let open = timeline::open(&sheet, &line);
    let worked = Span::ZERO < own.total() || open.is_some();
    let eve = of_the_eve(&sheet, app, seen).or_else(|| left_by_the_eve(&sheet, &line, app, seen));
    // What is left of an earlier day is not nothing.
    let bare = sheet.lines.is_empty() && counted.is_empty() && eve.is_some();
    let main = el("main", "scr day")
        .kid(which(false))
        .kids(timeline::day(&line, app, seen))
        .kids(worked.then(|| timeline::shares(&own, open, seen)))
        .kids(week::along(&sheet.along(seen.now), seen))
        .kids(eve)
        .kids((!bare).then(|| list(&sheet, &counted, (view, app), seen)))
        .kids(waits::of_day(&waits, view, app, seen))
        .kids(row::struck(&sheet, waits::struck_rows(view.day, app), seen))
        .kid(missed());
    Screen::new("bench/day", head(top), main).walks().foot(foot(app, view.day, seen))
}

fn called(day: Day, seen: Seen<'_>) -> &'static str {
    let today = seen.now.day();
    match (day == today, day == today.before()) {
        (true, _) => words::TODAY,
        (_, true) => words::YESTERDAY,
        _ => words::THE_DAY,
    }
}

/// Day or week.
pub fn which(week: bool) -> El<Msg> {
    let segs = vec![Seg::new(said::DAY, !week), Seg::new(said::WEEK, week)];
    even(said::WHICH, segs, |nth| say(Tap::Day(DayTap::Weekly(nth == 1))))
}

/// What a run of an earlier day left for this one.
fn of_the_eve(sheet: &DaySheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let bench = app.shelf().bench();
    let over = |run: &&Run| run.work.person.is_none() && run.started.day() < sheet.day && sheet.day <= run.end_wall(seen.now).day();
    let run = bench.runs().rfind(over)?;
    let span = parts(run, seen.now).into_iter().filter(|(day, ..)| *day == sheet.day).map(|(.., span)| span);
    let span = Some(Span::sum(span)).filter(|span| Span::ZERO < *span)?;
    let open = !run.is_running() && sheet.wrong(run.id).is_some();
    let counts = sheet.minutes(run.id);
    let span = if open { span.minus(counts.unwrap_or_default()) } else { counts.unwrap_or(span) };
    let words = if open { said::of_the_eve_to_settle } else { said::of_the_eve };
    let day = (run.started.day() != sheet.day.before()).then(|| seen.speech.day(run.started));
    let when = said::earlier(&seen.speech.clock(run.began(seen.local)), day.as_deref());
    let words = words(&run.work.op, &when, &seen.speech.span(span));
    Some(key("key soft h48 wide", words, "", say(Tap::Day(DayTap::Show(run.started.day())))))
}

/// What the clock of a run that ended on an earlier day, as it was put right, ran on for on this one.
fn left_by_the_eve(sheet: &DaySheet, line: &Timeline, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let board = line.boards.iter().find(|board| board.before && !board.spare.is_empty())?;
    let bench = app.shelf().bench();
    let run = bench.run(board.run).filter(|run| run.end_wall(seen.now).day() < sheet.day)?;
    let span = Span::sum(board.spare.iter().map(|on| on.to.minus(on.from)));
    let day = (run.started.day() != sheet.day.before()).then(|| seen.speech.day(run.started));
    let when = said::earlier(&seen.speech.clock(run.began(seen.local)), day.as_deref());
    let words = said::of_the_eve_put_right(&run.work.op, &when, &seen.speech.span(span));
    Some(key("key soft h48 wide", words, "", say(Tap::Day(DayTap::Show(run.started.day())))))
}

/// Runs and counts together, by their time.
fn list(sheet: &DaySheet, counted: &[Counted], (view, app): (&View, &App), seen: Seen<'_>) -> El<Msg> {
    if sheet.lines.is_empty() && counted.is_empty() {
        return el("p", "").text(words::NO_RUNS);
    }
    let names: Vec<&Option<String>> = sheet.lines.iter().map(|line| &line.name).listed();
    let mixed = names.windows(2).any(|pair| pair.first() != pair.last());
    let mut counts = counted.iter().peekable();
    let mut rows: Vec<El<Msg>> = vec![];
    for line in &sheet.lines {
        while let Some(count) = counts.next_if(|count| began(count) <= Some(line.run.started)) {
            rows.push(row::count(count, (view, app), seen));
        }
        let name = if mixed { line.name.as_deref().unwrap_or(words::NO_JOB) } else { "" };
        rows.push(row::run(line, (name, sheet.minutes(line.run.id)), (view, app), seen));
    }
    let whose = names.first().and_then(|name| name.as_deref()).filter(|_| !mixed);
    rows.extend(counts.map(|count| row::count(count, (view, app), seen)));
    let whose = whose.map(|name| el("p", "t14 i2").text(said::all_for(name)));
    el("section", "card list").kids(whose).kids(rows)
}

fn began(counted: &Counted) -> Option<Wall> {
    counted.taps.first().map(|tap| tap.at)
}

fn missed() -> El<Msg> {
    key("key", words::MISSED, "", say(Tap::Day(DayTap::Missed)))
}

/// One row, so that the list has its room; what is needed less lies at the end of the list.
fn foot(app: &App, shown: Day, seen: Seen<'_>) -> El<Msg> {
    let to = |day: Day| say(Tap::Day(DayTap::Show(day)));
    let before = key("key h56", words::DAY_BEFORE, "", to(shown.before()));
    let later = key("key h56", words::DAY_AFTER, "", to(shown.next())).flag("disabled", seen.now.day() <= shown);
    let done = key("key h56", common::DONE, "", say(Tap::Close));
    el("footer", "foot").kids(undo::bar(app, seen)).kid(el("div", "g3").kid(before).kid(later).kid(done))
}
