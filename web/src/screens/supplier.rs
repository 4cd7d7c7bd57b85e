//! A supplier: go or skip, and the rejects of all their hauls, over time, by reason, by wood, and of the same pile.

use super::count::saved_fact;
use super::prospect::{self, percent};
use super::{Screen, Seen, sought};
use crate::app::count::Tap;
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::head::{Head, head};
use crate::parts::key::key;
use crate::parts::scale::{Fill, Kind, Look, Mark, Rhythm, Scale, scale};
use crate::parts::share_bar::share_bar;
use crate::view::{El, el};
use crate::words::en::{common, count, supplier as words, woods};
use fivebar_core::ledger::kind::book::Role;
use fivebar_core::quantity::{Decimal, Id, Key, Listed, begin_large};
use fivebar_core::sheet::rejects::{OfHaul, OfPile, OfWood, RejectsSheet, rejects};
use fivebar_core::wood::woods::Woods;

/// Suppliers whose name is known.
pub fn named(app: &App) -> Vec<(Id, String)> {
    let workshop = app.shelf().workshop();
    let people = workshop.people.iter().filter(|person| person.role == Role::Supplier);
    people.filter_map(|person| Some((person.id, app.shelf().name(person.id)?.clone()))).listed()
}

/// Asks before going, where somebody is known.
pub fn going_key(app: &App) -> Option<El<Msg>> {
    let known = app.is_open && !named(app).is_empty();
    known.then(|| key("key soft h56", words::GOING, words::GOING_UNDER, Msg::Count(Tap::Going)).key("going"))
}

/// Every supplier with go or skip.
pub fn going(app: &App, seen: Seen<'_>) -> Screen {
    let named = named(app);
    let none = named.is_empty().then(|| el("p", "").text(words::NOBODY));
    let rows = named.into_iter().map(|(id, name)| {
        let under = prospect::line(app, id, (None, seen));
        key("key h88 m left", name, under, Msg::Count(Tap::Supplier(id))).key(id.to_string())
    });
    let main = el("main", "scr").kids(sought::block(app, seen)).kids(none).kids(rows).kid(key(
        "key h56",
        common::NOT_NOW,
        "",
        Msg::Count(Tap::Close),
    ));
    Screen::new("count/going", head(Head::new(words::BEFORE_GOING, words::GOING)), main)
}

/// One of them, before going.
pub fn before_going(id: Id, app: &App, seen: Seen<'_>) -> Screen {
    let name = app.shelf().name(id).cloned().unwrap_or_default();
    let foot = el("footer", "foot").kid(key("key h56", common::DONE, "", Msg::Count(Tap::Close)));
    let top = Head::new(words::BEFORE_GOING, name).fact(saved_fact(app, seen));
    Screen::new("count/supplier", head(top), main(id, app, seen)).foot(foot)
}

/// All that the past of a supplier says.
pub fn main(id: Id, app: &App, seen: Seen<'_>) -> El<Msg> {
    let verdict = prospect::sheet(app, id, None).map(|sheet| prospect::block(&sheet, seen));
    let main = el("main", "scr supplier").kids(verdict);
    match rejects(&app.shelf().book, id).ok().filter(|sheet| 0 < sheet.seen.sorted()) {
        Some(sheet) => main
            .kid(so_far(&sheet, seen))
            .kid(by_haul(&sheet, seen))
            .kids(by_reason(&sheet, seen))
            .kids(by_wood(&sheet, app, seen))
            .kids(same_piles(&sheet, app, seen)),
        None => main.kid(el("p", "t22 w8").text(words::NOTHING_SORTED)),
    }
}

/// One in four: what is guessed before anything was sorted.
const GUESS: f64 = 0.25;

fn float(share: Decimal) -> f64 {
    f64::try_from(share).unwrap_or_default()
}

/// All so far beside the guess, on the scale.
fn so_far(sheet: &RejectsSheet, seen: Seen<'_>) -> El<Msg> {
    let share = sheet.seen.share().unwrap_or_default();
    let at = float(share) * 100.0;
    let title = count::rejected_of(&seen.speech.count(sheet.seen.rejected), &seen.speech.count(sheet.seen.sorted()));
    let guess = percent(Decimal::new(25, 2), seen);
    let marks =
        vec![Mark::new(GUESS * 100.0, Kind::Ink, count::GUESS, guess), Mark::new(at, Kind::Ink, words::ALL_SO_FAR, percent(share, seen))];
    let drawn = Scale {
        width: seen.page.card(),
        from: 0.0,
        to: if 50.0 < at { 100.0 } else { 50.0 },
        rhythm: Some(Rhythm { tick: 5.0, long: 25.0 }),
        marks,
        fills: vec![Fill { from: 0.0, to: at, look: Look::Under }],
        ..Scale::default()
    };
    let said = words::said(&title, &percent(share, seen));
    el("section", "card").kid(el("h2", "ink1 t17").text(title)).kid(scale(&drawn, &said))
}

