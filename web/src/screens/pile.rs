//! A new pile by chips, without a keyboard; and a pile that is named, sized or corrected.

use super::count::{name, saved_fact};
use super::left::goes_along;
use super::slots::asked_about;
use super::{Screen, Seen};
use crate::app::count::Tap;
use crate::app::draft::{Asks, Draft, DraftTap};
use crate::app::{App, Msg, workshop};
use crate::parts::chips::{Chip, chips, flowing};
use crate::parts::field::{Field, Keyboard, field};
use crate::parts::fraction::worded;
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::{done_key, figure_key, key};
use crate::parts::pad;
use crate::parts::seg::{Seg, seg};
use crate::view::{El, el};
use crate::words::en::{common, count as words, refusal, woods};
use fivebar_core::ledger::decide::Lying;
use fivebar_core::quantity::{Key, Length, Listed, Units};
use fivebar_core::sheet::count::CountSheet;
use fivebar_core::wood::species;
use fivebar_core::wood::woods::Woods;

fn say(tap: DraftTap) -> Msg {
    Msg::Count(Tap::Draft(tap))
}

/// The next question of a pile.
pub fn screen(draft: &Draft, sheet: Option<&CountSheet>, app: &App, seen: Seen<'_>) -> Screen {
    let units = sheet.map_or_else(|| app.begins_with().1, |sheet| sheet.units);
    let tile = draft.pile.and_then(|id| sheet?.tiles.iter().find(|tile| tile.pile == id));
    let label = next_label(sheet);
    let own = &app.shelf().workshop().wood.woods;
    let title = tile.map_or_else(|| words::new_pile(&label), name);
    let pieces = sheet.map_or(0, |sheet| sheet.pieces);
    let counted = common::pieces(pieces, &seen.speech.count(pieces));
    let top = Head::new(words::haul_of(&seen.speech.day(sheet.map_or(seen.now, |sheet| sheet.began))), title)
        .fact(saved_fact(app, seen))
        .fact(Fact::Plain(words::pieces_in_piles(&counted, sheet.map_or(0, |sheet| sheet.tiles.len()))));
    let main = el("main", "scr")
        .kid(el("div", "push"))
        .kids(over_it(draft, own, (units, seen)))
        .kids(measured_in(draft, sheet, units))
        .kids(along(draft, sheet, app).map(|said| worded("p", "i2", said)))
        .kids(question(draft, own, (units, seen)));
    let main = if draft.pile.is_none() { main.kid(later(&label)) } else { main };
    Screen::new("count/pile", head(top), main.kid(key("key h48", common::NOT_NOW, "", Msg::Count(draft.leave()))))
}

/// The letter the new pile will have; the core gives it, this only shows it beforehand.
fn next_label(sheet: Option<&CountSheet>) -> String {
    let taken = |label: &str| sheet.is_some_and(|sheet| sheet.tiles.iter().any(|tile| tile.label == label));
    ('A'..='Z').map(|letter| letter.to_string()).find(|label| !taken(label)).unwrap_or_default()
}

/// What plans left of it goes with a side that is put right.
fn along(draft: &Draft, sheet: Option<&CountSheet>, app: &App) -> Option<String> {
    let at = Lying { haul: sheet?.haul, pile: draft.pile? };
    matches!(draft.asks, Asks::Wood | Asks::Thickness | Asks::Width).then(|| goes_along(at, app)).flatten()
}

fn later(label: &str) -> El<Msg> {
    key("key", words::NAME_AT_HOME, words::counts_now_as(label), say(DraftTap::Later))
}

/// Before the first haul has begun its measure can still be chosen where a size is first asked.
fn measured_in(draft: &Draft, sheet: Option<&CountSheet>, units: Units) -> Option<El<Msg>> {
    let systems = [(Units::Inch, words::INCHES), (Units::Metric, words::MILLIMETRES)];
    let asks_side = matches!(draft.asks, Asks::Thickness | Asks::Width | Asks::Length);
    let segs = systems.iter().map(|(system, name)| Seg::new(*name, *system == units)).listed();
    let pick = move |nth: usize| systems.get(nth).map_or(Units::Metric, |(system, _)| *system);
    (sheet.is_none() && asks_side).then(|| seg(words::MEASURED_IN, segs, move |nth| Msg::Workshop(workshop::Tap::Units(pick(nth)))))
}

