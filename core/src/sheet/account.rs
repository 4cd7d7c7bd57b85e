//! The reckoning of a job: what it cost, took, brought in and left, and the marks on the scale of its price.
//!
//! Every figure a screen or an export shows of a job comes from here. What is not known is none, never nothing.

use super::carried::{HAUL, JobShare, Lacking, of_job};
use super::driven::{bears, driven, time_bears};
use super::due::due;
use super::estimate::as_judged;
use super::estimate::left::still_thought;
use super::helped::{HELPER, earned, earned_since, helped_to_settle, pay_of};
use super::marks::{Pricing, pricing};
use super::promised::fees_owed;
use super::rate::{RateSheet, rate};
use super::shop::Shop;
use super::to_come::to_come;
use super::yields::{Wood, wood};
use crate::bench::{Division, On, Shares, Time};
use crate::ledger::fold::{Booked, DISTANCE, Job, PlannedCost, Sale};
use crate::ledger::kind::bench::{Kind, Stage};
use crate::money::left::{PerHour, Way};
use crate::money::tax::Tax;
use crate::quantity::Sorted;
use crate::quantity::{Count, Currency, Decimal, Id, Key, Listed, Money, Span, Units};
use crate::refusal::{Answer, Refusal};

/// All that is reckoned of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct Account {
    pub job: Id,
    pub name: String,
    pub currency: Currency,
    pub units: Units,
    pub pieces: Count,
    pub ended: bool,
    pub costs: Costs,
    pub hours: Hours,
    pub sold: Sold,
    pub wood: Wood,
    pub pricing: Pricing,
    pub ratios: Ratios,
}

/// What it cost.
#[derive(Clone, Debug, PartialEq)]
pub struct Costs {
    /// Booked lines: spending and driving.
    pub lines: Vec<Booked>,
    /// What it carries of each haul.
    pub shares: Vec<JobShare>,
    /// Sums by kind: `haul`, `distance`, `helper` for pay by the hour, and the keys of spending.
    pub by_kind: Sorted<Key, Money>,
    /// All of it so far; none while nothing was noted, or the cost of a haul's share is not known.
    pub total: Option<Money>,
    /// Planned and not booked yet.
    pub still: Money,
    /// Of that, what falls away when the buyer fetches it.
    pub still_delivery: Money,
    /// What was booked for deliveries.
    pub driven: Money,
    /// Of that, what it would be if all of the batch bore as much as each piece on hand does; not booked yet.
    pub driven_as_left: Decimal,
    /// Of that, wood: shares of hauls to come.
    pub still_wood: Money,
    /// Pay of who worked along where a stop may have been forgotten: in no sum before the maker has answered for it.
    pub unsettled: Money,
    /// Fees of what was handed back: among the fees of the job, and to be covered by what is still sold.
    pub fees_lost: Money,
}

/// What it took.
#[derive(Clone, Debug, PartialEq)]
pub struct Hours {
    /// Logged to the job, by kind, stage, operation, and by where each minute comes from.
    pub logged: Time,
    /// The share of its hauls' minutes; none while it is not known.
    pub haul: Option<Span>,
    /// That share by where its minutes come from.
    pub haul_sources: Shares,
    /// Of what was logged, what stands: while the job goes on without what is to settle. All that follows is of these hours.
    pub stands: Time,
    /// With the hauls', by kind and by stage: the hauls' minutes are fetching, and sorting as a stage.
    pub by_kind: Sorted<Kind, Span>,
    pub by_stage: Sorted<Stage, Span>,
    pub by_division: Sorted<Division, Span>,
    /// All of it; none while nothing stands or the haul's share is not known.
    pub total: Option<Span>,
    /// What all operations were thought to take.
    pub estimate: Option<Span>,
    /// What it is judged by afterwards: what was thought as the estimate was given, else all operations as they are planned.
    pub judged_by: Option<Span>,
    /// What is held against it: all that stands, or where some operations were planned and not all, those.
    pub judged: Span,
    /// Still to come by that estimate; none without one.
    pub still: Option<Span>,
    /// Still to come as prices count it and the job's page says it: by the estimate; none while nobody knows.
    pub to_come: Option<Span>,
    /// Of that, what is no more than a guess by so many earlier pieces of which no kind was said, or by the default of its kind; none where something nearer
    /// is known.
    pub by_any: Option<(Count, Span)>,
    /// Operations of which nothing is to come by their hours alone: none of their pieces is noted as done.
    pub unnoted: Vec<String>,
    /// Of that, what each stage has still to come, as far as it was estimated.
    pub still_by_stage: Sorted<Stage, Span>,
    /// Of what is to come, what falls away when the buyer fetches it.
    pub still_delivery: Span,
    /// Of what was logged, what looks like a forgotten stop and the maker has not answered for: counted in nothing but a job that has ended.
    pub unsettled: Span,
    /// The same of its hauls, all of each: in no share of theirs.
    pub hauls_unsettled: Span,
    /// What was logged of deliveries, as if all of the batch bore as much of it as each piece on hand does.
    pub driven_as_left: Span,
}

