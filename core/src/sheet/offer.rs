//! A buyer names a sum: the word of verdict, what to say next, and what it leaves for an hour one tap further.
//!
//! Every sum here is all that is handed over, for as many pieces as are asked about.

mod instead;

pub use instead::{Ask, Concession};

use super::account::{Account, of as reckon};
use super::carried::Lacking;
pub use super::marks::Driven;
use super::marks::lower_tag;
pub use super::promised::Parts;
use super::promised::{costs_and_hours, drives, parts_of, promised};
use super::shop::Shop;
use super::waiting::known;
use crate::ledger::fold::{Job, TaxBy, part};
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::left::{PerHour, Way};
use crate::money::offer::{Standing, Verdict, say, settle, verdict};
use crate::money::point::Points;
use crate::money::price::Marks;
use crate::quantity::{Count, Currency, Id, Money, Span};
use crate::refusal::{Answer, Refusal};

/// What is asked about: pieces, and how they would be paid and carried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asking {
    pub n: Count,
    pub paid: Paid,
    pub carried: Carried,
    /// What it would be taxed with, where that is not as its job is.
    pub tax: Option<TaxBy>,
}

/// The offer screen.
#[derive(Clone, Debug, PartialEq)]
pub struct OfferSheet {
    pub job: Id,
    pub name: String,
    pub currency: Currency,
    /// What it would be taxed with.
    pub tax: TaxBy,
    /// Tax comes on top of the tag: every sum here is with it.
    pub is_on_top: bool,
    pub points: Points,
    pub asking: Asking,
    /// Pieces no agreement speaks for.
    pub free: Count,
    /// Whether the band of doubt is reckoned, where that takes a while or can't be: until then the word goes by not under alone.
    pub slow_band: Option<bool>,
    /// Marks for the scale, for all `n` pieces.
    pub marks: Marks,
    pub standing: Standing,
    pub settle: Option<Money>,
    pub offer: Option<Money>,
    /// What is on the tags of all of them, as a buyer hands it over.
    pub tagged: Option<Money>,
    /// The sum that is spoken of: what was offered, else what was agreed, else the ask of today, else the mark above all others.
    pub named: Option<Money>,
    pub verdict: Option<Verdict>,
    /// The next thing to say, where something above the offer is.
    pub say: Option<Money>,
    /// The tag of one piece, and settle of one where the maker set it.
    pub tag: Option<Money>,
    /// The tag that would say what is asked today, where that came down under it and pieces are free.
    pub lower_tag: Option<Money>,
    pub settle_set: Option<Money>,
    /// What of the sum that is spoken of goes out and what you get; of what was agreed where no other sum is.
    pub parts: Option<Parts>,
    /// What that sum leaves for an hour; none where costs or hours are not known.
    pub left: Option<Leaves>,
    /// All its hours are worked: nothing of them is to come.
    pub all_worked: bool,
    /// Of its costs, the fees of what was handed back; none where nothing was lost so.
    pub fees_lost: Option<Money>,
    /// What keeps the share of a haul, and so costs and hours, unknown.
    pub lacking: Option<Lacking>,
    /// Of its hours, what is no more than a guess by so many earlier pieces of which no kind was said, or by the default of its kind.
    pub by_any: Option<(Count, Span)>,
    /// Operations that count as done by their hours alone.
    pub unnoted: Vec<String>,
    /// Beside its hours, what looks like a forgotten stop and was not answered for.
    pub unsettled: Span,
    /// Its job has ended: all that was logged counts, what is to settle too.
    pub ended: bool,
    /// The same of its hauls, all of each.
    pub hauls_unsettled: Span,
    /// The pay of who worked along in them: no part of the costs.
    pub unsettled_pay: Money,
    /// What the agreed price leaves for an hour.
    pub agreed: Option<Leaves>,
    /// What one drive to a buyer still costs and takes, however many go along; none where nothing of one is planned.
    pub delivery: Option<(Money, Span)>,
    /// What was driven to deliver so far, and which pieces bear it, whoever fetches.
    pub driven: Option<Driven>,
    /// What can be said in place of a better price, by what it leaves for an hour, best first.
    pub concessions: Vec<Concession>,
}

