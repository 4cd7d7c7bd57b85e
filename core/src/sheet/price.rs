//! Before the buyer speaks: what is for sale with ask and settle, what is agreed and due, and the three fields of day one.

use super::account::{Account, of as reckon};
use super::carried::Lacking;
use super::due::due;
use super::gallery::{AtGallery, at_galleries};
use super::jobs::{Section, section};
use super::marks::{dearest, one_paid};
use super::offer::Asking;
use super::promised::{Parts, parts_of};
use super::rate::rate;
use super::shop::Shop;
use super::waiting::{Question, day_has_come};
use crate::ledger::fold::{Agreement, GalleryDue, Job, PartOfPay, Sale, TaxBy, jobs};
use crate::ledger::kind::job::For;
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::left::{PerHour, Way};
use crate::money::offer::{Standing, settle};
use crate::money::tax::Tax;
use crate::quantity::Sorted;
use crate::quantity::order_by_key;
use crate::quantity::{Count, Currency, Day, Decimal, Id, Listed, Money, Span, Wall};
use crate::refusal::Answer;

/// The Price place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PriceSheet {
    pub agreed: Vec<AgreedRow>,
    pub for_sale: Vec<ForSale>,
    /// Pieces with galleries.
    pub at_galleries: Vec<GalleryRow>,
    /// Sold and not paid in full.
    pub owed: Vec<OwedRow>,
    /// Sold by a gallery that handed over a part of it.
    pub galleries_owe: Vec<GalleryOwes>,
    /// What came in ahead of open agreements in each currency: it is owed as work.
    pub ahead: Sorted<Currency, Money>,
    /// What is due in each currency.
    pub due: Sorted<Currency, Money>,
}

/// A piece with a price.
#[derive(Clone, Debug, PartialEq)]
pub struct ForSale {
    pub job: Id,
    pub name: String,
    pub currency: Currency,
    /// Pieces no agreement speaks for.
    pub left: Count,
    pub of: Count,
    /// Pieces of it that are agreed and not handed over.
    pub promised: Count,
    /// It is made to order, and not agreed yet.
    pub is_to_agree: bool,
    pub tag: Option<Money>,
    /// What it is taxed with, and what that is.
    pub taxed: TaxBy,
    pub tax: Tax,
    /// Tax comes on top of the tag: every other price here is with it.
    pub is_on_top: bool,
    /// A delivery is planned of it: every price here is with it.
    pub is_brought: bool,
    /// What a buyer hands over for the tag.
    pub tagged: Option<Money>,
    pub ask: Option<Money>,
    pub settle: Option<Money>,
    pub costs_covered: Option<Money>,
    pub lowest_pay: Option<Money>,
    pub your_rate: Option<Money>,
    pub not_under: Option<Money>,
    /// Where the maker set another settle: midway between ask and not under.
    pub midway: Option<Money>,
    /// All that waiting is reckoned from was guessed.
    pub guessed: bool,
    /// The day by which it was to be sold, once that has come: nothing says what waiting is worth.
    pub over: Option<Day>,
    /// As the maker set it: what is asked may have come down below it.
    pub settle_set: Option<Money>,
    /// The tag to propose: the least price point that pays your rate.
    pub proposed: Option<Money>,
    /// By how much what you get of it is beyond that, since prices end at points.
    pub beyond: Option<Money>,
    /// The way of being paid that what is asked without a tag goes by, where it costs more than the one that all else in the rows goes by.
    pub dearer: Option<Paid>,
    /// What stands for one, two and three of them.
    pub rows: Vec<ForPieces>,
    pub gaps: Vec<Gap>,
    /// What keeps costs and hours unknown.
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
}

/// What stands before the buyer speaks, for so many pieces handed over together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ForPieces {
    pub n: Count,
    pub ask: Option<Money>,
    pub settle: Option<Money>,
    pub costs_covered: Option<Money>,
    pub not_under: Option<Money>,
    /// What the lowest pay needs.
    pub lowest_pay: Option<Money>,
    /// What your rate needs.
    pub your_rate: Option<Money>,
    /// Midway between ask and not under.
    pub midway: Option<Money>,
}

