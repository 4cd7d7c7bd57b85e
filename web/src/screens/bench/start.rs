//! What are you doing? A job, an operation, its kind; for missed time, from when to when.

use super::super::{Screen, Seen};
use super::say;
use crate::app::bench::Tap;
use crate::app::bench::starting::{Starting, StartingTap};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, chips};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{bench as words, common};
use fivebar_core::bench::{Kind, On, Stage};
use fivebar_core::ledger::fold;

fn answer(tap: StartingTap) -> Msg {
    say(Tap::Starting(tap))
}

/// The next question of a start.
pub fn screen(starting: &Starting, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(words::bench_on(&seen.speech.day(seen.now)), words::WHAT_ARE_YOU_DOING);
    let main = el("main", "scr");
    let main = match (starting.on, &starting.chosen, starting.missed) {
        (None, ..) => main.kid(el("h2", "ink1").text(words::FOR_WHAT)).kids(jobs(app)),
        (Some(on), None, _) => main.kid(el("h2", "ink1").text(words::WHICH_OPERATION)).kids(operations(starting, on, app)),
        (Some(_), Some(_), _) => return by_clock(starting, seen),
    };
    Screen::new("bench/start", head(top), main.kid(key("key h48", common::LEAVE_IT, "", say(Tap::Close))))
}

/// Jobs that go on, the haul in hand, and time of no job.
fn jobs(app: &App) -> Vec<El<Msg>> {
    let jobs = fold::jobs(&app.shelf().book).filter(|job| job.ended.is_none());
    let mut keys: Vec<El<Msg>> = jobs
        .map(|job| key("key h88 left", job.name.clone(), "", answer(StartingTap::On(On::Job(job.id)))).key(job.id.to_string()))
        .collect();
    if let Some(haul) = app.shelf().haul() {
        keys.push(key("key h88 left", words::SORT_HAUL, "", answer(StartingTap::On(On::Haul(haul.id)))));
    }
    keys.push(key("key h88 left", words::NO_JOB, words::NO_JOB_UNDER, answer(StartingTap::On(On::Nothing))));
    keys
}

fn operations(starting: &Starting, on: On, app: &App) -> Vec<El<Msg>> {
    let known = known(on, app);
    let shown = known.iter().map(|(op, ..)| Chip::tap(op.clone())).collect();
    let chosen = chips("key h88 m", shown, move |nth| {
        let (op, kind, stage) = known.get(nth).cloned().unwrap_or_else(|| (String::new(), Kind::Make, Stage::Make));
        answer(StartingTap::Op(op, kind, stage))
    });
    let typed =
        Field { id: "operation", label: words::OR_TYPE.into(), value: starting.op.clone(), keyboard: Keyboard::Words, ..Field::default() };
    let kinds = Kind::ALL.iter().map(|kind| Chip::tap(words::kind(*kind))).collect();
    let rework = key("key h56", words::REWORK, words::REWORK_UNDER, answer(StartingTap::Rework))
        .attr("aria-pressed", if starting.rework { "true" } else { "false" });
    let mut all = vec![chosen, field(typed, |text| answer(StartingTap::Typed(text)))];
    if !starting.op.trim().is_empty() {
        all.push(chips("key h56", kinds, |nth| answer(StartingTap::Kind(Kind::ALL.get(nth).copied().unwrap_or(Kind::Make)))));
    }
    all.push(rework);
    all
}

/// Planned for the job, then those most jobs have; a haul is sorted.
fn known(on: On, app: &App) -> Vec<(String, Kind, Stage)> {
    let sort = (crate::words::en::count::SORT.to_owned(), Kind::Fetch, Stage::Sort);
    let mut known: Vec<(String, Kind, Stage)> = match on {
        On::Haul(_) => return vec![sort],
        On::Job(job) => fold::planned_operations(&app.shelf().book, job),
        On::Nothing => vec![],
    };
    let usual = words::USUAL.iter().map(|(op, kind, stage)| ((*op).to_owned(), *kind, *stage));
    for (op, kind, stage) in usual {
        if !known.iter().any(|(own, ..)| own.eq_ignore_ascii_case(&op)) {
            known.push((op, kind, stage));
        }
    }
    known
}

fn by_clock(starting: &Starting, seen: Seen<'_>) -> Screen {
    use crate::parts::pad;
    let title = if starting.from.is_none() { words::FROM_WHEN } else { words::UNTIL_WHEN };
    let typed = &starting.typed;
    let why = typed.wrong.as_ref();
    let main = el("main", "scr")
        .kid(pad::entry(&typed.text, "", why.is_some()))
        .kids(
            why.map(|why| el("p", "why").text(crate::words::en::refusal::misread(why, seen.speech, fivebar_core::quantity::Units::Metric))),
        )
        .kid(el("div", "push"))
        .kid(pad::pad(None, |press| say(Tap::Press(press))))
        .kid(key("key solid h88", common::DONE, "", answer(StartingTap::Clock)))
        .kid(key("key h48", common::LEAVE_IT, "", say(Tap::Close)));
    let place = if starting.from.is_none() { "bench/from" } else { "bench/until" };
    Screen::new(place, head(Head::new(words::BY_THE_CLOCK, title)), main)
}
