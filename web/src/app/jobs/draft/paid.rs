//! How what is written of selling is paid.

use super::{Draft, PaidTo, What, goes_along_with};
use crate::app::App;
use crate::app::price::{in_coins, say_paid};
use fivebar_core::ledger::decide::PaidOf;
use fivebar_core::ledger::fold::Agreement;
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::quantity::{Decimal, Listed, Money};
use fivebar_core::sheet::job::JobSheet;

/// What a payment that is written is for; none where nothing was agreed or sold yet.
pub fn of(what: &What) -> Option<PaidOf> {
    match what {
        What::Sell(agreed) => agreed.map(PaidOf::Agreed),
        What::Pay(to) => Some((*to).into()),
        What::HandBack(over) => over.agreed.map(PaidOf::Agreed).or(over.sale.map(PaidOf::Sale)),
        _ => None,
    }
}

/// Paid later says nothing of how it is paid then.
pub fn pick(app: &mut App, paid: Option<Paid>) {
    if let Some((job, paid)) = app.jobs.open.zip(paid) {
        say_paid(app, (job, paid));
    }
    goes_along_with(app, |picks| picks.paid = paid);
}

/// The sum that is proposed where money comes in or goes back, as it is paid: in notes to the coin, else nobody could hand it over.
pub fn proposed(app: &App, sheet: &JobSheet, draft: &Draft) -> Option<Money> {
    let handed = |sum: Money| draft.picks.paid.map_or(sum, |paid| in_coins(app, paid, sum));
    match draft.what {
        What::Pay(to @ PaidTo::Gallery(_)) => due(sheet, to, &|sum| sum),
        What::Pay(to) => due(sheet, to, &handed),
        What::HandBack(over) => Some(handed(over.sum)),
        _ => None,
    }
}

/// What is due of what a payment is for, as it is handed over.
fn due(sheet: &JobSheet, to: PaidTo, handed: &dyn Fn(Money) -> Money) -> Option<Money> {
    let exact = match to {
        PaidTo::Sale(id) => sheet.sale.unpaid.iter().find(|(sale, _)| *sale == id).map(|(_, due)| *due),
        PaidTo::Part(_, lacks) => Some(lacks),
        PaidTo::Gallery(id) => {
            let dues = sheet.selling.gallery_dues(sheet.account.currency).ok()?;
            dues.into_iter().find(|due| due.of == id).map(|due| due.lacks)
        }
        PaidTo::Agreed(id) => sheet.selling.agreement(id).and_then(|it| next_in(sheet, it, handed)),
    };
    exact.map(handed)
}

/// What is next to come in for an agreement: of its parts the first that lacks, after what is owed of pieces before, else its deposit, else all that is due.
/// What lacks less than can be handed over waits for what comes next.
fn next_in(sheet: &JobSheet, agreement: &Agreement, handed: &dyn Fn(Money) -> Money) -> Option<Money> {
    let (selling, currency) = (&sheet.selling, sheet.account.currency);
    let lacking = |sum: &Money| Decimal::ZERO < handed(*sum).amount();
    let lacks = selling.parts_due(currency, agreement).ok()?.into_iter().map(|(_, lacks)| lacks).listed();
    let nth = lacks.iter().position(lacking);
    // The last takes what coins left of those before.
    let part = nth.filter(|nth| nth.saturating_add(1) < lacks.len()).and_then(|nth| lacks.get(nth).copied());
    let deposit = || selling.deposit_due(currency, agreement).ok();
    let part = part.and_then(|lacks| selling.asked_for_part(currency, agreement, lacks).ok());
    part.or_else(|| deposit().filter(lacking)).or_else(|| selling.still_due(currency, agreement).ok())
}
