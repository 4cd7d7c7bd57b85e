//! Spending of a can or pack: one that is open, or one that is opened now and counted from then on.

use super::super::App;
use super::super::form::Form;
use super::draft::Way;
use fivebar_core::ledger::fold::Can;
use fivebar_core::ledger::kind::money::PackOpened;
use fivebar_core::money::pack::{Measure, unusual};
use fivebar_core::quantity::{Currency, Decimal, Id, Key, Listed, Money, Units};

/// Units cans and packs are counted in, by their keys in the book.
pub const UNITS: [&str; 8] = ["ml", "l", "fl-oz", "g", "kg", "oz", "m", "pieces"];

/// The can a share is of.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OfCan {
    /// One that is open.
    pub picked: Option<Id>,
    /// What was used of it is said as a part of a full one, in per cent.
    pub by_part: bool,
    /// What is left of a new one is counted.
    pub keeps: bool,
    /// What comes back goes into the can again; else it is money.
    pub back: bool,
    /// None only where a key could not be spelled, which it always can.
    pub unit: Option<Key>,
    /// Its price is far from the usual: it is asked about once.
    pub asks: Option<(Money, Measure)>,
}

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum CanTap {
    /// Some of this one; of another, where it is none.
    Of(Option<Id>),
    Keeps(bool),
    /// It goes back into the can, or it is money.
    Back(bool),
    /// A part of a full one is typed, or an amount.
    ByPart(bool),
    Unit(Key),
}

impl OfCan {
    /// No can yet.
    pub fn of(units: Units) -> OfCan {
        let unit = if units == Units::Inch { "fl-oz" } else { "ml" };
        OfCan { unit: Key::read(unit), ..OfCan::default() }
    }

    /// Count is kept of what it is of.
    pub fn is_counted(&self) -> bool {
        self.picked.is_some() || self.keeps
    }
}

/// Cans with something in them, in a currency, the latest opened first.
pub fn open(app: &App, currency: Currency) -> Vec<Can> {
    let known = app.shelf().workshop();
    known.cans.iter().rev().filter(|can| can.paid.currency() == currency && !can.left().is_zero()).cloned().listed()
}

/// What the can that is used of holds when it is full.
pub fn holds(app: &App, of: &OfCan) -> Option<Decimal> {
    let picked = of.picked?;
    app.shelf().workshop().cans.iter().find(|can| can.id == picked).map(|can| can.holds)
}

/// Whether a can may be written down: a price that is far from the usual is asked about once, and taken when it is said again.
pub fn is_meant(asks: &mut Option<(Money, Measure)>, pack: &PackOpened) -> bool {
    let price = unusual(pack.sum, pack.of.0, &pack.unit);
    let was = std::mem::replace(asks, price);
    price.is_none() || was == price
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: CanTap) {
    let cans = app.shelf().workshop().cans.clone();
    let Some(draft) = &mut app.jobs.draft else { return };
    let picks = &mut draft.picks;
    picks.can.asks = None;
    match tap {
        CanTap::Of(id) => {
            let can = cans.into_iter().find(|can| Some(can.id) == id);
            (picks.way, picks.can.picked, picks.can.keeps) = (Way::Share, can.as_ref().map(|can| can.id), false);
            (picks.can.by_part, picks.home) = (false, super::homes::AskedHome::default());
            draft.form = Form::of(if can.is_some() { 1 } else { 3 });
            picks.spending = can.map(|can| can.kind).or(picks.spending.take());
            picks.more = picks.spending.is_none();
        }
        CanTap::Keeps(keeps) => picks.can.keeps = keeps,
        CanTap::Back(back) => (picks.can.back, draft.form) = (back, Form::of(1)),
        CanTap::ByPart(by_part) => (picks.can.by_part, draft.form) = (by_part, Form::of(1)),
        CanTap::Unit(unit) => picks.can.unit = Some(unit),
    }
}
