//! A part of a batch is sold: left per hour with the rest unsold, and if the rest go at what is asked now.

use super::account::{Account, of};
use super::job::{as_it_stands, with_drives};
use super::marks::one_paid;
use super::promised::{drives, planned_drives};
use super::rate::rate;
use super::shop::Shop;
use crate::ledger::fold::Job;
use crate::ledger::kind::sale::Paid;
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
    /// Left for an hour with them unsold, at nothing; with all costs and hours still to come, as the other.
    pub unsold: PerHour,
    /// Left for an hour if each goes at what is asked, paid in one way.
    pub sold: PerHour,
}

/// Both figures of a job of which something was sold; none where a gallery has some of it, whose price is open, and none without a price, or where costs or hours are not known.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`], [`crate::refusal::Refusal::FeesEatThePrice`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn rest(shop: &Shop, id: Id, paid: Paid) -> Answer<Option<Rest>> {
    let job = shop.job(id)?;
    let account = of(shop, &job)?;
    if account.sold.pieces.saturating_add(account.sold.by_galleries) == 0 || 0 < account.sold.at_galleries {
        return Ok(None);
    }
    let (standing, _) = account.pricing.standing(shop, &job, one_paid(paid))?;
    match as_it_stands(shop, &job, &account)?.zip(standing.ask) {
        Some((unsold, each)) => if_sold(shop, (&job, &account), (unsold, each), paid),
        None => Ok(None),
    }
}

fn if_sold(shop: &Shop, (job, account): (&Job, &Account), (unsold, each): (Way, Money), paid: Paid) -> Answer<Option<Rest>> {
    let more = shop.terms_of(job, paid).you_get(each)?.times(job.free())?;
    let year = rate(shop, account.currency).year;
    // Each goes to a buyer of its own.
    let more_drives = drives(job).saturating_add(job.free()).saturating_sub(planned_drives(job));
    let (costs, time) = with_drives(account, (unsold.costs, unsold.time), more_drives)?;
    let sold = Way { you_get: unsold.you_get.plus(more)?, costs, time };
    Ok(Some(Rest { n: job.free(), each, unsold: unsold.per_hour(year.as_ref())?, sold: sold.per_hour(year.as_ref())? }))
}
