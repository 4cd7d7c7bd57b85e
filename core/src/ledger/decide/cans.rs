//! Cans and packs: opened, used of, empty.

use super::Act;
use super::money::{On, home, plain};
use crate::ledger::Book;
use crate::ledger::fold::{self, Can};
use crate::ledger::kind::Exact;
use crate::ledger::kind::money::{MoneySpent, PackOpened};
use crate::quantity::{Decimal, Id, Wall};
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