/// What came in.
#[derive(Clone, Debug, PartialEq)]
pub struct Sold {
    pub pieces: Count,
    pub by_galleries: Count,
    pub at_galleries: Count,
    /// Not for sale any more: what they cost is in the costs of the job.
    pub not_for_sale: Count,
    pub promised: Count,
    /// On hand: neither sold nor with a gallery.
    pub left: Count,
    /// What buyers handed over, or owe, for what was sold.
    pub taken: Money,
    pub tax: Money,
    pub fees: Money,
    /// What galleries handed over, and what they still owe of what they sold.
    pub handed_over: Money,
    pub due_from_galleries: Money,
    /// What they sold for it, paid or due: what was handed over beyond what was owed is not of it.
    pub from_galleries: Money,
    /// What galleries owed and will not pay.
    pub given_up: Money,
    /// Taken less tax and fees, with what galleries handed over or still owe.
    pub net: Money,
    /// Net less costs; none before anything was sold or none is left to sell, or while costs are not known.
    pub kept: Option<Money>,
    /// Net less all that was spent and the fees still to come of what is owed, once it has ended or nothing is left to sell; see [`Sold::at_nothing`].
    at_last: Option<Money>,
    pub per_hour: Option<PerHour>,
    /// Open agreements, summed.
    pub agreed: Option<Money>,
    pub received: Money,
    /// Agreed or sold to buyers, less what was received.
    pub due: Money,
}

/// Three ratios, actual over what was thought.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Ratios {
    /// Logged minutes over the estimate.
    pub hours: Option<Decimal>,
    /// Finished over used wood, over the yield the quote assumed.
    pub wood: Option<Decimal>,
    /// What buyers handed over for the pieces sold, over what was asked.
    pub price: Option<Decimal>,
    /// Both sums, of the sales that stand.
    pub got_of_asked: Option<(Money, Money)>,
}

/// The job of an id, reckoned.
///
/// # Errors
/// [`Refusal::NotThere`], [`Refusal::CurrenciesMixed`], [`Refusal::OutOfRange`], [`Refusal::MoneyOutOfRange`].
pub fn account(shop: &Shop, id: Id) -> Answer<Account> {
    of(shop, &shop.job(id)?)
}

/// A job, reckoned.
///
/// # Errors
/// As [`account`].
pub fn of(shop: &Shop, job: &Job) -> Answer<Account> {
    let shares = of_job(shop, job)?;
    let wood = wood(shop, job, &shares)?;
    let rate = rate(shop, job.currency);
    let (costs, hours, sold) = so_far(shop, job, (shares, &rate))?;
    let pricing = pricing(shop, job, (&costs, &hours), &rate)?;
    let ratios = ratios(job, (&hours, &wood))?;
    Ok(Account {
        job: job.id,
        name: job.name.clone(),
        currency: job.currency,
        units: job.units,
        pieces: job.pieces,
        ended: job.ended.is_some(),
        costs,
        hours,
        sold,
        wood,
        pricing,
        ratios,
    })
}

impl Account {
    /// Hours the maker has not answered for, which no figure of it counts; of one that has ended all that was logged is what it took.
    pub fn not_counted(&self) -> Span {
        if self.ended { Span::ZERO } else { self.hours.unsettled }
    }

