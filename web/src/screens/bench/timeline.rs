//! The day to scale, its words for a reader, and what the looks of its boards mean.

use super::super::Seen;
use crate::app::bench::waits::pieces;
use crate::app::{App, Msg};
use crate::parts::ink::held;
use crate::parts::letters as widths;
use crate::parts::timeline::{Line, Look, Stretch as Drawn, Timeline as Day, sample, timeline as drawn};
use crate::view::{El, el};
use crate::words::en::{bench as words, day as said};
use fivebar_core::bench::{Shares, Source};
use fivebar_core::quantity::{Listed, Span};
use fivebar_core::sheet::day::DaySheet;
use fivebar_core::sheet::timeline::{Board, Stretch, Timeline, Waited, timeline};
use fivebar_core::sheet::waits::WaitLine;

/// Room before the first board and after the last, in minutes.
const MARGIN: f64 = 20.0;

/// The least that is shown, in minutes.
const LEAST: f64 = 180.0;

fn minutes(span: Span) -> f64 {
    span.as_ms() as f64 / 60_000.0
}

/// The day as it is drawn.
pub fn line(sheet: &DaySheet, waits: Vec<WaitLine>, app: &App) -> Timeline {
    timeline(&app.shelf().book, &app.shelf().bench(), sheet, (waits, app.now, app.local()))
}

/// The day to scale; nothing where nothing was done.
pub fn day(line: &Timeline, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    if line.boards.is_empty() {
        return None;
    }
    let ends = line.ends()?;
    let (before, after, whole) = (line.from_midnight(), line.to_midnight(), minutes(line.whole));
    let to = if after { whole } else { minutes(ends.to) + MARGIN };
    let from = if before { 0.0 } else { (minutes(ends.from) - MARGIN).max(0.0) };
    let to = to.max(from + LEAST).min(whole);
    let from = from.min(to - LEAST);
    let shown = Day {
        width: seen.page.column(),
        from,
        to,
        boards: line.boards.iter().flat_map(stretches).filter_map(|one| open_off(one, (from, to))).listed(),
        lines: line
            .waits
            .iter()
            .map(|one| Line { from: minutes(one.on.from), to: minutes(one.on.to), open: (one.before, one.after) })
            .filter_map(|one| cut_off(one, (from, to)))
            .listed(),
        helpers: line.helpers.iter().map(|on| (minutes(on.from), minutes(on.to))).listed(),
        hours: hours((from, to), line, seen),
        midnights: [(before, 0.0), (after, whole)]
            .into_iter()
            .filter(|(is, _)| *is)
            .map(|(_, at)| at)
            .chain(line.others().iter().map(|(at, ..)| minutes(*at)))
            .listed(),
    };
    let others = line
        .others()
        .into_iter()
        .map(|(_, before, after)| el("p", "t14").text(said::other_clock(&seen.speech.clock(before), &seen.speech.clock(after))));
    Some(el("div", "on-board").kid(drawn(&shown, spoken(line, app, seen))).kids(others))
}

/// What waited, as far as it lies on what is shown; an end that is cut off goes on.
fn cut_off(one: Line, (from, to): (f64, f64)) -> Option<Line> {
    let open = (one.open.0 || one.from < from, one.open.1 || to < one.to);
    (one.from < to && from < one.to).then_some(Line { from: one.from.max(from), to: one.to.min(to), open })
}

/// A board as far as it is shown; only of what does not count is an end cut off, and that is torn.
fn open_off(one: Drawn, (from, to): (f64, f64)) -> Option<Drawn> {
    let torn = (one.torn.0 || one.from < from, one.torn.1 || to < one.to);
    (one.from < to && from < one.to).then_some(Drawn { from: one.from.max(from), to: one.to.min(to), torn, ..one })
}

