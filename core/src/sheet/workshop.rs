//! The workshop: what an hour must earn, costs that belong to no job, suppliers, and how old the copy is.

use super::haul;
use super::rate::{RateSheet, rate};
use super::shop::Shop;
use crate::ledger::fold::{Booked, Copy, hauls};
use crate::ledger::kind::book::Role;
use crate::quantity::Sorted;
use crate::quantity::{Currency, Day, Id, Key, Money, Offset, Span, Units, Wall};
use crate::refusal::Answer;

/// The Workshop place.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkshopSheet {
    pub currency: Option<Currency>,
    pub units: Option<Units>,
    /// One for each currency that has one, the workshop's own first.
    pub rates: Vec<RateSheet>,
    pub suppliers: Vec<Id>,
    /// Costs of no job this year, in each currency.
    pub costs: Sorted<Currency, YearCosts>,
    /// Hours logged this year: to jobs, and in all.
    pub logged: Span,
    pub worked: Span,
    /// None where no copy was ever kept.
    pub copy: Option<Copy>,
    pub copy_age: Option<Span>,
}

/// A year of costs that belong to no job.
#[derive(Clone, Debug, PartialEq)]
pub struct YearCosts {
    pub total: Money,
    pub by_kind: Sorted<Key, Money>,
    pub lines: Vec<Booked>,
    /// What no job and no rack carries of all hauls.
    pub of_hauls: Money,
}

/// The Workshop place; the year is that of the place where it is looked at.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn workshop(shop: &Shop, offset: Offset) -> Answer<WorkshopSheet> {
    let known = &shop.workshop;
    let year = Wall::new(shop.now, offset).day().as_ymd().0;
    let (worked, logged) = time_of(shop, (year, offset));
    let mut currencies: Vec<Currency> = known.rates.keys().copied().chain(known.currency).collect();
    currencies.sort_by_key(|currency| (Some(*currency) != known.currency, *currency));
    currencies.dedup();
    Ok(WorkshopSheet {
        currency: known.currency,
        units: known.units,
        rates: currencies.into_iter().map(|currency| rate(shop, currency)).collect(),
        suppliers: known.people.iter().filter(|person| person.role == Role::Supplier).map(|person| person.id).collect(),
        costs: costs(shop, (year, offset))?,
        logged,
        worked,
        copy: known.copy,
        copy_age: known.copy.map(|copy| copy.at.until(shop.now)),
    })
}

/// Hours of the year in all, and those of them logged to jobs and their hauls.
fn time_of(shop: &Shop, (year, offset): (i32, Offset)) -> (Span, Span) {
    let start = |year| Day::ymd(year, 1, 1).unwrap_or_default().start(offset);
    let (from, to) = (start(year), start(year.saturating_add(1)));
    let of = |to_jobs: bool| {
        let runs = shop.bench.runs().filter(|run| !to_jobs || run.work.on != crate::bench::On::Nothing);
        Span::sum(runs.map(|run| run.worked_within(from, to, shop.now)))
    };
    (of(false), of(true))
}

fn costs(shop: &Shop, (year, offset): (i32, Offset)) -> Answer<Sorted<Currency, YearCosts>> {
    let mut years = Sorted::new();
    let this_year = |line: &&Booked| Wall::new(line.at, offset).day().as_ymd().0 == year;
    for line in shop.workshop.costs.iter().filter(this_year) {
        let costs = years.entry(line.sum.currency()).or_insert_with(|| YearCosts::none(line.sum.currency()));
        costs.total = costs.total.plus(line.sum)?;
        if let Some(kind) = line.kind.clone() {
            let sum = costs.by_kind.entry(kind).or_insert(Money::zero(line.sum.currency()));
            *sum = sum.plus(line.sum)?;
        }
        costs.lines.push(line.clone());
    }
    for began in hauls(shop.book).filter(|haul| haul.began.day().as_ymd().0 == year) {
        let Some(share) = haul::haul(shop, began.id)?.workshop.filter(|share| !share.cost.is_zero()) else { continue };
        let costs = years.entry(began.currency).or_insert_with(|| YearCosts::none(began.currency));
        costs.total = costs.total.plus(share.cost)?;
        costs.of_hauls = costs.of_hauls.plus(share.cost)?;
    }
    Ok(years)
}

impl YearCosts {
    fn none(currency: Currency) -> YearCosts {
        let zero = Money::zero(currency);
        YearCosts { total: zero, by_kind: Sorted::new(), lines: vec![], of_hauls: zero }
    }
}
