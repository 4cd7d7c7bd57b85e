//! What is left of pieces a job took goes back to the rack, as good pieces of a pile of their size.

use super::haul::{PileFacts, new_pile, next_label, of_pile, within};
use super::{Act, restore, rests};
use crate::haul::{Haul, Pile};
use crate::ledger::fold::{self, InUse, KeptPlan, Share};
use crate::ledger::kind::book::{Restored, Struck};
use crate::ledger::kind::haul::{PiecesLeft, PileDescribed};
use crate::ledger::{Book, Clock, Device, Fact, Subject};
use crate::quantity::{Count, Id, Key, Length, Listed, Set, Sorted, order_by_key};
use crate::refusal::{Answer, Refusal};
use std::cmp::Reverse;

/// Pieces alike that are left of those of a pile.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftOver {
    pub haul: Id,
    /// The pile they are left of.
    pub of: Id,
    pub n: Count,
    /// Thickness, width, length.
    pub size: [Length; 3],
    /// What a new pile of them is called.
    pub name: String,
}

/// They join a pile of their wood and size in the same haul; where there is none, one is begun.
pub(super) fn left_over(book: &Book, job: Id, left: &[LeftOver], act: &mut Act) -> Answer<()> {
    let mut hauls: Vec<Haul> = vec![];
    for one in left.iter().filter(|one| 0 < one.n) {
        if !hauls.iter().any(|haul| haul.id == one.haul) {
            hauls.push(fold::haul(book, one.haul).ok_or(Refusal::NotThere)?);
        }
        let haul = hauls.iter_mut().find(|haul| haul.id == one.haul).ok_or(Refusal::NotThere)?;
        let pile = pile_for(haul, one, act)?;
        for n in lots(one.n) {
            act.add(PiecesLeft { haul: one.haul, pile, of: one.of, job, n });
        }
    }
    Ok(())
}

/// Few facts of which any number of pieces can go: one, two, four, and what is over.
fn lots(mut n: Count) -> Vec<Count> {
    let mut all = vec![];
    let mut lot: Count = 1;
    while 0 < n {
        all.push(lot.min(n));
        n = n.saturating_sub(lot);
        lot = lot.saturating_mul(2);
    }
    all
}

/// What plans leave of a job's boards lies on the rack as far as the job has these, after all that the act itself says: boards that are put
/// back take what was to be left of them off the rack, those taken again bring it there. What is used already stays.
pub(super) fn settle(book: &Book, act: &mut Act) {
    let jobs = jobs_of(book, act);
    let by_plans = |job: &Id| book.ever(Subject::Job(*job)).any(|(entry, _)| matches!(entry.fact, Fact::PlanUsed(_)));
    if !jobs.iter().any(by_plans) {
        return;
    }
    let mut then = book.clone();
    let mut clock = Clock::new(Device::new([0; 8]), book.last_stamp());
    act.clone().stamped(book, &mut clock).iter().for_each(|entry| drop(then.add(entry)));
    let mut goes = vec![];
    let mut comes = vec![];
    for plan in jobs.iter().filter_map(|job| fold::job(&then, *job)).flat_map(|job| wanted(&then, &job.plans)) {
        let (mut standing, gone): (Vec<Left>, Vec<Left>) = plan.left.into_iter().partition(|left| left.stands);
        let off = |left: &Left| plan.off.contains(&left.id);
        comes.extend(gone.iter().filter(|left| !off(left)).map(|left| left.id));
        standing.retain(off);
        goes.extend(standing.into_iter().map(|left| left.id));
    }
    let goes = together(goes, |ids| rests::allowed(&then, ids).is_ok());
    let comes = together(comes, |ids| restore::allowed(&then, ids).is_ok());
    if !goes.is_empty() {
        act.add(Struck { entries: goes });
    }
    if !comes.is_empty() {
        act.add(Restored { entries: comes });
    }
}

/// As many as may go together.
fn together(all: Vec<Id>, may: impl Fn(&[Id]) -> bool) -> Vec<Id> {
    if all.is_empty() || may(&all) {
        return all;
    }
    let mut some = vec![];
    for id in all {
        some.push(id);
        if !may(&some) {
            some.pop();
        }
    }
    some
}

/// The jobs whose pieces an act takes or puts back.
fn jobs_of(book: &Book, act: &Act) -> Set<Id> {
    let of = |fact: &Fact| match fact {
        Fact::PiecesTaken(f) => Some(f.job),
        Fact::PiecesFreed(f) => Some(f.job),
        Fact::PlanUsed(f) => Some(f.job),
        _ => None,
    };
    let of = |fact: &Fact| of(rests::counted(book, fact));
    let mut jobs = Set::new();
    for (_, fact) in act.facts() {
        match fact {
            Fact::Struck(Struck { entries }) | Fact::Restored(Restored { entries }) => {
                jobs.extend(entries.iter().filter_map(|id| book.entry(*id)).filter_map(|(entry, _)| of(&entry.fact)));
            }
            fact => jobs.extend(of(fact)),
        }
    }
    jobs
}

/// Pieces that a plan left, in a fact of its act.
#[derive(Clone, Copy)]
struct Left {
    id: Id,
    n: Count,
    stands: bool,
}

/// What a plan left of a pile, and such of it as is not to lie there.
struct Wanted {
    left: Vec<Left>,
    off: Vec<Id>,
}

