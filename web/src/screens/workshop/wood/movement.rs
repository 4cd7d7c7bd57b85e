//! How far a width moves through the year, with the slot it needs; and whether pieces are near enough to be glued together.

use super::super::super::slots::{Slot, no};
use super::air::chooses;
use super::{Asked, Screen, Seen, chosen, every_wood, hint, laid_out, tap, tenth};
use crate::app::workshop::wood::{Across, Page, Wood, WoodTap, Wrong, across, known, readings};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::fraction::worded;
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{air as words, common, refusal, woods};
use fivebar_core::ledger::fold::Workshop;
use fivebar_core::quantity::{Length, Listed, Units};
use fivebar_core::wood::moisture::{Moisture, spread};
use fivebar_core::wood::movement::Sawn;

/// How far a width moves.
pub fn page(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let (known, units) = (known(app), app.begins_with().1);
    let mut asked = Asked::new("workshop/movement", words::WOODS_AND_AIR, words::MOVEMENT);
    let answer = wood.chosen.as_ref().map_or(words::CHOOSE_WOOD.to_owned(), |key| woods::among(key, &known.wood.woods));
    let sawn = vec![Seg::new(words::FLAT, wood.sawn == Sawn::Flat), Seg::new(words::QUARTER, wood.sawn == Sawn::Quarter)];
    let sawn = even(words::MOVEMENT, sawn, chooses([WoodTap::Sawn(Sawn::Flat), WoodTap::Sawn(Sawn::Quarter)]));
    let worked = across(wood, &known, seen.speech.typing(units));
    asked.above = vec![chosen(words::WOOD, answer, wood.choosing), sawn, said(&worked, units, seen)];
    asked.slots =
        vec![Slot::side(words::WIDTH, units), Slot::new(words::DRY, "%"), Slot::new(words::DAMPEST, "%"), Slot::new(words::NOW, "%")];
    asked.below = if matches!(worked, Err(Wrong::NoWidth)) { vec![hint(words::ROOM_HINT)] } else { vec![] };
    asked.instead = wood.choosing.then(|| every_wood(wood, app));
    let new_room = worked.ok().is_some_and(|worked| is_new(worked.room, &known));
    asked.save = (new_room && !wood.choosing).then_some(words::SET_ROOM);
    laid_out(asked, wood, app, seen)
}

/// A room that is not the one that stands.
fn is_new(room: (fivebar_core::quantity::Decimal, fivebar_core::quantity::Decimal), known: &Workshop) -> bool {
    let six_to_ten = (fivebar_core::quantity::Decimal::from(6), fivebar_core::quantity::Decimal::TEN);
    room != known.wood.room.unwrap_or(six_to_ten)
}

fn said(worked: &Result<Across, Wrong>, units: Units, seen: Seen<'_>) -> El<Msg> {
    let card = el("section", "card").attr("aria-live", "polite");
    match worked {
        Ok(worked) => card.kids(answer(worked, units, seen)),
        Err(Wrong::NoWidth) => card.kid(el("p", "w7").text(words::NO_WIDTH)),
        Err(Wrong::NoCoefficient) => card.kid(el("p", "").text(words::NO_COEFFICIENT)),
        Err(Wrong::Misread(why)) => card.kid(el("p", "why").text(refusal::misread(why, seen.speech, units))),
        Err(Wrong::Refused(why)) => card.kid(no(why, seen)),
    }
}

fn answer(worked: &Across, units: Units, seen: Seen<'_>) -> Vec<El<Msg>> {
    let length = |length: Length| written(length, units, seen);
    let percent = |n| seen.speech.number(n, 0, 1);
    let moves = worked.moves;
    let lead = el("p", "row")
        .kid(worded("b", "t30 w8", words::moves(&length(moves.usual))))
        .kid(el("span", "t14").text(words::between(&percent(worked.room.0), &percent(worked.room.1))));
    let differ =
        (moves.least != moves.most).then(|| worded("p", "t14 i2", words::sources_differ(&length(moves.least), &length(moves.most))));
    let some = |by: Length| Some(length(by)).filter(|_| by != Length::ZERO);
    let slot = worked.slot.map(|slot| words::slot(some(slot.swells).as_deref(), some(slot.shrinks).as_deref()));
    let slot = slot.map_or_else(|| hint(words::SAY_NOW), |slot| worded("p", "w7", slot));
    std::iter::once(lead).chain(differ).chain([slot]).listed()
}

/// A small length: in inches to a 64th, in millimetres to a tenth.
pub fn written(length: Length, units: Units, seen: Seen<'_>) -> String {
    let step = Length::INCH_64TH.as_nm();
    let shown = match units {
        Units::Inch => {
            let steps = length.as_nm().saturating_add(step / 2) / step;
            Length::INCH_64TH.times(steps).unwrap_or(length)
        }
        Units::Metric => length,
    };
    format!("{} {}", seen.speech.length(shown, units), common::length_unit(units))
}

/// Readings side by side.
pub fn gluing(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let mut asked = Asked::new("workshop/gluing", words::WOODS_AND_AIR, words::GLUING);
    let read = readings(wood, seen.speech.sign());
    asked.above = side_by_side(&read, seen);
    if !read.is_empty() {
        let chips = read.iter().map(|one| Chip::tap(super::per_cent(one.as_per_cent(), seen))).listed();
        asked.above.push(flowing("key h48", chips, |nth| tap(WoodTap::Drop(nth))));
        asked.above.push(hint(words::TAKE_OUT));
    }
    asked.slots = vec![Slot::new(words::READING, "%")];
    asked.save = Some(words::ADD_READING);
    debug_assert!(wood.page == Page::Gluing);
    laid_out(asked, wood, app, seen)
}

fn side_by_side(read: &[Moisture], seen: Seen<'_>) -> Vec<El<Msg>> {
    match read.len() {
        0 => vec![el("p", "t22 w8").text(words::NO_READINGS)],
        1 => vec![el("p", "t22 w8").text(words::ONE_READING)],
        _ => {
            let apart = spread(read);
            let points = tenth(apart.as_points(), seen);
            let verdict = if apart.too_far_to_glue() { words::TOO_FAR } else { words::NEAR_ENOUGH };
            let class = if apart.too_far_to_glue() { "t17 w8 c-under" } else { "t17 w8" };
            let lead = el("p", "t30 w8").text(words::apart(&points, points == "1"));
            vec![lead, el("p", class).attr("role", "status").text(verdict), hint(words::COMMON_PRACTICE)]
        }
    }
}
