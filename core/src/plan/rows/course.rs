//! One row as it is laid: its strips in order, with the joints kept away from those of its neighbours.

use super::stock::Stock;
use crate::plan::draw::Draw;

#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Course {
    /// From the left.
    pub kinds: Vec<u8>,
    /// What is taken off one end.
    pub over: f64,
    /// It is taken off the last strip, not the first.
    pub last: bool,
    pub joints: Vec<f64>,
}

impl Course {
    /// The finished lengths, from the left.
    pub(super) fn lengths(&self, stock: &Stock) -> Vec<f64> {
        let mut all: Vec<f64> = self.kinds.iter().map(|kind| stock.long(*kind)).collect();
        let cut = if self.last { all.last_mut() } else { all.first_mut() };
        if let Some(long) = cut {
            *long -= self.over;
        }
        all
    }
}

/// How many joints of one row are nearer to one of the other than the stagger.
pub(super) fn clashes(one: &[f64], other: &[f64], stagger: f64) -> u32 {
    one.iter().map(|x| near(*x, other, stagger)).fold(0, u32::saturating_add)
}

fn near(x: f64, joints: &[f64], stagger: f64) -> u32 {
    joints.iter().map(|y| u32::from((x - y).abs() < stagger)).fold(0, u32::saturating_add)
}

/// What is to be put in order: strips by kind, what they are over the panel, and the joints next to them.
pub(super) struct Asked<'a> {
    pub stock: &'a Stock,
    pub kinds: &'a [u8],
    pub near: &'a [f64],
}

struct Search<'a> {
    stock: &'a Stock,
    near: Vec<f64>,
    runs: Vec<(u8, u32)>,
    over: f64,
    order: Vec<u8>,
    joints: Vec<f64>,
    pieces: usize,
    most: u32,
    nodes: u32,
}

/// An order of the strips with no more clashes than `most`, looked for in so many `nodes`, which are counted down.
pub(super) fn arranged(asked: &Asked<'_>, most: u32, nodes: &mut u32, draw: &mut Draw) -> Option<Course> {
    let stock = asked.stock;
    let over = asked.kinds.iter().map(|kind| stock.long(*kind)).sum::<f64>() - stock.panel;
    let mut runs: Vec<(u8, u32)> = vec![];
    for kind in asked.kinds {
        match runs.iter_mut().find(|(own, _)| own == kind) {
            Some((_, n)) => *n = n.saturating_add(1),
            None => runs.push((*kind, 1)),
        }
    }
    let first = draw.below(2) == 1;
    let sides = if over == 0.0 { [Some(false), None] } else { [Some(first), Some(!first)] };
    let share = *nodes;
    for last in sides.into_iter().flatten() {
        let near = asked.near.iter().map(|x| if last { stock.panel - x } else { *x }).collect();
        let (order, joints, pieces) = (vec![], vec![], asked.kinds.len());
        let mut search = Search { stock, near, runs: runs.clone(), over, order, joints, pieces, most, nodes: share };
        let found = search.go_on(0.0, 0, draw);
        *nodes = nodes.saturating_sub(share.saturating_sub(search.nodes).div_ceil(2));
        if found {
            return Some(search.course(last));
        }
    }
    None
}

impl Search<'_> {
    fn course(mut self, last: bool) -> Course {
        if last {
            self.order.reverse();
            self.joints.reverse();
            self.joints.iter_mut().for_each(|x| *x = self.stock.panel - *x);
        }
        Course { kinds: self.order, over: self.over, last, joints: self.joints }
    }

    fn go_on(&mut self, at: f64, clashes: u32, draw: &mut Draw) -> bool {
        let placed = self.order.len();
        if placed == self.pieces {
            return true;
        }
        let is_last = placed.saturating_add(1) == self.pieces;
        let (kinds, from) = (self.runs.len(), draw.below(self.runs.len()));
        for step in 0..kinds {
            let turn = from.saturating_add(step);
            let turn = if kinds <= turn { turn.saturating_sub(kinds) } else { turn };
            let Some((kind, n)) = self.runs.get(turn).copied() else { continue };
            let long = self.stock.long(kind) - if placed == 0 { self.over } else { 0.0 };
            if n == 0 || ((placed == 0 || is_last) && long < self.stock.end) {
                continue;
            }
            if self.nodes == 0 {
                return false;
            }
            self.nodes = self.nodes.saturating_sub(1);
            let joint = at + long;
            let more = if is_last { clashes } else { clashes.saturating_add(near(joint, &self.near, self.stock.stagger)) };
            if self.most < more {
                continue;
            }
            self.put(turn, n.saturating_sub(1));
            self.order.push(kind);
            if !is_last {
                self.joints.push(joint);
            }
            if self.go_on(joint, more, draw) {
                return true;
            }
            self.order.pop();
            if !is_last {
                self.joints.pop();
            }
            self.put(turn, n);
        }
        false
    }

    fn put(&mut self, turn: usize, n: u32) {
        if let Some((_, own)) = self.runs.get_mut(turn) {
            *own = n;
        }
    }
}
