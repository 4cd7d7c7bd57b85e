//! Plans of a job, the saw's figures and the designs, from their entries.

use crate::haul::Haul;
use crate::ledger::kind::plan::{DesignKept, DesignOperation, DesignPart, PlanKept, SawSet};
use crate::ledger::{Book, Device, Entry, Fact, Stamp, Subject};
use crate::plan::{Answered, Asked, post};
use crate::quantity::{Count, Id, Length, Listed, Sorted, Wall, in_small};

/// A plan that was kept for a job.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptPlan {
    pub id: Id,
    pub at: Wall,
    /// It was written there.
    pub by: Device,
    pub plan: PlanKept,
    /// The wood was cut by it.
    pub used: bool,
}

/// A parts list with operations, to make again.
#[derive(Clone, Debug, PartialEq)]
pub struct Design {
    pub id: Id,
    pub at: Wall,
    pub name: String,
    pub parts: Vec<DesignPart>,
    pub operations: Vec<DesignOperation>,
    /// It was kept from this job.
    pub job: Option<Id>,
}

/// How many lengths there are.
const LENGTHS: usize = 13;

/// The figures of the saw as far as the maker said them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SawFacts {
    /// Kerf, square, end and edge trims, over in length, width and thickness, joint, least worth keeping, joints apart, least end piece,
    /// least piece, least strip.
    pub lengths: [Option<Length>; LENGTHS],
    /// Grams of glue for a square metre of joint.
    pub glue: Option<Count>,
}

impl KeptPlan {
    /// What was asked and what came of it, as they were; nothing where the text is no plan.
    pub fn told(&self) -> Option<(Asked, Answered)> {
        let asked = post::read(&self.plan.problem).and_then(post::take)?;
        Some((asked, post::read(&self.plan.answer).and_then(post::take_answer)?))
    }
}

impl Design {
    pub fn is_named(&self, name: &str) -> bool {
        in_small(self.name.trim()) == in_small(name.trim())
    }
}

impl SawFacts {
    pub(super) fn apply(&mut self, f: &SawSet) {
        for (length, said) in self.lengths.iter_mut().zip(f.lengths()) {
            *length = said.or(*length);
        }
        self.glue = f.glue.or(self.glue);
    }
}

impl SawSet {
    /// The lengths in the order of [`SawFacts`].
    pub fn lengths(&self) -> [Option<Length>; LENGTHS] {
        let (over, f) = ([self.over_length, self.over_width, self.over_thickness], self);
        let [long, wide, thick] = over;
        [f.kerf, f.square, f.end_trim, f.edge_trim, long, wide, thick, f.joint, f.keep, f.apart, f.end_piece, f.piece, f.strip]
    }

    /// From the lengths in their order.
    pub fn of(lengths: [Option<Length>; LENGTHS], glue: Option<Count>) -> SawSet {
        let [kerf, square, end_trim, edge_trim, over_length, over_width, over_thickness, joint, keep, apart, end_piece, piece, strip] =
            lengths;
        SawSet {
            kerf,
            square,
            end_trim,
            edge_trim,
            over_length,
            over_width,
            over_thickness,
            joint,
            keep,
            apart,
            end_piece,
            piece,
            strip,
            glue,
        }
    }
}

/// Whether the job still has the pieces a plan uses: they may have been put back since, or another phone took them first.
pub fn has_wood(book: &Book, plan: &PlanKept) -> bool {
    Taken::of(book).shares(plan, &[]).iter().all(|(_, share)| share.lacks == 0)
}

/// A used plan of which the job has the wood, all of it or some.
#[derive(Clone, Debug, PartialEq)]
pub struct InUse<'a> {
    pub plan: &'a KeptPlan,
    /// By haul and pile.
    pub shares: Vec<((Id, Id), Share)>,
}

