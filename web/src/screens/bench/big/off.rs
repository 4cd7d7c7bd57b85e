//! The off times of big buttons: what was clamped just now, to be chalked; else what comes out first, and the key once it can.

use super::super::super::Seen;
use super::super::say;
use crate::app::bench::Tap;
use crate::app::bench::ends::is_second;
use crate::app::bench::waits::{WaitTap, clock, pieces, waiting, whose};
use crate::app::{App, Msg};
use crate::view::{El, el};
use crate::words::en::bench::CLOCK_THERE;
use crate::words::en::waits as words;
use fivebar_core::quantity::Span;
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

/// One off time large, the first three small.
pub fn off(lines: &[WaitLine], app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(large) = large(lines, app) else { return vec![] };
    let small = lines.iter().take(SMALL).map(|line| {
        let class = if line.wait.id == large.wait.id { "w7 c-wait" } else { "w7" };
        el("span", class).kid(el("span", "").text(whose(app, line))).kid(el("b", "t22 w8").text(clock(app, line.off)))
    });
    let more = u32::try_from(lines.len().saturating_sub(SMALL)).unwrap_or(u32::MAX);
    let more = (0 < more).then(|| el("span", "all").text(words::and_more(&seen.speech.count(more))));
    vec![read(large, app, seen), el("p", "offs").kids(small).kids(more)]
}

/// The key for the first that can come out.
pub fn comes_out(app: &App) -> Option<El<Msg>> {
    let line = chalked(app)?.into_iter().find(|line| line.over)?;
    let named = words::one_off(&pieces(app, &line), line.wait.what());
    let tap = say(Tap::Waits(WaitTap::Off(vec![line.wait.id])));
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

/// "Top 3 off at" or "Top 1 can come out, since", the day where that is another, and the clock.
fn read(line: &WaitLine, app: &App, seen: Seen<'_>) -> El<Msg> {
    let day = (line.off.day() != app.now.day()).then(|| seen.speech.day(line.off));
    let (named, what) = (whose(app, line), line.wait.what());
    let said = if line.over { words::out_since_at(&named, line.wait.still(), what) } else { words::off_at(&named, what) };
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
