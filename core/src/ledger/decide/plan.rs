//! Orders about plans and designs: take the wood of a plan, set the saw's figures, keep a design and make it again.

use super::haul::{enough, free, of_pile, pile_of};
use super::job::{found, going_on};
use super::left::{LeftOver, left_over};
use super::uncut::{self, Uncut};
use super::{Act, Now, sought};
use crate::haul::Pile;
use crate::ledger::fold;
use crate::ledger::fold::Design;
use crate::ledger::kind::book::{Restored, Struck};
use crate::ledger::kind::haul::{PiecesFreed, PiecesTaken};
use crate::ledger::kind::job::{JobBegan, OperationPlanned, PartPlanned};
use crate::ledger::kind::plan as kind;
use crate::ledger::kind::stock::PiecesSought;
use crate::ledger::{Book, Clock, Device, Entry, Fact, Subject};
use crate::plan::post;
use crate::quantity::{Count, Id, Length, Listed, Sorted, Span, Wall};
use crate::refusal::{Answer, Refusal};

/// The most a figure of the saw may be: a metre, beyond any.
pub const SAW_MOST: Length = Length::METRE;

/// What can be ordered of plans and designs.
#[derive(Clone, Debug, PartialEq)]
pub enum PlanCommand {
    /// The job takes the pieces a plan uses, the plan is kept with it, and what is left of them goes back to the rack. What the job took
    /// by the plans it is used `instead` of is taken back in the same act: that wood is not cut. Of those that are `partly` cut the rest goes
    /// back. Its other plans stay as they are.
    Use {
        plan: Box<kind::PlanKept>,
        left: Vec<LeftOver>,
        instead: Vec<Id>,
        partly: Vec<Uncut>,
    },
    /// A plan is in use no more, and of its boards those that are not cut go back.
    PutBack(Uncut),
    /// What was put back of the wood of the job's plans is taken again.
    TakeAgain {
        job: Id,
    },
    /// A plan is in use no more: the wood it took stays in the job, and what it left on the rack.
    Drop {
        plan: Id,
    },
    /// A plan that was dropped is in use again.
    TakeUp {
        plan: Id,
    },
    /// What a plan lacks is looked for at the next yard.
    LookFor(Box<PiecesSought>),
    /// It is looked for no more.
    LookNoMore {
        sought: Id,
    },
    SetSaw(kind::SawSet),
    /// The parts and operations of a job under a name.
    KeepDesign {
        job: Id,
        name: String,
    },
    /// A design by another name: the one it had goes in the same act.
    RenameDesign {
        design: Id,
        name: String,
    },
    /// A design is one no more.
    DropDesign {
        name: String,
    },
    /// The parts and operations of a design become the job's.
    UseDesign {
        job: Id,
        design: Id,
    },
    /// A new job with the parts and operations of a design.
    MakeAgain {
        job: JobBegan,
        design: Id,
    },
}

pub(super) fn decide(book: &Book, command: &PlanCommand, act: &mut Act) -> Answer<()> {
    match command {
        PlanCommand::Use { plan, left, instead, partly } => {
            let plan: &kind::PlanKept = plan;
            let before = gone_with(book, plan.job, (instead, partly))?;
            if before.entries.is_empty() {
                used(book, (plan, None), act)?;
                return left_over(book, plan.job, left, act);
            }
            super::rests::allowed(book, &before.entries)?;
            let then = before.gone(book);
            goes_without(book, &then, plan)?;
            used(&then, (plan, Some(&before.frees)), act)?;
            left_over(&then, plan.job, left, act)?;
            act.add(Struck { entries: before.entries });
            Ok(())
        }
        PlanCommand::PutBack(uncut) => uncut::put_back(book, uncut, act),
        PlanCommand::TakeAgain { job } => take_again(book, *job, act),
        PlanCommand::Drop { plan } => {
            let entries = use_of(book, *plan, false)?;
            act.add(Struck { entries });
            Ok(())
        }
        PlanCommand::TakeUp { plan } => {
            let entries = use_of(book, *plan, true)?;
            act.add(Restored { entries });
            Ok(())
        }
        PlanCommand::LookFor(pieces) => sought::look_for(book, pieces, act),
        PlanCommand::LookNoMore { sought } => sought::look_no_more(book, *sought, act),
        PlanCommand::SetSaw(saw) => set_saw(saw, act),
        PlanCommand::KeepDesign { job, name } => keep(book, *job, name, act),
        PlanCommand::DropDesign { name } => {
            fold::workshop(book).designs.iter().find(|design| design.is_named(name)).ok_or(Refusal::NotThere)?;
            act.add(kind::DesignKept { name: name.clone(), parts: vec![], operations: vec![], job: None });
            Ok(())
        }
        PlanCommand::RenameDesign { design, name } => rename(book, *design, name, act),
        PlanCommand::UseDesign { job, design } => {
            going_on(book, *job)?;
            let pieces = found(book, *job)?.pieces;
            make_again(*job, &of_so_many(book, design_of(book, *design)?, pieces), act)
        }
        PlanCommand::MakeAgain { job, design } => {
            let design = design_of(book, *design)?;
            super::job::some_pieces(job.pieces)?;
            let (pieces, job) = (job.pieces, act.add(job.clone()));
            make_again(job, &of_so_many(book, design, pieces), act)
        }
    }
}

