//! How one is paid; currency and units.

use super::super::{Screen, Seen};
use super::figures::{asked, per_cent};
use super::rate::not_said_here;
use super::{known, page, say, sums, taxes};
use crate::app::workshop::Tap;
use crate::app::workshop::figures::Figure;
use crate::app::workshop::sides::{Stays, asked_about};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::field::{Field, field};
use crate::parts::key::key;
use crate::parts::seg::{Seg, even, seg};
use crate::view::{El, el};
use crate::words::en::{common, workshop as words};
use fivebar_core::ledger::fold::Till;
use fivebar_core::ledger::kind::haul::Per;
use fivebar_core::ledger::kind::sale::Paid;
use fivebar_core::money::point::Points;
use fivebar_core::quantity::{Currency, Listed, Money, Side, Units};

/// How it stands, on one line.
pub fn short(app: &App, seen: Seen<'_>) -> String {
    let till = of(app);
    let said = |share: Option<_>| share.map(|share| per_cent(share, seen));
    let per = if till.per == Some(Per::Km) { Units::Metric } else { Units::Inch };
    let drive = till.mileage.map(|rate| (seen.speech.number(rate, 2, 4), per));
    let said_of = known(app).tills.iter().filter(|(_, till)| **till != Till::default()).map(|(currency, _)| *currency).listed();
    let none = || match till == Till::default() {
        true => not_said_here(said_of.into_iter(), app.begins_with().0),
        false => words::MOST_NOT_SAID.to_owned(),
    };
    let fixed = till.fixed.filter(|fixed| !fixed.is_zero()).map(|fixed| seen.speech.money(fixed));
    let card = words::card_fee(said(till.fee).as_deref(), fixed.as_deref());
    let paid = words::paid_so(said(till.tax).as_deref(), card.as_deref(), drive.as_ref().map(|(rate, per)| (rate.as_str(), *per)));
    paid.unwrap_or_else(none)
}

fn of(app: &App) -> Till {
    known(app).tills.get(&app.begins_with().0).cloned().unwrap_or_default()
}

/// How one is paid.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    if let Some(draft) = &app.workshop.tax {
        return taxes::form(draft, app, seen);
    }
    let (currency, units) = app.begins_with();
    let till = of(app);
    let money = |sum: Option<Money>| sum.map(|sum| seen.speech.money(sum));
    // To the least unit it is a sum as its neighbours are; a finer rate has the currency beside it.
    let finer = |rate| format!("{} {}", seen.speech.number(rate, 2, 4), currency.code());
    let mileage = till.mileage.map(|rate| Money::whole(rate, currency).map_or_else(|| finer(rate), |sum| seen.speech.money(sum)));
    let main = el("main", "scr")
        .kid(el("h2", "").text(words::SALES_TAX_STANDS))
        .kid(el("div", "taxes").kid(asked(Figure::SalesTax, till.tax.map(|tax| per_cent(tax, seen)), units)).kid(side(&till)))
        .kids(app.workshop.side.map(|side| turned(side, app, seen)))
        .kids(taxes::list(app, seen))
        .kid(el("h2", "gap").text(words::TILL_UNDER))
        .kid(el("div", "g2").kids([
            asked(Figure::Fee(Paid::Card), till.fee.map(|fee| per_cent(fee, seen)), units),
            asked(Figure::FeeFixed(Paid::Card), money(till.fixed), units),
            asked(Figure::Fee(Paid::Bank), till.bank.0.map(|fee| per_cent(fee, seen)), units),
            asked(Figure::FeeFixed(Paid::Bank), money(till.bank.1), units),
            asked(Figure::Fee(Paid::Notes), till.notes.0.map(|fee| per_cent(fee, seen)), units),
            asked(Figure::FeeFixed(Paid::Notes), money(till.notes.1), units),
            asked(Figure::Cash, money(till.cash), units),
            asked(Figure::Mileage, mileage, units),
        ]))
        .kids(to_coin(&till))
        .kid(el("h2", "gap").text(words::PRICE_POINTS))
        .kid(points(&till, currency))
        .kids(taxes::recorded(app, seen))
        .kids(sums::of_years(app, seen));
    page(app, ("workshop/till", words::HOW_PAID), main, seen)
}

fn side(till: &Till) -> El<Msg> {
    let chosen = till.side.unwrap_or(Side::Inside);
    let segs = vec![Seg::new(words::INSIDE, chosen == Side::Inside), Seg::new(words::ON_TOP, chosen == Side::Top)];
    seg(words::SALES_TAX_STANDS, segs, |nth| say(Tap::Side(if nth == 0 { Side::Inside } else { Side::Top })))
}