    /// A delivery of it is planned and not made: what is asked for it is with the drive.
    pub fn is_brought(&self) -> bool {
        is_to_bring(&self.costs, &self.hours)
    }
}

fn is_to_bring(costs: &Costs, hours: &Hours) -> bool {
    !costs.still_delivery.is_zero() || Span::ZERO < hours.still_delivery
}

/// The same of a job that is not reckoned yet, by its costs and hours alone.
///
/// # Errors
/// As [`account`].
pub fn is_brought(shop: &Shop, job: &Job) -> Answer<bool> {
    let is_planned =
        job.operations.iter().any(|operation| operation.kind == Kind::Deliver) || job.planned_costs.iter().any(|cost| cost.delivery);
    if !is_planned {
        return Ok(false);
    }
    let costs = costs(shop, job, of_job(shop, job)?)?;
    Ok(is_to_bring(&costs, &hours(shop, job, &costs)?))
}

/// What a line of the list says of a job: its hours and its sale, without its wood and the marks of its price.
///
/// # Errors
/// As [`account`].
pub fn hours_and_sale(shop: &Shop, job: &Job) -> Answer<(Hours, Sold)> {
    let (_, hours, sold) = so_far(shop, job, (of_job(shop, job)?, &rate(shop, job.currency)))?;
    Ok((hours, sold))
}

fn so_far(shop: &Shop, job: &Job, (shares, rate): (Vec<JobShare>, &RateSheet)) -> Answer<(Costs, Hours, Sold)> {
    let costs = costs(shop, job, shares)?;
    let hours = hours(shop, job, &costs)?;
    let sold = sold((shop, job), (&costs, &hours), rate)?;
    Ok((costs, hours, sold))
}

fn costs(shop: &Shop, job: &Job, shares: Vec<JobShare>) -> Answer<Costs> {
    let mut by_kind = Sorted::new();
    let helpers = earned(shop, On::Job(job.id), job.currency)?;
    if !helpers.is_zero() {
        add(&mut by_kind, Key::read(HELPER), helpers)?;
    }
    for line in &job.booked {
        add(&mut by_kind, line.kind.clone(), line.sum)?;
    }
    for share in shares.iter().filter(|share| !share.unpriced).filter_map(|share| share.share) {
        add(&mut by_kind, Key::read(HAUL), share.cost)?;
    }
    let known = shares.iter().all(|share| share.share.is_some() && !share.unpriced) && !by_kind.is_empty();
    let sum = Money::sum(job.currency, by_kind.values().copied())?;
    let shared = Key::read(HAUL).and_then(|haul| by_kind.get(&haul).copied());
    let still = |of: fn(&PlannedCost) -> bool| still(shop, job, (of, shared));
    let still_wood = still(|cost| cost.kind.as_str() == HAUL)?;
    let (still, still_delivery) = (still(|_| true)?, still(|cost| cost.delivery)?);
    let (lines, total, driven_as_left) = (job.booked.clone(), known.then_some(sum), driven(shop, job, |at, sum| bears(job, at, sum))?);
    let driven = Money::book(driven(shop, job, |_, sum| Ok(sum.amount()))?, job.currency)?;
    let fees_lost = job.selling.fees_lost(job.currency)?;
    let unsettled = pay_of(&helped_to_settle(shop, On::Job(job.id), job.currency)?, job.currency)?;
    Ok(Costs { lines, shares, total, by_kind, still, still_delivery, driven, driven_as_left, still_wood, unsettled, fees_lost })
}

fn add(by_kind: &mut Sorted<Key, Money>, kind: Option<Key>, sum: Money) -> Answer<()> {
    let Some(kind) = kind else { return Ok(()) };
    let so_far = by_kind.get(&kind).copied().unwrap_or(Money::zero(sum.currency()));
    by_kind.insert(kind, so_far.plus(sum)?);
    Ok(())
}

