//! Pieces that are handed over, and what an order came to when the last of its pieces was.

use super::brought::Lines;
use super::paid_for::Step;
use super::selling::{Sale, Selling};
use crate::ledger::Entry;
use crate::ledger::kind::sale::PieceSold;
use crate::quantity::{Count, Id, Listed, Money};

impl Selling {
    /// Pieces are handed over and sold.
    pub(super) fn sold(&mut self, entry: &Entry, f: &PieceSold, tag: Option<Money>) {
        self.steps.push(Step::Sold(entry.id));
        self.sales.push(Sale {
            id: entry.id,
            at: entry.when(f.when),
            n: f.n,
            sum: f.sum,
            tax: f.tax,
            rate: f.rate.0,
            side: f.side,
            tag,
            agreed: f.agreed,
            carried: f.carried,
            buyer: f.buyer,
            whole: Lines { n: f.n, sum: f.sum, tax: f.tax },
            back: vec![],
            reversed: None,
        });
        if let Some(agreed) = f.agreed {
            self.handed_over_under(agreed);
        }
    }

    /// What comes back of an order after all of it was handed over was paid by what it came to then: a coin that was rounded to is owed by nobody.
    fn handed_over_under(&mut self, id: Id) {
        let Some(agreement) = self.agreement(id) else { return };
        let of_it = self.sales.iter().filter(|sale| sale.agreed == Some(id)).map(|sale| self.as_it_stands_now(sale)).listed();
        let n = of_it.iter().fold(0, |n: Count, (of, _)| n.saturating_add(*of));
        let sum = Money::sum(agreement.sum.currency(), of_it.into_iter().map(|(_, sum)| sum));
        // What two phones handed over beyond it changes nothing of that.
        if let Some(sum) = sum.ok().filter(|_| agreement.n == n) {
            self.came_to.insert(id, sum);
        }
    }

    /// The pieces of a sale that did not come back yet, and what they were sold for, with what was given off it.
    fn as_it_stands_now(&self, sale: &Sale) -> (Count, Money) {
        let mut now = Sale { back: vec![], ..sale.clone() };
        self.brought.iter().filter(|back| back.sale == sale.id).for_each(|back| now.brought_back(back));
        let given = Money::sum(sale.sum.currency(), now.given_off()).unwrap_or(Money::zero(sale.sum.currency()));
        match now.reversed.or(self.reversals.get(&sale.id).copied()) {
            Some(_) => (0, given),
            None => (now.n, now.sum.plus(given).unwrap_or(now.sum)),
        }
    }
}
