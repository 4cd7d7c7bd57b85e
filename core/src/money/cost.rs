//! What a job cost: one booked line for each thing used, driven or paid, and their sums by kind.

use super::sums::{book, for_time, less, not_below_nothing, over, times};
use crate::quantity::Sorted;
use crate::quantity::{Count, Currency, Decimal, Length, Money, Span};
use crate::refusal::{Answer, Refusal};

/// What a line was for. Each kind of cost has one home: on jobs as used, or in the rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CostKind {
    /// The share of a haul.
    Haul,
    /// Boards, glue, hardware, abrasives, tags: bought and used up.
    Bought,
    /// Part of a can or a pack that holds more than one job.
    Pack,
    Power,
    /// Edges worn and sharpened.
    Edges,
    Distance,
    Helper,
    /// The stall and what selling there cost.
    Stall,
}

impl CostKind {
    pub const ALL: [CostKind; 8] = [
        CostKind::Haul,
        CostKind::Bought,
        CostKind::Pack,
        CostKind::Power,
        CostKind::Edges,
        CostKind::Distance,
        CostKind::Helper,
        CostKind::Stall,
    ];

    /// Its key in a book.
    pub fn key(self) -> &'static str {
        match self {
            CostKind::Haul => "haul",
            CostKind::Bought => "bought",
            CostKind::Pack => "pack",
            CostKind::Power => "power",
            CostKind::Edges => "edges",
            CostKind::Distance => "distance",
            CostKind::Helper => "helper",
            CostKind::Stall => "stall",
        }
    }

    /// The kind of a key; none for a key of the maker's own.
    pub fn of(key: &str) -> Option<CostKind> {
        CostKind::ALL.into_iter().find(|kind| kind.key() == key)
    }
}

/// One booked line, of one of our kinds or of the maker's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Line<K> {
    pub kind: K,
    pub sum: Money,
}

/// Used up at a price for each: discs, millilitres of glue, kilowatt hours.
///
/// # Errors
/// [`Refusal::BelowNothing`], [`Refusal::MoneyOutOfRange`], [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{money::cost::used_up, quantity::{Currency, Decimal}};
/// let power = used_up(Decimal::new(46, 1), Decimal::new(17, 2), Currency::USD).unwrap(); // 4.6 kWh at 0.17
/// assert_eq!(power.to_string(), "0.78 USD");
/// ```
pub fn used_up(quantity: Decimal, unit_price: Decimal, currency: Currency) -> Answer<Money> {
    book(times(not_below_nothing(quantity)?, not_below_nothing(unit_price)?)?, currency)
}

/// Kilowatt hours of a machine that draws `watts` for `time`.
///
/// # Errors
/// [`Refusal::BelowNothing`], [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{money::cost::kilowatt_hours, quantity::{Decimal, Span}};
/// assert_eq!(kilowatt_hours(Decimal::from(1_500), Span::minutes(40)), Ok(Decimal::ONE));
/// ```
pub fn kilowatt_hours(watts: Decimal, time: Span) -> Answer<Decimal> {
    over(for_time(not_below_nothing(watts)?, time)?, Decimal::ONE_THOUSAND)
}

/// A can or pack, and what jobs were charged of it so far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pack {
    pub paid: Money,
    /// What it held when full, in the measure its use is written in.
    pub holds: Decimal,
    pub charged: Money,
}

/// The part of a pack a job used: paid x used / full, and never more in all than what was paid.
///
/// # Errors
/// [`Refusal::BelowNothing`], [`Refusal::NothingToShareBy`] for a pack that holds nothing,
/// [`Refusal::CurrenciesMixed`], [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{money::cost::{Pack, of_pack}, quantity::{Currency, Decimal, Money}};
/// let paid = Money::book(Decimal::new(3490, 2), Currency::USD).unwrap();
/// let can = Pack { paid, holds: Decimal::from(32), charged: Money::zero(Currency::USD) };
/// assert_eq!(of_pack(&can, Decimal::new(95, 1)).unwrap().to_string(), "10.36 USD"); // 9.5 of 32 fl oz
/// ```
pub fn of_pack(pack: &Pack, used: Decimal) -> Answer<Money> {
    let exact = over(times(pack.paid.amount(), not_below_nothing(used)?)?, not_below_nothing(pack.holds)?)?;
    let rest = pack.paid.minus(pack.charged)?;
    book(exact.min(rest.amount()), pack.paid.currency())
}

