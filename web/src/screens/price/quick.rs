//! A piece that is not in the list: hours, spent, offered, and what is left for an hour.

use super::list::{how_paid, just_sold, rate as to_rate, undo};
use super::{Screen, Seen, bare, exact, per_hour, point};
use crate::app::price::quick::{Field, Quick, QuickTap, currency, leaves, parts};
use crate::app::price::{Tap, paid, shop};
use crate::app::{App, Msg};
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::notice::trouble;
use crate::parts::pad::pad;
use crate::screens::count::saved_fact;
use crate::screens::said;
use crate::view::{El, el};
use crate::words::en::{common, price as words, refusal};
use fivebar_core::quantity::{Currency, Decimal, Money, Units};
use fivebar_core::sheet::rate::rate;

fn say(tap: QuickTap) -> Msg {
    Msg::Price(Tap::Quick(tap))
}

const FIELDS: [(Field, &str); 3] = [(Field::Hours, words::HOURS), (Field::Spent, words::SPENT), (Field::Offer, words::OFFERED)];

/// Nothing is for sale yet: the three fields alone, as large as the screen.
pub fn day_one(app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(words::NOTHING_FOR_SALE, words::WHAT_IT_LEAVES)
        .fact(saved_fact(app, seen))
        .fact(Fact::Plain(common::ON_THIS_PHONE.into()));
    let quick = &app.price.quick;
    let boards = FIELDS.map(|(field, word)| {
        el("button", "board field1")
            .attr("type", "button")
            .on_tap(say(QuickTap::Choose(field)))
            .kid(el("span", "nm").text(word))
            .kid(figure(quick, field, seen))
    });
    let main = el("main", "price quick")
        .kids(just_sold(app, seen))
        .kid(el("p", "").text(words::THREE_FIGURES))
        .kids(boards)
        .kids(result(app, seen))
        .kid(el("div", "push"))
        .kid(el("p", "t14 i2").text(words::NOTHING_UNDER));
    let screen = Screen::new("price", head(top), main);
    match undo(app, seen) {
        Some(undo) => screen.foot(el("div", "foot").kid(undo)),
        None => screen,
    }
}

/// The three fields in a row.
pub fn fields(app: &App, seen: Seen<'_>) -> El<Msg> {
    let quick = &app.price.quick;
    let is_open = matches!(app.price.over, crate::app::price::Over::Quick);
    el("div", "g3 wide fields").kids(FIELDS.map(|(field, word)| {
        let chosen = is_open && quick.field == Some(field);
        let key = el("button", "key").attr("type", "button").on_tap(say(QuickTap::Choose(field)));
        let key = if is_open { key.attr("aria-pressed", if chosen { "true" } else { "false" }) } else { key };
        key.kid(el("span", "s").text(word)).kid(figure(quick, field, seen))
    }))
}

/// What was said or is being typed; a line where nothing was.
fn figure(quick: &Quick, field: Field, seen: Seen<'_>) -> El<Msg> {
    let typed = match field {
        Field::Hours => &quick.hours,
        Field::Spent => &quick.spent,
        Field::Offer => &quick.offer,
    };
    if quick.field == Some(field) && !typed.text.is_empty() {
        return el("span", if typed.wrong.is_some() { "t22 w8 c-under" } else { "t22 w8" }).text(typed.text.clone());
    }
    let said = match field {
        Field::Hours => quick.asked.hours.map(|hours| seen.speech.span(hours)),
        Field::Spent => quick.asked.spent.map(|sum| bare(sum, seen.speech)),
        Field::Offer => quick.asked.offer.map(|sum| bare(sum, seen.speech)),
    };
    said.map_or_else(|| el("span", "empty"), |said| el("span", "t22 w8").text(said))
}

