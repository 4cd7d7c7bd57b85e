//! After a job: three ratios, and which of them strays furthest, as facts for one sentence.

use super::account::{Account, Ratios, of as reckon};
use super::estimate::history::History;
use super::estimate::{Row, as_judged, began, is_planned_as_then, planned_then, progress_of, rows_of};
use super::shop::Shop;
use super::waiting::{Back, looked_back};
use crate::bench::estimate::Factor;
use crate::ledger::fold::Job;
use crate::money::left::Way;
use crate::quantity::{Decimal, Id, Money, Span};
use crate::refusal::Answer;

/// Looking back on a job.
#[derive(Clone, Debug, PartialEq)]
pub struct LookBack {
    pub job: Id,
    pub ratios: Ratios,
    /// The ratio that strays furthest from one; none where no ratio is known.
    pub furthest: Option<Furthest>,
    pub estimate: Option<Span>,
    pub actual: Option<Span>,
    pub kept: Option<Money>,
    pub per_hour: Option<Decimal>,
    /// What is still to come while it goes on: until then its hours are held against no plan, and teach nothing.
    pub to_come: Option<Span>,
    /// What an hour would have left, had what was planned held, and had what was likely: by the estimate that was given, else by that of when its work
    /// began.
    pub had_it_held: Option<Decimal>,
    pub had_likely: Option<(Span, Decimal)>,
    /// It has ended, and nothing says what was likely before its work began: what later jobs teach was no estimate of it.
    pub likely_is_gone: bool,
    pub typical: bool,
    pub lesson: Option<String>,
    /// What other jobs took of what was thought, those told first, then the oldest first: what the next estimate learns from.
    pub history: Vec<Decimal>,
    /// What the estimate that was given warned of.
    pub warned: Option<Span>,
    /// What came of waiting, by the last sale.
    pub waiting: Option<Back>,
    /// By what the factor was when its work began, and with this job will be, multiplied; none where nothing was thought of it, or work is to come.
    pub factor: Option<Learns>,
}

/// What is learnt of the factor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Learns {
    pub was: Decimal,
    pub next: Decimal,
}

/// Which ratio it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    Hours,
    Wood,
    Price,
}

/// The ratio that strays furthest.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Furthest {
    pub which: Which,
    pub ratio: Decimal,
}

/// Looking back on a job.
///
/// # Errors
/// [`crate::refusal::Refusal::NotThere`], [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::CurrenciesMixed`].
pub fn look_back(shop: &Shop, id: Id) -> Answer<LookBack> {
    let job = shop.job(id)?;
    let account = reckon(shop, &job)?;
    let history = shop.history_but(&job);
    let judged = as_judged(shop, &job);
    let likely = likely(shop, &judged, &history);
    let is_gone = likely.is_none();
    let likely = likely.filter(|likely| Some(*likely) != account.hours.judged_by);
    let had_likely = likely.map(|likely| had_held(&account, likely).map(|left| Some(likely).zip(left))).transpose()?.flatten();
    let history = history.ratios.clone();
    let to_come = account.hours.to_come.filter(|to_come| Span::ZERO < *to_come);
    Ok(LookBack {
        job: id,
        furthest: furthest(&account.ratios, to_come.is_some()),
        estimate: account.hours.judged_by,
        actual: Some(account.hours.judged).filter(|judged| Span::ZERO < *judged),
        kept: account.sold.kept,
        per_hour: account.sold.per_hour.map(|per_hour| per_hour.left),
        had_it_held: account.hours.judged_by.map(|estimate| had_held(&account, estimate)).transpose()?.flatten(),
        had_likely,
        likely_is_gone: job.ended.is_some() && is_gone && judged.thought().is_some_and(|thought| Span::ZERO < thought),
        warned: job.kept.map(|kept| kept.likely),
        factor: if to_come.is_none() { learns(shop, &judged, (&account.ratios, &history)) } else { None },
        to_come,
        waiting: looked_back(shop, &job)?,
        history,
        ratios: account.ratios,
        typical: job.typical,
        lesson: job.lesson,
    })
}

/// By how many times, up or down: 1.25 and 0.8 stray alike. Hours that go on stray from nothing yet.
fn furthest(ratios: &Ratios, goes_on: bool) -> Option<Furthest> {
    let hours = ratios.hours.filter(|_| !goes_on);
    let all = [(Which::Hours, hours), (Which::Wood, ratios.wood), (Which::Price, ratios.price)];
    let known = all.into_iter().filter_map(|(which, ratio)| ratio.map(|ratio| Furthest { which, ratio }));
    known.filter(|furthest| Decimal::ZERO < furthest.ratio).max_by_key(|furthest| {
        let inverse = Decimal::ONE.checked_div(furthest.ratio).unwrap_or(Decimal::ONE);
        furthest.ratio.max(inverse)
    })
}

/// What was likely of what it is judged by: as it was kept, else by what was known when its work began, as on the pages of the job; once it has ended
/// nothing of one that was planned later. What later jobs teach was no estimate of it.
fn likely(shop: &Shop, job: &Job, history: &History) -> Option<Span> {
    let thought = job.thought()?;
    let is_of_plan = |row: &Row| row.op.is_some() && row.thought.is_some();
    let of = |rows: &[Row]| Span::sum(rows.iter().filter(|row| is_of_plan(row)).map(|row| row.likely));
    match (job.kept, &job.ended) {
        (Some(kept), _) => Some(kept.likely),
        _ if thought <= Span::ZERO => None,
        (None, None) => {
            let then = began(shop, job).map(|began| shop.history_known_by(job.id, began));
            let rows = rows_of(shop, (job, then.as_deref().unwrap_or(history)), true);
            let is_same = rows.iter().all(is_of_plan) && is_planned_as_then(shop, job);
            let as_its_page = if is_same { progress_of(shop, job, true).0.estimated } else { None };
            Some(as_its_page.unwrap_or_else(|| of(&rows)))
        }
        (None, Some(_)) => {
            let (then, began) = planned_then(shop, job)?;
            Some(of(&rows_of(shop, (&then, &shop.history_known_by(job.id, began)), true)))
        }
    }
}

/// What an hour would have left, had what it is judged by taken so long.
fn had_held(account: &Account, estimate: Span) -> Answer<Option<Decimal>> {
    let (Some(haul), Some(costs)) = (account.hours.haul, account.costs.total) else { return Ok(None) };
    if account.sold.kept.is_none() || account.hours.total.is_none() {
        return Ok(None);
    }
    // What was never planned took what it took.
    let beside = account.hours.stands.own.total().minus(account.hours.judged);
    let way = Way { you_get: account.sold.net, costs, time: estimate.plus(beside).plus(haul) };
    way.per_hour(None).map(|per_hour| Some(per_hour.left))
}

/// The factor as it was; and with this job and all that is known by now. A job that is not typical changes nothing.
fn learns(shop: &Shop, job: &Job, (ratios, history): (&Ratios, &[Decimal])) -> Option<Learns> {
    job.thought()?;
    let mut all = history.to_vec();
    all.extend(ratios.hours.filter(|_| job.typical));
    let was = job.kept.and_then(|kept| kept.factor).unwrap_or_else(|| was(shop, job, history).shown());
    Some(Learns { was, next: Factor::of(&all).shown() })
}

/// By what was known when its estimate was given, else when its work began; of one that was not begun, by what is known now.
fn was(shop: &Shop, job: &Job, now: &[Decimal]) -> Factor {
    let began = || began(shop, job);
    let then = job.kept.map(|kept| kept.at.at).or_else(began);
    then.map_or_else(|| Factor::of(now), |then| shop.history_known_by(job.id, then).factor())
}
