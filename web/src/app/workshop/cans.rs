//! A can or pack that is opened in the workshop, heard: jobs are charged for what they use of it.

use super::super::App;
use super::super::form::Form;
use super::super::order::{Feel, Order};
use super::super::spent_on::SpentOn;
use crate::app::jobs::cans::{OfCan, is_meant};
use crate::parts::pad::Press;
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now};
use fivebar_core::ledger::kind::Exact;
use fivebar_core::ledger::kind::money::PackOpened;
use fivebar_core::money::pack::Measure;
use fivebar_core::quantity::reading;
use fivebar_core::quantity::{Decimal, Key, Money};
use fivebar_core::sheet::costs::is_asked;

/// What comes in cans and packs, by the keys of spending.
pub const KINDS: [&str; 8] = ["finish", "glue", "discs", "bolts", "felt", "pads", "packing", "other"];
/// The most a can or pack holds, in its unit.
const HOLDS_MOST: i64 = 1_000_000;

/// A can that is being written down: how much it holds, and what it cost.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    pub form: Form,
    pub name: String,
    /// What it is; asked where it is not said.
    pub kind: Option<Key>,
    pub unit: Option<Key>,
    /// It was to be saved before it was said what it is.
    pub kindless: bool,
    /// Its price is far from the usual: it is asked about once.
    pub asks: Option<(Money, Measure)>,
    /// Done has asked where its kind belongs; the next Done leaves that open.
    pub is_home_put: bool,
}

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum CanTap {
    New,
    /// Those that are used up are shown, or no more.
    UsedUp,
    Name(String),
    Kind(Key),
    Unit(Key),
    At(usize),
    Press(Press),
    Save,
}

/// Takes in a tap.
pub fn heard(app: &mut App, tap: CanTap, now: Now) {
    let sign = app.speech.sign();
    app.notice = None;
    match tap {
        CanTap::New => begin(app),
        CanTap::UsedUp => app.workshop.used_up = !app.workshop.used_up,
        CanTap::Save => save(app, now),
        tap => {
            let Some(draft) = &mut app.workshop.can else { return };
            draft.asks = None;
            match tap {
                CanTap::Name(name) => draft.name = name,
                CanTap::Kind(kind) => (draft.kind, draft.kindless, draft.is_home_put) = (Some(kind), false, false),
                CanTap::Unit(unit) => draft.unit = Some(unit),
                CanTap::At(nth) => draft.form.go(nth),
                CanTap::Press(press) => draft.form.press(press, sign),
                CanTap::New | CanTap::UsedUp | CanTap::Save => {}
            }
        }
    }
}

fn begin(app: &mut App) {
    let unit = OfCan::of(app.begins_with().1).unit;
    let draft = Draft { form: Form::of(2), name: String::new(), kind: None, unit, kindless: false, asks: None, is_home_put: false };
    (app.workshop.can, app.workshop.spent_on) = (Some(Box::new(draft)), SpentOn::default());
}

fn save(app: &mut App, now: Now) {
    let Some(mut draft) = app.workshop.can.take() else { return };
    let said = read(app, &mut draft, now);
    draft.kindless = draft.kind.is_none();
    if said.is_some() && is_home_open(app, &draft) && !draft.is_home_put {
        (draft.is_home_put, app.workshop.spent_on.asks) = (true, false);
        app.workshop.can = Some(draft);
        return app.orders.push(Order::Feel(Feel::Refused));
    }
    let is_meant = said.as_ref().is_none_or(|pack| is_meant(&mut draft.asks, pack));
    app.workshop.can = Some(draft);
    let Some(pack) = said.filter(|_| is_meant) else { return };
    if app.order(&Command::Money(MoneyCommand::OpenCan { pack, takes: None }), now).is_some() {
        (app.workshop.can, app.workshop.spent_on) = (None, SpentOn::default());
    }
}

/// Whether nobody has said yet where what is in it belongs, and it can be of either.
pub fn is_home_open(app: &App, draft: &Draft) -> bool {
    draft.kind.as_ref().is_some_and(|kind| is_asked(&app.shelf().workshop(), app.begins_with().0, kind))
}

/// The form as it was typed; a figure that can't be comes under the thumb.
fn read(app: &App, draft: &mut Draft, now: Now) -> Option<PackOpened> {
    let (currency, sign) = (app.begins_with().0, app.speech.sign());
    let holds = draft.form.take(0, |text| reading::number(text, sign, Decimal::ZERO..=Decimal::from(HOLDS_MOST)))?;
    let sum = draft.form.take(1, |text| reading::money(text, currency, sign))?;
    let (kind, unit) = (draft.kind.clone()?, draft.unit.clone()?);
    let name = draft.name.trim();
    let usual = || crate::words::en::jobs::upper_first(&crate::words::en::job::spending(kind.as_str()));
    let what = if name.is_empty() { usual() } else { name.to_owned() };
    Some(PackOpened { what, kind, sum, of: Exact(holds), unit, when: app.workshop.spent_on.when(now) })
}
