//! What is said of a haul and its trip: distance, times, what the van carries; and which pile to sort or name.

use super::count::{name, saved_fact, size};
use super::{Screen, Seen, after, prospect, supplier};
use crate::app::count::Tap;
use crate::app::pile::PileTap;
use crate::app::trip::{Details, Field, TripTap};
use crate::app::workshop::Tap as WorkshopTap;
use crate::app::workshop::wood::{Page as WoodPage, WoodTap};
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::chips::Chip;
use crate::parts::field::{Field as TextField, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::parts::pad;
use crate::view::{El, el};
use crate::words::en::{common, count as words, pile, refusal, sort};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::reading::Sign;
use fivebar_core::quantity::{Count, Decimal, Id, Listed, Money, Span, writing};
use fivebar_core::sheet::count::{CountSheet, Tile};

fn say(tap: TripTap) -> Msg {
    Msg::Count(Tap::Trip(tap))
}

/// The screen of the haul's own facts.
pub fn screen(details: &Details, sheet: &CountSheet, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(words::haul_of(&seen.speech.day(sheet.began)), words::WHOLE_HAUL).fact(saved_fact(app, seen));
    let (main, away) = match details.field {
        Some(Field::Supplier) => (whose(details, sheet, app, seen), common::NOT_NOW),
        Some(field) => (typing(details, field, sheet, seen), common::NOT_NOW),
        None => (facts(sheet, app, seen), common::DONE),
    };
    Screen::new("count/haul", head(top), main.kid(key("key h48", away, "", Msg::Count(Tap::Close))))
}

fn facts(sheet: &CountSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let haul = fold::haul(&app.shelf().book, sheet.haul);
    let trip = haul.as_ref().and_then(|haul| haul.trips.iter().max_by_key(|trip| trip.left));
    let none = || words::NOT_YET.to_owned();
    let span = |span: Option<Span>| span.filter(|span| Span::ZERO < *span).map_or_else(none, |span| seen.speech.span(span));
    let unit = common::mass_unit(sheet.units);
    let carries = sheet.load.carries.map_or_else(none, |mass| format!("{} {unit}", seen.speech.whole_mass(mass, sheet.units)));
    let driven = |d| format!("{} {}", writing::distance(d, seen.speech.typing(sheet.units)), common::distance_unit(sheet.units));
    let priced = trip.filter(|trip| !trip.is_unpriced()).zip(haul.as_ref()).and_then(|(trip, haul)| trip.cost(haul.currency).ok());
    let cost = priced.filter(|cost| !cost.is_zero()).map(|cost| format!(", {}", seen.speech.money(cost))).unwrap_or_default();
    let distance = trip.and_then(|trip| trip.distance).map_or_else(none, |d| driven(d) + &cost);
    let noted = haul.as_ref().is_some_and(|haul| !haul.costs.is_empty());
    let given = |haul: &fivebar_core::haul::Haul| Money::sum(haul.currency, haul.costs.iter().copied()).ok();
    let spent = haul.as_ref().and_then(given).filter(|_| noted);
    let supplier = haul.as_ref().and_then(|haul| haul.supplier).and_then(|id| app.shelf().name(id).cloned());
    let gift = spent.map_or_else(none, |sum| if sum.is_zero() { words::FOR_NOTHING.to_owned() } else { seen.speech.money(sum) });
    let mut keys = vec![
        // what was said of this haul alone stays with it; else the van is said once, in Workshop
        match haul.as_ref().is_some_and(|haul| haul.carries.is_some()) {
            true => figure_key(words::CARRIES, carries, say(TripTap::Choose(Field::Carries))),
            false => figure_key(words::CARRIES, carries, Msg::Workshop(WorkshopTap::Wood(WoodTap::Open(WoodPage::Van)))),
        },
        figure_key(words::SUPPLIER, supplier.unwrap_or_else(none), say(TripTap::Choose(Field::Supplier))),
        figure_key(words::GIFT, gift, say(TripTap::Choose(Field::Gift))),
    ];
    if let Some(haul) = haul.as_ref().filter(|haul| haul.carries.is_none()) {
        let people = haul.people.map_or_else(|| words::THE_DRIVER.to_owned(), |people| seen.speech.count(people));
        keys.insert(1, figure_key(words::ABOARD, people, say(TripTap::Choose(Field::People))));
    }
    if let Some(trip) = trip {
        keys.push(figure_key(words::DISTANCE, distance, say(TripTap::Choose(Field::Distance))));
        let percent = |share: Decimal| words::percent(&seen.speech.number(share.saturating_mul(Decimal::ONE_HUNDRED), 0, 0));
        let share = if trip.share == Decimal::ONE { words::ALL_OF_IT.to_owned() } else { percent(trip.share) };
        keys.push(figure_key(words::SHARE, share, say(TripTap::Choose(Field::Share))));
        keys.push(figure_key(words::AT_THE_WHEEL, span(Some(trip.whole_wheel())), say(TripTap::Choose(Field::Wheel))));
        keys.push(figure_key(words::AT_THE_BINS, span(Some(trip.bin())), say(TripTap::Choose(Field::Bin))));
    }
    let unpriced = trip.is_some_and(fivebar_core::haul::Trip::is_unpriced);
    el("main", "scr")
        .kid(el("div", "g2").kids(keys))
        .kids(unpriced.then(|| el("p", "t17").text(words::DRIVE_UNPRICED)))
        .kids(haul.as_ref().and_then(|haul| after::block(haul, app, seen)))
        .kid(caution(words::LOADING_CAUTION))
        .kid(caution(words::RECLAIMED_CAUTION))
        .kid(el("div", "push"))
        .kid(match trip {
            Some(_) => key("key h88", words::SAME_HAUL, words::SAME_HAUL_UNDER, say(TripTap::Leave)),
            None => key("key h88", words::SET_OUT, words::SET_OUT_UNDER, say(TripTap::Leave)),
        })
        .kids(super::count::other_hauls(app))
        .kid(key("key h88", words::NEW_HAUL, words::NEW_HAUL_UNDER, say(TripTap::NewHaul)))
}

/// Whose bin it was: a supplier who is known, or a new one.
fn whose(details: &Details, sheet: &CountSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let chosen = fold::haul(&app.shelf().book, sheet.haul).and_then(|haul| haul.supplier);
    let value = details.typed.text.clone();
    let typed = !value.trim().is_empty();
    let asked = TextField { id: "supplier", label: words::NEW_SUPPLIER.into(), value, ..TextField::default() };
    el("main", "scr")
        .kid(el("h2", "ink1").text(words::WHOSE_BIN))
        .kids(suppliers((chosen, sheet.haul), app, seen))
        .kid(field(asked, |name| say(TripTap::Named(name))))
        .kids(typed.then(|| key("key solid h88", words::ADD_SUPPLIER, "", say(TripTap::AddSupplier))))
        .kid(el("p", "t14 i2").text(crate::words::en::workshop::NAMES_STAY))
        .kid(el("div", "push"))
}

/// Those the workshop knows by name, each with what its past says.
fn suppliers((chosen, haul): (Option<Id>, Id), app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let known = supplier::named(app).into_iter();
    let one = |(id, name): (Id, String)| {
        let under = prospect::line(app, id, (Some(haul), seen));
        key("key h56 left", name, under, say(TripTap::Supplier(id)))
            .key(id.to_string())
            .attr("aria-pressed", if Some(id) == chosen { "true" } else { "false" })
    };
    known.map(one).listed()
}

fn typing(details: &Details, field: Field, sheet: &CountSheet, seen: Seen<'_>) -> El<Msg> {
    let (title, unit) = match field {
        Field::Carries => (words::CARRIES, common::mass_unit(sheet.units)),
        Field::People => (words::ABOARD, ""),
        Field::Distance => (words::DISTANCE, common::distance_unit(sheet.units)),
        Field::Wheel => (words::AT_THE_WHEEL, "min"),
        Field::Bin => (words::AT_THE_BINS, "min"),
        Field::Gift => (words::GIFT, ""),
        Field::Supplier => (words::WHOSE_BIN, ""),
        Field::Share => (words::SHARE, "%"),
    };
    let quick = (field == Field::Share).then(shares);
    let sign = if seen.speech.sign() == Sign::Comma { ',' } else { '.' };
    let wrong = details.typed.wrong.as_ref();
    el("main", "scr")
        .kid(el("h2", "ink1").text(title))
        .kids(quick)
        .kid(pad::entry(&details.typed.text, unit, wrong.is_some()))
        .kids(wrong.map(|why| el("p", "why").text(refusal::misread(why, seen.speech, sheet.units))))
        .kid(el("div", "push"))
        .kid(pad::pad((field != Field::People).then_some(sign), |press| Msg::Count(Tap::Press(press))))
        .kid(done_key("key solid h88", common::DONE, "", say(TripTap::Save)))
}

/// What one says of a drive that had other errands.
fn shares() -> El<Msg> {
    let said = [(100, words::ALL_OF_IT.to_owned()), (50, words::HALF.to_owned()), (25, words::percent("25"))];
    let chips = said.iter().map(|(_, said)| Chip::tap(said.clone())).listed();
    let keys = crate::parts::chips::chips("key h56", chips, |nth| say(TripTap::Share([100, 50, 25].get(nth).copied().unwrap_or(100))));
    el("div", "").kid(el("p", "t14 i2").text(words::SHARE_UNDER)).kid(keys)
}

/// How many pieces a pile is of, and how many of them are sorted so far.
fn pieces_sorted(tile: &Tile, seen: Seen<'_>) -> String {
    let n = |n: Count| seen.speech.count(n);
    let pieces = common::pieces(tile.taken, &n(tile.taken));
    let rejected = (0 < tile.rejected).then(|| n(tile.rejected));
    let is_sorted = 0 < tile.sorted_good || rejected.is_some();
    if is_sorted { sort::so_far(&pieces, &n(tile.sorted_good), rejected.as_deref()) } else { pieces }
}

/// Which pile to sort, and the page of each.
pub fn choose(sheet: &CountSheet, seen: Seen<'_>) -> Screen {
    let rows = sheet.tiles.iter().map(|tile| {
        let pieces = pieces_sorted(tile, seen);
        let size = Some(size(tile, sheet.units, seen.speech)).filter(|size| !size.is_empty());
        let under = size.map_or(pieces.clone(), |size| common::of_when(&pieces, &size));
        el("div", "ums")
            .key(tile.pile.to_string())
            .kid(key("key h88 left", name(tile), under, Msg::Count(Tap::SortPile(tile.pile))))
            .kid(key("key h88 m", words::SIZE, words::SIZE_UNDER, Msg::Count(Tap::Size(tile.pile))))
            .kid(key("key h88 m", pile::MORE, pile::MORE_UNDER, Msg::Count(Tap::Page(PileTap::Open(tile.pile)))))
    });
    let main = el("main", "scr").kids(rows).kid(key("key h48", common::NOT_NOW, "", Msg::Count(Tap::Close)));
    Screen::new("count/choose", head(Head::new(words::SORT, words::WHICH_PILE)), main)
}
