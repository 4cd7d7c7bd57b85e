//! What follows from the choice of a field: outer size, pieces, glue area and weight.

use super::plan::{Field, Lie, Taken};
use super::problem::{Pattern, Problem};
use super::search::Chosen;
use super::tally::{Laid, Pieces, Tally};
use super::tiles::Begun;

/// A cubic metre has so many cubic nanometres, of which a gram a litre makes a kilogram.
const GRAM: i128 = 1_000_000_000_000_000_000_000_000;

/// The field in full.
pub(super) fn field(problem: &Problem, chosen: &Chosen) -> Option<Field> {
    let Chosen { tiles, lie, layers } = chosen;
    let [length, width, thickness] = tiles.tile;
    let height = layers.saturating_mul(thickness);
    let (full, tally, times, outer, glue_area) = match lie {
        Lie::Rows { pattern, columns, rows, turn } => {
            let laid = Laid::of(*pattern, tiles.mix, [length, width], problem.gap)?;
            let mut tally = Tally::default();
            laid.tally(*columns, *rows, &mut tally);
            let [along, across] = laid.pitches();
            let [x, y] = [(columns, along), (rows, across)].map(|(n, pitch)| n.saturating_mul(pitch).saturating_sub(laid.gap));
            let outer = if *turn { [y, x, height] } else { [x, y, height] };
            let glue = glue(&laid, &tally, [x.saturating_add(y), thickness, *layers])?;
            (laid.full(), tally, *layers, outer, glue)
        }
        Lie::Crossed { lines, ends, open } => {
            let crossed = Crossed { length, width, lines: *lines, ends: *ends, open: *open };
            let laid = Laid::of(Pattern::Stack, tiles.mix, [length, width], 0)?;
            let [x, y] = crossed.outer();
            let glue = crossed.overlap()?.checked_mul(i128::from(layers.saturating_sub(1)))?;
            (laid.full(), crossed.tally(*layers, tiles.piles.len()), 1, [x, y, height], glue)
        }
    };
    let mut begun = Begun::default();
    let piece = |((pile, pieces), source): ((&usize, &Pieces), &super::tiles::Source)| Taken {
        pile: *pile,
        whole: pieces.whole.saturating_mul(times),
        cut: pieces.cuts.iter().fold(0_i64, |sum, (_, n)| sum.saturating_add(n.saturating_mul(times))),
        taken: source.taken(pieces, times, &mut begun),
    };
    let pieces = tiles.piles.iter().zip(&tally.colours).zip(&tiles.sources).map(piece).collect();
    let weight = weight(problem, chosen, (&tally, full, times))?;
    let (mix, piles) = (tiles.mix, tiles.piles.clone());
    Some(Field { mix, piles, lie: *lie, layers: *layers, tile: tiles.tile, outer, pieces, glue_area, weight })
}

/// The lengths of pieces of one colour, in all.
fn run(pieces: &Pieces, full: i64) -> Option<i128> {
    let whole = i128::from(pieces.whole).checked_mul(i128::from(full));
    pieces.cuts.iter().try_fold(whole?, |sum, (length, n)| sum.checked_add(i128::from(*length).checked_mul(i128::from(*n))?))
}

/// Between layers the tiles' faces; without a gap also their edges, which is half their outlines less the field's.
fn glue(laid: &Laid, tally: &Tally, [outline, thickness, layers]: [i64; 3]) -> Option<i128> {
    let mut lengths = 0_i128;
    let mut pieces = 0_i64;
    for colour in &tally.colours {
        lengths = lengths.checked_add(run(colour, laid.full())?)?;
        pieces = colour.cuts.iter().fold(pieces.checked_add(colour.whole)?, |sum, (_, n)| sum.saturating_add(*n));
    }
    let width = i128::from(laid.width);
    let faces = lengths.checked_mul(width)?.checked_mul(i128::from(layers.checked_sub(1)?))?;
    if laid.gap != 0 {
        return Some(faces);
    }
    let edges = lengths.checked_add(width.checked_mul(i128::from(pieces))?)?.checked_sub(i128::from(outline))?;
    faces.checked_add(edges.checked_mul(i128::from(layers.checked_mul(thickness)?))?)
}

/// In whole grams, half up.
fn weight(problem: &Problem, chosen: &Chosen, (tally, full, times): (&Tally, i64, i64)) -> Option<i128> {
    let [_, width, thickness] = chosen.tiles.tile.map(i128::from);
    let unit = i128::from(problem.unit);
    let mut mass = 0_i128;
    for (pile, pieces) in chosen.tiles.piles.iter().zip(&tally.colours) {
        let density = i128::from(problem.piles.get(*pile)?.density);
        let volume = run(pieces, full)?.checked_mul(i128::from(times))?.checked_mul(width)?.checked_mul(thickness)?;
        mass = mass.checked_add(volume.checked_mul(density)?.checked_mul(unit.checked_pow(3)?)?)?;
    }
    mass.checked_add(GRAM.checked_div(2)?)?.checked_div(GRAM)
}

/// Crossed courses by their figures, first along the width, then along the depth.
struct Crossed {
    length: i64,
    width: i64,
    lines: [i64; 2],
    ends: [i64; 2],
    open: [i64; 2],
}

impl Crossed {
    fn runs(&self) -> [i64; 2] {
        self.ends.map(|ends| ends.saturating_mul(self.length))
    }

    /// The lines along the width lie across the depth, and the other way round.
    fn spans(&self) -> [i64; 2] {
        let [x, y] = [0, 1].map(|way: usize| {
            let [lines, open] = [self.lines, self.open].map(|both| both.get(way).copied().unwrap_or(0));
            lines.saturating_mul(self.width.saturating_add(open)).saturating_sub(open)
        });
        [y, x]
    }

    fn outer(&self) -> [i64; 2] {
        let ([x, y], [over_x, over_y]) = (self.runs(), self.spans());
        [x.max(over_x), y.max(over_y)]
    }

    /// Where one layer lies on the next: what lies of the lines of each within the run of the other.
    fn overlap(&self) -> Option<i128> {
        let ([x, y], [lines_x, lines_y], [open_x, open_y]) = (self.runs(), self.lines, self.open);
        let within = |lines: i64, open: i64, run: i64| {
            let pitch = self.width.checked_add(open)?;
            let begun = run.checked_add(pitch)?.checked_sub(1)?.checked_div(pitch)?.min(lines);
            let end = begun.checked_mul(pitch)?.checked_sub(open)?;
            i128::from(begun).checked_mul(i128::from(self.width))?.checked_sub(i128::from(end.checked_sub(run)?.max(0)))
        };
        within(lines_y, open_y, x)?.checked_mul(within(lines_x, open_x, y)?)
    }

    fn tally(&self, layers: i64, piles: usize) -> Tally {
        let ([lines_x, lines_y], [ends_x, ends_y]) = (self.lines, self.ends);
        let odd = layers.saturating_add(1).div_euclid(2).saturating_mul(lines_x).saturating_mul(ends_x);
        let even = layers.div_euclid(2).saturating_mul(lines_y).saturating_mul(ends_y);
        let colours = if piles < 2 { [odd.saturating_add(even), 0] } else { [odd, even] };
        Tally { colours: colours.map(|whole| Pieces { whole, cuts: vec![] }) }
    }
}
