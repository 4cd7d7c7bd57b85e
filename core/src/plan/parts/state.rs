//! A plan on its way: which columns are taken how often, what is still wanted, what boards are left.

use super::pool::{Column, How, Pool};
use super::relax::Shop;

#[derive(Clone, Debug, Default)]
pub(super) struct State {
    /// Columns by their place in the pool, and how often.
    pub taken: Vec<(usize, i64)>,
    /// Of each row: how many are wanted yet; below nothing where there are too many.
    pub left: Vec<i64>,
    /// Of each kind: how many boards are left.
    pub boards: Vec<i64>,
}

impl State {
    pub(super) fn empty(shop: &Shop<'_>, sets: i64) -> State {
        let left = shop.set().iter().map(|each| each.saturating_mul(sets)).collect();
        State { taken: vec![], left, boards: shop.stock.kinds.iter().map(|kind| kind.count).collect() }
    }

    /// Takes a column so many times more; less than nothing: puts it back.
    pub(super) fn take(&mut self, nth: usize, column: &Column, times: i64) {
        for (left, made) in self.left.iter_mut().zip(&column.made) {
            *left = left.saturating_sub(made.saturating_mul(times));
        }
        if let Some(boards) = column.kind().and_then(|kind| self.boards.get_mut(kind)) {
            *boards = boards.saturating_sub(times);
        }
        match self.taken.iter_mut().find(|(own, _)| *own == nth) {
            Some((_, own)) => *own = own.saturating_add(times),
            None => self.taken.push((nth, times)),
        }
        self.taken.retain(|(_, times)| *times != 0);
    }

    pub(super) fn is_complete(&self) -> bool {
        self.left.iter().all(|left| *left <= 0)
    }

    /// What the boards cost.
    pub(super) fn wood(&self, pool: &Pool) -> i64 {
        let cost = |(nth, times): &(usize, i64)| pool.get(*nth).map_or(0, |column| column.cost).saturating_mul(*times);
        self.taken.iter().fold(0_i64, |sum, taken| sum.saturating_add(cost(taken)))
    }

    /// And what is lacking.
    pub(super) fn cost(&self, pool: &Pool, lack: &[i64]) -> i64 {
        let lacking = self.left.iter().zip(lack).map(|(left, lack)| (*left).max(0).saturating_mul(*lack));
        lacking.fold(self.wood(pool), i64::saturating_add)
    }

    /// Takes out what is too much: boards that nothing needs, and lengths that may go back to the rack.
    pub(super) fn trim(&mut self, shop: &Shop<'_>, pool: &mut Pool) {
        let before = self.taken.clone();
        for (nth, times) in before {
            for _ in 0..times.min(self.most_over()) {
                let Some(column) = pool.get(nth).cloned() else { break };
                let How::Cut(cut) = &column.how else {
                    if column.made.iter().zip(&self.left).any(|(made, left)| 0 < *made && *left < 0) {
                        self.take(nth, &column, -1);
                        continue;
                    }
                    break;
                };
                let over: Vec<i64> = self.left.iter().map(|left| left.saturating_neg().max(0)).collect();
                if !column.made.iter().zip(&over).any(|(made, over)| 0 < *made && 0 < *over) {
                    break;
                }
                let less = shop.column(cut.without(shop.stock, &shop.saw.strips, &over));
                let is_empty = less.made.iter().all(|made| *made == 0);
                if !is_empty && column.cost <= less.cost {
                    break;
                }
                self.take(nth, &column, -1);
                if !is_empty {
                    let place = pool.place(less.clone());
                    self.take(place, &less, 1);
                }
            }
        }
    }

    /// The same boards with nothing cut that no part needs: what the search keeps for another use stays part of its board.
    pub(super) fn spared(&self, shop: &Shop<'_>, pool: &mut Pool) -> State {
        let mut state = self.clone();
        let (glued, cut): (Vec<_>, Vec<_>) = self.taken.iter().copied().partition(|(nth, _)| is_glue(pool, *nth));
        glued.into_iter().chain(cut).for_each(|taken| state.spare(shop, pool, taken));
        state
    }

    /// Of a column that is taken so many times, what is too much.
    fn spare(&mut self, shop: &Shop<'_>, pool: &mut Pool, (nth, times): (usize, i64)) {
        let Some(column) = pool.get(nth).cloned() else { return };
        for _ in 0..times.min(self.most_over()) {
            let over: Vec<i64> = self.left.iter().map(|left| left.saturating_neg().max(0)).collect();
            if !column.made.iter().zip(&over).any(|(made, over)| 0 < *made && 0 < *over) {
                return;
            }
            self.take(nth, &column, -1);
            let How::Cut(cut) = &column.how else { continue };
            let less = shop.column(cut.without(shop.stock, &shop.saw.strips, &over));
            if less.made.iter().any(|made| 0 < *made) {
                let place = pool.place(less.clone());
                self.take(place, &less, 1);
            }
        }
    }

    /// A part whose strips are lacking is lacking itself: of all those that are glued up the one with the most of them first, so that as few
    /// as can be are.
    pub(super) fn unglue(&mut self, shop: &Shop<'_>, pool: &Pool) {
        let parts = shop.stock.parts.len();
        let lacking = |state: &State, column: &Column| {
            let of_row = |(left, made): (&i64, &i64)| (*left).max(0).min(made.saturating_neg().max(0));
            state.left.iter().zip(&column.made).skip(parts).map(of_row).fold(0, i64::saturating_add)
        };
        loop {
            let all = self.taken.iter().filter_map(|(nth, _)| Some((*nth, pool.get(*nth)?)));
            let most = all.map(|(nth, column)| (lacking(self, column), nth, column)).rev().max_by_key(|(n, ..)| *n);
            let Some((_, nth, column)) = most.filter(|(n, ..)| 0 < *n) else { return };
            self.take(nth, column, -1);
        }
    }

    fn most_over(&self) -> i64 {
        self.left.iter().fold(0_i64, |most, left| most.max(left.saturating_neg()))
    }
}

fn is_glue(pool: &Pool, nth: usize) -> bool {
    pool.get(nth).is_some_and(|column| matches!(column.how, How::Glue(_)))
}
