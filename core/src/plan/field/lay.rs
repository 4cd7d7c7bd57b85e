//! Every piece of a field where it lies: for the picture, and for looking the plan over.

use super::check::Broken;
use super::plan::{Field, Lie};
use super::problem::{Mix, Pattern, Problem};

/// A piece as it lies in its layer: its left front corner, how far it reaches, which colour, and how long it is along its grain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Piece {
    pub at: [i64; 2],
    pub size: [i64; 2],
    pub colour: usize,
    pub length: i64,
}

/// Layers alike. The second kind of crossed courses lies on the first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Layer {
    pub times: i64,
    pub pieces: Vec<Piece>,
}

/// More places are not laid one by one.
const PLACES_MOST: i64 = 4_000_000;

/// The layers of a field, piece by piece. Lengths in the plan's unit.
///
/// # Errors
/// [`Broken`] for a field that can't be laid.
pub fn layers(problem: &Problem, field: &Field) -> Result<Vec<Layer>, Broken> {
    let [length, width, _] = field.tile;
    if length < 1 || width < 1 {
        return Err(Broken::NothingLeft);
    }
    match field.lie {
        Lie::Rows { pattern, columns, rows, turn } => {
            let floor = Floor::of(problem, field, pattern)?;
            let mut pieces = floor.lay(columns, rows).ok_or(Broken::OutOfRange)??;
            if turn {
                pieces.iter_mut().for_each(turned);
            }
            Ok(vec![Layer { times: field.layers, pieces }])
        }
        Lie::Crossed { lines: [lines_x, lines_y], ends: [ends_x, ends_y], open: [open_x, open_y] } => {
            let second = usize::from(field.mix == Mix::Alternate);
            let course = |lines, ends, open| course([length, width], [lines, ends, open]);
            let odd = course(lines_x, ends_x, open_x)?;
            let mut even = course(lines_y, ends_y, open_y)?;
            for piece in &mut even {
                turned(piece);
                piece.colour = second;
            }
            let below = field.layers.saturating_add(1).div_euclid(2);
            Ok(vec![Layer { times: below, pieces: odd }, Layer { times: field.layers.saturating_sub(below), pieces: even }])
        }
    }
}

/// Width and depth change places.
fn turned(piece: &mut Piece) {
    piece.at.reverse();
    piece.size.reverse();
}

/// Lines along the width, each of so many tiles end to end, and what is open between the lines.
fn course([length, width]: [i64; 2], [lines, ends, open]: [i64; 3]) -> Result<Vec<Piece>, Broken> {
    if lines.min(ends) < 1 || lines.checked_mul(ends).is_none_or(|places| PLACES_MOST < places) {
        return Err(Broken::TooLarge);
    }
    let piece = |line: i64, end: i64| {
        let at = [end.checked_mul(length)?, line.checked_mul(width.checked_add(open)?)?];
        Some(Piece { at, size: [length, width], colour: 0, length })
    };
    let all = (0..lines).flat_map(|line| (0..ends).map(move |end| piece(line, end)));
    all.collect::<Option<_>>().ok_or(Broken::OutOfRange)
}

/// What a field of rows is laid of.
struct Floor {
    pattern: Pattern,
    alternate: bool,
    length: i64,
    width: i64,
    gap: i64,
    /// Widths and gaps in one length.
    ratio: i64,
}

impl Floor {
    fn of(problem: &Problem, field: &Field, pattern: Pattern) -> Result<Floor, Broken> {
        let [length, width, _] = field.tile;
        let gap = problem.gap;
        let sum = |one: i64| one.checked_add(gap).ok_or(Broken::OutOfRange);
        let ratio = sum(length)?.checked_div(sum(width)?).ok_or(Broken::OutOfRange)?;
        match pattern {
            Pattern::Crossed => return Err(Broken::NotAllowed),
            Pattern::Basket | Pattern::Herringbone if ratio < 2 => return Err(Broken::TooStubby),
            _ => {}
        }
        Ok(Floor { pattern, alternate: field.mix == Mix::Alternate, length, width, gap, ratio })
    }

