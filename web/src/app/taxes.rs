//! What pieces are taxed with, as it is chosen: the usual rate, one under a name, or none.

use super::App;
use fivebar_core::ledger::fold::{Agreement, TaxBy};
use fivebar_core::money::tax::Tax;
use fivebar_core::quantity::reading::{self, Misread, Quantity, Sign};
use fivebar_core::quantity::{Currency, Id, Listed, Money, Side};

/// The tax of a currency, taken so.
pub fn tax(app: &App, currency: Currency, by: TaxBy) -> Tax {
    app.shelf().workshop().tax(currency, by)
}

/// Whether what was agreed is sold with tax: by that it was agreed with, else as its job is.
pub fn is_taxed(app: &App, agreement: Option<&Agreement>, (currency, by): (Currency, TaxBy)) -> bool {
    let spoken = agreement.and_then(|agreement| agreement.tax).map(TaxBy::Agreed);
    !tax(app, currency, spoken.unwrap_or(by)).rate.is_zero()
}

/// What can be chosen, and which of it is taken. Where the usual rate is none it stands for no tax.
pub fn choices(app: &App, currency: Currency, taken: TaxBy) -> Vec<(TaxBy, bool)> {
    let known = app.shelf().workshop();
    let usual_is_none = known.tax(currency, TaxBy::Usual).rate.is_zero();
    let taken = if usual_is_none && taken == TaxBy::Untaxed { TaxBy::Usual } else { taken };
    let named = known.taxes_in(currency).map(|named| TaxBy::Named(named.id));
    let none = (!usual_is_none).then_some(TaxBy::Untaxed);
    let mut all = std::iter::once(TaxBy::Usual).chain(named).chain(none).listed();
    // What was agreed is the same choice where it is the same rate on the same side.
    let same = |by: &TaxBy| matches!(taken, TaxBy::Agreed(tax) if known.tax(currency, *by) == tax);
    let taken = all.iter().copied().find(same).unwrap_or(taken);
    // One that is offered no more, or that was agreed, can be left and is still seen.
    let other = Some(taken).filter(|taken| !all.contains(taken));
    all.extend(other);
    all.into_iter().map(|by| (by, by == taken)).listed()
}

/// Rates under a name are kept: the choice is more than the usual rate or none.
pub fn has_named(app: &App, currency: Currency) -> bool {
    app.shelf().workshop().taxes_in(currency).next().is_some()
}

/// What was chosen, in one word that is read again; "own" where nothing was.
pub fn written(by: Option<TaxBy>) -> String {
    match by {
        None => "own".to_owned(),
        Some(TaxBy::Usual) => "usual".to_owned(),
        Some(TaxBy::Untaxed) => "none".to_owned(),
        Some(TaxBy::Named(id)) => id.to_string(),
        Some(TaxBy::Agreed(tax)) => format!("{}:{}", tax.rate, if tax.is_on_top() { "top" } else { "inside" }),
    }
}

/// What was chosen, as it was written; none where it can't be read.
pub fn read(word: &str) -> Option<Option<TaxBy>> {
    match (word, word.split_once(':')) {
        ("own", _) => Some(None),
        ("usual", _) => Some(Some(TaxBy::Usual)),
        ("none", _) => Some(Some(TaxBy::Untaxed)),
        (_, None) => Id::read(word).map(|id| Some(TaxBy::Named(id))),
        (_, Some((rate, side))) => {
            let side = if side == "top" { Side::Top } else { Side::Inside };
            Some(Some(TaxBy::Agreed(Tax { rate: rate.parse().ok()?, side })))
        }
    }
}

/// A sum as it was typed, with the tax that is to be added to it.
///
/// # Errors
/// What is wrong with it; past the limit with its tax, too.
pub fn charged(text: &str, (currency, sign): (Currency, Sign), adds: Option<Tax>) -> Result<Money, Misread> {
    let sum = reading::money(text, currency, sign)?;
    let (least, most) = (Quantity::Money(Money::zero(currency)), Quantity::Money(Money::most(currency)));
    let out = || Misread::OutOfRange { met: None, least, most, might_be: None };
    adds.map_or(Ok(sum), |tax| tax.charge(sum).map_err(|_| out()))
}
