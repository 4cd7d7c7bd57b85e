//! Dates of a job: the day it is to be done by, when it can be ready, and on which day each step must begin at the latest.

use super::super::price::list::{guessed, haul_in_question};
use super::super::workshop::hours::{clock, day};
use super::super::{Screen, Seen, undo};
use super::figures::{is_scrolled, left_out, percent};
use super::{say, to_job};
use crate::app::jobs::dates::{Asked, DatesTap, sheet as sheet_of};
use crate::app::jobs::draft::What;
use crate::app::jobs::{Room, Tap};
use crate::app::workshop::{self, Over};
use crate::app::{App, Msg};
use crate::parts::day_steps::day_steps;
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::estimate::OLD_JOBS_LIST as OLD_JOBS;
use crate::words::en::waits::how_long;
use crate::words::en::{dates as words, how, job};
use fivebar_core::bench::estimate::OnTop;
use fivebar_core::bench::estimate::factor::Factor;
use fivebar_core::quantity::{Day, Id, Listed, Span, Wall};
use fivebar_core::sheet::dates::{DateRow, DatesSheet, Promise};
use fivebar_core::sheet::estimate::Covers;
use fivebar_core::sheet::job::{JobSheet, NextAct};
use std::cmp::Ordering;

pub(super) fn tap(tap: DatesTap) -> Msg {
    say(Tap::Dates(tap))
}

/// The room.
pub fn screen(job: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(super::titled(job, seen), words::DATES);
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(to_job());
    if job.ended.is_some() {
        let said = el("p", "t22 w8").text(words::DATES_ENDED);
        return Screen::new("jobs/dates", head(top), el("main", "scr").kid(said)).foot(foot);
    }
    let found = sheet_of(app, job.job);
    let due = job.described.due.map(Wall::day);
    let is_long = found.as_ref().is_some_and(|sheet| is_scrolled(sheet.rows.len()));
    let quote = key("key h56", words::QUOTE, quote_under(job, seen), say(Tap::Room(Room::Quote)));
    let steps = found.iter().flat_map(|sheet| last_days(sheet, seen)).listed();
    let ready = found.iter().flat_map(|sheet| can_be(sheet, (job, app), seen)).chain([quote]).listed();
    let (before, after) = if is_long { (ready, steps) } else { (steps, ready) };
    let open = [left_out(job, "t14 w7", seen), haul_in_question(job.account.hours.hauls_unsettled, seen)].into_iter().flatten();
    let first = el("div", "col").kids(asked(job, due, app, seen)).kids(open).kids(before);
    let second = el("div", "col").kids(after);
    Screen::new("jobs/dates", head(top), el("main", "two scr").kid(first).kid(second)).foot(foot)
}

/// The day as it is said, and the keys that move it; each tap is saved. A day that is over is asked about first.
fn asked(job: &JobSheet, due: Option<Day>, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    if let Some(agreement) = job.selling.open().find(|agreement| agreement.due.is_some()) {
        let promised = job.date.map(|date| seen.speech.day(date)).unwrap_or_default();
        return vec![
            el("h2", "").text(words::DONE_BY),
            el("p", "t22 w8").text(promised),
            el("p", "t14 i2").text(words::BY_BUYER),
            super::sell::change((job.job, agreement.id), "key soft h48"),
        ];
    }
    let none = due.is_some().then(|| key("key soft h48", words::NO_DAY_KEY, "", tap(DatesTap::NoDay)));
    let stands = el("p", "t22 w8").text(due.map_or(words::NO_DAY.to_owned(), |due| day(due, seen)));
    let over = app.jobs.day.map(|Asked(asked)| {
        let is_so = key("key h56", words::promise(&day(asked, seen)), "", tap(DatesTap::ItIsSo(true)));
        let keys = el("div", "g2").kid(is_so).kid(key("key soft h56", words::NOT_THAT_DAY, "", tap(DatesTap::ItIsSo(false))));
        el("div", "col").kid(el("p", "why").attr("role", "alert").text(words::day_is_over(&day(asked, seen)))).kid(keys)
    });
    let keys = vec![
        el("h2", "").text(words::DONE_BY),
        el("div", "row mid").kid(stands).kids(none),
        day_steps([job::DAY, job::DAYS], |by| tap(DatesTap::By(by))),
    ];
    keys.into_iter().chain(over).listed()
}

