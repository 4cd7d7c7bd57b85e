//! Enough: how many more of the scarce part, over the tiles; every part, one tap further.

use super::super::{Screen, Seen};
use super::{name, saved_fact};
use crate::app::count::Tap;
use crate::app::pile::PileTap;
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Kind, Look, Mark, Rhythm, Scale, scale};
use crate::view::{El, el};
use crate::words::en::{common, count as count_words, worth as words};
use fivebar_core::haul::Want;
use fivebar_core::haul::enough::{Enough, Least};
use fivebar_core::haul::rejects::Prior;
use fivebar_core::quantity::Listed;
use fivebar_core::sheet::count::CountSheet;
use fivebar_core::sheet::enough::{EnoughSheet, Wanted};

/// The scarce part of the haul in hand; nothing where nothing is wanted.
pub fn block(sheet: &EnoughSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let scarce = sheet.wants.first()?;
    let said = headline(scarce, 1 < sheet.wants.len(), seen);
    let row = el("span", "row").kid(el("b", "w8").text(said.clone())).kid(el("span", "t14").text(beside(scarce, seen)));
    let block = el("button", "enough on-board").attr("type", "button").on_tap(Msg::Count(Tap::Enough)).kid(row);
    let block = block.kids(others(scarce, seen).map(|others| el("span", "t14 i2 blk").text(others)));
    Some(if app.is_glimpse() { block } else { block.kids(drawn(scarce, seen.page.column(), &said)) })
}

/// Every part that is wanted of the haul.
pub fn screen(sheet: &EnoughSheet, tiles: &CountSheet, app: &App, seen: Seen<'_>) -> Screen {
    let one = |wanted: &Wanted| {
        let pile = tiles.tiles.iter().find(|tile| tile.pile == wanted.pile).map(name).unwrap_or_default();
        let said = headline(wanted, true, seen);
        el("section", "card")
            .kid(el("h2", "ink1").text(said.clone()))
            .kid(el("p", "row").kid(el("span", "").text(pile)).kid(el("span", "t14").text(beside(wanted, seen))))
            .kids(others(wanted, seen).map(|others| el("p", "t14 i2").text(others)))
            .kids(says_nothing(wanted, seen).map(|said| el("p", "t14 i2").text(said)))
            .kids(drawn(wanted, seen.page.card(), &said))
            .kid(key("key h48", words::THIS_PILE, "", Msg::Count(Tap::Page(PileTap::Open(wanted.pile)))))
    };
    let known = sheet.wants.iter().all(is_sorted);
    let by = match sheet.wants.first().map(|wanted| wanted.prior) {
        _ if known => words::ALL_KNOWN.to_owned(),
        Some(Prior::Supplier) => words::by_the_past(&common::pieces(sheet.sorted_before, &seen.speech.count(sheet.sorted_before))),
        _ => words::BY_A_GUESS.to_owned(),
    };
    let main = el("main", "scr").kids(sheet.wants.iter().map(one)).kid(el("p", "t14 i2").text(by)).kid(el("div", "push")).kid(key(
        "key h56",
        common::DONE,
        "",
        Msg::Count(Tap::Close),
    ));
    let top = Head::new(count_words::haul_of(&seen.speech.day(tiles.began)), words::WANTED_OF_IT).fact(saved_fact(app, seen));
    Screen::new("count/enough", head(top), main)
}

/// "2 more and you are sure"; with the part before it where there are several.
pub fn headline(wanted: &Wanted, several: bool, seen: Seen<'_>) -> String {
    let enough = &wanted.enough;
    let n = |n: u32| seen.speech.count(n);
    let said = match wanted {
        _ if is_sorted(wanted) => words::good_of(&n(enough.held.good), &n(enough.pieces)),
        _ => still_open(enough, seen),
    };
    if several && !wanted.want.part.is_empty() { words::of_part(&wanted.want.part, &said) } else { said }
}

/// Nothing of it is left to chance.
pub fn is_sorted(wanted: &Wanted) -> bool {
    wanted.enough.held.unsorted == 0 && 0 < wanted.enough.held.taken()
}

