//! Piles of one wood and one size are one to a field, which takes of one pile alone: the first of them counts for all, and what the plan takes
//! of it is handed back to them in their order. Ours.

use super::Mark;
use super::draft::{Draft, Sawn};
use super::ready::{Ready, Source};
use crate::plan::field::problem::Problem;
use crate::quantity::Listed;
use crate::refusal::{Answer, Refusal};

/// Whether the pieces of two piles may lie in one field as of one; not where a wood is not known.
fn is_alike(one: &Source, other: &Source) -> bool {
    let of = |source: &Source| (source.size, source.ripped, source.tiles);
    one.stack.wood.is_some() && one.stack.wood == other.stack.wood && of(one) == of(other)
}

/// So many pieces of all piles alike, where this is the first of them; else nothing, since they count with the first.
pub(super) fn count(sources: &[Source], place: usize) -> i64 {
    let Some(source) = sources.get(place) else { return 0 };
    let is_first = !sources.iter().take(place).any(|before| is_alike(before, source));
    if is_first { all(sources, source) } else { 0 }
}

/// The pile and those alike, in their order.
pub(super) fn alike<'a>(sources: &'a [Source], of: &'a Source) -> impl Iterator<Item = &'a Source> {
    sources.iter().filter(move |other| *other == of || is_alike(of, other))
}

fn all(sources: &[Source], of: &Source) -> i64 {
    alike(sources, of).fold(0, |sum: i64, other| sum.saturating_add(other.count))
}

/// A pile with as many pieces as all those alike have together.
pub(in crate::sheet) fn with_alike(sources: &[Source], source: &Source) -> Source {
    Source { count: all(sources, source), ..source.clone() }
}

/// The piles that a pile of the problem stands for, by their places: those behind it that are alike and have no piece of their own there. A plan
/// of before piles were one stands for itself.
pub(super) fn places(ready: &Ready, problem: &Problem, first: usize) -> Vec<usize> {
    let Some(source) = ready.sources.get(first) else { return vec![] };
    let none = |place: usize| problem.piles.get(place).is_some_and(|pile| pile.count == 0);
    let behind = ready.sources.iter().enumerate().skip(first.saturating_add(1));
    let others = behind.filter(|(place, other)| none(*place) && is_alike(source, other)).map(|(place, _)| place);
    std::iter::once(first).chain(others).listed()
}

/// So many pieces of all of them.
pub(super) fn there(ready: &Ready, problem: &Problem, first: usize) -> i64 {
    let of = |place: &usize| ready.sources.get(*place).map_or(0, |source| source.count);
    places(ready, problem, first).iter().map(of).fold(0, i64::saturating_add)
}

/// What is sawn of the first pile of each kind, and what is drawn of it, by the piles it comes from.
///
/// # Errors
/// [`Refusal::PlanBroken`] where it is more than all of them have.
pub(super) fn handed_back(ready: &Ready, problem: &Problem, draft: &mut Draft) -> Answer<()> {
    for first in 0..ready.sources.len() {
        let places = places(ready, problem, first);
        if 1 < places.len() {
            of_first(ready, &places, draft)?;
        }
    }
    Ok(())
}

fn of_first(ready: &Ready, places: &[usize], draft: &mut Draft) -> Answer<()> {
    let first = places.first().copied().unwrap_or(0);
    let left = |place: &usize| (*place, ready.sources.get(*place).map_or(0, |source| source.count));
    let mut left = places.iter().map(left).listed();
    let mut sawn: Vec<Sawn> = vec![];
    for one in std::mem::take(&mut draft.sawn) {
        if one.source != first {
            sawn.push(one);
            continue;
        }
        let mut times = one.times;
        for (place, left) in &mut left {
            let n = times.min(*left);
            (times, *left) = (times.saturating_sub(n), left.saturating_sub(n));
            if 0 < n {
                sawn.push(Sawn { source: *place, times: n, ..one.clone() });
            }
        }
        (times == 0).then_some(()).ok_or(Refusal::PlanBroken)?;
    }
    let whole = |one: &Sawn| i64::try_from(one.pieces.len()).unwrap_or(0).saturating_mul(one.times);
    let mut letters =
        sawn.iter().filter(|one| one.mark == Mark::Letter && places.contains(&one.source)).map(|one| (one.source, whole(one)));
    let mut lying = letters.next();
    for rect in draft.rects.iter_mut().filter(|rect| rect.source == first) {
        while lying.is_some_and(|(_, n)| n == 0) {
            lying = letters.next();
        }
        let numbered = sawn.iter().find(|one| one.mark == rect.mark && rect.mark != Mark::Letter);
        match (numbered, &mut lying) {
            (Some(one), _) => rect.source = one.source,
            (None, Some((place, n))) => (rect.source, *n) = (*place, n.saturating_sub(1)),
            (None, None) => (),
        }
    }
    draft.sawn = sawn;
    Ok(())
}
