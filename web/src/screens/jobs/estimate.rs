//! The estimate of a job: its operations with their likely minutes, likely and safe on the scale, where it is from, and how far it has come.

mod ended;
mod how;
mod steps;

use super::super::Seen;
use super::figures::left_out;
use super::say;
use crate::app::jobs::Tap;
use crate::app::jobs::draft::What;
use crate::app::jobs::estimate::{EstimateTap, kind_of};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Kind, Look, Mark, Scale, scale};
use crate::view::{El, el};
use crate::words::en::{bench, dates, estimate as words, jobs};
use fivebar_core::bench::estimate::whole::PIECES;
use fivebar_core::bench::estimate::{Basis, Estimate, OnTop, Range};
use fivebar_core::ledger::fold::{OldJob, struck_old_jobs};
use fivebar_core::quantity::{Decimal, Id, Key, Listed, Span};
use fivebar_core::sheet::bench::Slab;
use fivebar_core::sheet::estimate::{EstimateSheet, OtherWay, Progress, Row, progress_of};
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::look_back::LookBack;

fn tap(tap: EstimateTap) -> Msg {
    say(Tap::Estimate(tap))
}

/// The block of the room "Hours and money".
pub fn block(job: &JobSheet, sheet: Option<&EstimateSheet>, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(sheet) = sheet else { return vec![] };
    let goes_on = job.ended.is_none();
    let title = el("h2", "").text(words::ESTIMATE);
    let asks = if goes_on { kinds(sheet, app) } else { vec![] };
    let card = match &sheet.found {
        _ if !goes_on => ended::card(sheet, seen),
        Some(found) => card(sheet, found, seen),
        None => el("p", "t14 i2").text(if sheet.piece.is_some() { words::NOTHING_OF_KIND } else { words::NOTHING_YET }),
    };
    let how = sheet.found.iter().filter(|_| goes_on).flat_map(|found| how::how(sheet, found, seen)).listed();
    let keep = (sheet.found.is_some() && goes_on).then(|| {
        let word = if sheet.kept.is_some() { words::KEEP_AGAIN } else { words::KEEP };
        key("key h56", word, "", tap(EstimateTap::Keep))
    });
    let told = sheet.history.told;
    let word = if told == 0 { words::OLD_JOBS } else { words::MORE_OLD_JOBS };
    let under = if told == 0 { words::OLD_JOBS_UNDER } else { "" };
    let old = key("key soft h56", word, under, say(Tap::Write(What::OldJobs)));
    let open = left_out(job, "t14 w7", seen).filter(|_| sheet.found.is_some());
    std::iter::once(title).chain(asks).chain([card]).chain(open).chain(how).chain(keep).chain(old_jobs(app, seen)).chain([old]).listed()
}

/// What kind of piece it is: asked until it is said, and then behind a key.
fn kinds(sheet: &EstimateSheet, app: &App) -> Vec<El<Msg>> {
    let all: Vec<&'static str> = PIECES.iter().map(|(kind, _)| *kind).chain(words::MORE_PIECES).listed();
    let said = sheet.piece.as_ref().map(|piece| {
        let word = words::kind_of_piece(&words::piece(piece.as_str()));
        key("key soft h48", word, "", tap(EstimateTap::Kinds)).attr("aria-expanded", if app.jobs.kinds { "true" } else { "false" })
    });
    // What its name tells is put before it, and the others are a tap further.
    let named = named(app, sheet.job).filter(|_| sheet.piece.is_none() && !app.jobs.kinds);
    if let Some(yes) = named {
        return vec![el("div", "g2").kid(yes).kid(key("key soft h56", words::ANOTHER_KIND, "", tap(EstimateTap::Kinds)))];
    }
    let asks = sheet.piece.is_none() || app.jobs.kinds;
    let is = |kind: &str| sheet.piece.as_ref().is_some_and(|piece| piece.as_str() == kind);
    let shown = asks.then(|| {
        let chips = all.iter().map(|kind| Chip::choice(words::piece(kind), is(kind))).listed();
        let pick = |nth: usize| tap(EstimateTap::Piece(all.get(nth).copied().unwrap_or_default()));
        el("div", "col").kid(el("p", "ink1").text(words::WHAT_KIND)).kid(flowing("key h48", chips, pick))
    });
    said.into_iter().chain(shown).listed()
}

