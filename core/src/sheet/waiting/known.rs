//! What waiting is worth for a job: reckoned once for what it rests on, and kept until that changes. Those who may come are thought to
//! pay in the way that costs most; not under is said by how the buyer pays who stands there.

use super::asking::asking;
use super::seen::{Came, came, seen};
use super::{Question, costs};
use crate::ledger::fold::Job;
use crate::ledger::kind::sale::Carried;
use crate::money::charge::charge_for;
use crate::money::offer::Band;
use crate::money::point::Points;
use crate::quantity::{Count, Day, Decimal, Id, Money, Take, Wall, sums};
use crate::refusal::{Answer, Refusal};
use crate::sale::demand::{Demand, Guess, USUAL_RATIO};
use crate::sale::learning::{Belief, Prospects, SoFar, belief};
use crate::sale::waiting::{DAYS_MOST, Lot, Waiting, waiting};
use crate::sheet::Shop;
use crate::sheet::jobs::{Section, section};
use crate::sheet::marks::{dearest, for_need};
use std::cell::{OnceCell, RefCell};
use std::rc::Rc;

/// What it rests on. Nothing else changes what waiting is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Rests {
    pub guess: Guess,
    pub came: Vec<Came>,
    /// When it was guessed, and by when it is to be sold: days by the clock of the place where that was said.
    pub told: Wall,
    pub by: Day,
    pub now: Day,
    /// Since when so many are left.
    pub since: Wall,
    pub pieces: Count,
    pub end: Money,
    /// What the time of one who asks costs, and keeping them a day.
    pub each_ask: Money,
    pub each_day: Money,
    /// What is kept of a charge that is paid in the way that costs most, less what bringing one takes.
    pub take: Take,
    /// What one drive to a buyer takes, as it is planned.
    pub delivery: Decimal,
    /// What a buyer hands over for the tag.
    pub tag: Option<Money>,
    /// The least price point that pays the lowest pay: no less is asked. None where it is not known.
    pub lowest: Option<Money>,
    pub points: Points,
}

/// It, reckoned.
#[derive(Debug)]
pub struct Known {
    job: Id,
    pub rests: Rests,
    pub worth: Answer<Worth>,
    so_far: RefCell<SoFar>,
    prospects: OnceCell<Option<Prospects>>,
}

/// What waiting is worth now.
#[derive(Clone, Debug, PartialEq)]
pub struct Worth {
    pub demand: Demand,
    pub waits: Waiting,
    /// For the last one alone: no piece is worth more, for no more than its tag is ever asked.
    pub one: Waiting,
    /// The price to ask now.
    pub ask: Money,
}

/// What was reckoned before, what was asked for last at the end: of one job several, by what each rests on.
#[derive(Debug, Default)]
pub struct Kept(RefCell<Vec<Rc<Known>>>);

/// So many are kept at most.
const KEPT: usize = 32;
/// A band is a sum of many: pieces times people who may come are so many at most (ours),
const BAND_MOST: f64 = 8_000.0;
/// and so many steps of a piece are reckoned in one go, so that no tap waits for it (ours).
pub const IN_ONE_GO: u64 = 6_000;
/// What takes more than this, or can't be reckoned, is still to come when a first sum is said (ours).
const SLOW: f64 = 24_000.0;

/// What waiting is worth, where the maker guessed all that it needs, a piece is free and a day is left; none else.
///
/// # Errors
/// [`Refusal::FeesEatThePrice`], [`Refusal::MoneyOutOfRange`], [`Refusal::NothingAsked`].
pub fn known(shop: &Shop, job: &Job) -> Answer<Option<Rc<Known>>> {
    // A job the maker is done with may have pieces that are still for sale.
    let is_there = 0 < job.free() && section(shop, job)? != Section::Ended;
    let rests = if is_there { rests(shop, job)? } else { None };
    let Some(rests) = rests.filter(|rests| rests.now < rests.by) else { return Ok(None) };
    let mut kept = shop.prospects.0.borrow_mut();
    if let Some(place) = kept.iter().position(|known| known.job == job.id && known.rests == rests) {
        let known = kept.remove(place);
        kept.push(known.clone());
        return Ok(Some(known));
    }
    let known = Rc::new(Known { job: job.id, worth: rests.worth(), rests, so_far: RefCell::default(), prospects: OnceCell::new() });
    if KEPT <= kept.len() {
        kept.remove(0);
    }
    kept.push(known.clone());
    Ok(Some(known))
}

