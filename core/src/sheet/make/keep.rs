//! A plan as it is kept and used: what was asked, of which pieces, and what came of it.

use super::shown::Shown;
use super::{Given, Source, sources};
use crate::ledger::fold::KeptPlan;
use crate::ledger::kind::plan::{PlanKept, PlanPile, Shape};
use crate::plan::{Answered, Asked, post};
use crate::quantity::Count;
use crate::sheet::Shop;

/// The facts of a plan.
pub fn kept(given: &Given, answered: &Answered, shown: &Shown) -> PlanKept {
    let piles = given.from.iter().enumerate().map(|(place, from)| {
        let used = shown.used.iter().filter(|used| used.from == place).map(|used| used.pieces).fold(0, Count::saturating_add);
        let (pile, in_job) = (&from.source.pile, from.source.in_job);
        PlanPile {
            haul: pile.haul,
            pile: pile.pile,
            n: from.source.n,
            rips: Some(from.rips).filter(|rips| 1 < *rips),
            used: Some(used).filter(|used| 0 < *used),
            in_job: in_job.then_some(true),
        }
    });
    let shape = match given.asked {
        Asked::Rows(_) => Shape::Rows,
        Asked::Parts(_) => Shape::Parts,
        Asked::Sticks(_) => Shape::Sticks,
        Asked::Field(_) => Shape::Field,
    };
    PlanKept {
        job: given.job,
        shape,
        unit: given.unit,
        piles: piles.collect(),
        problem: post::write(&post::put(&given.asked)),
        answer: post::write(&post::put_answer(answered)),
        width: Some(given.width).filter(|width| 0 < width.as_nm()),
        thickness: given.thickness,
    }
}

/// Whether the pieces a plan uses are still there to be taken: the rack may have changed since.
pub fn is_possible(shop: &Shop, given: &Given, shown: &Shown) -> bool {
    let Ok(there) = sources(shop, given.job) else { return false };
    let enough = |source: &Source, n: Count| there.iter().any(|now| now.which() == source.which() && n <= now.n);
    let uses = shown.used.iter().filter(|used| 0 < used.pieces);
    uses.into_iter().all(|used| given.from.get(used.from).is_some_and(|from| enough(&from.source, used.pieces)))
}

/// The last plan whose wood was taken for the job.
pub fn last_used(plans: &[KeptPlan]) -> Option<&KeptPlan> {
    plans.iter().rev().find(|plan| plan.used)
}
