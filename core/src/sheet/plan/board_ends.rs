//! Shorter tiles out of what is over of boards behind the whole ones: so a field may have more tiles than come whole out of its boards. Ours.
//!
//! A planner counts in tiles. How many it may count on is found here: the nearest field of more than come whole is laid, and kept where all of it
//! comes out of the boards; where not, one of fewer is.

use super::field::draft;
use super::pooled;
use super::ready::{Ready, ready};
use super::stock::Stack;
use super::{PlanSheet, Unlock};
use crate::plan::field::plan::Plan;
use crate::plan::field::problem::{Pattern, Problem};
use crate::plan::field::{SENSES, solve};
use crate::plan::patience::{Patience, Progress};
use crate::plan::{Answered, Asked, Made, Planned, better};
use crate::quantity::{Length, Listed};
use std::collections::BTreeMap;

/// Steps for one field, and how many are laid: some milliseconds each. A field that takes longer is left as it is.
const STEPS: u64 = 300;
const TRIES: usize = 24;

/// The same with as many tiles as the nearest field needs that comes out of the boards with its shorter ones cut of their ends.
pub(super) fn with_ends(ready: Ready) -> Ready {
    let Asked::Field(base) = &ready.asked else { return ready };
    let cut = |pattern: &Pattern| matches!(pattern, Pattern::Running | Pattern::Herringbone);
    if !ready.is_of_tiles() || !base.patterns.iter().any(cut) {
        return ready;
    }
    let Some(raised) = laid(base).filter(|whole| whole.worth.get(1) != Some(&0)).and_then(|whole| raised(&ready, base, &whole)) else {
        return ready;
    };
    Ready { asked: Asked::Field(raised), ..ready }
}

/// The field of a problem, where nothing is left untried.
fn laid(problem: &Problem) -> Option<Planned<Plan>> {
    let mut goes_on = |_: Progress<'_>| true;
    Some(solve(problem, &mut Patience::new(Some(STEPS), &mut goes_on), 0)).filter(Planned::is_proven)
}

fn raised(ready: &Ready, base: &Problem, whole: &Planned<Plan>) -> Option<Problem> {
    let mut problem = Problem { piles: base.piles.clone(), ..base.clone() };
    for (place, (pile, source)) in problem.piles.iter_mut().zip(&ready.sources).enumerate() {
        let length = |length: Length| length.as_nm().checked_div(ready.unit).unwrap_or(0);
        let each = pile.length.saturating_sub(base.allow.length).saturating_add(base.kerf);
        let over = length(source.size[2]).saturating_sub(base.allow.length).saturating_add(base.kerf);
        let over = over.saturating_sub(each.saturating_mul(source.tiles)).max(0).saturating_mul(pooled::count(&ready.sources, place));
        // Of first fit all tiles but one are more than half used.
        let more = over.saturating_mul(2).checked_div(each).unwrap_or(0).min(crate::plan::limits::PIECES_MOST);
        pile.count = pile.count.saturating_add(more).min(crate::plan::limits::PIECES_MOST.max(pile.count));
    }
    for _ in 0..TRIES {
        let found = laid(&problem)?;
        if !is_nearer(&found, whole) {
            return None;
        }
        let taken = found.plan.field.as_ref()?.pieces.clone();
        let Planned { plan, worth, bound } = found;
        let found = Answered { plan: Made::Field(plan.clone()), worth, bound };
        if draft(ready, (&problem, &found), &plan).is_ok() {
            // What it takes none of was not cut: of that no more is counted on than comes whole.
            problem.piles.clone_from(&base.piles);
            taken.iter().for_each(|taken| set(&mut problem, base, taken.pile, taken.taken));
            return Some(problem);
        }
        taken.iter().for_each(|taken| set(&mut problem, base, taken.pile, taken.taken.saturating_sub(1)));
    }
    None
}

/// So many tiles of a pile, and no fewer than come whole.
fn set(problem: &mut Problem, base: &Problem, pile: usize, n: i64) {
    if let (Some(pile), Some(whole)) = (problem.piles.get_mut(pile), base.piles.get(pile)) {
        pile.count = n.max(whole.count);
    }
}

fn is_nearer(one: &Planned<Plan>, other: &Planned<Plan>) -> bool {
    let near = |it: &Planned<Plan>| it.worth.iter().take(2).copied().listed();
    better(&SENSES, &near(one), &near(other))
}

/// Of tiles of a length: only boards with which a field is laid that is nearer than this one, and that many.
pub(super) fn proven(ready: &Ready, sheet: &PlanSheet, all: Vec<Unlock>) -> Vec<Unlock> {
    let more: BTreeMap<usize, i64> =
        all.iter().filter_map(|it| if let Unlock::Source { source, n } = it { Some((*source, *n)) } else { None }).collect();
    if !ready.is_of_tiles() || more.is_empty() {
        return all;
    }
    if is_nearer_with(ready, sheet, &more) == Some(true) { all } else { vec![] }
}

fn is_nearer_with(made: &Ready, sheet: &PlanSheet, more: &BTreeMap<usize, i64>) -> Option<bool> {
    let stack = |(place, source): (usize, &super::ready::Source)| {
        let n = source.count.checked_add(more.get(&place).copied().unwrap_or(0))?;
        Some(Stack { free: u32::try_from(n).ok()?, ..source.stack.clone() })
    };
    let stock = made.sources.iter().enumerate().map(stack).collect::<Option<Vec<_>>>()?;
    let with = ready(made.wish.clone(), &stock, made.figures.clone()).ok()?;
    let Asked::Field(problem) = &with.asked else { return None };
    let off = |sides: [Length; 3]| {
        let wanted = problem.targets.iter().zip(sides).filter_map(|(target, side)| Some((target.as_ref()?.size, side)));
        wanted.fold(0_i128, |sum, (wanted, side)| {
            let wanted = i128::from(wanted).saturating_mul(i128::from(with.unit));
            sum.saturating_add(wanted.saturating_sub(side.as_nm().into()).saturating_abs())
        })
    };
    let now = off(sheet.laid?.sides);
    let then = laid(problem)?.worth.get(1)?.saturating_mul(i128::from(with.unit));
    Some(then < now)
}