/// What is written where plans go: what they took, with all that was put back since and is the other plans' and the maker's own no more;
/// and what was taken again for them goes back.
#[derive(Default)]
pub(super) struct Before {
    pub entries: Vec<Id>,
    pub frees: Vec<PiecesFreed>,
}

impl Before {
    fn add(&mut self, more: Before) {
        self.entries.extend(more.entries);
        self.frees.extend(more.frees);
    }

    fn gone(&self, book: &Book) -> Book {
        let mut then = book.without(&self.entries);
        let mut act = Act::new(Now { wall: Wall::default(), chance: [0; 10] });
        for freed in &self.frees {
            act.add(freed.clone());
        }
        let mut clock = Clock::new(Device::new([0; 8]), book.last_stamp());
        act.stamped(book, &mut clock).iter().for_each(|entry| drop(then.add(entry)));
        then
    }
}

/// The book as it would be without these of the plans by which a job has wood, and of those that are `partly` cut without what is not:
/// another plan is used instead.
///
/// # Errors
/// As [`PlanCommand::Use`] where it takes their place.
pub fn without_plans(book: &Book, job: Id, (goes, partly): (&[Id], &[Uncut])) -> Answer<Book> {
    Ok(gone_with(book, job, (goes, partly))?.gone(book))
}

fn gone_with(book: &Book, job: Id, (goes, partly): (&[Id], &[Uncut])) -> Answer<Before> {
    let mut before = before(book, job, goes);
    for uncut in partly {
        before.add(uncut::goes(book, job, uncut)?);
    }
    Ok(before)
}

fn before(book: &Book, job: Id, goes: &[Id]) -> Before {
    if goes.is_empty() {
        return Before::default();
    }
    let plans = fold::job(book, job).map(|job| job.plans).unwrap_or_default();
    let goes = fold::in_use(book, &plans).into_iter().map(|it| it.plan.id).filter(|id| goes.contains(id)).listed();
    let gone = going(book, job, (&goes, true));
    Before { entries: super::book::not_of_others(book, gone.entries), ..gone }
}

/// What goes with plans: all they took that the job has still, neither more nor less. What a plan put back of those whose place it took
/// comes again where it is taken back, and is `put_back` still where another takes its place.
pub(super) fn going(book: &Book, job: Id, (goes, put_back): (&[Id], bool)) -> Before {
    let plans = fold::job(book, job).map(|job| job.plans).unwrap_or_default();
    let mut took: Sorted<(Id, Id), Count> = Sorted::new();
    let all = fold::shared(book, &plans);
    for (at, share) in all.iter().filter(|it| goes.contains(&it.plan.id)).flat_map(|it| &it.shares) {
        let n = took.entry(*at).or_default();
        *n = n.saturating_add(share.took);
    }
    let first = goes.iter().filter_map(|id| book.entry(*id)).map(|(entry, _)| entry.stamp).min();
    let mut entries = goes.iter().flat_map(|id| super::book::whole(book, *id).unwrap_or_default()).listed();
    let mut freed: Sorted<(Id, Id), Count> = Sorted::new();
    if put_back {
        for (entry, _) in entries.iter().filter_map(|id| book.entry(*id)).filter(|(_, struck)| !struck) {
            if let Fact::PiecesFreed(f) = &entry.fact {
                let n = freed.entry((f.haul, f.pile)).or_default();
                *n = n.saturating_add(f.n);
            }
        }
    }
    for at in took.keys() {
        for entry in book.about(Subject::Haul(at.0)).filter(|entry| first.is_some_and(|first| first < entry.stamp)) {
            let Fact::PiecesFreed(f) = &entry.fact else { continue };
            if (f.pile, f.job) == (at.1, job) && !entries.contains(&entry.id) {
                let n = freed.entry(*at).or_default();
                *n = n.saturating_add(f.n);
                entries.push(entry.id);
            }
        }
    }
    if freed.is_empty() {
        return Before { frees: vec![], entries };
    }
    let then = book.without(&entries);
    let in_job = |book: &Book, haul, pile| pile_of(book, haul, pile).map_or(0, |pile| pile.in_job(job));
    let frees = freed.into_iter().map(|((haul, pile), freed)| {
        let stays = in_job(book, haul, pile).saturating_sub(took.get(&(haul, pile)).copied().unwrap_or(0));
        PiecesFreed { haul, pile, job, n: in_job(&then, haul, pile).saturating_sub(stays).min(freed) }
    });
    Before { frees: frees.filter(|freed| 0 < freed.n).listed(), entries }
}

