//! What it is worth to wait: for n like pieces with so many days left, where people come one by one and each buys or not.
//!
//! dV_n/dτ = come x max_p buys(p) (you get(p) - (V_n - V_(n-1))) - ask x each ask - each day, V_n(0) = n x end, never below n x end
//! (domain.md 9). Closed form for exponential demand: Gallego and van Ryzin, "Optimal dynamic pricing of inventories with
//! stochastic demand over finite horizons", Management Science 40, 1994 (recalled).

use super::demand::{Demand, float};
use crate::quantity::{Count, Currency, Decimal, Money, Take, exact};
use crate::refusal::{Answer, Refusal};

/// So many like pieces at most.
pub const PIECES_MOST: Count = 200;
/// Nobody looks further ahead (domain.md 9): eight weeks.
pub const DAYS_MOST: u16 = 56;
/// So many people at most come within one step of the sum, and so many steps there are at least.
const FINE: [f64; 2] = [0.1, 64.0];
/// Where many values are asked for at once: within a ten-thousandth of it.
const COARSE: [f64; 2] = [0.5, 16.0];

/// What lies there, and what waiting costs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lot {
    pub pieces: Count,
    /// What one is worth when the time is over: taken apart, kept, consigned.
    pub end: Money,
    /// What the time of one who asks costs.
    pub each_ask: Money,
    /// What keeping it a day costs.
    pub each_day: Money,
    pub days: u16,
    /// Less is never asked: what the lowest pay needs. Where that is more than is ever asked, that is asked.
    pub least: Option<Money>,
    /// More is never asked: what is on the tag.
    pub most: Option<Money>,
}

/// The value of waiting, for each number of pieces left up to those that are there.
#[derive(Clone, Debug, PartialEq)]
pub struct Waiting {
    demand: Demand,
    keep: f64,
    fixed: f64,
    least: f64,
    most: f64,
    currency: Currency,
    days: f64,
    /// From no piece on.
    left: Vec<Left>,
}

/// With so many pieces left, and the best price asked at each moment:
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Left {
    /// what they bring in the mean, after the costs of waiting;
    value: f64,
    /// the chance that not one is sold;
    none: f64,
    /// the chance that one or more stay;
    some: f64,
    /// what the next buyer hands over, times the chance that there is one.
    next: f64,
}

/// So many more times of each.
impl Left {
    fn plus(self, times: f64, other: Left) -> Left {
        Left {
            value: self.value + times * other.value,
            none: self.none + times * other.none,
            some: self.some + times * other.some,
            next: self.next + times * other.next,
        }
    }
}

/// What waiting is worth under these guesses.
///
/// # Errors
/// [`Refusal::NothingAsked`] for no piece, [`Refusal::TooManyWait`], [`Refusal::DaysOutOfRange`], [`Refusal::CurrenciesMixed`],
/// [`Refusal::MoneyBelowNothing`].
///
/// ```
/// use fivebar_core::quantity::{Currency, Decimal, Money, Take};
/// use fivebar_core::sale::{demand::{Guess, USUAL_RATIO}, waiting::{Lot, waiting}};
/// let usd = |n: i64| Money::book(Decimal::from(n), Currency::USD).unwrap();
/// let guess = Guess { asks: Decimal::TWO, buys: Decimal::new(2, 1), at: usd(420), ratio: USUAL_RATIO, no_show: Decimal::ZERO };
/// let lot = Lot { pieces: 1, end: usd(300), each_ask: usd(0), each_day: usd(0), days: 22, least: None, most: None };
/// let all = Take { keep: Decimal::ONE, fixed: Decimal::ZERO };
/// let waiting = waiting(&guess.demand().unwrap(), &lot, all).unwrap();
/// assert_eq!(waiting.not_under(1).unwrap().to_string(), "398.00 USD");
/// ```
pub fn waiting(demand: &Demand, lot: &Lot, take: Take) -> Answer<Waiting> {
    by_steps(demand, lot, take, FINE)
}

/// The same in larger steps, for many of them: within a ten-thousandth.
///
/// # Errors
/// Those of [`waiting`].
pub fn about(demand: &Demand, lot: &Lot, take: Take) -> Answer<Waiting> {
    by_steps(demand, lot, take, COARSE)
}

fn by_steps(demand: &Demand, lot: &Lot, take: Take, fine: [f64; 2]) -> Answer<Waiting> {
    let mut under_way = UnderWay::begun(demand, lot, take, fine)?;
    under_way.go(u64::MAX);
    Ok(under_way.waiting)
}

/// What waiting is worth, as far as it is reckoned back from the end: it is stopped and goes on without any figure being another.
#[derive(Clone, Debug, PartialEq)]
pub struct UnderWay {
    waiting: Waiting,
    /// What waiting costs a day, and what one is worth at the end.
    costs: f64,
    end: f64,
    /// How long a step is, and how many are to come.
    each: f64,
    to_come: u32,
}

