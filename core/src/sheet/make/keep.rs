//! A plan as it is kept and used: what was asked, of which pieces, and what came of it.

use super::buy::to_buy;
use super::{Ask, Boards, Field, Given, Source, Top, Unfit, What, figures, fitting, room, sources, stack, unfitting, wish};
use crate::ledger::decide::{LeftOver, Lying};
use crate::ledger::fold::{self, KeptPlan};
use crate::ledger::kind::plan::{PlanKept, PlanPile};
use crate::plan::field::problem::Mix;
use crate::plan::{Answered, Asked, post};
use crate::quantity::{Count, Id, Length};
use crate::sheet::Shop;
use crate::sheet::plan::PlanSheet;
use crate::sheet::plan::ready::ready;
use crate::sheet::plan::wish::Wish;
use crate::sheet::rack::rack_pile;

/// The facts of a plan.
pub fn kept(given: &Given, answered: &Answered, sheet: &PlanSheet) -> PlanKept {
    let piles = given.sources.iter().enumerate().map(|(place, source)| {
        let used = used_of(sheet, place);
        let ripped = given.ready.sources.get(place).and_then(|source| Count::try_from(source.ripped).ok());
        PlanPile {
            haul: source.pile.haul,
            pile: source.pile.pile,
            n: source.n,
            rips: ripped.filter(|rips| 1 < *rips),
            used: Some(used).filter(|used| 0 < *used),
            in_job: source.in_job.then_some(true),
        }
    });
    let (width, thickness) = match &given.ready.wish {
        Wish::Panel(panel) => (panel.width, Some(panel.thickness)),
        _ => (None, None),
    };
    PlanKept {
        job: given.ask.job,
        shape: given.ask.what.shape(),
        unit: Length::nm(given.ready.unit).unwrap_or_default(),
        piles: piles.collect(),
        problem: post::write(&post::put(&given.ready.asked)),
        answer: post::write(&post::put_answer(answered)),
        width,
        thickness,
    }
}

/// What goes back to the rack, by pile and size: remainders, and strips that were ripped and not used, if they are long enough to keep.
/// `name` says what a new pile of them is called.
pub fn left_over(given: &Given, sheet: &PlanSheet, name: &dyn Fn(&Source) -> String) -> Vec<LeftOver> {
    let mut all: Vec<LeftOver> = vec![];
    for used in &sheet.used {
        let Some((from, ready)) = given.sources.get(used.source).zip(given.ready.sources.get(used.source)) else { continue };
        let [thickness, width, length] = ready.size;
        let strips = Some(used.left_strips).filter(|n| 0 < *n).map(|n| (length, n));
        for (length, n) in used.remainders.iter().map(|rest| (*rest, 1)).chain(strips) {
            let n = Count::try_from(n).unwrap_or(0);
            let (haul, of, size) = (from.pile.haul, from.pile.pile, [thickness, width, length]);
            match all.iter_mut().find(|one| (one.of, one.size) == (of, size)) {
                Some(one) => one.n = one.n.saturating_add(n),
                None => all.push(LeftOver { haul, of, n, size, name: name(from) }),
            }
        }
    }
    all
}

/// Pieces a plan uses of a pile, by its place.
fn used_of(sheet: &PlanSheet, place: usize) -> Count {
    sheet.used.iter().filter(|used| used.source == place).fold(0, |sum: Count, used| sum.saturating_add(used.pieces))
}

/// Whether the pieces a plan uses are still there to be taken, of the sizes it was made for: the rack may have changed since.
pub fn is_possible(shop: &Shop, given: &Given, sheet: &PlanSheet) -> bool {
    let Ok(there) = sources(shop, given.ask.job) else { return false };
    let lying = given.sources.iter().enumerate().filter(|(_, source)| source.bought.is_none());
    let mut uses = lying.map(|(place, source)| (source, used_of(sheet, place)));
    let is_there =
        |source: &Source, n: Count| there.iter().any(|now| (now.which(), now.sides()) == (source.which(), source.sides()) && n <= now.n);
    uses.all(|(source, n)| n == 0 || is_there(source, n))
}

/// The last plan whose wood was taken for the job.
pub fn last_used(plans: &[KeptPlan]) -> Option<&KeptPlan> {
    plans.iter().rev().find(|plan| plan.used)
}

