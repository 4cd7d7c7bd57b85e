//! Lines about rates of sales tax: one is named, changed or dropped; a job takes one.

use super::words::{Read, Words};
use super::{Teller, Told};
use crate::ledger::decide::{Command, MoneyCommand};
use crate::ledger::fold::{TaxBy, workshop};
use crate::ledger::kind::Exact;
use crate::ledger::kind::money::{JobTaxSet, TaxNamed};
use crate::money::tax::Tax;
use crate::quantity::{Currency, Side};

pub const VERBS: [&str; 3] = ["tax-rate", "drop-tax", "job-tax"];

pub fn tell(teller: &mut Teller, verb: &str, words: &mut Words) -> Told {
    let command = match verb {
        "tax-rate" => MoneyCommand::NameTax(named(teller, words)?),
        "drop-tax" => MoneyCommand::DropTax { tax: teller.story.names.said_mark(words)? },
        _ => {
            let job = teller.story.names.said_job(words)?;
            let (tax, untaxed) = match by(teller, words)? {
                TaxBy::Named(id) => (Some(id), None),
                TaxBy::Untaxed => (None, Some(true)),
                TaxBy::Usual | TaxBy::Agreed(_) => (None, None),
            };
            MoneyCommand::SetJobTax(JobTaxSet { job, tax, untaxed })
        }
    };
    teller.order(&Command::Money(command)).map(drop)
}

/// `tax-rate "Plants" 0.07 inside changes food`.
fn named(teller: &Teller, words: &mut Words) -> Read<TaxNamed> {
    let (name, rate) = (words.text()?, Exact(words.number()?.normalize()));
    let side = words.maybe(|word| match word {
        "inside" => Some(Side::Inside),
        "top" => Some(Side::Top),
        _ => None,
    });
    let tax = if words.has("changes") { Some(teller.story.names.said_mark(words)?) } else { None };
    Ok(TaxNamed { currency: teller.workshop.0, name, rate, side, tax })
}

/// `usual`, `none`, or a rate by the name a line gave it.
fn by(teller: &Teller, words: &mut Words) -> Read<TaxBy> {
    match () {
        () if words.has("usual") => Ok(TaxBy::Usual),
        () if words.has("none") => Ok(TaxBy::Untaxed),
        () => teller.story.names.said_mark(words).map(TaxBy::Named),
    }
}

/// `tax none`: what one sale is taxed with, where that is not as its job is.
pub fn spoken(teller: &Teller, (words, currency): (&mut Words, Currency)) -> Read<Option<Tax>> {
    if !words.has("tax") {
        return Ok(None);
    }
    let by = by(teller, words)?;
    Ok(Some(workshop(&teller.story.book).tax(currency, by)))
}
