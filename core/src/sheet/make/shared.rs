//! What a plan in use makes of what is asked: where the two make the same, one of them is to go, or to stay on purpose.

use super::{Ask, Top, What, asked_parts};
use crate::ledger::fold::{InUse, Job, KeptPlan, Part};
use crate::ledger::kind::plan::{DesignPart, Shape};
use crate::plan::{Asked, post};
use crate::quantity::{Id, Length, Listed};

/// A top or a field: the one thing of its kind that is asked. No part has this name.
const THE_WHOLE: &str = "";

/// Of the plans in use those in whose place the plan asked for comes: the one it is planned `again` from, then the newest of its shape,
/// then the newest of the others; each where it makes something that is asked and that those before it do not make.
pub fn in_place_of<'a>(job: &Job, ask: &Ask, all: &[InUse<'a>], again: impl Fn(&KeptPlan) -> bool) -> Vec<InUse<'a>> {
    let shape = ask.what.shape();
    let mut all = all.iter().rev().listed();
    all.sort_by_key(|it| (it.plan.plan.shape != shape, !again(it.plan)));
    let (mut going, mut made): (Vec<InUse>, Vec<String>) = (vec![], vec![]);
    for it in all {
        let more = shared(job, ask, it.plan).into_iter().filter(|name| !made.contains(name)).listed();
        if !more.is_empty() {
            made.extend(more);
            going.push(it.clone());
        }
    }
    going
}

/// What a plan asked for and those in whose place it comes make both, and what these make alone: by the names of the parts, each once. The
/// one thing that is a top or a field has none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct InBoth {
    pub both: Vec<String>,
    /// Nor does a plan make it that stays.
    pub alone: Vec<String>,
}

/// The same of the plans that go, by their entries, out of all in use.
pub fn in_both(job: &Job, ask: &Ask, (all, goes): (&[InUse<'_>], &[Id])) -> InBoth {
    let mut told = InBoth::default();
    let (going, staying): (Vec<_>, Vec<_>) = all.iter().map(|it| it.plan).partition(|plan| goes.contains(&plan.id));
    for plan in &going {
        for name in shared(job, ask, plan) {
            once(&mut told.both, name);
        }
    }
    let asked = asked_parts(job.clone(), ask).parts;
    let is_asked = |made: &DesignPart| match &ask.what {
        What::Top(top) => is_top(made, top),
        What::Parts(_) | What::Sticks(_) => asked.iter().any(|part| is_same(made, part, job)),
        What::Field(_) => false,
    };
    let made = |plan: &KeptPlan| plan.plan.parts.clone().unwrap_or_default().into_iter().filter(|part| 0 < part.n).listed();
    let stays = staying.into_iter().flat_map(made).map(|part| part.name).listed();
    for part in going.into_iter().flat_map(made).filter(|part| !is_asked(part) && !stays.contains(&part.name)) {
        once(&mut told.alone, part.name);
    }
    told
}

fn once(all: &mut Vec<String>, name: String) {
    if !all.contains(&name) {
        all.push(name);
    }
}

fn is_top(part: &DesignPart, top: &Top) -> bool {
    0 < part.n && [part.length, part.width] == [top.length, top.width]
}

/// What both make, by the names of the parts.
fn shared(job: &Job, ask: &Ask, plan: &KeptPlan) -> Vec<String> {
    let asked = asked_parts(job.clone(), ask).parts;
    let whole = || vec![THE_WHOLE.to_owned()];
    match (&ask.what, plan.plan.shape) {
        (What::Top(_), Shape::Rows) | (What::Field(_), Shape::Field) => whole(),
        (What::Top(top), Shape::Parts | Shape::Sticks) => {
            if plan.plan.parts.iter().flatten().any(|part| is_top(part, top)) {
                whole()
            } else {
                vec![]
            }
        }
        (What::Parts(_) | What::Sticks(_), Shape::Rows) => {
            let top = top_of(plan);
            let is_top = |part: &&Part| top.as_ref().is_some_and(|top| [part.size[1], part.size[2]] == [top.width, top.length]);
            asked.iter().filter(is_top).map(|part| part.name.clone()).listed()
        }
        (What::Parts(_) | What::Sticks(_), Shape::Parts | Shape::Sticks) => {
            // An older plan does not say which parts it makes.
            let is_made = |part: &&Part| plan.plan.parts.as_ref().is_none_or(|parts| parts.iter().any(|made| is_same(made, part, job)));
            asked.iter().filter(is_made).map(|part| part.name.clone()).listed()
        }
        (What::Top(_), Shape::Field) | (What::Field(_), _) | (What::Parts(_) | What::Sticks(_), Shape::Field) => vec![],
    }
}

/// By its name; one that the job has no more may have another name now.
fn is_same(made: &DesignPart, part: &Part, job: &Job) -> bool {
    let renamed = || {
        let gone = !job.parts.iter().any(|part| part.name == made.name);
        gone && [made.thickness, made.width, made.length] == part.size
    };
    0 < made.n && (made.name == part.name || renamed())
}

/// The top a plan in rows makes.
fn top_of(plan: &KeptPlan) -> Option<Top> {
    let Asked::Rows(problem) = post::read(&plan.plan.problem).and_then(post::take)? else { return None };
    let length: Length = plan.plan.unit.times(problem.length).ok()?;
    Some(Top { length, width: plan.plan.width?, ..Top::default() })
}