/// The part of a can a job used, by what the can is worth on that day: paid x used / full x (1 - months open / 12), nothing after a year,
/// and never more in all than what was paid. Our judgement, no source.
///
/// # Errors
/// Those of [`of_pack`].
///
/// ```
/// use fivebar_core::{money::cost::{Pack, of_can}, quantity::{Currency, Decimal, Money}};
/// let paid = Money::book(Decimal::new(3490, 2), Currency::USD).unwrap();
/// let can = Pack { paid, holds: Decimal::from(32), charged: Money::zero(Currency::USD) };
/// assert_eq!(of_can(&can, Decimal::from(16), 0).unwrap().to_string(), "17.45 USD"); // half of it, just opened
/// assert_eq!(of_can(&can, Decimal::from(16), 3).unwrap().to_string(), "13.09 USD"); // half of it, open three months
/// ```
pub fn of_can(pack: &Pack, used: Decimal, months_open: Count) -> Answer<Money> {
    let year = Decimal::from(12);
    let kept = less(year, Decimal::from(months_open))?.max(Decimal::ZERO);
    let whole = times(times(pack.paid.amount(), not_below_nothing(used)?)?, kept)?;
    let exact = over(whole, times(not_below_nothing(pack.holds)?, year)?)?;
    let rest = pack.paid.minus(pack.charged)?;
    book(exact.min(rest.amount().max(Decimal::ZERO)), pack.paid.currency())
}

/// What an old can is still worth: price x how full x (1 - months open / 12), nothing after a year. Our judgement, no source.
///
/// # Errors
/// [`Refusal::BelowNothing`], [`Refusal::OutOfRange`].
///
/// ```
/// use fivebar_core::{money::cost::old_can, quantity::{Currency, Decimal, Money}};
/// let price = Money::book(Decimal::from(24), Currency::USD).unwrap();
/// assert_eq!(old_can(price, Decimal::new(5, 1), 3).unwrap().to_string(), "9.00 USD"); // half full, open three months
/// ```
pub fn old_can(price: Money, fill: Decimal, months_open: Count) -> Answer<Money> {
    let age = over(Decimal::from(months_open), Decimal::from(12))?;
    let kept = less(Decimal::ONE, age)?.max(Decimal::ZERO);
    book(times(times(price.amount(), not_below_nothing(fill)?)?, kept)?, price.currency())
}

/// What the maker reckons for a mile or a kilometre; it already holds fuel, insurance and wear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DistanceRate {
    pub amount: Decimal,
    /// [`Length::MILE`] or [`Length::KM`].
    pub per: Length,
}

/// Distance driven x the maker's rate.
///
/// # Errors
/// [`Refusal::BelowNothing`], [`Refusal::NothingToShareBy`], [`Refusal::MoneyOutOfRange`].
///
/// ```
/// use fivebar_core::{money::cost::{DistanceRate, distance}, quantity::{Currency, Decimal, Length}};
/// let rate = DistanceRate { amount: Decimal::new(725, 3), per: Length::MILE };
/// let drive = distance(Length::MILE.times(23).unwrap(), rate, Currency::USD).unwrap();
/// assert_eq!(drive.to_string(), "16.68 USD");
/// ```
pub fn distance(driven: Length, rate: DistanceRate, currency: Currency) -> Answer<Money> {
    let whole = times(Decimal::from(driven.as_nm()), not_below_nothing(rate.amount)?)?;
    book(over(whole, Decimal::from(rate.per.as_nm()))?, currency)
}

/// Helpers paid by the hour.
///
/// # Errors
/// [`Refusal::BelowNothing`], [`Refusal::MoneyOutOfRange`].
///
/// ```
/// use fivebar_core::{money::cost::helper, quantity::{Currency, Decimal, Span}};
/// let paid = helper(Decimal::from(15), Span::minutes(60), 2, Currency::EUR).unwrap();
/// assert_eq!(paid.to_string(), "30.00 EUR");
/// ```
pub fn helper(per_hour: Decimal, time: Span, heads: Count, currency: Currency) -> Answer<Money> {
    book(times(for_time(not_below_nothing(per_hour)?, time)?, Decimal::from(heads))?, currency)
}

/// What a job must get back before it has earned anything: its lines, summed by kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Needs<K: Ord> {
    pub total: Money,
    pub by_kind: Sorted<K, Money>,
}

impl<K: Ord + Clone> Needs<K> {
    /// Sums booked lines; nothing is rounded again.
    ///
    /// # Errors
    /// [`Refusal::CurrenciesMixed`], [`Refusal::MoneyOutOfRange`].
    ///
    /// ```
    /// use fivebar_core::{money::cost::{Line, Needs}, quantity::{Currency, Decimal, Money}};
    /// let line = |kind, cents| Line { kind, sum: Money::book(Decimal::new(cents, 2), Currency::USD).unwrap() };
    /// let needs = Needs::sum(Currency::USD, &[line("glue", 233), line("discs", 868), line("glue", 100)]).unwrap();
    /// assert_eq!(needs.total.to_string(), "12.01 USD");
    /// assert_eq!(needs.of(&"glue").to_string(), "3.33 USD");
    /// ```
    pub fn sum(currency: Currency, lines: &[Line<K>]) -> Answer<Needs<K>> {
        let mut needs = Needs { total: Money::zero(currency), by_kind: Sorted::new() };
        for line in lines {
            needs.total = needs.total.plus(line.sum)?;
            let so_far = needs.of(&line.kind);
            needs.by_kind.insert(line.kind.clone(), so_far.plus(line.sum)?);
        }
        Ok(needs)
    }

