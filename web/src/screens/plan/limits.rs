//! What a proof holds for: sticks that are crosscut and never ripped, rows of which an end piece alone is cut.

use super::super::Seen;
use super::{say, side, told};
use crate::app::Msg;
use crate::app::plan::Tap;
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{tiles as tile_words, told as words};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Length, Listed};
use fivebar_core::sheet::make::{Given, Source, What};
use fivebar_core::sheet::plan::PlanSheet;
use fivebar_core::sheet::plan::wish::Wish;

/// What no plan can do, with what it was tried for alone.
pub fn held(said: &str, given: &Given, seen: Seen<'_>) -> String {
    let limits = way(given).into_iter().chain(shortest(given, seen)).chain(buying(given)).chain(own(given, seen)).listed();
    if said.is_empty() { String::new() } else { words::held_for(said, &limits) }
}

/// The fewest there can be, where a pile of several lengths is reckoned at its shortest.
pub fn at_shortest(said: &str, given: &Given, seen: Seen<'_>) -> String {
    words::held_for(said, &shortest(given, seen).into_iter().chain(buying(given)).chain(own(given, seen)).listed())
}

/// What a plan is the best of, where boards could be bought and it was planned with none or with as few as do.
pub fn best(said: &str, given: &Given, seen: Seen<'_>) -> String {
    words::held_for(said, &buying(given).into_iter().chain(own(given, seen)).listed())
}

/// Wood of the job that was not planned with.
fn own(given: &Given, seen: Seen<'_>) -> Option<String> {
    (0 < given.unasked).then(|| words::without_own(&seen.speech.count(given.unasked), given.unasked == 1))
}

fn buying(given: &Given) -> Option<String> {
    let buys = given.sources.iter().any(|source| source.bought.is_some());
    let none = !buys && !given.ask.bought.is_empty();
    (none || buys).then(|| if none { words::BUYING_NONE } else { words::BUYING_NO_MORE }.to_owned())
}

fn shortest(given: &Given, seen: Seen<'_>) -> Option<String> {
    let all = given.sources.iter().zip(&given.ready.sources);
    let band = |(source, ready): (&Source, &fivebar_core::sheet::plan::ready::Source)| {
        let (from, to) = source.pile.length.zip(source.pile.length_to)?;
        (from < to).then(|| (from, ready.letter.clone()))
    };
    let bands = all.filter_map(band).listed();
    match bands.as_slice() {
        [] => None,
        [(from, letter)] => {
            let of = (1 < given.sources.len()).then_some(letter.as_str());
            Some(words::if_as_short(of, &side(*from, given.units, seen)))
        }
        _ => Some(words::if_as_short(None, words::OF_THEIR_PILES)),
    }
}

fn way(given: &Given) -> Option<String> {
    match &given.ask.what {
        What::Top(top) => (!top.split).then(|| words::WITH_AN_END_CUT.to_owned()),
        what => (what.shape() == Shape::Sticks).then(|| words::BY_CROSSCUTS.to_owned()),
    }
}

/// Whether a stick would give two of a part side by side, with what is over and a kerf between them, either way round.
fn gives_two(stick: [Length; 3], part: [Length; 3], given: &Given) -> bool {
    let [_, over_wide, over_thick] = given.ready.figures.allow.map(Length::as_nm);
    let ([thick, wide, _], [part_thick, part_wide, _]) = (stick.map(Length::as_nm), part.map(Length::as_nm));
    let one = [part_thick.saturating_add(over_thick), part_wide.saturating_add(over_wide)];
    let two = |side: i64| side.saturating_mul(2).saturating_add(given.ready.figures.kerf.as_nm());
    let fits = |[low, high]: [i64; 2]| low <= thick && high <= wide || high <= thick && low <= wide;
    let [low, high] = one;
    0 < part_thick && 0 < part_wide && (fits([low, two(high)]) || fits([two(low), high]))
}

/// Pieces of a field that would give two whole tiles in their length or width, of which one is planned.
pub fn two_tiles(given: &Given, sheet: &PlanSheet) -> Vec<String> {
    let Some(laid) = sheet.laid else { return vec![] };
    let tile = laid.tile.map(Length::as_nm);
    let figures = &given.ready.figures;
    let over = [figures.allow[0], figures.allow[1]].map(Length::as_nm);
    let two = |nth: usize| {
        let one = tile.get(nth).copied().unwrap_or(0).saturating_add(over.get(nth).copied().unwrap_or(0));
        one.saturating_mul(2).saturating_add(figures.kerf.as_nm())
    };
    let off = [figures.end_trim.max(figures.square), figures.edge_trim].map(|off| off.as_nm().saturating_mul(2));
    let gives = |source: &Source| {
        let sides = [source.pile.length, source.pile.width].map(|side| side.map_or(0, Length::as_nm));
        let gives = |nth: usize, side: i64, off: i64| two(nth) <= side.saturating_sub(off);
        let [long, wide] = [0, 1].map(|nth: usize| sides.get(nth).zip(off.get(nth)).is_some_and(|(side, off)| gives(nth, *side, *off)));
        // Of a length that was asked, all that come out are planned.
        [long && !given.ready.is_of_tiles(), wide]
    };
    let whole = |place: usize| sheet.lines.iter().any(|line| line.source == place && line.numbers.is_empty());
    let all = given.sources.iter().zip(&given.ready.sources).enumerate();
    let all = all.filter(|(place, (_, ready))| ready.ripped == 1 && whole(*place));
    let all = all.map(|(_, (source, ready))| (ready.letter.clone(), gives(source))).listed();
    let letters = |is: &dyn Fn([bool; 2]) -> bool| all.iter().filter(|(_, gives)| is(*gives)).map(|(letter, _)| letter.clone()).listed();
    let (long, wide) = (letters(&|[long, _]| long), letters(&|[long, wide]| wide && !long));
    let long = (!long.is_empty()).then(|| tile_words::two_in_length(&long));
    long.into_iter().chain((!wide.is_empty()).then(|| words::one_tile_each(&wide))).listed()
}

/// Sticks that would give two of a part if they were ripped, and the key to the way that rips.
pub fn wide_sticks(given: &Given, sheet: &PlanSheet) -> Vec<El<Msg>> {
    let Wish::Sticks(parts) = &given.ready.wish else { return vec![] };
    let mut all = sheet.lines.iter().flat_map(|line| line.pieces.iter().filter_map(|cut| Some((line.source, cut.part?)))).listed();
    all.sort_unstable();
    all.dedup();
    let said = |(source, part): (usize, usize)| {
        let (stick, wanted) = (given.ready.sources.get(source)?, parts.parts.get(part)?);
        gives_two(stick.size, wanted.size, given).then(|| words::wide_enough_for_two(&stick.letter, &told::part(given, part)))
    };
    let right = |(source, part): &(usize, usize)| {
        let (stick, wanted) = (given.ready.sources.get(*source)?, parts.parts.get(*part)?);
        let of = |size: [Length; 3]| (size[0].min(size[1]), size[0].max(size[1]));
        (of(stick.size) == of(wanted.size)).then(|| words::just_right(&stick.letter, &told::part(given, *part)))
    };
    let right = all.iter().filter_map(right).map(|line| worded("p", "t14 i2", line)).listed();
    let lines = all.into_iter().filter_map(said).map(|line| worded("p", "", line)).listed();
    let way = || el("div", "no-print").kid(key("key h56 wide", words::PLAN_THE_PARTS, words::RIPPED_TOO, say(Tap::Shape(Shape::Parts))));
    let way = (!lines.is_empty()).then(way);
    right.into_iter().chain(lines).chain(way).listed()
}
