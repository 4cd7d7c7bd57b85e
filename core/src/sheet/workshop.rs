//! The workshop: what an hour must earn, costs that belong to no job, suppliers, and how old the copy is.

use super::costs::{tools_twice, wear as wear_of};
use super::haul;
use super::helped::earned_for_none;
use super::rate::{RateSheet, rate};
use super::shop::Shop;
use super::trips::of_trip;
use crate::bench::{On, Run, Shares};
use crate::haul::Trip;
use crate::ledger::fold::{Booked, Can, Copy, hauls};
use crate::ledger::kind::book::Role;
use crate::money::rate::{Rate, Wanted, Year, rate as stack};
use crate::quantity::order_by_key;
use crate::quantity::{Currency, Day, Decimal, Id, Key, Listed, Money, Offset, Sorted, Span, Units, Wall};
use crate::refusal::Answer;
use std::borrow::Cow;
use std::cmp::Reverse;

/// The Workshop place.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkshopSheet {
    pub currency: Option<Currency>,
    pub units: Option<Units>,
    /// One for each currency that has one, the workshop's own first.
    pub rates: Vec<RateSheet>,
    pub suppliers: Vec<Id>,
    /// Costs of no job this year, in each currency.
    pub costs: Sorted<Currency, YearCosts>,
    /// Years before it with a cost that was written down, the latest first.
    pub earlier: Vec<(i32, Sorted<Currency, YearCosts>)>,
    /// Hours logged this year: to jobs, and in all.
    pub logged: Span,
    pub worked: Span,
    /// None where no copy was ever kept.
    pub copy: Option<Copy>,
    pub copy_age: Option<Span>,
}

/// A year of costs that belong to no job.
#[derive(Clone, Debug, PartialEq)]
pub struct YearCosts {
    pub total: Money,
    pub by_kind: Sorted<Key, Money>,
    pub lines: Vec<Booked>,
    /// What no job and no rack carries of all hauls.
    pub of_hauls: Money,
    /// Pay of those who helped at work of no job.
    pub of_helpers: Money,
    /// What no job carries of cans that were used up, gone or a year open by then.
    pub of_cans: Money,
}

/// The Workshop place; this year is that of the place where it is looked at.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn workshop(shop: &Shop, offset: Offset) -> Answer<WorkshopSheet> {
    let known = &shop.workshop;
    let year = Wall::new(shop.now, offset).day().as_ymd().0;
    let time = time_of(shop, (year, offset));
    let mut currencies: Vec<Currency> = known.rates.keys().copied().chain(known.currency).listed();
    order_by_key(&mut currencies, |currency| (Some(*currency) != known.currency, *currency));
    currencies.dedup();
    Ok(WorkshopSheet {
        currency: known.currency,
        units: known.units,
        rates: currencies.into_iter().map(|currency| rate(shop, currency)).listed(),
        suppliers: known.people.iter().filter(|person| person.role == Role::Supplier).map(|person| person.id).listed(),
        costs: costs(shop, year)?,
        earlier: earlier(shop, year)?,
        logged: time.logged,
        worked: time.worked(),
        copy: known.copy,
        copy_age: known.copy.map(|copy| copy.at.until(shop.now)),
    })
}

/// The hours of a year.
pub(super) struct YearTime {
    /// At the bench, by where its minutes come from.
    bench: Shares,
    trips: Shares,
    /// Of all of it, what was logged to jobs and their hauls.
    pub logged: Span,
    /// Beside the bench, runs that look wrong; and those of them that were logged.
    unsettled: Span,
    unsettled_logged: Span,
}

impl YearTime {
    pub fn worked(&self) -> Span {
        self.bench.total().plus(self.trips.total())
    }
}

