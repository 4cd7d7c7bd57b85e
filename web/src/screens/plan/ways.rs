//! The ways a top could be made: which wood, how thick, in how many rows; why this one, and the others a tap away.

use super::super::Seen;
use super::saw::number;
use super::{percent, say, source_name};
use crate::app::plan::Tap;
use crate::app::{App, Msg};
use crate::parts::chips::{Chip, flowing};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{plan as plan_words, ways as words, woods as wood_words};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Id, Key, Length, Listed, Units, begin_large, begin_small};
use fivebar_core::sheet::make::{Given, Pick, Source, Top, Unfit, Way, What, Which};

/// More others than these are not named.
const NAMED: usize = 4;
/// All of the length that is asked is there.
const ALL: i64 = 1_000;

fn top(given: &Given) -> Option<&Top> {
    if let What::Top(top) = &given.ask.what { Some(top) } else { None }
}

pub(super) fn wood(wood: Option<&Key>, app: &App) -> String {
    wood.map_or_else(|| words::WOOD_NOT_SAID.to_owned(), |wood| begin_small(&wood_words::among(wood, &app.shelf().workshop().wood.woods)))
}

pub(super) fn rows(n: i64, seen: Seen<'_>) -> String {
    plan_words::made(Shape::Rows, &number(n, seen), n == 1, None).trim_end_matches('.').to_owned()
}

