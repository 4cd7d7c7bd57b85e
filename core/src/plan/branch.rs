//! The cheapest choice of ways to use the stock, gone through by halves: so many of a thing or fewer, a way so often or more.
//!
//! A way is a row's pattern or a stick's cut; what is limited are the strips, sticks and pieces that the ways take and give.
//! The prices of each half are made whole and every way is looked at, so that no float is trusted: Land and Doig, "An
//! automatic method of solving discrete programming problems", Econometrica 28, 1960 (recalled).

mod cuts;

use super::lp::Lp;
use super::patience::Patience;

/// A unit of cost in whole prices.
const ONE: f64 = 1_099_511_627_776.0; // 2^40
/// What a way or a thing that is missing costs, in the span from the cheapest way to the dearest.
const DEAR: f64 = 1000.0;
const TURNS: u32 = 20_000;
/// So many ways come in at a time.
const NEW: usize = 10;

/// What is limited.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Of {
    /// All that is taken of a thing.
    Thing(usize),
    /// The ways that take at least so much of one thing and so much of another.
    Has([(usize, i64); 2]),
    /// One way, by the number it was given.
    Way(usize),
    /// The second cost, that has a cap.
    Second,
    /// A cut, by its place.
    Cut(usize),
}

#[derive(Clone, Copy)]
pub(super) struct Limit {
    pub of: Of,
    pub least: i64,
    pub most: i64,
}

/// One way: its number, what it takes or gives of each thing, and what it costs.
#[derive(Clone, Debug, Default)]
pub(super) struct Way {
    pub nth: usize,
    pub things: Vec<(usize, i64)>,
    pub cost: i64,
    pub second: i64,
    /// What it takes of each cut.
    pub cuts: Vec<i64>,
}

impl Way {
    fn has(&self, thing: usize) -> i64 {
        self.things.iter().find(|(own, _)| *own == thing).map_or(0, |(_, n)| *n)
    }

    pub(super) fn takes(&self, of: Of) -> i64 {
        match of {
            Of::Thing(thing) => self.has(thing),
            Of::Has(both) => i64::from(both.iter().all(|(thing, n)| *n <= self.has(*thing))),
            Of::Way(nth) => i64::from(nth == self.nth),
            Of::Second => self.second,
            Of::Cut(nth) => self.cuts.get(nth).copied().unwrap_or(0),
        }
    }
}

/// What still stands to be gone through.
#[derive(Clone)]
struct Half {
    limits: Vec<Limit>,
    bound: i128,
    /// Ways that were taken in the half it comes from.
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

/// A row of the programme: what is limited, from above (1) or below (-1), and how far.
#[derive(Clone, Copy)]
pub(super) struct End {
    pub of: Of,
    pub sign: i64,
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

/// Ways by their place, and how often each is taken.
type Levels = Vec<(usize, f64)>;

/// How many ways are chosen: just so many, or no more.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Many {
    Just(i64),
    Most(i64),
}

impl Many {
    fn most(self) -> i64 {
        match self {
            Many::Just(n) | Many::Most(n) => n,
        }
    }

    fn is_just(self) -> bool {
        matches!(self, Many::Just(_))
    }
}

pub(super) struct Branch {
    pub all: Vec<Way>,
    many: Many,
    open: Vec<Half>,
    /// Only what costs less than this is looked for.
    pub under: i128,
    /// Ways are left out that are only in choices that cost so much or more.
    keeps: i128,
    /// So often fractions were cut off for nothing.
    idle: u32,
    /// The best found, if any: ways by their number, and how often.
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
    /// The cheapest choice within the limits that costs less than `under`.
    pub(super) fn new(all: Vec<Way>, many: Many, limits: Vec<Limit>, under: i128) -> Branch {
        let open = vec![Half { limits, bound: 0, seeds: vec![] }];
        Branch { all, many, open, under, keeps: under, idle: 0, best: None, aside: i128::MAX }
    }

