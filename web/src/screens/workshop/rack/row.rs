//! A pile as it lies: its section as the saw left it, its length to the scale of the rack, and how many.

use super::super::super::Seen;
use super::super::super::count::size_or_none;
use super::{Page, RackTap, by_haul, say};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::ink::{drawing, line, rect, sized};
use crate::view::{El, el};
use crate::words::en::{changed, common, count, jobs, rack as words, woods, workshop};
use fivebar_core::quantity::{Count, Decimal, Length, Listed, Volume, in_small};
use fivebar_core::sheet::stock::StockPile;
use fivebar_core::sheet::stock::find::Order;

/// A section is drawn so many px to the inch, but never beyond its box.
const SECTION: f64 = 13.5;
const BOX: (f64, f64) = (36.0, 46.0);
const LONGEST: f64 = 214.0;
/// A board this long fills its line; longer ones make all the others shorter.
const INCHES: f64 = 41.0;

/// A wood nobody knows has no name to say.
const UNKNOWN: &str = "unknown-hardwood";

/// To what scale boards are drawn, and where the length that is looked for is marked on each.
#[derive(Clone, Copy)]
pub struct Drawn {
    pub longest: f64,
    pub mark: Option<Length>,
}

/// The length that fills a line, in inches.
pub fn longest(piles: &[StockPile]) -> f64 {
    piles.iter().filter_map(|pile| pile.length_to.or(pile.length)).map(inches).fold(INCHES, f64::max)
}

/// By haul with its age and volume, the oldest first; in another order one pile after the other, each with its age.
pub fn groups(piles: &[StockPile], order: Order, drawn: Drawn, seen: Seen<'_>) -> Vec<El<Msg>> {
    if !by_haul(order) {
        return vec![el("section", "racks").kids(piles.iter().map(|pile| row(pile, drawn, true, seen)))];
    }
    piles.chunk_by(|one, other| one.haul.id == other.haul.id).map(|piles| group(piles, drawn, seen)).listed()
}

fn group(piles: &[StockPile], drawn: Drawn, seen: Seen<'_>) -> El<Msg> {
    let Some(haul) = piles.first().map(|pile| &pile.haul) else { return el("section", "racks") };
    let weeks = i64::from(haul.began.day().until(seen.now.day()).max(0) / 7);
    let volume = piles.iter().filter_map(|pile| pile.volume).try_fold(Volume::ZERO, Volume::plus);
    let volume = volume.ok().filter(|volume| !volume.is_zero());
    let volume = volume.map(|volume| {
        let said = format!("{} {}", seen.speech.volume(volume, haul.units), common::volume_unit(haul.units));
        el("span", "t14").text(said)
    });
    let from = workshop::from_day(&seen.speech.day(haul.began));
    let age = el("span", "").kid(el("b", "").text(aged(weeks, seen))).kid(el("span", "").text(from));
    let head = el("h2", "aged row").kid(age).kids(volume);
    el("section", "racks").key(haul.id.to_string()).kid(head).kids(piles.iter().map(|pile| row(pile, drawn, false, seen)))
}

/// "11 weeks".
pub fn aged(weeks: i64, seen: Seen<'_>) -> String {
    workshop::weeks(weeks, &seen.speech.number(Decimal::from(weeks), 0, 0))
}

/// One pile as a key that opens it.
pub fn row(pile: &StockPile, drawn: Drawn, with_age: bool, seen: Seen<'_>) -> El<Msg> {
    el("button", "pile")
        .attr("type", "button")
        .key(pile.at.pile.to_string())
        .on_tap(say(RackTap::Show(Page::Pile(pile.at))))
        .kids(drawing_and_words(pile, drawn, with_age, seen))
        .kid(el("b", "t30 w8").text(seen.speech.count(pile.on_rack)))
}

/// The same as it stands on its own page.
pub fn lying(pile: &StockPile, seen: Seen<'_>) -> El<Msg> {
    let drawn = Drawn { longest: longest(std::slice::from_ref(pile)), mark: None };
    el("div", "pile lies").kids(drawing_and_words(pile, drawn, false, seen)).kid(el("b", "t30 w8").text(seen.speech.count(pile.on_rack)))
}

fn drawing_and_words(pile: &StockPile, drawn: Drawn, with_age: bool, seen: Seen<'_>) -> [El<Msg>; 2] {
    let wood = tone(pile);
    let sides = size(pile, seen);
    let sides = if with_age { format!("{sides}, {}", aged(pile.weeks, seen)) } else { sides };
    let middle = el("span", "mid")
        .kid(worded("span", "nm", name(pile)))
        .kid(worded("span", "s", sides))
        .kids(aside(pile, seen).map(|said| el("span", "s").text(said)))
        .kids(pile.length.map(|length| board(inches(pile.length_to.unwrap_or(length)), drawn, wood)));
    [section(pile, wood), middle]
}

