use super::*;
use crate::plan::Planned;
use crate::plan::draw::Draw;
use crate::plan::patience::Progress;

const TRIM: i64 = 6;
const KERF: i64 = 3;

/// Boards of 50 from four piles, and five parts of 40: by lot, counted whole, with 250 as the least that is kept.
fn invented(draw: &mut Draw) -> (sticks::problem::Problem, parts::problem::Problem) {
    let mut to = |most: usize| i64::try_from(draw.below(most)).unwrap();
    let piles: Vec<(i64, i64)> = (0..4).map(|_| (1 + to(6), 500 + 10 * to(120))).collect();
    let wanted: Vec<(i64, i64)> = (0..5).map(|_| (1 + to(4), 120 + 10 * to(45))).collect();
    let keep_min = counted_whole(piles.iter().map(|(_, long)| *long), 250);
    let sticks = sticks::problem::Problem {
        sets: Some(1),
        kerf: KERF,
        end_trim: TRIM,
        keep_min,
        piles: piles.iter().map(|(count, length)| sticks::problem::Pile { count: *count, length: *length, ..Default::default() }).collect(),
        parts: wanted.iter().map(|(n, length)| sticks::problem::Part { per_set: *n, length: *length, ..Default::default() }).collect(),
        ..Default::default()
    };
    let pile = |(count, length): &(i64, i64)| parts::problem::Pile {
        count: *count,
        length: *length,
        width: 50,
        thickness: 20,
        ..Default::default()
    };
    let part = |(per_set, length): &(i64, i64)| parts::problem::Part {
        per_set: *per_set,
        length: *length,
        width: 40,
        thickness: 20,
        ..Default::default()
    };
    let parts = parts::problem::Problem {
        sets: Some(1),
        kerf: KERF,
        end_trim: TRIM,
        keep_min,
        piles: piles.iter().map(pile).collect(),
        parts: wanted.iter().map(part).collect(),
        ..Default::default()
    };
    (sticks, parts)
}

/// What goes back, by hand: of each board its trimmed length less its last piece and a kerf, where that is 250 or more.
fn goes_back(boards: impl Iterator<Item = (i64, i64, i64)>) -> i64 {
    let back = |(times, long, end): (i64, i64, i64)| (times, long - 2 * TRIM - end - KERF);
    boards.map(back).filter(|(_, left)| 250 <= *left).map(|(times, left)| times * left).sum()
}

fn left(asked: &Asked, made: &Made) -> i64 {
    match (asked, made) {
        (Asked::Sticks(problem), Made::Sticks(plan)) => goes_back(plan.sticks.iter().map(|stick| {
            let ends = stick.pieces.iter().map(|piece| piece.at + problem.parts[piece.part].length);
            (stick.times, problem.piles[stick.pile].length, ends.max().unwrap_or(0))
        })),
        (Asked::Parts(problem), Made::Parts(plan)) => goes_back(plan.boards.iter().map(|board| {
            let end = |band: &parts::plan::Band| match board.first {
                parts::plan::First::Cross => band.at + band.size,
                parts::plan::First::Rip => band.pieces.iter().map(|piece| piece.at + piece.length).max().unwrap_or(0),
            };
            (board.times, problem.piles[board.pile].length, board.bands.iter().map(end).max().unwrap_or(0))
        })),
        _ => 0,
    }
}

/// However short it looks, the second look leaves no less to keep than the plan it looks at again.
#[test]
fn the_second_look_never_leaves_less() {
    let mut draw = Draw::seeded(9);
    let mut better = [0; 2];
    for seed in 0..150 {
        let (sticks, parts) = invented(&mut draw);
        for (nth, asked) in [Asked::Sticks(sticks), Asked::Parts(parts)].into_iter().enumerate() {
            let mut goes_on = |_: Progress<'_>| true;
            let patience = &mut Patience::new(Some(300), &mut goes_on);
            let found = match &asked {
                Asked::Sticks(problem) => sticks::solve(problem, patience, seed).map(Made::Sticks),
                Asked::Parts(problem) => parts::solve(problem, patience, seed).map(Made::Parts),
                _ => Planned::default(),
            };
            let other = most_left(&asked, found.clone(), patience, seed);
            assert!(asked.holds(&other), "{asked:?}");
            let [before, after] = [&found, &other].map(|it| left(&asked, &it.plan));
            assert!(before <= after || other.worth != found.worth, "{seed}: {after} of {before}: {asked:?}");
            better[nth] += i64::from(before < after);
        }
    }
    assert!(better.iter().all(|n| 10 < *n), "{better:?}");
}

/// Whoever stops the first look is asked again in the second, told nothing else, and heard at once.
#[test]
fn the_second_look_is_stopped_too() {
    let mut draw = Draw::seeded(9);
    for _ in 0..20 {
        let (sticks, parts) = invented(&mut draw);
        let rows = rows::problem::Problem {
            length: 1_900,
            rows: Some(3),
            square: 2,
            kerf: KERF,
            min_end: 100,
            min_piece: 60,
            stagger: 100,
            split: true,
            keep_min: 20_000,
            piles: sticks.piles.iter().map(|pile| rows::problem::Pile { count: 9, length: pile.length, ..Default::default() }).collect(),
            ..Default::default()
        };
        for asked in [Asked::Sticks(sticks), Asked::Parts(parts), Asked::Rows(rows)] {
            let (mut told, mut asks) = (vec![], 0);
            let mut goes_on = |progress: Progress<'_>| {
                asks += i64::from(progress.again);
                if progress.again {
                    assert_eq!(progress.worth, told, "{asked:?}");
                } else {
                    told = progress.worth.to_vec();
                }
                !progress.again
            };
            asked.solve(&mut Patience::new(Some(2_000), &mut goes_on), 1);
            assert!((1..=6).contains(&asks), "{asks}: {asked:?}");
        }
    }
}
