//! A plan that is made while boards of plans before are cut: what is cut, and what is planned beside it.

use super::super::Seen;
use super::limits;
use super::saw::number;
use super::say;
use crate::app::plan::{Found, RowsCut, Tap, rows_cut, was_used};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{changed, plan as words};
use fivebar_core::quantity::{Count, Listed};
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::plan::PlanSheet;
use fivebar_core::sheet::plan::wish::Wish;

/// Of a plan of what is not cut yet, all its parts; nothing where nothing was cut.
fn rest(given: &Given) -> Option<i64> {
    let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return None };
    (!given.cut.parts.is_empty()).then(|| list.parts.iter().fold(0_i64, |sum, part| sum.saturating_add(part.n)))
}

/// What is cut already, and the way to plan the others alone; of a top in rows.
pub fn cut_before(given: &Given, taken: bool, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let line = |line| el("p", "w7").text(line);
    let n = |n: Count| seen.speech.count(n);
    let before = given.cut.rows;
    if let (true, Wish::Panel(panel)) = (0 < before && was_used(app), &given.ready.wish) {
        let of = panel.rows().unwrap_or(0).saturating_add(before.into());
        return vec![line(changed::others_of_rows(&n(before), &number(of, seen)))];
    }
    let Some(rows) = rows_cut(app).filter(|rows| !taken && (rows.is_whole() || rows.is_rest())) else {
        return already_cut(given, taken, seen).map(line).into_iter().collect();
    };
    let beside = beside_the_cut(given, &rows, (app, seen)).into_iter().map(line);
    if rows.is_whole() {
        let others = changed::other_rows(&n(rows.of.saturating_sub(rows.cut)));
        let said = line(changed::rows_cut(&n(rows.cut), &n(rows.of)));
        return std::iter::once(said).chain(beside).chain([key("key h56 wide no-print", others, "", say(Tap::OtherRows))]).collect();
    }
    std::iter::once(line(changed::others_of_rows(&n(rows.cut), &n(rows.of)))).chain(beside).collect()
}

/// What is cut and lies in none of the rows, and that the plan before goes on with no more boards than this one takes.
fn beside_the_cut(given: &Given, rows: &RowsCut, (app, seen): (&App, Seen<'_>)) -> Vec<String> {
    let all = rows.loose.iter().flat_map(|(long, n)| (0..*n).map(|_| seen.speech.length(*long, given.units))).listed();
    let loose = (!all.is_empty()).then(|| changed::loose(&all));
    let used = app.plan.found.as_ref().filter(|found| 0 < found.sheet.made).map(|found| &found.sheet.used);
    let takes = used.map(|all| all.iter().fold(0, |sum: Count, it| sum.saturating_add(it.pieces)));
    let n = rows.uncut;
    let goes_on = takes.filter(|takes| 0 < n && n <= *takes);
    loose.into_iter().chain(goes_on.map(|takes| changed::goes_on((&seen.speech.count(n), n == 1), &seen.speech.count(takes)))).collect()
}

/// What is cut already, and what is planned beside it.
fn already_cut(given: &Given, taken: bool, seen: Seen<'_>) -> Option<String> {
    if let Some(rest) = rest(given) {
        let n = given.cut.pieces();
        return Some(changed::cut_and_rest((&seen.speech.count(n), n == 1), &number(rest, seen)));
    }
    let n = given.cut.boards();
    (0 < n && !taken).then(|| changed::cut_boards(&seen.speech.count(n), n == 1))
}

/// "The other parts, 12."
pub fn made(given: &Given, seen: Seen<'_>) -> Option<String> {
    rest(given).map(|rest| changed::rest_made(&number(rest, seen), true))
}

/// That they do not all come out of these pieces, as far as it is proven; nothing where they do, or nothing was cut.
pub fn not_made(given: &Given, found: &Found, seen: Seen<'_>) -> Option<String> {
    let rest = rest(given).filter(|_| found.sheet.made == 0)?;
    let never = if found.sheet.proof.gap.is_none() && !found.answered.bound.is_empty() { changed::REST_NEVER } else { "" };
    let said = changed::rest_made(&number(rest, seen), false);
    Some(format!("{said} {}", limits::held(never, given, seen)).trim_end().to_owned())
}

/// "One more lacks 2 of leg.", a fact where no plan makes one more, else as far as was looked; "They lack 2 of leg."
pub fn lacks(given: &Given, sheet: &PlanSheet, parts: &[String]) -> String {
    let first = sheet.made == 0;
    match (rest(given), sheet.proof.gap) {
        (Some(_), _) => changed::rest_lacks(parts),
        (None, Some((0, ..))) => words::lacks_so_far(parts, first),
        (None, _) => words::lacks(parts, first),
    }
}
