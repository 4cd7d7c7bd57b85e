//! The reckoning of a haul: pieces by state, volumes, weight, what it cost and took, and who carries that.
//!
//! A figure that hangs on a pile without a size is none, never nothing.

use super::carried::{frozen, thawed};
use super::helped::earned;
use super::shop::Shop;
use crate::bench::On;
use crate::haul::{Haul, Heavy, Pile};
use crate::ledger::fold;
use crate::money::share::{Draw, Frozen, HaulCost, Share, split};
use crate::quantity::Sorted;
use crate::quantity::order_by_key;
use crate::quantity::{Count, Currency, Decimal, Id, Key, Listed, Mass, Money, Span, Units, Volume};
use crate::refusal::{Answer, Refusal};

/// All that is reckoned of a haul.
#[derive(Clone, Debug, PartialEq)]
pub struct HaulReckoning {
    pub haul: Id,
    pub name: Option<String>,
    pub supplier: Option<Id>,
    pub currency: Currency,
    pub units: Units,
    pub pieces: Pieces,
    pub volumes: Volumes,
    pub piles: Vec<PileReckoning>,
    /// With the water that was read in it, else at 12 %; wood that is not named weighs as the heaviest plausible.
    pub weight: Option<Mass>,
    /// Some of the weight is a guess.
    pub weight_guessed: bool,
    /// What the van may carry.
    pub carries: Option<Mass>,
    /// None while a drive of it has no rate.
    pub costs: Option<Money>,
    /// Costs for a board foot or a litre that was good, unrounded.
    pub cost_per_good: Option<Decimal>,
    pub wheel: Span,
    pub bin: Span,
    pub sorting: Span,
    /// What each job carries of it, the cost as far as it is known.
    pub jobs: Vec<(Id, Share)>,
    /// What lies on the rack, and what the workshop bears; none while a size is missing.
    pub rack: Option<Share>,
    pub workshop: Option<Share>,
}

/// Pieces by state.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pieces {
    pub taken: Count,
    pub rejected: Count,
    pub reasons: Sorted<Key, Count>,
    pub good: Count,
    pub used: Count,
    pub on_rack: Count,
    /// Of those on the rack, set apart for jobs.
    pub reserved: Count,
    /// Good ones that left for no job.
    pub gone: Count,
    /// Found more on the rack than the counts said, or fewer where it is below nothing.
    pub drift: i64,
}

/// Volumes as measured rough; none where a pile that counts has no size.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Volumes {
    pub gross: Option<Volume>,
    pub good: Option<Volume>,
    pub used: Option<Volume>,
}

/// One pile of it.
#[derive(Clone, Debug, PartialEq)]
pub struct PileReckoning {
    pub pile: Id,
    pub label: String,
    pub name: Option<String>,
    pub wood: Option<Key>,
    pub pieces: Pieces,
    pub volumes: Volumes,
    pub weight: Option<Mass>,
    /// Its weight is a guess: the wood is unknown, or wet.
    pub weight_guessed: bool,
}

/// The haul of an id, reckoned.
///
/// # Errors
/// [`Refusal::NotThere`], [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn haul(shop: &Shop, id: Id) -> Answer<HaulReckoning> {
    let haul = fold::haul(shop.book, id).ok_or(Refusal::NotThere)?;
    let haul = Haul { van: shop.workshop.wood.van(), ..haul };
    let piles = haul.piles.iter().map(pile).collect::<Answer<Vec<_>>>()?;
    let costs = Some(spent(shop, &haul)?).filter(|_| !haul.is_unpriced());
    let volumes = volumes(&haul)?;
    let shares = shares(shop, &haul)?;
    Ok(HaulReckoning {
        haul: id,
        pieces: piles.iter().fold(Pieces::default(), |sum, pile| sum.with(&pile.pieces)),
        volumes,
        weight: piles.iter().try_fold(Mass::default(), |sum, pile| pile.weight.map(|weight| sum.plus(weight))),
        weight_guessed: haul.piles.iter().any(is_guessed),
        carries: haul.may_carry(),
        costs,
        cost_per_good: volumes.good.zip(costs).and_then(|(good, costs)| costs.amount().checked_div(measure(haul.units, good))),
        wheel: Span::sum(haul.trips.iter().map(crate::haul::Trip::wheel)),
        bin: Span::sum(haul.trips.iter().map(crate::haul::Trip::bin)),
        sorting: shop.bench.of_haul(id, shop.now).own.total(),
        jobs: shares.as_ref().map(|shares| shares.jobs.clone()).unwrap_or_default(),
        rack: shares.as_ref().map(|shares| shares.rack),
        workshop: shares.as_ref().map(|shares| shares.workshop),
        piles,
        name: haul.name,
        supplier: haul.supplier,
        currency: haul.currency,
        units: haul.units,
    })
}

