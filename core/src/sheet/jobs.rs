//! Every job in its section: due first, then for sale, in hand, ended; each with a bar of its time so far.

use super::account::{Hours, Sold, hours_and_sale};
use super::due::{due, to_hand_back};
use super::job::{NextAct, next};
use super::shop::Shop;
use crate::ledger::fold::Job;
use crate::ledger::kind::bench::Stage;
use crate::ledger::kind::job::For;
use crate::quantity::in_small;
use crate::quantity::order_by_key;
use crate::quantity::{Count, Currency, Decimal, Id, Listed, Money, Span, Wall};
use crate::refusal::Answer;
use std::cmp::Reverse;

/// Where a job stands in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Section {
    /// A piece or a day is promised, or money is due or to be handed back.
    Due,
    ForSale,
    InHand,
    Ended,
}

/// One row.
#[derive(Clone, Debug, PartialEq)]
pub struct JobRow {
    pub job: Id,
    pub name: String,
    pub section: Section,
    pub pieces: Count,
    pub left: Count,
    /// What buyers owe, and what galleries still owe.
    pub due: Money,
    pub due_from_galleries: Money,
    /// Of what buyers owe, deposits that are to come in first.
    pub deposits_due: Money,
    /// Who the first of its open agreements is with, where that is known.
    pub buyer: Option<Id>,
    /// When it was promised.
    pub date: Option<Wall>,
    pub so_far: Vec<(Stage, Span)>,
    /// By estimate still to come, by stage.
    pub to_come: Vec<(Stage, Span)>,
    /// What was worked and stands; none where nothing was, not even what is to settle.
    pub total: Option<Span>,
    /// Beside that, what looks like a forgotten stop; of a job that has ended it is in it.
    pub unsettled: Span,
    pub kept_per_hour: Option<Decimal>,
    pub currency: Currency,
    pub tag: Option<Money>,
    /// Sold by the maker or a gallery, and with a gallery now.
    pub sold: Count,
    pub at_galleries: Count,
    pub not_for_sale: Count,
    pub ended: Option<Wall>,
    pub next: NextAct,
}

/// The jobs whose name holds the words searched for, in their sections: due with money that is to change hands now first, then by their date, the
/// others the latest first, and of those that have ended the last that did.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`], [`crate::refusal::Refusal::CurrenciesMixed`].
pub fn jobs(shop: &Shop, search: &str) -> Answer<Vec<JobRow>> {
    Ok(jobs_and_latest_ended(shop, search, usize::MAX)?.0)
}

/// The same with no more than so many that have ended, the latest; and how many more have.
///
/// # Errors
/// As [`jobs`], of the jobs it gives.
pub fn jobs_and_latest_ended(shop: &Shop, search: &str, most: usize) -> Answer<(Vec<JobRow>, usize)> {
    let words: Vec<String> = search.split_whitespace().map(in_small).listed();
    let is_meant = |job: &Job| words.iter().all(|word| in_small(&job.name).contains(word));
    let (mut shown, mut ended) = (vec![], vec![]);
    for job in shop.jobs().iter().filter(|job| is_meant(job)) {
        let section = section(shop, job)?;
        let of_it = if section == Section::Ended { &mut ended } else { &mut shown };
        of_it.push((job, section));
    }
    order_by_key(&mut ended, |(job, _)| Reverse(job.ended.as_ref().map(|ended| ended.wall.at)));
    let more = ended.len().saturating_sub(most);
    shown.extend(ended.into_iter().take(most));
    let of = |(job, section): &(&Job, Section)| row(shop, (job, *section), hours_and_sale(shop, job)?);
    let mut rows = shown.iter().map(of).collect::<Answer<Vec<_>>>()?;
    // Money that is to change hands now comes before any day.
    let is_now = |row: &JobRow| matches!(row.next, NextAct::PartDue { .. } | NextAct::HandBack { .. });
    let date = |row: &JobRow| {
        if row.section == Section::Due { (!is_now(row), row.date.is_none(), row.date) } else { (false, false, None) }
    };
    order_by_key(&mut rows, |row| (row.section, date(row)));
    Ok((rows, more))
}

fn row(shop: &Shop, (job, section): (&Job, Section), (hours, sold): (Hours, Sold)) -> Answer<JobRow> {
    Ok(JobRow {
        job: job.id,
        name: job.name.clone(),
        section,
        pieces: job.pieces,
        left: job.left(),
        due: sold.due,
        due_from_galleries: sold.due_from_galleries,
        deposits_due: job.selling.deposits_due(job.currency)?,
        buyer: job.selling.open().find_map(|agreement| agreement.buyer),
        date: date(job),
        so_far: so_far(&hours),
        to_come: to_come(&hours),
        total: hours.so_far(),
        unsettled: hours.unsettled,
        kept_per_hour: sold.per_hour.map(|per_hour| per_hour.left),
        currency: job.currency,
        tag: job.tag,
        sold: sold.pieces.saturating_add(sold.by_galleries),
        at_galleries: sold.at_galleries,
        not_for_sale: sold.not_for_sale,
        ended: job.ended.as_ref().map(|ended| ended.wall),
        next: next(shop, job, (&hours, &sold)),
    })
}

/// Where a job stands.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn section(shop: &Shop, job: &Job) -> Answer<Section> {
    let from_galleries = job.selling.due_from_galleries(job.currency)?;
    let owed = Decimal::ZERO < due(shop, job)?.amount() || !from_galleries.is_zero() || !to_hand_back(shop, job)?.is_empty();
    Ok(match () {
        () if owed || 0 < job.selling.promised() || has_day(job) => Section::Due,
        () if job.ended.is_some() && (job.tag.is_none() || job.left() == 0) => Section::Ended,
        () if job.tag.is_some() && 0 < job.free() && !is_to_agree(job) => Section::ForSale,
        () => Section::InHand,
    })
}

/// It is made to order and goes on, and nobody agreed to it yet: its price is what is told to who ordered it, and no other can have it.
pub fn is_to_agree(job: &Job) -> bool {
    let is_untold = job.selling.agreements.is_empty() && job.selling.sales.is_empty();
    job.made_for == For::Order && job.ended.is_none() && is_untold
}

/// A day is said by which it is to be done, and something of it is still there.
fn has_day(job: &Job) -> bool {
    job.ended.is_none() && job.described.due.is_some() && 0 < job.left()
}

/// When it was promised: by the earliest open agreement, else as described.
pub fn date(job: &Job) -> Option<Wall> {
    job.selling.open().filter_map(|agreement| agreement.due).min().or(job.described.due)
}

/// Minutes by stage, in the order of a job's life.
pub fn so_far(hours: &Hours) -> Vec<(Stage, Span)> {
    hours.by_stage.iter().map(|(stage, span)| (*stage, *span)).listed()
}

/// Minutes by stage that are still to come by estimate.
pub fn to_come(hours: &Hours) -> Vec<(Stage, Span)> {
    hours.still_by_stage.iter().map(|(stage, span)| (*stage, *span)).listed()
}
