//! Take, maybe or leave: the word, and the one fact that decides.

use super::super::Seen;
use super::length;
use crate::app::{App, Msg};
use crate::parts::verdict::{Sign, verdict};
use crate::view::{El, el};
use crate::words::en::pile as words;
use fivebar_core::haul::take::{Decides, Least, SetBy, Verdict};
use fivebar_core::quantity::{Decimal, Id, Money, half_up};
use fivebar_core::sheet::pile::PileSheet;

/// What stands on a tile of a pile that is not simply taken: one word, or nothing. Of a glimpse nothing is said: the past is not read.
pub fn on_tile(app: &App, pile: Id) -> String {
    if app.is_glimpse() || super::is_home(app) {
        return String::new();
    }
    let told = app.shelf().haul().and_then(|haul| {
        let known = app.shelf().known(&haul);
        haul.pile(pile).and_then(|pile| known.at_bin(&haul, pile, app.now.at).ok().flatten())
    });
    match told.map(|told| told.verdict) {
        Some(Verdict::Leave) => words::LEAVE_TILE,
        Some(Verdict::Maybe) => words::MAYBE_TILE,
        Some(Verdict::Take) | None => "",
    }
    .to_owned()
}

/// The verdict with its sentence; what is missing for one where there is none.
pub fn at_bin(sheet: &PileSheet, seen: Seen<'_>) -> El<Msg> {
    let Some(told) = sheet.at_bin else {
        return el("p", "").text(if sheet.tile.taken == 0 { words::NOTHING_TO_JUDGE } else { words::NOT_JUDGED });
    };
    let (sign, word) = match told.verdict {
        Verdict::Take => (Sign::Yes, words::TAKE),
        Verdict::Maybe => (Sign::Close, words::MAYBE),
        Verdict::Leave => (Sign::No, words::LEAVE),
    };
    verdict(sign, word, because(told.decides, sheet, seen))
}

fn because(decides: Decides, sheet: &PileSheet, seen: Seen<'_>) -> String {
    let n = |n: u32| seen.speech.count(n);
    let percent = |at: f64| seen.speech.number(Decimal::try_from(at).unwrap_or_default(), 0, 1);
    let sum = |amount: Decimal| Money::book(amount, sheet.currency).map(|sum| seen.speech.money(sum)).unwrap_or_default();
    match decides {
        Decides::TooShort(least) => under(least, sheet, seen),
        Decides::PartlyShort(least) => words::short_ones(&under(least, sheet, seen)),
        Decides::CostsMore(amount) => words::costs_more(&sum(amount)),
        Decides::Leaves(amount) => words::leaves(&sum(amount)),
        Decides::Rejects { share, sorted } => {
            let rejected = half_up(share.saturating_mul(Decimal::from(sorted)), 0);
            words::rejects(&seen.speech.number(rejected, 0, 0), &n(sorted))
        }
        Decides::WoodUnknown => words::WOOD_UNKNOWN.to_owned(),
        Decides::TooWet { reading, limit } => words::too_wet(&percent(reading.as_per_cent()), &percent(limit.as_per_cent())),
        Decides::MarkedWet => words::MARKED_WET.to_owned(),
        Decides::EnoughOnRack { pieces, needed } => words::enough_on_rack(&n(pieces), &n(needed)),
        Decides::LiesUnused { pieces, unused } => {
            let weeks = unused.as_minutes().checked_div(7 * 24 * 60).unwrap_or_default();
            words::lies_unused(&n(pieces), pieces == 1, &seen.speech.number(Decimal::from(weeks), 0, 0))
        }
        Decides::NothingAgainst => words::NOTHING_AGAINST.to_owned(),
    }
}

fn under(least: Least, sheet: &PileSheet, seen: Seen<'_>) -> String {
    let shown = length(least.length, sheet.units, seen);
    match least.set_by {
        SetBy::Part => words::under_part(&shown),
        SetBy::Machine => words::under_machine(&shown),
    }
}