/// When it can be ready, and by which working hours.
fn can_be(sheet: &DatesSheet, (of, app): (&JobSheet, &App), seen: Seen<'_>) -> Vec<El<Msg>> {
    let small = |said: String| el("p", "t14 i2").text(said);
    let plan = |class: &'static str| key(class, job::ADD_OPERATION, "", say(Tap::Write(What::Plan(None))));
    let said = match sheet.likely {
        Some(_) if sheet.rows.is_empty() => vec![el("p", "").text(words::NOTHING_LEFT)],
        Some(likely) => {
            let safe = sheet.safe.map(|safe| day(safe.day, seen));
            let ready = el("p", "t22 w8").text(words::ready(&day(likely.day, seen), safe.as_deref()));
            let is_hands = sheet.hands.iter().any(|span| Span::ZERO < *span);
            let hands = sheet.hands.map(|span| seen.speech.span(span));
            let waits = sheet.safe.unwrap_or(likely);
            let waits = waits.waits().then(|| small(words::waits_after(&day(waits.hands, seen), &day(waits.day, seen))));
            [Some(ready), waits, is_hands.then(|| small(words::ready_under([&hands[0], &hands[1]])))].into_iter().flatten().listed()
        }
        None => {
            let plan = plan("key h56");
            match of.described.piece {
                None => {
                    let ask = || key("key soft h48", words::SAY_KIND, "", say(Tap::Room(Room::Hours)));
                    vec![el("p", "").text(words::NOT_KNOWN), plan, super::estimate::named(app, of.job).unwrap_or_else(ask)]
                }
                Some(_) => {
                    let old = key("key soft h48", OLD_JOBS, "", say(Tap::Room(Room::Hours)));
                    vec![el("p", "").text(words::NOT_KNOWN_OF_KIND), plan, old]
                }
            }
        }
    };
    let alone = (sheet.covers == Covers::Planned && sheet.likely.is_some()).then(|| el("p", "w7").text(words::PLANNED_ALONE));
    let unnoted = super::estimate::unnoted(&sheet.unnoted);
    let reckoned = {
        let (work, today) = (&sheet.workdays, seen.now.day());
        let hours = (&*seen.speech.span(work.bench), &*clock(work.closing, seen));
        words::reckoned(hours, (&work.days, work.off.iter().any(|off| today <= *off)), sheet.said)
    };
    let hours = Msg::Workshop(workshop::Tap::ShowPage(Over::Hours));
    let hardens = !sheet.rows.is_empty() && sheet.rows.iter().all(DateRow::only_hardens);
    let further = sheet.likely.filter(|_| !sheet.rows.is_empty() && !hardens).map(|_| plan("key soft h48"));
    std::iter::once(el("h2", "gap").text(if hardens { words::HARD } else { words::READY }))
        .chain(said)
        .chain(alone)
        .chain(further)
        .chain(super::estimate::by_name(sheet.by_name.as_ref()))
        .chain((sheet.likely.is_some() && Span::ZERO < sheet.others).then(|| el("p", "w7").text(others(sheet, seen))))
        .chain(promise(sheet, seen).filter(|_| 0 < of.sale.left))
        .chain(guessed(of.account.hours.by_any, seen).filter(|_| sheet.likely.is_some()))
        .chain(unnoted)
        .chain([el("p", "t14").text(reckoned), key("key soft h48", words::SAY_HOURS, "", hours)])
        .listed()
}

fn promise(sheet: &DatesSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let (promised, safe) = sheet.first().filter(|_| !sheet.rows.is_empty())?;
    let said = words::can_be_promised(&day(promised, seen), promised == safe.promise(), sheet.is_undried);
    Some(el("p", if sheet.is_undried { "w7" } else { "" }).text(said))
}

/// Hours of other jobs, and when it is ready if they come first.
fn others(sheet: &DatesSheet, seen: Seen<'_>) -> String {
    let [after, safe] = [sheet.after_others, sheet.after_others_safe].map(|after| after.map(|after| day(after.day, seen)));
    words::of_others(&seen.speech.span(sheet.others), after.as_deref(), safe.as_deref())
}

