//! What would be best if boards could be cut in fractions: a linear programme over cuts that come one after another.
//!
//! Its prices, made whole, prove a bound: whatever they are, no plan can pass it (`price`).

mod rounds;

use super::cut::Strip;
use super::pool::{Column, How, Pool, glued};
use super::saw::{Prices, Saw};
use super::stock::Stock;
use super::strips;
use crate::plan::lp::{End, Lp};
use crate::plan::patience::Patience;
use crate::plan::price::{self, Priced};
use rounds::Rounds;

/// What the programmes share: the saw, and how strips are looked at.
pub(super) struct Shop<'a> {
    pub stock: &'a Stock,
    pub saw: Saw<'a>,
    ways: Vec<strips::Way>,
    /// Strips have any width, and a glued part counts in width units: what bounds are proven with. Else only the widths of the saw's strips.
    pub free: bool,
}

/// Prices of all rows, and of a unit of cost.
#[derive(Clone, Debug, Default)]
pub(super) struct Tariff {
    pub rows: Vec<i64>,
    pub scale: i64,
}

/// What is wanted of each row, and how many boards of each kind may, and must, be used.
#[derive(Clone, Debug)]
pub(super) struct Wanted {
    pub rows: Vec<i64>,
    pub most: Vec<i64>,
    pub least: Vec<i64>,
    /// What lacking one of a row costs; nothing may be lacking where it is empty.
    pub lack: Vec<i64>,
    /// Prices to begin with, in cost, near which good ones are expected; or none.
    pub near: Vec<f64>,
    /// So many rounds at most.
    pub rounds: u32,
    /// Only columns that lose no more than this at those prices, boards at these prices by kind.
    pub gap: f64,
    pub kinds: Vec<f64>,
}

impl Wanted {
    /// Whether a column may be in a plan that is good enough.
    fn admits(&self, column: &Column) -> bool {
        if self.gap == f64::INFINITY {
            return true;
        }
        let worth: f64 = column.made.iter().zip(&self.near).map(|(made, price)| *made as f64 * price).sum();
        let board = column.kind().and_then(|kind| self.kinds.get(kind)).copied().unwrap_or(0.0);
        column.cost as f64 + board - worth <= self.gap
    }
}

#[derive(Clone, Debug, Default)]
pub(super) struct Relaxed {
    /// Columns by their place in the pool, and how often each is taken.
    pub levels: Vec<(usize, f64)>,
    /// By row, the worth of one, and by kind, the worth of a board more; in units of cost.
    pub rows: Vec<f64>,
    pub kinds: Vec<f64>,
    /// No plan costs less.
    pub least: i64,
}

const TURNS: u32 = 16;
pub(super) const ROUNDS: u32 = 300;
/// Worth in one board at most: within it every sum fits.
const WORTH_MOST: f64 = 1e15;

