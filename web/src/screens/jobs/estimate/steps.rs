//! The line of one operation in how an estimate comes about: where its figure is from, what went in, and what it comes to.

use super::super::super::Seen;
use super::basis;
use crate::words::en::{estimate as old, how as words, jobs};
use fivebar_core::bench::estimate::{Basis, Left, OnTop};
use fivebar_core::quantity::{Decimal, Listed, Span};
use fivebar_core::sheet::estimate::counted::Counted;
use fivebar_core::sheet::estimate::steps::{Learnt, Step, Took, step};
use fivebar_core::sheet::estimate::{EstimateSheet, Row};

/// Jobs that are shown one by one; of more the least and the most.
pub const SHOWN_MOST: usize = 6;

/// The line of an operation; none for the whole piece and its rest.
pub fn line(sheet: &EstimateSheet, row: &Row, on_top: OnTop, seen: Seen<'_>) -> Option<String> {
    let step = step(sheet, row)?;
    let mut said = match &step {
        Step::Thought => vec![planned(row, on_top, seen)],
        Step::Learnt(learnt) => of_history(row, learnt, seen),
        Step::Share { of, share, among } => vec![shared(row, (*of, *share, *among), seen)],
        Step::Guess { one, times } => vec![guessed(row, (*one, *times), seen)],
    };
    if let (OnTop::Allowance(share), Step::Learnt(_)) = (on_top, &step) {
        said.push(words::and_rework(&percent(share, seen), &seen.speech.span(row.likely)));
    }
    said.extend(left(sheet, row, seen));
    Some(words::line(&jobs::upper_first(row.op.as_deref()?), &said))
}

/// The line of an operation that nobody planned, with counted pieces that are left.
pub fn counted(one: &Counted, seen: Seen<'_>) -> String {
    words::line(&jobs::upper_first(&one.op), &[words::by_pieces(&seen.speech.span(one.to_come()))])
}

/// A share in per cent.
pub fn percent(share: Decimal, seen: Seen<'_>) -> String {
    seen.speech.number(share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default(), 0, 1)
}

fn planned(row: &Row, on_top: OnTop, seen: Seen<'_>) -> String {
    let [before, likely] = [row.before, row.likely].map(|span| seen.speech.span(span));
    match on_top {
        OnTop::Factor(factor) => words::planned(&before, &seen.speech.number(factor.shown(), 2, 3), &likely),
        OnTop::Allowance(share) => words::with_rework(&before, &percent(share, seen), &likely),
    }
}

fn of_history(row: &Row, learnt: &Learnt, seen: Seen<'_>) -> Vec<String> {
    let span = |span: Span| seen.speech.span(span);
    let thought = row.thought.filter(|thought| Span::ZERO < *thought).map(span);
    let by = words::by(&basis(row, seen), thought.as_deref());
    let n = learnt.jobs.len();
    let said = if n <= SHOWN_MOST {
        let jobs = learnt.jobs.iter().map(|one| took(one, row, seen)).listed();
        let middle = (1 < n).then(|| words::middle(n, &span(row.before)));
        std::iter::once(format!("{by}: {}.", jobs.join("; "))).chain(middle).listed()
    } else {
        let says = || learnt.jobs.iter().map(|one| one.says);
        let ends = [says().min(), says().max()].map(|end| span(end.unwrap_or_default()));
        let many = words::middle_of_many((n, &seen.speech.count(row.n)), [&ends[0], &ends[1]], &span(row.before));
        vec![format!("{by}: {many}")]
    };
    let doubling = learnt.doubling.filter(|_| learnt.jobs.iter().any(|one| one.times != one.had));
    said.into_iter().chain(doubling.map(|times| words::doubling(&seen.speech.number(times, 2, 2)))).listed()
}

