//! What is cut at the saw by what is ticked there: so many boards of each line, or all of them; and what is still on boards that are not.

use super::Given;
use super::keep::left_over;
use crate::ledger::decide::{LeftOver, Lying};
use crate::quantity::{Count, Length, Listed, Sorted};
use crate::sheet::plan::{CutLine, Drawn, PlanSheet};

/// All boards of a line, however many it has.
pub const ALL: Count = Count::MAX;
/// Between the place of a line and so many of its boards.
const OF: char = 'x';
/// Rows of a top are ticked behind all lines there can be.
const ROWS: usize = 1_000_000;

/// Boards that are ticked as cut, by the place of their line at the saw.
///
/// ```
/// use fivebar_core::sheet::make::cut::Ticks;
/// let mut ticks = Ticks::read("0,2x3"); // all of the first line, three of the third
/// assert_eq!((ticks.lines_done(), ticks.of(0, 5), ticks.of(2, 5)), (1, 5, 3));
/// ticks.one_more(2, (3, 4)); // three of its four are cut
/// assert_eq!((ticks.written().as_str(), ticks.lines_done()), ("0,2", 2));
/// ```
#[derive(Clone, Debug, Default)]
pub struct Ticks {
    by: Sorted<usize, Count>,
    /// Pieces of ticked rows, by their row and their place in it, that were cut by a plan before: no board is cut for them. It follows from the
    /// ticks of all plans, and is not written.
    laid: Vec<(usize, usize)>,
}

impl PartialEq for Ticks {
    fn eq(&self, other: &Ticks) -> bool {
        self.by == other.by
    }
}

impl Eq for Ticks {}

impl Ticks {
    /// As they lie on a phone; a line without a number is cut whole.
    pub fn read(text: &str) -> Ticks {
        let one = |tick: &str| match tick.split_once(OF) {
            None => Some((tick.parse().ok()?, ALL)),
            Some((line, n)) => Some((line.parse().ok()?, n.parse().ok().filter(|n| 0 < *n)?)),
        };
        Ticks { by: text.split(',').filter_map(one).collect(), laid: vec![] }
    }

    pub fn written(&self) -> String {
        let one = |(line, n): (&usize, &Count)| if *n == ALL { line.to_string() } else { format!("{line}{OF}{n}") };
        self.by.iter().map(one).listed().join(",")
    }

    /// Boards of a line that are cut, where it has so many.
    pub fn of(&self, line: usize, has: i64) -> i64 {
        self.by.get(&line).map_or(0, |n| i64::from(*n).min(has))
    }

    /// All boards of the line are cut.
    pub fn is_done(&self, line: usize) -> bool {
        self.by.get(&line) == Some(&ALL)
    }

    /// Lines of which all boards are cut.
    pub fn lines_done(&self) -> usize {
        self.by.iter().filter(|(line, n)| **n == ALL && Ticks::row_of(**line).is_none()).count()
    }

    /// Where a row of a top is ticked, by its place from 0.
    pub fn row(nth: usize) -> usize {
        ROWS.saturating_add(nth)
    }

    /// The row that is ticked there; nothing where that is a line.
    pub fn row_of(place: usize) -> Option<usize> {
        place.checked_sub(ROWS)
    }

    pub fn is_empty(&self) -> bool {
        self.by.is_empty()
    }

    /// All boards of a line are cut, or none where all were.
    pub fn turn(&mut self, line: usize) {
        if self.is_done(line) {
            self.by.remove(&line);
        } else {
            self.by.insert(line, ALL);
        }
    }

    /// One board more of a line is cut than were, where it has so many.
    pub fn one_more(&mut self, line: usize, (cut, has): (i64, i64)) {
        let n = Count::try_from(cut).unwrap_or(0).saturating_add(1);
        self.by.insert(line, if i64::from(n) < has { n } else { ALL });
    }

    /// What is ticked of one line, to be put there again.
    pub fn line(&self, line: usize) -> Option<Count> {
        self.by.get(&line).copied()
    }

    /// A line is ticked as it was.
    pub fn put(&mut self, line: usize, n: Option<Count>) {
        match n {
            Some(n) => self.by.insert(line, n),
            None => self.by.remove(&line),
        };
    }

    /// These pieces of ticked rows were cut by a plan before.
    pub fn lay(&mut self, laid: Vec<(usize, usize)>) {
        self.laid = laid;
    }

    /// Whether any row is ticked.
    pub fn has_rows(&self) -> bool {
        self.by.keys().any(|line| Ticks::row_of(*line).is_some())
    }
}

