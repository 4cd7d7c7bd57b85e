//! Who worked along on a job: heads by person, for how long, and what they are paid.

use super::shop::Shop;
use crate::bench::On;
use crate::ledger::fold::Job;
use crate::money::cost::helper;
use crate::quantity::{Decimal, Id, Money, Span};
use crate::refusal::Answer;

/// A helper's work on a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Helped {
    /// None for those without a name, taken together.
    pub person: Option<Id>,
    /// With every head of it.
    pub time: Span,
    /// Booked for each run and head, half up; nothing where nobody said that it is paid.
    pub pay: Money,
}

/// Who worked along in the runs of a job, for how long, and what each is paid: the pay is a cost of the job.
///
/// # Errors
/// [`crate::refusal::Refusal::BelowNothing`], [`crate::refusal::Refusal::MoneyOutOfRange`].
pub fn helped(shop: &Shop, job: &Job) -> Answer<Vec<Helped>> {
    let mut all: Vec<Helped> = vec![];
    for run in shop.bench.on(On::Job(job.id)) {
        let (start, end) = (run.started.at, run.end(shop.now));
        for head in &run.heads {
            let time = head.within(start, end);
            let pay = head.pay.filter(|pay| pay.currency() == job.currency).map_or(Decimal::ZERO, Money::amount).max(Decimal::ZERO);
            let pay = helper(pay, time, 1, job.currency)?;
            match all.iter_mut().find(|helped| helped.person == head.person) {
                Some(helped) => (helped.time, helped.pay) = (helped.time.plus(time), helped.pay.plus(pay)?),
                None => all.push(Helped { person: head.person, time, pay }),
            }
        }
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
        let found = helped(&shop, &job).unwrap();
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
}
