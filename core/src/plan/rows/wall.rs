//! All rows one above the other: they are put in an order in which no joint is too near to one of the next row.

use super::course::{Asked, Course, arranged, clashes};
use super::dive::part;
use super::pattern::{Pattern, is_legal};
use super::renew::{Chosen, Core};
use super::stock::Stock;
use crate::plan::draw::Draw;
use crate::plan::patience::Patience;

fn sorted(mut kinds: Vec<u8>) -> Vec<u8> {
    kinds.sort_unstable();
    kinds
}

#[derive(Clone)]
pub(super) struct Wall<'a> {
    pub stock: &'a Stock,
    pub rows: Vec<Course>,
    /// The strips that are left.
    pub left: Vec<u32>,
    /// Between each row and the next.
    clash: Vec<u32>,
}

/// So many orders of a row are looked at.
const NODES: u32 = 240;

impl<'a> Wall<'a> {
    pub(super) fn new(stock: &'a Stock) -> Wall<'a> {
        Wall { stock, rows: vec![], left: stock.counts(), clash: vec![] }
    }

    pub(super) fn of(stock: &'a Stock, rows: Vec<Course>) -> Wall<'a> {
        let mut wall = Wall::new(stock);
        for row in &rows {
            Pattern(sorted(row.kinds.clone())).take(&mut wall.left);
        }
        wall.rows = rows;
        wall.reckon();
        wall
    }

    /// The patterns of all rows, and what is left.
    pub(super) fn chosen(&self) -> Chosen {
        Chosen { taken: self.rows.iter().map(|row| Pattern(sorted(row.kinds.clone()))).collect(), left: self.left.clone() }
    }

    /// Some rows given up, others found and laid in their places, nothing clashing.
    pub(super) fn renewed(&self, core: &Core<'_>, draw: &mut Draw, patience: &mut Patience<'_>) -> Option<Wall<'a>> {
        let mut wall = self.clone();
        let mut chosen = self.chosen();
        let rank = core.rank(&chosen);
        let free = draw.below(self.rows.len().div_ceil(3).clamp(6, 20)).saturating_add(2).min(self.rows.len());
        let mut places: Vec<usize> = (0..self.rows.len()).collect();
        let mut kept: Vec<usize> = vec![];
        while free < places.len() {
            kept.push(places.swap_remove(draw.below(places.len())));
        }
        for place in &places {
            chosen.taken.get(*place)?.put_back(&mut chosen.left);
        }
        chosen.taken = kept.iter().filter_map(|place| chosen.taken.get(*place).cloned()).collect();
        let before = chosen.taken.len();
        core.filled(rank, &mut chosen, draw, patience);
        if rank < core.rank(&chosen) {
            return None;
        }
        for (place, pattern) in places.iter().zip(chosen.taken.iter().skip(before)) {
            let course = wall.arranged(*place, &pattern.0, u32::MAX, draw)?;
            wall.set(*place, course);
        }
        wall.left = chosen.left;
        wall.mend(400, &[], draw, patience).then_some(wall)
    }

    pub(super) fn clashes(&self) -> u32 {
        self.clash.iter().fold(0, |sum, n| sum.saturating_add(*n))
    }

    fn joints(&self, nth: Option<usize>) -> &[f64] {
        nth.and_then(|nth| self.rows.get(nth)).map(|row| &*row.joints).unwrap_or_default()
    }

    fn reckon(&mut self) {
        let stagger = self.stock.stagger;
        self.clash = self
            .rows
            .windows(2)
            .map(|pair| match pair {
                [one, other] => clashes(&one.joints, &other.joints, stagger),
                _ => 0,
            })
            .collect();
    }

    /// The clashes of one row with both its neighbours.
    fn around(&self, nth: usize) -> u32 {
        let above = nth.checked_sub(1).and_then(|above| self.clash.get(above)).unwrap_or(&0);
        above.saturating_add(*self.clash.get(nth).unwrap_or(&0))
    }

    fn renew_around(&mut self, nth: usize) {
        for at in [nth.checked_sub(1), Some(nth)].into_iter().flatten() {
            let n = clashes(self.joints(Some(at)), self.joints(at.checked_add(1)), self.stock.stagger);
            if let Some(own) = self.clash.get_mut(at) {
                *own = n;
            }
        }
    }

    /// Lays one row after another, each so that it keeps clear of the one before, those that are left most often first.
    pub(super) fn lay(&mut self, patterns: Vec<Pattern>, draw: &mut Draw, patience: &mut Patience<'_>) {
        let mut waiting = patterns;
        while !waiting.is_empty() {
            let near = self.joints(self.rows.len().checked_sub(1)).to_vec();
            let mut picked = None;
            for _ in 0..8 {
                let nth = draw.below(waiting.len());
                let Some(pattern) = waiting.get(nth) else { break };
                let mut nodes = 60;
                let asked = Asked { stock: self.stock, kinds: &pattern.0, near: &near };
                picked = arranged(&asked, 0, &mut nodes, draw).map(|course| (nth, course));
                if picked.is_some() {
                    break;
                }
            }
            let any = |waiting: &[Pattern], draw: &mut Draw| {
                let nth = draw.below(waiting.len());
                let asked = Asked { stock: self.stock, kinds: &waiting.get(nth)?.0, near: &near };
                Some((nth, arranged(&asked, u32::MAX, &mut 2000, draw)?))
            };
            let Some((nth, course)) = picked.or_else(|| any(&waiting, draw)) else { break };
            waiting.swap_remove(nth).take(&mut self.left);
            self.rows.push(course);
            patience.spend(1);
        }
        self.reckon();
    }

    /// Moves rows and strips until nothing clashes; whether it came so far.
    pub(super) fn mend(&mut self, turns: u32, others: &[Pattern], draw: &mut Draw, patience: &mut Patience<'_>) -> bool {
        let mut warm = 0.3;
        for turn in 0..turns {
            let bad: Vec<usize> = self.clash.iter().enumerate().filter(|(_, n)| 0 < **n).map(|(nth, _)| nth).collect();
            let Some(above) = bad.get(draw.below(bad.len())) else { return true };
            if !patience.spend(1) {
                return false;
            }
            let row = above.saturating_add(draw.below(2));
            if !others.is_empty() && turns < turn.saturating_mul(3) && draw.below(4) == 0 {
                let reach = others.len().saturating_mul(turn as usize).checked_div(turns as usize).unwrap_or(0);
                self.replace(row, others.get(..reach).unwrap_or_default(), draw);
                continue;
            }
            match draw.below(10) {
                0..=2 => self.reorder(row, draw),
                3..=5 => self.exchange(row, warm, draw),
                6 | 7 => self.turn_over(*above, draw),
                _ => self.split_anew(row, draw),
            }
            warm = if warm < 0.02 { 0.3 } else { warm * 0.995 };
        }
        self.clashes() == 0
    }

    /// The best order of one row that is found, given its neighbours.
    fn arranged(&self, nth: usize, kinds: &[u8], most: u32, draw: &mut Draw) -> Option<Course> {
        let near: Vec<f64> = self.joints(nth.checked_sub(1)).iter().chain(self.joints(nth.checked_add(1))).copied().collect();
        let asked = Asked { stock: self.stock, kinds, near: &near };
        let mut nodes = NODES;
        arranged(&asked, 0, &mut nodes, draw).or_else(|| if most == 0 { None } else { arranged(&asked, most, &mut NODES.clone(), draw) })
    }

    fn set(&mut self, nth: usize, course: Course) {
        if let Some(own) = self.rows.get_mut(nth) {
            *own = course;
        }
        self.renew_around(nth);
    }

    fn kinds(&self, nth: usize) -> Vec<u8> {
        self.rows.get(nth).map(|row| row.kinds.clone()).unwrap_or_default()
    }

    fn reorder(&mut self, nth: usize, draw: &mut Draw) {
        if let Some(course) = self.arranged(nth, &self.kinds(nth), self.around(nth), draw) {
            self.set(nth, course);
        }
    }

    /// Another pattern for a row, where it clashes less.
    fn replace(&mut self, nth: usize, others: &[Pattern], draw: &mut Draw) {
        let own = self.kinds(nth);
        let Some(less) = self.around(nth).checked_sub(1) else { return };
        Pattern(own.clone()).put_back(&mut self.left);
        for _ in 0..8 {
            let from = draw.below(others.len());
            let Some(other) = others.get(draw.below(from.saturating_add(1))) else { break };
            if other.times(&self.left) == 0 {
                continue;
            }
            if let Some(course) = self.arranged(nth, &other.0, less, draw) {
                other.take(&mut self.left);
                return self.set(nth, course);
            }
        }
        Pattern(sorted(own)).take(&mut self.left);
    }

    /// Two rows change places.
    fn exchange(&mut self, nth: usize, warm: f64, draw: &mut Draw) {
        let other = draw.below(self.rows.len());
        if other != nth {
            self.lay_both([(nth, self.kinds(other)), (other, self.kinds(nth))], warm, draw);
        }
    }

    /// Lays two rows anew, and goes back where that clashes more.
    fn lay_both(&mut self, both: [(usize, Vec<u8>); 2], warm: f64, draw: &mut Draw) {
        let places = [both[0].0, both[1].0];
        let before = self.clashes();
        let old = places.map(|nth| self.rows.get(nth).cloned().unwrap_or_default());
        for (nth, kinds) in both {
            match self.arranged(nth, &kinds, 4, draw) {
                Some(course) => self.set(nth, course),
                None => return self.go_back(places, old),
            }
        }
        let after = self.clashes();
        if before < after && (before.saturating_add(1) < after || warm < part(draw)) {
            self.go_back(places, old);
        }
    }

    fn go_back(&mut self, places: [usize; 2], old: [Course; 2]) {
        places.into_iter().zip(old).for_each(|(nth, course)| self.set(nth, course));
    }

    /// Turns a run of rows over, so that others meet at its ends.
    fn turn_over(&mut self, above: usize, draw: &mut Draw) {
        let other = draw.below(self.rows.len());
        let (from, to) = if other <= above { (other, above) } else { (above.saturating_add(1), other) };
        let stagger = self.stock.stagger;
        let meet = |one: Option<usize>, other: Option<usize>| clashes(self.joints(one), self.joints(other), stagger);
        let ends = [from.checked_sub(1), to.checked_add(1)];
        let before = meet(ends[0], Some(from)).saturating_add(meet(Some(to), ends[1]));
        let after = meet(ends[0], Some(to)).saturating_add(meet(Some(from), ends[1]));
        if after <= before
            && let Some(run) = self.rows.get_mut(from..=to)
        {
            run.reverse();
            self.reckon();
        }
    }

    /// The strips of two rows, shared out anew.
    fn split_anew(&mut self, nth: usize, draw: &mut Draw) {
        let other = draw.below(self.rows.len());
        let pool: Vec<u8> = self.kinds(nth).into_iter().chain(self.kinds(other)).collect();
        if other == nth || pool.is_empty() {
            return;
        }
        let lost = |kinds: &[u8]| self.stock.returned(kinds.iter().map(|kind| self.stock.long(*kind)).sum::<f64>() - self.stock.panel);
        let before = lost(&self.kinds(nth)) + lost(&self.kinds(other));
        for _ in 0..24 {
            if let Some([one, two]) = self.drawn(pool.clone(), draw)
                && before <= lost(&one) + lost(&two)
            {
                return self.lay_both([(nth, one), (other, two)], 0.1, draw);
            }
        }
    }

    /// Two legal rows from one pool of strips, drawn at random.
    fn drawn(&self, mut pool: Vec<u8>, draw: &mut Draw) -> Option<[Vec<u8>; 2]> {
        let mut one = vec![];
        let mut sum = 0.0;
        while sum < self.stock.panel {
            let kind = pool.swap_remove(draw.below(pool.len()));
            sum += self.stock.long(kind);
            one.push(kind);
            if pool.is_empty() {
                return None;
            }
        }
        let rest: f64 = pool.iter().map(|kind| self.stock.long(*kind)).sum();
        let legal = is_legal(self.stock, &one, sum - self.stock.panel) && is_legal(self.stock, &pool, rest - self.stock.panel);
        legal.then_some([one, pool])
    }

    /// Takes rows out until nothing clashes.
    pub(super) fn clear(&mut self, draw: &mut Draw, patience: &mut Patience<'_>) {
        while 0 < self.clashes() {
            let worst = (0..self.rows.len()).max_by_key(|nth| self.around(*nth)).unwrap_or(0);
            if worst < self.rows.len() {
                Pattern(self.rows.remove(worst).kinds).put_back(&mut self.left);
            }
            self.reckon();
            self.mend(60, &[], draw, patience);
        }
    }
}
