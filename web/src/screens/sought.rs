//! What plans lack, where the maker stands: over the tiles, before going, and all of it with the piles that do.

use super::count::enough::still_open;
use super::count::{name, saved_fact};
use super::slots::no_words;
use super::{Screen, Seen, undo};
use crate::app::count::{Tap as Count, sheet};
use crate::app::sought::{Tap, looked_for};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, count as count_words, plan, sought as words, woods};
use fivebar_core::ledger::kind::stock::SoughtPiece;
use fivebar_core::quantity::{Count as Pieces, Listed, Units};
use fivebar_core::sheet::count::CountSheet;
use fivebar_core::sheet::sought::{LookedFor, LookedPiece};

pub fn say(tap: Tap) -> Msg {
    Msg::Count(Count::Sought(tap))
}

/// What is still open of the first plan that lacks something, over the tiles: a tap shows all. Nothing where nothing is looked for.
pub fn block(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let all = looked_for(app);
    let first = all.first()?;
    let shown = first.open().or(first.pieces.first());
    let row = el("span", "row").kid(el("b", "w8").text(headline(first, seen)));
    let row = row.kids(shown.map(|shown| el("span", "t14").text(here(shown, seen))));
    let more = all.iter().filter(|one| !one.is_there()).count().saturating_sub(1);
    let more = (0 < more).then(|| words::and_more(&seen.speech.count(Pieces::try_from(more).unwrap_or(Pieces::MAX))));
    let pieces = (!first.is_there() && first.unknown.is_none()).then(|| worded("span", "t14 i2 blk", listed(first, app, seen)));
    let block = el("button", "enough on-board").attr("type", "button").on_tap(say(Tap::Open)).key("sought").kid(row).kids(pieces);
    Some(block.kids(more.map(|more| el("span", "t14 i2 blk").text(more))))
}

/// "Bench: 5 more and it is likely".
fn headline(looked: &LookedFor, seen: Seen<'_>) -> String {
    match looked.open().filter(|_| !looked.is_there()) {
        Some(open) => words::of(&looked.of, &still(open, seen)),
        None if looked.unknown.is_some() => words::not_reckoned(&looked.of),
        None => words::enough(&looked.of),
    }
}

/// How many more; of what is known only to be no fewer, how many are wanted.
fn still(piece: &LookedPiece, seen: Seen<'_>) -> String {
    let n = piece.enough.pieces;
    if piece.piece.at_least == Some(true) { words::wanted(&seen.speech.count(n), n == 1) } else { still_open(&piece.enough, seen) }
}

fn here(piece: &LookedPiece, seen: Seen<'_>) -> String {
    let held = piece.enough.held;
    match held.good.saturating_add(held.unsorted) {
        0 => words::NONE_HERE.to_owned(),
        n => words::here(&seen.speech.count(n)),
    }
}

fn units(app: &App) -> Units {
    app.shelf().haul().map_or_else(|| app.begins_with().1, |haul| haul.units)
}

/// "3 of European oak, 40 × 150 × 365 mm or larger; or 5 of …".
fn listed(looked: &LookedFor, app: &App, seen: Seen<'_>) -> String {
    let open = looked.pieces.iter().filter(|it| !it.is_there());
    let all = open.map(|it| piece((&it.piece, it.enough.pieces), units(app), (app, seen))).listed();
    words::listed(&all, looked.any)
}

