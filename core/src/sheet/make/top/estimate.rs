//! What a way to make a top wastes, by the lengths alone. Ours.

use super::{ALL, Pick, Way, rips, strip};
use crate::quantity::{Count, Decimal, Length};
use crate::sheet::make::{Source, Top, less, nm};
use crate::sheet::plan::figures::Figures;

/// Strips of a pile: how long one is squared and as it lies, how many there are, how many a piece gives; one strip, the same finished, and
/// one piece in cubic nanometres.
struct Strips {
    long: i64,
    low: i64,
    n: i64,
    ripped: i64,
    strip: i128,
    planed: i128,
    piece: i128,
    /// Of boards that could be bought.
    to_buy: bool,
}

impl Strips {
    /// What goes back of one, where it is long enough to keep: it is cut off a strip that is planed.
    fn back(&self, rest: i64, keep: i64) -> i128 {
        let of = || self.planed.saturating_mul(rest.into()).checked_div(self.low.into()).unwrap_or(0);
        if keep <= rest { of() } else { 0 }
    }
}

fn strips(source: &Source, (rows, row, planed): (Count, Length, Length), figures: &Figures) -> Option<Strips> {
    let (thickness, width, length) = (source.pile.thickness?, source.pile.width?, source.pile.length?);
    let ripped = i64::from(rips((rows, row), (width, source.planed), figures));
    let long = less(length, figures.square);
    let jointed = nm(row).saturating_add(nm(figures.joint).saturating_mul(2)).min(nm(width));
    let cube = |[thick, wide]: [i64; 2]| [thick, wide, nm(length)].into_iter().fold(1_i128, |sum, side| sum.saturating_mul(side.into()));
    let [strip, piece] = [jointed, nm(width)].map(|wide| cube([nm(thickness), wide]));
    let planed = cube([nm(planed).min(nm(thickness)), nm(row).min(nm(width))]);
    let n = i64::from(source.n).saturating_mul(ripped);
    (0 < long && 0 < n).then(|| Strips { long, low: nm(length), n, ripped, strip, planed, piece, to_buy: source.bought.is_some() })
}

/// The waste by the lengths alone: what lies there first, the longest strips first until there is length enough, with a cut for each row
/// where they do not come out. What is left of them and worth keeping goes back.
pub(super) fn way(top: &Top, (pick, rows): (&Pick, Count), (figures, of): (&Figures, &[&Source])) -> Option<Way> {
    let row = strip(top, rows, figures);
    let mut all: Vec<Strips> = of.iter().filter_map(|source| strips(source, (rows, row, pick.thickness), figures)).collect();
    all.sort_unstable_by_key(|strips| (strips.to_buy, std::cmp::Reverse(strips.long)));
    let n = i64::from(rows);
    let asked = nm(top.length).checked_mul(n)?;
    let laid = laid(top, n, (figures, &all))?;
    let (mut taken, sum, mut bought) = (0_i128.saturating_sub(laid.kept), laid.sum, 0_i128);
    for (strips, n) in all.iter().zip(&laid.used) {
        let pieces = n.saturating_add(strips.ripped).saturating_sub(1).checked_div(strips.ripped)?;
        let left = pieces.saturating_mul(strips.ripped).saturating_sub(*n);
        let kept = if nm(figures.keep_min) <= strips.low { i128::from(left) } else { 0 };
        let whole = strips.piece.saturating_mul(pieces.into());
        bought = bought.saturating_add(if strips.to_buy { whole } else { 0 });
        taken = taken.saturating_add(whole).saturating_sub(strips.strip.saturating_mul(kept));
    }
    let there = i128::from(sum).saturating_mul(ALL.into()).checked_div(asked.into())?;
    let sides = [nm(top.length), nm(row).saturating_mul(n), nm(pick.thickness)];
    let whole = sides.into_iter().fold(1_i128, |sum, side| sum.saturating_mul(side.into()));
    let finished = whole.checked_div(ALL.into())?.saturating_mul(there);
    let wasted = taken.saturating_sub(finished).max(0);
    let waste = wasted.saturating_mul(ALL.into()).checked_div(taken).unwrap_or(0);
    let (there, waste) = (i64::try_from(there).ok()?, Decimal::try_from_i128_with_scale(waste, 3).ok()?);
    (!all.is_empty()).then(|| Way { pick: pick.clone(), mixed: false, buys: false, bought, rows, there, waste, planned: false })
}