/// The least to take: from this sum on an offer hears no "no".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Least {
    /// What waiting is worth.
    NotUnder(Money),
    /// What the lowest pay needs, where that is more than waiting is worth.
    LowestPay(Money),
    /// What is a yes under both: a settle, the ask, or an end that brings more than is asked.
    Settled(Money),
}

impl Least {
    pub fn sum(self) -> Money {
        let (Least::NotUnder(sum) | Least::LowestPay(sum) | Least::Settled(sum)) = self;
        sum
    }
}

impl ForPieces {
    /// The least to take of so many, where it is known what waiting is worth.
    pub fn least(&self) -> Option<Least> {
        let under = self.not_under?;
        let lowest = self.lowest_pay.filter(|lowest| under.amount() < lowest.amount());
        let (floor, end) = (lowest.unwrap_or(under), self.end_over_ask());
        let yes = end.or(self.settle).or(self.ask).filter(|yes| yes.amount() < floor.amount());
        Some(match (yes, lowest) {
            (Some(yes), _) => Least::Settled(yes),
            (None, Some(lowest)) => Least::LowestPay(lowest),
            (None, None) => Least::NotUnder(under),
        })
    }

    /// What the lowest pay needs, where not under or a settle of the maker's own lies below it.
    pub fn over_what_may_do(&self, set: Option<Money>) -> Option<Money> {
        let lowest = self.lowest_pay?;
        [self.not_under, set].into_iter().flatten().any(|sum| sum.amount() < lowest.amount()).then_some(lowest)
    }

    /// What the end brings, where that is more than is asked.
    pub fn end_over_ask(&self) -> Option<Money> {
        let asked = Standing { ask: self.ask, not_under: self.not_under, ..Standing::default() };
        asked.end_over_ask().ok().flatten()
    }
}

/// Pieces of a job with a gallery, of one consignment.
#[derive(Clone, Debug, PartialEq)]
pub struct GalleryRow {
    pub job: Id,
    pub name: String,
    pub there: AtGallery,
}

/// What a gallery still owes of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct GalleryOwes {
    pub job: Id,
    pub name: String,
    pub due: GalleryDue,
}

/// A sale that is not paid in full.
#[derive(Clone, Debug, PartialEq)]
pub struct OwedRow {
    pub job: Id,
    pub name: String,
    pub sale: Id,
    pub price: Money,
    pub due: Money,
}

/// What was agreed, with what is due.
#[derive(Clone, Debug, PartialEq)]
pub struct AgreedRow {
    pub job: Id,
    pub name: String,
    pub agreed: Id,
    /// Still to be handed over, of so many that were agreed.
    pub n: Count,
    pub of: Count,
    /// Nothing else of its job is for sale or promised: what the job leaves is what this leaves.
    pub is_all: bool,
    pub price: Money,
    pub date: Option<Wall>,
    pub buyer: Option<Id>,
    pub carried: Option<Carried>,
    pub made_for: For,
    pub deposit: Option<Money>,
    /// What of it is still to come in, before the rest.
    pub deposit_due: Money,
    /// What is in the till of all of the order so far, also for what was handed over before it was changed.
    pub received: Money,
    /// Of that, what came in for it as it was agreed last: what a deposit is asked beyond.
    pub under: Money,
    /// What pieces of the order were sold for before it was changed: beside the price as it is agreed now.
    pub before_change: Money,
    /// What went off the price as it is agreed now, of pieces whose buyer keeps them.
    pub given_off: Money,
    /// What the coins made of what is in the till: so much more was paid, or less where it is below nothing.
    pub rounded: Money,
    /// Of what came in, what no sale has used: it is kept or handed back when it comes to nothing.
    pub ahead: Money,
    /// The fees of that: they stay paid if it is handed back.
    pub fees_ahead: Money,
    /// Of this agreement.
    pub still: Money,
    /// Of that, what is paid when the rest of the pieces is handed over.
    pub at_hand_over: Money,
    /// Of that, what is owed of pieces that were handed over before.
    pub before: Money,
    /// The parts it is paid in, each with what it lacks.
    pub parts: Vec<(PartOfPay, Money)>,
    /// What is asked next of them, where that is before the hand-over.
    pub part_asked: Option<Money>,
    /// The payments that were planned were of another sum.
    pub to_plan_anew: bool,
    /// What is due of the whole job.
    pub due: Money,
}

