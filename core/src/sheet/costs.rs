//! Where costs belong, and what tools wear in a year: what the rate is told, and what both the rate and a job carry.

use crate::ledger::Book;
use crate::ledger::fold::{Booked, Workshop, booked};
use crate::ledger::kind::money::Home;
use crate::quantity::{Currency, Decimal, Key, Listed, Money, order_by_key};
use crate::refusal::{Answer, Refusal};

/// Kinds of cost that makers carry either way, by their keys.
pub const EITHER_WAY: [&str; 6] = ["helper", "power", "edges", "glue", "discs", "finish"];

/// Where a kind of cost belongs, as it was said; none where it was not.
pub fn home_of(workshop: &Workshop, currency: Currency, kind: &Key) -> Option<Home> {
    workshop.homes.get(&(currency, kind.clone())).copied()
}

/// Whether it is to be asked where a kind belongs.
pub fn is_asked(workshop: &Workshop, currency: Currency, kind: &Key) -> bool {
    EITHER_WAY.contains(&kind.as_str()) && home_of(workshop, currency, kind).is_none()
}

/// Kinds of these, on a job, that the rate carries too: it was said that they belong there, or they were spent on no job this year while
/// nothing was said.
pub fn twice(workshop: &Workshop, (currency, year): (Currency, i32), on_job: impl Iterator<Item = Key>) -> Vec<Key> {
    let of_none = |kind: &Key| workshop.costs.iter().any(|line| line.kind.as_ref() == Some(kind) && is_of(line, (currency, year)));
    let both = |kind: &Key| match home_of(workshop, currency, kind) {
        Some(home) => home == Home::Rate,
        None => EITHER_WAY.contains(&kind.as_str()) && of_none(kind),
    };
    let mut kinds = on_job.filter(both).listed();
    order_by_key(&mut kinds, |kind| kind.clone());
    kinds.dedup();
    kinds
}

/// Kinds among the costs of no job in a year that jobs carry too: it was said that they belong there, or something of them was spent on a job
/// that year while nothing was said.
pub fn on_jobs_too(book: &Book, workshop: &Workshop, of: (Currency, i32)) -> Vec<Key> {
    let spent = book.entries().filter(|(_, struck)| !struck).filter_map(|(entry, _)| booked(entry));
    let on_jobs = spent.filter(|line| line.job.is_some() && is_of(line, of)).filter_map(|line| line.kind).listed();
    let both = |kind: &Key| match home_of(workshop, of.0, kind) {
        Some(home) => home == Home::Job,
        None => EITHER_WAY.contains(&kind.as_str()) && on_jobs.contains(kind),
    };
    let mut kinds = workshop.costs.iter().filter(|line| is_of(line, of)).filter_map(|line| line.kind.clone()).filter(both).listed();
    order_by_key(&mut kinds, |kind| kind.clone());
    kinds.dedup();
    kinds
}

fn is_of(line: &Booked, (currency, year): (Currency, i32)) -> bool {
    line.sum.currency() == currency && line.at.day().as_ymd().0 == year
}

/// Whether the costs of a year hold tools while tools wear too: one that is in both counts twice.
pub fn tools_twice(workshop: &Workshop, (currency, year): (Currency, i32)) -> bool {
    let is_tool = |kind: &Key| kind.as_str() == "tools";
    let mut spent = workshop.costs.iter().filter(|line| line.sum.currency() == currency && line.at.day().as_ymd().0 == year);
    has_tools(workshop, currency) && spent.any(|line| line.kind.as_ref().is_some_and(is_tool))
}

/// Whether a tool of this currency wears.
pub fn has_tools(workshop: &Workshop, currency: Currency) -> bool {
    workshop.tools.iter().any(|tool| tool.tool.cost.currency() == currency)
}

/// What all tools wear in a year, in one currency; none without a tool.
///
/// # Errors
/// Those of [`crate::money::wear::Tool::wear`]; [`Refusal::OutOfRange`].
pub fn wear(workshop: &Workshop, currency: Currency, year: i32) -> Answer<Option<Money>> {
    let tools = workshop.tools.iter().filter(|tool| tool.tool.cost.currency() == currency).listed();
    if tools.is_empty() {
        return Ok(None);
    }
    let add = |sum: Decimal, worn: Decimal| sum.checked_add(worn).ok_or(Refusal::OutOfRange);
    let sum = tools.iter().try_fold(Decimal::ZERO, |sum, tool| add(sum, tool.wear_of(year)?))?;
    Money::book(sum, currency).map(Some)
}
