//! Rows without a joint: each out of one strip, and several out of a long one.

use super::plan::{Piece, Plan};
use super::problem::Problem;
use super::whole::{Cut, squared};

/// More ways to share out rows among strips are not gone through.
const WAYS: usize = 1_000_000;

/// What the strips that are taken come to: their length, its squares, the cuts, and what is left to keep, the more the less.
type Sum = [i128; 4];

/// All the rows that are asked, none with a joint, of the fewest strips that give them, by the fewest cuts, so that most is left to keep;
/// nothing where the strips don't give so many. Every way to share out the rows is gone through.
pub(super) fn all(problem: &Problem) -> Option<Plan> {
    let rows = usize::try_from(problem.rows?).ok()?;
    let strips: Vec<usize> = (0..problem.piles.len()).flat_map(|pile| (0..count(problem, pile)).map(move |_| pile)).collect();
    let most = strips.iter().map(|pile| each(problem, *pile)).max()?;
    if strips.len().saturating_mul(rows).saturating_mul(most.saturating_add(1)) > WAYS {
        return None;
    }
    // For each number of rows the least that the strips so far come to; and how many rows the last of them gives.
    let mut sums: Vec<Option<Sum>> = (0..=rows).map(|n| (n == 0).then_some([0; 4])).collect();
    let mut given: Vec<Vec<usize>> = vec![];
    for pile in &strips {
        let one: Vec<Sum> = (0..=each(problem, *pile)).map(|n| sum(problem, *pile, n)).collect();
        let best = |all: usize| {
            let ways = one.iter().enumerate().take(all.saturating_add(1));
            let ways = ways.filter_map(|(n, one)| Some((plus((*sums.get(all.saturating_sub(n))?)?, *one), n)));
            ways.min()
        };
        let now: Vec<Option<(Sum, usize)>> = (0..=rows).map(best).collect();
        given.push(now.iter().map(|way| way.map_or(0, |(_, n)| n)).collect());
        sums = now.iter().map(|way| way.map(|(sum, _)| sum)).collect();
    }
    sums.get(rows).copied().flatten()?;
    let (mut plan, mut lacks) = (Plan::default(), rows);
    let mut used = vec![0_i64; problem.piles.len()];
    for (pile, given) in strips.iter().zip(&given).rev() {
        let n = given.get(lacks).copied().filter(|n| 0 < *n);
        let (Some(n), Some(used)) = (n, used.get_mut(*pile)) else { continue };
        (lacks, *used) = (lacks.saturating_sub(n), used.saturating_add(1));
        plan.rows.extend((0..n).map(|_| row(problem, *pile, *used)));
    }
    Some(plan)
}

/// The rows that are still to be laid where every strip gives as many without a joint as it is long enough for, and of what: strips that are
/// too short, and what is left of the others. Nothing where none gives one.
pub(super) fn rest(problem: &Problem) -> Option<Problem> {
    let mut rest = problem.clone();
    let mut rows = 0_i64;
    for (pile, own) in rest.piles.iter_mut().enumerate() {
        let n = i64::try_from(each(problem, pile)).ok().filter(|n| 0 < *n);
        let Some(n) = n else {
            own.count = i64::try_from(count(problem, pile)).ok()?;
            continue;
        };
        rows = rows.checked_add(n.checked_mul(own.count)?)?;
        // Its ends are squared already.
        let off = problem.length.checked_add(problem.kerf)?.checked_mul(n)?;
        let left = own.length.checked_sub(off)?;
        let usable = problem.square.checked_mul(2)?.checked_add(problem.min_piece.max(1))? <= left;
        (own.length, own.count) = if usable { (left, own.count) } else { (own.length, 0) };
    }
    let lacks = problem.rows?.checked_sub(rows)?;
    (0 < rows && 0 < lacks).then_some(Problem { rows: Some(lacks), machine_min: 0, ..rest })
}

/// Those rows, and all that the strips give without a joint.
pub(super) fn with(problem: &Problem, mut plan: Plan) -> Plan {
    for pile in 0..problem.piles.len() {
        let strips = i64::try_from(count(problem, pile)).unwrap_or(0);
        for n in 1..=strips {
            plan.rows.extend((0..each(problem, pile)).map(|_| row(problem, pile, n)));
        }
    }
    plan
}

fn row(problem: &Problem, pile: usize, n: i64) -> Vec<Piece> {
    vec![Piece { pile, n, at: 0, length: problem.length }]
}

/// The strips of a pile that may be used.
fn count(problem: &Problem, pile: usize) -> usize {
    let own = problem.piles.get(pile).filter(|own| problem.machine_min <= own.length);
    own.and_then(|own| usize::try_from(own.count).ok()).unwrap_or(0)
}

/// How many rows a strip of a pile gives, a kerf between two.
fn each(problem: &Problem, pile: usize) -> usize {
    let row = problem.length.saturating_add(problem.kerf);
    let rows = squared(problem, pile).saturating_add(problem.kerf).checked_div(row).unwrap_or(0);
    if count(problem, pile) == 0 { 0 } else { usize::try_from(rows).unwrap_or(0) }
}

/// What one strip of a pile comes to that gives so many rows.
fn sum(problem: &Problem, pile: usize, rows: usize) -> Sum {
    let Some(n) = i64::try_from(rows).ok().filter(|n| 0 < *n) else { return [0; 4] };
    let low = problem.piles.get(pile).map_or(0, |pile| i128::from(pile.length));
    let long = problem.length.saturating_add(problem.kerf).saturating_mul(n).saturating_sub(problem.kerf);
    let cut = Cut::of(problem, pile, (n, long));
    [low, low.saturating_mul(low), cut.cuts.into(), i128::from(cut.left).saturating_neg()]
}

fn plus(one: Sum, other: Sum) -> Sum {
    let mut sum = one;
    sum.iter_mut().zip(other).for_each(|(sum, other)| *sum = sum.saturating_add(other));
    sum
}