/// That a plan is used, as it stands or was struck; its job goes on.
pub(super) fn use_of(book: &Book, plan: Id, is_struck: bool) -> Answer<Vec<Id>> {
    let act = book.entry(plan).map(|(entry, _)| entry.act.unwrap_or(plan)).ok_or(Refusal::NotThere)?;
    let facts = book.act(act).into_iter().filter_map(|id| book.entry(id)).filter(|(_, struck)| *struck == is_struck);
    let of_it = |entry: &Entry| if let Fact::PlanUsed(f) = &entry.fact { Some((f.job, entry.id)).filter(|_| f.plan == plan) } else { None };
    let (job, used) = facts.filter_map(|(entry, _)| of_it(entry)).next().ok_or(Refusal::NotThere)?;
    going_on(book, job)?;
    Ok(vec![used])
}

fn take_again(book: &Book, job: Id, act: &mut Act) -> Answer<()> {
    going_on(book, job)?;
    let plans = found(book, job)?.plans;
    let mut lacks: Sorted<(Id, Id), Count> = Sorted::new();
    for (at, share) in fold::in_use(book, &plans).into_iter().flat_map(|it| it.shares) {
        let n = lacks.entry(at).or_default();
        *n = n.saturating_add(share.lacks);
    }
    lacks.retain(|_, n| 0 < *n);
    if lacks.is_empty() {
        return Err(Refusal::NothingAsked);
    }
    // What others took meanwhile is not there; the rest is taken.
    let there = |((haul, pile), n): ((Id, Id), Count)| {
        let free = pile_of(book, haul, pile).map_or(0, |pile| pile.free_for(Some(job)));
        (0 < free).then_some(((haul, pile), n.min(free)))
    };
    let all = lacks.iter().map(|(at, n)| (*at, *n)).filter_map(there).listed();
    if all.is_empty() {
        let (asked, there) = (lacks.into_values().fold(0, Count::saturating_add), 0);
        return Err(Refusal::NotThatMany { asked, there });
    }
    all.into_iter().try_for_each(|(at, n)| takes(book, at, (job, n), act))
}

fn takes(book: &Book, (haul, pile): (Id, Id), (job, n): (Id, Count), act: &mut Act) -> Answer<()> {
    let there = pile_of(book, haul, pile)?;
    free(n, &there, Some(job)).map_err(of_pile(&there))?;
    act.add(PiecesTaken { haul, pile, job, n });
    Ok(())
}

/// One act: the plan, that it is used, and the pieces of each pile that the job did not have already. Pieces of its own that went back
/// with a plan before are taken from the rack again.
fn used(book: &Book, (plan, again): (&kind::PlanKept, Option<&[PiecesFreed]>), act: &mut Act) -> Answer<()> {
    going_on(book, plan.job)?;
    let asked = post::read(&plan.problem).and_then(post::take).ok_or(Refusal::NotThere)?;
    asked.check()?;
    let answered = post::read(&plan.answer).and_then(post::take_answer).ok_or(Refusal::NotThere)?;
    if !asked.holds(&answered) {
        return Err(Refusal::PlanBroken);
    }
    let uses = || plan.piles.iter().filter_map(|pile| Some((pile, pile.used.filter(|used| 0 < *used)?)));
    if uses().next().is_none() {
        return Err(Refusal::NothingAsked);
    }
    let id = act.add(plan.clone());
    act.add(kind::PlanUsed { job: plan.job, plan: id });
    for freed in again.into_iter().flatten() {
        act.add(freed.clone());
    }
    let mut takes: Sorted<(Id, Id), Count> = Sorted::new();
    for (pile, n) in uses() {
        let there = pile_of(book, pile.haul, pile.pile)?;
        made_for(pile, &there).map_err(of_pile(&there))?;
        let has = there.in_job(plan.job);
        let lacks = match pile.in_job {
            Some(true) if again.is_some() => n.saturating_sub(has),
            Some(true) => enough(n, has).map(|()| 0).map_err(of_pile(&there))?,
            _ => n,
        };
        let take = takes.entry((pile.haul, pile.pile)).or_default();
        *take = take.saturating_add(lacks);
    }
    takes.into_iter().filter(|(_, n)| 0 < *n).try_for_each(|(at, n)| self::takes(book, at, (plan.job, n), act))?;
    sought::made(book, plan, (&asked, &answered), act);
    Ok(())
}