    /// The sum of one kind, nothing if there was no line of it.
    pub fn of(&self, kind: &K) -> Money {
        self.by_kind.get(kind).copied().unwrap_or(Money::zero(self.total.currency()))
    }
}

/// A line must not be below nothing, unless it is a credit such as the salvage of a part swapped.
///
/// # Errors
/// [`Refusal::MoneyBelowNothing`].
pub fn spent<K>(kind: K, sum: Money) -> Answer<Line<K>> {
    if sum.amount() < Decimal::ZERO { Err(Refusal::MoneyBelowNothing { met: sum }) } else { Ok(Line { kind, sum }) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::figures::{d, eur, usd};

    const MILE: DistanceRate = DistanceRate { amount: Decimal::from_parts(725, 0, 0, false, 3), per: Length::MILE };
    const KM: DistanceRate = DistanceRate { amount: Decimal::from_parts(30, 0, 0, false, 2), per: Length::KM };

    #[track_caller]
    fn check(got: Answer<Money>, wanted: &str) {
        assert_eq!(got.map(|m| m.to_string()), Ok(wanted.to_string()));
    }

    /// Both demo jobs, line by line.
    #[test]
    fn lines_of_the_demo_jobs() {
        check(used_up(d("14"), d("0.62"), Currency::USD), "8.68 USD");
        check(used_up(d("4.6"), d("0.17"), Currency::USD), "0.78 USD");
        check(used_up(d("7.9"), d("0.31"), Currency::EUR), "2.45 EUR");
        check(distance(Length::MILE.times(23).unwrap(), MILE, Currency::USD), "16.68 USD");
        check(distance(Length::MILE.times(18).unwrap(), MILE, Currency::USD), "13.05 USD");
        check(distance(Length::KM.times(46).unwrap(), KM, Currency::EUR), "13.80 EUR");
        check(distance(Length::KM.times(62).unwrap(), KM, Currency::EUR), "18.60 EUR");
        let can = |paid, holds, used| of_pack(&Pack { paid, holds: d(holds), charged: Money::zero(paid.currency()) }, d(used));
        check(can(usd("34.90"), "32", "9.5"), "10.36 USD");
        check(can(eur("31.90"), "0.75", "0.24"), "10.21 EUR");
    }

    #[test]
    fn sums_by_kind_add_up_to_the_job() {
        let line = |kind, sum| Line { kind, sum: usd(sum) };
        let lines = [
            line(CostKind::Haul, "15.91"),
            line(CostKind::Bought, "2.33"),
            line(CostKind::Bought, "8.68"),
            line(CostKind::Pack, "10.36"),
            line(CostKind::Bought, "2.20"),
            line(CostKind::Bought, "3.25"),
            line(CostKind::Power, "0.78"),
            line(CostKind::Edges, "6.00"),
        ];
        let needs = Needs::sum(Currency::USD, &lines).unwrap();
        assert_eq!(needs.total, usd("49.51"));
        assert_eq!(needs.of(&CostKind::Bought), usd("16.46"));
        assert_eq!(needs.of(&CostKind::Helper), usd("0"));
        assert_eq!(Money::sum(Currency::USD, needs.by_kind.into_values()), Ok(needs.total));
    }

    /// A can charged in thirds, and once more when it was thought empty, costs what was paid and no cent more.
    #[test]
    fn a_pack_is_never_charged_beyond_what_was_paid() {
        let mut can = Pack { paid: usd("10.00"), holds: d("3"), charged: usd("0") };
        for wanted in ["3.33 USD", "3.33 USD", "3.33 USD", "0.01 USD", "0.00 USD"] {
            let part = of_pack(&can, d("1"));
            check(part.clone(), wanted);
            can.charged = can.charged.plus(part.unwrap()).unwrap();
        }
        assert_eq!(can.charged, can.paid);
    }

    #[test]
    fn an_old_can_is_worth_nothing_after_a_year() {
        check(old_can(usd("30"), d("0.8"), 0), "24.00 USD");
        check(old_can(usd("30"), d("0.8"), 6), "12.00 USD");
        check(old_can(usd("30"), d("0.8"), 13), "0.00 USD");
    }

    #[test]
    fn a_kind_comes_back_from_its_key() {
        assert!(CostKind::ALL.into_iter().all(|kind| CostKind::of(kind.key()) == Some(kind)));
        assert_eq!(CostKind::of("glue"), None);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let minus = d("-1");
        assert_eq!(used_up(minus, d("1"), Currency::USD), Err(Refusal::BelowNothing { met: minus }));
        let none = Pack { paid: usd("1"), holds: Decimal::ZERO, charged: usd("0") };
        assert_eq!(of_pack(&none, d("1")), Err(Refusal::NothingToShareBy));
        assert_eq!(spent(CostKind::Stall, usd("-1")), Err(Refusal::MoneyBelowNothing { met: usd("-1") }));
    }
}
