//! How many tiles and cut pieces a field of rows has, reckoned without laying it.

use super::problem::{Mix, Pattern};

/// The pieces of one colour.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Pieces {
    pub whole: i64,
    /// Cut pieces: length and number, the longest first.
    pub cuts: Vec<(i64, i64)>,
}

/// The pieces of one layer, by colour.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Tally {
    pub colours: [Pieces; 2],
}

/// A pattern with its tile: what has to be known to count.
#[derive(Clone, Copy, Debug)]
pub(super) struct Laid {
    pub pattern: Pattern,
    pub mix: Mix,
    pub length: i64,
    pub width: i64,
    pub gap: i64,
    /// Tiles side by side that are as long as one, for basket and herringbone.
    pub ratio: i64,
}

impl Laid {
    /// `None` where the tiles are too stubby for the pattern, or it is not laid in rows.
    pub(super) fn of(pattern: Pattern, mix: Mix, [length, width]: [i64; 2], gap: i64) -> Option<Laid> {
        let ratio = length.saturating_add(gap).checked_div(width.saturating_add(gap)).unwrap_or(0);
        let fits = match pattern {
            Pattern::Stack | Pattern::Running => true,
            Pattern::Basket | Pattern::Herringbone => 2 <= ratio,
            Pattern::Crossed => false,
        };
        fits.then_some(Laid { pattern, mix, length, width, gap, ratio })
    }

    /// The length of so many widths and the gaps between them.
    pub(super) fn cells(&self, n: i64) -> i64 {
        self.width.saturating_add(self.gap).saturating_mul(n).saturating_sub(self.gap)
    }

    /// The length of a tile that is not cut.
    pub(super) fn full(&self) -> i64 {
        match self.pattern {
            Pattern::Basket | Pattern::Herringbone => self.cells(self.ratio),
            _ => self.length,
        }
    }

    /// From one column to the next, and from one row to the next.
    pub(super) fn pitches(&self) -> [i64; 2] {
        let cell = self.width.saturating_add(self.gap);
        match self.pattern {
            Pattern::Basket => [self.full().saturating_add(self.gap); 2],
            Pattern::Herringbone => [cell; 2],
            _ => [self.length.saturating_add(self.gap), cell],
        }
    }

    /// The two cut pieces at the ends of every other row of running bond.
    pub(super) fn halves(&self) -> [i64; 2] {
        let both = self.length.saturating_sub(self.gap);
        let first = both.div_euclid(2);
        [first, both.saturating_sub(first)]
    }

    /// The pieces of one layer of so many columns and rows.
    pub(super) fn tally(&self, columns: i64, rows: i64, tally: &mut Tally) {
        for colour in &mut tally.colours {
            colour.whole = 0;
            colour.cuts.clear();
        }
        match self.pattern {
            Pattern::Running => self.running(columns, rows, tally),
            Pattern::Herringbone => self.herringbone(columns, rows, tally),
            _ => self.chequered(columns.saturating_mul(rows), tally),
        }
        for colour in &mut tally.colours {
            colour.cuts.sort_unstable_by(|one, other| other.cmp(one));
            colour.cuts.dedup_by(|next, first| {
                let same = next.0 == first.0;
                first.1 = if same { first.1.saturating_add(next.1) } else { first.1 };
                same
            });
        }
    }

    /// Stack and basket: tiles or blocks by turns.
    fn chequered(&self, places: i64, tally: &mut Tally) {
        let each = if self.pattern == Pattern::Basket { self.ratio } else { 1 };
        let first = if self.mix == Mix::Alternate { places.saturating_add(1).div_euclid(2) } else { places };
        self.add(tally, 0, (self.full(), each.saturating_mul(first)));
        self.add(tally, 1, (self.full(), each.saturating_mul(places.saturating_sub(first))));
    }

    fn running(&self, columns: i64, rows: i64, tally: &mut Tally) {
        let odd = rows.div_euclid(2);
        let even = rows.saturating_sub(odd);
        let (half, less) = (columns.div_euclid(2), columns.saturating_sub(1));
        self.add(tally, 0, (self.length, even.saturating_mul(columns.saturating_sub(half))));
        self.add(tally, 1, (self.length, even.saturating_mul(half)));
        // An odd row begins with colour 1: cut, then whole ones from colour 0 on, then cut.
        let [first, last] = self.halves();
        let second = usize::from(half.saturating_mul(2) == columns);
        self.add(tally, 1, (first, odd));
        self.add(tally, 0, (self.length, odd.saturating_mul(half)));
        self.add(tally, 1, (self.length, odd.saturating_mul(less.saturating_sub(half))));
        self.add(tally, second, (last, odd));
    }

