//! Your rate: the stack of what an hour must earn, and the figures it is made of.

use super::super::{Screen, Seen};
use super::figures::{asked, per_cent};
use super::page;
use crate::app::workshop::figures::Figure;
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::stack::{Bracket, Part, stack};
use crate::view::{El, el};
use crate::words::en::workshop as words;
use fivebar_core::money::rate::Rate;
use fivebar_core::quantity::{Currency, Decimal, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::rate::{RateSheet, rate};

/// The page of the rate.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let (currency, _) = app.begins_with();
    let shop = Shop::of(&app.shelf().book, seen.now.at);
    let sheet = rate(&shop, currency);
    let refused = sheet.refused.as_ref().map(|refusal| {
        let said = crate::words::en::refusal::refused(refusal, seen.speech);
        el("p", "why").text(format!("{} {}", said.what, said.to_do))
    });
    let main = el("main", "scr")
        .kids(sheet.stack.map(|stack| drawn(&stack, currency, seen)))
        .kids(refused)
        .kids(sheet.stack.is_none().then(|| el("p", "").text(words::RATE_MISSING)))
        .kid(caution(words::RATE_IS_NO_WAGE))
        .kid(el("h2", "").text(words::CHANGE_A_FIGURE))
        .kid(el("div", "g2").kids(figures(&sheet, app, seen)));
    page(app, ("workshop/rate", words::YOUR_RATE), main, seen)
}

fn drawn(rate: &Rate, currency: Currency, seen: Seen<'_>) -> El<Msg> {
    let money = |amount: Decimal| Money::book(amount, currency).map(|sum| seen.speech.money(sum)).unwrap_or_default();
    let part = |name: &str, amount: Decimal, yours: bool| Part {
        name: name.into(),
        note: String::new(),
        figure: money(amount),
        share: f64::try_from(amount).unwrap_or_default(),
        yours,
    };
    let parts: Vec<Part> = [
        part(words::WEAR, rate.wear, false),
        part(words::OVERHEAD, rate.workshop, false),
        part(words::TAX, rate.tax, false),
        part(words::PROFIT, rate.profit, true),
        part(words::PAY, rate.pay, true),
    ]
    .into_iter()
    .filter(|part| 0.0 < part.share)
    .collect();
    let bracket = |word: &str, amount: Decimal| Bracket { word: word.into(), figure: money(amount) };
    let said = format!("{} {}", money(rate.per_hour), words::PER_LOGGED_HOUR);
    el("section", "rate")
        .kid(el("p", "").kid(el("b", "t30 w8").text(money(rate.per_hour))).kid(el("span", "").text(format!(" {}", words::PER_LOGGED_HOUR))))
        .kid(stack(&parts, (bracket(words::GOES_OUT, rate.goes_out), bracket(words::YOURS, rate.yours)), seen.page.column(), &said))
}

fn figures(sheet: &RateSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (currency, units) = app.begins_with();
    let said = &sheet.said;
    let money = |amount: Option<Decimal>| amount.and_then(|a| Money::book(a, currency).ok()).map(|sum| seen.speech.money(sum));
    let sum = |sum: Option<Money>| sum.map(|sum| seen.speech.short_money(sum));
    let number = |n: Option<Decimal>| n.map(|n| seen.speech.number(n, 0, 1));
    let share = |share: Option<Decimal>| share.map(|share| per_cent(share, seen));
    vec![
        asked(Figure::Pay, money(said.pay), units),
        asked(Figure::Lowest, money(said.lowest), units),
        asked(Figure::Hours, number(said.hours), units),
        asked(Figure::Logged, number(said.logged), units),
        asked(Figure::Costs, sum(said.costs), units),
        asked(Figure::Wear, sum(said.wear), units),
        asked(Figure::OwnTax, share(said.tax), units),
        asked(Figure::Profit, share(said.profit), units),
    ]
}
