//! A plan that is made while boards of plans before are cut: what is cut, and what is planned beside it.

use super::super::Seen;
use super::limits;
use super::saw::number;
use super::say;
use crate::app::plan::{Found, Tap, rows_cut};
use crate::app::{App, Msg};
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{changed, plan as words};
use fivebar_core::quantity::Count;
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
    let Some(rows) = rows_cut(app).filter(|_| !taken) else {
        return already_cut(given, taken, seen).map(line).into_iter().collect();
    };
    let n = |n: Count| seen.speech.count(n);
    if rows.is_whole() {
        let others = changed::other_rows(&n(rows.of.saturating_sub(rows.cut)));
        let said = line(changed::rows_cut(&n(rows.cut), &n(rows.of)));
        return vec![said, key("key h56 wide no-print", others, "", say(Tap::OtherRows))];
    }
    if rows.asked.saturating_add(rows.cut) == rows.of {
        return vec![line(changed::others_of_rows(&n(rows.cut), &n(rows.of)))];
    }
    already_cut(given, taken, seen).map(line).into_iter().collect()
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
    match (rest(given), sheet.proof.gap) {
        (Some(_), _) => changed::rest_lacks(parts),
        (None, Some((0, ..))) => words::lacks_so_far(parts),
        (None, _) => words::lacks(parts),
    }
}
