//! Figures by the pad; how one is paid; currency and units.

use super::super::{Screen, Seen};
use super::{known, page, say};
use crate::app::entry::Typed;
use crate::app::workshop::Tap;
use crate::app::workshop::figures::{Figure, unit};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{figure_key, key};
use crate::parts::pad as keys;
use crate::parts::seg::{Seg, seg};
use crate::view::{El, el};
use crate::words::en::{common, refusal, workshop as words};
use fivebar_core::ledger::fold::Till;
use fivebar_core::money::point::Points;
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Currency, Decimal, Side, Units};

/// A figure by its name.
pub fn name(figure: Figure, units: Units) -> &'static str {
    match figure {
        Figure::Pay => "Pay you want, an hour",
        Figure::Lowest => "Lowest pay, an hour",
        Figure::Hours => "Hours a year",
        Figure::Logged => "Of them logged to jobs",
        Figure::Costs => "Workshop costs a year",
        Figure::Wear => "Tools wear a year",
        Figure::OwnTax => "Tax on own work",
        Figure::Profit => "Profit",
        Figure::SalesTax => "Sales tax",
        Figure::Fee => "Card fee",
        Figure::FeeFixed => "Card fee, fixed",
        Figure::Cash => "Smallest coin",
        Figure::Mileage if units == Units::Inch => "Rate per mile",
        Figure::Mileage => "Rate per km",
        Figure::Spent => words::WRITE_DOWN,
    }
}

/// The pad for a figure.
pub fn pad(figure: Figure, typed: &Typed, app: &App, seen: Seen<'_>) -> Screen {
    let (currency, units) = app.begins_with();
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let what = (figure == Figure::Spent).then(|| {
        let asked = Field {
            id: "what-for",
            label: words::WHAT_FOR.into(),
            value: app.workshop.text.clone(),
            keyboard: Keyboard::Words,
            ..Field::default()
        };
        field(asked, |text| say(Tap::Typed(text)))
    });
    let main = el("main", "scr")
        .kids(what)
        .kid(keys::entry(&typed.text, &unit(figure, currency), typed.wrong.is_some()))
        .kids(typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, units))))
        .kid(el("div", "push"))
        .kid(keys::pad(Some(sign), |press| say(Tap::Press(press))))
        .kid(key("key solid h88", common::DONE, "", say(Tap::PadDone)))
        .kid(key("key h48", common::LEAVE_IT, "", say(Tap::Close)));
    Screen::new("workshop/figure", head(Head::new(words::WORKSHOP, name(figure, units))), main)
}

/// A key that shows a figure and asks for it.
pub fn asked(figure: Figure, shown: Option<String>, units: Units) -> El<Msg> {
    figure_key(name(figure, units), shown.unwrap_or_else(|| words::NOT_SAID.to_owned()), say(Tap::Figure(figure)))
}

/// Per cent of a share.
pub fn per_cent(share: Decimal, seen: Seen<'_>) -> String {
    let number = share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default();
    crate::words::en::count::percent(&seen.speech.number(number, 0, 3))
}

/// How one is paid.
pub fn till(app: &App, seen: Seen<'_>) -> Screen {
    let (currency, units) = app.begins_with();
    let till = known(app).tills.get(&currency).cloned().unwrap_or_default();
    let money = |sum: Option<fivebar_core::quantity::Money>| sum.map(|sum| seen.speech.money(sum));
    let mileage = till.mileage.map(|rate| seen.speech.number(rate, 2, 4));
    let main = el("main", "scr")
        .kid(el("div", "g2").kids([
            asked(Figure::SalesTax, till.tax.map(|tax| per_cent(tax, seen)), units),
            asked(Figure::Mileage, mileage, units),
            asked(Figure::Fee, till.fee.map(|fee| per_cent(fee, seen)), units),
            asked(Figure::FeeFixed, money(till.fixed), units),
            asked(Figure::Cash, money(till.cash), units),
        ]))
        .kid(el("h2", "").text(words::SALES_TAX_STANDS))
        .kid(side(&till))
        .kid(el("h2", "").text(words::PRICE_POINTS))
        .kid(points(&till));
    page(app, ("workshop/till", words::HOW_PAID), main, seen)
}

fn side(till: &Till) -> El<Msg> {
    let chosen = till.side.unwrap_or(Side::Inside);
    let segs = vec![Seg::new(words::INSIDE, chosen == Side::Inside), Seg::new(words::ON_TOP, chosen == Side::Top)];
    seg(words::SALES_TAX_STANDS, segs, |nth| say(Tap::Side(if nth == 0 { Side::Inside } else { Side::Top })))
}

fn points(till: &Till) -> El<Msg> {
    let chosen = till.point.as_ref().and_then(|key| Points::of(key.as_str())).unwrap_or(Points::Five);
    let chips = Points::ALL.iter().map(|points| Chip::choice(point_name(*points), *points == chosen)).collect();
    flowing("key", chips, |nth| say(Tap::Point(Points::ALL.get(nth).copied().unwrap_or(Points::Five))))
        .attr("aria-label", words::PRICE_POINTS)
}

fn point_name(points: Points) -> &'static str {
    match points {
        Points::Minor => "cents",
        Points::Nine => "…9",
        other => other.key(),
    }
}

/// The units by their name.
pub fn units_name(units: Units) -> &'static str {
    match units {
        Units::Inch => words::INCHES,
        Units::Metric => words::MILLIMETRES,
    }
}

const COMMON: [&str; 12] = ["USD", "EUR", "GBP", "CHF", "CAD", "AUD", "NZD", "SEK", "NOK", "DKK", "PLN", "CZK"];

/// What new hauls and jobs begin with.
pub fn units(app: &App, seen: Seen<'_>) -> Screen {
    let (currency, units) = app.begins_with();
    let systems = [Units::Inch, Units::Metric];
    let segs = systems.iter().map(|system| Seg::new(units_name(*system), *system == units)).collect();
    let listed: Vec<Currency> = COMMON.iter().filter_map(|code| Currency::read(code).ok()).collect();
    let chips = listed.iter().map(|one| Chip::choice(one.code(), *one == currency)).collect();
    let main = el("main", "scr")
        .kid(seg(words::CURRENCY_UNITS, segs, move |nth| say(Tap::Units(systems.get(nth).copied().unwrap_or(Units::Metric)))))
        .kid(flowing("key", chips, move |nth| say(Tap::Currency(listed.get(nth).copied().unwrap_or(Currency::EUR)))))
        .kid(el("p", "t14 i2").text(words::FOR_NEW_ONES));
    page(app, ("workshop/units", words::CURRENCY_UNITS), main, seen)
}