/// Planned costs, each less as much as was booked of its kind since it was planned; those that are meant. Nothing once the job
/// has ended. What came back of a kind brings nothing back of its plan.
fn still(shop: &Shop, job: &Job, (of, shared): (fn(&PlannedCost) -> bool, Option<Money>)) -> Answer<Money> {
    let mut sum = Money::zero(job.currency);
    for cost in job.planned_costs.iter().filter(|cost| job.ended.is_none() && of(cost)) {
        let is_of = |line: &&Booked| line.kind.as_ref() == Some(&cost.kind) && line.delivery.is_none_or(|is_for| is_for == cost.delivery);
        let since = job.booked.iter().skip(cost.after).filter(is_of).map(|line| line.sum);
        let spent = Money::sum(job.currency, since.filter(|sum| Decimal::ZERO < sum.amount()))?;
        let paid = match cost.kind.as_str() {
            HELPER => earned_since(shop, (On::Job(job.id), cost.at), job.currency)?,
            // A share has no day.
            HAUL => shared.unwrap_or(Money::zero(job.currency)),
            _ => Money::zero(job.currency),
        };
        let rest = cost.sum.minus(spent)?.minus(paid)?;
        if Decimal::ZERO < rest.amount() {
            sum = sum.plus(rest)?;
        }
    }
    Ok(sum)
}

fn hours(shop: &Shop, job: &Job, costs: &Costs) -> Answer<Hours> {
    let logged = shop.time(job.id);
    let shared: Option<Vec<Span>> = costs.shares.iter().map(|share| share.share.map(|share| share.time)).collect();
    let haul = shared.map(Span::sum);
    let stands = if job.ended.is_some() { logged.clone() } else { shop.bench.sure_of_job(job.id, shop.now) };
    let mut by_kind = totals(&stands.by_kind);
    let mut by_stage = totals(&stands.by_stage);
    let mut by_division = totals(&stands.by_division);
    let sorting = Span::sum(costs.shares.iter().map(|share| share.sorting));
    if let Some(haul) = haul.filter(|haul| Span::ZERO < *haul) {
        more(&mut by_kind, Kind::Fetch, haul);
        more(&mut by_stage, Stage::Fetch, haul.minus(sorting));
        more(&mut by_stage, Stage::Sort, sorting);
        more(&mut by_division, Division::Fetch, haul.minus(sorting));
        more(&mut by_division, Division::Sort, sorting);
    }
    let own = stands.own.total();
    let total = haul.map(|haul| haul.plus(own)).filter(|total| Span::ZERO < *total);
    let left: Option<Vec<Span>> = job.operations.iter().map(|operation| still_thought(shop, job, operation)).collect();
    let left = left.filter(|left| !left.is_empty());
    let to_come = to_come(shop, job, &stands);
    let judged = as_judged(shop, job);
    let mut still_by_stage = Sorted::new();
    for still in to_come.iter().flatten() {
        // What is not planned of a piece is made.
        more(&mut still_by_stage, still.stage.unwrap_or(Stage::Make), still.span);
    }
    let delivery = to_come.iter().flatten().filter(|still| still.kind == Kind::Deliver);
    Ok(Hours {
        haul,
        haul_sources: costs.shares.iter().fold(Shares::default(), |sum, share| sum.plus(share.sources)),
        driven_as_left: time_bears(shop, job)?,
        by_kind,
        by_stage,
        by_division,
        total,
        estimate: job.estimate(),
        judged_by: judged.judged_by(),
        judged: judged.judged(own, of_planned(&judged, &stands)),
        still_delivery: Span::sum(delivery.map(|still| still.span)),
        by_any: to_come.iter().flatten().find_map(|still| Some((still.by_any?, still.span)).filter(|(_, span)| Span::ZERO < *span)),
        unnoted: to_come.iter().flatten().filter_map(|still| still.unnoted.clone()).listed(),
        to_come: to_come.map(|all| Span::sum(all.iter().map(|still| still.span))),
        still: left.map(Span::sum).or_else(|| still_given(job, own)),
        still_by_stage,
        unsettled: Span::sum(shop.unsettled(shop.bench.on(On::Job(job.id))).map(|run| run.worked(shop.now))),
        hauls_unsettled: Span::sum(costs.shares.iter().map(|share| share.in_question)),
        stands,
        logged,
    })
}

