//! A line of a pile's history, put right: how many it was, and why.

use super::super::super::slots::Slot;
use super::super::super::{Screen, Seen};
use super::ask::{Asked, in_words, laid_out};
use super::row::name;
use super::{RackTap, say};
use crate::app::workshop::rack::GONE_TO;
use crate::app::workshop::rack::mend::{Reason, line, reason};
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::view::{El, el};
use crate::words::en::{common, count, rack as words};
use fivebar_core::ledger::decide::Lying;
use fivebar_core::quantity::{Id, Key, Listed};
use fivebar_core::sheet::stock;

/// The page.
pub fn screen((at, id): (Lying, Id), app: &App, seen: Seen<'_>) -> Screen {
    let pile = stock::pile(&app.shelf().shop(seen.now.at), at).ok();
    let (Some(pile), Some(entry)) = (pile, line(app, id)) else { return super::pile::screen(at, app, seen) };
    let when = common::of_when(&seen.speech.day(entry.wall), &seen.speech.clock(entry.wall));
    let what = super::pile::what(&entry.fact, at.pile, app, seen);
    let why = match reason(&entry.fact) {
        Reason::None => vec![],
        Reason::Words => vec![in_words("why", words::WHY, app)],
        Reason::Rejected => vec![reasons(&count::REASONS, count::reason, app)],
        Reason::Gone => vec![reasons(&GONE_TO, words::gone_to, app)],
    };
    let stands = el("p", "i2").text(common::of_when(&what, &when));
    let asked = Asked {
        place: "workshop/rack-mend",
        small: name(&pile),
        title: words::MEND.into(),
        above: vec![stands],
        slots: vec![Slot::whole(words::HOW_MANY)],
        units: pile.haul.units,
        save: words::SAVE.into(),
        other: None,
        // Under the pad, so that all keys are seen on a small phone.
        below: why.into_iter().chain([el("p", "t14 i2").text(words::OLD_IS_KEPT)]).listed(),
        ready: true,
    };
    laid_out(asked, app, seen)
}

/// Reasons by their keys of the book; one that is none of them is none of these chips either.
fn reasons(keys: &'static [&'static str], said: impl Fn(&str) -> String, app: &App) -> El<Msg> {
    let shown = keys.iter().map(|key| Chip::choice(said(key), app.workshop.rack.words == **key)).listed();
    flowing("key h48", shown, move |nth| say(keys.get(nth).and_then(|key| Key::read(key)).map_or(RackTap::At(0), RackTap::Why)))
}
