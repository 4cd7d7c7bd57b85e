//! The estimate of a job: its operations with their likely minutes, likely and safe on the scale, where it is from, and how far it has come.

use super::super::Seen;
use super::say;
use crate::app::jobs::Tap;
use crate::app::jobs::draft::What;
use crate::app::jobs::estimate::EstimateTap;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Kind, Look, Mark, Scale, scale};
use crate::view::{El, el};
use crate::words::en::{estimate as words, jobs};
use fivebar_core::bench::estimate::whole::PIECES;
use fivebar_core::bench::estimate::{Estimate, OnTop};
use fivebar_core::quantity::{Decimal, Id, Listed, Span};
use fivebar_core::sheet::estimate::{EstimateSheet, Progress, Row, progress};
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::look_back::LookBack;

fn tap(tap: EstimateTap) -> Msg {
    say(Tap::Estimate(tap))
}

/// The block of the room "Hours and money".
pub fn block(job: &JobSheet, sheet: Option<&EstimateSheet>, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let Some(sheet) = sheet else { return vec![] };
    let title = el("h2", "").text(words::ESTIMATE);
    let asks = (sheet.found.is_none() || (sheet.piece.is_none() && job.operations.is_empty())).then(|| kinds(sheet));
    let card = match &sheet.found {
        Some(found) => card(sheet, found, seen),
        None => el("p", "t14 i2").text(words::NOTHING_YET),
    };
    let keep = (sheet.found.is_some() && job.ended.is_none()).then(|| {
        let word = if sheet.kept.is_some() { words::KEEP_AGAIN } else { words::KEEP };
        key("key h56", word, "", tap(EstimateTap::Keep))
    });
    let told = sheet.history.told;
    let word = if told == 0 { words::OLD_JOBS } else { words::MORE_OLD_JOBS };
    let under = if told == 0 { words::OLD_JOBS_UNDER } else { "" };
    let old = key("key soft h56", word, under, say(Tap::Write(What::OldJobs)));
    [Some(title), asks, Some(card)].into_iter().flatten().chain(keep).chain(old_jobs(app, seen)).chain([old]).listed()
}

/// What kind of piece it is, as long as nothing else says what it takes.
fn kinds(sheet: &EstimateSheet) -> El<Msg> {
    let is = |kind: &str| sheet.piece.as_ref().is_some_and(|piece| piece.as_str() == kind);
    let chips = PIECES.iter().map(|(kind, _)| Chip::choice(words::piece(kind), is(kind))).listed();
    let pick = |nth: usize| tap(EstimateTap::Piece(PIECES.get(nth).map_or("", |(kind, _)| *kind)));
    el("div", "col").kid(el("p", "ink1").text(words::WHAT_KIND)).kid(flowing("key h48", chips, pick))
}

