//! The rack: operations in working order, each a board with its notches; a tap starts it, or switches to it.

use super::super::Seen;
use super::{say, slab};
use crate::app::Msg;
use crate::app::bench::Tap;
use crate::parts::board::{Board, board};
use crate::parts::notches::Notches;
use crate::parts::rack::rack as drawn;
use crate::view::{El, el};
use crate::words::en::bench as words;
use fivebar_core::bench::{Batch, On};
use fivebar_core::quantity::{Listed, Span};
use fivebar_core::sheet::bench::{BenchSheet, Choice};

/// The rack around what runs.
pub fn around(sheet: &BenchSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let rack = &sheet.rack;
    let next = |place: usize| rack.next == Some(place);
    let above = rack.above.iter().map(|choice| one(choice, false, sheet, seen));
    let below = rack.below.iter().enumerate().map(|(place, choice)| one(choice, next(place), sheet, seen));
    let around: Vec<El<Msg>> = above.chain(sheet.running.iter().map(|running| slab::slab(running, seen))).chain(below).listed();
    (!around.is_empty()).then(|| drawn(around).key("rack"))
}

/// What was done earlier, and lately on other jobs.
pub fn earlier(sheet: &BenchSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let earlier = &sheet.rack.earlier;
    if earlier.is_empty() {
        return vec![];
    }
    let boards = drawn(earlier.iter().map(|choice| one(choice, false, sheet, seen)));
    vec![el("h2", "").text(words::EARLIER), boards]
}

fn one(choice: &Choice, next: bool, sheet: &BenchSheet, seen: Seen<'_>) -> El<Msg> {
    let carry = sheet.carry_on.as_ref().is_some_and(|carry| carry.is_same(choice));
    let operation = if carry { words::carry_on(&choice.op) } else { choice.op.clone() };
    let elsewhere = sheet.hand.as_ref().is_some_and(|hand| hand.on != choice.on);
    let name = choice.name.clone().filter(|_| elsewhere);
    let state = if choice.rework { words::REWORKED.to_owned() } else { state(choice, next, seen) };
    let under = name.into_iter().chain([state]).listed().join(", ");
    let done = choice.batch.of.map(|of| words::of(&seen.speech.count(choice.batch.n), &seen.speech.count(of))).unwrap_or_default();
    let drawn = Board { operation, under, done, notches: notches(&choice.batch) };
    let on = match choice.on {
        On::Job(id) | On::Haul(id) => id.to_string(),
        On::Nothing => String::new(),
    };
    board(drawn, say(Tap::Board(choice.clone()))).key(format!("{on}{}{}", choice.rework, choice.op))
}

/// How far it is: its pace, the time it took, or that it was not begun.
fn state(choice: &Choice, next: bool, seen: Seen<'_>) -> String {
    let batch = &choice.batch;
    if let Some(pace) = batch.pace() {
        return words::last_each(&seen.speech.span(pace));
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
