//! What every sheet is read from: the book, and what all jobs share, folded once for one moment.

use crate::bench::wait::Waits;
use crate::bench::{Bench, Time};
use crate::ledger::fold::{self, Job, Workshop};
use crate::ledger::{Book, fold::Till};
use crate::money::charge::Terms;
use crate::money::fee::Fee;
use crate::money::point::Points;
use crate::quantity::{Currency, Id, Moment};
use crate::refusal::{Answer, Refusal};

use crate::ledger::kind::sale::Paid;
use std::cell::OnceCell;
use std::rc::Rc;

/// The whole workshop at one moment.
#[derive(Clone, Debug)]
pub struct Shop<'a> {
    pub book: &'a Book,
    pub bench: Rc<Bench>,
    pub workshop: Rc<Workshop>,
    pub now: Moment,
    // Folded when somebody asks.
    waits: OnceCell<Waits>,
}

impl<'a> Shop<'a> {
    pub fn of(book: &'a Book, now: Moment) -> Shop<'a> {
        Shop { book, bench: Rc::new(fold::bench(book)), workshop: Rc::new(fold::workshop(book)), now, waits: OnceCell::new() }
    }

    /// The same where bench and workshop were folded before.
    pub fn folded(book: &'a Book, (bench, workshop): (Rc<Bench>, Rc<Workshop>), now: Moment) -> Shop<'a> {
        Shop { book, bench, workshop, now, waits: OnceCell::new() }
    }

    /// The job of an id.
    ///
    /// # Errors
    /// [`Refusal::NotThere`].
    pub fn job(&self, id: Id) -> Answer<Job> {
        fold::job(self.book, id).ok_or(Refusal::NotThere)
    }

    /// Every wait there is.
    pub fn waits(&self) -> &Waits {
        self.waits.get_or_init(|| fold::waits(self.book))
    }

    /// The time of a job, to this moment.
    pub fn time(&self, job: Id) -> Time {
        self.bench.of_job(job, self.now)
    }

    /// How one is paid in a currency; nothing said is no tax and no fee.
    pub fn till(&self, currency: Currency) -> Till {
        self.workshop.tills.get(&currency).cloned().unwrap_or_default()
    }

    /// How a sale is taxed, and what its payment costs.
    pub fn terms(&self, currency: Currency, paid: Paid) -> Terms {
        let till = self.till(currency);
        let fee = if paid == Paid::Card { till.card() } else { Fee::NONE };
        Terms { tax: till.sales_tax(), fee }
    }

    /// The price points of a currency: as set, else fives.
    pub fn points(&self, currency: Currency) -> Points {
        self.till(currency).point.as_ref().and_then(|key| Points::of(key.as_str())).unwrap_or(Points::Five)
    }
}
