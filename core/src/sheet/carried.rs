//! What a job carries of the hauls it has wood of: live while it goes on, frozen when the maker is done with it.

use super::haul::{cost, net, pieces_volume, time, volumes};
use super::shop::Shop;
use super::trips;
use crate::bench::Shares;
use crate::haul::Haul;
use crate::ledger::fold::{self, Job};
use crate::ledger::kind::Exact;
use crate::ledger::kind::bench::Stage;
use crate::ledger::kind::job::HaulUsed;
use crate::money::share::{Frozen, Share, freeze};
use crate::quantity::{Count, Decimal, Id, Key, Money, Span, Volume, half_up};
use crate::refusal::{Answer, Refusal};

/// A pile with good pieces and no whole size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoSize {
    pub name: Option<String>,
    pub wood: Option<Key>,
    /// Its wood by the maker's own name, where that is in no table.
    pub own: Option<String>,
    pub label: String,
}

/// What the share of a haul can't be known without.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Lacking {
    Size(NoSize),
    /// A rate for what was driven.
    Mileage,
}

/// What a job carries of one haul.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobShare {
    pub haul: Id,
    /// The first pile whose size is missing for the share to be known.
    pub no_size: Option<NoSize>,
    pub frozen: bool,
    /// The haul is of another currency: its cost has to be agreed as one figure, noted as spending of the kind `haul`.
    pub foreign: bool,
    /// A drive of the haul has no rate: the share's minutes are known, its cost is not.
    pub unpriced: bool,
    /// Bought boards, not offcuts.
    pub bought: bool,
    pub pieces: Count,
    /// None while a size is missing, nothing of the haul is good, or a foreign haul has no figure agreed.
    pub share: Option<Share>,
    /// Of the share's minutes, those of sorting: for the bar.
    pub sorting: Span,
    /// The share's minutes by where they come from; of a haul that is no more, as measured.
    pub sources: Shares,
    /// What was clocked on the haul and may be a forgotten stop: in no minutes of it before the maker has answered for it.
    pub in_question: Span,
    pub used: Option<Volume>,
    pub good: Option<Volume>,
    /// All that was taken of it, for yields.
    pub gross: Option<Volume>,
}

/// What a job carries of each haul it has wood of: as frozen when it ended, else as of now.
///
/// # Errors
/// [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn of_job(shop: &Shop, job: &Job) -> Answer<Vec<JobShare>> {
    let mut ids = job.hauls();
    if let Some(ended) = &job.ended {
        ids.extend(ended.hauls.iter().map(|used| used.haul).filter(|haul| !job.hauls().contains(haul)));
    }
    let mut shares = vec![];
    for id in ids {
        let haul = fold::haul(shop.book, id);
        // Another phone had the pieces first: the job has none of them, and carries nothing.
        if frozen(job, id).is_some() || haul.as_ref().is_some_and(|haul| gives(job, haul)) {
            shares.push(share_of(shop, job, (id, haul.as_ref()))?);
        }
    }
    Ok(shares)
}

/// Whether the piles of a haul give a job any pieces, as both phones' books together have it.
fn gives(job: &Job, haul: &Haul) -> bool {
    haul.piles.iter().any(|pile| 0 < pile.in_job(job.id))
}

impl JobShare {
    /// Before anything is known of it.
    fn unknown(haul: Id) -> JobShare {
        JobShare {
            in_question: Span::ZERO,
            haul,
            no_size: None,
            frozen: false,
            foreign: false,
            unpriced: false,
            bought: false,
            pieces: 0,
            share: None,
            sorting: Span::ZERO,
            sources: Shares::default(),
            used: None,
            good: None,
            gross: None,
        }
    }
}

fn share_of(shop: &Shop, job: &Job, (id, haul): (Id, Option<&Haul>)) -> Answer<JobShare> {
    let mut found = JobShare::unknown(id);
    if let Some(haul) = haul {
        found.gross = volumes(haul)?.gross;
        found.in_question = if frozen(job, id).is_some() { Span::ZERO } else { shop.bench.doubtful_of_haul(id, shop.now) };
        (found.foreign, found.bought) = (haul.currency != job.currency, haul.bought);
        found.unpriced = !found.foreign && haul.is_unpriced() && frozen(job, id).is_none();
        found.pieces = haul.piles.iter().fold(0, |sum: Count, pile| sum.saturating_add(pile.in_job(job.id)));
        found.used = net(haul, |pile| pile.in_job(job.id), Some(job.id))?;
    }
    let carried = match (frozen(job, id), haul) {
        (Some(used), _) => {
            found.frozen = true;
            Some(thawed(used)?)
        }
        (None, Some(haul)) if is_late(job, id) => {
            (found.frozen, found.unpriced) = (true, false);
            let [used, good] = [found.used, volumes(haul)?.good].map(Option::unwrap_or_default);
            Some(Frozen { share: Share::none(Money::zero(job.currency)), used, good })
        }
        (None, Some(haul)) => carried(shop, job, haul)?,
        (None, None) => None,
    };
    if let Some(Frozen { share, used, good }) = carried {
        found.sources = trips::part_of(haul.map_or_else(Shares::default, |haul| trips::of_haul(shop, haul)), share.time);
        found.sorting = haul.map_or(Span::ZERO, |haul| sorting_of(shop, haul, share.time));
        (found.share, found.used, found.good) = (Some(share), Some(used), Some(good));
    } else {
        found.no_size = haul.map(without_size).transpose()?.flatten();
    }
    Ok(found)
}

