//! How what is written of selling is paid.

use super::What;
use crate::app::App;
use crate::app::price::say_paid;
use fivebar_core::ledger::decide::PaidOf;
use fivebar_core::ledger::kind::sale::Paid;

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
    if let Some(draft) = &mut app.jobs.draft {
        draft.picks.paid = paid;
    }
}
