//! A plan that is made while boards of plans before are cut: what is cut, and what is planned beside it.

use super::super::Seen;
use super::saw::number;
use super::{limits, say, told};
use crate::app::plan::{Found, RowsCut, Tap, all_of, all_of_it, has_parts_of, left_alone, loose, rows_cut, was_used};
use crate::app::{App, Msg};
use crate::parts::fraction::worded;
use crate::parts::key::key;
use crate::view::{El, el};
use crate::words::en::{changed, plan as words, signs};
use fivebar_core::quantity::{Count, Id, Length, Listed, begin_small};
use fivebar_core::sheet::make::Given;
use fivebar_core::sheet::make::begun::{All, Loose, Spot, all, spots};
use fivebar_core::sheet::plan::PlanSheet;
use fivebar_core::sheet::plan::wish::Wish;

/// Of a plan of what is not cut yet, all its parts; nothing where nothing was cut.
fn rest(given: &Given) -> Option<i64> {
    let (Wish::Parts(list) | Wish::Sticks(list)) = &given.ready.wish else { return None };
    (!given.cut.parts.is_empty()).then(|| list.parts.iter().fold(0_i64, |sum, part| sum.saturating_add(part.n)))
}

/// What is cut already, and the way to plan the others alone; of a top in rows. Then what is cut and lies in no row.
pub fn cut_before(given: &Given, taken: bool, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let strips = strips(given, taken, (app, seen)).map(|line| el("p", "w7").text(line));
    cut_rows(given, taken, (app, seen)).into_iter().chain(strips).chain(in_no_row(given, (app, seen))).collect()
}

/// Strips of glued parts that lack others, which are planned.
fn strips(given: &Given, taken: bool, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    let n = given.cut.strips;
    let goes_on = app.plan.found.as_ref().is_some_and(|found| keeps_strips(given, &found.sheet, app));
    (0 < n && !taken).then(|| changed::strips_cut((&seen.speech.count(n), n == 1), goes_on))
}

/// Whether no plan comes of the others where the plan in use goes on with strips that are cut: nothing is to be bought for it.
pub fn keeps_strips(given: &Given, sheet: &PlanSheet, app: &App) -> bool {
    sheet.made == 0 && 0 < given.cut.strips && has_parts_of(app, given.ask.job)
}

/// The plan before that makes more rows than this other way: nothing is to be bought for them.
pub fn made_before(given: &Given, sheet: &PlanSheet, app: &App) -> Option<(Id, RowsCut)> {
    let rows = rows_cut(app).filter(|rows| 0 < rows.uncut && (rows.is_whole() || rows.is_rest()))?;
    let is_top = matches!(&given.ready.wish, Wish::Panel(_));
    rows.before.filter(|_| is_top && rows.with(sheet.made) < rows.makes.into()).map(|plan| (plan, rows))
}

/// That it does, and the way back to it.
pub fn to_before(given: &Given, sheet: &PlanSheet, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let Some((plan, rows)) = made_before(given, sheet, app) else { return vec![] };
    let n = |n: Count| seen.speech.count(n);
    let uncut = (&*n(rows.uncut), rows.uncut == 1);
    let said = if rows.makes_all() {
        changed::before_makes_all(&n(rows.of), uncut)
    } else {
        changed::goes_on_to(uncut, [&n(rows.makes), &n(rows.of), &number(rows.with(sheet.made), seen)])
    };
    let back = key("key solid h56 wide no-print", changed::TO_PLAN_BEFORE, "", say(Tap::Kept(plan)));
    vec![el("p", "t22 w8").text(said), back]
}

fn cut_rows(given: &Given, taken: bool, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let line = |line| el("p", "w7").text(line);
    let n = |n: Count| seen.speech.count(n);
    let before = given.cut.rows;
    if let (true, Wish::Panel(panel)) = (0 < before && was_used(app), &given.ready.wish) {
        let of = panel.rows().unwrap_or(0).saturating_add(before.into());
        return vec![line(changed::others_of_rows((&n(before), before == 1), &number(of, seen)))];
    }
    let alone = || {
        left_alone(app).filter(|_| !taken).map(|left| key("key h56 wide no-print", changed::other_rows(&n(left)), "", say(Tap::OtherRows)))
    };
    let Some(rows) = rows_cut(app).filter(|rows| !taken && (rows.is_whole() || rows.is_rest())) else {
        return already_cut(given, taken, seen).map(line).into_iter().chain(alone()).collect();
    };
    let beside = goes_on(&rows, (app, seen)).into_iter().map(line);
    if rows.is_whole() {
        let said = line(changed::rows_cut((&n(rows.cut), rows.cut == 1), &n(rows.of)));
        return std::iter::once(said).chain(beside).chain(alone()).collect();
    }
    let anew = all_of(app).map(|_| key("key h56 wide no-print", changed::ALL_ANEW, changed::ALL_ANEW_UNDER, say(Tap::AllAnew)));
    std::iter::once(line(changed::others_of_rows((&n(rows.cut), rows.cut == 1), &n(rows.of)))).chain(beside).chain(anew).collect()
}