/// Hours of the year. A trip counts on the day it left.
pub(super) fn time_of(shop: &Shop, (year, offset): (i32, Offset)) -> YearTime {
    let start = |year| Day::ymd(year, 1, 1).unwrap_or_default().start(offset);
    let (from, to) = (start(year), start(year.saturating_add(1)));
    let within = |run: Cow<Run>| run.worked_within(from, to, shop.now);
    let parts = |run: Cow<Run>| run.stretches(shop.now).map(|(source, begin, end)| (source, begin.max(from).until(end.min(to))));
    // As every day, a year is without what may be a forgotten stop, until it is answered for.
    let bench = shop.settled(shop.bench.runs()).flat_map(parts).fold(Shares::default(), |sum, (source, span)| sum.with(source, span));
    let to_jobs = Span::sum(shop.settled(shop.bench.runs().filter(|run| is_logged(run))).map(within));
    let unsettled = Span::sum(shop.unsettled(shop.bench.runs()).map(within));
    let unsettled_logged = Span::sum(shop.unsettled(shop.bench.runs().filter(|run| is_logged(run))).map(within));
    let left = |trip: &Trip| trip.left.is_some_and(|left| left.day().as_ymd().0 == year);
    let trips = hauls(shop.book).flat_map(|haul| haul.trips).filter(left);
    let trips = trips.fold(Shares::default(), |sum, trip| sum.plus(of_trip(&trip)));
    YearTime { bench, trips, logged: to_jobs.plus(trips.total()), unsettled, unsettled_logged }
}

fn is_logged(run: &Run) -> bool {
    run.work.on != On::Nothing
}

/// This year so far, beside what the rate guesses of a whole one.
#[derive(Clone, Debug, PartialEq)]
pub struct RealYear {
    /// The day from which it counts: its first, or the first that anything was written down on, or is told of.
    pub since: Day,
    /// How much of a year has passed since then, a share.
    pub passed: Decimal,
    pub worked: Span,
    /// Of what was worked, the bench, by where its minutes come from; the rest are trips.
    pub bench: Shares,
    pub trips: Shares,
    /// Beside the bench, what looks like a forgotten stop and the maker has not answered for.
    pub unsettled: Span,
    pub logged: Span,
    /// Of what was logged, what the wood on the rack carries of its hauls: no job has it yet.
    pub on_rack: Span,
    /// The same beside what was logged.
    pub unsettled_logged: Span,
    pub costs: Money,
    /// What of the year's wear has passed, by the tools, without one as the rate guesses it; unrounded.
    pub wear: Decimal,
    pub wear_guessed: bool,
    /// Tools stand in this year's costs and wear as well.
    pub tools_twice: bool,
    /// The rate this year asks for so far; none before two months, and without pay or logged hours.
    pub rate: Option<Rate>,
}

/// Fewer days have too few hours to say what an hour must earn. [J]
const EARLY: i32 = 60;

/// The year so far in one currency: all hours, and the costs in it. Who began in it has no wear of the days before (ours).
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn real_year(shop: &Shop, currency: Currency, offset: Offset) -> Answer<RealYear> {
    let today = Wall::new(shop.now, offset).day();
    let year = today.as_ymd().0;
    let start = |year| Day::ymd(year, 1, 1).unwrap_or_default();
    let days = start(year).until(start(year.saturating_add(1))).max(1);
    let since = began(shop, offset, today).max(start(year)).min(today);
    let so_far = since.until(today).saturating_add(1);
    let passed = Decimal::from(so_far).checked_div(Decimal::from(days)).unwrap_or_default();
    let time = time_of(shop, (year, offset));
    let (worked, logged) = (time.worked(), time.logged);
    let costs = costs(shop, year)?.remove(&currency).map_or(Money::zero(currency), |year| year.total);
    let said = shop.workshop.rates.get(&currency).copied().unwrap_or_default();
    let worn = wear_of(&shop.workshop, currency, year)?;
    let wear = worn.or(said.wear).map_or(Decimal::ZERO, Money::amount).checked_mul(passed).unwrap_or_default();
    let real = Year { all: worked, logged, overhead: costs.amount(), wear };
    let wanted = |pay| Wanted { pay, own_tax: said.tax.unwrap_or_default(), profit: said.profit.unwrap_or_default() };
    let rate = said.pay.filter(|_| EARLY <= so_far).and_then(|pay| stack(real, wanted(pay)).ok());
    let YearTime { bench, trips, unsettled, unsettled_logged, .. } = time;
    let tools_twice = tools_twice(&shop.workshop, (currency, year));
    let wear_guessed = worn.is_none();
    let on_rack = on_rack(shop, year)?.min(logged);
    Ok(RealYear {
        since,
        passed,
        worked,
        bench,
        trips,
        unsettled,
        logged,
        on_rack,
        unsettled_logged,
        costs,
        wear,
        wear_guessed,
        tools_twice,
        rate,
    })
}

