//! How much finished wood the plans of a job make: what the page of each plan says, without making the page.

use super::top::strip_before;
use super::{Top, figures_of};
use crate::ledger::fold::{self, InUse, Job, KeptPlan};
use crate::ledger::kind::plan::{DesignPart, Shape};
use crate::plan::field::plan::{Field, Lie};
use crate::plan::{Answered, Asked, Made};
use crate::quantity::{Count, Id, Length, Listed, Volume};
use crate::sheet::Shop;
use crate::sheet::plan::figures::Figures;
use crate::sheet::plan::trim::least_sawn;
use crate::sheet::plan::wish::Panel;

/// What the plans of a job make, and what they lack of their wood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Planned {
    pub finished: Volume,
    /// Of pieces that were put back, as measured rough; none where a size is missing.
    pub lacks: Option<Volume>,
    /// The job has so many pieces more than they use, and so many fewer that were not put back.
    pub more: Count,
    pub fewer: Count,
}

/// The finished wood of the plans a job's wood is cut by, and by how many pieces what it has differs from what they use.
/// Pieces of them that were put back are missing, and change nothing of what is planned; where the job has ended, nothing was made of them.
pub fn planned(shop: &Shop, job: &Job, pieces: Count) -> Option<Planned> {
    let plans = fold::in_use(shop.book, &job.plans);
    let used = plans.iter().flat_map(|it| &it.plan.plan.piles).filter_map(|pile| pile.used);
    // Boards that were cut by a plan whose place was taken are used, too.
    let used = used.chain(plans.iter().filter_map(|it| it.plan.plan.boards_cut)).fold(0, Count::saturating_add);
    let lacks = plans.iter().map(InUse::lacks).fold(0, Count::saturating_add);
    let never_made = job.ended.is_some() && 0 < lacks;
    let has = pieces.saturating_add(lacks);
    if plans.is_empty() || never_made {
        return None;
    }
    let figures = figures_of(&shop.workshop, job.units).ok()?;
    let made = plans.iter().map(|it| makes(job, it.plan, &figures)).collect::<Option<Vec<_>>>()?;
    let (more, fewer) = (has.saturating_sub(used), used.saturating_sub(has));
    Some(Planned { finished: once(job, made.concat())?, lacks: lacked(shop, &plans), more, fewer })
}

