//! Rows from chains of cuts: what is left of a strip ends or begins another row, so that nothing but kerfs is lost. Where the joints come is seen to afterwards.

use super::cutting::{Cutting, Row, Source};
use super::dive::part;
use crate::plan::draw::Draw;

/// A strip, or what is left of one, and how long a piece it gives.
type Rod = (Source, f64);

/// How a row could end: a piece, and one before it.
#[derive(Clone, Copy)]
struct Ending {
    cost: f64,
    pieces: [Option<Rod>; 2],
}

/// What the ending of a row is looked for with.
struct Taste {
    lacks: f64,
    /// How much length it is worth to leave no strip begun.
    close: f64,
    noise: f64,
    best: Ending,
}

impl Cutting<'_> {
    /// Some rows given up and cut anew wherever their joints come; `None` where one doesn't come out.
    pub(super) fn rechained(&self, draw: &mut Draw) -> Option<Self> {
        let mut other = self.clone();
        let most = if draw.below(2) == 0 { 4 } else { self.rows.len() };
        let many = draw.below(most).saturating_add(1).min(self.rows.len());
        for _ in 0..many {
            let row = other.rows.swap_remove(draw.below(other.rows.len()));
            row.into_iter().for_each(|piece| other.mend(piece));
        }
        (0..many).all(|_| other.chain(draw)).then_some(other)
    }

    /// One row more, wherever its joints come.
    pub(super) fn chain(&mut self, draw: &mut Draw) -> bool {
        (0..4).any(|_| self.chained(draw))
    }

    fn chained(&mut self, draw: &mut Draw) -> bool {
        let mut row: Row = vec![];
        let mut lacks = self.stock.panel;
        let longest = self.stock.kinds.first().map_or(0.0, |kind| kind.long);
        let few = longest * (1.0 + part(draw));
        while few < lacks {
            let fits = |rod: &Rod| self.stock.least <= lacks - rod.1;
            let Some(rod) = (0..3).find_map(|_| self.any(draw).filter(fits)) else { break };
            lacks -= rod.1;
            self.put(rod, &mut row);
        }
        let rods = self.ending(lacks, draw);
        rods.into_iter().flatten().for_each(|rod| self.put(rod, &mut row));
        let ends = row.iter().filter(|(_, length)| self.stock.end <= *length).count();
        let sum: f64 = row.iter().map(|(_, length)| length).sum();
        let is_row = sum == self.stock.panel && row.len().min(2) <= ends;
        match is_row {
            true => self.rows.push(row),
            false => row.into_iter().for_each(|piece| self.mend(piece)),
        }
        is_row
    }

    fn put(&mut self, (source, length): Rod, row: &mut Row) {
        let strip = match source {
            Source::Begun(strip) => strip,
            Source::New(kind) => self.begun(kind),
        };
        self.cut(strip, length);
        row.push((strip, length));
    }

    /// All that is left of a strip that is begun, or a new one, rather a long one.
    fn any(&self, draw: &mut Draw) -> Option<Rod> {
        let begun: Vec<Rod> = self.begun_rods().collect();
        if !begun.is_empty() && draw.below(3) != 0 {
            return begun.get(draw.below(begun.len())).copied();
        }
        let kinds = self.left.len();
        let kind = draw.below(kinds).min(draw.below(kinds));
        let there = self.left.get(kind).is_some_and(|left| 0 < *left);
        let kind = u8::try_from(kind).ok().filter(|_| there)?;
        Some((Source::New(kind), self.stock.long(kind)))
    }

    fn begun_rods(&self) -> impl Iterator<Item = Rod> + '_ {
        let open = self.strips.iter().enumerate().filter(|(_, strip)| 0 < strip.pieces && self.stock.least <= strip.room);
        open.map(|(nth, strip)| (Source::Begun(nth), strip.room))
    }

    fn new_rods(&self) -> impl Iterator<Item = Rod> + '_ {
        let kinds = (0_u8..).zip(&self.left).filter(|(_, left)| 0 < **left);
        kinds.map(|(kind, _)| (Source::New(kind), self.stock.long(kind)))
    }

    /// The piece or two that end a row at the least cost, with some chance.
    fn ending(&self, lacks: f64, draw: &mut Draw) -> [Option<Rod>; 2] {
        let rods: Vec<Rod> = self.begun_rods().chain(self.new_rods()).collect();
        let kerf = self.stock.kerf.max(1.0);
        let best = Ending { cost: f64::MAX, pieces: [None, None] };
        let mut taste = Taste { lacks, close: kerf * 3.0 * part(draw), noise: kerf * part(draw), best };
        for rod in &rods {
            self.try_ending(&mut taste, [None, Some((*rod, lacks))], draw);
        }
        for (nth, one) in rods.iter().enumerate() {
            for (mth, other) in rods.iter().enumerate() {
                let again = matches!(one.0, Source::New(kind) if 1 < self.left.get(usize::from(kind)).copied().unwrap_or(0));
                if nth == mth && !again {
                    continue;
                }
                self.try_ending(&mut taste, [Some((*one, one.1)), Some((*other, lacks - one.1))], draw);
                if draw.below(8) == 0 {
                    let span = one.1.min(lacks - self.stock.least) - self.stock.least;
                    let any = self.stock.least + (part(draw) * (span + 1.0)).floor();
                    self.try_ending(&mut taste, [Some((*one, any)), Some((*other, lacks - any))], draw);
                }
            }
        }
        taste.best.pieces
    }

    fn try_ending(&self, taste: &mut Taste, pieces: [Option<(Rod, f64)>; 2], draw: &mut Draw) {
        let mut cost = taste.noise * part(draw);
        for ((source, room), length) in pieces.into_iter().flatten() {
            if length < self.stock.least || room < length {
                return;
            }
            cost += self.cost(source, room - length, taste.close);
        }
        if cost < taste.best.cost && 0.0 < taste.lacks {
            let pieces = pieces.map(|piece| piece.map(|((source, _), length)| (source, length)));
            taste.best = Ending { cost, pieces };
        }
    }

    /// What a piece costs that leaves so much of its strip.
    fn cost(&self, source: Source, left: f64, close: f64) -> f64 {
        let stock = self.stock;
        let cut = match left {
            0.0 => 0.0,
            left if left - stock.kerf < stock.least && stock.returned(left) == 0.0 => left,
            _ => stock.kerf + close,
        };
        match source {
            Source::Begun(_) => cut - close,
            Source::New(kind) => {
                let longest = stock.kinds.first().map_or(1.0, |kind| kind.long);
                cut + 2.0 * stock.square * (1.0 - stock.long(kind) / longest)
            }
        }
    }
}
