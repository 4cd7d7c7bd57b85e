//! How a problem and its plan travel between the page and whoever plans: as one row of whole numbers.
//!
//! Rows are written into books (docs/STORAGE.md, tests/museum/plans.txt) and read for ever: a figure more, or another order, is a row with
//! another first number.
//! What belongs to a problem is told once, for both ways. Names stay at home: a plan speaks of piles and parts by their place.

mod outlooks;
mod plans;
mod problems;
mod unlocks;

pub use outlooks::{put_hoped, put_outlook, take_hoped, take_outlook};
pub use unlocks::{put_locked, put_unlocks, take_locked, take_unlocks};

use super::{Answered, Asked, Figures};

/// A row of numbers that is written, or read from its beginning.
#[derive(Debug, Default)]
pub(super) struct Row {
    numbers: Vec<i64>,
    at: usize,
    reads: bool,
    /// It ended too early, or holds what can't be.
    broken: bool,
}

/// No list of a problem or a plan is longer.
const LONGEST: i64 = 1_000_000;

impl Row {
    fn read(numbers: Vec<i64>) -> Row {
        Row { numbers, reads: true, ..Row::default() }
    }

    fn number(&mut self, number: &mut i64) {
        if !self.reads {
            return self.numbers.push(*number);
        }
        match self.numbers.get(self.at) {
            Some(found) => (*number, self.at) = (*found, self.at.saturating_add(1)),
            None => self.broken = true,
        }
    }

    fn numbers<const N: usize>(&mut self, numbers: [&mut i64; N]) {
        numbers.into_iter().for_each(|number| self.number(number));
    }

    fn place(&mut self, place: &mut usize) {
        let mut number = i64::try_from(*place).unwrap_or(i64::MAX);
        self.number(&mut number);
        *place = usize::try_from(number).unwrap_or(usize::MAX);
    }

    fn flag(&mut self, flag: &mut bool) {
        let mut number = i64::from(*flag);
        self.number(&mut number);
        *flag = number == 1;
    }

    /// A figure of 128 bits takes two numbers.
    fn figure(&mut self, figure: &mut i128) {
        const HALF: u32 = 64;
        let (mut high, mut low) = ((*figure >> HALF) as i64, *figure as i64);
        self.numbers([&mut high, &mut low]);
        *figure = (i128::from(high) << HALF) | i128::from(low as u64);
    }

    /// One of a closed list, by its place in it.
    fn one_of<T: Copy + PartialEq>(&mut self, one: &mut T, all: &[T]) {
        let mut place = all.iter().position(|known| known == one).unwrap_or(usize::MAX);
        self.place(&mut place);
        match all.get(place) {
            Some(known) => *one = *known,
            None => self.broken = true,
        }
    }

    fn wish<T: Default>(&mut self, wish: &mut Option<T>, each: fn(&mut Row, &mut T)) {
        let mut is_there = wish.is_some();
        self.flag(&mut is_there);
        if is_there {
            each(self, wish.get_or_insert_with(T::default));
        }
    }

    fn list<T: Default>(&mut self, list: &mut Vec<T>, each: fn(&mut Row, &mut T)) {
        let mut long = i64::try_from(list.len()).unwrap_or(i64::MAX);
        self.number(&mut long);
        if !(0..=LONGEST).contains(&long) {
            self.broken = true;
        }
        for nth in 0..long {
            if self.broken {
                return;
            }
            if self.reads {
                list.push(T::default());
            }
            if let Some(one) = usize::try_from(nth).ok().and_then(|nth| list.get_mut(nth)) {
                each(self, one);
            }
        }
    }

    /// What was read, if the row was whole and nothing is left of it.
    fn whole<T>(self, read: T) -> Option<T> {
        (!self.broken && self.at == self.numbers.len()).then_some(read)
    }
}

/// A problem as a row.
pub fn put(asked: &Asked) -> Vec<i64> {
    let mut row = Row::default();
    problems::any(&mut row, &mut asked.clone());
    row.numbers
}

/// The problem of a row, its piles and parts named by their places; nothing where the row is no problem.
pub fn take(row: Vec<i64>) -> Option<Asked> {
    let (mut row, mut asked) = (Row::read(row), Asked::default());
    problems::any(&mut row, &mut asked);
    row.whole(asked)
}

/// A plan and its bound as a row.
pub fn put_answer(answered: &Answered) -> Vec<i64> {
    let mut row = Row::default();
    plans::any(&mut row, &mut answered.clone());
    row.numbers
}

/// The plan of a row; nothing where the row is none.
pub fn take_answer(row: Vec<i64>) -> Option<Answered> {
    let (mut row, mut answered) = (Row::read(row), Answered::default());
    plans::any(&mut row, &mut answered);
    row.whole(answered)
}

/// How far the planning has come, as a row: the worth of the best plan so far, and what no plan can pass.
pub fn put_progress(worth: &[i128], bound: &[i128]) -> Vec<i64> {
    let mut row = Row::default();
    for figures in [worth, bound] {
        row.list(&mut figures.to_vec(), Row::figure);
    }
    row.numbers
}

/// The worth and the bound of such a row.
pub fn take_progress(row: Vec<i64>) -> Option<[Figures; 2]> {
    let (mut row, mut both) = (Row::read(row), [vec![], vec![]]);
    both.iter_mut().for_each(|figures| row.list(figures, Row::figure));
    row.whole(both)
}

/// A row as a text: its numbers with a blank between.
pub fn write(row: &[i64]) -> String {
    row.iter().map(i64::to_string).collect::<Vec<_>>().join(" ")
}

/// The row of such a text; nothing where it is none.
///
/// ```
/// use fivebar_core::plan::post;
/// assert_eq!(post::read(&post::write(&[3, -1, 0])), Some(vec![3, -1, 0]));
/// assert_eq!(post::read("3 x"), None);
/// ```
pub fn read(text: &str) -> Option<Vec<i64>> {
    text.split(' ').map(|number| number.parse().ok()).collect()
}

#[cfg(test)]
mod tests;
