//! Who worked along on a job, a haul or neither: heads by person, for how long, and what they are paid.

use super::shop::Shop;
use crate::bench::{Head, On, Run};
use crate::money::cost::helper;
use crate::quantity::{Count, Currency, Day, Decimal, Id, Moment, Money, Span, Wall, order_by_key};
use crate::refusal::Answer;
use std::borrow::Cow;

/// A helper's work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Helped {
    /// None for those without a name, taken together.
    pub person: Option<Id>,
    /// With every head of it, each stay in whole minutes.
    pub time: Span,
    /// Of it, what nobody is paid for.
    pub unpaid: Span,
    /// Booked for each run and head, half up; nothing where nobody said that it is paid.
    pub pay: Money,
}

/// Who worked along in the runs of a job, a haul or neither, for how long, and what each is paid in this currency; without what is to settle.
///
/// # Errors
/// [`crate::refusal::Refusal::BelowNothing`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn helped(shop: &Shop, on: On, currency: Currency) -> Answer<Vec<Helped>> {
    in_runs(shop, shop.settled(shop.bench.on(on)), currency)
}

/// The same of what is to settle: it is in no sum until the maker has answered for it.
///
/// # Errors
/// As [`helped`].
pub fn helped_to_settle(shop: &Shop, on: On, currency: Currency) -> Answer<Vec<Helped>> {
    in_runs(shop, shop.unsettled(shop.bench.on(on)), currency)
}

fn in_runs<'a>(shop: &'a Shop, runs: impl Iterator<Item = Cow<'a, Run>>, currency: Currency) -> Answer<Vec<Helped>> {
    let mut all: Vec<Helped> = vec![];
    for run in runs {
        for stay in of_run(&run, currency, shop.now)? {
            match all.iter_mut().find(|helped| helped.person == stay.person) {
                Some(helped) => {
                    (helped.time, helped.unpaid) = (helped.time.plus(stay.time), helped.unpaid.plus(stay.unpaid));
                    helped.pay = helped.pay.plus(stay.pay)?;
                }
                None => all.push(stay),
            }
        }
    }
    Ok(all)
}

/// One stay of somebody who worked along in a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stay {
    /// Of the entry by which they came.
    pub id: Id,
    pub n: Count,
    pub person: Option<Id>,
    pub from: Moment,
    /// None while they are there and the run goes on.
    pub to: Option<Moment>,
    /// With every head of it.
    pub time: Span,
    /// Per hour; none where nobody said that they are paid.
    pub per_hour: Option<Money>,
    /// What the stay costs, half up.
    pub pay: Option<Money>,
}

/// Who worked along in a run, the first to come first; each stay within the run as it counts.
///
/// # Errors
/// [`crate::refusal::Refusal::BelowNothing`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn stays(run: &Run, now: Moment) -> Answer<Vec<Stay>> {
    let (start, end) = (run.started.at, run.end(now));
    let within = |at: Moment| at.max(start).min(end);
    let mut all = vec![];
    for head in &run.heads {
        let time = in_minutes(head, (start, end));
        let pay = match head.pay {
            Some(per_hour) => Some(helper(per_hour.amount().max(Decimal::ZERO), time, 1, per_hour.currency())?),
            None => None,
        };
        let to = head.to.or((!run.is_running()).then_some(end)).map(within);
        all.push(Stay { id: head.id, n: head.n, person: head.person, from: within(head.from), to, time, per_hour: head.pay, pay });
    }
    order_by_key(&mut all, |stay| stay.from);
    Ok(all)
}

/// How long a head was at a run that counts from one moment to another, in whole minutes, half up, as it is shown: by these it is paid, so that
/// the pay can be worked back from what stands there (ours).
fn in_minutes(head: &Head, (start, end): (Moment, Moment)) -> Span {
    Span::minutes(head.within(start, end).as_minutes())
}

