//! Cans and packs with something in them, and the form of one that is opened now.

use super::super::slots::{self, Slot};
use super::super::spent_on::{choice, spent_key};
use super::super::{Screen, Seen, homes, receipts};
use super::opening::{Keys, Told, opening};
use super::say;
use crate::app::jobs::cans::UNITS;
use crate::app::workshop::Tap;
use crate::app::workshop::cans::{CanTap, Draft, KINDS, is_home_open};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::view::{El, el};
use crate::words::en::{cans as words, common, job as job_words, workshop as shop_words};
use fivebar_core::ledger::fold::Can;
use fivebar_core::ledger::kind::money::Home;
use fivebar_core::money::pack::Measure;
use fivebar_core::quantity::{Key, Listed, Money, Wall};

fn tap(tap: CanTap) -> Msg {
    say(Tap::Can(tap))
}

/// Its price, where it is far from the usual.
pub fn asked_about(asks: Option<(Money, Measure)>, seen: Seen<'_>) -> Option<El<Msg>> {
    let (price, of) = asks?;
    Some(el("p", "why").attr("role", "alert").text(words::is_it_so(&seen.speech.money(price), of)))
}

/// Cans with something in them: what is left, how old it is, what it is still worth.
pub fn open(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let known = app.shelf().workshop();
    let rows = known.cans.iter().rev().filter(|can| !can.left().is_zero());
    let rows = rows.map(|can| row(can, app, seen)).listed();
    (!rows.is_empty()).then(|| el("section", "year").kid(el("h2", "").text(words::OPEN_CANS)).kid(el("div", "card list").kids(rows)))
}

/// Behind one key those that are used up, the latest first: their receipts are there as long as the book.
pub fn used_up(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let known = app.shelf().workshop();
    let gone = known.cans.iter().rev().filter(|can| can.left().is_zero()).listed();
    let shown = app.workshop.used_up;
    let show = key("key soft h56", words::USED_UP, words::used_up(gone.len()), tap(CanTap::UsedUp));
    let show = show.attr("aria-expanded", if shown { "true" } else { "false" });
    let rows = shown.then(|| el("div", "card list").kids(gone.iter().map(|can| gone_row(can, app, seen)).listed()));
    (!gone.is_empty()).then(|| el("section", "year").kid(show).kids(rows))
}

/// What was paid for one that is used up, its receipts, and when it was.
fn gone_row(can: &Can, app: &App, seen: Seen<'_>) -> El<Msg> {
    let offset = seen.now.offset;
    let until = can.over(seen.now.day()).map(|day| seen.speech.day(Wall::new(day.start(offset), offset)));
    let receipts = receipts::of(can.id, app);
    let held = words::held(&seen.speech.number(can.holds, 0, 2), can.unit.as_str(), until.as_deref());
    let under = std::iter::once(held).chain(receipts::there(&receipts)).listed().join(", ");
    let keys = Keys { above: receipts::pictures(&receipts, app), keys: receipts::take(can.id, &receipts, app).into_iter().listed() };
    opening(can.id, Told { name: can.what.clone(), under, figure: seen.speech.money(can.paid) }, app, keys)
}

fn row(can: &Can, app: &App, seen: Seen<'_>) -> El<Msg> {
    let [left, holds] = [can.left(), can.holds].map(|n| seen.speech.number(n, 0, 2));
    let today = seen.now.day();
    let receipts = receipts::of(can.id, app);
    let stands = words::stands((&left, &holds), can.unit.as_str(), can.months(today));
    let beyond = Some(can.beyond()).filter(|beyond| !beyond.is_zero());
    let twice = beyond.map(|n| words::twice(&seen.speech.number(n, 0, 2), can.unit.as_str()));
    let under = std::iter::once(stands).chain(receipts::there(&receipts)).chain(twice).listed().join(", ");
    let worth = can.worth(today).map(|worth| seen.speech.money(worth)).unwrap_or_default();
    let empty = key("key h56", words::IT_IS_EMPTY, "", say(Tap::EmptyCan(can.id)));
    let keys = receipts::take(can.id, &receipts, app).into_iter().chain([empty]).listed();
    let keys = Keys { above: receipts::pictures(&receipts, app), keys };
    opening(can.id, Told { name: can.what.clone(), under, figure: worth }, app, keys)
}

/// Keys of one list of words, one of which is chosen.
fn chosen(keys: &'static [&'static str], is: Option<&Key>, named: fn(&str) -> String, says: fn(Key) -> CanTap) -> El<Msg> {
    let chips = keys.iter().map(|key| Chip::choice(named(key), is.is_some_and(|chosen| chosen.as_str() == *key))).listed();
    flowing("key h48", chips, move |nth| keys.get(nth).and_then(|key| Key::read(key)).map_or(tap(CanTap::New), |key| tap(says(key))))
}

/// The form of one that is opened.
pub fn form(draft: &Draft, app: &App, seen: Seen<'_>) -> Screen {
    let (currency, units) = app.begins_with();
    let on = app.workshop.spent_on;
    let unit = draft.unit.as_ref().map(|unit| words::unit(unit.as_str())).unwrap_or_default();
    let asked = vec![Slot::new(words::HOLDS, &unit), Slot::new(words::COST, currency.code())];
    let name = Field { id: "can", label: words::NAME.to_owned(), value: draft.name.clone(), ..Field::default() };
    let day = |tap| say(Tap::SpentOn(tap));
    let pad = || slots::pad(&draft.form, &asked, seen, |press| tap(CanTap::Press(press)));
    let home = draft.kind.as_ref().and_then(|kind| homes::asked(kind, (Home::Job, currency), app, |kind, home| say(Tap::Home(kind, home))));
    // By Done it is put where the pad was: over it, it would be out of sight.
    let (home, put) = if draft.is_home_put && is_home_open(app, draft) { (None, home.map(homes::put)) } else { (home, None) };
    let kindless = draft.kindless.then(|| el("p", "why").attr("role", "alert").text(words::WHAT_IS_IT));
    let main = el("main", "scr form")
        .kid(el("p", "t14").text(words::OPEN_UNDER))
        .kid(field(name, |text| tap(CanTap::Name(text))))
        .kid(el("h2", "").text(words::KIND))
        .kid(chosen(&KINDS, draft.kind.as_ref(), job_words::spending, CanTap::Kind))
        .kids(kindless)
        .kids(home)
        .kid(chosen(&UNITS, draft.unit.as_ref(), words::unit, CanTap::Unit))
        .kid(spent_key(on, day, seen))
        .kid(el("p", "t14 i2").text(words::LID))
        .kid(slots::figures_told(&draft.form, &asked, (units, seen), |nth| tap(CanTap::At(nth))))
        .kids(slots::refused(app, seen))
        .kids(asked_about(draft.asks, seen))
        .kid(el("div", "push"))
        .kids(match put {
            _ if on.asks => choice(on, day, seen),
            Some(put) => put,
            None => pad(),
        });
    let done = done_key("key solid t22", common::DONE, "", tap(CanTap::Save));
    let keys = el("div", "um").kid(done).kid(key("key", common::NOT_NOW, "", say(Tap::Close)));
    Screen::new("workshop/can", head(Head::new(shop_words::COSTS, words::OPEN_ONE)), main).foot(el("footer", "foot").kid(keys)).says_it()
}
