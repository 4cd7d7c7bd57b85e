//! Stack, running bond, basket and herringbone: every number of columns and rows that can be the best.
//!
//! For one number of columns the nearest number of rows on either side of the wanted size that can be laid beats all farther ones,
//! so those are never looked at. Columns go outward too, until they alone are farther off than the best field.

use super::near::{Near, Outward, Scale};
use super::plan::Lie;
use super::problem::Pattern;
use super::search::{Chosen, Search, Tiles, Worth};
use super::tally::{Laid, Tally};

/// Longer periods of a herringbone are not counted: tiles ten thousand times as long as wide.
const RATIO_MOST: i64 = 10_000;

struct Grid<'a> {
    tiles: &'a Tiles,
    laid: Laid,
    turn: bool,
    scales: [Scale; 2],
    /// The most columns and rows there may be, since shorter pieces would be cut than may be.
    most: [i64; 2],
    tally: Tally,
}

/// One field: its number of columns, rows and layers.
#[derive(Clone, Copy)]
struct Size {
    columns: i64,
    rows: i64,
    layers: i64,
}

/// Tries all fields of these piles in this pattern.
pub(super) fn search(search: &mut Search<'_, '_>, tiles: &Tiles, pattern: Pattern) {
    let [length, width, _] = tiles.tile;
    let Some(laid) = Laid::of(pattern, tiles.mix, [length, width], search.problem.gap) else { return };
    if RATIO_MOST < laid.ratio && pattern == Pattern::Herringbone {
        search.skipped = true;
        return;
    }
    let may_turn = search.problem.turn && matches!(pattern, Pattern::Stack | Pattern::Running);
    for turn in [false, true].into_iter().filter(|turn| !turn || may_turn) {
        let mut grid = Grid::of(search, tiles, laid, turn);
        for (height, layers) in &tiles.layers {
            if search.best.near < *height || !grid.columns(search, *height, *layers) {
                break;
            }
        }
    }
}