/// The three fields with the pad.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let currency = currency(app);
    let quick = &app.price.quick;
    let top = Head::new(words::QUICK_UNDER, words::WHAT_IT_LEAVES);
    let wrong = [&quick.hours, &quick.spent, &quick.offer].into_iter().find_map(|typed| typed.wrong.as_ref());
    let all = quick.asked.hours.is_some() && quick.asked.spent.is_some() && quick.asked.offer.is_some() && quick.field.is_none();
    let main = el("main", "price quick")
        .kid(fields(app, seen))
        .kids(wrong.map(|why| el("p", "why").text(refusal::misread(why, seen.speech, Units::Metric))))
        .kids(result(app, seen))
        .kids(untaxed(app, currency))
        .kids(unrated(app, currency))
        .kid(el("div", "push"));
    let main = match all {
        true => main.kid(key("key", words::START_AGAIN, "", say(QuickTap::Clear))),
        false => main.kid(pad(Some(point(seen)), |press| Msg::Price(Tap::Press(press)))).kid(done_key(
            "key solid h88",
            common::DONE,
            "",
            say(QuickTap::Done),
        )),
    };
    Screen::new("price/quick", head(top), main.kid(key("key h48", words::TO_ALL, "", Msg::Price(Tap::Close))))
}

/// What is left for an hour, and how that compares with what an hour must earn.
fn result(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let left = match leaves(app) {
        Ok(left) => left?,
        Err(refusal) => return Some(trouble(said::refused(&refusal, seen))),
    };
    let like = Money::zero(currency(app));
    let after = left.after_workshop.map(|after| {
        el("p", "row t14 i2").kid(el("span", "").text(words::AFTER_WORKSHOP)).kid(el("span", "w7").text(per_hour(after, like, seen.speech)))
    });
    let row = el("p", "row").kid(el("span", "").text(words::PER_HOUR)).kid(el("b", "t22").text(per_hour(left.left, like, seen.speech)));
    Some(el("section", "card hot").kid(row).kids(taken_off(app, seen)).kids(after).kid(el("p", "w7").text(word(
        left.left,
        like.currency(),
        app,
        seen,
    ))))
}

/// What the offer loses before anything is left of it.
fn taken_off(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let parts = parts(app)?;
    let shown = |sum: Money| (!sum.is_zero()).then(|| exact(sum, seen.speech));
    let (tax, fee) = (shown(parts.tax), shown(parts.fee));
    let said = words::taken_off(paid(app), tax.as_deref(), fee.as_deref())?;
    Some(el("p", "t14 i2").text(said))
}

fn word(left: Decimal, currency: Currency, app: &App, seen: Seen<'_>) -> String {
    let hourly = rate(&shop(app), currency).hourly();
    let shown = |amount| per_hour(amount, Money::zero(currency), seen.speech);
    match (hourly.lowest_pay, hourly.your_rate) {
        _ if left < Decimal::ZERO => words::LESS_THAN_SPENT.to_owned(),
        (Some(lowest), _) if left < lowest => words::below_lowest(&shown(lowest)),
        (_, Some(rate)) if left < rate => words::below_rate(&shown(rate)),
        (_, Some(_)) => words::AT_RATE.to_owned(),
        (_, None) => words::RATE_NOT_SAID.to_owned(),
    }
}

/// Said once there is a result: nobody set how one is paid.
fn untaxed(app: &App, currency: Currency) -> Vec<El<Msg>> {
    let quiet = shop(app).workshop.tills.contains_key(&currency) || app.price.quick.field.is_some();
    if quiet { vec![] } else { vec![el("p", "t14").text(words::NO_TAX_NO_FEE), how_paid()] }
}

/// Once there is a result and no rate to hold it against, the way to say one.
fn unrated(app: &App, currency: Currency) -> Option<El<Msg>> {
    let has_result = leaves(app).is_ok_and(|left| left.is_some()) && app.price.quick.field.is_none();
    let has_rate = rate(&shop(app), currency).hourly().your_rate.is_some();
    (has_result && !has_rate).then(to_rate)
}
