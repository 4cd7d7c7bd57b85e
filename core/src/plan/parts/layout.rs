//! From columns to a plan: where each piece lies, which pile each board comes from, which strips go together.

use super::cut::Cut;
use super::plan::{self, Board, First, Panel, Piece};
use super::pool::{How, Pool};
use super::problem::Problem;
use super::state::State;
use super::stock::{self, Stock};

/// Strips that were cut and not yet glued up.
struct Lying {
    strip: usize,
    pile: usize,
    wide: i64,
    many: i64,
}

pub(super) struct Layout<'a> {
    pub problem: &'a Problem,
    pub stock: &'a Stock,
    pub strips: &'a [super::cut::Strip],
}

impl Layout<'_> {
    /// The boards and panels of a plan.
    pub(super) fn of(&self, pool: &Pool, state: &State) -> (Vec<Board>, Vec<Panel>) {
        let mut there: Vec<Vec<(usize, i64)>> =
            self.stock.kinds.iter().map(|kind| kind.piles.iter().map(|pile| (*pile, self.count(*pile))).collect()).collect();
        let (mut boards, mut panels, mut lying) = (vec![], vec![], vec![]);
        for (column, times) in state.taken.iter().filter_map(|(nth, times)| Some((pool.get(*nth)?, *times))) {
            let How::Cut(cut) = &column.how else { continue };
            let board = self.board(cut);
            let mut left = times;
            for (pile, there) in there.get_mut(cut.kind).into_iter().flatten() {
                let times = left.min(*there);
                if 0 < times {
                    (*there, left) = (there.saturating_sub(times), left.saturating_sub(times));
                    self.lay(cut, (*pile, times), &mut lying);
                    boards.push(Board { pile: *pile, times, ..board.clone() });
                }
            }
        }
        for (column, times) in state.taken.iter().filter_map(|(nth, times)| Some((pool.get(*nth)?, *times))) {
            if let How::Glue(strips) = &column.how {
                self.glue(strips, times, &mut lying, &mut panels);
            }
        }
        (boards, panels)
    }

    fn count(&self, pile: usize) -> i64 {
        self.problem.piles.get(pile).map_or(0, |pile| pile.count)
    }

    fn real(&self, size: i64) -> i64 {
        size.saturating_mul(self.stock.measure)
    }

    /// Length and width of a piece as it is cut.
    fn sizes(&self, part: usize, wide: i64) -> [i64; 2] {
        let Some(part) = self.problem.parts.get(part) else { return [0; 2] };
        let [length, width] = stock::blank(self.problem, part);
        [length, if part.glue { self.real(wide) } else { width }]
    }

    fn board(&self, cut: &Cut) -> Board {
        let mut at = 0_i64;
        let kerf = self.stock.kerf;
        let mut bands = vec![];
        for band in &cut.bands {
            let (mut pieces, mut inner) = (vec![], 0_i64);
            for own in &band.pieces {
                let [length, width] = self.sizes(own.part, own.wide);
                let long = self.stock.parts.get(own.part).map_or(0, |part| part.long);
                for _ in 0..own.many {
                    pieces.push(Piece { part: own.part, at: self.real(inner), length, width });
                    inner = inner.saturating_add(if cut.first == First::Rip { long } else { own.wide }).saturating_add(kerf);
                }
            }
            bands.push(plan::Band { size: self.real(band.size), at: self.real(at), pieces });
            at = at.saturating_add(band.size).saturating_add(kerf);
        }
        let pile = self.stock.kinds.get(cut.kind).and_then(|kind| kind.piles.first()).copied().unwrap_or(0);
        let (stretch, remainder) = self.stretch(cut, pile);
        Board { pile, times: 1, stretch, first: cut.first, bands, remainder }
    }

    /// The stretch in the problem's units, and what goes back behind it.
    fn stretch(&self, cut: &Cut, pile: usize) -> (i64, i64) {
        let (Some(own), Some(kind)) = (self.problem.piles.get(pile), self.stock.kinds.get(cut.kind)) else { return (0, 0) };
        let long = stock::trimmed(own.length, self.problem.end_trim);
        if kind.long <= cut.stretch {
            return (long, 0);
        }
        let stretch = self.real(cut.stretch);
        let rest = long.saturating_sub(stretch).saturating_sub(self.problem.kerf);
        (stretch, if 0 < self.problem.keep_min && self.problem.keep_min <= rest { rest } else { 0 })
    }

    fn lay(&self, cut: &Cut, (pile, times): (usize, i64), lying: &mut Vec<Lying>) {
        for own in cut.bands.iter().flat_map(|band| &band.pieces) {
            let strip = self.strips.iter().position(|strip| strip.part == own.part && strip.wide == own.wide);
            if let Some(strip) = strip {
                lying.push(Lying { strip, pile, wide: self.real(own.wide), many: own.many.saturating_mul(times) });
            }
        }
    }

    /// Glues up so many parts alike, as far as strips lie there.
    fn glue(&self, strips: &[(usize, i64)], times: i64, lying: &mut [Lying], panels: &mut Vec<Panel>) {
        let mut left = times;
        while 0 < left {
            let mut used: Vec<(usize, i64)> = vec![]; // by place among what lies: how many for one part
            for (strip, many) in strips {
                for _ in 0..*many {
                    let taken = |nth: usize, used: &[(usize, i64)]| used.iter().find(|own| own.0 == nth).map_or(0, |own| own.1);
                    let free = lying.iter().enumerate().position(|(nth, own)| own.strip == *strip && taken(nth, &used) < own.many);
                    let Some(nth) = free else { return };
                    match used.iter_mut().find(|own| own.0 == nth) {
                        Some(own) => own.1 = own.1.saturating_add(1),
                        None => used.push((nth, 1)),
                    }
                }
            }
            let most = |(nth, each): &(usize, i64)| lying.get(*nth).and_then(|own| own.many.checked_div(*each)).unwrap_or(0);
            let alike = used.iter().map(most).min().unwrap_or(0).clamp(1, left);
            let mut members = vec![];
            for (nth, each) in &used {
                let Some(own) = lying.get_mut(*nth) else { return };
                own.many = own.many.saturating_sub(each.saturating_mul(alike));
                members.extend((0..*each).map(|_| plan::Strip { pile: own.pile, width: own.wide }));
            }
            let part = strips.first().and_then(|(strip, _)| self.strips.get(*strip)).map_or(0, |strip| strip.part);
            panels.push(Panel { part, times: alike, strips: members });
            left = left.saturating_sub(alike);
        }
    }
}