impl UnderWay {
    /// Begins in larger steps, for many of them: within a ten-thousandth.
    ///
    /// # Errors
    /// Those of [`waiting`].
    pub fn about(demand: &Demand, lot: &Lot, take: Take) -> Answer<UnderWay> {
        UnderWay::begun(demand, lot, take, COARSE)
    }

    fn begun(demand: &Demand, lot: &Lot, take: Take, [come, steps_least]: [f64; 2]) -> Answer<UnderWay> {
        check(lot)?;
        let (keep, fixed) = (float(take.keep)?, float(take.fixed)?);
        let end = float(lot.end.amount())?;
        let costs = demand.ask * float(lot.each_ask.amount())? + float(lot.each_day.amount())?;
        let [least, most] = [(lot.least, 0.0), (lot.most, f64::MAX)].map(|(sum, none)| sum.map_or(Ok(none), |sum| float(sum.amount())));
        let days = f64::from(lot.days);
        let start = |n: Count| Left { value: end * f64::from(n), none: 1.0, some: if n == 0 { 0.0 } else { 1.0 }, next: 0.0 };
        let left = (0..=lot.pieces).map(start).collect();
        let waiting = Waiting { demand: *demand, keep, fixed, least: least?, most: most?, currency: lot.end.currency(), days, left };
        let steps = (days * demand.come / come).ceil().max(steps_least);
        Ok(UnderWay { waiting, costs, end, each: days / steps, to_come: steps as u32 })
    }

    /// Goes on until so many steps of a piece are taken, but one of all pieces at least; says how many it took.
    pub fn go(&mut self, most: u64) -> u64 {
        let pieces = u64::from(self.waiting.all()).max(1);
        let mut taken = 0_u64;
        while 0 < self.to_come && (taken == 0 || taken.saturating_add(pieces) <= most) {
            self.waiting.step(self.each, self.costs, self.end);
            self.to_come = self.to_come.saturating_sub(1);
            taken = taken.saturating_add(pieces);
        }
        taken
    }

    /// What waiting is worth; none while a step is to come.
    pub fn found(&self) -> Option<&Waiting> {
        (self.to_come == 0).then_some(&self.waiting)
    }
}

fn check(lot: &Lot) -> Answer<()> {
    if lot.pieces == 0 {
        return Err(Refusal::NothingAsked);
    }
    if PIECES_MOST < lot.pieces {
        return Err(Refusal::TooManyWait { left: lot.pieces, most: PIECES_MOST });
    }
    if DAYS_MOST < lot.days {
        return Err(Refusal::DaysOutOfRange { met: i32::from(lot.days), least: 0, most: i32::from(DAYS_MOST) });
    }
    for sum in [Some(lot.end), Some(lot.each_ask), Some(lot.each_day), lot.least, lot.most].into_iter().flatten() {
        lot.end.plus(sum)?;
        if sum.amount() < Decimal::ZERO {
            return Err(Refusal::MoneyBelowNothing { met: sum });
        }
    }
    Ok(())
}

impl Waiting {
    /// A step back from the end, by the rule of Runge and Kutta; where waiting costs more than it brings, it ends.
    fn step(&mut self, days: f64, costs: f64, end: f64) {
        let one = self.flow(&self.left, costs);
        let two = self.flow(&moved(&self.left, days / 2.0, &one), costs);
        let three = self.flow(&moved(&self.left, days / 2.0, &two), costs);
        let four = self.flow(&moved(&self.left, days, &three), costs);
        let sixth = days / 6.0;
        let sums = one.iter().zip(&two).zip(&three).zip(&four);
        for (left, (((one, two), three), four)) in self.left.iter_mut().zip(sums) {
            *left = left.plus(sixth, *one).plus(2.0 * sixth, *two).plus(2.0 * sixth, *three).plus(sixth, *four);
        }
        for (n, left) in self.left.iter_mut().enumerate() {
            let over = end * n as f64;
            if left.value < over {
                *left = Left { value: over, none: 1.0, some: 1.0, next: 0.0 };
            }
        }
    }

    /// How each changes with a day more.
    fn flow(&self, left: &[Left], costs: f64) -> Vec<Left> {
        let pairs = left.iter().zip(left.iter().skip(1));
        let flow = pairs.map(|(fewer, left)| {
            let price = self.best(left.value - fewer.value);
            let sold = self.demand.come * self.demand.buys_at(price);
            Left {
                value: sold * (self.keep * price - self.fixed - (left.value - fewer.value)) - costs,
                none: -sold * left.none,
                some: sold * (fewer.some - left.some),
                next: sold * (price - left.next),
            }
        });
        std::iter::once(Left::default()).chain(flow).collect()
    }

    /// The best price where keeping one more is worth so much; no less and no more than is ever asked.
    fn best(&self, one_more: f64) -> f64 {
        let wished = self.demand.best_beyond((one_more + self.fixed) / self.keep);
        wished.max(self.demand.surely_up_to()).max(self.least).min(self.most)
    }

    fn of(&self, left: Count) -> Answer<&Left> {
        let there = Count::try_from(self.left.len().saturating_sub(1)).unwrap_or(Count::MAX);
        let nth = usize::try_from(left).unwrap_or(usize::MAX);
        self.left.get(nth).ok_or(Refusal::NotThatMany { asked: left, there })
    }

