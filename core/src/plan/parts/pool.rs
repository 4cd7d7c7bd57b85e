//! The cuts met so far, and the ways to glue strips up: each once.

use super::cut::Cut;
use super::stock::Stock;
use crate::quantity::Sorted;

/// What a column is: a board cut so, or a part glued up from strips.
#[derive(Clone, Debug)]
pub(super) enum How {
    Cut(Cut),
    /// Strips by their place among the widths, and how many of each.
    Glue(Vec<(usize, i64)>),
}

/// Something that can be done so many times: what it makes of each row (less than nothing where it uses it up), and its cost.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub how: How,
    /// By row: pieces of parts, then strips of each width.
    pub made: Vec<i64>,
    pub cost: i64,
}

impl Column {
    pub(super) fn kind(&self) -> Option<usize> {
        match &self.how {
            How::Cut(cut) => Some(cut.kind),
            How::Glue(_) => None,
        }
    }
}

#[derive(Default)]
pub(super) struct Pool {
    pub columns: Vec<Column>,
    known: Sorted<(Option<usize>, i64, Vec<i64>), usize>,
}

impl Pool {
    /// Puts a column in unless it is known or makes nothing; whether it is new.
    pub(super) fn add(&mut self, column: Column) -> bool {
        let before = self.columns.len();
        column.made.iter().any(|made| 0 < *made) && before <= self.place(column)
    }

    /// The place of a column, new or not.
    pub(super) fn place(&mut self, column: Column) -> usize {
        let key = (column.kind(), column.cost, column.made.clone());
        if let Some(place) = self.known.get(&key) {
            return *place;
        }
        let place = self.columns.len();
        self.known.insert(key, place);
        self.columns.push(column);
        place
    }

    pub(super) fn get(&self, nth: usize) -> Option<&Column> {
        self.columns.get(nth)
    }
}

/// One part glued up from these strips.
pub(super) fn glued(stock: &Stock, rows: usize, part: usize, strips: Vec<(usize, i64)>) -> Column {
    let mut made = vec![0_i64; rows];
    for (strip, many) in &strips {
        if let Some(row) = made.get_mut(strip.saturating_add(stock.parts.len())) {
            *row = row.saturating_sub(*many);
        }
    }
    if let Some(row) = made.get_mut(part) {
        *row = 1;
    }
    Column { how: How::Glue(strips), made, cost: 0 }
}
