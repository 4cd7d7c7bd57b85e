//! The off times of big buttons: what was clamped just now, to be chalked; else what comes out first, and the key once it can.

use super::super::super::Seen;
use super::super::waits::{can_since, of_first_work, some_off, take_off};
use crate::app::bench::ends::is_second;
use crate::app::bench::waits::{clock, waiting, whose};
use crate::app::{App, Msg};
use crate::view::{El, el};
use crate::words::en::bench::CLOCK_THERE;
use crate::words::en::waits as words;
use fivebar_core::quantity::{Listed, Span};
use fivebar_core::sheet::waits::WaitLine;

/// So many stand small, those that come out first: the list has them all.
const SMALL: usize = 3;

/// What was clamped no longer ago is chalked first, whatever else can come out by now [J].
const CHALKING: Span = Span::minutes(2);

/// What is to be read, the first off time first, whatever job it is of: what waits, and what can come out since today.
pub fn chalked(app: &App) -> Option<Vec<WaitLine>> {
    let mut on = waiting(app).on;
    on.retain(|line| !line.over || line.off.day() == app.now.day());
    (!on.is_empty()).then_some(on)
}

/// One off time large, or the last of those that can come out together; the first three of the others small.
pub fn off(lines: &[WaitLine], app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(large) = large(lines, app) else { return vec![] };
    let out = Some(large).filter(|line| line.over).and_then(|_| of_first_work(lines)).filter(|(out, _)| 1 < out.len());
    let (read, shown) = match out {
        Some((out, all)) => (clock_of(out.last().unwrap_or(large), can_since(&out, all, app, seen), app, seen), out),
        None => (clock_of(large, said(large, app), app, seen), vec![large.clone()]),
    };
    let others = lines.iter().filter(|line| !shown.iter().any(|shown| shown.wait.id == line.wait.id)).listed();
    let small = others
        .iter()
        .take(SMALL)
        .map(|line| el("span", "w7").kid(el("span", "").text(whose(app, line))).kid(el("b", "t22 w8").text(clock(app, line.off))));
    let more = u32::try_from(others.len().saturating_sub(SMALL)).unwrap_or(u32::MAX);
    let more = (0 < more).then(|| el("span", "all").text(words::and_more(&seen.speech.count(more))));
    let small = (!others.is_empty()).then(|| el("p", "offs").kids(small).kids(more));
    std::iter::once(read).chain(small).listed()
}

/// The key for the first that can come out, and for all of its work that can.
pub fn comes_out(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let lines = chalked(app)?;
    let (over, _) = of_first_work(&lines)?;
    let is_large = large(&lines, app).is_some_and(|line| line.over);
    let (named, tap) = if is_large { take_off(&over, app, seen) } else { some_off(&over, app, seen) };
    Some(el("button", "key h176").attr("type", "button").on_tap(tap).kid(el("span", "t22 w8").text(named)))
}

/// What runs clamped just now, to be chalked; else what comes out first, or can by now.
fn large<'a>(lines: &'a [WaitLine], app: &App) -> Option<&'a WaitLine> {
    let running = app.running().map(|strip| strip.run);
    let last = lines.iter().filter(|line| running.is_some() && line.wait.run == running);
    let last = last.max_by_key(|line| (line.wait.began.at, line.piece));
    let just = |line: &&WaitLine| line.wait.began.at.until(app.now.at) <= CHALKING;
    let over = lines.iter().find(|line| line.over);
    last.filter(just).or(over).or(lines.first())
}

/// "Top 3 off at" or "Top 1 can come out, since".
fn said(line: &WaitLine, app: &App) -> String {
    let (named, what) = (whose(app, line), line.ends());
    if line.over { words::out_since_at(&named, line.wait.still(), what) } else { words::off_at(&named, what) }
}

/// What is said of it, the day where that is another, and the clock.
fn clock_of(line: &WaitLine, said: String, app: &App, seen: Seen<'_>) -> El<Msg> {
    let day = (line.off.day() != app.now.day()).then(|| seen.speech.day(line.off));
    let second = is_second(app, line.off.at).map(|second| format!(" the {}", words::which_of_two(second)));
    let said = match seen.local.shows(line.off) {
        true => format!("{said}{}", second.unwrap_or_default()),
        false => words::by_another(CLOCK_THERE, &said),
    };
    // Of another day it stands with the clock: by large text the words before it are cut.
    let day = day.filter(|_| !line.over).map(|day| el("span", "t22 w8 c-wait").text(day));
    let time = el("span", "time").kids(day).kid(el("span", "t80 w8 c-wait").text(seen.speech.clock(line.off)));
    el("p", "off").kid(el("span", "t22 w7 c-wait").text(said)).kid(time)
}
