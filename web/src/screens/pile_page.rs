//! The page of one pile: what it holds, take it or leave it, what it is needed for, and every way to count and measure it.

mod forms;
mod verdict;
mod wants;

pub use verdict::on_tile;

use super::count::{name, saved_fact, size};
use super::mend::told_of;
use super::{Screen, Seen};
use crate::app::count::Tap;
use crate::app::mend::MendTap;
use crate::app::pile::{Doing, PilePage, PileTap, sheet};
use crate::app::{App, Msg};
use crate::parts::bars::{Bars, Cut, bars};
use crate::parts::caution::caution;
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{air, common, count, pile as words};
use fivebar_core::haul::{Dampness, Where};
use fivebar_core::ledger::Fact;
use fivebar_core::ledger::decide::Lying;
use fivebar_core::ledger::kind::haul::Way;
use fivebar_core::quantity::{Decimal, Length, Listed, Units, in_small};
use fivebar_core::sheet::pile::{PileSheet, Side};
use fivebar_core::sheet::stock::history::{Line, history};
use fivebar_core::wood::weight::Doubt;

fn say(tap: PileTap) -> Msg {
    Msg::Count(Tap::Page(tap))
}

/// The page, or the form that lies over it.
pub fn screen(page: &PilePage, app: &App, seen: Seen<'_>) -> Screen {
    let Some(sheet) = sheet(app) else {
        // It was taken back while its page was open.
        let main = el("main", "scr").kid(key("key h56", words::TO_PILES, "", Msg::Count(Tap::Close)));
        return Screen::new("count/pile-page", head(Head::new("", count::WHICH_PILE)), main);
    };
    match page.doing {
        Some(doing) => forms::screen(page, doing, (&sheet, app), seen),
        None => whole(&sheet, app, seen),
    }
}

fn whole(sheet: &PileSheet, app: &App, seen: Seen<'_>) -> Screen {
    let top = Head::new(size(&sheet.tile, sheet.units, seen.speech), name(&sheet.tile)).fact(saved_fact(app, seen));
    let short = sheet
        .shorter
        .as_ref()
        .map(|(machine, least)| caution(words::shorter(&machine.as_str().replace('-', " "), &length(*least, sheet.units, seen))));
    let main = el("main", "scr pilepage")
        .kid(held(sheet, seen))
        .kids((!is_home(app)).then(|| verdict::at_bin(sheet, seen)))
        .kids(short)
        .kid(el("h2", "").text(words::NEED))
        .kids(wants::shown(sheet, app, seen))
        .kid(key("key h56", words::NEED_MORE, words::NEED_UNDER, say(PileTap::Do(Doing::Want))))
        .kid(el("h2", "").text(words::COUNT_IT))
        .kid(ways())
        .kids(counted(sheet, app, seen))
        .kid(el("h2", "").text(words::KNOW_IT))
        .kid(known(sheet, seen))
        .kids(means(sheet, seen));
    let keys = el("div", "um").kid(key("key solid h56", words::TO_PILES, "", Msg::Count(Tap::Close))).kid(key(
        "key h56",
        count::SORT,
        "",
        Msg::Count(Tap::SortPile(sheet.tile.pile)),
    ));
    Screen::new("count/pile-page", head(top), main).foot(el("footer", "foot").kids(super::undo::bar(app, seen)).kid(keys))
}

/// What lies at home is taken: nothing is left to ask about it.
fn is_home(app: &App) -> bool {
    crate::app::count::sheet(app).is_some_and(|sheet| sheet.sorting_begun || sheet.trip.stands == Where::Home)
}

/// A length with its unit.
fn length(length: Length, units: Units, seen: Seen<'_>) -> String {
    format!("{} {}", seen.speech.length(length, units), common::length_unit(units))
}

/// The figure with its marks, and what is behind it.
fn held(sheet: &PileSheet, seen: Seen<'_>) -> El<Msg> {
    let n = |n: u32| seen.speech.count(n);
    let taken = sheet.tile.taken;
    let per_row = gates(taken, seen.page.card());
    let figure =
        el("p", "rw").kid(el("span", "t60 w8").text(n(taken))).kids(sheet.off.map(|off| el("span", "t22 w8").text(words::off(&n(off)))));
    let marks = bars(Bars { cut: taken, hollow: 0, per_row, size: Cut::Large });
    let between = sheet.off.map(|off| words::weighed_between(&n(taken.saturating_sub(off)), &n(taken.saturating_add(off))));
    let good = sheet.tile.good.saturating_sub(sheet.unsorted);
    let sorted = (0 < good || 0 < sheet.tile.rejected).then(|| words::sorted(&n(good), &n(sheet.tile.rejected)));
    let volume = sheet.volume.map(|(volume, off)| {
        let off = Decimal::try_from(off * 100.0).unwrap_or_default();
        let written = format!("{} {}", seen.speech.volume(volume, sheet.units), common::volume_unit(sheet.units));
        words::volume(&written, &seen.speech.number(off, 0, 0))
    });
    let volume = volume.unwrap_or_else(|| words::SIZE_MISSING.to_owned());
    let weighs = sheet.weighs.map(|weighs| {
        let off = seen.speech.number(Decimal::try_from(weighs.off * 100.0).unwrap_or_default(), 0, 0);
        let mass = format!("{} {}", seen.speech.mass(weighs.mass, sheet.units), common::mass_unit(sheet.units));
        words::as_weighed(&mass, Some(off.as_str()).filter(|off| *off != "0"))
    });
    let lines = between
        .into_iter()
        .chain(sorted)
        .chain([volume])
        .chain(weighs)
        .chain(sheet.doubt.map(doubted))
        .map(|line| el("p", "t14 i2").text(line));
    el("section", "card").kid(el("div", "rw").kid(figure).kid(marks)).kids(lines)
}

