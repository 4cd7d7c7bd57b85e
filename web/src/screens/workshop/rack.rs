//! The rack: good pieces no job has, by haul, each pile with its section and its length drawn to one scale.

use super::super::count::{name, size};
use super::super::{Screen, Seen};
use super::{page, strong};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::ink::{rect, sized};
use crate::view::{El, el};
use crate::words::en::{common, workshop as words};
use fivebar_core::haul::{Haul, Pile};
use fivebar_core::ledger::fold;
use fivebar_core::quantity::order_by_key;
use fivebar_core::quantity::{Decimal, Length, Volume};
use fivebar_core::sheet::count::tile;

/// A section is drawn so many px to the inch, but never beyond its box.
const SECTION: f64 = 13.5;
const BOX: (f64, f64) = (36.0, 46.0);
const LONGEST: f64 = 214.0;
/// A board this long fills its line; longer ones make all the others shorter.
const INCHES: f64 = 41.0;

/// Hauls that have something on the rack, the oldest first.
fn stocked(app: &App) -> Vec<Haul> {
    let mut hauls: Vec<Haul> = fold::hauls(&app.shelf().book).filter(|haul| haul.piles.iter().any(|pile| 0 < pile.on_rack())).collect();
    order_by_key(&mut hauls, |haul| haul.began.at);
    hauls
}

fn piles(hauls: &[Haul]) -> impl Iterator<Item = &Pile> {
    hauls.iter().flat_map(|haul| &haul.piles).filter(|pile| 0 < pile.on_rack())
}

/// How it stands, on one line.
pub fn short(app: &App, seen: Seen<'_>) -> String {
    let hauls = stocked(app);
    let pieces = piles(&hauls).fold(0u32, |sum, pile| sum.saturating_add(pile.on_rack()));
    if pieces == 0 { words::NONE_YET.to_owned() } else { common::pieces(pieces, &seen.speech.count(pieces)) }
}

/// The page.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let hauls = stocked(app);
    if hauls.is_empty() {
        let main = el("main", "scr").kid(el("p", "").text(words::RACK_EMPTY));
        return page(app, ("workshop/rack", words::RACK), main, seen);
    }
    let pieces = piles(&hauls).fold(0u32, |sum, pile| sum.saturating_add(pile.on_rack()));
    let n = piles(&hauls).count();
    let all = words::pieces_in_piles(&common::pieces(pieces, &seen.speech.count(pieces)), n, &seen.speech.number(Decimal::from(n), 0, 0));
    let longest = piles(&hauls).filter_map(|pile| pile.length_to.or(pile.length)).map(inches).fold(INCHES, f64::max);
    let lead = el("p", "row").kid(el("b", "").text(all)).kid(el("span", "t14").text(words::OLDEST_FIRST));
    let main = el("main", "scr racked").kid(lead).kids(hauls.iter().map(|haul| of_haul(haul, longest, seen)));
    let page = page(app, ("workshop/rack", words::RACK), main, seen);
    let top = Head::new(words::WORKSHOP, words::RACK).fact(super::saved_fact(app, seen)).fact(strong(seen.speech.day(seen.now)));
    Screen { head: head(top), ..page }
}

fn of_haul(haul: &Haul, longest: f64, seen: Seen<'_>) -> El<Msg> {
    let weeks = i64::from(haul.began.day().until(seen.now.day()).max(0) / 7);
    let age = words::weeks(weeks, &seen.speech.number(Decimal::from(weeks), 0, 0));
    let volume = haul.piles.iter().try_fold(Volume::ZERO, |sum, pile| {
        let piece = pile.piece().ok().flatten().filter(|_| 0 < pile.on_rack());
        piece.map_or(Ok(sum), |piece| piece.times(pile.on_rack()).and_then(|all| sum.plus(all)))
    });
    let volume = volume.ok().filter(|volume| !volume.is_zero());
    let volume = volume.map(|volume| {
        let said = format!("{} {}", seen.speech.volume(volume, haul.units), common::volume_unit(haul.units));
        el("span", "t14").text(said)
    });
    let from = words::from_day(&seen.speech.day(haul.began));
    let head = el("h2", "aged row").kid(el("span", "").kid(el("b", "").text(age)).kid(el("span", "").text(from))).kids(volume);
    let rows = haul.piles.iter().filter(|pile| 0 < pile.on_rack()).map(|pile| one(pile, haul, longest, seen));
    el("section", "racks").key(haul.id.to_string()).kid(head).kids(rows)
}

fn one(pile: &Pile, haul: &Haul, longest: f64, seen: Seen<'_>) -> El<Msg> {
    let shown = tile(pile);
    let wood = tone(pile);
    let middle = el("div", "mid")
        .kid(worded("span", "nm", name(&shown)))
        .kid(worded("span", "s", size(&shown, haul.units, seen.speech)))
        .kids(pile.length.map(|length| board(inches(pile.length_to.unwrap_or(length)), longest, wood)));
    el("div", "pile")
        .key(pile.id.to_string())
        .kid(section(pile, wood))
        .kid(middle)
        .kid(el("b", "t30 w8").text(seen.speech.count(pile.on_rack())))
}

/// Its section as the saw left it; empty while it has no size.
fn section(pile: &Pile, wood: &'static str) -> El<Msg> {
    let drawn = sized("cut", BOX);
    let Some((thick, wide)) = pile.thickness.zip(pile.width).map(|(t, w)| (inches(t), inches(w))) else { return drawn };
    let scale = SECTION.min((BOX.0 - 2.0) / thick.max(0.1)).min((BOX.1 - 2.0) / wide.max(0.1));
    let (w, h) = (thick * scale, wide * scale);
    drawn.kid(rect(wood, ((BOX.0 - w) / 2.0, (BOX.1 - h) / 2.0), (w, h)))
}

fn board(long: f64, longest: f64, wood: &'static str) -> El<Msg> {
    let width = (LONGEST - 2.0) * long / longest;
    crate::parts::ink::drawing("cut long", (LONGEST, 12.0)).attr("aria-hidden", "true").kid(rect(wood, (1.0, 1.0), (width, 10.0)))
}

fn inches(length: Length) -> f64 {
    length.as_nm() as f64 / Length::INCH.as_nm() as f64
}

/// The tone of its wood; its name stands beside it.
fn tone(pile: &Pile) -> &'static str {
    let key = pile.wood.as_ref().map_or("", |key| key.as_str());
    match key.split('-').next().unwrap_or_default() {
        "ash" | "maple" | "birch" | "poplar" => "w1",
        "oak" | "beech" | "elm" | "hickory" => "w2",
        "cherry" | "walnut" | "mahogany" | "alder" => "w3",
        _ => "w0",
    }
}