/// What was asked of a plan: of the pieces that fit, those it was not made from are left out.
pub fn asked_again(shop: &Shop, kept: &KeptPlan, bought: &[Boards]) -> Option<Ask> {
    let (asked, _) = kept.told()?;
    let mut ask = Ask { job: kept.plan.job, what: what(&asked, &kept.plan)?, turned: vec![], bought: bought.to_vec() };
    let is_in = |source: &Source| {
        let (Lying { haul, pile }, in_job) = source.which();
        kept.plan.piles.iter().any(|it| (it.haul, it.pile, it.in_job == Some(true)) == (haul, pile, in_job))
    };
    let all = fitting(shop, &ask).ok()?;
    let turned = all.iter().filter(|(source, why)| why.is_none() && source.bought.is_none() && is_in(source) == source.in_job);
    ask.turned = turned.map(|(source, _)| source.which()).collect();
    Some(ask)
}

/// A plan with what it is about, as it is shown; nothing where its piles are no more what they were.
pub fn again(shop: &Shop, kept: &KeptPlan, bought: &[Boards]) -> Option<(Given, Answered)> {
    let (asked, answered) = kept.told()?;
    let job = shop.job(kept.plan.job).ok()?;
    let ask = asked_again(shop, kept, bought)?;
    let boards = to_buy(bought, job.units);
    let lying = |pile: &PlanPile| boards.iter().find(|it| it.pile.pile == pile.pile).cloned().or_else(|| source(shop, pile, job.id));
    let sources: Vec<Source> = kept.plan.piles.iter().map(lying).collect::<Option<_>>()?;
    let figures = figures(shop, job.units).ok()?;
    let wish = wish(&ask, &job, &figures, &sources).ok()?;
    let stock: Vec<_> = sources.iter().map(|source| stack(shop, source)).collect();
    let mut ready = ready(wish, &stock, figures).ok()?;
    if ready.sources.len() != sources.len() {
        return None;
    }
    let counts = counts(&asked);
    for ((source, pile), count) in ready.sources.iter_mut().zip(&kept.plan.piles).zip(counts) {
        (source.ripped, source.count) = (i64::from(pile.rips.unwrap_or(1)), count);
    }
    (ready.asked, ready.unit) = (asked, kept.plan.unit.as_nm());
    let left_out = still_out(shop, &ask, &sources);
    Some((Given { ask, ready, sources, left_out, room: room(shop, &job).ok()?, units: job.units }, answered))
}

/// What does not fit now, but for the piles it was made from.
fn still_out(shop: &Shop, ask: &Ask, sources: &[Source]) -> Vec<(Source, Unfit)> {
    let all = fitting(shop, ask).unwrap_or_default();
    let is_in = |source: &Source| sources.iter().any(|it| it.which().0 == source.which().0);
    unfitting(&all).into_iter().filter(|(source, _)| !is_in(source)).collect()
}

fn source(shop: &Shop, pile: &PlanPile, job: Id) -> Option<Source> {
    let haul = fold::haul(shop.book, pile.haul)?;
    let there = rack_pile(&haul, haul.pile(pile.pile)?, job).ok()?;
    Some(Source { pile: there, in_job: pile.in_job == Some(true), n: pile.n, bought: None })
}

fn counts(asked: &Asked) -> Vec<i64> {
    match asked {
        Asked::Rows(problem) => problem.piles.iter().map(|pile| pile.count).collect(),
        Asked::Parts(problem) => problem.piles.iter().map(|pile| pile.count).collect(),
        Asked::Sticks(problem) => problem.piles.iter().map(|pile| pile.count).collect(),
        Asked::Field(problem) => problem.piles.iter().map(|pile| pile.count).collect(),
    }
}

/// What was asked, back on the rule.
fn what(asked: &Asked, kept: &PlanKept) -> Option<What> {
    let length = |n: i64| kept.unit.times(n).ok();
    let count = |n: Option<i64>| n.and_then(|n| Count::try_from(n).ok());
    Some(match asked {
        Asked::Rows(problem) => What::Top(Top {
            length: length(problem.length)?,
            width: kept.width?,
            thickness: kept.thickness,
            rows: count(problem.rows),
            apart: length(problem.stagger)?,
            split: problem.split,
        }),
        Asked::Parts(problem) => What::Parts(count(problem.sets)),
        Asked::Sticks(problem) => What::Sticks(count(problem.sets)),
        Asked::Field(problem) => What::Field(Field {
            sides: problem.targets.map(|target| target.and_then(|target| length(target.size))),
            tolerance: problem.targets.iter().flatten().next().and_then(|target| length(target.tolerance)).unwrap_or_default(),
            patterns: problem.patterns.clone(),
            two: problem.mix.contains(&Mix::Alternate),
        }),
    })
}
