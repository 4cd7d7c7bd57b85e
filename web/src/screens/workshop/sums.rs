//! The sums of each year, under its sales tax: what came in, what went out and what for, what is left, and hours.

use super::super::slots;
use super::Seen;
use crate::app::{App, Msg};
use crate::view::{El, el};
use crate::words::en::{job, sums as words};
use fivebar_core::quantity::{Decimal, Listed, Money};
use fivebar_core::sheet::Shop;
use fivebar_core::sheet::sums::{YearSums, hours, sums, years};
use fivebar_core::sheet::taxes::currencies;

/// Each year in each currency, the one that is set now first; nothing of a year in which nothing came in or was spent.
pub fn of_years(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (currency, this) = (app.begins_with().0, seen.now.day().as_ymd().0);
    let shop = app.shelf().shop(seen.now.at);
    let others = currencies(&shop).into_iter().filter(|other| *other != currency);
    let all = std::iter::once(currency).chain(others).listed();
    let years = match years(&shop, this) {
        Ok(years) => years,
        Err(why) => return vec![slots::no(&why, seen)],
    };
    let found = years.into_iter().flat_map(|year| {
        let found = all.iter().filter_map(|currency| match sums(&shop, *currency, year) {
            Ok(found) if found.is_empty() => None,
            Ok(found) => Some(table(&found, seen)),
            Err(why) => Some(slots::no(&why, seen)),
        });
        let found = found.listed();
        let title = (!found.is_empty()).then(|| el("h2", "gap").text(words::sums_of(year)));
        let worked = (!found.is_empty()).then(|| worked(&shop, year, seen));
        title.into_iter().chain(found).chain(worked).listed()
    });
    let found = found.listed();
    let under = (!found.is_empty()).then(|| el("p", "t14 i2").text(words::SUMS_UNDER));
    found.into_iter().chain(under).listed()
}

fn worked(shop: &Shop, year: i32, seen: Seen<'_>) -> El<Msg> {
    let [worked, logged] = hours(shop, year, seen.now.offset).map(|span| seen.speech.span(span));
    el("p", "").text(words::hours(&worked, &logged))
}

/// What came in, and under it what went out of it.
fn table(found: &YearSums, seen: Seen<'_>) -> El<Msg> {
    let sum = |sum: Money| seen.speech.money(sum);
    let row = |word: &'static str, under: String, figure: String| {
        let under = (!under.is_empty()).then(|| el("span", "t14 i2").text(under));
        let name = el("span", "op").kid(el("b", "").text(word)).kids(under);
        el("div", "dl").kid(name).kid(el("span", "n").text(figure))
    };
    // Of a year in which more came back than was sold, tax comes back too.
    let off = |of: Money| if Decimal::ZERO < of.amount() { format!("−{}", sum(of)) } else { sum(minus(of)) };
    let out = |word: &'static str, under: String, of: Money| (!of.is_zero()).then(|| row(word, under, off(of)));
    let by_kind =
        found.on_jobs.iter().filter(|(_, of)| !of.is_zero()).map(|(kind, of)| format!("{} {}", job::spending(kind.as_str()), sum(*of)));
    let by_kind = by_kind.listed().join(", ");
    let on_jobs = found.spent_on_jobs().unwrap_or(Money::zero(found.came_in.currency()));
    let unpriced = if found.is_unpriced { words::UNPRICED.to_owned() } else { String::new() };
    let left = found.left().map(sum).unwrap_or_default();
    el("div", "card list sums")
        .kid(row(words::CAME_IN, String::new(), sum(found.came_in)))
        .kids(out(words::GIVEN_BACK, String::new(), found.given_back))
        .kids(out(words::TAX, String::new(), found.tax))
        .kids(out(words::FEES, String::new(), found.fees))
        .kids(out(words::ON_JOBS, by_kind, on_jobs))
        .kids(out(words::ON_WOOD, unpriced, found.on_wood))
        .kids(out(words::WORKSHOP, String::new(), found.workshop))
        .kid(row(words::LEFT, String::new(), left))
}

fn minus(sum: Money) -> Money {
    Money::zero(sum.currency()).minus(sum).unwrap_or(sum)
}