/// So many of a wood and how large, in the units of whoever asks.
pub fn piece((piece, n): (&SoughtPiece, Pieces), units: Units, (app, seen): (&App, Seen<'_>)) -> String {
    let side = |length| seen.speech.length(length, units);
    let size = [piece.thickness, piece.width, piece.length].map(side).join(" × ");
    let wood = piece.wood.as_ref().map(|wood| woods::among(wood, &app.shelf().workshop().wood.woods));
    let size = format!("{size} {}", common::length_unit(units));
    words::piece(&seen.speech.count(n), piece.at_least == Some(true), wood.as_deref(), &size)
}

/// All that is looked for, each with what does of the haul in hand, and the key that takes it off.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let (all, tiles) = (looked_for(app), sheet(app));
    let cards = all.iter().map(|looked| card(looked, tiles.as_ref(), (app, seen)));
    let rack = (!all.is_empty()).then(|| el("p", "t14 i2").text(words::UNSORTED_AND_RACK));
    let done = key("key h56", common::DONE, "", Msg::Count(Count::Close));
    let foot = el("footer", "foot brief").kids(undo::bar(app, seen)).kid(done);
    let began = tiles.as_ref().map_or(seen.now, |sheet| sheet.began);
    let top = Head::new(count_words::haul_of(&seen.speech.day(began)), words::TITLE).fact(saved_fact(app, seen));
    Screen::new("count/sought", head(top), el("main", "scr").kids(cards).kids(rack)).foot(foot)
}

fn card(looked: &LookedFor, tiles: Option<&CountSheet>, (app, seen): (&App, Seen<'_>)) -> El<Msg> {
    let shape = looked.plan.shape;
    let makes = looked.makes.map(|n| words::makes(shape, &seen.speech.count(n), n == 1));
    let pieces = (0..).zip(&looked.pieces).map(|(nth, it)| one((looked, nth), it, tiles, (app, seen)));
    let or = || el("p", "w7").text(words::OR);
    let pieces = pieces.enumerate().flat_map(|(nth, shown)| (0 < nth && looked.any).then(or).into_iter().chain([shown]));
    el("section", "card")
        .key(looked.id.to_string())
        .kid(el("h2", "ink1").text(words::heading(&looked.of, plan::shape(shape).0)))
        .kids(looked.is_there().then(|| el("p", "w7").text(words::enough(&looked.of))))
        .kids(looked.unknown.as_ref().map(|why| el("p", "why").text(no_words(why, seen))))
        .kids(pieces)
        .kids(makes.map(|makes| el("p", "t14 i2").text(makes)))
        .kid(key("key h56", words::LOOK_NO_MORE, "", say(Tap::NoMore(looked.id))))
}

fn one((looked, nth): (&LookedFor, Pieces), it: &LookedPiece, tiles: Option<&CountSheet>, (app, seen): (&App, Seen<'_>)) -> El<Msg> {
    let open = (!it.is_there()).then(|| still(it, seen));
    // What is there already stands there as it was asked for.
    let wanted = if it.is_there() { it.piece.n } else { it.enough.pieces };
    let with = (!it.with.is_empty()).then(|| words::with(&it.with));
    let least = (it.piece.at_least == Some(true)).then(|| words::PLAN_AGAIN_THEN.to_owned());
    let tiles = tiles.map(|sheet| sheet.tiles.as_slice()).unwrap_or_default();
    let does = |pile| it.piles.iter().any(|(does, _)| *does == pile);
    let chips = tiles.iter().map(|tile| Chip::choice(name(tile), does(tile.pile))).listed();
    let taps = tiles.iter().map(|tile| say(Tap::Suits(tile.pile, (looked.id, nth), !does(tile.pile)))).listed();
    let asked = (!chips.is_empty()).then(|| el("p", "t14 i2").text(words::WHICH_DO));
    let chips = (!chips.is_empty()).then(|| flowing("key h48", chips, move |nth| taps.get(nth).cloned().unwrap_or(say(Tap::Open))));
    let row = el("p", "row").kids(open.map(|open| el("b", "w8").text(open))).kid(el("span", "t14").text(here(it, seen)));
    el("div", "opened")
        .kid(worded("p", "", piece((&it.piece, wanted), units(app), (app, seen))))
        .kid(row)
        .kids([with, least].into_iter().flatten().map(|line| el("p", "t14 i2").text(line)))
        .kids(asked)
        .kids(chips)
}
