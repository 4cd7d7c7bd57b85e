//! The marks on the scale of a job's price: what each sum would cover, what is asked, where to settle.

use super::account::{Costs, Hours};
use super::driven::is_any_for_promised;
use super::offer::{Asking, part_of_time};
use super::rate::RateSheet;
use super::shop::Shop;
use super::waiting::{Known, known};
use crate::ledger::fold::{Job, exact_part, part};
use crate::ledger::kind::bench::Kind;
use crate::ledger::kind::sale::{Carried, Paid};
use crate::money::offer::{Agreed, Standing, settle};
use crate::money::price::{Hourly, Mark, Marks, Proposed, Work, marks, of_tag, proposed};
use crate::quantity::{Cash, Count, Decimal, Money, Span, up_to_cash};
use crate::refusal::{Answer, Refusal};

/// The price of one piece, seen from all sides. It is reckoned for the way of being paid that costs most.
#[derive(Clone, Debug, PartialEq)]
pub struct Pricing {
    /// Costs and hours of the whole batch, so far and still to come, as if each piece of it went to a buyer of its own.
    pub work: Work,
    /// What one drive to a buyer still costs and takes, however many go along.
    pub delivery: (Money, Span),
    /// What was driven to deliver; none where nothing was, or no piece is left.
    pub driven: Option<Driven>,
    /// Nobody knows what is still to come of its hours: those of the work are the least.
    pub at_least: bool,
    pub hourly: Hourly,
    pub marks: Marks,
    /// The tag as set.
    pub tag: Option<Money>,
    /// What the buyer would hand over for the tag; without one, for the price proposed.
    pub ask: Option<Money>,
    /// The least price point that pays your rate.
    pub proposed: Option<Proposed>,
    /// Without what waiting is worth.
    pub settle: Option<Money>,
    /// The maker set it.
    pub settle_set: Option<Money>,
    /// Why there are no marks, where tax and fees leave nothing of a charge.
    pub refused: Option<Refusal>,
}

/// What was driven to deliver so far, as far as the pieces on hand bear it; all of it where others do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Driven {
    pub costs: Money,
    pub time: Span,
    /// All that was driven.
    pub of_all: (Money, Span),
    pub by: Bearers,
}

/// Which pieces bear what was driven.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bearers {
    /// So many that are on hand.
    Left(Count),
    /// Those that are agreed and to be brought.
    Promised,
    /// It brought pieces that are gone.
    Gone,
}

/// The price of one piece of a job.
///
/// # Errors
/// [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`].
pub fn pricing(shop: &Shop, job: &Job, (costs, hours): (&Costs, &Hours), rate: &RateSheet) -> Answer<Pricing> {
    let delivery = (costs.still_delivery, hours.still_delivery);
    let by_one = to_one_buyer(job, delivery, 1)?;
    let whole = whole(job, (costs, hours), Carried::Delivered)?;
    let time = |all: Span| all.minus(delivery.1).plus(by_one.1).minus(driven(hours)).plus(hours.driven_as_left);
    let work = Work {
        costs: whole.costs.map(|all| costs_as_left(job, costs, all)).transpose()?,
        driven: costs.driven_as_left,
        time: whole.time.map(time).filter(|time| Span::ZERO < *time),
        ..whole
    };
    let (tax, points, hourly) = (shop.tax_of(job), shop.points(job.currency), rate.hourly());
    let (marks, refused) = match by_dearest(shop, job, (&work, hourly)) {
        Ok(marks) => (marks, None),
        Err(refusal) => (Marks::default(), Some(refusal)),
    };
    let at_least = hours.to_come.is_none();
    let proposed = by_rate(shop, job, (marks.your_rate, at_least));
    let tagged = job.tag.map(|tag| tax.charge(tag)).transpose()?;
    let ask = tagged.or(proposed.map(|proposed| proposed.charge));
    let standing = Standing { ask, set: job.settle, ..Standing::default() };
    let settle = settle(&standing, points)?;
    let driven = driven_so_far(shop, job, (costs, hours))?;
    Ok(Pricing { work, delivery, driven, at_least, hourly, marks, tag: job.tag, ask, proposed, settle, settle_set: job.settle, refused })
}

/// The least price point that pays your rate, however it is paid. A price is proposed where its hours are whole: else one hour would do for a week.
fn by_rate(shop: &Shop, job: &Job, (rate, at_least): (Option<Mark>, bool)) -> Option<Proposed> {
    for_need(shop, job, rate.filter(|_| !at_least)?.need).ok()
}

