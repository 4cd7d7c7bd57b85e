//! Does this trip pay: one line beside the load while counting; how it comes about, one tap further.

use super::super::{Screen, Seen};
use super::{name, saved_fact};
use crate::app::count::Tap;
use crate::app::pile::PileTap;
use crate::app::trip::TripTap;
use crate::app::workshop::wood::{Page, WoodTap};
use crate::app::{App, Msg, workshop};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{common, count as count_words, price, worth as words};
use fivebar_core::haul::Where;
use fivebar_core::haul::worth::{Evens, Worth};
use fivebar_core::quantity::{Listed, Money, Span, half_up};
use fivebar_core::sheet::count::CountSheet;
use fivebar_core::sheet::worth::{Missing, WorthSheet};
use fivebar_core::wood::species::is_known;

/// A sum to the whole unit, as one says it.
fn about(sum: Money, seen: Seen<'_>) -> String {
    let whole = Money::book(half_up(sum.amount().abs(), 0), sum.currency());
    seen.speech.short_money(whole.unwrap_or(sum))
}

/// "Trip pays, $13 ahead" or "$12 short".
fn headline(worth: &Worth, seen: Seen<'_>) -> String {
    let sum = about(worth.gain, seen);
    match (worth.pays(), seen.page.is_narrow()) {
        (true, true) => words::pays_short(&sum),
        (true, false) => words::pays(&sum),
        (false, _) => words::short(&sum),
    }
}

/// What stands in the head of a narrow page.
pub fn short(sheet: &WorthSheet, seen: Seen<'_>) -> Option<String> {
    sheet.worth.as_ref().map(|worth| headline(worth, seen))
}

/// The line beside the load.
pub fn line(sheet: &WorthSheet, tiles: &CountSheet, app: &App, seen: Seen<'_>) -> El<Msg> {
    let (said, under) = match &sheet.worth {
        _ if app.is_glimpse() => (words::DOES_IT_PAY.to_owned(), words::READING.to_owned()),
        Some(worth) if worth.pays() => (headline(worth, seen), saves_costs(worth, seen)),
        Some(worth) if is_home(tiles) => (headline(worth, seen), saves_costs(worth, seen)),
        Some(worth) => (headline(worth, seen), evens(sheet, tiles, seen)),
        None if sheet.missing.is_empty() => (words::DOES_IT_PAY.to_owned(), words::NOTHING_COUNTED.to_owned()),
        None => {
            let n = sheet.missing.len();
            (words::DOES_IT_PAY.to_owned(), words::figures_first(n, &seen.speech.count(n as u32)))
        }
    };
    let under = if sheet.worth.is_some() && sheet.without_drive { words::without_a_drive(&under) } else { under };
    el("button", "loadrow")
        .attr("type", "button")
        .on_tap(Msg::Count(Tap::Worth))
        .kid(el("b", "").text(said))
        .kid(el("span", "t14 i2").text(under))
}

fn saves_costs(worth: &Worth, seen: Seen<'_>) -> String {
    words::saves_costs(&about(saves(worth), seen), &about(worth.cost, seen))
}

/// The boards it replaces, and the trip it saves.
fn saves(worth: &Worth) -> Money {
    worth.replaced.plus(worth.saved).unwrap_or(worth.replaced)
}

/// Nothing more can be loaded.
fn is_home(tiles: &CountSheet) -> bool {
    tiles.sorting_begun || tiles.trip.stands == Where::Home
}

/// "9 more of Ash leg squares evens it".
fn evens(sheet: &WorthSheet, tiles: &CountSheet, seen: Seen<'_>) -> String {
    match sheet.evens {
        Some((pile, Evens::More(n))) => {
            let pile = tiles.tiles.iter().find(|tile| tile.pile == pile).map(name).unwrap_or_default();
            words::evens(&seen.speech.count(n), &pile)
        }
        Some((_, Evens::AtOnce)) => words::NO_MORE_NEEDED.to_owned(),
        _ => words::NEVER_EVENS.to_owned(),
    }
}

/// How it comes about.
pub fn screen(sheet: &WorthSheet, tiles: &CountSheet, app: &App, seen: Seen<'_>) -> Screen {
    let main = el("main", "scr");
    let main = match &sheet.worth {
        Some(worth) => main
            .kid(el("p", "t22 w8").text(headline(worth, seen)))
            .kids(below(worth, sheet, tiles, seen))
            .kids(no_drive(sheet))
            .kid(sums(worth, sheet, seen)),
        None => main.kid(el("p", "").text(words::NOBODY_PAYS)).kids(missing(sheet)),
    };
    let notes = sheet.worth.as_ref().map(|worth| notes(worth, (sheet, tiles), seen)).unwrap_or_default();
    let main = main.kids(yard(sheet, &app.shelf().workshop())).kids(notes).kid(el("div", "push")).kid(key(
        "key h56",
        common::DONE,
        "",
        Msg::Count(Tap::Close),
    ));
    let top = Head::new(count_words::haul_of(&seen.speech.day(tiles.began)), words::THIS_TRIP).fact(saved_fact(app, seen));
    Screen::new("count/worth", head(top), main)
}

fn below(worth: &Worth, sheet: &WorthSheet, tiles: &CountSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    (!worth.pays() && !is_home(tiles)).then(|| el("p", "").text(evens(sheet, tiles, seen)))
}

fn no_drive(sheet: &WorthSheet) -> Option<El<Msg>> {
    sheet.without_drive.then(|| el("p", "").text(words::NO_DRIVE))
}

