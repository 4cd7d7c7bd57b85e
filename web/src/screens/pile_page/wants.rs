//! What a pile is needed for: each part with how many more to take, on the scale between likely and sure.

use super::super::Seen;
use super::super::count::enough::{beside, drawn, headline, is_sorted, others, says_nothing};
use super::say;
use crate::app::pile::PileTap;
use crate::app::{App, Msg};
use crate::view::{El, el};
use crate::words::en::{pile as words, worth};
use fivebar_core::haul::rejects::Prior;
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::enough::Wanted;
use fivebar_core::sheet::pile::PileSheet;

/// Each part as a card; a tap changes it.
pub fn shown(sheet: &PileSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    sheet.wants.iter().enumerate().map(|(nth, wanted)| one(nth, wanted, (sheet, app), seen)).listed()
}

fn one(nth: usize, wanted: &Wanted, (sheet, app): (&PileSheet, &App), seen: Seen<'_>) -> El<Msg> {
    let said = headline(wanted, false, seen);
    let line = el("span", "row").kid(el("b", "").text(said.clone())).kid(el("span", "t14").text(beside(wanted, seen)));
    el("button", "card tap")
        .key(format!("want {nth}"))
        .attr("type", "button")
        .on_tap(say(PileTap::Want(nth)))
        .kid(line)
        .kids(others(wanted, seen).map(|others| el("span", "t14 i2 blk").text(others)))
        .kids(drawn(wanted, seen.page.card(), &said))
        .kid(el("span", "t14 i2 blk").text(prior(wanted, sheet, app, seen)))
        .kids(says_nothing(wanted, seen).map(|said| el("span", "t14 i2 blk").text(said)))
}

/// "from a guess: one in four rejected", "from 3 hauls of The stair works".
fn prior(wanted: &Wanted, sheet: &PileSheet, app: &App, seen: Seen<'_>) -> String {
    match wanted.prior {
        _ if is_sorted(wanted) => worth::ALL_KNOWN.to_owned(),
        Prior::Guess => words::BY_GUESS.to_owned(),
        Prior::Supplier => {
            let name = sheet.supplier.and_then(|id| app.shelf().name(id)).map(String::as_str);
            words::by_supplier(sheet.hauls_before, &seen.speech.count(sheet.hauls_before), name)
        }
    }
}