    /// Cell (i, j) with r = (i - j) mod 2m: below m it is of the lying tile that begins r cells to the left, else of a standing one.
    /// So a row's lying tiles begin at j, j + 2m, … and a column's standing tiles at i + 1, i + 1 + 2m, …, from before the border on.
    fn herringbone(&self, columns: i64, rows: i64, tally: &mut Tally) {
        self.tiles_of_lines(0, (rows, columns, 0), tally);
        self.tiles_of_lines(1, (columns, rows, 1), tally);
    }

    fn tiles_of_lines(&self, colour: usize, (lines, cells, shift): (i64, i64, i64), tally: &mut Tally) {
        let period = self.ratio.saturating_mul(2);
        for line in 0..lines.min(period) {
            let alike = lines.saturating_sub(line).saturating_add(period).saturating_sub(1).div_euclid(period);
            let begin = line.saturating_add(shift);
            let begin = if period <= begin { begin.saturating_sub(period) } else { begin };
            let before = begin.saturating_sub(self.ratio).min(cells); // what the border leaves of a tile that begins before it
            if 0 < before {
                self.add(tally, colour, (self.cells(before), alike));
            }
            if begin < cells {
                let further = cells.saturating_sub(begin).saturating_sub(1).div_euclid(period);
                let last = cells.saturating_sub(begin).saturating_sub(further.saturating_mul(period)).min(self.ratio);
                self.add(tally, colour, (self.full(), alike.saturating_mul(further)));
                self.add(tally, colour, (self.cells(last), alike));
            }
        }
    }

    /// So many pieces of a length: of the only colour where there is one.
    fn add(&self, tally: &mut Tally, colour: usize, (length, n): (i64, i64)) {
        let colour = if self.mix == Mix::Alternate { colour } else { 0 };
        let Some(pieces) = tally.colours.get_mut(colour).filter(|_| 0 < n) else { return };
        if length == self.full() {
            pieces.whole = pieces.whole.saturating_add(n);
        } else {
            pieces.cuts.push((length, n));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tally(pattern: Pattern, mix: Mix, [columns, rows]: [i64; 2]) -> [(i64, Vec<(i64, i64)>); 2] {
        let laid = Laid::of(pattern, mix, [60, 20], 0).unwrap();
        let mut tally = Tally::default();
        laid.tally(columns, rows, &mut tally);
        tally.colours.map(|pieces| (pieces.whole, pieces.cuts))
    }

    /// Tiles of 60 by 20 without a gap, by turns.
    #[track_caller]
    fn check(pattern: Pattern, size: [i64; 2], first: (i64, &[(i64, i64)]), second: (i64, &[(i64, i64)])) {
        let wanted = [first, second].map(|(whole, cuts)| (whole, cuts.to_vec()));
        assert_eq!(tally(pattern, Mix::Alternate, size), wanted, "{pattern:?} {size:?}");
        let [one, none] = tally(pattern, Mix::Single, size);
        assert_eq!((one.0, none), (first.0 + second.0, (0, vec![])), "{pattern:?} {size:?}");
    }

    #[test]
    fn pieces_are_counted_by_colour() {
        check(Pattern::Stack, [3, 3], (5, &[]), (4, &[]));
        check(Pattern::Basket, [3, 3], (15, &[]), (12, &[]));
        check(Pattern::Running, [3, 1], (2, &[]), (1, &[]));
        check(Pattern::Running, [3, 2], (3, &[(30, 1)]), (2, &[(30, 1)]));
        check(Pattern::Running, [2, 4], (4, &[]), (2, &[(30, 4)]));
        check(Pattern::Running, [1, 2], (1, &[(30, 1)]), (0, &[(30, 1)]));
        check(Pattern::Herringbone, [1, 1], (0, &[(20, 1)]), (0, &[]));
        check(Pattern::Herringbone, [3, 1], (1, &[]), (0, &[]));
        check(Pattern::Herringbone, [6, 1], (1, &[]), (0, &[(20, 3)]));
    }

    /// A herringbone as large as its period each way is half of either colour.
    #[test]
    fn a_period_of_herringbone_is_half_lying_half_standing() {
        let cells = |(whole, cuts): &(i64, Vec<(i64, i64)>)| whole * 3 + cuts.iter().map(|(length, n)| length / 20 * n).sum::<i64>();
        for times in 1..5 {
            let colours = tally(Pattern::Herringbone, Mix::Alternate, [6 * times, 6 * times]);
            assert_eq!([cells(&colours[0]), cells(&colours[1])], [18 * times * times; 2]);
        }
    }
}
