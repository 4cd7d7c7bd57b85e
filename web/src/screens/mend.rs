//! A count put right: how many it was, or by which figures it came about, and why.

use super::slots::{Slot, figures_in, refused, under_thumb};
use super::{Screen, Seen};
use crate::app::mend::{MendTap, Mending, Reason, count, reason, typed, typing};
use crate::app::workshop::rack::GONE_TO;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::field::{Field, field};
use crate::parts::head::{Head, head};
use crate::parts::key::{done_key, key};
use crate::view::{El, el};
use crate::words::en::{common, count as reasons, pile as by, rack as words};
use fivebar_core::haul::Pile;
use fivebar_core::haul::weighing::{Spread, layers};
use fivebar_core::ledger::decide::Figures;
use fivebar_core::ledger::mended::{figures, pieces};
use fivebar_core::ledger::{Fact, fold};
use fivebar_core::quantity::{Count, Id, Key, Listed, Units};
use fivebar_core::sheet::count::tile;

/// The page; none once the count is struck.
pub fn screen(mending: &Mending, app: &App, seen: Seen<'_>) -> Option<Screen> {
    let (entry, at) = count(app, mending.entry)?;
    let haul = fold::haul(&app.shelf().book, at.haul)?;
    let pile = haul.pile(at.pile)?;
    let old = figures(&app.shelf().book, mending.entry);
    let slots = slots(old, haul.units);
    let what = told_of((&entry.fact, pieces(&entry.fact).unwrap_or(0)), at.pile, app, seen);
    let stands = common::of_when(&what, &common::of_when(&seen.speech.day(entry.wall), &seen.speech.clock(entry.wall)));
    let why = match reason(&entry.fact) {
        Reason::None => None,
        Reason::Words => Some(in_words(mending)),
        Reason::Rejected => Some(chosen(&reasons::REASONS, reasons::reason, mending)),
        Reason::Gone => Some(chosen(&GONE_TO, words::gone_to, mending)),
    };
    let then = old.and_then(|old| comes_to(mending, old, pile, (app, seen)));
    let class = if slots.len() == 3 { "g3 slots" } else { "g2 slots" };
    let main = el("main", "scr form")
        .kid(el("p", "t14 i2").text(stands))
        .kid(figures_in(class, &mending.form, &slots, |nth| say(MendTap::At(nth))))
        .kids(refused(app, seen))
        .kids(then.map(|line| el("p", "w7").attr("role", "status").text(line)))
        .kid(el("div", "push"))
        .kids(under_thumb(&mending.form, &slots, (haul.units, seen), |press| say(MendTap::Press(press))))
        // Under the pad, so that all keys are seen on a small phone.
        .kids(why)
        .kid(el("p", "t14 i2").text(words::OLD_IS_KEPT));
    let leave = key("key", common::NOT_NOW, "", say(MendTap::Leave));
    let keys = el("div", "um").kid(done_key("key solid t22", words::SAVE, "", say(MendTap::Done))).kid(leave);
    let top = head(Head::new(super::count::name(&tile(pile)), words::MEND));
    Some(Screen::new("count/mend", top, main).foot(el("footer", "foot").kid(keys)).says_it())
}

fn say(tap: MendTap) -> Msg {
    Msg::Mend(tap)
}

fn slots(old: Option<Figures>, units: Units) -> Vec<Slot> {
    let mass = |label: &str| Slot::new(label, common::mass_unit(units));
    match old {
        None => vec![Slot::whole(words::HOW_MANY)],
        Some(Figures::Layers { .. }) => [by::LAYERS, by::IN_EACH, by::REST].map(Slot::whole).into(),
        Some(Figures::Weight(_)) => vec![Slot::whole(by::SAMPLE), mass(by::SAMPLE_WEIGHS), mass(by::ALL_WEIGHS), mass(by::TARE)],
    }
}

/// What the figures come to as they are typed, once they can be read.
fn comes_to(mending: &Mending, old: Figures, pile: &Pile, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    let (_, at) = count(app, mending.entry)?;
    let n = |n: Count| seen.speech.count(n);
    match typed(&mut mending.clone(), old, typing(app, at))?.ok()? {
        Figures::Layers { layers: of, per, rest } => layers(per, of, rest).ok().map(|all| common::pieces(all, &n(all))),
        Figures::Weight(scale) => {
            let found = scale.weighing().count(scale.spread(Spread::usual(pile))).ok()?;
            Some(by::about(&common::pieces(found.n, &n(found.n)), &n(found.least), &n(found.most)))
        }
    }
}

fn in_words(mending: &Mending) -> El<Msg> {
    let asked = Field { id: "why", label: words::WHY.into(), value: mending.words.clone(), fleeting: true, ..Field::default() };
    field(asked, |text| say(MendTap::Say(text)))
}

/// Reasons by their keys of the book; one that is none of them is none of these chips either.
fn chosen(keys: &'static [&'static str], said: impl Fn(&str) -> String, mending: &Mending) -> El<Msg> {
    let shown = keys.iter().map(|key| Chip::choice(said(key), mending.words == **key)).listed();
    flowing("key h48", shown, move |nth| say(keys.get(nth).and_then(|key| Key::read(key)).map_or(MendTap::At(0), MendTap::Why)))
}

/// A fact in a few words, with its pieces.
pub fn told_of((fact, n): (&Fact, Count), here: Id, app: &App, seen: Seen<'_>) -> String {
    let job = job_of(fact).and_then(|job| fold::job(&app.shelf().book, job)).map(|job| job.name).unwrap_or_default();
    words::told(fact, (&seen.speech.count(n), &job), here)
}

fn job_of(fact: &Fact) -> Option<Id> {
    match fact {
        Fact::PiecesTaken(f) => Some(f.job),
        Fact::PiecesFreed(f) => Some(f.job),
        Fact::PiecesLeft(f) => Some(f.job),
        Fact::PiecesReserved(f) => Some(f.job),
        Fact::ReservationFreed(f) => Some(f.job),
        _ => None,
    }
}
