//! Cautions at the bench, each where it is needed: dust at the day's first such work, at its first sanding and its first ripping, rags after each
//! coat and at the day's end.

use super::super::{Seen, short};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::view::El;
use crate::words::en::bench as words;
use fivebar_core::bench::wait::What;
use fivebar_core::bench::{Bench, Kind, Run};
use fivebar_core::quantity::{Clock, Day, Listed};
use fivebar_core::sheet::bench::BenchSheet;

/// From then on a stop may be the last of the day, where no closing time is known [J].
const EVENING: u16 = 17 * 60;

/// Dust while the day's first dusty work runs, its first sanding, or its first ripping; rags once a coat was done until something else is, and at the
/// stop that ends a day with a coat; and what is short with the first run of a day that has a short pile.
pub fn cautions(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    of_work(app, sheet, seen).into_iter().chain(short::lines(app, seen).into_iter().map(caution)).listed()
}

/// Of them, those of dust and of rags.
pub fn of_work(app: &App, sheet: &BenchSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (bench, today) = (app.shelf().bench(), seen.now.day());
    let dust = [&words::SANDED[..], &words::RIPPED, &words::DUSTY].into_iter().any(|dusty| is_first(&bench, today, dusty));
    let rags = rags(app, &bench, today, sheet) || is_evening(app, seen) && sheet.running.is_none() && had_coat(app, &bench, today);
    [dust.then_some(words::DUST), rags.then_some(words::RAGS)].into_iter().flatten().map(caution).listed()
}

/// Whether the day's first work of such names runs. It is making, or the milling of what was fetched: who rings the mill, or drives there, makes no dust.
fn is_first(bench: &Bench, today: Day, names: &[&str]) -> bool {
    let is_dusty = |run: &&Run| match run.work.kind {
        Kind::Make => words::holds(&run.work.op, names),
        Kind::Fetch => words::is_milling(&run.work.op, names),
        Kind::Sell | Kind::Deliver | Kind::Office => false,
    };
    own(bench, today).find(is_dusty).is_some_and(Run::is_running)
}

fn own(bench: &Bench, today: Day) -> impl DoubleEndedIterator<Item = &Run> {
    bench.runs().filter(move |run| run.work.person.is_none() && run.started.day() == today)
}

/// The last that was done today was a coat: its run was stopped last, or is the one that goes on and a piece of it was coated.
fn rags(app: &App, bench: &Bench, today: Day, sheet: &BenchSheet) -> bool {
    if let Some(slab) = &sheet.running
        && coats(app, today).any(|run| run == Some(slab.run.id))
    {
        return true;
    }
    stopped(bench, today).next_back().is_some_and(|run| words::holds(&run.work.op, &words::OILY))
}

/// What was done today, begun yesterday or not.
fn stopped(bench: &Bench, today: Day) -> impl DoubleEndedIterator<Item = &Run> {
    let is_today = move |run: &&Run| run.stopped.is_some_and(|stopped| stopped.day() == today);
    bench.runs().filter(|run| run.work.person.is_none()).filter(is_today)
}

fn had_coat(app: &App, bench: &Bench, today: Day) -> bool {
    own(bench, today).any(|run| words::holds(&run.work.op, &words::OILY)) || coats(app, today).next().is_some()
}

/// Runs of which a coat of today waits, or waited.
fn coats(app: &App, today: Day) -> impl Iterator<Item = Option<fivebar_core::quantity::Id>> {
    let waits = app.shelf().waits();
    let coats = waits.all().filter(|wait| wait.what() == What::Coat && wait.began.day() == today);
    coats.map(|wait| wait.run).listed().into_iter()
}

/// An hour before closing, as it was said.
fn is_evening(app: &App, seen: Seen<'_>) -> bool {
    let before = |closing: Clock| Clock::minutes(closing.as_minutes().saturating_sub(60));
    let evening = app.shelf().workshop().hours.closing.map_or(Clock::minutes(EVENING), before);
    evening.is_some_and(|evening| evening <= seen.now.clock())
}
