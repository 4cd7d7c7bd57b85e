//! Cutting stock by the methods of published papers, recalled: the figures are drawn here, only the way of drawing is theirs.
//!
//! Triplets: Falkenauer, "A hybrid grouping genetic algorithm for bin packing", Journal of Heuristics 2, 1996: lengths in threes that
//! fill a stick of 1000 exactly, so the least number of sticks is known. CUTGEN1: Gau and Waescher, "CUTGEN1: a problem generator for
//! the standard one-dimensional cutting stock problem", European Journal of Operational Research 84, 1995: lengths evenly drawn between
//! two shares of the stick, demands that add up to a mean.

use fivebar_core::plan::draw::Draw;
use fivebar_core::plan::patience::{Patience, Progress};
use fivebar_core::plan::sticks::problem::{Part, Pile, Problem};
use fivebar_core::plan::sticks::{check::check, solve};

/// One set of all parts from sticks of one length; nothing is lost to a kerf or trimmed, nothing goes back.
fn problem(length: i64, sticks: i64, parts: &[(i64, i64)]) -> Problem {
    let part =
        |(nth, (length, per_set)): (usize, &(i64, i64))| Part { id: format!("{nth}"), per_set: *per_set, length: *length, piles: None };
    let piles = vec![Pile { id: "stick".into(), count: sticks, length }];
    let parts = parts.iter().enumerate().map(part).collect();
    Problem { sets: Some(1), kerf: 0, end_trim: 0, machine_min: 0, keep_min: length, piles, parts }
}

/// Lengths and how many of each.
fn counted(mut lengths: Vec<i64>) -> Vec<(i64, i64)> {
    lengths.sort();
    let mut all: Vec<(i64, i64)> = vec![];
    for length in lengths {
        match all.last_mut() {
            Some((own, n)) if *own == length => *n += 1,
            _ => all.push((length, 1)),
        }
    }
    all
}

fn triplets(sticks: usize, draw: &mut Draw) -> Vec<i64> {
    let three = |draw: &mut Draw| {
        let first = 380 + draw.below(111) as i64;
        let rest = 1000 - first;
        let second = 250 + draw.below((rest / 2 - 250 + 1) as usize) as i64;
        [first, second, rest - second]
    };
    (0..sticks).flat_map(|_| three(draw)).collect()
}

/// Evenly drawn lengths between `low` and `high` hundredths of the stick; demands share `mean` for each length.
fn cutgen(types: usize, [low, high]: [i64; 2], mean: i64, draw: &mut Draw) -> Vec<(i64, i64)> {
    let lengths: Vec<i64> = (0..types).map(|_| 10 * low + draw.below((10 * (high - low)) as usize) as i64).collect();
    let shares: Vec<i64> = (0..types).map(|_| 1 + draw.below(1000) as i64).collect();
    let all: i64 = shares.iter().sum();
    let demand = |share: &i64| (share * mean * types as i64 / all).max(1);
    counted(lengths.iter().zip(&shares).flat_map(|(length, share)| vec![*length; demand(share) as usize]).collect())
}

fn sticks(problem: &Problem, steps: u64) -> (i128, bool) {
    let mut goes_on = |_: Progress<'_>| true;
    let planned = solve(problem, &mut Patience::new(Some(steps), &mut goes_on), 1);
    assert_eq!(check(problem, &planned.plan).map(Vec::from), Ok(planned.worth.clone()));
    assert_eq!(planned.worth[0], 1, "all parts");
    let length = i128::from(problem.piles[0].length);
    // The bound on the wood proves the number of sticks where it leaves no room for one fewer.
    (planned.worth[1] / length, planned.worth[1] - length < planned.bound[1])
}

#[test]
fn triplets_come_out_in_the_known_number_of_sticks() {
    let mut draw = Draw::seeded(60);
    for round in 0..4 {
        let parts = counted(triplets(20, &mut draw));
        assert_eq!(sticks(&problem(1000, 20, &parts), 60_000), (20, true), "round {round}");
    }
}

#[test]
fn cutgen_comes_out_in_the_proven_number_of_sticks() {
    let mut draw = Draw::seeded(95);
    let (mut proven, mut all) = (0, 0);
    for (types, share) in [(10, [1, 20]), (10, [1, 80]), (20, [20, 80]), (20, [1, 80])] {
        for _ in 0..3 {
            let parts = cutgen(types, share, 10, &mut draw);
            let (_, is_proven) = sticks(&problem(1000, 300, &parts), 3_000);
            (proven, all) = (proven + i32::from(is_proven), all + 1);
        }
    }
    assert_eq!(proven, all, "of {all} the number of sticks is proven in {proven}");
}
