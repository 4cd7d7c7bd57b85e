//! Goes through all plans that cost less than the best known, by halves: so many sticks of a pile or fewer, a cut so often or more.
//!
//! The cuts are listed, so a bound needs no trust in floats: the prices of each half are made whole and every cut is looked at.
//! Land and Doig, "An automatic method of solving discrete programming problems", Econometrica 28, 1960 (recalled).

use super::cutting::{Cut, Saw};
use super::relax::{self, Wanted};
use crate::plan::lp::Lp;
use crate::plan::patience::Patience;
use crate::plan::price;

/// What still stands to be gone through.
#[derive(Clone)]
struct Half {
    wanted: Wanted,
    cost: i64,
    /// Cuts made for sure, by their place, and how often.
    made: Vec<(usize, i64)>,
    /// Cuts made at most so often beyond that.
    caps: Vec<(usize, i64)>,
    /// Sticks of a pile used at least, beyond that.
    least: Vec<(usize, i64)>,
    bound: i128,
    /// Cuts that were taken in the half it comes from.
    seeds: Vec<usize>,
}

/// A half in fractions.
struct Solved {
    levels: Vec<(usize, f64)>,
    bound: i128,
    /// Nothing in it can be done; proven.
    is_void: bool,
}

pub(super) struct Branch<'a> {
    saw: &'a Saw<'a>,
    cuts: &'a [Cut],
    cells: Vec<Vec<(usize, f64)>>,
    dear: i64,
    scale: i64,
    open: Vec<Half>,
    /// Only what costs less than this is looked for.
    pub under: i64,
    /// The best found, if any.
    pub best: Option<Vec<(usize, i64)>>,
    /// The least bound of what was left aside because a float said so.
    aside: i128,
}

