//! Figures: a key that shows one, and the pad that asks for it, with every refusal in its place.

use super::super::{Screen, Seen};
use super::say;
use crate::app::entry::Typed;
use crate::app::workshop::Tap;
use crate::app::workshop::figures::{Figure, blanks, unit};
use crate::app::{App, Msg, Notice};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::parts::pad as keys;
use crate::view::{El, el};
use crate::words::en::{common, costs as cost_words, refusal, workshop as words};
use fivebar_core::money::mileage::us;
use fivebar_core::quantity::reading::{self, Misread, Quantity, Sign};
use fivebar_core::quantity::{Currency, Decimal, Listed, Money, Units};
use fivebar_core::sheet::costs::wear;

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
    let under = words::ask_under(figure);
    let blanks = blanks(app);
    let after = if blanks.contains(&figure) { blanks.len().saturating_sub(1) } else { 0 };
    let after = (0 < after).then(|| el("p", "t14 i2").text(words::more_blanks(after)));
    let unit = match figure {
        Figure::Mileage => words::per_distance(currency.code(), units),
        _ => unit(figure, currency),
    };
    let asks = app.workshop.sure.as_ref() == Some(&typed.text);
    let main = el("main", "scr")
        .kids((!under.is_empty()).then(|| el("p", "").text(under)))
        .kids(after)
        .kid(keys::entry(&typed.text, &unit, typed.wrong.is_some() || refused(app).is_some()))
        .kids(why(typed, app, seen, units))
        .kids(asks.then(|| el("p", "why").attr("role", "alert").text(cost_words::is_it_so(&is_said(typed, currency, seen)))))
        .kids(proposed(figure, app, seen).filter(|_| typed.text.is_empty()))
        .kid(el("div", "push"))
        .kid(keys::pad(Some(sign), |press| say(Tap::Press(press))))
        .kid(done_key("key solid h88", if asks { cost_words::IT_IS_SO } else { common::DONE }, "", say(Tap::PadDone)))
        .kid(key("key h48", common::NOT_NOW, "", say(Tap::Close)));
    Screen::new("workshop/figure", head(Head::new(words::WORKSHOP, words::ask(figure, units))), main).says_it()
}

/// A pay for an hour that is asked about, as it was read.
fn is_said(typed: &Typed, currency: Currency, seen: Seen<'_>) -> String {
    let sum = reading::number(&typed.text, seen.speech.sign(), Decimal::ZERO..=Decimal::from(1_000_000));
    sum.ok().and_then(|sum| Money::book(sum, currency).ok()).map_or_else(|| typed.text.clone(), |sum| seen.speech.money(sum))
}

/// A figure from elsewhere, to be taken at a tap: what the tools wear this year, or what is published for a mile. Never unasked.
fn proposed(figure: Figure, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let ((currency, units), day) = (app.begins_with(), seen.now.day());
    let year = day.as_ymd().0;
    let (shown, under, reading) = match figure {
        Figure::Wear => {
            let worn = wear(&app.shelf().workshop(), currency, year).ok()??;
            (seen.speech.money(worn), cost_words::by_tools(&year.to_string()), Quantity::Money(worn))
        }
        Figure::Mileage if (currency, units) == (Currency::USD, Units::Inch) => {
            let rate = us(day)?;
            (seen.speech.number(rate, 2, 3), cost_words::published(&year.to_string()), Quantity::Number(rate))
        }
        _ => return None,
    };
    Some(key("key soft", shown, under, say(Tap::Take(reading))).key("proposed"))
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
