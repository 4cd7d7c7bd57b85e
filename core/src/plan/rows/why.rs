//! Why there can be no more rows, and what one more would take: plain facts, for the words.

use super::problem::Problem;
use super::{SENSES, solve};
use crate::plan::patience::Patience;

/// What keeps a plan from more rows than its bound says. Lengths in the problem's unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// So many are wanted.
    Wanted,
    /// No strip is long enough for the machine and for a piece.
    NoStrips,
    /// All strips, squared, are so long together; one row more would need `lacks` more.
    Length { there: i64, lacks: i64 },
    /// They would be long enough, but what each row needs does not come out of them, or its joints would be too near to the next row's.
    DoesNotComeOut { there: i64 },
}

/// What decides that no plan has more rows than `most`.
pub fn why(problem: &Problem, most: i64) -> Why {
    if problem.rows.is_some_and(|rows| rows <= most) {
        return Why::Wanted;
    }
    let squared = |length: i64| length.saturating_sub(problem.square.saturating_mul(2));
    let fits = |length: i64| problem.machine_min <= length && problem.min_piece.max(1) <= squared(length);
    let piles = problem.piles.iter().filter(|pile| fits(pile.length));
    let there = piles.fold(0_i64, |sum, pile| sum.saturating_add(squared(pile.length).saturating_mul(pile.count)));
    let lacks = problem.length.saturating_mul(most.saturating_add(1)).saturating_sub(there);
    match there {
        0 => Why::NoStrips,
        _ if 0 < lacks => Why::Length { there, lacks },
        _ => Why::DoesNotComeOut { there },
    }
}

/// So many more strips of one pile, and there is a plan with a row more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unlock {
    /// The pile, by its place in the problem.
    pub pile: usize,
    pub pieces: i64,
}

/// For each pile, the fewest further strips that were found to give one row more than `rows`; piles that never do are left out.
///
/// Each is proven by a plan; that fewer would not do is only as sure as the search, which gets `steps` for each try.
///
/// ```
/// use fivebar_core::plan::{patience::Patience, rows::{problem::{Pile, Problem}, why::{unlocks, Unlock}}};
/// let pile = |id: &str, count, length| Pile { id: id.into(), count, length };
/// let problem = Problem {
///     length: 1000, rows: None, square: 5, kerf: 3, min_end: 100, min_piece: 80, machine_min: 150,
///     stagger: 60, split: false, keep_min: 50, piles: vec![pile("A", 2, 510), pile("B", 3, 310)],
/// };
/// let mut on = |_: fivebar_core::plan::patience::Progress| true;
/// // A row of two A stands; with one more B, four of them make the second.
/// assert_eq!(unlocks(&problem, 1, 200, &mut Patience::new(None, &mut on)), [Unlock { pile: 0, pieces: 1 }, Unlock { pile: 1, pieces: 1 }]);
/// ```
pub fn unlocks(problem: &Problem, rows: i64, steps: u64, patience: &mut Patience<'_>) -> Vec<Unlock> {
    let mut found = vec![];
    for (pile, own) in problem.piles.iter().enumerate() {
        let each = own.length.saturating_sub(problem.square.saturating_mul(2)).max(1);
        let most = problem.length.checked_div(each).unwrap_or(0).saturating_add(1);
        let pieces = (1..=most).find(|pieces| patience.spend(steps) && has_more(problem, (pile, *pieces), rows, steps));
        found.extend(pieces.map(|pieces| Unlock { pile, pieces }));
    }
    found
}

/// Whether a plan with more rows is found when a pile has so many strips more.
fn has_more(problem: &Problem, (pile, pieces): (usize, i64), rows: i64, steps: u64) -> bool {
    let mut more = Problem { rows: Some(rows.saturating_add(1)), ..problem.clone() };
    if let Some(own) = more.piles.get_mut(pile) {
        own.count = own.count.saturating_add(pieces);
    }
    let wanted = [i128::from(rows)];
    let mut goes_on = |progress: crate::plan::patience::Progress<'_>| {
        let impossible = progress.bound.first().is_some_and(|most| *most <= i128::from(rows));
        !impossible && !crate::plan::better(&SENSES, progress.worth, &wanted)
    };
    let planned = solve(&more, &mut Patience::new(Some(steps), &mut goes_on), 1);
    planned.worth.first().is_some_and(|most| i128::from(rows) < *most)
}