/// The day by which it was to be sold, where all was guessed and that has come while pieces are left.
///
/// # Errors
/// As the section of a job.
pub fn day_has_come(shop: &Shop, job: &Job) -> Answer<Option<Day>> {
    let guesses = &job.selling.guesses;
    let by = guesses.by.filter(|by| by.day() <= Wall::new(shop.now, by.offset).day()).map(Wall::day);
    let is_open = Question::first_open(guesses).is_none() && 0 < job.free();
    Ok(if is_open && section(shop, job)? != Section::Ended { by } else { None })
}

/// What it rests on now; none where something is not guessed.
pub(super) fn rests(shop: &Shop, job: &Job) -> Answer<Option<Rests>> {
    let (guesses, selling) = (&job.selling.guesses, &job.selling);
    let (Some(asks), Some(buys), Some(at)) = (guesses.asks, guesses.buys, guesses.at) else { return Ok(None) };
    let (Some(by), Some(end), Some(told)) = (guesses.by, guesses.end, guesses.told) else { return Ok(None) };
    let guess = Guess { asks, buys, at, ratio: guesses.k.unwrap_or(USUAL_RATIO), no_show: guesses.no_show.unwrap_or_default() };
    let tag = job.tag.map(|tag| shop.tax_of(job).charge(tag)).transpose()?;
    let terms = shop.terms_of(job, dearest(shop, tag.unwrap_or(at))?);
    let lowest = shop.lowest_need(job)?.map(|need| for_need(shop, job, need)).transpose()?;
    let sold = selling.standing().map(|sale| sale.at.at);
    let lent = selling.consigned.iter().chain(&selling.consignments_returned).map(|there| there.at.at);
    let gone = selling.not_for_sale.iter().map(|gone| gone.at.at);
    let changed = sold.chain(lent).chain(gone).chain(selling.agreements.iter().map(|agreement| agreement.at));
    let place = |at| Wall::new(at, by.offset);
    let delivery = costs::delivery(shop, job)?;
    Ok(Some(Rests {
        guess,
        came: came(job, tag.unwrap_or(at), told)?,
        told: place(told),
        by: by.day(),
        now: place(shop.now).day(),
        since: place(changed.max().unwrap_or(told).max(told)),
        pieces: job.free(),
        end,
        each_ask: costs::each_ask(shop, job)?,
        each_day: guesses.each_day.unwrap_or(Money::zero(job.currency)),
        take: brought(terms.take()?, delivery)?,
        delivery,
        tag,
        lowest: lowest.map(|price| price.charge),
        points: shop.points(job.currency),
    }))
}

/// What is kept where so much more goes out beside the fee.
fn brought(take: Take, delivery: Decimal) -> Answer<Take> {
    Ok(Take { fixed: sums::plus(take.fixed, delivery)?, ..take })
}

impl Rests {
    /// What is kept of what one buyer hands over, however many they take: where they are brought, less what the drive takes.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn carried(&self, take: Take, carried: Carried) -> Answer<Take> {
        let delivery = if carried == Carried::Delivered { self.delivery } else { Decimal::ZERO };
        brought(take, delivery)
    }

    /// Days from a day until it is to be sold: eight weeks at most.
    pub fn days(&self, on: Day) -> u16 {
        u16::try_from(on.until(self.by)).unwrap_or(0).min(DAYS_MOST)
    }

    pub fn lot(&self, on: Day) -> Lot {
        let least = self.lowest.map(|lowest| self.tag.filter(|tag| tag.amount() < lowest.amount()).unwrap_or(lowest));
        let most = None;
        Lot { pieces: self.pieces, end: self.end, each_ask: self.each_ask, each_day: self.each_day, days: self.days(on), least, most }
    }

    /// The last of them alone, never asked for above the tag. Others that wait beside it bear the costs of waiting as much.
    fn last_one(&self) -> Lot {
        let all = self.lot(self.now);
        let nothing = Money::zero(self.end.currency());
        let costs = if self.pieces == 1 { (all.each_ask, all.each_day) } else { (nothing, nothing) };
        Lot { pieces: 1, each_ask: costs.0, each_day: costs.1, most: self.tag, ..all }
    }

    /// What is believed of those who ask, as much as was seen by then.
    pub fn belief(&self, until: Wall) -> Answer<Belief> {
        belief(&self.guess, &seen(&self.came, self.told.day().until(until.day()), until.at))
    }

    /// What is believed now.
    pub(super) fn believed(&self) -> Answer<Belief> {
        let last = self.came.last().map_or(self.told.at, |came| came.at).max(self.now.start(self.told.offset));
        self.belief(Wall::new(last, self.told.offset))
    }

    pub fn worth(&self) -> Answer<Worth> {
        let demand = self.believed()?.likely();
        let waits = waiting(&demand, &self.lot(self.now), self.take)?;
        let one = waiting(&demand, &self.last_one(), self.take)?;
        Ok(Worth { demand, ask: asking(self)?, waits, one })
    }
}