    /// Cuts off what is not whole, and leaves out the ways that are in no choice that costs less than `keeps`.
    fn narrow(&mut self, patience: &mut Patience<'_>) {
        self.idle = self.idle.saturating_add(1);
        let Some(mut whole) = self.open.pop() else { return };
        let fractions = self.in_fractions(&whole, patience);
        let bound = self.rounded(fractions.proof.total);
        if whole.bound < bound {
            (whole.bound, self.idle) = (bound, 0);
        }
        let cuts = cuts::found(&self.all, self.many.most(), &fractions);
        whole.limits.retain(|limit| self.binds(limit, &fractions.levels));
        self.retain(&mut whole, &fractions);
        let work = self.all.len().checked_div(50).unwrap_or(0) as u64;
        for cut in cuts.iter().take_while(|_| patience.spend(work)) {
            let Some(takes) = self.all.iter().map(|way| cut.takes(way)).collect::<Option<Vec<i64>>>() else { continue };
            let of = Of::Cut(self.all.first().map_or(0, |way| way.cuts.len()));
            whole.limits.push(Limit { of, least: 0, most: cut.end });
            self.all.iter_mut().zip(takes).for_each(|(way, takes)| way.cuts.push(takes));
        }
        if cuts.is_empty() {
            self.idle = IDLE;
        }
        if whole.bound < self.under {
            self.open.push(whole);
        }
    }

    /// Whether a limit, if it is a cut, is met with nothing left.
    fn binds(&self, limit: &Limit, levels: &Levels) -> bool {
        let taken = levels.iter().filter_map(|(place, level)| Some(self.all.get(*place)?.takes(limit.of) as f64 * level)).sum::<f64>();
        !matches!(limit.of, Of::Cut(_)) || limit.most as f64 - taken < cuts::FINE as f64 / 64.0
    }

    fn retain(&mut self, whole: &mut Half, Fractions { proof, levels, .. }: &Fractions) {
        let ends = self.keeps.saturating_sub(1).saturating_mul(ONE as i128);
        let seeds: Vec<usize> = levels.iter().filter_map(|(place, _)| Some(self.all.get(*place)?.nth)).collect();
        let mut stay = proof.values.iter().map(|value| proof.total.saturating_add(value.saturating_sub(proof.least)) <= ends);
        self.all.retain(|_| stay.next() == Some(true));
        whole.seeds = seeds.iter().filter_map(|nth| self.all.iter().position(|way| way.nth == *nth)).collect();
    }

    /// No choice costs less, or what is looked for is not there.
    pub(super) fn bound(&self) -> i128 {
        self.open.iter().map(|half| half.bound).min().unwrap_or(i128::MAX).min(self.aside).min(self.under)
    }

    /// Whether all is gone through.
    pub(super) fn is_done(&self) -> bool {
        self.open.is_empty()
    }

    /// Cuts off fractions, then goes through halves, until so many steps are spent.
    pub(super) fn go(&mut self, steps: u64, patience: &mut Patience<'_>) {
        let until = patience.steps().saturating_add(steps);
        while self.idle < IDLE && patience.steps() < until && !patience.is_over() {
            self.narrow(patience);
        }
        while patience.steps() < until && !patience.is_over() {
            let Some(half) = self.next() else { return };
            if half.bound < self.under {
                self.part(half, patience);
            }
        }
    }

    /// The half of the least bound, the latest of them.
    fn next(&mut self) -> Option<Half> {
        let nth = (0..self.open.len()).rev().min_by_key(|nth| self.open.get(*nth).map(|half| half.bound))?;
        Some(self.open.swap_remove(nth))
    }

    fn part(&mut self, half: Half, patience: &mut Patience<'_>) {
        let Fractions { proof, levels, .. } = self.in_fractions(&half, patience);
        let bound = self.rounded(proof.total).max(half.bound);
        if self.under <= bound {
            return;
        }
        let half = Half { bound, seeds: levels.iter().map(|(place, _)| *place).collect(), ..half };
        match self.between(&levels) {
            Some((of, level)) => self.halve(half, of, level),
            None => self.whole(&half, &levels),
        }
    }