fn sums(worth: &Worth, sheet: &WorthSheet, seen: Seen<'_>) -> El<Msg> {
    let line = |class: &'static str, what: &str, sum: Money| {
        el("tr", class).kid(el("th", "").attr("scope", "row").text(what.to_owned())).kid(el("td", "n").text(seen.speech.money(sum)))
    };
    let row = |what: &str, sum: Money| line("", what, sum);
    let drive = if sheet.as_last_time { format!("{}, {}", words::THE_DRIVE, words::AS_LAST_TIME) } else { words::THE_DRIVE.to_owned() };
    let replaces = if sheet.by_guess { format!("{}, {}", words::REPLACES, words::THREE_IN_FOUR) } else { words::REPLACES.to_owned() };
    let saved = (!worth.saved.is_zero()).then(|| row(words::SAVED_TRIP, worth.saved));
    let rows = el("tbody", "")
        .kid(row(&replaces, worth.replaced))
        .kids(saved)
        .kid(line("sum", words::SAVES, saves(worth)))
        .kid(row(&drive, worth.against.distance))
        .kid(row(words::GIFT, worth.against.gift))
        .kid(row(words::MINUTES, worth.against.minutes))
        .kid(line("sum", words::COSTS, worth.cost))
        .kid(line(
            "sum",
            if worth.pays() { words::AHEAD } else { words::SHORT },
            Money::book(worth.gain.amount().abs(), worth.gain.currency()).unwrap_or(worth.gain),
        ));
    el("section", "card").kid(el("table", "facts").kid(rows)).kid(el("p", "t14 i2").text(minutes(sheet, seen)))
}

/// Which of the minutes were, and which are planned.
fn minutes(sheet: &WorthSheet, seen: Seen<'_>) -> String {
    let [wheel, bins, sorting, ahead] = [sheet.wheel, sheet.bins, sheet.sorting, sheet.ahead].map(|span| seen.speech.span(span));
    match sheet.sorting {
        Span::ZERO => words::minutes_of(&wheel, &bins, &ahead),
        _ => words::minutes_sorted(&wheel, &bins, (&sorting, &ahead)),
    }
}

/// The trip to the timber yard, counted or not by one choice.
fn yard(sheet: &WorthSheet, known: &fivebar_core::ledger::fold::Workshop) -> Vec<El<Msg>> {
    let asked = el("h2", "ink1").text(words::COUNT_THE_YARD);
    let segs = vec![Seg::new(words::YES_COUNT_IT, sheet.counts_yard), Seg::new(words::NO, !sheet.counts_yard)];
    let choice = even(words::COUNT_THE_YARD, segs, |nth| Msg::Count(Tap::Trip(TripTap::SavesTrip(nth == 0))));
    let far = known.wood.yard_distance.is_some();
    let why = if far { words::YARD_UNPRICED } else { words::YARD_UNKNOWN };
    let open = match far {
        true => Msg::Workshop(workshop::Tap::ShowPage(workshop::Over::Till)),
        false => Msg::Workshop(workshop::Tap::Wood(workshop::wood::WoodTap::Open(workshop::wood::Page::Yard))),
    };
    let unknown = (sheet.counts_yard && sheet.yard.is_none()).then(|| key("key soft h56", why, "", open));
    [asked, choice].into_iter().chain(unknown).listed()
}

fn notes(worth: &Worth, (sheet, tiles): (&WorthSheet, &CountSheet), seen: Seen<'_>) -> Vec<El<Msg>> {
    let n = worth.left_out;
    let left_out = (0 < n).then(|| words::left_out(n, &common::pieces(n, &seen.speech.count(n))));
    let unknown = tiles.tiles.iter().any(|tile| 0 < tile.taken && tile.wood.as_ref().is_none_or(|wood| !is_known(wood)));
    let nothing = (unknown && !worth.replaces_nothing.is_zero()).then(|| words::UNKNOWN_REPLACES_NOTHING.to_owned());
    let how = if sheet.sorting == Span::ZERO { words::HOW_IT_GOES } else { words::HOW_IT_GOES_SORTED };
    let open = (Span::ZERO < sheet.in_question).then(|| price::haul_in_question(&seen.speech.span(sheet.in_question)));
    let lines = open.into_iter().chain(left_out).chain(nothing).chain([how.to_owned()]);
    lines.map(|line| el("p", "t14 i2").text(line)).listed()
}

/// Where boards have their prices.
fn open_yard() -> Msg {
    Msg::Workshop(workshop::Tap::Wood(WoodTap::Open(Page::Yard)))
}

/// What has to be said first, each with the way there.
fn missing(sheet: &WorthSheet) -> Vec<El<Msg>> {
    let open = |over: workshop::Over| Msg::Workshop(workshop::Tap::ShowPage(over));
    let one = |missing: &Missing| match missing {
        Missing::Pay => key("key h88 left", words::SAY_PAY, words::SAY_PAY_UNDER, open(workshop::Over::Rate)),
        Missing::Distance => key("key h88 left", words::SAY_DISTANCE, words::SAY_DISTANCE_UNDER, Msg::Count(Tap::Trip(TripTap::Open))),
        Missing::Mileage => key("key h88 left", words::SAY_MILEAGE, words::SAY_MILEAGE_UNDER, open(workshop::Over::Till)),
        Missing::Pile(pile) => key("key h88 left", words::SAY_PILE, words::SAY_PILE_UNDER, Msg::Count(Tap::Page(PileTap::Open(*pile)))),
        Missing::BoardPrice => key("key h88 left", words::SAY_PRICE, words::SAY_PRICE_UNDER, open_yard()),
    };
    let title = (!sheet.missing.is_empty()).then(|| el("h2", "ink1").text(words::STILL_TO_SAY));
    title.into_iter().chain(sheet.missing.iter().map(one)).listed()
}
