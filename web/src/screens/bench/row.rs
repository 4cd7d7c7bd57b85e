//! The rows of a day: a run or a count, closed or opened; and what was struck.

use super::super::Seen;
use super::super::count::name as pile_name;
use super::{mending, running, say};
use crate::app::bench::Tap;
use crate::app::bench::day::{DayTap, Mend, View};
use crate::app::bench::mending::name;
use crate::app::mend::MendTap;
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as words, day as said, rack};
use fivebar_core::bench::{By, Doubt, Notch, Run};
use fivebar_core::quantity::{Id, Listed, Span, Wall, order_by_key};
use fivebar_core::sheet::changes::{Change, OfCount, StruckPieces, can_be_put_back, changes, of_count};
use fivebar_core::sheet::counts::Counted;
use fivebar_core::sheet::day::{DayLine, DaySheet};
use fivebar_core::sheet::helped::stays;

fn tap(tap: DayTap) -> Msg {
    say(Tap::Day(tap))
}

/// A run; opened, with what can be done with it. `name` is its job's, where the day has several.
/// `on_day` are its whole minutes on the day, which add up to the day's.
pub fn run(line: &DayLine, (name, on_day): (&str, Option<Span>), (view, app): (&View, &App), seen: Seen<'_>) -> El<Msg> {
    // Of one that is to settle the figure is what counts of it on the day.
    let after = Span::minutes(beyond(line).filter(|_| line.wrong.is_none()).map_or(0, Span::as_minutes));
    let worked = on_day.map_or(line.worked, |on_day| on_day.plus(after));
    let worked = if line.ended.is_some() { seen.speech.span(worked) } else { words::RUNS.to_owned() };
    let open = view.open == Some(line.run.id);
    let shown = Row {
        id: line.run.id,
        at: line.run.began(seen.local),
        what: line.run.work.op.clone(),
        under: note(line, (name, on_day), seen),
        figure: worked,
    };
    row(shown, open, seen).kids(if open { opened(line, (view, app), seen) } else { vec![] })
}

struct Row {
    id: Id,
    at: Wall,
    what: String,
    under: String,
    figure: String,
}

fn row(row: Row, open: bool, seen: Seen<'_>) -> El<Msg> {
    let what = el("span", "op").kid(el("b", "").text(row.what)).kid(el("span", "t14 i2").text(row.under));
    let top = el("button", "dl")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(tap(DayTap::Open(row.id)))
        .kid(el("span", time_class(seen)).text(seen.speech.clock(row.at)))
        .kid(what)
        .kid(el("b", "n").text(row.figure));
    el("div", "run").key(row.id.to_string()).kid(top)
}

