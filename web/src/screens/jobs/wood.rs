//! Wood and plan: what is taken from the rack, volumes and yields, and the parts of one piece.

use super::super::count::size_or_none;
use super::super::outlook::{gives, how, is_figure, short};
use super::super::plan::since::{lacking, other_now};
use super::super::{Screen, Seen, short as too_short, undo};
use super::figures::{line, percent, volume};
use super::forms::room::between;
use super::{say, to_job};
use crate::app::jobs::Tap;
use crate::app::jobs::draft::{What, room_of};
use crate::app::plan::after_the_saw;
use crate::app::{App, Msg};
use crate::parts::caution::caution;
use crate::parts::fraction::worded;
use crate::parts::head::{Fact, Head, head};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{common, count, design, job as words, jobs, rack as rack_words, woods, yard};
use fivebar_core::ledger::decide::Lying;
use fivebar_core::ledger::fold::Part;
use fivebar_core::quantity::{Count, Listed, Units, Volume};
use fivebar_core::sheet::job::JobSheet;
use fivebar_core::sheet::rack::{RackPile, rack};
use fivebar_core::wood::woods::Woods;

/// The room.
pub fn screen(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Screen {
    let piles = rack(&app.shelf().shop(seen.now.at), sheet.job).unwrap_or_default();
    let taken = piles.iter().filter(|pile| 0 < pile.in_job).listed();
    // What lies there, of piles that gave wood too.
    let rest = piles.iter().filter(|pile| 0 < pile.on_rack).map(|pile| RackPile { in_job: 0, ..pile.clone() }).listed();
    let pieces = common::pieces(sheet.wood.pieces, &seen.speech.count(sheet.wood.pieces));
    let top = Head::new(super::titled(sheet, seen), jobs::WOOD_AND_PLAN);
    let top = if 0 < sheet.wood.pieces { top.fact(Fact::Strong(pieces)) } else { top };
    let known = app.shelf().workshop();
    let lacks = |pile: &RackPile| too_short::of(pile, &known.wood, seen);
    // A pile that gave wood too has said it above.
    let short_of_rest = |pile: &RackPile| if taken.iter().any(|it| it.pile == pile.pile) { vec![] } else { lacks(pile) };
    let cautious = piles.iter().any(|pile| !lacks(pile).is_empty());
    let none = |words: &'static str| el("p", "t14 i2").text(words);
    let after = after_the_saw(app);
    let first = el("div", "col")
        .kids(outlook(sheet, app, seen))
        .kids(super::super::plan::keys(sheet, app, seen))
        .kids(lacking(sheet, seen))
        .kids(other_now(sheet, seen))
        .kid(el("h2", "").text(words::TAKEN))
        .kids(taken.is_empty().then(|| none(words::NONE_TAKEN)))
        .kids(taken.iter().map(|pile| row(pile, (sheet, &after), lacks(pile), seen)))
        .kids(foreign(sheet).then(|| el("p", "notice").text(words::FOREIGN_WOOD)))
        .kids(unpriced(sheet).then(|| el("p", "notice").text(words::DRIVE_UNPRICED)))
        .kids(cautious.then(|| caution(yard::SHORT_CAUTION)))
        .kids(yields(sheet, seen))
        .kids(taken.iter().any(|pile| pile.length_to.is_some()).then(|| el("p", "t14 i2").text(words::BY_THE_MIDDLE)))
        .kids((!rest.is_empty()).then(|| el("h2", "").text(words::ON_RACK)))
        .kids(rest.iter().map(|pile| row(pile, (sheet, &after), short_of_rest(pile), seen).key(format!("rack {}", pile.pile))))
        .kids(piles.is_empty().then(|| none(words::RACK_EMPTY)));
    let second = el("div", "col").kid(el("h2", "").text(words::PARTS)).kid(if sheet.parts.is_empty() {
        none(if sheet.planned { words::NO_PARTS_BUT_PLANNED } else { words::NO_PARTS })
    } else {
        parts(sheet, &known.wood.woods, seen)
    });
    let second = second.kids(super::super::plan::designs(sheet, app, seen));
    let [low, high] = room_of(app, sheet);
    let under = words::lives_in(&between((low, high), seen), sheet.room.is_some());
    let second = second.kid(key("key soft h56", words::ROOM, under, say(Tap::Write(What::Room))).flag("disabled", sheet.ended.is_some()));
    let main = el("main", "two scr").kid(first).kid(second);
    let add = key("key h56", words::ADD_PART, "", say(Tap::Write(What::Part(None))));
    let foot = el("footer", "foot").kids(undo::bar(app, seen)).kid(el("div", "um").kid(add).kid(to_job()));
    Screen::new("jobs/wood", head(top), main).foot(foot)
}

/// How many of it the wood gives: nothing where its parts are not planned, or it has ended.
fn outlook(sheet: &JobSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let stand = app.outlooks.of(sheet.job).filter(|_| sheet.ended.is_none() && !sheet.parts.is_empty() && !sheet.planned)?;
    let open = app.outlooks.told_how;
    let what = el("span", "op")
        .kid(el("span", "t14 i2").text(design::GIVES))
        .kid(el("b", if is_figure(Some(stand)) { "t22 w8" } else { "" }).text(jobs::upper_first(&gives(stand, seen)?)))
        .kids(short(stand).map(|short| worded("span", "", jobs::upper_first(&short))));
    let top = el("button", "dl").attr("type", "button").attr("aria-expanded", if open { "true" } else { "false" });
    let top = top.on_tap(say(Tap::Plan(crate::app::plan::Tap::Outlook))).kid(what);
    Some(el("section", "card list").kid(top).kids(open.then(|| el("div", "opened").kids(how(stand, seen)))))
}

/// Some of its wood is of a haul in another currency, and no figure was agreed for it.
pub fn foreign(sheet: &JobSheet) -> bool {
    sheet.account.costs.shares.iter().any(|share| share.foreign)
}

/// Some of its wood was fetched by a drive that has no rate.
fn unpriced(sheet: &JobSheet) -> bool {
    sheet.account.costs.shares.iter().any(|share| share.unpriced)
}

/// A pile by its name, its wood, or its letter.
pub fn name(pile: &RackPile) -> String {
    match (&pile.name, &pile.wood) {
        (Some(name), _) => jobs::upper_first(name),
        (None, Some(wood)) => format!("{}, {}", woods::called(wood, pile.own.as_deref()), pile.label),
        (None, None) => count::pile(&pile.label),
    }
}

/// What is set apart for this job, which takes it first, and what for others, who have it.
pub fn apart(pile: &RackPile, seen: Seen<'_>) -> Vec<String> {
    let own = (0 < pile.for_it).then(|| rack_words::apart_for_it(&seen.speech.count(pile.for_it)));
    let others = pile.apart.iter().map(|other| rack_words::apart_for(&seen.speech.count(other.n), &other.name));
    own.into_iter().chain(others).listed()
}

/// Its sides with their unit.
pub fn size(pile: &RackPile, seen: Seen<'_>) -> String {
    size_or_none(pile.size(), pile.units, seen.speech)
}

/// One pile: what the job has of it large, a tap takes or puts back.
fn row(pile: &RackPile, (sheet, after): (&JobSheet, &[(Lying, Count)]), lacks: Vec<String>, seen: Seen<'_>) -> El<Msg> {
    let n = |n: u32| seen.speech.count(n);
    let wood = pile.wood.as_ref().filter(|_| pile.name.is_some()).map(|wood| woods::called(wood, pile.own.as_deref()));
    let (figure, aside) = match pile.in_job {
        0 if pile.apart.is_empty() && pile.for_it == 0 => (n(pile.free), seen.speech.day(pile.began)),
        0 => (n(pile.free), words::on_rack(&n(pile.on_rack))),
        taken => (n(taken), words::on_rack(&n(pile.on_rack))),
    };
    let uncut = super::super::left::uncut(after, Lying { haul: pile.haul, pile: pile.pile }, pile.on_rack, seen);
    let away = pile.on_its_way.then(|| rack_words::NOT_HOME_YET.to_owned());
    let aside = wood.into_iter().chain(away).chain([aside]).chain(uncut).chain(apart(pile, seen)).listed().join(", ");
    let mid =
        el("span", "mid").kid(worded("span", "nm", name(pile))).kid(worded("span", "s", size(pile, seen))).kid(el("span", "s").text(aside));
    let mid = mid.kids(lacks.into_iter().map(|lacks| worded("span", "t14", jobs::upper_first(&lacks))));
    let tap = say(Tap::Write(What::Take { haul: pile.haul, pile: pile.pile }));
    let row = el("button", if 0 < pile.in_job { "pile ours" } else { "pile" }).attr("type", "button").key(pile.pile.to_string());
    row.flag("disabled", sheet.ended.is_some()).on_tap(tap).kid(mid).kid(el("span", "t30 w8").text(figure))
}

/// Volumes from the rack to the finished piece, and the yields between them.
fn yields(sheet: &JobSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let (wood, units) = (&sheet.account.wood, sheet.account.units);
    let used = wood.used.filter(|_| 0 < sheet.wood.pieces);
    if used.is_none() && wood.finished.is_none() {
        return None;
    }
    let said = |known: Option<Volume>| known.map_or(words::SIZES_MISSING.to_owned(), |it| volume(it, units, seen));
    let share =
        |word: &'static str, known: Option<fivebar_core::quantity::Decimal>| known.map(|it| line(word, format!("{} %", percent(it, seen))));
    // Before it is done it is what is planned.
    let made = sheet.ended.is_some();
    // A share stands under what it is of.
    let gross = wood.gross.filter(|_| wood.finished_of_gross.is_some());
    let of_haul = |word: &'static str, known: Option<Volume>| known.map(|it| line(word, volume(it, units, seen)));
    let bought = wood.replacement.map(|sum| line(words::BOUGHT_BOARDS, seen.speech.money(sum)));
    let of_taken = match (made, wood.needed != wood.used) {
        (true, _) => words::OF_TAKEN,
        (false, false) => words::PLANNED_OF_TAKEN,
        (false, true) => words::PLANNED_OF_TAKEN_AND_LACKED,
    };
    let card = el("section", "card")
        .kids((0 < sheet.wood.pieces).then(|| line(words::WOOD_TAKEN, said(used))))
        .kids(wood.finished.map(|finished| line(if made { words::FINISHED } else { words::PLANNED }, said(Some(finished)))))
        .kids(differs(wood.beside_plans, seen).map(|said| el("p", "t14").text(said)))
        .kids(share(of_taken, wood.finished_of_used))
        .kids(
            wood.needed.zip(wood.finished).filter(|(used, finished)| used < finished).map(|_| el("p", "t14").text(words::MORE_THAN_TAKEN)),
        )
        .kids(of_haul(words::WHOLE_HAUL, gross))
        .kids(share(if made { words::OF_HAUL } else { words::PLANNED_OF_HAUL }, wood.finished_of_gross))
        .kids(of_haul(
            if wood.needed == wood.used { words::HAUL_LESS_LEFT } else { words::HAUL_LESS_LEFT_AND_LACKED },
            wood.gross_less_leftovers.filter(|_| gross.is_some()),
        ))
        .kids(share(if made { words::OF_HAUL_LESS_LEFT } else { words::PLANNED_OF_THAT }, wood.finished_of_gross_less_leftovers))
        .kids(bought);
    Some(card)
}

/// By how many pieces the job's wood is not what its plans use, whose figures stand here.
fn differs([more, fewer]: [Count; 2], seen: Seen<'_>) -> Option<String> {
    match (more, fewer) {
        (0, 0) => None,
        (0, n) => Some(words::fewer_than_plans(&seen.speech.count(n), n == 1)),
        (n, _) => Some(words::more_than_plans(&seen.speech.count(n), n == 1)),
    }
}

pub fn parts(sheet: &JobSheet, known: &Woods, seen: Seen<'_>) -> El<Msg> {
    el("section", "card list").kids(sheet.parts.iter().map(|part| part_row(part, known, (sheet.account.units, seen))))
}

fn part_row(part: &Part, known: &Woods, (units, seen): (Units, Seen<'_>)) -> El<Msg> {
    let sides = part.size.map(|side| seen.speech.length(side, units)).join(" × ");
    let wood = part.wood.as_ref().map_or(words::NO_WOOD.to_owned(), |wood| woods::among(wood, known));
    el("button", "dl mid")
        .attr("type", "button")
        .key(part.name.clone())
        .on_tap(say(Tap::Write(What::Part(Some(part.name.clone())))))
        .kid(el("span", "op").kid(el("span", "w7").text(jobs::upper_first(&part.name))).kid(worded(
            "span",
            "t14 i2",
            format!("{sides} {}, {wood}", common::length_unit(units)),
        )))
        .kid(el("span", "n").text(seen.speech.count(part.n)))
}