/// Pieces that are there, by their pile and length. Of a pile those that are as long as each other are alike, whichever board they are of.
#[derive(Clone, Default)]
pub(super) struct There(Sorted<(usize, Length), i64>);

impl There {
    /// What so many boards of a line give.
    pub(super) fn add(&mut self, line: &CutLine, n: i64) {
        for cut in &line.pieces {
            let pieces = self.0.entry((line.source, cut.size[0])).or_default();
            *pieces = pieces.saturating_add(n.saturating_mul(cut.n));
        }
    }

    /// So many more of such a piece.
    pub(super) fn put(&mut self, piece: &Drawn, n: i64) {
        let pieces = self.0.entry((piece.source, piece.at[2])).or_default();
        *pieces = pieces.saturating_add(n);
    }

    /// Less what is there of others.
    pub(super) fn less(&mut self, other: &There) {
        for (of, n) in &other.0 {
            let pieces = self.0.entry(*of).or_default();
            *pieces = pieces.saturating_sub(*n);
        }
    }

    /// How many pieces of a row are of these.
    pub(super) fn of_row(&self, row: &[Drawn]) -> usize {
        let mut left = self.clone();
        row.iter().filter(|piece| left.takes(piece)).count()
    }

    /// One piece of these is taken; false where there is none.
    fn takes(&mut self, piece: &Drawn) -> bool {
        let left = self.0.get_mut(&(piece.source, piece.at[2])).filter(|n| 0 < **n);
        left.map(|n| *n = n.saturating_sub(1)).is_some()
    }

    /// All pieces of a row are taken, or none.
    fn takes_row(&mut self, row: &[Drawn]) -> bool {
        let mut left = self.clone();
        let taken = row.iter().all(|piece| left.takes(piece));
        if taken {
            *self = left;
        }
        taken
    }
}

/// Pieces of ticked rows that no ticked board gives, by their row and their place in it.
pub(super) fn of_no_ticked_board(sheet: &PlanSheet, ticks: &Ticks) -> Vec<(usize, usize)> {
    let mut there = There::default();
    sheet.lines.iter().enumerate().for_each(|(nth, line)| there.add(line, ticks.of(nth, line.n)));
    let ticked = rows(sheet).enumerate().filter(|(row, _)| ticks.is_done(Ticks::row(*row)));
    let pieces = ticked.flat_map(|(row, all)| all.iter().enumerate().map(move |(nth, piece)| ((row, nth), piece)));
    pieces.filter(|(_, piece)| !there.takes(piece)).map(|(at, _)| at).listed()
}

/// Boards of each line that are cut, and the pieces of them that lie in no ticked row. Of a ticked row's pieces those that no ticked board gives,
/// and no plan before cut, are of boards that are cut too: the first line that has them and is not cut to its end.
fn boards_and_rest(sheet: &PlanSheet, ticks: &Ticks) -> (Vec<i64>, There) {
    let mut boards = sheet.lines.iter().enumerate().map(|(nth, line)| ticks.of(nth, line.n)).listed();
    let mut there = There::default();
    sheet.lines.iter().zip(&boards).for_each(|(line, n)| there.add(line, *n));
    let ticked = rows(sheet).enumerate().filter(|(row, _)| ticks.is_done(Ticks::row(*row)));
    let pieces = ticked.flat_map(|(row, all)| all.iter().enumerate().map(move |(nth, piece)| ((row, nth), piece)));
    for (at, piece) in pieces {
        if ticks.laid.contains(&at) || there.takes(piece) {
            continue;
        }
        let gives = |line: &CutLine| line.source == piece.source && line.pieces.iter().any(|cut| cut.size[0] == piece.at[2]);
        let uncut = sheet.lines.iter().zip(&mut boards).find(|(line, n)| **n < line.n && gives(line));
        if let Some((line, n)) = uncut {
            *n = n.saturating_add(1);
            there.add(line, 1);
            there.takes(piece);
        }
    }
    (boards, there)
}

/// Boards of each line at the saw that are cut: those that are ticked, and those the ticked rows are of.
pub fn boards(sheet: &PlanSheet, ticks: &Ticks) -> Vec<i64> {
    boards_and_rest(sheet, ticks).0
}

/// The lines of a plan with the boards of each that are cut.
pub(super) fn lines<'a>(sheet: &'a PlanSheet, ticks: &Ticks) -> impl Iterator<Item = (&'a CutLine, i64)> {
    sheet.lines.iter().zip(boards(sheet, ticks))
}

/// Lines at the saw that are not cut to their end.
pub fn lines_left(sheet: &PlanSheet, ticks: &Ticks) -> usize {
    lines(sheet, ticks).filter(|(line, cut)| *cut < line.n).count()
}

