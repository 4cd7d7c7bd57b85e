//! Before the buyer speaks: what is for sale with ask and settle, what is agreed and due, and the three fields of day one.

use super::account::{Account, of as reckon};
use super::jobs::{Section, section};
use super::shop::Shop;
use crate::ledger::fold::{Job, jobs};
use crate::money::left::Way;
use crate::quantity::Sorted;
use crate::quantity::{Count, Currency, Decimal, Id, Moment, Money, Span};
use crate::refusal::Answer;

/// The Price place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PriceSheet {
    pub agreed: Vec<AgreedRow>,
    pub for_sale: Vec<ForSale>,
    /// What is due in each currency.
    pub due: Sorted<Currency, Money>,
}

/// A piece with a price.
#[derive(Clone, Debug, PartialEq)]
pub struct ForSale {
    pub job: Id,
    pub name: String,
    /// Pieces no agreement speaks for.
    pub left: Count,
    pub of: Count,
    pub tag: Option<Money>,
    pub ask: Option<Money>,
    pub settle: Option<Money>,
    pub costs_covered: Option<Money>,
    pub lowest_pay: Option<Money>,
    pub your_rate: Option<Money>,
    pub not_under: Option<Money>,
    pub gaps: Vec<Gap>,
}

/// What was agreed, with what is due.
#[derive(Clone, Debug, PartialEq)]
pub struct AgreedRow {
    pub job: Id,
    pub name: String,
    pub agreed: Id,
    pub n: Count,
    pub price: Money,
    pub date: Option<Moment>,
    pub buyer: Option<Id>,
    /// What is due of the whole job.
    pub due: Money,
}

/// What is missing before every mark can be shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Gap {
    Tag,
    Costs,
    Hours,
    Rate,
}

/// The Price place, the latest job first.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::CurrenciesMixed`].
pub fn price(shop: &Shop) -> Answer<PriceSheet> {
    let mut sheet = PriceSheet::default();
    for job in jobs(shop.book) {
        let due = job.due()?;
        if !due.is_zero() {
            let so_far = sheet.due.get(&job.currency).copied().unwrap_or(Money::zero(job.currency));
            sheet.due.insert(job.currency, so_far.plus(due)?);
        }
        sheet.agreed.extend(job.selling.open().map(|agreement| AgreedRow {
            job: job.id,
            name: job.name.clone(),
            agreed: agreement.id,
            n: agreement.n.saturating_sub(agreement.sold),
            price: agreement.sum,
            date: agreement.due.or(job.described.due),
            buyer: agreement.buyer,
            due,
        }));
        if 0 < job.free() && section(&job)? != Section::Ended {
            sheet.for_sale.push(for_sale(&job, &reckon(shop, &job)?));
        }
    }
    sheet.agreed.sort_by_key(|row| (row.date.is_none(), row.date));
    sheet.for_sale.sort_by_key(|row| row.tag.is_none());
    Ok(sheet)
}

fn for_sale(job: &Job, account: &Account) -> ForSale {
    let pricing = &account.pricing;
    let shown = |mark: Option<crate::money::price::Mark>| mark.map(|mark| mark.shown);
    ForSale {
        job: job.id,
        name: job.name.clone(),
        left: job.free(),
        of: job.pieces,
        tag: pricing.tag,
        ask: pricing.ask,
        settle: pricing.settle,
        costs_covered: shown(pricing.marks.costs_covered),
        lowest_pay: shown(pricing.marks.lowest_pay),
        your_rate: shown(pricing.marks.your_rate),
        not_under: pricing.not_under,
        gaps: gaps(account),
    }
}

fn gaps(account: &Account) -> Vec<Gap> {
    let pricing = &account.pricing;
    let all = [
        (Gap::Tag, pricing.tag.is_none()),
        (Gap::Costs, pricing.work.costs.is_none()),
        (Gap::Hours, pricing.work.time.is_none()),
        (Gap::Rate, pricing.hourly.your_rate.is_none()),
    ];
    all.into_iter().filter(|(_, is_missing)| *is_missing).map(|(gap, _)| gap).collect()
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