/// That the plan before goes on with no more boards than this one takes.
fn goes_on(rows: &RowsCut, (app, seen): (&App, Seen<'_>)) -> Option<String> {
    // Where this one makes fewer rows it is said over it.
    let found = app.plan.found.as_ref().filter(|found| 0 < found.sheet.made);
    let found = found.filter(|found| app.plan.given.as_ref().is_some_and(|given| made_before(given, &found.sheet, app).is_none()));
    let used = found.map(|found| &found.sheet.used);
    let takes = used.map(|all| all.iter().fold(0, |sum: Count, it| sum.saturating_add(it.pieces)))?;
    let n = |n: Count| seen.speech.count(n);
    let uncut = (&*n(rows.uncut), rows.uncut == 1);
    let this = rows.with(found.map_or(0, |found| found.sheet.made));
    (0 < rows.uncut && rows.uncut <= takes).then(|| match rows.makes_all() {
        true => changed::goes_on(uncut, &n(takes)),
        false if this == i64::from(rows.makes) => changed::goes_on_as_far(uncut, [&n(rows.makes), &n(rows.of)], &n(takes)),
        false => changed::goes_on_to(uncut, [&n(rows.makes), &n(rows.of), &number(this, seen)]),
    })
}

/// Pieces of rows that were begun: what there is of them, then where each may lie instead of one that is to be cut.
fn in_no_row(given: &Given, (app, seen): (&App, Seen<'_>)) -> Vec<El<Msg>> {
    let all = loose(app);
    let Some(found) = app.plan.found.as_ref().filter(|_| !all.is_empty()) else { return vec![] };
    let length = |length| seen.speech.length(length, given.units);
    let place = |nth: usize| number(i64::try_from(nth).unwrap_or(i64::MAX).saturating_add(1), seen);
    let spots = spots((given, &found.sheet), &app.plan.ticked, &all);
    let goes = |(it, spot): (&Loose, &Option<Spot>)| {
        let spot = spot.as_ref()?;
        let cut = (spot.length < it.length).then(|| length(spot.length));
        let at = signs::piece_in_row(&place(spot.row), &place(spot.nth));
        Some(changed::spot(&signs::in_row(&it.letter, &length(it.length), None), cut.as_deref(), &begin_small(&at)))
    };
    let places = all.iter().zip(&spots).filter_map(goes).listed();
    let none = spots.iter().filter(|spot| spot.is_none()).count();
    let none =
        (0 < none).then(|| changed::lie_nowhere(&number(i64::try_from(none).unwrap_or(i64::MAX), seen), [none == 1, none == all.len()]));
    let places = (!places.is_empty()).then(|| changed::may_lie(&places));
    let lines = places.into_iter().chain(none).map(|line| worded("p", "", line));
    std::iter::once(worded("p", "w7", changed::loose(&of_piles(&all, length)))).chain(lines).collect()
}

/// "2 of A, 310 and 280".
fn of_piles(all: &[Loose], length: impl Fn(Length) -> String) -> Vec<String> {
    let mut letters: Vec<&str> = all.iter().map(|it| it.letter.as_str()).collect();
    letters.sort_unstable();
    letters.dedup();
    let of = |letter: &str| {
        let lengths = all.iter().filter(|it| it.letter == letter).map(|it| length(it.length)).listed();
        changed::cut_of(&lengths.len().to_string(), letter, &lengths)
    };
    letters.into_iter().map(of).collect()
}

/// What is cut already, and what is planned beside it.
fn already_cut(given: &Given, taken: bool, seen: Seen<'_>) -> Option<String> {
    if let Some(rest) = rest(given) {
        let n = given.cut.pieces();
        return (0 < n).then(|| changed::cut_and_rest((&seen.speech.count(n), n == 1), &number(rest, seen)));
    }
    let n = given.cut.boards();
    (0 < n && !taken).then(|| changed::cut_boards(&seen.speech.count(n), n == 1))
}

/// "1040 × 340, 4 of 6 rows": all of a top, where plans before cut rows of it and this is of the others.
pub fn other_rows_of(given: &Given, (app, seen): (&App, Seen<'_>)) -> Option<[String; 2]> {
    let (width, rows) = all_of_it(app, given)?;
    let left = rows.saturating_sub(given.cut.rows.into());
    Some([seen.speech.length(width, given.units), changed::so_many_rows_of(&number(left, seen), &number(rows, seen))])
}

/// All of a top that is begun, where this makes all its other rows.
pub fn whole(given: &Given, sheet: &PlanSheet, app: &App) -> Option<All> {
    all(given, sheet, all_of_it(app, given)?)
}

/// "The other parts, 12."
pub fn made(given: &Given, seen: Seen<'_>) -> Option<String> {
    rest(given).map(|rest| changed::rest_made(&number(rest, seen), true))
}

/// That they do not all come out of these pieces, as far as it is proven; nothing where they do, or nothing was cut.
pub fn not_made(given: &Given, found: &Found, seen: Seen<'_>) -> Option<String> {
    let rest = rest(given).filter(|_| found.sheet.made == 0)?;
    let rest = number(rest, seen);
    if !told::is_impossible(given, found) {
        return Some(changed::rest_not_found(&rest));
    }
    Some(format!("{} {}", changed::rest_made(&rest, false), limits::held(changed::REST_NEVER, given, seen)))
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
