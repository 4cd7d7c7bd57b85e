//! The cheapest choice of patterns for so many rows, wherever their joints come: gone through by halves, so many strips of a kind or fewer, a pattern so often or more.
//!
//! What a row costs is the length it loses, or its squares where no more than so much may be lost. The prices of each half
//! are made whole and every pattern is looked at, so that no float is trusted: Land and Doig, "An automatic method of
//! solving discrete programming problems", Econometrica 28, 1960 (recalled).

use super::cuts;
use super::pattern::Pattern;
use super::stock::{Stock, common};
use crate::plan::lp::Lp;
use crate::plan::patience::Patience;

/// A unit of cost in whole prices.
const ONE: f64 = 1_099_511_627_776.0; // 2^40
/// What a row that is missing costs, in the span from the cheapest row to the dearest.
const DEAR: f64 = 1000.0;
const TURNS: u32 = 20_000;
/// So many patterns come in at a time.
const NEW: usize = 10;

/// What is limited: strips of a kind, rows that have so many of one kind and so many of another, rows of a pattern, the length lost.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Of {
    Kind(usize),
    Has([(usize, i64); 2]),
    Row(usize),
    Lost,
    /// A cut, by its place.
    Cut(usize),
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
    /// What it takes of each cut.
    cuts: Vec<i64>,
}

impl Row {
    pub(super) fn of(stock: &Stock, (nth, pattern): (usize, &Pattern)) -> Row {
        let (lost, squares) = pattern.cost(stock);
        let runs = pattern.0.chunk_by(|a, b| a == b);
        let strips = runs.filter_map(|run| Some((usize::from(*run.first()?), run.len() as i64)));
        Row { nth, strips: strips.collect(), lost: lost as i64, squares: squares as i64, cuts: vec![] }
    }

    fn has(&self, kind: usize) -> i64 {
        self.strips.iter().find(|(own, _)| *own == kind).map_or(0, |(_, n)| *n)
    }

