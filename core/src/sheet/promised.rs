//! What comes of what was agreed and is still to be handed over: one reckoning for Price and for the page of the job.

use super::account::Account;
use super::shop::Shop;
use crate::ledger::fold::{Agreement, Job, Sale};
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::charge::Terms;
use crate::money::price::Work;
use crate::quantity::{Count, Decimal, Listed, Money, Span};
use crate::refusal::Answer;

/// What is handed over, taken apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Parts {
    /// All of it, to the coin it is paid in.
    pub handed: Money,
    pub tax: Money,
    pub fee: Money,
    pub you_get: Money,
}

/// A sum that is handed over at once, taken apart, in notes with the coin it is rounded by: the tax is of the sum, the fee of what is handed over.
pub(super) fn parts_of(shop: &Shop, terms: Terms, (paid, sum): (Paid, Money)) -> Answer<Parts> {
    let handed = shop.till(sum.currency()).in_coins(Some(paid), sum)?;
    let (tax, fee) = (terms.tax.apart(sum)?.tax, terms.fee.of(handed)?);
    Ok(Parts { handed, tax, fee, you_get: handed.minus(tax)?.minus(fee)? })
}

/// All that was agreed and is still to be handed over, paid so, or each as its buyer pays: each by the tax it was agreed with.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn promised(shop: &Shop, job: &Job, paid: Option<Paid>) -> Answer<Parts> {
    let paid = |agreement: &Agreement| paid.or_else(|| shop.paid_known(job, Some(agreement.id)));
    let mut all = vec![];
    for order in job.selling.open_orders() {
        for (agreement, ahead) in ahead_of_each(job, &order)? {
            all.push(of_rest(shop, (job, agreement), ahead, paid(agreement))?);
        }
    }
    let sum = |of: fn(&Parts) -> Money| Money::sum(job.currency, all.iter().map(of));
    Ok(Parts {
        handed: sum(|parts| parts.handed)?,
        tax: sum(|parts| parts.tax)?,
        fee: sum(|parts| parts.fee)?,
        you_get: sum(|parts| parts.you_get)?,
    })
}

/// What comes of the rest of one agreement: its tax, the fees of what came in ahead of it, and that of each payment that is still to come in as it
/// is paid, in notes to the coin.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn of_agreement(shop: &Shop, (job, agreement): (&Job, &Agreement), paid: Paid) -> Answer<Parts> {
    of_rest(shop, (job, agreement), Ahead::of(job, agreement)?, Some(paid))
}

/// What came in ahead of an agreement, and the fees of that.
struct Ahead {
    sum: Money,
    fees: Money,
}

impl Ahead {
    fn of(job: &Job, agreement: &Agreement) -> Answer<Ahead> {
        Ok(Ahead { sum: job.selling.received_ahead(job.currency, agreement.id)?, fees: fees_ahead(job, agreement)? })
    }
}

/// What came in ahead of an order is there once: where two phones changed it, the first of what is agreed of it has it as far as its rest goes, then the
/// next; the last has what is over.
fn ahead_of_each<'a>(job: &Job, order: &[&'a Agreement]) -> Answer<Vec<(&'a Agreement, Ahead)>> {
    let Some((last, before)) = order.split_last() else { return Ok(vec![]) };
    let first = order.first().copied().unwrap_or(last);
    let Ahead { sum: mut left, mut fees } = Ahead::of(job, first)?;
    let mut each = vec![];
    for agreement in before {
        let over = beyond(left, beyond(agreement.sum, agreement.sold_for)?)?;
        each.push((*agreement, Ahead { sum: left.minus(over)?, fees }));
        (left, fees) = (over, Money::zero(job.currency));
    }
    each.push((*last, Ahead { sum: left, fees }));
    Ok(each)
}

fn of_rest(shop: &Shop, (job, agreement): (&Job, &Agreement), ahead: Ahead, paid: Option<Paid>) -> Answer<Parts> {
    let tax = agreement.tax.unwrap_or(shop.tax_of(job));
    let rest = agreement.sum.minus(agreement.sold_for)?;
    let before = job.selling.owed_before(job.currency, agreement)?;
    let (mut handed, mut fee) = (rest, ahead.fees);
    for due in to_come(job, agreement, (rest, ahead.sum))? {
        let all = due.plus(before)?;
        handed = handed.plus(shop.till(job.currency).in_coins(paid, all)?)?.minus(all)?;
        fee = fee.plus(fee_of(shop, paid, due)?)?;
    }
    // The coin is with the payment, and no part of what was agreed.
    let tax = tax.apart(rest)?.tax;
    Ok(Parts { handed, tax, fee, you_get: handed.minus(tax)?.minus(fee)? })
}

/// The same with what is owed of pieces of the order that were handed over before, which the hand-over brings in one payment: its tax is in the
/// measure of what lacks of their price.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::OutOfRange`].
pub fn at_hand_over(shop: &Shop, of: (&Job, &Agreement), paid: Paid) -> Answer<Parts> {
    let (own, (job, agreement)) = (of_agreement(shop, of, paid)?, of);
    let before = job.selling.owed_before(job.currency, agreement)?;
    let (tax, fee) = (job.selling.tax_before(job.currency, agreement)?, fee_before(shop, of, Some(paid))?);
    Ok(Parts {
        handed: own.handed.plus(before)?,
        tax: own.tax.plus(tax)?,
        fee: own.fee.plus(fee)?,
        you_get: own.you_get.plus(before)?.minus(tax)?.minus(fee)?,
    })
}

