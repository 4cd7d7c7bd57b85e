//! Rates of sales tax under a name: their list, the form of one, and what was recorded this year at each.

use super::super::slots::{self, Slot};
use super::super::{Screen, Seen};
use super::figures::per_cent;
use super::say;
use crate::app::workshop::Tap;
use crate::app::workshop::taxes::{Draft, TaxTap};
use crate::app::{App, Msg};
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{common, refusal, taxes as words, workshop as shop_words};
use fivebar_core::ledger::fold::NamedTax;
use fivebar_core::quantity::{Currency, Listed, Money, Side};
use fivebar_core::sheet::taxes::{AtRate, YearTaxes, currencies, taxes, years};

fn tap(tap: TaxTap) -> Msg {
    say(Tap::Tax(tap))
}

/// The list, with the key to another.
pub fn list(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let known = app.shelf().workshop();
    let usual = known.tills.get(&app.begins_with().0).cloned().unwrap_or_default();
    let row = |named: &NamedTax| {
        let tax = named.tax(&usual);
        let under = words::rate_at(&per_cent(tax.rate, seen), tax.side == Side::Top);
        key("key left h56", named.name.clone(), under, tap(TaxTap::Open(named.id))).key(named.id.to_string())
    };
    let rows = known.taxes_in(app.begins_with().0).map(row).listed();
    let another = key("key soft h56", words::ANOTHER, "", tap(TaxTap::New));
    vec![el("h2", "gap").text(words::OTHER_RATES), el("p", "t14 i2").text(words::OTHER_UNDER), el("div", "g2").kids(rows).kid(another)]
}

/// The form of a new rate, or of one that is changed.
pub fn form(draft: &Draft, app: &App, seen: Seen<'_>) -> Screen {
    let asked = [Slot::new(words::RATE, "%")];
    let wrong = if draft.nameless { refusal::unnamed(words::NAME) } else { String::new() };
    let name = Field { id: "tax", label: words::NAME.to_owned(), value: draft.name.clone(), wrong, ..Field::default() };
    let segs = vec![Seg::new(shop_words::INSIDE, draft.side == Side::Inside), Seg::new(shop_words::ON_TOP, draft.side == Side::Top)];
    let main = el("main", "scr form")
        .kid(field(name, |text| tap(TaxTap::Name(text))))
        .kid(even(words::STANDS, segs, |nth| tap(TaxTap::Side(if nth == 0 { Side::Inside } else { Side::Top }))))
        .kid(slots::figures_told(&draft.form, &asked, (app.begins_with().1, seen), |nth| tap(TaxTap::At(nth))))
        .kids(draft.of.map(|_| key("key soft h56", words::DROP, words::DROP_UNDER, tap(TaxTap::Drop))))
        .kids(slots::refused(app, seen))
        .kid(el("div", "push"))
        .kids(slots::pad(&draft.form, &asked, seen, |press| tap(TaxTap::Press(press))));
    let keys = el("div", "um").kid(done_key("key solid t22", common::DONE, "", tap(TaxTap::Save))).kid(key(
        "key",
        common::NOT_NOW,
        "",
        say(Tap::Close),
    ));
    let title = if draft.of.is_some() { draft.name.clone() } else { words::ANOTHER.to_owned() };
    Screen::new("workshop/tax", head(Head::new(words::OTHER_RATES, title)), main).foot(el("footer", "foot").kid(keys)).says_it()
}

/// What was recorded in each year, this one first, and in each currency, the one that is set now first; nothing of a year without a sale.
pub fn recorded(app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (currency, this) = (app.begins_with().0, seen.now.day().as_ymd().0);
    let shop = app.shelf().shop(seen.now.at);
    let others = currencies(&shop).into_iter().filter(|other| *other != currency);
    let all = std::iter::once(currency).chain(others).listed();
    let found = years(&shop, this).into_iter().flat_map(|year| {
        let of = |currency: &Currency| match taxes(&shop, *currency, year) {
            Ok(found) if found.is_empty() => vec![],
            Ok(found) => in_one(&found, seen).into(),
            Err(why) => vec![slots::no(&why, seen)],
        };
        let found = all.iter().flat_map(of).listed();
        let title = (!found.is_empty()).then(|| el("h2", "gap").text(format!("{} {year}", words::RECORDED)));
        title.into_iter().chain(found).listed()
    });
    let found = found.listed();
    if found.is_empty() {
        return vec![];
    }
    found.into_iter().chain([el("p", "t14 i2").text(words::RECORDED_UNDER)]).listed()
}

/// All of one currency, and its lines by rate.
fn in_one(found: &YearTaxes, seen: Seen<'_>) -> [El<Msg>; 2] {
    let row = |word: String, under: String, tax: Money| {
        let under = (!under.is_empty()).then(|| el("span", "t14 i2").text(under));
        let name = el("span", "op").kid(el("b", "").text(word)).kids(under);
        el("div", "dl").kid(name).kid(el("span", "n").text(seen.speech.money(tax)))
    };
    // What was sold and all came back the same year left nothing to say.
    let is_there = |at: &AtRate| at.sales != 0 || !at.taken.is_zero() || !at.tax.is_zero();
    let rows = found.by_rate.iter().filter(|(_, at)| is_there(at)).map(|(rate, at): (_, &AtRate)| {
        let rate = (!rate.is_zero()).then(|| per_cent(*rate, seen));
        let sales = seen.speech.count(at.sales.unsigned_abs());
        let sales = if at.sales < 0 { format!("−{sales}") } else { sales };
        row(words::at(rate.as_deref()), words::sold(at.sales, &sales, &seen.speech.money(at.taken)), at.tax)
    });
    let of_galleries = found.by_galleries.iter().filter(|(_, tax)| !tax.is_zero()).map(|(rate, tax)| {
        let at = rate.map(|rate| per_cent(rate, seen)).unwrap_or_default();
        row(words::BY_GALLERIES.to_owned(), at, *tax)
    });
    let total = el("p", "row").kid(el("b", "t30 w8").text(seen.speech.money(found.tax)));
    [total, el("div", "card list").kids(rows).kids(of_galleries)]
}
