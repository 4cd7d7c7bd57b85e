//! Cans and packs: opened, used of, empty.

use super::Act;
use super::money::{On, came_back, home, plain, spent, still_spent};
use crate::ledger::Book;
use crate::ledger::fold::{self, Can};
use crate::ledger::kind::Exact;
use crate::ledger::kind::money::{MoneySpent, PackOpened};
use crate::quantity::{Decimal, Id, Money, Wall};
use crate::refusal::{Answer, Refusal};

/// A can that is there.
pub(super) fn there(book: &Book, id: Id) -> Answer<Can> {
    fold::workshop(book).cans.into_iter().find(|can| can.id == id).ok_or(Refusal::NotThere)
}

/// So much of a can, as spending of that day.
pub(super) fn share(book: &Book, (can, used): (Id, Decimal), at: Wall) -> Answer<MoneySpent> {
    of(&there(book, can)?, used, at)
}

/// Opens a can, on the day on its lid, and takes so much of it now in the same act.
pub(super) fn open(book: &Book, (pack, takes): (&PackOpened, Option<(On, Decimal)>), act: &mut Act) -> Answer<()> {
    plain(pack.sum)?;
    if pack.of.0 <= Decimal::ZERO {
        return Err(Refusal::NothingToShareBy);
    }
    if pack.what.trim().is_empty() {
        return Err(Refusal::NameMissing);
    }
    let wall = act.now().wall;
    let id = act.add(pack.clone());
    let Some((on, used)) = takes else { return Ok(()) };
    let can = Can::of(id, pack, wall);
    let (job, haul) = home(book, on, can.paid.currency())?;
    act.add(MoneySpent { job, haul, ..of(&can, used, wall)? });
    Ok(())
}

/// So much of what was used of a can in a spending goes back into it: the spending's part of its sum goes back with it, of the last of it all
/// that is left.
pub(super) fn back(book: &Book, (spending, used): (Id, Decimal)) -> Answer<MoneySpent> {
    let was = spent(book, spending)?;
    let (Some(id), Some(share)) = (was.can, was.used) else { return Err(Refusal::NotThere) };
    let can = there(book, id)?;
    let there = no_more_than((share.0, can.went_back(spending)), used)?;
    let rest = still_spent(book, (spending, was))?;
    let part = was.sum.amount().checked_mul(used).and_then(|sum| sum.checked_div(share.0)).ok_or(Refusal::OutOfRange)?;
    let part = Money::book(part, was.sum.currency())?;
    let sum = if used == there || rest.amount() < part.amount() { rest } else { part };
    let fact = came_back(book, spending, (Some(sum), None))?;
    Ok(MoneySpent { used: Some(Exact(Decimal::ZERO.saturating_sub(used).normalize())), of: was.of, pack: was.pack, can: was.can, ..fact })
}

/// Of so much that was used, less what came back before, this comes back: what could.
pub(super) fn no_more_than((was, before): (Decimal, Decimal), back: Decimal) -> Answer<Decimal> {
    let used = was.checked_sub(before).ok_or(Refusal::OutOfRange)?.max(Decimal::ZERO);
    match () {
        () if back <= Decimal::ZERO => Err(Refusal::NothingAsked),
        () if used < back => Err(Refusal::MoreBackThanUsed { back, used }),
        () => Ok(used),
    }
}

/// What was taken back is spent again, or comes back again, where what was written since leaves room for it.
pub(super) fn can_be_spent(book: &Book, id: Id, f: &MoneySpent) -> Answer<()> {
    let can = f.can.and_then(|id| there(book, id).ok());
    let used = f.used.map_or(Decimal::ZERO, |used| used.0);
    let Some((spending, was)) = f.back.and_then(|id| Some((id, spent(book, id).ok()?))) else {
        // A spending that is gone takes along what came back of it, and brings it again.
        let used = can.as_ref().map_or(used, |can| used.saturating_sub(can.went_back(id)));
        let holds = can.filter(|_| f.back.is_none()).map(|can| can.unused());
        return holds.filter(|holds| *holds < used).map_or(Ok(()), |holds| Err(Refusal::MoreThanPack { used, holds }));
    };
    if let (Some(can), Some(was)) = (can, was.used) {
        no_more_than((was.0, can.went_back(spending)), Decimal::ZERO.saturating_sub(used))?;
    }
    came_back(book, spending, (Some(Money::zero(f.sum.currency()).minus(f.sum)?), f.n.map(|n| n.0.abs()))).map(drop)
}

fn of(can: &Can, used: Decimal, at: Wall) -> Answer<MoneySpent> {
    let sum = can.charge(used, at.day())?;
    let (of, pack) = (Some(Exact(can.holds)), Some(can.paid));
    Ok(MoneySpent {
        sum,
        kind: can.kind.clone(),
        what: Some(can.what.clone()),
        used: Some(Exact(used)),
        of,
        pack,
        can: Some(can.id),
        back: None,
        job: None,
        haul: None,
        when: None,
        n: None,
        each: None,
    })
}
