//! The marks on the scale of a job's price: what each sum would cover, what is asked, where to settle.

use super::account::{Costs, Hours};
use super::rate::RateSheet;
use super::shop::Shop;
use super::waiting::known;
use crate::ledger::fold::Job;
use crate::ledger::kind::sale::Paid;
use crate::money::offer::{Agreed, Standing, settle};
use crate::money::price::{Hourly, Mark, Marks, Proposed, Work, marks, proposed};
use crate::quantity::{Count, Money, Span};
use crate::refusal::{Answer, Refusal};

/// The price of one piece, seen from all sides. It is reckoned for a card, which costs most.
#[derive(Clone, Debug, PartialEq)]
pub struct Pricing {
    /// Costs and hours of the whole batch, so far and still to come.
    pub work: Work,
    /// Nobody knows what is still to come of its hours: those of the work are the least.
    pub at_least: bool,
    pub hourly: Hourly,
    pub marks: Marks,
    /// The tag as set.
    pub tag: Option<Money>,
    /// What the buyer would hand over for the tag; without one, for the price proposed.
    pub ask: Option<Money>,
    /// The least price point that pays your rate.
    pub proposed: Option<Proposed>,
    /// Without what waiting is worth.
    pub settle: Option<Money>,
    /// The maker set it.
    pub settle_set: Option<Money>,
    /// Why there are no marks, where tax and fees leave nothing of a charge.
    pub refused: Option<Refusal>,
}

/// The price of one piece of a job.
///
/// # Errors
/// [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`].
pub fn pricing(shop: &Shop, job: &Job, (costs, hours): (&Costs, &Hours), rate: &RateSheet) -> Answer<Pricing> {
    let work = work(job, costs, hours)?;
    let (terms, points, hourly) = (shop.terms_of(job, Paid::Card), shop.points(job.currency), rate.hourly());
    let (marks, refused) = match marks(&work, hourly, terms, 1) {
        Ok(marks) => (marks, None),
        Err(refusal) => (Marks::default(), Some(refusal)),
    };
    // A price is proposed where its hours are whole: else one hour would do for a week.
    let at_least = hours.to_come.is_none();
    let proposed = marks.your_rate.filter(|_| !at_least).and_then(|mark| proposed(mark.need, terms, points, job.currency).ok());
    let tagged = job.tag.map(|tag| terms.tax.charge(tag)).transpose()?;
    let ask = tagged.or(proposed.map(|proposed| proposed.charge));
    let standing = Standing { ask, set: job.settle, ..Standing::default() };
    let settle = settle(&standing, points)?;
    Ok(Pricing { work, at_least, hourly, marks, tag: job.tag, ask, proposed, settle, settle_set: job.settle, refused })
}

/// Costs and hours so far, with what is still to come of them.
fn work(job: &Job, costs: &Costs, hours: &Hours) -> Answer<Work> {
    let all = costs.total.map(|total| total.plus(costs.still)).transpose()?;
    // Before the first minute there is what is to come, where the share of the hauls is known.
    let so_far = hours.total.or(hours.haul);
    let time = so_far.map(|so_far| so_far.plus(hours.to_come.unwrap_or(Span::ZERO))).filter(|time| Span::ZERO < *time);
    Ok(Work { costs: all, time, pieces: job.pieces })
}

impl Pricing {
    /// What stands before the buyer speaks, for `n` pieces paid in one way: the marks are reckoned anew.
    ///
    /// # Errors
    /// [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`].
    pub fn standing(&self, shop: &Shop, job: &Job, (n, paid): (Count, Paid)) -> Answer<(Standing, Marks)> {
        let terms = shop.terms_of(job, paid);
        let (marks, take) = (marks(&self.work, self.hourly, terms, n)?, terms.take()?);
        // Guesses that say nothing leave the marks of the work.
        let known = known(shop, job)?;
        let worth = known.as_ref().and_then(|known| known.worth.as_ref().ok());
        let one = Standing { set: self.settle_set, ..Standing::default() }.for_pieces(n)?;
        let tag = self.tag.or(self.proposed.map(|proposed| proposed.tag));
        let holds = |mark: Option<Mark>| mark.map(|mark| mark.holds);
        let standing = Standing {
            agreed: agreed(job)?,
            your_rate: holds(marks.your_rate),
            costs_covered: holds(marks.costs_covered),
            at_least: self.at_least,
            not_under: worth.and_then(|worth| worth.under(n, take).ok()),
            band: known.as_ref().filter(|_| worth.is_some()).and_then(|known| known.band(n, take)),
            ask: asked(shop, (job, tag), (n, paid))?,
            coin: shop.till(job.currency).coin(Some(paid))?,
            ..one
        };
        Ok((standing, marks))
    }
}

/// What is asked today for `n` of them, paid in one way: what waiting has come down to, else the tags with their tax; in notes to the coin.
/// None without a tag and without guesses.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`], [`Refusal::CoinOutOfRange`].
pub fn ask_today(shop: &Shop, job: &Job, (n, paid): (Count, Paid)) -> Answer<Option<Money>> {
    asked(shop, (job, job.tag), (n, paid))
}

fn asked(shop: &Shop, (job, tag): (&Job, Option<Money>), (n, paid): (Count, Paid)) -> Answer<Option<Money>> {
    // Guesses that say nothing leave the tag.
    let known = known(shop, job).ok().flatten();
    let came_down = known.as_ref().and_then(|known| known.worth.as_ref().ok()).map(|worth| worth.ask);
    let sum = match (came_down, tag) {
        (Some(ask), _) => ask.times(n)?,
        // Tax on top of several tags is one line: of their sum.
        (None, Some(tag)) => shop.tax_of(job).charge(tag.times(n)?)?,
        (None, None) => return Ok(None),
    };
    shop.till(job.currency).in_coins(Some(paid), sum).map(Some)
}

/// The agreement that answers first: where every piece that is left is promised.
pub fn agreed(job: &Job) -> Answer<Option<Agreed>> {
    if 0 < job.free() || job.selling.promised() == 0 {
        return Ok(None);
    }
    let (mut price, mut rest, mut due) = (Money::zero(job.currency), Money::zero(job.currency), Money::zero(job.currency));
    for agreement in job.selling.open() {
        price = price.plus(agreement.sum)?;
        rest = rest.plus(agreement.sum.minus(agreement.sold_for)?)?;
        due = due.plus(job.selling.still_due(job.currency, agreement)?)?;
    }
    Ok(Some(Agreed { price, rest, due }))
}

/// Where to settle for one: as set, else midway between ask and not under where waiting was guessed.
pub fn settle_now(shop: &Shop, job: &Job, pricing: &Pricing) -> Option<Money> {
    let standing = pricing.standing(shop, job, (1, Paid::Card)).map(|(standing, _)| settle(&standing, shop.points(job.currency)));
    standing.and_then(|settle| settle).unwrap_or(pricing.settle)
}
