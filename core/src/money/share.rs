//! What of a haul's cost and minutes each job carries, what stays with the rack, what the workshop bears.
//!
//! Law: jobs + rack + workshop costs = the whole haul, to the minor unit and the minute, in any order.
//! A job that has ended keeps the figures it ended with; what changes later goes to workshop costs.

use super::sums::{book, clean, times};
use crate::quantity::{Decimal, Money, Span, Volume, half_up};
use crate::refusal::{Answer, Refusal};

/// What one haul cost and took, with what of it was good (taken less rejected; a piece not yet sorted counts as good).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HaulCost {
    pub cost: Money,
    pub time: Span,
    pub good: Volume,
    /// Good wood burnt or lost from the rack since. Moves no share; its cost goes to the workshop.
    pub lost: Volume,
    /// What all jobs have of it: more than was good where the rack held pieces that were never counted.
    pub used: Volume,
}

impl HaulCost {
    /// What the haul is shared by: what was good, or what jobs have where that is more. So no jobs carry more than the whole haul.
    pub fn shared_by(&self) -> Volume {
        self.good.max(self.used)
    }
}

/// Money and whole minutes of a haul.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Share {
    pub cost: Money,
    pub time: Span,
}

/// What a job carried when it ended: facts that no later reject changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Frozen {
    pub share: Share,
    pub used: Volume,
    pub good: Volume,
}

/// Wood a job took from the haul.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Draw {
    Open { used: Volume },
    Ended(Frozen),
}

/// Where the whole haul stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Split {
    /// One for each draw, in their order.
    pub jobs: Vec<Share>,
    pub rack: Share,
    pub workshop: Share,
}

impl Share {
    pub fn none(cost: Money) -> Share {
        Share { cost: Money::zero(cost.currency()), time: Span::ZERO }
    }

    fn plus(self, other: Share) -> Answer<Share> {
        Ok(Share { cost: self.cost.plus(other.cost)?, time: self.time.plus(other.time) })
    }

    fn minus(self, other: Share) -> Answer<Share> {
        Ok(Share { cost: self.cost.minus(other.cost)?, time: self.time.minus(other.time) })
    }
}

/// A job's share: cost and minutes x used / what was good, or what all jobs have where that is more; half up to the minor unit and the whole minute.
///
/// # Errors
/// [`Refusal::NothingToShareBy`] when nothing was good, [`Refusal::MoneyOutOfRange`].
///
/// ```
/// use fivebar_core::{money::share::{HaulCost, of_haul}, quantity::{Currency, Decimal, Length, Money, Span, Volume}};
/// let piece = Volume::of(Length::INCH, Length::INCH, Length::INCH.times(20).unwrap()).unwrap();
/// let cost = Money::book(Decimal::new(2808, 2), Currency::USD).unwrap();
/// let haul = HaulCost { cost, time: Span::minutes(136), good: piece.times(90).unwrap(), lost: Volume::ZERO, used: piece.times(51).unwrap() };
/// let share = of_haul(&haul, piece.times(51).unwrap()).unwrap(); // 56.7 % of what was good
/// assert_eq!((share.cost.to_string().as_str(), share.time), ("15.91 USD", Span::minutes(77)));
/// ```
pub fn of_haul(haul: &HaulCost, used: Volume) -> Answer<Share> {
    let part = used.share_of(haul.shared_by())?;
    let minutes = half_up(clean(times(Decimal::from(haul.time.as_minutes()), part)?), 0);
    let minutes = i64::try_from(minutes).map_err(|_| Refusal::OutOfRange)?;
    Ok(Share { cost: book(times(haul.cost.amount(), part)?, haul.cost.currency())?, time: Span::minutes(minutes) })
}

/// The facts a job carries when it ends.
///
/// # Errors
/// As [`of_haul`].
pub fn freeze(haul: &HaulCost, used: Volume) -> Answer<Frozen> {
    Ok(Frozen { share: of_haul(haul, used)?, used, good: haul.shared_by() })
}

