//! The bench: what runs as a slab pulled out of the rack, the other operations as boards.

use super::super::count::saved_fact;
use super::super::{Screen, Seen, undo};
use super::{mend, say};
use crate::app::App;
use crate::app::bench::Tap;
use crate::app::bench::day::DayTap;
use crate::parts::board::{Board, board};
use crate::parts::caution::caution;
use crate::parts::chips::{Chip, chips};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::parts::notches::Notches;
use crate::parts::rack;
use crate::parts::slab::{Slab as Drawn, slab};
use crate::view::{El, el};
use crate::words::en::bench as words;
use fivebar_core::bench::Batch;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::bench::{BenchSheet, Choice, Slab};
use fivebar_core::sheet::day;

type E = El<crate::app::Msg>;

const AGO: [i64; 3] = [5, 15, 30];

/// The bench as it stands.
pub fn screen(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Screen {
    let name = sheet.running.as_ref().and_then(|slab| slab.name.clone());
    let title = name.unwrap_or_else(|| if sheet.running.is_some() { words::NO_JOB } else { words::NOTHING_RUNS }.to_owned());
    let top = Head::new(words::bench_on(&seen.speech.day(seen.now)), title)
        .fact(Fact::Strong(words::today(&seen.speech.span(sheet.today))))
        .fact(saved_fact(app, seen));
    let main = el("main", "scr bench")
        .kids(mend::questions(sheet, seen))
        .kid(rack::rack(boards(sheet, seen)))
        .kids(cautions(app, sheet, seen))
        .kids((sheet.running.is_none()).then(|| when(app)));
    Screen::new("bench", head(top), main).foot(foot(app, sheet, seen))
}

/// The planned operations in working order, else the latest; the running one is the slab in its place.
fn boards(sheet: &BenchSheet, seen: Seen<'_>) -> Vec<E> {
    let running = sheet.running.as_ref();
    let is_running = |choice: &Choice| running.is_some_and(|slab| slab.run.work.op == choice.op && slab.run.work.on == choice.on);
    let listed: Vec<&Choice> = if sheet.planned.is_empty() { sheet.latest.iter().collect() } else { sheet.planned.iter().collect() };
    let mut shown: Vec<E> = vec![];
    if let Some(slab) = running.filter(|_| !listed.iter().any(|choice| is_running(choice))) {
        shown.push(running_slab(slab, seen));
    }
    for choice in &listed {
        shown.push(match running.filter(|_| is_running(choice)) {
            Some(slab) => running_slab(slab, seen),
            None => one(choice, sheet, seen),
        });
    }
    let others = sheet.latest.iter().filter(|choice| !listed.contains(choice) && !is_running(choice));
    shown.extend(others.map(|choice| one(choice, sheet, seen)));
    shown
}

fn one(choice: &Choice, sheet: &BenchSheet, seen: Seen<'_>) -> E {
    let carry = sheet.carry_on.as_ref() == Some(choice);
    let operation = if carry { words::carry_on(&choice.op) } else { choice.op.clone() };
    let pace = choice.batch.pace().map(|pace| words::each(&seen.speech.span(pace)));
    let under = pace.or_else(|| choice.name.clone()).unwrap_or_default();
    let drawn = Board { operation, under, done: done_of(&choice.batch, seen), notches: notches(&choice.batch) };
    board(drawn, say(Tap::Board(choice.clone()))).key(format!("{:?}{}", choice.on, choice.op))
}

fn done_of(batch: &Batch, seen: Seen<'_>) -> String {
    batch.of.map(|of| words::of(&seen.speech.count(batch.n), &seen.speech.count(of))).unwrap_or_default()
}

fn notches(batch: &Batch) -> Notches {
    Notches { done: batch.n, of: batch.of.unwrap_or(0) }
}

/// Minutes from the clock; seconds only in the first minute.
fn running_slab(slab_sheet: &Slab, seen: Seen<'_>) -> E {
    let worked = slab_sheet.worked;
    let (figure, unit) = if worked < Span::minutes(1) {
        (worked.as_ms().div_euclid(1000).to_string(), "s")
    } else if worked < Span::minutes(60) {
        (worked.as_ms().div_euclid(60_000).to_string(), "min")
    } else {
        (seen.speech.span(Span::minutes(worked.as_ms().div_euclid(60_000))), "")
    };
    let batch = &slab_sheet.batch;
    let n = seen.speech.count(batch.n);
    let done = match batch.of {
        Some(of) => words::done(&n, Some(&seen.speech.count(of))),
        None if 0 < batch.n => words::done(&n, None),
        None => String::new(),
    };
    let drawn = Drawn {
        operation: slab_sheet.run.work.op.clone(),
        figure,
        unit: unit.into(),
        done,
        notches: notches(batch),
        lines: lines(slab_sheet, seen),
    };
    slab(drawn).key("running")
}

fn lines(slab: &Slab, seen: Seen<'_>) -> Vec<(String, String)> {
    let span = |span: Span| seen.speech.span(span);
    let left = slab.batch.remaining().map(|left| words::about_left(&span(left))).unwrap_or_default();
    let each = slab.batch.pace().map(|pace| words::each(&span(pace))).unwrap_or_default();
    let heads = if 1 < slab.heads { words::heads(&seen.speech.count(slab.heads)) } else { String::new() };
    vec![(left, each), (heads, words::in_all(&span(slab.on_it)))]
}

/// When the next start was: 5, 15 or 30 minutes ago.
fn when(app: &App) -> E {
    let shown = AGO.iter().map(|minutes| Chip::choice(words::ago(*minutes), app.bench.ago == Span::minutes(*minutes))).collect();
    let keys = chips("key h56", shown, |nth| say(Tap::Ago(AGO.get(nth).copied().unwrap_or(5)))).attr("aria-label", words::ALREADY_AT_IT);
    el("div", "ago").kid(el("p", "t14").text(words::ALREADY_AT_IT)).kid(keys)
}

/// Once a day where dust begins, and when a coat is done.
fn cautions(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Vec<E> {
    let today = day::day(&app.shelf().book, (seen.now.day(), None), seen.now);
    let mut lines = vec![];
    if let Some(slab) = sheet.running.as_ref().filter(|slab| words::is_dusty(&slab.run.work.op)) {
        let first = today.lines.iter().find(|line| words::is_dusty(&line.run.work.op));
        lines.extend(first.filter(|line| line.run.id == slab.run.id).map(|_| caution(words::DUST)));
    }
    let coated = today.lines.last().is_some_and(|line| sheet.running.is_none() && words::leaves_rags(&line.run.work.op));
    lines.extend(coated.then(|| caution(words::RAGS)));
    lines
}

fn foot(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> E {
    let foot = el("footer", "foot");
    match &sheet.running {
        Some(slab) => foot.kid(with_helper(slab)).kids(undo::bar(app, seen)).kid(working(slab)),
        None => foot
            .kids(undo::bar(app, seen))
            .kid(key("key solid h88", words::START, words::START_UNDER, say(Tap::Other)))
            .kid(el("div", "g2").kid(the_day(app)).kid(key("key h56", words::BIG_BUTTONS, "", say(Tap::Big)))),
    }
}

fn the_day(app: &App) -> E {
    key("key h56", words::THE_DAY, "", say(Tap::Day(DayTap::Show(app.now.day()))))
}

fn with_helper(slab: &Slab) -> E {
    let helper = match 1 < slab.heads {
        true => key("key h56", words::HELPER_LEAVES, "", say(Tap::HelperLeaves)),
        false => key("key h56", words::HELPER_JOINS, "", say(Tap::HelperJoins)),
    };
    let day = key("key h56", words::THE_DAY, "", say(Tap::Day(DayTap::Show(slab.run.started.day()))));
    el("div", "g4 few").kid(helper).kid(key("key h56", words::OTHER, "", say(Tap::Other))).kid(day).kid(key(
        "key h56",
        words::BIG_BUTTONS,
        "",
        say(Tap::Big),
    ))
}

fn working(slab: &Slab) -> E {
    let batch = match slab.batch.of {
        None => key("key h88 m", words::SAY_HOW_MANY, "", say(Tap::AskBatch)),
        Some(_) => key("key h88 m", words::SEVERAL_MORE, "", say(Tap::MoreDone)),
    };
    let more = el("div", "um").kid(key("key h88", words::ONE_MORE, "", say(Tap::Done))).kid(batch);
    el("div", "g2").kid(more).kid(key("key solid h88", words::STOP, "", say(Tap::Stop)))
}
