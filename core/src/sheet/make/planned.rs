//! How much finished wood the plans of a job make: what the page of each plan says, without making the page.

use super::top::strip_before;
use super::{Top, figures_of};
use crate::ledger::fold::{self, InUse, Job, KeptPlan};
use crate::plan::field::plan::{Field, Lie};
use crate::plan::{Answered, Asked, Made};
use crate::quantity::{Count, Id, Length, Listed, Volume};
use crate::sheet::Shop;
use crate::sheet::plan::figures::Figures;

/// What the plans of a job make, and what they lack of their wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Planned {
    pub finished: Volume,
    /// Of pieces that were put back, as measured rough; none where a size is missing.
    pub lacks: Option<Volume>,
}

/// The finished wood of the plans a job's wood is cut by, where all its pieces are of these plans; else what they make is not all of it.
/// Pieces of them that were put back are missing, and change nothing of what is planned; where the job has ended, nothing was made of them.
pub fn planned(shop: &Shop, job: &Job, pieces: Count) -> Option<Planned> {
    let plans = fold::in_use(shop.book, &job.plans);
    let used = plans.iter().flat_map(|it| &it.plan.plan.piles).filter_map(|pile| pile.used).fold(0, Count::saturating_add);
    let lacks = plans.iter().map(InUse::lacks).fold(0, Count::saturating_add);
    let never_made = job.ended.is_some() && 0 < lacks;
    if plans.is_empty() || used != pieces.saturating_add(lacks) || never_made {
        return None;
    }
    let figures = figures_of(&shop.workshop, job.units).ok()?;
    let finished = plans.iter().try_fold(Volume::ZERO, |sum, it| sum.plus(finished(it.plan, &figures)?).ok())?;
    Some(Planned { finished, lacks: lacked(shop, &plans) })
}

/// Of what is lacked that is not counted which would be left of it again.
fn lacked(shop: &Shop, plans: &[InUse]) -> Option<Volume> {
    let volume = |((haul, pile), n): ((Id, Id), Count)| fold::haul(shop.book, haul)?.pile(pile)?.piece().ok()??.times(n).ok();
    let sum = |all: Vec<((Id, Id), Count)>| all.into_iter().try_fold(Volume::ZERO, |sum, one| sum.plus(volume(one)?).ok());
    let shares = plans.iter().flat_map(|it| &it.shares).map(|(at, share)| (*at, share.lacks)).filter(|(_, lacks)| 0 < *lacks);
    let left = plans.iter().flat_map(|it| fold::not_left(shop.book, it.plan.id));
    Some(sum(shares.listed())?.less(sum(left.listed())?))
}

fn finished(kept: &KeptPlan, figures: &Figures) -> Option<Volume> {
    let (asked, answered) = kept.told()?;
    match (&asked, &answered.plan) {
        (Asked::Rows(problem), Made::Rows(plan)) => {
            let of = |units: i64| kept.plan.unit.times(units).ok();
            let figures = Figures { kerf: of(problem.kerf)?, ..figures.clone() };
            let top = Top { width: kept.plan.width?, ..Top::default() };
            let before = strip_before(&top, Count::try_from(problem.rows?).ok()?, &figures);
            let strip = kept.plan.strip.unwrap_or(before);
            let rows = Count::try_from(plan.rows.len()).ok()?;
            Volume::of(of(problem.length)?, strip, kept.plan.thickness?).and_then(|row| row.times(rows)).ok()
        }
        (_, Made::Field(plan)) => laid(plan.field.as_ref()?, kept.plan.unit),
        _ => parts(kept, &answered),
    }
}

/// Its parts, as many as it makes; nothing where an older book does not name them.
fn parts(kept: &KeptPlan, answered: &Answered) -> Option<Volume> {
    let made = Count::try_from(*answered.worth.first()?).ok()?;
    let all = kept.plan.parts.as_ref()?.iter().filter(|part| 0 < part.n);
    let volume = |n: Count, sides: [Length; 3]| Volume::of(sides[0], sides[1], sides[2]).and_then(|one| one.times(n)).ok();
    let set = all.map(|part| volume(part.n, [part.thickness, part.width, part.length]));
    set.into_iter().try_fold(Volume::ZERO, |sum, part| sum.plus(part?).ok())?.times(made).ok()
}

/// Tiles that lie close; crossed courses are open between.
fn laid(field: &Field, unit: Length) -> Option<Volume> {
    let Lie::Rows { .. } = field.lie else { return None };
    let [wide, deep, high] = field.outer.map(|side| unit.times(side).ok());
    Volume::of(wide?, deep?, high?).ok()
}
