//! How an estimate comes about, each step in figures, so that a maker can work it back.

use super::super::super::Seen;
use crate::app::Msg;
use crate::view::{El, el};
use crate::words::en::estimate as words;
use fivebar_core::bench::estimate::{Basis, Estimate, OnTop};
use fivebar_core::quantity::{Decimal, Listed, Span};
use fivebar_core::sheet::estimate::parts::Whole;
use fivebar_core::sheet::estimate::{Covers, EstimateSheet, Row};

/// Ratios that are shown; of more the factor alone is.
const RATIOS_MOST: usize = 6;

/// The steps in their order.
pub fn how(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Vec<El<Msg>> {
    let uses_whole = sheet.covers == Covers::Planned || sheet.rows.iter().any(|row| matches!(row.from, Basis::Pieces | Basis::Piece));
    let of_whole = sheet.whole.iter().filter(|_| uses_whole).flat_map(|whole| of_whole(sheet, whole, seen));
    let steps: Vec<String> = on_top(sheet, found, seen).into_iter().chain(of_whole).chain(rest(sheet, seen)).listed();
    let sum = Span::sum(sheet.rows.iter().map(|row| row.likely));
    let span = |span: Span| seen.speech.span(span);
    let together = (sum < found.range.likely && 1 < sheet.rows.len()).then(|| words::together(&span(sum), &span(found.range.likely)));
    let steps: Vec<String> = steps.into_iter().chain(together).listed();
    if steps.is_empty() {
        return vec![];
    }
    let lines = steps.into_iter().map(|step| el("p", "t14").text(step));
    vec![el("h2", "").text(words::HOW), el("section", "card list").kids(lines)]
}

/// What the estimate holds, where it is not all of the job.
pub fn covers(sheet: &EstimateSheet, seen: Seen<'_>) -> Option<String> {
    let alone = sheet.covers == Covers::Planned;
    alone.then(|| match &sheet.whole {
        Some(whole) => words::beside_whole(&seen.speech.span(whole.likely)),
        None => words::PLANNED_ALONE.to_owned(),
    })
}

fn of_whole(sheet: &EstimateSheet, whole: &Whole, seen: Seen<'_>) -> Vec<String> {
    let span = |span: Span| seen.speech.span(span);
    let old = |past: &fivebar_core::sheet::estimate::history::OldPiece| {
        let several = (1 < past.n).then(|| (seen.speech.count(past.n), span(past.first())));
        words::old_piece(&past.name, &span(past.span), several.as_ref().map(|(n, first)| (n.as_str(), first.as_str())))
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
    let planned = Span::sum(sheet.rows.iter().filter(|row| !row.is_rest).map(|row| row.likely));
    Some(words::rest_of(&seen.speech.span(planned), &seen.speech.span(rest.likely)))
}

/// What is put on top, on what, and what that comes to.
fn on_top(sheet: &EstimateSheet, found: &Estimate, seen: Seen<'_>) -> Vec<String> {
    let span = |span: Span| seen.speech.span(span);
    let sums = |of: &dyn Fn(&Row) -> bool| {
        let rows = || sheet.rows.iter().filter(|row| of(row));
        (Span::sum(rows().map(|row| row.before)), Span::sum(rows().map(|row| row.likely)))
    };
    match found.on_top {
        OnTop::Factor(_) if found.thought.is_none() => vec![],
        OnTop::Factor(factor) => {
            let (thought, _) = sums(&|row| row.from == Basis::Thought);
            let likely = factor.warns(thought);
            let number = |ratio: Decimal| seen.speech.number(ratio, 2, 3);
            let ratios = &sheet.history.ratios;
            let few = ratios.len() <= RATIOS_MOST;
            let of = few.then(|| words::factor_of(&ratios.iter().map(|ratio| seen.speech.number(*ratio, 2, 2)).listed()));
            let jobs = u32::try_from(factor.jobs).unwrap_or(u32::MAX);
            let said = words::factor(&number(factor.shown()), factor.jobs, &seen.speech.count(jobs));
            [Some(said), Some(words::times_factor(&span(thought), &number(factor.shown()), &span(likely))), of]
                .into_iter()
                .flatten()
                .listed()
        }
        OnTop::Allowance(share) => {
            let (before, after) = sums(&|row| matches!(row.from, Basis::Thought | Basis::Own | Basis::Kind | Basis::Design));
            let percent = share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default();
            let said = || words::allowance(&seen.speech.number(percent, 0, 1), &span(before), &span(after));
            (Span::ZERO < before).then(said).into_iter().listed()
        }
    }
}
