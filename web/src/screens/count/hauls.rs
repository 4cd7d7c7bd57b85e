//! Every haul: one of them is in hand, to be counted, sorted, brought home.

use super::super::{Screen, Seen};
use crate::app::count::Tap;
use crate::app::trip::TripTap;
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, count as words};
use fivebar_core::haul::{Haul, Where};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::Listed;

fn say(tap: TripTap) -> Msg {
    Msg::Count(Tap::Trip(tap))
}

/// Hauls that were fetched, the newest first.
fn fetched(app: &App) -> Vec<Haul> {
    fold::hauls(&app.shelf().book).filter(|haul| !haul.bought).listed()
}

/// The way to the others, where there are any.
pub fn other_hauls(app: &App) -> Option<El<Msg>> {
    (1 < fetched(app).len()).then(|| key("key h88", words::OTHER_HAULS, words::OTHER_HAULS_UNDER, say(TripTap::Hauls)))
}

/// An earlier haul is in hand: said over the tiles, with the way back.
pub fn earlier(app: &App) -> Option<El<Msg>> {
    app.shelf().has_earlier().then(|| key("key soft h48", words::EARLIER_HAUL, "", say(TripTap::InHand(None))).key("earlier"))
}

/// All of them.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let hauls = fetched(app);
    let newest = hauls.first().map(|haul| haul.id);
    let rows = hauls.iter().map(|haul| {
        let id = Some(haul.id).filter(|id| Some(*id) != newest);
        key("key h88 left", title(haul, app, seen), stands(haul, seen), say(TripTap::InHand(id))).key(haul.id.to_string())
    });
    let main = el("main", "scr").kids(rows).kid(key("key h56", common::NOT_NOW, "", Msg::Count(Tap::Close)));
    Screen::new("count/hauls", head(Head::new("", words::OTHER_HAULS)), main)
}

/// The day, and whose bin it was.
fn title(haul: &Haul, app: &App, seen: Seen<'_>) -> String {
    let day = seen.speech.day(haul.began);
    match haul.supplier.and_then(|id| app.shelf().name(id).cloned()) {
        Some(name) => format!("{day}, {name}"),
        None => day,
    }
}

/// Pieces, and what is still to do.
fn stands(haul: &Haul, seen: Seen<'_>) -> String {
    let n = |n: u32| common::pieces(n, &seen.speech.count(n));
    let pieces = n(haul.taken());
    let unsorted = haul.piles.iter().fold(0, |sum: u32, pile| sum.saturating_add(pile.unsorted()));
    match haul.trip_now(seen.now.at).stands {
        Where::NotLeft | Where::Home if 0 < unsorted => words::still_to_sort(&pieces, &seen.speech.count(unsorted)),
        Where::NotLeft | Where::Home => pieces,
        _ => words::not_home_yet(&pieces),
    }
}
