//! The real year beside the guess: hours, what of them was logged, costs, and what an hour must earn by them.

use super::super::sources::{beside, sources};
use super::super::{Screen, Seen};
use super::figures::per_cent;
use super::page;
use super::rate::{Notes, drawn, has_others_share, plain, yours};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::view::{El, el};
use crate::words::en::{costs, job, workshop as words};
use fivebar_core::ledger::fold::RateFacts;
use fivebar_core::quantity::{Decimal, Span, Wall};
use fivebar_core::sheet::rate::rate;
use fivebar_core::sheet::workshop::{RealYear, real_year};

/// The page.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let (currency, _) = app.begins_with();
    let shop = app.shelf().shop(seen.now.at);
    let guess = rate(&shop, currency).said;
    let main = el("main", "scr");
    let main = match real_year(&shop, currency, seen.now.offset) {
        Ok(year) => {
            let hours = |n: Option<Decimal>| n.map(|n| words::hours(&seen.speech.number(n, 0, 1)));
            let span = |span: Span| seen.speech.span(span);
            let table = el("tbody", "")
                .kid(heads())
                .kid(row(words::WORKED, hours(guess.hours), span(year.worked)))
                .kid(row(words::LOGGED, hours(guess.logged), span(year.logged)))
                .kid(row(words::WORKSHOP_COSTS, guess.costs.map(|sum| seen.speech.short_money(sum)), seen.speech.money(year.costs)));
            let since = Some(year.since)
                .filter(|since| (since.as_ymd().1, since.as_ymd().2) != (1, 1))
                .map(|since| seen.speech.day(Wall::new(since.start(seen.now.offset), seen.now.offset)));
            let passed = el("p", "").text(words::passed(&per_cent(year.passed.round_dp(2), seen), since.as_deref()));
            let on_rack = (Span::ZERO < year.on_rack).then(|| el("p", "").text(words::on_rack(&span(year.on_rack))));
            let open = (Span::ZERO < year.unsettled).then(|| el("p", "").text(job::beside_these(&span(year.unsettled))));
            let main =
                main.kid(el("section", "card").kid(el("table", "cmp").kid(table))).kids(on_rack).kids(hours_from(&year, seen)).kids(open);
            let twice = year.tools_twice.then(|| caution(costs::TOOL_TWICE));
            main.kids(twice).kid(passed).kid(by_it(&year, &guess, seen))
        }
        Err(refusal) => main.kid(el("p", "why").text(crate::words::en::refusal::refused(&refusal, seen.speech).what)),
    };
    page(app, ("workshop/real-year", words::REAL_YEAR), main.kid(caution(words::RATE_IS_NO_WAGE[1])), seen)
}

/// Where the hours come from; nothing where none were worked.
fn hours_from(year: &RealYear, seen: Seen<'_>) -> Option<El<Msg>> {
    let said = sources(year.bench, &beside(words::ON_TRIPS, year.trips), seen)?;
    Some(el("p", "").text(words::hours_from(&said)))
}

/// The stack of the real year beside that of the guess: the same parts, by this year's hours and costs.
fn by_it(year: &RealYear, said: &RateFacts, seen: Seen<'_>) -> El<Msg> {
    let Some(rate) = &year.rate else { return el("p", "").text(words::YEAR_TOO_YOUNG) };
    let currency = year.costs.currency();
    let share = |share: Option<Decimal>| share.map_or_else(String::new, |share| per_cent(share, seen));
    let pay = plain(said.pay.unwrap_or_default(), currency, seen);
    let notes = Notes {
        wear: costs::wear_by(&seen.speech.number(year.wear.round_dp(2), 0, 2), year.wear_guessed),
        overhead: seen.speech.number(year.costs.amount(), 0, 2),
        tax: share(said.tax),
        profit: share(said.profit),
        pay: words::pay_note_real(&pay, &seen.speech.span(year.worked), &seen.speech.span(year.logged)),
    };
    let hours = Decimal::from(year.worked.as_minutes()).checked_div(Decimal::from(60)).unwrap_or_default();
    let mine = has_others_share(rate, currency).then(|| yours(rate, (currency, hours), seen));
    el("section", "").kid(el("p", "t14 i2").text(words::AT_THE_REAL_YEAR)).kid(drawn(rate, (currency, notes), seen)).kids(mine)
}

fn heads() -> El<Msg> {
    let head = |words: &'static str| el("th", "n").attr("scope", "col").text(words);
    el("tr", "").kid(el("th", "").text("")).kids([words::YOUR_GUESS, words::SO_FAR].map(head))
}

fn row(name: &str, guess: Option<String>, real: String) -> El<Msg> {
    el("tr", "")
        .kid(el("th", "").attr("scope", "row").text(name.to_owned()))
        .kid(el("td", "n here").text(guess.unwrap_or_else(|| words::NOT_SAID.to_owned())))
        .kid(el("td", "n then").text(real))
}