    /// Something of which there must be a whole number, and is not.
    fn between(&self, levels: &Levels) -> Option<(Of, f64)> {
        let taken: Vec<(&Way, f64)> = levels.iter().filter_map(|(place, level)| Some((self.all.get(*place)?, *level))).collect();
        let sum = |of: Of| (of, taken.iter().map(|(way, level)| way.takes(of) as f64 * level).sum::<f64>());
        let mut ones: Vec<(usize, i64)> =
            taken.iter().flat_map(|(way, _)| &way.things).flat_map(|(thing, n)| (1..=*n).map(|n| (*thing, n))).collect();
        ones.sort_unstable();
        ones.dedup();
        let things = ones.iter().filter(|(_, n)| *n == 1).map(|(thing, _)| sum(Of::Thing(*thing)));
        let single = || ones.iter().map(|one| sum(Of::Has([*one; 2])));
        let pairs =
            || ones.iter().flat_map(|one| ones.iter().filter(move |other| one.0 < other.0).map(|other| sum(Of::Has([*one, *other]))));
        let ways = || taken.iter().map(|(way, level)| (Of::Way(way.nth), *level));
        middle(things).or_else(|| middle(single())).or_else(|| middle(pairs())).or_else(|| middle(ways()))
    }

    fn halve(&mut self, half: Half, of: Of, level: f64) {
        let below = level.floor() as i64;
        let (mut more, mut fewer) = (half.clone(), half);
        more.limit(of, |limit| limit.least = below.saturating_add(1));
        fewer.limit(of, |limit| limit.most = below);
        let more_first = 0.5 < level.fract() || matches!(of, Of::Way(_));
        self.open.extend(if more_first { [fewer, more] } else { [more, fewer] });
    }

    /// All levels are whole: a choice. That the half has no better one is proven as far as its bound goes.
    fn whole(&mut self, half: &Half, levels: &Levels) {
        let taken: Vec<(&Way, i64)> =
            levels.iter().filter_map(|(place, level)| Some((self.all.get(*place)?, level.round() as i64))).collect();
        let sum = |each: &dyn Fn(&Way) -> i64| {
            taken.iter().fold(0_i128, |sum, (way, n)| sum.saturating_add(i128::from(each(way)).saturating_mul(i128::from(*n))))
        };
        let keeps = |limit: &Limit| (i128::from(limit.least)..=i128::from(limit.most)).contains(&sum(&|way| way.takes(limit.of)));
        let cost = sum(&|way| way.cost);
        let many = i128::from(self.many.most());
        let is_many = if self.many.is_just() { sum(&|_| 1) == many } else { sum(&|_| 1) <= many };
        if !is_many || !half.limits.iter().all(keeps) || half.bound < cost {
            self.aside = self.aside.min(half.bound); // rounding misled
            return;
        }
        if cost < self.under {
            let best = taken.iter().map(|(way, n)| (way.nth, *n)).collect();
            (self.under, self.best) = (cost, Some(best));
        }
    }

    fn ends(half: &Half) -> Vec<End> {
        let most = half.limits.iter().filter(|limit| limit.most < i64::MAX).map(|limit| End { of: limit.of, sign: 1, end: limit.most });
        let least = half.limits.iter().filter(|limit| 0 < limit.least);
        most.chain(least.map(|limit| End { of: limit.of, sign: -1, end: limit.least.saturating_neg() })).collect()
    }