/// The time of all who worked along in some runs on some days, the first to the last, and what that costs in each currency. A stay over midnight is
/// of both days: up to midnight it is of the first, in whole minutes and with its pay, and what is more of the next, so that days add up to the whole.
///
/// # Errors
/// [`crate::refusal::Refusal::BelowNothing`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn along<'a>(runs: impl IntoIterator<Item = &'a Run>, days: (Day, Day), now: Wall) -> Answer<(Span, Vec<Money>)> {
    let (mut time, mut sums) = (Span::ZERO, Vec::<Money>::new());
    for run in runs {
        let (from, to) = cut(run, days, now);
        for head in &run.heads {
            let by = |at: Moment| in_minutes(head, (run.started.at, at));
            time = time.plus(by(to).minus(by(from)));
            let Some(per_hour) = head.pay else { continue };
            let by = |at: Moment| helper(per_hour.amount().max(Decimal::ZERO), by(at), 1, per_hour.currency());
            let pay = by(to)?.minus(by(from)?)?;
            match sums.iter_mut().find(|sum| sum.currency() == pay.currency()) {
                _ if pay.is_zero() => {}
                Some(sum) => *sum = sum.plus(pay)?,
                None => sums.push(pay),
            }
        }
    }
    Ok((time, sums))
}

/// Where a run that lies on some days begins and ends on them. Midnights are those of the place where it began, as in [`crate::bench::day::split`].
fn cut(run: &Run, (first, last): (Day, Day), now: Wall) -> (Moment, Moment) {
    let (start, end, place) = (run.started.at, run.end(now.at), run.started.offset);
    let to = if run.end_wall(now).day() <= last { end } else { last.next().start(place).min(end) };
    let from = if first <= run.started.day() { start } else { first.start(place).max(start) };
    (from.min(to), to)
}

/// The kind of cost that helpers' pay is.
pub const HELPER: &str = "helper";

/// What helpers earned in runs that began at a moment or after it.
///
/// # Errors
/// As [`earned`].
pub fn earned_since(shop: &Shop, (on, since): (On, Moment), currency: Currency) -> Answer<Money> {
    let runs = earned_by_run(shop, (on, &|run| since <= run.started.at), currency)?;
    Money::sum(currency, runs.into_iter().map(|(_, pay)| pay))
}

/// What helpers earned in each of these runs, with when it began.
///
/// # Errors
/// As [`earned`].
pub fn earned_by_run(shop: &Shop, (on, is_of): (On, &dyn Fn(&Run) -> bool), currency: Currency) -> Answer<Vec<(Moment, Money)>> {
    let of = |run: Cow<Run>| Ok((run.started.at, earned_in_run(&run, currency, shop.now)?));
    shop.settled(shop.bench.on(on)).filter(|run| is_of(run)).map(of).collect()
}

fn earned_in_run(run: &Run, currency: Currency, now: Moment) -> Answer<Money> {
    Money::sum(currency, of_run(run, currency, now)?.iter().map(|stay| stay.pay))
}

/// Of some helpers, what they are paid together.
///
/// # Errors
/// [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn pay_of(helped: &[Helped], currency: Currency) -> Answer<Money> {
    Money::sum(currency, helped.iter().map(|one| one.pay))
}

/// What helpers earn: a cost of the job or the haul that they worked for.
///
/// # Errors
/// [`crate::refusal::Refusal::BelowNothing`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn earned(shop: &Shop, on: On, currency: Currency) -> Answer<Money> {
    pay_of(&helped(shop, on, currency)?, currency)
}

/// What helpers earned in a year for no job: a cost of the workshop.
///
/// # Errors
/// [`crate::refusal::Refusal::BelowNothing`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn earned_for_none(shop: &Shop, year: i32) -> Answer<Vec<Money>> {
    earned_in(shop, On::Nothing, year)
}

/// What helpers earned in a year. A stay over New Year is of both years, as in [`along`].
///
/// # Errors
/// As [`earned_for_none`].
pub fn earned_in(shop: &Shop, on: On, year: i32) -> Answer<Vec<Money>> {
    let end = |month, day| Day::ymd(year, month, day).unwrap_or_default();
    let days = (end(1, 1), end(12, 31));
    let mut all = vec![];
    for run in shop.settled(shop.bench.on(on)) {
        all.extend(along([&*run], days, Wall::new(shop.now, run.started.offset))?.1);
    }
    Ok(all)
}

