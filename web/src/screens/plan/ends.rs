//! Where only one piece of each row is cut: what that costs, and the keys that do without.

use super::super::Seen;
use super::saw::number;
use super::{say, side};
use crate::app::plan::Tap;
use crate::app::workshop::{self, wood};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{plan, told as words};
use fivebar_core::ledger::kind::plan::Shape;
use fivebar_core::quantity::{Length, Listed, Units};
use fivebar_core::sheet::make::{Given, Source, Unfit, What, figures};
use fivebar_core::sheet::plan::{PlanSheet, ShortEnd};

/// To the figures of the saw, to one of them by its name.
pub fn to_saw(name: &'static str, least: Length, (units, seen): (Units, Seen<'_>)) -> El<Msg> {
    key("key h56 wide", format!("{name}, {}", side(least, units, seen)), plan::SAW, saw_page())
}

/// The way to where they are said.
pub fn saw_page() -> Msg {
    Msg::Workshop(workshop::Tap::Wood(wood::WoodTap::Open(wood::Page::Saw)))
}

/// What comes off the ends and edges of pieces that are too short or too narrow for it, to say it otherwise.
pub fn trims(shape: Shape, fit: &[(Source, Option<Unfit>)], app: &App, of: (Units, Seen<'_>)) -> Vec<El<Msg>> {
    let Ok(figures) = figures(&app.shelf().shop(of.1.now.at), of.0) else { return vec![] };
    let is = |why: Unfit| fit.iter().any(|(source, unfit)| !source.in_job && *unfit == Some(why));
    let end = if matches!(shape, Shape::Rows | Shape::Field) { (1, figures.square) } else { (2, figures.end_trim) };
    let edge = (3, figures.edge_trim);
    let joint = (7, figures.joint);
    let short = [end].into_iter().filter(|_| is(Unfit::TooShort));
    let narrow =
        [edge].into_iter().chain((shape == Shape::Rows).then_some(joint)).filter(|_| is(Unfit::TooNarrow) && shape != Shape::Sticks);
    let one = |(nth, off): (usize, Length)| plan::SAW_FIGURES.get(nth).map(|name| to_saw(name, off, of));
    let keys = short.chain(narrow).filter(|(_, off)| Length::ZERO < *off).filter_map(one).listed();
    if keys.is_empty() { vec![] } else { vec![el("div", if keys.len() == 1 { "no-print" } else { "g2 no-print" }).kids(keys)] }
}

/// An end that would be too short, and ends that could come several from one strip, each with its key.
pub fn told(given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> Vec<El<Msg>> {
    let What::Top(top) = &given.ask.what else { return vec![] };
    let short = sheet.ends.short.as_ref();
    let together = sheet.ends.together.map(|strips| words::own_strip(&words::strips_do(&number(strips, seen), strips == 1)));
    let lines = short.map(|short| end(short, given, sheet, seen)).into_iter().chain(together.clone());
    let lines = lines.map(|line| worded("p", "", line)).listed();
    let figures = &given.ready.figures;
    // Each figure that is more than the end refuses it.
    let all = [(words::LEAST_END, figures.min_end), (words::LEAST_PIECE, figures.min_piece)];
    let over = |short: &ShortEnd| all.into_iter().filter(|(_, least)| short.end < *least).listed();
    let least = short.map(over).unwrap_or_default();
    let least = least.into_iter().map(|(name, least)| to_saw(name, least, (given.units, seen)));
    let missing = short.is_some() || together.is_some() || sheet.made == 0;
    let split = (!top.split && missing).then(|| key("key h56 wide", words::CUT_IN_PIECES, words::END_IS_CUT, say(Tap::CutInPieces)));
    let keys = least.into_iter().chain(split).listed();
    let keys = (!keys.is_empty()).then(|| el("div", if keys.len() == 1 { "no-print" } else { "g2 no-print" }).kids(keys));
    lines.into_iter().chain(keys).listed()
}

fn end(short: &ShortEnd, given: &Given, sheet: &PlanSheet, seen: Seen<'_>) -> String {
    let figures = &given.ready.figures;
    let [end, least] = [short.end, figures.min_end.max(figures.min_piece)].map(|it| side(it, given.units, seen));
    let gives = if sheet.made < short.rows {
        words::can_be_laid(&number(short.rows, seen), short.rows == 1)
    } else {
        words::strips_do(&number(short.strips, seen), short.strips == 1)
    };
    words::short_end([&end, &least], &gives)
}
