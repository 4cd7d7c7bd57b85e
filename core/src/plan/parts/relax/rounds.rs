//! The rounds of a linear programme: solved, looked at with its prices, grown by what gains at them.

use super::{Relaxed, Shop, Tariff, Wanted};
use crate::plan::lp::Lp;
use crate::plan::parts::pool::{Column, Pool};
use crate::plan::patience::Patience;
use crate::plan::price;

/// How much of the last good prices is in the next: it keeps them from swinging (Wentges 1997, recalled).
const SMOOTH: f64 = 0.6;
/// What may not be lacking at all costs so many boards.
const NEVER: f64 = 1e5;
/// Whole prices are no larger.
const PRICE_MOST: f64 = 1e12;

pub(super) struct Rounds<'a> {
    shop: &'a Shop<'a>,
    wanted: &'a Wanted,
    pub lp: Lp,
    /// Columns of the programme by their place in the pool.
    pub placed: Vec<usize>,
    /// So many columns of the pool were looked at.
    met: usize,
    /// The kinds of which some boards must be used.
    forced: Vec<usize>,
    /// What the dearest board costs: a unit of the programme.
    dear: f64,
    center: Vec<f64>,
    relaxed: Relaxed,
}

impl<'a> Rounds<'a> {
    pub(super) fn new(shop: &'a Shop<'a>, wanted: &'a Wanted) -> Rounds<'a> {
        let kinds = shop.stock.kinds.len();
        let dear = shop.stock.kinds.iter().map(|kind| kind.low.saturating_mul(kind.rate)).max().unwrap_or(1).max(1) as f64;
        let mut right: Vec<f64> = wanted.rows.iter().map(|n| -(*n as f64)).collect();
        right.extend(wanted.most.iter().map(|n| *n as f64));
        let least = |kind: usize| wanted.least.get(kind).copied().unwrap_or(0);
        let forced: Vec<usize> = (0..kinds).filter(|kind| 0 < least(*kind)).collect();
        right.extend(forced.iter().map(|kind| -(least(*kind) as f64)));
        let mut lack: Vec<f64> = wanted.lack.iter().map(|lack| *lack as f64 / dear).collect();
        lack.resize(right.len(), NEVER);
        let center = wanted.near.iter().map(|price| price / dear).collect();
        let relaxed = Relaxed { least: i64::MIN, ..Relaxed::default() };
        Rounds { shop, wanted, lp: Lp::new(&right, &lack), placed: vec![], met: 0, forced, dear, center, relaxed }
    }

    /// Puts the new columns of the pool into the programme.
    pub(super) fn place(&mut self, pool: &Pool) {
        let behind = self.shop.rows().saturating_add(self.shop.stock.kinds.len());
        for (nth, column) in pool.columns.iter().enumerate().skip(self.met).filter(|(_, column)| self.wanted.admits(column)) {
            let mut cells = self.shop.cells(column);
            if let Some(place) = column.kind().and_then(|kind| self.forced.iter().position(|own| *own == kind)) {
                cells.push((behind.saturating_add(place), -1.0));
            }
            self.lp.add(-(column.cost as f64) / self.dear, &cells);
            self.placed.push(nth);
        }
        self.met = pool.columns.len();
    }

    /// Looks for what gains at the prices; whether there may be more.
    pub(super) fn look(&mut self, pool: &mut Pool, patience: &mut Patience<'_>) -> bool {
        let prices = self.lp.prices();
        let sharp = prices.get(..self.shop.rows()).unwrap_or(&[]);
        let mix = |(sharp, center): (&f64, &f64)| sharp * (1.0 - SMOOTH) + center * SMOOTH;
        let smooth: Vec<f64> = if self.center.is_empty() { sharp.to_vec() } else { sharp.iter().zip(&self.center).map(mix).collect() };
        let one = self.shop.scale(&smooth).min(PRICE_MOST / smooth.iter().fold(1.0_f64, |most, price| most.max(*price)));
        let scale = ((one / self.dear) as i64).max(1);
        let mut tariff = Tariff { rows: price::whole(&smooth, scale as f64 * self.dear), scale };
        let (most, columns) = self.shop.look(&mut tariff, patience);
        // where prices had to be too coarse to fit, nothing is proven
        let least = if one < self.dear { i64::MIN } else { self.shop.least(self.wanted, &tariff, &most) };
        if self.relaxed.least < least {
            (self.relaxed.least, self.center) = (least, smooth);
        }
        self.note(&prices);
        let mut grew = false;
        for column in columns {
            grew |= self.gains(&column) && pool.add(column);
        }
        // smoothed prices may miss what gains: once more with sharp ones
        let gap = self.relaxed.least as f64 + self.lp.worth() * self.dear;
        if !grew && !self.center.is_empty() && gap < -1e-6 * self.dear {
            self.center.clear();
            return true;
        }
        grew
    }

    fn gains(&self, column: &Column) -> bool {
        let paid = column.kind().and_then(|kind| self.relaxed.kinds.get(kind)).copied().unwrap_or(0.0);
        let worth: f64 = column.made.iter().zip(&self.relaxed.rows).map(|(made, price)| *made as f64 * price).sum();
        paid + column.cost as f64 + self.dear * 1e-7 < worth
    }

    /// Keeps the prices in units of cost.
    fn note(&mut self, prices: &[f64]) {
        let (rows, kinds) = (self.shop.rows(), self.shop.stock.kinds.len());
        let at = |place: usize| prices.get(place).copied().unwrap_or(0.0);
        let forced = |kind: usize| {
            let place = self.forced.iter().position(|own| *own == kind);
            place.map_or(0.0, |place| at(rows.saturating_add(kinds).saturating_add(place)))
        };
        self.relaxed.rows = prices.iter().take(rows).map(|price| price * self.dear).collect();
        self.relaxed.kinds = (0..kinds).map(|kind| (at(rows.saturating_add(kind)) - forced(kind)) * self.dear).collect();
    }

    pub(super) fn relaxed(mut self) -> Relaxed {
        let taken = self.lp.taken().filter(|(_, level)| 1e-9 < *level);
        self.relaxed.levels = taken.filter_map(|(column, level)| Some((*self.placed.get(column)?, level))).collect();
        self.relaxed
    }
}
