//! Rows whose strips may be cut on purpose: row by row from what is left of strips begun and from whole ones, then some rows anew.

use super::course::clashes;
use super::dive::part;
use super::stock::Stock;
use super::written::Laid;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Strip {
    pub kind: u8,
    /// How long a further piece may be.
    pub room: f64,
    pub pieces: u32,
}

/// Pieces from the left: the strip each is cut from, and its length.
pub(super) type Row = Vec<(usize, f64)>;

#[derive(Clone)]
pub(super) struct Cutting<'a> {
    pub stock: &'a Stock,
    pub rows: Vec<Row>,
    pub strips: Vec<Strip>,
    pub left: Vec<u32>,
}

/// Where the next piece could come from.
#[derive(Clone, Copy)]
pub(super) enum Source {
    Begun(usize),
    New(u8),
}

/// What the row that is being cut needs next, and the joints it must keep clear of.
struct Next<'a> {
    at: f64,
    lacks: f64,
    near: &'a [f64],
    greed: f64,
    best: (f64, Option<(Source, f64)>),
}

const TRIES: u32 = 24;

impl<'a> Cutting<'a> {
    pub(super) fn new(stock: &'a Stock) -> Cutting<'a> {
        Cutting { stock, rows: vec![], strips: vec![], left: stock.counts() }
    }

    /// What is laid already, its strips as they are cut there.
    pub(super) fn of(stock: &'a Stock, laid: &Laid) -> Cutting<'a> {
        let mut cutting = Cutting::new(stock);
        for kind in &laid.strips {
            let room = stock.long(*kind);
            cutting.strips.push(Strip { kind: *kind, room, pieces: 0 });
            if let Some(left) = cutting.left.get_mut(usize::from(*kind)) {
                *left = left.saturating_sub(1);
            }
        }
        laid.rows.iter().flatten().for_each(|(strip, length)| cutting.cut(*strip, *length));
        cutting.rows.clone_from(&laid.rows);
        cutting
    }

    /// Rows missing, lost length, squares: less is better.
    pub(super) fn rank(&self) -> (f64, f64, f64) {
        let mut sum = (-(self.rows.len() as f64), -(self.rows.len() as f64) * self.stock.panel, 0.0);
        for strip in self.strips.iter().filter(|strip| 0 < strip.pieces) {
            let (low, rest) = (self.stock.kind(strip.kind).low, self.stock.returned(strip.room + self.stock.kerf));
            sum.1 += low - rest;
            sum.2 += low * low - rest * rest;
        }
        sum
    }

    pub(super) fn laid(&self) -> Laid {
        let mut places = vec![0_usize; self.strips.len()];
        let mut laid = Laid { rows: self.rows.clone(), strips: vec![] };
        for (strip, place) in self.strips.iter().zip(&mut places).filter(|(strip, _)| 0 < strip.pieces) {
            *place = laid.strips.len();
            laid.strips.push(strip.kind);
        }
        laid.rows.iter_mut().flatten().for_each(|(strip, _)| *strip = places.get(*strip).copied().unwrap_or(0));
        laid
    }

    /// A strip taken from the pile.
    pub(super) fn begun(&mut self, kind: u8) -> usize {
        if let Some(left) = self.left.get_mut(usize::from(kind)) {
            *left = left.saturating_sub(1);
        }
        let strip = Strip { kind, room: self.stock.long(kind), pieces: 0 };
        match self.strips.iter().position(|strip| strip.pieces == 0) {
            Some(place) => {
                self.set(place, |own| *own = strip);
                place
            }
            None => {
                self.strips.push(strip);
                self.strips.len().saturating_sub(1)
            }
        }
    }

    fn set(&mut self, strip: usize, change: impl FnOnce(&mut Strip)) {
        if let Some(own) = self.strips.get_mut(strip) {
            change(own);
        }
    }

    pub(super) fn cut(&mut self, strip: usize, length: f64) {
        let kerf = self.stock.kerf;
        self.set(strip, |own| {
            own.pieces = own.pieces.saturating_add(1);
            own.room -= length + kerf;
        });
    }

    /// Puts a piece back where it was cut; a strip that is whole again goes back to its pile.
    pub(super) fn mend(&mut self, (strip, length): (usize, f64)) {
        let kerf = self.stock.kerf;
        let mut whole = None;
        self.set(strip, |own| {
            own.pieces = own.pieces.saturating_sub(1);
            own.room += length + kerf;
            whole = (own.pieces == 0).then_some(own.kind);
        });
        if let Some(left) = whole.and_then(|kind| self.left.get_mut(usize::from(kind))) {
            *left = left.saturating_add(1);
        }
    }

    fn joints(&self, nth: Option<usize>, into: &mut Vec<f64>) {
        let Some(row) = nth.and_then(|nth| self.rows.get(nth)) else { return };
        let mut at = 0.0;
        let inner = row.len().saturating_sub(1);
        into.extend(row.iter().take(inner).map(|(_, length)| {
            at += length;
            at
        }));
    }

    /// A row that keeps clear of `near`, its pieces cut; nothing is cut where none is found.
    fn row(&mut self, near: &[f64], draw: &mut Draw, patience: &mut Patience<'_>) -> Option<Row> {
        let greed = part(draw);
        for _ in 0..TRIES {
            let mut row: Row = vec![];
            let mut at = 0.0;
            while at < self.stock.panel {
                let Some((source, length)) = self.next(at, near, greed, draw) else { break };
                let strip = match source {
                    Source::Begun(strip) => strip,
                    Source::New(kind) => self.begun(kind),
                };
                self.cut(strip, length);
                row.push((strip, length));
                at += length;
            }
            if !patience.spend(1) || at == self.stock.panel {
                if at == self.stock.panel {
                    return Some(row);
                }
                row.into_iter().for_each(|piece| self.mend(piece));
                return None;
            }
            row.into_iter().for_each(|piece| self.mend(piece));
        }
        None
    }

    /// The piece that tastes best.
    fn next(&self, at: f64, near: &[f64], greed: f64, draw: &mut Draw) -> Option<(Source, f64)> {
        let mut next = Next { at, lacks: self.stock.panel - at, near, greed, best: (f64::MIN, None) };
        for (place, strip) in self.strips.iter().enumerate() {
            if 0 < strip.pieces && self.stock.least <= strip.room {
                self.lengths(&mut next, Source::Begun(place), strip.room, draw);
            }
        }
        for (kind, left) in (0_u8..).zip(&self.left) {
            if 0 < *left {
                self.lengths(&mut next, Source::New(kind), self.stock.long(kind), draw);
            }
        }
        next.best.1
    }

    fn lengths(&self, next: &mut Next<'_>, source: Source, room: f64, draw: &mut Draw) {
        let stock = self.stock;
        let kept = room - stock.kerf - stock.keep;
        let any = stock.least + (part(draw) * (room - stock.least + 1.0)).floor();
        let chance = if draw.below(4) == 0 { any } else { 0.0 };
        let meets = next.lacks - self.end_of_row(draw);
        for length in [room, next.lacks, kept, chance, meets] {
            if room < length || length < stock.least || !self.fits(next, length) {
                continue;
            }
            let taste = self.taste(next, source, room - length, draw);
            if next.best.0 < taste {
                next.best = (taste, Some((source, length)));
            }
        }
    }

    /// How long a row could go on with all of some strips: one that is begun, a new one, or both.
    fn end_of_row(&self, draw: &mut Draw) -> f64 {
        let begun = self.strips.get(draw.below(self.strips.len())).filter(|strip| 0 < strip.pieces && self.stock.least <= strip.room);
        let begun = begun.map_or(0.0, |strip| strip.room);
        let new = self.stock.kinds.get(draw.below(self.stock.kinds.len())).map_or(0.0, |kind| kind.long);
        if begun == 0.0 || draw.below(3) == 0 { begun + new } else { begun }
    }

    fn fits(&self, next: &Next<'_>, length: f64) -> bool {
        let stock = self.stock;
        if next.lacks < length || (length < stock.end && (next.at == 0.0 || length == next.lacks)) {
            return false;
        }
        length == next.lacks || (stock.end <= next.lacks - length && clashes(&[next.at + length], next.near, stock.stagger) == 0)
    }

    /// How good a piece is, by what it leaves of its strip; with some chance.
    fn taste(&self, next: &Next<'_>, source: Source, left: f64, draw: &mut Draw) -> f64 {
        let stock = self.stock;
        let tidy = match left {
            0.0 => 1.0,
            left if left <= stock.kerf => 0.9,
            left if left - stock.kerf < stock.least => -0.8,
            _ => 0.0,
        };
        let begun = if matches!(source, Source::Begun(_)) { 0.8 } else { 0.0 };
        let kept = if 0.0 < stock.returned(left) { 0.5 * part(draw) } else { 0.0 };
        tidy + begun + kept + part(draw) * (0.3 + next.greed)
    }

    /// One row more, somewhere; whether it could be laid.
    pub(super) fn grow(&mut self, draw: &mut Draw, patience: &mut Patience<'_>) -> bool {
        let place = if draw.below(2) == 0 { self.rows.len() } else { draw.below(self.rows.len().saturating_add(1)) };
        let mut near = vec![];
        self.joints(place.checked_sub(1), &mut near);
        self.joints(Some(place), &mut near);
        let row = self.row(&near, draw, patience);
        row.map(|row| self.rows.insert(place, row)).is_some()
    }

    /// Some rows laid anew in their places; `None` where one can't be.
    pub(super) fn renewed(&self, draw: &mut Draw, patience: &mut Patience<'_>) -> Option<Cutting<'a>> {
        let mut other = self.clone();
        let many = draw.below(4).saturating_add(1).min(self.rows.len());
        let from = draw.below(self.rows.len());
        let apart = draw.below(2) == 0;
        let mut places: Vec<usize> = vec![];
        for step in 0..many {
            let place = if apart { draw.below(self.rows.len()) } else { from.saturating_add(step).checked_rem(self.rows.len())? };
            let row = other.rows.get_mut(place).map(std::mem::take)?;
            row.into_iter().for_each(|piece| other.mend(piece));
            if !places.contains(&place) {
                places.push(place);
            }
        }
        for place in places {
            let mut near = vec![];
            other.joints(place.checked_sub(1), &mut near);
            other.joints(place.checked_add(1), &mut near);
            let row = other.row(&near, draw, patience)?;
            *other.rows.get_mut(place)? = row;
        }
        Some(other)
    }
}
