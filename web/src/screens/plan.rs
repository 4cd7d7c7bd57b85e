//! What can I make: what it looks like, its few figures, the piles to use, and the plan that came of it.

mod anew;
mod answer;
mod ask;
mod boards;
mod buy;
mod ends;
mod fits;
mod joints;
mod label;
mod lacks;
mod limits;
mod mixed;
mod nearly;
mod over;
mod picture;
mod piles;
mod question;
mod reckoned;
pub(in crate::screens) mod saw;
mod seek;
mod signs;
pub mod since;
mod sizes;
mod told;
mod uncut;
mod wants;
mod ways;
mod weighs;

use super::jobs::{pile_name, titled};
use super::{Screen, Seen, undo};
use crate::app::jobs;
use crate::app::plan::{Page, Tap, in_use_by, made_from, opens_unused};
use crate::app::{App, Msg};
use crate::parts::head::{Head, head};
use crate::parts::ink::{Pair, drawing, rect};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{changed, common, design, job as rooms, plan as words, woods};
use fivebar_core::ledger::fold::Design;
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Decimal, Id, Length, Listed, Units, begin_small, in_small};
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::make::Source;

/// The page as it stands.
pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    match (app.plan.page, app.plan.draft.shape) {
        (Page::Choose, _) | (_, None) => choose(sheet, app, seen),
        (Page::Ask, Some(shape)) => ask::screen(shape, sheet, app, seen),
        (Page::Piles, _) => piles::screen(sheet, app, seen),
        (Page::Boards, _) => buy::screen(sheet, app, seen),
        (Page::Answer, _) => answer::screen(sheet, app, seen),
    }
}

/// The key in the job that opens it: under it that there is a plan the wood was cut by. Where one that was made since opens, that one has
/// a key of its own.
pub fn keys(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let is_other = sheet.planned && opens_unused(app, sheet.job);
    let under = match sheet.planned {
        true if is_other => words::NOT_USED,
        true => words::SHOW_PLAN,
        false => "",
    };
    let open = key("key h56 wide", words::WHAT_CAN_I_MAKE, under, say(Tap::Open));
    let used = if is_other { since::in_use(sheet.job, app, seen) } else { vec![] };
    std::iter::once(open).chain(used).collect()
}

fn say(tap: Tap) -> Msg {
    Msg::Jobs(jobs::Tap::Plan(tap))
}