/// What is missing before every mark can be shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Gap {
    Tag,
    Costs,
    Hours,
    /// Those still to come: your rate is the least.
    HoursToCome,
    Rate,
}

/// The Price place, the latest job first; its marks as if everything were paid in this way.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::CurrenciesMixed`].
pub fn price(shop: &Shop, paid: Paid) -> Answer<PriceSheet> {
    let mut sheet = PriceSheet::default();
    for job in jobs(shop.book) {
        let due = due(shop, &job)?;
        // What is over of one makes up for nothing that another owes.
        let in_all = Some(due)
            .filter(|due| Decimal::ZERO < due.amount())
            .unwrap_or(Money::zero(job.currency))
            .plus(job.selling.due_from_galleries(job.currency)?)?;
        if !in_all.is_zero() {
            let so_far = sheet.due.get(&job.currency).copied().unwrap_or(Money::zero(job.currency));
            sheet.due.insert(job.currency, so_far.plus(in_all)?);
        }
        for order in job.selling.open_orders() {
            let so_far = sheet.ahead.get(&job.currency).copied().unwrap_or(Money::zero(job.currency));
            sheet.ahead.insert(job.currency, so_far.plus(owed_as_work(&job, &order)?)?);
        }
        for agreement in job.selling.open() {
            sheet.agreed.push(agreed_row(&job, agreement, due)?);
        }
        sheet.owed.extend(owed(&job)?);
        let owes = |due| GalleryOwes { job: job.id, name: job.name.clone(), due };
        sheet.galleries_owe.extend(job.selling.gallery_dues(job.currency)?.into_iter().map(owes));
        let there = at_galleries(shop, &job)?.into_iter().map(|there| GalleryRow { job: job.id, name: job.name.clone(), there });
        sheet.at_galleries.extend(there);
        if 0 < job.free() && section(shop, &job)? != Section::Ended {
            sheet.for_sale.push(for_sale(shop, &job, paid)?);
        }
    }
    order_by_key(&mut sheet.agreed, |row| (row.date.is_none(), row.date));
    order_by_key(&mut sheet.for_sale, |row| row.tag.is_none());
    Ok(sheet)
}

impl AgreedRow {
    /// Whether all that came in came in for it as it was agreed last.
    pub fn is_all_under(&self) -> bool {
        self.under.plus(self.rounded) == Ok(self.received)
    }
}

fn agreed_row(job: &Job, agreement: &Agreement, due: Money) -> Answer<AgreedRow> {
    let ahead = job.selling.received_ahead(job.currency, agreement.id)?;
    let rounded = job.selling.rounded_of_order(job.currency, agreement)?;
    let before = job.selling.owed_before(job.currency, agreement)?;
    let parts = job.selling.parts_due(job.currency, agreement)?;
    let part = parts.iter().find(|(_, lacks)| !lacks.is_zero()).filter(|(part, _)| part.due.is_some());
    let part_asked = part.map(|(_, lacks)| job.selling.asked_for_part(job.currency, agreement, *lacks)).transpose()?;
    Ok(AgreedRow {
        job: job.id,
        name: job.name.clone(),
        agreed: agreement.id,
        n: agreement.n.saturating_sub(agreement.sold),
        of: agreement.n,
        is_all: job.free() == 0 && job.selling.open().nth(1).is_none(),
        price: agreement.sum,
        date: agreement.due.or(job.described.due),
        buyer: agreement.buyer,
        carried: agreement.carried,
        made_for: job.made_for,
        deposit: agreement.deposit,
        deposit_due: job.selling.deposit_due(job.currency, agreement)?,
        received: job.selling.received_of_order(job.currency, agreement)?.plus(rounded)?,
        under: job.selling.received_under(job.currency, agreement.id)?,
        before_change: job.selling.sold_before_change(job.currency, agreement)?,
        given_off: job.selling.given_off(job.currency, agreement)?,
        rounded,
        ahead,
        fees_ahead: job.selling.fees_ahead(job.currency, agreement.id)?,
        at_hand_over: not_below_nothing(agreement.sum.minus(agreement.sold_for)?.minus(ahead)?).plus(before)?,
        before,
        still: job.selling.still_due(job.currency, agreement)?,
        parts,
        part_asked,
        to_plan_anew: job.selling.is_to_plan_anew(agreement),
        due,
    })
}

