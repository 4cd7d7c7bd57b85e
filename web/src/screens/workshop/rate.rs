//! Your rate: the stack of what an hour must earn, what of it is yours, and the figures it is made of.

use super::super::{Screen, Seen};
use super::figures::{asked, per_cent};
use super::{known, open, page};
use crate::app::workshop::Over;
use crate::app::workshop::figures::Figure;
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::key::figure_key;
use crate::parts::scale::{Kind, Mark, Rhythm, Scale, scale};
use crate::parts::stack::{Bracket, Part, stack};
use crate::view::{El, el};
use crate::words::en::{refusal, workshop as words};
use fivebar_core::money::rate::Rate;
use fivebar_core::quantity::{Currency, Decimal, Listed, Money, Span};
use fivebar_core::sheet::rate::{RatePart, RateSheet, rate};
use fivebar_core::sheet::workshop::real_year;

/// The rate in the maker's currency.
fn sheet(app: &App, seen: Seen<'_>) -> RateSheet {
    rate(&app.shelf().shop(seen.now.at), app.begins_with().0)
}

/// How it stands, on one line.
pub fn short(app: &App, seen: Seen<'_>) -> String {
    let sheet = sheet(app, seen);
    let rate = sheet.stack.and_then(|rate| Money::book(rate.per_hour, sheet.currency).ok());
    let pay = sheet.said.pay.and_then(|pay| Money::book(pay, sheet.currency).ok());
    match (rate, pay) {
        (Some(rate), _) => words::an_hour(&seen.speech.money(rate)),
        (None, Some(pay)) => words::pay_alone(&seen.speech.money(pay)),
        (None, None) => not_said_here(known(app).rates.keys().copied(), sheet.currency),
    }
}

/// Nothing is said in this currency; what was said in others is kept.
pub fn not_said_here(said: impl Iterator<Item = Currency>, here: Currency) -> String {
    let others = said.filter(|one| *one != here).map(|one| one.code().to_owned()).listed();
    if others.is_empty() { words::NOT_SAID.to_owned() } else { words::not_said_for(here.code(), &others.join(", ")) }
}

/// A sum in its currency's figures, without its mark.
pub fn plain(amount: Decimal, currency: Currency, seen: Seen<'_>) -> String {
    let digits = currency.digits() as u8;
    seen.speech.number(amount, digits, digits)
}

/// The page of the rate.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let sheet = sheet(app, seen);
    let main = el("main", "scr two");
    let main = match &sheet.stack {
        Some(stack) => main.kid(drawn(stack, (sheet.currency, notes(&sheet, seen)), seen)).kid(beside(Some(stack), &sheet, app, seen)),
        None => main.kid(unsaid(&sheet, seen)).kid(beside(None, &sheet, app, seen)),
    };
    page(app, ("workshop/rate", words::HOUR_MUST_EARN), main, seen)
}

/// What is missing, or why no rate can be.
fn unsaid(sheet: &RateSheet, seen: Seen<'_>) -> El<Msg> {
    let why = match &sheet.refused {
        Some(refusal) => {
            let said = refusal::refused(refusal, seen.speech);
            el("p", "why").text(format!("{} {}", said.what, said.to_do))
        }
        None => {
            let needed = [RatePart::Pay, RatePart::Hours, RatePart::Logged].into_iter().filter(|part| sheet.missing.contains(part));
            el("p", "").text(words::missing(&needed.map(words::part).listed()))
        }
    };
    el("div", "col").kid(el("p", "t30 w8").text(words::NO_RATE_YET)).kid(why)
}