/// Each step with its last day; the first that can't be met in iron red, and in words.
fn last_days(sheet: &DatesSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let over = sheet.is_over.then(|| words::IS_OVER.to_owned());
    let promised = sheet.first().map(|(day, _)| day);
    let row = sheet.late.and_then(|nth| sheet.rows.get(nth));
    let is_hands = row.is_some_and(|row| !row.only_waits());
    let late = over.or_else(|| row.zip(sheet.due).map(|(row, due)| late(row, (due, promised), seen)));
    let unsafe_day = sheet.missed().map(|missed| missed.first);
    let can_do = sheet
        .late
        .filter(|_| is_hands && !sheet.is_over)
        .map(|_| words::what_can_be_done(promised.map(|day_of| day(day_of, seen)).as_deref()));
    let late = late.or_else(|| unsafe_day.map(|promised| words::ready_only_by(&day(promised, seen))));
    let late = late.map(|said| el("p", "why").attr("role", "status").text(said));
    let late = late.into_iter().chain(can_do.map(|said| el("p", "t14").text(said))).listed();
    if sheet.rows.is_empty() {
        return late;
    }
    let is_late = |nth: usize| sheet.late.map(|late| late.cmp(&nth)).filter(|order| order.is_le());
    let rows = sheet.rows.iter().enumerate().map(|(nth, row)| step((row, sheet.on_top), is_late(nth), seen));
    let under = if sheet.due.is_some() { words::DATES_UNDER } else { "" };
    let list = el("section", "card list")
        .kids(rows)
        .kids((!under.is_empty()).then(|| el("p", "t14 i2 sums").text(under)))
        .kids(factor(sheet, seen))
        .kids(waits_as(sheet.waits_as.as_ref(), seen).map(|said| el("div", "sums").kid(said)))
        .kid(el("p", "t14 i2 sums").text(not_on(sheet)));
    let goes_on = sheet.rows.iter().any(|row| row.is_begun && row.last.is_some());
    let last_days = if goes_on { words::LAST_DAYS_BEGUN } else { words::LAST_DAYS };
    let title = if sheet.due.is_some() { last_days } else { job::PLANNED };
    std::iter::once(el("h2", "").text(title)).chain(late).chain([list]).listed()
}

/// What the days leave out: drying too, where a piece as a whole or its rest is in them and nothing is known to wait.
fn not_on(sheet: &DatesSheet) -> &'static str {
    if sheet.is_undried { words::NOT_ON_NOR_DRYING } else { words::NOT_ON }
}

/// Whose waits stand in the days.
pub(super) fn waits_as(of: Option<&(String, Span)>, seen: Seen<'_>) -> Option<El<Msg>> {
    of.map(|(job, span)| el("p", "t14").text(words::waits_as(job, &long(*span, seen))))
}

fn name(row: &DateRow) -> String {
    let whole = if row.is_rest { words::REST } else { words::WHOLE_PIECE };
    row.op.clone().unwrap_or_else(|| whole.to_owned())
}

fn late(row: &DateRow, (due, first): (Day, Option<Day>), seen: Seen<'_>) -> String {
    let last = row.last.map(|last| day(last, seen));
    match () {
        () if row.only_waits() => {
            let first = first.map(|first| day(first, seen));
            words::waits_past(&day(due, seen), (&name(row), &day(until(row.through(), seen), seen)), first.as_deref())
        }
        () if row.is_begun => words::late_begun((&name(row), &seen.speech.span(row.hands)), last.as_deref()),
        () => words::late(&name(row), last.as_deref()),
    }
}

/// The day on which what waits now is through.
fn until(span: Span, seen: Seen<'_>) -> Day {
    fivebar_core::quantity::Wall::new(seen.now.at.plus(span), seen.now.offset).day()
}

/// The first that can't be met, and those after it; a day that is over is said to be, not only drawn.
fn step((row, on_top): (&DateRow, Option<OnTop>), late: Option<Ordering>, seen: Seen<'_>) -> El<Msg> {
    let pieces = row.pieces.filter(|left| 0 < *left).map(|left| words::pieces_left(&seen.speech.count(left)));
    let left = seen.speech.span(row.hands);
    let left = match row.is_begun {
        _ if Span::ZERO < row.wet => words::once_dry(&seen.when(Wall::new(seen.now.at.plus(row.wet), seen.now.offset)), &left),
        true => words::begun(&left),
        false => left,
    };
    let thought = row.thought.zip(on_top).map(|(thought, on_top)| of_thought(thought, on_top, seen));
    let hands = (Span::ZERO < row.hands).then(|| [Some(left), thought, pieces].into_iter().flatten().listed().join(" "));
    let wait = row.wait.as_ref().map(|(what, span)| (words::wait(what.as_str()), long(*span, seen)));
    let cure = row.cure.map(|span| long(span, seen));
    let wait = wait.as_ref().map(|(what, span)| (*what, span.as_str()));
    let under = match row.cure.filter(|_| row.only_waits()) {
        Some(left) => words::hard_on(wait, &day(until(left, seen), seen)),
        None => words::step(hands.as_deref(), wait, cure.as_deref()),
    };
    let what = el("span", "op").kid(el("b", "").text(name(row))).kid(el("span", "t14 i2").text(under));
    let safe = row.safe.filter(|safe| Some(*safe) != row.last).map(|safe| words::safe_last(&day(safe, seen)));
    let last = row.last.map(|last| {
        let safe = safe.map(|safe| el("p", "t14 i2").text(safe));
        let is_gone = late == Some(Ordering::Equal) || (late.is_some() && last < seen.now.day());
        let said = if is_gone { words::late_last(&day(last, seen)) } else { day(last, seen) };
        el("div", if late.is_some() { "n last c-under" } else { "n last" }).kid(el("p", "").text(said)).kids(safe)
    });
    el("div", "dl").kid(what).kids(last)
}

