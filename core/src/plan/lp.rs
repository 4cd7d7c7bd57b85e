//! A small linear programme whose columns come one after another: it says which cuts to repeat how often, and what each row is worth.
//!
//! Revised simplex with the inverse kept whole: Dantzig 1951; Bland's rule against going in circles, Mathematics of Operations
//! Research 2, 1977 (both recalled). Floats: it only chooses; bounds are proven by `price` in whole numbers.

mod inverse;

use inverse::Inverse;

/// The least gain, or pivot, that is no mere rounding.
const TINY: f64 = 1e-9;
/// So many turns without gain, and Bland's rule takes over.
const STUCK: u32 = 40;
/// After so many turns the inverse is made anew, against the drift of roundings.
const ANEW: u32 = 64;

struct Column {
    worth: f64,
    cells: Vec<(usize, f64)>,
}

/// As much worth as can be had: the sum of worth x level over the columns, each level at least 0, each row at most its right side.
pub struct Lp {
    right: Vec<f64>,
    columns: Vec<Column>,
    basis: Vec<usize>,
    in_basis: Vec<bool>,
    inverse: Inverse,
    levels: Vec<f64>,
    turns: u32,
}

/// How `solve` ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// No column would gain any more.
    Best,
    /// Worth grows without end: a row is missing.
    Endless,
    /// Out of turns: what stands is legal, and maybe not the best.
    Stopped,
}

impl Lp {
    /// Rows by their right sides. Where one is below nothing, what is lacking there costs `lack` a unit, row by row, so that a start is always legal.
    ///
    /// ```
    /// use fivebar_core::plan::lp::{End, Lp};
    /// let mut lp = Lp::new(&[4.0, 6.0], &[1e6, 1e6]);
    /// lp.add(3.0, &[(0, 1.0), (1, 1.0)]);
    /// lp.add(2.0, &[(1, 1.0)]);
    /// assert_eq!(lp.solve(100), End::Best);
    /// assert_eq!((lp.worth(), lp.level(0), lp.level(1)), (16.0, 4.0, 2.0));
    /// assert_eq!(lp.prices(), [1.0, 2.0]);
    /// ```
    pub fn new(right: &[f64], lack: &[f64]) -> Lp {
        let rows = right.len();
        let slack = |row| Column { worth: 0.0, cells: vec![(row, 1.0)] };
        let lacking = |row: usize| Column { worth: -lack.get(row).unwrap_or(&1.0), cells: vec![(row, -1.0)] };
        let columns: Vec<Column> = (0..rows).map(slack).chain((0..rows).map(lacking)).collect();
        let sign = |v: &f64| if *v < 0.0 { -1.0 } else { 1.0 };
        let basis: Vec<usize> = right.iter().enumerate().map(|(row, v)| if *v < 0.0 { row.saturating_add(rows) } else { row }).collect();
        let mut in_basis = vec![false; columns.len()];
        basis.iter().for_each(|column| mark(&mut in_basis, *column, true));
        let inverse = Inverse::diagonal(right.iter().map(sign));
        Lp { right: right.to_vec(), columns, basis, in_basis, inverse, levels: right.iter().map(|v| v.abs()).collect(), turns: 0 }
    }

    /// A further column: its worth, and what one unit of it takes of each row. Returns its number, from 0.
    pub fn add(&mut self, worth: f64, cells: &[(usize, f64)]) -> usize {
        self.columns.push(Column { worth, cells: cells.to_vec() });
        self.in_basis.push(false);
        self.columns.len().saturating_sub(self.first()).saturating_sub(1)
    }

    /// Goes on from where it stands until no column gains, at most so many turns.
    pub fn solve(&mut self, turns: u32) -> End {
        let mut idle = 0_u32;
        for _ in 0..turns {
            let Some(entering) = self.entering(STUCK < idle) else { return End::Best };
            let Some(gained) = self.turn(entering, STUCK < idle) else { return End::Endless };
            idle = if gained { 0 } else { idle.saturating_add(1) };
            self.turns = self.turns.saturating_add(1);
            if self.turns.checked_rem(ANEW) == Some(0) {
                self.made_anew();
            }
        }
        End::Stopped
    }

    /// So many turns were taken in all.
    pub fn turns(&self) -> usize {
        self.turns as usize
    }

    /// What each row's right side is worth a unit more.
    pub fn prices(&self) -> Vec<f64> {
        self.inverse.left_of(self.basis.iter().map(|column| self.worth_of(*column)))
    }

