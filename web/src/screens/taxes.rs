//! What pieces are taxed with, as chips: one tap changes it.

use super::Seen;
use super::workshop::per_cent;
use crate::app::taxes::{choices, tax};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::view::{El, el};
use crate::words::en::taxes as words;
use fivebar_core::ledger::fold::TaxBy;
use fivebar_core::quantity::{Currency, Listed, Side};

/// The rates there are; none where there is nothing to choose.
pub fn chips(app: &App, (currency, taken): (Currency, TaxBy), seen: Seen<'_>, say: impl Fn(TaxBy) -> Msg) -> Option<El<Msg>> {
    let all = choices(app, currency, taken);
    let shown = all.iter().map(|(by, chosen)| {
        let (word, under) = worded(app, (currency, *by), seen);
        Chip::choice(word, *chosen).under(under)
    });
    let shown = shown.listed();
    (1 < all.len()).then(|| flowing("key h56", shown, |nth| say(all.get(nth).map_or(TaxBy::Usual, |(by, _)| *by))))
}

/// What one sale is taxed with, where there is a choice.
pub fn of_sale(app: &App, taken: (Currency, TaxBy), seen: Seen<'_>, say: impl Fn(TaxBy) -> Msg) -> Vec<El<Msg>> {
    let titled = |chips: El<Msg>| vec![el("h2", "").text(words::TAX_OF_SALE), chips.attr("aria-label", words::TAX_OF_SALE)];
    chips(app, taken, seen, say).map(titled).unwrap_or_default()
}

fn worded(app: &App, (currency, by): (Currency, TaxBy), seen: Seen<'_>) -> (String, String) {
    let tax = tax(app, currency, by);
    let rate = || per_cent(tax.rate, seen);
    let is_none = tax.rate.is_zero();
    let on_top = tax.side == Side::Top;
    match by {
        TaxBy::Untaxed => (words::NO_TAX.to_owned(), String::new()),
        TaxBy::Usual if is_none => (words::NO_TAX.to_owned(), words::USUAL.to_owned()),
        TaxBy::Agreed(_) if is_none => (words::NO_TAX.to_owned(), words::AGREED.to_owned()),
        TaxBy::Usual => (rate(), words::stands(words::USUAL, on_top)),
        TaxBy::Agreed(_) => (rate(), words::stands(words::AGREED, on_top)),
        TaxBy::Named(_) => {
            (app.shelf().workshop().named_tax(by).map(|named| named.name.clone()).unwrap_or_default(), words::rate_at(&rate(), on_top))
        }
    }
}

/// What a piece is taxed with that is not taxed as usual.
pub fn not_usual(app: &App, (currency, by): (Currency, TaxBy), seen: Seen<'_>) -> Option<String> {
    let known = app.shelf().workshop();
    match by {
        TaxBy::Usual | TaxBy::Agreed(_) => None,
        TaxBy::Untaxed if known.tax(currency, TaxBy::Usual).rate.is_zero() => None,
        TaxBy::Untaxed => Some(words::not_usual(None)),
        TaxBy::Named(_) => {
            let named = known.named_tax(by)?;
            Some(words::not_usual(Some((&named.name, &per_cent(named.rate, seen)))))
        }
    }
}
