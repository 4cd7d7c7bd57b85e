//! What every sheet is read from: the book, and what all jobs share, folded once for one moment.

use super::account::of as account_of;
use super::bench::{Look, Seen};
use super::estimate::history::{Gathered, History};
use super::waiting::Kept;
use crate::bench::wait::Waits;
use crate::bench::{Bench, Run, Time};
use crate::ledger::fold::{self, Job, TaxBy, Till, Workshop};
use crate::ledger::{Book, Fact};
use crate::money::charge::Terms;
use crate::money::point::Points;
use crate::money::tax::Tax;
use crate::quantity::{Currency, Decimal, Id, Moment, Offset, Sorted, Wall};
use crate::refusal::{Answer, Refusal};
use std::borrow::Cow;

use crate::ledger::kind::sale::Paid;
use std::cell::{OnceCell, RefCell};
use std::rc::Rc;

/// How the maker said that is paid.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Paying {
    /// By the buyer of a job.
    pub of_job: Option<(Id, Paid)>,
    /// With notes or a card, by whoever stands there next.
    pub chosen: Option<Paid>,
}

/// The whole workshop at one moment.
#[derive(Clone, Debug)]
pub struct Shop<'a> {
    pub book: &'a Book,
    pub bench: Rc<Bench>,
    pub workshop: Rc<Workshop>,
    pub now: Moment,
    /// What waiting is worth, as it was reckoned before.
    pub prospects: Rc<Kept>,
    pub paying: Paying,
    // Folded when somebody asks.
    waits: OnceCell<Rc<Waits>>,
    history: Rc<Gathered>,
    /// What one piece of a job must bring so that its hours earn the lowest pay.
    lowest: RefCell<Sorted<Id, Option<Decimal>>>,
}

impl<'a> Shop<'a> {
    pub fn of(book: &'a Book, now: Moment) -> Shop<'a> {
        Shop::folded(book, (Rc::new(fold::bench(book)), Rc::new(fold::workshop(book))), now)
    }

    /// The same where bench and workshop were folded before.
    pub fn folded(book: &'a Book, (bench, workshop): (Rc<Bench>, Rc<Workshop>), now: Moment) -> Shop<'a> {
        Shop {
            book,
            bench,
            workshop,
            now,
            prospects: Rc::default(),
            paying: Paying::default(),
            waits: OnceCell::new(),
            history: Rc::default(),
            lowest: RefCell::default(),
        }
    }

    /// The same with what was reckoned of waiting before.
    pub fn with_prospects(self, prospects: Rc<Kept>) -> Shop<'a> {
        Shop { prospects, ..self }
    }

    /// The same where the maker said how is paid.
    pub fn paying(self, paying: Paying) -> Shop<'a> {
        Shop { paying, ..self }
    }

    /// How it was paid the last time that was said, by who stood there; a card before that.
    pub fn paid_before(&self) -> Paid {
        let mut standing = self.book.entries().rev().filter(|(_, struck)| !struck).map(|(entry, _)| &entry.fact);
        let before = standing.find_map(|fact| {
            let paid = match fact {
                Fact::OfferHeard(f) => f.paid,
                Fact::PaymentReceived(f) => Some(f.paid),
                _ => None,
            };
            paid.filter(|paid| *paid != Paid::Bank)
        });
        before.unwrap_or(Paid::Card)
    }

    /// How what was agreed or sold of a job is paid, or a piece of it that is sold: as it was said for this buyer, else as what came in for the same
    /// was paid, else as the next would pay.
    pub fn paid_for(&self, job: &Job, of: Option<Id>) -> Paid {
        self.paid_known(job, of).or(self.paying.chosen).unwrap_or_else(|| self.paid_before())
    }

    /// The same where it was said for this buyer, or something came in; none where nobody knows, and what is still to come bears no fee then. What
    /// somebody else paid with changes nothing in what a job leaves.
    pub fn paid_known(&self, job: &Job, of: Option<Id>) -> Option<Paid> {
        let said = self.paying.of_job.filter(|(id, _)| *id == job.id).map(|(_, paid)| paid);
        said.or_else(|| of.and_then(|of| job.selling.paid_last(of)))
    }