/// Pieces of a pile that a plan uses.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Share {
    /// The job needs so many for it.
    pub needs: Count,
    /// Of these so many are in the job no more.
    pub lacks: Count,
    /// Of those it took from the rack, so many are in the job still.
    pub took: Count,
}

impl InUse<'_> {
    pub fn needs(&self) -> Count {
        self.shares.iter().fold(0, |sum, (_, share)| sum.saturating_add(share.needs))
    }

    pub fn lacks(&self) -> Count {
        self.shares.iter().fold(0, |sum, (_, share)| sum.saturating_add(share.lacks))
    }

    /// Pieces of it that the job has.
    pub fn has(&self) -> Count {
        self.needs().saturating_sub(self.lacks())
    }

    /// Pieces that go back to the rack with it.
    pub fn goes_back(&self) -> Count {
        self.shares.iter().fold(0, |sum, (_, share)| sum.saturating_add(share.took))
    }
}

/// Of the plans of a job those whose wood it has, all of it or some, the oldest first.
pub fn in_use<'a>(book: &Book, plans: &'a [KeptPlan]) -> Vec<InUse<'a>> {
    let mut all = shared(book, plans);
    all.retain(|it| it.shares.is_empty() || it.shares.iter().any(|(_, share)| share.lacks < share.needs));
    all
}

/// The used plans of a job with their shares, the oldest first. A piece is of one plan alone: where there are too few for all, the newest
/// have theirs.
pub fn shared<'a>(book: &Book, plans: &'a [KeptPlan]) -> Vec<InUse<'a>> {
    let used = plans.iter().filter(|plan| plan.used).map(|plan| (plan, pieces_taken(book, plan.id))).listed();
    let acts = used.iter().map(|(plan, _)| act_of(book, plan.id)).listed();
    let cut = plans.iter().filter(|plan| !plan.used).flat_map(|plan| cut_by(book, plan)).listed();
    let mut taken = Taken { acts, cut, ..Taken::of(book) };
    let mut all: Vec<InUse<'a>> = vec![];
    for (plan, took) in used.iter().rev() {
        let shares = taken.shares(&plan.plan, took);
        all.push(InUse { plan, shares });
    }
    all.reverse();
    all
}

/// The pieces that the act of a plan took from the rack, by haul and pile.
pub fn pieces_taken(book: &Book, plan: Id) -> Vec<((Id, Id), Count)> {
    let facts = book.act(act_of(book, plan)).into_iter().filter_map(|id| book.entry(id)).filter(|(_, struck)| !struck);
    let taken = facts.filter_map(|(entry, _)| if let Fact::PiecesTaken(f) = &entry.fact { Some(((f.haul, f.pile), f.n)) } else { None });
    taken.listed()
}

/// What a plan leaves of boards that the job has no more: pieces that are not on the rack for now, by haul and pile.
pub fn not_left(book: &Book, plan: Id) -> Vec<((Id, Id), Count)> {
    let facts = book.act(act_of(book, plan)).into_iter().filter_map(|id| book.entry(id)).filter(|(_, struck)| *struck);
    let left = facts.filter_map(|(entry, _)| if let Fact::PiecesLeft(f) = &entry.fact { Some(((f.haul, f.pile), f.n)) } else { None });
    left.listed()
}

/// The act by which a plan was used.
fn act_of(book: &Book, plan: Id) -> Id {
    book.entry(plan).and_then(|(entry, _)| entry.act).unwrap_or(plan)
}

/// Boards of a pile that stayed as cut when the others of their plan went back.
struct Cut {
    at: (Id, Id),
    went: Stamp,
    n: Count,
}

