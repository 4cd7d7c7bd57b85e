//! What tags come to mean where the side is changed on which sales tax stands.

use super::shop::Shop;
use crate::ledger::fold::{Job, jobs};
use crate::ledger::kind::money::{TagSet, TillSet};
use crate::money::tax::Tax;
use crate::quantity::{Currency, Id, Listed, Money, Side, order_by_key};
use crate::refusal::Answer;

/// One tag before the side is changed, and after it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TurnedTag {
    pub job: Id,
    pub name: String,
    pub tag: Money,
    /// What a buyer hands over for it now, and would if it stays as it is.
    pub pays: Money,
    pub would_pay: Money,
    /// The tag for which a buyer hands over as much as now, and what that comes to: no tag may hit it to the minor unit.
    pub same_pay: Money,
    pub then_pays: Money,
    /// Its job is over: nobody is asked about it.
    pub is_over: bool,
}

/// Tags for which a buyer would hand over another sum with the usual tax on this side: those of what is for sale first, then those of pieces that
/// are gone, any of which may come back.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn turned(shop: &Shop, currency: Currency, side: Side) -> Answer<Vec<TurnedTag>> {
    let mut after = shop.workshop.as_ref().clone();
    after.tills.entry(currency).or_default().side = Some(side);
    let mut all: Vec<Job> = jobs(shop.book).filter(|job| job.currency == currency).listed();
    order_by_key(&mut all, |job| job.free() == 0);
    let mut found = vec![];
    for job in all {
        let (Some(tag), new) = (job.tag, after.tax(currency, job.tax)) else { continue };
        let (pays, would_pay) = (shop.tax_of(&job).charge(tag)?, new.charge(tag)?);
        if pays != would_pay {
            let same_pay = tag_for(pays, new)?;
            let then_pays = new.charge(same_pay)?;
            let is_over = job.ended.is_some();
            found.push(TurnedTag { job: job.id, name: job.name, tag, pays, would_pay, same_pay, then_pays, is_over });
        }
    }
    Ok(found)
}

/// The tag a buyer hands over so much for.
fn tag_for(pays: Money, tax: Tax) -> Answer<Money> {
    if tax.is_on_top() { Ok(tax.apart(pays)?.before) } else { Ok(pays) }
}

/// The side as a fact, and with it each tag, so that buyers hand over what they did.
pub fn turning(currency: Currency, side: Side, tags: &[TurnedTag]) -> (TillSet, Vec<TagSet>) {
    let till = TillSet { side: Some(side), ..TillSet::of(currency) };
    (till, tags.iter().map(|tag| TagSet { job: tag.job, sum: tag.same_pay }).listed())
}