/// Sales that are not paid in full.
fn owed(job: &Job) -> Answer<Vec<OwedRow>> {
    let row = |(sale, due): (&Sale, Money)| OwedRow { job: job.id, name: job.name.clone(), sale: sale.id, price: sale.sum, due };
    Ok(job.selling.unpaid(job.currency)?.into_iter().map(row).listed())
}

/// What came in ahead of an order, as far as the pieces still to come cost: what is over is handed back.
fn owed_as_work(job: &Job, order: &[&Agreement]) -> Answer<Money> {
    let Some(one) = order.first() else { return Ok(Money::zero(job.currency)) };
    let to_come = order.iter().map(|agreement| agreement.sum.minus(agreement.sold_for)).collect::<Answer<Vec<Money>>>()?;
    let (to_come, ahead) = (Money::sum(job.currency, to_come)?, job.selling.received_ahead(job.currency, one.id)?);
    Ok(not_below_nothing(if to_come.amount() < ahead.amount() { to_come } else { ahead }))
}

fn not_below_nothing(sum: Money) -> Money {
    if sum.amount() < Decimal::ZERO { Money::zero(sum.currency()) } else { sum }
}

/// The most pieces the list says a price for together.
const TOGETHER: Count = 3;

fn for_sale(shop: &Shop, job: &Job, paid: Paid) -> Answer<ForSale> {
    let account = reckon(shop, job)?;
    let pricing = &account.pricing;
    let mut rows = rows(shop, (job, &account), (paid, paid))?;
    let dearer = dearer(shop, rows.first().and_then(|one| one.ask).filter(|_| pricing.tag.is_none()), paid)?;
    if let Some(way) = dearer {
        rows = self::rows(shop, (job, &account), (paid, way))?;
    }
    let one = rows.first();
    Ok(ForSale {
        job: job.id,
        name: job.name.clone(),
        currency: job.currency,
        left: job.free(),
        of: job.pieces,
        promised: job.selling.promised(),
        is_to_agree: super::jobs::is_to_agree(job),
        tag: pricing.tag,
        taxed: job.tax,
        tax: shop.tax_of(job),
        is_on_top: shop.tax_of(job).is_on_top(),
        is_brought: account.is_brought(),
        tagged: pricing.tag.map(|tag| shop.tax_of(job).charge(tag)).transpose()?,
        ask: one.map_or(pricing.ask, |one| one.ask),
        settle: one.map_or(pricing.settle, |one| one.settle),
        costs_covered: one.and_then(|one| one.costs_covered),
        lowest_pay: one.and_then(|one| one.lowest_pay),
        your_rate: one.and_then(|one| one.your_rate),
        not_under: one.and_then(|one| one.not_under),
        midway: one.and_then(|one| one.midway),
        guessed: Question::first_open(&job.selling.guesses).is_none(),
        over: day_has_come(shop, job)?,
        settle_set: pricing.settle_set,
        proposed: pricing.proposed.map(|proposed| proposed.tag),
        beyond: pricing.proposed.map(|proposed| Money::book(proposed.beyond, job.currency)).transpose()?,
        dearer,
        rows,
        gaps: gaps(&account),
        lacking: account.costs.lacking(),
        by_any: account.hours.by_any,
        unnoted: account.hours.unnoted.clone(),
        unsettled: account.hours.unsettled,
        ended: account.ended,
        hauls_unsettled: account.hours.hauls_unsettled,
        unsettled_pay: account.costs.unsettled,
    })
}

fn dearer(shop: &Shop, asked: Option<Money>, paid: Paid) -> Answer<Option<Paid>> {
    let Some(asked) = asked else { return Ok(None) };
    let (till, way) = (shop.till(asked.currency()), dearest(shop, asked)?);
    let [less, more] = [till.fee_of(paid).of(asked)?, till.fee_of(way).of(asked)?];
    Ok(Some(way).filter(|_| less.amount() < more.amount()))
}