/// The first day that anything was written down on, or is told of.
fn began(shop: &Shop, offset: Offset, today: Day) -> Day {
    let written = shop.book.entries().next().map(|(entry, _)| entry.wall.day());
    let runs = shop.bench.runs().map(|run| Wall::new(run.started.at, offset).day());
    let trips = hauls(shop.book).flat_map(|haul| haul.trips).filter_map(|trip| trip.left.map(Wall::day));
    let costs = shop.workshop.costs.iter().map(|line| line.at.day());
    written.into_iter().chain(runs).chain(trips).chain(costs).min().unwrap_or(today)
}

/// What the wood on the rack carries of the minutes of the hauls of a year.
fn on_rack(shop: &Shop, year: i32) -> Answer<Span> {
    let of_year = hauls(shop.book).filter(|haul| haul.began.day().as_ymd().0 == year);
    let shares = of_year.map(|haul| Ok(haul::haul(shop, haul.id)?.rack.map_or(Span::ZERO, |share| share.time)));
    Ok(Span::sum(shares.collect::<Answer<Vec<_>>>()?))
}

/// Each year before this one in which a cost was written down as spent, so that it can still be seen and struck.
fn earlier(shop: &Shop, year: i32) -> Answer<Vec<(i32, Sorted<Currency, YearCosts>)>> {
    let today = |can: &Can| can.over(Wall::new(shop.now, can.opened.offset).day()).map(|day| day.as_ymd().0);
    let gone = shop.workshop.cans.iter().filter_map(today);
    let mut years: Vec<i32> = shop.workshop.costs.iter().map(|line| line.at.day().as_ymd().0).chain(gone).filter(|of| *of < year).listed();
    order_by_key(&mut years, |of| Reverse(*of));
    years.dedup();
    years.into_iter().map(|of| Ok((of, costs(shop, of)?))).collect()
}

/// A cost is of the year it was in at the place where it was written.
pub(super) fn costs(shop: &Shop, year: i32) -> Answer<Sorted<Currency, YearCosts>> {
    let mut years = Sorted::new();
    let this_year = |line: &&Booked| line.at.day().as_ymd().0 == year;
    for line in shop.workshop.costs.iter().filter(this_year) {
        let costs = years.entry(line.sum.currency()).or_insert_with(|| YearCosts::none(line.sum.currency()));
        costs.total = costs.total.plus(line.sum)?;
        if let Some(kind) = line.kind.clone() {
            let sum = costs.by_kind.entry(kind).or_insert(Money::zero(line.sum.currency()));
            *sum = sum.plus(line.sum)?;
        }
        costs.lines.push(line.clone());
    }
    for began in hauls(shop.book).filter(|haul| haul.began.day().as_ymd().0 == year) {
        let Some(share) = haul::haul(shop, began.id)?.workshop.filter(|share| !share.cost.is_zero()) else { continue };
        let costs = years.entry(began.currency).or_insert_with(|| YearCosts::none(began.currency));
        costs.total = costs.total.plus(share.cost)?;
        costs.of_hauls = costs.of_hauls.plus(share.cost)?;
    }
    for pay in earned_for_none(shop, year)? {
        let costs = years.entry(pay.currency()).or_insert_with(|| YearCosts::none(pay.currency()));
        costs.total = costs.total.plus(pay)?;
        costs.of_helpers = costs.of_helpers.plus(pay)?;
    }
    cans(shop, year, &mut years)?;
    Ok(years)
}

/// The rest of a can is of the year in which no job is charged for it any more.
fn cans(shop: &Shop, year: i32, years: &mut Sorted<Currency, YearCosts>) -> Answer<()> {
    for can in &shop.workshop.cans {
        let today = Wall::new(shop.now, can.opened.offset).day();
        let rest = can.rest()?;
        if can.over(today).is_none_or(|day| day.as_ymd().0 != year) || rest.is_zero() {
            continue;
        }
        let costs = years.entry(rest.currency()).or_insert_with(|| YearCosts::none(rest.currency()));
        costs.total = costs.total.plus(rest)?;
        costs.of_cans = costs.of_cans.plus(rest)?;
    }
    Ok(())
}

