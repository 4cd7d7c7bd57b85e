//! Orders about rates of sales tax: one under a name is kept or dropped, a job takes one.

use super::Act;
use super::job::found;
use super::money::{MoneyCommand, share};
use crate::ledger::Book;
use crate::ledger::fold::{self, TaxBy};
use crate::ledger::kind::money as kind;
use crate::ledger::kind::sale::Paid;
use crate::money::charge::Terms;
use crate::quantity::in_small;
use crate::refusal::{Answer, Refusal};

/// As many named rates as are in sight at once beside the usual one, in one currency (ours).
pub const TAXES_MOST: usize = 5;
/// As many letters of a name as stand on a key (ours).
pub const TAX_NAME_MOST: usize = 24;

pub(super) fn decide(book: &Book, command: &MoneyCommand, act: &mut Act) -> Answer<()> {
    match command {
        MoneyCommand::NameTax(facts) => {
            check(book, facts)?;
            act.add(kind::TaxNamed { name: facts.name.trim().to_owned(), ..facts.clone() });
        }
        MoneyCommand::DropTax { tax } => {
            offered(book, *tax)?;
            act.add(kind::TaxDropped { tax: *tax });
        }
        MoneyCommand::SetJobTax(facts) => {
            let job = found(book, facts.job)?;
            if let Some(tax) = facts.tax {
                Some(offered(book, tax)?).filter(|named| named.currency == job.currency).ok_or(Refusal::NotThere)?;
            }
            act.add(facts.clone());
        }
        _ => {}
    }
    Ok(())
}

/// A named rate that was not dropped.
fn offered(book: &Book, tax: crate::quantity::Id) -> Answer<fold::NamedTax> {
    let workshop = fold::workshop(book);
    workshop.named_tax(TaxBy::Named(tax)).filter(|named| !named.dropped).cloned().ok_or(Refusal::NotThere)
}

fn check(book: &Book, facts: &kind::TaxNamed) -> Answer<()> {
    let name = facts.name.trim();
    let letters = name.chars().count();
    if letters == 0 {
        return Err(Refusal::NameMissing);
    }
    if TAX_NAME_MOST < letters {
        return Err(Refusal::NameTooLong { met: letters, most: TAX_NAME_MOST });
    }
    share(Some(facts.rate))?;
    if let Some(tax) = facts.tax {
        Some(offered(book, tax)?).filter(|named| named.currency == facts.currency).ok_or(Refusal::NotThere)?;
    }
    let workshop = fold::workshop(book);
    let others = || workshop.taxes_in(facts.currency).filter(|named| Some(named.id) != facts.tax);
    if others().any(|named| in_small(&named.name) == in_small(name)) {
        return Err(Refusal::TaxThere { name: name.to_owned() });
    }
    if TAXES_MOST <= others().count() {
        return Err(Refusal::TooManyTaxes { most: TAXES_MOST });
    }
    // With the card's fee it leaves something of a price.
    let till = workshop.tills.get(&facts.currency).cloned().unwrap_or_default();
    let tax = crate::money::tax::Tax { rate: facts.rate.0, ..till.sales_tax() };
    [Paid::Card, Paid::Bank, Paid::Notes].into_iter().try_for_each(|paid| Terms { tax, fee: till.fee_of(paid) }.take().map(drop))
}