fn without_size(haul: &Haul) -> Answer<Option<NoSize>> {
    for pile in haul.piles.iter().filter(|pile| 0 < pile.good()) {
        if pieces_volume(pile, pile.good())?.is_none() {
            let own = pile.own.as_ref().map(|own| own.name.clone());
            return Ok(Some(NoSize { name: pile.name.clone(), wood: pile.wood.clone(), own, label: pile.label.clone() }));
        }
    }
    Ok(None)
}

/// Of some minutes of a haul, those of sorting, in whole minutes by its whole time.
fn sorting_of(shop: &Shop, haul: &Haul, part: Span) -> Span {
    let (sorting, all) = (shop.bench.of_haul(haul.id, shop.now).stage(Stage::Sort), time(shop, haul));
    let minutes = Decimal::from(part.as_minutes()).checked_mul(Decimal::from(sorting.as_ms()));
    let minutes = minutes.and_then(|minutes| minutes.checked_div(Decimal::from(all.as_ms()))).map(|minutes| half_up(minutes, 0));
    minutes.and_then(|minutes| i64::try_from(minutes).ok()).map_or(Span::ZERO, Span::minutes)
}

pub(super) fn frozen(job: &Job, haul: Id) -> Option<&HaulUsed> {
    job.ended.as_ref()?.hauls.iter().find(|used| used.haul == haul)
}

/// Wood of a haul that the job had none of when it ended: another phone took it. The job carries nothing of it; the workshop does.
fn is_late(job: &Job, haul: Id) -> bool {
    job.ended.is_some() && frozen(job, haul).is_none()
}

/// What a job carries of a haul by today's count. Of a foreign haul its minutes alone, once its cost was agreed and noted.
fn carried(shop: &Shop, job: &Job, haul: &Haul) -> Answer<Option<Frozen>> {
    let used = net(haul, |pile| pile.in_job(job.id), Some(job.id))?;
    let Some((cost, used)) = cost(shop, haul)?.zip(used).filter(|(cost, _)| !cost.shared_by().is_zero()) else { return Ok(None) };
    let mut carried = freeze(&cost, used)?;
    if haul.currency != job.currency {
        if !job.booked.iter().any(|line| line.kind.as_ref().is_some_and(|kind| kind.as_str() == HAUL)) {
            return Ok(None);
        }
        carried.share.cost = Money::zero(job.currency);
    }
    Ok(Some(carried))
}

/// The kind of a haul's share among costs.
pub const HAUL: &str = "haul";

/// The facts that a job carries when it ends. A haul whose share is not known is refused: size its piles, price its drives, or agree a
/// figure first.
///
/// # Errors
/// [`Refusal::SizeMissing`], [`Refusal::MileageUnknown`], [`Refusal::CurrenciesMixed`], and those of [`of_job`].
pub fn freeze_for(shop: &Shop, job: &Job) -> Answer<Vec<HaulUsed>> {
    let mut facts = vec![];
    for id in job.hauls() {
        let Some(haul) = fold::haul(shop.book, id).filter(|haul| gives(job, haul)) else { continue };
        let Some(Frozen { share, used, good }) = carried(shop, job, &haul)? else {
            let mixed = Refusal::CurrenciesMixed { one: job.currency, other: haul.currency };
            return Err(if haul.currency == job.currency { Refusal::SizeMissing } else { mixed });
        };
        if haul.currency == job.currency && haul.is_unpriced() {
            return Err(Refusal::MileageUnknown { currency: haul.currency });
        }
        facts.push(HaulUsed { haul: id, cost: share.cost, time: share.time, used: Exact(used.cubic_mm()?), good: Exact(good.cubic_mm()?) });
    }
    Ok(facts)
}

pub(super) fn thawed(used: &HaulUsed) -> Answer<Frozen> {
    let share = Share { cost: used.cost, time: used.time };
    Ok(Frozen { share, used: Volume::of_cubic_mm(used.used.0)?, good: Volume::of_cubic_mm(used.good.0)? })
}