/// Board feet or litres.
pub fn measure(units: Units, volume: Volume) -> Decimal {
    match units {
        Units::Inch => volume.board_feet(),
        Units::Metric => volume.litres(),
    }
}

impl Pieces {
    fn of(pile: &Pile) -> Pieces {
        let reasons = pile.rejects.clone();
        let (taken, rejected, good) = (pile.taken, pile.rejected(), pile.good());
        let (reserved, gone, drift) = (pile.reserved(), pile.gone_for_good(), pile.stock.drift);
        Pieces { taken, rejected, reasons, good, used: pile.used(), on_rack: pile.on_rack(), reserved, gone, drift }
    }

    fn with(mut self, other: &Pieces) -> Pieces {
        for (reason, n) in &other.reasons {
            let there = self.reasons.entry(reason.clone()).or_default();
            *there = there.saturating_add(*n);
        }
        self.taken = self.taken.saturating_add(other.taken);
        self.rejected = self.rejected.saturating_add(other.rejected);
        self.good = self.good.saturating_add(other.good);
        self.used = self.used.saturating_add(other.used);
        self.on_rack = self.on_rack.saturating_add(other.on_rack);
        self.reserved = self.reserved.saturating_add(other.reserved);
        self.gone = self.gone.saturating_add(other.gone);
        self.drift = self.drift.saturating_add(other.drift);
        self
    }
}

fn pile(pile: &Pile) -> Answer<PileReckoning> {
    let back = pile.given_back.values().fold(Volume::ZERO, |sum, back| sum.plus(*back).unwrap_or(sum));
    let of = |n: Count| Ok::<_, Refusal>(pieces_volume(pile, n)?.map(|volume| volume.less(back)));
    let gross = of(pile.taken)?;
    Ok(PileReckoning {
        pile: pile.id,
        label: pile.label.clone(),
        name: pile.name.clone(),
        wood: pile.wood.clone(),
        pieces: Pieces::of(pile),
        volumes: Volumes { gross, good: of(pile.good())?, used: of(pile.used())? },
        weight: pile.weighs().map(|weighs| weighs.mass).or_else(|| gross.map(|gross| Heavy::of_pile(pile).density.mass(gross))),
        weight_guessed: is_guessed(pile),
    })
}

/// Its weight is by a wood that is unknown, or wet.
fn is_guessed(pile: &Pile) -> bool {
    0 < pile.taken && pile.weighs().is_none() && Heavy::of_pile(pile).guessed
}

/// The volume of `n` pieces of a pile; none without a size, unless there are none.
pub(super) fn pieces_volume(pile: &Pile, n: Count) -> Answer<Option<Volume>> {
    match pile.piece()? {
        _ if n == 0 => Ok(Some(Volume::ZERO)),
        Some(piece) => piece.times(n).map(Some),
        None => Ok(None),
    }
}

pub(super) fn sum_of(haul: &Haul, n: impl Fn(&Pile) -> Count) -> Answer<Option<Volume>> {
    let mut sum = Volume::ZERO;
    for pile in &haul.piles {
        let Some(volume) = pieces_volume(pile, n(pile))? else { return Ok(None) };
        sum = sum.plus(volume)?;
    }
    Ok(Some(sum))
}

/// The same of pieces as they were taken, less what a job, or all jobs, gave back of them: that lies in piles of its own.
pub(super) fn net(haul: &Haul, n: impl Fn(&Pile) -> Count, job: Option<Id>) -> Answer<Option<Volume>> {
    Ok(sum_of(haul, n)?.map(|sum| sum.less(haul.given_back(job))))
}