fn took(one: &Took, row: &Row, seen: Seen<'_>) -> String {
    let number = |figure: Decimal| seen.speech.number(figure, 2, 2);
    let several = (1 < one.n).then(|| seen.speech.count(one.n));
    let took = words::took(&one.job, &seen.speech.span(one.took), several.as_deref(), one.helped);
    let coats = one.coats.map(|[had, says]| {
        let brought = (had != says).then(|| (seen.speech.count(says), seen.speech.span(one.time)));
        words::in_coats(&seen.speech.count(had), brought.as_ref().map(|(n, span)| (n.as_str(), span.as_str())))
    });
    let took = format!("{took}{}", coats.unwrap_or_default());
    let (n, says) = (seen.speech.count(row.n.max(1)), seen.speech.span(one.says));
    let brought = match one.apart {
        _ if one.says == one.time => String::new(),
        Some([setup, first]) => words::brought_apart(&n, [&number(setup), &number(first), &number(one.times)], &says),
        None => words::brought_to(&n, [one.times, one.had].map(number).each_ref().map(String::as_str), &says),
    };
    format!("{took}{brought}")
}

fn shared(row: &Row, (of, share, among): (Span, Decimal, u32), seen: Seen<'_>) -> String {
    let among = (1 < among).then(|| seen.speech.count(among));
    let (of, share) = (seen.speech.span(of), percent(share, seen));
    words::shared((&of, &share, jobs::stage(row.stage)), among.as_deref(), &seen.speech.span(row.likely))
}

fn guessed(row: &Row, (one, times): (Span, Decimal), seen: Seen<'_>) -> String {
    let several = (1 < row.n).then(|| (seen.speech.count(row.n), seen.speech.number(times, 2, 2)));
    let several = several.as_ref().map(|(n, times)| (n.as_str(), times.as_str()));
    words::guessed(&seen.speech.span(one), several, &seen.speech.span(row.likely))
}

/// What is still to come of it, once anything was logged; of a drive always, for it is not what it counts in all.
fn left(sheet: &EstimateSheet, row: &Row, seen: Seen<'_>) -> Option<String> {
    let is_as_planned = matches!(row.left, Left::AsPlanned { .. });
    sheet.to_come.filter(|_| is_as_planned || Span::ZERO < sheet.progress.so_far)?;
    let left = seen.speech.span(row.to_come());
    match row.left {
        Left::AsPlanned { gone, .. } => Some(words::as_planned((Span::ZERO < gone).then(|| seen.speech.span(gone)).as_deref(), &left)),
        Left::Nothing(over) => Some(words::nothing_left(over)),
        Left::Goes(_) => Some(words::by_pieces(&left)),
        Left::Longer { gone, .. } => Some(words::longer(&seen.speech.span(gone), &left)),
        Left::Less(gone) if Span::ZERO < gone => Some(words::less(&seen.speech.span(gone), &left)),
        Left::Less(_) => None,
    }
}

/// What one time in ten takes longer, for the safe figure.
pub fn beyond(sheet: &EstimateSheet, seen: Seen<'_>) -> Vec<String> {
    let tenths = fivebar_core::sheet::estimate::steps::tenths(sheet);
    let name = |tenth: &fivebar_core::sheet::estimate::steps::Tenth| match (&tenth.of, tenth.is_whole) {
        (Some(op), _) => Some(jobs::upper_first(op)),
        (None, true) => Some(old::REST.to_owned()),
        (None, false) => None,
    };
    let said = tenths.iter().enumerate();
    said.map(|(nth, tenth)| words::beyond(name(tenth).as_deref(), &seen.speech.number(tenth.times, 2, 2), nth == 0)).listed()
}

/// Whether any operation is brought from so many pieces to so many by what is usual.
pub fn gains(sheet: &EstimateSheet) -> bool {
    sheet.rows.iter().any(|row| match step(sheet, row) {
        Some(Step::Learnt(Learnt { jobs, doubling: None })) => jobs.iter().any(|one| one.says != one.time),
        Some(Step::Guess { .. }) => 1 < row.n,
        _ => false,
    })
}

/// Of several that are drawn together, each has chances of its own; of one it is plain.
pub fn is_one(sheet: &EstimateSheet) -> bool {
    let planned = sheet.rows.iter().filter(|row| row.from == Basis::Thought).count();
    sheet.rows.len().saturating_sub(planned.saturating_sub(1)) == 1
}