/// The kind of piece that the name of a job tells, as a key that says so.
pub fn named(app: &App, job: Id) -> Option<El<Msg>> {
    let told = kind_of(app, job)?;
    let named = PIECES.iter().map(|(kind, _)| *kind).chain(words::MORE_PIECES).find(|kind| *kind == told.as_str())?;
    Some(key("key h56", words::kind_of_piece(&words::piece(named)), words::BY_ITS_NAME, tap(EstimateTap::Piece(named))))
}

fn card(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> El<Msg> {
    let span = |span: Span| seen.speech.span(span);
    let in_all = sheet.in_all().unwrap_or(found.range);
    let (likely, safe) = (words::likely(&span(in_all.likely)), words::safe(&span(in_all.safe)));
    let drawn = drawn(&sheet.progress, seen);
    let begun = sheet.to_come.filter(|left| sheet.progress.ends.is_some() && Span::ZERO < left.safe);
    let to_come = begun.map(|left| el("p", "").text(still(left, seen)));
    let shares: Vec<_> = found.shares.iter().map(|(basis, share)| (*basis, seen.speech.count(*share))).listed();
    el("section", "card list estimate")
        .kid(el("p", "row").kid(el("span", "t22 w8").text(likely)).kid(el("span", "t17 w7").text(safe)))
        .kids(drawn)
        .kids(to_come)
        // Planned operations stand in their own list, each with its likely minutes.
        .kids(sheet.rows.iter().filter(|row| row.op.is_none()).map(|row| row_of(row, seen)))
        .kid(
            el("div", "sums")
                .kid(el("p", "t14").text(words::shares(&shares)))
                .kids(by_name(sheet.by_name()))
                .kids(sheet.is_guessed().then(|| el("p", "t14 w7").text(words::BY_ANY)))
                .kids(how::covers(sheet, seen).map(|said| el("p", "t14").text(said)))
                .kids(made_of(sheet, in_all, seen).map(|said| el("p", "t14").text(said)))
                .kid(el("p", "t14 i2").text(likely_under(sheet)))
                .kids(differs(sheet, in_all).then(|| el("p", "t14 i2").text(words::ESTIMATED_UNDER))),
        )
        .kids(whole_key(sheet))
        .kids(toggle(found, sheet, seen))
        .kids(kept(sheet, seen))
}

/// Operations that count as done by their hours alone, wherever hours to come stand or a price counts them.
pub fn unnoted(ops: &[String]) -> Vec<El<Msg>> {
    ops.iter().map(|op| el("p", "t14 w7").text(dates::unnoted(op))).listed()
}

/// That the kind of piece is a guess, where hours go by it.
pub fn by_name(kind: Option<&Key>) -> Option<El<Msg>> {
    kind.map(|kind| el("p", "t14").text(words::by_name(&words::piece(kind.as_str()))))
}

fn likely_under(sheet: &EstimateSheet) -> String {
    words::likely_under(1 < sheet.rows.len().saturating_add(sheet.counted.len()), sheet.rows.iter().any(|row| row.op.is_none()))
}

/// What is likely to come, and to be safe; of nothing that is likely it is said what may be.
fn still(left: Range, seen: Seen<'_>) -> String {
    let [likely, safe] = [left.likely, left.safe].map(|span| seen.speech.span(span));
    if left.likely.as_minutes() <= 0 { words::may_come(&safe) } else { words::to_come(&likely, &safe) }
}

/// The estimate as it was given last.
fn kept(sheet: &EstimateSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let span = |span: Span| seen.speech.span(span);
    sheet.kept.map(|kept| el("p", "t14 i2 sums").text(words::kept(&seen.speech.day(kept.at), &span(kept.likely), &span(kept.high))))
}

/// Work has moved what is likely away from what was estimated, and both stand there.
fn differs(sheet: &EstimateSheet, in_all: Range) -> bool {
    Span::ZERO < sheet.progress.so_far && sheet.progress.estimated.is_some_and(|estimated| estimated != in_all.likely)
}

/// What safe is made of, so that it can be added up: what is logged, what is likely to come, and what all of it may run over.
fn made_of(sheet: &EstimateSheet, in_all: Range, seen: Seen<'_>) -> Option<String> {
    let (logged, over) = (sheet.progress.so_far, in_all.safe.minus(in_all.likely));
    let spans = [logged, in_all.likely.minus(logged), over].map(|span| seen.speech.span(span));
    let begun = Span::ZERO < logged;
    (Span::ZERO < over).then(|| words::safe_made_of(begun.then_some(&*spans[0]), &spans[1], &spans[2], &seen.speech.span(in_all.safe)))
}

/// That what is planned is all of it, where more is thought to come.
pub(super) fn is_whole(sheet: &EstimateSheet) -> Option<El<Msg>> {
    let rest = Span::sum(sheet.rows.iter().filter(|row| row.is_rest).map(|row| row.to_come()));
    let is_asked = Span::ZERO < rest && sheet.to_come.is_some();
    is_asked.then(|| key("key soft h48", words::IS_WHOLE, words::IS_WHOLE_UNDER, tap(EstimateTap::Whole(true))))
}

/// Whether what is planned is all of it: asked where the estimate holds a rest, and taken back by a key.
fn whole_key(sheet: &EstimateSheet) -> Option<El<Msg>> {
    let has_rest = sheet.rows.iter().any(|row| row.is_rest);
    let goes_on = sheet.to_come.is_some();
    match (has_rest, sheet.said_whole) {
        _ if !goes_on => None,
        (true, _) => is_whole(sheet),
        (false, true) => Some(key("key soft h48", words::NOT_WHOLE, words::SAID_WHOLE, tap(EstimateTap::Whole(false)))),
        (false, false) => None,
    }
}

/// The factor can be left out, where it or the allowance in its place does anything.
fn toggle(found: &Estimate, sheet: &EstimateSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let does = sheet.rows.iter().any(|row| matches!(row.from, Basis::Thought | Basis::Own | Basis::Kind | Basis::Design));
    let with = matches!(found.on_top, OnTop::Factor(_));
    let word = if with { words::WITHOUT_FACTOR } else { words::WITH_FACTOR };
    let under = sheet.other_way.map(|other| other_way(sheet, &other, found, seen)).unwrap_or_default();
    does.then(|| key("key soft h48", word, under, tap(EstimateTap::Factor(!with))))
}

/// What it comes to the other way, whether that is longer, and by what.
fn other_way(sheet: &EstimateSheet, other: &OtherWay, found: &Estimate, seen: Seen<'_>) -> String {
    let now = sheet.in_all().unwrap_or(found.range).likely;
    let by = match other.on_top {
        OnTop::Factor(factor) => words::by_factor(&seen.speech.number(factor.shown(), 2, 3)),
        OnTop::Allowance(share) => {
            let of_own = sheet.rows.iter().any(|row| matches!(row.from, Basis::Own | Basis::Kind | Basis::Design));
            words::by_allowance(&steps::percent(share, seen), of_own, sheet.rows.iter().any(|row| row.op.is_none()))
        }
    };
    words::other_way(&seen.speech.span(other.likely), other.likely.cmp(&now), &by)
}

/// What the likely minutes of an operation come from.
pub fn basis(row: &Row, seen: Seen<'_>) -> String {
    words::from(row.from, &seen.speech.count(row.jobs), row.jobs == 1)
}

fn row_of(row: &Row, seen: Seen<'_>) -> El<Msg> {
    let whole = if row.is_rest { words::REST } else { words::WHOLE_PIECE };
    let name = row.op.as_deref().map_or(whole.to_owned(), jobs::upper_first);
    let under = basis(row, seen);
    el("div", "dl mid")
        .kid(el("span", "op").kid(el("span", "w7").text(name)).kid(el("span", "t14 i2").text(under)))
        .kid(el("span", "t17 w8").text(seen.speech.span(row.likely)))
}

/// Thought, estimated and safe on the scale, with what is logged so far; none without any of them.
fn drawn(progress: &Progress, seen: Seen<'_>) -> Option<El<Msg>> {
    let so_far = progress.on_plan();
    let hours = |span: Span| span.as_ms() as f64 / 3_600_000.0;
    let marks = [
        (progress.thought, Kind::Ink, words::THOUGHT),
        (progress.estimated, Kind::Ink, words::ESTIMATED),
        // What was estimated stays as it was before the work; what is safe goes with it.
        (progress.safe, Kind::Good, if Span::ZERO < progress.so_far { words::SAFE_NOW } else { words::SAFE }),
    ];
    let known: Vec<(Span, Kind, &str)> = marks.into_iter().filter_map(|(span, kind, word)| Some((span?, kind, word))).listed();
    let most = known.iter().map(|(span, ..)| *span).max()?.max(so_far);
    let over = progress.estimated.or(progress.thought).is_some_and(|estimated| estimated < so_far);
    let fill = Fill { from: 0.0, to: hours(so_far), look: if over { Look::Under } else { Look::Ink } };
    let whole = Scale {
        width: seen.page.card(),
        from: 0.0,
        to: hours(most) * 1.06,
        marks: known.into_iter().map(|(span, kind, word)| Mark::new(hours(span), kind, word, seen.speech.span(span))).listed(),
        fills: if Span::ZERO < so_far { vec![fill] } else { vec![] },
        ..Scale::default()
    };
    Some(scale(&whole, &said(progress, seen)))
}

/// "19 h thought, 25 h 26 estimated, 12 h 10 so far".
fn said(progress: &Progress, seen: Seen<'_>) -> String {
    let span = |span: Option<Span>| span.map(|span| seen.speech.span(span));
    let (thought, estimated) = (span(progress.thought), span(progress.estimated));
    let (thought, estimated) = (thought.as_deref(), estimated.as_deref());
    match progress.beside {
        None => words::progress(thought, estimated, &seen.speech.span(progress.so_far)),
        Some(beside) => {
            // Together as many minutes as stand at the head of the bench.
            let both = Span::in_minutes(&[beside.on_them, beside.on_others]).into_iter().map(|span| seen.speech.span(span)).listed();
            let [on_them, on_others] = both.as_slice() else { return String::new() };
            let n = (seen.speech.count(beside.planned), beside.planned == 1);
            words::progress_beside(thought, estimated, (&n.0, n.1), [on_them, on_others])
        }
    }
}

/// How far the job has come, for its page: while it goes on and something is logged.
pub fn so_far(sheet: &EstimateSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let progress = sheet.progress;
    progress.to_come.filter(|_| Span::ZERO < progress.so_far)?;
    let drawn = drawn(&progress, seen)?;
    let ends = match progress.ends {
        Some(ends) => vec![words::ends(&seen.speech.span(ends))],
        None => vec![],
    };
    let lines = std::iter::once(said(&progress, seen)).chain(ends).map(|line| el("p", "t14").text(line));
    Some(el("section", "card sofar").kid(el("p", "w8").text(words::AGAINST)).kid(drawn).kids(lines))
}

/// The same in a few words, for the bench: what it is estimated from where nothing was kept, and how it ends where that is another figure.
pub fn line(job: Id, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shop = app.shelf().shop(seen.now.at);
    let job = shop.job(job).ok().filter(|job| job.ended.is_none())?;
    let (progress, from) = progress_of(&shop, &job, true);
    let progress = Progress { thought: progress.thought.filter(|thought| Some(*thought) != progress.estimated), ..progress };
    progress.thought.or(progress.estimated)?;
    let is_said = |span: Span| Some(span) == progress.estimated || span == progress.so_far;
    let ends = progress.ends.filter(|ends| !is_said(*ends)).map(|ends| words::ends(&seen.speech.span(ends)));
    let all = [Some(words::as_sentence(&said(&progress, seen))), words::estimated_by(&from), ends];
    Some(el("p", "t14").key("estimate").text(all.into_iter().flatten().listed().join(" ")))
}

/// What runs takes longer than was planned, for the bench.
pub fn past_plan(running: &Slab, seen: Seen<'_>) -> Option<El<Msg>> {
    let planned = seen.speech.span(running.past_plan()?);
    let said = words::past_plan(&running.run.work.op, &planned, &seen.speech.span(running.batch.sure));
    Some(el("p", "c-under w7").key("past-plan").text(said))
}

/// Old jobs as they were told, each of which can be struck; and those that were, each of which can be put back.
fn old_jobs(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let workshop = app.shelf().workshop();
    let struck = struck_old_jobs(&app.shelf().book, &workshop.old_jobs);
    let list = |title: &'static str, rows: Vec<El<Msg>>| {
        (!rows.is_empty()).then(|| [el("h2", "").text(title), el("section", "card list").kids(rows)])
    };
    let standing = list(words::OLD_JOBS_LIST, workshop.old_jobs.iter().map(|old| old_job(old, seen)).listed());
    let struck = list(words::OLD_JOBS_STRUCK, struck.iter().map(|old| struck_old_job(old, seen)).listed());
    let both = [standing, struck].into_iter().flatten().flatten().listed();
    (!both.is_empty()).then(|| el("div", "col").kids(both))
}