impl<'a> Grid<'a> {
    fn of(search: &Search<'_, '_>, tiles: &'a Tiles, laid: Laid, turn: bool) -> Grid<'a> {
        let [width, depth, _] = search.problem.targets;
        let targets = if turn { [depth, width] } else { [width, depth] };
        let [along, across] = laid.pitches();
        let scale = |target, pitch| Scale { target, pitch, less: laid.gap };
        let scales = [scale(targets[0], along), scale(targets[1], across)];
        Grid { tiles, laid, turn, scales, most: most(&laid, search.problem.cut_min), tally: Tally::default() }
    }

    /// Tries the numbers of columns for so many layers; whether to go on.
    fn columns(&mut self, search: &mut Search<'_, '_>, height: Near, layers: i64) -> bool {
        let [across, along] = self.scales;
        let nearest = along.nearest().plus(height);
        let mut columns = Outward::of(&across, self.most[0]);
        while let Some((n, near)) = columns.next() {
            if search.best.near < near.plus(nearest) {
                return true;
            }
            if !search.goes_on(20) {
                return false;
            }
            let size = Size { columns: n, rows: 1, layers };
            if self.may_do(size) {
                self.rows(search, near.plus(height), size);
            } else {
                columns.most = n.saturating_sub(1); // and more columns take no less
            }
        }
        true
    }

    /// For so many columns: the nearest number of rows that can be laid, on either side of the wanted size.
    fn rows(&mut self, search: &mut Search<'_, '_>, near: Near, size: Size) {
        let along = self.scales[1];
        let below = along.below().min(self.most[1]);
        if along.target.is_none() {
            self.first_laid(search, near, size, 1, |n| n.saturating_add(1));
        } else {
            let begin = self.most_rows(search, near, size, below);
            self.first_laid(search, near, size, begin, |n| n.saturating_sub(1));
            self.first_laid(search, near, size, along.below().saturating_add(1), |n| n.saturating_add(1));
        }
    }

    /// The most rows up to `below` for which there may be pieces enough.
    fn most_rows(&mut self, search: &Search<'_, '_>, near: Near, size: Size, below: i64) -> i64 {
        if below < 1 || search.best.near < near.plus(self.scales[1].near(below)) || self.may_do(Size { rows: below, ..size }) {
            return below;
        }
        let (mut may, mut not) = (1_i64, below);
        while may.saturating_add(1) < not {
            let middle = may.saturating_add(not).div_euclid(2);
            if self.may_do(Size { rows: middle, ..size }) { may = middle } else { not = middle }
        }
        may
    }

    /// Goes through numbers of rows, each farther off than the one before, until one can be laid or none can be the best.
    fn first_laid(&mut self, search: &mut Search<'_, '_>, near: Near, size: Size, begin: i64, next: impl Fn(i64) -> i64) {
        let along = self.scales[1];
        let mut rows = begin;
        while 0 < rows && rows <= self.most[1] {
            let size = Size { rows, ..size };
            let all = near.plus(along.near(rows));
            let sums = 20_u64.saturating_add(self.sums(size));
            if search.best.near < all || !search.goes_on(sums) || !self.may_do(size) {
                return;
            }
            let wanted = along.target.is_some();
            if self.at_least(size) > search.best.taken && all == search.best.near {
                return;
            }
            if self.lay(search, all, size) && wanted {
                return;
            }
            rows = next(rows);
        }
    }

    /// Looks at one field; whether it can be laid.
    fn lay(&mut self, search: &mut Search<'_, '_>, near: Near, size: Size) -> bool {
        self.tally(size);
        let layers = size.layers;
        let [first, second] = &self.tally.colours;
        if first.cuts.iter().chain(&second.cuts).any(|(length, _)| *length < search.problem.cut_min) {
            return false;
        }
        let [one, other] = &self.tiles.sources;
        let taken = [one.taken(first, layers, &mut search.begun), other.taken(second, layers, &mut search.begun)];
        if !self.tiles.have(taken) {
            return false;
        }
        let cut = first.cuts.iter().chain(&second.cuts).fold(0_i64, |sum, (_, n)| sum.saturating_add(n.saturating_mul(layers)));
        let worth = Worth { near, taken: taken[0].saturating_add(taken[1]), cut };
        let lie = Lie::Rows { pattern: self.laid.pattern, columns: size.columns, rows: size.rows, turn: self.turn };
        search.offer(worth, || Chosen { tiles: self.tiles.clone(), lie, layers });
        true
    }

    fn tally(&mut self, size: Size) {
        self.laid.tally(size.columns, size.rows, &mut self.tally);
    }

    /// The pieces that are needed at the least, by colour.
    fn needed(&mut self, size: Size) -> [i64; 2] {
        self.tally(size);
        let ([first, second], [one, other]) = (&self.tally.colours, &self.tiles.sources);
        [one.at_least(first, size.layers), other.at_least(second, size.layers)]
    }

    fn at_least(&mut self, size: Size) -> i64 {
        let [first, second] = self.needed(size);
        first.saturating_add(second)
    }

    /// Whether there may be pieces enough: if not, then not for more columns or rows either.
    fn may_do(&mut self, size: Size) -> bool {
        let needed = self.needed(size);
        self.tiles.have(needed)
    }

    /// How many sums it takes to count the pieces.
    fn sums(&self, size: Size) -> u64 {
        if self.laid.pattern != Pattern::Herringbone {
            return 60;
        }
        let period = self.laid.ratio.saturating_mul(2);
        let lines = size.columns.min(period).saturating_add(size.rows.min(period));
        u64::try_from(lines.saturating_mul(40)).unwrap_or(0)
    }
}

/// The most columns and rows that cut no piece shorter than may be: a running bond of two rows cuts its halves, and a herringbone
/// as large as its period either way cuts single cells.
fn most(laid: &Laid, cut_min: i64) -> [i64; 2] {
    let period = laid.ratio.saturating_mul(2);
    let [first, last] = laid.halves();
    match laid.pattern {
        Pattern::Running if first.min(last) < cut_min => [i64::MAX, 1],
        Pattern::Herringbone if laid.width < cut_min => [period.saturating_sub(1); 2],
        _ => [i64::MAX; 2],
    }
}