/// How many more, or that one can stop.
pub fn still_open(enough: &Enough, seen: Seen<'_>) -> String {
    let n = |n: u32| seen.speech.count(n);
    match (enough.can_stop(), enough.more_until_likely(), enough.more_until_sure()) {
        (true, _, _) => words::YOU_CAN_STOP.to_owned(),
        (false, Some(0), Some(more)) => words::more_and_sure(&n(more)),
        (false, Some(more), _) if 0 < more => words::more_and_likely(&n(more)),
        _ => words::NOT_FROM_HERE.to_owned(),
    }
}

/// "38, for 20 legs"; on a narrow page what it is for.
pub fn beside(wanted: &Wanted, seen: Seen<'_>) -> String {
    let parts = parts(&wanted.want, seen);
    if is_sorted(wanted) {
        return words::for_parts(&parts);
    }
    let held = wanted.enough.held.taken();
    if seen.page.is_narrow() { parts } else { words::held_for(&seen.speech.count(held), &parts) }
}

/// "20 legs", "5 pieces".
fn parts(want: &Want, seen: Seen<'_>) -> String {
    let n = want.wanted;
    if want.part.is_empty() { common::pieces(n, &seen.speech.count(n)) } else { words::parts(&seen.speech.count(n), n, &want.part) }
}

/// "with 25 rails of the same pile": what the chance is of, besides the part itself.
pub fn others(wanted: &Wanted, seen: Seen<'_>) -> Option<String> {
    let others: Vec<String> = wanted.others.iter().map(|want| parts(want, seen)).listed();
    (!others.is_empty()).then(|| words::with_others(&others))
}

/// Rejects that say nothing of this pile, and why; nothing where all is known of it.
pub fn says_nothing(wanted: &Wanted, seen: Seen<'_>) -> Option<String> {
    let [short, wet] = wanted.left_out.map(|n| (0 < n).then(|| seen.speech.count(n)));
    let said = words::says_nothing(short.as_deref(), wet.as_deref());
    said.filter(|_| !is_sorted(wanted))
}

/// The pieces on the scale, between likely and sure; nothing where no number would do.
pub fn drawn(wanted: &Wanted, width: f64, said: &str) -> Option<El<Msg>> {
    if is_sorted(wanted) {
        return Some(drawn_sorted(wanted, width, said));
    }
    let Least::Taken(likely) = wanted.enough.likely else { return None };
    let sure = if let Least::Taken(sure) = wanted.enough.sure { Some(sure) } else { None };
    let held = wanted.enough.held.taken();
    let (low, high) = (f64::from(held.min(likely)), f64::from(held.max(sure.unwrap_or(likely))));
    // far below what matters nothing is cut off: the scale begins at nothing
    let from = if f64::from(likely) * 0.6 < low { (low - 2.0).max(0.0) } else { 0.0 };
    let to = high + ((high - from) * 0.08).max(3.0).round();
    let mark = |n: u32, word: &str| Mark::new(f64::from(n), Kind::Ink, word, n.to_string());
    let marks = [
        Some(mark(likely, if wanted.prior == Prior::Guess { words::LIKELY_BY_GUESS } else { words::LIKELY })),
        sure.filter(|sure| *sure != likely).map(|sure| mark(sure, words::SURE)),
    ];
    let rhythm = if to - from <= 24.0 { Some(Rhythm { tick: 1.0, long: 5.0 }) } else { None };
    let drawn = Scale {
        width,
        from,
        to,
        rhythm,
        marks: marks.into_iter().flatten().listed(),
        fills: vec![Fill { from, to: f64::from(held), look: Look::Good }],
        needle: Some(f64::from(held)),
        ..Scale::default()
    };
    Some(scale(&drawn, said))
}

/// Nothing is left to chance: the good ones, and how many are needed.
fn drawn_sorted(wanted: &Wanted, width: f64, said: &str) -> El<Msg> {
    let (good, needed) = (f64::from(wanted.enough.held.good), f64::from(wanted.enough.pieces));
    let high = good.max(needed);
    let drawn = Scale {
        width,
        from: 0.0,
        to: high + (high * 0.08).max(3.0).round(),
        marks: vec![Mark::new(needed, Kind::Ink, words::NEEDED, wanted.enough.pieces.to_string())],
        fills: vec![Fill { from: 0.0, to: good, look: Look::Good }],
        needle: Some(good),
        ..Scale::default()
    };
    scale(&drawn, said)
}