/// The least price point that covers a need, however it is paid.
pub(super) fn for_need(shop: &Shop, job: &Job, need: Decimal) -> Answer<Proposed> {
    let (points, currency) = (shop.points(job.currency), job.currency);
    let [card, bank, notes] = WAYS.map(|paid| proposed(need, shop.terms_of(job, paid), points, currency));
    let dearer = |one: Proposed, other: Proposed| if one.tag.amount() < other.tag.amount() { other } else { one };
    let by_notes = |tag: Money| of_tag(tag, need, shop.terms_of(job, Paid::Notes));
    let mut found = dearer(dearer(card?, bank?), notes?);
    // In coins it may be asked for less: then the next point that still covers it.
    let mut in_notes = by_notes(found.tag)?;
    for _ in 0..MOST_POINTS {
        let coins = shop.till(currency).in_coins(Some(Paid::Notes), in_notes.charge)?.minus(in_notes.charge)?;
        if Decimal::ZERO <= in_notes.you_get.plus(coins)?.amount().checked_sub(need).ok_or(Refusal::OutOfRange)? {
            break;
        }
        in_notes = by_notes(points.above(in_notes.tag)?)?;
        found = dearer(found, in_notes);
    }
    Ok(found)
}

/// A coin is no more than so many points: half of the largest against the least.
const MOST_POINTS: usize = 100;

/// Ways of being paid, the most usual first: of those that cost as much it is the one that is named.
const WAYS: [Paid; 3] = [Paid::Card, Paid::Bank, Paid::Notes];

/// The way of being paid that costs most of a sum.
pub(super) fn dearest(shop: &Shop, sum: Money) -> Answer<Paid> {
    let till = shop.till(sum.currency());
    let mut found = (Paid::Card, till.fee_of(Paid::Card).of(sum)?);
    for paid in WAYS {
        let fee = till.fee_of(paid).of(sum)?;
        found = if found.1.amount() < fee.amount() { (paid, fee) } else { found };
    }
    Ok(found.0)
}

/// The marks of one piece, each by the way of being paid that costs most of it.
pub(super) fn by_dearest(shop: &Shop, job: &Job, (work, hourly): (&Work, Hourly)) -> Answer<Marks> {
    let dearer = |one: Option<Mark>, other: Option<Mark>| match (one, other) {
        (Some(one), Some(other)) if one.charge < other.charge => Some(other),
        (one, other) => one.or(other),
    };
    let mut found = Marks::default();
    for paid in WAYS {
        let Marks { costs_covered, lowest_pay, your_rate } = marks(work, hourly, shop.terms_of(job, paid), 1)?;
        found.costs_covered = dearer(found.costs_covered, costs_covered);
        found.lowest_pay = dearer(found.lowest_pay, lowest_pay);
        found.your_rate = dearer(found.your_rate, your_rate);
    }
    Ok(found)
}

/// Costs and hours of a job so far, with what is still to come of them; what a delivery takes falls away where it is fetched.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`].
pub(super) fn whole(job: &Job, (costs, hours): (&Costs, &Hours), carried: Carried) -> Answer<Work> {
    let is_brought = carried == Carried::Delivered;
    let still = if is_brought { costs.still } else { costs.still.minus(costs.still_delivery)? };
    let to_come = hours.to_come.unwrap_or(Span::ZERO);
    let to_come = if is_brought { to_come } else { to_come.minus(hours.still_delivery) };
    let all = costs.total.map(|total| total.plus(still)).transpose()?;
    // Before the first minute there is what is to come, where the share of the hauls is known.
    let so_far = hours.total.or(hours.haul);
    let time = so_far.map(|so_far| so_far.plus(to_come)).filter(|time| Span::ZERO < *time);
    Ok(Work { costs: all, driven: Decimal::ZERO, time, pieces: job.pieces })
}

/// One drive to a buyer who takes `n`: what it would take if all of the batch went like that, so that the part of `n` is the whole drive.
fn to_one_buyer(job: &Job, (costs, time): (Money, Span), n: Count) -> Answer<(Money, Span)> {
    if job.left() == 0 {
        return Ok((costs, time));
    }
    Ok((part(costs, job.pieces, n)?, part_of_time(time, job.pieces, n)?))
}

/// All costs, as if each piece of the batch went to a buyer of its own, with the fees that were lost, and without what was booked for a delivery.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`].
pub(super) fn costs_as_left(job: &Job, costs: &Costs, all: Money) -> Answer<Money> {
    let (to_come, _) = to_one_buyer(job, (costs.still_delivery, Span::ZERO), 1)?;
    all.minus(costs.still_delivery)?.plus(to_come)?.minus(costs.driven)?.plus(costs.fees_lost)
}

