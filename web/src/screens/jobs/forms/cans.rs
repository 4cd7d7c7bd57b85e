//! Some of a can: which one, what is left in it, and whether the rest of a new one is counted.

use super::super::super::Seen;
use super::super::entry::Slot;
use super::super::say;
use crate::app::Msg;
use crate::app::jobs::Tap;
use crate::app::jobs::cans::{CanTap, UNITS};
use crate::app::jobs::draft::{Pick, Picks};
use crate::parts::chips::{Chip, flowing};
use crate::parts::seg::{Seg, even};
use crate::view::{El, el};
use crate::words::en::{cans as can_words, job as words};
use fivebar_core::ledger::fold::Can;
use fivebar_core::quantity::{Key, Listed};

fn tapped(tap: CanTap) -> Msg {
    say(Tap::Pick(Pick::Can(tap)))
}

/// The one figure of a can that is there.
pub fn slots(picks: &Picks, open: &[Can]) -> Vec<Slot> {
    let unit = open.iter().find(|can| Some(can.id) == picks.can.picked).map(|can| can_words::unit(can.unit.as_str()));
    let unit = if picks.can.by_part { Some("%".to_owned()) } else { unit };
    vec![Slot::new(words::USED_OF_PACK, &unit.unwrap_or_default())]
}

/// What comes back is money, or goes into the can again.
pub fn goes_back(picks: &Picks) -> El<Msg> {
    let segs = vec![Seg::new(can_words::MONEY_BACK, !picks.can.back), Seg::new(can_words::BACK_IN_CAN, picks.can.back)];
    even(can_words::COMES_BACK, segs, |nth| tapped(CanTap::Back(nth == 1)))
}

fn chip(can: &Can, picks: &Picks, seen: Seen<'_>) -> Chip {
    let left = can_words::left(&seen.speech.number(can.left(), 0, 2), can.unit.as_str());
    Chip::choice(can.what.clone(), picks.can.picked == Some(can.id)).under(left)
}

/// The cans that are open, each a tap: some of this one.
pub fn some_of(picks: &Picks, open: &[Can], seen: Seen<'_>) -> Vec<El<Msg>> {
    if open.is_empty() {
        return vec![];
    }
    let ids = open.iter().map(|can| can.id).listed();
    let chips = open.iter().map(|can| chip(can, picks, seen)).listed();
    let tap = move |nth: usize| tapped(CanTap::Of(ids.get(nth).copied()));
    vec![el("p", "t14 i2").text(can_words::SOME_OF), flowing("key h56", chips, tap)]
}

/// Which can it is of, and how that stands; of a new one whether the rest is counted.
pub fn which(picks: &Picks, open: &[Can], seen: Seen<'_>) -> Vec<El<Msg>> {
    if let Some(can) = open.iter().find(|can| Some(can.id) == picks.can.picked) {
        let left = seen.speech.number(can.left(), 0, 2);
        let holds = seen.speech.number(can.holds, 0, 2);
        let age = can.months(seen.now.day());
        let said = can_words::stands((&left, &holds), can.unit.as_str(), age);
        let other = crate::parts::key::key("key soft h48", can_words::ANOTHER, "", tapped(CanTap::Of(None)));
        let segs = vec![Seg::new(can_words::AMOUNT, !picks.can.by_part), Seg::new(can_words::PART, picks.can.by_part)];
        let by = even(can_words::USED, segs, |nth| tapped(CanTap::ByPart(nth == 1)));
        return vec![el("p", "").text(format!("{}: {said}", can.what)), other, by];
    }
    let segs = vec![Seg::new(can_words::ONCE, !picks.can.keeps), Seg::new(can_words::COUNT_REST, picks.can.keeps)];
    let keeps = even(can_words::REST, segs, |nth| tapped(CanTap::Keeps(nth == 1)));
    let is = |unit: &str| picks.can.unit.as_ref().is_some_and(|chosen| chosen.as_str() == unit);
    let chips = UNITS.map(|unit| Chip::choice(can_words::unit(unit), is(unit))).to_vec();
    let pick =
        |nth: usize| UNITS.get(nth).and_then(|unit| Key::read(unit)).map_or(tapped(CanTap::Keeps(true)), |unit| tapped(CanTap::Unit(unit)));
    let units = picks.can.keeps.then(|| flowing("key h48", chips, pick));
    let under = picks.can.keeps.then(|| el("p", "t14 i2").text(can_words::KEEPS_UNDER));
    some_of(picks, open, seen).into_iter().chain([keeps]).chain(units).chain(under).listed()
}