/// The stack of a rate: its parts from the bottom, and what of it goes out and is yours.
pub fn drawn(rate: &Rate, (currency, notes): (Currency, Notes), seen: Seen<'_>) -> El<Msg> {
    let rate = &rate.shown(currency.digits());
    let money = Money::book(rate.per_hour, currency).map(|sum| seen.speech.money(sum)).unwrap_or_default();
    let each = words::FOR_EACH_HOUR.map(|line| el("span", "").text(line));
    let lead = el("section", "lead").kid(el("b", "t60 w8").text(money.clone())).kid(el("span", "t14 right").kids(each));
    let figure = |amount: Decimal| plain(amount, currency, seen);
    let bracket = |word: &str, amount: Decimal| Bracket { word: word.into(), figure: figure(amount) };
    let brackets = (bracket(words::GOES_OUT, rate.goes_out), bracket(words::YOURS, rate.yours));
    let parts = parts(rate, (currency, notes), seen);
    let said = format!("{money} {}", words::PER_LOGGED_HOUR);
    el("div", "col").kid(lead).kid(stack(&parts, brackets, seen.page.column(), &said))
}

/// What stands beside each part of a stack.
pub struct Notes {
    pub wear: String,
    pub overhead: String,
    pub tax: String,
    pub profit: String,
    pub pay: String,
}

/// The figures the maker said.
fn notes(sheet: &RateSheet, seen: Seen<'_>) -> Notes {
    let said = &sheet.said;
    let whole = |sum: Option<Money>| sum.map_or_else(String::new, |sum| seen.speech.number(sum.amount(), 0, 2));
    let share = |share: Option<Decimal>| share.map_or_else(String::new, |share| per_cent(share, seen));
    let hours = |n: Option<Decimal>| seen.speech.number(n.unwrap_or_default(), 0, 1);
    let pay = plain(said.pay.unwrap_or_default(), sheet.currency, seen);
    let pay = words::pay_note(&pay, &hours(said.hours), &hours(said.logged));
    Notes { wear: whole(said.wear), overhead: whole(said.costs), tax: share(said.tax), profit: share(said.profit), pay }
}

fn parts(rate: &Rate, (currency, notes): (Currency, Notes), seen: Seen<'_>) -> Vec<Part> {
    let part = |name: &str, (note, amount): (String, Decimal), yours: bool| Part {
        name: name.into(),
        note,
        figure: plain(amount, currency, seen),
        share: f64::try_from(amount).unwrap_or_default(),
        yours,
    };
    let all = vec![
        part(words::WEAR, (notes.wear, rate.wear), false),
        part(words::OVERHEAD, (notes.overhead, rate.workshop), false),
        part(words::TAX, (notes.tax, rate.tax), false),
        part(words::PROFIT, (notes.profit, rate.profit), true),
        part(words::PAY, (notes.pay, rate.pay), true),
    ];
    all.into_iter().filter(|part| 0.0 < part.share).listed()
}

/// What is yours, what is not said, the cautions, and the figures.
fn beside(stack: Option<&Rate>, sheet: &RateSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let nothing: Vec<&str> = sheet.missing.iter().filter(|part| !matches!(part, RatePart::Lowest)).map(|part| words::part(*part)).listed();
    let nothing = (stack.is_some() && !nothing.is_empty()).then(|| el("p", "").text(words::counted_as_nothing(&nothing)));
    let no_wage = el("div", "").kids(words::RATE_IS_NO_WAGE.map(caution));
    el("div", "col")
        .kids(
            stack
                .filter(|rate| has_others_share(rate, sheet.currency))
                .map(|rate| yours(rate, (sheet.currency, sheet.said.hours.unwrap_or_default()), seen)),
        )
        .kids(nothing)
        .kid(no_wage)
        .kid(el("div", "push"))
        .kid(el("h2", "").text(words::CHANGE_A_FIGURE))
        .kid(el("div", "g3").kids(figures(sheet, app, seen)))
}

/// Not all of it is yours, as it is shown.
pub fn has_others_share(rate: &Rate, currency: Currency) -> bool {
    let rate = rate.shown(currency.digits());
    rate.yours < rate.per_hour
}

