//! A piece that is no job, heard: hours, spent, offered. Nothing of it is written.

use super::{Over, paid, shop};
use crate::app::App;
use crate::app::entry::Typed;
use fivebar_core::money::left::PerHour;
use fivebar_core::quantity::reading::{self, Sign};
use fivebar_core::quantity::{Currency, Span};
use fivebar_core::refusal::Answer;
use fivebar_core::sheet::price::{NotListed, not_listed, not_listed_parts};
use fivebar_core::sheet::promised::Parts;

/// One of the three fields.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    Hours,
    Spent,
    Offer,
}

/// What was typed into the three fields.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Quick {
    pub hours: Typed,
    pub spent: Typed,
    pub offer: Typed,
    /// The field under the thumb.
    pub field: Option<Field>,
    pub asked: NotListed,
}

/// What can be said of it.
#[derive(Clone, Debug, PartialEq)]
pub enum QuickTap {
    /// A field, from the list or beside the pad.
    Choose(Field),
    Done,
    /// All three empty again.
    Clear,
}

impl Quick {
    /// The text under the thumb.
    pub fn typed(&mut self) -> Option<&mut Typed> {
        Some(match self.field? {
            Field::Hours => &mut self.hours,
            Field::Spent => &mut self.spent,
            Field::Offer => &mut self.offer,
        })
    }
}

/// The currency of day one: as the workshop has it, else as the phone's language suggests.
pub fn currency(app: &App) -> Currency {
    app.begins_with().0
}

/// What it leaves for an hour, with what is being typed; none until all three are said, or while what is typed is no figure.
///
/// # Errors
/// As the sheet.
pub fn leaves(app: &App) -> Answer<Option<PerHour>> {
    now(app).map_or(Ok(None), |asked| not_listed(&shop(app), paid(app), asked))
}

/// What of the offer goes out first: tax and fee; none before an offer.
pub fn parts(app: &App) -> Option<Parts> {
    not_listed_parts(&shop(app), paid(app), now(app)?.offer?).ok()
}

/// What stands in the three fields, to the last digit typed: what an hour leaves is never of a figure that is no longer seen. Hours of nothing
/// are the beginning of half an hour, while they are typed.
fn now(app: &App) -> Option<NotListed> {
    let mut quick = app.price.quick.clone();
    let is_typed = quick.field == Some(Field::Hours) && !quick.hours.text.is_empty();
    let is_read = read(&mut quick, (currency(app), app.speech.sign()));
    let is_begun = is_typed && quick.asked.hours.is_some_and(|hours| hours <= Span::ZERO);
    (is_read && !is_begun).then_some(quick.asked)
}

/// Takes in what is said of a piece that is no job.
pub fn heard(app: &mut App, tap: QuickTap) {
    match tap {
        QuickTap::Choose(field) => {
            if take(app) {
                app.price.quick.field = Some(field);
                // What was said before stands until something else is typed.
                app.price.quick.typed().into_iter().for_each(|typed| *typed = Typed::default());
            }
            if !matches!(app.price.over, Over::Quick) {
                app.price.open(Over::Quick);
            }
        }
        QuickTap::Done => {
            if take(app) {
                app.price.quick.field = next(&app.price.quick);
            }
        }
        QuickTap::Clear => app.price.quick = Quick { field: Some(Field::Hours), ..Quick::default() },
    }
}

/// The first field nobody answered.
fn next(quick: &Quick) -> Option<Field> {
    let open = [
        (Field::Hours, quick.asked.hours.is_none()),
        (Field::Spent, quick.asked.spent.is_none()),
        (Field::Offer, quick.asked.offer.is_none()),
    ];
    open.into_iter().find(|(_, is_open)| *is_open).map(|(field, _)| field)
}

/// The most hours of one piece.
const MOST: i64 = 10_000;

/// Reads the field under the thumb; an empty one stays as it was. False where what was typed is no figure.
fn take(app: &mut App) -> bool {
    let by = (currency(app), app.speech.sign());
    read(&mut app.price.quick, by)
}

fn read(quick: &mut Quick, (currency, sign): (Currency, Sign)) -> bool {
    let Some(field) = quick.field else { return true };
    let Some(typed) = quick.typed() else { return true };
    if typed.text.is_empty() {
        return true;
    }
    let money = |text: &str| reading::money(text, currency, sign);
    // A bare number is hours: that is what is asked.
    let hours = |text: &str| reading::span(&format!("{text} h"), sign, Span::minutes(MOST.saturating_mul(60)));
    match field {
        Field::Hours => quick.hours.take(hours).map(|hours| quick.asked.hours = Some(hours)),
        Field::Spent => quick.spent.take(money).map(|sum| quick.asked.spent = Some(sum)),
        Field::Offer => quick.offer.take(money).map(|sum| quick.asked.offer = Some(sum)),
    }
    .is_some()
}