/// What a plan makes: so many of a part, or one top or field.
#[derive(Clone, Debug)]
struct Makes {
    what: What,
    n: Count,
    each: Volume,
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum What {
    /// By its name.
    Part(String),
    Whole(Shape),
}

/// What two plans make both is not planned twice, unless the job needs so many or one of them alone makes them: the newest counts first.
fn once(job: &Job, made: Vec<Makes>) -> Option<Volume> {
    let needs = |what: &What| match what {
        // What is no part of the job any more is as many as the plans make.
        What::Part(name) => job.parts.iter().find(|part| part.name == *name).map_or(Count::MAX, |part| part.n.saturating_mul(job.pieces)),
        What::Whole(_) => job.pieces,
    };
    let most = |what: &What| made.iter().filter(|it| it.what == *what).map(|it| it.n).max().unwrap_or(0).max(needs(what));
    let mut left: Vec<(What, Count)> = vec![];
    for it in &made {
        if !left.iter().any(|(what, _)| *what == it.what) {
            left.push((it.what.clone(), most(&it.what)));
        }
    }
    made.iter().rev().try_fold(Volume::ZERO, |sum, it| {
        let (_, left) = left.iter_mut().find(|(what, _)| *what == it.what)?;
        let n = it.n.min(*left);
        *left = left.saturating_sub(n);
        sum.plus(it.each.times(n).ok()?).ok()
    })
}

/// Of what is lacked that is not counted which would be left of it again.
fn lacked(shop: &Shop, plans: &[InUse]) -> Option<Volume> {
    let volume = |((haul, pile), n): ((Id, Id), Count)| fold::haul(shop.book, haul)?.pile(pile)?.piece().ok()??.times(n).ok();
    let sum = |all: Vec<((Id, Id), Count)>| all.into_iter().try_fold(Volume::ZERO, |sum, one| sum.plus(volume(one)?).ok());
    let shares = plans.iter().flat_map(|it| &it.shares).map(|(at, share)| (*at, share.lacks)).filter(|(_, lacks)| 0 < *lacks);
    let left = plans.iter().flat_map(|it| fold::not_left(shop.book, it.plan.id));
    Some(sum(shares.listed())?.less(sum(left.listed())?))
}

fn makes(job: &Job, kept: &KeptPlan, figures: &Figures) -> Option<Vec<Makes>> {
    let (asked, answered) = kept.told()?;
    if !matches!(answered.plan, Made::Rows(_) | Made::Field(_)) {
        return parts(kept, &answered);
    }
    // A top in rows is the part of its size.
    let sides = if let Asked::Rows(problem) = &asked { kept.plan.width.zip(kept.plan.unit.times(problem.length).ok()) } else { None };
    let of_size = sides.and_then(|(width, length)| job.parts.iter().find(|part| [part.size[1], part.size[2]] == [width, length]));
    let what = of_size.map_or(What::Whole(kept.plan.shape), |part| What::Part(part.name.clone()));
    Some(vec![Makes { what, n: 1, each: whole(kept, (&asked, &answered), figures)? }])
}

/// A top or a field.
fn whole(kept: &KeptPlan, (asked, answered): (&Asked, &Answered), figures: &Figures) -> Option<Volume> {
    match (asked, &answered.plan) {
        (Asked::Rows(problem), Made::Rows(plan)) => {
            let of = |units: i64| kept.plan.unit.times(units).ok();
            let figures = Figures { kerf: of(problem.kerf)?, ..figures.clone() };
            let top = Top { width: kept.plan.width?, ..Top::default() };
            let before = strip_before(&top, Count::try_from(problem.rows?).ok()?, &figures);
            let strip = kept.plan.strip.unwrap_or(before);
            let (length, thickness, made) = (of(problem.length)?, kept.plan.thickness?, Count::try_from(plan.rows.len()).ok()?);
            let panel = Panel { length, width: kept.plan.width, thickness, strip, split: problem.split };
            let last =
                panel.last_row(made.into(), least_sawn(&figures)).filter(|it| it.as_nm().checked_rem(kept.plan.unit.as_nm()) == Some(0));
            // With the rows that plans before cut.
            let rows = made.checked_sub(1)?.checked_add(kept.plan.rows_cut.unwrap_or(0))?;
            let width = strip.times(rows.into()).and_then(|rows| rows.plus(last.unwrap_or(strip))).ok()?;
            Volume::of(length, width, thickness).ok()
        }
        (_, Made::Field(plan)) => laid(plan.field.as_ref()?, kept.plan.unit),
        _ => None,
    }
}

/// Its parts, as many as it makes; nothing where an older book does not name them.
fn parts(kept: &KeptPlan, answered: &Answered) -> Option<Vec<Makes>> {
    let made = Count::try_from(*answered.worth.first()?).ok()?;
    // The rest of a part makes it whole: what was cut of it before is in no other figure.
    let before = |part: &DesignPart| {
        let is_of = |cut: &&DesignPart| cut.name == part.name && (cut.thickness, cut.length) == (part.thickness, part.length);
        kept.plan.cut.iter().flatten().find(is_of).map_or(part.width, |cut| cut.width.max(part.width))
    };
    let one = |part: &DesignPart| {
        let each = Volume::of(part.thickness, before(part), part.length).ok()?;
        Some(Makes { what: What::Part(part.name.clone()), n: part.n.checked_mul(made)?, each })
    };
    let made = kept.plan.parts.as_ref()?.iter().filter(|part| 0 < part.n).map(one);
    // With what was cut before it, and is as much of the job's wood.
    let before = kept.plan.cut.iter().flatten().map(|part| {
        let each = Volume::of(part.thickness, part.width, part.length).ok()?;
        Some(Makes { what: What::Part(part.name.clone()), n: part.n, each })
    });
    made.chain(before).collect()
}

/// Tiles that lie close; crossed courses are open between.
fn laid(field: &Field, unit: Length) -> Option<Volume> {
    let Lie::Rows { .. } = field.lie else { return None };
    let [wide, deep, high] = field.outer.map(|side| unit.times(side).ok());
    Volume::of(wide?, deep?, high?).ok()
}