/// Splits a haul over its jobs, the rack and the workshop. The remainder of the rounding stays with the rack,
/// and goes to the workshop when the rack is empty; with nothing good all of it does.
///
/// # Errors
/// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
///
/// ```
/// use fivebar_core::{money::share::{Draw, HaulCost, split}, quantity::{Currency, Decimal, Length, Money, Span, Volume}};
/// let piece = Volume::of(Length::INCH, Length::INCH, Length::INCH.times(20).unwrap()).unwrap();
/// let cost = Money::book(Decimal::from(10), Currency::USD).unwrap();
/// let haul = HaulCost { cost, time: Span::minutes(100), good: piece.times(3).unwrap(), lost: Volume::ZERO, used: piece.times(2).unwrap() };
/// let split = split(&haul, &[Draw::Open { used: piece }, Draw::Open { used: piece }]).unwrap();
/// assert_eq!(split.jobs[1].cost.to_string(), "3.33 USD");
/// assert_eq!((split.rack.cost.to_string().as_str(), split.rack.time), ("3.34 USD", Span::minutes(34)));
/// ```
pub fn split(haul: &HaulCost, draws: &[Draw]) -> Answer<Split> {
    let whole = Share { cost: haul.cost, time: Span::minutes(haul.time.as_minutes()) };
    let (mut jobs, mut taken, mut workshop) = (Vec::new(), Share::none(haul.cost), Share::none(haul.cost));
    let mut left = haul.shared_by().less(haul.lost);
    for draw in draws {
        let (share, today) = carried(haul, *draw)?;
        jobs.push(share);
        taken = taken.plus(share)?;
        workshop = workshop.plus(today.minus(share)?)?;
        left = left.less(used(*draw));
    }
    workshop = workshop.plus(or_none(haul, haul.lost)?)?;
    let rack = on_rack(whole.minus(taken)?.minus(workshop)?, left);
    Ok(Split { jobs, rack, workshop: whole.minus(taken)?.minus(rack)? })
}

/// What a draw carries, and what it would carry by today's count.
fn carried(haul: &HaulCost, draw: Draw) -> Answer<(Share, Share)> {
    let today = or_none(haul, used(draw))?;
    Ok(match draw {
        Draw::Open { .. } => (today, today),
        Draw::Ended(frozen) => (frozen.share, today),
    })
}

fn used(draw: Draw) -> Volume {
    match draw {
        Draw::Open { used } => used,
        Draw::Ended(frozen) => frozen.used,
    }
}

fn or_none(haul: &HaulCost, used: Volume) -> Answer<Share> {
    if haul.good.is_zero() { Ok(Share::none(haul.cost)) } else { of_haul(haul, used) }
}