/// A plan before can't go back where a pile that it left is what this one is made of.
fn goes_without(book: &Book, then: &Book, plan: &kind::PlanKept) -> Answer<()> {
    let left = |pile: &kind::PlanPile| match (pile_of(book, pile.haul, pile.pile), pile_of(then, pile.haul, pile.pile)) {
        (Ok(now), Err(_)) => Err(Refusal::PlanOfLeftOvers { pile: now.label }),
        _ => Ok(()),
    };
    plan.piles.iter().filter(|pile| pile.used.is_some_and(|used| 0 < used)).try_for_each(left)
}

/// What a plan says of the sides of a pile is as they are; an older app says nothing of them.
fn made_for(kept: &kind::PlanPile, there: &Pile) -> Answer<()> {
    let sides = [(kept.thickness, there.thickness), (kept.width, there.width), (kept.length, there.length)];
    let other = sides.iter().any(|(kept, there)| kept.is_some() && kept != there);
    if other { Err(Refusal::PlanOfOtherSizes) } else { Ok(()) }
}

fn set_saw(saw: &kind::SawSet, act: &mut Act) -> Answer<()> {
    let lengths = saw.lengths();
    if lengths.iter().all(Option::is_none) && saw.glue.is_none() {
        return Err(Refusal::NothingAsked);
    }
    if let Some(met) = lengths.into_iter().flatten().find(|met| SAW_MOST < *met) {
        return Err(Refusal::LengthOutOfRange { met, least: Length::ZERO, most: SAW_MOST });
    }
    act.add(saw.clone());
    Ok(())
}

fn keep(book: &Book, job: Id, name: &str, act: &mut Act) -> Answer<()> {
    let job = found(book, job)?;
    super::wood::named(name)?;
    if job.parts.is_empty() && job.operations.is_empty() {
        return Err(Refusal::NothingAsked);
    }
    let parts = job.parts.iter().map(|part| {
        let [thickness, width, length] = part.size;
        kind::DesignPart { name: part.name.clone(), n: part.n, thickness, width, length, wood: part.wood.clone() }
    });
    let operations = job.operations.iter().map(|planned| {
        let (op, kind, stage) = (planned.op.clone(), planned.kind, Some(planned.stage));
        kind::DesignOperation { op, kind, stage, span: planned.span, pieces: planned.pieces }
    });
    let (parts, operations) = (parts.collect(), operations.collect());
    act.add(kind::DesignKept { name: name.trim().to_owned(), parts, operations, job: Some(job.id) });
    Ok(())
}

fn design_of(book: &Book, design: Id) -> Answer<Design> {
    fold::workshop(book).designs.into_iter().find(|kept| kept.id == design).ok_or(Refusal::NotThere)
}

/// The old name ends in the same act; where the two differ by large letters alone the new one takes its place.
fn rename(book: &Book, design: Id, name: &str, act: &mut Act) -> Answer<()> {
    super::wood::named(name)?;
    let Design { id, name: was, parts, operations, job, .. } = design_of(book, design)?;
    if let Some(other) = fold::workshop(book).designs.iter().find(|other| other.id != id && other.is_named(name)) {
        return Err(Refusal::DesignThere { name: other.name.clone() });
    }
    act.add(kind::DesignKept { name: was, parts: vec![], operations: vec![], job: None });
    act.add(kind::DesignKept { name: name.trim().to_owned(), parts, operations, job });
    Ok(())
}

/// As it is for so many pieces: the minutes and the pieces of its operations were planned for as many as the job has that it was kept from.
fn of_so_many(book: &Book, design: Design, n: Count) -> Design {
    let kept = design.job.and_then(|job| fold::job(book, job)).map(|job| job.pieces).filter(|kept| 0 < *kept && *kept != n);
    let Some(kept) = kept else { return design };
    let [n, kept] = [n, kept].map(i64::from);
    let pieces =
        |of: Count| Count::try_from(i64::from(of).saturating_mul(n).saturating_add(kept.saturating_sub(1)).div_euclid(kept)).unwrap_or(of);
    let one = |planned: kind::DesignOperation| kind::DesignOperation {
        span: planned.span.map(|span| span.in_ratio(Span::ms(n), Span::ms(kept)).unwrap_or(span)),
        pieces: planned.pieces.map(pieces),
        ..planned
    };
    Design { operations: design.operations.into_iter().map(one).collect(), ..design }
}

fn make_again(job: Id, kept: &Design, act: &mut Act) -> Answer<()> {
    act.add(kind::DesignUsed { job, design: kept.id });
    for part in &kept.parts {
        let kind::DesignPart { name, n, thickness, width, length, wood } = part.clone();
        act.add(PartPlanned { job, name, n, thickness, width, length, wood });
    }
    for planned in &kept.operations {
        let kind::DesignOperation { op, kind, stage, span, pieces } = planned.clone();
        act.add(OperationPlanned { job, op, kind, stage, span, pieces });
    }
    Ok(())
}