/// What a way of selling leaves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Leaves {
    pub way: Way,
    pub left: Money,
    pub per_hour: PerHour,
}

/// The offer screen of a job; `offer` is none before the buyer has spoken.
///
/// # Errors
/// [`Refusal::NotThere`], [`Refusal::NothingAsked`], [`Refusal::NotThatMany`], [`Refusal::CurrenciesMixed`].
pub fn offer(shop: &Shop, id: Id, asking: Asking, offer: Option<Money>) -> Answer<OfferSheet> {
    let own = shop.job(id)?;
    let job = asked_about(own.clone(), asking.tax);
    let account = reckon(shop, &job)?;
    let (free, n) = (job.free(), asking.n);
    if n == 0 {
        return Err(Refusal::NothingAsked);
    }
    let there = job.left();
    if there < n {
        return Err(Refusal::NotThatMany { asked: n, there });
    }
    let (standing, marks) = account.pricing.standing(shop, &job, asking)?;
    let mark = marks.your_rate.or(marks.lowest_pay).or(marks.costs_covered).map(|mark| mark.holds);
    let (points, terms) = (shop.points(job.currency), shop.terms_of(&job, asking.paid));
    let tagged = job.tag.map(|tag| terms.tax.charge(tag.times(n)?)).transpose()?;
    let named = offer.or(standing.agreed.map(|agreed| agreed.rest)).or(standing.ask).or(mark);
    let spoken = named.filter(|_| offer.is_some() || standing.agreed.is_none());
    let at = |sum: Option<Money>, asking| sum.map(|sum| leaves(shop, (&job, &account), sum, asking)).transpose();
    Ok(OfferSheet {
        job: id,
        name: job.name.clone(),
        tax: job.tax,
        is_on_top: terms.tax.is_on_top(),
        currency: job.currency,
        points,
        free,
        slow_band: slow_band(shop, &job, &standing)?,
        settle: settle(&standing, points)?,
        verdict: offer.map(|offer| verdict(&standing, handed(shop, asking.paid, offer)?, points)).transpose()?,
        say: offer.map(|offer| say(&standing, offer, points)).transpose()?.flatten(),
        tag: account.pricing.tag,
        lower_tag: if job.free() == 0 { None } else { lower_tag(shop, &job)? },
        settle_set: account.pricing.settle_set,
        parts: match spoken {
            Some(sum) => Some(parts_of(shop, terms, (asking.paid, sum))?),
            None => standing.agreed.map(|_| promised(shop, &own, Some(asking.paid))).transpose()?,
        },
        left: at(spoken, asking)?.flatten(),
        delivery: Some(account.pricing.delivery).filter(|_| account.is_brought()),
        driven: account.pricing.driven,
        fees_lost: fees_lost((&job, &account), n)?,
        lacking: account.costs.lacking(),
        by_any: account.hours.by_any,
        unnoted: account.hours.unnoted.clone(),
        unsettled: account.hours.unsettled,
        ended: account.ended,
        hauls_unsettled: account.hours.hauls_unsettled,
        unsettled_pay: account.costs.unsettled,
        all_worked: account.hours.to_come == Some(Span::ZERO),
        agreed: standing.agreed.map(|_| as_agreed(shop, (&own, &account), asking)).transpose()?.flatten(),
        concessions: offer.map(|offer| instead::concessions(shop, (&job, &account), offer, asking)).transpose()?.unwrap_or_default(),
        marks,
        standing,
        asking,
        offer,
        tagged,
        named,
    })
}

/// What is handed over of a sum, in notes to the coin.
fn handed(shop: &Shop, paid: Paid, sum: Money) -> Answer<Money> {
    shop.till(sum.currency()).in_coins(Some(paid), sum)
}

