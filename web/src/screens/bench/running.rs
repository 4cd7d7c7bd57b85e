//! The bench: what runs as a slab pulled out of the rack, the other operations as boards.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, undo};
use super::{cautions, foot, question, rack, say, slab, waits};
use crate::app::bench::day::DayTap;
use crate::app::bench::waits::{coat_of_run, coated, waiting};
use crate::app::bench::{Tap, whole_of};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::screens::jobs::called;
use crate::view::{El, el};
use crate::words::en::{bench as words, day as said, helper};
use fivebar_core::bench::On;
use fivebar_core::quantity::{Clock, Listed, Span};
use fivebar_core::sheet::bench::{BenchSheet, Choice, Hand, Slab, Stayed};

/// A phone of 390 px with text at 160 % and more is a page as wide as that.
const LARGE_TEXT: f64 = 256.0;

/// A piece that takes less than that is no break that was forgotten [J].
const ASKED_FROM: Span = Span::minutes(15);

/// A run over noon that is longer than that may have a break in it [J].
const NO_BREAK_MOST: Span = Span::minutes(5 * 60);

/// More waits than that leave no room for the board before what runs.
const ABOVE: usize = 2;

/// The bench as it stands.
pub fn screen(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Screen {
    if sheet.hand.is_none() && sheet.latest.is_empty() {
        return day_one(app, seen);
    }
    let asked = question::question(sheet, seen);
    let slow = if asked.is_none() { slow(sheet, seen).or_else(|| over_noon(app, sheet, seen)) } else { None };
    let hint = asked.is_some().then(|| el("p", "t14").text(words::SETTLE_IT));
    // What was broken off comes before what fits until something is off.
    let broken_off = sheet.carry_on.as_ref().is_some_and(|carry| !carry.batch.is_done());
    let on = waiting(app).on;
    let crowded = seen.page.is_narrow() || asked.is_some() || sheet.stayed.is_some() || ABOVE < on.len() || on.iter().any(|line| line.over);
    let coat = sheet.running.as_ref().and_then(|slab| coat_of_run(app, slab));
    let coats = |choice: &Choice| coated(app, (choice.on, &choice.op), choice.batch.n).filter(|_| !choice.rework);
    // The clock and the count of what runs come before many that wait.
    let leads = sheet.running.is_some() && !seen.page.is_wide() && (ABOVE < on.len() || on.iter().any(|line| line.over));
    // What it is held against comes behind what runs, which then ends its part of the rack.
    let past_plan = sheet.running.as_ref().and_then(|running| super::super::jobs::estimate::past_plan(running, seen));
    let come = estimated(sheet, app, seen);
    let apart = sheet.running.is_some() && (past_plan.is_some() || come.is_some() || !sheet.others.is_empty());
    // The bar that takes back takes the room of the board before.
    let crowded = crowded || (!on.is_empty() && undo::bar(app, seen).is_some());
    let mut rack = rack::around((sheet, &coats), coat, (crowded, leads, apart), seen);
    // On large text what to carry on with, and Other, come first; beside waits on a narrow page what runs and its keys do, or what to begin.
    let keys_lead = seen.page.is_narrow() && (if sheet.running.is_some() { !on.is_empty() } else { 1 < on.len() });
    let first = if keys_lead || (seen.page.width <= LARGE_TEXT && broken_off) { rack.len().min(2) } else { usize::from(leads) };
    let mut rest = rack.split_off(first);
    let runs = if apart && first == 0 { rest.drain(..rest.len().min(1)).listed() } else { vec![] };
    let (come_now, come_then) = if seen.page.is_narrow() { (None, come) } else { (come, None) };
    let place = if broken_off { rest.len() } else { 0 };
    rest.splice(place..place, waits::meanwhile(app, seen));
    let is_below = sheet.running.is_some() || asked.is_some() || 0 < first;
    let now = el("div", "col")
        .key("now")
        .kids(asked)
        .kids(is_below.then(|| waits::first_line(app, seen)).flatten())
        .kids(late(app, sheet))
        .kids(set_back(sheet, seen))
        .kids(sheet.running.as_ref().and_then(|slab| waits::wet_below(&slab.run, app, seen)))
        .kids(sheet.stayed.as_ref().map(|one| stayed(one, seen)))
        .kids(more_than_said(sheet, seen))
        .kids(slow)
        .kids(hint)
        .kids(rack)
        .kids(cautions::cautions(app, sheet, seen))
        .kids(waits::card(app, seen))
        .kids(runs)
        .kids(sheet.others.iter().map(|other| beside(other, app, seen)))
        .kids(past_plan)
        .kids(come_now)
        .kids(at_the_stop(app, sheet))
        .kids(rest);
    let then = el("div", "col")
        .key("then")
        .kids(come_then)
        .kids(doubtful(sheet, seen))
        .kids(rack::beyond((sheet, &coats), seen))
        .kid(waits::door());
    let main = el("main", "scr bench two").kid(now).kid(then);
    Screen::new("bench", top(app, sheet, seen), main).foot(foot::foot(app, sheet, seen))
}

/// The run began later than was asked, and why.
fn late(app: &App, sheet: &BenchSheet) -> Option<El<Msg>> {
    let (run, said) = app.bench.late.as_ref()?;
    let runs = sheet.running.as_ref().is_some_and(|slab| slab.run.id == *run);
    runs.then(|| el("p", "w7").key("late").attr("role", "status").text(said.clone()))
}

/// The phone's clock is before what was noted of what runs.
pub fn set_back(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let run = &sheet.running.as_ref()?.run;
    let noted = seen.when(run.wall(run.ahead_of(seen.now.at)?, seen.local));
    Some(el("p", "w7").key("set back").attr("role", "status").text(words::clock_set_back(&noted)))
}

/// Who was there at a switch: still here, or gone; at what is over, too, or gone by then.
pub fn stayed(stayed: &Stayed, seen: Seen<'_>) -> El<Msg> {
    let (run, end) = (&stayed.to, stayed.to.end(seen.now.at));
    let when = |at| seen.when(run.wall(at, seen.local));
    let n = (stayed.heads, &*seen.speech.count(stayed.heads));
    let was = match stayed.came {
        Some(came) => helper::came(n, &when(came)),
        None => helper::was(n, (&stayed.op, &when(run.started.at))),
    };
    let (asked, stays, went) = if run.is_running() {
        (was, words::STILL_HERE, words::GONE)
    } else {
        let clocks = words::clocks(&when(run.started.at), Some(&seen.speech.clock(run.wall(end, seen.local))));
        (format!("{was} {}", words::at_it_too(&run.work.op, &clocks)), words::AT_IT_TOO, words::GONE_BY_THEN)
    };
    let stay = key("key h56", stays, "", say(Tap::HelpersStay(run.id)));
    let gone = key("key h56", went, "", say(Tap::HelpersGone(run.id)));
    el("div", "card stayed").key("stayed").kid(el("p", "w7").text(asked)).kid(el("div", "g2").kid(stay).kid(gone))
}

/// More were done than were said: of how many are there?
fn more_than_said(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let running = sheet.running.as_ref().filter(|slab| !slab.run.work.rework && !slab.is_coated)?;
    let (n, of) = (running.batch.n, running.batch.of?);
    let more = n.checked_sub(of).filter(|more| 0 < *more)?;
    let said = words::beyond(more, &seen.speech.count(more), &seen.speech.count(of));
    let key = key("key h56", words::so_many(&seen.speech.count(n)), "", say(Tap::BatchOf(n)));
    Some(el("div", "card stayed").key("beyond").kid(el("p", "w7").attr("role", "status").text(said)).kid(key))
}

/// A piece that takes more than twice as long as the others did may be a stop that was forgotten. Who said that they are still at it is asked again
/// when as much more has gone by.
fn slow(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let running = sheet.running.as_ref()?;
    let each = slab::each(&running.batch)?;
    let most = ASKED_FROM.max(each.times(2));
    let is_unsaid = running.run.right.is_none_or(|right| most < right.until(seen.now.at));
    let slow = running.batch.slow().filter(|slow| most < *slow && is_unsaid)?;
    let said = words::slow_piece(&seen.speech.span(slow), &seen.speech.span(each));
    let key = key("key h56", words::STOPPED_EARLIER, "", say(Tap::StoppedAt(running.run.id)));
    Some(el("div", "card stayed").key("slow").kid(el("p", "w7").text(said)).kid(el("div", "g2").kid(key)))
}

/// What was stopped last ran long, and over noon: whether a break in it was forgotten. Who says that there was none, or mends its end, is asked no more.
fn over_noon(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let bench = app.shelf().bench();
    let run = bench.last_stopped(None).filter(|run| sheet.running.is_none() && run.mended_stop.is_none() && !run.is_confirmed())?;
    let [start, end] = [run.started.at, run.end(seen.now.at)].map(|at| run.wall(at, seen.local));
    let is_over_noon = start.day() == end.day() && start.clock() < Clock::NOON && Clock::NOON < end.clock();
    if end.day() != seen.now.day() || !is_over_noon || start.at.until(end.at) <= NO_BREAK_MOST {
        return None;
    }
    let asked = said::over_noon(&run.work.op, &seen.speech.span(run.worked(seen.now.at)));
    let keys = [
        key("key h56", said::BREAK, "", say(Tap::Day(DayTap::Break(run.id)))),
        key("key h56", said::NO_BREAK, "", say(Tap::Right(run.id))),
    ];
    Some(el("div", "card stayed").key("over noon").kid(el("p", "w7").text(asked)).kid(el("div", "g2").kids(keys)))
}

/// What may be said of what was stopped last: it is done with, or had stopped before.
fn at_the_stop(app: &App, sheet: &BenchSheet) -> Option<El<Msg>> {
    let (carry, stood) = (sheet.carry_on.as_ref()?, sheet.hand.as_ref()?.stood.as_ref()?);
    let at = stood.wall(stood.end(app.now.at), app.local());
    let bench = app.shelf().bench();
    let last = bench.last_stopped(None).filter(|run| run.mended_stop.is_none() && at.day() == app.now.day());
    let done = whole_of(app, carry.on, &carry.op).filter(|_| !carry.rework);
    let done = done.map(|(run, of)| key("key soft h48", words::done_with(&carry.op), "", say(Tap::Whole(run, of))));
    let earlier = last.map(|run| key("key soft h48", words::STOPPED_EARLIER, "", say(Tap::StoppedAt(run.id))));
    let keys = done.into_iter().chain(earlier).listed();
    (!keys.is_empty()).then(|| el("div", "less").key("at the stop").kids(keys))
}

/// How far the job that runs has come of its estimate.
fn estimated(sheet: &BenchSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let On::Job(job) = sheet.running.as_ref()?.run.work.on else { return None };
    super::super::jobs::estimate::line(job, app, seen)
}

/// The job in hand, the day so far, and all that was worked on the job.
fn top(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let hand = sheet.hand.as_ref().filter(|hand| hand.name.is_some());
    let nothing = if sheet.running.is_some() { words::NO_JOB } else { words::NOTHING_RUNS };
    let named = |hand: &Hand| match (hand.on, hand.name.as_deref()?) {
        (On::Job(id), name) => Some(called(id, name, app, seen)),
        (_, name) => Some(name.to_owned()),
    };
    let title = hand.and_then(named).unwrap_or_else(|| nothing.to_owned());
    let day = seen.speech.day(seen.now);
    let small = if seen.page.is_narrow() { day } else { words::bench_on(&day) };
    let under = match sheet.unsettled {
        0 => words::DAYS_LIST.to_owned(),
        n => words::to_settle(n, &seen.speech.count(n)),
    };
    let today = key("key soft h48", words::today(&seen.speech.span(sheet.today)), under, say(Tap::Day(DayTap::Show(seen.now.day()))));
    let mut shown = Head::new(small, title).with_key(today);
    if let Some(hand) = hand {
        let (spent, open) = (seen.speech.span(hand.spent), seen.speech.span(hand.unsettled));
        let settled = hand.unsettled <= Span::ZERO;
        shown = shown.fact(Fact::Plain(if settled { words::on_the_job(&spent) } else { words::on_the_job_to_settle(&spent, &open) }));
    }
    head(shown.fact(saved_fact(app, seen)))
}

/// Before anything was begun: one key to start, and a small one for work without the clock.
fn day_one(app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(words::bench_on(&seen.speech.day(seen.now)), words::NOTHING_RUNS).fact(saved_fact(app, seen));
    let start = el("button", "key solid first")
        .attr("type", "button")
        .on_tap(say(Tap::Other))
        .kid(el("span", "t60 w8").text(words::START))
        .kid(el("span", "t22 w7").text(words::WHAT_ARE_YOU_DOING));
    let missed = key("key soft h56", words::MISSED, words::DAYS_LIST, say(Tap::Day(DayTap::Show(seen.now.day()))));
    let main = el("main", "scr bench").kid(el("p", "").text(words::FIRST_WORDS)).kid(start).kid(missed);
    let screen = Screen::new("bench", head(top), main);
    match undo::bar(app, seen) {
        Some(bar) => screen.foot(el("footer", "foot").kid(bar)),
        None => screen,
    }
}

/// What another person is at.
fn beside(other: &Slab, app: &App, seen: Seen<'_>) -> El<Msg> {
    let who = other.run.work.person.and_then(|person| app.shelf().name(person)).cloned().unwrap_or_default();
    let what = [who, other.run.work.op.clone()].into_iter().filter(|word| !word.is_empty()).listed().join(": ");
    el("p", "card row").kid(el("b", "").text(what)).kid(el("span", "").text(seen.speech.span(other.worked)))
}

/// Runs that are to be looked at again for another reason than their length.
fn doubtful(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let doubtful: Vec<_> = sheet.to_mend.iter().filter(|mend| mend.wrong.is_none()).listed();
    let first = doubtful.first()?;
    let n = seen.speech.count(u32::try_from(doubtful.len()).unwrap_or(u32::MAX));
    Some(key("key h56", words::to_look_at(doubtful.len(), &n), "", say(Tap::Day(DayTap::Show(first.run.started.day())))))
}