/// What the fees will be of what is owed of pieces that were handed over, as each buyer pays: with the rest of an order that is open what they are more
/// at its hand-over, else each sale's own, by how its order was paid where nothing came in for it. Where nothing came in, and nothing was said, nobody
/// knows how it will be paid: it bears none yet, of an order that is open or handed over as of none.
pub(super) fn fees_owed(shop: &Shop, job: &Job) -> Answer<Money> {
    let open = job.selling.open_orders().into_iter().filter_map(|order| order.first().copied()).listed();
    let before = |agreement: &&Agreement| fee_before(shop, (job, agreement), shop.paid_known(job, Some(agreement.id)));
    let alone = job.selling.unpaid(job.currency)?;
    let of_sale = |(sale, lacks): &(&Sale, Money)| fee_of(shop, shop.paid_known(job, Some(sale.id)), *lacks);
    let fees = open.iter().map(before).chain(alone.iter().filter(|(_, lacks)| Decimal::ZERO < lacks.amount()).map(of_sale));
    Money::sum(job.currency, fees.collect::<Answer<Vec<Money>>>()?)
}

fn fee_before(shop: &Shop, (job, agreement): (&Job, &Agreement), paid: Option<Paid>) -> Answer<Money> {
    let before = job.selling.owed_before(job.currency, agreement)?;
    let (rest, ahead) = (agreement.sum.minus(agreement.sold_for)?, job.selling.received_ahead(job.currency, agreement.id)?);
    let due = Money::sum(job.currency, to_come(job, agreement, (rest, ahead))?)?;
    if before.is_zero() { Ok(before) } else { fee_of(shop, paid, due.plus(before)?)?.minus(fee_of(shop, paid, due)?) }
}

/// The fee of a payment, in notes of what is handed over in coins; none where nobody knows how it will be paid.
fn fee_of(shop: &Shop, paid: Option<Paid>, sum: Money) -> Answer<Money> {
    let till = shop.till(sum.currency());
    let Some(paid) = paid else { return Ok(Money::zero(sum.currency())) };
    let coins = till.in_coins(Some(paid), sum)?;
    if coins.is_zero() { Ok(coins) } else { till.fee_of(paid).of(coins) }
}

/// How much more one is than another; nothing where it is less.
fn beyond(one: Money, other: Money) -> Answer<Money> {
    if one.amount() < other.amount() { Ok(Money::zero(one.currency())) } else { one.minus(other) }
}

/// What is still to come in of the rest of an agreement, payment by payment: the parts that are planned, else what its deposit lacks and the
/// balance. Once some of it is handed over, and what came in does not cover that, it is one sum; as it is where what came in is of another's order too.
fn to_come(job: &Job, agreement: &Agreement, (rest, ahead): (Money, Money)) -> Answer<Vec<Money>> {
    let none = Money::zero(job.currency);
    let due = rest.minus(ahead)?;
    let first = agreement.deposit.unwrap_or(none).minus(ahead)?;
    // What is handed over already is owed as sales, not as what is to come.
    let is_all = ahead == job.selling.received_ahead(job.currency, agreement.id)?;
    let is_even = agreement.sold == 0 || job.selling.still_due(job.currency, agreement)? == due;
    let sums = match () {
        () if !is_all || !is_even || !job.selling.owed_before(job.currency, agreement)?.is_zero() => vec![due],
        () if !agreement.parts.is_empty() => job.selling.parts_due(job.currency, agreement)?.into_iter().map(|(_, lacks)| lacks).listed(),
        () if agreement.sold == 0 && Decimal::ZERO < first.amount() && first.amount() < due.amount() => vec![first, due.minus(first)?],
        () => vec![due],
    };
    Ok(sums.into_iter().filter(|sum| Decimal::ZERO < sum.amount()).listed())
}

/// The fees of what came in ahead, while nothing was handed over of it: after that they are of what was sold.
fn fees_ahead(job: &Job, agreement: &Agreement) -> Answer<Money> {
    if agreement.sold == 0 { job.selling.fees_ahead(job.currency, agreement.id) } else { Ok(Money::zero(job.currency)) }
}

/// Of those fees, what the account of the job has among all fees already.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub(super) fn fees_known(job: &Job) -> Answer<Money> {
    let orders = job.selling.open_orders();
    let fees = orders.iter().filter_map(|order| order.first()).map(|first| fees_ahead(job, first));
    Money::sum(job.currency, fees.collect::<Answer<Vec<Money>>>()?)
}

/// How all that is left of a job goes, where every piece of it is promised and goes alike.
pub fn carried(job: &Job) -> Option<Carried> {
    let ways = job.selling.open().filter_map(|agreement| agreement.carried).listed();
    let first = *ways.first()?;
    (job.free() == 0 && ways.iter().all(|way| *way == first)).then_some(first)
}

/// Drives to the buyers of what was agreed and is still to be handed over: one to each who has it brought, or of whom nothing was said.
pub fn drives(job: &Job) -> Count {
    let brought = job.selling.open().filter(|agreement| agreement.carried != Some(Carried::Fetched)).count();
    Count::try_from(brought).unwrap_or(Count::MAX)
}

/// Of a delivery that is planned, the drives as a job stands: those, and the one that is planned where any of it is free or nothing is promised.
pub fn planned_drives(job: &Job) -> Count {
    let is_planned = 0 < job.free() || job.selling.open().next().is_none();
    drives(job).max(Count::from(is_planned))
}

/// Costs and hours of a job, as if all of it went so many at a time with so many drives: none where it is fetched. None where they are not known.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub(super) fn costs_and_hours((job, account): (&Job, &Account), how: (Count, Count)) -> Answer<Option<(Work, Span)>> {
    let work = account.pricing.work_with(job, how)?;
    Ok(work.costs.and(work.time).map(|time| (work, time)))
}