impl YearCosts {
    fn none(currency: Currency) -> YearCosts {
        let zero = Money::zero(currency);
        YearCosts { total: zero, by_kind: Sorted::new(), lines: vec![], of_hauls: zero, of_helpers: zero, of_cans: zero }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::Book;
    use crate::ledger::kind::haul::{HaulBegan, TripBegan, TripDescribed};
    use crate::ledger::told::Phone;
    use crate::quantity::Moment;
    use crate::story::{STANDS, tell};

    #[test]
    fn the_real_year_stands_beside_the_guess() {
        let story = tell(STANDS);
        let shop = Shop::of(&story.book, story.now.at);
        let year = real_year(&shop, Currency::USD, story.now.offset).unwrap();
        assert!(Span::ZERO < year.logged && year.logged <= year.worked);
        assert!(Decimal::ZERO < year.passed && year.passed < Decimal::ONE);
        assert_eq!(year.on_rack.as_minutes(), 59, "of 136 minutes of the haul the stands carry 77");
        let rate = year.rate.expect("pay is said, hours are logged, the year is old enough");
        assert!(rate.pay >= Decimal::from(16), "the pay of every hour worked, over those logged: {}", rate.pay);
    }

    /// Minutes at the wheel and the bins are hours worked, of the year the trip left in: jobs carry them.
    #[test]
    fn trips_are_hours_of_the_year_they_left_in() {
        let told = |minute: i64| Moment::at(1_767_225_600_000).plus(Span::minutes(minute)); // 1 January 2026, 00:00 UTC
        for (left, year, hours) in [(30, 2026, 2), (-30, 2026, 0), (-30, 2025, 2)] {
            let mut phone = Phone::new("a");
            let minute = |at: Moment| Moment::at(0).until(at).as_minutes();
            let haul = phone.note(minute(told(left)), HaulBegan { currency: Currency::USD, units: Units::Inch, name: None });
            let trip = phone.note(minute(told(left)), TripBegan { haul });
            let (wheel, bin) = (Some(Span::minutes(90)), Some(Span::minutes(30)));
            phone.note(minute(told(200)), TripDescribed { wheel, bin, ..TripDescribed::of(haul, trip) });
            let shop = Shop::of(&phone.book, told(300));
            let hours = Span::minutes(60 * hours);
            let time = time_of(&shop, (year, Offset::UTC));
            assert_eq!((time.worked(), time.logged), (hours, hours), "left at {left}, seen in {year}");
            assert_eq!((time.trips.recalled, time.trips.total()), (hours, hours), "told, not stamped");
        }
    }

    /// 40 minutes by the clock, 10 of them said with the tap; 60 recalled; 30 over the turn of the year, of which 20 are this year's.
    #[test]
    fn the_hours_of_a_year_say_where_their_minutes_come_from() {
        let story = tell(
            "
2025-12-31 23:50 +00:00 workshop EUR metric
start \"oil\" make
2026-01-01 00:20 stop
2026-01-05 09:10 start \"saw\" make 10 min ago
09:40 stop
12:00 recall \"sand\" make 10:00 to 11:00
",
        );
        assert_eq!(story.refused, []);
        let year = real_year(&Shop::of(&story.book, story.now.at), Currency::EUR, Offset::UTC).unwrap();
        assert_eq!([year.bench.measured, year.bench.corrected, year.bench.recalled].map(Span::as_minutes), [50, 10, 60]);
        assert_eq!((year.bench.total(), year.trips.total()), (year.worked, Span::ZERO));
    }

    #[test]
    fn an_empty_year_has_no_rate() {
        let book = Book::default();
        let shop = Shop::of(&book, Moment::at(1_772_546_400_000));
        let year = real_year(&shop, Currency::EUR, Offset::UTC).unwrap();
        assert_eq!((year.worked, year.costs, year.rate), (Span::ZERO, Money::zero(Currency::EUR), None));
    }
}