fn stretches(board: &Board) -> Vec<Drawn> {
    let look = |source: Source| match source {
        _ if board.runs => Look::Runs,
        Source::Measured => Look::Measured,
        Source::Corrected => Look::Corrected,
        Source::Recalled => Look::Recalled,
    };
    let last = board.parts.len().saturating_sub(1);
    let torn = |nth: usize| (board.before && nth == 0, board.after && nth == last);
    let parts = board.parts.iter().enumerate();
    let parts = parts.map(|(nth, (source, on))| Drawn { from: minutes(on.from), to: minutes(on.to), look: look(*source), torn: torn(nth) });
    let open = board.spare.iter().map(|on| (on, Look::Open)).chain(board.twice.iter().map(|on| (on, Look::Over)));
    let spare = open.map(|(on, look)| Drawn { from: minutes(on.from), to: minutes(on.to), look, torn: (false, false) });
    parts.chain(spare).listed()
}

/// What lies between two words under the line, at least.
const BETWEEN: f64 = 8.0;

/// Full hours to write under the line: as many as have room beside each other, each as wide as it is written. Midnight at the end of
/// a day takes the room of the hour before it. An hour that comes twice is written twice, one that never comes not at all.
fn hours((from, to): (f64, f64), line: &Timeline, seen: Seen<'_>) -> Vec<(f64, String)> {
    let width = seen.page.column();
    let place = |minute: f64| (minute - from) / (to - from).max(1.0) * width;
    // As they are drawn: around their hour, and held within the line.
    let box_of = |(minute, word): &(f64, String)| {
        let wide = widths::plain(word, 14.0);
        let left = held(place(*minute) - wide / 2.0, 0.0, (width - wide).max(0.0));
        (left, left + wide)
    };
    let apart = |pair: &[(f64, String)]| match pair {
        [one, next] => box_of(one).1 + BETWEEN <= box_of(next).0,
        _ => true,
    };
    let quarters = (0..).map(|nth| Span::minutes(15 * nth)).take_while(|since| *since < line.whole && minutes(*since) <= to);
    let full = quarters.filter(|since| from <= minutes(*since) && line.wall(*since).minute_of_day().is_multiple_of(60)).listed();
    let written = |since: Span| (minutes(since), clock(line, since, seen));
    let of_step = |step: u16| {
        let fits = |since: &Span| (line.wall(*since).minute_of_day() / 60).is_multiple_of(step);
        let mut all = full.iter().copied().filter(fits).map(written).listed();
        // Where another clock begins, an hour of the one before may lie as near as it likes.
        for (at, ..) in line.others() {
            let next = all.iter().position(|(minute, _)| minutes(at) <= *minute);
            let meets = next.filter(|next| all.get(next.saturating_sub(1)..=*next).is_some_and(|pair| !apart(pair)));
            meets.and_then(|next| next.checked_sub(1)).into_iter().for_each(|before| drop(all.remove(before)));
        }
        let midnight = (to == minutes(line.whole)).then(|| written(line.whole));
        let meets = |last: &(f64, String)| midnight.as_ref().is_some_and(|midnight| box_of(midnight).0 < box_of(last).1 + BETWEEN);
        if all.last().is_some_and(meets) {
            all.pop();
        }
        all.extend(midnight);
        all
    };
    let steps = [1, 2, 3, 4, 6, 8, 12, 24];
    steps.into_iter().map(of_step).find(|all| all.windows(2).all(apart)).unwrap_or_default()
}

/// What a clock shows so long after midnight; midnight at the end of a day by its name.
fn clock(line: &Timeline, since: Span, seen: Seen<'_>) -> String {
    if line.whole <= since { said::MIDNIGHT.to_owned() } else { seen.speech.clock(line.wall(since)) }
}

