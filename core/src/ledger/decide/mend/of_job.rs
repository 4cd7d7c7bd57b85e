//! Pieces of a job are put right: so many it took, or gave back. All that was done with them since has to hold.

use crate::haul::{Haul, Pile};
use crate::ledger::decide::haul::of_pile;
use crate::ledger::decide::rests::{Claim, hold, resting};
use crate::ledger::{Book, Fact, fold};
use crate::quantity::{Count, Id, Sorted};
use crate::refusal::{Answer, Refusal};

/// So many pieces a job took of a pile, or gave back to it.
#[derive(Clone, Copy)]
struct Handed {
    haul: Id,
    pile: Id,
    job: Id,
    n: Count,
    back: bool,
}

fn handed(book: &Book, entry: Id) -> Option<Handed> {
    let (entry, _) = book.entry(entry).filter(|(_, struck)| !struck)?;
    match &entry.fact {
        Fact::PiecesTaken(f) => Some(Handed { haul: f.haul, pile: f.pile, job: f.job, n: f.n, back: false }),
        Fact::PiecesFreed(f) => Some(Handed { haul: f.haul, pile: f.pile, job: f.job, n: f.n, back: true }),
        _ => None,
    }
}

/// Refuses what would not hold once pieces of a job are put right, or that is taken back or put back; any other count, and one that stands
/// in one of the books alone, is no matter of it.
pub(in crate::ledger::decide) fn holds((book, then): (&Book, &Book), entry: Id) -> Answer<()> {
    let Some((old, new)) = handed(book, entry).zip(handed(then, entry)).filter(|(old, new)| old.n != new.n) else { return Ok(()) };
    let more = i64::from(new.n).saturating_sub(i64::from(old.n));
    let more = if new.back { more.saturating_neg() } else { more };
    if 0 < more {
        super::super::job::going_on(book, new.job)?;
    }
    let [was, is] = [book, then].map(|book| fold::haul(book, new.haul).ok_or(Refusal::NotThere));
    let (was, is) = (was?, is?);
    let both = (was.pile(new.pile).ok_or(Refusal::NotThere)?, is.pile(new.pile).ok_or(Refusal::NotThere)?);
    it_has(both, new, more)?;
    let less = Count::try_from(more.saturating_neg()).unwrap_or(0);
    hold(&was, resting(&was, Some(&is), |pile, claim| if (pile, claim) == (new.pile, Claim::InJob(new.job)) { less } else { 0 }))?;
    lie_there((&was, &is), both, new)?;
    are_apart(both, new, more)?;
    plans_have((book, then), new)
}

/// The job has so many more, or fewer, and gave back no more than it had.
fn it_has((was, is): (&Pile, &Pile), new: Handed, more: i64) -> Answer<()> {
    let off = i64::from(was.in_job(new.job)).saturating_add(more).saturating_sub(i64::from(is.in_job(new.job)));
    let lacks = Count::try_from(off.unsigned_abs()).unwrap_or(Count::MAX);
    match (off, new.back) {
        (0, _) => Ok(()),
        (..0, false) => Err(Refusal::GivenBackSince { pieces: new.n.saturating_add(lacks), left: new.n }),
        (..0, true) => Err(too_many(new, lacks)),
        (_, _) => Err(lacking(was, new, lacks)),
    }
}

/// As many lay there as left it, went to other piles or were counted again since.
fn lie_there((was, is): (&Haul, &Haul), (before, after): (&Pile, &Pile), new: Handed) -> Answer<()> {
    let under = before.told_on_rack().min(0).saturating_sub(after.told_on_rack()).max(0);
    let turned = |pile: &Pile| pile.taken.abs_diff(is.pile(pile.id).map_or(0, |pile| pile.taken));
    let turned = was.piles.iter().fold(0, |sum: Count, pile| sum.max(turned(pile)));
    match Count::try_from(under).unwrap_or(Count::MAX).max(turned) {
        0 => Ok(()),
        lacks => Err(lacking(before, new, lacks)),
    }
}

/// So many are not on the rack for what left it: too many were taken, or too few came back.
fn lacking(pile: &Pile, new: Handed, lacks: Count) -> Refusal {
    let rest = || Refusal::PiecesRestOnIt { pieces: new.n.saturating_add(lacks), left: new.n };
    if new.back { of_pile(pile)(rest()) } else { too_many(new, lacks) }
}

fn too_many(new: Handed, lacks: Count) -> Refusal {
    Refusal::NotThatMany { asked: new.n, there: new.n.saturating_sub(lacks) }
}

/// What is set apart for others stays so.
fn are_apart((was, is): (&Pile, &Pile), new: Handed, more: i64) -> Answer<()> {
    let is_less = |(job, n): (&Id, &Count)| *job != new.job && is.reserved_for(*job) < *n;
    if !was.apart().iter().any(is_less) {
        return Ok(());
    }
    let (asked, there) = (Count::try_from(more).unwrap_or(0), was.on_rack());
    Err(Refusal::SetApart { asked, there, apart: there.saturating_sub(was.free_for(Some(new.job))) })
}

/// A plan in use of pieces the job had is of as many still. What went back since is missing of it, as what is put back by hand is.
fn plans_have((book, then): (&Book, &Book), new: Handed) -> Answer<()> {
    let Some(job) = fold::job(book, new.job).filter(|job| job.plans.iter().any(|plan| plan.used)) else { return Ok(()) };
    let needs = |book: &Book| -> Sorted<Id, Count> {
        let of_pile = |((_, pile), share): &((Id, Id), fold::Share)| (*pile == new.pile).then_some(share.needs);
        let all = fold::shared(book, &job.plans).into_iter();
        all.map(|it| (it.plan.id, it.shares.iter().filter_map(of_pile).fold(0, Count::saturating_add))).collect()
    };
    let after = needs(then);
    let left = |plan: &Id| after.get(plan).copied().unwrap_or(0);
    let fewer = needs(book).into_iter().find(|(plan, n)| left(plan) < *n);
    fewer.map_or(Ok(()), |(plan, pieces)| Err(Refusal::PlanRestsOnIt { pieces, left: left(&plan) }))
}
