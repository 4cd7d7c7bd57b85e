//! Figures: a key that shows one, and the pad that asks for it, with every refusal in its place.

use super::super::spent_on::{choice, spent_key};
use super::super::{Screen, Seen};
use super::say;
use crate::app::entry::Typed;
use crate::app::workshop::Tap;
use crate::app::workshop::figures::{Figure, blanks, unit};
use crate::app::{App, Msg, Notice};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{figure_key, key};
use crate::parts::pad as keys;
use crate::view::{El, el};
use crate::words::en::{common, refusal, workshop as words};
use fivebar_core::quantity::reading::{Misread, Quantity, Sign};
use fivebar_core::quantity::{Decimal, Listed, Units};

/// A key that shows a figure and asks for it.
pub fn asked(figure: Figure, shown: Option<String>, units: Units) -> El<Msg> {
    let shown = shown.unwrap_or_else(|| words::NOT_SAID.to_owned());
    figure_key(words::figure(figure, units), shown, say(Tap::Figure(figure))).key(words::figure(figure, units))
}

/// Per cent of a share.
pub fn per_cent(share: Decimal, seen: Seen<'_>) -> String {
    let number = share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default();
    crate::words::en::count::percent(&seen.speech.number(number, 0, 3))
}

/// The pad for a figure.
pub fn pad(figure: Figure, typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let (currency, units) = app.begins_with();
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let spent = matches!(figure, Figure::Spent(_));
    let what = spent.then(|| in_words(app));
    let under = words::ask_under(figure);
    let on = app.workshop.spent_on;
    let blanks = blanks(app);
    let after = if blanks.contains(&figure) { blanks.len().saturating_sub(1) } else { 0 };
    let after = (0 < after).then(|| el("p", "t14 i2").text(words::more_blanks(after)));
    let pad = || vec![keys::pad(Some(sign), |press| say(Tap::Press(press)))];
    let chosen = if spent && on.asks { choice(on, |tap| say(Tap::SpentOn(tap)), seen) } else { pad() };
    let unit = match figure {
        Figure::Mileage => words::per_distance(currency.code(), units),
        _ => unit(figure, currency),
    };
    let main = el("main", "scr")
        .kids((!under.is_empty()).then(|| el("p", "").text(under)))
        .kids(after)
        .kids(what.map(|what| el("div", "g2 low").kid(what).kid(spent_key(on, |tap| say(Tap::SpentOn(tap)), seen))))
        .kid(keys::entry(&typed.text, &unit, typed.wrong.is_some() || refused(app).is_some()))
        .kids(why(typed, app, seen, units))
        .kid(el("div", "push"))
        .kids(chosen)
        .kid(key("key solid h88", common::DONE, "", say(Tap::PadDone)))
        .kid(key("key h48", common::NOT_NOW, "", say(Tap::Close)));
    let small = if spent { words::figure(figure, units) } else { words::WORKSHOP };
    Screen::new("workshop/figure", head(Head::new(small, words::ask(figure, units))), main).says_it()
}

fn in_words(app: &App) -> El<Msg> {
    let value = app.workshop.text.clone();
    let asked = Field { id: "what-for", label: words::IN_YOUR_WORDS.into(), value, keyboard: Keyboard::Words, ..Field::default() };
    field(asked, |text| say(Tap::Typed(text)))
}

fn refused(app: &App) -> Option<&fivebar_core::refusal::Refusal> {
    match &app.notice {
        Some(Notice::Refused(refusal)) => Some(refusal),
        _ => None,
    }
}

/// Why it was not taken, and the readings it may have as keys.
fn why(typed: &Typed, app: &App, seen: Seen<'_>, units: Units) -> Vec<El<Msg>> {
    if let Some(refusal) = refused(app) {
        let said = refusal::refused(refusal, seen.speech);
        return vec![el("p", "why").attr("role", "alert").text(format!("{} {}", said.what, said.to_do))];
    }
    let Some(wrong) = &typed.wrong else { return vec![] };
    let said = el("p", "why").attr("role", "alert").text(refusal::misread(wrong, seen.speech, units));
    let readings = readings(wrong);
    let keys = (!readings.is_empty()).then(|| {
        el("div", "g2").kids(readings.into_iter().map(|reading| {
            let name = refusal::quantity_said(&reading, seen.speech, units);
            key("key t22", name, "", say(Tap::Take(reading)))
        }))
    });
    std::iter::once(said).chain(keys).listed()
}

/// What a figure that was not taken may mean.
fn readings(wrong: &Misread) -> Vec<Quantity> {
    match wrong {
        Misread::Ambiguous { grouped, decimal } => vec![*grouped, *decimal],
        Misread::TooFine { nearest } => vec![*nearest],
        Misread::OutOfRange { might_be: Some(other), .. } | Misread::NotWhole { might_be: Some(other), .. } => vec![*other],
        _ => vec![],
    }
}