/// Every board, gap and wait by the clock, for a reader.
fn spoken(line: &Timeline, app: &App, seen: Seen<'_>) -> String {
    let from_to = |what: &str, on: &Stretch| said::from_to(what, &clock(line, on.from, seen), &clock(line, on.to, seen));
    let mut all = vec![];
    for board in &line.boards {
        let source = board.parts.last().map(|(source, _)| *source);
        let marks = [
            (board.runs, said::RUNS),
            (!board.runs && source == Some(Source::Corrected), words::CORRECTED),
            (source == Some(Source::Recalled), words::RECALLED),
            (board.before, said::BEFORE),
            (board.after, said::AFTER),
        ];
        let marks = marks.iter().filter(|(is, _)| *is).map(|(_, word)| (*word).to_owned());
        let spare = board.spare.iter().map(|on| from_to(said::NOT_COUNTED, on));
        let spare = spare.chain(board.twice.iter().map(|on| from_to(said::TWICE, on)));
        let counts = if board.whole.from < board.whole.to { from_to(&board.op, &board.whole) } else { board.op.clone() };
        all.push(std::iter::once(counts).chain(marks).chain(spare).listed().join(", "));
        let gap = line.gaps.iter().find(|gap| gap.from == board.whole.to);
        all.extend(gap.map(|gap| said::gap(&seen.speech.span(gap.to.minus(gap.from)))));
    }
    all.extend(line.helpers.iter().map(|on| from_to(said::HELPER, on)));
    let wait = |one: &Waited| match (one.before, one.after) {
        (false, false) => from_to(&pieces(app, &one.line), &one.on),
        (false, true) => said::on_from(&pieces(app, &one.line), &clock(line, one.on.from, seen)),
        (true, _) => said::since(&pieces(app, &one.line), &waiting_since(&one.line, seen)),
    };
    let waits = line.waits.iter().map(wait).listed().join(", ");
    if !waits.is_empty() {
        all.push(said::waited(&waits));
    }
    said::to_scale(&all.join("; "))
}

/// "Tue 3 March 13:50".
fn waiting_since(line: &WaitLine, seen: Seen<'_>) -> String {
    let began = line.wait.wall(line.wait.began.at, seen.local);
    format!("{} {}", seen.speech.day(began), seen.speech.clock(began))
}

/// Where the minutes come from, each with the look of its boards; and how long does not count, where any does not.
pub fn shares(own: &Shares, open: Option<Span>, seen: Seen<'_>) -> El<Msg> {
    let own = own.in_minutes(Span::ZERO).0;
    let said_of = |look, span: Span, words: fn(&str) -> String| (Span::ZERO < span).then(|| (look, words(&seen.speech.span(span))));
    let all = [
        said_of(Look::Measured, own.measured, words::measured),
        said_of(Look::Corrected, own.corrected, words::corrected),
        said_of(Look::Recalled, own.recalled, words::recalled),
        open.map(|span| {
            (Look::Open, if Span::ZERO < span { said::not_counted(&seen.speech.span(span)) } else { said::NOT_COUNTED.to_owned() })
        }),
    ];
    let all = all.into_iter().flatten().listed();
    if own.measured == own.total() && open.is_none() {
        return el("p", "t14").text(words::ALL_MEASURED);
    }
    el("p", "t14 looks").kids(all.into_iter().map(|(look, words)| el("span", "with").kid(sample(look)).kid(el("span", "").text(words))))
}

/// How long does not count of the day, where any of it does not; what was told twice has no length of its own. A run in question of which
/// nothing stands does not count at all until it is answered, drawn as it is.
pub fn open(sheet: &DaySheet, line: &Timeline) -> Option<Span> {
    let spare = line.boards.iter().flat_map(|board| &board.spare);
    let asked = |board: &&Board| sheet.is_open(board.run) && sheet.stands_to(board.run).is_none();
    let asked = line.boards.iter().filter(asked).flat_map(|board| &board.parts).map(|(_, on)| on);
    any_open(sheet, line).then(|| Span::sum(spare.chain(asked).map(|on| on.to.minus(on.from))))
}

/// Whether anything of the day does not count.
fn any_open(sheet: &DaySheet, line: &Timeline) -> bool {
    sheet.any_open() || line.boards.iter().any(|board| !board.spare.is_empty() || !board.twice.is_empty())
}