impl Hours {
    /// What was worked and stands, with the hauls' share as far as it is known; none where nothing was worked, not even what is to settle.
    pub fn so_far(&self) -> Option<Span> {
        let own = self.stands.own.total();
        self.total.or(Some(own).filter(|own| Span::ZERO < own.plus(self.unsettled)))
    }

    /// Whether anything was worked on it, though nobody may have answered for its stop.
    pub fn is_begun(&self) -> bool {
        self.so_far().is_some()
    }
}

fn of_planned(job: &Job, stands: &Time) -> Span {
    Span::sum(job.operations.iter().filter_map(|planned| stands.by_op.get(&planned.op)).map(|shares| shares.total()))
}

/// Where its operations say nothing, what is left of the estimate that was given.
fn still_given(job: &Job, stands: Span) -> Option<Span> {
    job.kept
        .filter(|_| job.ended.is_none())
        .map(|kept| if job.left() == 0 { Span::ZERO } else { kept.likely.minus(stands).max(Span::ZERO) })
}

fn more<K: Ord>(spans: &mut Sorted<K, Span>, key: K, span: Span) {
    if Span::ZERO < span {
        let there = spans.entry(key).or_default();
        *there = there.plus(span);
    }
}

fn totals<K: Ord + Copy>(shares: &Sorted<K, Shares>) -> Sorted<K, Span> {
    shares.iter().map(|(key, shares)| (*key, shares.total())).collect()
}

fn sold((shop, job): (&Shop, &Job), (costs, hours): (&Costs, &Hours), rate: &RateSheet) -> Answer<Sold> {
    let (selling, currency) = (&job.selling, job.currency);
    let (taken, tax, fees) = (selling.taken(currency)?, selling.tax(currency)?, selling.fees(currency)?);
    let handed_over = selling.handed_over(currency)?;
    let due_from_galleries = selling.due_from_galleries(currency)?;
    // What came beyond what a gallery owed was not earned, as what came beyond what a buyer owes is not.
    let earned = handed_over.minus(selling.beyond_dues(currency)?)?;
    let from_galleries = earned.plus(due_from_galleries)?;
    let net = taken.minus(tax)?.minus(fees)?.plus(from_galleries)?;
    let (pieces, by_galleries) = (selling.sold_pieces(), selling.sold_by_galleries());
    // Where none was sold and none is left, all that was spent is lost.
    let is_lost = 0 < selling.pieces_not_for_sale() && job.left() == 0 && selling.at_galleries_now() == 0;
    let all_costs = costs.total;
    let costs = all_costs.filter(|_| is_lost || 0 < pieces.saturating_add(by_galleries));
    let kept = costs.map(|costs| net.minus(costs)).transpose()?;
    let per_hour = match costs.zip(hours.total) {
        Some((costs, time)) => Some(Way { you_get: net, costs, time }.per_hour(rate.year.as_ref())?),
        None => None,
    };
    // What is owed still bears its fees.
    let is_over = job.ended.is_some() || (job.left() == 0 && selling.at_galleries_now() == 0);
    let at_last = all_costs.filter(|_| is_over).map(|costs| net.minus(fees_owed(shop, job)?)?.minus(costs)).transpose()?;
    let open: Vec<Money> = selling.open().map(|agreement| agreement.sum).listed();
    let agreed = if open.is_empty() { None } else { Some(Money::sum(currency, open)?) };
    Ok(Sold {
        pieces,
        by_galleries,
        at_galleries: selling.at_galleries_now(),
        not_for_sale: selling.pieces_not_for_sale(),
        promised: selling.promised(),
        left: job.left(),
        taken,
        tax,
        fees,
        handed_over,
        due_from_galleries,
        from_galleries,
        given_up: selling.given_up(currency)?,
        net,
        kept,
        at_last,
        per_hour,
        agreed,
        received: selling.received(currency)?,
        due: due(shop, job)?,
    })
}

