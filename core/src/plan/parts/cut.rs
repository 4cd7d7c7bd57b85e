//! One way to cut a board, in the figures of the stock.

use super::plan::First;
use super::stock::{Blank, Kind, Stock};

/// A width that glue strips of a part are cut to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Strip {
    pub part: usize,
    pub wide: i64,
}

/// So many pieces alike in a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Pieces {
    pub part: usize,
    pub wide: i64,
    pub many: i64,
}

/// A band, or a section where the board is crosscut first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Band {
    pub size: i64,
    pub pieces: Vec<Pieces>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Cut {
    pub kind: usize,
    pub first: First,
    pub stretch: i64,
    pub bands: Vec<Band>,
}

impl Cut {
    /// How many of each part, then of each strip; where strips have any width, a glued part counts in width units.
    pub(super) fn made(&self, stock: &Stock, strips: Option<&[Strip]>) -> Vec<i64> {
        let mut made = vec![0_i64; stock.parts.len().saturating_add(strips.map_or(0, <[Strip]>::len))];
        for piece in self.bands.iter().flat_map(|band| &band.pieces) {
            let glue = stock.parts.get(piece.part).is_some_and(|part| part.glue);
            let (row, each) = match strips {
                Some(strips) if glue => (row_of(stock, strips, piece), 1),
                None if glue => (Some(piece.part), stock.units(piece.wide)),
                _ => (Some(piece.part), 1),
            };
            if let Some(sum) = row.and_then(|row| made.get_mut(row)) {
                *sum = sum.saturating_add(piece.many.saturating_mul(each));
            }
        }
        made
    }

    /// The same without what is too much: pieces by row, as `made` counts them. What is taken out shortens the stretch.
    pub(super) fn without(&self, stock: &Stock, strips: &[Strip], over: &[i64]) -> Cut {
        let mut over = over.to_vec();
        let mut cut = self.clone();
        for band in &mut cut.bands {
            for piece in &mut band.pieces {
                let glue = stock.parts.get(piece.part).is_some_and(|part| part.glue);
                let row = if glue { row_of(stock, strips, piece) } else { Some(piece.part) };
                let Some(over) = row.and_then(|row| over.get_mut(row)) else { continue };
                let less = piece.many.min(*over).max(0);
                piece.many = piece.many.saturating_sub(less);
                *over = over.saturating_sub(less);
            }
            band.pieces.retain(|piece| 0 < piece.many);
            band.shrink(stock, self.first);
        }
        cut.bands.retain(|band| !band.pieces.is_empty());
        cut.shorten(stock);
        cut
    }

    /// The same with no more of each row than is left to make, and what else is left put where it still fits: the dearest rows first.
    pub(super) fn fitted(&self, stock: &Stock, strips: &[Strip], (left, prices): (&[i64], &[f64])) -> Cut {
        let made = self.made(stock, Some(strips));
        let over: Vec<i64> = made.iter().zip(left).map(|(made, left)| made.saturating_sub((*left).max(0)).max(0)).collect();
        let mut cut = self.without(stock, strips, &over);
        let Some(kind) = stock.kinds.get(self.kind) else { return cut };
        cut.stretch = kind.long;
        let mut rows: Vec<(usize, i64)> =
            cut.made(stock, Some(strips)).iter().zip(left).map(|(made, left)| left.saturating_sub(*made)).enumerate().collect();
        rows.sort_by(|a, b| prices.get(b.0).unwrap_or(&0.0).total_cmp(prices.get(a.0).unwrap_or(&0.0)));
        for (row, many) in rows.into_iter().filter(|(_, many)| 0 < *many) {
            let strip = row.checked_sub(stock.parts.len()).and_then(|nth| strips.get(nth));
            let part = strip.map_or(row, |strip| strip.part);
            let Some(blank) = stock.parts.get(part).filter(|blank| blank.glue == strip.is_some() && kind.may.get(part) == Some(&true))
            else {
                continue;
            };
            cut.add(stock, (kind, blank), Pieces { part, wide: strip.map_or(blank.wide, |strip| strip.wide), many });
        }
        cut.bands.iter_mut().for_each(|band| band.shrink(stock, self.first));
        cut.shorten(stock);
        cut
    }

