//! A plan in use that goes while some of its boards are cut: those stay in the job as used, with what is left of them on the rack; the
//! others go back.

use super::haul::{enough, of_pile, pile_of};
use super::plan::{Before, use_of};
use super::{Lying, rests};
use crate::ledger::kind::book::Struck;
use crate::ledger::kind::haul::PiecesFreed;
use crate::ledger::{Book, Fact};
use crate::quantity::{Count, Id, Listed, order_by_key};
use crate::refusal::Answer;
use std::cmp::Reverse;

/// Boards of a plan in use that are not cut, and what would be left of them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Uncut {
    pub plan: Id,
    /// So many go back to a pile.
    pub back: Vec<(Lying, Count)>,
    /// Of what the plan left, in the order in which it was written, so many pieces are on boards that are not cut.
    pub left: Vec<Count>,
}

/// What is written where it goes: it is in use no more, and what was to be left of boards that are not cut lies there no more.
pub(super) fn goes(book: &Book, job: Id, uncut: &Uncut) -> Answer<Before> {
    let mut entries = use_of(book, uncut.plan, false)?;
    let left = left_by(book, uncut.plan);
    entries.extend(left.iter().zip(&uncut.left).flat_map(|(left, n)| lots_of(&left.lots, *n)));
    let free = |(Lying { haul, pile }, n): &(Lying, Count)| {
        let there = pile_of(book, *haul, *pile)?;
        enough(*n, there.in_job(job)).map_err(of_pile(&there))?;
        Ok(PiecesFreed { haul: *haul, pile: *pile, job, n: *n })
    };
    let frees = uncut.back.iter().map(free).collect::<Answer<Vec<_>>>()?;
    Ok(Before { entries, frees })
}

/// The same as an act of its own.
pub(super) fn put_back(book: &Book, uncut: &Uncut, act: &mut super::Act) -> Answer<()> {
    let job = job_of(book, uncut.plan).ok_or(crate::refusal::Refusal::NotThere)?;
    let gone = goes(book, job, uncut)?;
    rests::allowed(book, &gone.entries)?;
    for freed in gone.frees {
        act.add(freed);
    }
    act.add(Struck { entries: gone.entries });
    Ok(())
}

fn job_of(book: &Book, plan: Id) -> Option<Id> {
    if let Fact::PlanKept(f) = &book.entry(plan)?.0.fact { Some(f.job) } else { None }
}

/// What a plan left of a pile in one size, and where it lies.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeftBy {
    pub at: Lying,
    of: Id,
    /// The facts of it that stand, with their pieces.
    lots: Vec<(Id, Count)>,
}

impl LeftBy {
    /// Pieces that lie there.
    pub fn n(&self) -> Count {
        self.lots.iter().fold(0, |sum, (_, n)| sum.saturating_add(*n))
    }
}

/// What a plan left, in the order in which it was written; what lies there no more has its place too.
pub fn left_by(book: &Book, plan: Id) -> Vec<LeftBy> {
    let act = book.entry(plan).and_then(|(entry, _)| entry.act).unwrap_or(plan);
    let mut all: Vec<LeftBy> = vec![];
    for (entry, struck) in book.act(act).into_iter().filter_map(|id| book.entry(id)) {
        let Fact::PiecesLeft(f) = &entry.fact else { continue };
        let (at, lot) = (Lying { haul: f.haul, pile: f.pile }, (!struck).then_some((entry.id, f.n)));
        // What is left of one pile in one size may be several facts.
        match all.last_mut().filter(|left| (left.at, left.of) == (at, f.of)) {
            Some(left) => left.lots.extend(lot),
            None => all.push(LeftBy { at, of: f.of, lots: lot.into_iter().listed() }),
        }
    }
    all
}

/// The facts that are so many pieces together: their sizes are such that any number comes out.
fn lots_of(lots: &[(Id, Count)], mut n: Count) -> Vec<Id> {
    let mut all = lots.to_vec();
    order_by_key(&mut all, |(_, lot)| Reverse(*lot));
    let goes = |(_, lot): &(Id, Count)| {
        let goes = *lot <= n;
        n = if goes { n.saturating_sub(*lot) } else { n };
        goes
    };
    all.retain(goes);
    all.into_iter().map(|(id, _)| id).listed()
}
