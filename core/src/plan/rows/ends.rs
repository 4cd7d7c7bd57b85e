//! Where only one piece of each row is cut: what the least end costs, and what it costs that each end is cut from a strip of its own. Each
//! is told by a plan that would stand without it.

use super::plan::{Piece, Plan};
use super::problem::Problem;
use super::solve;
use crate::plan::common;
use crate::plan::patience::{Patience, Progress};
use crate::quantity::Set;

/// With an end so short there is a plan of so many rows, of so many strips.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShortEnd {
    pub end: i64,
    pub rows: i64,
    pub strips: i64,
}

/// Steps for each try, and how often a longer end is tried. Ours.
const EACH: u64 = 200;
const TRIES: usize = 4;

/// The longest end found that is too short, and would give more rows than `plan`, or as many of three quarters of its strips or fewer.
///
/// ```
/// use fivebar_core::plan::rows::{ends::{ShortEnd, short_end}, plan::Plan, problem::{Pile, Problem}};
/// let piles = vec![Pile { id: "A".into(), count: 12, length: 1010 }];
/// let problem = Problem {
///     length: 1100, rows: Some(6), square: 5, kerf: 5, min_end: 105, min_piece: 60, machine_min: 0, stagger: 100,
///     split: false, keep_min: 250, piles,
/// };
/// // 1010 less 5 at each end is 1000, and 100 more are wanted: too short for an end. With it, each row takes two strips.
/// assert_eq!(short_end(&problem, &Plan::default()), Some(ShortEnd { end: 100, rows: 6, strips: 12 }));
/// ```
pub fn short_end(problem: &Problem, plan: &Plan) -> Option<ShortEnd> {
    let step = unit(problem);
    let least = problem.min_end.max(problem.min_piece);
    let (mut from, mut found) = (step, None);
    for _ in 0..if problem.split { 0 } else { TRIES } {
        let Some(it) = Some(from).filter(|from| *from < least).and_then(|from| with_ends(problem, from, plan)) else { break };
        from = it.end.saturating_add(step);
        found = Some(it);
    }
    found.filter(|it| it.end < least)
}

/// The same, where it is worth saying: rows are missing, or cut pieces could come several from one strip.
pub fn worth_saying(problem: &Problem, plan: &Plan) -> Option<ShortEnd> {
    let all_made = problem.rows == Some(n(plan.rows.len()));
    if all_made && fewer_together(problem, plan).is_none() { None } else { short_end(problem, plan) }
}

fn with_ends(problem: &Problem, least: i64, plan: &Plan) -> Option<ShortEnd> {
    let easier = Problem { min_end: least, min_piece: problem.min_piece.min(least), ..problem.clone() };
    let mut goes_on = |_: Progress<'_>| true;
    let found = solve(&easier, &mut Patience::new(Some(EACH), &mut goes_on), 1).plan;
    let (rows, strips) = (n(found.rows.len()), n(strips(&found).len()));
    let most = n(self::strips(plan).len()).saturating_mul(3).checked_div(4)?;
    let gains = n(plan.rows.len()) < rows || (n(plan.rows.len()) == rows && strips <= most);
    let middle = |row: &Vec<Piece>| row.iter().skip(1).rev().skip(1).any(|piece| piece.length < problem.min_piece);
    let ends = found.rows.iter().flat_map(|row| row.first().into_iter().chain(row.last()));
    let end = ends.map(|piece| piece.length).min().filter(|_| gains && !found.rows.iter().any(middle))?;
    Some(ShortEnd { end, rows, strips })
}

/// As many strips as would do where the cut pieces of a plan came several from one strip; nothing where that is no fewer.
///
/// By hand: six of 105 and the kerfs between come out of one strip of 1000.
/// ```
/// use fivebar_core::plan::rows::{ends::fewer_together, plan::{Piece, Plan}, problem::{Pile, Problem}};
/// let piles = vec![Pile { id: "A".into(), count: 12, length: 1000 }];
/// let problem = Problem { length: 1105, kerf: 3, piles, ..Problem::default() };
/// let piece = |n, at, length| Piece { pile: 0, n, at, length };
/// let row = |nth: i64| vec![piece(2 * nth, 0, 1000), piece(2 * nth + 1, 1000, 105)];
/// let plan = Plan { rows: (0..6).map(row).collect(), remainders: vec![] };
/// assert_eq!(fewer_together(&problem, &plan), Some(7));
/// ```
pub fn fewer_together(problem: &Problem, plan: &Plan) -> Option<i64> {
    if problem.split {
        return None;
    }
    let squared = |pile: usize| {
        let two = problem.square.saturating_mul(2);
        problem.piles.get(pile).map_or(0, |pile| pile.length.saturating_sub(two))
    };
    let mut cut: Vec<&Piece> = plan.rows.iter().flatten().filter(|piece| piece.length < squared(piece.pile)).collect();
    cut.sort_unstable_by_key(|piece| std::cmp::Reverse(piece.length));
    // The longest piece first, each from the first strip with room: there is one, since each came from one of its own.
    let mut room: Vec<i64> = cut.iter().map(|piece| squared(piece.pile)).collect();
    room.sort_unstable_by_key(|room| std::cmp::Reverse(*room));
    let mut begun: Set<usize> = Set::new();
    for piece in &cut {
        let (nth, room) = room.iter_mut().enumerate().find(|(_, room)| piece.length <= **room)?;
        *room = room.saturating_sub(piece.length).saturating_sub(problem.kerf);
        begun.insert(nth);
    }
    let all = strips(plan).len();
    let fewer = all.saturating_sub(cut.len()).saturating_add(begun.len());
    (fewer < all).then_some(n(fewer))
}

/// The strips a plan uses.
fn strips(plan: &Plan) -> Set<(usize, i64)> {
    plan.rows.iter().flatten().map(|piece| (piece.pile, piece.n)).collect()
}

fn n(n: usize) -> i64 {
    i64::try_from(n).unwrap_or(i64::MAX)
}

/// What all lengths that ends come from are multiples of.
fn unit(problem: &Problem) -> i64 {
    let rest = [problem.square, problem.kerf, problem.min_end, problem.min_piece, problem.stagger, problem.keep_min];
    rest.into_iter().chain(problem.piles.iter().map(|pile| pile.length)).fold(problem.length, common).max(1)
}