fn old_job(old: &OldJob, seen: Seen<'_>) -> El<Msg> {
    let mend = key("key soft h48", bench::MEND, "", say(Tap::Write(What::OldJob(old.entry))));
    let back = key("key soft h48", crate::words::en::job::STRIKE, "", tap(EstimateTap::StrikeOld(old.entry)));
    old_row(old, "w7", seen).kid(el("span", "keyline").kid(mend).kid(back))
}

fn struck_old_job(old: &OldJob, seen: Seen<'_>) -> El<Msg> {
    let back = key("key h48", bench::PUT_BACK, "", tap(EstimateTap::PutBackOld(old.entry)));
    old_row(old, "w7 gone", seen).kid(el("span", "keyline").kid(back))
}

fn old_row(old: &OldJob, class: &'static str, seen: Seen<'_>) -> El<Msg> {
    let thought = old.thought.map(|span| seen.speech.span(span));
    let price = old.sum.map(|sum| seen.speech.money(sum));
    let n = (1 < old.pieces).then(|| seen.speech.count(old.pieces));
    let under = words::old_job(&seen.speech.span(old.span), n.as_deref(), thought.as_deref(), price.as_deref());
    let named = el("span", "op").kid(el("span", class).text(old.name.clone())).kid(el("span", "t14 i2").text(under));
    el("div", "dl mid").key(old.entry.to_string()).kid(named)
}

/// What the job teaches the next estimate, and what this one had warned of.
pub fn next(back: &LookBack, seen: Seen<'_>) -> Option<El<Msg>> {
    let learns = back.factor?;
    let times = |factor: Decimal| seen.speech.number(factor, 3, 3);
    let warned = back
        .warned
        .zip(back.estimate)
        .map(|(likely, thought)| el("p", "t14 i2").text(words::warned(&seen.speech.span(likely), &seen.speech.span(thought))));
    let title = el("p", "row")
        .kid(el("span", "t17 w8").text(words::next_estimate(&times(learns.next))))
        .kid(el("span", "t14").text(words::was(&times(learns.was))));
    Some(el("section", "card").kid(title).kids(warned))
}
