//! The board of a run that looks like a forgotten stop. The question never blocks a start.

use super::super::Seen;
use super::row::elsewhere;
use super::say;
use crate::app::Msg;
use crate::app::bench::Tap;
use crate::parts::board::asking;
use crate::parts::key::key;
use crate::parts::notches::Notches;
use crate::parts::scale::{Fill, Kind, Look, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::bench as words;
use fivebar_core::bench::repair::{Because, Proposed};
use fivebar_core::bench::{Batch, Run};
use fivebar_core::quantity::{Listed, Span};
use fivebar_core::sheet::bench::BenchSheet;
use fivebar_core::sheet::helped::along;

/// A run that is asked about.
struct Asked<'a> {
    run: &'a Run,
    name: Option<&'a str>,
    worked: Span,
    batch: Batch,
    wrong: Proposed,
}

/// A board for the run that looks wrong: the running one first, else the latest.
pub fn question(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let running = sheet.running.as_ref();
    let running = running.and_then(|slab| {
        Some(Asked { run: &slab.run, name: slab.name.as_deref(), worked: slab.worked, batch: slab.batch, wrong: slab.wrong? })
    });
    let ended = || {
        let mut ended = sheet.to_mend.iter();
        ended.find_map(|mend| {
            Some(Asked { run: &mend.run, name: mend.name.as_deref(), worked: mend.worked, batch: mend.batch, wrong: mend.wrong? })
        })
    };
    running.or_else(ended).map(|asked| drawn(&asked, seen))
}

fn drawn(asked: &Asked<'_>, seen: Seen<'_>) -> El<Msg> {
    let Asked { run, name, worked, batch, wrong } = asked;
    let shown = seen.speech.span(*worked);
    let meant = seen.speech.span(run.started.at.until(wrong.at));
    let answers = el("div", "g2").kid(right(run, *worked, seen)).kid(key("key h56", words::STOPPED_AT, "", say(Tap::StoppedAt(run.id))));
    let title = words::shows(&run.work.op, &shown);
    let clock = seen.when(run.wall(wrong.at, seen.local));
    let (began, there) = (run.began(seen.local), elsewhere(run.by(seen.local), seen));
    let since = (began.day() != seen.now.day() || there.is_some())
        .then(|| el("p", "").text(words::since(&seen.dated(seen.speech.clock(began), began), there.as_deref())));
    let until = words::until(&meant, &clock);
    let proposed = match left_of(*batch, *wrong) {
        Some((of, n)) => {
            let done = |n| words::done(&seen.speech.count(n), Some(&seen.speech.count(of)));
            let whole = key("key solid h88 wide", until, done(of), say(Tap::ProposedWhole(run.id, wrong.at, n)));
            vec![whole, key("key h56 wide", words::stays(&done(batch.n)), "", say(Tap::Proposed(run.id, wrong.at)))]
        }
        // A mere guess is no more likely than what the clock shows.
        None if wrong.because == Because::Default => vec![key("key h88 wide", until, "", say(Tap::Proposed(run.id, wrong.at)))],
        None => vec![key("key solid h88 wide", until, "", say(Tap::Proposed(run.id, wrong.at)))],
    };
    let why = [el("p", "").text(because(run, *wrong, seen)), scale(&bar(asked, seen), &title)];
    let helpers = helpers(run, *wrong, seen);
    let head = [el("h2", "strong").text(title)].into_iter().chain(name.map(|name| el("p", "t17 w7").text(name.to_owned()))).chain(since);
    let asked = if seen.page.is_narrow() {
        // The keys that answer it come before what explains them, so that all of them are in sight.
        head.chain(proposed).chain([answers]).chain(why).chain(helpers).listed()
    } else {
        head.chain(why).chain(proposed).chain(helpers).chain([answers]).listed()
    };
    asking(Notches { done: batch.n, of: batch.of.unwrap_or(0) }, asked).key("question")
}

/// That it is right as it stands. That ends nothing: of what runs the word is that it goes on.
pub fn right(run: &Run, worked: Span, seen: Seen<'_>) -> El<Msg> {
    let shown = seen.speech.span(worked);
    let word = if run.is_running() { words::still_at_it(&shown) } else { words::it_was(&shown) };
    key("key h56", word, "", say(Tap::Right(run.id)))
}

/// Of how many the batch is, and how many of them are not noted, where it was done by then.
fn left_of(batch: Batch, wrong: Proposed) -> Option<(u32, u32)> {
    let of = batch.of.filter(|_| wrong.because == Because::Batch)?;
    of.checked_sub(batch.n).filter(|n| 0 < *n).map(|n| (of, n))
}

/// The last piece by its clock, where that speaks for the end.
fn because(run: &Run, wrong: Proposed, seen: Seen<'_>) -> String {
    let at_last = run.notches.last().is_some_and(|notch| notch.at == wrong.at);
    let wall = run.wall(wrong.at, seen.local);
    let clock = words::at(&seen.when(wall), wall.day() != seen.now.day());
    if wrong.because == Because::LastAct && at_last {
        return words::last_done(run.done(), &seen.speech.count(run.done()), &clock);
    }
    words::because(wrong.because, &clock)
}

/// What counts of who worked along, were it to end there.
fn helpers(run: &Run, wrong: Proposed, seen: Seen<'_>) -> Option<El<Msg>> {
    let end = run.wall(wrong.at, seen.local);
    let ended = Run { stopped: Some(end), ..run.clone() };
    let days = (run.started.day(), end.day().max(run.started.day()));
    let (time, pay) = along([&ended], days, end).ok().filter(|_| !run.heads.is_empty())?;
    if time <= Span::ZERO {
        return Some(el("p", "t14 i2").text(words::NO_HELPER_THEN));
    }
    let pay = pay.into_iter().map(|sum| seen.speech.money(sum)).collect::<Vec<_>>().join(", ");
    Some(el("p", "t14 i2").text(words::counts_until_then(&crate::words::en::day::along(&seen.speech.span(time), &pay))))
}

/// From the start to the stop, solid up to the end that is proposed.
fn bar(asked: &Asked<'_>, seen: Seen<'_>) -> Scale {
    let Asked { run, worked, wrong, .. } = asked;
    let minute = |span: Span| span.as_ms() as f64 / 60_000.0;
    let start = f64::from(run.began(seen.local).minute_of_day());
    let (meant, end) = (start + minute(run.started.at.until(wrong.at)), start + minute(*worked));
    let edge = (end - start) / 10.0;
    let tick = [15.0, 30.0, 60.0].into_iter().find(|tick| (end - start) / tick < 20.0).unwrap_or(240.0);
    let wall = |span: Span| run.wall(run.started.at.plus(span), seen.local);
    let last = if run.is_running() { words::NOW_MARK } else { words::STOP_MARK };
    let mark = |at, word: &str, span| Mark::new(at, Kind::Ink, word, seen.speech.clock(wall(span)));
    Scale {
        width: seen.page.card(),
        from: start - edge,
        to: end + edge,
        rhythm: Some(Rhythm { tick, long: tick * 4.0 }),
        marks: vec![
            mark(start, words::START_MARK, Span::ZERO),
            mark(meant, words::end_mark(wrong.because), run.started.at.until(wrong.at)),
            // What the phone shows now is another clock than the one there.
            Mark::new(end, Kind::Ink, last, seen.clock(wall(*worked))),
        ],
        fills: vec![Fill { from: start, to: meant, look: Look::Ink }, Fill { from: meant, to: end, look: Look::Open }],
        ..Scale::default()
    }
}
