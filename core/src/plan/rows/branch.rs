//! The cheapest choice of patterns for so many rows, wherever their joints come: gone through by halves, so many strips of a kind or fewer, a pattern so often or more.
//!
//! What a row costs is the length it loses, or its squares where no more than so much may be lost. The prices of each half
//! are made whole and every pattern is looked at, so that no float is trusted: Land and Doig, "An automatic method of
//! solving discrete programming problems", Econometrica 28, 1960 (recalled).

use super::pattern::Pattern;
use super::stock::{Stock, common};
use crate::plan::lp::Lp;
use crate::plan::patience::Patience;

/// A unit of cost in whole prices.
const ONE: f64 = 1_048_576.0; // 2^20
/// What a row that is missing costs, in the span from the cheapest row to the dearest.
const DEAR: f64 = 1000.0;
const TURNS: u32 = 20_000;
/// So many patterns come in at a time.
const NEW: usize = 10;

/// What is limited: strips of a kind, rows of a pattern, the length lost.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Of {
    Kind(usize),
    Row(usize),
    Lost,
}

#[derive(Clone, Copy)]
struct Limit {
    of: Of,
    least: i64,
    most: i64,
}

/// A pattern by its place: its strips by kind, and what it costs.
#[derive(Clone, Debug)]
pub(super) struct Row {
    pub nth: usize,
    strips: Vec<(usize, i64)>,
    lost: i64,
    squares: i64,
}

impl Row {
    pub(super) fn of(stock: &Stock, (nth, pattern): (usize, &Pattern)) -> Row {
        let (lost, squares) = pattern.cost(stock);
        let runs = pattern.0.chunk_by(|a, b| a == b);
        let strips = runs.filter_map(|run| Some((usize::from(*run.first()?), run.len() as i64)));
        Row { nth, strips: strips.collect(), lost: lost as i64, squares: squares as i64 }
    }

    fn takes(&self, of: Of) -> i64 {
        match of {
            Of::Kind(kind) => self.strips.iter().find(|(own, _)| *own == kind).map_or(0, |(_, n)| *n),
            Of::Row(nth) => i64::from(nth == self.nth),
            Of::Lost => self.lost,
        }
    }
}

/// What still stands to be gone through.
#[derive(Clone)]
struct Half {
    limits: Vec<Limit>,
    bound: i128,
    /// Rows that were taken in the half it comes from.
    seeds: Vec<usize>,
}

impl Half {
    fn limit(&mut self, of: Of, set: impl Fn(&mut Limit)) {
        if self.limits.iter().all(|limit| limit.of != of) {
            self.limits.push(Limit { of, least: 0, most: i64::MAX });
        }
        self.limits.iter_mut().filter(|limit| limit.of == of).for_each(set);
    }
}

/// Rows by their place, and how often each is taken.
type Levels = Vec<(usize, f64)>;

pub(super) struct Branch {
    pub all: Vec<Row>,
    rows: usize,
    by_squares: bool,
    open: Vec<Half>,
    /// Only what costs less than this is looked for.
    pub under: i128,
    /// The best found, if any: patterns, and how often.
    pub best: Option<Vec<(usize, i64)>>,
    /// The least bound of what was left aside because a float said so.
    aside: i128,
}

/// What whole prices prove.
struct Proof {
    /// What each row costs and pays for its strips.
    values: Vec<i128>,
    least: i128,
    /// No plan costs less, in whole prices.
    total: i128,
}

impl Branch {
    /// The choice that loses least; or that of least squares which loses no more than `lost`.
    pub(super) fn new(stock: &Stock, all: Vec<Row>, (rows, lost): (usize, Option<i64>), under: i128) -> Branch {
        let kinds = stock.kinds.iter().enumerate();
        let limits = kinds.map(|(nth, kind)| Limit { of: Of::Kind(nth), least: 0, most: i64::from(kind.count) });
        let limits = limits.chain(lost.map(|most| Limit { of: Of::Lost, least: 0, most })).collect();
        let open = vec![Half { limits, bound: 0, seeds: vec![] }];
        Branch { all, rows, by_squares: lost.is_some(), open, under, best: None, aside: i128::MAX }
    }

    /// Leaves out the rows that are in no plan that costs less than `under`.
    pub(super) fn narrow(&mut self, patience: &mut Patience<'_>) {
        let Some(whole) = self.open.first().cloned() else { return };
        let (proof, levels) = self.in_fractions(&whole, patience);
        let bound = self.rounded(proof.total);
        let ends = self.under.saturating_sub(1).saturating_mul(ONE as i128);
        let stays = |value: &i128| proof.total.saturating_add(value.saturating_sub(proof.least)) <= ends;
        let mut stay = proof.values.iter().map(stays);
        let seeds: Vec<usize> = levels.iter().filter_map(|(place, _)| Some(self.all.get(*place)?.nth)).collect();
        self.all.retain(|_| stay.next() == Some(true));
        let place = |nth: &usize| self.all.iter().position(|row| row.nth == *nth);
        let seeds = seeds.iter().filter_map(place).collect();
        self.open = vec![Half { bound, seeds, ..whole }];
    }

