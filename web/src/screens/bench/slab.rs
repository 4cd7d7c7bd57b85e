//! The running slab: minutes from the clock, pieces, pace, about what is left.

use super::super::Seen;
use super::rack::notches;
use super::say;
use crate::app::Msg;
use crate::app::bench::Tap;
use crate::parts::key::key;
use crate::parts::notches::Notches;
use crate::parts::slab::{Slab as Drawn, slab_with};
use crate::view::El;
use crate::words::en::{bench as words, day, helper};
use fivebar_core::bench::{Batch, Head, On};
use fivebar_core::quantity::{Listed, Span, begin_large};
use fivebar_core::sheet::bench::Slab;

/// The slab; where it was not said how many pieces there are, a key on it asks.
/// Of a further coat, `coat` says which it is, on how many pieces, and how many have it.
pub fn slab(slab: &Slab, coat: Option<(u32, u32, u32)>, seen: Seen<'_>) -> El<Msg> {
    let batch = &slab.batch;
    let count = |n| seen.speech.count(n);
    let done = match (coat, batch.of) {
        (Some((coat, each, n)), _) => words::of_coat(&count(coat), &words::done(&count(n), Some(&count(each)))),
        (None, Some(of)) => words::done(&count(batch.n), Some(&count(of))),
        (None, None) if 0 < batch.n => words::done(&count(batch.n), None),
        (None, None) => String::new(),
    };
    let (figure, unit) = figure(slab.worked, seen);
    let lines = lines(slab, seen);
    let notches = coat.map_or_else(|| notches(batch), |(_, of, done)| Notches { done, of });
    let drawn = Drawn { operation: slab.run.work.op.clone(), figure, unit: unit.into(), done, notches, lines };
    let asks = matches!(slab.run.work.on, On::Job(_)) && !slab.run.work.rework && slab.has_pieces();
    // On a narrow page the way to put that right is behind +n.
    let asks = asks && !(seen.page.is_narrow() && batch.of.is_some());
    let words = batch.of.map_or(words::ASK_HOW_MANY.to_owned(), |of| words::of_so_many(&seen.speech.count(of)));
    slab_with(drawn, asks.then(|| key("key h48 on-run", words, "", say(Tap::AskBatch)))).key("running")
}

/// Minutes from the clock, half up as they stand everywhere else; seconds only in the first minute.
pub fn figure(worked: Span, seen: Seen<'_>) -> (String, &'static str) {
    let minutes = worked.as_minutes();
    match minutes {
        _ if worked < Span::minutes(1) => (worked.as_ms().div_euclid(1000).to_string(), "s"),
        ..60 => (minutes.to_string(), "min"),
        _ => (seen.speech.span(Span::minutes(minutes)), ""),
    }
}

/// What a piece takes; what comes to no minute is said of none.
pub fn each(batch: &Batch) -> Option<Span> {
    batch.each().filter(|each| 0 < each.as_minutes())
}

fn lines(slab: &Slab, seen: Seen<'_>) -> Vec<(String, String)> {
    let (batch, span) = (&slab.batch, |span: Span| seen.speech.span(span));
    let left = about_left(batch, seen).unwrap_or_default();
    let each = each(batch).map(|each| words::each(&span(each))).unwrap_or_default();
    let range = range(batch, seen);
    let all = if slab.worked < batch.all() { words::in_all(&span(batch.all())) } else { String::new() };
    let after = || batch.apart().filter(|_| batch.is_done()).map(|after| words::apart(&span(after), Some(true)));
    let slow = batch.slow().map(|slow| words::this_one(&span(slow))).or_else(after).unwrap_or_default();
    let heads = if 1 < slab.heads { words::heads(&seen.speech.count(slab.heads)) } else { String::new() };
    let heads = if heads.is_empty() || left.is_empty() { heads } else { words::heads_and_left(&heads) };
    let rework = if slab.run.work.rework { words::REWORKED.to_owned() } else { String::new() };
    let (left, slow) = if left.is_empty() { (begin_large(&slow), String::new()) } else { (left, slow) };
    let lines = vec![(left, each), (range, all), (slow, String::new()), (heads, rework)];
    lines.into_iter().chain(helpers(slab, seen)).filter(|(left, right)| !(left.is_empty() && right.is_empty())).listed()
}

/// "About 57 min left": a minute at least, while something is left.
pub fn about_left(batch: &Batch, seen: Seen<'_>) -> Option<String> {
    let left = batch.remaining().filter(|left| Span::ZERO < *left)?;
    Some(words::about_left(&seen.speech.span(left.max(Span::minutes(1)))))
}

/// Who works along now: how many, since when, and for what an hour.
fn helpers(slab: &Slab, seen: Seen<'_>) -> Vec<(String, String)> {
    let there = slab.run.heads.iter().filter(|head| head.to.is_none());
    let one = |head: &Head| {
        let since = seen.when(slab.run.wall(head.from, seen.local));
        let pay = head.pay.map_or_else(|| day::NOT_PAID.to_owned(), |pay| day::per_hour(&seen.speech.money(pay)));
        (helper::since((head.n, &seen.speech.count(head.n)), &since), pay)
    };
    there.map(one).listed()
}

/// How far about what is left may be off: its two ends where they differ. A minute at least is left, as is said above it.
fn range(batch: &Batch, seen: Seen<'_>) -> String {
    let Some((from, to)) = batch.range() else { return String::new() };
    let [least, most] = [from, to].map(|end| seen.speech.span(end.max(Span::minutes(1))));
    if least == most { String::new() } else { words::range(&least, &most, seen.page.is_narrow()) }
}