/// Each stay of a head at a run: whose, how long, and its pay.
fn of_run(run: &Run, currency: Currency, now: Moment) -> Answer<Vec<Helped>> {
    let (start, end) = (run.started.at, run.end(now));
    let mut all = vec![];
    for head in &run.heads {
        let time = in_minutes(head, (start, end));
        let pay = head.pay.filter(|pay| pay.currency() == currency).map_or(Decimal::ZERO, Money::amount).max(Decimal::ZERO);
        let is_paid = head.pay.is_some_and(|pay| !pay.is_zero());
        let unpaid = if is_paid { Span::ZERO } else { time };
        all.push(Helped { person: head.person, time, unpaid, pay: helper(pay, time, 1, currency)? });
    }
    Ok(all)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::story::tell;

    const BOOK: &str = "
2026-03-02 09:00 +00:00 workshop EUR metric
person ada helper
person ben helper
job shelf \"Shelf\" 1 order
job stands \"Stands\" 5 spec
10:00 start \"carry\" make on shelf as carrying
";

    /// What was told after 10:00 and seen then; each helper of the shelf with minutes and pay, and the job's own time and labour.
    #[track_caller]
    fn check(told: &str, helpers: &[(&str, i64, &str)], (own, labour): (i64, i64)) {
        let story = tell(&format!("{BOOK}{told}"));
        assert_eq!(story.refused, []);
        let shop = Shop::of(&story.book, story.now.at);
        let job = shop.job(story.names.job("shelf").unwrap()).unwrap();
        let name = |id: Option<Id>| match id {
            None => "",
            id if id == story.names.person("ada") => "ada",
            _ => "ben",
        };
        let found = helped(&shop, On::Job(job.id), job.currency).unwrap();
        let shown: Vec<(&str, i64, String)> =
            found.iter().map(|one| (name(one.person), one.time.as_minutes(), one.pay.amount().normalize().to_string())).collect();
        assert_eq!(shown, helpers.iter().map(|(who, time, pay)| (*who, *time, (*pay).to_owned())).collect::<Vec<_>>());
        let account = crate::sheet::account::of(&shop, &job).unwrap();
        let cost = account.cost("helper").unwrap_or(Money::zero(job.currency));
        assert_eq!(Some(cost.amount()), Money::sum(job.currency, found.iter().map(|one| one.pay)).ok().map(Money::amount));
        let logged = account.hours.logged;
        assert_eq!((logged.own.total().as_minutes(), logged.labour.as_minutes()), (own, labour));
    }

    #[test]
    fn each_helper_is_said_with_time_and_pay() {
        check("11:00 stop", &[], (60, 60));
        check("10:10 helper joins ada 15\n10:50 helper leaves ada\n11:00 stop", &[("ada", 40, "10")], (60, 100));
        check("10:10 helper joins ada\n10:50 helper leaves ada\n11:00 stop", &[("ada", 40, "0")], (60, 100));
        // Nobody said that she left: she leaves with the stop.
        check("10:30 helper joins ada 20\n11:00 stop\n12:00 start \"glue\" make on stands", &[("ada", 30, "10")], (60, 90));
        check("10:30 helper joins\n10:45 helper joins\n11:00 stop", &[("", 45, "0")], (60, 105));
        check("10:30 helper joins ada 20\nhelper joins ben 10\n11:00 stop", &[("ada", 30, "10"), ("ben", 30, "5")], (60, 120));
    }

    #[test]
    fn pay_is_half_up_for_each_stay_and_ends_with_the_run() {
        // 7 minutes at 10 an hour: 1.1666 twice, 1.17 + 1.17
        let twice = "10:00 helper joins ada 10\n10:07 helper leaves ada\n10:20 helper joins ada 10\n10:27 helper leaves ada\n10:30 stop";
        check(twice, &[("ada", 14, "2.34")], (30, 44));
        // A switch to another job ends the run and her pay.
        check("10:15 helper joins ada 20\n10:45 start \"glue\" make on stands\n12:00 stop", &[("ada", 30, "10")], (45, 75));
        // A stop put right takes her minutes back too.
        check("10:00 helper joins ada 20\n12:00 stopped at 10:30", &[("ada", 30, "10")], (30, 60));
        check("10:20 stop\n11:00 recall \"carry\" make on shelf 10:30 to 11:00 heads 3", &[("", 60, "0")], (50, 110));
    }

    /// What is shown is what is paid: 33 min 20 s are 33 min, and 33 min 40 s are 34; at 18 an hour 9.90 and 10.20.
    #[test]
    fn pay_is_by_the_minutes_that_are_shown() {
        let stay = |seconds: i64, minutes: i64, pay: &str| {
            let mut phone = crate::ledger::told::Phone::new("a");
            let run = phone.start(0, "carry", On::Nothing);
            let (pay_said, stop) = (Money::book(Decimal::from(18), Currency::EUR).unwrap(), crate::ledger::told::at(120));
            phone.stop(120, run);
            let from = Moment::at(stop.ms() - seconds * 1_000);
            let recalled = crate::ledger::decide::BenchCommand::RecallHelper { run, from, to: None, pay: Some(pay_said) };
            phone.bench(130, recalled).unwrap();
            let bench = crate::ledger::fold::bench(&phone.book);
            let now = phone.wall(120);
            let (time, sums) = along(bench.runs(), (now.day(), now.day()), now).unwrap();
            assert_eq!(
                (time.as_ms(), sums.iter().map(|sum| sum.amount().to_string()).collect::<Vec<_>>()),
                (minutes * 60_000, vec![pay.into()])
            );
        };
        stay(2_000, 33, "9.9");
        stay(2_020, 34, "10.2");
        stay(2_040, 34, "10.2");
        stay(1_980, 33, "9.9");
    }

    /// From 23:30 on New Year's Eve to 0:50 at 20 an hour, for no job: half an hour is of the old year and 50 minutes of the new one.
    #[test]
    fn pay_over_new_year_is_of_both_years() {
        let story = tell(
            "2026-12-31 09:00 +00:00 workshop EUR metric
person ada helper
23:30 start \"tidy\" make
helper joins ada 20
2027-01-01 00:50 stop",
        );
        assert_eq!(story.refused, []);
        let shop = Shop::of(&story.book, story.now.at);
        let paid = |year| earned_for_none(&shop, year).unwrap().iter().map(|sum| sum.amount().to_string()).collect::<Vec<_>>();
        let none = Vec::<String>::new();
        assert_eq!([2025, 2026, 2027, 2028].map(paid), [none.clone(), vec!["10".into()], vec!["16.67".into()], none]);
    }

    /// Ada sorts for half an hour at 20 and sharpens for a quarter at 16: 10 of the haul, 4 of the workshop.
    #[test]
    fn pay_for_a_haul_is_its_cost_and_pay_for_no_job_the_workshops() {
        let story = tell(&format!(
            "{BOOK}10:05 stop
11:00 leave for yard
at the bin
pile strips oak-white 20 x 50 x 500 mm
count 10 strips
homeward
home
11:10 start \"sort\" fetch on yard stage sort
helper joins ada 20
11:40 stop
12:00 start \"sharpen\" make
helper joins ada 16
12:15 stop"
        ));
        let plain = tell(&format!(
            "{BOOK}10:05 stop\n11:00 leave for yard\nat the bin\npile strips oak-white 20 x 50 x 500 mm\ncount 10 strips\n12:15 spend 1 blades"
        ));
        let at = |story: &crate::story::Story| {
            let shop = Shop::of(&story.book, story.now.at);
            let haul = crate::sheet::haul::haul(&shop, story.names.haul("yard").unwrap()).unwrap();
            let costs = crate::sheet::workshop::workshop(&shop, story.now.offset).unwrap().costs;
            let year = costs.get(&Currency::EUR).map(|year| (year.total, year.of_helpers)).unwrap();
            [haul.costs.unwrap(), year.0, year.1].map(|sum| sum.amount().normalize().to_string())
        };
        assert_eq!(story.refused, []);
        assert_eq!(at(&story), ["10", "4", "4"]);
        assert_eq!(at(&plain), ["0", "1", "0"]);
    }
}