fn driven_so_far(shop: &Shop, job: &Job, (costs, hours): (&Costs, &Hours)) -> Answer<Option<Driven>> {
    let (left, all) = (job.left(), (costs.driven, driven(hours)));
    if left == 0 || (all.0.is_zero() && all.1 <= Span::ZERO) {
        return Ok(None);
    }
    let whole = |by| Ok(Some(Driven { costs: all.0, time: all.1, of_all: all, by }));
    if costs.driven_as_left.is_zero() && hours.driven_as_left <= Span::ZERO {
        return whole(if is_any_for_promised(shop, job)? { Bearers::Promised } else { Bearers::Gone });
    }
    let costs = Money::book(exact_part(costs.driven_as_left, left, job.pieces)?, job.currency)?;
    let time = part_of_time(hours.driven_as_left, left, job.pieces)?;
    Ok(Some(Driven { costs, time, of_all: all, by: Bearers::Left(left) }))
}

/// What was logged of deliveries.
fn driven(hours: &Hours) -> Span {
    hours.by_kind.get(&Kind::Deliver).copied().unwrap_or_default()
}

impl Pricing {
    /// Costs and hours of the whole batch, as if all of it went in lots of `n`, each to one buyer: what a delivery takes falls away where it is
    /// fetched, and is there once for each buyer where it is brought.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn work_of(&self, job: &Job, (n, carried): (Count, Carried)) -> Answer<Work> {
        self.work_with(job, (n, carried.drives()))
    }

    /// The same with so many drives for each lot.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn work_with(&self, job: &Job, (n, drives): (Count, Count)) -> Answer<Work> {
        let by_one = to_one_buyer(job, self.delivery, 1)?;
        let (costs, time) = if drives == 0 {
            (Money::zero(job.currency), Span::ZERO)
        } else {
            to_one_buyer(job, (self.delivery.0.times(drives)?, self.delivery.1.times(drives.into())), n)?
        };
        let time = self.work.time.map(|all| all.minus(by_one.1).plus(time)).filter(|time| Span::ZERO < *time);
        Ok(Work { costs: self.work.costs.map(|all| all.minus(by_one.0)?.plus(costs)).transpose()?, time, ..self.work })
    }

    /// The tag of each as set, else as proposed for so many that are carried so: one drive brings them all.
    fn tag_of(&self, shop: &Shop, job: &Job, (n, carried): (Count, Carried)) -> Answer<Option<Money>> {
        let marks = || by_dearest(shop, job, (&self.work_of(job, (n, carried))?, self.hourly));
        let proposed = if self.tag.is_some() || (n, carried) == (1, Carried::Delivered) {
            self.proposed
        } else {
            by_rate(shop, job, (marks()?.your_rate, self.at_least))
        };
        Ok(self.tag.or(proposed.map(|proposed| proposed.tag)))
    }

    /// What is asked today for so many pieces paid and carried in one way: where no tag is set, by what is proposed.
    ///
    /// # Errors
    /// As [`ask_today`].
    pub fn ask(&self, shop: &Shop, job: &Job, asking: Asking) -> Answer<Option<Money>> {
        asked(shop, (job, self.tag_of(shop, job, (asking.n, asking.carried))?), (asking.n, asking.paid))
    }

    /// What stands before the buyer speaks, for so many pieces paid and carried in one way: the marks are reckoned anew.
    ///
    /// # Errors
    /// [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`].
    pub fn standing(&self, shop: &Shop, job: &Job, asking: Asking) -> Answer<(Standing, Marks)> {
        let (n, paid, terms) = (asking.n, asking.paid, shop.terms_of(job, asking.paid));
        let coin = shop.till(job.currency).coin(Some(paid))?;
        let marks = in_coins(marks(&self.work_of(job, (n, asking.carried))?, self.hourly, terms, n)?, coin)?;
        let take = terms.take()?;
        // Guesses that say nothing leave the marks of the work.
        let known = known(shop, job)?.filter(|known| known.worth.is_ok());
        let ask = self.ask(shop, job, asking)?;
        let take = known.as_ref().map_or(Ok(take), |known| known.rests.carried(take, asking.carried))?;
        let of_waiting = |known: &Known| Some((known.under((n, ask?), take).ok()?, known.band((n, ask?), take)));
        let waiting = known.as_deref().and_then(of_waiting);
        let one = Standing { set: self.settle_set, ..Standing::default() }.for_pieces(n)?;
        let holds = |mark: Option<Mark>| mark.map(|mark| mark.holds);
        let standing = Standing {
            agreed: agreed(job)?,
            your_rate: holds(marks.your_rate),
            lowest_pay: holds(marks.lowest_pay),
            costs_covered: holds(marks.costs_covered),
            at_least: self.at_least,
            not_under: waiting.map(|(not_under, _)| not_under),
            band: waiting.and_then(|(_, band)| band),
            ask,
            coin,
            ..one
        };
        Ok((standing, marks))
    }
}

