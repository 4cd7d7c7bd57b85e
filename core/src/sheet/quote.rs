//! What a quote says of a job: hours and price as a range, and a day.

use super::account::{Account, account};
use super::dates::{DatesSheet, Given, dates};
use super::estimate::{estimate, left};
use super::shop::Shop;
use crate::ledger::fold::{Job, Quote};
use crate::ledger::kind::dates::QuoteGiven;
use crate::ledger::kind::sale::Paid;
use crate::money::price::{Work, proposed};
use crate::quantity::{Count, Day, Id, Money, Span};
use crate::refusal::Answer;

/// A quote stands so many days where nothing else is said [J].
pub const STANDS: i32 = 30;

/// What can be quoted for all pieces of a job together.
#[derive(Clone, Debug, PartialEq)]
pub struct QuoteSheet {
    pub job: Id,
    pub n: Count,
    /// All hours of the job, its haul's too: half the time, and nine times in ten.
    pub likely: Span,
    pub safe: Span,
    /// Costs so far and those planned.
    pub costs: Money,
    /// The least price points that pay your rate for these hours; none without a rate, or where nothing says how long it takes.
    pub low: Option<Money>,
    pub high: Option<Money>,
    /// The day on which it is ready nine times in ten.
    pub ready: Option<Day>,
    pub until: Day,
    /// The quote that was given last, and whether its day is over.
    pub given: Option<Quote>,
    pub is_over: bool,
}

/// What can be quoted for a job.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`], and as an account.
pub fn quote(shop: &Shop, id: Id, given: Given) -> Answer<QuoteSheet> {
    let job = shop.job(id)?;
    let sheet = estimate(shop, id, given.with_factor)?;
    let to_do = Span::sum(left(shop, &job, &sheet.rows));
    let wider = sheet.progress.likely.zip(sheet.progress.safe).and_then(|(likely, safe)| to_do.in_ratio(safe, likely));
    let account = account(shop, id)?;
    let so_far = account.hours.total.unwrap_or(sheet.progress.so_far);
    let (likely, safe) = (so_far.plus(to_do), so_far.plus(wider.unwrap_or(to_do)));
    let costs = account.costs.total.unwrap_or(Money::zero(job.currency)).plus(account.costs.still)?;
    let known = sheet.found.is_some();
    let price = |time| if known { price(shop, &job, (&account, costs), time) } else { Ok(None) };
    let [low, high] = [price(likely)?, price(safe)?];
    let DatesSheet { safe: ready, .. } = dates(shop, id, given)?;
    let today = given.now.day();
    let is_over = job.quote.is_some_and(|quote| quote.until.is_some_and(|until| until < today));
    let until = today.plus(STANDS);
    Ok(QuoteSheet { job: id, n: job.pieces, likely, safe, costs, low, high, ready, until, given: job.quote, is_over })
}

/// The least price point that pays for so much time at your rate, in notes and coins or by transfer.
fn price(shop: &Shop, job: &Job, (account, costs): (&Account, Money), time: Span) -> Answer<Option<Money>> {
    let Some(rate) = account.pricing.hourly.your_rate else { return Ok(None) };
    let work = Work { costs: Some(costs), time: Some(time), pieces: job.pieces };
    let Some(need) = work.need(rate, job.pieces)? else { return Ok(None) };
    Ok(proposed(need, shop.terms(job.currency, Paid::Card), shop.points(job.currency), job.currency).ok().map(|price| price.charge))
}

impl QuoteSheet {
    /// The quote as a fact, as it is given now; none without a price.
    pub fn fact(&self) -> Option<QuoteGiven> {
        let (low, high) = self.low.zip(self.high)?;
        let (n, ready, until) = (Some(self.n), self.ready, Some(self.until));
        Some(QuoteGiven { job: self.job, low, high, n, ready, until, buyer: None, likely: Some(self.likely), safe: Some(self.safe) })
    }
}
