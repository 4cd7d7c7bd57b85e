//! Small cases looked through to the end: every row that can be laid, and every order of rows that keeps the stagger.

use super::course::{Course, clashes};
use super::pattern::{Pattern, Patterns};
use super::stock::Stock;
use crate::plan::patience::Patience;

/// With more different rows than these there are too many orders.
const COURSES: usize = 400;
/// So many rows are put one above the other before one gives up.
const NODES: u32 = 150_000;

/// A row as it can be laid, and what it costs.
struct Laid {
    course: Course,
    pattern: Pattern,
    lost: f64,
    squares: f64,
    /// Which rows can be next to it.
    next: Vec<usize>,
}

struct Walk {
    all: Vec<Laid>,
    left: Vec<u32>,
    path: Vec<usize>,
    cost: (f64, f64),
    /// The least a row loses.
    least: f64,
    /// No more rows than these.
    rows: usize,
    best: (f64, f64, f64),
    found: Vec<usize>,
    nodes: u32,
}

/// The best rows that are found, and whether there can be no better; `None` where there are too many to look through.
pub(super) fn walked(stock: &Stock, patterns: &Patterns, rows: usize, patience: &mut Patience<'_>) -> Option<(Vec<Course>, bool)> {
    let all = courses(stock, patterns)?;
    let least = all.iter().map(|laid| laid.lost).fold(f64::MAX, f64::min);
    let mut walk =
        Walk { all, left: stock.counts(), path: vec![], cost: (0.0, 0.0), least, rows, best: (0.0, 0.0, 0.0), found: vec![], nodes: NODES };
    walk.go_on(patience);
    let found = walk.found.iter().filter_map(|nth| walk.all.get(*nth)).map(|laid| laid.course.clone()).collect();
    Some((found, 0 < walk.nodes && !patience.is_over()))
}

/// Every different order of every pattern; `None` where there are too many.
fn courses(stock: &Stock, patterns: &Patterns) -> Option<Vec<Laid>> {
    if !patterns.complete || COURSES < patterns.all.len() {
        return None;
    }
    let mut all: Vec<Laid> = vec![];
    for pattern in &patterns.all {
        let over = pattern.over(stock);
        let (lost, squares) = pattern.cost(stock);
        let mut orders = Orders { left: pattern.0.clone(), order: vec![], all: vec![] };
        orders.go_on();
        for kinds in orders.all {
            let sides = [Some(false), Some(true).filter(|_| over != 0.0 && 1 < kinds.len())];
            for last in sides.into_iter().flatten() {
                let mut course = Course { kinds: kinds.clone(), over, last, joints: vec![] };
                let lengths = course.lengths(stock);
                if lengths.first().is_some_and(|end| stock.end <= *end) && lengths.last().is_some_and(|end| stock.end <= *end) {
                    course.joints = joints(&lengths);
                    all.push(Laid { course, pattern: pattern.clone(), lost, squares, next: vec![] });
                }
            }
        }
        if COURSES < all.len() {
            return None;
        }
    }
    let meet = |one: &Laid, other: &Laid| clashes(&one.course.joints, &other.course.joints, stock.stagger) == 0;
    let next: Vec<Vec<usize>> =
        all.iter().map(|one| (0..all.len()).filter(|nth| all.get(*nth).is_some_and(|other| meet(one, other))).collect()).collect();
    all.iter_mut().zip(next).for_each(|(laid, next)| laid.next = next);
    Some(all)
}

fn joints(lengths: &[f64]) -> Vec<f64> {
    let mut at = 0.0;
    let ends = lengths.iter().map(|length| {
        at += length;
        at
    });
    ends.take(lengths.len().saturating_sub(1)).collect()
}

/// The different orders of some strips.
struct Orders {
    left: Vec<u8>,
    order: Vec<u8>,
    all: Vec<Vec<u8>>,
}

impl Orders {
    fn go_on(&mut self) {
        if COURSES < self.all.len() {
            return;
        }
        if self.left.is_empty() {
            self.all.push(self.order.clone());
        }
        let mut last = None;
        for nth in 0..self.left.len() {
            let kind = self.left.remove(nth);
            if last != Some(kind) {
                self.order.push(kind);
                self.go_on();
                self.order.pop();
            }
            self.left.insert(nth, kind);
            last = Some(kind);
        }
    }
}

impl Walk {
    fn go_on(&mut self, patience: &mut Patience<'_>) {
        let reached = (-(self.path.len() as f64), self.cost.0, self.cost.1);
        if reached < self.best {
            (self.best, self.found) = (reached, self.path.clone());
        }
        let more = self.rows.saturating_sub(self.path.len()) as f64;
        let hoped = (reached.0 - more, reached.1 + more * self.least);
        if more == 0.0 || (self.best.0, self.best.1) < hoped {
            return;
        }
        let next = match self.path.last().and_then(|nth| self.all.get(*nth)) {
            Some(laid) => laid.next.clone(),
            None => (0..self.all.len()).collect(),
        };
        for nth in next {
            if self.nodes == 0 || (self.nodes.trailing_zeros() >= 6 && !patience.spend(1)) {
                return;
            }
            self.nodes = self.nodes.saturating_sub(1);
            let Some(laid) = self.all.get(nth) else { continue };
            let cost = (laid.lost, laid.squares);
            if !laid.pattern.take(&mut self.left) {
                continue;
            }
            self.path.push(nth);
            self.cost = (self.cost.0 + cost.0, self.cost.1 + cost.1);
            self.go_on(patience);
            self.cost = (self.cost.0 - cost.0, self.cost.1 - cost.1);
            self.path.pop();
            if let Some(laid) = self.all.get(nth) {
                laid.pattern.put_back(&mut self.left);
            }
        }
    }
}
