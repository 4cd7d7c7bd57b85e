//! The rack: operations in working order, each a board with its notches; a tap starts it, or switches to it.

use super::super::Seen;
use super::row::elsewhere;
use super::{foot, say, slab};
use crate::app::Msg;
use crate::app::bench::Tap;
use crate::parts::board::{Board, board};
use crate::parts::notches::Notches;
use crate::parts::rack::rack as drawn;
use crate::view::{El, el};
use crate::words::en::bench as words;
use fivebar_core::bench::{Batch, On};
use fivebar_core::quantity::{Listed, Span, begin_small};
use fivebar_core::sheet::bench::{BenchSheet, Choice};

/// From the second coat of a choice on: which it is, on how many pieces, and how many of them have it.
pub type Coats<'a> = &'a dyn Fn(&Choice) -> Option<(u32, u32, u32)>;

/// The rack around what runs. Where much lies above it already, the board before it comes last, and what runs lies apart where it leads, or ends its
/// part where something comes behind it. On a narrow page what is needed less lies behind what runs, or what to carry on with, and the other boards below it.
pub fn around(
    (sheet, coats): (&BenchSheet, Coats<'_>),
    coat: Option<(u32, u32, u32)>,
    (crowded, leads, ends): (bool, bool, bool),
    seen: Seen<'_>,
) -> Vec<El<Msg>> {
    let rack = &sheet.rack;
    let next = |place: usize| rack.next == Some(place);
    let before = |here: bool| rack.above.iter().filter(move |_| here).map(|choice| one(choice, false, (sheet, coats), seen));
    let below = rack.below.iter().enumerate().map(|(place, choice)| one(choice, next(place), (sheet, coats), seen));
    let runs = sheet.running.iter().map(|running| slab::slab(running, coat, seen));
    if ends && !leads && !seen.page.is_narrow() {
        let rest = below.chain(before(crowded)).listed();
        let rest = (!rest.is_empty()).then(|| drawn(rest).key("rest"));
        return std::iter::once(drawn(before(!crowded).chain(runs)).key("rack")).chain(rest).listed();
    }
    let around: Vec<El<Msg>> = before(!crowded).chain(runs).chain(below).chain(before(crowded)).listed();
    if around.is_empty() {
        return foot::folded(sheet, seen).into_iter().listed();
    }
    if !seen.page.is_narrow() && !leads {
        return vec![drawn(around).key("rack")];
    }
    let mut boards = around.into_iter();
    let first = drawn(boards.next()).key("rack");
    let rest = boards.listed();
    let rest = (!rest.is_empty()).then(|| drawn(rest).key("rest"));
    std::iter::once(first).chain(foot::folded(sheet, seen)).chain(rest).listed()
}

/// What was done lately, where each other job stands, what is behind.
pub fn beyond((sheet, coats): (&BenchSheet, Coats<'_>), seen: Seen<'_>) -> Vec<El<Msg>> {
    let rack = &sheet.rack;
    let boards = |choices: &[Choice]| choices.iter().map(|choice| one(choice, false, (sheet, coats), seen)).listed();
    // Where they are of several jobs, or of none, each says its own.
    let is_of_several = rack.lately.iter().zip(rack.lately.iter().skip(1)).any(|(one, other)| one.on != other.on);
    let lately = rack.lately.iter().map(|choice| on_its_job(choice, is_of_several, (sheet, coats), seen)).listed();
    let groups = [
        (words::LATELY, lately),
        (words::OTHER_JOBS, rack.jobs.iter().map(|choice| job(choice, coats(choice), seen)).listed()),
        (words::EARLIER, boards(&rack.earlier)),
    ];
    let mut shown = vec![];
    for (title, boards) in groups.into_iter().filter(|(_, boards)| !boards.is_empty()) {
        shown.push(el("h2", "").key(title).text(title));
        shown.push(drawn(boards).key(format!("{title} boards")));
    }
    shown
}

/// Another job, with what was done on it last: one tap switches to that.
fn job(choice: &Choice, coat: Option<(u32, u32, u32)>, seen: Seen<'_>) -> El<Msg> {
    let state = if choice.rework { words::REWORKED.to_owned() } else { state(choice, false, seen) };
    let under = [choice.op.clone(), state].join(", ");
    let name = choice.name.clone().unwrap_or_else(|| words::NO_JOB.to_owned());
    let (done, notches) = done(choice, coat, seen);
    let drawn = Board { operation: name, under, done, notches };
    board(drawn, say(Tap::Board(choice.clone()))).key(keyed(choice))
}

/// "5 of 5", of a further coat "Coat 2: 5 of 5"; and the notches of that.
fn done(choice: &Choice, coat: Option<(u32, u32, u32)>, seen: Seen<'_>) -> (String, Notches) {
    let of = |n: u32, of: u32| words::of(&seen.speech.count(n), &seen.speech.count(of));
    match (coat, choice.batch.of) {
        (Some((coat, each, n)), _) => (words::of_coat(&seen.speech.count(coat), &of(n, each)), Notches { done: n, of: each }),
        (None, Some(all)) => (of(choice.batch.n, all), notches(&choice.batch)),
        (None, None) => (String::new(), notches(&choice.batch)),
    }
}

fn keyed(choice: &Choice) -> String {
    let on = match choice.on {
        On::Job(id) | On::Haul(id) => id.to_string(),
        On::Nothing => String::new(),
    };
    format!("{on}{}{}", choice.rework, choice.op)
}

/// When it was stopped, how long it had run, about what is left.
fn stood(choice: &Choice, sheet: &BenchSheet, seen: Seen<'_>) -> Option<String> {
    let hand = sheet.hand.as_ref()?;
    let (run, span) = (hand.stood.as_ref()?, hand.stood_for);
    let at = run.wall(run.end(seen.now.at), seen.local);
    let left = slab::about_left(&choice.batch, seen).map(|left| begin_small(&left));
    let stood = words::stood(&seen.speech.clock(at), &seen.speech.span(span));
    Some([Some(stood), elsewhere(run.by(seen.local), seen), left].into_iter().flatten().listed().join(", "))
}

fn one(choice: &Choice, next: bool, (sheet, coats): (&BenchSheet, Coats<'_>), seen: Seen<'_>) -> El<Msg> {
    let is_elsewhere = sheet.hand.as_ref().is_some_and(|hand| hand.on != choice.on);
    named(choice, (next, choice.name.clone().filter(|_| is_elsewhere)), (sheet, coats), seen)
}

/// A board that says its job where that is asked, else where it is not that in hand.
fn on_its_job(choice: &Choice, is_asked: bool, (sheet, coats): (&BenchSheet, Coats<'_>), seen: Seen<'_>) -> El<Msg> {
    if !is_asked {
        return one(choice, false, (sheet, coats), seen);
    }
    let name = choice.name.clone().unwrap_or_else(|| words::NO_JOB.to_owned());
    named(choice, (false, Some(name)), (sheet, coats), seen)
}

fn named(choice: &Choice, (next, name): (bool, Option<String>), (sheet, coats): (&BenchSheet, Coats<'_>), seen: Seen<'_>) -> El<Msg> {
    let is_same = |other: &Choice| other.is_same(choice);
    let carry = sheet.carry_on.as_ref().is_some_and(is_same) && sheet.rack.below.iter().any(is_same);
    let operation = if carry { words::carry_on(&choice.op) } else { choice.op.clone() };
    let state = if choice.rework { words::REWORKED.to_owned() } else { state(choice, next, seen) };
    // Work of another day is carried on without the time of its stop.
    let stopped = sheet.hand.as_ref().and_then(|hand| hand.stood.as_ref());
    let today = stopped.is_some_and(|run| run.wall(run.end(seen.now.at), seen.local).day() == seen.now.day());
    let stood = if carry && today { stood(choice, sheet, seen) } else { None };
    let under = name.into_iter().chain([stood.unwrap_or(state)]).listed().join(", ");
    let (done, notches) = done(choice, coats(choice), seen);
    let drawn = Board { operation, under, done, notches };
    board(drawn, say(Tap::Board(choice.clone()))).key(keyed(choice))
}

/// How far it is: its pace, the time it took, or that it was not begun.
fn state(choice: &Choice, next: bool, seen: Seen<'_>) -> String {
    let batch = &choice.batch;
    if let Some(each) = slab::each(batch) {
        let apart = batch.apart().map(|apart| words::apart(&seen.speech.span(apart), batch.of.map(|_| batch.is_done())));
        return std::iter::once(words::each_so_far(&seen.speech.span(each))).chain(apart).listed().join(", ");
    }
    if Span::ZERO < batch.all() {
        return seen.speech.span(batch.all());
    }
    let state = if next { words::NEXT } else { words::NOT_BEGUN };
    match notches(batch).per() {
        1 => state.to_owned(),
        _ if seen.page.is_narrow() => state.to_owned(),
        per => words::notch_for_each(state, &seen.speech.count(per)),
    }
}

/// The notches of a batch.
pub fn notches(batch: &Batch) -> Notches {
    Notches { done: batch.n, of: batch.of.unwrap_or(0) }
}
