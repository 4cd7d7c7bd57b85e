//! What an hour must earn, as a stack, in one currency: pay, workshop, tools, tax, profit, and what of it is yours.
//!
//! Parts that were never said are named as missing; the rate is none without pay, hours and logged hours.

use super::shop::Shop;
use crate::ledger::fold::{RateFacts, hours};
use crate::money::price::Hourly;
use crate::money::rate::{Rate, Wanted, Year, rate as stack};
use crate::quantity::{Currency, Decimal, Listed, Money};
use crate::refusal::{Answer, Refusal};

/// The parts a maker says of the rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RatePart {
    Pay,
    Lowest,
    Hours,
    Logged,
    Costs,
    Wear,
    Tax,
    Profit,
}

/// The rate of one currency.
#[derive(Clone, Debug, PartialEq)]
pub struct RateSheet {
    pub currency: Currency,
    pub said: RateFacts,
    pub missing: Vec<RatePart>,
    /// The year as said; none without hours, logged hours, and costs or wear.
    pub year: Option<Year>,
    pub stack: Option<Rate>,
    /// Why there is no stack, where the parts said can't be.
    pub refused: Option<Refusal>,
}

/// The rate of a currency, as the maker said it.
pub fn rate(shop: &Shop, currency: Currency) -> RateSheet {
    let said = shop.workshop.rates.get(&currency).copied().unwrap_or_default();
    let tried = stacked(&said);
    RateSheet {
        currency,
        missing: missing(&said),
        year: year(&said).ok().flatten().filter(|_| said.costs.is_some() || said.wear.is_some()),
        stack: tried.as_ref().ok().copied().flatten(),
        refused: tried.err(),
        said,
    }
}

impl RateSheet {
    /// Money for an hour, as far as it is known.
    pub fn hourly(&self) -> Hourly {
        Hourly { lowest_pay: self.said.lowest, your_rate: self.stack.map(|stack| stack.per_hour) }
    }
}

fn stacked(said: &RateFacts) -> Answer<Option<Rate>> {
    let Some((pay, year)) = said.pay.zip(year(said)?) else { return Ok(None) };
    let wanted = Wanted { pay, own_tax: said.tax.unwrap_or_default(), profit: said.profit.unwrap_or_default() };
    stack(year, wanted).map(Some)
}

fn year(said: &RateFacts) -> Answer<Option<Year>> {
    let Some((all, logged)) = said.hours.zip(said.logged) else { return Ok(None) };
    let sum = |sum: Option<Money>| sum.map_or(Decimal::ZERO, Money::amount);
    let year = Year { all: hours(all)?, logged: hours(logged)?, overhead: sum(said.costs), wear: sum(said.wear) };
    year.checked().map(Some)
}

fn missing(said: &RateFacts) -> Vec<RatePart> {
    let parts = [
        (RatePart::Pay, said.pay.is_none()),
        (RatePart::Hours, said.hours.is_none()),
        (RatePart::Logged, said.logged.is_none()),
        (RatePart::Costs, said.costs.is_none()),
        (RatePart::Wear, said.wear.is_none()),
        (RatePart::Tax, said.tax.is_none()),
        (RatePart::Profit, said.profit.is_none()),
        (RatePart::Lowest, said.lowest.is_none()),
    ];
    parts.into_iter().filter(|(_, is_missing)| *is_missing).map(|(part, _)| part).listed()
}