impl<'a> Branch<'a> {
    pub(super) fn new(saw: &'a Saw<'a>, cuts: &'a [Cut], wanted: Wanted, under: i64) -> Branch<'a> {
        let dear = saw.dear();
        let scale = (1_i64 << 40).checked_div(dear).unwrap_or(1).max(1);
        let whole = Half { wanted, cost: 0, made: vec![], caps: vec![], least: vec![], bound: 0, seeds: vec![] };
        let cells = cuts.iter().map(|cut| relax::cells(saw, cut)).collect();
        Branch { saw, cuts, cells, dear, scale, open: vec![whole], under, best: None, aside: i128::MAX }
    }

    /// No plan of these cuts costs less, or what is looked for is not there.
    pub(super) fn bound(&self) -> i128 {
        self.open.iter().map(|half| half.bound).min().unwrap_or(i128::MAX).min(self.aside).min(i128::from(self.under))
    }

    /// Whether all is gone through.
    pub(super) fn is_done(&self) -> bool {
        self.open.is_empty()
    }

    /// Whether it is proven that there is nothing to be found.
    pub(super) fn is_void(&self) -> bool {
        self.is_done() && self.aside == i128::MAX && self.best.is_none()
    }

    /// Goes through halves until so many steps are spent.
    pub(super) fn go(&mut self, steps: u64, patience: &mut Patience<'_>) {
        let until = patience.steps().saturating_add(steps);
        while patience.steps() < until && !patience.is_over() {
            let Some(half) = self.open.pop() else { return };
            if half.bound < i128::from(self.under) {
                self.part(half, patience);
            }
        }
    }

    fn part(&mut self, half: Half, patience: &mut Patience<'_>) {
        let solved = self.solve(&half, patience);
        if solved.is_void || i128::from(self.under) <= solved.bound {
            return;
        }
        let half = Half { bound: solved.bound.max(half.bound), seeds: solved.levels.iter().map(|(cut, _)| *cut).collect(), ..half };
        match self.pile_in_fractions(&solved) {
            Some((pile, level)) => self.by_pile(half, pile, level),
            None => {
                match solved.levels.iter().filter(|(_, level)| is_fraction(*level)).max_by(|a, b| nearness(a.1).total_cmp(&nearness(b.1))) {
                    Some((cut, level)) => self.by_cut(half, *cut, *level),
                    None => self.whole(half, &solved),
                }
            }
        }
    }

    /// The pile whose sticks are used most nearly one half more than whole times.
    fn pile_in_fractions(&self, solved: &Solved) -> Option<(usize, f64)> {
        let mut used = vec![0.0; self.saw.stock.piles.len()];
        for (cut, level) in &solved.levels {
            if let Some(used) = self.cuts.get(*cut).and_then(|cut| used.get_mut(cut.pile)) {
                *used += level;
            }
        }
        let middle = |level: f64| (level.fract() - 0.5).abs();
        used.into_iter().enumerate().filter(|(_, level)| is_fraction(*level)).min_by(|a, b| middle(a.1).total_cmp(&middle(b.1)))
    }

    fn by_pile(&mut self, half: Half, pile: usize, level: f64) {
        let below = level.floor() as i64;
        let (mut more, mut fewer) = (half.clone(), half);
        more.least.retain(|(own, _)| *own != pile);
        more.least.push((pile, below.saturating_add(1)));
        fewer.wanted.sticks.iter_mut().skip(pile).take(1).for_each(|there| *there = below);
        self.open.extend(if 0.5 < level.fract() { [fewer, more] } else { [more, fewer] });
    }

    fn by_cut(&mut self, half: Half, cut: usize, level: f64) {
        let below = level.floor() as i64;
        let (mut more, mut fewer) = (half.clone(), half);
        fewer.caps.retain(|(own, _)| *own != cut);
        fewer.caps.push((cut, below));
        self.open.push(fewer);
        if self.make(&mut more, cut, below.saturating_add(1)) {
            self.open.push(more);
        }
    }

    /// Makes a cut for sure; whether it can be.
    fn make(&self, half: &mut Half, place: usize, times: i64) -> bool {
        let Some(cut) = self.cuts.get(place) else { return false };
        if half.wanted.times(cut) < times {
            return false;
        }
        half.wanted.cut(cut, times);
        half.cost = half.cost.saturating_add(cut.cost.saturating_mul(times));
        half.made.push((place, times));
        half.caps.iter_mut().filter(|(own, _)| *own == place).for_each(|(_, cap)| *cap = cap.saturating_sub(times));
        half.least.iter_mut().filter(|(pile, _)| *pile == cut.pile).for_each(|(_, least)| *least = least.saturating_sub(times).max(0));
        half.caps.iter().all(|(_, cap)| 0 <= *cap)
    }

    /// All levels are whole: a plan. That the half has no better one is proven as far as its bound goes.
    fn whole(&mut self, mut half: Half, solved: &Solved) {
        self.aside = self.aside.min(half.bound);
        for (cut, level) in &solved.levels {
            let times = level.round() as i64;
            if 0 < times && !self.make(&mut half, *cut, times) {
                return; // rounding misled
            }
        }
        if half.wanted.is_met() && half.cost < self.under {
            (self.under, self.best) = (half.cost, Some(half.made));
        }
    }

    fn solve(&self, half: &Half, patience: &mut Patience<'_>) -> Solved {
        let capped = |place: &usize| half.caps.iter().any(|(own, cap)| own == place && *cap <= 0);
        let fits = |cut: &Cut| cut.counts.iter().zip(&half.wanted.pieces).all(|(n, wanted)| n <= wanted);
        let fits: Vec<usize> =
            self.cuts.iter().enumerate().filter(|(_, cut)| fits(cut)).map(|(place, _)| place).filter(|p| !capped(p)).collect();
        let solved = self.in_fractions(half, &fits, self.scale, patience);
        if solved.is_void { self.in_fractions(half, &fits, 0, patience) } else { solved }
    }

    /// The half in fractions; with a scale of 0 cost is no matter, and it is only asked whether it can be done.
    fn in_fractions(&self, half: &Half, fits: &[usize], scale: i64, patience: &mut Patience<'_>) -> Solved {
        let mut lp = self.programme(half);
        let mut columns: Vec<usize> = vec![];
        let mut next: Vec<usize> = half.seeds.iter().copied().filter(|place| fits.binary_search(place).is_ok()).collect();
        let mut prices;
        loop {
            for place in next.drain(..) {
                let cost = self.cuts.get(place).map_or(0, |cut| cut.cost);
                lp.add(if scale == 0 { 0.0 } else { -(cost as f64) / self.dear as f64 }, &self.cells_in(half, place));
                columns.push(place);
            }
            lp.solve(20_000);
            prices = lp.prices();
            let work = fits.len().saturating_mul(self.saw.stock.parts.len()).checked_div(500).unwrap_or(0) as u64;
            let goes_on = patience.spend(work.saturating_add(1));
            let mut gains: Vec<(f64, usize)> = fits.iter().map(|place| (self.gain(half, *place, &prices, scale), *place)).collect();
            gains.retain(|(gain, place)| 0.01 / (self.dear as f64) < *gain && !columns.contains(place));
            gains.sort_by(|a, b| b.0.total_cmp(&a.0));
            next.extend(gains.iter().take(10).map(|(_, place)| *place));
            if next.is_empty() || !goes_on {
                break;
            }
        }
        let bound = self.proven(half, fits, &prices, scale);
        let is_void = if scale == 0 { 0 < bound } else { 1e-7 < lp.lacking() };
        let levels = lp.taken().filter_map(|(column, level)| Some((*columns.get(column)?, level))).filter(|(_, level)| 1e-7 < *level);
        let bound = if scale == 0 { half.bound } else { bound.saturating_add(i128::from(half.cost)) };
        Solved { levels: levels.collect(), bound, is_void }
    }

    fn programme(&self, half: &Half) -> Lp {
        let stock = self.saw.stock;
        let right = half.wanted.pieces.iter().map(|n| -(*n as f64)).chain(half.wanted.sticks.iter().map(|n| *n as f64));
        let right = right.chain(half.caps.iter().map(|(_, cap)| *cap as f64)).chain(half.least.iter().map(|(_, least)| -(*least as f64)));
        let longest = stock.parts.iter().map(|part| part.size).max().unwrap_or(1) as f64;
        let lack = stock.parts.iter().map(|part| 100.0 * part.size as f64 / longest);
        let more = stock.piles.len().saturating_add(half.caps.len()).saturating_add(half.least.len());
        Lp::new(&right.collect::<Vec<_>>(), &lack.chain((0..more).map(|_| 100.0)).collect::<Vec<_>>())
    }

    /// The rows that only this half has, for a cut: its cap, and the least of its pile.
    fn own_rows(&self, half: &Half, place: usize) -> Vec<(usize, f64)> {
        let first = self.saw.stock.parts.len().saturating_add(self.saw.stock.piles.len());
        let pile = self.cuts.get(place).map(|cut| cut.pile);
        let caps = half.caps.iter().enumerate().filter(|(_, (own, _))| *own == place).map(|(nth, _)| (first.saturating_add(nth), 1.0));
        let then = first.saturating_add(half.caps.len());
        let least =
            half.least.iter().enumerate().filter(|(_, (own, _))| Some(*own) == pile).map(|(nth, _)| (then.saturating_add(nth), -1.0));
        caps.chain(least).collect()
    }

    fn cells_in(&self, half: &Half, place: usize) -> Vec<(usize, f64)> {
        let mut cells = self.cells.get(place).cloned().unwrap_or_default();
        cells.extend(self.own_rows(half, place));
        cells
    }

    fn gain(&self, half: &Half, place: usize, prices: &[f64], scale: i64) -> f64 {
        let paid = |cells: &[(usize, f64)]| cells.iter().map(|(row, cell)| prices.get(*row).unwrap_or(&0.0) * cell).sum::<f64>();
        let cost = if scale == 0 { 0 } else { self.cuts.get(place).map_or(0, |cut| cut.cost) };
        let own = if half.caps.is_empty() && half.least.is_empty() { 0.0 } else { paid(&self.own_rows(half, place)) };
        -(cost as f64) / self.dear as f64 - paid(self.cells.get(place).map(|cells| &**cells).unwrap_or_default()) - own
    }

    /// What these prices prove in whole numbers: the least cost, or with a scale of 0 whether more than nothing is lacking.
    fn proven(&self, half: &Half, fits: &[usize], prices: &[f64], scale: i64) -> i128 {
        let stock = self.saw.stock;
        let whole = price::whole(prices, self.dear as f64 * self.scale as f64);
        let (parts, rest) = whole.split_at_checked(stock.parts.len()).unwrap_or_default();
        let (_, rest) = rest.split_at_checked(stock.piles.len()).unwrap_or_default();
        let (caps, least) = rest.split_at_checked(half.caps.len()).unwrap_or_default();
        let mut most = vec![0_i64; stock.piles.len()];
        for place in fits {
            let Some(cut) = self.cuts.get(*place) else { continue };
            let worth = cut.counts.iter().zip(parts).fold(0_i64, |sum, (n, price)| sum.saturating_add(n.saturating_mul(*price)));
            let capped: i64 = half.caps.iter().zip(caps).filter(|((own, _), _)| own == place).map(|(_, price)| *price).sum();
            let more: i64 = half.least.iter().zip(least).filter(|((pile, _), _)| *pile == cut.pile).map(|(_, price)| *price).sum();
            let value = worth.saturating_add(more).saturating_sub(capped).saturating_sub(cut.cost.saturating_mul(scale));
            most.iter_mut().skip(cut.pile).take(1).for_each(|most| *most = value.max(*most));
        }
        let sum = |prices: &[i64], n: &mut dyn Iterator<Item = i64>| {
            prices.iter().zip(n).fold(0_i128, |sum, (price, n)| sum.saturating_add(i128::from(*price).saturating_mul(i128::from(n))))
        };
        let owed =
            sum(parts, &mut half.wanted.pieces.iter().copied()).saturating_add(sum(least, &mut half.least.iter().map(|(_, least)| *least)));
        let given =
            sum(&most, &mut half.wanted.sticks.iter().copied()).saturating_add(sum(caps, &mut half.caps.iter().map(|(_, cap)| *cap)));
        let over = owed.saturating_sub(given);
        if scale == 0 {
            over
        } else {
            over.checked_add(i128::from(scale).saturating_sub(1)).and_then(|over| over.checked_div_euclid(i128::from(scale))).unwrap_or(0)
        }
    }
}

fn is_fraction(level: f64) -> bool {
    (level - level.round()).abs() > 1e-6
}

/// How near a level is to the next whole one above, where that is not nought.
fn nearness(level: f64) -> f64 {
    level.fract()
}
