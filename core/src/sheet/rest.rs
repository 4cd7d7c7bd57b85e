//! A part of a batch is sold: left per hour with the rest unsold, and if the rest go at what is asked now.

use super::account::{Account, of};
use super::gallery::{are_several, at_galleries};
use super::job::{as_it_stands, with_drives};
use super::marks::one_paid;
use super::promised::{drives, planned_drives};
use super::rate::rate;
use super::shop::Shop;
use crate::ledger::fold::Job;
use crate::ledger::kind::sale::Paid;
use crate::money::consign::Handed;
use crate::money::left::{PerHour, Way};
use crate::quantity::{Count, Id, Money};
use crate::refusal::Answer;

/// What the pieces that are left may still make of an hour.
#[derive(Clone, Debug, PartialEq)]
pub struct Rest {
    /// Pieces that are free,
    pub n: Count,
    /// and what is asked for each now.
    pub each: Money,
    /// Pieces at galleries,
    pub at_galleries: Count,
    /// at more than one of them,
    pub at_several: bool,
    /// and what galleries hand over for them if they sell each at its tag.
    pub from_galleries: Money,
    /// Left for an hour with them unsold, at nothing; with all costs and hours still to come, as the other.
    pub unsold: PerHour,
    /// Left for an hour if each goes at what is asked, paid in one way, and those at galleries at their tags.
    pub sold: PerHour,
}

impl Rest {
    /// Pieces that may still bring something.
    pub fn is_any(&self) -> bool {
        0 < self.n.saturating_add(self.at_galleries)
    }
}

/// Both figures of a job of which something was sold; none without a price, or where costs or hours are not known.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`], [`crate::refusal::Refusal::FeesEatThePrice`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn rest(shop: &Shop, id: Id, paid: Paid) -> Answer<Option<Rest>> {
    let job = shop.job(id)?;
    let account = of(shop, &job)?;
    if account.sold.pieces.saturating_add(account.sold.by_galleries) == 0 {
        return Ok(None);
    }
    let (standing, _) = account.pricing.standing(shop, &job, one_paid(paid))?;
    match as_it_stands(shop, &job, &account)?.zip(standing.ask) {
        Some((unsold, each)) => if_sold(shop, (&job, &account), (unsold, each), paid),
        None => Ok(None),
    }
}

fn if_sold(shop: &Shop, (job, account): (&Job, &Account), (unsold, each): (Way, Money), paid: Paid) -> Answer<Option<Rest>> {
    // Where more went from one lot than it had, as two phones may note the same sale, no more than is left of all.
    let mut left = account.sold.at_galleries;
    let mut there = at_galleries(shop, job)?;
    for lot in &mut there {
        lot.n = lot.n.min(left);
        left = left.saturating_sub(lot.n);
    }
    let of_all = |one: &dyn Fn(Handed) -> Money| {
        Money::sum(job.currency, there.iter().map(|lot| one(lot.of_one).times(lot.n)).collect::<Answer<Vec<Money>>>()?)
    };
    let (from_galleries, kept_of_it) = (of_all(&|one| one.handed_over)?, of_all(&|one| one.you_get)?);
    let more = shop.terms_of(job, paid).you_get(each)?.times(job.free())?.plus(kept_of_it)?;
    let year = rate(shop, account.currency).year;
    // Each goes to a buyer of its own.
    let more_drives = drives(job).saturating_add(job.free()).saturating_sub(planned_drives(job));
    let (costs, time) = with_drives(account, (unsold.costs, unsold.time), more_drives)?;
    let sold = Way { you_get: unsold.you_get.plus(more)?, costs, time };
    Ok(Some(Rest {
        n: job.free(),
        each,
        at_galleries: account.sold.at_galleries,
        at_several: are_several(there.iter().filter(|lot| 0 < lot.n).map(|lot| lot.gallery)),
        from_galleries,
        unsold: unsold.per_hour(year.as_ref())?,
        sold: sold.per_hour(year.as_ref())?,
    }))
}