    /// How often a column is taken, by the number `add` gave it.
    pub fn level(&self, column: usize) -> f64 {
        let column = column.saturating_add(self.first());
        self.basis.iter().zip(&self.levels).find(|(own, _)| **own == column).map_or(0.0, |(_, level)| *level)
    }

    /// The columns that are taken, with their levels.
    pub fn taken(&self) -> impl Iterator<Item = (usize, f64)> {
        let first = self.first();
        self.basis.iter().zip(&self.levels).filter_map(move |(own, level)| Some((own.checked_sub(first)?, *level)))
    }

    /// Where a level is not whole: how the rows are mixed to give it, from which a cut may be made.
    pub fn mixes(&self) -> impl Iterator<Item = &[f64]> {
        let between = |level: &f64| 1e-5 < (level - level.round()).abs();
        self.levels.iter().enumerate().filter(move |(_, level)| between(level)).filter_map(|(row, _)| self.inverse.row(row))
    }

    /// How much is lacking in all, where rows with a right side below nothing can't be met.
    pub fn lacking(&self) -> f64 {
        let lacking = self.right.len()..self.first();
        self.basis.iter().zip(&self.levels).filter(|(own, _)| lacking.contains(*own)).map(|(_, level)| level.max(0.0)).sum()
    }

    pub fn worth(&self) -> f64 {
        self.basis.iter().zip(&self.levels).map(|(column, level)| self.worth_of(*column) * level).sum()
    }

    /// The number of the first column that was added.
    fn first(&self) -> usize {
        self.right.len().saturating_mul(2)
    }

    fn worth_of(&self, column: usize) -> f64 {
        self.columns.get(column).map_or(0.0, |column| column.worth)
    }

    /// The column that gains most for each unit, or the first that gains.
    fn entering(&self, first: bool) -> Option<usize> {
        let prices = self.prices();
        let scale = prices.iter().fold(1.0_f64, |most, price| most.max(price.abs()));
        let mut best = (TINY * scale, None);
        for (nth, column) in self.columns.iter().enumerate() {
            if self.in_basis.get(nth) != Some(&false) {
                continue;
            }
            let paid: f64 = column.cells.iter().map(|(row, cell)| prices.get(*row).unwrap_or(&0.0) * cell).sum();
            let gain = column.worth - paid;
            if best.0 < gain {
                best = (gain, Some(nth));
                if first {
                    break;
                }
            }
        }
        best.1
    }

    /// Brings a column in; whether it took a level above nothing, or `None` where nothing holds it.
    fn turn(&mut self, entering: usize, first: bool) -> Option<bool> {
        let cells = self.columns.get(entering).map(|column| &*column.cells).unwrap_or_default();
        let change = self.inverse.times(cells);
        let (row, level) = self.leaving(&change, first)?;
        for (own, by) in self.levels.iter_mut().zip(&change) {
            *own = (*own - level * by).max(0.0);
        }
        *self.levels.get_mut(row)? = level;
        self.inverse.pivot(row, &change);
        let left = std::mem::replace(self.basis.get_mut(row)?, entering);
        mark(&mut self.in_basis, left, false);
        mark(&mut self.in_basis, entering, true);
        Some(TINY < level)
    }

    /// The row that is used up first, and how far one can go; among equals the safest pivot, or the first column.
    fn leaving(&self, change: &[f64], first: bool) -> Option<(usize, f64)> {
        let mut best: Option<(f64, f64, usize)> = None; // level, how good among equals, row
        for (row, ((by, level), own)) in change.iter().zip(&self.levels).zip(&self.basis).enumerate() {
            if *by < 1e-7 {
                continue;
            }
            let (far, good) = (level / by, if first { -(*own as f64) } else { *by });
            let wins = best.is_none_or(|(least, other, _)| far < least - TINY || (far <= least + TINY && other < good));
            if wins {
                best = Some((best.map_or(far, |(least, ..)| far.min(least)), good, row));
            }
        }
        best.map(|(far, _, row)| (row, far.max(0.0)))
    }

    fn made_anew(&mut self) {
        let columns = self.basis.iter().map(|own| self.columns.get(*own).map(|column| &*column.cells).unwrap_or_default());
        if let Some(inverse) = Inverse::of(columns) {
            self.levels = inverse.right_of(&self.right).into_iter().map(|level| level.max(0.0)).collect();
            self.inverse = inverse;
        }
    }
}

fn mark(all: &mut [bool], nth: usize, is: bool) {
    if let Some(one) = all.get_mut(nth) {
        *one = is;
    }
}

#[cfg(test)]
mod tests;
