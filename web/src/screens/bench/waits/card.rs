//! The blue board: first and last off time on a line; what is over, with a key to take it off.

use super::super::super::Seen;
use super::wait;
use crate::app::bench::waits::{WaitTap, clock, pieces, waiting};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Kind, Look, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::waits as words;
use fivebar_core::bench::wait::What;
use fivebar_core::quantity::{Listed, Span};
use fivebar_core::sheet::waits::WaitLine;

/// Off times that are further away than this stand in words alone.
const DRAWN_MOST: Span = Span::minutes(12 * 60);

/// What waits, on the bench; nothing where nothing does.
pub fn card(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let on = waiting(app).on;
    let (over, coming): (Vec<WaitLine>, Vec<WaitLine>) = on.into_iter().partition(|line| line.over);
    let mut shown = vec![];
    if !over.is_empty() {
        shown.push(out(&over, coming.is_empty(), app, seen));
    }
    if let Some(said) = said(&coming, app) {
        let board = el("button", "card wait waits").attr("type", "button").on_tap(wait(WaitTap::Show)).key("waits");
        shown.push(board.kid(el("span", "w8 c-wait").text(said)).kids(drawn(&coming, app, seen)));
    }
    shown
}

/// "In clamps: first off 14:58, last 15:14".
fn said(coming: &[WaitLine], app: &App) -> Option<String> {
    let (first, last) = (coming.first()?, coming.last()?);
    let same = coming.iter().all(|line| line.wait.what() == first.wait.what());
    let last = (first.off != last.off).then(|| clock(app, last.off));
    Some(words::first_last(words::state(same.then(|| first.wait.what())), &clock(app, first.off), last.as_deref()))
}

/// What can come out, with a key for all of it, or for each.
fn out(over: &[WaitLine], all: bool, app: &App, seen: Seen<'_>) -> El<Msg> {
    let Some((first, last)) = over.first().zip(over.last()) else { return el("section", "") };
    let n = over.iter().fold(0_u32, |sum, line| sum.saturating_add(line.wait.n));
    let one = over.len() == 1;
    let thing = if one { pieces(app, first) } else { same_thing(over) };
    let said = words::can_come_out(if one { 1 } else { n }, &seen.speech.count(n), &thing, (all, &clock(app, last.off)));
    let ids = over.iter().map(|line| line.wait.id).listed();
    let off = if one { words::one_off(&thing) } else { words::all_off(&seen.speech.count(n)) };
    let each = (!one).then(|| key("key h88", words::ONE_BY_ONE, "", wait(WaitTap::Show)));
    el("section", "card wait")
        .key("over")
        .kid(el("p", "w8 c-wait").text(said))
        .kid(el("div", if one { "" } else { "g2" }).kid(key("key h88 wide", off, "", wait(WaitTap::Off(ids)))).kids(each))
}

fn same_thing(over: &[WaitLine]) -> String {
    let things = over.iter().map(|line| words::thing(&line.op)).listed();
    let first = things.first().cloned().unwrap_or_default();
    if things.iter().all(|thing| *thing == first) { first } else { words::thing("") }
}

/// From now to the last off time, a mark for each; hours long.
fn drawn(coming: &[WaitLine], app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let near = coming.iter().filter(|line| line.left <= DRAWN_MOST).listed();
    let last = near.last()?.left;
    let minutes = |span: Span| span.as_ms() as f64 / 60_000.0;
    let (from, to) = (0.0, minutes(last).max(1.0) * 1.18);
    let tick = [5.0, 10.0, 20.0, 30.0, 60.0].into_iter().find(|tick| to / tick < 16.0).unwrap_or(60.0);
    let many = 3 < near.len();
    let mark = |line: &&WaitLine| {
        let word = if many { String::new() } else { pieces(app, line) };
        Mark::new(minutes(line.left), Kind::Wait, word, app.speech.clock(line.off))
    };
    let scale_of = Scale {
        width: seen.page.card(),
        from,
        to,
        rhythm: Some(Rhythm { tick, long: tick * 3.0 }),
        marks: near.iter().map(mark).listed(),
        fills: vec![Fill { from, to: minutes(last), look: Look::OpenWait }],
        ..Scale::default()
    };
    Some(scale(&scale_of, ""))
}

/// Waits as lines, for a job's page and the list of jobs: "Glue tops, top 3: off 13:18, in 42 min".
pub fn lines(lines: &[WaitLine], named: bool, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let one = |line: &WaitLine| {
        let name = line.name.clone().filter(|_| named);
        let what = [name, Some(line.op.clone())].into_iter().flatten().listed().join(", ");
        let when = if line.over { words::out_since(&clock(app, line.off)) } else { left(line, app, seen) };
        let piece = pieces(app, line);
        let piece = line.piece.map(|_| piece).unwrap_or_default();
        el("p", "dl")
            .kid(el("span", "").kid(el("span", "w7").text(what)).kids((!piece.is_empty()).then(|| el("span", "s i2").text(piece))))
            .kid(el("b", "c-wait right").text(when))
    };
    let state = if lines.iter().all(|line| line.wait.what() == What::Glue) { words::state(Some(What::Glue)) } else { words::WAITS };
    (!lines.is_empty()).then(|| {
        let board = el("button", "card wait waits").attr("type", "button").on_tap(wait(WaitTap::Show)).key("waits");
        board.kid(el("span", "w8 c-wait").text(if named { words::WAITS_ENDING } else { state })).kids(lines.iter().map(one))
    })
}

/// "off 13:18, in 42 min".
pub fn left(line: &WaitLine, app: &App, seen: Seen<'_>) -> String {
    // Up to a whole minute: what is left is never said too short.
    let minutes = line.left.as_ms().saturating_add(59_999).div_euclid(60_000);
    words::off_and_left(&clock(app, line.off), &seen.speech.span(Span::minutes(minutes)))
}
