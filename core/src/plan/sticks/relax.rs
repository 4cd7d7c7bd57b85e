//! What would be best if sticks could be cut in fractions: a linear programme over cuts that come one after another.
//!
//! Its prices, made whole, prove a bound: whatever they are, no plan can pass it (`price`).

use super::cutting::{Asked, Cut, Saw};
use crate::plan::lp::Lp;
use crate::plan::patience::Patience;
use crate::plan::price::{self, Priced};
use crate::quantity::Set;

/// How many pieces of each part are wanted, and how many sticks of each pile are there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Wanted {
    pub pieces: Vec<i64>,
    pub sticks: Vec<i64>,
}

impl Wanted {
    pub(super) fn is_met(&self) -> bool {
        self.pieces.iter().all(|n| *n <= 0)
    }

    /// How often a cut can be made and every piece of it be wanted.
    pub(super) fn times(&self, cut: &Cut) -> i64 {
        let there = self.sticks.get(cut.pile).copied().unwrap_or(0);
        cut.counts.iter().zip(&self.pieces).fold(there, |times, (n, wanted)| times.min(wanted.checked_div(*n).unwrap_or(times)))
    }

    /// After so many sticks were cut so; below nothing they come back.
    pub(super) fn cut(&mut self, cut: &Cut, times: i64) {
        for (wanted, n) in self.pieces.iter_mut().zip(&cut.counts) {
            *wanted = wanted.saturating_sub(n.saturating_mul(times));
        }
        if let Some(there) = self.sticks.get_mut(cut.pile) {
            *there = there.saturating_sub(times);
        }
    }
}

/// The cuts met so far, each once.
#[derive(Default)]
pub(super) struct Pool {
    pub cuts: Vec<Cut>,
    known: Set<Cut>,
}

impl Pool {
    /// Whether it is a new one.
    pub(super) fn add(&mut self, cut: Cut) -> bool {
        let new = self.known.insert(cut.clone());
        if new {
            self.cuts.push(cut);
        }
        new
    }
}

/// The best in fractions.
#[derive(Clone, Debug, Default)]
pub(super) struct Relaxed {
    /// Cuts by their place in the pool, and how often each is made.
    pub levels: Vec<(usize, f64)>,
    /// More than nothing: not even in fractions.
    pub lacking: f64,
    /// No plan costs less.
    pub least: i128,
    /// What proved it: whole prices of the parts, at which a unit of cost is `scale`.
    pub prices: Vec<i64>,
    pub scale: i64,
    /// What a stick of each pile is worth at these prices.
    pub most: Vec<i64>,
}

const TURNS: u32 = 20_000;
const ROUNDS: u32 = 300;

/// The least cost of what is wanted.
pub(super) fn cheapest(saw: &Saw<'_>, pool: &mut Pool, wanted: &Wanted, patience: &mut Patience<'_>) -> Relaxed {
    let dear = saw.dear();
    let scale = (1_i64 << 40).checked_div(dear).unwrap_or(1).max(1);
    let one = dear as f64 * scale as f64; // a price of 1 in the programme
    let mut lp = programme(saw, wanted);
    let (mut placed, mut met) = (vec![], 0_usize);
    let mut relaxed = Relaxed { scale, ..Relaxed::default() };
    for _ in 0..ROUNDS {
        for (place, cut) in pool.cuts.iter().enumerate().skip(met) {
            if 0 < wanted.times(cut) {
                lp.add(-(cut.cost as f64) / dear as f64, &cells(saw, cut));
                placed.push(place);
            }
        }
        met = pool.cuts.len();
        lp.solve(TURNS);
        patience.spend(1);
        let prices = lp.prices();
        let own = price::whole(prices.get(..saw.stock.parts.len()).unwrap_or_default(), one);
        let asked = Asked { prices: &own, limits: &wanted.pieces, scale };
        let found = saw.best(&asked, patience);
        let most = most(saw, &asked, &found, patience);
        relaxed.prove(most, wanted, own);
        let paid = prices.iter().skip(saw.stock.parts.len()).map(|paid| paid * one + scale as f64 / 256.0);
        let new = found.into_iter().zip(paid).filter_map(|(found, paid)| found.filter(|(value, _)| paid < *value as f64));
        let grew = new.fold(false, |grew, (_, cut)| pool.add(cut) || grew);
        if !grew || patience.is_over() {
            break;
        }
    }
    relaxed.lacking = lp.lacking();
    relaxed.levels = lp.taken().filter_map(|(column, level)| Some((*placed.get(column)?, level))).collect();
    relaxed
}

impl Relaxed {
    /// How much worse than the best in fractions a plan gets by this cut, a unit of cost being `scale`.
    pub(super) fn over(&self, cut: &Cut) -> i64 {
        let worth = cut.counts.iter().zip(&self.prices).fold(0_i64, |sum, (n, price)| sum.saturating_add(n.saturating_mul(*price)));
        let most = self.most.get(cut.pile).copied().unwrap_or(0);
        cut.cost.saturating_mul(self.scale).saturating_add(most).saturating_sub(worth)
    }

