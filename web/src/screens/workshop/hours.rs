//! Working hours: hands on wood in a day, closing, days of the week, days off ahead.

use super::super::{Screen, Seen};
use super::{known, page, say};
use crate::app::workshop::Tap;
use crate::app::workshop::hours::{BENCH, CLOSING, HoursTap, IN_A_ROW, chosen};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::day_steps::day_steps;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{dates as words, job};
use fivebar_core::bench::dates::Workdays;
use fivebar_core::ledger::decide::OFF_MOST;
use fivebar_core::ledger::fold::HoursFacts;
use fivebar_core::quantity::{Clock, Day, Listed, Span, Wall};

fn tap(tap: HoursTap) -> Msg {
    say(Tap::Hours(tap))
}

/// How it stands, on one line.
pub fn short(app: &App, seen: Seen<'_>) -> String {
    let work = app.shelf().workshop().hours.workdays();
    words::short(&seen.speech.span(work.bench), &clock(work.closing, seen))
}

/// The page.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let known = known(app);
    let hours = &known.hours;
    let work = hours.workdays();
    let main = el("main", "scr")
        .kids((!hours.is_said()).then(|| el("p", "").text(words::guess(&seen.speech.span(work.bench), &clock(work.closing, seen)))))
        .kid(el("h2", "").text(words::HANDS_ON))
        .kid(bench(&work, seen))
        .kid(el("p", "t14 i2").text(words::HANDS_ON_UNDER))
        .kid(el("h2", "gap").text(words::CLOSING))
        .kids(closing(&work, seen))
        .kid(el("p", "t14 i2").text(words::CLOSING_UNDER))
        .kid(el("h2", "gap").text(words::WEEK))
        .kid(week(&work))
        .kid(el("h2", "gap").text(words::DAYS_OFF))
        .kids(ahead(hours, seen))
        .kids(choose(app, seen));
    page(app, ("workshop/hours", words::WORKING_HOURS), main, seen)
}

/// A clock time as this language writes it.
pub fn clock(clock: Clock, seen: Seen<'_>) -> String {
    let offset = seen.now.offset;
    seen.speech.clock(Wall::new(seen.now.day().at(clock, offset), offset))
}

/// A day as this language writes it.
pub fn day(day: Day, seen: Seen<'_>) -> String {
    let offset = seen.now.offset;
    seen.speech.day(Wall::new(day.at(Clock::NOON, offset), offset))
}

fn bench(work: &Workdays, seen: Seen<'_>) -> El<Msg> {
    let of = |hours: i64| Span::minutes(hours.saturating_mul(60));
    let chips = BENCH.iter().map(|hours| Chip::choice(seen.speech.span(of(*hours)), work.bench == of(*hours))).listed();
    flowing("key t22 h56", chips, |nth| tap(HoursTap::Bench(BENCH.get(nth).copied().unwrap_or(4)))).attr("aria-label", words::HANDS_ON)
}

fn closing(work: &Workdays, seen: Seen<'_>) -> [El<Msg>; 3] {
    let at = work.closing;
    let hour = |hour: u16| Clock::at(hour, 0).unwrap_or_default();
    let chips = CLOSING.iter().map(|one| Chip::choice(clock(hour(*one), seen), at == hour(*one))).listed();
    let moved = |by: i32| u16::try_from(i32::from(at.as_minutes()).saturating_add(by)).ok().and_then(Clock::minutes).unwrap_or(at);
    let step = |by: i32, word: &'static str| key("key h48", word, "", tap(HoursTap::Closing(moved(by))));
    [
        el("p", "t22 w8").text(clock(at, seen)),
        flowing("key t22 h56", chips, move |nth| tap(HoursTap::Closing(hour(CLOSING.get(nth).copied().unwrap_or(18)))))
            .attr("aria-label", words::CLOSING),
        el("div", "g2").kid(step(-15, words::EARLIER)).kid(step(15, words::LATER)),
    ]
}

fn week(work: &Workdays) -> El<Msg> {
    let days = work.days;
    let chips = words::WEEKDAYS.iter().zip(days).map(|(name, works)| Chip::choice(*name, works)).listed();
    flowing("key h56", chips, move |nth| tap(HoursTap::Weekday(nth, !days.get(nth).copied().unwrap_or(true))))
        .attr("aria-label", words::WEEK)
}

/// Days off that are not over, those in a row together.
fn ahead(hours: &HoursFacts, seen: Seen<'_>) -> Vec<El<Msg>> {
    let today = seen.now.day();
    let mut rows: Vec<(Day, Day)> = vec![];
    for off in hours.off.iter().filter(|off| today <= **off) {
        match rows.last_mut() {
            // So many are lifted in one act, and no more.
            Some((from, to)) if to.next() == *off && from.until(*off) < OFF_MOST => *to = *off,
            _ => rows.push((*off, *off)),
        }
    }
    if rows.is_empty() {
        return vec![el("p", "t14 i2").text(words::NO_DAYS_OFF)];
    }
    let row = |(from, to): &(Day, Day)| {
        let last = (from != to).then(|| day(*to, seen));
        el("div", "row mid")
            .key(format!("off{}", today.until(*from)))
            .kid(el("span", "w8").text(words::stretch(&day(*from, seen), last.as_deref())))
            .kid(key("key soft h48", words::WORK_AFTER_ALL, "", tap(HoursTap::On(*from, *to))))
    };
    rows.iter().map(row).listed()
}

/// The stretch to take off: moved by days and weeks, so many days in a row.
fn choose(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let off = chosen(app);
    let to = off.from.plus(off.days.saturating_sub(1));
    let last = (1 < off.days).then(|| day(to, seen));
    let chips = IN_A_ROW.iter().map(|n| Chip::choice(seen.speech.count(n.unsigned_abs()), *n == off.days)).listed();
    let all_off = (0..off.days).all(|nth| known(app).hours.off.contains(&off.from.plus(nth)));
    let set = match all_off {
        true => key("key h56", words::work_after_all(&day(off.from, seen), last.as_deref()), "", tap(HoursTap::On(off.from, to))),
        false => key("key h56", words::take_off(&day(off.from, seen), last.as_deref()), "", tap(HoursTap::Off)),
    };
    vec![
        day_steps([job::DAY, job::DAYS], |by| tap(HoursTap::OffBy(by))),
        el("p", "t14 i2").text(words::IN_A_ROW),
        flowing("key h48", chips, |nth| tap(HoursTap::OffDays(IN_A_ROW.get(nth).copied().unwrap_or(1))))
            .attr("aria-label", words::IN_A_ROW),
        set,
    ]
}
