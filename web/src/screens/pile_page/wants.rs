//! What a pile is needed for: each part with how many more to take, on the scale between likely and sure.

use super::super::Seen;
use super::say;
use crate::app::pile::PileTap;
use crate::app::{App, Msg};
use crate::parts::scale::{Fill, Kind, Look, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::pile as words;
use fivebar_core::haul::enough::{Enough, Least};
use fivebar_core::haul::rejects::Prior;
use fivebar_core::sheet::enough::Wanted;
use fivebar_core::sheet::pile::PileSheet;

/// Each part as a card; a tap changes it.
pub fn shown(sheet: &PileSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    sheet.wants.iter().enumerate().map(|(nth, wanted)| one(nth, wanted, (sheet, app), seen)).collect()
}

fn one(nth: usize, wanted: &Wanted, (sheet, app): (&PileSheet, &App), seen: Seen<'_>) -> El<Msg> {
    let (enough, n) = (&wanted.enough, |n: u32| seen.speech.count(n));
    let more = match enough.more_until_sure() {
        _ if enough.can_stop() => words::CAN_STOP.to_owned(),
        Some(more) => words::more(&n(more)),
        None => words::NOT_FROM_THEM.to_owned(),
    };
    let what = words::for_parts(&n(sheet.tile.taken), &n(wanted.want.wanted), &wanted.want.part);
    let line = el("span", "row").kid(el("b", "").text(more)).kid(el("span", "t14").text(what));
    let prior = match wanted.prior {
        Prior::Guess => words::BY_GUESS.to_owned(),
        Prior::Supplier => {
            let name = sheet.supplier.and_then(|id| app.shelf().names.get(&id)).map(String::as_str);
            words::by_supplier(sheet.hauls_before, &n(sheet.hauls_before), name)
        }
    };
    el("button", "card tap")
        .key(format!("want {nth}"))
        .attr("type", "button")
        .on_tap(say(PileTap::Want(nth)))
        .kid(line)
        .kids(drawn(enough, seen))
        .kid(el("span", "t14 i2 blk").text(prior))
}

/// How far the pile has come, between the two marks; none where no number of pieces would do.
fn drawn(enough: &Enough, seen: Seen<'_>) -> Option<El<Msg>> {
    let (Least::Taken(likely), Least::Taken(sure)) = (enough.likely, enough.sure) else { return None };
    let there = f64::from(enough.held.taken());
    let (from, to) = ends((f64::from(likely), f64::from(sure)), there);
    let mark = |at: u32, word: &str| Mark::new(f64::from(at), Kind::Ink, word, seen.speech.count(at));
    let marks = if likely == sure { vec![mark(sure, words::SURE)] } else { vec![mark(likely, words::LIKELY), mark(sure, words::SURE)] };
    let drawn = Scale {
        width: seen.page.card(),
        from,
        to,
        rhythm: (to - from <= 60.0).then_some(Rhythm { tick: 1.0, long: 5.0 }),
        marks,
        fills: vec![Fill { from, to: there, look: Look::Good }],
        needle: Some(there).filter(|there| *there < to),
        ..Scale::default()
    };
    Some(scale(&drawn, ""))
}

/// It begins just under the lowest of the three and ends just over the highest; far beyond sure is the edge.
fn ends((likely, sure): (f64, f64), there: f64) -> (f64, f64) {
    let far = sure + (sure - likely).max(10.0);
    let (low, high) = (likely.min(there), sure.max(there.min(far)));
    let air = ((high - low) * 0.3).max(2.0);
    ((low - air).max(0.0).floor(), (high + air).ceil())
}