/// What of it is yours, for a logged hour and over all hours.
pub fn yours(rate: &Rate, (currency, hours): (Currency, Decimal), seen: Seen<'_>) -> El<Msg> {
    let rate = rate.shown(currency.digits());
    let figure = |amount: Decimal| plain(amount, currency, seen);
    let at = |amount: Decimal| f64::try_from(amount).unwrap_or_default();
    let hours = seen.speech.number(hours, 0, 1);
    let marks = vec![
        Mark::new(at(rate.yours_over_all), Kind::Good, words::over_all(&hours), figure(rate.yours_over_all)),
        Mark::new(at(rate.yours), Kind::Good, words::PER_LOGGED_HOUR, figure(rate.yours)),
        Mark::new(at(rate.per_hour), Kind::Ink, words::YOUR_RATE_MARK, figure(rate.per_hour)),
    ];
    let (low, high) = (at(rate.yours_over_all), at(rate.per_hour));
    let edge = ((high - low) * 0.12).max(1.0);
    let (from, to) = ((low - edge).max(0.0), high + edge);
    let rhythm = Some(Rhythm::for_span(to - from, seen.page.card()));
    let drawn = Scale { width: seen.page.card(), from, to, rhythm, marks, ..Scale::default() };
    el("section", "card").kid(el("p", "w8").text(words::of_it_yours(&figure(rate.per_hour), &figure(rate.yours)))).kid(scale(&drawn, ""))
}

fn figures(sheet: &RateSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (currency, units) = (sheet.currency, app.begins_with().1);
    let said = &sheet.said;
    let money = |amount: Option<Decimal>| amount.and_then(|a| Money::book(a, currency).ok()).map(|sum| seen.speech.money(sum));
    let number = |n: Option<Decimal>| n.map(|n| seen.speech.number(n, 0, 1));
    let costs = said.costs.or(said.wear).map(|_| {
        let sum = |sum: Option<Money>| sum.map_or(Decimal::ZERO, Money::amount);
        Money::book(sum(said.costs).saturating_add(sum(said.wear)), currency).map(|sum| seen.speech.short_money(sum)).unwrap_or_default()
    });
    let year = real_year(&app.shelf().shop(seen.now.at), currency, seen.now.offset).ok();
    let not_said = || words::NOT_SAID.to_owned();
    vec![
        asked(Figure::Pay, money(said.pay), units),
        asked(Figure::Hours, number(said.hours), units),
        asked(Figure::Logged, number(said.logged), units),
        asked(Figure::Lowest, money(said.lowest), units),
        figure_key(words::COSTS_AND_TAX_KEY, costs.unwrap_or_else(not_said), open(Over::CostsAndTax)).key("costs"),
        figure_key(
            words::REAL_YEAR_KEY,
            year.map_or_else(not_said, |year| {
                let open = (Span::ZERO < year.unsettled_logged).then(|| seen.speech.span(year.unsettled_logged));
                words::logged_so_far(&seen.speech.span(year.logged), open.as_deref())
            }),
            open(Over::RealYear),
        )
        .key("year"),
    ]
}

/// Costs, wear, tax and profit: each with its key.
pub fn costs_and_tax(app: &App, seen: Seen<'_>) -> Screen {
    let sheet = sheet(app, seen);
    let (said, units) = (&sheet.said, app.begins_with().1);
    let sum = |sum: Option<Money>| sum.map(|sum| seen.speech.short_money(sum));
    let share = |share: Option<Decimal>| share.map(|share| per_cent(share, seen));
    let keys = el("div", "g2")
        .kid(asked(Figure::Costs, sum(said.costs), units))
        .kid(asked(Figure::Wear, sum(said.wear), units))
        .kid(asked(Figure::OwnTax, share(said.tax), units))
        .kid(asked(Figure::Profit, share(said.profit), units));
    let main = el("main", "scr")
        .kid(keys)
        .kid(super::tools::way(app, seen))
        .kid(el("p", "").text(words::ONE_HOME))
        .kids(super::tools::homes(app))
        .kid(caution(words::RATE_IS_NO_WAGE[1]));
    page(app, ("workshop/costs-and-tax", words::COSTS_AND_TAX), main, seen)
}