/// Gross, good and used volume of a whole haul.
///
/// # Errors
/// [`Refusal::OutOfRange`].
pub fn volumes(haul: &Haul) -> Answer<Volumes> {
    let (gross, good, used) = (net(haul, |pile| pile.taken, None)?, net(haul, Pile::good, None)?, net(haul, Pile::used, None)?);
    Ok(Volumes { gross, good, used })
}

/// What a haul cost, with the pay of those who helped to sort it.
///
/// # Errors
/// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
pub fn spent(shop: &Shop, haul: &Haul) -> Answer<Money> {
    haul.spent()?.plus(earned(shop, On::Haul(haul.id), haul.currency)?)
}

/// What a haul cost and took; none while a good pile has no size.
///
/// # Errors
/// [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn cost(shop: &Shop, haul: &Haul) -> Answer<Option<HaulCost>> {
    let Volumes { good, used, .. } = volumes(haul)?;
    let Some(((good, lost), used)) = good.zip(sum_of(haul, Pile::lost)?).zip(used) else { return Ok(None) };
    Ok(Some(HaulCost { cost: spent(shop, haul)?, time: time(shop, haul), good, lost, used }))
}

/// The same where it is known: where no price and no drive were ever said, and nobody was paid, nothing is known of the cost, which is not the same
/// as nothing. Nor is it where it is not said what a drive cost, or nothing of it is good.
///
/// # Errors
/// [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn known_cost(shop: &Shop, haul: &Haul) -> Answer<Option<HaulCost>> {
    let said = !haul.costs.is_empty() || !haul.trips.is_empty();
    let priced = cost(shop, haul)?.filter(|cost| !cost.good.is_zero() && !haul.is_unpriced());
    Ok(priced.filter(|cost| said || !cost.cost.is_zero()))
}

/// All time of a haul: its trips, and what was clocked on it.
pub(super) fn time(shop: &Shop, haul: &Haul) -> Span {
    let trips = haul.trips.iter().map(|trip| trip.wheel().plus(trip.bin()));
    Span::sum(trips).plus(shop.bench.of_haul(haul.id, shop.now).own.total())
}

struct Shares {
    jobs: Vec<(Id, Share)>,
    rack: Share,
    workshop: Share,
}

/// The whole haul, split over its jobs, the rack and the workshop.
fn shares(shop: &Shop, haul: &Haul) -> Answer<Option<Shares>> {
    let Some(cost) = cost(shop, haul)? else { return Ok(None) };
    let (mut ids, mut draws) = (vec![], vec![]);
    for id in drawing(shop, haul) {
        let Some(job) = fold::job(shop.book, id) else { continue };
        let Some(used) = net(haul, |pile| pile.in_job(id), Some(id))? else { return Ok(None) };
        let draw = match frozen(&job, haul.id) {
            // What another phone took for it after it ended is the workshop's to bear.
            Some(facts) if facts.cost.currency() == haul.currency => {
                let frozen = thawed(facts)?;
                Draw::Ended(Frozen { used: frozen.used.max(used), ..frozen })
            }
            None if job.ended.is_some() => Draw::Ended(Frozen { share: Share::none(cost.cost), used, good: cost.shared_by() }),
            _ => Draw::Open { used },
        };
        ids.push(id);
        draws.push(draw);
    }
    let split = split(&cost, &draws)?;
    Ok(Some(Shares { jobs: ids.into_iter().zip(split.jobs).listed(), rack: split.rack, workshop: split.workshop }))
}

/// Every job that has or had wood of a haul.
fn drawing(shop: &Shop, haul: &Haul) -> Vec<Id> {
    let mut ids: Vec<Id> = haul.piles.iter().flat_map(|pile| pile.in_jobs.keys().copied()).listed();
    let ended = fold::jobs(shop.book).filter(|job| job.ended.as_ref().is_some_and(|ended| ended.hauls.iter().any(|u| u.haul == haul.id)));
    ids.extend(ended.map(|job| job.id));
    order_by_key(&mut ids, |id| *id);
    ids.dedup();
    ids
}