/// What the tags come to mean with tax on the other side, and what is to stay.
fn turned(side: Side, app: &App, seen: Seen<'_>) -> El<Msg> {
    let tags = asked_about(app, side);
    let shown = |sum: Money| seen.speech.money(sum);
    let rows = tags.iter().take(TAGS_SHOWN).map(|tag| {
        let (pays, same) = ((shown(tag.pays), shown(tag.would_pay)), shown(tag.same_pay));
        let said = match tag.then_pays == tag.pays {
            true => words::tag_turned((&pays.0, &pays.1), &same),
            false => words::tag_nearly((&pays.0, &pays.1), (&same, &shown(tag.then_pays))),
        };
        el("p", "").kid(el("b", "w7").text(format!("{}: ", tag.name))).kid(el("span", "").text(said))
    });
    let more = tags.len().checked_sub(TAGS_SHOWN).filter(|more| 0 < *more).map(|more| el("p", "t14 i2").text(words::more_tags(more)));
    let pay_under = if tags.iter().all(|tag| tag.then_pays == tag.pays) { words::PAY_STAYS_UNDER } else { words::PAY_NEARLY_UNDER };
    let stays = |word: &'static str, under: &'static str, stays| key("key", word, under, say(Tap::Turn(stays)));
    el("section", "card hot")
        .attr("role", "alert")
        .kid(el("p", "w7").text(words::tags_change(tags.len(), side == Side::Top)))
        .kids(rows)
        .kids(more)
        .kids(app.workshop.asks_side.then(|| el("p", "w7").attr("role", "status").text(words::NOT_TAKEN_YET)))
        .kid(
            el("div", "racks")
                .kid(stays(words::PAY_STAYS, pay_under, Stays::Pay))
                .kid(stays(words::TAGS_STAY, words::TAGS_STAY_UNDER, Stays::Tags))
                .kid(key("key h48", common::NOT_NOW, "", say(Tap::NoTurn))),
        )
}

/// As many tags as are shown.
const TAGS_SHOWN: usize = 6;

/// How a sum goes to the smallest coin, where one is set.
fn to_coin(till: &Till) -> Vec<El<Msg>> {
    if till.cash.is_none_or(Money::is_zero) {
        return vec![];
    }
    let segs = vec![Seg::new(words::TO_NEAREST_COIN, !till.cash_up), Seg::new(words::UP_TO_COIN, till.cash_up)];
    vec![el("h2", "gap").text(words::TO_COIN), even(words::TO_COIN, segs, |nth| say(Tap::CashUp(nth == 1)))]
}

/// Where prices may end: those of the currency, and another that was chosen before.
fn points(till: &Till, currency: Currency) -> El<Msg> {
    let usual = Points::usual(currency);
    let chosen = till.point.as_ref().and_then(|key| Points::of(key.as_str())).unwrap_or(usual);
    // Where a currency has no decimals its least unit is one, and stands once.
    let chosen = if chosen == Points::Minor && currency.digits() == 0 { Points::One } else { chosen };
    let is_offered = |points: &Points| *points == chosen || Points::of_currency(currency).any(|of| of == *points);
    let offered = Points::ALL.into_iter().filter(is_offered).listed();
    let chips = offered.iter().map(|points| Chip::choice(words::point(*points), *points == chosen)).listed();
    flowing("key t22 h56", chips, move |nth| say(Tap::Point(offered.get(nth).copied().unwrap_or(usual))))
        .attr("aria-label", words::PRICE_POINTS)
        .attr("class", "chips points")
}

const COMMON: [&str; 13] = ["USD", "EUR", "GBP", "CHF", "CAD", "AUD", "NZD", "SEK", "NOK", "DKK", "PLN", "CZK", "JPY"];

/// Currencies as keys: one that is tapped is what new hauls and jobs begin with.
fn currencies(listed: Vec<Currency>, begins_with: Currency) -> El<Msg> {
    let chips = listed.iter().map(|one| Chip::choice(one.code(), *one == begins_with)).listed();
    flowing("key h56", chips, move |nth| say(Tap::Currency(listed.get(nth).copied().unwrap_or(begins_with))))
}

/// Those that are on no key above, by the letters they begin with: nobody is shown all of them.
fn others(app: &App, above: &[Currency], begins_with: Currency) -> Vec<El<Msg>> {
    let typed = app.workshop.text.trim().to_ascii_uppercase();
    let asked =
        Field { id: "currency", label: words::OTHER_CURRENCY.into(), value: app.workshop.text.clone(), fleeting: true, ..Field::default() };
    let is_asked = |one: &Currency| !typed.is_empty() && one.code().starts_with(&*typed);
    let found = Currency::all().filter(|one| is_asked(one) && !above.contains(one)).listed();
    let none = !typed.is_empty() && !Currency::all().any(|one| is_asked(&one));
    let none = none.then(|| el("p", "t14 i2").attr("role", "status").text(words::NO_SUCH_CURRENCY));
    let found = (!found.is_empty()).then(|| currencies(found, begins_with));
    [field(asked, |text| say(Tap::Typed(text)))].into_iter().chain(found).chain(none).listed()
}

/// What new hauls and jobs begin with.
pub fn units(app: &App, seen: Seen<'_>) -> Screen {
    let (currency, units) = app.begins_with();
    let systems = [(Units::Inch, words::INCHES), (Units::Metric, words::MILLIMETRES)];
    let segs = systems.iter().map(|(system, name)| Seg::new(*name, *system == units)).listed();
    let mut listed: Vec<Currency> = COMMON.iter().filter_map(|code| Currency::read(code).ok()).listed();
    if !listed.contains(&currency) {
        listed.push(currency);
    }
    let others = others(app, &listed, currency);
    let main = el("main", "scr")
        .kid(el("h2", "").text(words::UNITS))
        .kid(seg(words::UNITS, segs, move |nth| say(Tap::Units(systems.get(nth).map_or(Units::Metric, |(system, _)| *system)))))
        .kid(el("h2", "gap").text(words::CURRENCY))
        .kid(currencies(listed, currency))
        .kids(others)
        .kid(el("p", "t14 i2").text(words::FOR_NEW_ONES));
    page(app, ("workshop/units", words::CURRENCY_UNITS), main, seen)
}
