//! The pieces to use: all that fit are, a tap leaves a pile out; those that do not fit say why.

use super::super::{Screen, Seen};
use super::{buy, ends, say, side};
use crate::app::plan::{Tap, after_the_saw, fitting_to};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::screens::jobs::titled;
use crate::screens::jobs::{pile_name, pile_size};
use crate::view::{El, el};
use crate::words::en::{plan as words, rack, tiles, ways};
use fivebar_core::ledger::decide::Lying;
use fivebar_core::ledger::fold::is_bought;
use fivebar_core::quantity::{Count, Listed, Units};
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::make::planed::planed_from;
use fivebar_core::sheet::make::{Source, Unfit};

pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let units = sheet.account.units;
    let ask = app.plan.draft.rough(sheet.job, seen.speech.typing(units));
    let all = ask.map(|ask| fitting_to(app, &ask)).unwrap_or_default();
    let none = all.is_empty().then(|| el("p", "").text(words::NO_PIECES));
    let (bought, lying): (Vec<_>, Vec<_>) = all.into_iter().partition(|(source, _)| source.bought.is_some());
    let (fit, unfit): (Vec<_>, Vec<_>) = lying.into_iter().partition(|(_, why)| why.is_none());
    let after = after_the_saw(app);
    let trims = app.plan.draft.shape.map(|shape| ends::trims(shape, &unfit, app, (units, seen))).unwrap_or_default();
    let rows = fit.iter().chain(&unfit).map(|(source, why)| row((source, &after), *why, app, (units, seen)));
    let main = el("main", "scr").kids(none).kids(rows).kids(trims).kids(buy::added(&bought, app, (units, seen)));
    let top = Head::new(titled(sheet, seen), words::PILES);
    let back = key("key solid h56 wide", words::TO_FIGURES, "", say(Tap::Change));
    Screen::new("jobs/plan-piles", head(top), main).foot(el("footer", "foot").kid(back))
}

fn row((source, after): (&Source, &[(Lying, Count)]), why: Option<Unfit>, app: &App, (units, seen): (Units, Seen<'_>)) -> El<Msg> {
    let on = why.is_none() && app.plan.draft.turned.contains(&source.which()) == source.in_job;
    // What a plan before took and is not cut goes back to the rack for this one.
    let before = if source.in_job || source.bought.is_some() { 0 } else { source.n.saturating_sub(source.pile.free) };
    let away = source.pile.on_its_way;
    let lying = if away { rack::NOT_HOME_YET } else { words::ON_THE_RACK };
    let place = match source.in_job {
        true if away => format!("{}, {}", words::IN_THIS_JOB, rack::NOT_HOME_YET),
        true => words::IN_THIS_JOB.to_owned(),
        false if 0 < before => words::by_the_plan_before(&seen.speech.count(source.pile.free), lying, &seen.speech.count(before)),
        false if is_bought(&app.shelf().book, source.pile.haul) => words::BOUGHT.to_owned(),
        false => lying.to_owned(),
    };
    let state = match why {
        Some(why) => unfit_of(source, why, app, (units, seen)),
        None => (if on { words::USED } else { words::LEFT_OUT }).to_owned(),
    };
    let uncut = super::super::left::uncut(after, source.which().0, source.pile.on_rack, seen).filter(|_| !source.in_job);
    let mid = el("span", "mid")
        .kid(worded("span", "nm", pile_name(&source.pile)))
        .kid(worded("span", "s", pile_size(&source.pile, seen)))
        .kid(worded("span", "s", [place].into_iter().chain(uncut).chain([state]).listed().join(", ")));
    el("button", if on { "pile ours" } else { "pile" })
        .attr("type", "button")
        .attr("aria-pressed", if on { "true" } else { "false" })
        .key(format!("{}{}", source.pile.pile, source.in_job))
        .flag("disabled", why.is_some())
        .on_tap(say(Tap::Turn(source.which())))
        .kid(mid)
        .kid(el("span", "t30 w8").text(seen.speech.count(source.n)))
}

/// The same of a pile: rests that a plan had planed say so where they are too thin.
pub fn unfit_of(source: &Source, why: Unfit, app: &App, (units, seen): (Units, Seen<'_>)) -> String {
    let said = unfit(why, units, seen);
    let rough = planed_from(&app.shelf().book, source.which().0).filter(|_| why == Unfit::TooThin);
    rough.map_or_else(|| said.clone(), |rough| words::planed_from(&said, &side(rough, units, seen)))
}

pub fn unfit(why: Unfit, units: Units, seen: Seen<'_>) -> String {
    match why {
        Unfit::SizeMissing => words::SIZE_MISSING.into(),
        Unfit::TooThin => words::TOO_THIN.into(),
        Unfit::TooNarrow => words::TOO_NARROW.into(),
        Unfit::TooShort => words::TOO_SHORT.into(),
        Unfit::TooLong => tiles::TOO_LONG.into(),
        Unfit::OtherWood => words::OTHER_WOOD.into(),
        Unfit::HeldBack => words::HELD_BACK.into(),
        Unfit::OtherWidth => words::OTHER_WIDTH.into(),
        Unfit::LeftForLess => ways::LEFT_FOR_LESS.into(),
        Unfit::UnderMachine(least) => words::under_machine(&side(least, units, seen)),
    }
}
