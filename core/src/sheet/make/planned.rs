//! How much finished wood the plans of a job make: what the page of each plan says, without making the page.

use super::top::strip_before;
use super::{Top, figures_of};
use crate::ledger::fold::{self, Job, KeptPlan};
use crate::plan::field::plan::{Field, Lie};
use crate::plan::{Answered, Asked, Made};
use crate::quantity::{Count, Length, Volume};
use crate::sheet::Shop;
use crate::sheet::plan::figures::Figures;

/// The finished wood of the plans a job's wood is cut by, where all its pieces are of these plans; else what they make is not all of it.
pub fn planned(shop: &Shop, job: &Job, pieces: Count) -> Option<Volume> {
    let plans = fold::with_wood(shop.book, &job.plans);
    let used = plans.iter().flat_map(|kept| &kept.plan.piles).filter_map(|pile| pile.used).fold(0, Count::saturating_add);
    if plans.is_empty() || used != pieces {
        return None;
    }
    let figures = figures_of(&shop.workshop, job.units).ok()?;
    plans.into_iter().try_fold(Volume::ZERO, |sum, kept| sum.plus(finished(kept, &figures)?).ok())
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
