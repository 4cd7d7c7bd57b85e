//! Where joints that must be so far apart keep rows from being laid: how far apart they may be, and how many rows that gives. Each is told
//! by a plan that would stand.

use super::plan::Plan;
use super::problem::Problem;
use super::solve;
use crate::plan::patience::{Patience, Progress};

/// With joints no nearer than so there is a plan of so many rows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Apart {
    pub apart: i64,
    pub rows: i64,
}

/// Steps for each try, the first of which ends at once where there is not the wood; and so many parts of what was asked are told apart. Ours.
const EACH: u64 = 40_000;
const PARTS: i64 = 16;

/// The farthest distance found with which there are as many rows as with none, where these are more than `made`.
///
/// By hand: two strips of 600 lay a row of 1200 with its joint at 600; one of 300, 600 and 300 has its joints 300 from that, and no joint of a
/// row lies 700 from those of the next.
/// ```
/// use fivebar_core::plan::rows::{joints::{Apart, Joints}, problem::{Pile, Problem}};
/// let problem = Problem {
///     length: 1200, rows: Some(4), kerf: 3, stagger: 700, split: true, min_end: 50, min_piece: 50,
///     piles: vec![Pile { id: "A".into(), count: 20, length: 600 }], ..Problem::default()
/// };
/// let mut tries = Joints::begin(&problem, 1);
/// let found = (0..9).find_map(|_| tries.turn()).flatten().unwrap();
/// assert_eq!(found.rows, 4);
/// assert!((1..600).contains(&found.apart));
/// ```
#[derive(Clone, Debug)]
pub struct Joints {
    problem: Problem,
    made: i64,
    /// In sixteenths of what was asked: the farthest that was found to do, and the nearest that was not; and how many rows it gives.
    does: i64,
    over: i64,
    rows: Option<i64>,
}

impl Joints {
    /// Nothing is tried yet.
    pub fn begin(problem: &Problem, made: i64) -> Joints {
        let over = if 0 < problem.stagger { PARTS } else { 0 };
        Joints { problem: problem.clone(), made, does: 0, over, rows: None }
    }

    /// One distance more is tried; what was found, when there is none left.
    pub fn turn(&mut self) -> Option<Option<Apart>> {
        if self.over.saturating_sub(self.does) < 2 {
            return Some(self.rows.map(|rows| Apart { apart: self.apart(self.does), rows }));
        }
        let next = if self.rows.is_none() { 0 } else { self.does.midpoint(self.over) };
        let least = self.rows.unwrap_or(self.made.saturating_add(1));
        match with(&self.problem, (self.apart(next), least)).filter(|it| least <= it.rows) {
            // It keeps what was asked: the joints are not what holds them.
            Some(it) if self.problem.stagger <= it.apart => (self.rows, self.over) = (None, 0),
            Some(it) => (self.does, self.rows) = (next, self.rows.or(Some(it.rows))),
            None if self.rows.is_none() => self.over = 0,
            None => self.over = next,
        }
        None
    }

    fn apart(&self, parts: i64) -> i64 {
        self.problem.stagger.saturating_mul(parts).checked_div(PARTS).unwrap_or(0)
    }
}

/// The rows of a plan with joints no nearer than so, and how far apart they are in it; it is looked for as long as there may be so many.
fn with(problem: &Problem, (apart, least): (i64, i64)) -> Option<Apart> {
    let easier = Problem { stagger: apart, ..problem.clone() };
    let all = problem.rows.map(i128::from);
    let may = |bound: &[i128]| bound.first().is_none_or(|most| i128::from(least) <= *most);
    let mut goes_on = |now: Progress<'_>| may(now.bound) && (all.is_none() || now.worth.first().copied() < all);
    let plan = solve(&easier, &mut Patience::new(Some(EACH), &mut goes_on), 1).plan;
    let rows = i64::try_from(plan.rows.len()).ok()?;
    Some(Apart { apart: nearest(&plan).unwrap_or(problem.stagger), rows })
}

/// How near joints of neighbouring rows lie.
fn nearest(plan: &Plan) -> Option<i64> {
    let joints = |row: &[super::plan::Piece]| row.iter().skip(1).map(|piece| piece.at).collect::<Vec<i64>>();
    let all: Vec<Vec<i64>> = plan.rows.iter().map(|row| joints(row)).collect();
    let pairs = all.iter().zip(all.iter().skip(1));
    let gaps = pairs.flat_map(|(one, other)| one.iter().flat_map(|at| other.iter().map(|to| at.saturating_sub(*to).saturating_abs())));
    gaps.min()
}
