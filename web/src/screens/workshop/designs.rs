//! Designs: each with its parts in one line, its operations, and how many the rack gives; one opened is named anew, dropped, made again.

use super::super::outlook::{gives, how, is_figure, short};
use super::super::slots::no;
use super::super::{Screen, Seen};
use super::{page, say};
use crate::app::order::Which;
use crate::app::plan::refused;
use crate::app::workshop::Tap;
use crate::app::workshop::designs::DesignTap;
use crate::app::{App, Msg};
use crate::parts::field::{Field, field};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, design as words, jobs, workshop};
use fivebar_core::ledger::fold::Design;
use fivebar_core::ledger::kind::plan::{DesignOperation, DesignPart};
use fivebar_core::quantity::{Decimal, Listed, Units};

fn tap(tap: DesignTap) -> Msg {
    say(Tap::Design(tap))
}

/// How many there are.
pub fn how_many(app: &App, seen: Seen<'_>) -> String {
    match app.shelf().workshop().designs.len() {
        0 => workshop::NONE_YET.to_owned(),
        n => seen.speech.number(Decimal::from(n), 0, 0),
    }
}

/// The page.
pub fn screen(app: &App, seen: Seen<'_>) -> Screen {
    let known = app.shelf().workshop();
    let none = known.designs.is_empty();
    let list = el("div", "card list").kids(known.designs.iter().map(|design| row(design, app, seen)));
    let main = el("main", "scr")
        .kids(none.then(|| el("p", "t22 w8").text(words::NONE)))
        .kids((!none).then_some(list))
        .kid(el("p", "t14 i2").text(if none { words::HOW_KEPT } else { words::CHANGE }));
    page(app, ("workshop/designs", words::DESIGNS), main, seen)
}

fn row(design: &Design, app: &App, seen: Seen<'_>) -> El<Msg> {
    let open = app.workshop.opened == Some(design.id);
    let stand = app.outlooks.of(design.id);
    let gives = stand.and_then(|stand| gives(stand, seen).map(|gives| (gives, short(stand))));
    let line = |text: String| worded("span", "t14 i2", text);
    let gives = gives.map(|(gives, short)| {
        let gives = if is_figure(app.outlooks.of(design.id)) { words::from_rack(&gives) } else { gives };
        let words = [Some(gives), short].into_iter().flatten().listed().join("; ");
        worded("span", "t17 w7", jobs::upper_first(&words))
    });
    let what = el("span", "op")
        .kid(el("b", "").text(design.name.clone()))
        .kid(line(parts(&design.parts, seen)))
        .kid(line(operations(&design.operations, seen)))
        .kids(gives);
    let top = el("button", "dl")
        .attr("type", "button")
        .attr("aria-expanded", if open { "true" } else { "false" })
        .on_tap(tap(DesignTap::Open(design.id)))
        .kid(what);
    el("div", "").key(design.id.to_string()).kid(top).kids(open.then(|| opened(design, app, seen)))
}

/// So many parts stand in the line of a design; the opened one has them all.
const IN_LINE: usize = 4;

fn parts(parts: &[DesignPart], seen: Seen<'_>) -> String {
    if parts.is_empty() {
        return words::NO_PARTS.to_owned();
    }
    let some = parts.iter().take(IN_LINE).map(|part| words::part(&seen.speech.count(part.n), &part.name)).listed();
    let more = parts.len().saturating_sub(IN_LINE);
    words::parts_in_line(&some, more, &seen.speech.number(Decimal::from(more), 0, 0))
}

fn operations(operations: &[DesignOperation], seen: Seen<'_>) -> String {
    if operations.is_empty() {
        return words::NO_OPERATIONS.to_owned();
    }
    let one = |planned: &DesignOperation| words::operation(&planned.op, planned.span.map(|span| seen.speech.span(span)).as_deref());
    operations.iter().map(one).listed().join(", ")
}

/// Every part with its size, how the outlook was reckoned, its name, and the keys.
fn opened(design: &Design, app: &App, seen: Seen<'_>) -> El<Msg> {
    let units = app.begins_with().1;
    let stand = app.outlooks.of(design.id).map(|stand| how(stand, seen)).unwrap_or_default();
    let asked =
        Field { id: "design-name", label: words::NAME.into(), value: app.workshop.text.clone(), fleeting: true, ..Field::default() };
    let same = app.workshop.text.trim() == design.name;
    let rename = key("key h56", words::RENAME, "", tap(DesignTap::Rename(design.id))).flag("disabled", same);
    // A new job is begun in the maker's own book, which has no design of the example.
    let own = app.which == Which::Own;
    el("div", "opened")
        .kids(design.parts.iter().map(|part| sized(part, units, seen)))
        .kids(stand)
        .kids(own.then(|| key("key solid h56", words::MAKE_AGAIN, "", tap(DesignTap::MakeAgain(design.id)))))
        .kid(field(asked, |text| say(Tap::Typed(text))))
        .kids(refused(app).map(|why| no(why, seen)))
        .kid(el("div", "g2").kid(rename).kid(key("key h56", words::DROP, "", tap(DesignTap::Drop(design.id)))))
}

fn sized(part: &DesignPart, units: Units, seen: Seen<'_>) -> El<Msg> {
    let sides = [part.thickness, part.width, part.length].map(|side| seen.speech.length(side, units)).join(" × ");
    let what = words::part(&seen.speech.count(part.n), &part.name);
    worded("p", "t14", format!("{what}, {sides} {}", common::length_unit(units)))
}
