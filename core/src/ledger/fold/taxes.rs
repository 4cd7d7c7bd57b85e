//! Rates of sales tax under a name, and which of them a job takes.

use super::Job;
use super::workshop::{Till, Workshop, till};
use crate::ledger::kind::money::{JobTaxSet, TaxNamed};
use crate::ledger::{Book, Entry, Fact, Subject};
use crate::money::tax::Tax;
use crate::quantity::{Currency, Decimal, Id, Side};

/// A rate under a name, beside the usual one.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedTax {
    pub id: Id,
    pub currency: Currency,
    pub name: String,
    pub rate: Decimal,
    /// As usual where it was not said.
    pub side: Option<Side>,
    /// It is offered no more; a job that has it keeps it.
    pub dropped: bool,
}

/// What pieces are taxed with.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TaxBy {
    /// As the till has it.
    #[default]
    Usual,
    Named(Id),
    Untaxed,
    /// As it was spoken of when a price was agreed.
    Agreed(Tax),
}

impl TaxBy {
    pub(super) fn set(f: &JobTaxSet) -> TaxBy {
        match f.tax {
            _ if f.untaxed == Some(true) => TaxBy::Untaxed,
            Some(id) => TaxBy::Named(id),
            None => TaxBy::Usual,
        }
    }
}

/// What a job's pieces were taxed with when an entry was written, as was said by then.
pub fn tax_when(book: &Book, job: &Job, written: Id) -> Tax {
    let mut by = TaxBy::Usual;
    for entry in book.stood_before(Subject::Job(job.id), written) {
        if let Fact::JobTaxSet(f) = &entry.fact {
            by = TaxBy::set(f);
        }
    }
    let mut then = Workshop::default();
    book.stood_before(Subject::Workshop, written).for_each(|entry| then.take_tax(entry));
    then.tax(job.currency, by)
}

/// Takes in a rate that was named, changed or dropped.
pub(super) fn named(taxes: &mut Vec<NamedTax>, entry: &Entry) {
    match &entry.fact {
        Fact::TaxNamed(f) => match f.tax {
            Some(id) => taxes.iter_mut().filter(|tax| (tax.id, tax.currency) == (id, f.currency)).for_each(|tax| {
                *tax = NamedTax { id, ..of(entry, f) };
            }),
            None => taxes.push(of(entry, f)),
        },
        Fact::TaxDropped(f) => taxes.iter_mut().filter(|tax| tax.id == f.tax).for_each(|tax| tax.dropped = true),
        _ => {}
    }
}

fn of(entry: &Entry, f: &TaxNamed) -> NamedTax {
    NamedTax { id: entry.id, currency: f.currency, name: f.name.clone(), rate: f.rate.0, side: f.side, dropped: false }
}

impl NamedTax {
    /// The tax itself, where the usual one stands on a side.
    pub fn tax(&self, till: &Till) -> Tax {
        Tax { rate: self.rate, side: self.side.unwrap_or(till.sales_tax().side) }
    }
}

impl Workshop {
    /// The named rates of a currency that are offered.
    pub fn taxes_in(&self, currency: Currency) -> impl Iterator<Item = &NamedTax> {
        self.taxes.iter().filter(move |tax| tax.currency == currency && !tax.dropped)
    }

    /// The named rate of a job or a sale, dropped or not.
    pub fn named_tax(&self, by: TaxBy) -> Option<&NamedTax> {
        self.taxes.iter().find(|tax| TaxBy::Named(tax.id) == by)
    }

    /// Takes in what an entry says of tax.
    fn take_tax(&mut self, entry: &Entry) {
        match &entry.fact {
            Fact::TillSet(f) => till(self.tills.entry(f.currency).or_default(), f),
            _ => named(&mut self.taxes, entry),
        }
    }

    /// The tax of a currency, taken so: the usual one where the named one was taken back.
    pub fn tax(&self, currency: Currency, by: TaxBy) -> Tax {
        let till = self.tills.get(&currency).cloned().unwrap_or_default();
        match by {
            TaxBy::Untaxed => Tax::NONE,
            TaxBy::Agreed(tax) => tax,
            TaxBy::Usual | TaxBy::Named(_) => {
                let named = self.named_tax(by).filter(|named| named.currency == currency);
                named.map_or_else(|| till.sales_tax(), |named| named.tax(&till))
            }
        }
    }
}