fn fees_lost((job, account): (&Job, &Account), n: Count) -> Answer<Option<Money>> {
    Ok(Some(part(account.costs.fees_lost, n, job.pieces)?).filter(|lost| !lost.is_zero()))
}

/// Nothing of a band where none is waited for: what is agreed, or worth more in the end, is in no doubt.
fn slow_band(shop: &Shop, job: &Job, standing: &Standing) -> Answer<Option<bool>> {
    if standing.agreed.is_some() || standing.not_under.is_none() || standing.end_over_ask()?.is_some() {
        return Ok(None);
    }
    Ok(known(shop, job)?.filter(|known| known.is_slow()).map(|known| known.has_band()))
}

/// A job as it is asked about: taxed as was chosen, else as was spoken of.
pub fn asked_about(job: Job, tax: Option<TaxBy>) -> Job {
    Job { tax: tax.unwrap_or_else(|| spoken_of(&job)), ..job }
}

/// What its pieces are taxed with: where every piece is promised, as was spoken of when the price was agreed.
fn spoken_of(job: &Job) -> TaxBy {
    let agreed = job.selling.open().find_map(|agreement| agreement.tax).filter(|_| job.free() == 0);
    agreed.map_or(job.tax, TaxBy::Agreed)
}

/// What was agreed is for all its pieces, with a drive to each buyer who has it brought; what it was paid with is not known ahead, so by what is
/// asked.
fn as_agreed(shop: &Shop, of: (&Job, &Account), asking: Asking) -> Answer<Option<Leaves>> {
    left_with(shop, of, promised(shop, of.0, Some(asking.paid))?.you_get, (of.0.selling.promised(), drives(of.0)))
}

/// What a sum leaves in one way, in notes to the coin; none where costs or hours are not known.
pub(super) fn leaves(shop: &Shop, of: (&Job, &Account), sum: Money, asking: Asking) -> Answer<Option<Leaves>> {
    let you_get = parts_of(shop, shop.terms_of(of.0, asking.paid), (asking.paid, sum))?.you_get;
    left_of(shop, of, you_get, (asking.n, asking.carried))
}

/// What is left of what you get for `n` of the pieces, which one buyer takes; none where costs or hours are not known.
pub(super) fn left_of(shop: &Shop, of: (&Job, &Account), you_get: Money, (n, carried): (Count, Carried)) -> Answer<Option<Leaves>> {
    left_with(shop, of, you_get, (n, carried.drives()))
}

/// The same with so many drives.
fn left_with(shop: &Shop, (job, account): (&Job, &Account), you_get: Money, (n, drives): (Count, Count)) -> Answer<Option<Leaves>> {
    let pieces = job.pieces;
    let Some((work, time)) = costs_and_hours((job, account), (n, drives))?.filter(|(_, time)| Span::ZERO < *time) else { return Ok(None) };
    let Some((costs, of_n)) = work.costs_of(pieces)?.zip(work.costs_of(n)?) else { return Ok(None) };
    let way = Way { you_get, costs: of_n, time: part_of_time(time, n, pieces)? };
    let year = super::rate::rate(shop, job.currency).year;
    // An hour's worth is reckoned as if the whole batch went this way, so that the share of a cent is not lost in it.
    let batch = Way { you_get: part(you_get, pieces, n)?, costs, time };
    Ok(Some(Leaves { way, left: way.left()?, per_hour: batch.per_hour(year.as_ref())? }))
}

/// So many parts of a time of so many.
pub(super) fn part_of_time(whole: Span, n: Count, of: Count) -> Answer<Span> {
    let all = whole.as_ms().checked_mul(i64::from(n)).ok_or(Refusal::OutOfRange)?;
    all.checked_div(i64::from(of)).map(Span::ms).ok_or(Refusal::NothingToShareBy)
}
