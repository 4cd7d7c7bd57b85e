//! Where minutes come from, by one reckoning on every page: in whole minutes that add up to the whole that stands there.

use super::Seen;
use crate::words::en::job as words;
use fivebar_core::bench::Shares;
use fivebar_core::quantity::{Listed, Span};
use fivebar_core::sheet::job::JobSheet;

/// "measured 13 h 42, corrected 47 min, recalled 1 min", and with them what stands beside them; nothing of nothing.
pub fn sources(own: Shares, beside: &[(&'static str, Span)], seen: Seen<'_>) -> Option<String> {
    let own = [(words::MEASURED, own.measured), (words::CORRECTED, own.corrected), (words::RECALLED, own.recalled)];
    let all = own.iter().chain(beside).copied().listed();
    let minutes = Span::in_minutes(&all.iter().map(|(_, span)| *span).listed());
    let known =
        all.iter().zip(minutes).filter(|(_, span)| Span::ZERO < *span).map(|((word, _), span)| (*word, seen.speech.span(span))).listed();
    (!known.is_empty()).then(|| words::provenance(&known))
}

/// What stands beside, by its own name: by itself as far as it was measured, with what it rests on else.
pub fn beside(names: [&'static str; 3], of: Shares) -> [(&'static str, Span); 3] {
    [(names[0], of.measured), (names[1], of.corrected), (names[2], of.recalled)]
}

/// The same of the hours of a job, as they stand on its page, in its hours and when it is looked back on; what is to settle was measured by a
/// clock nobody has answered for, and stands apart.
pub fn of_job(sheet: &JobSheet, seen: Seen<'_>) -> Option<String> {
    let (hours, open) = (&sheet.account.hours, sheet.account.not_counted());
    // Where the share of its hauls is not known, what was logged is the whole that stands there.
    let hauls = hours.haul.filter(|_| hours.total.is_some()).map(|_| hours.haul_sources).unwrap_or_default();
    let any = Span::ZERO < hours.logged.own.total();
    let [measured, corrected, recalled] = beside(words::FROM_HAULS, hauls);
    sources(hours.stands.own, &[measured, corrected, recalled, (words::STILL_TO_SETTLE, open)], seen).filter(|_| any)
}