/// What a plan that was dropped has cut: of each pile what it used and did not put back as it went. Where nothing went back, the book does
/// not say what was cut.
fn cut_by(book: &Book, kept: &KeptPlan) -> Vec<Cut> {
    let is_use = |id: &Id| book.entry(*id).is_some_and(|(entry, _)| matches!(&entry.fact, Fact::PlanUsed(f) if f.plan == kept.id));
    let mut used: Sorted<(Id, Id), Count> = Sorted::new();
    for pile in &kept.plan.piles {
        let n = used.entry((pile.haul, pile.pile)).or_default();
        *n = n.saturating_add(pile.used.unwrap_or(0));
    }
    let mut hauls = used.keys().map(|(haul, _)| *haul).listed();
    hauls.dedup();
    let mut went: Option<Stamp> = None;
    for entry in hauls.into_iter().flat_map(|haul| book.about(Subject::Haul(haul))) {
        let Fact::PiecesFreed(f) = &entry.fact else { continue };
        if f.job == kept.plan.job && is_struck_with(book, entry, is_use) {
            went = went.into_iter().chain([entry.stamp]).min();
            let n = used.entry((f.haul, f.pile)).or_default();
            *n = n.saturating_sub(f.n);
        }
    }
    let all = used.into_iter().filter(|(_, n)| 0 < *n);
    all.filter_map(|(at, n)| Some(Cut { at, went: went?, n })).listed()
}

/// Whether the act of an entry struck such a one.
fn is_struck_with(book: &Book, entry: &Entry, is_one: impl Fn(&Id) -> bool) -> bool {
    let of_act = entry.act.map(|act| book.act(act)).unwrap_or_default();
    let strikes = |(entry, _): (&Entry, bool)| matches!(&entry.fact, Fact::Struck(f) if f.entries.iter().any(&is_one));
    of_act.into_iter().filter_map(|id| book.entry(id)).any(strikes)
}

/// What plans use of piles, as far as they were looked at.
struct Taken<'a> {
    book: &'a Book,
    hauls: Sorted<Id, Option<Haul>>,
    /// By which the plans were used, the first of them first; none where one is looked at alone.
    acts: Vec<Id>,
    /// What plans of the job that were dropped have cut.
    cut: Vec<Cut>,
    of: Sorted<(Id, Id), Had>,
}

/// What a job had of a pile, and how much of that the plans that were looked at have.
#[derive(Clone, Copy)]
struct Had {
    /// The most it had since the first of the plans, with what they lack.
    most: Count,
    /// It has now so many, without such as are cut by plans that were dropped.
    there: Count,
    /// Of those so many that plans took: what goes back is first theirs, and what is taken again is first what they lack.
    by_plans: Count,
}

