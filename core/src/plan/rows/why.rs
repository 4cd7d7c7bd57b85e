//! Why there can be no more rows, and what one more would take: plain facts, for the words.

use super::problem::{Pile, Problem};
use super::{SENSES, solve};
use crate::plan::patience::Patience;
use std::collections::VecDeque;

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

/// So many more pieces of one pile, and there is a plan with so many rows; as far as that is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unlock {
    /// The pile, by its place in the problem.
    pub pile: usize,
    pub pieces: i64,
    pub known: Known,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// Such a plan was found, and no fewer do.
    Least,
    /// Such a plan was found; fewer may do.
    Found,
    /// No fewer do; whether so many do was not found.
    AtLeast,
}

/// For each pile that a row could be of, the fewest further pieces that were found to give so many `rows`; `each` says how many strips a
/// piece of a pile gives. The search gets `steps` for each try.
///
/// ```
/// use fivebar_core::plan::{patience::Patience, rows::{problem::{Pile, Problem}, why::{Known, Rows, Unlock}}};
/// let pile = |id: &str, count, length| Pile { id: id.into(), count, length };
/// let problem = Problem {
///     length: 1000, rows: None, square: 5, kerf: 3, min_end: 100, min_piece: 80, machine_min: 150,
///     stagger: 60, split: false, keep_min: 50, piles: vec![pile("A", 2, 510), pile("B", 3, 310)],
/// };
/// let mut on = |_: fivebar_core::plan::patience::Progress| true;
/// // A row of two A stands; with one more B, four of them make the second.
/// let one = |pile| Unlock { pile, pieces: 1, known: Known::Least };
/// let (mut tries, mut patience) = (Rows::begin(&problem, 2, (&[1, 1], 200)), Patience::new(None, &mut on));
/// let found = (0..9).find_map(|_| tries.turn(&mut patience));
/// assert_eq!(found, Some(vec![one(0), one(1)]));
/// ```
#[derive(Clone, Debug)]
pub struct Rows {
    problem: Problem,
    rows: i64,
    steps: u64,
    /// Piles that were not tried to their end.
    piles: VecDeque<Tried>,
    found: Vec<Unlock>,
}

/// A pile, the number of pieces that is tried next, the most that are, and how many strips each gives; no fewer than `sure` do.
#[derive(Clone, Copy, Debug)]
struct Tried {
    pile: usize,
    pieces: i64,
    most: i64,
    each: i64,
    sure: i64,
}

impl Rows {
    /// Nothing is tried yet.
    pub fn begin(problem: &Problem, rows: i64, (each, steps): (&[i64], u64)) -> Rows {
        let squared = |length: i64| length.saturating_sub(problem.square.saturating_mul(2));
        let fits = |length: i64| problem.machine_min <= length && problem.min_piece.max(1) <= squared(length);
        let own = problem.piles.iter().enumerate().filter(|(_, pile)| fits(pile.length));
        let there = own.clone().fold(0_i64, |sum, (_, pile)| sum.saturating_add(squared(pile.length).saturating_mul(pile.count)));
        let lacks = problem.length.saturating_mul(rows).saturating_sub(there);
        let one = |(pile, own): (usize, &Pile)| {
            let (strip, each) = (squared(own.length), each.get(pile).copied().unwrap_or(1).max(1));
            let up = |n: i64, by: i64| n.saturating_add(by).saturating_sub(1).checked_div(by).unwrap_or(0);
            let least = up(lacks, strip.saturating_mul(each)).max(1);
            let most = least.saturating_add(up(problem.length, strip));
            Tried { pile, pieces: least, most, each, sure: least }
        };
        let piles = own.map(one).collect();
        Rows { problem: problem.clone(), rows, steps, piles, found: vec![] }
    }

    /// One number of pieces of one pile more is tried; what was found, when there is none left.
    pub fn turn(&mut self, patience: &mut Patience<'_>) -> Option<Vec<Unlock>> {
        let Some(tried) = self.piles.front_mut() else { return Some(std::mem::take(&mut self.found)) };
        let Tried { pile, pieces, most, each, sure } = *tried;
        let mut known = Known::AtLeast;
        if pieces <= most && !patience.is_over() {
            let (found, spent) = has(&self.problem, (pile, pieces.saturating_mul(each)), self.rows, self.steps);
            patience.spend(spent);
            match found {
                Some(true) => known = if sure == pieces { Known::Least } else { Known::Found },
                Some(false) if sure == pieces => tried.sure = sure.saturating_add(1),
                _ => (),
            }
            tried.pieces = pieces.saturating_add(1);
            if known == Known::AtLeast {
                return None;
            }
        }
        self.piles.pop_front();
        self.found.push(Unlock { pile, pieces: if known == Known::AtLeast { sure } else { pieces }, known });
        None
    }
}

/// Whether a plan with so many rows is found when a pile has so many strips more, none where it is neither found nor ruled out; and the steps
/// that were spent.
fn has(problem: &Problem, (pile, strips): (usize, i64), rows: i64, steps: u64) -> (Option<bool>, u64) {
    let mut more = Problem { rows: Some(rows), ..problem.clone() };
    if let Some(own) = more.piles.get_mut(pile) {
        own.count = own.count.saturating_add(strips);
    }
    let wanted = [i128::from(rows).saturating_sub(1)];
    let mut goes_on = |progress: crate::plan::patience::Progress<'_>| {
        let impossible = progress.bound.first().is_some_and(|most| *most < i128::from(rows));
        !impossible && !crate::plan::better(&SENSES, progress.worth, &wanted)
    };
    let mut own = Patience::new(Some(steps), &mut goes_on);
    let planned = solve(&more, &mut own, 1);
    let made = planned.worth.first().is_some_and(|made| i128::from(rows) <= *made);
    let ruled_out = planned.bound.first().is_some_and(|most| *most < i128::from(rows));
    ((made || ruled_out).then_some(made), own.steps())
}
