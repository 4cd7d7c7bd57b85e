//! The estimate of a job that has ended: what it took, beside what was thought and estimated. Nothing of it is to come.

use super::super::super::Seen;
use super::{drawn, kept};
use crate::app::Msg;
use crate::view::{El, el};
use crate::words::en::estimate as words;
use fivebar_core::quantity::Span;
use fivebar_core::sheet::estimate::EstimateSheet;

/// What it took on the scale of what was thought and estimated.
pub fn card(sheet: &EstimateSheet, seen: Seen<'_>) -> El<Msg> {
    let progress = &sheet.progress;
    let known = progress.thought.or(progress.estimated).is_some_and(|span| Span::ZERO < span);
    let [thought, estimated] = [progress.thought, progress.estimated].map(|span| span.map(|span| seen.speech.span(span)));
    let beside = known.then(|| el("p", "t14").text(words::took_beside(thought.as_deref(), estimated.as_deref())));
    el("section", "card list estimate")
        .kid(el("p", "row").kid(el("span", "t22 w8").text(words::took(&seen.speech.span(progress.so_far)))))
        .kids(known.then(|| drawn(progress, seen)).flatten())
        .kids(beside)
        .kids(kept(sheet, seen))
}
