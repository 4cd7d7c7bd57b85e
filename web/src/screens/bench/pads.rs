//! The pads of Bench: how many pieces, and what the clock said.

use super::super::workshop::hours::day;
use super::super::{Screen, Seen};
use super::{foot, mending, say, start};
use crate::app::bench::ends::{self, End, Meant};
use crate::app::bench::mending::pieces_of;
use crate::app::bench::{Tap, pay_currency};
use crate::app::entry::Typed;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips, flowing};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::pad;
use crate::view::{El, el};
use crate::words::en::{bench as words, common, refusal, waits};
use fivebar_core::bench::Run;
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Currency, Id, Listed, Span, Units, Wall, begin_large, order_by_key};

/// What a pad asks: the screen's name, its title, the line above it, what Done says.
pub struct Asked {
    pub place: &'static str,
    pub title: &'static str,
    pub small: String,
    pub done: Msg,
    /// What stands between the figure and the keys.
    pub between: Vec<El<Msg>>,
    /// What stands there is asked, and waits for its answer.
    pub asks: bool,
    /// Keys for the halves of the day.
    pub halves: Option<El<Msg>>,
}

impl Asked {
    pub fn new((place, title): (&'static str, &'static str), small: String, done: Msg) -> Asked {
        Asked { place, title, small, done, between: vec![], asks: false, halves: None }
    }
}

/// How many pieces.
pub fn count(asked: Asked, typed: &Typed, seen: Seen<'_>) -> Screen {
    typing(asked, "", typed, seen)
}