fn doubted(doubt: Doubt) -> String {
    match doubt {
        Doubt::Light => air::LIGHT,
        Doubt::Heavy => air::HEAVY,
    }
    .to_owned()
}

/// How many gates go to a row: beside two figures where there is room for both, else as many as the card is wide.
fn gates(taken: u32, card: f64) -> usize {
    const GATE: f64 = 23.5;
    const FIGURES: f64 = 116.0;
    let room = if taken < 100 && 2.0 * FIGURES < card { card - FIGURES } else { card };
    // A float turned whole stops at the limits of its type.
    ((room / GATE).floor() as usize).clamp(1, 8)
}

fn ways() -> El<Msg> {
    let way = |what, under, doing| key("key", what, under, say(PileTap::Do(doing)));
    el("div", "g3 wide")
        .kid(way(words::BY_LAYERS, words::BY_LAYERS_UNDER, Doing::Layers))
        .kid(way(words::BY_WEIGHT, words::BY_WEIGHT_UNDER, Doing::Weigh))
        .kid(way(count::RECOUNT, words::AGAIN_UNDER, Doing::Again))
}

/// The counts that came about by figures, or again: each is put right where it stands.
fn counted(sheet: &PileSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let at = Lying { haul: app.shelf().haul()?.id, pile: sheet.tile.pile };
    let by_hand = |line: &Line<'_>| match line.fact {
        Fact::PiecesCounted(f) => !matches!(f.way, Way::Layers | Way::Weight),
        fact => !matches!(fact, Fact::PiecesRecounted(_)),
    };
    let lines = history(&app.shelf().book, at).into_iter().filter(|line| !by_hand(line));
    let keys = lines.map(|line| {
        let what = told_of((line.fact, line.n), at.pile, app, seen);
        let when = common::of_when(&seen.speech.day(line.at), &seen.speech.clock(line.at));
        key("key wide", words::put_right(&what), when, Msg::Mend(MendTap::Open(line.entry))).key(line.entry.to_string())
    });
    let keys = keys.listed();
    (!keys.is_empty()).then(|| el("div", "counts").kids(keys))
}

fn known(sheet: &PileSheet, seen: Seen<'_>) -> El<Msg> {
    let measured = match sheet.sizes.measured {
        0 => words::NONE_MEASURED.to_owned(),
        n => words::measured(&seen.speech.count(n)),
    };
    let damp = sheet.dampness.map_or_else(|| words::NOT_READ.to_owned(), |damp| damp_on(damp, seen));
    el("div", "g3 wide")
        .kid(key("key", words::MEASURE, measured, say(PileTap::Do(Doing::Measure))))
        .kid(key("key", words::MOISTURE, damp, say(PileTap::Do(Doing::Moisture))))
        .kid(key("key", count::EDIT_PILE, "", Msg::Count(Tap::Edit(sheet.tile.pile))))
}

/// "14.5 %, Tue 3 March": the reading, whether it is wet, and of when.
fn damp_on(damp: Dampness, seen: Seen<'_>) -> String {
    let read = damp.percent.map(|percent| count::percent(&seen.speech.number(percent, 0, 1)));
    let said = match (read, damp.wet) {
        (read, true) => words::and_wet(read.as_deref()),
        (Some(read), false) => read,
        (None, false) => in_small(words::NOT_WET),
    };
    words::read_on(&said, &seen.speech.day(damp.at))
}

/// What was measured, side by side, and the key that makes the means the size.
fn means(sheet: &PileSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let lines = mean_lines(sheet, seen);
    if lines.is_empty() {
        return vec![];
    }
    let [thickness, width, length] = sheet.sizes.means();
    let old = sheet.tile.size;
    let sides = [thickness.or(old.thickness), width.or(old.width), length.or(old.length)];
    let size = sides.into_iter().flatten().map(|side| seen.speech.length(side, sheet.units)).listed().join(" × ");
    let under = format!("{size} {}", common::length_unit(sheet.units));
    lines.into_iter().chain([key("key h56", words::USE_MEAN, under, say(PileTap::UseMean))]).listed()
}

fn mean_lines(sheet: &PileSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let (sizes, units) = (sheet.sizes, sheet.units);
    let line = |(name, side): (&str, Option<Side>)| {
        let shown = |length| seen.speech.length(length, units);
        let (mean, ends) = side?.mean.shown(units);
        let ends = ends.map(|(from, to)| (shown(from), shown(to)));
        let ends = ends.as_ref().map(|(from, to)| (from.as_str(), to.as_str()));
        Some(worded("p", "t14", words::mean(name, &shown(mean), ends, units)))
    };
    let sides = [(count::THICKNESS, sizes.thickness), (count::WIDTH, sizes.width), (count::LENGTH, sizes.length)];
    sides.into_iter().filter_map(line).listed()
}