/// Rows of a top that are cut: those that are ticked, and as many of the others, from the top, as come out of what their boards leave.
pub fn rows_cut(sheet: &PlanSheet, ticks: &Ticks) -> Count {
    rows_and_loose(sheet, ticks).0
}

/// Pieces that are cut and lie in no row that is cut: of which pile, by its place, how long, and how many.
pub(super) fn cut_in_no_row(sheet: &PlanSheet, ticks: &Ticks) -> Vec<(usize, Length, i64)> {
    let all = rows_and_loose(sheet, ticks).1;
    all.0.iter().map(|((source, length), n)| (*source, *length, *n)).filter(|(.., n)| 0 < *n).listed()
}

fn rows_and_loose(sheet: &PlanSheet, ticks: &Ticks) -> (Count, There) {
    let (open, there) = open_rows(sheet, ticks);
    (Count::try_from(rows(sheet).count().saturating_sub(open.len())).unwrap_or(Count::MAX), there)
}

/// Of each row whether it is cut: it is ticked, or comes out of what the boards leave that are.
pub fn rows_done(sheet: &PlanSheet, ticks: &Ticks) -> Vec<bool> {
    let (_, mut there) = boards_and_rest(sheet, ticks);
    rows(sheet).enumerate().map(|(nth, row)| ticks.is_done(Ticks::row(nth)) || there.takes_row(row)).listed()
}

/// Rows that are not cut, and the pieces that are cut and lie in none that is.
pub(super) fn open_rows<'a>(sheet: &'a PlanSheet, ticks: &Ticks) -> (Vec<&'a [Drawn]>, There) {
    let (_, mut there) = boards_and_rest(sheet, ticks);
    let others = rows(sheet).enumerate().filter(|(nth, _)| !ticks.is_done(Ticks::row(*nth)));
    (others.filter(|(_, row)| !there.takes_row(row)).map(|(_, row)| row).listed(), there)
}

/// The rows of a top as they lie in its picture, from the top, each from the left.
pub fn rows(sheet: &PlanSheet) -> impl Iterator<Item = &[Drawn]> {
    sheet.picture.pieces.chunk_by(|one, next| one.at[1] == next.at[1])
}

/// Boards of a pile that a plan has cut: those of its ticks, as strips where they were ripped first.
pub fn boards_cut((given, sheet): (&Given, &PlanSheet), ticks: &Ticks, at: Lying) -> Count {
    let places = given.sources.iter().enumerate().filter(|(_, source)| source.which().0 == at).map(|(place, _)| place);
    places.map(|place| boards_cut_of((given, sheet), ticks, place)).fold(0, Count::saturating_add)
}

/// The same of one of its places, on the rack or in the job.
pub fn boards_cut_of((given, sheet): (&Given, &PlanSheet), ticks: &Ticks, place: usize) -> Count {
    let strips = lines(sheet, ticks).filter(|(line, _)| line.source == place).fold(0_i64, |sum, (_, n)| sum.saturating_add(n));
    let ripped = given.ready.sources.get(place).map_or(1, |source| source.ripped.max(1));
    let boards = strips.saturating_add(ripped).saturating_sub(1).checked_div(ripped).unwrap_or(strips);
    Count::try_from(boards).unwrap_or(Count::MAX)
}

/// Of what goes back to the rack, in the same order, how many pieces are still on boards that are not cut. What ripping leaves is there with
/// the first board of its pile.
pub fn still_on(given: &Given, sheet: &PlanSheet, ticks: &Ticks) -> Vec<Count> {
    let of = |source: usize| given.sources.get(source).map(|source| source.pile.pile);
    let count = |n: i64| Count::try_from(n).unwrap_or(0);
    let one = |left: &LeftOver| {
        let own = lines(sheet, ticks).filter(|(line, _)| of(line.source) == Some(left.of) && line.remainder == Some(left.size[2]));
        let uncut = own.map(|(line, cut)| count(line.n.saturating_sub(cut)));
        let begun = |source: usize| lines(sheet, ticks).any(|(line, cut)| line.source == source && 0 < cut);
        let long = |source: usize| given.ready.sources.get(source).map(|source| source.size[2]);
        let ripped = sheet.used.iter().filter(|used| of(used.source) == Some(left.of) && long(used.source) == Some(left.size[2]));
        let ripped = ripped.filter(|used| !begun(used.source)).map(|used| count(used.left_strips));
        uncut.chain(ripped).fold(0, Count::saturating_add).min(left.n)
    };
    left_over(given, sheet, &|_, _| String::new()).iter().map(one).listed()
}