    /// Puts in so many pieces, or as many as fit: into the bands there are, then into new ones.
    fn add(&mut self, stock: &Stock, (kind, blank): (&Kind, &Blank), pieces: Pieces) {
        let rip = self.first == First::Rip;
        if blank.glue && kind.wide < pieces.wide {
            return;
        }
        let beside = kind.across(pieces.wide);
        let [run, thick] = if rip { [blank.long, pieces.wide] } else { [beside, blank.long] };
        let [room, across] = if rip { [kind.long, kind.wide] } else { [kind.wide, kind.long] };
        let mut left = pieces.many;
        let fits = |room: i64| room.saturating_add(stock.kerf).checked_div(run.saturating_add(stock.kerf)).unwrap_or(0).max(0);
        for band in self.bands.iter_mut().filter(|band| thick <= band.size) {
            let many = fits(room.saturating_sub(band.filled(stock, (kind, rip)))).min(left);
            if 0 < many {
                band.pieces.push(Pieces { many, ..pieces });
                left = left.saturating_sub(many);
            }
        }
        let size = if rip { thick } else { thick.max(stock.rip_min) };
        let taken = |size: i64| if rip { kind.across(size) } else { size };
        let mut used = self.bands.iter().fold(0_i64, |sum, band| sum.saturating_add(taken(band.size)).saturating_add(stock.kerf));
        let new = if rip { beside } else { size };
        while 0 < left && used.saturating_add(new) <= across && 0 < fits(room) {
            let many = fits(room).min(left);
            self.bands.push(Band { size, pieces: vec![Pieces { many, ..pieces }] });
            (left, used) = (left.saturating_sub(many), used.saturating_add(new).saturating_add(stock.kerf));
        }
    }

    /// Takes no more of the length than the pieces need, where the rest is worth keeping.
    fn shorten(&mut self, stock: &Stock) {
        let Some(kind) = stock.kinds.get(self.kind) else { return };
        let needed = match self.first {
            First::Rip => self.bands.iter().map(|band| band.length(stock)).max().unwrap_or(0).max(stock.rip_min),
            First::Cross => self
                .bands
                .iter()
                .fold(0_i64, |sum, band| sum.saturating_add(band.size).saturating_add(stock.kerf))
                .saturating_sub(stock.kerf),
        };
        let least = needed.max(stock.plane_min).max(1);
        self.stretch = if 0 < stock.rest(kind, least) { least } else { kind.long };
    }

    pub(super) fn cost(&self, stock: &Stock) -> i64 {
        stock.kinds.get(self.kind).map_or(0, |kind: &Kind| stock.cost(kind, self.stretch))
    }
}

impl Band {
    /// Along the grain, from the first piece to the last.
    fn length(&self, stock: &Stock) -> i64 {
        let long = |piece: &Pieces| stock.parts.get(piece.part).map_or(0, |part| part.long.saturating_add(stock.kerf));
        self.pieces.iter().fold(0_i64, |sum, piece| sum.saturating_add(long(piece).saturating_mul(piece.many))).saturating_sub(stock.kerf)
    }

    /// From the first piece to where another may begin: along the grain, or across it.
    fn filled(&self, stock: &Stock, (kind, along): (&Kind, bool)) -> i64 {
        if along {
            return self.length(stock).saturating_add(stock.kerf);
        }
        let run = |piece: &Pieces| kind.across(piece.wide).saturating_add(stock.kerf).saturating_mul(piece.many);
        self.pieces.iter().fold(0_i64, |sum, piece| sum.saturating_add(run(piece)))
    }

    /// No larger than its pieces need.
    fn shrink(&mut self, stock: &Stock, first: First) {
        self.size = match first {
            First::Rip => self.pieces.iter().map(|piece| piece.wide).max().unwrap_or(0),
            First::Cross => {
                let long = |piece: &Pieces| stock.parts.get(piece.part).map_or(0, |part| part.long);
                self.pieces.iter().map(long).max().unwrap_or(0).max(stock.rip_min)
            }
        };
    }
}

fn row_of(stock: &Stock, strips: &[Strip], piece: &Pieces) -> Option<usize> {
    let own = |strip: &Strip| strip.part == piece.part && strip.wide == piece.wide;
    Some(strips.iter().position(own)?.saturating_add(stock.parts.len()))
}