    fn prove(&mut self, most: Vec<i64>, wanted: &Wanted, prices: Vec<i64>) {
        let worth = prices.iter().zip(&wanted.pieces).map(|(price, n)| i128::from(*price).saturating_mul(i128::from(*n)));
        let piles = priced(&wanted.sticks, &most);
        let least = price::least_consumed(&piles, worth.fold(0, i128::saturating_add), i128::from(self.scale)).unwrap_or(0);
        if self.prices.is_empty() || self.least < least {
            (self.least, self.prices, self.most) = (least, prices, most);
        }
    }
}

fn priced(sticks: &[i64], most: &[i64]) -> Vec<Priced> {
    sticks.iter().zip(most).map(|(count, most)| Priced { count: *count, most: i128::from(*most) }).collect()
}

/// What no cut passes, for each pile: what was found, unless lengths were put together.
fn most(saw: &Saw<'_>, asked: &Asked<'_>, found: &[Option<(i64, Cut)>], patience: &mut Patience<'_>) -> Vec<i64> {
    if saw.is_exact() {
        found.iter().map(|found| found.as_ref().map_or(0, |(value, _)| *value)).collect()
    } else {
        saw.most(asked, patience)
    }
}

fn programme(saw: &Saw<'_>, wanted: &Wanted) -> Lp {
    let longest = saw.stock.parts.iter().map(|part| part.size).max().unwrap_or(1) as f64;
    let lack = saw.stock.parts.iter().map(|part| 100.0 * part.size as f64 / longest);
    let right = wanted.pieces.iter().map(|n| -(*n as f64)).chain(wanted.sticks.iter().map(|n| *n as f64));
    Lp::new(&right.collect::<Vec<_>>(), &lack.collect::<Vec<_>>())
}

/// What a cut gives of each part, and that it takes a stick.
pub(super) fn cells(saw: &Saw<'_>, cut: &Cut) -> Vec<(usize, f64)> {
    let parts = cut.counts.iter().enumerate().filter(|(_, n)| 0 < **n).map(|(part, n)| (part, -(*n as f64)));
    parts.chain([(saw.stock.parts.len().saturating_add(cut.pile), 1.0)]).collect()
}

/// No plan makes more sets, and the prices that prove it; cuts are met on the way.
pub(super) fn most_sets(saw: &Saw<'_>, pool: &mut Pool, patience: &mut Patience<'_>) -> (i64, Vec<i64>) {
    const ONE: f64 = 68_719_476_736.0; // 2^36
    let stock = saw.stock;
    let sticks: Vec<i64> = stock.piles.iter().map(|pile| pile.count).collect();
    let limits: Vec<i64> = stock.parts.iter().map(|part| part.each.saturating_mul(stock.sets)).collect();
    let mut lp = programme(saw, &Wanted { pieces: vec![0; limits.len()], sticks: sticks.clone() });
    let each = stock.parts.iter().enumerate().map(|(part, of)| (part, of.each as f64));
    lp.add(1.0, &each.collect::<Vec<_>>());
    let (mut best, mut by, mut met) = (i128::from(stock.sets), vec![], 0);
    for _ in 0..ROUNDS {
        for cut in pool.cuts.iter().skip(met) {
            lp.add(0.0, &cells(saw, cut));
        }
        met = pool.cuts.len();
        lp.solve(TURNS);
        let prices = lp.prices();
        let own = price::whole(prices.get(..stock.parts.len()).unwrap_or_default(), ONE);
        let asked = Asked { prices: &own, limits: &limits, scale: 0 };
        let found = saw.best(&asked, patience);
        let most = most(saw, &asked, &found, patience);
        if let Some(sets) = price::most_sets(&priced(&sticks, &most), set_price(saw, &own))
            && (sets < best || by.is_empty())
        {
            (best, by) = (sets.min(best), own);
        }
        let paid = prices.iter().skip(stock.parts.len()).map(|paid| paid * ONE + 64.0);
        let new = found.into_iter().zip(paid).filter_map(|(found, paid)| found.filter(|(value, _)| paid < *value as f64));
        let grew = new.fold(false, |grew, (_, cut)| pool.add(cut) || grew);
        if !grew || patience.is_over() {
            break;
        }
    }
    (i64::try_from(best).unwrap_or(stock.sets), by)
}

fn set_price(saw: &Saw<'_>, prices: &[i64]) -> i128 {
    let one = |(price, part): (&i64, &super::stock::Part)| i128::from(*price).saturating_mul(i128::from(part.each));
    prices.iter().zip(&saw.stock.parts).map(one).fold(0, i128::saturating_add)
}
