//! The tag of a piece, and where the maker would gladly settle, heard.

use super::{Done, Over, done, shop};
use crate::app::App;
use crate::app::entry::Typed;
use fivebar_core::ledger::decide::{Command, MoneyCommand, Now};
use fivebar_core::quantity::{Id, Money, reading};

/// Which of the two is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    Tag,
    Settle,
}

/// A price being typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    pub job: Id,
    pub what: What,
    pub typed: Typed,
}

/// What can be said of tag and settle.
#[derive(Clone, Debug, PartialEq)]
pub enum TagTap {
    Open(Id, What),
    /// This price, as proposed.
    Take(Money),
    /// No settle of the maker's own any more.
    Unsettle,
    Done,
}

/// Takes in a price that is set.
pub fn heard(app: &mut App, tap: TagTap, now: Now) {
    match tap {
        TagTap::Open(job, what) => app.price.open(Over::Tag(Box::new(Setting { job, what, typed: Typed::default() }))),
        TagTap::Take(sum) => set(app, Some(sum), now),
        TagTap::Unsettle => set(app, None, now),
        TagTap::Done => typed(app, now),
    }
}

fn typed(app: &mut App, now: Now) {
    let sign = app.speech.sign();
    let Over::Tag(setting) = &app.price.over else { return };
    let Ok(job) = shop(app).job(setting.job) else { return };
    let currency = job.currency;
    let Over::Tag(setting) = &mut app.price.over else { return };
    if let Some(sum) = setting.typed.take(|text| reading::money(text, currency, sign)) {
        set(app, Some(sum), now);
    }
}

fn set(app: &mut App, sum: Option<Money>, now: Now) {
    let Over::Tag(setting) = &app.price.over else { return };
    let (job, what) = (setting.job, setting.what);
    let (command, what) = match (what, sum) {
        (What::Tag, Some(sum)) => (MoneyCommand::SetTag { job, sum }, Done::Tagged(sum)),
        (What::Settle, sum) => (MoneyCommand::SetSettle { job, sum }, Done::Settled),
        (What::Tag, None) => return,
    };
    if done(app, &Command::Money(command), (job, what), now) {
        app.price.close();
    }
}
