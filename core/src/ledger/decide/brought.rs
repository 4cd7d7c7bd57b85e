//! Orders about what comes back of a sale: all of it, some of its pieces, or money alone.

use super::Act;
use super::job::some_pieces;
use super::money::plain;
use super::sale::kept;
use crate::ledger::fold::job::facts::same;
use crate::ledger::fold::{AgreementState, Job, Lines, Sale, Till};
use crate::ledger::kind::Exact;
use crate::ledger::kind::sale::{AgreementCancelled, Carried, PiecesBroughtBack, PriceAgreed, SaleReversed};
use crate::quantity::{Count, Id, Moment, Money};
use crate::refusal::{Answer, Refusal};

/// Some pieces of a sale come back; all of them take it back.
#[derive(Clone, Debug, PartialEq)]
pub struct BringBackOrder {
    pub job: Id,
    pub sale: Id,
    pub n: Count,
    /// Of what came in for them, what is not handed back.
    pub kept: Option<Money>,
    /// The agreement it carried out comes to nothing with it.
    pub ends: bool,
    /// They are made good and handed over again: where no order of them stands, that is agreed anew in the same act, and what is kept is paid ahead
    /// for it.
    pub again: bool,
    pub when: Option<Moment>,
}

/// No piece comes back: the buyer keeps all of them, at a price that is so much less: what is still due goes down first, and never comes; the rest goes
/// back of what came in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LetKeepOrder {
    pub job: Id,
    pub sale: Id,
    pub sum: Money,
    pub when: Option<Moment>,
}

pub(super) fn let_keep(job: &Job, order: &LetKeepOrder, act: &mut Act) -> Answer<()> {
    let sale = job.selling.sale(order.sale).filter(|sale| sale.reversed.is_none()).ok_or(Refusal::NotThere)?;
    let met = plain(same(job.currency, order.sum)?)?;
    if met.is_zero() {
        return Err(Refusal::NothingAsked);
    }
    let received = job.selling.paid(job.currency, sale.id)?;
    // All that was handed over, to the coin, is all of its price.
    let in_coins = received.plus(job.selling.coins_of_sale(job.currency, sale.id)?)?;
    let met = if met == in_coins && received == sale.sum { received } else { met };
    let lacks = job.selling.lacks(job.currency, sale)?;
    if sale.sum.amount() < met.amount() {
        return Err(if lacks.is_zero() {
            Refusal::MoreThanReceived { met, received }
        } else {
            Refusal::MoreThanPrice { met, price: sale.sum }
        });
    }
    let less = sale.less(met)?;
    // What is due goes down first; what of it never came, goes back to nobody, whatever comes in later.
    let back = Some(if lacks.amount() < less.sum.amount() { less.sum.minus(lacks)? } else { Money::zero(met.currency()) });
    let (job, sale, Lines { n, sum, tax }) = (job.id, sale.id, less);
    act.add(PiecesBroughtBack { job, sale, n, sum, tax, kept: None, when: order.when, back });
    Ok(())
}

pub(super) fn bring_back((job, till): (&Job, &Till), order: &BringBackOrder, act: &mut Act) -> Answer<()> {
    some_pieces(order.n)?;
    let sale = job.selling.sale(order.sale).filter(|sale| sale.reversed.is_none()).ok_or(Refusal::NotThere)?;
    if sale.n < order.n {
        return Err(Refusal::NotThatMany { asked: order.n, there: sale.n });
    }
    let done = |id| job.selling.agreement(id).filter(|agreed| agreed.state == AgreementState::Done);
    let ends = if order.ends { Some(sale.agreed.and_then(done).ok_or(Refusal::NotThere)?.id) } else { None };
    if sale.n == order.n {
        let (job_id, sale, kept, when) = (job.id, sale.id, order.kept, order.when);
        reverse(job, &SaleReversed { job: job_id, sale, kept, when, back: None }, act)?;
    } else {
        let back = job.selling.comes_back(till, (sale.id, order.n))?;
        let part = sale.part(back)?;
        let came = job.selling.came_for(job.currency, (sale.id, back))?;
        let went = Some(kept(job, order.kept, came)?);
        let (job, sale, sum, tax) = (job.id, sale.id, part.sum, part.tax);
        act.add(PiecesBroughtBack { job, sale, n: order.n, sum, tax, kept: order.kept, when: order.when, back: went });
    }
    let stands = |it: &Id| job.selling.agreement(*it).is_some_and(|it| matches!(it.state, AgreementState::Done | AgreementState::Open));
    if order.again && !sale.agreed.as_ref().is_some_and(stands) {
        let sum = if sale.n == order.n { sale.sum } else { sale.part(job.selling.comes_back(till, (sale.id, order.n))?)?.sum };
        act.add(again(job, sale, (order.n, sum)));
    }
    if let Some(agreed) = ends {
        let back = Some(job.selling.received_ahead(job.currency, agreed)?);
        act.add(AgreementCancelled { job: job.id, agreed, kept: None, no_show: None, back });
    }
    Ok(())
}

/// The same once more, at the price and with the tax it was sold with.
fn again(job: &Job, sale: &Sale, (n, sum): (Count, Money)) -> PriceAgreed {
    PriceAgreed {
        job: job.id,
        n,
        sum,
        carried: sale.carried.unwrap_or(Carried::Fetched),
        deposit: None,
        due: None,
        buyer: sale.buyer,
        replaces: None,
        rate: Some(Exact(sale.rate)),
        side: Some(sale.side),
    }
}

pub(super) fn reverse(job: &Job, f: &SaleReversed, act: &mut Act) -> Answer<()> {
    let sale = job.selling.sale(f.sale).filter(|sale| sale.reversed.is_none()).ok_or(Refusal::NotThere)?;
    let paid = job.selling.paid(job.currency, sale.id)?;
    let back = Some(kept(job, f.kept, paid)?);
    act.add(SaleReversed { back, ..f.clone() });
    Ok(())
}