    /// No choice costs less, or what is looked for is not there.
    pub(super) fn bound(&self) -> i128 {
        self.open.iter().map(|half| half.bound).min().unwrap_or(i128::MAX).min(self.aside).min(self.under)
    }

    /// Whether all is gone through.
    pub(super) fn is_done(&self) -> bool {
        self.open.is_empty()
    }

    /// Goes through halves until so many steps are spent.
    pub(super) fn go(&mut self, steps: u64, patience: &mut Patience<'_>) {
        let until = patience.steps().saturating_add(steps);
        while patience.steps() < until && !patience.is_over() {
            let Some(half) = self.open.pop() else { return };
            if half.bound < self.under {
                self.part(half, patience);
            }
        }
    }

    fn cost(&self, row: &Row) -> i64 {
        if self.by_squares { row.squares } else { row.lost }
    }

    fn part(&mut self, half: Half, patience: &mut Patience<'_>) {
        let (proof, levels) = self.in_fractions(&half, patience);
        let bound = self.rounded(proof.total).max(half.bound);
        if self.under <= bound {
            return;
        }
        let half = Half { bound, seeds: levels.iter().map(|(place, _)| *place).collect(), ..half };
        let row = |place: &usize| self.all.get(*place).map_or(usize::MAX, |row| row.nth);
        let one = || levels.iter().map(|(place, level)| (Of::Row(row(place)), *level));
        match middle(self.used(&levels)).or_else(|| middle(one())) {
            Some((of, level)) => self.halve(half, of, level.floor() as i64),
            None => self.whole(&half, &levels),
        }
    }

    /// How many strips of each kind are used.
    fn used(&self, levels: &Levels) -> impl Iterator<Item = (Of, f64)> {
        let mut used: Vec<f64> = vec![];
        for (row, level) in levels.iter().filter_map(|(place, level)| Some((self.all.get(*place)?, level))) {
            for (kind, n) in &row.strips {
                used.resize(used.len().max(kind.saturating_add(1)), 0.0);
                used.iter_mut().skip(*kind).take(1).for_each(|sum| *sum += *n as f64 * level);
            }
        }
        used.into_iter().enumerate().map(|(kind, sum)| (Of::Kind(kind), sum))
    }

    fn halve(&mut self, half: Half, of: Of, below: i64) {
        let (mut more, mut fewer) = (half.clone(), half);
        more.limit(of, |limit| limit.least = below.saturating_add(1));
        fewer.limit(of, |limit| limit.most = below);
        self.open.extend([more, fewer]);
    }

    /// All levels are whole: a choice. That the half has no better one is proven as far as its bound goes.
    fn whole(&mut self, half: &Half, levels: &Levels) {
        let taken: Vec<(&Row, i64)> =
            levels.iter().filter_map(|(place, level)| Some((self.all.get(*place)?, level.round() as i64))).collect();
        let sum = |each: &dyn Fn(&Row) -> i64| taken.iter().fold(0_i128, |sum, (row, n)| sum.saturating_add(i128::from(each(row)).saturating_mul(i128::from(*n))));
        let keeps = |limit: &Limit| (i128::from(limit.least)..=i128::from(limit.most)).contains(&sum(&|row| row.takes(limit.of)));
        let cost = sum(&|row| self.cost(row));
        if sum(&|_| 1) != self.rows as i128 || !half.limits.iter().all(keeps) || half.bound < cost {
            self.aside = self.aside.min(half.bound); // rounding misled
            return;
        }
        if cost < self.under {
            let best = taken.iter().map(|(row, n)| (row.nth, *n)).collect();
            (self.under, self.best) = (cost, Some(best));
        }
    }

    /// The rows of the programme: what is limited, which way, and how far.
    fn ends(half: &Half) -> Vec<(Of, i64, i64)> {
        let most = half.limits.iter().filter(|limit| limit.most < i64::MAX).map(|limit| (limit.of, 1, limit.most));
        let least = half.limits.iter().filter(|limit| 0 < limit.least).map(|limit| (limit.of, -1, limit.least.saturating_neg()));
        most.chain(least).collect()
    }

