//! Rates of sales tax under a name, heard: written down, changed and dropped in a form of their own.

use super::super::App;
use super::super::form::Form;
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now};
use fivebar_core::ledger::fold::TaxBy;
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::money::TaxNamed;
use fivebar_core::quantity::{Decimal, Id, Side, reading, writing};

/// A rate that is being written down, or changed.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    pub form: Form,
    pub name: String,
    pub nameless: bool,
    pub side: Side,
    /// The one that is changed.
    pub of: Option<Id>,
}

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum TaxTap {
    New,
    Open(Id),
    Name(String),
    Side(Side),
    At(usize),
    Press(Press),
    Save,
    Drop,
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: TaxTap, now: Now) {
    let sign = app.speech.sign();
    app.notice = None;
    match tap {
        TaxTap::New => open(app, None),
        TaxTap::Open(id) => open(app, Some(id)),
        TaxTap::Save => save(app, now),
        TaxTap::Drop => drop_it(app, now),
        TaxTap::Name(name) => with(app, |draft| (draft.name, draft.nameless) = (name, false)),
        TaxTap::Side(side) => with(app, |draft| draft.side = side),
        TaxTap::At(nth) => with(app, |draft| draft.form.go(nth)),
        TaxTap::Press(press) => with(app, |draft| draft.form.press(press, sign)),
    }
}

fn with(app: &mut App, act: impl FnOnce(&mut Draft)) {
    if let Some(draft) = &mut app.workshop.tax {
        act(draft);
    }
}

fn open(app: &mut App, of: Option<Id>) {
    let (known, sign) = (app.shelf().workshop(), app.speech.sign());
    let named = of.and_then(|id| known.named_tax(TaxBy::Named(id)));
    let usual = known.tax(app.begins_with().0, TaxBy::Usual).side;
    let percent = |rate: Decimal| writing::decimal(rate.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default().normalize(), sign);
    let form = Form::filled([named.map(|named| percent(named.rate)).unwrap_or_default()]);
    let side = named.and_then(|named| named.side).unwrap_or(usual);
    let name = named.map(|named| named.name.clone()).unwrap_or_default();
    app.workshop.tax = Some(Box::new(Draft { form, name, nameless: false, side, of }));
}

fn save(app: &mut App, now: Now) {
    let (currency, sign) = (app.begins_with().0, app.speech.sign());
    let Some(draft) = &mut app.workshop.tax else { return };
    draft.nameless = draft.name.trim().is_empty();
    let Some(percent) = draft.form.take(0, |text| reading::percent(text, sign)) else { return };
    let rate = Exact(percent.checked_div(Decimal::ONE_HUNDRED).unwrap_or_default().normalize());
    let facts = TaxNamed { currency, name: draft.name.trim().to_owned(), rate, side: Some(draft.side), tax: draft.of };
    if !draft.nameless && app.order(&Command::Money(MoneyCommand::NameTax(facts)), now).is_some() {
        app.workshop.tax = None;
    }
}

fn drop_it(app: &mut App, now: Now) {
    let Some(tax) = app.workshop.tax.as_ref().and_then(|draft| draft.of) else { return };
    if app.order(&Command::Money(MoneyCommand::DropTax { tax }), now).is_some() {
        app.workshop.tax = None;
    }
}