/// What was thought, and what is put on that.
fn of_thought(thought: Span, on_top: OnTop, seen: Seen<'_>) -> String {
    let thought = seen.speech.span(thought);
    match on_top {
        OnTop::Factor(factor) => words::thought(&thought, &times(factor, seen)),
        OnTop::Allowance(share) => words::with_rework(&thought, &percent(share, seen)),
    }
}

fn times(factor: Factor, seen: Seen<'_>) -> String {
    seen.speech.number(factor.shown(), 2, 3)
}

/// Where the factor is from, if any step goes by it.
fn factor(sheet: &DatesSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let Some(OnTop::Factor(factor)) = sheet.on_top.filter(|_| sheet.rows.iter().any(|row| row.thought.is_some())) else { return None };
    let times = times(factor, seen);
    let said = match factor.jobs {
        0 => how::factor(&times, &[]),
        n => words::by_jobs(&times, n, &seen.speech.count(u32::try_from(n).unwrap_or(u32::MAX))),
    };
    Some(el("p", "t14 i2 sums").text(said))
}

/// What of a job that is made hardens, and the day on which it is hard; none where something else is to come.
pub fn hardens(app: &App, job: Id, seen: Seen<'_>) -> Option<(String, String)> {
    let sheet = sheet_of(app, job).filter(|sheet| sheet.rows.iter().all(DateRow::only_hardens))?;
    let last = sheet.rows.into_iter().max_by_key(DateRow::through)?;
    Some((last.op.clone()?, day(until(last.through(), seen), seen)))
}

/// Whole days as days.
fn long(span: Span, seen: Seen<'_>) -> String {
    let minutes = span.as_minutes();
    match (minutes.checked_div(1_440), minutes.checked_rem(1_440)) {
        (Some(days), Some(0)) if 0 < days => words::days(&seen.speech.count(u32::try_from(days).unwrap_or(u32::MAX)), days == 1),
        _ => how_long(span, seen.speech),
    }
}

/// Below the room's key on the job's page.
pub fn under(job: &JobSheet, seen: Seen<'_>) -> String {
    let quoted = job.quote.is_some().then(|| words::quoted(&quote_under(job, seen)));
    let known = job.date.map(|date| seen.speech.day(date)).into_iter().chain(quoted).listed();
    if known.is_empty() { words::WHEN_READY.to_owned() } else { known.join(", ") }
}

fn quote_under(job: &JobSheet, seen: Seen<'_>) -> String {
    let quote = job.quote.as_ref();
    quote.map(|quote| words::between(&seen.speech.short_money(quote.low), &seen.speech.short_money(quote.high))).unwrap_or_default()
}

/// What was promised of a job, in a line: the next step's last day, or what can't be met any more. What runs is begun.
pub fn promise_line(promise: &Promise, next: &NextAct, seen: Seen<'_>) -> Option<El<Msg>> {
    let runs = |row: &DateRow| matches!(next, NextAct::Running { op, .. } if row.op.as_ref() == Some(op));
    let red = |words: String| Some(el("span", "c-under w7").text(words));
    if promise.is_over {
        return red(words::IS_OVER.to_owned());
    }
    if let Some(row) = &promise.late {
        return red(late(row, (promise.due, promise.first), seen));
    }
    let by = |row: &DateRow| {
        let safe = row.safe.filter(|safe| Some(*safe) != row.last).map(|safe| day(safe, seen));
        let by = if row.is_begun { words::go_on } else { words::begin };
        Some(by(&name(row), &day(row.last?, seen), safe.as_deref()))
    };
    let by = promise.next.as_ref().filter(|row| !row.only_waits() && !runs(row)).and_then(by);
    let missed = promise.missed.map(|missed| words::missed_behind((missed.is_likely, missed.is_behind), &day(missed.first, seen)));
    let missed = missed.or_else(|| promise.is_unsafe.then(|| words::NOT_SAFELY.to_owned()));
    let said = by.into_iter().chain(missed).listed().join(" ");
    let class = if promise.missed.is_some_and(|missed| missed.is_likely) { "c-under w7" } else { "t14" };
    (!said.is_empty()).then(|| el("span", class).text(said))
}
