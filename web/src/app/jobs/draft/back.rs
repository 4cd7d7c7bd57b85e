//! What goes back with pieces that were brought back: what came in for them, or nothing where their order is made good.

use super::super::super::App;
use super::{Draft, Picks, Typed, of_several};
use crate::app::form::Form;
use fivebar_core::ledger::fold::{AgreementState, ComesBack, Selling};
use fivebar_core::quantity::{Count, Id, Money};
use fivebar_core::sheet::job::JobSheet;

/// The agreement that a sale carried out is done with: with a refund it may come to nothing.
pub fn agreement_done(sheet: &JobSheet, sale: Id) -> bool {
    state(sheet, sale) == Some(AgreementState::Done)
}

/// Its order stands when pieces of a sale come back: what came in stays paid for what is handed over again.
pub fn is_made_good(sheet: &JobSheet, (sale, ends): (Id, bool)) -> bool {
    !ends && matches!(state(sheet, sale), Some(AgreementState::Done | AgreementState::Open))
}

fn state(sheet: &JobSheet, sale: Id) -> Option<AgreementState> {
    let agreed = sheet.selling.sale(sale)?.agreed?;
    sheet.selling.agreement(agreed).map(|agreement| agreement.state)
}

/// So many pieces of a sale, as they come back.
pub fn comes_back(app: &App, selling: &Selling, of: (Id, Count)) -> Option<ComesBack> {
    let currency = selling.sale(of.0)?.sum.currency();
    selling.comes_back(&app.shelf().shop(app.now.at).till(currency), of).ok()
}

/// A form about all of a sale.
pub(super) fn begin(draft: Draft, (sheet, sale): (&JobSheet, Id), typed: Typed) -> Draft {
    let (currency, ends) = (sheet.account.currency, agreement_done(sheet, sale));
    let came = sheet.selling.paid(currency, sale).ok();
    let sum = typed.sum(if is_made_good(sheet, (sale, ends)) { Some(Money::zero(currency)) } else { came });
    let n = sheet.selling.sale(sale).map(|sale| sale.n.to_string()).filter(|_| of_several(sheet, sale));
    let form = match n {
        Some(n) => Form::filled([sum, n]),
        None => Form::filled([sum]),
    };
    Draft { form, picks: Picks { ends, ..draft.picks }, ..draft }
}

/// What is proposed to go back for so many of its pieces.
pub(super) fn proposed(app: &App, sheet: &JobSheet, (sale, n, ends): (Id, Count, bool)) -> Option<Money> {
    let currency = sheet.account.currency;
    if is_made_good(sheet, (sale, ends)) {
        return Some(Money::zero(currency));
    }
    sheet.selling.came_for(currency, (sale, comes_back(app, &sheet.selling, (sale, n))?)).ok()
}
