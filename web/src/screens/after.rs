//! After: what a good piece of the haul cost, and whether it beat the timber yard.

use super::Seen;
use crate::app::{App, Msg};
use crate::view::{El, el};
use crate::words::en::{after as words, common, worth};
use fivebar_core::haul::Haul;
use fivebar_core::quantity::{Currency, Decimal, Money, Span};
use fivebar_core::sheet::after::{AfterSheet, Cost, after};

/// The block on the haul's own page; none before something was sorted.
pub fn block(haul: &Haul, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let sheet = after(&app.shelf().shop(app.now.at), haul).ok()??;
    let rows = [
        (words::A_GOOD_PIECE, cost(sheet.piece, haul.currency, seen)),
        (words::measure(sheet.units), cost(sheet.measure, haul.currency, seen)),
        (words::TIMBER_YARD, yard(&sheet, seen)),
    ];
    let row = |(name, figure): (&'static str, String)| el("tr", "").kid(el("td", "").text(name)).kid(el("td", "n").text(figure));
    let unsorted =
        (0 < sheet.unsorted).then(|| words::unsorted(sheet.unsorted, &common::pieces(sheet.unsorted, &seen.speech.count(sheet.unsorted))));
    let how = sheet.yard.is_some().then(|| words::UNDER.to_owned());
    let no_drive = sheet.without_drive.then(|| worth::NO_DRIVE.to_owned());
    let lines = no_drive.into_iter().chain(unsorted).chain(sheet.lacking.iter().map(|one| words::lacking(*one).to_owned())).chain(how);
    let said = lines.map(|line| el("p", "t14 i2").text(line));
    Some(
        el("section", "card after")
            .kid(el("h2", "ink1 t17").text(words::AFTER))
            .kid(el("table", "facts").kid(el("tbody", "").kids(rows.map(row))))
            .kids(said),
    )
}

/// Money to the minor unit, minutes half up: as far as each is known.
fn cost(cost: Cost, currency: Currency, seen: Seen<'_>) -> String {
    let money = cost.money.and_then(|exact| Money::book(exact, currency).ok()).map(|sum| seen.speech.money(sum));
    let time = cost.time.map(|time| minutes(time, seen));
    match (money, time) {
        (Some(money), Some(time)) => words::both(&money, &time),
        (one, other) => one.or(other).unwrap_or_else(|| words::NOT_KNOWN.to_owned()),
    }
}

/// Under ten minutes a tenth matters.
fn minutes(time: Span, seen: Seen<'_>) -> String {
    let exact = Decimal::from(time.as_ms()) / Decimal::from(60_000);
    if exact < Decimal::TEN { format!("{} min", seen.speech.number(exact, 0, 1)) } else { seen.speech.span(time) }
}

fn yard(sheet: &AfterSheet, seen: Seen<'_>) -> String {
    let Some(worth) = sheet.yard else { return words::NOT_KNOWN.to_owned() };
    let sum = |amount: Decimal| Money::book(amount, worth.gain.currency()).map(|sum| seen.speech.money(sum)).unwrap_or_default();
    match worth.gain.amount() {
        gain if gain.is_zero() => words::EVEN.to_owned(),
        gain if worth.pays() => words::beat(&sum(gain)),
        gain => words::dearer(&sum(-gain)),
    }
}

#[cfg(test)]
mod tests;
