//! How many tiles the cut pieces need: first fit decreasing, alike pieces at once.

use super::tally::Pieces;

/// What the pieces of one colour are cut from.
#[derive(Clone, Copy, Debug)]
pub(super) struct Source {
    /// Length of a tile, and what the blade takes.
    pub length: i64,
    pub kerf: i64,
    pub count: i64,
}

/// Tiles that are cut into, in the order in which they were begun: how much is free in each, and how many alike there are.
#[derive(Clone, Debug, Default)]
pub(super) struct Begun {
    tiles: Vec<(i64, i64)>,
    after: Vec<(i64, i64)>,
}

impl Source {
    /// The tiles that so many layers take at the least: whole ones, and the length of the rest. More columns or rows never take less.
    pub(super) fn at_least(&self, pieces: &Pieces, layers: i64) -> i64 {
        let cut = pieces.cuts.iter().fold(0_i64, |sum, (length, n)| sum.saturating_add(length.saturating_mul(*n)));
        let cut = cut.saturating_mul(layers);
        let tiles = cut.saturating_add(self.length).saturating_sub(1).div_euclid(self.length.max(1));
        pieces.whole.saturating_mul(layers).saturating_add(tiles)
    }

    /// The tiles that so many layers take.
    pub(super) fn taken(&self, pieces: &Pieces, layers: i64, begun: &mut Begun) -> i64 {
        begun.tiles.clear();
        for (length, n) in &pieces.cuts {
            begun.fit(self, *length, n.saturating_mul(layers));
        }
        let cut = begun.tiles.iter().fold(0_i64, |sum, (_, n)| sum.saturating_add(*n));
        pieces.whole.saturating_mul(layers).saturating_add(cut)
    }
}

impl Begun {
    /// Cuts pieces of one length, not longer than any before, from the first tiles that have room, and then from new ones.
    fn fit(&mut self, source: &Source, length: i64, n: i64) {
        let step = length.saturating_add(source.kerf);
        let mut left = n;
        self.after.clear();
        for (room, tiles) in std::mem::take(&mut self.tiles) {
            left = self.cut((room, tiles), step, left);
        }
        // In a new tile the first piece needs no kerf before it.
        let room = source.length.saturating_sub(length).saturating_add(step);
        self.cut((room, left), step, left);
        self.after.pop(); // those that nothing was cut from
        self.after.retain(|(_, tiles)| 0 < *tiles);
        std::mem::swap(&mut self.tiles, &mut self.after);
    }

    /// Cuts from tiles alike as many as there are still to cut; what is left to cut.
    fn cut(&mut self, (room, tiles): (i64, i64), step: i64, left: i64) -> i64 {
        let each = room.checked_div(step).unwrap_or(left);
        let full = left.checked_div(each).unwrap_or(0).min(tiles);
        let rest = left.saturating_sub(full.saturating_mul(each));
        let partly = i64::from(full < tiles && 0 < rest && 0 < each);
        self.after.push((room.saturating_sub(each.saturating_mul(step)), full));
        self.after.push((room.saturating_sub(rest.saturating_mul(step)), partly));
        self.after.push((room, tiles.saturating_sub(full).saturating_sub(partly)));
        if partly == 1 { 0 } else { rest }
    }
}