/// What else is worth a word: set apart, and where it lies.
fn aside(pile: &StockPile, seen: Seen<'_>) -> Option<String> {
    let apart = pile.apart_in_all();
    let apart = (0 < apart).then(|| words::apart(&seen.speech.count(apart)));
    let bought = pile.haul.bought.then(|| words::BOUGHT_ONLY.to_owned());
    let away = pile.haul.on_its_way.then(|| words::NOT_HOME_YET.to_owned());
    let uncut = (0 < pile.uncut).then(|| changed::after_the_saw(Some(&seen.speech.count(pile.uncut))));
    let said: Vec<String> = away.into_iter().chain(uncut).chain(bought).chain(apart).chain(pile.place.clone()).listed();
    (!said.is_empty()).then(|| said.join(", "))
}

/// "12 set apart for Stands: 10 left", where fewer are found than are set apart.
pub fn kept_apart(pile: &StockPile, found: Count, seen: Seen<'_>) -> Option<String> {
    let left = pile.apart_after(found)?;
    let whose = match pile.apart.as_slice() {
        [one] => words::apart_for(&seen.speech.count(one.n), &one.name),
        _ => words::apart(&seen.speech.count(pile.apart_in_all())),
    };
    Some(words::left_of(&whose, &seen.speech.count(left)))
}

/// The same after it was written, until the next tap.
pub fn given_up(app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let (pile, found) = app.workshop.rack.given_up.as_ref().filter(|_| !app.shelf().took_back_last())?;
    let said = kept_apart(pile, *found, seen)?;
    Some(el("p", "w7").attr("role", "status").text(words::of_pile(&name(pile), &said)))
}

/// A pile by its wood and its name, or its letter: a tone alone says no wood.
pub fn name(pile: &StockPile) -> String {
    let called = |wood| woods::called(wood, pile.own.as_deref());
    let known = pile.wood.as_ref().filter(|wood| wood.as_str() != UNKNOWN).map(called);
    match (&pile.name, &pile.wood) {
        (Some(name), _) => match known.filter(|wood| !in_small(name).contains(&in_small(wood))) {
            Some(wood) => words::wood_and_name(&wood, name),
            None => jobs::upper_first(name),
        },
        (None, Some(wood)) => format!("{}, {}", called(wood), pile.label),
        (None, None) => count::pile(&pile.label),
    }
}

/// Its sides with their unit, in the units of its haul.
pub fn size(pile: &StockPile, seen: Seen<'_>) -> String {
    size_or_none(pile.size(), pile.haul.units, seen.speech)
}

/// Its section as the saw left it; empty while it has no size.
fn section(pile: &StockPile, wood: &'static str) -> El<Msg> {
    let drawn = sized("cut", BOX);
    let Some((thick, wide)) = pile.thickness.zip(pile.width).map(|(t, w)| (inches(t), inches(w))) else { return drawn };
    let scale = SECTION.min((BOX.0 - 2.0) / thick.max(0.1)).min((BOX.1 - 2.0) / wide.max(0.1));
    let (w, h) = (thick * scale, wide * scale);
    drawn.kid(rect(wood, ((BOX.0 - w) / 2.0, (BOX.1 - h) / 2.0), (w, h)))
}

fn board(long: f64, drawn: Drawn, wood: &'static str) -> El<Msg> {
    let at = |length: f64| (LONGEST - 2.0) * length / drawn.longest;
    let mark = drawn.mark.map(|length| 1.0 + at(inches(length))).filter(|x| *x < LONGEST);
    drawing("cut long", (LONGEST, 12.0))
        .attr("aria-hidden", "true")
        .kid(rect(wood, (1.0, 1.0), (at(long), 10.0)))
        .kids(mark.map(|x| line("asked", (x, -2.0), (x, 14.0))))
}

fn inches(length: Length) -> f64 {
    length.as_nm() as f64 / Length::INCH.as_nm() as f64
}

/// The tone of its wood; its name stands beside it.
fn tone(pile: &StockPile) -> &'static str {
    let key = pile.wood.as_ref().map_or("", |key| key.as_str());
    match key.split('-').next().unwrap_or_default() {
        "ash" | "maple" | "birch" | "poplar" => "w1",
        "oak" | "beech" | "elm" | "hickory" => "w2",
        "cherry" | "walnut" | "mahogany" | "alder" => "w3",
        _ => "w0",
    }
}
