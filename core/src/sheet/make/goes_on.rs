//! How many rows a plan in use makes when it goes on, of which the job has not every board any more.

use super::Given;
use super::cut::{There, Ticks, boards, open_rows, rows_cut};
use crate::ledger::decide::Lying;
use crate::quantity::{Count, Listed};
use crate::sheet::plan::{CutLine, Drawn, PlanSheet};

/// Choices of the boards to do without are looked at, so many at the most; alike ones are one.
const CHOICES: usize = 4_000;

/// Rows that are cut, and those whose pieces come of the boards that are there: so many of each pile. Boards of a pile are alike, and it does without
/// those that cost the fewest rows, as far as was looked. Ours.
pub fn rows_still((given, sheet): (&Given, &PlanSheet), ticks: &Ticks, there: &[(Lying, Count)]) -> Count {
    let (open, loose) = open_rows(sheet, ticks);
    let cut = boards(sheet, ticks);
    let left = sheet.lines.iter().zip(&cut).map(|(line, cut)| (line, line.n.saturating_sub(*cut))).listed();
    let lacks = there.iter().map(|(at, n)| lacking(given, sheet, (*at, *n))).filter(|(_, n)| 0 < *n).listed();
    let mut choice = Choice { open: &open, loose: &loose, lacks: &lacks, left, looks: CHOICES, best: 0 };
    choice.without(0, 0, lacks.first().map_or(0, |(_, n)| *n));
    rows_cut(sheet, ticks).saturating_add(Count::try_from(choice.best).unwrap_or(Count::MAX))
}

/// The places of a pile among the sources, and how many strips of it are not there.
fn lacking(given: &Given, sheet: &PlanSheet, (at, n): (Lying, Count)) -> (Vec<usize>, i64) {
    let places = given.sources.iter().enumerate().filter(|(_, source)| source.which().0 == at).map(|(place, _)| place).listed();
    let used = sheet.used.iter().filter(|used| places.contains(&used.source)).fold(0_i64, |sum, used| sum.saturating_add(used.used));
    let ripped = places.first().and_then(|place| given.ready.sources.get(*place)).map_or(1, |source| source.ripped.max(1));
    (places, used.saturating_sub(ripped.saturating_mul(n.into())).max(0))
}

/// Boards that are not cut, and which of them it does without.
struct Choice<'a> {
    open: &'a [&'a [Drawn]],
    loose: &'a There,
    lacks: &'a [(Vec<usize>, i64)],
    left: Vec<(&'a CutLine, i64)>,
    looks: usize,
    best: usize,
}

impl Choice<'_> {
    /// So many boards of a pile are still to do without, of this line or of those behind it.
    fn without(&mut self, pile: usize, line: usize, n: i64) {
        let Some((places, _)) = self.lacks.get(pile) else { return self.look() };
        let Some((of, has)) = self.left.get(line).copied() else {
            // Where more are cut than are there, there is none of the others.
            let next = pile.saturating_add(1);
            return self.without(next, 0, self.lacks.get(next).map_or(0, |(_, n)| *n));
        };
        let most = if places.contains(&of.source) { has.min(n) } else { 0 };
        let behind = self.left.iter().skip(line.saturating_add(1)).filter(|(of, _)| places.contains(&of.source));
        let behind = behind.fold(0_i64, |sum, (_, has)| sum.saturating_add(*has));
        for less in (n.saturating_sub(behind).clamp(0, most)..=most).rev() {
            if self.looks == 0 {
                return;
            }
            self.put(line, has.saturating_sub(less));
            self.without(pile, line.saturating_add(1), n.saturating_sub(less));
        }
        self.put(line, has);
    }

    fn put(&mut self, line: usize, n: i64) {
        self.left.iter_mut().skip(line).take(1).for_each(|(_, has)| *has = n);
    }

    /// The rows that come of what is left: those with most of what lacks are done without first.
    fn look(&mut self) {
        self.looks = self.looks.saturating_sub(1);
        let mut lacks = There::default();
        self.open.iter().flat_map(|row| row.iter()).for_each(|piece| lacks.put(piece, 1));
        for (line, n) in &self.left {
            lacks.add(line, n.saturating_neg());
        }
        lacks.less(self.loose);
        let mut rows = self.open.to_vec();
        while let Some((nth, _)) = rows
            .iter()
            .map(|row| lacks.of_row(row))
            .enumerate()
            .max_by_key(|(nth, n)| (*n, std::cmp::Reverse(*nth)))
            .filter(|(_, n)| 0 < *n)
        {
            rows.remove(nth).iter().for_each(|piece| lacks.put(piece, -1));
        }
        self.best = self.best.max(rows.len());
    }
}