fn ratios(job: &Job, (hours, wood): (&Hours, &Wood)) -> Answer<Ratios> {
    let over = |actual: Decimal, thought: Decimal| actual.checked_div(thought);
    let logged = hours.judged;
    let of_hours = hours.judged_by.filter(|estimate| Span::ZERO < *estimate && Span::ZERO < logged);
    let mut asked = Decimal::ZERO;
    let (mut got, mut coins, mut counted) = (Decimal::ZERO, Money::zero(job.currency), 0);
    for sale in job.selling.standing() {
        let Some(of_sale) = asked_for(job, sale)? else { continue };
        asked = asked.checked_add(of_sale).ok_or(Refusal::OutOfRange)?;
        got = got.checked_add(sale.sum.amount()).ok_or(Refusal::OutOfRange)?;
        (coins, counted) = (coins.plus(job.selling.rounded_of_sale(sale)?)?, sale.n.saturating_add(counted));
    }
    // What was taken is what was handed over: the coins of a payment for several are of them all.
    let coins = if counted == job.selling.sold_pieces() { job.selling.rounded(job.currency)? } else { coins };
    got = got.checked_add(coins.amount()).ok_or(Refusal::OutOfRange)?;
    Ok(Ratios {
        hours: of_hours.and_then(|estimate| over(Decimal::from(logged.as_ms()), Decimal::from(estimate.as_ms()))),
        wood: wood.finished_of_used.and_then(|share| over(share, wood.assumed)),
        price: over(got, asked),
        got_of_asked: if asked.is_zero() { None } else { Some((Money::book(got, job.currency)?, Money::book(asked, job.currency)?)) },
    })
}

/// What was asked for the pieces of a sale: their tags as they stood when it was sold, or when a tax of its own was spoken of, with the tax of the
/// sale where it is on top; without a tag, their part of what was agreed. A tag of later may be before another tax, or with it.
fn asked_for(job: &Job, sale: &Sale) -> Answer<Option<Decimal>> {
    let (n, agreement) = (Decimal::from(sale.n), sale.agreed.and_then(|id| job.selling.agreement(id)));
    let used = Tax { rate: sale.rate, side: sale.side };
    let spoken = agreement.filter(|agreement| agreement.tax == Some(used));
    let agreed = || {
        let agreement = agreement?;
        agreement.sum.amount().checked_mul(n)?.checked_div(Decimal::from(agreement.n))
    };
    match spoken.map_or(sale.tag, |agreement| agreement.tag) {
        Some(tag) => used.charge(tag.times(sale.n)?).map(|asked| Some(asked.amount())),
        None => Ok(agreed()),
    }
}

impl Sold {
    /// Of a job that is done with, what is left in all if the pieces that are unsold, on the shelf or at galleries, bring nothing, with the fees still
    /// to come. None where some of it is promised, or all of it is gone.
    pub fn at_nothing(&self) -> Option<(Count, Money)> {
        let unsold = self.left.saturating_add(self.at_galleries);
        self.at_last.filter(|_| 0 < unsold && self.promised == 0).map(|left| (unsold, left))
    }

    /// What is left of it in all, once nothing is left to sell, with the fees still to come; none where costs are not known.
    pub fn in_the_end(&self) -> Option<Money> {
        self.kept.and(self.at_last).filter(|_| !self.is_any_to_sell())
    }

    /// A piece is left that may be sold yet, by the maker or by a gallery.
    pub fn is_any_to_sell(&self) -> bool {
        0 < self.left.saturating_add(self.at_galleries)
    }
}

impl Costs {
    /// What keeps the share of a haul unknown.
    pub fn lacking(&self) -> Option<Lacking> {
        let of = |share: &JobShare| match &share.no_size {
            Some(pile) => Some(Lacking::Size(pile.clone())),
            None => share.unpriced.then_some(Lacking::Mileage),
        };
        self.shares.iter().find_map(of)
    }
}

impl Account {
    /// The sum of one kind of cost; none where nothing of it was noted.
    pub fn cost(&self, kind: &str) -> Option<Money> {
        Key::read(kind).and_then(|key| self.costs.by_kind.get(&key)).copied()
    }

    /// What was driven for it.
    pub fn driven(&self) -> Option<Money> {
        self.cost(DISTANCE)
    }
}