/// Cut in pieces, the rows come out of the strips one after the other, but where as many whole strips do it; else each begins with strips of
/// its own.
fn laid(top: &Top, rows: i64, (figures, all): (&Figures, &[Strips])) -> Option<Laid> {
    let mut laid = Laid { used: vec![0; all.len()], sum: 0, kept: 0 };
    let (length, kerf, keep) = (nm(top.length), nm(figures.kerf), nm(figures.keep_min));
    if top.split {
        let whole = self::laid(&Top { split: false, ..top.clone() }, rows, (figures, all))?;
        let comes_out = all.iter().all(|strips| length.checked_rem(strips.long) == Some(0));
        let kerf = if comes_out { 0 } else { kerf };
        laid.run(all, (length.checked_add(kerf)?.checked_mul(rows)?, kerf), keep);
        // Of what is laid, each row's kerf is none of its length.
        laid.sum = laid.sum.saturating_sub(kerf.checked_mul(rows)?).max(0);
        if whole.used == laid.used && whole.sum == length.checked_mul(rows)? {
            return Some(whole);
        }
    } else {
        for _ in 0..rows {
            if laid.row(all, (length, kerf), keep).is_none() {
                break;
            }
        }
    }
    Some(laid)
}

/// Strips laid end to end: how many of each pile, how long they are together, and what goes back of the last ones, in cubic nanometres.
struct Laid {
    used: Vec<i64>,
    sum: i64,
    kept: i128,
}

impl Laid {
    /// So much of length from the longest strips that are left.
    fn run(&mut self, all: &[Strips], (asked, kerf): (i64, i64), keep: i64) {
        let mut lacks = asked;
        for (strips, used) in all.iter().zip(&mut self.used) {
            let n = lacks.saturating_add(strips.long).saturating_sub(1).checked_div(strips.long).unwrap_or(0);
            let n = n.min(strips.n.saturating_sub(*used));
            *used = used.saturating_add(n);
            lacks = lacks.saturating_sub(strips.long.saturating_mul(n));
            // The kerf behind the last cut of a row is in what is asked.
            let rest = if 0 < kerf { 0_i64.saturating_sub(lacks) } else { 0 };
            if 0 < n {
                self.kept = self.kept.saturating_add(strips.back(rest, keep));
            }
            if lacks <= 0 {
                break;
            }
        }
        self.sum = self.sum.saturating_add(asked.saturating_sub(lacks.max(0)));
    }

    /// A row of whole strips, the longest first, and a piece of the shortest that ends it; nothing is taken where it can't be whole.
    fn row(&mut self, all: &[Strips], (length, kerf): (i64, i64), keep: i64) -> Option<()> {
        let (mut used, mut lacks) = (self.used.clone(), length);
        for (strips, used) in all.iter().zip(&mut used) {
            let there = strips.n.saturating_sub(*used);
            let n = lacks.checked_div(strips.long)?.min(there);
            *used = used.saturating_add(n);
            lacks = lacks.saturating_sub(strips.long.saturating_mul(n));
            if n < there {
                break; // One of these is long enough for what lacks.
            }
        }
        if 0 < lacks {
            let left = all.iter().zip(&mut used).filter(|(strips, used)| lacks <= strips.long && **used < strips.n);
            let (strips, used) = left.rev().min_by_key(|(strips, _)| (strips.to_buy, strips.long))?;
            *used = used.saturating_add(1);
            self.kept = self.kept.saturating_add(strips.back(strips.long.saturating_sub(lacks).saturating_sub(kerf), keep));
        }
        (self.used, self.sum) = (used, self.sum.saturating_add(length));
        Some(())
    }
}
