//! Orders about galleries: leave pieces there, what it sold and still owes, what it gives back.

use super::Act;
use super::job::found;
use super::money::{not_below_nothing, plain};
use super::sale::{GiveUpOrder, SaleCommand, enough, share, within};
use crate::ledger::Book;
use crate::ledger::fold::job::facts::same;
use crate::ledger::fold::{self, Job};
use crate::ledger::kind::Exact;
use crate::ledger::kind::sale as kind;
use crate::money::tax::Tax;
use crate::quantity::{Count, Id, Moment, Money, Side};
use crate::refusal::{Answer, Refusal};

pub(super) fn decide(book: &Book, command: &SaleCommand, act: &mut Act) -> Answer<()> {
    match command {
        SaleCommand::Consign(f) => {
            let job = found(book, f.job)?;
            enough(f.n, job.free())?;
            plain(same(job.currency, f.tag)?)?;
            share(f.share.0)?;
            act.add(f.clone());
        }
        SaleCommand::NoteConsignmentPaid(f) => paid(book, f, act)?,
        SaleCommand::NoteConsignmentReturned(f) => {
            enough(f.n, at(&found(book, f.job)?, f.lot)?)?;
            act.add(f.clone());
        }
        SaleCommand::GiveUpRest(order) => give_up(&found(book, order.job)?, order, act)?,
        _ => {}
    }
    Ok(())
}

/// What it handed over and what it still owes are what it owed.
fn paid(book: &Book, f: &kind::ConsignmentPaid, act: &mut Act) -> Answer<()> {
    let job = found(book, f.job)?;
    enough(f.n, at(&job, f.lot)?)?;
    let due = f.due.map(|due| plain(same(job.currency, due)?)).transpose()?;
    let sum = plain(same(job.currency, f.sum)?)?.plus(due.unwrap_or(Money::zero(job.currency)))?;
    if let Some(sold_for) = f.sold_for {
        within(sum, plain(same(job.currency, sold_for)?)?)?;
    }
    if let Some(tax) = f.tax {
        within(plain(same(job.currency, tax)?)?, sum)?;
    }
    let as_now = fold::workshop(book).tax(job.currency, job.tax);
    let Tax { rate, side } = f.rate.map_or(as_now, |rate| Tax { rate: rate.0, side: f.side.unwrap_or(Side::Inside) });
    not_below_nothing(rate)?;
    let due = due.filter(|due| !due.is_zero());
    act.add(kind::ConsignmentPaid { rate: Some(Exact(rate)), side: Some(side), due, ..f.clone() });
    Ok(())
}

/// It hands over something of what it still owes, and no more than that.
pub(super) fn rest(job: &Job, (of, sum, when): (Id, Money, Option<Moment>), act: &mut Act) -> Answer<()> {
    let met = plain(same(job.currency, sum)?)?;
    if met.is_zero() {
        return Err(Refusal::NothingAsked);
    }
    let due = lacks(job, of)?;
    if due.amount() < met.amount() {
        return Err(Refusal::MoreThanDue { met, due });
    }
    act.add(kind::ConsignmentRestPaid { job: job.id, of, sum: met, when });
    Ok(())
}

/// All that it still lacks will not be paid.
fn give_up(job: &Job, order: &GiveUpOrder, act: &mut Act) -> Answer<()> {
    let sum = lacks(job, order.of)?;
    act.add(kind::ConsignmentRestGivenUp { job: job.id, of: order.of, sum, when: order.when });
    Ok(())
}

/// What a gallery still owes of one sale.
fn lacks(job: &Job, of: Id) -> Answer<Money> {
    let dues = job.selling.gallery_dues(job.currency)?;
    Ok(dues.into_iter().find(|due| due.of == of).ok_or(Refusal::NotThere)?.lacks)
}

/// Pieces a gallery has: of one consignment where it is named.
fn at(job: &Job, lot: Option<Id>) -> Answer<Count> {
    match lot {
        Some(id) => job.selling.lot(id).map(|lot| lot.there()).ok_or(Refusal::NotThere),
        None => Ok(job.selling.at_galleries_now()),
    }
}