impl<'a> Shop<'a> {
    /// `None` where the widths are too many to try all sums of them.
    pub(super) fn new(stock: &'a Stock, strips: Vec<Strip>, free: bool) -> Option<Shop<'a>> {
        let ways = if free { vec![] } else { strips::ways(stock, &strips) };
        Some(Shop { stock, saw: Saw::new(stock, strips)?, ways, free })
    }

    pub(super) fn rows(&self) -> usize {
        self.stock.parts.len().saturating_add(if self.free { 0 } else { self.saw.strips.len() })
    }

    /// What a set takes of each row.
    pub(super) fn set(&self) -> Vec<i64> {
        let each = |part: &super::stock::Blank| if self.free && part.glue { part.each.saturating_mul(part.need) } else { part.each };
        let mut set: Vec<i64> = self.stock.parts.iter().map(each).collect();
        set.resize(self.rows(), 0);
        set
    }

    /// What lacking one of each row costs, by weight: a strip can't be lacking but by its part.
    pub(super) fn lack(&self, by: i64) -> Vec<i64> {
        let all = self.stock.parts.iter().map(|part| part.weight.saturating_mul(by));
        // A strip is worth its share of its part.
        let share = |strip: &Strip| {
            let part = self.stock.parts.get(strip.part)?;
            let units = self.stock.units(strip.wide).max(1);
            part.weight.saturating_mul(by).saturating_mul(units).checked_div(part.need.max(units))
        };
        all.chain(self.saw.strips.iter().map(|strip| share(strip).unwrap_or(by).max(1))).collect()
    }

    /// The best cut of each kind, and for glued parts the cheapest way to glue them: none is worth more than that.
    pub(super) fn look(&self, tariff: &mut Tariff, patience: &mut Patience<'_>) -> (Vec<i64>, Vec<Column>) {
        let middle = self.stock.parts.len().min(tariff.rows.len());
        let (parts, strips) = tariff.rows.split_at_mut(middle);
        let rates: Vec<i64> = if self.free { parts.to_vec() } else { vec![] };
        let prices = Prices { parts, strips, rates: &rates, scale: tariff.scale };
        let (mut most, mut columns) = (vec![], vec![]);
        for kind in 0..self.stock.kinds.len() {
            patience.spend(self.saw.effort(kind).checked_div(1000).unwrap_or(0).saturating_add(1));
            let Some(best) = self.saw.best(kind, &prices) else { continue };
            most.push(best.most);
            columns.push(self.column(best.cut));
        }
        if !self.free {
            for way in &self.ways {
                let need = self.stock.parts.get(way.part).map_or(0, |part| part.need);
                let Some((worth, strips)) = strips::cheapest(way, need, strips) else { continue };
                columns.push(glued(self.stock, self.rows(), way.part, strips));
                parts.iter_mut().skip(way.part).take(1).for_each(|price| *price = worth.min(*price));
            }
        }
        (most, columns)
    }

    pub(super) fn column(&self, cut: super::cut::Cut) -> Column {
        let strips = if self.free { None } else { Some(&*self.saw.strips) };
        Column { made: cut.made(self.stock, strips), cost: cut.cost(self.stock), how: How::Cut(cut) }
    }

    /// How large whole prices may be for one unit of a float's worth.
    fn scale(&self, prices: &[f64]) -> f64 {
        let mut most = 1.0_f64;
        for kind in &self.stock.kinds {
            let step = |size: i64| size.saturating_add(self.stock.kerf) as f64;
            for ((part, price), _) in self.stock.parts.iter().zip(prices).zip(&kind.may).filter(|(_, may)| **may) {
                let many = step(kind.long)
                    * if self.free && part.glue {
                        step(kind.wide)
                    } else {
                        step(kind.wide) / step(if part.glue { self.stock.strip_min } else { kind.across(part.wide) })
                    };
                most = most.max(many / step(part.long) * price);
            }
            let widest = prices.iter().skip(self.stock.parts.len()).fold(0.0_f64, |most, price| most.max(*price));
            most = most.max(step(kind.long) * step(kind.wide) * widest / step(self.stock.strip_min));
        }
        WORTH_MOST / most
    }

    /// As many sets as fractions give: the columns for it go to the pool; returns the most sets of any plan, and the prices that prove it.
    pub(super) fn most_sets(&self, pool: &mut Pool, patience: &mut Patience<'_>) -> (i64, Vec<i64>) {
        let (set, rows, kinds) = (self.set(), self.rows(), self.stock.kinds.len());
        let cap = self.stock.sets.unwrap_or(i64::MAX).min(1_000_000_000_000);
        let mut right = vec![0.0; rows];
        right.extend(self.stock.kinds.iter().map(|kind| kind.count as f64));
        right.push(cap as f64);
        let mut lp = Lp::new(&right, &vec![1e7; right.len()]);
        let cells: Vec<(usize, f64)> =
            set.iter().enumerate().map(|(row, n)| (row, *n as f64)).chain([(rows.saturating_add(kinds), 1.0)]).collect();
        lp.add(1.0, &cells);
        let (mut placed, mut bound, mut why) = (0, cap, vec![]);
        self.start(pool, patience);
        for _ in 0..ROUNDS {
            pool.columns.iter().skip(placed).for_each(|column| {
                lp.add(0.0, &self.cells(column));
            });
            placed = pool.columns.len();
            self.solved(&mut lp, placed, patience);
            let prices = lp.prices();
            let own = prices.get(..rows).unwrap_or(&[]);
            let mut tariff = Tariff {
                rows: price::whole(own, self.scale(own).min(1e12 / own.iter().fold(1.0_f64, |most, price| most.max(*price)))),
                scale: 0,
            };
            let (most, columns) = self.look(&mut tariff, patience);
            let worth = set
                .iter()
                .zip(&tariff.rows)
                .fold(0_i128, |sum, (n, price)| sum.saturating_add(i128::from(*n).saturating_mul(i128::from(*price))));
            let all: Vec<Priced> =
                self.stock.kinds.iter().zip(&most).map(|(kind, most)| Priced { count: kind.count, most: i128::from(*most) }).collect();
            if let Some(sets) = price::most_sets(&all, worth)
                .and_then(|sets| i64::try_from(sets).ok())
                .filter(|sets| (self.free || self.saw.strips.is_empty()) && *sets < bound)
            {
                (bound, why) = (sets, tariff.rows.clone());
            }
            let grew = columns.into_iter().fold(false, |grew, column| pool.add(column) | grew);
            if !grew || patience.is_over() || bound as f64 <= lp.worth() + 1e-7 {
                break;
            }
        }
        (bound, why)
    }

    /// No plan makes more sets than this, at whole prices of the rows.
    pub(super) fn most_at(&self, rows: Vec<i64>, patience: &mut Patience<'_>) -> Option<i64> {
        let mut tariff = Tariff { rows, scale: 0 };
        let most = self.look(&mut tariff, patience).0;
        let worth = |(n, price): (i64, &i64)| i128::from(n).saturating_mul(i128::from(*price));
        let worth = self.set().into_iter().zip(&tariff.rows).map(worth).fold(0_i128, i128::saturating_add);
        let all: Vec<Priced> =
            self.stock.kinds.iter().zip(&most).map(|(kind, most)| Priced { count: kind.count, most: i128::from(*most) }).collect();
        i64::try_from(price::most_sets(&all, worth)?).ok()
    }

    /// Ways to glue parts up, and boards ripped into strips alone.
    pub(super) fn begin(&self, pool: &mut Pool) {
        for (part, strips) in strips::starters(self.stock, &self.saw.strips) {
            pool.add(glued(self.stock, self.rows(), part, strips));
        }
        for cut in strips::ripped(self.stock, &self.saw.strips) {
            pool.add(self.column(cut));
        }
    }

    /// Each part alone as often as a board gives it, so that there is a start.
    fn start(&self, pool: &mut Pool, patience: &mut Patience<'_>) {
        for row in 0..self.rows() {
            let mut tariff = Tariff { rows: vec![0; self.rows()], scale: 0 };
            tariff.rows.iter_mut().skip(row).take(1).for_each(|price| *price = 1000);
            for column in self.look(&mut tariff, patience).1 {
                pool.add(column);
            }
        }
    }

    fn cells(&self, column: &Column) -> Vec<(usize, f64)> {
        let made = column.made.iter().enumerate().filter(|(_, made)| **made != 0).map(|(row, made)| (row, -(*made as f64)));
        made.chain(column.kind().map(|kind| (self.rows().saturating_add(kind), 1.0))).collect()
    }

    /// The least cost of what is wanted.
    pub(super) fn cheapest(&self, pool: &mut Pool, wanted: &Wanted, patience: &mut Patience<'_>) -> Relaxed {
        let mut round = Rounds::new(self, wanted);
        for _ in 0..=wanted.rounds {
            round.place(pool);
            self.solved(&mut round.lp, round.placed.len(), patience);
            if wanted.rounds == 0 || !round.look(pool, patience) || patience.is_over() {
                break;
            }
        }
        round.relaxed()
    }

    /// Solves a programme of so many columns a few turns at a time.
    fn solved(&self, lp: &mut Lp, columns: usize, patience: &mut Patience<'_>) {
        let rows = self.rows().saturating_add(self.stock.kinds.len());
        let sums = rows.saturating_mul(rows).saturating_add(columns.saturating_mul(6)).saturating_mul(TURNS as usize);
        while lp.solve(TURNS) == End::Stopped && patience.spend(sums.checked_div(2000).unwrap_or(0) as u64) {}
        patience.spend((sums.checked_div(4000).unwrap_or(0) as u64).saturating_add(1));
    }

    /// In whole numbers: no plan for what is wanted costs less, at any prices.
    fn least(&self, wanted: &Wanted, tariff: &Tariff, most: &[i64]) -> i64 {
        let wide = |one: &i64, other: &i64| i128::from(*one).saturating_mul(i128::from(*other));
        let worth = wanted.rows.iter().zip(&tariff.rows).fold(0_i128, |sum, (n, price)| sum.saturating_add(wide(n, price)));
        let gains = most.iter().zip(wanted.most.iter().zip(&wanted.least));
        let gains = gains.fold(0_i128, |sum, (gain, (most, least))| sum.saturating_add(wide(gain, most).max(wide(gain, least))));
        let over = worth.saturating_sub(gains);
        let scale = i128::from(tariff.scale.max(1));
        let least = over.div_euclid(scale).saturating_add(i128::from(over.rem_euclid(scale) != 0));
        i64::try_from(least).unwrap_or(i64::MIN)
    }
}