    fn lay(&self, columns: i64, rows: i64) -> Option<Result<Vec<Piece>, Broken>> {
        let each = if self.pattern == Pattern::Basket { self.ratio } else { 1 };
        let places = columns.checked_mul(rows).and_then(|places| places.checked_mul(each));
        if columns.min(rows) < 1 || places.is_none_or(|places| PLACES_MOST < places) {
            return Some(Err(Broken::TooLarge));
        }
        Some(Ok(match self.pattern {
            Pattern::Running => self.running(columns, rows)?,
            Pattern::Basket => self.basket(columns, rows)?,
            Pattern::Herringbone => self.herringbone(columns, rows)?,
            _ => self.stack(columns, rows)?,
        }))
    }

    fn cell(&self) -> Option<i64> {
        self.width.checked_add(self.gap)
    }

    /// So many widths with their gaps.
    fn cells(&self, n: i64) -> Option<i64> {
        n.checked_mul(self.cell()?)?.checked_sub(self.gap)
    }

    fn colour(&self, nth: i64) -> usize {
        usize::from(self.alternate && nth.rem_euclid(2) == 1)
    }

    fn lying(&self, at: [i64; 2], length: i64, nth: i64) -> Piece {
        Piece { at, size: [length, self.width], colour: self.colour(nth), length }
    }

    fn standing(&self, at: [i64; 2], length: i64, nth: i64) -> Piece {
        Piece { at, size: [self.width, length], colour: self.colour(nth), length }
    }

    fn stack(&self, columns: i64, rows: i64) -> Option<Vec<Piece>> {
        let mut pieces = vec![];
        for row in 0..rows {
            for column in 0..columns {
                let at = [column.checked_mul(self.length.checked_add(self.gap)?)?, row.checked_mul(self.cell()?)?];
                pieces.push(self.lying(at, self.length, column.checked_add(row)?));
            }
        }
        Some(pieces)
    }

    fn running(&self, columns: i64, rows: i64) -> Option<Vec<Piece>> {
        let both = self.length.checked_sub(self.gap)?;
        let (mut pieces, first) = (vec![], both.div_euclid(2));
        for row in 0..rows {
            let cut = row.rem_euclid(2) == 1;
            let (mut at, mut nth) = (0_i64, row);
            let last = columns.checked_add(i64::from(cut))?;
            for place in 0..last {
                let length = match (cut, place) {
                    (true, 0) => first,
                    (true, place) if place == columns => both.checked_sub(first)?,
                    _ => self.length,
                };
                pieces.push(self.lying([at, row.checked_mul(self.cell()?)?], length, nth));
                at = at.checked_add(length)?.checked_add(self.gap)?;
                nth = nth.checked_add(1)?;
            }
        }
        Some(pieces)
    }

    /// Blocks of tiles side by side, lying and standing by turns.
    fn basket(&self, columns: i64, rows: i64) -> Option<Vec<Piece>> {
        let side = self.cells(self.ratio)?;
        let mut pieces = vec![];
        for row in 0..rows {
            for column in 0..columns {
                let [x, y] = [column, row].map(|n| n.checked_mul(side.checked_add(self.gap)?));
                let (x, y, nth) = (x?, y?, column.checked_add(row)?);
                for tile in 0..self.ratio {
                    let off = tile.checked_mul(self.cell()?)?;
                    pieces.push(match nth.rem_euclid(2) {
                        0 => self.lying([x, y.checked_add(off)?], side, nth),
                        _ => self.standing([x.checked_add(off)?, y], side, nth),
                    });
                }
            }
        }
        Some(pieces)
    }

    /// Cell by cell: a tile is met in its first cell within the border.
    fn herringbone(&self, columns: i64, rows: i64) -> Option<Vec<Piece>> {
        let period = self.ratio.checked_mul(2)?;
        let mut pieces = vec![];
        for row in 0..rows {
            for column in 0..columns {
                let at = [column.checked_mul(self.cell()?)?, row.checked_mul(self.cell()?)?];
                let place = column.checked_sub(row)?.rem_euclid(period);
                let lies = place < self.ratio;
                let within = if lies { place } else { period.checked_sub(1)?.checked_sub(place)? };
                let (along, end) = if lies { (column, columns) } else { (row, rows) };
                if within == 0 || along == 0 {
                    let cells = self.ratio.checked_sub(within)?.min(end.checked_sub(along)?);
                    let length = self.cells(cells)?;
                    pieces.push(if lies { self.lying(at, length, 0) } else { self.standing(at, length, 1) });
                }
            }
        }
        Some(pieces)
    }
}
