//! What waiting costs besides the days: the time of those who ask, at the lowest pay; keeping it; and who never turns up.

use crate::ledger::fold::Job;
use crate::ledger::kind::bench::Kind;
use crate::quantity::{Decimal, Money, Span, sums};
use crate::refusal::Answer;
use crate::sheet::Shop;
use crate::sheet::account::of as reckon;
use crate::sheet::rate::rate;

/// What was said of it; what was not counts as nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Costs {
    /// The time that one who asks takes,
    pub each_ask: Option<Span>,
    /// and the lowest pay it is counted at; none where none is said, and then that time is not counted.
    pub pay: Option<Decimal>,
    /// What keeping all that is left costs a day.
    pub each_day: Option<Money>,
    /// The share of those who ask that never turns up.
    pub no_show: Option<Decimal>,
}

/// What the maker said of it.
pub(super) fn costs(shop: &Shop, job: &Job) -> Costs {
    let guesses = &job.selling.guesses;
    Costs {
        each_ask: guesses.each_ask,
        pay: guesses.each_ask.and_then(|_| rate(shop, job.currency).said.lowest),
        each_day: guesses.each_day,
        no_show: guesses.no_show,
    }
}

/// What one drive to a buyer takes, as it is planned: its costs, and its hours at the lowest pay. Nothing where no delivery is planned.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::OutOfRange`].
pub(super) fn delivery(shop: &Shop, job: &Job) -> Answer<Decimal> {
    let is_planned =
        job.operations.iter().any(|operation| operation.kind == Kind::Deliver) || job.planned_costs.iter().any(|cost| cost.delivery);
    if !is_planned {
        return Ok(Decimal::ZERO);
    }
    let (costs, time) = reckon(shop, job)?.pricing.delivery;
    let pay = rate(shop, job.currency).said.lowest.map_or(Ok(Decimal::ZERO), |pay| sums::for_time(pay, time))?;
    Ok(costs.plus(Money::book(pay, job.currency)?)?.amount())
}

/// The time of one who asks at the lowest pay, half up to the minor unit.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::OutOfRange`].
pub(super) fn each_ask(shop: &Shop, job: &Job) -> Answer<Money> {
    let Costs { each_ask: Some(time), pay: Some(pay), .. } = costs(shop, job) else { return Ok(Money::zero(job.currency)) };
    Money::book(sums::for_time(pay, time)?, job.currency)
}
