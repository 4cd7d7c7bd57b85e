//! What is left: for each hour of a job, after workshop costs, and over every hour worked.

use super::rate::Year;
use super::sums::{less, per_hour};
use crate::quantity::order_by;
use crate::quantity::{Decimal, Listed, Money, Span};
use crate::refusal::Answer;

/// One way a sale may go: what you get, what the job costs that way, how long it takes that way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Way {
    pub you_get: Money,
    pub costs: Money,
    pub time: Span,
}

/// Left per hour, unrounded; the last two only where the workshop's year is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PerHour {
    pub left: Decimal,
    /// Less O + W of each logged hour.
    pub after_workshop: Option<Decimal>,
    /// The same over every hour worked.
    pub every_hour: Option<Decimal>,
}

impl Way {
    /// What is left of it.
    ///
    /// # Errors
    /// [`CurrenciesMixed`](crate::refusal::Refusal::CurrenciesMixed), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    pub fn left(&self) -> Answer<Money> {
        self.you_get.minus(self.costs)
    }

    /// What is left for each hour: (you get - costs) / hours.
    ///
    /// # Errors
    /// [`NoHours`](crate::refusal::Refusal::NoHours), [`CurrenciesMixed`](crate::refusal::Refusal::CurrenciesMixed), and those of [`Year::checked`].
    ///
    /// ```
    /// use fivebar_core::{money::left::Way, quantity::{Currency, Decimal, Money, Span, half_up}};
    /// let euro = |cents| Money::book(Decimal::new(cents, 2), Currency::EUR).unwrap();
    /// let bench = Way { you_get: euro(46_000), costs: euro(10_393), time: Span::minutes(1_677) };
    /// assert_eq!(half_up(bench.per_hour(None).unwrap().left, 2), Decimal::new(1_274, 2));
    /// ```
    pub fn per_hour(&self, year: Option<&Year>) -> Answer<PerHour> {
        let left = per_hour(self.left()?.amount(), self.time)?;
        let Some(year) = year else {
            return Ok(PerHour { left, after_workshop: None, every_hour: None });
        };
        let after = less(left, year.workshop_per_hour()?)?;
        Ok(PerHour { left, after_workshop: Some(after), every_hour: Some(year.over_all(after)?) })
    }

    /// How much more this way leaves than another; below nothing when it leaves less.
    ///
    /// # Errors
    /// [`CurrenciesMixed`](crate::refusal::Refusal::CurrenciesMixed), [`MoneyOutOfRange`](crate::refusal::Refusal::MoneyOutOfRange).
    ///
    /// ```
    /// use fivebar_core::{money::left::Way, quantity::{Currency, Decimal, Money, Span}};
    /// let euro = |cents| Money::book(Decimal::new(cents, 2), Currency::EUR).unwrap();
    /// let delivered = Way { you_get: euro(46_000), costs: euro(10_393), time: Span::minutes(1_624) };
    /// let fetched = Way { you_get: euro(43_000), costs: euro(5_533), time: Span::minutes(1_534) };
    /// assert_eq!(fetched.leaves_more(&delivered), Ok(euro(1_860)));
    /// ```
    pub fn leaves_more(&self, other: &Way) -> Answer<Money> {
        self.left()?.minus(other.left()?)
    }
}

/// The places of these ways by what they leave for an hour, best first; those that are alike keep their order.
///
/// # Errors
/// As [`Way::per_hour`].
///
/// ```
/// use fivebar_core::{money::left::{Way, ranked}, quantity::{Currency, Decimal, Money, Span}};
/// let euro = |n: i64| Money::book(Decimal::from(n), Currency::EUR).unwrap();
/// let way = |get, minutes| Way { you_get: euro(get), costs: euro(100), time: Span::minutes(minutes) };
/// assert_eq!(ranked(&[way(460, 1_600), way(430, 1_400)]), Ok(vec![1, 0])); // less money, far less time
/// ```
pub fn ranked(ways: &[Way]) -> Answer<Vec<usize>> {
    let mut order = Vec::new();
    for (place, way) in ways.iter().enumerate() {
        order.push((way.per_hour(None)?.left, place));
    }
    order_by(&mut order, |(a, _), (b, _)| b.cmp(a));
    Ok(order.into_iter().map(|(_, place)| place).listed())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, eur, shown, usd};
    use crate::refusal::Refusal;

    #[track_caller]
    fn check(you_get: Money, costs: Money, minutes: i64, wanted: &str) {
        let way = Way { you_get, costs, time: Span::minutes(minutes) };
        assert_eq!(shown(way.per_hour(None).unwrap().left), wanted);
    }

    #[test]
    fn left_per_hour_of_both_demo_jobs() {
        check(usd("610.26"), usd("127.56"), 1517, "19.09");
        check(eur("460"), eur("103.93"), 1677, "12.74");
        check(eur("460"), eur("103.93"), 1140 + 114, "17.04");
        check(eur("460"), eur("103.93"), 1677 - 143 + 90, "13.16");
        check(eur("400"), eur("103.93"), 1677 - 143 + 90, "10.94");
        check(eur("430"), eur("55.33"), 1677 - 143, "14.65");
    }

    #[test]
    fn after_workshop_costs_and_over_every_hour() {
        let hours = |n: i64| Span::minutes(60 * n);
        let year = Year { all: hours(420), logged: hours(350), overhead: d("1050"), wear: d("0") };
        let stands = Way { you_get: usd("610.26"), costs: usd("127.56"), time: Span::minutes(1517) };
        let per = stands.per_hour(Some(&year)).unwrap();
        assert_eq!([Some(per.left), per.after_workshop, per.every_hour].map(|r| shown(r.unwrap())), ["19.09", "16.09", "13.41"]);
    }

    #[test]
    fn the_best_way_comes_first() {
        let way = |get, costs, minutes| Way { you_get: eur(get), costs: eur(costs), time: Span::minutes(minutes) };
        let ways = [way("400", "103.93", 1624), way("430", "55.33", 1534), way("460", "103.93", 1624)];
        assert_eq!(ranked(&ways), Ok(vec![1, 2, 0]));
        assert_eq!(ranked(&[way("400", "1", 0)]), Err(Refusal::NoHours));
    }
}