/// The rest, as far as there is wood for it to lie on; a rack never owes.
fn on_rack(rest: Share, left: Volume) -> Share {
    let none = Share::none(rest.cost);
    if left.is_zero() {
        return none;
    }
    Share { cost: if rest.cost.amount() < Decimal::ZERO { none.cost } else { rest.cost }, time: rest.time.max(Span::ZERO) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{eur, usd};
    use crate::quantity::Length;

    fn volume(pieces: u32) -> Volume {
        Volume::of(Length::INCH, Length::INCH, Length::INCH).unwrap().times(pieces).unwrap()
    }

    fn haul(cost: Money, minutes: i64, good: u32) -> HaulCost {
        HaulCost { cost, time: Span::minutes(minutes), good: volume(good), lost: Volume::ZERO, used: Volume::ZERO }
    }

    fn sixteenths(a: i64, b: i64, c: i64, n: u32) -> Volume {
        let l = |n: i64| Length::INCH_64TH.times(4 * n).unwrap();
        Volume::of(l(a), l(b), l(c)).unwrap().times(n).unwrap()
    }

    fn mm(a: i64, b: i64, c: i64, n: u32) -> Volume {
        let l = |n: i64| Length::MM.times(n).unwrap();
        Volume::of(l(a), l(b), l(c)).unwrap().times(n).unwrap()
    }

    fn total(volumes: [Volume; 3]) -> Volume {
        volumes.into_iter().try_fold(Volume::ZERO, Volume::plus).unwrap()
    }

    #[track_caller]
    fn check(share: Share, cost: Money, minutes: i64) {
        assert_eq!(share, Share { cost, time: Span::minutes(minutes) });
    }

    /// Every part of the split makes up the whole.
    #[track_caller]
    fn whole(haul: &HaulCost, draws: &[Draw]) -> Split {
        let split = split(haul, draws).unwrap();
        let all = split.jobs.iter().copied().chain([split.rack, split.workshop]);
        check(all.fold(Share::none(haul.cost), |a, b| a.plus(b).unwrap()), haul.cost, haul.time.as_minutes());
        assert!(Decimal::ZERO <= split.rack.cost.amount() && Span::ZERO <= split.rack.time, "{split:?}");
        split
    }

    /// Ash strips, leg squares and cherry trims; tread ends, beech strips and lippings.
    #[test]
    fn shares_of_the_demo_hauls() {
        let ash = |s, q, c| total([sixteenths(17, 36, 344, s), sixteenths(28, 28, 304, q), sixteenths(13, 48, 176, c)]);
        let a = HaulCost { good: ash(47, 29, 17), ..haul(usd("28.08"), 136, 0) };
        check(of_haul(&a, ash(25, 20, 5)).unwrap(), usd("15.91"), 77);
        let oak = |e, b, l| total([mm(40, 150, 365, e), mm(27, 62, 1010, b), mm(20, 45, 700, l)]);
        let b = HaulCost { good: oak(23, 19, 12), ..haul(eur("23.30"), 234, 0) };
        check(of_haul(&b, oak(11, 9, 7)).unwrap(), eur("11.31"), 114);
    }

    #[test]
    fn the_remainder_stays_with_the_rack() {
        let split = whole(&haul(usd("10.00"), 100, 90), &[Draw::Open { used: volume(30) }, Draw::Open { used: volume(30) }]);
        check(split.jobs[0], usd("3.33"), 33);
        check(split.rack, usd("3.34"), 34);
        check(split.workshop, usd("0"), 0);
    }

    #[test]
    fn an_empty_rack_holds_nothing() {
        let split = whole(&haul(usd("0.01"), 1, 2), &[Draw::Open { used: volume(1) }, Draw::Open { used: volume(1) }]);
        check(split.jobs[1], usd("0.01"), 1);
        check(split.rack, usd("0"), 0);
        check(split.workshop, usd("-0.01"), -1);
    }

    /// Ten were counted and fifteen taken: the rack held five more. The jobs carry the whole between them, and no more.
    #[test]
    fn pieces_found_on_the_rack_share_the_haul_and_add_nothing_to_it() {
        let found = HaulCost { used: volume(15), ..haul(usd("10.00"), 90, 10) };
        let split = whole(&found, &[Draw::Open { used: volume(15) }]);
        check(split.jobs[0], usd("10"), 90);
        check(split.workshop, usd("0"), 0);
        let split = whole(&found, &[Draw::Open { used: volume(12) }, Draw::Open { used: volume(3) }]);
        check(split.jobs[0], usd("8"), 72);
        check(split.jobs[1], usd("2"), 18);
        let frozen = freeze(&found, volume(15)).unwrap();
        assert_eq!((frozen.share.cost, frozen.good), (usd("10"), volume(15)));
    }

    #[test]
    fn with_nothing_good_the_workshop_bears_it() {
        let none = haul(usd("28.08"), 136, 0);
        check(whole(&none, &[]).workshop, usd("28.08"), 136);
        assert_eq!(of_haul(&none, volume(1)), Err(Refusal::NothingToShareBy));
    }

    /// A third used and the job done; then half of the rest is found to be rotten, and later a little burnt.
    #[test]
    fn an_ended_job_keeps_its_figures() {
        let before = haul(usd("30.00"), 90, 30);
        let done = Draw::Ended(freeze(&before, volume(10)).unwrap());
        assert_eq!(whole(&before, &[done]).workshop, Share::none(before.cost));
        let after = HaulCost { good: volume(20), ..before };
        let split = whole(&after, &[done]);
        check(split.jobs[0], usd("10"), 30);
        check(split.rack, usd("15"), 45);
        check(split.workshop, usd("5"), 15);
        let burnt = whole(&HaulCost { lost: volume(4), ..after }, &[done]);
        check(burnt.rack, usd("9"), 27);
        check(burnt.workshop, usd("11"), 33);
    }

    /// Law, over many hauls: the parts make up the whole and a job's share does not depend on its place in the list.
    #[test]
    fn shares_make_up_the_whole_in_any_order() {
        let mut seed = 7_u64;
        let mut below = |most: u32| {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) as u32 % most
        };
        for _ in 0..500 {
            let good = 1 + below(400);
            let cost = Money::book(Decimal::new(i64::from(below(100_000)), 2), usd("0").currency()).unwrap();
            let now = HaulCost { lost: volume(below(3)), ..haul(cost, i64::from(below(600)), good) };
            let was = HaulCost { good: volume(good + below(60)), ..now };
            let mut draws = Vec::new();
            for _ in 0..below(6) {
                let used = volume(below(good / 5 + 1));
                draws.push(if below(2) == 0 { Draw::Open { used } } else { Draw::Ended(freeze(&was, used).unwrap()) });
            }
            let there = whole(&now, &draws);
            draws.reverse();
            let mut back = whole(&now, &draws);
            back.jobs.reverse();
            assert_eq!(there, back);
        }
    }
}
