//! Big buttons: never more than four targets, for hands with glue on them. Leaving is a hold, so that a palm does not.

mod off;

use super::super::undo::last;
use super::super::{Screen, Seen};
use super::rack::notches;
use super::{cautions, say, slab};
use crate::app::bench::Tap;
use crate::app::bench::waits::{WaitTap, held_up, kept, long, next, pieces, usual};
use crate::app::{App, Common, Msg};
use crate::parts::notches::on_slab;
use crate::view::{El, el};
use crate::words::en::common::taken_back;
use crate::words::en::{bench as words, waits};
use fivebar_core::bench::On;
use fivebar_core::bench::wait::{Usual, What};
use fivebar_core::ledger::{Entry, Fact};
use fivebar_core::quantity::{Id, Span};
use fivebar_core::sheet::bench::{BenchSheet, Choice, Slab};
use off::{chalked, comes_out, off};

/// How long a hold is, in milliseconds.
const HOLD: u32 = 1000;

/// A start that long ago is no slip of the hand that is noticed at once [J].
const START_MOST: Span = Span::minutes(2);

/// So long after a tap it can be a slip: what takes it back stands there, whatever can come out [J].
const SLIP: Span = Span::ms(30_000);

/// The keys, and the cautions of the bench above them.
pub fn screen(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Screen {
    let warned = cautions::of_work(app, sheet, seen);
    let main = el("main", "big").kids(warned).kid(first(app, sheet, seen)).kid(second(app, sheet, seen)).kid(leave());
    let mut screen = Screen::new("bench/big", top(app, sheet, seen), main);
    screen.bare = true;
    screen
}

/// The job and the operation, and its minutes to be read from the bench; once something of it waits, its off time to be chalked on
/// the work.
fn top(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let title = sheet.running.as_ref().map_or(words::NOTHING_RUNS.to_owned(), |slab| slab.run.work.op.clone());
    let job = sheet.running.as_ref().map(|slab| slab.name.clone().unwrap_or_else(|| words::NO_JOB.to_owned()));
    let title = el("h1", "focus-here").attr("tabindex", "-1").text(title);
    let named = el("div", "of").kids(job.map(|job| el("p", "t17 w7").text(job))).kid(title);
    let head = el("header", "head bighead");
    let asked = || [forgotten(sheet, seen), super::running::set_back(sheet, seen)].into_iter().flatten();
    match chalked(app) {
        Some(lines) => head
            .kid(el("div", "row").kid(named).kids(sheet.running.as_ref().map(|slab| worked(slab, seen))))
            .kids(asked())
            .kids(off(&lines, app, seen)),
        None => head.kid(named).kid(time(sheet, seen)).kids(asked()).kid(el("p", "t14 i2").text(words::STAYS_AWAKE)),
    }
}

/// What runs looks like a forgotten stop: the answers to that need the whole page.
fn forgotten(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let slab = sheet.running.as_ref().filter(|slab| slab.wrong.is_some())?;
    Some(el("p", "w7").text(words::forgotten_stop(&seen.when(slab.run.began(seen.local)))))
}

fn worked(slab: &Slab, seen: Seen<'_>) -> El<Msg> {
    let (figure, unit) = slab::figure(slab.worked, seen);
    el("span", "t22 w8").text(format!("{figure} {unit}").trim_end().to_owned())
}

/// Minutes so far, and about what is left.
fn time(sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let (figure, unit) = match &sheet.running {
        Some(slab) => slab::figure(slab.worked, seen),
        None => (seen.speech.span(sheet.today), ""),
    };
    let under = match &sheet.running {
        None => words::TODAY.to_owned(),
        Some(running) => slab::about_left(&running.batch, seen).unwrap_or_default(),
    };
    el("p", "off")
        .kid(el("span", "t22 w7").text(under))
        .kid(el("span", "time").kid(el("span", "t80 w8").text(figure)).kids((!unit.is_empty()).then(|| el("span", "t30 w8").text(unit))))
}

fn first(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    match (&sheet.running, &sheet.carry_on) {
        (Some(slab), _) if !slab.has_pieces() => huge("huge slab", words::STOP, String::new(), say(Tap::Stop)),
        (Some(slab), _) => {
            let notches = notches(&slab.batch);
            let key = match usual(app, &slab.run.work.op) {
                Some(usual) => clamp(slab, &usual, app),
                None => {
                    let n = seen.speech.count(slab.batch.n);
                    let done = words::done(&n, slab.batch.of.map(|of| seen.speech.count(of)).as_deref());
                    huge("huge slab", words::PLUS_ONE, done, say(Tap::Done))
                }
            };
            key.kids((0 < notches.of).then(|| on_slab(notches)))
        }
        (None, Some(carry)) => match goes_on(app, sheet, carry) {
            Some(choice) => {
                let under = [choice.name.clone(), Some(choice.op.clone())].into_iter().flatten().collect::<Vec<_>>().join(": ");
                let begun = choice.is_same(carry) || Span::ZERO < choice.batch.all();
                huge("huge", if begun { words::CARRY_ON } else { words::START }, under, say(Tap::Board(choice.clone())))
            }
            None => huge("huge", words::START, words::WHAT_ARE_YOU_DOING.to_owned(), say(Tap::Other)),
        },
        (None, None) => huge("huge", words::START, words::WHAT_ARE_YOU_DOING.to_owned(), say(Tap::Other)),
    }
}

/// What one thumb goes on with: what was stopped last, else what comes next there, where that is of a job; else what was broken off of a job
/// before it, or where another job stands. Nothing of which each piece waits.
fn goes_on<'a>(app: &App, sheet: &'a BenchSheet, carry: &'a Choice) -> Option<&'a Choice> {
    let rack = &sheet.rack;
    let next = rack.next.and_then(|place| rack.below.get(place));
    let broken_off = sheet.latest.iter().filter(|choice| !choice.batch.is_done());
    let of_jobs = [Some(carry), next].into_iter().flatten().chain(broken_off).chain(&rack.jobs).filter(|it| it.on != On::Nothing);
    of_jobs.chain([carry]).find(|choice| held_up(app, (choice.on, &choice.op, choice.kind)).is_none())
}

/// "top 4, off 90 min from now".
fn clamp(slab: &Slab, usual: &Usual, app: &App) -> El<Msg> {
    let under = waits::next_off(&next(app, slab).0, &long(app, usual.span), What::of(&usual.what));
    huge("huge slab", waits::clamped(What::of(&usual.what)), under, say(Tap::Waits(WaitTap::Clamp)))
}

/// What takes back, and Stop. What can come out stands in the place of the one that is needed less: of Stop while nothing runs, else of
/// what takes back, once the last tap is no slip any more.
fn second(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let over = comes_out(app, seen);
    let Some(slab) = &sheet.running else {
        return pair(back(app, sheet, seen), over.unwrap_or_else(|| stop(app).flag("disabled", true)));
    };
    match (slab.has_pieces(), over) {
        (false, Some(over)) => pair(back(app, sheet, seen), over),
        (false, None) => el("div", "alone").kid(back(app, sheet, seen)),
        (true, Some(over)) if !slipped(app) => pair(over, stop(app)),
        (true, _) => pair(back(app, sheet, seen), stop(app)),
    }
}

fn pair(one: El<Msg>, other: El<Msg>) -> El<Msg> {
    el("div", "g2 back").kid(one).kid(other)
}

fn stop(app: &App) -> El<Msg> {
    let keeps = if app.shelf().waits().on().next().is_some() { waits::KEEPS_WAITS } else { "" };
    large("key solid h176", words::STOP, keeps.to_owned(), say(Tap::Stop))
}

/// The last act of this tab.
fn last_act(app: &App) -> Option<Id> {
    let shelf = app.shelf();
    shelf.to_put_back().or(shelf.last_act)
}

/// Whether the last tap was so short ago that it may be a slip; what was taken off is no slip while more can come out.
fn slipped(app: &App) -> bool {
    let book = &app.shelf().book;
    let acts = last_act(app).into_iter().flat_map(|act| book.act(act)).filter_map(|id| book.entry(id)).map(|(entry, _)| entry);
    let mut acts = acts.filter(|entry| !matches!(entry.fact, Fact::WaitEnded(_)));
    let lately = |entry: &Entry| entry.wall.at.until(app.now.at) < SLIP;
    // What was just taken back may be what was taken off, and a second tap of the same thumb would take it off again.
    let taken_back = app.shelf().took_back_last() && book.entries().next_back().is_some_and(|(entry, _)| lately(entry));
    taken_back || acts.any(lately)
}

fn back(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let (shelf, act) = (app.shelf(), last_act(app));
    let told = act.and_then(|act| shelf.book.act(act).last().copied()).and_then(|id| shelf.book.entry(id));
    let wait = told.and_then(|(entry, _)| kept(app, |kept| kept.waits.wait(entry.id).map(|wait| kept.line(wait, app.now.at))));
    let last = last(app, seen);
    let back = last.as_ref().is_some_and(|(back, _)| *back);
    let nothing = last.is_none();
    let named = wait.map(|line| pieces(app, &line)).or_else(|| last.and_then(|(_, named)| named)).unwrap_or_default();
    let (words_of, under, tap) = match back {
        true => (words::PUT_IT_BACK, taken_back(&named), Common::PutBack),
        false => (words::TAKE_BACK, named, Common::TakeBack),
    };
    // A palm would wipe all that was worked since.
    let wipes = !back && sheet.running.as_ref().is_some_and(|slab| wipes(act, slab, app));
    let under = match (wipes, nothing) {
        (true, _) => words::NOT_THE_START.to_owned(),
        (_, true) => words::NOTHING_SINCE.to_owned(),
        _ => under,
    };
    large("key h176", words_of, under, Msg::Common(tap)).flag("disabled", wipes || nothing)
}

/// Whether an act is the start of what runs, and was tapped a while ago, whatever it said of when work began.
fn wipes(act: Option<Id>, slab: &Slab, app: &App) -> bool {
    let started = |id: &Id| *id == slab.run.id;
    START_MOST < slab.run.tapped.at.until(app.now.at) && act.is_some_and(|act| app.shelf().book.act(act).iter().any(started))
}

fn leave() -> El<Msg> {
    el("button", "key h88").attr("type", "button").on_hold(say(Tap::LeaveBig), HOLD).text(words::HOLD_TO_LEAVE)
}

fn large(class: &'static str, words: &'static str, under: String, tap: Msg) -> El<Msg> {
    el("button", class)
        .attr("type", "button")
        .on_tap(tap)
        .kid(el("span", "t30 w8").text(words))
        .kids((!under.is_empty()).then(|| el("span", "t17 w5").text(under)))
}

fn huge(class: &'static str, words: &'static str, under: String, tap: Msg) -> El<Msg> {
    el("button", class).attr("type", "button").on_tap(tap).kid(el("span", "t60 w8").text(words)).kid(el("span", "t22 w7").text(under))
}