/// "oak, 25 thick"; "woods mixed, 18 thick".
fn named(pick: &Pick, mixed: bool, (app, units, seen): (&App, Units, Seen<'_>)) -> String {
    let of = if mixed { words::MIXED_WOODS.to_owned() } else { wood(pick.wood.as_ref(), app) };
    let of = pick.wide.map_or_else(|| of.clone(), |wide| words::of_width(&of, &seen.speech.length(wide, units)));
    let of = pick.without.and_then(|which| pile(which, app)).map_or_else(|| of.clone(), |pile| words::without(&of, &pile));
    words::thick(&of, &seen.speech.length(pick.thickness, units))
}

/// The name of a pile that was among those asked, as the plan in hand has it.
fn pile(which: Which, app: &App) -> Option<String> {
    let given = app.plan.given.as_ref()?;
    let left = given.left_out.iter().map(|(source, _)| source);
    let source = given.sources.iter().chain(left).find(|source| source.which() == which)?;
    Some(begin_small(&source_name(source, app)))
}

/// Why it is of this wood, so thick and in so many rows, where that was left to the pieces and they allow others.
pub fn chosen(given: &Given, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    let (way, top) = (given.ways.first()?, top(given)?);
    let best = top.pick.is_none() && 1 < given.ways.len() && way.there == ALL;
    let nothing = !way.buys && given.ways.iter().any(|way| way.buys);
    let said = || {
        let (name, rows) = (named(&way.pick, way.mixed, (app, given.units, seen)), rows(way.rows.into(), seen));
        match given.ways.iter().filter(|way| way.planned).count() {
            0 | 1 => words::by_estimate(&name, &rows, nothing),
            n if way.buys => words::by_least_to_buy(&name, &rows, &n.to_string()),
            n => words::by_plans(&name, &rows, (&n.to_string(), nothing)),
        }
    };
    best.then(said)
}

/// Pieces are taken that are held back as long as others do.
pub fn thick_taken(given: &Given) -> Option<String> {
    given.ways.first().filter(|way| way.pick.thick).map(|_| words::THICK_TAKEN.to_owned())
}

/// Rows, thickness or wood were left to the pieces: what is proven is proven of these alone.
pub fn was_open(given: &Given) -> bool {
    let several = || 1 < given.ways.len();
    top(given).is_some_and(|top| top.rows.is_none() || top.thickness.is_none() || top.pick.is_none() && !top.mixed && several())
}

/// What a bound holds for: "10 rows of oak"; it is the same when the plan is opened again.
pub fn bound_of(given: &Given, made: String, app: &App) -> Option<String> {
    let (top, of) = (top(given)?, pieces_of(given, app));
    if top.rows.is_some() && of.is_none() {
        return None;
    }
    let rows = plan_words::made(Shape::Rows, &made, made == "1", None).trim_end_matches('.').to_owned();
    Some(of.map_or_else(|| rows.clone(), |of| words::rows_of(&rows, &of)))
}

/// The pieces that a top was planned of alone: "oak", "these pieces of oak"; nothing where it was planned of all.
pub fn pieces_of(given: &Given, app: &App) -> Option<String> {
    let one = given.sources.first().filter(|_| top(given).is_some_and(|top| !top.mixed)).and_then(|source| source.pile.wood.as_ref());
    let of = one.map(|one| wood(Some(one), app));
    if given.some { Some(of.map_or_else(|| words::THESE_PIECES.to_owned(), |of| words::these_of(&of))) } else { of }
}

/// Of one wood not all of it comes out, and of several more would, by the estimate.
pub fn is_more_mixed(given: &Given) -> bool {
    let first = given.ways.first().filter(|way| !way.mixed);
    first.is_some_and(|first| given.ways.iter().any(|way| way.mixed && first.there < way.there))
}

/// The others, each a tap away.
pub fn others(given: &Given, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let one = |way: &Way| {
        let name = begin_large(&named(&way.pick, way.mixed, (app, given.units, seen)));
        let waste = percent(way.waste.round_dp(2), seen);
        let waste = (way.there == ALL).then_some((waste.as_str(), way.planned));
        let under = words::way(&rows(way.rows.into(), seen), waste, way.buys);
        key("key soft h56", name, under, say(Tap::Way(way.clone())))
    };
    // Of one wood and thickness the best is named: in other rows it was only tried.
    let is_first = |(nth, way): &(usize, &Way)| !given.ways.iter().take(*nth).any(|before| before.is_like(way));
    let keys = given.ways.iter().enumerate().skip(1).filter(is_first).take(NAMED).map(|(_, way)| one(way)).listed();
    if keys.is_empty() { vec![] } else { vec![el("h2", "t17 no-print").text(words::OTHER_WAYS), el("div", "g2 no-print").kids(keys)] }
}

/// Whether woods may be mixed, where there are several.
pub fn woods(fit: &[(Source, Option<Unfit>)], (app, units, seen): (&App, Units, Seen<'_>)) -> Option<El<Msg>> {
    let draft = &app.plan.draft;
    let mut woods = fit.iter().filter(|(_, why)| why.is_none()).map(|(source, _)| &source.pile.wood);
    let first = woods.next();
    let several = woods.any(|wood| Some(wood) != first);
    let pick = draft.pick.as_ref().map(|pick| Chip::choice(begin_large(&named(pick, draft.mixed, (app, units, seen))), true));
    let chips = vec![
        Chip::choice(words::ONE_WOOD, !draft.mixed && draft.pick.is_none()),
        Chip::choice(words::MAY_BE_MIXED, draft.mixed && draft.pick.is_none()),
    ];
    let shown = several || draft.mixed || draft.pick.is_some();
    shown.then(|| {
        flowing("key h48", chips.into_iter().chain(pick).collect(), |nth| say(if nth == 2 { Tap::Go } else { Tap::Mixed(nth == 1) }))
    })
}

/// What the fields that were left empty came to in the plan before.
pub fn left_open(job: Id, (app, seen): (&App, Seen<'_>)) -> Option<El<Msg>> {
    let given = app.plan.given.as_ref().filter(|given| given.ask.job == job)?;
    let (way, form) = (given.ways.first().filter(|_| top(given).is_some())?, &app.plan.draft.form);
    let n = form.is_empty(2).then(|| rows(way.rows.into(), seen));
    let thick = |length: Length| words::so_thick(&seen.speech.length(length, given.units));
    let all = n.into_iter().chain(form.is_empty(4).then(|| thick(way.pick.thickness))).listed();
    (!all.is_empty()).then(|| worded("p", "t14 i2", words::as_allowed(&all.join(", "))))
}