/// With what is asked as it is of a way of paying of its own: of a card no coin is taken.
fn rows(shop: &Shop, (job, account): (&Job, &Account), (paid, asked_by): (Paid, Paid)) -> Answer<Vec<ForPieces>> {
    // Tax and fees that eat the price leave no marks to show; the list stays readable.
    if account.pricing.refused.is_some() {
        return Ok(vec![]);
    }
    let of = |n: Count| {
        let (standing, _) = account.pricing.standing(shop, job, Asking { n, ..one_paid(paid) })?;
        let points = shop.points(job.currency);
        let midway = settle(&Standing { set: None, ..standing }, points)?;
        let ask =
            if asked_by == paid { standing.ask } else { account.pricing.standing(shop, job, Asking { n, ..one_paid(asked_by) })?.0.ask };
        let Standing { costs_covered, not_under, lowest_pay, your_rate, .. } = standing;
        Ok(ForPieces { n, ask, settle: settle(&standing, points)?, costs_covered, not_under, lowest_pay, your_rate, midway })
    };
    (1..=job.free().min(TOGETHER)).map(of).collect()
}

fn gaps(account: &Account) -> Vec<Gap> {
    let pricing = &account.pricing;
    let all = [
        (Gap::Tag, pricing.tag.is_none()),
        (Gap::Costs, pricing.work.costs.is_none()),
        (Gap::Hours, pricing.work.time.is_none()),
        (Gap::HoursToCome, pricing.work.time.is_some() && pricing.at_least),
        (Gap::Rate, pricing.hourly.your_rate.is_none()),
    ];
    all.into_iter().filter(|(_, is_missing)| *is_missing).map(|(gap, _)| gap).listed()
}

/// What is asked about a piece that is no job.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct NotListed {
    pub hours: Option<Span>,
    pub spent: Option<Money>,
    /// All that would be handed over.
    pub offer: Option<Money>,
}

/// What an offer for a piece that is no job leaves for an hour, with tax and fee as one is paid. None until all three are said.
///
/// # Errors
/// [`crate::refusal::Refusal::NoHours`], [`crate::refusal::Refusal::CurrenciesMixed`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn not_listed(shop: &Shop, paid: Paid, asked: NotListed) -> Answer<Option<PerHour>> {
    let Some(((time, costs), offer)) = asked.hours.zip(asked.spent).zip(asked.offer) else { return Ok(None) };
    let you_get = not_listed_parts(shop, paid, offer)?.you_get;
    let year = rate(shop, offer.currency()).year;
    Way { you_get, costs, time }.per_hour(year.as_ref()).map(Some)
}

/// What of that offer goes out first, as one is paid.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn not_listed_parts(shop: &Shop, paid: Paid, offer: Money) -> Answer<Parts> {
    parts_of(shop, shop.terms(offer.currency(), paid), (paid, offer))
}

/// Day one, no job needed: what an offer leaves for an hour of the hours and the spending said. None until all three are.
///
/// # Errors
/// [`crate::refusal::Refusal::NoHours`], [`crate::refusal::Refusal::CurrenciesMixed`].
pub fn day_one(hours: Option<Span>, spent: Option<Money>, offer: Option<Money>) -> Answer<Option<Decimal>> {
    let Some(((time, costs), you_get)) = hours.zip(spent).zip(offer) else { return Ok(None) };
    Way { you_get, costs, time }.per_hour(None).map(|per_hour| Some(per_hour.left))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(hours: Option<i64>, spent: Option<i64>, offer: Option<i64>, left: Option<i64>) {
        let euro = |n: Option<i64>| n.and_then(|n| Money::whole(Decimal::from(n), Currency::EUR));
        let per_hour = day_one(hours.map(|n| Span::minutes(n.saturating_mul(60))), euro(spent), euro(offer));
        assert_eq!(per_hour, Ok(left.map(Decimal::from)));
    }

    #[test]
    fn day_one_needs_three_fields_and_no_job() {
        check(Some(10), Some(50), Some(250), Some(20));
        check(Some(10), Some(50), Some(0), Some(-5));
        check(None, Some(50), Some(250), None);
        check(Some(10), None, Some(250), None);
        check(Some(10), Some(50), None, None);
        assert!(day_one(Some(Span::ZERO), Money::whole(Decimal::ONE, Currency::EUR), Money::whole(Decimal::ONE, Currency::EUR)).is_err());
    }
}
