//! What goes back with pieces that were brought back: what came in for them, or nothing where they are made good.

use super::super::super::App;
use super::{Draft, Picks, Typed, What, of_several};
use crate::app::form::Form;
use fivebar_core::ledger::fold::{AgreementState, ComesBack, Selling};
use fivebar_core::quantity::{Count, Id, Money};
use fivebar_core::sheet::job::JobSheet;

/// The agreement that a sale carried out is done with: with a refund it may come to nothing.
pub fn agreement_done(selling: &Selling, sale: Id) -> bool {
    state(selling, sale) == Some(AgreementState::Done)
}

/// Others of the order of a sale are still to be handed over: it stands, whatever comes back.
pub fn agreement_open(selling: &Selling, sale: Id) -> bool {
    state(selling, sale) == Some(AgreementState::Open)
}

fn state(selling: &Selling, sale: Id) -> Option<AgreementState> {
    selling.agreement(selling.sale(sale)?.agreed?).map(|agreement| agreement.state)
}

/// So many pieces of a sale, as they come back.
pub fn comes_back(app: &App, selling: &Selling, of: (Id, Count)) -> Option<ComesBack> {
    let currency = selling.sale(of.0)?.sum.currency();
    selling.comes_back(&app.shelf().shop(app.now.at).till(currency), of).ok()
}

/// What came in ahead of an agreement and lies there; none where nothing does.
pub fn came_ahead(sheet: &JobSheet, agreed: Id) -> Option<Money> {
    sheet.selling.received_ahead(sheet.account.currency, agreed).ok().filter(|ahead| !ahead.is_zero())
}

/// What came in ahead of the agreement that is to come to nothing, as it is typed.
pub(super) fn ahead(app: &App) -> Option<String> {
    let What::Cancel(agreed) = app.jobs.draft.as_ref()?.what else { return None };
    let sheet = super::sheet(app)?.ok()?;
    let (sign, units) = (app.speech.sign(), sheet.account.units);
    Some(Typed { sign, units }.sum(Some(came_ahead(&sheet, agreed)?)))
}

/// A form about all of a sale.
pub(super) fn begin(draft: Draft, (sheet, sale): (&JobSheet, Id), typed: Typed) -> Draft {
    let (currency, ends) = (sheet.account.currency, !agreement_open(&sheet.selling, sale));
    let came = sheet.selling.paid(currency, sale).ok();
    let sum = typed.sum(if ends { came } else { Some(Money::zero(currency)) });
    let n = sheet.selling.sale(sale).map(|sale| sale.n.to_string()).filter(|_| of_several(sheet, sale));
    let form = match n {
        Some(n) => Form::filled([sum, n]),
        None => Form::filled([sum]),
    };
    Draft { form, picks: Picks { ends, ..draft.picks }, ..draft }
}

/// The buyer keeps it: what goes back for that is the maker's to say. Else the form is as it was opened.
pub(super) fn they_keep(app: &mut App, keep: bool) {
    let (sign, sheet) = (app.speech.sign(), super::sheet(app));
    let Some((Ok(sheet), draft)) = sheet.zip(app.jobs.draft.as_mut()) else { return };
    let What::Refund(sale) = draft.what else { return };
    draft.picks.they_keep = keep;
    let typed = Typed { sign, units: draft.picks.units };
    let was: Draft = (**draft).clone();
    **draft = if keep { Draft { form: Form::of(1), ..was } } else { begin(was, (&sheet, sale), typed) };
}

/// What is proposed to go back for so many of its pieces.
pub(super) fn proposed(app: &App, sheet: &JobSheet, (sale, n, ends): (Id, Count, bool)) -> Option<Money> {
    let currency = sheet.account.currency;
    if !ends {
        return Some(Money::zero(currency));
    }
    sheet.selling.came_for(currency, (sale, comes_back(app, &sheet.selling, (sale, n))?)).ok()
}