impl Taken<'_> {
    fn of(book: &Book) -> Taken<'_> {
        Taken { book, hauls: Sorted::new(), acts: vec![], cut: vec![], of: Sorted::new() }
    }

    /// Of each pile the pieces a plan uses, as far as they are there beside those of the plans before.
    fn shares(&mut self, plan: &PlanKept, took: &[((Id, Id), Count)]) -> Vec<((Id, Id), Share)> {
        let mut uses: Sorted<(Id, Id), (Count, Count)> = Sorted::new();
        for pile in &plan.piles {
            let (n, _) = uses.entry((pile.haul, pile.pile)).or_default();
            *n = n.saturating_add(pile.used.unwrap_or(0));
        }
        for (pile, n) in took {
            let (_, took) = uses.entry(*pile).or_default();
            *took = took.saturating_add(*n);
        }
        uses.retain(|_, (n, took)| 0 < *n || 0 < *took);
        uses.into_iter().map(|(at, uses)| (at, self.share(at, uses, plan.job))).listed()
    }

    /// What two plans cut of the same pieces is needed once: together they need no more than the job ever had of the pile.
    fn share(&mut self, at: (Id, Id), (n, took): (Count, Count), job: Id) -> Share {
        let had = self.of.get(&at).copied().unwrap_or_else(|| self.had(at, job));
        let needs = n.max(took).min(had.most);
        let has = needs.min(had.there);
        let took = took.min(had.by_plans);
        // What a plan uses is its own.
        let (most, there) = (had.most.saturating_sub(needs), had.there.saturating_sub(has));
        self.of.insert(at, Had { most, there, by_plans: had.by_plans.saturating_sub(took) });
        Share { needs, lacks: needs.saturating_sub(has), took }
    }

    /// Whether it is of an act that took a plan back.
    fn goes_with_plan(&self, freed: &Entry) -> bool {
        is_struck_with(self.book, freed, |id| self.book.entry(*id).is_some_and(|(entry, _)| matches!(entry.fact, Fact::PlanUsed(_))))
    }

    fn had(&mut self, at: (Id, Id), job: Id) -> Had {
        let haul = self.hauls.entry(at.0).or_insert_with(|| super::haul(self.book, at.0));
        let there = haul.as_ref().and_then(|haul| haul.pile(at.1)).map_or(0, |pile| pile.in_job(job));
        let Some((first, _)) = self.acts.first().and_then(|act| self.book.entry(*act)) else {
            return Had { most: Count::MAX, there, by_plans: there };
        };
        let [mut by_hand, mut by_plans, mut lacks, mut most, mut cut]: [Count; 5] = [0; 5];
        let mut dropped = self.cut.iter().filter(|it| it.at == at).map(|it| (it.went, it.n)).listed();
        for entry in self.book.about(Subject::Haul(at.0)) {
            dropped.retain(|(when, n)| {
                let later = entry.stamp < *when;
                cut = cut.saturating_add(if later { 0 } else { *n });
                later
            });
            match &entry.fact {
                Fact::PiecesTaken(f) if (f.pile, f.job) == (at.1, job) => {
                    let of_plan = entry.act.is_some_and(|act| self.acts.contains(&act));
                    let again = if of_plan { 0 } else { f.n.min(lacks) };
                    let theirs = if of_plan { f.n } else { again };
                    lacks = lacks.saturating_sub(again);
                    by_plans = by_plans.saturating_add(theirs);
                    by_hand = by_hand.saturating_add(f.n.saturating_sub(theirs));
                }
                Fact::PiecesFreed(f) if (f.pile, f.job) == (at.1, job) => {
                    // What goes back with a plan that is taken back was taken again for that one.
                    let others = if self.goes_with_plan(entry) { by_hand } else { 0 };
                    let back = f.n.saturating_sub(others).min(by_plans);
                    by_plans = by_plans.saturating_sub(back);
                    by_hand = by_hand.saturating_sub(f.n.saturating_sub(back));
                    lacks = lacks.saturating_add(back);
                }
                _ => continue,
            }
            cut = cut.min(by_hand.saturating_add(by_plans));
            let has = by_hand.saturating_add(by_plans).saturating_add(lacks).saturating_sub(cut);
            most = if entry.stamp < first.stamp { has } else { most.max(has) };
        }
        cut = dropped.iter().fold(cut, |sum, (_, n)| sum.saturating_add(*n)).min(there);
        Had { most, there: there.saturating_sub(cut), by_plans: by_plans.min(there) }
    }
}

pub(super) fn planned(plans: &mut Vec<KeptPlan>, entry: &Entry) {
    match &entry.fact {
        Fact::PlanKept(f) => plans.push(KeptPlan { id: entry.id, at: entry.wall, by: entry.stamp.2, plan: f.clone(), used: false }),
        Fact::PlanUsed(f) => plans.iter_mut().filter(|kept| kept.id == f.plan).for_each(|kept| kept.used = true),
        _ => {}
    }
}

/// The same name replaces a design; an empty one ends it.
pub(super) fn kept(designs: &mut Vec<Design>, entry: &Entry, f: &DesignKept) {
    designs.retain(|design| !design.is_named(&f.name));
    if !f.parts.is_empty() || !f.operations.is_empty() {
        let (parts, operations) = (f.parts.clone(), f.operations.clone());
        designs.push(Design { id: entry.id, at: entry.wall, name: f.name.clone(), parts, operations, job: f.job });
    }
}
