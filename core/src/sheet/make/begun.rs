//! A top that is begun: pieces of it that are cut and lie in no row that is, where in a plan made since each may lie, and how wide all of it is.

use super::Given;
use super::cut::{Ticks, cut_in_no_row, of_no_ticked_board, rows, rows_done};
use crate::ledger::fold::KeptPlan;
use crate::plan::Asked;
use crate::quantity::{Key, Length, Listed, Mass};
use crate::sheet::plan::trim::least_sawn;
use crate::sheet::plan::wish::{Panel, Wish};
use crate::sheet::plan::{Drawn, Glue, Moving, PlanSheet};
use crate::wood::movement::Across;

/// A piece that is cut and lies in no row that is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Loose {
    /// The letter of its pile.
    pub letter: String,
    pub wood: Option<Key>,
    pub length: Length,
}

/// Where such a piece may lie: the row and its place in it, from 0, and how long the piece there is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    pub row: usize,
    pub nth: usize,
    pub length: Length,
}

/// Pieces that are cut by what is ticked of a plan and lie in no row that is, each by itself, the longest first.
pub fn loose((given, sheet): (&Given, &PlanSheet), ticks: &Ticks) -> Vec<Loose> {
    let mut all: Vec<Loose> = vec![];
    for (source, length, n) in cut_in_no_row(sheet, ticks) {
        let letter = given.ready.sources.get(source).map_or_else(String::new, |it| it.letter.clone());
        let one = Loose { letter, wood: wood(given, source), length };
        all.extend((0..n).map(|_| one.clone()));
    }
    all.sort_by_key(|it| std::cmp::Reverse(it.length));
    all
}

fn wood(given: &Given, source: usize) -> Option<Key> {
    given.sources.get(source).and_then(|source| source.pile.wood.clone())
}

/// Where each of these pieces may lie in a plan: instead of the longest piece of its wood that is no longer than it is, in a row that is not
/// cut, and is not instead of another. Nothing for one that is shorter than all of them. Ours: nothing is planned anew for it.
pub fn spots((given, sheet): (&Given, &PlanSheet), ticks: &Ticks, loose: &[Loose]) -> Vec<Option<Spot>> {
    let done = rows_done(sheet, ticks);
    spots_among((given, sheet), |spot| done.get(spot.row) != Some(&true), loose)
}

/// Those of these pieces that no ticked row of a plan may have: the place that was told of each is in another row, or in none, or the boards that
/// are ticked give what lies there.
pub fn not_laid(of: (&Given, &PlanSheet), ticks: &Ticks, loose: Vec<Loose>) -> Vec<Loose> {
    let spots = in_ticked(of, ticks, &loose);
    loose.into_iter().zip(spots).filter(|(_, spot)| spot.is_none()).map(|(it, _)| it).listed()
}

/// Where those of them lie that a ticked row has: no board is cut for what lies there.
pub fn laid(of: (&Given, &PlanSheet), ticks: &Ticks, loose: &[Loose]) -> Vec<(usize, usize)> {
    in_ticked(of, ticks, loose).into_iter().flatten().map(|spot| (spot.row, spot.nth)).listed()
}

/// The place of each of these pieces in a ticked row; none of one that no ticked row has.
fn in_ticked((given, sheet): (&Given, &PlanSheet), ticks: &Ticks, loose: &[Loose]) -> Vec<Option<Spot>> {
    let open = of_no_ticked_board(sheet, ticks);
    let is_ticked = |spot: &Spot| ticks.is_done(Ticks::row(spot.row));
    let spots = spots_among((given, sheet), |spot| !is_ticked(spot) || open.contains(&(spot.row, spot.nth)), loose);
    spots.into_iter().map(|spot| spot.filter(is_ticked)).listed()
}

fn spots_among((given, sheet): (&Given, &PlanSheet), is_one: impl Fn(&Spot) -> bool, loose: &[Loose]) -> Vec<Option<Spot>> {
    let all = rows(sheet)
        .enumerate()
        .flat_map(|(row, all)| all.iter().enumerate().map(move |(nth, it)| (it, Spot { row, nth, length: it.at[2] })));
    let mut there: Vec<(&Drawn, Spot)> = all.filter(|(_, spot)| is_one(spot)).collect();
    // Of as long ones the first from the top.
    there.sort_by_key(|(_, spot)| std::cmp::Reverse(spot.length));
    let mut one = |it: &Loose| {
        let fits = |(piece, spot): &(&Drawn, Spot)| spot.length <= it.length && wood(given, piece.source) == it.wood;
        there.iter().position(fits).map(|nth| there.remove(nth).1)
    };
    loose.iter().map(&mut one).listed()
}