/// Of how many pieces the batch of a run is: as the job says in one tap, else typed.
pub fn batch(run: Option<&Run>, typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let small = run.map(|run| run.work.op.clone()).unwrap_or_default();
    let stands = run.and_then(|run| app.shelf().bench().batch(run.work.on, &run.work.op, app.now.at).of);
    let of_job = run.and_then(|run| pieces_of(app, run.work.on)).filter(|n| Some(*n) != stands);
    let one = |(n, under): (u32, &'static str)| key("key t22 h56 wide", seen.speech.count(n), under, say(Tap::BatchOf(n)));
    let offered = of_job.map(|n| (n, words::AS_THE_JOB)).into_iter().chain(stands.map(|n| (n, words::AS_IT_STANDS))).listed();
    let between = (!offered.is_empty()).then(|| el("div", "g2").kids(offered.into_iter().map(one)));
    let asked =
        Asked { between: between.into_iter().listed(), ..Asked::new(("bench/batch", words::OF_HOW_MANY), small, say(Tap::PadDone)) };
    typing(asked, "", typed, seen)
}

/// So many more done; and the way to put right of how many.
pub fn more(typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let small = app.running().map(|strip| strip.op).unwrap_or_default();
    let mut screen = count(Asked::new(("bench/more", words::HOW_MANY_DONE), small, say(Tap::PadDone)), typed, seen);
    let fewer = key("key soft h48", words::FEWER_DONE, "", say(Tap::AskInAll));
    screen.main = screen.main.kid(el("div", "less").kid(key("key soft h48", words::ASK_HOW_MANY, "", say(Tap::AskBatch))).kid(fewer));
    screen
}

/// So many were done in a run, more or fewer than stand there.
pub fn in_all(run: &Run, typed: &Typed, seen: Seen<'_>) -> Screen {
    let stands = words::done(&seen.speech.count(run.done()), None);
    let small = format!("{}, {stands}", mending::clocks(run, seen));
    count(Asked::new(("bench/in-all", words::HOW_MANY_IN_ALL), small, say(Tap::PadDone)), typed, seen)
}

/// What a helper is paid for an hour, if anything.
pub fn helper(typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let small = app.running().map(|strip| strip.op).unwrap_or_default();
    let currency = pay_currency(app);
    let asked = Asked::new(("bench/helper", words::HELPER_PAY), small, say(Tap::PadDone));
    let asked = Asked { between: as_last_time(currency, typed, app, seen), ..asked };
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let done = if typed.text.is_empty() { words::NOT_PAID } else { words::JOINS };
    laid_out(asked, (words::HELPER_PAY_UNDER, currency.code(), Some(sign), done), typed, seen)
}

/// What the last one was paid, in one tap.
fn as_last_time(currency: Currency, typed: &Typed, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let last = app.shelf().bench().paid_last(currency).filter(|_| typed.text.is_empty());
    let last = last.map(|pay| key("key t22 h56 wide", seen.speech.money(pay), words::AS_LAST_TIME, say(Tap::JoinsFor(pay))));
    let much = app.bench.asked.then(|| el("p", "why").attr("role", "alert").text(words::MUCH_PAY));
    last.into_iter().chain(much).listed()
}

/// When a run stopped.
pub fn stopped(run: Id, typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let it = app.shelf().bench().run(run).cloned();
    let read = it.as_ref().and_then(|run| ends::stop(app, run, &typed.text).ok());
    let asked = Asked::new(("bench/stopped", words::STOPPED_WHEN), from(app, Some(run), seen), say(Tap::PadDone));
    let days = it.as_ref().and_then(|run| days((run, End::Stop), read, app, seen));
    let mut between = meant(read, app, seen);
    if typed.text.is_empty() {
        between.extend(it.as_ref().and_then(|run| stopped_ago(run, seen)));
    }
    between.extend(days);
    clock(Asked { between, asks: app.bench.asked, ..asked }, typed, seen)
}

/// 5, 15 or 30 minutes ago, as far as it ran then.
fn stopped_ago(run: &Run, seen: Seen<'_>) -> Option<El<Msg>> {
    let then = |minutes: i64| seen.now.at.minus(Span::minutes(minutes));
    let all = foot::AGO.into_iter().filter(|minutes| run.started.at < then(*minutes) && then(*minutes) <= run.end(seen.now.at)).listed();
    let shown = all.iter().map(|minutes| Chip::tap(words::ago(*minutes))).listed();
    let id = run.id;
    let keys = |nth: usize| all.get(nth).map_or(say(Tap::Close), |minutes| say(Tap::StoppedAgo(id, *minutes)));
    (!all.is_empty()).then(|| el("div", "ago").kid(chips("key h56", shown, keys).attr("aria-label", words::STOPPED_WHEN)))
}

/// When a run began or stopped, put right.
pub fn mend((title, run): (&'static str, Option<Id>), typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let it = run.and_then(|run| app.shelf().bench().run(run).cloned());
    let end = if title == words::STARTED_WHEN { End::Start } else { End::Stop };
    let ends = |run: &Run| if end == End::Start { ends::start(app, run, &typed.text) } else { ends::stop(app, run, &typed.text) };
    let asked = Asked::new(("bench/mend", title), from(app, run, seen), say(Tap::PadDone));
    let read = it.as_ref().and_then(|run| ends(run).ok());
    let days = it.as_ref().and_then(|run| days((run, end), read, app, seen));
    let between = meant(read, app, seen).into_iter().chain(days).listed();
    clock(Asked { between, asks: app.bench.asked, ..asked }, typed, seen)
}

/// When a helper came or went, as it is read, and the days of the run.
pub fn along(run: &Run, typed: &Typed, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let read = ends::along(app, run, &typed.text).ok();
    meant(read, app, seen).into_iter().chain(days((run, End::Along), read, app, seen)).listed()
}

/// The days of which a clock time may be, where there are several; the one it is read for is chosen. What is asked leaves them out.
fn days((run, end): (&Run, End), read: Option<Meant>, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let all = ends::days(app, run, end);
    let stands = if end == End::Start || run.is_running() { run.began(seen.local) } else { run.wall(run.end(seen.now.at), seen.local) };
    let chosen = app.bench.on_day.unwrap_or(read.map_or(stands, |read| read.at).day());
    let shown = all.iter().map(|one| Chip::choice(day(*one, seen), *one == chosen)).listed();
    let keys = |nth: usize| all.get(nth).map_or(say(Tap::Close), |day| say(Tap::OnDay(*day)));
    (!all.is_empty() && !app.bench.asked).then(|| flowing("key h48", shown, keys).attr("aria-label", words::ON_WHICH_DAY))
}

/// What is read of a clock time as it is typed: day, time and length; where it is asked about, each that may be meant as a key.
pub fn meant(read: Option<Meant>, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(read) = read else { return vec![] };
    let when = |wall: Wall, span: Option<Span>| {
        let when = format!("{} {}", seen.speech.day(wall), seen.speech.clock(wall));
        words::reads(&when, span.map(|span| seen.speech.span(span)).as_deref())
    };
    if !app.bench.asked {
        let never = |typed| words::never_came(&start::noon_at(typed, seen), &seen.speech.clock(read.at));
        let skipped = read.skipped.map(|typed| el("p", "w7").text(never(typed)));
        return std::iter::once(el("p", "t22 w8").attr("role", "status").text(when(read.at, read.span))).chain(skipped).listed();
    }
    let one = |((wall, span), second): ((Wall, Option<Span>), bool)| {
        let under = words::reads(&seen.speech.day(wall), span.map(|span| seen.speech.span(span)).as_deref());
        let clock = seen.speech.clock(wall);
        let clock = if read.twice { begin_large(&waits::of_two(&clock, second)) } else { clock };
        key("key t22 h56 wide", clock, under, say(Tap::Meant(wall.at)))
    };
    let mut all = std::iter::once((read.at, read.span)).chain(read.other).listed();
    if read.twice {
        order_by_key(&mut all, |(wall, _)| wall.at);
    }
    let keys = all.into_iter().zip([false, true]).map(one);
    vec![
        el("p", "w7").attr("role", "alert").text(if read.twice { words::CAME_TWICE } else { words::WHICH_ONE }),
        el("div", "less").kids(keys),
    ]
}

/// "Glue tops, 11:20 to 14:32": what stands.
fn from(app: &App, run: Option<Id>, seen: Seen<'_>) -> String {
    let bench = app.shelf().bench();
    run.and_then(|run| bench.run(run)).map(|run| mending::clocks(run, seen)).unwrap_or_default()
}

/// A pad for a clock time, with keys for the halves of the day where clocks have twelve hours.
pub fn clock(asked: Asked, typed: &Typed, seen: Seen<'_>) -> Screen {
    let halves = seen.speech.has_halves();
    // What is asked leaves the pad its room.
    if asked.asks {
        return typing(asked, "", typed, seen);
    }
    let keys = halves.then(|| pad::half_keys(&typed.text, |press| say(Tap::Press(press))));
    let how = if halves { words::BY_HALVES } else { words::BY_THE_CLOCK };
    typing(Asked { halves: keys, ..asked }, how, typed, seen)
}

/// A pad on which nothing typed says something too: then Done says `none`.
pub fn or_none(asked: Asked, none: &'static str, typed: &Typed, seen: Seen<'_>) -> Screen {
    let halves = seen.speech.has_halves().then(|| pad::half_keys(&typed.text, |press| say(Tap::Press(press))));
    let done = if typed.text.is_empty() { none } else { common::DONE };
    let how = if halves.is_some() { words::BY_HALVES } else { words::BY_THE_CLOCK };
    laid_out(Asked { halves, ..asked }, (how, "", None, done), typed, seen)
}

/// A pad for what somebody is paid for an hour.
pub fn pay((small, currency): (String, Currency), typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let asked = Asked::new(("bench/helper-pay", words::HELPER_PAY), small, say(Tap::PadDone));
    let asked = Asked { between: as_last_time(currency, typed, app, seen), ..asked };
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let done = if typed.text.is_empty() { words::NOT_PAID } else { common::DONE };
    laid_out(asked, (words::HELPER_PAY_UNDER, currency.code(), Some(sign), done), typed, seen)
}

fn typing(asked: Asked, how: &'static str, typed: &Typed, seen: Seen<'_>) -> Screen {
    laid_out(asked, (how, "", None, common::DONE), typed, seen)
}

/// The line above the keys, the unit, the decimal key, and what Done says.
type Keys<'a> = (&'static str, &'a str, Option<char>, &'static str);

fn laid_out(asked: Asked, (how, unit, sign, done): Keys<'_>, typed: &Typed, seen: Seen<'_>) -> Screen {
    let main = el("main", "scr")
        .kid(pad::entry(&typed.text, unit, typed.wrong.is_some()))
        .kids(typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Metric))))
        .kids((!how.is_empty() && typed.wrong.is_none()).then(|| el("p", "t14 i2").text(how)))
        .kids(asked.between)
        .kid(el("div", "push"))
        .kids(asked.halves)
        .kid(pad::pad(sign, |press| say(Tap::Press(press))));
    let keys: El<Msg> =
        el("footer", "foot").kid(el("div", "um back").kid(key("key h88 m", common::NOT_NOW, "", say(Tap::Close))).kid(done_key(
            "key solid h88",
            done,
            "",
            asked.done,
        )));
    Screen::new(asked.place, head(Head::new(asked.small, asked.title)), main).foot(keys)
}