/// The answers so far; on a narrow page they make room for the pad and all its fractions.
fn over_it(draft: &Draft, own: &Woods, of: (Units, Seen<'_>)) -> Vec<El<Msg>> {
    if draft.pad && of.1.page.is_narrow() { vec![] } else { answered(draft, own, of) }
}

/// The answers so far; a tap changes one.
fn answered(draft: &Draft, own: &Woods, (units, seen): (Units, Seen<'_>)) -> Vec<El<Msg>> {
    let side = |length: Length| format!("{} {}", seen.speech.length(length, units), common::length_unit(units));
    let facts = &draft.facts;
    let long = facts.length.map(|from| match facts.length_to {
        Some(to) => format!("{}–{}", seen.speech.length(from, units), side(to)),
        None => side(from),
    });
    let shown = [
        (words::WOOD, facts.wood.as_ref().map(|wood| woods::among(wood, own)), Asks::Wood),
        (words::THICKNESS, facts.thickness.map(side), Asks::Thickness),
        (words::WIDTH, facts.width.map(side), Asks::Width),
        (words::LENGTH, long, Asks::Length),
    ];
    let all = draft.pile.is_some();
    let keys: Vec<El<Msg>> = shown
        .into_iter()
        .filter(|(_, answer, asks)| *asks != draft.asks && (all || answer.is_some()))
        .map(|(what, answer, asks)| {
            let (answer, again) = (answer.unwrap_or_else(|| words::NOT_YET.into()), say(DraftTap::Again(asks)));
            match in_two(&answer).filter(|_| asks == Asks::Wood) {
                Some((kind, genus)) => figure_key(kind.to_owned(), genus, again),
                None => figure_key(what, answer, again),
            }
        })
        .listed();
    if keys.is_empty() { vec![] } else { vec![el("h2", "").text(words::ANSWERED), el("div", "g3 answers").kids(keys)] }
}

fn question(draft: &Draft, own: &Woods, (units, seen): (Units, Seen<'_>)) -> Vec<El<Msg>> {
    let unit = if units == Units::Inch { words::INCHES } else { words::MILLIMETRES };
    let asked = |text: String| el("h2", "ink1").text(text);
    match draft.asks {
        _ if draft.pad => by_pad(draft, units, seen),
        Asks::Wood => vec![asked(words::WHICH_WOOD.into()), wood_chips(draft, units, own)],
        Asks::Thickness => vec![asked(words::how(words::HOW_THICK, unit)), side_chips(&thicknesses(units), units, seen)],
        Asks::Width => vec![asked(words::how(words::HOW_WIDE, unit)), side_chips(&widths(units), units, seen)],
        Asks::Length => vec![asked(words::how(words::HOW_LONG, unit)), band_chips(units, seen)],
        Asks::Name => vec![name_field(draft), done_key("key solid h88", common::DONE, "", say(DraftTap::Save))],
    }
}

fn name_field(draft: &Draft) -> El<Msg> {
    let asked = Field {
        id: "pile-name",
        label: words::PILE_NAME.into(),
        value: draft.facts.name.clone().unwrap_or_default(),
        keyboard: Keyboard::Words,
        ..Field::default()
    };
    field(asked, |text| say(DraftTap::Name(text)))
}

/// The usual woods; behind "more" the maker's own and then all others.
fn wood_chips(draft: &Draft, units: Units, own: &Woods) -> El<Msg> {
    let named = |key: &str| say(DraftTap::Wood(Key::read(key)));
    if draft.all_woods {
        let mut all: Vec<(Key, Chip)> =
            own.own().map(|(key, _)| (key.clone(), Chip::tap(woods::among(key, own)).under(words::YOURS))).listed();
        all.extend(species::listed(units).filter_map(|one| Some((Key::read(one.key)?, whole(one.key)))));
        let (keys, shown): (Vec<Key>, Vec<Chip>) = all.into_iter().unzip();
        return flowing("key h56", shown, move |nth| {
            say(keys.get(nth).map_or(DraftTap::MoreWoods, |key| DraftTap::Wood(Some(key.clone()))))
        });
    }
    let keys = woods::usual(units);
    let shown = keys.iter().map(|key| usual_chip(key)).chain([Chip::tap(words::MORE_WOODS)]).listed();
    chips("key h88", shown, move |nth| keys.get(nth).map_or(say(DraftTap::MoreWoods), |key| named(key)))
}

/// "European" and "Ash" of a name that is too long for a third of a small page.
fn in_two(name: &str) -> Option<(&str, String)> {
    let (kind, genus) = name.split_once(' ').filter(|_| woods::is_long(name))?;
    Some((kind, fivebar_core::quantity::begin_large(genus)))
}

fn usual_chip(key: &str) -> Chip {
    let name = woods::name(key);
    match in_two(&name) {
        Some((kind, genus)) => Chip::tap(genus).under(kind),
        None => Chip::tap(name),
    }
}

/// By the name it has everywhere; the whole one under it.
fn whole(key: &str) -> Chip {
    let chip = Chip::tap(woods::name(key));
    match woods::whole(key) {
        Some(whole) => chip.under(whole),
        None => chip,
    }
}

fn side_chips(sides: &[Length], units: Units, seen: Seen<'_>) -> El<Msg> {
    let mut shown: Vec<Chip> = sides.iter().map(|side| Chip::tap(seen.speech.length(*side, units))).listed();
    shown.push(Chip::tap(words::OTHER_SIZE));
    let sides = sides.to_vec();
    chips("key h88", shown, move |nth| sides.get(nth).map_or_else(|| say(DraftTap::Other), |side| say(DraftTap::Side(*side))))
}

/// The bands in between write a band; the two ends, and "other", ask for a number.
fn band_chips(units: Units, seen: Seen<'_>) -> El<Msg> {
    let ends = bands(units);
    let written = |length: Option<&Length>| length.map(|length| seen.speech.length(*length, units));
    let mut shown: Vec<Chip> = (0..=ends.len())
        .map(|nth| {
            let from = nth.checked_sub(1).and_then(|before| ends.get(before));
            Chip::tap(words::band(written(from).as_deref(), written(ends.get(nth)).as_deref()))
        })
        .listed();
    shown.push(Chip::tap(words::OTHER_SIZE));
    chips("key h88", shown, move |nth| match (nth.checked_sub(1).and_then(|before| ends.get(before)), ends.get(nth)) {
        (Some(from), Some(to)) => say(DraftTap::Band(*from, *to)),
        _ => say(DraftTap::Other),
    })
}

fn by_pad(draft: &Draft, units: Units, seen: Seen<'_>) -> Vec<El<Msg>> {
    let press = |press| Msg::Count(Tap::Press(press));
    let (side, unit) = match (draft.asks, units) {
        (Asks::Thickness, Units::Inch) => (words::HOW_THICK, words::INCHES),
        (Asks::Width, Units::Inch) => (words::HOW_WIDE, words::INCHES),
        (_, Units::Inch) => (words::HOW_LONG_EXACT, words::INCHES),
        (Asks::Thickness, Units::Metric) => (words::HOW_THICK, words::MILLIMETRES),
        (Asks::Width, Units::Metric) => (words::HOW_WIDE, words::MILLIMETRES),
        (_, Units::Metric) => (words::HOW_LONG_EXACT, words::MILLIMETRES),
    };
    let sign = if seen.speech.sign() == fivebar_core::quantity::reading::Sign::Comma { ',' } else { '.' };
    let mut shown = vec![
        el("h2", "ink1").text(words::how(side, unit)),
        pad::entry(&draft.typed.text.replace('/', "⁄"), common::length_unit(units), draft.typed.wrong.is_some()),
    ];
    // under the figure it is about, and seen on a small page too
    let asked = draft.typed.doubt.map(|doubt| asked_about(doubt, (units, seen), |side| say(DraftTap::Take(side))));
    shown.extend(asked.unwrap_or_default());
    shown.push(pad::pad(Some(sign), press));
    if units == Units::Inch {
        shown.push(pad::fraction_keys(16, press));
    }
    // beside the key that was tapped: on a small page the figure itself may be out of sight
    shown.extend(draft.typed.wrong.as_ref().map(|why| el("p", "why").text(refusal::misread(why, seen.speech, units))));
    shown.extend(draft.typed.doubt.is_none().then(|| done_key("key solid h88", common::DONE, "", say(DraftTap::PadDone))));
    shown
}

fn sixteenths(of: &[i64]) -> Vec<Length> {
    of.iter().filter_map(|n| Length::INCH_64TH.times(n.saturating_mul(4)).ok()).listed()
}

fn millimetres(of: &[i64]) -> Vec<Length> {
    of.iter().filter_map(|n| Length::MM.times(*n).ok()).listed()
}

/// Thicknesses as they come from a mill, with room for another: common practice.
fn thicknesses(units: Units) -> Vec<Length> {
    match units {
        Units::Inch => sixteenths(&[12, 13, 16, 17, 20, 24, 28, 32]),
        Units::Metric => millimetres(&[16, 20, 22, 27, 32, 40, 45, 50]),
    }
}

fn widths(units: Units) -> Vec<Length> {
    match units {
        Units::Inch => sixteenths(&[24, 28, 32, 36, 48, 64, 80, 96]),
        Units::Metric => millimetres(&[40, 45, 62, 80, 100, 120, 150, 200]),
    }
}

/// The ends between bands of length.
fn bands(units: Units) -> Vec<Length> {
    match units {
        Units::Inch => sixteenths(&[144, 192, 288, 384, 576]),
        Units::Metric => millimetres(&[200, 300, 450, 600, 900]),
    }
}