/// How wide all of a top is of which plans before cut rows: as it was asked, as the plans of its job for one as long have it; else its rows as they are. And of
/// how many rows it is. Nothing where none were cut.
pub fn all_of_it(given: &Given, plans: &[KeptPlan]) -> Option<(Length, i64)> {
    let Wish::Panel(panel) = &given.ready.wish else { return None };
    let rows = panel.rows()?.checked_add(given.cut.rows.into()).filter(|_| 0 < given.cut.rows)?;
    let whole = |kept: &KeptPlan| {
        let (width, strip) = (kept.plan.width?, kept.plan.strip?);
        let it = Panel { width: Some(width), strip, ..panel.clone() };
        let is_alike = kept.plan.thickness == Some(panel.thickness) && strip == panel.strip && it.rows() == Some(rows);
        (is_alike && length(kept) == Some(panel.length)).then_some(width)
    };
    Some((plans.iter().find_map(whole).or_else(|| panel.strip.times(rows).ok())?, rows))
}

/// How long the top of a plan is.
fn length(kept: &KeptPlan) -> Option<Length> {
    if let (Asked::Rows(asked), _) = kept.told()? { kept.plan.unit.times(asked.length).ok() } else { None }
}

/// All of a top with the rows of it that are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct All {
    pub rows: i64,
    /// As it was asked.
    pub asked: Length,
    /// As wide as its rows are together, once the last is sawn.
    pub width: Length,
    /// The last row, where it is sawn narrower than the others to make the width.
    pub last: Option<Length>,
}

/// All of a top of which a plan makes all rows that are not cut; nothing where it makes fewer.
pub fn all(given: &Given, sheet: &PlanSheet, (asked, rows): (Length, i64)) -> Option<All> {
    let Wish::Panel(panel) = &given.ready.wish else { return None };
    let whole = Panel { width: Some(asked), ..panel.clone() };
    let last = whole.last_row(rows, least_sawn(&given.ready.figures));
    let width = if last.is_some() { asked } else { panel.strip.times(rows).ok()? };
    (panel.rows() == Some(sheet.made)).then_some(All { rows, asked, width, last })
}

/// The sheet with the weight and the movement of all of a top, and the glue of its joints along the rows: each row as heavy as those that are
/// planned, and with as many ends glued. Ours.
pub fn of_all(given: &Given, sheet: &PlanSheet, all: All) -> PlanSheet {
    let Wish::Panel(panel) = &given.ready.wish else { return sheet.clone() };
    let nm = |length: Length| length.as_nm() as f64;
    let (made, rows) = (sheet.made as f64, all.rows as f64);
    let weight = Mass::kg(sheet.weight.as_kg() * nm(all.width) / (nm(panel.strip) * made));
    let joint = nm(panel.length) * nm(panel.thickness) / 1e18;
    let ends = (sheet.glue.area - joint * (made - 1.0)).max(0.0) * rows / made;
    let area = ends + joint * (rows - 1.0);
    let glue = Glue { area, grams: (area * given.ready.figures.spread as f64).ceil() as i64 };
    PlanSheet { weight, glue, moves: moving(given, sheet, all.width).or(sheet.moves), ..sheet.clone() }
}

/// What is so wide of the wood of a plan that moves most.
fn moving(given: &Given, sheet: &PlanSheet, width: Length) -> Option<Moving> {
    let used = sheet.used.iter().filter(|used| 0 < used.used).filter_map(|used| given.ready.sources.get(used.source)?.stack.moves);
    let all = used.filter_map(|coefficient| (Across { width, coefficient }).moves_in(given.room).ok());
    let moves = all.max_by_key(|moves| moves.most).filter(|_| sheet.moves.is_some())?;
    Some(Moving { width, moves, part: None, glued: true })
}