/// With parts, keys that keep them as a design, under the name of the one the job is `from` too; without, the designs there are.
pub fn designs(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Vec<El<Msg>> {
    let from = made_from(app);
    let keys = design_keys(sheet, (&app.shelf().workshop().designs, from.as_deref()), seen);
    let notice = of_no_design(app, sheet.job).then(|| el("p", "t14 i2").text(design::NOT_OF_PLANS));
    keys.into_iter().chain(notice).collect()
}

fn design_keys(sheet: &JobSheet, (kept, from): (&[Design], Option<&str>), seen: Seen<'_>) -> Vec<El<Msg>> {
    let going_on = sheet.ended.is_none();
    if !sheet.parts.is_empty() {
        let there = |name: &str| kept.iter().any(|design| design.is_named(name));
        let under = |there: bool| if there { words::DESIGN_THERE } else { "" };
        let again = from.filter(|name| there(name) && in_small(name) != in_small(&sheet.name));
        let again = again.map(|name| key("key soft h56 wide", design::keep_again(name), under(true), say(Tap::KeepDesignAs(name.into()))));
        let own = key("key soft h56 wide", words::KEEP_DESIGN, under(there(&sheet.name)), say(Tap::KeepDesign));
        return again.into_iter().chain([own]).collect();
    }
    if kept.is_empty() || !going_on {
        return vec![];
    }
    let one = |design: &Design| {
        let n = |n: usize| seen.speech.number(Decimal::from(n), 0, 0);
        let (parts, operations) = (design.parts.len(), design.operations.len());
        let under = words::design_holds(&n(parts), parts == 1, &n(operations), operations == 1);
        key("key h56 wide", design.name.clone(), under, say(Tap::UseDesign(design.id))).key(design.id.to_string())
    };
    std::iter::once(el("h2", "").text(words::MAKE_FROM_DESIGN)).chain(kept.iter().map(one)).collect()
}

/// Whether a job has a plan of something that no design keeps.
fn of_no_design(app: &App, job: Id) -> bool {
    let in_hand = app.plan.given.as_ref().filter(|given| given.ask.job == job).map(|given| given.ask.what.shape());
    let used = in_use_by(app, job).into_iter().map(|(_, shape, _)| shape);
    used.chain(in_hand).any(|shape| matches!(shape, Shape::Rows | Shape::Field))
}

const SHAPES: [Shape; 4] = [Shape::Rows, Shape::Parts, Shape::Sticks, Shape::Field];

/// Back to the job.
fn to_job() -> El<Msg> {
    key("key soft h56 wide", rooms::THE_JOB, "", Msg::Jobs(jobs::Tap::Page))
}

/// Asked by what it looks like, never by the name of a problem.
fn choose(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let one = |shape: Shape| {
        let (name, under) = words::shape(shape);
        el("button", "key shape")
            .attr("type", "button")
            .on_tap(say(Tap::Shape(shape)))
            .kid(small(shape))
            .kid(el("span", "").text(name))
            .kid(el("span", "s").text(under))
    };
    let main = el("main", "scr").kid(el("h2", "ink1").text(words::WHAT_IT_LOOKS_LIKE)).kid(el("div", "g2").kids(SHAPES.map(one)));
    let main = main.kids(since::in_use(sheet.job, app, seen));
    let back = to_job();
    let top = Head::new(titled(sheet, seen), words::WHAT_CAN_I_MAKE);
    let undone = app.plan.dropped.then(|| undo::bar(app, seen)).flatten();
    Screen::new("jobs/plan", head(top), main).foot(el("footer", "foot").kids(undone).kid(back))
}

/// Boards of the small drawings: corner, size.
type Boards = &'static [(f64, f64, f64, f64)];

const TOP: Boards = &[
    (0.0, 0.0, 40.0, 12.0),
    (40.0, 0.0, 56.0, 12.0),
    (0.0, 12.0, 64.0, 12.0),
    (64.0, 12.0, 32.0, 12.0),
    (0.0, 24.0, 26.0, 12.0),
    (26.0, 24.0, 70.0, 12.0),
    (0.0, 36.0, 52.0, 12.0),
    (52.0, 36.0, 44.0, 12.0),
];
const PARTS: Boards = &[(4.0, 0.0, 88.0, 10.0), (10.0, 14.0, 10.0, 34.0), (76.0, 14.0, 10.0, 34.0), (24.0, 16.0, 48.0, 8.0)];
const STICKS: Boards = &[
    (0.0, 4.0, 44.0, 10.0),
    (46.0, 4.0, 44.0, 10.0),
    (0.0, 19.0, 30.0, 10.0),
    (32.0, 19.0, 30.0, 10.0),
    (64.0, 19.0, 30.0, 10.0),
    (0.0, 34.0, 62.0, 10.0),
    (64.0, 34.0, 30.0, 10.0),
];
const FIELD: Boards = &[
    (0.0, 0.0, 32.0, 16.0),
    (32.0, 0.0, 32.0, 16.0),
    (64.0, 0.0, 32.0, 16.0),
    (0.0, 16.0, 16.0, 16.0),
    (16.0, 16.0, 32.0, 16.0),
    (48.0, 16.0, 32.0, 16.0),
    (80.0, 16.0, 16.0, 16.0),
    (0.0, 32.0, 32.0, 16.0),
    (32.0, 32.0, 32.0, 16.0),
    (64.0, 32.0, 32.0, 16.0),
];

fn small(shape: Shape) -> El<Msg> {
    let boards = match shape {
        Shape::Rows => TOP,
        Shape::Parts => PARTS,
        Shape::Sticks => STICKS,
        Shape::Field => FIELD,
    };
    sketch((96.0, 48.0), boards)
}

/// A small drawing of boards.
fn sketch(size: Pair, boards: Boards) -> El<Msg> {
    let one = |(nth, (x, y, w, h)): (usize, &(f64, f64, f64, f64))| {
        rect(if nth.is_multiple_of(2) { "w1" } else { "w2" }, (x + 1.0, y + 1.0), (*w, *h))
    };
    drawing("sketch", (size.0 + 2.0, size.1 + 2.0)).attr("aria-hidden", "true").kids(boards.iter().enumerate().map(one))
}

/// Pieces by their name; boards to be bought by their wood.
fn source_name(source: &Source, app: &App) -> String {
    if source.bought.is_some() { buy::name(source.pile.wood.as_ref(), app) } else { pile_name(&source.pile) }
}

/// The same with its wood, where another pile there has that name; with its letter, where that is of the same wood.
fn told_apart<'a>(source: &Source, all: impl Iterator<Item = &'a Source>, app: &App) -> String {
    let name = source_name(source, app);
    let same = all.filter(|it| it.pile.pile != source.pile.pile && source_name(it, app) == name).listed();
    let of = |wood| begin_small(&woods::among(wood, &app.shelf().workshop().wood.woods));
    match source.pile.wood.as_ref().filter(|_| same.iter().all(|it| it.pile.wood != source.pile.wood)) {
        _ if same.is_empty() => name,
        Some(wood) => changed::with_its(&name, &of(wood)),
        None => changed::with_its(&name, &letter_of(source, app)),
    }
}

/// As a plan has it in hand, else as the rack has it: two hauls may have a pile of one letter.
fn letter_of(source: &Source, app: &App) -> String {
    let of_plan = app.plan.given.as_ref().and_then(|given| {
        let place = given.sources.iter().position(|it| it.which() == source.which())?;
        given.ready.sources.get(place).map(|it| it.letter.clone())
    });
    of_plan.unwrap_or_else(|| source.pile.label.clone())
}

/// A length with its unit.
fn side(length: Length, units: Units, seen: Seen<'_>) -> String {
    format!("{} {}", seen.speech.length(length, units), common::length_unit(units))
}

/// A share in per cent, to a tenth.
fn percent(share: Decimal, seen: Seen<'_>) -> String {
    seen.speech.number(share.checked_mul(Decimal::ONE_HUNDRED).unwrap_or_default(), 0, 1)
}