impl Known {
    /// The band of doubt is reckoned, or it can't be.
    pub fn has_band(&self) -> bool {
        self.prospects.get().is_some() || self.worth.is_err()
    }

    /// The band of doubt comes in many goes, or is too large to be reckoned.
    pub fn is_slow(&self) -> bool {
        let (Ok(worth), Ok(belief)) = (&self.worth, self.rests.believed()) else { return false };
        SLOW < self.size(worth) * belief.demands() as f64
    }

    /// Pieces times people who may come.
    fn size(&self, worth: &Worth) -> f64 {
        let lot = self.rests.lot(self.rests.now);
        (worth.demand.come * f64::from(lot.days) * f64::from(lot.pieces)).max(1.0)
    }

    /// Reckons the band of doubt, or a part of it: a sum of many, so it waits until the page is painted. Says how many steps of a piece it took.
    pub fn doubt(&self) -> u64 {
        let Ok(worth) = &self.worth else { return 0 };
        let lot = self.rests.lot(self.rests.now);
        let belief = self.rests.believed().ok().filter(|_| self.size(worth) <= BAND_MOST);
        let mut so_far = self.so_far.borrow_mut();
        let gone = belief.map(|belief| (so_far.go(&belief, (&lot, self.rests.take), IN_ONE_GO), belief));
        let Some((Ok(taken), belief)) = gone else {
            self.is_done(None);
            return 0;
        };
        if belief.is_all(&so_far) {
            self.is_done(belief.gathered(&worth.waits, std::mem::take(&mut *so_far)));
        }
        taken
    }

    fn is_done(&self, prospects: Option<Prospects>) {
        self.prospects.get_or_init(|| prospects);
    }

    /// Not under for `n` of them, of which so much is asked now.
    ///
    /// # Errors
    /// [`Refusal::NotThatMany`], [`Refusal::MoneyOutOfRange`].
    pub fn under(&self, of: (Count, Money), take: Take) -> Answer<Money> {
        self.rests.under(self.worth.as_ref().map_err(Clone::clone)?, of, take)
    }

    /// The band of doubt around not under for `n` of them, whole units outward and no lower than the end; none until it is reckoned, and
    /// where the end lies above what is asked: nothing of that is in doubt.
    pub fn band(&self, (n, asked): (Count, Money), take: Take) -> Option<Band> {
        let [low, high] = self.prospects.get()?.as_ref()?.band(n, take).ok()?;
        let (under, end) = (self.under((n, asked), take).ok()?, self.rests.end_for((n, asked), take).ok()?);
        if is_over(end, asked) {
            return None;
        }
        let of = |sum: Money, way| whole(sum, way).map(|sum| least(greatest(sum, end), asked));
        Some(Band { low: least(of(low, Decimal::floor).ok()?, under), high: of(high, Decimal::ceil).ok()? })
    }
}

impl Rests {
    /// Not under for `n` of them at once, up to a whole unit: no more than is asked for them, for that is never refused, and no less than the
    /// end brings. So it lies above what is asked where the end does, and nowhere else.
    ///
    /// # Errors
    /// [`Refusal::NotThatMany`], [`Refusal::MoneyOutOfRange`].
    pub fn under(&self, worth: &Worth, (n, asked): (Count, Money), take: Take) -> Answer<Money> {
        let under = worth.waits.under_by(n, take)?.min(worth.one.under_of_each(n, take)?);
        let under = least(whole(worth.waits.booked(under)?, Decimal::ceil)?, asked);
        Ok(greatest(under, self.end_for((n, asked), take)?))
    }

    /// What a buyer would hand over for `n` of them that is as good as the end: (n S + c) / a, up to a whole unit; where what is asked lies
    /// between the two, that.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn end_for(&self, (n, asked): (Count, Money), take: Take) -> Answer<Money> {
        let end = Money::book(charge_for(sums::times(self.end.amount(), Decimal::from(n))?, take)?, self.end.currency())?;
        let up = whole(end, Decimal::ceil)?;
        Ok(if is_over(end, asked) { up } else { least(up, asked) })
    }
}

/// More than that, of one currency.
pub(super) fn is_over(sum: Money, other: Money) -> bool {
    other.amount() < sum.amount()
}

fn least(one: Money, other: Money) -> Money {
    if is_over(one, other) { other } else { one }
}

fn greatest(one: Money, other: Money) -> Money {
    if is_over(one, other) { one } else { other }
}

/// To a whole unit: not under goes up (data.md 16).
fn whole(sum: Money, way: fn(&Decimal) -> Decimal) -> Answer<Money> {
    let currency = sum.currency();
    Money::whole(way(&sum.amount()).normalize(), currency).ok_or(Refusal::MoneyOutOfRange { currency })
}
