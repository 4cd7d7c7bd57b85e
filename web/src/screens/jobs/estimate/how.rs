//! How an estimate comes about, each step in figures, so that a maker can work it back.

use super::super::super::Seen;
use super::steps;
use crate::app::Msg;
use crate::view::{El, el};
use crate::words::en::{estimate as words, how as said};
use fivebar_core::bench::estimate::factor::is_sound;
use fivebar_core::bench::estimate::spread::DRAWS;
use fivebar_core::bench::estimate::{Basis, Estimate, OnTop};
use fivebar_core::quantity::{Decimal, Listed, Span};
use fivebar_core::sheet::estimate::parts::Whole;
use fivebar_core::sheet::estimate::{Covers, EstimateSheet, Row};

/// Ratios that are shown; of more the factor alone is.
const RATIOS_MOST: usize = 6;

/// The steps in their order: the factor, each operation, the whole piece and its rest, then what all of them come to; and those by which it was
/// estimated when its work began, where they are others.
pub fn how(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Vec<El<Msg>> {
    let steps = steps_of(sheet, found, seen);
    let then = sheet.then.iter().filter_map(|then| Some((then, then.found.as_ref()?))).flat_map(|(then, found)| {
        let said = steps_of(then, found, seen);
        // What is left of each operation is of today.
        let is_same = found.range.likely == Span::sum(sheet.rows.iter().map(|row| row.likely));
        if is_same { vec![] } else { said.into_iter().chain([said::estimated_then(&seen.speech.span(found.range.likely))]).listed() }
    });
    let then = then.listed();
    let lines = once(steps.into_iter().chain(safe(sheet, found, seen)).chain(begun(sheet, found, seen)).listed());
    let block = |title: &'static str, lines: Vec<String>| {
        let lines = lines.into_iter().map(|step| el("p", "t14").text(step));
        [el("h2", "").text(title), el("section", "card list").kids(lines)]
    };
    let then = (!then.is_empty()).then(|| block(words::HOW_THEN, once(then)));
    block(words::HOW, lines).into_iter().chain(then.into_iter().flatten()).listed()
}

/// What further pieces alike take is said once.
fn once(mut lines: Vec<String>) -> Vec<String> {
    let mut gains = 0_u8;
    lines.retain(|line| {
        gains = gains.saturating_add(u8::from(line == words::GAIN));
        line != words::GAIN || gains == 1
    });
    lines
}