    /// The half in fractions: what its prices prove, and how often each row is taken.
    fn in_fractions(&self, half: &Half, patience: &mut Patience<'_>) -> Fractions {
        let ends = Branch::ends(half);
        let costs = || self.all.iter().map(|way| way.cost as f64);
        let (cheapest, dear) = if self.many.is_just() { (costs().fold(f64::MAX, f64::min), DEAR) } else { (0.0, 0.0) };
        let span = (costs().fold(0.0, f64::max) - cheapest).max(1.0);
        let right: Vec<f64> = ends.iter().map(|end| end.end as f64 / end.over()).chain([self.many.most() as f64]).collect();
        let mut lp = Lp::new(&right, &vec![DEAR; right.len()]);
        let (mut columns, mut turns): (Vec<usize>, usize) = (vec![], 0);
        let mut next = half.seeds.clone();
        loop {
            for place in next.drain(..) {
                let Some(way) = self.all.get(place) else { continue };
                let cells = ends.iter().enumerate().map(|(nth, end)| (nth, way.takes(end.of).saturating_mul(end.sign) as f64 / end.over()));
                let cells: Vec<(usize, f64)> = cells.filter(|(_, cell)| *cell != 0.0).chain([(ends.len(), 1.0)]).collect();
                lp.add(dear - (way.cost as f64 - cheapest) / span, &cells);
                columns.push(place);
            }
            lp.solve(TURNS);
            let mut prices = lp.prices();
            let row = prices.pop().unwrap_or(0.0);
            let whole = |(price, end): (&f64, &End)| (price * span * ONE / end.over()).round().max(0.0) as i128;
            let proof = self.proof(&ends, prices.iter().zip(&ends).map(whole));
            let gains = (((dear - 1e-9 * DEAR - row) * span + cheapest) * ONE) as i128;
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
        let (mut things, mut others, mut given): (Vec<i128>, Vec<(Of, i128)>, i128) = (vec![], vec![], 0);
        for (End { of, sign, end }, price) in ends.iter().zip(prices) {
            given = given.saturating_add(price.saturating_mul(i128::from(*end)));
            let price = price.saturating_mul(i128::from(*sign));
            match of {
                Of::Thing(thing) => {
                    things.resize(things.len().max(thing.saturating_add(1)), 0);
                    things.iter_mut().skip(*thing).take(1).for_each(|own| *own = own.saturating_add(price));
                }
                _ => others.push((*of, price)),
            }
        }
        let value = |way: &Way| {
            let own = i128::from(way.cost).saturating_mul(ONE as i128);
            let times = |sum: i128, price: i128, n: i64| sum.saturating_add(price.saturating_mul(i128::from(n)));
            let own = way.things.iter().fold(own, |sum, (thing, n)| times(sum, things.get(*thing).copied().unwrap_or(0), *n));
            others.iter().fold(own, |sum, (of, price)| times(sum, *price, way.takes(*of)))
        };
        let values: Vec<i128> = self.all.iter().map(value).collect();
        let least = values.iter().copied().min().unwrap_or(0);
        let least = if self.many.is_just() { least } else { least.min(0) };
        Proof { total: least.saturating_mul(i128::from(self.many.most())).saturating_sub(given), values, least }
    }

    /// The least cost no less than this that a choice can have: costs differ by whole steps.
    fn rounded(&self, total: i128) -> i128 {
        let one = if self.many.is_just() { self.all.first().map_or(0, |way| way.cost) } else { 0 };
        let step = self.all.iter().fold(0, |step, way| super::common(step, way.cost.saturating_sub(one).saturating_abs()));
        let base = i128::from(one).saturating_mul(i128::from(self.many.most()));
        let up = |sum: i128, step: i128| sum.saturating_neg().checked_div_euclid(step).map_or(sum, i128::saturating_neg);
        let least = up(total, ONE as i128);
        let step = i128::from(step.max(1));
        up(least.saturating_sub(base), step).saturating_mul(step).saturating_add(base)
    }
}

/// What is most nearly half way between two whole numbers, if anything is between them.
fn middle(all: impl Iterator<Item = (Of, f64)>) -> Option<(Of, f64)> {
    let between = all.filter(|(_, level)| 1e-6 < (level - level.round()).abs());
    between.min_by(|a, b| (a.1.fract() - 0.5).abs().total_cmp(&(b.1.fract() - 0.5).abs()))
}