    pub(super) fn takes(&self, of: Of) -> i64 {
        match of {
            Of::Kind(kind) => self.has(kind),
            Of::Has(both) => i64::from(both.iter().all(|(kind, n)| *n <= self.has(*kind))),
            Of::Row(nth) => i64::from(nth == self.nth),
            Of::Lost => self.lost,
            Of::Cut(nth) => self.cuts.get(nth).copied().unwrap_or(0),
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

/// So many times fractions are cut off for nothing before halves are gone through.
const IDLE: u32 = 8;

/// A row of the programme: what is limited, which way, how far, and what it is divided by.
#[derive(Clone, Copy)]
pub(super) struct End {
    pub of: Of,
    pub way: i64,
    pub end: i64,
}

impl End {
    pub(super) fn over(&self) -> f64 {
        if matches!(self.of, Of::Cut(_)) { cuts::FINE as f64 } else { 1.0 }
    }
}

/// A half in fractions.
pub(super) struct Fractions {
    pub ends: Vec<End>,
    pub proof: Proof,
    pub levels: Levels,
    pub lp: Lp,
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
pub(super) struct Proof {
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

    /// Cuts off what is not whole, and leaves out the rows that are in no plan that costs less than `under`.
    pub(super) fn narrow(&mut self, patience: &mut Patience<'_>) {
        let Some(mut whole) = self.open.pop() else { return };
        let mut idle = 0_u32;
        while idle < IDLE && !patience.is_over() {
            let fractions = self.in_fractions(&whole, patience);
            let bound = self.rounded(fractions.proof.total);
            idle = if whole.bound < bound { 0 } else { idle.saturating_add(1) };
            whole.bound = whole.bound.max(bound);
            if self.under <= whole.bound {
                return;
            }
            let cuts = cuts::found(&self.all, self.rows, &fractions);
            whole.limits.retain(|limit| self.binds(limit, &fractions.levels));
            for (cells, end) in &cuts {
                let of = Of::Cut(self.all.first().map_or(0, |row| row.cuts.len()));
                whole.limits.push(Limit { of, least: 0, most: *end });
                self.all.iter_mut().zip(cells).for_each(|(row, cell)| row.cuts.push(*cell));
            }
            self.retain(&mut whole, &fractions);
            if cuts.is_empty() {
                break;
            }
        }
        self.open.push(whole);
    }

    /// Whether a limit, if it is a cut, is met with nothing left.
    fn binds(&self, limit: &Limit, levels: &Levels) -> bool {
        let taken = levels.iter().filter_map(|(place, level)| Some(self.all.get(*place)?.takes(limit.of) as f64 * level)).sum::<f64>();
        !matches!(limit.of, Of::Cut(_)) || limit.most as f64 - taken < cuts::FINE as f64 / 64.0
    }

    fn retain(&mut self, whole: &mut Half, Fractions { proof, levels, .. }: &Fractions) {
        let ends = self.under.saturating_sub(1).saturating_mul(ONE as i128);
        let seeds: Vec<usize> = levels.iter().filter_map(|(place, _)| Some(self.all.get(*place)?.nth)).collect();
        let mut stay = proof.values.iter().map(|value| proof.total.saturating_add(value.saturating_sub(proof.least)) <= ends);
        self.all.retain(|_| stay.next() == Some(true));
        whole.seeds = seeds.iter().filter_map(|nth| self.all.iter().position(|row| row.nth == *nth)).collect();
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
            let Some(nth) = (0..self.open.len()).rev().min_by_key(|nth| self.open.get(*nth).map(|half| half.bound)) else { return };
            let half = self.open.swap_remove(nth);
            if half.bound < self.under {
                self.part(half, patience);
            }
        }
    }

    fn cost(&self, row: &Row) -> i64 {
        if self.by_squares { row.squares } else { row.lost }
    }

    fn part(&mut self, half: Half, patience: &mut Patience<'_>) {
        let Fractions { proof, levels, .. } = self.in_fractions(&half, patience);
        let bound = self.rounded(proof.total).max(half.bound);
        if self.under <= bound {
            return;
        }
        let half = Half { bound, seeds: levels.iter().map(|(place, _)| *place).collect(), ..half };
        match self.between(&levels) {
            Some((of, level)) => self.halve(half, of, level.floor() as i64),
            None => self.whole(&half, &levels),
        }
    }

    /// Something of which there must be a whole number, and is not.
    fn between(&self, levels: &Levels) -> Option<(Of, f64)> {
        let taken: Vec<(&Row, f64)> = levels.iter().filter_map(|(place, level)| Some((self.all.get(*place)?, *level))).collect();
        let sum = |of: Of| (of, taken.iter().map(|(row, level)| row.takes(of) as f64 * level).sum::<f64>());
        let mut ones: Vec<(usize, i64)> = taken.iter().flat_map(|(row, _)| &row.strips).flat_map(|(kind, n)| (1..=*n).map(|n| (*kind, n))).collect();
        ones.sort_unstable();
        ones.dedup();
        let kinds = ones.iter().filter(|(_, n)| *n == 1).map(|(kind, _)| sum(Of::Kind(*kind)));
        let single = || ones.iter().map(|one| sum(Of::Has([*one; 2])));
        let pairs = || ones.iter().flat_map(|one| ones.iter().filter(move |other| one.0 < other.0).map(|other| sum(Of::Has([*one, *other]))));
        let rows = || taken.iter().map(|(row, level)| (Of::Row(row.nth), *level));
        middle(kinds).or_else(|| middle(single())).or_else(|| middle(pairs())).or_else(|| middle(rows()))
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

    fn ends(half: &Half) -> Vec<End> {
        let most = half.limits.iter().filter(|limit| limit.most < i64::MAX).map(|limit| End { of: limit.of, way: 1, end: limit.most });
        let least = half.limits.iter().filter(|limit| 0 < limit.least);
        most.chain(least.map(|limit| End { of: limit.of, way: -1, end: limit.least.saturating_neg() })).collect()
    }

    /// The half in fractions: what its prices prove, and how often each row is taken.
    fn in_fractions(&self, half: &Half, patience: &mut Patience<'_>) -> Fractions {
        let ends = Branch::ends(half);
        let costs = || self.all.iter().map(|row| self.cost(row) as f64);
        let cheapest = costs().fold(f64::MAX, f64::min);
        let span = (costs().fold(0.0, f64::max) - cheapest).max(1.0);
        let right: Vec<f64> = ends.iter().map(|end| end.end as f64 / end.over()).chain([self.rows as f64]).collect();
        let mut lp = Lp::new(&right, &vec![DEAR; right.len()]);
        let (mut columns, mut turns): (Vec<usize>, usize) = (vec![], 0);
        let mut next = half.seeds.clone();
        loop {
            for place in next.drain(..) {
                let Some(row) = self.all.get(place) else { continue };
                let cells = ends.iter().enumerate().map(|(nth, end)| (nth, row.takes(end.of).saturating_mul(end.way) as f64 / end.over()));
                let cells: Vec<(usize, f64)> = cells.filter(|(_, cell)| *cell != 0.0).chain([(ends.len(), 1.0)]).collect();
                lp.add(DEAR - (self.cost(row) as f64 - cheapest) / span, &cells);
                columns.push(place);
            }
            lp.solve(TURNS);
            let mut prices = lp.prices();
            let row = prices.pop().unwrap_or(0.0);
            let whole = |(price, end): (&f64, &End)| (price * span * ONE / end.over()).round().max(0.0) as i128;
            let proof = self.proof(&ends, prices.iter().zip(&ends).map(whole));
            let gains = (((DEAR * (1.0 - 1e-7) - row) * span + cheapest) * ONE) as i128;
            let mut called: Vec<(i128, usize)> =
                proof.values.iter().enumerate().map(|(place, value)| (*value, place)).filter(|(value, _)| *value < gains).collect();
            called.sort_unstable();
            next.extend(called.iter().map(|(_, place)| *place).filter(|place| !columns.contains(place)).take(NEW));
            let work = lp.turns().saturating_sub(turns).saturating_mul(right.len().saturating_mul(right.len()));
            turns = lp.turns();
            let work = work.saturating_add(self.all.len().saturating_mul(right.len())).checked_div(2000).unwrap_or(0);
            if !patience.spend(work.saturating_add(1) as u64) || next.is_empty() {
                let levels = lp.taken().filter_map(|(column, level)| Some((*columns.get(column)?, level)));
                let levels = levels.filter(|(_, level)| 1e-7 < *level).collect();
                return Fractions { ends, proof, levels, lp };
            }
        }
    }

    /// What whole prices prove: no choice costs less.
    fn proof(&self, ends: &[End], prices: impl Iterator<Item = i128>) -> Proof {
        let (mut kinds, mut others, mut given): (Vec<i128>, Vec<(Of, i128)>, i128) = (vec![], vec![], 0);
        for (End { of, way, end }, price) in ends.iter().zip(prices) {
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
