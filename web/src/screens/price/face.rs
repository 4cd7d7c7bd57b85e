//! The buyer's face: only what a buyer may see, and the hold that closes it.
//!
//! Carries invariant 15: while it shows it is the whole page, with no place bar, no strip, no notice and no key of the app.

use super::Seen;
use crate::app::price::{Tap, chosen_tax, paid, shop};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::view::{El, el};
use crate::words::en::{common, price as words};
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::buyer::{BuyerSheet, buyer};

/// How long the key is held.
const HOLD_MS: u32 = 700;

/// The whole page while the phone is turned round; none while it is the maker's. A piece that is gone, and a book that
/// is not read yet, leave only the key.
pub fn page(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let shown = match app.price.face {
        Some(job) => buyer(&shop(app), job, (chosen_tax(app, job), paid(app))).ok(),
        None if app.price.turned => None,
        None => return None,
    };
    let close = el("button", "key h88 m").attr("type", "button").on_hold(Msg::Price(Tap::Hide), HOLD_MS).text(words::HOLD_TO_CLOSE);
    let main = el("main", "")
        .kids(shown.iter().filter_map(|sheet| photo(sheet, app)))
        .kids(shown.iter().map(|sheet| title(sheet, seen)))
        .kids(shown.iter().filter_map(|sheet| facts(sheet, seen)));
    Some(el("div", "app buyer").place("buyer").kid(main).kid(el("footer", "close").kid(close)))
}

/// The photo taken last, by an address of this page alone.
fn photo(sheet: &BuyerSheet, app: &App) -> Option<El<Msg>> {
    let url = app.photos.address(sheet.photo?)??;
    Some(el("img", "").attr("src", url.to_owned()).attr("alt", sheet.name.clone()))
}

/// A long price is written smaller: it stays whole on a narrow page and with large text.
fn fitting(signs: usize) -> &'static str {
    match signs {
        0..=6 => "tag",
        7..=8 => "tag long",
        _ => "tag longer",
    }
}

/// The name, what is handed over for one paid so, and what that sum is for.
fn title(sheet: &BuyerSheet, seen: Seen<'_>) -> El<Msg> {
    let price = sheet.price.map(|price| seen.speech.short_money(price));
    let price = price.map(|price| el("p", fitting(price.chars().count())).text(price));
    let what = sheet.price.and(words::price_is(sheet.is_each, sheet.with_tax)).map(|what| el("p", "per").text(what));
    el("header", "what").kid(el("h1", "").attr("tabindex", "-1").text(sheet.name.clone())).kids(price).kids(what)
}

fn facts(sheet: &BuyerSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let said = [
        (words::SIZE, size(sheet, seen)),
        (words::WEIGHT, weight(sheet, seen)),
        (words::WOOD, sheet.wood.clone()),
        (words::FINISH, sheet.finish.clone()),
        (words::CARE, sheet.care.clone()),
        (words::DELIVERY, sheet.delivery.clone()),
    ];
    let rows: Vec<El<Msg>> = said
        .into_iter()
        .filter_map(|(what, fact)| Some((what, fact.filter(|fact| !fact.is_empty())?)))
        .map(|(what, fact)| el("tr", "").kid(el("th", "").attr("scope", "row").text(what)).kid(worded("td", "", fact)))
        .listed();
    (!rows.is_empty()).then(|| el("table", "facts").kid(el("tbody", "").kids(rows)))
}

fn size(sheet: &BuyerSheet, seen: Seen<'_>) -> Option<String> {
    let unit = common::length_unit(sheet.units);
    let side = |length| seen.speech.length(length, sheet.units);
    Some(match (sheet.width.map(side), sheet.depth.map(side), sheet.height.map(side)) {
        (Some(width), Some(depth), Some(height)) => words::size(&width, &depth, &height, unit),
        (width, depth, height) => {
            let known: Vec<String> = [width, depth, height].into_iter().flatten().listed();
            if known.is_empty() {
                return None;
            }
            words::part_of_size(&known, unit)
        }
    })
}

fn weight(sheet: &BuyerSheet, seen: Seen<'_>) -> Option<String> {
    Some(format!("{} {}", seen.speech.mass(sheet.mass?, sheet.units), common::mass_unit(sheet.units)))
}