    /// The same with what was gathered of earlier jobs before, or will be.
    pub fn with_history(self, history: Rc<Gathered>) -> Shop<'a> {
        Shop { history, ..self }
    }

    /// The same where the waits were folded too.
    pub fn waiting(self, waits: Rc<Waits>) -> Shop<'a> {
        Shop { waits: OnceCell::from(waits), ..self }
    }

    /// The job of an id.
    ///
    /// # Errors
    /// [`Refusal::NotThere`].
    pub fn job(&self, id: Id) -> Answer<Job> {
        fold::job(self.book, id).ok_or(Refusal::NotThere)
    }

    /// Every job, the newest first; folded once.
    pub fn jobs(&self) -> &[Job] {
        self.history.jobs(self.book)
    }

    /// What one piece of a job must bring so that its hours earn the lowest pay; none where that, its costs or its hours are not known. Reckoned once.
    ///
    /// # Errors
    /// [`Refusal::MoneyOutOfRange`].
    pub fn lowest_need(&self, job: &Job) -> Answer<Option<Decimal>> {
        if let Some(known) = self.lowest.borrow().get(&job.id) {
            return Ok(*known);
        }
        let account = account_of(self, job)?;
        let pricing = account.pricing;
        let need = pricing.hourly.lowest_pay.map(|pay| pricing.work.need(pay, 1)).transpose()?.flatten();
        self.lowest.borrow_mut().insert(job.id, need);
        Ok(need)
    }

    /// Every wait there is.
    pub fn waits(&self) -> &Waits {
        self.waits.get_or_init(|| Rc::new(super::over::waits(self.book, &self.bench)))
    }

    /// What all jobs tell of how long things take, gathered once.
    pub fn history(&self) -> &History {
        self.history.all(self)
    }

    /// What all jobs but this one tell of it.
    pub fn history_but(&self, job: &Job) -> Rc<History> {
        self.history.but(self, job)
    }

    /// What of that was known by a moment.
    pub fn history_known_by(&self, job: Id, by: Moment) -> Rc<History> {
        self.history.known_by(self, job, by)
    }

    /// The time of a job, to this moment.
    pub fn time(&self, job: Id) -> Time {
        self.bench.of_job(job, self.now)
    }

    /// Of some runs, what is to settle, until the maker has answered for it.
    pub fn unsettled<'r>(&'r self, runs: impl Iterator<Item = &'r Run>) -> impl Iterator<Item = Cow<'r, Run>> {
        runs.filter_map(|run| self.bench.to_settle(run, self.now))
    }

    /// What stands of them: by this alone helpers are paid.
    pub fn settled<'r>(&'r self, runs: impl Iterator<Item = &'r Run>) -> impl Iterator<Item = Cow<'r, Run>> {
        self.bench.sure(runs, self.now)
    }

    /// Of the runs of a job, what is of its hours: what stands while it goes on; of one that has ended all, as that is what it took.
    pub fn of_job<'r>(&'r self, job: &Job, runs: impl Iterator<Item = &'r Run>) -> impl Iterator<Item = Cow<'r, Run>> {
        let ended = job.ended.is_some();
        runs.filter_map(move |run| if ended { Some(Cow::Borrowed(run)) } else { self.bench.standing(run, self.now) })
    }

    /// Ended runs that do, however long ago they were: they teach nothing.
    pub fn unanswered<'r>(&'r self, runs: impl Iterator<Item = &'r Run>) -> impl Iterator<Item = &'r Run> {
        let look = self.look();
        runs.filter(move |run| !run.is_running() && look.is_unanswered(run))
    }

    /// When the workshop closes is a word on the end to propose, and none on whether one is.
    fn look(&self) -> Look<'_> {
        Look::new(&self.bench, self.book, Seen { now: Wall::new(self.now, Offset::UTC), ..Seen::default() })
    }

    /// How one is paid in a currency; nothing said is no tax and no fee.
    pub fn till(&self, currency: Currency) -> Till {
        self.workshop.tills.get(&currency).cloned().unwrap_or_default()
    }

    /// How a sale of no job is taxed, and what its payment costs.
    pub fn terms(&self, currency: Currency, paid: Paid) -> Terms {
        self.taxed((currency, TaxBy::Usual), paid)
    }

    /// How a sale of a job's pieces is taxed, and what its payment costs.
    pub fn terms_of(&self, job: &Job, paid: Paid) -> Terms {
        self.taxed((job.currency, job.tax), paid)
    }

    /// What a job's pieces are taxed with.
    pub fn tax_of(&self, job: &Job) -> Tax {
        self.workshop.tax(job.currency, job.tax)
    }

    fn taxed(&self, (currency, by): (Currency, TaxBy), paid: Paid) -> Terms {
        Terms { tax: self.workshop.tax(currency, by), fee: self.till(currency).fee_of(paid) }
    }

    /// The price points of a currency: as set, else the usual ones.
    pub fn points(&self, currency: Currency) -> Points {
        self.till(currency).point.as_ref().and_then(|key| Points::of(key.as_str())).unwrap_or(Points::usual(currency))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::On;
    use crate::quantity::Span;
    use crate::sheet::account::account;
    use crate::sheet::bench::bench_of;
    use crate::sheet::hours::week;
    use crate::sheet::workshop::real_year;
    use crate::story::tell;

    /// Sanded for an hour, then from 17:00 with Ada at 15 an hour; stopped at 08:00 the day after.
    const FORGOTTEN: &str = "
2026-03-02 09:00 +00:00 workshop EUR metric
person ada helper
job shelf \"Shelf\" 1 order
10:00 start \"sand\" make on shelf
11:00 stop
17:00 start \"oil\" make on shelf as oiling
helper joins ada 15
";

    /// What was told then; of the job, of the hand at the bench and of the year, so many hours are to settle; what the week pays Ada.
    #[track_caller]
    fn check(told: &str, hours: i64, paid: &[i64]) {
        let story = tell(&format!("{FORGOTTEN}{told}"));
        assert_eq!(story.refused, []);
        let shop = Shop::of(&story.book, story.now.at);
        let account = account(&shop, story.names.job("shelf").unwrap()).unwrap();
        let seen = Seen { now: story.now, ..Seen::default() };
        let hand = bench_of(&shop.bench, shop.book, seen).hand.unwrap();
        let year = real_year(&shop, Currency::EUR, story.now.offset).unwrap();
        assert_eq!(hand.on, On::Job(account.job));
        assert_eq!([account.hours.unsettled, hand.unsettled, year.unsettled].map(Span::as_minutes), [60 * hours; 3], "{told}");
        let week = week((&shop.bench, shop.book), story.now.day(), seen);
        let paid = paid.iter().map(|sum| crate::quantity::Decimal::from(*sum)).collect::<Vec<_>>();
        assert_eq!(week.along.1.iter().map(|sum| sum.amount().normalize()).collect::<Vec<_>>(), paid, "{told}");
        // What the job paid is what the week paid; the rest is to settle.
        assert_eq!(account.cost("helper").map(|sum| sum.amount().normalize()).into_iter().collect::<Vec<_>>(), paid, "{told}");
        let open = crate::quantity::Decimal::from(15 * hours);
        assert_eq!((account.costs.total.is_some(), account.costs.unsettled.amount().normalize()), (!paid.is_empty(), open), "{told}");
        let by_op = Span::sum(account.hours.stands.by_op.values().map(|shares| shares.total()));
        assert_eq!(account.hours.by_division.values().copied().collect::<Vec<_>>(), [by_op], "{told}");
        assert_eq!(by_op.plus(account.hours.unsettled), account.hours.logged.own.total(), "{told}");
    }

    /// A forgotten stop of no job is of the year, and of what was logged it is not.
    #[test]
    fn open_hours_of_no_job_are_no_logged_hours() {
        let open = |on: &str| {
            let day = "2026-03-02 09:00 +00:00 workshop EUR metric\njob shelf \"Shelf\" 1 order";
            let story = tell(&format!("{day}\n17:00 start \"tidy\" make{on}\n2026-03-03 08:00 stop"));
            assert_eq!(story.refused, []);
            let year = real_year(&Shop::of(&story.book, story.now.at), Currency::EUR, story.now.offset).unwrap();
            [year.unsettled, year.unsettled_logged, year.logged].map(Span::as_minutes)
        };
        assert_eq!(open(""), [900, 0, 0]);
        assert_eq!(open(" on shelf"), [900, 900, 0]);
    }

    #[test]
    fn hours_that_nobody_answered_for_are_marked_wherever_they_are_counted() {
        check("2026-03-03 08:00 stop", 15, &[]);
        check("18:00 done 1\n2026-03-03 08:00 stop", 14, &[15]); // up to the last piece it was worked
        check("18:00 done 1\n2026-03-03 07:59 done 1\n08:00 stop", 14, &[15]);
        check("2026-03-03 08:00 stop\n08:01 stopped at 2026-03-02 18:00 run oiling", 0, &[15]);
        check("2026-03-03 08:00 stop\n08:01 confirm run oiling", 0, &[225]);
        check("18:00 stop", 0, &[15]);
        check("2026-03-03 08:00 plan \"saw\" make 5 min for shelf", 15, &[]); // it runs since yesterday: nobody said that the night was worked
        check("23:00 plan \"saw\" make 5 min for shelf", 0, &[90]); // it may be right while it runs
    }
}