fn wanted(book: &Book, plans: &[KeptPlan]) -> Vec<Wanted> {
    let of_plan = |it: InUse<'_>| {
        let act = book.entry(it.plan.id).and_then(|(entry, _)| entry.act).unwrap_or(it.plan.id);
        let mut of: Sorted<Id, Vec<Left>> = Sorted::new();
        for (entry, struck) in book.act(act).into_iter().filter_map(|id| book.entry(id)) {
            if let Fact::PiecesLeft(f) = &entry.fact {
                of.entry(f.of).or_default().push(Left { id: entry.id, n: f.n, stands: !struck });
            }
        }
        let share = move |pile: Id| it.shares.iter().find(|((_, of), _)| *of == pile).map(|(_, share)| *share);
        let took = fold::pieces_taken(book, it.plan.id);
        let one = move |(pile, left): (Id, Vec<Left>)| {
            let took = took.iter().any(|((_, of), n)| *of == pile && 0 < *n);
            Some(Wanted { off: too_many(&left, share(pile)?, took), left })
        };
        of.into_iter().filter_map(one).listed()
    };
    fold::shared(book, plans).into_iter().flat_map(of_plan).listed()
}

/// What boards that are not there would leave; nothing lies there where all that was taken for it is back. Each board leaves as much as
/// any.
fn too_many(left: &[Left], share: Share, took: bool) -> Vec<Id> {
    let all = left.iter().fold(0, |sum: Count, left| sum.saturating_add(left.n));
    let has = if took && share.took == 0 { 0 } else { share.needs.saturating_sub(share.lacks) };
    let each = if share.needs == 0 { all } else { all.div_ceil(share.needs) };
    let mut over = all.saturating_sub(has.saturating_mul(each));
    let mut lots = left.to_vec();
    order_by_key(&mut lots, |left| Reverse(left.n));
    let goes = |left: &Left| {
        let goes = left.n <= over;
        over = if goes { over.saturating_sub(left.n) } else { over };
        goes
    };
    lots.retain(goes);
    lots.into_iter().map(|left| left.id).listed()
}

/// What plans left of a pile is of its wood, and has the sides it has now where it was taken from the board as that was: these are corrected with the pile, and
/// so is what is left of them in turn. A pile that holds other pieces too stays as it is.
pub(super) fn corrected(book: &Book, haul: &Haul, (of, facts): (&Pile, &PileFacts), act: &mut Act) {
    let mut open: Vec<(Id, [Corrected; 2])> = vec![(of.id, [(of.thickness, facts.thickness), (of.width, facts.width)])];
    let mut done = vec![of.id];
    let is_other = |wood: &Key, pile: &Pile| pile.wood == of.wood && pile.wood.as_ref() != Some(wood);
    while let Some((of, sides)) = open.pop() {
        for pile in left_of(book, haul, of) {
            if done.contains(&pile.id) {
                continue;
            }
            let goes = |(was, is): Corrected, side: Option<Length>| is.filter(|is| was.is_some() && side == was && Some(*is) != was);
            let [thickness, width] = [goes(sides[0], pile.thickness), goes(sides[1], pile.width)];
            let wood = facts.wood.clone().filter(|wood| is_other(wood, pile));
            if thickness.or(width).is_none() && wood.is_none() {
                continue;
            }
            let (name, length, length_to) = (None, None, None);
            act.add(PileDescribed { haul: haul.id, pile: pile.id, wood, name, thickness, width, length, length_to });
            done.push(pile.id);
            open.push((pile.id, [(pile.thickness, thickness), (pile.width, width)]));
        }
    }
}

/// A side as it was, and as it is said now.
type Corrected = (Option<Length>, Option<Length>);

/// The piles that hold nothing but what plans left of a pile.
pub fn left_of<'a>(book: &Book, haul: &'a Haul, of: Id) -> Vec<&'a Pile> {
    let left = book.about(Subject::Haul(haul.id)).filter_map(|entry| if let Fact::PiecesLeft(f) = &entry.fact { Some(f) } else { None });
    let left = left.listed();
    let alone = |pile: &&Pile| {
        let mut into = left.iter().filter(|f| f.pile == pile.id).peekable();
        0 < pile.left && pile.left == pile.taken && into.peek().is_some() && into.all(|f| f.of == of)
    };
    haul.piles.iter().filter(alone).listed()
}

fn pile_for(haul: &mut Haul, left: &LeftOver, act: &mut Act) -> Answer<Id> {
    let wood = haul.pile(left.of).ok_or(Refusal::NotThere)?.wood.clone();
    let [thickness, width, length] = left.size.map(Some);
    let sized = |pile: &Pile| [pile.thickness, pile.width, pile.length] == [thickness, width, length];
    let alike = |pile: &&mut Pile| pile.id != left.of && pile.wood == wood && sized(pile) && pile.length_to.is_none();
    if let Some(pile) = haul.piles.iter_mut().find(alike) {
        within(pile.taken, left.n).map_err(of_pile(pile))?;
        pile.taken = pile.taken.saturating_add(left.n);
        return Ok(pile.id);
    }
    let name = Some(left.name.clone()).filter(|name| !name.is_empty());
    let facts = PileFacts { wood: wood.clone(), name, thickness, width, length, length_to: None };
    let label = next_label(haul)?;
    let id = new_pile(act, haul.id, label.clone(), &facts)?;
    haul.piles.push(Pile { label, wood, thickness, width, length, taken: left.n, ..Pile::new(id) });
    Ok(id)
}