    /// The half in fractions: what its prices prove, and how often each row is taken.
    fn in_fractions(&self, half: &Half, patience: &mut Patience<'_>) -> (Proof, Levels) {
        let ends = Branch::ends(half);
        let costs = || self.all.iter().map(|row| self.cost(row) as f64);
        let cheapest = costs().fold(f64::MAX, f64::min);
        let span = (costs().fold(0.0, f64::max) - cheapest).max(1.0);
        let right: Vec<f64> = ends.iter().map(|(.., end)| *end as f64).chain([self.rows as f64]).collect();
        let mut lp = Lp::new(&right, &vec![DEAR; right.len()]);
        let mut columns: Vec<usize> = vec![];
        let mut next = half.seeds.clone();
        loop {
            for place in next.drain(..) {
                let Some(row) = self.all.get(place) else { continue };
                let cells = ends.iter().enumerate().map(|(nth, (of, way, _))| (nth, row.takes(*of).saturating_mul(*way) as f64));
                let cells: Vec<(usize, f64)> = cells.filter(|(_, cell)| *cell != 0.0).chain([(ends.len(), 1.0)]).collect();
                lp.add(DEAR - (self.cost(row) as f64 - cheapest) / span, &cells);
                columns.push(place);
            }
            lp.solve(TURNS);
            let mut prices = lp.prices();
            let row = prices.pop().unwrap_or(0.0);
            let proof = self.proof(&ends, prices.iter().map(|price| (price * span * ONE).round().max(0.0) as i128));
            let gains = (((DEAR * (1.0 - 1e-7) - row) * span + cheapest) * ONE) as i128;
            let mut called: Vec<(i128, usize)> =
                proof.values.iter().enumerate().map(|(place, value)| (*value, place)).filter(|(value, _)| *value < gains).collect();
            called.sort_unstable();
            next.extend(called.iter().map(|(_, place)| *place).filter(|place| !columns.contains(place)).take(NEW));
            let work = self.all.len().checked_div(100).unwrap_or(0).saturating_add(1);
            if !patience.spend(work as u64) || next.is_empty() {
                let levels = lp.taken().filter_map(|(column, level)| Some((*columns.get(column)?, level)));
                return (proof, levels.filter(|(_, level)| 1e-7 < *level).collect());
            }
        }
    }

    /// What whole prices prove: no choice costs less.
    fn proof(&self, ends: &[(Of, i64, i64)], prices: impl Iterator<Item = i128>) -> Proof {
        let (mut kinds, mut others, mut given): (Vec<i128>, Vec<(Of, i128)>, i128) = (vec![], vec![], 0);
        for ((of, way, end), price) in ends.iter().zip(prices) {
            given = given.saturating_add(price.saturating_mul(i128::from(*end)));
            let price = price.saturating_mul(i128::from(*way));
            match of {
                Of::Kind(kind) => {
                    kinds.resize(kinds.len().max(kind.saturating_add(1)), 0);
                    kinds.iter_mut().skip(*kind).take(1).for_each(|own| *own = own.saturating_add(price));
                }
                _ => others.push((*of, price)),
            }
        }
        let value = |row: &Row| {
            let own = i128::from(self.cost(row)).saturating_mul(ONE as i128);
            let times = |sum: i128, price: i128, n: i64| sum.saturating_add(price.saturating_mul(i128::from(n)));
            let strips = row.strips.iter().fold(own, |sum, (kind, n)| times(sum, kinds.get(*kind).copied().unwrap_or(0), *n));
            others.iter().fold(strips, |sum, (of, price)| times(sum, *price, row.takes(*of)))
        };
        let values: Vec<i128> = self.all.iter().map(value).collect();
        let least = values.iter().copied().min().unwrap_or(0);
        Proof { total: least.saturating_mul(self.rows as i128).saturating_sub(given), values, least }
    }

    /// The least cost no less than this that a choice can have: what rows cost differs by whole steps.
    fn rounded(&self, total: i128) -> i128 {
        let one = self.all.first().map_or(0, |row| self.cost(row));
        let step = self.all.iter().fold(0, |step, row| common(step, self.cost(row).saturating_sub(one).saturating_abs()));
        let base = i128::from(one).saturating_mul(self.rows as i128);
        let up = |sum: i128, step: i128| sum.saturating_neg().checked_div_euclid(step).map_or(sum, i128::saturating_neg);
        let least = up(total, ONE as i128);
        if step == 0 { base } else { up(least.saturating_sub(base), i128::from(step)).saturating_mul(i128::from(step)).saturating_add(base) }
    }
}

/// What is most nearly half way between two whole numbers, if anything is between them.
fn middle(all: impl Iterator<Item = (Of, f64)>) -> Option<(Of, f64)> {
    let between = all.filter(|(_, level)| 1e-6 < (level - level.round()).abs());
    between.min_by(|a, b| (a.1.fract() - 0.5).abs().total_cmp(&(b.1.fract() - 0.5).abs()))
}