    fn all(&self) -> Count {
        Count::try_from(self.left.len().saturating_sub(1)).unwrap_or(Count::MAX)
    }

    fn fewer(&self, pieces: Count) -> Answer<&Left> {
        let there = self.all();
        there.checked_sub(pieces).ok_or(Refusal::NotThatMany { asked: pieces, there }).and_then(|left| self.of(left))
    }

    /// What all pieces together are worth while they wait, unrounded.
    pub fn value(&self) -> f64 {
        self.left.last().map_or(0.0, |left| left.value)
    }

    /// What one more piece adds to that, unrounded.
    pub fn one_more(&self) -> f64 {
        self.fewer(1).map_or(0.0, |fewer| self.value() - fewer.value)
    }

    /// What the last of so many adds to what they are worth, unrounded: V_n - V_(n-1); nothing where there are not so many.
    pub fn last_of(&self, pieces: Count) -> f64 {
        let value = |pieces| self.of(pieces).map_or(0.0, |left| left.value);
        pieces.checked_sub(1).filter(|_| pieces <= self.all()).map_or(0.0, |fewer| value(pieces) - value(fewer))
    }

    /// Not under, unrounded: what a buyer of so many must hand over for waiting to be no better: (V_n - V_(n-k) + c) / a.
    ///
    /// # Errors
    /// [`Refusal::NotThatMany`].
    pub fn under(&self, pieces: Count) -> Answer<f64> {
        Ok((self.more(pieces)? + self.fixed) / self.keep)
    }

    /// What so many pieces add to the value of them all, unrounded: V_n - V_(n-k).
    fn more(&self, pieces: Count) -> Answer<f64> {
        Ok(self.value() - self.fewer(pieces)?.value)
    }

    /// Not under, unrounded, for a buyer who pays in another way than those who may come.
    ///
    /// # Errors
    /// [`Refusal::NotThatMany`].
    pub fn under_by(&self, pieces: Count, take: Take) -> Answer<f64> {
        Ok((self.more(pieces)? + float(take.fixed)?) / float(take.keep)?)
    }

    /// What a buyer of so many must hand over where each is worth as much as all that wait here.
    ///
    /// # Errors
    /// [`Refusal::OutOfRange`].
    pub fn under_of_each(&self, pieces: Count, take: Take) -> Answer<f64> {
        Ok((f64::from(pieces) * self.value() + float(take.fixed)?) / float(take.keep)?)
    }

    /// Not under for so many pieces at once.
    ///
    /// # Errors
    /// [`Refusal::NotThatMany`], [`Refusal::MoneyOutOfRange`].
    pub fn not_under(&self, pieces: Count) -> Answer<Money> {
        self.booked(self.under(pieces)?)
    }

    /// The same for a buyer who pays in another way than those who may come.
    ///
    /// # Errors
    /// [`Refusal::NotThatMany`], [`Refusal::MoneyOutOfRange`].
    pub fn not_under_by(&self, pieces: Count, take: Take) -> Answer<Money> {
        self.booked(self.under_by(pieces, take)?)
    }

    /// The best price to ask now, unrounded.
    pub fn best_ask(&self) -> f64 {
        self.best(self.one_more())
    }

    /// The best price to ask now.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn ask(&self) -> Answer<Money> {
        self.booked(self.best_ask())
    }

    /// So many more people are expected to ask until the time is over.
    pub fn to_ask(&self) -> f64 {
        self.demand.ask * self.days
    }

    /// The chance that one who turns up buys at this price.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::OutOfRange`].
    pub fn buys_at(&self, price: Money) -> Answer<f64> {
        if price.currency() != self.currency {
            return Err(Refusal::CurrenciesMixed { one: self.currency, other: price.currency() });
        }
        Ok(self.demand.buys_at(float(price.amount())?))
    }

    /// The chance that not one more is sold until the time is over.
    pub fn none_sold(&self) -> f64 {
        self.left.last().map_or(1.0, |left| left.none)
    }

    /// The chance that one piece or more stay.
    pub fn some_stay(&self) -> f64 {
        self.left.last().map_or(0.0, |left| left.some)
    }

    /// What the next buyer hands over in the mean, if there is one.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn next_sale(&self) -> Answer<Option<Money>> {
        let sold = 1.0 - self.none_sold();
        let next = self.left.last().map_or(0.0, |left| left.next);
        if sold <= 1e-9 { Ok(None) } else { self.booked(next / sold).map(Some) }
    }

    /// A sum in its currency, half up.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn booked(&self, sum: f64) -> Answer<Money> {
        let money = exact::of_float(sum).ok_or(Refusal::MoneyOutOfRange { currency: self.currency })?;
        Money::book(money, self.currency)
    }
}

fn moved(left: &[Left], days: f64, flow: &[Left]) -> Vec<Left> {
    left.iter().zip(flow).map(|(left, flow)| left.plus(days, *flow)).collect()
}

#[cfg(test)]
mod tests;