/// A line of a list of shares: its name and count over a bar, with the figure.
struct Row {
    key: String,
    name: String,
    count: String,
    share: f64,
    figure: String,
}

/// Rows between a heading and what is said of them, on one scale; the mark is the guess where it means something.
fn rows((title, under): (&'static str, &'static str), rows: Vec<Row>, mark: Option<f64>, seen: Seen<'_>) -> El<Msg> {
    let under = (!under.is_empty()).then(|| el("p", "t14 i2").text(under));
    el("section", "shares").kid(el("h2", "").text(title)).kid(list(rows, mark, seen)).kids(under)
}

/// The rows alone.
fn list(rows: Vec<Row>, mark: Option<f64>, seen: Seen<'_>) -> El<Msg> {
    let most = rows.iter().map(|row| row.share).chain(mark).fold(0.0, f64::max);
    let most = if most <= 0.5 { 0.5 } else { 1.0 };
    let width = seen.page.card() - 64.0;
    let row = |row: Row| {
        el("li", "")
            .key(row.key)
            .kid(el("span", "row").kid(el("b", "").text(row.name)).kid(el("span", "t14 i2").text(row.count)))
            .kid(el("span", "barred").kid(share_bar((row.share, most), mark, width)).kid(el("b", "").text(row.figure)))
    };
    el("ul", "").kids(rows.into_iter().map(row))
}

fn by_haul(sheet: &RejectsSheet, seen: Seen<'_>) -> El<Msg> {
    rows((words::HAUL_BY_HAUL, words::GUESS_MARK), in_time(&sheet.hauls, seen), Some(GUESS), seen)
}

/// A row for each haul, as they came.
fn in_time(hauls: &[OfHaul], seen: Seen<'_>) -> Vec<Row> {
    let row = |of: &OfHaul| Row {
        key: of.haul.to_string(),
        name: seen.speech.day(of.began),
        count: words::of(&seen.speech.count(of.seen.rejected), &seen.speech.count(of.seen.sorted())),
        share: float(of.share),
        figure: percent(of.share, seen),
    };
    hauls.iter().map(row).listed()
}

/// Piles that came more than once, each over time.
fn same_piles(sheet: &RejectsSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let known = app.shelf().workshop();
    let one = |(nth, pile): (usize, &OfPile)| {
        let shares = list(in_time(&pile.hauls, seen), Some(GUESS), seen);
        el("section", "").key(nth.to_string()).kid(worded("h3", "", pile_name(pile, &known.wood.woods, seen))).kid(shares)
    };
    let title = el("h2", "").text(words::SAME_PILE);
    (!sheet.again.is_empty()).then(|| el("section", "shares").kid(title).kids(sheet.again.iter().enumerate().map(one)))
}

/// "Ash, 1 × 2 in".
fn pile_name(pile: &OfPile, known: &Woods, seen: Seen<'_>) -> String {
    let (thick, wide) = pile.section;
    let sides: Vec<String> = [thick, wide].into_iter().flatten().map(|side| seen.speech.length(side, pile.units)).listed();
    let name = named_of(pile.wood.as_ref(), pile.name.as_deref(), known);
    if sides.is_empty() { name } else { format!("{name}, {} {}", sides.join(" × "), common::length_unit(pile.units)) }
}

/// A wood by its name; where it is not known, a pile by its own.
fn named_of(wood: Option<&Key>, name: Option<&str>, known: &Woods) -> String {
    match (wood, name) {
        (Some(wood), _) => woods::among(wood, known),
        (None, Some(name)) => begin_large(name),
        (None, None) => words::NOT_NAMED.to_owned(),
    }
}

fn by_reason(sheet: &RejectsSheet, seen: Seen<'_>) -> Option<El<Msg>> {
    let all = rows(
        (words::WHY, words::OF_ALL_SORTED),
        sheet
            .reasons
            .iter()
            .map(|reason| Row {
                key: reason.why.as_str().to_owned(),
                name: count::reason(reason.why.as_str()),
                count: common::pieces(reason.rejected, &seen.speech.count(reason.rejected)),
                share: float(reason.share),
                figure: percent(reason.share, seen),
            })
            .listed(),
        None,
        seen,
    );
    (!sheet.reasons.is_empty()).then_some(all)
}

/// One wood alone says what all of it said.
fn by_wood(sheet: &RejectsSheet, app: &App, seen: Seen<'_>) -> Option<El<Msg>> {
    let known = app.shelf().workshop();
    let row = |(nth, of): (usize, &OfWood)| Row {
        key: nth.to_string(),
        name: named_of(of.wood.as_ref(), of.name.as_deref(), &known.wood.woods),
        count: words::of(&seen.speech.count(of.seen.rejected), &seen.speech.count(of.seen.sorted())),
        share: float(of.share),
        figure: percent(of.share, seen),
    };
    (1 < sheet.woods.len()).then(|| rows((words::BY_WOOD, ""), sheet.woods.iter().enumerate().map(row).listed(), None, seen))
}

#[cfg(test)]
mod tests;