/// Marks up to the coin they are handed over in: less would not do.
fn in_coins(marks: Marks, coin: Option<Cash>) -> Answer<Marks> {
    let Some(coin) = coin else { return Ok(marks) };
    let up = |mark: Option<Mark>| mark.map(|mark| Ok(Mark { holds: up_to_cash(mark.holds, coin)?, ..mark })).transpose();
    Ok(Marks { costs_covered: up(marks.costs_covered)?, lowest_pay: up(marks.lowest_pay)?, your_rate: up(marks.your_rate)? })
}

/// What is asked today for `n` of them, paid in one way: what waiting has come down to, else the tags with their tax; in notes to the coin.
/// None without a tag and without guesses.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`], [`Refusal::CoinOutOfRange`].
pub fn ask_today(shop: &Shop, job: &Job, (n, paid): (Count, Paid)) -> Answer<Option<Money>> {
    asked(shop, (job, job.tag), (n, paid))
}

/// The tag that would say what is asked today of one, and with its tax never more; none where that is not less than the tag says, or where no tag or nothing of waiting was said.
///
/// # Errors
/// [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
pub fn lower_tag(shop: &Shop, job: &Job) -> Answer<Option<Money>> {
    let tax = shop.tax_of(job);
    let (Some(tag), Some(ask)) = (job.tag, asked(shop, (job, None), (1, Paid::Bank))?) else { return Ok(None) };
    let lower = tax.tag_within(ask)?;
    Ok(Some(lower).filter(|lower| lower.amount() < tag.amount()))
}

fn asked(shop: &Shop, (job, tag): (&Job, Option<Money>), (n, paid): (Count, Paid)) -> Answer<Option<Money>> {
    // Guesses that say nothing leave the tag.
    let known = known(shop, job).ok().flatten();
    let came_down = known.as_ref().and_then(|known| known.worth.as_ref().ok()).map(|worth| worth.ask);
    let tax = shop.tax_of(job);
    let sum = match (came_down, tag) {
        (None, None) => return Ok(None),
        (Some(ask), tag) if tag.map(|tag| tax.charge(tag)).transpose()? != Some(ask) => ask.times(n)?,
        // Tax on top of several tags is one line: of their sum.
        (_, Some(tag)) => tax.charge(tag.times(n)?)?,
        (Some(ask), None) => ask.times(n)?,
    };
    shop.till(job.currency).in_coins(Some(paid), sum).map(Some)
}

/// The agreement that answers first: where every piece that is left is promised.
pub fn agreed(job: &Job) -> Answer<Option<Agreed>> {
    if 0 < job.free() || job.selling.promised() == 0 {
        return Ok(None);
    }
    let (mut price, mut rest) = (Money::zero(job.currency), Money::zero(job.currency));
    for agreement in job.selling.open() {
        price = price.plus(agreement.sum)?;
        rest = rest.plus(agreement.sum.minus(agreement.sold_for)?)?;
    }
    // Each order once: two phones may have changed it.
    let orders = job.selling.open_orders();
    let due = orders.iter().map(|order| job.selling.due_of_order(job.currency, order)).collect::<Answer<Vec<Money>>>()?;
    Ok(Some(Agreed { price, rest, due: Money::sum(job.currency, due)? }))
}

/// One piece with all that is planned for it, paid in one way.
pub(super) fn one_paid(paid: Paid) -> Asking {
    Asking { n: 1, paid, carried: Carried::Delivered, tax: None }
}

/// Where to settle for one: as set, else midway between ask and not under where waiting was guessed.
pub fn settle_now(shop: &Shop, job: &Job, pricing: &Pricing) -> Option<Money> {
    let paid = pricing.ask.and_then(|ask| dearest(shop, ask).ok()).unwrap_or(Paid::Card);
    let standing = pricing.standing(shop, job, one_paid(paid)).map(|(standing, _)| settle(&standing, shop.points(job.currency)));
    standing.and_then(|settle| settle).unwrap_or(pricing.settle)
}