fn steps_of(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Vec<String> {
    let uses_whole = sheet.covers == Covers::Planned || sheet.rows.iter().any(|row| matches!(row.from, Basis::Pieces | Basis::Piece));
    let of_whole = sheet.whole.iter().filter(|_| uses_whole).flat_map(|whole| of_whole(sheet, whole, seen));
    let each = sheet.rows.iter().filter_map(|row| steps::line(sheet, row, found.on_top, seen));
    let gain = steps::gains(sheet).then(|| words::GAIN.to_owned());
    let counted = sheet.counted.iter().map(|one| steps::counted(one, seen));
    let lines = of_factor(sheet, found, seen).into_iter().chain(each).chain(counted).chain(on_top(sheet, found, seen)).chain(of_whole);
    lines.chain(rest(sheet, seen)).chain(gain).listed()
}

/// What the estimate holds, where it is not all of the job.
pub fn covers(sheet: &EstimateSheet, seen: Seen<'_>) -> Option<String> {
    if sheet.covers != Covers::Planned {
        return None;
    }
    let (whole, is_of_kind) = (sheet.whole.as_ref(), sheet.whole.as_ref().is_some_and(Whole::is_of_kind));
    let whole = whole.map(|whole| seen.speech.span(whole.likely));
    if let Some(whole) = whole.as_ref().filter(|_| is_of_kind) {
        return Some(words::planned_is_more(whole));
    }
    let kind = sheet.piece.as_ref().map(|piece| piece.as_str());
    Some(words::planned_alone(whole.as_deref(), kind, 0 < sheet.history.told))
}

/// How the safe figure comes about, and the likely one of several.
fn safe(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Option<String> {
    let span = |span: Span| seen.speech.span(span);
    let [likely, safe] = [found.range.likely, found.range.safe].map(span);
    if steps::is_one(sheet) {
        let tenth = fivebar_core::sheet::estimate::steps::tenths(sheet).into_iter().next()?;
        return Some(said::safe_of_one(&likely, &seen.speech.number(tenth.times, 2, 3), (&safe, is_of_own(sheet))));
    }
    let sum = Span::sum(sheet.rows.iter().map(|row| row.likely));
    let draws = seen.speech.count(u32::try_from(DRAWS).unwrap_or(u32::MAX));
    let half = span(sheet.half.unwrap_or(found.range.likely));
    Some(said::drawn((&draws, &span(sum)), &steps::beyond(sheet, seen), [&half, &safe]))
}

/// Whether jobs of the maker say how far off such a figure may be.
fn is_of_own(sheet: &EstimateSheet) -> bool {
    let of_jobs = |row: &Row| if row.from == Basis::Thought { !sheet.history.ratios.is_empty() } else { 0 < row.jobs };
    sheet.rows.iter().any(of_jobs)
}

/// What is logged and what is to come, where that is not what was estimated.
fn begun(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Option<String> {
    let (in_all, left) = sheet.in_all().zip(sheet.to_come)?;
    let span = |span: Span| seen.speech.span(span);
    let [likely, safe] = [left.likely, left.safe].map(span);
    let all = [in_all.likely, in_all.safe].map(span);
    let is_more = sheet.took().is_none() && Span::ZERO < sheet.progress.so_far && in_all != found.range;
    is_more.then(|| said::begun(&span(sheet.progress.so_far), [&likely, &safe], [&all[0], &all[1]]))
}

fn of_whole(sheet: &EstimateSheet, whole: &Whole, seen: Seen<'_>) -> Vec<String> {
    let span = |span: Span| seen.speech.span(span);
    let old = |past: &fivebar_core::sheet::estimate::history::OldPiece| {
        let several = (1 < past.n).then(|| (seen.speech.count(past.n), span(past.first())));
        let several = several.as_ref().map(|(n, first)| (n.as_str(), first.as_str()));
        words::old_piece(&past.name, &span(past.span), several, past.helped)
    };
    let past = whole.past.iter().map(old);
    let n = u32::try_from(whole.past.len()).unwrap_or(u32::MAX);
    let middle = match n {
        0 => Some(words::usual(&sheet.piece.as_ref().map(|piece| words::piece(piece.as_str())).unwrap_or_default(), &span(whole.first))),
        1 => None,
        n => Some(words::middle(&span(whole.first), &seen.speech.count(n))),
    };
    let of = (1 < whole.n).then(|| {
        let times = seen.speech.number(whole.times, 2, 2);
        words::of_several(&seen.speech.count(whole.n), &times, &span(whole.likely))
    });
    let gains = 1 < whole.n || whole.past.iter().any(|past| 1 < past.n);
    past.chain(middle).chain(of).chain(gains.then(|| words::GAIN.to_owned())).listed()
}

fn rest(sheet: &EstimateSheet, seen: Seen<'_>) -> Option<String> {
    let rest = sheet.rows.iter().find(|row| row.is_rest)?;
    let whole = sheet.whole.as_ref()?;
    let is_as_before = whole.past.iter().any(|piece| !piece.operations.is_empty());
    let planned = whole.likely.minus(rest.likely);
    Some(words::rest_of(is_as_before, &seen.speech.span(planned), &seen.speech.span(rest.likely)))
}

/// How the factor comes about; none where nothing was planned for it to put right.
fn of_factor(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Option<String> {
    let OnTop::Factor(factor) = found.on_top else { return None };
    found.thought?;
    let number = |ratio: Decimal| seen.speech.number(ratio, 2, 3);
    let ratios = sheet.history.ratios.iter().filter(|ratio| is_sound(**ratio)).map(|ratio| number(*ratio)).listed();
    let times = number(factor.shown());
    Some(match factor.own().filter(|_| RATIOS_MOST < ratios.len()) {
        Some(own) => said::factor_of_many(&times, ratios.len(), &number(own)),
        None => said::factor(&times, &ratios),
    })
}

/// What is put on top of several together, and what that comes to.
fn on_top(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Option<String> {
    let span = |span: Span| seen.speech.span(span);
    let sums = |of: &dyn Fn(&Row) -> bool| {
        let rows = || sheet.rows.iter().filter(|row| of(row));
        (Span::sum(rows().map(|row| row.before)), Span::sum(rows().map(|row| row.likely)))
    };
    match found.on_top {
        OnTop::Factor(factor) => {
            let (thought, _) = sums(&|row| row.from == Basis::Thought);
            let several = 1 < sheet.rows.iter().filter(|row| row.from == Basis::Thought).count();
            let times = seen.speech.number(factor.shown(), 2, 3);
            several.then(|| words::times_factor(&span(thought), &times, &span(factor.warns(thought))))
        }
        OnTop::Allowance(share) => {
            let (before, after) = sums(&|row| matches!(row.from, Basis::Thought | Basis::Own | Basis::Kind | Basis::Design));
            (Span::ZERO < before).then(|| words::allowance(&steps::percent(share, seen), &span(before), &span(after)))
        }
    }
}
