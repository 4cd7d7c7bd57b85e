//! What plans leave of the pieces of a pile: not cut off yet, and put right with it.

use super::Seen;
use crate::app::App;
use crate::words::en::changed as words;
use fivebar_core::haul::Pile;
use fivebar_core::ledger::decide::{Lying, left_of};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::{Count, Listed, begin_small};

/// Of so many of a pile that the book has on the rack those that are on boards that are not cut yet.
pub fn not_cut(after: &[(Lying, Count)], at: Lying, on_rack: Count) -> Count {
    after.iter().filter(|(of, _)| *of == at).fold(0, |sum: Count, (_, n)| sum.saturating_add(*n)).min(on_rack)
}

/// Of a pile on the rack what plans in use leave of their boards and is not cut off yet.
pub fn uncut(after: &[(Lying, Count)], at: Lying, on_rack: Count, seen: Seen<'_>) -> Option<String> {
    let n = not_cut(after, at, on_rack);
    let all = n == on_rack;
    (0 < n).then(|| words::after_the_saw((!all).then(|| seen.speech.count(n)).as_deref()))
}

/// Piles that are left of a pile are put right with it; their wood, and their sides as the saw left them.
pub fn goes_along(at: Lying, app: &App) -> Option<String> {
    let book = &app.shelf().book;
    let haul = fold::haul(book, at.haul)?;
    let of = haul.pile(at.pile)?;
    let same = |pile: &&Pile| (of.thickness.is_some() && pile.thickness == of.thickness, of.width.is_some() && pile.width == of.width);
    let left = left_of(book, &haul, at.pile);
    let named = |pile: &&Pile| begin_small(&pile.name.clone().unwrap_or_else(|| pile.label.clone()));
    let goes = left.iter().filter(|pile| same(pile) != (false, false) || pile.wood == of.wood).map(named).listed();
    let (thick, wide) = (left.iter().any(|pile| same(pile).0), left.iter().any(|pile| same(pile).1));
    (!goes.is_empty()).then(|| words::goes_along(&goes, (thick, wide)))
}