fn card(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> El<Msg> {
    let span = |span: Span| seen.speech.span(span);
    let (likely, safe) = (words::likely(&span(found.range.likely)), words::safe(&span(found.range.safe)));
    let now = Progress {
        thought: found.thought.or(sheet.progress.thought),
        likely: Some(found.range.likely),
        safe: Some(found.range.safe),
        ..sheet.progress
    };
    let drawn = drawn(&now, seen);
    let ends = sheet.progress.ends.map(|ends| el("p", "t14").text(words::ends(&span(ends))));
    let shares: Vec<_> = found.shares.iter().map(|(basis, share)| (*basis, seen.speech.count(*share))).listed();
    let kept =
        sheet.kept.map(|kept| el("p", "t14 i2 sums").text(words::kept(&seen.speech.day(kept.at), &span(kept.likely), &span(kept.high))));
    el("section", "card list estimate")
        .kid(el("p", "row").kid(el("span", "t22 w8").text(likely)).kid(el("span", "t17 w7").text(safe)))
        .kids(drawn)
        .kids(ends)
        // Planned operations stand in their own list, each with its likely minutes.
        .kids(sheet.rows.iter().filter(|row| row.op.is_none()).map(|row| row_of(row, seen)))
        .kid(
            el("div", "sums")
                .kid(el("p", "t14").text(words::shares(&shares)))
                .kid(el("p", "t14").text(on_top(found.on_top, seen)))
                .kid(el("p", "t14 i2").text(words::LIKELY_UNDER)),
        )
        .kids(toggle(found, sheet))
        .kids(kept)
}

/// The factor can be left out, where it put anything right.
fn toggle(found: &Estimate, sheet: &EstimateSheet) -> Option<El<Msg>> {
    let thinks = sheet.rows.iter().any(|row| row.from == fivebar_core::bench::estimate::Basis::Thought);
    let with = matches!(found.on_top, OnTop::Factor(_));
    let word = if with { words::WITHOUT_FACTOR } else { words::WITH_FACTOR };
    thinks.then(|| key("key soft h48", word, "", tap(EstimateTap::Factor(!with))))
}

fn on_top(on_top: OnTop, seen: Seen<'_>) -> String {
    match on_top {
        OnTop::Factor(factor) => {
            let jobs = u32::try_from(factor.jobs).unwrap_or(u32::MAX);
            words::factor(&seen.speech.number(factor.shown(), 2, 2), factor.jobs, &seen.speech.count(jobs))
        }
        OnTop::Allowance(share) => {
            let percent = share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default();
            words::allowance(&seen.speech.number(percent, 0, 1))
        }
    }
}

/// What the likely minutes of an operation come from.
pub fn basis(row: &Row, seen: Seen<'_>) -> String {
    words::from(row.from, &seen.speech.count(row.jobs), row.jobs == 1)
}

fn row_of(row: &Row, seen: Seen<'_>) -> El<Msg> {
    let name = row.op.as_deref().map_or(words::WHOLE_PIECE.to_owned(), jobs::upper_first);
    let under = basis(row, seen);
    el("div", "dl mid")
        .kid(el("span", "op").kid(el("span", "w7").text(name)).kid(el("span", "t14 i2").text(under)))
        .kid(el("span", "t17 w8").text(seen.speech.span(row.likely)))
}

/// Thought, likely and safe on the scale, with what is logged so far; none without a likely end.
fn drawn(progress: &Progress, seen: Seen<'_>) -> Option<El<Msg>> {
    let hours = |span: Span| span.as_ms() as f64 / 3_600_000.0;
    let marks = [
        (progress.thought, Kind::Ink, words::THOUGHT),
        (progress.likely, Kind::Ink, words::LIKELY),
        (progress.safe, Kind::Good, words::SAFE),
    ];
    let known: Vec<(Span, Kind, &str)> = marks.into_iter().filter_map(|(span, kind, word)| Some((span?, kind, word))).listed();
    let most = known.iter().map(|(span, ..)| *span).max()?.max(progress.so_far);
    let over = progress.likely.or(progress.thought).is_some_and(|likely| likely < progress.so_far);
    let fill = Fill { from: 0.0, to: hours(progress.so_far), look: if over { Look::Under } else { Look::Ink } };
    let whole = Scale {
        width: seen.page.card(),
        from: 0.0,
        to: hours(most) * 1.06,
        marks: known.into_iter().map(|(span, kind, word)| Mark::new(hours(span), kind, word, seen.speech.span(span))).listed(),
        fills: if Span::ZERO < progress.so_far { vec![fill] } else { vec![] },
        ..Scale::default()
    };
    Some(scale(&whole, &said(progress, seen)))
}

/// "19 h thought, 25 h 26 likely, 12 h 10 so far".
fn said(progress: &Progress, seen: Seen<'_>) -> String {
    let span = |span: Option<Span>| span.map(|span| seen.speech.span(span));
    words::progress(span(progress.thought).as_deref(), span(progress.likely).as_deref(), &seen.speech.span(progress.so_far))
}

/// How far the job has come, for its page: while it goes on and something is logged.
pub fn so_far(job: &JobSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    if job.ended.is_some() || job.account.hours.logged.own.total() <= Span::ZERO {
        return None;
    }
    let progress = progress(&app.shelf().shop(seen.now.at), job.job, !app.jobs.without_factor).ok()?;
    let drawn = drawn(&progress, seen)?;
    let ends = progress.ends.map(|ends| el("p", "t14").text(words::ends(&seen.speech.span(ends))));
    let line = el("p", "t14").text(said(&progress, seen));
    Some(el("section", "card sofar").kid(el("p", "w8").text(words::AGAINST)).kid(drawn).kid(line).kids(ends))
}

/// The same in one line, for the bench; without asking history.
pub fn line(job: Id, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shop = app.shelf().shop(seen.now.at);
    let job = shop.job(job).ok().filter(|job| job.ended.is_none())?;
    let progress = fivebar_core::sheet::estimate::progress_of(&shop, &job);
    progress.thought.or(progress.likely)?;
    Some(el("p", "t14").key("estimate").text(said(&progress, seen)))
}

/// Old jobs as they were told, each of which can be taken back.
fn old_jobs(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let workshop = app.shelf().workshop();
    let rows = workshop.old_jobs.iter().map(|old| {
        let thought = old.thought.map(|span| seen.speech.span(span));
        let price = old.sum.map(|sum| seen.speech.money(sum));
        let under = words::old_job(&seen.speech.span(old.span), thought.as_deref(), price.as_deref());
        let back = key("key soft h48", crate::words::en::job::TAKE_BACK, "", say(Tap::Strike(old.entry)));
        el("div", "dl mid")
            .key(old.entry.to_string())
            .kid(el("span", "op").kid(el("span", "w7").text(old.name.clone())).kid(el("span", "t14 i2").text(under)))
            .kid(back)
    });
    (!workshop.old_jobs.is_empty()).then(|| {
        let list = el("section", "card list").kids(rows);
        el("div", "col").kid(el("h2", "").text(words::OLD_JOBS_LIST)).kid(list)
    })
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
