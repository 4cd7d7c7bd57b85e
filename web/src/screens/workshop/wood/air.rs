//! The list of woods and air, and the air: what wood comes to in it, drawn between the seasons of the maker's room.

use super::super::super::slots::Slot;
use super::{Asked, Screen, Seen, hint, how_many, laid_out, listed, per_cent, row as to, tenth};
use crate::app::workshop::wood::{Page, Wood, WoodTap, known};
use crate::app::{App, Msg};
use crate::parts::field::{Field, field};
use crate::parts::scale::{Kind, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::{air as words, refusal};
use fivebar_core::ledger::kind::wood::AirRead;
use fivebar_core::quantity::{Decimal, Units, Wall};
use fivebar_core::wood::moisture::Moisture;
use fivebar_core::wood::movement::Room;

/// The line of the workshop's first page.
pub fn row() -> El<Msg> {
    to(words::WOODS_AND_AIR, words::ROW_UNDER.to_owned(), Page::Woods).key(words::WOODS_AND_AIR)
}

/// What is here: each block one tap away.
pub fn list(app: &App, seen: Seen<'_>) -> Screen {
    let known = known(app);
    let here = known.wood.comes_to();
    let here =
        here.map_or(crate::words::en::workshop::NOT_SAID.to_owned(), |moisture| words::comes_to(&per_cent(moisture.as_per_cent(), seen)));
    let rows = el("div", "rows")
        .kid(to(words::AIR, here, Page::Air))
        .kid(to(words::MOVEMENT, words::MOVEMENT_UNDER.to_owned(), Page::Movement))
        .kid(to(words::GLUING, words::GLUING_UNDER.to_owned(), Page::Gluing))
        .kid(to(words::OWN, how_many(known.wood.woods.own().count(), seen), Page::Own));
    listed(("workshop/woods", words::WOODS_AND_AIR), el("main", "scr").kid(rows), app, seen)
}

/// The last reading, and a new one.
pub fn page(wood: &Wood, app: &App, seen: Seen<'_>) -> Screen {
    let units = app.begins_with().1;
    let mut asked = Asked::new("workshop/air", words::WOODS_AND_AIR, words::AIR);
    let known = known(app);
    asked.above = match known.wood.air.as_ref().zip(known.wood.comes_to()) {
        Some(((air, at), moisture)) => last(air, (*at, moisture), room(&known.wood.room), seen),
        None => vec![el("p", "t22 w8").text(words::NO_AIR), hint(words::NO_AIR_UNDER)],
    };
    asked.above.push(el("h2", "").text(words::AIR_NOW));
    let place = Field { id: "air-place", label: words::WHERE.into(), value: wood.name.clone(), ..Field::default() };
    asked.below.push(field(place, |text| super::tap(WoodTap::Name(text))));
    asked.slots =
        vec![Slot { signed: units == Units::Metric, ..Slot::new(words::WARM, words::degree_unit(units)) }, Slot::new(words::DAMP, "%")];
    asked.save = Some(words::WRITE_DOWN);
    laid_out(asked, wood, app, seen)
}

fn room(said: &Option<(Decimal, Decimal)>) -> Room {
    let moisture = |n: Decimal| Moisture::per_cent(f64::try_from(n).unwrap_or(f64::NAN)).ok();
    let room = said.and_then(|(low, high)| Room::of(moisture(low)?, moisture(high)?).ok());
    room.unwrap_or(Room::HEATED)
}

fn last(air: &AirRead, (at, moisture): (Wall, Moisture), room: Room, seen: Seen<'_>) -> Vec<El<Msg>> {
    let here = moisture.as_per_cent();
    let each = words::COMES_HERE.map(|line| el("span", "").text(line));
    let lead = el("section", "lead").kid(el("b", "t60 w8").text(per_cent(here, seen))).kid(el("span", "t14 right").kids(each));
    let read = words::read_on(
        &refusal::degrees(air.temperature.0, seen.speech),
        &crate::words::en::count::percent(&seen.speech.number(air.humidity.0, 0, 1)),
        &seen.speech.day(at),
    );
    let read = air.place.as_ref().map_or(read.clone(), |place| words::read_at(&read, place));
    let (low, high) = (room.low().as_per_cent(), room.high().as_per_cent());
    let marks = vec![
        Mark::new(low, Kind::Ink, words::DRY_SEASON, tenth(low, seen)),
        Mark::new(here, Kind::Good, words::HERE, tenth(here, seen)),
        Mark::new(high, Kind::Ink, words::DAMP_SEASON, tenth(high, seen)),
    ];
    let (from, to) = ((low.min(here) - 2.0).max(0.0), high.max(here) + 2.0);
    let rhythm = Some(Rhythm::for_span(to - from, seen.page.card()));
    let drawn = Scale { width: seen.page.card(), from, to, rhythm, marks, ..Scale::default() };
    vec![lead, el("section", "card").kid(el("p", "").text(read)).kid(scale(&drawn, ""))]
}

/// A choice of the page.
pub fn chooses(taps: [WoodTap; 2]) -> impl Fn(usize) -> Msg {
    move |nth| super::tap(taps.get(nth).cloned().unwrap_or(WoodTap::List))
}