/// A clock of twelve hours needs more room.
pub fn time_class(seen: Seen<'_>) -> &'static str {
    if seen.speech.has_halves() { "tm halves" } else { "tm" }
}

/// Where its minutes come from, its pieces, what is odd about it, its job.
fn note(line: &DayLine, (name, on_day): (&str, Option<Span>), seen: Seen<'_>) -> String {
    let run = &line.run;
    let mut told = vec![];
    if 0 < line.batch.n {
        told.push(words::done(&seen.speech.count(line.batch.n), None));
    }
    told.extend(Some(run.done_after_its_end()).filter(|n| 0 < *n).map(|n| said::done_after(n, &seen.speech.count(n))));
    if run.work.rework {
        told.push(words::REWORKED.to_owned());
    }
    told.extend(source(line, seen));
    told.extend(elsewhere(run.by(seen.local), seen));
    told.extend(stays(run, seen.now.at).unwrap_or_default().iter().map(|stay| mending::in_words(stay, run, seen)));
    let is_open = line.stayed.is_some() || (line.wrong.is_some() && !run.heads.is_empty());
    let of_some = line.wrong.is_some() && on_day.is_some();
    told.extend(is_open.then(|| if of_some { words::HELPER_REST_TO_SETTLE } else { words::HELPER_TO_SETTLE }.to_owned()));
    told.extend(beyond(line).map(|span| said::on_the_day_after(&seen.speech.span(span))));
    told.extend(line.wrong.map(|_| words::LOOKS_TOO_LONG.to_owned()));
    let rest = line.wrong.and(on_day).map(|_| line.to_settle);
    told.extend(rest.map(|rest| words::of_it_to_settle(&seen.speech.span(rest))));
    told.extend(line.doubts.iter().map(|doubt| words::doubt(*doubt).to_owned()));
    if !name.is_empty() {
        told.push(name.to_owned());
    }
    told.join(", ")
}

/// That something is shown by the clock of another place; where nobody knows what that clock did, by which.
pub fn elsewhere(by: By, seen: Seen<'_>) -> Option<String> {
    match by {
        By::Here => None,
        By::There => Some(words::CLOCK_THERE.to_owned()),
        By::Start(offset) => Some(words::clock_of_start(&utc(offset.as_minutes(), seen))),
    }
}

/// "UTC-5", "UTC+5:30".
fn utc(minutes: i16, seen: Seen<'_>) -> String {
    let count = |n: u16| seen.speech.count(n.into());
    let (hours, rest) = (minutes.unsigned_abs().div_euclid(60), minutes.unsigned_abs().rem_euclid(60));
    let rest = if rest == 0 { String::new() } else { format!(":{rest:02}") };
    words::utc(minutes < 0, &format!("{}{rest}", count(hours)))
}

fn source(line: &DayLine, seen: Seen<'_>) -> Option<String> {
    let (run, shares, clock) = (&line.run, line.shares, |wall| seen.speech.clock(wall));
    let raw = raw(run).map(|raw| seen.speech.span(raw));
    let corrected = words::corrected(&seen.speech.span(shares.corrected));
    // How the end was put right says nothing of how much that is, where the rest was clocked.
    let of_it = |how: String| if Span::ZERO < shares.measured { format!("{how}, {corrected}") } else { how };
    Some(match (run.mended_stop, line.ended, raw) {
        _ if Span::ZERO < shares.recalled => words::RECALLED.to_owned(),
        (Some(_), Some(ended), Some(raw)) => of_it(words::ended_at(&clock(run.wall(ended.at, seen.local)), &raw)),
        _ if run.started.at != run.tapped.at => of_it(words::began_at(&clock(run.began(seen.local)), &clock(run.tapped))),
        _ if Span::ZERO < shares.corrected => corrected,
        // What it says of the clock stands beside it.
        _ if line.doubts.contains(&Doubt::ClockSetBack) => return None,
        _ => words::MEASURED.to_owned(),
    })
}

/// How long the stamps say it was.
fn raw(run: &Run) -> Option<Span> {
    run.tapped_stop.map(|stop| run.tapped.at.until(stop.at))
}

/// How long it was before it was mended: by its stamps, up to the next start.
fn back(run: &Run, app: &App) -> Option<Span> {
    let next = app.shelf().bench().next_start(run).map(|next| run.tapped.at.until(next));
    raw(run).map(|raw| next.filter(|next| Span::ZERO < *next).map_or(raw, |next| next.min(raw)))
}

fn opened(line: &DayLine, (view, app): (&View, &App), seen: Seen<'_>) -> Vec<El<Msg>> {
    let run = &line.run;
    if let Some(asked) = mending::asked(line, view, app, seen) {
        return asked;
    }
    let [began, stopped] = [Some(run.tapped), run.tapped_stop].map(|at| at.map(|at| run.wall(at.at, seen.local)));
    let overnight = began.zip(stopped).is_some_and(|(began, stopped)| began.day() != stopped.day());
    let stamped = |wall: Wall| {
        let clock = seen.speech.clock(wall);
        if overnight { format!("{} {clock}", seen.speech.day(wall)) } else { clock }
    };
    let said = words::clock_said(&began.map(stamped).unwrap_or_default(), stopped.map(stamped).as_deref());
    let said = (!run.recalled).then(|| el("p", "t14 i2").text(said));
    let meant = line.wrong.map(|wrong| {
        let clock = seen.speech.clock(run.wall(wrong.at, seen.local));
        let span = seen.speech.span(run.started.at.until(wrong.at));
        key("key solid h56 wide", words::until(&span, &clock), "", say(Tap::Proposed(run.id, wrong.at)))
    });
    let mended = run.mended_start.is_some() || run.mended_stop.is_some();
    let third = if line.wrong.is_some() {
        Some(super::question::right(run, line.worked, seen))
    } else if !line.doubts.is_empty() {
        Some(key("key h56", words::RIGHT_AS_IT_IS, "", say(Tap::Right(run.id))))
    } else {
        back(run, app)
            .filter(|_| mended)
            .map(|raw| key("key h56", words::again(&seen.speech.span(raw)), "", tap(DayTap::AsStamped(run.id))))
    };
    let keys = el("div", "less")
        .kid(key("key h56", words::MEND, "", tap(DayTap::Mend(Box::new(Mend::Which)))))
        .kid(key("key h56", words::STRIKE, "", tap(DayTap::Strike(run.id))))
        .kids(third);
    said.into_iter()
        .chain(changed(run, app, seen))
        .chain(meant)
        .chain([keys])
        .chain(line.stayed.as_ref().map(|stayed| running::stayed(stayed, seen)))
        .chain(mending::helpers(run, seen))
        .chain(notches(run, app, seen))
        .listed()
}

/// What of it falls on the day after.
fn beyond(line: &DayLine) -> Option<Span> {
    (Span::ZERO < line.after && line.ended.is_some()).then_some(line.after)
}

/// What was put right of it, and when.
fn changed(run: &Run, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let clock = |wall: Wall| seen.speech.clock(run.wall(wall.at, seen.local));
    let one = |change: Change| {
        let start = change.start.map(|start| said::start(&clock(start)));
        let stop = change.stop.map(|stop| said::stop(&clock(stop), change.proposed));
        let on = change.on.map(|on| said::moved(name(app, on).as_deref()));
        let helper = change.helper.map(|helper| {
            let ends = [helper.from.map(|from| said::came(&clock(from))), helper.to.map(|to| said::went(&clock(to)))];
            let pay = helper.pay.map(|pay| said::per_hour(&seen.speech.money(pay)));
            said::of_helper(helper.how, &ends.into_iter().flatten().chain(pay).listed().join(", "))
        });
        let pieces = change.pieces.as_ref().map(|it| pieces_struck(it, run, seen));
        let words = [start, stop, change.op.as_deref().map(said::called), on, helper, pieces];
        let what = words.into_iter().flatten().listed().join(", ");
        let what = if what.is_empty() { said::RIGHT.to_owned() } else { what };
        el("p", "t14 i2").text(said::put_right(&when(change.at, seen), &what))
    };
    changes((&app.shelf().bench(), &app.shelf().book), run.id).into_iter().map(one).listed()
}

/// The day and the time at which something was said.
fn when(at: Wall, seen: Seen<'_>) -> String {
    format!("{} {}", seen.speech.day(at), seen.clock(at))
}

/// Which pieces were struck, and how many were noted instead.
fn pieces_struck(struck: &StruckPieces, run: &Run, seen: Seen<'_>) -> String {
    let done = |n| words::done(&seen.speech.count(n), None);
    let mark = |notch: &Notch| format!("{} {}", done(notch.n), seen.speech.clock(run.wall(notch.at, seen.local)));
    let anew = (0 < struck.anew).then(|| done(struck.anew));
    said::pieces_struck(&struck.marks.iter().map(mark).listed(), anew.as_deref())
}

/// The pieces done in it, by their time: each can be struck, and one that was struck comes again.
fn notches(run: &Run, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let one = |(notch, struck): &(Notch, bool)| {
        let at = run.wall(notch.at, seen.local);
        let within = run.started.at <= notch.at && notch.at <= run.end(seen.now.at);
        let clock = seen.speech.clock(at);
        let at = if within { clock } else { said::noted(&seen.speech.day(at), &clock) };
        let (class, word, then) = strike((notch.id, *struck));
        el("div", "tapped")
            .key(notch.id.to_string())
            .kid(el("span", "t14 i2").text(at))
            .kid(el("b", class).text(words::done(&seen.speech.count(notch.n), None)))
            .kid(key("key h48", word, "", tap(then)))
    };
    let struck = can_be_put_back(&app.shelf().book, run.id).into_iter().map(|notch| (notch, true));
    let mut all = run.notches.iter().map(|notch| (*notch, false)).chain(struck).listed();
    order_by_key(&mut all, |(notch, _)| notch.at);
    all.iter().map(one).listed()
}

/// How what is listed is shown, and its key with what that does.
fn strike((id, struck): (Id, bool)) -> (&'static str, &'static str, DayTap) {
    if struck { ("gone", words::PUT_BACK, DayTap::PutBack(id)) } else { ("", words::STRIKE, DayTap::Strike(id)) }
}

/// A count; opened, each of its taps, with what was changed of it.
pub fn count(counted: &Counted, (view, app): (&View, &App), seen: Seen<'_>) -> El<Msg> {
    let Some(first) = counted.taps.first() else { return el("div", "run") };
    let open = view.open == Some(first.id);
    let figure = counted.n.map_or_else(|| "–".to_owned(), |n| seen.speech.count(n));
    let there = (!seen.local.shows(first.at)).then(|| words::CLOCK_THERE.to_owned());
    let under = [Some(pile_name(&counted.pile)), there].into_iter().flatten().listed().join(", ");
    let shown = row(Row { id: first.id, at: first.at, what: words::counting(counted.counting).into(), under, figure }, open, seen);
    let taps = counted.taps.iter().filter(|_| open).flat_map(|one| {
        let (class, word, then) = strike((one.id, one.struck));
        let n = el("b", class).text(seen.speech.count(one.n));
        let mend = one.can_be_mended.then(|| key("key h48", rack::MEND, "", Msg::Mend(MendTap::Open(one.id))));
        let clock = el("span", "t14 i2").text(seen.speech.clock(one.at));
        let strike = one.can_be_struck.then(|| key("key h48", word, "", tap(then)));
        let tapped = el("div", "tapped").key(one.id.to_string()).kid(clock).kid(n).kids(mend).kids(strike);
        std::iter::once(tapped).chain(changed_count(one.id, app, seen)).listed()
    });
    shown.kids(taps)
}

/// What was put right of a count, and when; and since when it is struck.
fn changed_count(count: Id, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let one = |(at, of): (Wall, OfCount)| {
        let when = when(at, seen);
        let words = match of {
            OfCount::Mended { was, n } => said::put_right(&when, &said::was(&seen.speech.count(n), &seen.speech.count(was))),
            OfCount::Struck => said::struck(&when),
        };
        el("p", "t14 i2").text(words)
    };
    of_count(&app.shelf().book, count).into_iter().map(one).listed()
}

/// Runs and waits that were struck; each can be put back.
pub fn struck(sheet: &DaySheet, waits: Vec<El<Msg>>, seen: Seen<'_>) -> Vec<El<Msg>> {
    if sheet.struck.is_empty() && waits.is_empty() {
        return vec![];
    }
    let rows = sheet.struck.iter().map(|run| {
        el("div", "tapped")
            .key(run.id.to_string())
            .kid(el("span", "t14 i2").text(seen.clock(run.started)))
            .kid(el("b", "gone").text(run.op.clone()))
            .kid(key("key h48", words::PUT_BACK, "", tap(DayTap::PutBack(run.id))))
    });
    vec![el("h2", "").text(words::STRUCK), el("section", "card list").kids(rows).kids(waits)]
}
