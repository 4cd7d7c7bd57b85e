//! Old jobs that are half typed: they lie with what is half typed of other forms, so that they outlive a reload, and are in no book.

use super::super::App;
use super::super::order::Order;
use super::draft::{Draft, What};
use super::estimate::{FIGURES, ROWS};
use fivebar_core::quantity::Listed;

/// Old jobs are being told.
pub fn is_telling(app: &App) -> bool {
    app.jobs.draft.as_ref().is_some_and(|draft| draft.what == What::OldJobs)
}

/// After every tap: what is typed by now is kept; once the form was saved or left, nothing is.
pub fn keep(app: &mut App, was_telling: bool) {
    let telling = app.jobs.draft.as_ref().filter(|draft| draft.what == What::OldJobs);
    let now = match telling {
        Some(draft) => written(draft),
        None if was_telling => String::new(),
        None => return,
    };
    if now != app.jobs.half {
        app.jobs.half.clone_from(&now);
        app.orders.push(Order::KeepOldJobs(now));
    }
}

/// A line a row: its name and its figures. Nothing where nothing is typed.
fn written(draft: &Draft) -> String {
    let row = |nth: usize| {
        let first = nth.saturating_mul(FIGURES);
        let name = draft.words.get(nth).map(|name| name.replace(['\t', '\n'], " ")).unwrap_or_default();
        let figures = (0..FIGURES).map(|figure| draft.form.text(first.saturating_add(figure)).to_owned());
        std::iter::once(name).chain(figures).collect::<Vec<_>>().join("\t")
    };
    let rows = (0..ROWS).map(row).listed();
    let is_blank = rows.iter().all(|row| row.trim().is_empty());
    if is_blank { String::new() } else { rows.join("\n") }
}

/// The form with what was kept of it.
pub fn filled(draft: Draft, kept: &str) -> Draft {
    let Draft { mut form, mut words, .. } = draft.clone();
    for (nth, row) in kept.lines().take(ROWS).enumerate() {
        let first = nth.saturating_mul(FIGURES);
        let mut texts = row.split('\t');
        words.iter_mut().skip(nth).take(1).zip(&mut texts).for_each(|(word, text)| text.clone_into(word));
        texts.take(FIGURES).enumerate().for_each(|(figure, text)| form.put(first.saturating_add(figure), text.to_owned()));
    }
    Draft { form, words, ..draft }
}
